// The closer lay: what is laid and on what, a search with its progress, the plan, and what to buy.

import { drawer, list, make, newId, same, say } from "./elements.js";
import { Line, stand } from "./line.js";

function render(view) {
  const { model } = view, parts = model.get("parts"), radios = {};

  const paper = make("div", { class: "corset-paper" });
  const refused = make("p", { class: "corset-refused", role: "status" });
  const draw = drawer(paper, refused);
  const note = make("p", { class: "corset-answer", role: "status" });
  // What was written is told beside the button that wrote it.
  const wrote = make("p", { class: "corset-answer", role: "status" });
  let writing = false;
  const said = make("ul", { class: "corset-said" });
  const silence = make("p", { class: "corset-silence", role: "alert" });
  const standing = () => model.get("shown").choice;
  const bring = (before) => (same(before, standing()) ? [] : Object.entries(before).map(([name, value]) =>
    ({ kind: "choose", name, value })));
  const line = new Line(model, silence, { holds: ["choose"], standing, bring });
  function ask(message) {
    writing = message.kind === "sheets";
    line.ask(message);
  }

  function group({ name, label, options }) {
    const shared = newId(name);
    radios[name] = options.map(([value]) => make("input", { type: "radio", name: shared, value, "data-name": name,
      onchange: () => ask({ kind: "choose", name, value }) }));
    return make("fieldset", { class: "corset-control" },
      make("legend", { class: "corset-label" }, label),
      make("div", { class: "corset-row corset-wraps" },
        ...options.map(([, words], at) => make("label", { class: "corset-radio" }, radios[name][at], words))));
  }

  const long = newId("seconds");
  const seconds = make("select", { id: long, "data-name": "seconds" },
    ...parts.seconds.map((one) => make("option", { value: one }, `${one} seconds`)));
  const search = make("button", { type: "button", class: "corset-button corset-main",
    onclick: () => ask({ kind: "search", seconds: Number(seconds.value) }) }, "Look for a closer lay");
  const bar = make("progress", { max: 1, value: 0, "aria-label": "How far the search is" });
  const best = make("p", { class: "corset-hint" });
  const searching = make("div", { class: "corset-searching" }, bar, best);

  const kind = newId("paper");
  const sheets = make("div", { class: "corset-row corset-wraps" },
    ...parts.papers.map(([value, words], at) => make("label", { class: "corset-radio" },
      make("input", { type: "radio", name: kind, value, checked: at === 0, "data-name": "paper" }), words)),
    make("button", { type: "button", class: "corset-button",
      onclick: () => {
        say(wrote, "…");
        ask({ kind: "sheets", paper: root.querySelector("[data-name=paper]:checked").value });
      } }, "Write the plans as sheets"));

  const body = make("tbody");
  const heads = ["cloth", "wide", "laid", "takes up", "to buy", "used", "which lay"];
  const table = make("table", {},
    make("caption", {}, "All cloths of this corset"),
    make("thead", {}, make("tr", {}, ...heads.map((one) => make("th", { scope: "col" }, one)))), body);

  const root = make("section", { class: "corset corset-lay", "aria-label": "Cutting plan" },
    make("div", { class: "corset-guess-frame" },
      make("div", { class: "corset-sheet" }, paper, refused),
      make("div", { class: "corset-guess-panel" },
        silence, ...parts.choices.map(group),
        make("div", { class: "corset-row corset-wraps" }, make("label", { for: long }, "Search for"), seconds, search),
        searching, note)),
    said, make("div", { class: "corset-board" }, table), sheets, wrote);

  function rows(told) {
    const key = JSON.stringify(told);
    if (body.dataset.key === key) return;
    body.dataset.key = key;
    body.replaceChildren(...told.map(([first, ...rest]) =>
      make("tr", {}, make("th", { scope: "row" }, first), ...rest.map((one) => make("td", {}, one)))));
  }

  function paint() {
    const shown = model.get("shown");
    line.answered(shown);
    draw(shown, root);
    list(said, shown.said || []);
    rows(shown.rows || []);
    say(note, writing ? "" : shown.note || "");
    say(wrote, writing ? shown.note || "" : "");
    for (const [name, value] of Object.entries(shown.choice || {})) {
      for (const one of radios[name]) one.checked = one.value === value;
    }
    search.disabled = Boolean(shown.busy);
    searching.hidden = !shown.busy;
    root.dataset.quiet = shown.busy ? "no" : "yes";
  }
  function go() {
    const { share, words } = model.get("progress");
    bar.value = share || 0;
    say(best, words || "");
  }

  paint();
  go();
  return stand(view, root, line, { shown: paint, progress: go });
}

export default { render };
