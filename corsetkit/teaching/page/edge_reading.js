// What a drawing tells of its edges.

const NEWEST_FIRST = ["new", "before", "guide", "body"];

// What the drawing in `paper` tells of its edges, newest lines first; offcuts are no edges.
export function readEdges(paper) {
  const met = {};
  const edges = [...paper.querySelectorAll("path[data-length]")].map((path) => {
    const { role, edge, name, length, kind, seam, side, partner } = path.dataset;
    const piece = edge ? path.closest("g[data-name]") : null;
    return { path, role, kind, seam, side, length, letter: path.dataset.seamName && seam, piece: piece?.dataset.name,
             name: piece ? `${piece.dataset.name}, ${edge}` : edge || name, number: path.dataset.piece, across: partner?.split("; ") };
  }).filter((one) => one.name && one.role !== "waste");
  const place = (one) => NEWEST_FIRST.indexOf(one.role);
  edges.sort((one, other) => place(one) - place(other));
  // Names, not places in the drawing, for these change while a slider moves; a piece may have two edges of one name.
  for (const one of edges) one.key = `${one.name} ${(met[one.name] = (met[one.name] || 0) + 1)}`;
  const sewn = (one) => edges.filter((other) => other !== one && one.seam && other.seam === one.seam
    && other.path.ownerSVGElement === one.path.ownerSVGElement);
  // Of a seam's other side, what lies opposite; of its own, what is sewn to the same.
  const told = (one) => (one.number ? `${one.number} ${one.name}` : one.name);
  for (const one of edges) {
    one.partners = sewn(one).filter((other) => other.side !== one.side && (!one.across || one.across.includes(told(other))));
  }
  for (const one of edges) {
    one.beside = sewn(one).filter((other) => other.side === one.side && other.partners.some((each) => one.partners.includes(each)));
  }
  return edges;
}

// In a pattern an edge without a seam is not sewn; on the block that is not yet said.
export const unsewn = (one) => (!one.kind ? "" : one.letter ? "its partner is not in this drawing"
  : one.kind === "fold" ? "on the fold" : "not sewn to another");
