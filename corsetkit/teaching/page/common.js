// What every widget of the course shares: making elements, and the line to the kernel.

// JupyterLab takes keys for itself unless the very element in focus carries this attribute.
const KEYS_STAY_HERE = ["INPUT", "SELECT", "BUTTON", "SUMMARY", "TEXTAREA"];

function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : value);
  }
  if (KEYS_STAY_HERE.includes(element.tagName)) {
    element.setAttribute("data-lm-suppress-shortcuts", "true");
  }
  element.append(...children.filter((child) => child !== null && child !== undefined));
  return element;
}

let made = 0;
const newId = (word) => `corset-${word}-${Math.random().toString(36).slice(2, 8)}-${++made}`;

// What is typed counts when the field is left or Enter is pressed; `done` is called for both.
const whenTyped = (done) => ({
  onchange: done,
  onblur: done,
  onkeydown: (event) => { if (event.key === "Enter") done(); },
});

// Change text only where it differs, so that a screen reader does not hear it again.
function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

// Shows a state's drawing, or over the last good one, greyed, why there is none, and tells which; `drawn` is called
// after each new drawing.
function drawer(paper, refused, drawn = () => {}) {
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

function list(element, sentences, mark) {
  const key = JSON.stringify(sentences);
  if (element.dataset.key === key) return;
  element.dataset.key = key;
  element.replaceChildren(
    ...sentences.map((one) => make("li", {}, mark ? make("b", {}, mark + " ") : null, one)),
  );
}

const NO_ANSWER_MS = 8000;

// The line to the kernel: one question under way at most. What is asked meanwhile waits; movements that
// wait are merged, newest value first, so the last value asked is always the last one answered.
class Line {
  constructor(model, onSilence) {
    this.model = model;
    this.asker = newId("page");
    this.number = 0;
    this.under = 0;
    this.waiting = [];
    this.onSilence = onSilence;
    this.onWork = () => {};
  }
  ask(message, buffers) {
    const last = this.waiting[this.waiting.length - 1];
    if (message.kind === "keep" && last && last.kind === "set") last.keep = true;
    else if (message.kind === "set" && last && last.kind === "set") {
      Object.assign(last.changes, message.changes);
      last.keep = last.keep || message.keep;
    } else this.waiting.push({ ...message, buffers });
    this.next();
  }
  // Called with each new state; true where this page's own question is answered.
  answered(shown) {
    if (shown.asker !== this.asker || shown.number < this.under) return false;
    this.under = 0;
    clearTimeout(this.timer);
    this.onSilence(false);
    this.next();
    return true;
  }
  // Nothing asked that is not answered yet.
  get quiet() {
    return !this.under && !this.waiting.length;
  }
  next() {
    this.onWork(!this.quiet);
    if (this.under || !this.waiting.length) return;
    const { buffers, ...message } = this.waiting.shift();
    this.under = ++this.number;
    this.timer = setTimeout(() => this.onSilence(true), NO_ANSWER_MS);
    this.model.send({ ...message, asker: this.asker, number: this.under }, undefined, buffers);
  }
  close() {
    clearTimeout(this.timer);
  }
}

const SILENCE =
  "The course does not answer. It may still be busy; if this stays, press “Run this lesson” above the page. " +
  "What you set before is kept.";

// Listen to a trait until the view goes.
function follow(model, ends, trait, heard) {
  model.on(`change:${trait}`, heard);
  ends.push(() => model.off(`change:${trait}`, heard));
}
