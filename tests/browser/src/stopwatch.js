// Times every key press from the moment the browser received it until its last change to the page was painted.
// Answers are left in window.keyTimes, one object a press.
window.keyTimes = [];
let current = null;

// What runs after a frame's callbacks runs once that frame is painted.
function note(press) {
  requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => { press.painted = performance.now() - press.at; };
    channel.port2.postMessage(0);
  });
}

addEventListener("keydown", (event) => {
  current = { key: event.key, at: event.timeStamp, painted: null, byBrowser: null, changes: 0 };
  window.keyTimes.push(current);
  note(current);
}, true);

// What is read aloud comes later on purpose, and is no part of the picture.
const isPicture = ({ target }) => !(target.parentElement || target).closest("[role=status]");
new MutationObserver((changes) => {
  if (!current || !changes.some(isPicture)) return;
  current.changes += 1;
  note(current);
}).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });

// The browser's own figure, rounded to 8 ms and left out below 16, as a check on the one above.
new PerformanceObserver((list) => {
  for (const entry of list.getEntries()) {
    const press = window.keyTimes.find(({ at }) => Math.abs(at - entry.startTime) < 1);
    if (press) press.byBrowser = Math.max(press.byBrowser || 0, entry.duration);
  }
}).observe({ type: "event", durationThreshold: 16 });
