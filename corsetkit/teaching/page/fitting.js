// The fitting: a fault seen on the toile, how much of it, what moves; and the corrections that are kept.

import { drawer, list, make, newId, same, say, together } from "./elements.js";
import { Line, stand, tellQuiet } from "./line.js";
import { control, whereOf } from "./controls.js";

function render(view) {
  const { model } = view;
  let built = "", listed = "", kept = "", slider = null;

  const paper = make("div", { class: "corset-paper" });
  const refused = make("p", { class: "corset-refused", role: "status" });
  const draw = drawer(paper, refused);
  const note = make("p", { class: "corset-answer", role: "status" });
  const trouble = make("p", { class: "corset-wrong", role: "status" });
  const cause = make("p", {}), caution = make("p", {});
  const said = make("ul", { class: "corset-said" });
  const silence = make("p", { class: "corset-silence", role: "alert" });
  // What is looked at is kept nowhere before it is a correction.
  const standing = () => {
    const { fault, control, state } = model.get("shown");
    return { fault, pinch: whereOf(control, state) };
  };
  const bring = (before) => (same(before, standing()) ? [] : [{ kind: "fault", which: before.fault },
    { kind: "set", changes: { pinch: { at: before.pinch.at } }, keep: true }]);
  const line = new Line(model, silence, { holds: ["fault", "set"], standing, bring });

  const which = newId("fault");
  const faults = make("select", { id: which, "data-name": "fault",
    onchange: () => line.ask({ kind: "fault", which: Number(faults.value) }) });
  const place = make("div", {});
  const keeping = make("button", { type: "button", class: "corset-button corset-main",
    onclick: () => line.ask({ kind: "add" }) }, "Keep this correction");
  const none = make("p", { class: "corset-hint" }, "None yet: the pattern is as it was drafted.");
  const ones = make("ul", { class: "corset-kept" });
  const totals = make("p", {});

  const root = make("section", { class: "corset corset-fault", "aria-label": "Fitting" },
    make("div", { class: "corset-guess-frame" },
      make("div", { class: "corset-sheet" }, paper, refused),
      make("div", { class: "corset-guess-panel" },
        silence, make("label", { for: which, class: "corset-label" }, "What do you see on the toile?"), faults, cause,
        place, keeping, note)),
    make("p", {}, make("b", {}, "Take care: "), caution), said,
    make("h3", {}, "Corrections that are kept"), trouble, none, ones, totals);
  caution.style.display = "inline";
  tellQuiet(root, line);

  function choose(shown) {
    const key = JSON.stringify(shown.faults);
    if (key !== listed) {
      listed = key;
      faults.replaceChildren(...shown.faults.map(([group, inside]) =>
        make("optgroup", { label: group }, ...inside.map(([number, words]) => make("option", { value: number }, words)))));
    }
    if (line.quiet) faults.value = shown.fault;
  }
  function slide(shown) {
    const key = JSON.stringify([shown.fault, shown.control]);
    if (key !== built) {
      built = key;
      slider = control(shown.control, (answer, done) =>
        line.ask({ kind: "set", changes: { pinch: answer }, keep: done }));
      place.replaceChildren(slider.element);
      slider.show(shown.state);
    } else if (line.quiet) slider.show(shown.state);
  }
  function keptOnes(shown) {
    const key = JSON.stringify(shown.kept);
    if (key === kept) return;
    kept = key;
    const lost = ones.contains(document.activeElement);
    ones.replaceChildren(...shown.kept.map((words, at) => make("li", {}, make("span", {}, words),
      make("button", { type: "button", class: "corset-button", "aria-label": `Take back: ${words}`,
        onclick: () => line.ask({ kind: "back", place: at }) }, "Take back"))));
    // The button that was pressed is gone with its line: the keyboard goes on at the next one.
    if (lost) (ones.querySelector("button") || keeping).focus();
  }

  function paint() {
    const shown = model.get("shown");
    line.answered(shown);
    choose(shown);
    slide(shown);
    keptOnes(shown);
    draw(shown, root);
    list(said, shown.refused ? [] : shown.said || []);
    say(cause, shown.cause);
    say(caution, shown.caution);
    say(note, shown.note || "");
    say(trouble, shown.trouble || "");
    say(totals, together((shown.totals || []).join(" ")));
    none.hidden = shown.kept.length > 0;
    keeping.disabled = Boolean(shown.refused);
  }

  paint();
  return stand(view, root, line, { shown: paint });
}

export default { render };
