// The edges of a drawing: pointed at or stepped through, each says its name, its length and what it is sewn to.
// The drawing's lines carry that as data. Nothing is read from them before somebody points, steps or opens the table.

import { make, newId, say } from "./elements.js";
import { edgeTable } from "./edge_table.js";
import { readEdges, unsewn } from "./edge_reading.js";

const NEAR = { mouse: 10, finger: 22 }; // pixels
const STILL_MS = 400;
const POINT_AT = "Point at an edge to see its length and what it is sewn to. With keys: press Tab until the drawing is framed, then the arrow keys.";
const POINT_AT_LINE = "Point at a line to see its name and length. With keys: press Tab until the drawing is framed, then the arrow keys.";
const EDGE_KEYS = "Edges of the drawing. Arrow keys go from edge to edge, Enter to what it is sewn to, Escape leaves.";

function edgeSentence(one) {
  const { partners, beside } = one, start = `${one.name}: ${one.length}`;
  if (!partners.length) return `${start}${unsewn(one) && `, ${unsewn(one)}`}.`;
  // Where many meet, the piece is enough to find an edge by; the table tells all.
  const many = partners.length + beside.length > 1;
  const short = (other, _, all) =>
    (many && all.filter((each) => each.piece === other.piece).length === 1 && other.piece) || other.name;
  const told = partners.map(short).map((name, i) => `${name} (${partners[i].length})`);
  const along = beside.length ? `together with ${inLine(beside.map(short))} ` : "";
  return `${start}, ${along}sewn to ${inLine(told)}.${one.letter ? ` Seam ${one.letter}.` : ""}`;
}

const inLine = (names) => [names.slice(0, -1).join(", "), names[names.length - 1]].filter(Boolean).join(" and ");

// Mark lines on the drawing itself: under the one meant a whole band, under its partners a broken one, under what is sewn
// along with it a thin one. Gives what takes the marks away again.
function lightUp(one) {
  const undo = [];
  const band = (path, kind) => {
    const under = document.createElementNS(path.namespaceURI, "path");
    under.setAttribute("d", path.getAttribute("d"));
    under.setAttribute("class", `corset-band corset-${kind}`);
    path.before(under);
    path.classList.add("corset-lit");
    undo.push(() => { under.remove(); path.classList.remove("corset-lit"); });
  };
  one.beside.forEach((other) => band(other.path, "along"));
  one.partners.forEach((other) => band(other.path, "partner"));
  band(one.path, "meant");
  return () => undo.forEach((each) => each());
}

// Each edge as points in the drawing's own measure, taken once a drawing, when somebody first points at it.
function trace(edges) {
  return edges.map((one) => {
    const whole = one.path.getTotalLength();
    const count = Math.max(8, Math.ceil((100 * whole) / one.path.ownerSVGElement.viewBox.baseVal.width));
    return Array.from({ length: count + 1 }, (_, i) => one.path.getPointAtLength((whole * i) / count));
  });
}

function distance(p, a, b) {
  const x = b.x - a.x, y = b.y - a.y, square = x * x + y * y;
  const t = square ? Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / square)) : 0;
  return Math.hypot(p.x - a.x - t * x, p.y - a.y - t * y);
}

