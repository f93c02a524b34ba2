// What every widget of the course shares: making elements, and what stands in them.

// JupyterLab takes keys for itself unless the very element in focus carries this attribute.
const KEYS_STAY_HERE = ["INPUT", "SELECT", "BUTTON", "SUMMARY", "TEXTAREA"];

const MARK = "data-lm-suppress-shortcuts";

function keysStayHere(element) {
  element.setAttribute(MARK, "true");
  // But saving is Lab's, wherever one is: else the browser would offer to save the page.
  element.addEventListener("keydown", (event) => {
    if (event.key.toLowerCase() !== "s" || !(event.ctrlKey || event.metaKey)) return;
    element.removeAttribute(MARK);
    setTimeout(() => element.setAttribute(MARK, "true"));
  });
}

export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : value);
  }
  if (KEYS_STAY_HERE.includes(element.tagName)) keysStayHere(element);
  element.append(...children.filter((child) => child !== null && child !== undefined));
  return element;
}

let made = 0;
export const newId = (word) => `corset-${word}-${Math.random().toString(36).slice(2, 8)}-${++made}`;

// What is typed counts when the field is left or Enter is pressed; `done` is called for both.
export const whenTyped = (done) => ({
  onchange: done,
  onblur: done,
  onkeydown: (event) => { if (event.key === "Enter") done(); },
});

export const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

// Change text only where it differs, so that a screen reader does not hear it again.
export function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

// Shows a state's drawing, or over the last good one, greyed, why there is none, and tells which; `drawn` is called
// after each new drawing.
export function drawer(paper, refused, drawn = () => {}) {
  let painted = null;
  return (shown, root) => {
    if (shown.svg && shown.svg !== painted) {
      paper.innerHTML = shown.svg;
      painted = shown.svg;
      drawn();
    }
    say(refused, shown.refused ? `Not drawn: ${shown.refused}` : "");
    root.classList.toggle("corset-not-drawn", Boolean(shown.refused));
    return Boolean(shown.refused);
  };
}

// A number, its fraction and its unit stay on one line: "5" and "5/8 in" on two would be read as two numbers.
export const together = (text) => text.replace(/(\d) (?=\d+\/|in\b|cm\b|degrees?\b|%)/g, "$1\u00a0");

export function list(element, sentences, mark) {
  const key = JSON.stringify(sentences);
  if (element.dataset.key === key) return;
  element.dataset.key = key;
  element.replaceChildren(
    ...sentences.map((one) => make("li", {}, mark ? make("b", {}, mark + " ") : null, together(one))),
  );
}
