"""The cloth that pieces are laid on: its width, how it lies, and what of it may be used; each declared once."""

from dataclasses import dataclass, replace
from typing import Any, cast

from corsetkit.quantity import Value, check_all, declared, given_by_name
from corsetkit.style import COURSE, CUSTOM

SINGLE, FOLDED = "single", "folded"
WIDTHS = {115.0: 45, 137.0: 54, 150.0: 60}
"""The usual widths in cm, and the inches by which a shop calls them; common practice, no source."""


@given_by_name
@dataclass(frozen=True, kw_only=True)
class Cloth:
    """One cloth and how it lies; lengths in cm, across it from zero at its left selvedge or, where folded, at its fold."""

    width: float = declared(
        "how wide the cloth is, from selvedge to selvedge",
        unit="cm",
        low=70,
        high=210,
        step=1,
        default=137.0,
        group="cloth",
        source=CUSTOM,
    )
    laid: str = declared(
        "whether the cloth lies single, or folded along its length so that two layers are cut at once",
        unit="choice",
        choices=(SINGLE, FOLDED),
        choice_words=("single", "folded"),
        default=SINGLE,
        group="cloth",
        source=COURSE,
    )
    one_way: bool = declared(
        "whether the cloth looks different upside down, as velvet and many prints do: then every piece lies the same way up",
        unit="yes or no",
        default=False,
        group="cloth",
        source=CUSTOM,
    )
    gap: float = declared(
        "how far apart two pieces lie at least, so that the scissors pass between them",
        unit="cm",
        low=0,
        high=2,
        step=0.1,
        default=0.3,
        group="cloth",
        source=COURSE,
    )
    selvedge: float = declared(
        "how much beside each selvedge is left unused, for it is woven tighter",
        unit="cm",
        low=0,
        high=3,
        step=0.1,
        default=1.0,
        group="cloth",
        source=COURSE,
    )
    tilt: float = declared(
        "by how many degrees a piece may leave the straight grain",
        unit="degrees",
        low=0,
        high=3,
        step=0.5,
        default=0.0,
        group="cloth",
        source=COURSE,
        why_range="a piece laid farther off the grain twists on the body",
    )

    def __post_init__(self) -> None:
        check_all(self)

    def replaced(self, **changes: Value) -> "Cloth":
        """This cloth with other values; each is checked like the first."""
        return replace(self, **cast(dict[str, Any], changes))

    @property
    def folded(self) -> bool:
        return self.laid == FOLDED

    @property
    def layers(self) -> int:
        """How many layers of cloth are cut at once."""
        return 2 if self.folded else 1

    @property
    def span(self) -> float:
        """How wide the cloth lies on the table, cm."""
        return self.width / self.layers

    @property
    def low(self) -> float:
        """Where a piece may begin across the cloth, cm: beside the selvedge, or at the fold."""
        return 0.0 if self.folded else self.selvedge

    @property
    def high(self) -> float:
        """Where a piece has to end across the cloth, cm."""
        return self.span - self.selvedge

    @property
    def room(self) -> float:
        """How much across the cloth can be used, cm."""
        return self.high - self.low

    @property
    def turns(self) -> tuple[float, ...]:
        """The degrees a piece may be turned by, from its grain arrow pointing along the cloth."""
        aside = (0.0, self.tilt / 2, -self.tilt / 2, self.tilt, -self.tilt) if self.tilt else (0.0,)
        tangents = (0.0,) if self.one_way else (0.0, 180.0)
        return tuple(tangent + by for tangent in tangents for by in aside)
