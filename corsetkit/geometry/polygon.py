"""Closed runs as areas: their size, their sense of turning, and whether they cross themselves.

Judged here in plain Python, so that a draft needs no library; tests hold it against shapely.
"""

from functools import lru_cache

from corsetkit.geometry.curve import FLATNESS, Curves
from corsetkit.geometry.paths import flattened
from corsetkit.geometry.points import Point, cross, to_side

COARSE = 0.02
"""Tolerance of the polyline on which crossing is judged first: a fifth of a millimetre, in cm."""
SHARP = 0.9
"""Sides that leave a corner with more than this as their angle's cosine (some 25 degrees) may meet again near it."""


def area(path: Curves) -> float:
    """The area inside a closed path in cm2, above zero where it runs counter-clockwise. Exact for its curves."""
    return sum(curve.swept_area for curve in path) / 2


def gaps(path: Curves) -> list[float]:
    """The distances in cm by which each curve's end misses the next one's start, round the closed path."""
    return [abs(after.start - before.end) for before, after in zip(path, path[1:] + path[:1])]


@lru_cache(maxsize=1024)
def is_simple(path: Curves) -> bool:
    """Whether the closed path, a tuple, neither crosses nor touches itself, judged within 0.001 cm.

    Verdicts are kept, for while a slider moves most outlines stay as they are. A coarse polyline settles it where its
    sides keep well apart; where two come near each other without meeting, or leave a corner close together, the finer
    one is asked.
    """
    verdict = _judged(path, COARSE, 2 * COARSE)
    # With no margin there is no doubt.
    return bool(_judged(path, FLATNESS, 0.0) if verdict is None else verdict)


def _judged(path: Curves, tolerance: float, margin: float) -> bool | None:
    """True or False, or None where sides that do not meet come within `margin` of each other."""
    points = _corners(path, tolerance)
    count = len(points)
    sides = []
    for i in range(count):
        a, b = points[i], points[(i + 1) % count]
        sides.append((min(a.real, b.real), max(a.real, b.real), i, a, b))
    sides.sort(key=lambda side: side[0])
    live: list[tuple[float, float, int, Point, Point]] = []
    doubt = False
    for left, right, i, a, b in sides:
        live = [side for side in live if side[1] >= left - margin]
        low, high = (a.imag, b.imag) if a.imag < b.imag else (b.imag, a.imag)
        low, high = low - margin, high + margin
        for _, _, k, c, d in live:
            if (c.imag < low and d.imag < low) or (c.imag > high and d.imag > high):
                continue
            if (i - k) % count in (1, count - 1):
                one, two = _from_corner(a, b, c, d)
                cosine = (one * two.conjugate()).real / (abs(one) * abs(two))
                if cosine > 1 - 1e-12:
                    return False
                doubt = doubt or (margin > 0 and cosine > SHARP)
            elif _meet(a, b, c, d):
                return False
            elif margin and not doubt:
                doubt = _distance(a, b, c, d) < margin
        live.append((left, right, i, a, b))
    return None if doubt else True


def _corners(path: Curves, tolerance: float) -> list[Point]:
    """The polyline's points without doubles."""
    points: list[Point] = []
    for point in flattened(path, tolerance):
        if not points or abs(point - points[-1]) > 1e-7:
            points.append(point)
    while len(points) > 1 and abs(points[-1] - points[0]) <= 1e-7:
        points.pop()
    return points


def _from_corner(a: Point, b: Point, c: Point, d: Point) -> tuple[complex, complex]:
    """The steps of two neighbouring sides from the corner they share."""
    shared = b if b == c or b == d else a
    return (a if shared == b else b) - shared, (d if shared == c else c) - shared


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether the sides a-b and c-d share a point."""
    ab, cd = b - a, d - c
    return cross(ab, c - a) * cross(ab, d - a) <= 0 and cross(cd, a - c) * cross(cd, b - c) <= 0


def _distance(a: Point, b: Point, c: Point, d: Point) -> float:
    """How near two sides that do not cross come to each other."""
    return min(to_side(a, c, d), to_side(b, c, d), to_side(c, a, b), to_side(d, a, b))
