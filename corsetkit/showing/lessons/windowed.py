"""Areas cut off at a straight line or at the borders of a window; lines are cut off in clipping.py."""

from corsetkit.geometry.points import dot


def kept(points, inside):
    """What of a closed polyline lies where `inside(point)` is not below nought; `inside` changes evenly along a line."""
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
    for way, least in ((1, left), (-1, -right), (1j, bottom), (-1j, -top)):
        points = kept(points, lambda p, way=way, least=least: dot(p, way) - least)
    return tuple(points)
