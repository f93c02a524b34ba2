"""A seam being walked: each side with the place marked, one laid along the other, both edges drawn out straight."""

from corsetkit.geometry.paths import cut_along, moved
from corsetkit.units import say_length
from corsetkit.drawing.canvas import box_area, tick
from corsetkit.showing.lessons.key_row import paint_row, row_width
from corsetkit.showing.lessons.laid import Laid, paint_laid, paint_paper, paint_seen_through, torn_below, written_in
from corsetkit.drawing.lettering import around, fitted, grown, text_box, text_width
from corsetkit.drawing.pens import BOARD_TONE, CHALK, GRAPHITE, GUIDE, HEADING, NEW, SEWN, SMALL, SPOT, SPOT_TONE, Pen
from corsetkit.drawing.canvas import Sheet
from corsetkit.showing.lessons.walked_strips import STRIPS_HIGH, paint_strips
from corsetkit.showing.lessons.walking import Walk

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

_KEY = ((NEW, "walked so far"), (LAID_WALKED, "the same, laid along"), (SEWN, "still to walk"),
        (GUIDE, "direction of both edges here"))


def walking_sheet(seam, pieces_by_edge, walked_cm, unit, title, named=()):
    """The sheet of a seam walked so far.

    Args:
        seam: the `Seam`. pieces_by_edge: the `Piece` of each edge, by the edge's id.
        walked_cm: how far it is walked from its start; beyond its end is its end.
        unit: "in" or "cm". title: the heading.
        named: (cm from the start, words) of notches that bear a name.
    """
    walk = Walk(seam, pieces_by_edge)
    cm = walk.walked(walked_cm)
    slots = _slots(walk)
    width, tall = sum(box[2] - box[0] for box in slots) + 2 * _GAP, max(box[3] - box[1] for box in slots)
    scale = max(width / SEEN, tall / SEEN_HIGH)
    wide = max(width, row_width(_KEY, scale), text_width(title, HEADING, scale)) + 2 * _GAP
    low, high = complex(0, -(STRIPS_HIGH + 0.9) * scale), complex(wide, tall + 2.1 * scale)
    steps = list(_steps(slots, (wide - width) / 2, tall / 2))
    one, two = (_laid(walk, side, cm) for side in (0, 1))
    first, second, still = (laid.then(step - _middle(laid.box)) for laid, step in zip((one, two, one), steps))
    turned = Laid(two.piece, walk.laid_along(cm).then(still.move), two.torn)
    shown = ((0, first), (1, second), (0, still), (1, turned))
    places = [laid.move(walk.stop(side, cm).point) for side, laid in shown[:3]]
    way = walk.stop(0, cm).way * 1.1 * scale
    sewn = [edge for side in seam.sides for edge in side]
    heads = (one.piece.name, two.piece.name, f"{two.piece.name} laid along {one.piece.name}")

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(0.4 * scale, high.imag - 0.8 * scale), title, HEADING, "start")
        for box, step, words in zip(slots, steps, heads):
            words = fitted(words, SMALL, box[2] - box[0] + _GAP / 2, scale)
            canvas.words(complex((box[0] + box[2]) / 2 + step.real, tall + 0.45 * scale), words, SMALL)
        # The piece laid along is seen through, as tracing paper is: where both cross, both edges are in sight.
        paint_paper(canvas, turned)
        for laid, told in ((first, True), (second, True), (still, False)):
            paint_laid(canvas, laid, unit, pieces_by_edge, sewn, told=told)
        paint_seen_through(canvas, turned, sewn, LAID)
        for (side, laid), pen in zip(shown, (NEW, NEW, NEW, LAID_WALKED)):
            if done := _done(walk, side, laid, cm):
                canvas.line(done, pen)
        tick(canvas, places[2] - way, places[2] + way, GUIDE)
        for at in places:
            canvas.dot(at, 1.0, SPOT_TONE, SPOT)
        for place in _names(shown, places, scale):
            canvas.words(*place)
        paint_strips(canvas, walk, cm, unit, complex(_GAP, -0.3 * scale), wide - 2 * _GAP, named)
        paint_row(canvas, complex(0.4 * scale, low.imag + 0.45 * scale), _KEY)

    return Sheet(low, high, title, _described(walk, cm, unit, title), paint, scale)


def _laid(walk, side, cm):
    """The piece that the place lies on, as it lies in the pattern, torn off where it goes on far below the seam."""
    piece = walk.stretch(side, cm).piece
    levels = [torn_below(piece, one.edge, KEPT) for one in walk.sides[side] if one.piece is piece]
    return Laid(piece, torn=None if None in levels else min(levels))


def _slots(walk):
    """The room of each side's pieces and of the two laid along each other, wherever the seam is walked: boxes in which a
    piece's own middle is nought, the first side's for the third box."""
    own, joint, known = ([], []), [], {}
    for i in range(_TRIED + 1):
        cm = walk.length * i / _TRIED
        stretches = [walk.stretch(side, cm) for side in (0, 1)]
        for side, stretch in enumerate(stretches):
            if id(stretch.piece) not in known:
                laid = _laid(walk, side, cm)
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
            run = one.run if cm >= one.end else cut_along(one.run, cm - one.start)[0]
            found.extend(moved(run, laid.move))
    return tuple(found)


def _names(shown, places, scale):
    """Each piece's name inside it, clear of the marks and of each other."""
    taken = [(at.real - 0.2 * scale, at.imag - 0.2 * scale, at.real + 0.2 * scale, at.imag + 0.2 * scale) for at in places]
    for _, laid in shown:
        for place in written_in(laid, laid.piece.name, scale, taken):
            taken.append(text_box(*place, "middle", 0.0, scale))
            yield place


def _described(walk, cm, unit, title):
    sides = (" and ".join(dict.fromkeys(one.piece.name for one in side)) for side in walk.sides)
    return (f"{title}. On the one side {next(sides)}, on the other {next(sides)}; {say_length(cm, unit)} of "
            f"{say_length(walk.length, unit)} are walked, on both sides alike.")


def _middle(box):
    return complex(box[0] + box[2], box[1] + box[3]) / 2


def _shifted(box, step):
    return box[0] + step.real, box[1] + step.imag, box[2] + step.real, box[3] + step.imag
