"""Walking a seam: the points of its two sides that meet, and the sheet on which one is laid along the other.

A cutter checks a seam so before cloth is cut: one piece lies still, the other is laid with its edge against the first
one's, and both are followed with a pin from the seam's start to its end. Where both edges are one line the second
piece need not turn; where they bend away from each other it has to, and what it turns in all is the fullness that the
seam sews into the cloth.
"""

from dataclasses import dataclass

from corsetkit.drawing.canvas import Sheet, box_area, tick
from corsetkit.drawing.lettering import around, fitted, grown, text_box, text_width
from corsetkit.drawing.pens import (
    BOARD_TONE,
    CHALK,
    GRAPHITE,
    GUIDE,
    HEADING,
    LEADER,
    NEW,
    NOTCH,
    SEWN,
    SMALL,
    SPOT,
    SPOT_TONE,
    SPOT_WORDS,
    Pen,
)
from corsetkit.geometry import paths
from corsetkit.geometry.move import Move
from corsetkit.geometry.paths import cut_along, moved
from corsetkit.geometry.points import turn_between
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.teaching.shared.laid_paper import Laid, paint_laid, paint_paper, paint_seen_through, torn_below, written_in
from corsetkit.teaching.shared.listed import listed
from corsetkit.units import say_length
from corsetkit.words import words_of

SHARED = words_of("shared")

SAME_STOP = 0.16
"""A notch this near to the walked place, cm, is reached: half a slider's step of an eighth of an inch."""


@dataclass(frozen=True)
class Stop:
    """A place on one side of a seam: the edge and its piece, the point, the unit step in which the seam runs on."""

    edge: object
    piece: object
    point: complex
    tangent: complex


@dataclass(frozen=True)
class Stretch:
    """What one edge gives to one side: the edge and its piece, its run as the seam goes, from where to where in cm."""

    edge: object
    piece: object
    path: tuple
    start: float
    end: float

    def along(self, cm):
        """How far along this stretch a place of the seam lies, cm, kept within it."""
        return min(max(cm - self.start, 0.0), self.end - self.start)


class Walk:
    """One seam's two sides, each as its stretches from the seam's start to its end.

    The first side is the one that begins on the piece with the lower
    number: it lies still while the other is laid along it.
    """

    def __init__(self, seam):
        self.seam = seam
        self.length = max(seam.lengths)
        sides = [tuple(_stretches(side, against)) for side, against in zip(seam.sides, seam.against)]
        self.sides = tuple(sorted(sides, key=lambda side: side[0].piece.number))

    def walked(self, cm):
        """The place itself, no farther than the seam goes."""
        return min(max(cm, 0.0), self.length)

    def stretch(self, side, cm):
        """The stretch of side 0 or 1 that the place lies on; where pieces change, the one that ends there."""
        return next((one for one in self.sides[side] if cm <= one.end + 1e-9), self.sides[side][-1])

    def stop(self, side, cm):
        """The place on side 0 or 1."""
        return _stop(self.stretch(side, cm), cm)

    def met(self, cm):
        """The points of both sides that meet there, each with its piece: ((piece, point), (piece, point))."""
        found = []
        for side in (0, 1):
            one = self.stretch(side, cm)
            found.append((one.piece, paths.point_along(one.path, one.along(cm))))
        return tuple(found)

    def laid_along(self, cm):
        """The rigid move that lays the second side's piece against the first's there, edge to edge and way to way."""
        return _laid(self.stop(0, cm), self.stop(1, cm))

    def turned(self, cm):
        """Degrees by which the second piece has turned, against the first, since the two began to be walked together."""
        first, second = self.stretch(0, cm), self.stretch(1, cm)
        begun = max(first.start, second.start)
        before, now = _laid(_stop(first, begun), _stop(second, begun)), self.laid_along(cm)
        return abs(turn_between(before.turn, now.turn))

    def changes(self):
        """Where one piece gives way to the next on either side, with both pieces' names: (cm, before, after)."""
        return [
            (first.end, first.piece.name, second.piece.name)
            for side in self.sides
            for first, second in zip(side, side[1:])
            if first.piece is not second.piece
        ]

    def reached(self, cm):
        """The notch at the place, in cm from the start, or None."""
        near = [mark for mark in self.seam.marks if abs(mark - cm) <= SAME_STOP]
        return min(near, key=lambda mark: abs(mark - cm)) if near else None


def _stretches(edges, against):
    total = 0.0
    for edge in edges:
        path = paths.turned_round(edge.path) if against else edge.path
        yield Stretch(edge, edge.piece, path, total, total + edge.length)
        total += edge.length


def _stop(stretch, cm):
    along = stretch.along(cm)
    return Stop(stretch.edge, stretch.piece, paths.point_along(stretch.path, along), paths.tangent_along(stretch.path, along))


def _laid(still, moving):
    turn = still.tangent / moving.tangent
    turn /= abs(turn)
    return Move(turn, still.point - turn * moving.point)


