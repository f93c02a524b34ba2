// One thing to predict: question, box and lock; then the line moves by itself, and the gap is told.

import { drawer, list, make, newId, say, together } from "./elements.js";
import { Line, stand, tellQuiet } from "./line.js";

// How long the line takes from before to after.
const MOVE_MS = 1500;
const TICK_MS = 30;

function render(view) {
  const { model } = view;
  let question = null, text = null, wanted = null;
  // The timer of the movement, and whether it has begun since the lock: it runs by itself once.
  let moving = 0, begun = false;

  const paper = make("div", { class: "corset-paper" });
  const refused = make("p", { class: "corset-refused", role: "status" });
  const draw = drawer(paper, refused);
  const asks = make("p", { class: "corset-guess-question" });
  const box = newId("guess"), how = newId("how"), wrong = newId("unread"), range = newId("range"), seen = newId("seen");
  const label = make("label", { for: box, class: "corset-label" });
  const hint = make("p", { id: how, class: "corset-hint" });
  const typed = make("input", {
    type: "text", id: box, class: "corset-box", autocomplete: "off", spellcheck: "false", maxlength: 40,
    "aria-describedby": `${how} ${wrong}`, "data-name": "guess",
    // Leaving the box locks nothing: what is typed may still be thought over.
    onkeydown: (event) => { if (event.key === "Enter" && !typed.readOnly) lock(); },
  });
  const unit = make("span", {});
  const unread = make("p", { id: wrong, class: "corset-wrong", role: "status" });
  const note = make("p", { class: "corset-hint", role: "status" });
  const locking = make("button", { type: "button", class: "corset-button corset-main", onclick: lock }, "Lock my guess");
  const locked = make("p", { class: "corset-guess-locked", role: "status" });
  const slider = make("input", {
    type: "range", id: range, min: 0, step: 1, "data-name": "moved",
    oninput: () => {
      // The hand takes over.
      stop();
      place(Number(slider.value));
      show(Number(slider.value));
    },
  });
  const way = make("div", { class: "corset-control" },
    make("label", { for: range, class: "corset-label" }, "From before to after"), slider,
    make("div", { class: "corset-guess-ends", "aria-hidden": "true" }, make("span", {}, "before"), make("span", {}, "after")));
  const told = make("ul", { class: "corset-said corset-guess-told" });
  const anew = make("p", { id: seen, class: "corset-hint" });
  const again = make("div", { class: "corset-guess-again" },
    make("button", { type: "button", class: "corset-button", "aria-describedby": seen,
      onclick: () => { line.ask({ kind: "again" }); typed.focus(); } }, "Guess again"),
    anew);
  const silence = make("p", { class: "corset-silence", role: "alert" });
  const asking = make("div", {},
    label, hint, make("div", { class: "corset-row corset-guess-row" }, typed, unit), unread, note, locking);
  const root = make("section", { class: "corset corset-guess", "aria-label": "A guess" },
    make("div", { class: "corset-guess-frame" },
      make("div", { class: "corset-sheet" }, paper, refused),
      make("div", { class: "corset-guess-panel" },
        silence, asks, asking, locked, way, make("div", { role: "status" }, told), again)));

  const line = new Line(model, silence, { holds: ["lock"] });
  tellQuiet(root, line);

  function lock() {
    line.ask({ kind: "lock", text: typed.value });
  }
  // One question under way; of the places asked meanwhile only the last is wanted.
  function show(at) {
    if (!line.quiet) wanted = at;
    else line.ask({ kind: "show", at });
  }
  function stop() {
    clearTimeout(moving);
    moving = 0;
  }
  function move() {
    const { at, steps } = model.get("shown");
    begun = true;
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) return show(steps);
    const began = performance.now();
    let last = at;
    const tick = () => {
      // By the clock: a slow kernel shows fewer places, not a longer movement.
      const due = Math.min(steps, at + Math.ceil(((performance.now() - began) / MOVE_MS) * steps));
      if (due > last && line.quiet) show((last = due));
      moving = last < steps ? setTimeout(tick, TICK_MS) : 0;
    };
    tick();
  }
  function place(at) {
    const { steps } = model.get("shown");
    slider.max = steps;
    slider.value = at;
    slider.setAttribute("aria-valuetext", at === 0 ? "before" : at === steps ? "after" : `${at} of ${steps}`);
    slider.style.setProperty("--filled", `${(100 * at) / steps}%`);
  }

  function paint() {
    const shown = model.get("shown");
    line.answered(shown);
    draw(shown, root);
    say(asks, together(shown.question));
    say(label, shown.label);
    say(hint, shown.how);
    say(unit, shown.unit);
    // What is being typed stays, until the question or the kernel's own text is another.
    if (shown.question !== question || shown.text !== text) typed.value = shown.text;
    question = shown.question;
    text = shown.text;
    say(unread, shown.unread);
    typed.setAttribute("aria-invalid", shown.unread ? "true" : "false");
    say(note, shown.note);
    asking.hidden = !shown.question;
    // The key that locked must not be lost with its button.
    const onButton = document.activeElement === locking;
    typed.readOnly = shown.locked;
    hint.hidden = locking.hidden = shown.locked;
    if (onButton && shown.locked) typed.focus();
    say(locked, shown.locked ? together(`Locked: you said ${shown.words}.`) : "");
    way.hidden = !shown.locked;
    list(told, shown.told);
    again.hidden = !shown.told.length;
    say(anew, shown.again);
    if (!shown.locked) {
      stop();
      begun = false;
      wanted = null;
    }
    if (wanted !== null && line.quiet) {
      const at = wanted;
      wanted = null;
      line.ask({ kind: "show", at });
    }
    // Where the hand has already moved on, its own newer place stands.
    if (line.quiet || moving) place(shown.at);
    if (shown.locked && !shown.told.length && !begun && line.quiet) move();
  }

  paint();
  return stand(view, root, line, { shown: paint }, [stop]);
}

export default { render };
