"""Where the bones lie, how long they are, and how wide the cloth between them is at the waist.

A bone lies along each panel seam that crosses the waist, one at the centre front, one at each lacing edge and one beyond
its eyelets (common practice, no source). No bone crosses a cup. Where the cloth between two is wider at the waist than
chosen, further bones stand upright in that panel, evenly.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TypeAlias

from corsetkit.finish.choices import Finish
from corsetkit.finish.lacing import lacing_stretches
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.points import Point
from corsetkit.pattern.edge import Kind
from corsetkit.pattern.pattern import Pattern
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import Seam
from corsetkit.units import say_both

FLAT, SPIRAL = "flat", "spiral"
BOW = 0.3
"""A channel that leaves its straight line by more than this, cm, curves sideways: course convention."""


@dataclass(frozen=True)
class Bone:
    """Bones of one length: where they lie, flat or spiral, how many in the whole corset; channel and bone in cm.

    `on` is the seam or the piece they lie on, `line` a run along the channel where that piece lies.
    """

    place: str
    kind: str
    count: int
    channel: float
    length: float
    on: Seam | Piece
    line: Curves


@dataclass(frozen=True)
class Bay:
    """The cloth between two bones at the waist: its piece, its width there without further bones, and how many are put."""

    piece: Piece
    width: float
    further: int
    places: tuple[Point, ...]
    """Where the further bones cross the waist, as points."""
    beside_lacing: bool = False
    """Whether the bone beyond the eyelets, twice their inset from the lacing edge, is one of its two."""

    @property
    def left(self) -> float:
        """The widest cloth left without a bone, cm."""
        return self.width / (self.further + 1)


_Lie: TypeAlias = tuple[str, str, int, Seam | Piece, Curves]
"""A bone's place, kind and count, what it lies on, and the run along its channel."""


def bones(pattern: Pattern, choices: Finish) -> tuple[tuple[Bone, ...], tuple[Bay, ...]]:
    """All bones as a tuple of `Bone`, and the bays of one half as a tuple of `Bay`."""
    bays = tuple(_bays(pattern, choices))
    found = [*_at_seams(pattern), *_at_centre(pattern), *_at_lacing(pattern, not any(crowded(bay, choices) for bay in bays))]
    for bay in bays:
        found.extend(_in_panel(bay))
    return tuple(
        Bone(place, kind, count, channel, channel - choices.bone_shorter, on, line)
        for place, kind, count, on, line in found
        for channel in (paths.path_length(line),)
    ), bays


def bay_warnings(bays: Iterable[Bay], choices: Finish) -> Iterator[str]:
    """A sentence for each panel that is too wide at the waist for the bones at its seams, or too narrow for them."""
    for bay in bays:
        if crowded(bay, choices):
            yield (
                f"the {bay.piece.name} has no room at the waist for a bone beyond the eyelets beside the seam's own, "
                "so that one is left out"
            )
        if bay.further:
            put = (
                "one further bone is put in its middle"
                if bay.further == 1
                else f"{bay.further} further bones are put in it, evenly"
            )
            yield (
                f"the {bay.piece.name} is {say_both(bay.width)} wide at the waist between its bones, more than "
                f"{say_both(choices.widest_unsupported)}: {put}"
            )


def _at_seams(pattern: Pattern) -> Iterator[_Lie]:
    for seam in pattern.seams:
        lines = [
            tuple(curve for edge in side for curve in (paths.turned_round(edge.path) if against else edge.path))
            for side, against in zip(seam.sides, seam.against)
        ]
        if all(edge.kind is Kind.PANEL_SEAM for side in seam.sides for edge in side) and any(
            paths.on_line(line, 0j, 1 + 0j) for line in lines
        ):
            yield seam.name, SPIRAL if max(map(bow, lines)) > BOW else FLAT, 2, seam, lines[0]


def bow(path: Curves) -> float:
    """How far a path leaves the straight line between its ends, cm."""
    start, step = paths.path_start(path), paths.path_end(path) - paths.path_start(path)
    return max(abs(((p - start) * step.conjugate()).imag) for p in paths.flattened(path, 0.01)) / abs(step)


def _at_centre(pattern: Pattern) -> Iterator[_Lie]:
    for piece in _lower(pattern):
        for edge in piece.edges:
            if edge.kind is Kind.FOLD:
                yield "centre front", FLAT, 1, piece, edge.path


def crowded(bay: Bay, choices: Finish) -> bool:
    """Whether the bone beyond the eyelets would lie on the next seam's bone at the waist."""
    return bay.beside_lacing and bay.width < choices.bone_width + choices.channel_ease


def _at_lacing(pattern: Pattern, beyond: bool) -> Iterator[_Lie]:
    """The bones at each stretch: one in the very edge and, where there is room, one `beyond` the eyelets."""
    for stretch in lacing_stretches(pattern.pieces):
        names = " and ".join(stretch.names)
        piece = stretch.parts[0][0]
        yield f"lacing edge, {names}", FLAT, 2, piece, stretch.path
        if beyond:
            yield f"beyond the eyelets, {names}", FLAT, 2, piece, stretch.path


def _lower(pattern: Pattern) -> list[Piece]:
    """The pieces that cross the waist, copies left out."""
    return [piece for piece in pattern.pieces if not piece.copied and paths.on_line(piece.path, 0j, 1 + 0j)]


def _bays(pattern: Pattern, choices: Finish) -> Iterator[Bay]:
    for piece in _lower(pattern):
        ends = sorted(
            (
                (edge.path[index].point(t).real, edge.kind)
                for edge in piece.edges
                for index, t in paths.on_line(edge.path, 0j, 1 + 0j)
            ),
            key=lambda one: one[0],
        )
        (left, left_kind), (right, right_kind) = ends[0], ends[-1]
        # Beside the lacing edge the cloth is held as far as the bone beyond the eyelets.
        left += 2 * choices.eyelet_inset if left_kind is Kind.LACING else 0.0
        right -= 2 * choices.eyelet_inset if right_kind is Kind.LACING else 0.0
        further = max(0, math.ceil((right - left) / choices.widest_unsupported - 1e-9) - 1)
        places = tuple(complex(left + (right - left) * (i + 1) / (further + 1), 0.0) for i in range(further))
        yield Bay(piece, right - left, further, places, Kind.LACING in (left_kind, right_kind))


def _in_panel(bay: Bay) -> Iterator[_Lie]:
    """The further bones of a panel: upright lines through their places, from edge to edge."""
    for place in bay.places:
        heights = sorted(bay.piece.path[i].point(t).imag for i, t in paths.on_line(bay.piece.path, place, 1j))
        low, high = max(y for y in heights if y < 0), min(y for y in heights if y > 0)
        yield f"in the {bay.piece.name}", FLAT, 2, bay.piece, (Line(place + 1j * low, place + 1j * high),)
