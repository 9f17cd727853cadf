// Finds what a person could find: an element that is shown, by its role and its accessible name.
// Without a name to look for, returns the name of what has the focus.
// Arguments: a list of roles, the name or its beginning, and the element to look in, or nothing for the whole page.
// Returns [element or null, names of all candidates].
const [roles, wanted, within] = arguments;

const SELECTORS = {
  button: "button, summary, [role=button]",
  link: "a[href], [role=link]",
  field: "input:not([type]), input[type=text], input[type=search], textarea, [role=textbox]",
  file: "input[type=file]",
  choice: "input[type=radio], input[type=checkbox], [role=radio], [role=checkbox]",
  list: "select",
  heading: "h1, h2, h3, h4, h5, h6",
  region: "[role=status], [role=alert], [role=dialog], dialog, section, main, nav, fieldset, [role=group], svg[role=img]",
};

const plain = (text) => (text || "").replace(/[\s\u00a0]+/g, " ").trim();

// What a screen reader doesn't read is no part of a name.
function wordsOf(element) {
  const copy = element.cloneNode(true);
  copy.querySelectorAll("[aria-hidden=true]").forEach((hidden) => hidden.remove());
  return copy.textContent;
}

function nameOf(element) {
  const labelledBy = element.getAttribute("aria-labelledby");
  if (labelledBy) {
    const parts = labelledBy.split(/\s+/).map((id) => document.getElementById(id)).filter(Boolean);
    return plain(parts.map((part) => part.getAttribute("aria-label") || wordsOf(part)).join(" "));
  }
  const label = element.getAttribute("aria-label");
  if (label) return plain(label);
  if (element.labels && element.labels.length) return plain(Array.from(element.labels, wordsOf).join(" "));
  const legend = element.querySelector(":scope > legend");
  return plain(legend ? legend.textContent : wordsOf(element)) || plain(element.title);
}

// A radio button or file field is often painted by its label. What a closed fold holds has a size in some browsers.
function isShown(element) {
  const painted = [element, ...(element.labels || [])];
  return painted.some((part) => {
    const box = part.getBoundingClientRect();
    const style = getComputedStyle(part);
    const isOpen = !part.checkVisibility || part.checkVisibility();
    return isOpen && box.width > 0 && box.height > 0 && style.visibility !== "hidden" && !part.closest("[inert], [aria-hidden=true]");
  });
}

if (wanted === null) return nameOf(document.activeElement);

const selector = roles.map((role) => SELECTORS[role]).join(", ");
const candidates = Array.from((within || document).querySelectorAll(selector)).filter(isShown);
const named = candidates.map((element) => [element, nameOf(element)]);
const found = named.find(([, name]) => name === wanted) || named.find(([, name]) => name.startsWith(wanted));
return [found ? found[0] : null, named.map(([, name]) => name.slice(0, 60))];
