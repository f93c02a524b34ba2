"""A piece's sewing line as strokes: smooth stretches of one edge, one width and one place in the order of sewing."""

from dataclasses import dataclass, replace
from functools import cached_property

from corsetkit.geometry import path
from corsetkit.geometry.curve import FLATNESS, Line
from corsetkit.geometry.points import turn_between
from corsetkit.pattern.edge import Kind

KINK = 0.5
"""A run that turns towards the piece more sharply than this, degrees, has a corner there."""
_CLOSE = FLATNESS / 2
_FIRST, _FOLDED, _LAST = -1, 10_000, 20_000


@dataclass(frozen=True)
class Stroke:
    """A smooth stretch of one edge, with the allowance outside it in cm, and when it is sewn.

    `start` and `end` say whether it begins and ends where its edge does.
    """

    edge: object
    run: tuple
    width: float
    order: int
    start: bool
    end: bool

    @cached_property
    def length(self):
        return path.run_length(self.run)

    def cut(self, before, after):
        """The stroke without its first `before` and its last `after` cm."""
        if before <= 0 and after <= 0:
            return self
        return replace(self, run=path.stretch(self.run, max(before, 0.0), self.length - max(after, 0.0)))

    @cached_property
    def outside(self):
        """Points along the cutting line beside the stroke, within 0.001 cm of the true parallel line.

        In a hollow tighter than the allowance is wide it turns back on itself.
        """
        points = []
        for curve in self.run:
            beside = _beside(curve, self.width)
            points.extend(beside[1:] if points and abs(points[-1] - beside[0]) < 1e-9 else beside)
        return points


def order(edge):
    """When the edge is sewn: where two edges meet in a corner, the one that is sewn later runs across the other.

    The V at the centre front is closed first, then the seams in the order of their numbers; then the lacing edge is
    turned back, and the other free edges are finished last, all alike. A fold is there from the beginning.
    """
    if edge.kind is Kind.FOLD:
        return _FIRST - 1
    if edge.kind is Kind.CENTRE_FRONT:
        return _FIRST
    if edge.seam:
        return edge.seam.number
    return _FOLDED if edge.kind is Kind.LACING else _LAST


def strokes(piece, widths):
    """The piece's strokes counter-clockwise; `widths` are the allowances of its edges, in their order."""
    found = []
    for edge, width in zip(piece.edges, widths):
        runs = _smooth(edge.run)
        found.extend(Stroke(edge, run, width, order(edge), number == 0, number == len(runs) - 1)
                     for number, run in enumerate(runs))
    return found


def _smooth(run):
    """The run in stretches without a corner towards the piece; a corner the other way is one with its arms."""
    made = [[run[0]]]
    for before, after in zip(run, run[1:]):
        if turn_between(before.way(1.0), after.way(0.0)) > KINK:
            made.append([])
        made[-1].append(after)
    return [tuple(one) for one in made]


def _beside(curve, width):
    """Points along the parallel line of one curve, `width` to its right."""
    if not width:
        return curve.flattened()

    def at(t):
        return curve.point(t) - 1j * curve.way(t) * width

    if isinstance(curve, Line):
        return [at(0.0), at(1.0)]
    points = [at(0.0)]
    todo = [(0.75, 1.0), (0.5, 0.75), (0.25, 0.5), (0.0, 0.25)]
    while todo:
        low, high = todo.pop()
        start, end, middle = at(low), at(high), (low + high) / 2
        # Unevenly placed, for half an S would hide in evenly placed ones.
        if high - low > 1e-3 and max(_off(at(low + (high - low) * share), start, end) for share in (0.35, 0.6)) > _CLOSE:
            todo += [(middle, high), (low, middle)]
        else:
            points.append(end)
    return points


def _off(p, a, b):
    """How far `p` lies from the straight line through `a` and `b`, or from `a` where the two are one."""
    step = b - a
    return abs(((p - a) * step.conjugate()).imag) / abs(step) if abs(step) > 1e-12 else abs(p - a)
