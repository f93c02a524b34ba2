"""Paper pieces lifted apart along their seams, and the cups as such: two parts, three parts, and both side by side."""

from dataclasses import dataclass, field

from corsetkit.drawing.canvas import Sheet, box_area, tick
from corsetkit.drawing.lettering import around, grown, text_box, text_width
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import BOARD_TONE, GUIDE, HEADING, LEADER, LINE_WORDS, NAME, NEW, SPOT_WORDS
from corsetkit.geometry.move import slid, turned_about
from corsetkit.geometry.paths import flattened, moved, path_length, point_along
from corsetkit.geometry.points import between, heading, turn_between
from corsetkit.geometry.points import unit as unit_step
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.teaching.shared.laid_paper import STRAIGHT, Laid, notch_stroke, paint_laid, written_in
from corsetkit.teaching.shared.walking import Walk
from corsetkit.units import CM_PER_INCH, say_length, say_number
from corsetkit.words import words_of

SHARED = words_of("shared")

SEEN, SEEN_HIGH = 18.0, 12.0
"""How wide and how high the pieces are seen, cm, whichever comes first."""

_RUNG = {"in": CM_PER_INCH / 2, "cm": 1.0}
"""From one rung to the next, cm."""
_LEAST_RUNG = 0.25


@dataclass(frozen=True)
class Spread:
    """Pieces of one pattern as they lie.

    `laid` are the `Laid` pieces, `seams` those of the pattern's seams that are shown between them.
    `straight` are runs as they lie, of cuts that a seam was before it was shaped. `named` are
    (seam, cm from its start, words) of points to be named. `caption` stands above, `mark` keeps the seams apart from those
    of another pattern on the same sheet.
    """

    laid: tuple
    seams: tuple
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
            walk = Walk(seam)
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
    items = [(NEW, SHARED("sewn_edge")), (GUIDE, SHARED("points_that_meet"))]
    if any(one.straight for one in spreads):
        items.insert(1, (STRAIGHT, SHARED("straight_cut_before")))
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
                paint_laid(canvas, one, unit, spread.edges, NEW, spread.mark)
            for path in spread.straight:
                canvas.line(path, STRAIGHT)
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
            for _edge, path in one.edges:
                clutter.draw(flattened(path, 0.1), 3)
            for notch in one.piece.notches:
                if notch.edge in spread.edges:
                    clutter.dot(one.move(notch.point))
                    clutter.draw(notch_stroke(one, notch, scale), 3)
        for path in spread.straight:
            clutter.draw(flattened(path, 0.1))
        for _, _, start, end, _marked in steps:
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
        lengths = (
            clutter.along(flattened(path, 0.1), say_length(edge.length, unit), LINE_WORDS)
            for spread in spreads
            for edge, path in _measured(spread, scale)
        )
        places += [place for place in lengths if place]
    return places, leaders


def _measured(spread, scale):
    """The sewn edges whose lengths are written, each with its run: both sides of a seam, but once where they lie together."""
    written = {}
    for edge, path in (pair for one in spread.laid for pair in one.edges if pair[0] in spread.edges):
        middle = point_along(path, path_length(path) / 2)
        if all(abs(middle - written.get(id(other), middle + scale)) > 0.8 * scale for other in edge.seam.opposite(edge)):
            written[id(edge)] = middle
            yield edge, path


def _nearest(box, point):
    left, bottom, right, top = box
    return complex(min(max(point.real, left), right), min(max(point.imag, bottom), top))


APART_MOST = 6.35
"""How far the cups can be lifted apart, cm: 2 1/2 in."""

_SPARE, _OFF = 0.7, 0.55
"""Paper left round the pieces, cm, and how far the upper cup is lifted off the inner lower one for each cm that the lower cups
are apart."""
_BESIDE, _BETWEEN = 3.2, 2.5
"""How far the pieces lie apart where both patterns lie side by side, and the patterns from each other, cm."""


def cups_of(pattern):
    """The cups' pieces of a pattern: the upper cup, where there is one, and then the inner and the outer one."""
    return pattern.pieces[: pattern.style.cup_parts]


def cup_seams(pattern):
    """The seams sewn between the cups: the seam through the bust point, and the cut across where there is one."""
    ids = {id(edge) for piece in cups_of(pattern) for edge in piece.edges}
    return tuple(seam for seam in pattern.seams if all(id(edge) in ids for side in seam.sides for edge in side))


