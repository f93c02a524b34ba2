// The edges of a drawing as a table.

import { make, say } from "./elements.js";
import { unsewn } from "./edge_reading.js";

// The same for those who do not see the drawing: filled when it is opened and, while it is open, when a movement rests.
// `enter(key)` and `point(key)` are called with the edge whose row is focused and pointed at.
export function edgeTable(read, enter, point) {
  const body = make("tbody");
  const heads = ["Edge", "Length", "Sewn to", "Its length"].map((word) => make("th", { scope: "col" }, word));
  const element = make("details", { class: "corset-edges", ontoggle: () => self.fill() },
    make("summary", {}, "Edges in a table"),
    make("div", { class: "corset-board corset-edge-rows" },
      make("table", {}, make("caption", {}, "Up and down arrow keys go from row to row."), make("thead", {}, make("tr", {}, ...heads)), body)));
  let shape = "", cells = [];

  // One row for each partner; the edge's own cells reach over all of its rows.
  const lines = () => read().flatMap((one) => (one.partners.length ? one.partners : [null]).map((other, i) => ({
    key: one.key, first: i === 0, rows: Math.max(1, one.partners.length),
    texts: [...(i ? [] : [one.name, one.length]), other ? other.name : unsewn(one) || "–", other ? other.length : ""],
  })));
  function row(told) {
    const own = told.first ? [make("th", { scope: "rowgroup", rowspan: told.rows }), make("td", { rowspan: told.rows })] : [];
    const line = make("tr", { "data-key": told.key, tabindex: told.first ? -1 : undefined,
      "data-lm-suppress-shortcuts": "true" }, ...own, make("td", {}), make("td", {}));
    cells.push([...line.children]);
    return line;
  }
  const starts = () => [...body.querySelectorAll("tr[tabindex]")];
  const rowOf = (event) => event.target.closest?.("tr[data-key]");
  // One stop for the keyboard: the row last gone to.
  function stop(line) {
    for (const each of starts()) each.setAttribute("tabindex", each === line ? 0 : -1);
  }
  body.addEventListener("focusin", (event) => {
    stop(rowOf(event));
    enter(rowOf(event).dataset.key);
  });
  body.addEventListener("pointerover", (event) => point(rowOf(event)?.dataset.key));
  body.addEventListener("pointerleave", () => point(null));
  body.addEventListener("keydown", (event) => {
    const all = starts(), at = all.indexOf(rowOf(event));
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 }[event.key];
    if (to === undefined) return;
    all[Math.min(Math.max(to, 0), all.length - 1)].focus();
    event.preventDefault();
    event.stopPropagation();
  });

  const self = {
    element,
    get open() { return element.open; },
    fill() {
      if (!element.open) return;
      const all = lines(), now = JSON.stringify(all.map((one) => [one.key, one.texts.length, one.texts.at(-2)]));
      if (now !== shape) {
        const held = body.contains(document.activeElement) && rowOf({ target: document.activeElement }).dataset.key;
        shape = now;
        cells = [];
        body.replaceChildren(...all.map(row));
        const line = starts().find((one) => one.dataset.key === held) || starts()[0];
        if (line) stop(line);
        if (line && held) line.focus();
      }
      all.forEach((one, i) => one.texts.forEach((text, k) => say(cells[i][k], text)));
    },
    mark(key) {
      if (!element.open) return;
      for (const line of body.children) line.setAttribute("aria-current", line.dataset.key === key);
    },
  };
  return self;
}
