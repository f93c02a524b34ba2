"""Pieces lifted apart along their seams: rungs lead from each point of an edge to the point that it is sewn to."""

from dataclasses import dataclass, field

from ..geometry.path import flattened
from ..geometry.points import between
from ..units import CM_PER_INCH, say_length
from .canvas import box_area, tick
from .clutter import Clutter
from .key_row import paint_row, row_width
from .laid import STRAIGHT, paint_laid, written_in
from .lettering import text_box, text_width
from .pens import BOARD_TONE, GUIDE, HEADING, LEADER, LINE_WORDS, NEW, SPOT_WORDS
from .sheet import Sheet
from .walking import Walk

SEEN, SEEN_HIGH = 18.0, 12.0
"""How wide and how high the pieces are seen, cm, whichever comes first."""

_RUNG = {"in": CM_PER_INCH / 2, "cm": 1.0}
"""From one rung to the next, cm."""
_LEAST_RUNG = 0.25


@dataclass(frozen=True)
class Spread:
    """Pieces of one pattern as they lie.

    `laid` are the `Laid` pieces, `seams` those of the pattern's seams that are shown between them, `owners` each edge's
    piece by the edge's id. `straight` are runs as they lie, of cuts that a seam was before it was shaped. `named` are
    (seam, cm from its start, words) of points to be named. `caption` stands above, `mark` keeps the seams apart from those
    of another pattern on the same sheet.
    """

    laid: tuple
    seams: tuple
    owners: dict
    straight: tuple = ()
    named: tuple = ()
    caption: str = ""
    at: complex = 0j
    mark: str = ""
    edges: tuple = field(init=False)

    def __post_init__(self):
        sewn = tuple(edge for seam in self.seams for side in seam.sides for edge in side)
        object.__setattr__(self, "edges", sewn)

    def rungs(self, unit):
        """For each seam: a list of (start, end, whether it is one of the seam's ends or notches)."""
        moves = {id(one.piece): one.move for one in self.laid}
        step = _RUNG[unit]
        for seam in self.seams:
            walk = Walk(seam, self.owners)
            marked = {0.0, walk.length, *seam.marks}
            plain = {step * i for i in range(1, int(walk.length / step) + 1)}
            for cm in sorted(marked | {one for one in plain if all(abs(one - mark) > step / 3 for mark in marked)}):
                ends = [moves[id(piece)](point) for piece, point in walk.met(cm)]
                yield seam, cm, *ends, cm in marked


def lifted_sheet(title, spreads, unit, frame, description):
    """The sheet of `Spread`s.

    Args:
        frame: (left, bottom, right, top) that holds all pieces wherever they are lifted to, cm: it stands still.
        description: the drawing in words.
    """
    left, bottom, right, top = frame
    items = [(NEW, "sewn edge"), (GUIDE, "points that meet")]
    if any(one.straight for one in spreads):
        items.insert(1, (STRAIGHT, "the straight cut before"))
    scale = max((right - left) / SEEN, (top - bottom) / SEEN_HIGH)
    wide = max(right - left, row_width(items, scale), text_width(title, HEADING, scale))
    spare, row, head = (wide - (right - left)) / 2, 0.8 * scale, 1.1 * scale
    caption = 0.8 * scale if any(one.caption for one in spreads) else 0.0
    low, high = complex(left - spare, bottom - row), complex(right + spare, top + head + caption)
    rungs = [list(one.rungs(unit)) for one in spreads]
    names, inside = _written(spreads, rungs, unit, (low.real, bottom, high.real, top), scale)

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + 0.4 * scale, high.imag - 0.8 * scale), title, HEADING, "start")
        for spread, steps in zip(spreads, rungs):
            if spread.caption:
                canvas.words(complex(spread.at.real, top + 0.25 * scale), spread.caption, SPOT_WORDS)
            for one in spread.laid:
                paint_laid(canvas, one, unit, spread.owners, spread.edges, NEW, spread.mark)
            for run in spread.straight:
                canvas.line(run, STRAIGHT)
            for _, _, start, end, marked in steps:
                if abs(end - start) > _LEAST_RUNG:
                    tick(canvas, start, end, LEADER if marked else GUIDE)
        for place in (*names, *inside):
            canvas.words(*place)
        paint_row(canvas, complex(low.real + 0.4 * scale, low.imag + 0.4 * scale), items)

    return Sheet(low, high, title, description, paint, scale)


def _written(spreads, rungs, unit, box, scale):
    """Where the named points, the edges' lengths and the pieces' names stand; what finds no clear place is not written."""
    clutter = Clutter(box, scale)
    for spread, steps in zip(spreads, rungs):
        for one in spread.laid:
            for edge, run in one.edges:
                clutter.draw(flattened(run, 0.1), 3)
            for notch in one.piece.notches:
                if notch.edge in spread.edges:
                    clutter.dot(one.move(notch.point))
        for run in spread.straight:
            clutter.draw(flattened(run, 0.1))
        for _, _, start, end, marked in steps:
            clutter.draw([start, end], 1)
    places = []
    for spread, steps in zip(spreads, rungs):
        for seam, cm, words in spread.named:
            start, end = next((a, b) for other, at, a, b, _ in steps if other is seam and abs(at - cm) < 1e-6)
            places.append(clutter.beside(between(start, end, 0.5), words, SPOT_WORDS))
        for one in spread.laid:
            for edge, run in one.edges:
                if edge in spread.edges:
                    places.append(clutter.along(flattened(run, 0.1), say_length(edge.length, unit), LINE_WORDS))
    places = [place for place in places if place]
    taken = [text_box(*place, 0.0, scale) for place in places]
    inside = [place for spread in spreads for one in spread.laid
              for place in written_in(one, one.piece.name, scale, taken)]
    return places, inside
