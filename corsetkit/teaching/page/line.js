// The line of a widget to the kernel.

import { make, newId, say } from "./elements.js";

// Milliseconds: without any sign of life, the course is said not to answer; of work that goes on, the page tells after a
// while, and after long what can be done; a progress that is over at once is not told.
const NO_SIGN_MS = 8000, AT_WORK_MS = 4000, LONG_MS = 60000, AT_ONCE_MS = 500, LOOK_MS = 250;

const ENDED = ["dead", "terminating"];

const SILENCE = "The course does not answer. Press “Run this lesson” above the page; what you set is kept.";
const STARTS_ANEW = "The course is starting again. What you set is kept, and the page goes on by itself.";
const APART = "The page has no connection to the course and is looking for it.";
const AT_WORK = "The course is still at work on this.";
const LONG_AT_WORK =
  "The course has been at work on this for long. If you would rather not wait, choose Kernel and then Restart Kernel in " +
  "the menu above; what you set is kept.";

// Send to the kernel; false where the other end is gone, as after a restart.
function sent(model, message, buffers) {
  try {
    model.send(message, undefined, buffers);
    return true;
  } catch {
    return false;
  }
}

// What the last line of each cell has left to its next one. Every widget has this text to itself, so it lies on the page.
const LEFT = (window[Symbol.for("corsetkit: left to the next line")] ||= new WeakMap());

// The line to the kernel: one question under way at most. What is asked meanwhile waits; movements that
// wait are merged, newest value first, so the last value asked is always the last one answered.
//
// A kernel may start anew, and takes the widget and its line along; the page then shows another widget in the same cell.
// `holds` are the kinds of message that say what is wished for, so that asking twice is the same as asking once: what is
// wished and neither answered nor kept yet is asked again by the next line. `standing()` tells what the page shows and
// the kernel alone remembers, and `bring(told)` gives the messages that bring a new widget there.
export class Line {
  constructor(model, sign, { holds = [], standing = () => null, bring = () => [] } = {}) {
    Object.assign(this, { model, sign, holds, bring });
    this.asker = newId("page");
    this.number = 0;
    this.under = 0;
    this.waiting = [];
    this.left = { wishes: [], standing };
    this.onWork = () => {};
    this.ends = [];
    this.work = make("p", { class: "corset-work-words", role: "status" });
    this.bar = make("progress", { max: 1, "aria-hidden": "true" });
    this.progress = make("div", { class: "corset-work", hidden: true }, this.work, this.bar);
    this.heard();
    this.watchKernel();
    follow(model, this.ends, "progress", () => { this.heard(); this.told = this.under ? model.get("progress") : null; });
    this.placed();
  }

  // Asking and answers

  ask(message, buffers) {
    if (this.closed) return;
    this.wish(message);
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
    this.told = null;
    this.heard();
    // A value is kept a little after it was set; until then it is still to be asked for.
    if (!this.waiting.length && !this.unkept) this.left.wishes.length = 0;
    this.next();
    this.tell();
    return true;
  }
  // Nothing asked that is not answered yet.
  get quiet() {
    return !this.under && !this.waiting.length;
  }
  next() {
    this.onWork(!this.quiet);
    if (this.lost || this.under || !this.waiting.length) return;
    const { buffers, ...message } = this.waiting.shift();
    delete message.again;
    this.under = ++this.number;
    this.unkept = message.kind === "set" && message.keep === false;
    this.asked = Date.now();
    this.heard();
    if (!sent(this.model, { ...message, asker: this.asker, number: this.under }, buffers)) this.lose();
    this.tell();
  }
  close() {
    this.closed = true;
    clearInterval(this.looking);
    this.ends.forEach((end) => end());
  }

  // What one line leaves to the next

  wish(message) {
    const { wishes } = this.left, last = wishes[wishes.length - 1];
    if (message.kind === "keep") return;
    // Whatever does something, as Undo does, leaves nothing of what was wished before it.
    if (!this.holds.includes(message.kind)) wishes.length = 0;
    else if (message.kind === "set" && last && last.kind === "set") {
      Object.assign(last.changes, message.changes);
      last.again = last.again && message.again;
    } else wishes.push(message.changes ? { ...message, changes: { ...message.changes } } : message);
  }
  // Take over from the cell's line before this one, as soon as the widget stands in its cell.
  placed() {
    if (this.closed) return;
    const cell = this.sign.closest(".jp-Cell");
    if (!cell) {
      setTimeout(() => this.placed(), LOOK_MS / 5);
      return;
    }
    const before = LEFT.get(cell);
    LEFT.set(cell, this.left);
    // Over the drawing, where it is looked for; beside everything where there is none.
    this.sign.after(this.progress);
    this.sign.closest(".corset").querySelector(".corset-sheet")?.append(this.sign);
    if (!before) return;
    const told = before.standing();
    if (told) for (const message of this.bring(told)) this.ask({ ...message, again: true });
    // Asked again once: a value that the kernel does not survive would end it over and over.
    for (const { again, ...message } of before.wishes) {
      if (!again) this.ask({ ...message, again: true, keep: true });
    }
  }