def gap_above(steps):
    """Degrees by which the two cups stand open above the bust point as they are drawn: what the tightening dart takes once
    the darts before it are closed."""
    if steps.three_part_cup:
        return heading(steps.cup.close_top.turn)
    point = steps.darts.overbust.bust_point
    return turn_between(steps.cup.outer_top - point, steps.cup.inner_top - point)


def gap_below(steps):
    """Degrees by which they stand open below it: what the underbust dart takes."""
    return 2 * steps.underbust.half_angle


def cups_lifted(pattern, apart, swung, unit, title, lengths=True):
    """The sheet of the cups lifted `apart` cm; the outer one is swung up about the bust point by `swung` degrees.

    Without `lengths` no edge's length is written on it.
    """
    steps = pattern.steps
    spread = cups_spread(pattern, apart, swung)
    # Wherever they are slid and swung to: the drawing stands still while a slider moves.
    whole = gap_above(steps)
    places = [
        cups_spread(pattern, how_far, how_much, edges=False)
        for how_far in (0.0, APART_MOST)
        for how_much in ((0.0, whole / 3, 2 * whole / 3, whole) if len(spread.laid) == 3 else (0.0,))
    ]
    frame = grown(around([one.box for place in places for one in place.laid]), _SPARE)
    told = (SHARED("lifted_seam", seam=seam.name, length=say_length(seam.lengths[0], unit)) for seam in spread.seams)
    words = SHARED(
        "lifted_described",
        title=title,
        count=len(spread.laid),
        apart=say_length(apart, unit),
        seams="; ".join(told),
        above=say_number(gap_above(steps) - swung, 1),
        below=say_number(gap_below(steps) + swung, 1),
    )
    return lifted_sheet(title, (spread,), unit, frame, words, lengths)


def cups_beside(two, three, unit, title):
    """The sheet of both patterns' cups, two parts on the left, three on the right, a little apart."""
    spreads, left = [], 0.0
    for pattern, caption in ((two, SHARED("two_parts")), (three, SHARED("three_parts"))):
        spread = cups_spread(pattern, _BESIDE, 0.0 if pattern is two else gap_above(pattern.steps) / 2)
        box = around([one.box for one in spread.laid])
        step = complex(left - box[0], -(box[1] + box[3]) / 2)
        spreads.append(_slid(spread, step, caption, f" {SHARED('lifted_of_cup', parts=caption)}"))
        left += box[2] - box[0] + _BETWEEN
    frame = grown(around([one.box for spread in spreads for one in spread.laid]), _SPARE)
    told = "; ".join(f"{one.caption}: {', '.join(laid.piece.name for laid in one.laid)}" for one in spreads)
    return lifted_sheet(
        title, spreads, unit, frame, SHARED("beside_described", title=title, pieces=told[0].upper() + told[1:])
    )


def cups_spread(pattern, apart, swung, edges=True):
    """The `Spread` of a pattern's cups, lifted `apart` cm and the outer one swung up by `swung` degrees; without `edges`
    only the papers."""
    cups, seam, point = cups_of(pattern), pattern.steps.cup.seam, pattern.steps.darts.overbust.bust_point
    moves = [slid(-apart / 2 + 0j), turned_about(point, swung).then(slid(apart / 2 + 0j))]
    straight = tuple(moved(blend.before, move) for blend, move in zip((seam.inner_blend, seam.outer_blend), moves))
    if len(cups) == 3:
        # Lifted off the inner lower cup square to the cut, so that their edges stand clear of each other.
        cut = pattern.steps.three_part_cup
        off = unit_step(cut.cut_inner[-1].end - cut.front_end) * 1j
        moves.insert(0, slid((-0.5 + _OFF * off) * apart))
    laid = tuple(Laid(piece, move) for piece, move in zip(cups, moves))
    if not edges:
        return Spread(laid, (), {})
    seams = cup_seams(pattern)
    through = next(one for one in seams if len(one.sides[0]) == 1)
    named = ((through, seam.to_bust_point, SHARED("bust_point")),) if seam.to_bust_point in through.marks else ()
    return Spread(laid, seams, straight, named)


def _slid(spread, step, caption, mark):
    box = around([one.box for one in spread.laid])
    return Spread(
        tuple(one.then(step) for one in spread.laid),
        spread.seams,
        tuple(moved(path, slid(step)) for path in spread.straight),
        spread.named,
        caption,
        complex((box[0] + box[2]) / 2, 0) + step.real,
        mark,
    )
