// Starts the program, shows in plain words when it can't, and keeps the page ready to work offline.
//
// It tells the program through <html>, with an event `coldcase:status` on window after each change:
//   data-ready="true"            the program has mounted
//   data-offline="ready"         every file of this version was found in the cache
//   data-offline="unavailable"   this browser or address can't keep the page
//   data-update="waiting"        a newer version is in the cache and waits
// The program answers with an event `coldcase:apply-update` once its work is saved.
//
// Old browsers must still be able to read this file: no optional chaining, no top-level await.

const page = document.documentElement;

// The look that was chosen stands before the program does. A storage that is blocked has none.
try {
  const look = localStorage.getItem("coldcase/setting/look");
  if (look === "light" || look === "dark") page.dataset.look = look;
} catch (blocked) {
  // The device's own look, then.
}

function announce(name, value) {
  page.dataset[name] = value;
  window.dispatchEvent(new CustomEvent("coldcase:status"));
}

function showStopped(heading, text) {
  if (page.dataset.stopped) return;
  announce("stopped", "true");
  const hint = document.querySelector(".slow-start");
  if (hint) hint.remove();
  const box = document.createElement("section");
  box.className = "stopped";
  box.setAttribute("role", "alert");
  const title = document.createElement("h2");
  title.textContent = heading;
  const body = document.createElement("p");
  body.textContent = text;
  const again = document.createElement("button");
  again.textContent = "Load again";
  again.addEventListener("click", () => location.reload());
  box.append(title, body, again);
  document.body.prepend(box);
}

// A panic in the program arrives here as an uncaught error. The program can't go on after one.
function watchForCrash() {
  const stopped = () =>
    showStopped("Coldcase has stopped", "Your saved work is safe. Load the page again to go on.");
  window.addEventListener("error", (event) => {
    if (event.error) stopped();
  });
  window.addEventListener("unhandledrejection", (event) => {
    if (event.reason instanceof WebAssembly.RuntimeError) stopped();
  });
}

async function startProgram() {
  const script = document.querySelector('link[rel="modulepreload"]').href;
  // Both at once; the wasm is named after its script.
  const wasm = fetch(script.replace(/\.js$/, "_bg.wasm"));
  const program = await import(script);
  // What a killed browser lost is back before the program looks for it.
  await window.secondCopy;
  await program.default({ module_or_path: wasm });
  document.getElementById("shell").remove();
  watchForCrash();
  announce("ready", "true");
}

// Asks the worker whether it holds every file of its version.
function askComplete(worker) {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) => resolve(event.data === true);
    worker.postMessage("complete?", [channel.port2]);
  });
}

// Asks until the newer version is in use: a worker that was just being put to sleep hears nothing, and an engine may
// keep to itself that the state has changed.
function takeOver(registration) {
  const newer = registration.waiting;
  if (!newer) return;
  let asking = 0;
  const ask = () => {
    if (newer.state === "installed") newer.postMessage("take over");
    if (newer.state !== "activated" && newer.state !== "redundant") return;
    window.clearInterval(asking);
    if (newer.state === "activated") location.reload();
  };
  newer.addEventListener("statechange", ask);
  asking = window.setInterval(ask, 500);
  ask();
}

function watchForUpdate(registration) {
  const offer = () => {
    // Without an active worker this is the first version, not a newer one.
    if (registration.waiting && registration.active) announce("update", "waiting");
  };
  offer();
  registration.addEventListener("updatefound", () => {
    const arriving = registration.installing;
    if (arriving) arriving.addEventListener("statechange", offer);
  });
  window.addEventListener("coldcase:apply-update", () => takeOver(registration));
  document.addEventListener("visibilitychange", () => {
    // Offline, the question for a newer version fails, and that is all right.
    if (document.visibilityState === "visible") registration.update().catch(() => {});
  });
}

async function keepOffline() {
  try {
    const registration = await navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" });
    watchForUpdate(registration);
    const ready = await navigator.serviceWorker.ready;
    const complete = await askComplete(ready.active);
    announce("offline", complete ? "ready" : "unavailable");
  } catch (error) {
    // A private window or a plain-http address: the program runs all the same.
    announce("offline", "unavailable");
  }
}

startProgram().then(keepOffline, (error) => {
  console.error(error);
  showStopped(
    "Coldcase could not start",
    "This browser may be too old, or the download broke off. Your saved work is safe. " +
      "Coldcase needs Safari 16.4, Chrome 97, Firefox 102 or newer.",
  );
});
