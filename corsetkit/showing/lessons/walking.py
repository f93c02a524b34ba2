"""Walking a seam: the points of its two sides that meet, and how a piece turns while it is laid along the other.

A cutter checks a seam so before cloth is cut: one piece lies still, the other is laid with its edge against the first
one's, and both are followed with a pin from the seam's start to its end. Where both edges are one line the second
piece need not turn; where they bend away from each other it has to, and what it turns in all is the fullness that the
seam sews into the cloth.
"""

from dataclasses import dataclass

from corsetkit.geometry import paths as path
from corsetkit.geometry.move import Move
from corsetkit.geometry.points import turn_between

SAME_STOP = 0.16
"""A notch this near to the walked place, cm, is reached: half a slider's step of an eighth of an inch."""


@dataclass(frozen=True)
class Stop:
    """A place on one side of a seam: the edge and its piece, the point, the unit step in which the seam runs on."""

    edge: object
    piece: object
    point: complex
    way: complex


@dataclass(frozen=True)
class Stretch:
    """What one edge gives to one side: the edge and its piece, its run as the seam goes, from where to where in cm."""

    edge: object
    piece: object
    run: tuple
    start: float
    end: float

    def along(self, cm):
        """How far along this stretch a place of the seam lies, cm, kept within it."""
        return min(max(cm - self.start, 0.0), self.end - self.start)


class Walk:
    """One seam's two sides, each as its stretches from the seam's start to its end.

    `owners` maps each edge's id to its `Piece`. The first side is the one that begins on the piece with the lower
    number: it lies still while the other is laid along it.
    """

    def __init__(self, seam, owners):
        self.seam = seam
        self.length = max(seam.lengths)
        sides = [tuple(_stretches(side, against, owners)) for side, against in zip(seam.sides, seam.against)]
        self.sides = tuple(sorted(sides, key=lambda side: side[0].piece.number))

    def walked(self, cm):
        """The place itself, no farther than the seam goes."""
        return min(max(cm, 0.0), self.length)

    def stretch(self, side, cm):
        """The stretch of side 0 or 1 that the place lies on; where pieces change, the one that ends there."""
        return next((one for one in self.sides[side] if cm <= one.end + 1e-9), self.sides[side][-1])

    def stop(self, side, cm):
        """The place on side 0 or 1."""
        return _stop(self.stretch(side, cm), cm)

    def met(self, cm):
        """The points of both sides that meet there, each with its piece: ((piece, point), (piece, point))."""
        found = []
        for side in (0, 1):
            one = self.stretch(side, cm)
            found.append((one.piece, path.point_along(one.run, one.along(cm))))
        return tuple(found)

    def laid_along(self, cm):
        """The rigid move that lays the second side's piece against the first's there, edge to edge and way to way."""
        return _laid(self.stop(0, cm), self.stop(1, cm))

    def turned(self, cm):
        """Degrees by which the second piece has turned, against the first, since the two began to be walked together."""
        first, second = self.stretch(0, cm), self.stretch(1, cm)
        begun = max(first.start, second.start)
        before, now = _laid(_stop(first, begun), _stop(second, begun)), self.laid_along(cm)
        return abs(turn_between(before.turn, now.turn))

    def changes(self):
        """Where one piece gives way to the next on either side, with both pieces' names: (cm, before, after)."""
        return [(first.end, first.piece.name, second.piece.name) for side in self.sides
                for first, second in zip(side, side[1:]) if first.piece is not second.piece]

    def reached(self, cm):
        """The notch at the place, in cm from the start, or None."""
        near = [mark for mark in self.seam.marks if abs(mark - cm) <= SAME_STOP]
        return min(near, key=lambda mark: abs(mark - cm)) if near else None


def _stretches(edges, against, owners):
    total = 0.0
    for edge in edges:
        run = path.turned_round(edge.run) if against else edge.run
        yield Stretch(edge, owners[id(edge)], run, total, total + edge.length)
        total += edge.length


def _stop(stretch, cm):
    along = stretch.along(cm)
    return Stop(stretch.edge, stretch.piece, path.point_along(stretch.run, along), path.way_along(stretch.run, along))


def _laid(still, moving):
    turn = still.way / moving.way
    turn /= abs(turn)
    return Move(turn, still.point - turn * moving.point)
