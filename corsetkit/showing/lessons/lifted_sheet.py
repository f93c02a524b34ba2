"""Pieces lifted apart along their seams: rungs lead from each point of an edge to the point that it is sewn to."""

from dataclasses import dataclass, field

from corsetkit.geometry.paths import flattened, point_along, run_length
from corsetkit.geometry.points import between
from corsetkit.units import CM_PER_INCH, say_length
from corsetkit.drawing.canvas import box_area, tick
from corsetkit.drawing.name_places import Clutter
from corsetkit.showing.lessons.key_row import paint_row, row_width
from corsetkit.showing.lessons.laid import STRAIGHT, notch_stroke, paint_laid, written_in
from corsetkit.drawing.lettering import text_box, text_width
from corsetkit.drawing.pens import BOARD_TONE, GUIDE, HEADING, LEADER, LINE_WORDS, NAME, NEW, SPOT_WORDS
from corsetkit.drawing.canvas import Sheet
from corsetkit.showing.lessons.walking import Walk

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


def lifted_sheet(title, spreads, unit, frame, description, lengths=True):
    """The sheet of `Spread`s.

    Args:
        frame: (left, bottom, right, top) that holds all pieces wherever they are lifted to, cm: it stands still.
        description: the drawing in words. lengths: whether the sewn edges' lengths are written beside them.
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
    places, leaders = _written(spreads, rungs, unit if lengths else "", (low.real, bottom, high.real, top), scale)

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
        for leader in leaders:
            tick(canvas, *leader, LEADER)
        for place in places:
            canvas.words(*place)
        paint_row(canvas, complex(low.real + 0.4 * scale, low.imag + 0.4 * scale), items)

    return Sheet(low, high, title, description, paint, scale)


def _written(spreads, rungs, unit, box, scale):
    """Where the pieces' names, the named points and the edges' lengths stand, and the lines to names that stand beside their
    pieces; lengths in `unit`, none where it is "". A length that finds no clear place is not written."""
    clutter = Clutter(box, scale)
    for spread, steps in zip(spreads, rungs):
        for one in spread.laid:
            for edge, run in one.edges:
                clutter.draw(flattened(run, 0.1), 3)
            for notch in one.piece.notches:
                if notch.edge in spread.edges:
                    clutter.dot(one.move(notch.point))
                    clutter.draw(notch_stroke(one, notch, scale), 3)
        for run in spread.straight:
            clutter.draw(flattened(run, 0.1))
        for _, _, start, end, marked in steps:
            clutter.draw([start, end], 1)
    places, leaders = [], []
    for spread, steps in zip(spreads, rungs):
        for seam, cm, words in spread.named:
            start, end = next((a, b) for other, at, a, b, _ in steps if other is seam and abs(at - cm) < 1e-6)
            places.append(clutter.beside(between(start, end, 0.5), words, SPOT_WORDS))
    taken = [text_box(*place, 0.0, scale) for place in places]
    for one in (laid for spread in spreads for laid in spread.laid):
        inside = written_in(one, one.piece.name, scale, taken)
        for place in inside:
            clutter.keep(text_box(*place, "middle", 0.0, scale))
        if not inside:
            place = clutter.beside(one.middle, one.piece.name, NAME)
            leaders.append((one.middle, _nearest(text_box(*place, 0.0, scale), one.middle)))
            clutter.draw(leaders[-1], 3)
            inside = (place,)
        places += inside
    if unit:
        lengths = (clutter.along(flattened(run, 0.1), say_length(edge.length, unit), LINE_WORDS)
                   for spread in spreads for edge, run in _measured(spread, scale))
        places += [place for place in lengths if place]
    return places, leaders


def _measured(spread, scale):
    """The sewn edges whose lengths are written, each with its run: both sides of a seam, but once where they lie together."""
    written = {}
    for edge, run in (pair for one in spread.laid for pair in one.edges if pair[0] in spread.edges):
        middle = point_along(run, run_length(run) / 2)
        if all(abs(middle - written.get(id(other), middle + scale)) > 0.8 * scale for other in edge.seam.opposite(edge)):
            written[id(edge)] = middle
            yield edge, run


def _nearest(box, point):
    left, bottom, right, top = box
    return complex(min(max(point.real, left), right), min(max(point.imag, bottom), top))
