// A board: something to read, and at most one choice and one button.

import { make, newId, say, together } from "./elements.js";
import { Line, stand } from "./line.js";

const FIGURE = /^[−+-]?[\d /.]+ ?(in|cm|mm|degrees|%)?$/;

function render(view) {
  const { model } = view, parts = model.get("parts");
  const silence = make("p", { class: "corset-silence", role: "alert" });
  const line = new Line(model, silence);
  const board = make("div", { class: "corset-board" });
  const refused = make("p", { class: "corset-refused", role: "status" });
  const answer = make("p", { class: "corset-answer", role: "status" });
  const choice = newId("choice");
  const purposes = [...new Set(parts.choices.map(([, , purpose]) => purpose))];
  const radios = (purpose) => parts.choices.filter((one) => one[2] === purpose).map(([value, words]) =>
    make("label", { class: "corset-radio" },
      make("input", { type: "radio", name: choice, value, checked: value === parts.choices[0][0], "data-name": "choice" }), words));
  const grouped = purposes.map((purpose) => (purpose
    ? make("div", { class: "corset-purpose", role: "group", "aria-label": purpose },
        make("span", { "aria-hidden": "true" }, purpose), make("div", { class: "corset-row" }, ...radios(purpose)))
    : make("div", { class: "corset-row" }, ...radios(purpose))));
  const doing = parts.button
    ? make("div", { class: purposes.length > 1 ? "corset-purposes" : "corset-row" },
        ...(parts.choices.length > 1 ? grouped : []),
        make("button", { type: "button", class: "corset-button corset-main",
          onclick: () => {
            say(answer, "…");
            line.ask({ kind: "do", choice: root.querySelector("input:checked")?.value ?? parts.choices[0][0] });
          } }, parts.button))
    : "";
  const root = make("section", { class: "corset", "aria-label": parts.title }, board, doing, refused, answer, silence);

  function paint() {
    const shown = model.get("shown");
    line.answered(shown);
    if (board.dataset.html !== shown.html) {
      board.dataset.html = shown.html;
      board.innerHTML = shown.html;
      // A figure and its unit stay on one line, however narrow the table.
      for (const cell of board.querySelectorAll("td")) cell.classList.toggle("corset-figure", FIGURE.test(cell.textContent));
      const texts = document.createTreeWalker(board, NodeFilter.SHOW_TEXT);
      while (texts.nextNode()) texts.currentNode.data = together(texts.currentNode.data);
    }
    say(refused, shown.refused || "");
    say(answer, shown.answer || "");
  }

  paint();
  return stand(view, root, line, { shown: paint });
}

export default { render };
