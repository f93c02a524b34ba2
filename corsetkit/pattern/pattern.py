"""The finished pattern: pieces, seams, girths, waste, what the draft has to say, and the corrections drawn into it."""

from collections.abc import Iterator
from dataclasses import dataclass, fields
from typing import TYPE_CHECKING, Any

from corsetkit.errors import NoSuchName
from corsetkit.geometry.curve import Curves
from corsetkit.pattern.by_name import ByName
from corsetkit.pattern.edge import made_with
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import Seam
from corsetkit.pattern.shown import Shown
from corsetkit.units import shown

if TYPE_CHECKING:
    from corsetkit.measurements import Measurements
    from corsetkit.steps.run import Steps
    from corsetkit.style import Style


@dataclass(frozen=True)
class Correction:
    """Move `line` by `by` cm. `fitting/lines.py` says which lines can be moved, which way is above zero, and how far.

    >>> Correction("underbust_line", 0.5)
    Correction(line='underbust_line', by=0.5)
    """

    line: str
    by: float


@dataclass(frozen=True)
class Girth:
    """One level's girth in cm: as finished on the body (lacing gap included), the body's own, and the intended."""

    finished: float
    body: float
    intended: float


@dataclass(frozen=True)
class Waste:
    """A named region of the block that no piece takes, made by the step that cuts it away."""

    name: str
    step: str
    outline: Curves

    def __repr__(self) -> str:
        return f'<Waste "{self.name}", cut away in the step {self.step}>'


@dataclass(frozen=True)
class Fullness:
    """What the darts at the bust point take, in degrees, and a simple shape's own beside it.

    `angles` maps each dart's name to its angle; `cap` is the angle that a spherical cap over the cup's
    outline would take, with half of bust minus underbust as what its arc has more than its chord.
    """

    angles: ByName[float]
    cap: float

    def __repr__(self) -> str:
        return f"<Fullness {self.total:.1f} degrees in {len(self.angles)} darts, a cap's {self.cap:.1f}>"

    @property
    def total(self) -> float:
        return sum(self.angles.values())


@dataclass(frozen=True, eq=False, kw_only=True)
class Pattern(Shown):
    """All pieces of one wearer's pattern in one style.

    `measurements` and `style` are as they were given; `corrections` are the fitting's, as they were given. What the steps
    were drawn from once the corrections were made stands in `steps.measurements` and `steps.style`.

    Two patterns are equal where all they say is. Their pieces, edges and seams are not: each of those is a place in its own
    pattern, known by which it is.

    >>> from corsetkit import demo_wearers, draft
    >>> pattern = draft(demo_wearers()[0][1])
    >>> pattern["side back"]
    <Piece 7 "side back", 5 edges, 94.0 cm round>
    >>> {other.piece.name for edge in pattern["side back"].edges for other in edge.partner} == {
    ...     "side front", "centre back", "back yoke"
    ... }
    True
    """

    measurements: "Measurements"
    style: "Style"
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    girths: ByName[Girth]
    fullness: Fullness
    waste: tuple[Waste, ...]
    warnings: tuple[str, ...]
    steps: "Steps"
    """The steps' own values, in the order in which they were drawn."""
    corrections: tuple[Correction, ...] = ()

    def __repr__(self) -> str:
        girths = "".join(f", {name} {girth.finished:.1f} cm" for name, girth in self.girths.items())
        return f"<Pattern: {len(self.pieces)} pieces, {len(self.seams)} seams{girths}>"

    def __getitem__(self, name: str) -> Piece:
        """The piece of that name: `pattern["side back"]`."""
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise NoSuchName(f"{shown(name)} is no piece of this pattern: there are {', '.join(self._names())}")

    def __contains__(self, name: object) -> bool:
        return name in self._names()

    def __iter__(self) -> Iterator[str]:
        return iter(self._names())

    def _names(self) -> list[str]:
        return [piece.name for piece in self.pieces]

    _ipython_key_completions_ = _names

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Pattern):
            return NotImplemented
        return self is other or self._said() == other._said()

    def __hash__(self) -> int:
        # Whatever is drawn follows from these three, so equal patterns have them alike.
        return hash((self.measurements, self.style, self.corrections))

    def _said(self) -> dict[str, Any]:
        """All that the pattern says as plain values; a seam names its edges by their pieces' places and their own."""
        places = {id(edge): (n, place) for n, piece in enumerate(self.pieces) for place, edge in enumerate(piece.edges)}

        def sides(seam: Seam) -> list[list[tuple[int, int]]]:
            return [[places[id(edge)] for edge in side] for side in seam.sides]

        return {one.name: getattr(self, one.name) for one in fields(self)} | {
            "pieces": [made_with(piece) | {"edges": [made_with(edge) for edge in piece.edges]} for piece in self.pieces],
            "seams": [made_with(seam) | {"sides": sides(seam)} for seam in self.seams],
        }
