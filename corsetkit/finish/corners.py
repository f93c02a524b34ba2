"""The cutting line's corners: where the allowances of two edges meet.

Where an edge that is sewn later runs across one that is sewn before, the earlier one's allowance has by then been
pressed open or to a side. Its end is cut so that it lies under the later edge whichever way it is pressed: on the
piece with the sharp angle it is the mirror image of the piece's own edge about the sewing line, on its neighbour with
the blunt angle it runs straight on; so the corners of the two pieces meet when they lie right sides together. Where
neither edge runs across the other, both allowances are carried on to where they meet. Long points are squared off.
The custom of mirrored ends: common practice, no source. Which of two ends serves for both: course convention.
"""

import math
from dataclasses import dataclass

from corsetkit.finish.cutting_line import Stroke
from corsetkit.geometry.points import Point, dot, turn_between

SMOOTH = 5.0
"""Edges that meet within so many degrees of a straight line have no corner: unequal allowances meet in a step."""
LONGEST = 2.0
"""A corner's point reaches no farther from the sewing line's corner than so many widths of the wider allowance: course
convention."""
_SHARE = 0.45
"""How much of a stroke a corner may take off at most."""


@dataclass(frozen=True)
class Side:
    """One of a corner's two strokes, seen from the corner: `ahead` the unit step that carries it on beyond the corner,
    `out` the one square to it, away from the piece."""

    stroke: Stroke
    corner: Point
    ahead: complex
    out: complex

    def point(self, beyond: float, outside: float) -> Point:
        return self.corner + beyond * self.ahead + outside * self.out

    @property
    def width(self) -> float:
        return self.stroke.width


@dataclass(frozen=True)
class Corner:
    """How two strokes meet: what is taken off the arriving and off the leaving one (cm), and the points between them."""

    off_arriving: float
    off_leaving: float
    points: tuple[Point, ...]


@dataclass(frozen=True)
class Meeting:
    """The corner between a stroke that arrives and the one that leaves; `angle` is the piece's own, degrees."""

    arriving: Side
    leaving: Side
    angle: float

    @property
    def is_smooth(self) -> bool:
        return abs(180 - self.angle) < SMOOTH

    @property
    def first(self) -> Side | None:
        """The side that is sewn before the other runs across it; None where neither does."""
        a, b = self.arriving.stroke.order, self.leaving.stroke.order
        if a == b or self.is_smooth or self.angle > 180:
            return None
        return self.arriving if a < b else self.leaving

    @property
    def earlier(self) -> Side:
        """The side that is sewn first, at a corner where the other runs across it."""
        if self.first is None:
            raise ValueError("neither side of this corner runs across the other")
        return self.first

    @property
    def later(self) -> Side:
        return self.leaving if self.first is self.arriving else self.arriving

    @property
    def reach(self) -> float:
        """How far beyond the corner the earlier allowance goes on, along its sewing line, at its full width, cm.

        With the angle a between the edges, the earlier edge's width s and the later one's e it is
        (e - s |cos a|) / sin a: where the mirrored edge, for a sharp a, or the edge itself, for a blunt one, crosses the
        earlier cutting line. Two neighbours whose angles make 180 degrees have it in common.
        """
        a = math.radians(self.angle)
        return (self.later.width - self.earlier.width * abs(math.cos(a))) / math.sin(a)

    @property
    def least_reach(self) -> float:
        """The least reach that leaves the earlier stroke its greater part, cm."""
        return -_SHARE * self.earlier.stroke.length


def meeting(arriving: Stroke, leaving: Stroke) -> Meeting:
    """The `Meeting` of two strokes end to end."""
    p, way_in, way_out = arriving.path[-1].end, arriving.path[-1].tangent(1.0), leaving.path[0].tangent(0.0)
    return Meeting(
        Side(arriving, p, way_in, -1j * way_in), Side(leaving, p, -way_out, -1j * way_out), 180 - turn_between(way_in, way_out)
    )


def corner(met: Meeting, reach: float | None = None) -> Corner:
    """The `Corner` of a meeting; `reach` is how far its earlier allowance goes on where the partner has a say in it."""
    first = met.first
    if first is None:
        return _mitred(met)
    off_first, off_later, points = _run_across(met, met.reach if reach is None else reach)
    if first is met.arriving:
        return Corner(off_first, off_later, points)
    return Corner(off_later, off_first, points[::-1])


def _run_across(met: Meeting, reach: float) -> tuple[float, float, tuple[Point, ...]]:
    """What is taken off the earlier and the later stroke, and the points from the earlier's cutting line to the later's."""
    first, a = met.earlier, math.radians(met.angle)
    s, e = first.width, met.later.width
    end = first.point(reach, s)
    points: tuple[Point, ...] = (end,) if reach > 0 else ()
    if met.angle < 90:
        tip = e / math.sin(a)
        longest = LONGEST * max(s, e)
        if tip <= longest or tip <= reach:
            return max(-reach, 0.0), 0.0, (*points, first.point(tip, 0.0))
        # The point is squared off: from the line of its end to the later edge's own cutting line.
        share = (tip - longest) / (tip - reach)
        return (
            max(-reach, 0.0),
            0.0,
            (*points, first.point(longest, share * s), first.point(longest, -(tip - longest) * math.tan(a))),
        )
    # A blunt corner: the later cutting line runs on to the end, from where it has come near the sewing line.
    over = (e * abs(math.cos(a)) - s / 2) / math.sin(a)
    return max(-reach, 0.0), min(max(over, 0.0), _SHARE * met.later.stroke.length), points


def _mitred(met: Meeting) -> Corner:
    """Both cutting lines carried on, or cut back, to where they meet."""
    one, two, a = met.arriving, met.leaving, math.radians(met.angle)
    if met.is_smooth:
        if abs(one.width - two.width) > 1e-9:
            return Corner(0.0, 0.0, ())
        on = back = one.width * math.tan((math.pi - a) / 2)
    else:
        on, back = ((e + s * math.cos(a)) / math.sin(a) for s, e in ((one.width, two.width), (two.width, one.width)))
    points: tuple[Point, ...] = ()
    if on > 1e-6 or back > 1e-6:
        tip = one.point(on, one.width)
        longest = LONGEST * max(one.width, two.width)
        points = (tip,) if abs(tip - one.corner) <= longest else _squared(met, tip, longest)
    return Corner(max(-on, 0.0), max(-back, 0.0), points)


def _squared(met: Meeting, tip: Point, longest: float) -> tuple[Point, Point]:
    """The two points of a mitre cut off square to it, `longest` cm from the sewing line's corner."""
    p = met.arriving.corner
    tangent = (tip - p) / abs(tip - p)

    def on(side: Side) -> Point:
        return side.point((longest - side.width * dot(side.out, tangent)) / dot(side.ahead, tangent), side.width)

    return on(met.arriving), on(met.leaving)
