// Keeps a second copy of each job that was just written, until the browser has surely written the first one.
//
// A browser hands its local storage to the system when it finds the time: Chromium after five seconds or more, up to
// minutes for a page that writes often. Killed before that, it loses all of it. Its database is handed over within
// milliseconds. So each job goes there too, and what a kill took away comes back before the program starts.
//
// The program tells with an event `coldcase:stored` on window, whose detail is the name, that a job was written or
// removed. While the second copy is on its way, <html> has data-keeping="true".
//
// Old browsers must still be able to read this file: no optional chaining, no top-level await.

// By then the first copy has long been written, or the browser was killed and the next start has found it missing.
const SURELY_WRITTEN = 24 * 60 * 60 * 1000;
// A database that doesn't answer keeps nobody from starting.
const PATIENCE = 1500;

let underway = 0;

const database = new Promise((resolve, reject) => {
  const opening = indexedDB.open("coldcase", 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore("jobs", { keyPath: "name" });
  opening.onsuccess = () => {
    // A later version of this page may need another form; it must not wait for this one to be closed.
    opening.result.onversionchange = () => opening.result.close();
    resolve(opening.result);
  };
  opening.onerror = () => reject(opening.error);
});

// Does something with the copies and returns once the database has it.
async function change(work) {
  const transaction = (await database).transaction("jobs", "readwrite");
  work(transaction.objectStore("jobs"));
  return new Promise((resolve, reject) => {
    transaction.oncomplete = resolve;
    transaction.onabort = () => reject(transaction.error);
  });
}

async function allCopies() {
  const reading = (await database).transaction("jobs").objectStore("jobs").getAll();
  return new Promise((resolve, reject) => {
    reading.onsuccess = () => resolve(reading.result);
    reading.onerror = () => reject(reading.error);
  });
}

// The first line of a kept job begins with the number of times that it was written.
function revision(text) {
  return text === null ? -1 : parseInt(text, 10) || 0;
}

// Brings back what the browser lost, and forgets the copies that are no longer needed.
async function restore() {
  const copies = await allCopies();
  const isOld = ({ name, text, at }) => Date.now() - at > SURELY_WRITTEN && localStorage.getItem(name) === text;
  const lost = copies.filter(({ name, text }) => revision(text) > revision(localStorage.getItem(name)));
  lost.forEach(({ name, text }) => localStorage.setItem(name, text));
  const old = copies.filter(isOld);
  if (lost.length || old.length) {
    await change((jobs) => {
      old.forEach(({ name }) => jobs.delete(name));
      // Written anew just now, they have to wait again.
      lost.forEach(({ name, text }) => jobs.put({ name, text, at: Date.now() }));
    });
  }
}

async function copy(name) {
  underway += 1;
  document.documentElement.dataset.keeping = "true";
  try {
    const text = localStorage.getItem(name);
    await change((jobs) => (text === null ? jobs.delete(name) : jobs.put({ name, text, at: Date.now() })));
  } catch (error) {
    // The first copy is there all the same.
    console.warn("no second copy", error);
  }
  underway -= 1;
  if (underway === 0) delete document.documentElement.dataset.keeping;
}

window.addEventListener("coldcase:stored", ({ detail }) => copy(detail));

// The program starts after this, whatever comes of it.
window.secondCopy = Promise.race([
  restore().catch((error) => console.warn("no second copy", error)),
  new Promise((resolve) => setTimeout(resolve, PATIENCE)),
]);
