// What doesn't fit on the page as it is shown. Returns sentences; none where all is well.
const problems = [];
const root = document.documentElement;
const width = root.clientWidth;
const SLACK = 1;

function describe(element) {
  const words = (element.getAttribute("aria-label") || element.textContent || "").replace(/\s+/g, " ").trim();
  const classes = element.getAttribute("class");
  return `<${element.localName}${classes ? ` class="${classes}"` : ""}> “${words.slice(0, 40)}”`;
}

// Not there for eyes: hidden, or kept for screen readers only.
function isShown(element) {
  if (element.closest("[hidden], [inert], .unseen")) return false;
  if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) return false;
  const box = element.getBoundingClientRect();
  return box.width > 0 && box.height > 0;
}

// Something that lies over a page that scrolls below it.
function isAfloat(element) {
  for (let it = element; it; it = it.parentElement) {
    const position = getComputedStyle(it).position;
    if (position === "fixed" || position === "sticky") return true;
  }
  return false;
}

if (root.scrollWidth > root.clientWidth) {
  problems.push(`the page is ${root.scrollWidth} px wide where there are ${root.clientWidth}`);
}

// Every run of text with the boxes that it is painted in.
const texts = [];
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
while (walker.nextNode()) {
  const node = walker.currentNode;
  const element = node.parentElement;
  if (!node.data.trim() || !isShown(element)) continue;
  const range = document.createRange();
  range.selectNodeContents(node);
  const boxes = Array.from(range.getClientRects()).filter((box) => box.width > 1 && box.height > 1);
  texts.push({ element, boxes, afloat: isAfloat(element) });
}

for (const { element, boxes } of texts) {
  if (boxes.some((box) => box.left < -SLACK || box.right > width + SLACK)) {
    problems.push(`${describe(element)} runs off the side`);
  }
  // The nearest ancestors that cut off what sticks out.
  for (let it = element; it && it !== document.body; it = it.parentElement) {
    const style = getComputedStyle(it);
    if (style.display === "inline") continue;
    const cutsX = style.overflowX !== "visible" && it.scrollWidth > it.clientWidth + SLACK;
    const cutsY = ["hidden", "clip"].includes(style.overflowY) && it.scrollHeight > it.clientHeight + SLACK;
    if (cutsX || cutsY) {
      problems.push(`${describe(element)} is cut off by ${describe(it)}`);
      break;
    }
  }
}

// Two texts in one place can't be read.
function overlap(one, other) {
  const x = Math.min(one.right, other.right) - Math.max(one.left, other.left);
  const y = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
  // The boxes of lines reach over the letters by some pixels, up and down.
  return x > 2 && y > Math.min(one.height, other.height) * 0.35;
}
texts.forEach((one, index) => {
  for (const other of texts.slice(index + 1)) {
    if (one.afloat !== other.afloat || one.element === other.element) continue;
    if (one.boxes.some((box) => other.boxes.some((there) => overlap(box, there)))) {
      problems.push(`${describe(one.element)} lies over ${describe(other.element)}`);
    }
  }
});

// What a thumb has to hit. A choice is hit through its label; a link inside a sentence is part of a line.
const TARGETS = "button, a[href], summary, select, textarea, input:not([type=hidden]), [role=button], [role=radio]";
for (const element of document.querySelectorAll(TARGETS)) {
  const painted = element.labels && element.labels.length && /radio|checkbox|file/.test(element.type) ? element.labels[0] : element;
  if (!isShown(painted) || (element.localName === "a" && element.closest("p"))) continue;
  const box = painted.getBoundingClientRect();
  if (Math.round(box.width) < 48 || Math.round(box.height) < 48) {
    problems.push(`${describe(painted)} is ${Math.round(box.width)} by ${Math.round(box.height)} px, too small for a thumb`);
  }
}

return Array.from(new Set(problems));