STRIPS_HIGH = 2.9
"""How high the strips are with their words, cm as seen."""

_LINES = (-0.75, -1.45)
"""Levels of the two sides, cm as seen below the strips' upper edge; words have rows of their own and cannot meet."""
_WORDS = (-0.45, -1.98)
_BETWEEN, _WALKED = -1.19, -2.5


def paint_strips(canvas, walk, cm, unit, at, width, named=()):
    """Paint the strips `width` cm wide from their upper left corner `at`; the seam is walked for `cm`.

    `named` are (cm from the start, words) of notches; words that have no room before the next notch are left out.
    """
    scale, per = canvas.scale, width / walk.length
    lines = [at + 1j * level * scale for level in _LINES]
    half = 0.14j * scale
    with canvas.group("strips"):
        for mark in walk.seam.marks:
            tick(canvas, lines[0] + mark * per, lines[1] + mark * per, LEADER)
        tick(canvas, lines[0] + cm * per, lines[1] + cm * per, GUIDE)
        for side, line, level in zip(walk.sides, lines, _WORDS):
            tick(canvas, line, line + width, SEWN)
            if cm > 0:
                tick(canvas, line, line + cm * per, NEW)
            for end in (0.0, walk.length, *walk.seam.marks):
                tick(canvas, line + end * per - half, line + end * per + half, NOTCH)
            for start, end, name in _pieces(side):
                words = fitted(name, SPOT_WORDS, (end - start) * per - 0.2 * scale, scale)
                canvas.words(at + (start + end) / 2 * per + 1j * level * scale, words, SPOT_WORDS)
            canvas.dot(line + cm * per, 0.9, SPOT_TONE, SPOT)
        for place, words in _placed(walk, per, named, scale):
            canvas.words(at + place + 1j * _BETWEEN * scale, words, SMALL, "start")
        words = SHARED("walk_so_far", walked=say_length(cm, unit), whole=say_length(walk.length, unit))
        room = text_width(words, SPOT_WORDS, scale) / 2
        canvas.words(at + min(max(cm * per, room), width - room) + 1j * _WALKED * scale, words, SPOT_WORDS)


def _pieces(side):
    """(start, end, name) of each piece on the side."""
    found = []
    for one in side:
        if found and found[-1][3] is one.piece:
            found[-1] = (found[-1][0], one.end, one.piece.name, one.piece)
        else:
            found.append((one.start, one.end, one.piece.name, one.piece))
    return [one[:3] for one in found]


def _placed(walk, per, named, scale):
    """The names of notches, each beside its own, where there is room before the next one."""
    stops = [*walk.seam.marks, walk.length]
    for cm, words in named:
        nearest = min(stops, key=lambda mark: abs(mark - cm))
        after = min((mark for mark in stops if mark > nearest + 1e-6), default=walk.length)
        start = nearest * per + 0.15 * scale
        if text_width(words, SMALL, scale) < after * per - start - 0.1 * scale:
            yield start, words


SEEN, SEEN_HIGH = 18.0, 9.0
"""How wide and how high the pieces are seen, cm, whichever comes first."""
KEPT = 6.0
"""How much of a long panel is shown below the edge that is walked, cm."""

_GAP, _SPARE = 1.2, 0.3
_TRIED = 24
"""At how many places of the seam room is looked for, so that the drawing stands still while the seam is walked."""
LAID = Pen("laid-along", 0.34, GRAPHITE)
LAID_WALKED = Pen("laid-along-walked", 0.75, CHALK, (1.6, 0.8))
"""The piece that is laid along the other, seen through, and what of it is walked."""

_KEY = (
    (NEW, SHARED("walk_key_walked")),
    (LAID_WALKED, SHARED("walk_key_laid")),
    (SEWN, SHARED("walk_key_rest")),
    (GUIDE, SHARED("walk_key_direction")),
)


