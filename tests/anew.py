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


def level_lines(pattern):
    """By girth the lines on the block along which it is taken: (from, to) each, on half the body."""
    steps = pattern.steps
    point, lower = steps.overbust.bust_point, steps.overbust.dart_lower
    # A hair above the hem's highest point: a level that touches a curve in one place would lose a stretch to its chords.
    hems = [edge.line for piece in pieces_of(pattern) for edge in piece.edges if edge.kind is Kind.HEM]
    middle = (steps.block.front.underarm.real + steps.block.back.underarm.real) / 2

    def level(y, left=-200.0, right=300.0):
        return complex(left, y), complex(right, y)

    return {
        "bust": [(lower, point), level(point.imag, point.real, middle), level(steps.block.back.bust_level, middle)],
        "underbust": [level(steps.underbust.mark.imag)],
        "waist": [level(0.0)],
        "hem": [level(max(one.bounds[3] for one in hems) + 5 * FINE)],
    }


def girths(pattern):
    """Bust, underbust, waist and hem of the finished pattern, from the level lines' crossings with the parts."""
    # A level that runs along the edge of a part counts as within it.
    parts = shapely.union_all(
        [area(part.outline).buffer(2e-6, join_style="mitre") for piece in pieces_of(pattern) for part in piece.parts]
    )
    return {
        name: 2 * sum(parts.intersection(LineString([(a.real, a.imag), (b.real, b.imag)])).length for a, b in lines)
        + pattern.style.lacing_gap
        for name, lines in level_lines(pattern).items()
    }


def cut_girths(pattern):
    """The same girths from the pieces as they are cut: each level line is carried into a piece with the part that it crosses,
    and measured from edge to edge of the piece there."""
    found = {}
    for name, lines in level_lines(pattern).items():
        half = 0.0
        for piece in pieces_of(pattern):
            outline = area(piece.path).buffer(2e-6, join_style="mitre")
            taken = []
            for part in piece.parts:
                within = area(part.outline).buffer(2e-6, join_style="mitre")
                for a, b in lines:
                    crossed = within.intersection(LineString([(a.real, a.imag), (b.real, b.imag)]))
                    for one in getattr(crossed, "geoms", [crossed]):
                        if one.length < 0.05:
                            continue
                        ends = [part.move(complex(*end)) for end in one.coords]
                        way = (ends[1] - ends[0]) / abs(ends[1] - ends[0])
                        # The bust line begins and ends in the bust point on the cups; elsewhere it runs from edge to edge.
                        open_ends = [abs(end - pattern.steps.overbust.bust_point) > 1e-3 for end in ends]
                        far = [ends[0] - way * open_ends[0], ends[1] + way * open_ends[1]]
                        through = outline.intersection(LineString([(z.real, z.imag) for z in far]))
                        middle = at((ends[0] + ends[1]) / 2)
                        taken.append(min(getattr(through, "geoms", [through]), key=middle.distance))
            half += shapely.union_all([one.buffer(1e-5, cap_style="flat") for one in taken]).area / 2e-5 if taken else 0.0
        found[name] = 2 * half + pattern.style.lacing_gap
    return found
