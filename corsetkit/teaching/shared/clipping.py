"""Lines and areas cut off at the borders of what is shown, and arcs of circles as paths of cubics."""

import math

from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.paths import flattened
from corsetkit.geometry.points import between, direction, dot

_WIDEST = 45.0


def arc(centre, start, degrees):
    """The path from the point `start` round `centre` through `degrees`, counter-clockwise above zero."""
    count = max(1, math.ceil(abs(degrees) / _WIDEST))
    turn = direction(degrees / count)
    reach = 4 / 3 * math.tan(math.radians(degrees / count) / 4) * 1j
    made, out = [], start - centre
    for _ in range(count):
        there = out * turn
        made.append(Cubic(centre + out, centre + out * (1 + reach), centre + there * (1 - reach), centre + there))
        out = there
    return tuple(made)


def clipped(path, box):
    """What of a path lies in the box (left, bottom, right, top), cm: the path itself where all of it does,
    else a path of short straight lines, with gaps where it leaves the box; empty where nothing does."""
    left, bottom, right, top = box
    # A path may have gaps already, as hatching has, so each curve is looked at alone.
    kept, whole = [], True
    for curve in path:
        points = [curve.start, curve.end] if isinstance(curve, Line) else flattened((curve,), 0.02)
        if all(left <= p.real <= right and bottom <= p.imag <= top for p in points):
            kept.append(curve)
            continue
        whole = False
        kept += [one for a, b in zip(points, points[1:]) for one in _part(a, b, box)]
    return tuple(path) if whole else tuple(kept)


def _part(a, b, box):
    """The part of a straight line in the box, as a tuple of one Line or none."""
    step, low, high = b - a, 0.0, 1.0
    for start, tangent, least, most in ((a.real, step.real, box[0], box[2]), (a.imag, step.imag, box[1], box[3])):
        if abs(tangent) < 1e-12:
            if not least <= start <= most:
                return ()
            continue
        ends = sorted(((least - start) / tangent, (most - start) / tangent))
        low, high = max(low, ends[0]), min(high, ends[1])
    return (Line(between(a, b, low), between(a, b, high)),) if high - low > 1e-9 else ()


def kept(points, inside):
    """What of a closed polyline lies where `inside(point)` is not below zero; `inside` changes evenly along a line."""
    found = []
    for p, q in zip(points, (*points[1:], points[0]) if points else ()):
        here, there = inside(p), inside(q)
        if here >= 0:
            found.append(p)
        if (here < 0) != (there < 0):
            found.append(p + (q - p) * here / (here - there))
    return tuple(found)


def area_in(points, box):
    """The closed polyline cut off at the box (left, bottom, right, top)."""
    left, bottom, right, top = box
    for tangent, least in ((1, left), (-1, -right), (1j, bottom), (-1j, -top)):
        points = kept(points, lambda p, tangent=tangent, least=least: dot(p, tangent) - least)
    return tuple(points)
