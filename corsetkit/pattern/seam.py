"""A seam: two paths of edges sewn together, and by how much they miss each other."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any

from corsetkit.pattern.edge import Edge, made_with

if TYPE_CHECKING:
    from corsetkit.pattern.piece import Piece

SAME_PLACE = 0.01
"""Changes of pieces on the two sides that lie nearer than this, cm, are one."""
TOUCHING = 0.1
"""Edges that share less of a seam than this, cm, only touch at their ends."""
CROWDED = 0.3
"""Notches nearer than this to each other, cm, cannot be told apart under the needle: course convention."""


@dataclass(frozen=True, eq=False)
class Seam:
    """Two sides that are sewn together, each an ordered run of edges from the seam's start to its end.

    The pieces lie with their edges counter-clockwise, so one side runs with its edges and the other
    against them: `against` says, for each side, whether it does. `ease` is what the first side is
    meant to be longer by, in cm.
    """

    name: str
    number: int
    sides: tuple[tuple[Edge, ...], tuple[Edge, ...]]
    against: tuple[bool, bool]
    ease: float = 0.0
    marks: tuple[float, ...] = ()
    """Distances in cm from the seam's start at which both sides bear a notch."""

    def __post_init__(self) -> None:
        for edge in self.edges:
            # An edge and its seam hold each other: the loop is closed here and nowhere else.
            object.__setattr__(edge, "seam", self)

    def __repr__(self) -> str:
        first, second = map(len, self.sides)
        return f'<Seam {self.number} "{self.name}", {self.lengths[0]:.1f} cm, edges {first} to {second}>'

    def __getstate__(self) -> dict[str, Any]:
        return made_with(self)

    def __setstate__(self, state: dict[str, Any]) -> None:
        self.__dict__.update(state)
        self.__post_init__()

    @cached_property
    def lengths(self) -> tuple[float, float]:
        """The lengths of the two sides in cm."""
        first, second = self.sides
        return sum(edge.length for edge in first), sum(edge.length for edge in second)

    @property
    def difference(self) -> float:
        """How much longer the first side is than the second, in cm, the intended ease taken off."""
        return self.lengths[0] - self.lengths[1] - self.ease

    @property
    def edges(self) -> tuple[Edge, ...]:
        """The edges of both sides, the first side's before the second's."""
        return (*self.sides[0], *self.sides[1])

    @cached_property
    def pieces(self) -> "tuple[Piece, ...]":
        """The pieces sewn in the seam, each once, in its order, the first side's before the second's."""
        return tuple(dict.fromkeys(edge.piece for edge in self.edges))

    def pieces_on(self, side: int) -> "tuple[Piece, ...]":
        """The pieces of one side, 0 or 1, each once, in the seam's order."""
        return tuple(dict.fromkeys(edge.piece for edge in self.sides[side]))

    def side_of(self, edge: Edge) -> int:
        """On which side, 0 or 1, one of the seam's edges lies."""
        return next(number for number, side in enumerate(self.sides) if any(edge is mine for mine in side))

    def across_from(self, edge: Edge) -> tuple[Edge, ...]:
        """The edges of the other side."""
        return self.sides[1 - self.side_of(edge)]

    def opposite(self, edge: Edge, touching: float = TOUCHING) -> tuple[Edge, ...]:
        """The edges of the other side that lie against this one over more than `touching` cm, in the seam's order."""
        side = self.side_of(edge)
        start, end = next((a, b) for one, a, b in self._shares(side) if one is edge)
        least = min(touching / self.lengths[0], (end - start) / 2)
        return tuple(one for one, a, b in self._shares(1 - side) if min(b, end) - max(a, start) > least)

    def _shares(self, side: int) -> Iterator[tuple[Edge, float, float]]:
        """Each edge of a side with where it begins and ends, as shares of the side."""
        at = 0.0
        for edge in self.sides[side]:
            yield edge, at, at + edge.length / self.lengths[side]
            at += edge.length / self.lengths[side]

    def places(self, side: int) -> tuple[tuple[Edge, float], ...]:
        """Where the marks fall on one side (0 or 1): a tuple of (edge, cm along the edge in its own direction)."""
        found = []
        for mark in self.marks:
            rest = mark
            for number, edge in enumerate(self.sides[side]):
                if rest <= edge.length + 1e-6 or number == len(self.sides[side]) - 1:
                    rest = min(rest, edge.length)
                    found.append((edge, edge.length - rest if self.against[side] else rest))
                    break
                rest -= edge.length
        return tuple(found)


def sew(
    name: str,
    number: int,
    first: Iterable[Edge],
    second: Iterable[Edge],
    first_against: bool = False,
    second_against: bool = True,
    ease: float = 0.0,
    marks: Iterable[float] = (),
) -> Seam:
    """The seam of two paths of edges, told to each of its edges.

    `marks` are distances in cm from the seam's start for notches on both sides. Where pieces change on
    one side, a notch is added, so that the other side shows where.
    """
    first, second = tuple(first), tuple(second)
    length = sum(edge.length for edge in first)
    places: list[float] = []
    for change in sorted((*_changes(first), *_changes(second))):
        if not places or change - places[-1] > SAME_PLACE:
            places.append(change)
    # A mark that would crowd a change of pieces, or a seam's end, tells nothing that they do not.
    places += [
        mark for mark in marks if CROWDED < mark < length - CROWDED and all(abs(mark - place) > CROWDED for place in places)
    ]
    return Seam(name, number, (first, second), (first_against, second_against), ease, tuple(sorted(places)))


def _changes(side: tuple[Edge, ...]) -> list[float]:
    """The distances at which one edge of a side gives way to the next."""
    total, found = 0.0, []
    for edge in side[:-1]:
        total += edge.length
        found.append(total)
    return found
