"""The end of a sewn seam, seen from inside: its two allowances before they are pressed, and after.

Near its end a seam is nearly straight, and here it is drawn straight: a point is told by how far it lies along the seam
from its end (`up`, above zero where the pieces are) and how far out from it (`out`, above zero on the allowance's
side), cm. Both partners are told alike, so that they lie on each other as they do right sides together.
"""

import math
from bisect import bisect
from dataclasses import dataclass
from functools import cached_property

from corsetkit.drawing.finished_view import closed
from corsetkit.finish.allowances import Reaches, cutting_line, seam_end, widths
from corsetkit.finish.corners import meeting
from corsetkit.finish.cutting_line import strokes
from corsetkit.geometry import paths
from corsetkit.geometry.points import dot
from corsetkit.teaching.shared.clipping import area_in, clipped, kept
from corsetkit.words import words_of

WORDS = words_of("08_finish")

MANY = 3
"""How many ends are offered: those whose corners are farthest from square, for there the cut can be seen."""
_WINDOW = 2.7
_FINE = 0.08
NOTHING = 0.03
"""What sticks out by less, cm, is nothing that scissors know."""


@dataclass(frozen=True)
class SeamCorner:
    """One partner's corner at a seam's end: the piece, its `Meeting`, and its cutting line.

    `cut_reach` is how far beyond the end the allowance's outer border goes on as it is cut, `seen` how much of the corner
    is shown, both in cm.
    """

    piece: object
    met: object
    cutting: tuple
    cut_reach: float
    seen: float

    @property
    def angle(self):
        return self.met.angle

    @property
    def width(self):
        """The seam's allowance, cm."""
        return self.met.first.width

    @property
    def later_width(self):
        """The allowance of the edge that is sewn later, cm."""
        return self.met.later.width

    @property
    def later(self):
        """The name of the edge that is sewn later."""
        return self.met.later.stroke.edge.name

    def border(self, out):
        """How far up the later edge's cutting line lies, carried on straight, at `out` cm from the seam."""
        a = math.radians(self.angle)
        return -(self.later_width + out * math.cos(a)) / math.sin(a)

    @cached_property
    def flap(self):
        """The seam's allowance as it is cut, as points `out + up * 1j`, from the seam's far end round to its end."""
        return _beside_seam(self._cut, 1.0)

    @cached_property
    def plain(self):
        """The allowance as it would be with both cutting lines carried on to where they meet."""
        w = self.width
        return (complex(0, self.border(0.0)), complex(w, self.border(w)), complex(w, self.seen), complex(0, self.seen))

    def reach(self, plain=False):
        """How far beyond the seam's end its allowance's outer border goes on, cm; `plain` as `plain` has it."""
        return -self.border(self.width) if plain else self.cut_reach

    @cached_property
    def body(self):
        """The piece with the later edge's allowance, without the seam's own."""
        return _beside_seam(self._cut, -1.0)

    @cached_property
    def sewn(self):
        """The piece inside its sewing line."""
        return _beside_seam(self._seen(self._sewing_line), -1.0)

    @cached_property
    def lines(self):
        """The cutting line's stretches beside the allowance, those beside the body, and the sewing line's but the seam's own:
        three tuples of (point, point)."""
        cut, sewn = (tuple(self._stretches(points)) for points in (self.cutting, self._sewing_line))
        return (
            tuple(one for one in cut if _out(one) > 0),
            tuple(one for one in cut if _out(one) <= 0),
            tuple(one for one in sewn if _out(one) < -_FINE / 10),
        )

    @cached_property
    def _sewing_line(self):
        return paths.flattened(self.piece.path, 0.002)[:-1]

    @cached_property
    def _cut(self):
        return self._seen(self.cutting)

    def _local(self, point):
        """The point as it lies, told from the corner: its way out and its way up along the seam's end."""
        step = point - self.met.first.corner
        return complex(dot(step, self.met.first.out), -dot(step, self.met.first.ahead))

    @property
    def _window(self):
        return -self.seen, -self.seen, self.seen, self.seen

    def _seen(self, points):
        """The closed polyline's part that is seen, as told points."""
        seen = area_in(tuple(map(self._local, points)), self._window)
        return tuple(map(self._told, _fine(seen)))

    def _stretches(self, points):
        """The closed polyline's stretches that are seen, told."""
        fine = list(_fine(tuple(map(self._local, points))))
        for one in clipped(closed(fine), self._window):
            yield self._told(one.start), self._told(one.end)

    @cached_property
    def _bend(self):
        """The seam from its end back, as it lies: how far up, and how far out it bends there."""
        stroke = self.met.first.stroke
        path = paths.turned_round(stroke.path) if self.met.first is self.met.arriving else stroke.path
        points = [self._local(p) for p in paths.flattened(paths.cut_along(path, min(2 * self.seen, stroke.length))[0], 0.002)]
        return [p.imag for p in points], [p.real for p in points]

    def _told(self, point):
        """The place with the seam's bend taken out of it: each point is slid out or in as the seam is beside it."""
        ups, outs = self._bend
        number = min(max(bisect(ups, point.imag), 1), len(ups) - 1)
        low, high = ups[number - 1], ups[number]
        share = (min(max(point.imag, low), high) - low) / (high - low) if high > low else 0.0
        return point - (outs[number - 1] + (outs[number] - outs[number - 1]) * share)


