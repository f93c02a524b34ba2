"""Closed runs as areas: their size, their sense of turning, and whether they cross themselves.

Judged here in plain Python, so that a draft needs no library; tests hold it against shapely.
"""

from .path import flattened
from .points import cross

COARSE = 0.02
"""Tolerance of the polyline on which crossing is judged: a fifth of a millimetre, in cm."""


def area(run):
    """The area inside a closed run in cm2, above nought where it runs counter-clockwise. Exact for its curves."""
    return sum(curve.swept_area for curve in run) / 2


def gaps(run):
    """The distances in cm by which each curve's end misses the next one's start, round the closed run."""
    return [abs(after.start - before.end) for before, after in zip(run, run[1:] + run[:1])]


def is_simple(run):
    """Whether the closed run neither crosses nor touches itself."""
    points = []
    for point in flattened(run, COARSE):
        if not points or abs(point - points[-1]) > 1e-7:
            points.append(point)
    while len(points) > 1 and abs(points[-1] - points[0]) <= 1e-7:
        points.pop()
    count = len(points)
    sides = []
    for i in range(count):
        a, b = points[i], points[(i + 1) % count]
        sides.append((min(a.real, b.real), max(a.real, b.real), i, a, b))
    sides.sort(key=lambda side: side[0])
    live = []
    for left, right, i, a, b in sides:
        live = [side for side in live if side[1] >= left]
        for _, _, k, c, d in live:
            if (i - k) % count in (1, count - 1):
                if _folds_back(a, b, c, d):
                    return False
            elif _meet(a, b, c, d):
                return False
        live.append((left, right, i, a, b))
    return True


def _meet(a, b, c, d):
    """Whether the sides a-b and c-d share a point."""
    if (a.imag > c.imag and a.imag > d.imag and b.imag > c.imag and b.imag > d.imag) or \
            (a.imag < c.imag and a.imag < d.imag and b.imag < c.imag and b.imag < d.imag):
        return False
    ab, cd = b - a, d - c
    return cross(ab, c - a) * cross(ab, d - a) <= 0 and cross(cd, a - c) * cross(cd, b - c) <= 0


def _folds_back(a, b, c, d):
    """Whether two neighbouring sides lie on each other."""
    shared = b if b == c or b == d else a
    p = a if shared == b else b
    q = d if shared == c else c
    one, two = p - shared, q - shared
    return abs(cross(one, two)) < 1e-12 * abs(one) * abs(two) and (one * two.conjugate()).real > 0
