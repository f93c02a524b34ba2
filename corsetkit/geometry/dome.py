"""The two edges of a seam over a dome: each a smooth line through its top, convex from end to end, and equally long.

A cup's two pieces meet along the seam through the bust point. Before it is shaped each edge is two straight legs with a
corner there; the two corners are what the sewn cup turns through. Shaped, each edge passes the point itself: its two curves
have one tangent and one bend there, and run straight into their ends, which open a little. Both edges grow longer than their
legs, by the same amount above the point and below it.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from corsetkit.geometry.curve import Cubic, Curves
from corsetkit.geometry.points import Point, turn_between, unit
from corsetkit.geometry.roots import root, root_near

NEAR = 2.0
"""How far from the point the turning is counted as near it, cm."""
FLATTER = 0.15
"""Of the bend that a plain bow has at its middle, what the flatter edge has at the point: it bends farther out instead, where
bending lengthens it more, for it must grow as much as the fuller one."""
LEAST_ARRIVING = 0.12
"""The least handle at an edge's end, as a share of its leg."""
WIDEST_END = 26.0
"""The most by which an edge opens at its end, degrees."""
LEAST_CORNER = 3.0
"""An edge with a smaller corner than this, degrees, has nothing to shape."""
TIGHTEST = 0.6
"""The least radius at the point with which it is tried, cm."""
SAME = 1e-7
"""How nearly the two edges are equally long, cm."""
NEARLY = 2e-3
"""How nearly the share of turning near the point is what was asked for."""


@dataclass(frozen=True)
class Dome:
    """The two shaped edges, in the order in which they were given, each of two curves from its upper to its lower end.

    The point lies `to_point` cm from the upper end along both. `near` is the share of all their turning that lies within
    `NEAR` cm of the point, and `radius` how tightly the fuller edge bends there, cm.
    """

    edges: tuple[Curves, Curves]
    to_point: float
    near: float
    radius: float


@dataclass(frozen=True)
class _Leg:
    """One curve of an edge in its own terms: from the point at 0 to the end of its straight leg, `length` cm to the right.

    It leaves `aside` radians to the left of the leg, and does not bend at its end. `leaving` is always its first handle as a
    share of the leg, and `bend` its bend at the point, for each cm.
    """

    aside: float
    length: float

    @property
    def bow(self) -> float:
        """The bend of an arc over the leg that leaves as the curve does."""
        return 2 * math.sin(self.aside) / self.length

    def end(self, leaving: float) -> float:
        """By how much it opens at its end, radians: there the first handle's tip lies in the tangent."""
        return math.atan2(leaving * math.sin(self.aside), 1 - leaving * math.cos(self.aside))

    def arriving(self, leaving: float, bend: float) -> float:
        """The handle at its end that gives it this bend at the point, as a share of the leg."""
        turn = self.aside + self.end(leaving)
        return (math.sin(self.aside) - 1.5 * bend * self.length * leaving * leaving) / math.sin(turn)

    def curve(self, leaving: float, bend: float) -> Cubic:
        opened = self.end(leaving)
        first = leaving * self.length * complex(math.cos(self.aside), math.sin(self.aside))
        back = self.arriving(leaving, bend) * self.length * complex(math.cos(opened), -math.sin(opened))
        return Cubic(0j, first, self.length - back, complex(self.length, 0.0))

    def longest(self, bend: float) -> float:
        """The longest first handle that leaves the end a handle, and opens it no farther than is allowed."""
        widest = math.radians(WIDEST_END)
        most = math.sin(widest) / math.sin(self.aside + widest)
        if self.arriving(most, bend) >= LEAST_ARRIVING:
            return most
        return root(lambda leaving: self.arriving(leaving, bend) - LEAST_ARRIVING, 1e-3, most, 1e-6)

    def fullest_at_point(self, bend: float) -> float:
        """The first handle with which it bends nowhere tighter than at the point, and from there slackens least abruptly."""

        def slackens(leaving: float) -> float:
            turn = self.aside + self.end(leaving)
            up = 1.5 * bend * self.length * leaving * leaving
            along = math.cos(self.aside) - self.arriving(leaving, bend) * math.cos(turn)
            return leaving * (math.sin(self.aside) + 9 * up) - 6 * up * along

        longest = self.longest(bend)
        return longest if slackens(longest) > 0 else root(slackens, 1e-3, longest, 1e-6)


