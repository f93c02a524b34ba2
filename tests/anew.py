"""A pattern measured anew with numpy and shapely: none of the package's own lengths, areas or angles are asked.

Curves are evaluated here, from their control points, far more finely than the package hands them out.
"""

from functools import lru_cache

import numpy as np
import shapely
from shapely import LineString, Point, Polygon

from corsetkit.geometry.curve import Cubic
from corsetkit.pattern.edge import Kind

FINE = 2e-4  # cm between a curve and the chords it is measured by
SMOOTH_KINDS = (Kind.NECKLINE, Kind.ARMSCYE, Kind.HEM, Kind.TOP, Kind.LACING)
"""Free edges that run on from piece to piece."""


@lru_cache(maxsize=4096)
def points(path, count=None):
    """Points along a run of curves by the Bernstein form of their control points, `count` a curve or as many as FINE asks.

    Several promises measure the same lines, one after the other; what is handed out is nobody's to change.
    """
    found = [np.array([path[0].start])]
    for curve in path:
        if isinstance(curve, Cubic):
            bend = max(abs(curve.start - 2 * curve.first + curve.second), abs(curve.first - 2 * curve.second + curve.end))
            found.append(place(curve, np.linspace(0, 1, (count or 2 + int((0.75 * bend / FINE) ** 0.5)) + 1)[1:]))
        else:
            found.append(np.array([curve.end]))
    z = np.concatenate(found)
    made = np.column_stack([z.real, z.imag])
    made.flags.writeable = False
    return made


def place(curve, t):
    """The point of a cubic at `t`."""
    s = 1 - t
    return s**3 * curve.start + 3 * s * s * t * curve.first + 3 * s * t * t * curve.second + t**3 * curve.end


def line(path):
    return LineString(points(path))


@lru_cache(maxsize=4096)
def area(path):
    # The last point is the first one but for rounding.
    return Polygon(points(path)[:-1])


def moved(path, move):
    return tuple(curve.moved(move) for curve in path)


def at(z):
    return Point(z.real, z.imag)


def pieces_of(pattern):
    """The pieces that are no copies."""
    return [piece for piece in pattern.pieces if not piece.copied]


def holders(pattern):
    return {id(edge): piece for piece in pattern.pieces for edge in piece.edges}


def swept(blend):
    """The region between a line and what it became."""
    there, back = points(blend.before), points(blend.after)[::-1]
    ring = LineString(np.concatenate([there, back, there[:1]]))
    return shapely.union_all(list(shapely.polygonize(shapely.get_parts(shapely.node(ring))).geoms))


def corner(before, after):
    """Degrees inside the corner of two runs end to end, the inside to their left."""
    last, first = before[-1], after[0]
    one = last.end - (place(last, 1 - 1e-5) if isinstance(last, Cubic) else last.start)
    two = (place(first, 1e-5) if isinstance(first, Cubic) else first.end) - first.start
    return 180 - np.degrees(np.angle(two / one))


def angle_at(path, z):
    """Degrees inside a closed run at its corner `z`; 0 where it has no corner there."""
    for before, after in zip(path, path[1:] + path[:1]):
        if abs(before.end - z) < 1e-9:
            return corner((before,), (after,))
    return 0.0


def seam_corners(pattern):
    """At both ends of every seam: (seam, the next edge on each side, the two inner angles' sum).

    A sum of 180 degrees is a border that runs on smoothly from one piece to its neighbour.
    """
    holder = holders(pattern)
    for seam in pattern.seams:
        for number in (0, -1):
            beyond, total = [], 0.0
            for side, against in zip(seam.sides, seam.against):
                edge = side[number]
                edges = holder[id(edge)].edges
                place = next(k for k, one in enumerate(edges) if one is edge)
                leaves = (number == -1) != against
                next_one = edges[(place + 1) % len(edges)] if leaves else edges[place - 1]
                total += corner(edge.path, next_one.path) if leaves else corner(next_one.path, edge.path)
                beyond.append(next_one)
            yield seam, beyond, total


def one_line(first, second):
    """Whether two edges continue each other: the same kind of free edge, or the same side of one seam."""
    if first.seam is None and second.seam is None:
        return first.kind is second.kind and first.kind in SMOOTH_KINDS
    return first.seam is second.seam and any(
        any(edge is first for edge in side) and any(edge is second for edge in side) for side in first.seam.sides
    )


def girths(pattern):
    """Bust, underbust, waist and hem of the finished pattern, from the level lines' crossings with the parts."""
    steps = pattern.steps
    point, gap = steps.overbust.bust_point, pattern.style.lacing_gap
    # A level that runs along the edge of a part counts as within it.
    grown = [area(part.outline).buffer(2e-6, join_style="mitre") for piece in pieces_of(pattern) for part in piece.parts]
    parts = shapely.union_all(grown)

    def level(y, left=-200.0, right=300.0):
        return parts.intersection(LineString([(left, y), (right, y)])).length

    # A hair above the hem's highest point: a level that touches a curve in one place would lose a stretch to its chords.
    hems = [edge.line for piece in pieces_of(pattern) for edge in piece.edges if edge.kind is Kind.HEM]
    middle = (steps.block.front.underarm.real + steps.block.back.underarm.real) / 2
    lower = steps.overbust.dart_lower
    bust = (
        parts.intersection(LineString([(lower.real, lower.imag), (point.real, point.imag)])).length
        + level(point.imag, point.real, middle)
        + level(steps.block.back.bust_level, middle)
    )
    return {
        "bust": 2 * bust + gap,
        "underbust": 2 * level(steps.underbust.mark.imag) + gap,
        "waist": 2 * level(0.0) + gap,
        "hem": 2 * level(max(one.bounds[3] for one in hems) + 5 * FINE) + gap,
    }
