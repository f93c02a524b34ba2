// The drafting table: drawing, panel, sentences.

import { drawer, list, make, same } from "./elements.js";
import { Line, stand, tellQuiet } from "./line.js";
import { control, whereOf } from "./controls.js";
import { watchEdges } from "./edges.js";

// A movement has come to rest when nothing was asked for so long; then it is kept and can be undone.
const REST_MS = 350;

function render(view) {
  const { model } = view;
  let controls = {}, resting;

  const paper = make("div", { class: "corset-paper" });
  const edges = watchEdges(paper);
  const zoom = (words, times) => make("button", { type: "button", class: "corset-step",
    "aria-label": words, onclick: () => scale(zoomed * times) }, times > 1 ? "+" : "−");
  const nearer = zoom("Drawing larger", 1.5), farther = zoom("Drawing smaller", 1 / 1.5);
  let zoomed = 1;
  function scale(to) {
    zoomed = Math.min(Math.max(to, 1), 1.5 ** 4);
    farther.disabled = zoomed <= 1.01;
    nearer.disabled = zoomed >= 1.5 ** 4 - 0.01;
    paper.classList.toggle("corset-zoomed", zoomed > 1.01);
    paper.style.setProperty("--zoom", zoomed);
    // Only what scrolls is a stop for the keyboard.
    if (zoomed > 1.01) paper.setAttribute("tabindex", 0);
    else paper.removeAttribute("tabindex");
  }
  const refused = make("p", { class: "corset-refused", role: "status" });
  const draw = drawer(paper, refused, () => edges.refresh());
  const said = make("ul", { class: "corset-said" });
  const warned = make("ul", { class: "corset-warned", "aria-live": "polite" });
  const silence = make("p", { class: "corset-silence", role: "alert" });
  const panel = make("div", { class: "corset-panel" });
  const undo = make("button", { type: "button", class: "corset-button", onclick: () => ask("undo") }, "Undo");
  const afresh = make("button", { type: "button", class: "corset-button", onclick: () => ask("afresh") },
    "Start afresh");
  const root = make("section", { class: "corset corset-table", "aria-label": "Drafting table" },
    make("div", { class: "corset-frame" },
      make("div", { class: "corset-seen" },
        make("div", { class: "corset-sheet" }, paper, edges.bar, refused),
        make("div", { class: "corset-under" },
          make("div", {}, silence, warned, said, edges.table),
          make("div", { class: "corset-row", role: "group", "aria-label": "Size of the drawing" },
            make("span", { class: "corset-hint" }, "Zoom"), farther, nearer))),
      panel),
  );

  // The desk keeps its own values; of the table's own nobody else knows.
  const standing = () => {
    const { panels, folded, own } = model.get("parts"), { state } = model.get("shown");
    const controls = [...panels, ...folded].flatMap((one) => one.controls).filter((told) => own.includes(told.name));
    return Object.fromEntries(controls.map((told) => [told.name, whereOf(told, state[told.name])]));
  };
  // As when the wearer changes: a control that stops at other places now starts anew.
  const bring = (before) => {
    const now = standing();
    const moved = Object.entries(before).filter(([name, one]) => same(now[name]?.stops, one.stops) && now[name].at !== one.at);
    return moved.length ? [{ kind: "set", changes: Object.fromEntries(moved.map(([name, { at }]) => [name, { at }])), keep: true }] : [];
  };
  const line = new Line(model, silence, { holds: ["set"], standing, bring });
  tellQuiet(root, line);

  function ask(kind) {
    clearTimeout(resting);
    line.ask({ kind });
  }
  function move(name, answer, kept) {
    clearTimeout(resting);
    line.ask({ kind: "set", changes: { [name]: answer }, keep: kept });
    if (!kept) resting = setTimeout(() => line.ask({ kind: "keep" }), REST_MS);
  }

  function build() {
    const parts = model.get("parts");
    controls = {};
    const one = (told) => {
      controls[told.name] = control(told, (answer, kept) => move(told.name, answer, kept));
      return controls[told.name].element;
    };
    const live = parts.panels.map((each) =>
      make("div", { class: "corset-question" }, make("h3", {}, each.question), ...each.controls.map(one)));
    const folded = parts.folded.map((group) =>
      make("details", { class: "corset-group" }, make("summary", {}, group.title), ...group.controls.map(one)));
    panel.replaceChildren(
      make("div", { class: "corset-live" }, ...live),
      make("div", { class: "corset-row corset-back" }, undo, afresh),
      folded.length
        ? make("details", { class: "corset-folded" }, make("summary", {}, "All other values"), ...folded)
        : "",
    );
  }

  function paint(rebuilt) {
    const shown = model.get("shown");
    line.answered(shown);
    const trouble = draw(shown, root);
    list(said, trouble ? [] : shown.said || []);
    list(warned, trouble ? [] : shown.warnings || [], "Note:");
    undo.disabled = !shown.undo;
    afresh.disabled = Boolean(shown.fresh);
    // Where the hand has already moved on, its own newer value stands.
    if (!line.quiet && !rebuilt) return;
    for (const [name, state] of Object.entries(shown.state || {})) controls[name]?.show(state);
  }

  scale(1);
  build();
  paint(true);
  const heard = { parts: () => { build(); paint(true); }, shown: () => paint(false) };
  return stand(view, root, line, heard, [() => clearTimeout(resting), edges.close]);
}

export default { render };
