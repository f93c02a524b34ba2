// One control of a panel. It knows indices and words; what they mean is the kernel's.
// `send({at} or {text}, kept)` is called at each change.

import { make, newId, say, together, whenTyped } from "./elements.js";

// Why a control does nothing at present, where it does nothing; it stays usable, for what it is set to is kept.
function idleSign(element) {
  const why = make("p", { class: "corset-why-idle" });
  element.querySelector(".corset-hint").after(why);
  return (state) => {
    say(why, state.idle || "");
    element.classList.toggle("corset-idle", Boolean(state.idle));
  };
}

function sliderControl(told, send) {
  const range = newId("range"), box = newId("box"), hint = newId("hint");
  let at = 0, said = "", seen = "", idling = "";
  const slider = make("input", {
    type: "range", id: range, min: 0, max: told.words.length - 1, step: 1,
    "aria-describedby": hint, "data-name": told.name,
    // No word at "change": every step was told at "input", and nothing is to be drawn twice.
    oninput: () => go(Number(slider.value), false),
  });
  const words = make("input", {
    type: "text", id: box, class: "corset-box", autocomplete: "off", spellcheck: "false",
    "aria-label": `${told.label}, typed`, "data-name": told.name,
    ...whenTyped(() => {
      if (words.value === said) return;
      said = words.value;
      send({ text: words.value }, true);
    }),
    onfocus: () => words.select(),
  });
  const last = told.words.length - 1;
  function go(place, kept) {
    place = Math.min(Math.max(place, 0), last);
    show({ at: place, words: told.words[place] });
    send({ at: place }, kept);
  }
  function show(state) {
    // Most controls stand as they did: nothing on the page is touched for them.
    const signs = `${Boolean(state.wrong)} ${state.idle ?? idling}`;
    if (state.at === at && state.words === said && signs === seen) return;
    seen = signs;
    at = state.at;
    slider.value = at;
    slider.setAttribute("aria-valuetext", state.words);
    slider.style.setProperty("--filled", last ? `${(100 * at) / last}%` : "0%");
    words.value = said = state.words;
    words.setAttribute("aria-invalid", state.wrong ? "true" : "false");
    // The hand's own move says nothing of it.
    if (state.idle !== undefined) {
      idling = state.idle;
      idle(state);
    }
  }
  const step = (sign, i) => {
    const amount = told.amounts[i], way = sign < 0 ? "less" : "more";
    return make("button", {
      type: "button", class: "corset-step", "aria-label": `${told.label}: ${amount} ${way}`,
      onclick: () => go(at + sign * told.steps[i], true),
    }, `${sign < 0 ? "−" : "+"}${amount}`);
  };
  const large = told.steps.length > 1;
  const element = make("div", { class: "corset-control", role: "group", "aria-label": told.label },
    make("label", { for: range, class: "corset-label" }, told.label),
    make("p", { id: hint, class: "corset-hint" }, together(`${told.meaning} (starts at ${told.start})`)),
    slider,
    make("div", { class: "corset-row" },
      large ? step(-1, 1) : null, step(-1, 0), words, step(1, 0), large ? step(1, 1) : null),
  );
  const idle = idleSign(element);
  return { element, show };
}

function choiceControl(told, send) {
  const group = newId("choice"), hint = newId("hint");
  const radios = told.words.map((word, at) =>
    make("input", {
      type: "radio", name: group, value: at, "data-name": told.name, onchange: () => send({ at }, true),
    }));
  const element = make("fieldset", { class: "corset-control", "aria-describedby": hint },
    make("legend", { class: "corset-label" }, told.label),
    make("p", { id: hint, class: "corset-hint" }, together(`${told.meaning} (starts at ${told.start})`)),
    make("div", { class: "corset-row" },
      ...told.words.map((word, at) => make("label", { class: "corset-radio" }, radios[at], word))),
  );
  const idle = idleSign(element);
  return { element, show: (state) => { radios[state.at].checked = true; idle(state); } };
}

// Where a control stands, among the places where it stops.
export const whereOf = (told, { at }) => ({ at, stops: told.words });

export const control = (told, send) => (told.kind === "slider" ? sliderControl : choiceControl)(told, send);
