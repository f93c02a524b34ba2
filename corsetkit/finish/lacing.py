"""The lacing edge: its uninterrupted stretches, its eyelets, and how long the lacing is."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from corsetkit.finish.choices import Finish
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.pattern import Pattern
from corsetkit.pattern.piece import Piece
from corsetkit.units import say_both

_JOINED = 1e-6


@dataclass(frozen=True)
class LacingStretch:
    """One uninterrupted stretch of a lacing edge: its (piece, edge) pairs from the top down, where the pieces lie."""

    parts: tuple[tuple[Piece, Edge], ...]

    @property
    def names(self) -> tuple[str, ...]:
        return tuple(piece.name for piece, _ in self.parts)

    @cached_property
    def path(self) -> Curves:
        """The stretch as one path from its top to its foot."""
        return tuple(curve for _, edge in self.parts for curve in paths.turned_round(edge.path))

    @cached_property
    def length(self) -> float:
        """Its length in cm."""
        return sum(edge.length for _, edge in self.parts)

    @cached_property
    def waist(self) -> float | None:
        """How far from its top the waist lies, cm; None where the waist does not cross it."""
        places = paths.on_line(self.path, 0j, 1 + 0j)
        if not places:
            return None
        return paths.path_length(paths.cut_at(self.path, *places[0])[0])


def lacing_stretches(pieces: Iterable[Piece]) -> tuple[LacingStretch, ...]:
    """The stretches of one lacing edge, from the top down.

    Two pieces' edges are one stretch where one begins at the other's end; an opening between them parts it.
    """
    parts = [(piece, edge) for piece in pieces if not piece.copied for edge in piece.edges if edge.kind is Kind.LACING]
    parts.sort(key=lambda part: -paths.path_end(part[1].path).imag)
    groups: list[list[tuple[Piece, Edge]]] = []
    for piece, edge in parts:
        if groups and abs(paths.path_end(edge.path) - paths.path_start(groups[-1][-1][1].path)) < _JOINED:
            groups[-1].append((piece, edge))
        else:
            groups.append([(piece, edge)])
    return tuple(LacingStretch(tuple(group)) for group in groups)


RIM = 0.5
"""From the middle of an eyelet to the border of its metal rim, cm; makers differ: course convention."""


@dataclass(frozen=True)
class Eyelets:
    """The eyelets of one stretch, alike on both edges: `places` are cm from the stretch's top, `inset` from the edge.

    `waist` is where the waist lies between its two pairs, cm from the top; None where it does not cross the stretch.
    """

    names: tuple[str, ...]
    length: float
    inset: float
    places: tuple[float, ...]
    waist: float | None
    opening: float = 0.0
    """How far below the foot of the stretch above it its top lies, cm; zero for the first."""

    @property
    def count(self) -> int:
        """How many there are on one side: n eyelets have n - 1 spaces between them."""
        return len(self.places)

    @property
    def spaces(self) -> tuple[float, ...]:
        return tuple(b - a for a, b in zip(self.places, self.places[1:]))


def eyelets(pattern: Pattern, choices: Finish) -> tuple[Eyelets, ...]:
    """The eyelets of each stretch of the lacing edge, from the top down."""
    stretches = lacing_stretches(pattern.pieces)
    openings = (
        0.0,
        *(abs(paths.path_end(above.path) - paths.path_start(below.path)) for above, below in zip(stretches, stretches[1:])),
    )
    return tuple(
        Eyelets(one.names, one.length, choices.eyelet_inset, *_places(one, choices), opening)
        for one, opening in zip(stretches, openings)
    )


def beside_bone(choices: Finish) -> float:
    """How far an eyelet's middle lies from the channel in the lacing edge, cm; below zero on it."""
    return choices.eyelet_inset - choices.bone_width - choices.channel_ease / 2


def eyelet_warnings(choices: Finish) -> Iterator[str]:
    """A sentence where an eyelet's rim would reach onto the channel beside it."""
    if beside_bone(choices) < RIM:
        yield (
            f"an eyelet with a rim {say_both(2 * RIM)} across would reach onto the channel in the lacing edge: take a "
            "narrower bone, or a greater eyelet inset"
        )


def _places(stretch: LacingStretch, choices: Finish) -> tuple[tuple[float, ...], float | None]:
    """The places, and the waist where it lies between two pairs of them.

    Two pairs stand close together at the waist, the rest evenly to both ends, as far apart as chosen or a little nearer.
    """
    first, last, waist = choices.eyelet_inset, stretch.length - choices.eyelet_inset, stretch.waist
    half, spacing = choices.waist_spacing / 2, choices.eyelet_spacing
    if waist is None or waist - half <= first or waist + half >= last:
        return _even(first, last, spacing), None
    return (*_even(first, waist - half, spacing), *_even(waist + half, last, spacing)), waist


def _even(start: float, end: float, spacing: float) -> tuple[float, ...]:
    """Places from start to end, both counted, evenly and no farther apart than `spacing`."""
    count = max(1, math.ceil((end - start) / spacing - 1e-9))
    return tuple(start + (end - start) * i / count for i in range(count + 1))


def lacing_length(spaces: Iterable[float], gap: float, inset: float, tails: float) -> float:
    """How long the lacing is, cm: arithmetic.

    It crosses each space twice, once from either side. A crossing goes over the gap g and the insets e on both sides, and
    down by the space s: sqrt((g + 2e)^2 + s^2). At one end it goes straight across once more, g + 2e; loops and tails
    come on top. With N pairs evenly s apart that is (N - 1) x 2 x sqrt((g + 2e)^2 + s^2) + (g + 2e) + loops and tails.

    Args:
        spaces: the spaces between the pairs in cm, one fewer than there are pairs. gap, inset, tails: cm.
    """
    across = gap + 2 * inset
    return sum(2 * math.hypot(across, space) for space in spaces) + across + tails


def all_spaces(made: Sequence[Eyelets]) -> tuple[float, ...]:
    """The spaces between all pairs of a lacing edge, from the top down; over an opening one space counts its height too."""
    spaces: list[float] = []
    for number, stretch in enumerate(made):
        if number:
            above = made[number - 1]
            spaces.append(above.length - above.places[-1] + stretch.opening + stretch.places[0])
        spaces.extend(stretch.spaces)
    return tuple(spaces)
