"""Follows a hand's instructions from their data alone, and draws the curves as a steady hand would.

Every length is first rounded as a tape of sixteenths is read; turns come from the marks already found.
"""

import cmath
import math

from corsetkit.pattern.instructions import (
    Along,
    Begin,
    Check,
    Compass,
    Curve,
    Halve,
    Join,
    Measure,
    Offset,
    Same,
    Swing,
    Towards,
    Turn,
)
from corsetkit.units import round_to_sixteenth


def follow(instructions, precision=round_to_sixteenth):
    """(marks, lines, checks): points by mark, polylines by line, and [(Check, measured length)].

    `precision` rounds a length as it is laid off.
    """
    marks, lines, checks = {}, {}, []

    def found(name, point):
        assert name not in marks, f"{name} is made twice"
        marks[name] = point

    def step(bearing, start):
        if isinstance(bearing, Compass):
            return bearing.step
        if isinstance(bearing, Towards):
            return _unit(marks[bearing.mark] - marks[start])
        path = _unit(marks[bearing.end] - marks[bearing.start])
        return path if isinstance(bearing, Along) else path * (1j if bearing.left else -1j)

    for one in instructions:
        match one:
            case Begin():
                found(one.to, one.at)
            case Measure():
                found(one.to, marks[one.start] + precision(one.length) * step(one.bearing, one.start))
            case Offset():
                foot = precision(one.length) * step(one.bearing, one.start)
                aside = precision(one.aside) * step(one.then, one.start)
                found(one.to, marks[one.start] + foot + aside)
            case Swing():
                found(
                    one.to,
                    _crossing(
                        marks[one.first],
                        precision(one.first_length),
                        marks[one.second],
                        precision(one.second_length),
                        one.left,
                    ),
                )
            case Halve():
                found(one.to, (marks[one.start] + marks[one.end]) / 2)
            case Same():
                found(one.to, marks[one.start])
            case Turn():
                centre = marks[one.about]
                turn = _unit(marks[one.on] - centre) / _unit(marks[one.lay] - centre)
                for old, new in one.moved:
                    found(new, centre + turn * (marks[old] - centre))
            case Join():
                lines[one.line] = [marks[one.start], marks[one.end]]
            case Curve():
                ends = (one.leaves and step(one.leaves, one.marks[0]), one.arrives and step(one.arrives, one.marks[-1]))
                lines[one.line] = drawn_through([marks[name] for name in one.marks], *ends)
            case Check():
                checks.append((one, sum(length_of(lines[line]) for line in one.lines)))
            case _:
                raise AssertionError(f"no hand knows what {one!r} is")
    return marks, lines, checks


def length_of(polyline):
    return sum(abs(b - a) for a, b in zip(polyline, polyline[1:]))


def drawn_through(points, leaves=None, arrives=None, parts=24):
    """A polyline on the cubic spline through the points: clamped where a way is given, free where not."""
    if len(points) == 2 and leaves is None and arrives is None:
        return list(points)
    spans = [abs(b - a) for a, b in zip(points, points[1:])]
    slopes = [(b - a) / span for a, b, span in zip(points, points[1:], spans)]
    last = len(spans)
    # A tridiagonal system for the ways at the points: bending is the same on both sides of each.
    low, middle, high, right = [0.0] * (last + 1), [1.0] * (last + 1), [0.0] * (last + 1), [0j] * (last + 1)
    if leaves is None:
        middle[0], high[0], right[0] = 2.0, 1.0, 3 * slopes[0]
    else:
        right[0] = leaves
    if arrives is None:
        middle[last], low[last], right[last] = 2.0, 1.0, 3 * slopes[-1]
    else:
        right[last] = arrives
    for i in range(1, last):
        low[i], middle[i], high[i] = spans[i], 2 * (spans[i - 1] + spans[i]), spans[i - 1]
        right[i] = 3 * (spans[i] * slopes[i - 1] + spans[i - 1] * slopes[i])
    for i in range(1, last + 1):
        share = low[i] / middle[i - 1]
        middle[i] -= share * high[i - 1]
        right[i] -= share * right[i - 1]
    bearings = [0j] * (last + 1)
    bearings[last] = right[last] / middle[last]
    for i in range(last - 1, -1, -1):
        bearings[i] = (right[i] - high[i] * bearings[i + 1]) / middle[i]
    drawn = [points[0]]
    for a, b, span, v, w in zip(points, points[1:], spans, bearings, bearings[1:]):
        for k in range(1, parts + 1):
            t = k / parts
            drawn.append(
                (2 * t**3 - 3 * t**2 + 1) * a
                + (t**3 - 2 * t**2 + t) * span * v
                + (3 * t**2 - 2 * t**3) * b
                + (t**3 - t**2) * span * w
            )
    return drawn


def farthest(polyline, other):
    """How far the first polyline's points lie from the second, at most."""
    return max(min(_distance(p, a, b) for a, b in zip(other, other[1:])) for p in polyline)


def _distance(p, a, b):
    step = b - a
    if not step:
        return abs(p - a)
    t = ((p - a) * step.conjugate()).real / abs(step) ** 2
    return abs(p - a - step * min(1.0, max(0.0, t)))


def _crossing(a, at_a, b, at_b, left):
    span = abs(b - a)
    along = (span**2 + at_a**2 - at_b**2) / (2 * span)
    # Arcs that only just miss each other are taken to touch, as a compass point's width would let them.
    aside = math.sqrt(max(0.0, at_a**2 - along**2))
    return a + _unit(b - a) * complex(along, aside if left else -aside)


def _unit(step):
    return cmath.rect(1.0, cmath.phase(step))
