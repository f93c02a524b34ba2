"""An edge and the line parallel to it, with square strokes from one to the other that draw nearer where it is hollow."""

from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.showing.lessons.close_up import Patch, Stroke, close_up
from corsetkit.drawing.lettering import around, grown
from corsetkit.drawing.pens import CUT_PAPER, FREE, GUIDE, NEW, SEWN

_APART = 1.6
"""From one square stroke to the next, cm along the edge."""


def hollow_sheet(piece, edge, width, widest, unit, title, description):
    """The sheet of a piece with the line `width` cm outside one of its edges; there is room for `widest` cm."""
    outline = path.flattened(piece.run, 0.05)
    box = grown(around([(p.real, p.imag, p.real, p.imag) for p in outline]), widest + 0.6)
    scale = (box[3] - box[1]) / 11.0
    beside, square = parallel(edge, width)
    strokes = [Stroke(one.run, SEWN if one is edge else FREE, one.name) for one in piece.edges]
    if width > 1e-9:
        strokes.append(Stroke(tuple(Line(a, b) for a, b in square), GUIDE))
        strokes.append(Stroke(beside, NEW, f"cutting line beside the {edge.name}", "new", 3))
    return close_up(title, description, box, scale, unit, [Patch(piece.run, CUT_PAPER)], strokes,
                    key=((SEWN, f"the {edge.name}, sewing line"), (NEW, "cutting line beside it"), (GUIDE, "square to the edge")))


def parallel(edge, width, count=240):
    """The line `width` cm to the right of an edge as a run, and (from, to) of strokes square to the edge between the two."""
    length = edge.length
    stops = [length * i / count for i in range(count + 1)]
    points = [path.point_along(edge.run, stop) for stop in stops]
    outs = [-1j * path.way_along(edge.run, stop) * width for stop in stops]
    beside = [p + out for p, out in zip(points, outs)]
    every = max(1, round(count * _APART / length))
    square = [(points[i], beside[i]) for i in range(0, count + 1, every)]
    return tuple(Line(a, b) for a, b in zip(beside, beside[1:]) if a != b), square