def domed(corners: Sequence[tuple[Point, Point, Point]], near: float, radius: float) -> Dome | None:
    """Shape two edges, each given by its upper end, the point with its corner, and its lower end.

    The fuller edge bends at the point with the `radius`, or rounder where more than the share `near` of all turning would lie
    near it; tighter where the flatter edge could not else grow as much. The point turns each edge in the ratio of its legs.

    Args:
        corners: the three points of each edge; the legs are about equally long on both.
        near: the most of all turning that may lie near the point, 0 to 1.
        radius: the least radius at the point, cm.

    Returns:
        A `Dome`, or None where an edge has no corner to speak of, or the two turn so unlike that no such edges exist.
    """
    turns = [math.radians(turn_between(point - top, low - point)) for top, point, low in corners]
    if min(abs(turn) for turn in turns) < math.radians(LEAST_CORNER):
        return None
    full, flat = (0, 1) if abs(turns[0]) >= abs(turns[1]) else (1, 0)
    fuller, flatter = (_legs(corners[one], abs(turns[one])) for one in (full, flat))
    less = FLATTER * min(leg.bow for leg in flatter)

    def made(bend: float) -> tuple[list[Cubic], list[Cubic], float] | None:
        """The fuller and the flatter edge's curves for a bend at the point, and the share of turning near it."""
        first = [leg.curve(leg.fullest_at_point(bend), bend) for leg in fuller]
        second = []
        for leg, beside in zip(flatter, first):
            longest = leg.longest(less)
            if not leg.length < beside.length <= leg.curve(longest, less).length:
                return None
            second.append(leg.curve(_as_long(leg, beside.length, less, longest), less))
        curves = first + second
        return first, second, sum(map(_turned_near, curves)) / sum(_turned(curve, 1.0) for curve in curves)

    found = _searched(made, 1 / radius, near)
    if found is None:
        return None
    bend, (first, second, share) = found
    edges = []
    for number, curves in sorted(((full, first), (flat, second))):
        side = 1 if turns[number] > 0 else -1
        top, point, low = corners[number]
        upper, lower = _placed(curves[0], point, top, side), _placed(curves[1], point, low, -side)
        edges.append((upper.turned_round, lower))
    return Dome((edges[0], edges[1]), first[0].length, share, 1 / bend)


_Made: TypeAlias = tuple[list[Cubic], list[Cubic], float]


def _searched(made: Callable[[float], _Made | None], bend: float, near: float) -> tuple[float, _Made] | None:
    """The bend at the point, as near to the one given as can be made with no more than the share `near` close to it."""
    found = made(bend)
    if found is None:
        # The flatter edge cannot follow: tighter, until it can.
        low, high, best = bend, 1 / TIGHTEST, made(1 / TIGHTEST)
        if best is None:
            return None
        for _ in range(8):
            middle = (low + high) / 2
            tried = made(middle)
            low, high, best = (middle, high, best) if tried is None else (low, middle, tried)
        return high, best
    if found[2] <= near:
        return bend, found
    # Rounder, by the secant method; back towards what could be made where the flatter edge cannot follow.
    last, best = bend, found
    tried_bend = bend * (near / found[2]) ** 2
    for _ in range(8):
        tried = made(tried_bend)
        if tried is None:
            tried_bend = (tried_bend + last) / 2
            continue
        if abs(tried[2] - near) < NEARLY:
            return tried_bend, tried
        slope = (tried[2] - best[2]) / (tried_bend - last)
        last, best = tried_bend, tried
        tried_bend = max(last - (tried[2] - near) / slope, last / 2) if slope > 0 else last / 2
    return last, best


def _legs(corner: tuple[Point, Point, Point], turn: float) -> list[_Leg]:
    """An edge's legs from the point up and down; the point's turn falls to them as their lengths do."""
    top, point, low = corner
    lengths = abs(top - point), abs(low - point)
    return [_Leg(turn * length / sum(lengths), length) for length in lengths]


def _as_long(leg: _Leg, length: float, bend: float, longest: float) -> float:
    """The first handle with which the curve is so long, cm."""
    # The growth goes about as the square of how far the end opens, and that nearly as the handle.
    grown = leg.curve(longest, bend).length - leg.length
    guess = longest * min(1.0, math.sqrt(max(0.0, (length - leg.length) / grown)))
    return root_near(lambda leaving: leg.curve(leaving, bend).length - length, guess, 1e-3, longest, SAME)


def _turned(curve: Cubic, t: float) -> float:
    """Degrees through which a curve of one bend has turned at t."""
    return abs(turn_between(curve.tangent(0.0), curve.tangent(t)))


def _turned_near(curve: Cubic) -> float:
    return _turned(curve, curve.t_at(NEAR))


def _placed(curve: Cubic, point: Point, end: Point, side: int) -> Cubic:
    """The curve in its place, from the point to the end, bulging to the left, or with `side` below zero to the right."""
    along = unit(end - point)
    put = curve.moved(lambda z: point + along * (z if side > 0 else z.conjugate()))
    return Cubic(point, put.first, put.second, end)
