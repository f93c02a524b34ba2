"""What is chosen when a pattern is made ready to cut: allowances, bones, eyelets, tapes; each declared once."""

from dataclasses import dataclass, replace
from functools import partial
from typing import Any, cast

from corsetkit.pattern.edge import Edge, Kind
from corsetkit.quantity import Value, check_all, declared, given_by_name
from corsetkit.style import COURSE, CUSTOM
from corsetkit.units import CM_PER_INCH as INCH

STRIP, FOLDED = "strip", "folded"
MM = 0.1

_allowance = partial(declared, unit="cm", step=MM, group="allowances")
_bones = partial(declared, unit="cm", group="bones")
_lacing = partial(declared, unit="cm", group="lacing")


@given_by_name
@dataclass(frozen=True, kw_only=True)
class Finish:
    """The choices of one finishing; lengths in cm. An allowance of zero is an edge that is bound, cut on its own line."""

    panel_allowance: float = _allowance(
        "how far outside the sewing line the panels' seams are cut", low=0.6, high=3.0, default=1.5, source=CUSTOM
    )
    cup_allowance: float = _allowance(
        "how far outside the sewing line the cups' seams are cut; 1.0 cm (3/8 in) is easier for a beginner",
        low=0.3,
        high=1.5,
        default=0.6,
        source=CUSTOM,
    )
    shoulder_allowance: float = _allowance(
        "how far outside the sewing line the shoulder is cut", low=0.6, high=3.0, default=1.5, source=CUSTOM
    )
    neckline_allowance: float = _allowance(
        "how far outside the sewing line neckline and openings are cut", low=0, high=1.5, default=1.0, source=CUSTOM
    )
    armscye_allowance: float = _allowance(
        "how far outside the sewing line the armscye is cut", low=0, high=1.5, default=1.0, source=CUSTOM
    )
    top_allowance: float = _allowance(
        "how far outside the sewing line a free top edge is cut", low=0, high=1.5, default=1.0, source=CUSTOM
    )
    hem_allowance: float = _allowance(
        "how far outside the sewing line the hem is cut", low=0, high=3.0, default=1.0, source=CUSTOM
    )
    v_allowance: float = _allowance(
        "how far outside the sewing line the V at the top of the centre front is cut; where it is narrower than twice this, "
        "its cloth stays whole until the V is sewn, like a small dart",
        low=0.3,
        high=1.5,
        default=1.0,
        source=COURSE,
    )
    facing: str = declared(
        "whether the lacing edge is faced with a strip of its own or with its allowance, folded back",
        unit="choice",
        choices=(STRIP, FOLDED),
        choice_words=("a strip of its own", "folded back"),
        default=STRIP,
        group="allowances",
        source=CUSTOM,
    )
    lacing_allowance: float = _allowance(
        "how far outside the sewing line a lacing edge with a strip is cut",
        low=0.6,
        high=3.0,
        default=1.5,
        only=("facing", STRIP),
        source=CUSTOM,
    )
    facing_width: float = _allowance(
        "how wide the facing behind the eyelets is when finished", low=2.2, high=6.8, default=4.5, source=CUSTOM
    )
    notch_depth: float = _allowance(
        "how deep a notch is cut, and never more than half the allowance", low=0.2, high=0.8, default=0.5, source=CUSTOM
    )

    bone_width: float = _bones("how wide the bones are", low=0.3, high=1.3, step=MM / 2, default=0.7, source=COURSE)
    bone_shorter: float = _bones(
        "how much shorter than its channel a bone is, both ends together",
        low=INCH / 4,
        high=INCH,
        step=INCH / 16,
        default=INCH / 2,
        source=CUSTOM,
    )
    channel_ease: float = _bones(
        "how much wider than its bone a channel is",
        low=INCH / 32,
        high=INCH / 8,
        step=INCH / 32,
        default=INCH / 16,
        source=CUSTOM,
    )
    widest_unsupported: float = _bones(
        "how wide at the waist the cloth between two bones may be", low=3.5, high=10.5, step=0.5, default=7.0, source=COURSE
    )

    eyelet_spacing: float = _lacing(
        "how far apart two eyelets are at most",
        low=1.2,
        high=3.0,
        step=MM,
        default=2.4,
        source=CUSTOM,
        why_range="farther than 3 cm apart the edge gapes between them",
    )
    waist_spacing: float = _lacing(
        "how far apart the two pairs of eyelets at the waist are", low=0.6, high=1.8, step=MM, default=1.2, source=CUSTOM
    )
    eyelet_inset: float = _lacing(
        "how far from the lacing edge, and from its ends, the eyelets' middles are",
        low=0.65,
        high=2.0,
        step=MM / 2,
        default=1.3,
        source=CUSTOM,
    )
    tails: float = _lacing(
        "how much lacing is left for the loops at the waist and the tails",
        low=50,
        high=200,
        step=5,
        default=100,
        source=COURSE,
    )
    waist_tape_width: float = _lacing("how wide the waist tape is", low=1.1, high=3.3, step=MM, default=2.2, source=CUSTOM)

    def __post_init__(self) -> None:
        check_all(self)

    def replaced(self, **changes: Value) -> "Finish":
        """These choices with other values; each is checked like the first."""
        return replace(self, **cast(dict[str, Any], changes))


CHOICE_OF = {
    Kind.PANEL_SEAM: "panel_allowance",
    Kind.CUP_SEAM: "cup_allowance",
    Kind.SHOULDER: "shoulder_allowance",
    Kind.NECKLINE: "neckline_allowance",
    Kind.OPENING: "neckline_allowance",
    Kind.ARMSCYE: "armscye_allowance",
    Kind.TOP: "top_allowance",
    Kind.HEM: "hem_allowance",
    Kind.CENTRE_FRONT: "v_allowance",
    Kind.LACING: "lacing_allowance",
}
"""Which choice says an edge's allowance. A fold has none: the cloth runs on."""


def choice_of(edge: Edge, choices: Finish) -> str | None:
    """The name of the choice that says the edge's allowance, None for a fold."""
    if edge.kind is Kind.LACING and choices.facing == FOLDED:
        return "facing_width"
    return CHOICE_OF.get(edge.kind)


def allowance(edge: Edge, choices: Finish) -> float:
    """The edge's allowance in cm."""
    name = choice_of(edge, choices)
    return float(getattr(choices, name)) if name else 0.0