def walking_sheet(seam, walked_cm, unit, title, named=()):
    """The sheet of a seam walked so far.

    Args:
        seam: the `Seam`.
        walked_cm: how far it is walked from its start; beyond its end is its end.
        unit: "in" or "cm". title: the heading.
        named: (cm from the start, words) of notches that bear a name.
    """
    walk = Walk(seam)
    cm = walk.walked(walked_cm)
    slots = _slots(walk)
    width, tall = sum(box[2] - box[0] for box in slots) + 2 * _GAP, max(box[3] - box[1] for box in slots)
    scale = max(width / SEEN, tall / SEEN_HIGH)
    wide = max(width, row_width(_KEY, scale), text_width(title, HEADING, scale)) + 2 * _GAP
    low, high = complex(0, -(STRIPS_HIGH + 0.9) * scale), complex(wide, tall + 2.1 * scale)
    steps = list(_steps(slots, (wide - width) / 2, tall / 2))
    one, two = (_laid_beside(walk, side, cm) for side in (0, 1))
    first, second, still = (laid.then(step - _middle(laid.box)) for laid, step in zip((one, two, one), steps))
    turned = Laid(two.piece, walk.laid_along(cm).then(still.move), two.torn)
    shown = ((0, first), (1, second), (0, still), (1, turned))
    places = [laid.move(walk.stop(side, cm).point) for side, laid in shown[:3]]
    tangent = walk.stop(0, cm).tangent * 1.1 * scale
    sewn = [edge for side in seam.sides for edge in side]
    heads = (one.piece.name, two.piece.name, SHARED("walk_laid_along", moving=two.piece.name, still=one.piece.name))

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(0.4 * scale, high.imag - 0.8 * scale), title, HEADING, "start")
        for box, step, words in zip(slots, steps, heads):
            words = fitted(words, SMALL, box[2] - box[0] + _GAP / 2, scale)
            canvas.words(complex((box[0] + box[2]) / 2 + step.real, tall + 0.45 * scale), words, SMALL)
        # The piece laid along is seen through, as tracing paper is: where both cross, both edges are in sight.
        paint_paper(canvas, turned)
        for laid, told in ((first, True), (second, True), (still, False)):
            paint_laid(canvas, laid, unit, sewn, told=told)
        paint_seen_through(canvas, turned, sewn, LAID)
        for (side, laid), pen in zip(shown, (NEW, NEW, NEW, LAID_WALKED)):
            if done := _done(walk, side, laid, cm):
                canvas.line(done, pen)
        tick(canvas, places[2] - tangent, places[2] + tangent, GUIDE)
        for at in places:
            canvas.dot(at, 1.0, SPOT_TONE, SPOT)
        for place in _names(shown, places, scale):
            canvas.words(*place)
        paint_strips(canvas, walk, cm, unit, complex(_GAP, -0.3 * scale), wide - 2 * _GAP, named)
        paint_row(canvas, complex(0.4 * scale, low.imag + 0.45 * scale), _KEY)

    return Sheet(low, high, title, _described(walk, cm, unit, title), paint, scale)


def _laid_beside(walk, side, cm):
    """The piece that the place lies on, as it lies in the pattern, torn off where it goes on far below the seam."""
    piece = walk.stretch(side, cm).piece
    levels = [torn_below(piece, one.edge, KEPT) for one in walk.sides[side] if one.piece is piece]
    return Laid(piece, torn=None if None in levels else min(levels))


def _slots(walk):
    """The room of each side's pieces and of the two laid along each other, wherever the seam is walked: boxes in which a
    piece's own middle is zero, the first side's for the third box."""
    own, joint, known = ([], []), [], {}
    for i in range(_TRIED + 1):
        cm = walk.length * i / _TRIED
        stretches = [walk.stretch(side, cm) for side in (0, 1)]
        for side, stretch in enumerate(stretches):
            if id(stretch.piece) not in known:
                laid = _laid_beside(walk, side, cm)
                known[id(stretch.piece)] = laid.box, laid.points[::3]
                own[side].append(_shifted(laid.box, -_middle(laid.box)))
        box, (_, points) = known[id(stretches[0].piece)][0], known[id(stretches[1].piece)]
        lie = walk.laid_along(cm)
        there = [lie(point) for point in points]
        xs, ys = [p.real for p in there], [p.imag for p in there]
        joint.append(_shifted(around([box, (min(xs), min(ys), max(xs), max(ys))]), -_middle(box)))
    return [grown(around(boxes), _SPARE) for boxes in (*own, joint)]


def _steps(slots, left, level):
    """The steps that lay the pieces' middles into the slots, side by side from the left."""
    for box in slots:
        yield complex(left - box[0], level - (box[1] + box[3]) / 2)
        left += box[2] - box[0] + _GAP


def _done(walk, side, laid, cm):
    """What is walked of the side on this piece, where it lies."""
    found = []
    for one in walk.sides[side]:
        if one.piece is laid.piece and cm > one.start + 1e-6:
            path = one.path if cm >= one.end else cut_along(one.path, cm - one.start)[0]
            found.extend(moved(path, laid.move))
    return tuple(found)


def _names(shown, places, scale):
    """Each piece's name inside it, clear of the marks and of each other."""
    taken = [(at.real - 0.2 * scale, at.imag - 0.2 * scale, at.real + 0.2 * scale, at.imag + 0.2 * scale) for at in places]
    for _, laid in shown:
        for place in written_in(laid, laid.piece.name, scale, taken):
            taken.append(text_box(*place, "middle", 0.0, scale))
            yield place


def _described(walk, cm, unit, title):
    one, other = (listed(dict.fromkeys(one.piece.name for one in side)) for side in walk.sides)
    return SHARED(
        "walk_described", title=title, one=one, other=other, walked=say_length(cm, unit), whole=say_length(walk.length, unit)
    )


def _middle(box):
    return complex(box[0] + box[2], box[1] + box[3]) / 2


def _shifted(box, step):
    return box[0] + step.real, box[1] + step.imag, box[2] + step.real, box[3] + step.imag
