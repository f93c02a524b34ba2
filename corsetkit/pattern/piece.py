"""A piece of the pattern, and what of the block it was made from."""

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING, Any

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.move import Move
from corsetkit.geometry.points import Point, to_side
from corsetkit.pattern.edge import Edge, made_with
from corsetkit.pattern.seam import Seam
from corsetkit.pattern.shown import Shown

if TYPE_CHECKING:
    from shapely import Polygon

_TRACED, _STEPS = 0.002, 40
"""How nearly a line before a blend is traced, cm, and in how many steps the new one is looked along."""


@dataclass(frozen=True)
class Notch:
    """A mark across the sewing line, at `along` cm of `edge` in the edge's own direction.

    `seam` is the seam whose other side bears the same mark.
    """

    edge: Edge
    along: float
    seam: Seam

    def __repr__(self) -> str:
        return f'<Notch {self.along:.1f} cm along the edge "{self.edge.name}", seam {self.seam.number}>'

    @cached_property
    def point(self) -> Point:
        return paths.point_along(self.edge.path, self.along)

    @cached_property
    def tangent(self) -> complex:
        """The unit step along the edge at the notch; the piece lies to its left."""
        return paths.tangent_along(self.edge.path, self.along)


@dataclass(frozen=True)
class Part:
    """A region of the block that a piece was cut from, and the rigid move that carried it into the piece.

    `outline` is a closed run on the block, before any blend.
    """

    name: str
    outline: Curves
    move: Move

    def __repr__(self) -> str:
        return f'<Part "{self.name}" of the block>'


@dataclass(frozen=True)
class Blend:
    """A line redrawn: what it was and what it became, both where the piece lies; `why` in a few words."""

    why: str
    before: Curves
    after: Curves

    def __repr__(self) -> str:
        return f'<Blend "{self.why}", {paths.path_length(self.after):.1f} cm>'

    @cached_property
    def largest_move(self) -> float:
        """The farthest that a point of the new line lies from the old one, in cm."""
        old = [p for curve in self.before for p in curve.flattened(_TRACED)]
        sides = [(a, b) for a, b in zip(old, old[1:]) if a != b]

        def off(curve: Line | Cubic, t: float) -> float:
            return min(to_side(curve.point(t), a, b) for a, b in sides)

        # Looked for in steps, and then more finely beside the farthest of them.
        far, curve, t = max(
            ((off(curve, i / _STEPS), curve, i / _STEPS) for curve in self.after for i in range(_STEPS + 1)),
            key=lambda found: found[0],
        )
        near = (min(max(t + i / _STEPS / 10, 0.0), 1.0) for i in range(-9, 10))
        return max(far, *(off(curve, each) for each in near))

    @property
    def change(self) -> float:
        """How much longer the new line is than the old one, in cm."""
        return paths.path_length(self.after) - sum(c.length for c in self.before)


@dataclass(frozen=True, eq=False)
class Piece(Shown):
    """One piece of the pattern, as its sewing line.

    `edges` run counter-clockwise, end to end; a piece on the fold is drawn as its half, with the fold as
    one of the edges. `grainline` is two points; `cut` says how many to cut and `cloth` of what;
    `pair` whether they are a left and a right one.
    """

    number: int
    name: str
    edges: tuple[Edge, ...]
    grainline: tuple[Point, Point]
    cut: int
    cloth: str
    on_fold: bool
    pair: bool
    parts: tuple[Part, ...] = ()
    blends: tuple[Blend, ...] = ()
    copied: bool = False
    """Whether the piece is a copy of what another piece has, as the modesty panel is."""

    def __post_init__(self) -> None:
        for edge in self.edges:
            if edge._piece is not None:
                raise ValueError(f"{self.name}: its {edge.name} is an edge of the {edge.piece.name} already")
            # An edge and its piece hold each other: the loop is closed here and nowhere else.
            object.__setattr__(edge, "_piece", self)

    def __repr__(self) -> str:
        return f'<Piece {self.number} "{self.name}", {len(self.edges)} edges, {paths.path_length(self.path):.1f} cm round>'

    def __getstate__(self) -> dict[str, Any]:
        return made_with(self)

    def __setstate__(self, state: dict[str, Any]) -> None:
        self.__dict__.update(state)
        self.__post_init__()

    def place_of(self, edge: Edge) -> int:
        """Which of the piece's edges it is, counted from 0."""
        return next(number for number, mine in enumerate(self.edges) if mine is edge)

    def beside(self, edge: Edge, onward: bool) -> Edge:
        """The edge that follows one of the piece's edges, or where not `onward` the one before it."""
        return self.edges[(self.place_of(edge) + (1 if onward else -1)) % len(self.edges)]

    @cached_property
    def path(self) -> Curves:
        """The whole sewing line as one closed path of true curves."""
        return tuple(curve for edge in self.edges for curve in edge.path)

    @cached_property
    def notches(self) -> tuple[Notch, ...]:
        """The notches on this piece's edges, one for each mark of each seam it is sewn in."""
        found: list[Notch] = []
        for edge in self.edges:
            if edge.seam:
                for side in (0, 1):
                    found.extend(Notch(edge, along, edge.seam) for placed, along in edge.seam.places(side) if placed is edge)
        return tuple(found)

    @cached_property
    def outline(self) -> "Polygon":
        """The sewing line as a valid shapely Polygon in cm, counter-clockwise, y up, within 0.001 cm."""
        from shapely import Polygon

        return Polygon([(p.real, p.imag) for p in paths.flattened(self.path)[:-1]])
