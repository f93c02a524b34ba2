"""The strokes that a notch is cut or marked by."""

from corsetkit.finish.notches import BETWEEN
from corsetkit.geometry.points import between, cross, dot


def notch_strokes(notches, cutting, scale=1.0):
    """The notches' cuts and the marks that are not cut, each a (start, end) pair; `cutting` is the closed polyline."""
    cuts, marked = [], []
    for notch in notches:
        aside = notch.inward * 1j * BETWEEN / 2
        for at in (notch.point + aside, notch.point - aside) if notch.count == 2 else (notch.point,):
            at = at if notch.count == 1 else _onto(at, notch.inward, cutting)
            if notch.depth > 0:
                cuts.append((at, at + notch.inward * notch.depth))
            else:
                across = notch.inward * 0.17 * scale
                marked.append((at - across, at + across))
    return tuple(cuts), tuple(marked)


def _onto(point, way, line):
    """Where the line through `point` along `way` meets the closed polyline nearest to it; the point itself where nowhere."""
    best = None
    for p, q in zip(line, (*line[1:], line[0])):
        here, there = cross(way, p - point), cross(way, q - point)
        if here * there <= 0 and here != there:
            along = dot(way, between(p, q, here / (here - there)) - point)
            if best is None or abs(along) < abs(best):
                best = along
    return point + way * best if best is not None and abs(best) < BETWEEN else point
