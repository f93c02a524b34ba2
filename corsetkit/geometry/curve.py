"""The two kinds of drawn line, with the same words for both: a straight line and a cubic Bezier curve.

Curves stay true curves until they leave the package; `flattened` gives points that lie within
a stated tolerance of them.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import TypeAlias

from corsetkit.geometry.points import Point, cross, direction, heading, unit
from corsetkit.geometry.roots import bernstein_roots

FLATNESS = 0.001
"""How far a polyline handed out may lie from its curve: 0.001 cm, a hundredth of a millimetre."""


def _gauss_legendre(count: int) -> tuple[tuple[float, float], ...]:
    """Places and weights of the Gauss-Legendre rule on [0, 1], by Newton's method on the Legendre polynomial."""
    rule = []
    for i in range(1, count + 1):
        x = math.cos(math.pi * (i - 0.25) / (count + 0.5))
        for _ in range(100):
            p0, p1 = 1.0, x
            for n in range(2, count + 1):
                p0, p1 = p1, ((2 * n - 1) * x * p1 - (n - 1) * p0) / n
            slope = count * (x * p1 - p0) / (x * x - 1)
            step = p1 / slope
            x -= step
            if abs(step) < 1e-16:
                break
        rule.append(((1 - x) / 2, 1 / ((1 - x * x) * slope * slope)))
    return tuple(rule)


_RULE = _gauss_legendre(16)


@dataclass(frozen=True)
class Line:
    """A straight line from `start` to `end`."""

    start: Point
    end: Point

    @cached_property
    def length(self) -> float:
        return abs(self.end - self.start)

    def point(self, t: float) -> Point:
        """The point at `t` of the way, t from 0 to 1."""
        return self.start + (self.end - self.start) * t

    def tangent(self, t: float) -> complex:
        """The unit step in which the line runs at `t`."""
        return unit(self.end - self.start)

    def part(self, t0: float, t1: float) -> "Line":
        """The stretch from `t0` to `t1`."""
        return Line(self.point(t0), self.point(t1))

    @property
    def turned_round(self) -> "Line":
        """The same line run from its end to its start."""
        return Line(self.end, self.start)

    def moved(self, move: Callable[[Point], Point]) -> "Line":
        return Line(move(self.start), move(self.end))

    def t_at(self, length: float) -> float:
        """The t at `length` cm from the start."""
        return length / self.length if self.length else 0.0

    def on_line(self, point: Point, tangent: complex) -> list[float]:
        """Every t at which this meets the endless straight line through `point` along `tangent`."""
        at_start, at_end = cross(tangent, self.start - point), cross(tangent, self.end - point)
        if at_start == at_end or at_start * at_end > 0:
            return []
        return [at_start / (at_start - at_end)]

    def flattened(self, tolerance: float = FLATNESS) -> list[Point]:
        """Points from start to end."""
        return [self.start, self.end]

    @property
    def highest(self) -> float:
        """The y of the highest point."""
        return max(self.start.imag, self.end.imag)

    @property
    def swept_area(self) -> float:
        """Twice the signed area swept about the origin, for areas by Green's theorem."""
        return cross(self.start, self.end)


