"""A piece as it will be drawn, in its own coordinates: where its label, its marks and its grainline go.

Laid out before it is drawn, by measuring: nothing here paints.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from corsetkit.drawing import labels
from corsetkit.drawing.free_space import Room
from corsetkit.drawing.labels import Beside
from corsetkit.drawing.lettering import around, crosses, grown, overlap, within
from corsetkit.drawing.marks import Course, FoldMark, fold_mark, outer_mark, seam_mark, ticks
from corsetkit.geometry.points import between
from corsetkit.pattern.edge import Kind


@dataclass(frozen=True)
class View:
    """A piece with everything that is drawn of it; `box` holds it all."""

    piece: object
    notches: tuple
    marks: tuple
    fold: FoldMark | None
    label: tuple
    leader: tuple
    """From where to where a line leads from a label beside the piece into it; empty where the label lies inside."""
    grain: tuple
    """The grainline's strokes, broken where the label stands on it."""
    box: tuple
    partners: tuple = ()
    """Words beside the marks, as (place, text), where they were asked for."""


@dataclass(frozen=True)
class Told:
    """What a piece tells beside its number and name: the label's `lines`, and words beside its seam marks.

    `partners` are those words, one for each sewn edge in their order. Such a piece has its notches cut: it bears none on
    its sewing line.
    """

    lines: tuple
    partners: tuple


def view(piece, scale, more=(), keep_clear=(), told=None):
    """The piece laid out at this scale; `keep_clear` are boxes that no text may stand in, `told` a `Told`."""
    asked = _Asked(piece, scale, more, keep_clear, told)
    laid_out = _kept(asked)
    asked.piece = None
    sewn = [edge for edge in piece.edges if edge.seam]
    return replace(laid_out, piece=piece, marks=tuple(replace(mark, edge=edge) for mark, edge in zip(laid_out.marks, sewn)))


class _Asked:
    """A piece to be laid out, equal to another where all that its layout rests on is equal."""

    def __init__(self, piece, scale, more, keep_clear, told):
        self.piece, self.scale, self.more, self.keep_clear, self.told = piece, scale, tuple(more), tuple(keep_clear), told
        self._key = (
            piece.number,
            piece.name,
            piece.cut,
            piece.on_fold,
            piece.pair,
            piece.grainline,
            scale,
            self.more,
            self.keep_clear,
            told,
            tuple((edge.kind, edge.seam.number if edge.seam else 0, edge.path) for edge in piece.edges),
            tuple((notch.point, notch.tangent) for notch in piece.notches),
        )
        self._hash = hash(self._key)

    def __hash__(self):
        return self._hash

    def __eq__(self, other):
        return self._key == other._key


@lru_cache(maxsize=256)
def _kept(asked):
    """Kept between redraws, for while a slider moves most pieces stay as they are; without the piece itself, for that
    would keep its whole pattern."""
    found = _laid_out(asked.piece, asked.scale, asked.more, asked.keep_clear, asked.told)
    return replace(found, piece=None, marks=tuple(replace(mark, edge=None) for mark in found.marks))


def _laid_out(piece, scale, more, keep_clear, told):
    courses = {id(edge): Course(edge) for edge in piece.edges}
    points = [point for course in courses.values() for point in course.points[1:]]
    outer = around([(p.real, p.imag, p.real, p.imag) for p in points])
    room = Room(points, 0.15 * scale + 0.09)
    room.taken.extend(keep_clear)
    space = labels.SPACE * scale / 10
    notches, reach = () if told else ticks(piece, courses), 0.2 * scale
    room.taken.extend((n.at.real - reach, n.at.imag - reach, n.at.real + reach, n.at.imag + reach) for n in notches)
    fold = next((fold_mark(edge, room, scale) for edge in piece.edges if edge.kind is Kind.FOLD), None)
    # The label needs the most room, so it chooses first; a seam mark can stand anywhere along its edge.
    sewn, before = [edge for edge in piece.edges if edge.seam], list(room.taken)
    for inside in (True, False):
        laid, leader = _label(piece, room, points, outer, scale, space, more, inside, told)
        box = labels.box(laid, scale)
        room.taken.append(grown(box, space))
        beside = [Beside(room, text, scale) for text in told.partners] if told else [room] * len(sewn)
        marks = [seam_mark(edge, courses[id(edge)], place, scale) for edge, place in zip(sewn, beside)]
        # A grainline may run where no text goes.
        grain = _grain(piece, room.taken[len(keep_clear) :], room, grown(box, space), scale)
        if all(marks) and grain:
            break
        # In a piece too small for all of it, the label goes beside it.
        if inside:
            room.taken = list(before)
    marks = [mark or outer_mark(edge, courses[id(edge)], room, points, scale) for edge, mark in zip(sewn, marks)]
    grain = grain or (piece.grainline,)
    whole = around([outer, box, *(mark.box for mark in marks)])
    partners = tuple(one.words(mark) for one, mark in zip(beside, marks)) if told else ()
    return View(piece, notches, tuple(marks), fold, laid, leader, grain, whole, partners)


