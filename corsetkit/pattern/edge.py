"""An edge: one named stretch of a piece's sewing line, which knows the seam it is sewn in."""

from dataclasses import dataclass, field, fields
from enum import Enum
from functools import cached_property
from typing import TYPE_CHECKING, Any

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves

if TYPE_CHECKING:
    from shapely import LineString

    from corsetkit.pattern.piece import Piece
    from corsetkit.pattern.seam import Seam


def made_with(value: Any) -> dict[str, Any]:
    """What a dataclass's value was made with, by the fields' names: without what holds it and what is reckoned from it."""
    return {one.name: getattr(value, one.name) for one in fields(value) if one.init}


class Kind(Enum):
    """What an edge is on the garment; allowances and drawing follow from it."""

    PANEL_SEAM = "panel seam"
    CUP_SEAM = "cup seam"
    SHOULDER = "shoulder seam"
    NECKLINE = "neckline"
    OPENING = "opening"
    ARMSCYE = "armscye"
    TOP = "top edge"
    HEM = "hem"
    LACING = "lacing edge"
    CENTRE_FRONT = "centre front"
    FOLD = "fold"


@dataclass(frozen=True, eq=False)
class Edge:
    """One named stretch of a sewing line, run with the piece on its left.

    `path` holds its true curves, in cm, where the piece lies on the sheet. `seam` is the `Seam` it is
    sewn in, or None for a free edge or a fold; it is set once, by `sew`, when the seam is made. `piece` is
    the `Piece` whose sewing line it is part of, set once when that piece is made.
    """

    name: str
    path: Curves
    kind: Kind
    seam: "Seam | None" = field(default=None, init=False, repr=False)
    _piece: "Piece | None" = field(default=None, init=False, repr=False)

    def __repr__(self) -> str:
        return f'<Edge "{self.name}", {self.kind.value}, {self.length:.1f} cm>'

    def __getstate__(self) -> dict[str, Any]:
        # Whoever holds the edge, a seam or a piece, takes hold of it again.
        return made_with(self)

    @property
    def piece(self) -> "Piece":
        """The piece whose sewing line the edge is part of."""
        if self._piece is None:
            raise ValueError(f"{self.name} is an edge of no piece yet")
        return self._piece

    @cached_property
    def length(self) -> float:
        """The sewing line's length in cm."""
        return paths.path_length(self.path)

    @property
    def partner(self) -> "tuple[Edge, ...]":
        """The edges on the other side of this edge's seam; none where it is free."""
        return self.seam.across_from(self) if self.seam else ()

    @cached_property
    def line(self) -> "LineString":
        """The edge as a shapely LineString in cm, within 0.001 cm of the true curves."""
        from shapely import LineString

        return LineString([(p.real, p.imag) for p in paths.flattened(self.path)])