// `paper` holds the drawing. Gives the line of text under it (`bar`), the folded `table`, `refresh()` to be called
// after each redraw, and `close()`.
export function watchEdges(paper) {
  let edges = null, points = null, chosen = null, over = null, dim = () => {}, timer, finger = false;
  const words = make("p", { id: newId("edge"), class: "corset-edge-words", role: "option", "aria-live": "polite",
    "aria-atomic": "true" }, POINT_AT);
  const bar = make("div", { class: "corset-edge-bar", role: "listbox", tabindex: 0, "aria-label": EDGE_KEYS,
    "aria-activedescendant": words.id, "data-lm-suppress-shortcuts": "true", onkeydown: keyed }, words);
  const table = edgeTable(read, (key) => choose(key, true), (key) => { over = key; show(); });

  function read() {
    return (edges ||= readEdges(paper));
  }
  // Nothing is sewn in a drawing of a test square, and some drawings have no edges at all.
  const hint = () => (paper.querySelector("path[data-seam]") ? POINT_AT : POINT_AT_LINE);
  const find = (key) => key && read().find((one) => one.key === key);

  function show() {
    dim();
    const one = find(over) || find(chosen);
    dim = one ? lightUp(one) : () => {};
    say(words, one ? edgeSentence(one) : hint());
    words.setAttribute("aria-selected", Boolean(one));
    words.setAttribute("aria-setsize", one ? read().length : 1);
    words.setAttribute("aria-posinset", one ? read().indexOf(one) + 1 : 1);
    table.mark(one?.key);
  }
  function choose(key, follow) {
    chosen = key;
    over = null;
    show();
    const one = follow && find(key);
    if (one) bring(one.path);
  }
  // Where the drawing is zoomed, the chosen edge is moved to its middle.
  function bring(path) {
    const line = path.getBoundingClientRect(), frame = paper.getBoundingClientRect();
    if (line.left < frame.left || line.right > frame.right || line.top < frame.top || line.bottom > frame.bottom) {
      paper.scrollBy((line.left + line.right - frame.left - frame.right) / 2,
        (line.top + line.bottom - frame.top - frame.bottom) / 2);
    }
  }

  function keyed(event) {
    const all = read(), at = all.indexOf(find(chosen)), last = all.length - 1;
    const to = { ArrowRight: at + 1, ArrowDown: at + 1, ArrowLeft: at < 0 ? last : at - 1, ArrowUp: at < 0 ? last : at - 1,
                 Home: 0, End: last }[event.key];
    const partner = event.key === "Enter" || event.key === " ";
    if (event.ctrlKey || event.metaKey || event.altKey || last < 0) return;
    if (to !== undefined) choose(all[(to + all.length) % all.length].key, true);
    else if (partner && at >= 0) choose((all[at].partners[0] || all[at]).key, true);
    else if (event.key === "Escape" && at >= 0) choose(null);
    else if (!partner) return;
    event.preventDefault();
    event.stopPropagation();
  }

  // The edge nearest to the pointer, within reach; of lines on each other the newest.
  function under(event, reach) {
    const svg = event.target.closest?.("svg");
    if (!svg) return null;
    const matrix = svg.getScreenCTM(), pixel = 1 / matrix.a;
    const p = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    points ||= trace(read());
    let best = null, least = reach * pixel;
    read().forEach((one, i) => {
      if (one.path.ownerSVGElement !== svg) return;
      for (let k = 1; k < points[i].length; k++) {
        const far = distance(p, points[i][k - 1], points[i][k]);
        if (far < least - (best && best !== one ? 0.5 * pixel : 0)) [best, least] = [one, far];
      }
    });
    return best && best.key;
  }
  function pointed(event) {
    const key = event ? under(event, NEAR.mouse) : null;
    paper.classList.toggle("corset-on-edge", Boolean(key));
    if (key === over) return;
    over = key;
    show();
  }
  paper.addEventListener("pointerdown", (event) => { finger = event.pointerType === "touch"; });
  // A finger that moves scrolls; a mouse held down moves a zoomed drawing or marks text.
  paper.addEventListener("pointermove", (event) => { if (event.pointerType !== "touch" && !event.buttons) pointed(event); });
  paper.addEventListener("pointerleave", () => pointed(null));
  paper.addEventListener("click", (event) => {
    choose(under(event, finger ? NEAR.finger : NEAR.mouse));
    // So that the arrow keys go on from here.
    bar.focus({ preventScroll: true });
  });

  // A new drawing: what was chosen stays chosen. What listens hears of it once the movement rests.
  function refresh() {
    edges = points = null;
    dim = () => {};
    bar.hidden = table.element.hidden = !paper.querySelector("path[data-length]");
    if (!chosen && !over) say(words, hint());
    clearTimeout(timer);
    if (!chosen && !over && !table.open) return;
    words.setAttribute("aria-busy", "true");
    if (chosen || over) show();
    timer = setTimeout(() => {
      table.fill();
      words.removeAttribute("aria-busy");
    }, STILL_MS);
  }
  return { bar, table: table.element, refresh, close: () => clearTimeout(timer) };
}
