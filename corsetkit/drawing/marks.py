"""The small marks of a piece: seam letters in rings, notches across the sewing line, the bracket of a fold.

Their places are found by measuring; nothing here paints.
"""

from dataclasses import dataclass

from corsetkit.drawing.lettering import ASCENT, DESCENT, around, crosses, overlap, text_box, text_width
from corsetkit.drawing.pens import FOLD_WORDS
from corsetkit.geometry.paths import flattened
from corsetkit.geometry.points import between, direction, dot, heading, unit

RING_RADIUS = 2.05
"""Radius of a seam mark's ring, mm as seen."""

FOLD_TEXT = "on the fold"

_COARSE = 0.05
"""How near the polyline that places are searched on keeps to the curves, cm."""

RING_APART = 0.05
"""How far a ring keeps from all else, cm as seen: its rim is drawn half outside its box."""

_FOLD_SHARES = (0.34, 0.42, 0.27, 0.5, 0.2, 0.58, 0.66, 0.74, 0.8)
_SHARES = (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82)


class Course:
    """An edge as a polyline: near enough to say where a mark stands and which way the edge runs there."""

    def __init__(self, edge):
        self.points = flattened(edge.path, _COARSE)
        self._sides = [(a, b - a, abs(b - a)) for a, b in zip(self.points, self.points[1:]) if a != b]
        self._length = sum([long for _, _, long in self._sides])

    def at(self, share):
        """The point at a share of the way, and the unit step there."""
        rest = share * self._length
        for start, step, long in self._sides:  # noqa: B007  (the side that was reached is asked of below)
            if rest <= long:
                break
            rest -= long
        return start + step * min(rest / long, 1.0), step / long


@dataclass(frozen=True)
class Tick:
    """A notch: the point on the sewing line, and the unit step along it there."""

    at: complex
    tangent: complex


@dataclass(frozen=True)
class Mark:
    """A seam's mark by an edge: the ring's centre and box, and what is written in it."""

    edge: object
    at: complex
    box: tuple
    text: str


@dataclass(frozen=True)
class FoldMark:
    """The bracket that lays a piece to the fold: its four corners, and where words stand along it (None: no room)."""

    corners: tuple
    at: complex | None
    turn: float


def seam_letter(number):
    """The seam's mark: A, B ... Z, AA, AB ..."""
    text = ""
    while number > 0:
        number, rest = divmod(number - 1, 26)
        text = chr(65 + rest) + text
    return text


def ticks(piece, courses):
    """The piece's notches; `courses` maps an edge's id to its course."""
    return tuple(Tick(notch.point, courses[id(notch.edge)].at(notch.along / notch.edge.length)[1]) for notch in piece.notches)


def seam_mark(edge, course, room, scale):
    """The mark near the edge's middle, inside the piece and clear of all else; None where there is no such place.

    The room knows of it afterwards.
    """
    radius = RING_RADIUS * scale / 10
    for inset in (radius + 0.06 * scale, radius + 0.16 * scale, radius + 0.31 * scale):
        for share in _SHARES:
            at, box = _ring(course, share, inset, radius)
            if room.holds(box, RING_APART * scale):
                room.taken.append(box)
                return Mark(edge, at, box, seam_letter(edge.seam.number))
    return None


def outer_mark(edge, course, room, points, scale):
    """The mark just outside the edge, for a piece too narrow to hold it; the middle where that is taken too."""
    radius = RING_RADIUS * scale / 10
    sides = list(zip(points, points[1:] + points[:1]))
    for share in _SHARES:
        at, box = _ring(course, share, -radius - 0.08 * scale, radius)
        if not any(overlap(box, other) for other in room.taken) and not any(crosses(a, b, box) for a, b in sides):
            break
    else:
        at, box = _ring(course, 0.5, -radius - 0.08 * scale, radius)
    room.taken.append(box)
    return Mark(edge, at, box, seam_letter(edge.seam.number))


def _ring(course, share, inset, radius):
    """A ring's centre and box at a share of the way, `inset` to the left of the edge."""
    at, tangent = course.at(share)
    at += tangent * 1j * inset
    return at, (at.real - radius, at.imag - radius, at.real + radius, at.imag + radius)


def fold_mark(edge, room, scale):
    """The bracket near the middle of a fold, its ends pointing at the fold, and its words inside it.

    The room knows of it afterwards.
    """
    first, last = edge.path[0].start, edge.path[-1].end
    tangent = unit(last - first)
    into, half, inset = tangent * 1j, min(0.36 * edge.length, 1.5 * scale), 0.28 * scale
    turn = heading(tangent)
    if not -90 < turn <= 90:
        turn += 180 if turn <= -90 else -180
    size = FOLD_WORDS.size * scale / 10
    # Letters that rise into the piece stand on the bracket's side of the words, others hang from it.
    rise = DESCENT if dot(direction(turn) * 1j, into) > 0 else ASCENT
    off = inset + 0.08 * scale + rise * size
    length = text_width(FOLD_TEXT, FOLD_WORDS, scale)
    # Below the middle, so that it does not contend with the label for one place while a slider moves.
    low, high_end = (first, last) if first.imag < last.imag else (last, first)
    for share in (*_FOLD_SHARES, None):
        least = half / edge.length + 0.03
        middle = between(low, high_end, 0.5 if share is None else min(max(share, least), 1 - least))
        corners = (
            middle - tangent * half,
            middle - tangent * half + into * inset,
            middle + tangent * half + into * inset,
            middle + tangent * half,
        )
        taken = [(c.real, c.imag, c.real, c.imag) for c in corners]
        at = middle + into * off if share else None
        if at is not None:
            # Asked for letter by letter, as it were: a slanting line of words fills its box only along the slant.
            high = (ASCENT + DESCENT) * size / 2
            line = middle + into * (inset + 0.08 * scale + high)
            spots = [line + tangent * length * part / 8 for part in range(-4, 5)]
            if not (
                all(room.holds((p.real - high, p.imag - high, p.real + high, p.imag + high)) for p in spots)
                and all(room.holds((p.real, p.imag, p.real, p.imag)) for p in corners[1:3])
            ):
                continue
            taken.append(text_box(at, FOLD_TEXT, FOLD_WORDS, "middle", turn, scale))
        room.taken.append(around(taken))
        return FoldMark(corners, at, turn)
