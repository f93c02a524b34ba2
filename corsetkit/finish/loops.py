"""Where a closed polyline crosses itself, and how small loops are left out of it.

In a hollow that is tighter than the allowance is wide, the line parallel to the sewing line turns back and crosses
itself. What lies in that loop is nearer to the sewing line than the allowance asks: the cutting line goes on at the
crossing instead.
"""

from corsetkit.geometry.points import cross

_LOOP = 0.25
"""A loop longer than this share of the whole line is none that may be left out."""


def without_loops(points, owners):
    """The closed polyline, its loops left out; `owners` says of each point what it belongs to.

    Returns:
        (points, owners), both tuples. The line may still cross itself where a loop is too long to be left out.
    """
    points, owners = list(points), list(owners)
    for _ in range(40):
        met = crossing(points)
        if not met:
            break
        i, j = met
        at = _meet(points[i], points[i + 1], points[j], points[(j + 1) % len(points)])
        if at is None:
            break
        inner, whole = _length([at, *points[i + 1:j + 1], at]), _length([*points, points[0]])
        if inner <= _LOOP * whole:
            points, owners = points[:i + 1] + [at] + points[j + 1:], owners[:i + 1] + [owners[j]] + owners[j + 1:]
        elif whole - inner <= _LOOP * whole:
            points, owners = [at, *points[i + 1:j + 1]], [owners[i], *owners[i + 1:j + 1]]
        else:
            break
    return tuple(points), tuple(owners)


def crossing(points):
    """The numbers of the first two sides of the closed polyline that share a point, neighbours aside; None where none do.

    A line that does not run counter-clockwise has turned inside out: its first two sides are named.
    """
    from shapely import LinearRing
    ring = LinearRing([(p.real, p.imag) for p in points])
    if ring.is_simple:
        return None if ring.is_ccw else (0, 1)
    return _first(points)


def _first(points):
    from shapely import STRtree, linestrings
    count = len(points)
    sides = linestrings([[(p.real, p.imag), (q.real, q.imag)] for p, q in zip(points, [*points[1:], points[0]])])
    pairs = STRtree(sides).query(sides, predicate="intersects").T
    found = [(int(i), int(j)) for i, j in pairs if i < j and j - i not in (1, count - 1)]
    # Two neighbours that fold back onto each other are not among them.
    return min(found, key=lambda pair: pair[1] - pair[0]) if found else (0, 1)


def _meet(a, b, c, d):
    """Where the straight lines a-b and c-d meet; None where they are parallel."""
    ab, cd = b - a, d - c
    slant = cross(ab, cd)
    return a + ab * (cross(c - a, cd) / slant) if abs(slant) > 1e-12 else None


def _length(points):
    return sum(abs(q - p) for p, q in zip(points, points[1:]))
