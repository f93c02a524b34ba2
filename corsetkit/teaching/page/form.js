// The wearer's form: who, in which unit, her numbers, and what the checks say. The compact one, in the lessons that
// do not measure, asks only who and in which unit.

import { list, make, newId, say, whenTyped } from "./elements.js";
import { Line, stand } from "./line.js";
import { tellSight } from "./sight.js";

const TYPING_PAUSE_MS = 600;

function render(view) {
  const { model, el } = view, ends = [], compact = model.get("parts").compact;
  const silence = make("p", { class: "corset-silence", role: "alert" });
  const line = new Line(model, silence, { holds: ["set", "pick", "unit"] });
  const button = (words, kind, told = {}) =>
    make("button", { type: "button", class: "corset-button", onclick: () => line.ask({ kind, ...told }) }, words);

  // Who
  const whoId = newId("who");
  const who = make("select", { id: whoId, "data-name": "who", onchange: () => line.ask({ kind: "pick", who: who.value }) });
  const units = newId("unit");
  const unit = (value, words) => make("label", { class: "corset-radio" },
    make("input", { type: "radio", name: units, value, "data-name": "unit",
      onchange: () => line.ask({ kind: "unit", unit: value }) }), words);
  const inches = unit("in", "inches"), cm = unit("cm", "centimetres");
  const verdict = make("p", { class: "corset-verdict", role: "status" });
  const copy = button("Change some of these numbers", "copy");

  // Her numbers
  const fields = {};
  function field(name, label, meaning) {
    const id = newId("field"), hint = newId("hint"), wrongId = newId("wrong");
    const wrong = make("p", { id: wrongId, class: "corset-wrong", "aria-live": "polite" });
    let timer, sent;
    const send = () => {
      clearTimeout(timer);
      if (box.readOnly || box.value === sent) return;
      sent = box.value;
      line.ask({ kind: "set", changes: { [name]: box.value } });
    };
    const box = make("input", {
      type: "text", id, class: "corset-box", autocomplete: "off", spellcheck: "false", "data-name": name,
      "aria-describedby": `${hint} ${wrongId}`,
      ...whenTyped(send),
      oninput: () => { clearTimeout(timer); timer = setTimeout(send, TYPING_PAUSE_MS); },
    });
    ends.push(() => clearTimeout(timer));
    const show = (state, own) => {
      box.readOnly = !own;
      // Not under the hand that is typing.
      if (document.activeElement !== box || !own) { box.value = state.text; sent = state.text; }
      box.setAttribute("aria-invalid", state.wrong ? "true" : "false");
      say(wrong, state.wrong ? `✗ ${state.wrong}` : "");
    };
    fields[name] = show;
    return make("div", { class: "corset-field" },
      make("label", { for: id, class: "corset-label" }, label), box,
      make("p", { id: hint, class: "corset-hint" }, meaning), wrong);
  }
  const name = field("name", "Name", "how the drawing is to be titled");
  const groups = (compact ? [] : model.get("parts").groups).map((group) =>
    make("fieldset", { class: "corset-fields" }, make("legend", {}, group.title),
      make("div", { class: "corset-grid" },
        ...group.fields.map((one) => field(one.name, one.label, one.meaning)))));
  const howTo = make("p", { class: "corset-hint" }, model.get("parts").how);

  // A file
  const pathId = newId("path"), fileId = newId("file");
  const readPath = () => line.ask({ kind: "path", path: path.value });
  const path = make("input", { type: "text", id: pathId, class: "corset-path", "data-name": "path", spellcheck: "false",
    onkeydown: (event) => { if (event.key === "Enter") readPath(); } });
  const file = make("input", { type: "file", id: fileId, accept: ".csv,text/csv", "data-name": "file",
    onchange: async () => {
      const chosen = file.files[0];
      if (!chosen) return;
      line.ask({ kind: "file", name: chosen.name }, [await chosen.arrayBuffer()]);
      file.value = "";
    } });
  const fileSaid = make("p", { class: "corset-file-said", role: "status" });
  const files = make("details", { class: "corset-folded" },
    make("summary", {}, "Read wearers from a file"),
    make("p", { class: "corset-hint" }, model.get("parts").file),
    make("div", { class: "corset-row" }, make("label", { for: fileId }, "Choose a file: "), file),
    make("div", { class: "corset-row" }, make("label", { for: pathId }, "or type its path: "), path,
      make("button", { type: "button", class: "corset-button", onclick: readPath }, "Read it")),
    fileSaid);

  const listed = make("dl", { class: "corset-numbers" });
  const numbers = make("details", { class: "corset-folded" }, make("summary", {}, "The measurements"), listed);
  const warned = make("ul", { class: "corset-warned", "aria-live": "polite" });
  const trouble = make("p", { class: "corset-silence", role: "alert" });
  const undo = button("Undo", "undo");
  const root = make("section", { class: "corset corset-form", "aria-label": "The wearer" },
    make("div", { class: "corset-row corset-who" },
      make("label", { for: whoId, class: "corset-label" }, "This corset is for"), who,
      make("span", { class: "corset-row", role: "radiogroup", "aria-label": "Unit" }, inches, cm)),
    verdict, warned, silence, trouble,
    ...(compact ? [numbers] : [name, howTo, ...groups,
      make("div", { class: "corset-row corset-back" }, copy, undo, button("Start afresh", "afresh")), files]));

  function paint() {
    const shown = model.get("shown");
    line.answered(shown);
    const key = JSON.stringify(shown.choices);
    if (who.dataset.key !== key) {
      who.dataset.key = key;
      who.replaceChildren(...shown.choices.map(([title, inside]) =>
        make("optgroup", { label: title },
          ...inside.map(([value, words]) => make("option", { value }, words)))));
    }
    who.value = shown.who;
    for (const one of [inches, cm]) one.firstChild.checked = one.firstChild.value === shown.unit;
    say(verdict, `${shown.verdict.good ? "✓" : "…"} ${shown.verdict.text}`);
    verdict.classList.toggle("corset-good", shown.verdict.good);
    list(warned, shown.warnings, "Note:");
    say(trouble, shown.trouble);
    say(fileSaid, shown.file_said);
    name.hidden = howTo.hidden = !shown.own;
    root.classList.toggle("corset-given", !shown.own);
    copy.hidden = shown.own;
    if (compact) {
      listed.replaceChildren(...model.get("parts").groups.flatMap((group) => group.fields).flatMap((one) =>
        [make("dt", {}, one.label), make("dd", {}, shown.fields[one.name].text || "not given")]));
    }
    undo.disabled = !shown.undo;
    fields.name({ text: shown.name, wrong: "" }, shown.own);
    for (const [each, state] of Object.entries(shown.fields)) fields[each]?.(state, shown.own);
  }

  paint();
  // Each lesson has one form, so one word a lesson.
  tellSight(model, el, ends);
  return stand(view, root, line, { shown: paint }, ends);
}

export default { render };
