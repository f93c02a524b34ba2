"""A wearer's measurements: each declared once, checked alone and against the others.

The terms of ISO 8559-1 are given with their clause where it is known; it was read second hand.
Sources disagree on the clauses of underbust girth and shoulder, so these two carry none.
"""

from dataclasses import dataclass, replace
from functools import partial
from typing import Any, cast

from corsetkit.plausible import refuse_impossible, unlikely
from corsetkit.quantity import check_all, declared, given_by_name

# Our own starting value: how much of bust minus underbust the girth above the breasts lacks.
HIGH_BUST_SHARE = 0.4

_length = partial(declared, unit="cm", source="limits: course convention", group="measurements")


@given_by_name
@dataclass(frozen=True, kw_only=True)
class Measurements:
    """One wearer's body, every length in cm.

    All but `high_bust_girth` and `bust_point_to_fold` must be given; they default to None only so that one left out is
    refused with the package's own sentence. Raises CorsetkitError, one sentence, where a value is no number, lies outside its
    limits, or cannot stand beside another on one body. A waist as large as the underbust or larger, or hips
    smaller than the bust, is a body like any other. `quantities(Measurements)` lists the
    declarations.

    >>> body = Measurements(
    ...     bust_girth=94, underbust_girth=78, waist_girth=72, hip_girth=100, neck_base_girth=37, shoulder_length=12.5,
    ...     neck_to_bust_point=28, bust_point_width=19, front_waist_length=45, back_waist_length=41, armscye_depth=20,
    ...     across_front_width=34, across_back_width=36, waist_to_hip=20,
    ... )
    >>> body.bust_minus_underbust
    16.0
    >>> body.replaced(waist_girth=12)
    Traceback (most recent call last):
    corsetkit.errors.CorsetkitError: waist girth is 12 cm ...
    """

    bust_girth: float = _length(
        "round the body over the fullest part of the bust, tape level, neither tight nor slack",
        low=65, high=165, step=0.5, standard="ISO 8559-1, 5.3.4 bust girth",
        default=None,
    )  # fmt: skip
    underbust_girth: float = _length(
        "round the ribs just under the breasts, tape level and close",
        low=55, high=145, step=0.5, standard="ISO 8559-1, underbust girth",
        default=None,
    )  # fmt: skip
    waist_girth: float = _length(
        "round the waist, where the body bends when it leans to the side, tape level and close",
        low=45, high=160, step=0.5, standard="ISO 8559-1, 5.3.10 waist girth",
        default=None,
    )  # fmt: skip
    hip_girth: float = _length(
        "round the fullest part of the seat, tape level",
        low=65, high=180, step=0.5, standard="ISO 8559-1, 5.3.13 hip girth",
        default=None,
    )  # fmt: skip
    neck_base_girth: float = _length(
        "round the root of the neck, over the bone at its back and the hollow at its front",
        low=28, high=52, step=0.25, standard="ISO 8559-1, 5.3.3 neck base girth",
        default=None,
    )  # fmt: skip
    shoulder_length: float = _length(
        "from the side neck point along the ridge of the shoulder to the bone at its end",
        low=8, high=19, step=0.25, standard="ISO 8559-1, shoulder length (term from memory)",
        default=None,
    )  # fmt: skip
    neck_to_bust_point: float = _length(
        "from the side neck point over the chest down to the bust point",
        low=18, high=45, step=0.25,
        default=None,
    )  # fmt: skip
    bust_point_width: float = _length(
        "straight across from one bust point to the other, the tape not dipping between them",
        low=12, high=34, step=0.25,
        default=None,
    )  # fmt: skip
    front_waist_length: float = _length(
        "from the side neck point over the bust point and on down to the waist",
        low=30, high=65, step=0.25,
        default=None,
    )  # fmt: skip
    back_waist_length: float = _length(
        "from the bone at the back of the neck down the spine to the waist",
        low=28, high=56, step=0.25, standard="ISO 8559-1, 5.4.5 back neck point to waist",
        default=None,
    )  # fmt: skip
    armscye_depth: float = _length(
        "from the bone at the back of the neck down the back to the level of the underarm",
        low=12, high=30, step=0.25,
        default=None,
    )  # fmt: skip
    across_front_width: float = _length(
        "straight across the chest from arm crease to arm crease, midway between shoulder and underarm",
        low=24, high=52, step=0.25,
        default=None,
    )  # fmt: skip
    across_back_width: float = _length(
        "straight across the back from arm crease to arm crease, midway between shoulder and underarm",
        low=24, high=54, step=0.25,
        default=None,
    )  # fmt: skip
    waist_to_hip: float = _length(
        "down the side of the body from the waist to the level of the hip girth",
        low=12, high=32, step=0.25,
        default=None,
    )  # fmt: skip
    high_bust_girth: float | None = _length(
        "round the body close under the arms, above the breasts, tape level at the back",
        low=60, high=160, step=0.5, default=None, optional=True,
    )  # fmt: skip
    bust_point_to_fold: float | None = _length(
        "from the bust point straight down over the breast to the fold under it, the tape lying on the body",
        low=5, high=14, step=0.25, default=None, optional=True,
    )  # fmt: skip

    def __post_init__(self) -> None:
        check_all(self)
        refuse_impossible(self)

    @property
    def bust_minus_underbust(self) -> float:
        """Bust girth less underbust girth, cm: how full the breasts are."""
        return self.bust_girth - self.underbust_girth

    @property
    def high_bust(self) -> float:
        """High bust girth, cm: as given, else bust girth less 0.4 of bust minus underbust.

        Source of the 0.4: course convention.
        """
        if self.high_bust_girth is not None:
            return self.high_bust_girth
        return self.bust_girth - HIGH_BUST_SHARE * self.bust_minus_underbust

    @property
    def warnings(self) -> tuple[str, ...]:
        """One sentence for each thing that is possible but unlikely, so worth measuring again."""
        return unlikely(self)

    def replaced(self, **changes: float | None) -> "Measurements":
        """The same body with some measurements changed (cm), checked as a new one is."""
        return replace(self, **cast(dict[str, Any], changes))