def seam_ends(pattern, choices):
    """The seam ends at which two pieces' corners meet: (seam, ((piece, its `Meeting`), (piece, its `Meeting`))).

    The least square ones come first, and in each the sharper corner.
    """
    ends = {}
    for piece in pattern.pieces:
        made = strokes(piece, widths(piece, choices))
        for one, two in zip(made, made[1:] + made[:1]):
            met = meeting(one, two)
            if place := seam_end(met):
                ends.setdefault(place, []).append((piece, met))
    both = [
        (seam, tuple(sorted(found, key=lambda one: one[1].angle)))
        for (seam, _), found in ends.items()
        if len(found) == 2 and found[0][0] is not found[1][0]
    ]
    return sorted(both, key=lambda one: -abs(90 - one[1][0][1].angle))


def seam_corners(pattern, choices, many=MANY):
    """The first `many` of the seam ends, large.

    Returns:
        A list of (name, seam, (SeamCorner, SeamCorner)), the sharper corner first in each.
    """
    reaches, made = Reaches(pattern.pieces, choices), []
    for seam, found in seam_ends(pattern, choices)[:many]:
        seen = max(_WINDOW * max(met.first.width, met.later.width, 0.7) for _, met in found)
        corners = tuple(
            SeamCorner(piece, met, cutting_line(piece, choices, reaches), reaches.at(met), seen) for piece, met in found
        )
        made.append((WORDS("seam_end", seam=seam.name, later=corners[0].later), seam, corners))
    return made


def sticking_out(flap, corner):
    """How far an allowance that is pressed onto the piece of `corner` reaches beyond that piece's cutting line, cm.

    `flap` is told as it lies there: below zero out.
    """
    return max(corner.border(p.real) - p.imag for p in flap)


def _fine(points):
    """The closed polyline with no stretch longer than `_FINE`, cm."""
    for a, b in zip(points, (*points[1:], points[0])):
        count = max(1, math.ceil(abs(b - a) / _FINE))
        for i in range(count):
            yield a + (b - a) * i / count


def _beside_seam(points, side):
    """What of the told polyline lies on one `side` of the seam."""
    return kept(points, lambda p: side * p.real)


def _out(stretch):
    """How far out the middle of a stretch lies, cm."""
    return (stretch[0].real + stretch[1].real) / 2


def beyond_line(points, corner):
    """What of a pressed allowance lies beyond the cutting line of the piece it is pressed onto."""
    return kept(points, lambda p: corner.border(-abs(p.real)) - p.imag)