  // Whether anybody is there

  heard() {
    this.lastSign = Date.now();
  }
  watchKernel() {
    // Only JupyterLab tells of it; elsewhere the page goes by what is answered.
    const kernel = (this.kernel = this.model.widget_manager?.kernel);
    if (!kernel) return;
    const changed = () => {
      if (kernel.isDisposed || ["restarting", "autorestarting", ...ENDED].includes(kernel.status)) this.lose();
      this.heard();
      this.tell();
    };
    for (const signal of [kernel.statusChanged, kernel.connectionStatusChanged, kernel.disposed]) {
      signal?.connect(changed);
      this.ends.push(() => signal?.disconnect(changed));
    }
    if (this.hasEnded) this.lose();
  }
  get hasEnded() {
    return Boolean(this.kernel && (this.kernel.isDisposed || ENDED.includes(this.kernel.status)));
  }
  // For good: what is wished from now on waits for the next line.
  lose() {
    this.lost = true;
    this.under = 0;
    this.onWork(!this.quiet);
    this.tell();
  }
  // Called while something is waited for.
  isSilent() {
    if (this.hasEnded) return true;
    // A kernel at work is alive, whoever it works for.
    if (["busy", "starting", "restarting", "autorestarting"].includes(this.kernel?.status)) this.heard();
    return Date.now() - this.lastSign > NO_SIGN_MS;
  }
  // What the page says of it.
  tell() {
    if (this.closed) return;
    const apart = Boolean(this.kernel && this.kernel.connectionStatus !== "connected"), away = this.lost || apart;
    const silent = Boolean((this.under || away) && this.isSilent());
    this.still(silent || away, silent ? SILENCE : this.lost ? STARTS_ANEW : apart ? APART : "");
    const long = this.under && !away && !silent ? Date.now() - this.asked : 0;
    const words = this.told?.words || (long > LONG_MS ? LONG_AT_WORK : long > AT_WORK_MS ? AT_WORK : "");
    this.progress.hidden = !words || long < AT_ONCE_MS;
    say(this.work, this.progress.hidden ? "" : words);
    this.bar.hidden = typeof this.told?.share !== "number";
    this.bar.value = this.told?.share || 0;
    // Time goes on while something is waited for.
    if (this.under || away) this.looking ||= setInterval(() => this.tell(), LOOK_MS);
    else this.looking = clearInterval(this.looking);
  }
  // Nothing moves over a drawing that cannot follow; where nothing can be moved, nothing is said either.
  still(on, words) {
    const root = this.sign.closest(".corset");
    if (!root?.querySelector("input, select, button")) return;
    // Ten widgets need not say aloud what one of them was asked.
    const mine = !this.quiet || this.left.wishes.length || root.contains(document.activeElement);
    if (!this.sign.textContent) this.sign.setAttribute("role", mine ? "alert" : "none");
    this.sign.classList.toggle("corset-calm", words !== SILENCE);
    say(this.sign, words);
    if (root.classList.contains("corset-away") === on) return;
    root.classList.toggle("corset-away", on);
    for (let one = this.sign; one !== root; one = one.parentElement) {
      for (const other of one.parentElement.children) if (other !== one) other.inert = on;
    }
  }
}

// Listen to a trait until the view goes.
function follow(model, ends, trait, heard) {
  model.on(`change:${trait}`, heard);
  ends.push(() => model.off(`change:${trait}`, heard));
}

// For whoever watches from outside, as the browser test does: whether all that was asked is answered.
export function tellQuiet(root, line) {
  root.dataset.quiet = "yes";
  line.onWork = (working) => { root.dataset.quiet = working ? "no" : "yes"; };
}

// Puts `root` on the page and calls, at each change of a trait, what `heard` has for it. Gives what the page calls when the
// view goes; then its line closes and whatever stands in `ends` is called.
export function stand({ model, el }, root, line, heard, ends = []) {
  for (const [trait, call] of Object.entries(heard)) follow(model, ends, trait, call);
  el.append(root);
  return () => {
    line.close();
    ends.forEach((end) => end());
  };
}
