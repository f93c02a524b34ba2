"""A piece of paper laid on the board: slid, turned, or torn off where the rest of it would only take room."""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.drawing.canvas import tick
from corsetkit.drawing.free_space import Room
from corsetkit.drawing.labels import block, broken
from corsetkit.drawing.lettering import around
from corsetkit.drawing.painting import edge_facts, pen_of
from corsetkit.drawing.pens import CUT_PAPER, GRAPHITE, NAME, NOTCH, Pen, Tone
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import STAY, Move, slid
from corsetkit.geometry.paths import flattened, moved

SHADOW = Tone("shadow", "#d6cdbb")
STRAIGHT = Pen("straight-cut", 0.34, GRAPHITE, (1.7, 1.1))
"""The straight cut that a shaped seam was before."""
TEAR = Pen("tear", 0.16, GRAPHITE)

_THICK = 0.09
"""How far paper's shadow falls, cm as seen."""
_TOOTH = 0.45
_FINE = 0.02


@dataclass(frozen=True)
class Laid:
    """A piece, the move that lays it, and the level (in the piece's own place, cm) below which it is torn off."""

    piece: object
    move: Move = STAY
    torn: float | None = None

    @cached_property
    def edges(self):
        """Each edge with its run as it lies; a torn edge's run has its lower part missing."""
        return tuple(
            (edge, moved(edge.path if self.torn is None else _above(edge.path, self.torn), self.move))
            for edge in self.piece.edges
        )

    @cached_property
    def tear(self):
        """The torn border's run, empty where the piece is whole."""
        if self.torn is None:
            return ()
        strokes = _above(self.piece.path, self.torn)
        following = strokes[1:] + strokes[:1]
        gap = next(((a.end, b.start) for a, b in zip(strokes, following) if abs(a.end - b.start) > 1e-6), None)
        return moved(_teeth(*gap), self.move) if gap else ()

    @cached_property
    def outline(self):
        """The whole border as one closed path."""
        if not self.tear:
            return tuple(curve for _, path in self.edges for curve in path)
        strokes = [curve for _, path in self.edges for curve in path]
        at = next(i for i, one in enumerate(strokes) if abs(one.end - self.tear[0].start) < 1e-6)
        return (*strokes[: at + 1], *self.tear, *strokes[at + 1 :])

    @cached_property
    def points(self):
        return flattened(self.outline, 0.05)

    @cached_property
    def box(self):
        return around([(p.real, p.imag, p.real, p.imag) for p in self.points])

    @cached_property
    def middle(self):
        """A place well inside the paper: the middle of its widest stretch on a few levels, cm."""
        _, bottom, _, top = self.box
        found = {}
        for share in (0.5, 0.4, 0.6, 0.3, 0.7):
            level = bottom + (top - bottom) * share
            ends = sorted(
                crossing(a, b, level)
                for a, b in zip(self.points, self.points[1:] + self.points[:1])
                if (a.imag < level) != (b.imag < level)
            )
            found |= {right - left: complex((left + right) / 2, level) for left, right in zip(ends[::2], ends[1::2])}
        return found[max(found)]

    def then(self, step):
        """The same, slid on by `step`."""
        return Laid(self.piece, self.move.then(slid(step)), self.torn)


def torn_below(piece, edge, kept):
    """The level below which a piece is torn, so that `kept` cm of it stay below its edge; None where it ends higher."""
    level = min(p.imag for p in flattened(edge.path, 0.2)) - kept
    return level if min(p.imag for p in flattened(piece.path, 0.2)) < level - kept / 3 else None


def paint_paper(canvas, laid):
    """Paint the paper and its shadow, without its edges."""
    canvas.area(moved(laid.outline, slid(complex(1, -1) * _THICK * canvas.scale)), SHADOW)
    canvas.area(laid.outline, CUT_PAPER)


def paint_seen_through(canvas, laid, strong, pen):
    """Paint a piece that is drawn elsewhere already as if on tracing paper: all edges in `pen`, the notches of its `strong`
    edges, no facts and no paper."""
    for _edge, path in laid.edges:
        if path:
            canvas.line(path, pen)
    if laid.tear:
        canvas.line(laid.tear, TEAR)
    _paint_notches(canvas, laid, {id(edge) for edge in strong})


def notch_stroke(laid, notch, scale):
    """The two ends of a notch's stroke, where it lies."""
    at, across = laid.move(notch.point), laid.move.turn * notch.tangent * 1j * 0.17 * scale
    return at - across, at + across


def _paint_notches(canvas, laid, strong_ids):
    for notch in laid.piece.notches:
        if id(notch.edge) in strong_ids:
            tick(canvas, *notch_stroke(laid, notch, canvas.scale), NOTCH)


def paint_laid(canvas, laid, unit, strong=(), pen=None, mark="", told=True):
    """Paint the paper with its edges and the notches of its `strong` edges, those in `pen` where one is given.

    `mark` is put behind the seam's letter in the facts, so that pieces of two patterns keep theirs apart. A piece that is
    drawn elsewhere as well is not `told` twice: it has no facts here.
    """
    piece, strong_ids = laid.piece, {id(edge) for edge in strong}
    with canvas.group("piece", {"piece": piece.number, "name": piece.name}):
        paint_paper(canvas, laid)
        if laid.tear:
            canvas.line(laid.tear, TEAR)
        for edge, path in sorted(laid.edges, key=lambda one: id(one[0]) in strong_ids):
            if path:
                facts = edge_facts(edge, piece, unit) if told else {}
                if mark and "seam" in facts:
                    facts["seam"] += mark
                canvas.line(path, pen if pen and id(edge) in strong_ids else pen_of(edge), facts)
        _paint_notches(canvas, laid, strong_ids)


def written_in(laid, text, scale, taken=(), letter=NAME, near=None):
    """The text inside the piece on one to three lines, as the arguments of `words`; empty where it has no room."""
    room = Room(laid.points, 0.12 * scale)
    room.taken.extend(taken)
    left, bottom, right, top = laid.box
    near = complex((left + right) / 2, (bottom + top) / 2) if near is None else near
    for count in (1, 2, 3):
        made = block([(line, letter) for line in broken(text, count)], scale)
        at = room.place(made.width, made.height, near, 0.12 * scale)
        if at is not None:
            return made.laid(at, scale)
    return ()


def crossing(a, b, level):
    """How far across the line from `a` to `b` meets the level."""
    return a.real + (b.real - a.real) * (level - a.imag) / (b.imag - a.imag)


def _above(path, level):
    """The path's strokes above the level, cut off at it."""
    strokes, points = [], flattened(path, _FINE)
    for a, b in zip(points, points[1:]):
        if max(a.imag, b.imag) <= level:
            continue
        if min(a.imag, b.imag) < level:
            meet = a + (b - a) * (level - a.imag) / (b.imag - a.imag)
            a, b = (meet, b) if a.imag < level else (a, meet)
        strokes.append(Line(a, b))
    return tuple(strokes)


def _teeth(start, end):
    """The ragged line of a tear."""
    count = max(2, round(abs(end - start) / _TOOTH))
    tangent = (end - start) / count
    points = [start + tangent * i + (tangent * 0.3j * (1 if i % 2 else -1) if 0 < i < count else 0) for i in range(count + 1)]
    return tuple(Line(a, b) for a, b in zip(points, points[1:]))