@dataclass(frozen=True)
class Cubic:
    """A cubic Bezier curve from `start` to `end`, leaving towards `first` and arriving from `second`."""

    start: Point
    first: Point
    second: Point
    end: Point

    @cached_property
    def length(self) -> float:
        return self._length_to(1.0)

    @cached_property
    def _power(self) -> tuple[complex, complex, complex]:
        a, b, c, d = self.start, self.first, self.second, self.end
        return 3 * (b - a), 3 * (c - 2 * b + a), d - 3 * c + 3 * b - a

    def _length_to(self, t: float) -> float:
        c1, c2, c3 = self._power
        c2, c3 = 2 * c2, 3 * c3
        total = 0.0
        for place, weight in _RULE:
            s = place * t
            total += weight * abs((c3 * s + c2) * s + c1)
        return total * t

    def point(self, t: float) -> Point:
        """The point at `t`, from 0 at the start to 1 at the end."""
        c1, c2, c3 = self._power
        return ((c3 * t + c2) * t + c1) * t + self.start

    def _speed(self, t: float) -> complex:
        c1, c2, c3 = self._power
        return (3 * c3 * t + 2 * c2) * t + c1

    def tangent(self, t: float) -> complex:
        """The unit step in which the curve runs at `t`."""
        speed = self._speed(t)
        if abs(speed) < 1e-12:
            speed = self.point(min(1.0, t + 1e-6)) - self.point(max(0.0, t - 1e-6))
        return unit(speed)

    def bend(self, t: float) -> float:
        """The curvature at `t`, for each cm: one over the radius, above zero where it bends left."""
        _, c2, c3 = self._power
        speed = self._speed(t)
        return cross(speed, 2 * c2 + 6 * c3 * t) / abs(speed) ** 3 if abs(speed) > 1e-12 else 0.0

    def part(self, t0: float, t1: float) -> "Cubic":
        """The stretch of the same curve from `t0` to `t1`."""
        third = (t1 - t0) / 3
        start, end = self.point(t0), self.point(t1)
        return Cubic(start, start + self._speed(t0) * third, end - self._speed(t1) * third, end)

    @property
    def turned_round(self) -> "Cubic":
        """The same curve run from its end to its start."""
        return Cubic(self.end, self.second, self.first, self.start)

    def moved(self, move: Callable[[Point], Point]) -> "Cubic":
        return Cubic(move(self.start), move(self.first), move(self.second), move(self.end))

    def t_at(self, length: float) -> float:
        """The t at `length` cm along the curve from its start."""
        whole = self.length
        if length <= 0 or not whole:
            return 0.0
        if length >= whole:
            return 1.0
        low, high, t = 0.0, 1.0, length / whole
        for _ in range(40):
            gap = self._length_to(t) - length
            if gap > 0:
                high = t
            else:
                low = t
            speed = abs(self._speed(t))
            nearer = t - gap / speed if speed else low
            if not low < nearer < high:
                nearer = (low + high) / 2
            if abs(nearer - t) < 1e-13:
                return nearer
            t = nearer
        return t

    def on_line(self, point: Point, tangent: complex) -> list[float]:
        """Every t at which this meets the endless straight line through `point` along `tangent`."""
        return bernstein_roots(
            cross(tangent, self.start - point),
            cross(tangent, self.first - point),
            cross(tangent, self.second - point),
            cross(tangent, self.end - point),
        )

    def flattened(self, tolerance: float = FLATNESS) -> list[Point]:
        """Points from start to end whose straight joins lie within `tolerance` cm of the curve."""
        a, b, c, d = self.start, self.first, self.second, self.end
        bend = 6 * max(abs(a - 2 * b + c), abs(b - 2 * c + d))
        count = max(1, math.ceil(math.sqrt(bend / (8 * tolerance))))
        return [a, *(self.point(i / count) for i in range(1, count)), d]

    @property
    def highest(self) -> float:
        """The y of the highest point: an end, or where the curve runs level."""
        rise, over, fall = (
            later.imag - earlier.imag
            for earlier, later in ((self.start, self.first), (self.first, self.second), (self.second, self.end))
        )
        # The slope is of the second degree; raised by one it is a cubic in Bernstein form.
        level = bernstein_roots(rise, (rise + 2 * over) / 3, (2 * over + fall) / 3, fall)
        return max(self.start.imag, self.end.imag, *(self.point(t).imag for t in level))

    @property
    def swept_area(self) -> float:
        """Twice the signed area swept about the origin, for areas by Green's theorem."""
        a, b, c, d = self.start, self.first, self.second, self.end
        return (6 * cross(a, b) + 3 * cross(a, c) + cross(a, d) + 3 * cross(b, c) + 3 * cross(b, d) + 6 * cross(c, d)) / 10


Curves: TypeAlias = tuple[Line | Cubic, ...]
"""A path: curves of which each begins where the one before it ends."""


def curve(start: Point, leaving: complex, arriving: complex, end: Point, first: float = 1 / 3, second: float = 1 / 3) -> Cubic:
    """A cubic from `start`, leaving along the step `leaving`, to `end`, arriving along the step `arriving`.

    `first` and `second` are the handles' lengths as shares of the straight distance.
    """
    span = abs(end - start)
    return Cubic(start, start + unit(leaving) * span * first, end - unit(arriving) * span * second, end)


def even_arc(start: Point, end: Point, *, leaving: complex | None = None, arriving: complex | None = None) -> Cubic:
    """A curve that bends evenly, like an arc of a circle, given the step at one of its ends."""
    chord = heading(end - start)
    if leaving is not None:
        arriving = direction(2 * chord - heading(leaving))
    elif arriving is not None:
        leaving = direction(2 * chord - heading(arriving))
    else:
        raise ValueError("an arc needs the step at one of its ends")
    return curve(start, leaving, arriving, end)


def quarter(start: Point, leaving: complex, end: Point, arriving: complex) -> Cubic:
    """A curve like a quarter of an ellipse, between two steps about square to each other."""
    span = end - start
    ahead = abs((span * leaving.conjugate()).real)
    aside = abs((span * arriving.conjugate()).real)
    return Cubic(start, start + leaving * 0.55 * ahead, end - arriving * 0.55 * aside, end)
