// The floor of the browser's benchmark: a slider that only changes a label.

import { make } from "../../corsetkit/teaching/page/elements.js";
import { Line, stand } from "../../corsetkit/teaching/page/line.js";

function render(view) {
  const { model } = view;
  const label = make("div", { class: "floor-label" }), sign = make("p");
  const slider = make("input", { type: "range", class: "floor", min: 0, max: 100, value: 50,
    oninput: () => line.ask({ kind: "set", changes: { at: slider.value } }) });
  const root = make("section", { class: "corset" }, slider, label, sign);
  const line = new Line(model, sign);

  function paint() {
    const shown = model.get("shown");
    line.answered(shown);
    label.textContent = shown.label;
  }

  return stand(view, root, line, { shown: paint });
}

export default { render };