def _label(piece, room, points, outer, scale, space, more, inside, told):
    """The label in the piece's middle or as near to it as it fits; else under the piece, with a line leading in."""
    near = between(*piece.grainline, 0.58)
    best, cost = None, None
    lines = told.lines if told else None
    for number, block in enumerate(labels.blocks(piece, scale, more, lines) if inside else ()):
        # A label broken over more lines near the middle reads better than an airy one in a far corner.
        dearer = number * 0.6 * scale
        if cost is not None and dearer >= cost:
            break
        at = room.place(block.width, block.height, near, space, None if cost is None else cost - dearer)
        if at is not None:
            best, cost = block.laid(at, scale), abs(at - near) + dearer
    if best:
        return best, ()
    block = labels.blocks(piece, scale, (), lines)[0]
    centre = _beside(block, points, outer, scale, space)
    middle = complex(min(max(centre.real, outer[0] + space), outer[2] - space), outer[1])
    end = room.place(0.02, 0.02, middle, 2 * space)
    start = complex(centre.real, centre.imag + block.height / 2 + space / 2)
    return block.laid(centre, scale), (start, middle if end is None else end)


def _beside(block, points, outer, scale, space):
    """The middle of a label outside the piece: in a lower corner that the piece leaves free, else below it."""
    width, height = block.width / 2, block.height / 2
    sides = list(zip(points, points[1:] + points[:1]))
    for x in (outer[2] - width, outer[0] + width):
        box = grown((x - width, outer[1], x + width, outer[1] + 2 * height), 2 * space)
        # No border in the box and one above it: the corner lies outside the piece.
        if 2 * width < outer[2] - outer[0] and not any(crosses(a, b, box) for a, b in sides):
            return complex(x, outer[1] + height)
    return complex((outer[0] + outer[2]) / 2, outer[1] - 3 * space - height)


def _grain(piece, taken, room, label, scale):
    """The grainline's strokes, clear of the label and of what is taken; none where it finds no place.

    A grainline says a direction: where it is long it is broken for the label, else it is slid aside,
    and made shorter where that does not do.
    """
    foot, head = piece.grainline
    strokes = _broken_about(foot, head, label)
    if (
        strokes
        and strokes[0][0] == foot
        and strokes[-1][1] == head
        and all(abs(end - start) > 0.5 * scale for start, end in strokes)
        and not any(overlap(box, other) for stroke in strokes for box in _line_boxes(*stroke, 0.1 * scale) for other in taken)
    ):
        return strokes
    step, middle, half = head - foot, between(foot, head, 0.5), 0.11 * scale
    everything, room.taken = room.taken, taken
    try:
        for share in (1.0, 0.8, 0.6, 0.45, 0.3, 0.2, 0.15):
            if share < 1.0 and share * abs(step) < 0.55 * scale:
                break
            at = room.place(abs(step.real) * share + 2 * half, abs(step.imag) * share + 2 * half, middle, 0.0)
            if at is not None:
                return ((at - step * share / 2, at + step * share / 2),)
    finally:
        room.taken = everything
    return ()


def _line_boxes(start, end, half):
    """Boxes strung along a straight line, `half` cm to each side of it."""
    count = 1 if abs((end - start).real) < 0.1 else max(1, int(abs(end - start)))
    stops = [between(start, end, i / count) for i in range(count + 1)]
    return [
        (min(a.real, b.real) - half, min(a.imag, b.imag), max(a.real, b.real) + half, max(a.imag, b.imag))
        for a, b in zip(stops, stops[1:])
    ]


def _broken_about(start, end, box):
    """The straight line's strokes outside the box."""
    step = end - start
    enter, leave = within(start, end, box)
    if enter >= leave:
        return ((start, end),)
    strokes = []
    if enter > 0:
        strokes.append((start, start + step * enter))
    if leave < 1:
        strokes.append((start + step * leave, end))
    return tuple(strokes)
