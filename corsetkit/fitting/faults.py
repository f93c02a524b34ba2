"""Faults seen on the toile: what is seen, the likely cause, what is measured, and the line that moves first.

The first moves are course conventions. Whatever is moved: measure the pinch, move an edge by no more than 6 mm in one pass,
walk the seam, sew the toile again and look anew.
"""

from dataclasses import dataclass
from typing import TypeAlias

from corsetkit.fitting.lines import Line, line_named
from corsetkit.pattern.pattern import Correction
from corsetkit.quantity import Quantity
from corsetkit.style import COURSE, Style
from corsetkit.words import words_of

WORDS = words_of("fitting")

Shares: TypeAlias = tuple[tuple[str, float], ...]
"""Lines by their names, each with the share of the pinch that it moves by."""


@dataclass(frozen=True)
class Fault:
    """A fault.

    `pinch` is what the learner measures on the toile, in cm. `moves` and `further` are (line, share): the line moves by that
    share of the pinch; `further` is for the next pass, where the first move was not enough.
    """

    seen: str
    cause: str
    pinch: Quantity
    moves: Shares
    caution: str
    further: Shares = ()
    source: str = COURSE

    def corrections(self, pinch: float | None = None) -> tuple[Correction, ...]:
        """The first move as `Correction`s, for a pinch in cm or the usual one; CorsetkitError where it is not allowed."""
        return _corrections(self.moves, self.pinch, pinch)

    def further_corrections(self, pinch: float | None = None) -> tuple[Correction, ...]:
        """The next pass's move, as `corrections`; empty where there is only one."""
        return _corrections(self.further, self.pinch, pinch)

    @property
    def lines(self) -> tuple[Line, ...]:
        """The `Line`s of the first move."""
        return tuple(line_named(name) for name, _ in self.moves)

    def fits(self, style: Style) -> bool:
        """Whether the fault can be seen in this style: one of the yoke needs a yoke."""
        return all(not line.only or getattr(style, line.only[0]) == line.only[1] for line in self.lines)


def _corrections(moves: Shares, quantity: Quantity, pinch: float | None) -> tuple[Correction, ...]:
    amount = quantity.number(quantity.default if pinch is None else pinch)
    return tuple(Correction(name, share * amount) for name, share in moves)


def _pinch(name: str, meaning: str, low: float, high: float, usual: float) -> Quantity:
    return Quantity(
        name,
        meaning,
        "cm",
        low=low,
        high=high,
        step=0.1,
        default=usual,
        source=COURSE,
        group="fitting",
        why_range=WORDS("why_range"),
    )


FAULTS = (
    Fault(
        WORDS("gapes"),
        WORDS("gapes_cause"),
        _pinch("wedge", WORDS("gapes_pinch"), 0.4, 1.2, 0.8),
        (("tightening dart", 1.0),),
        WORDS("gapes_caution"),
    ),
    Fault(
        WORDS("spills_over"),
        WORDS("spills_over_cause"),
        _pinch("rise", WORDS("spills_over_pinch"), 0.3, 1.0, 0.6),
        (("overbust mark", 1.0),),
        WORDS("spills_over_caution"),
        (("centre front dart", 0.5),),
    ),
    Fault(
        WORDS("spills_at_underarm"),
        WORDS("spills_at_underarm_cause"),
        _pinch("reach", WORDS("spills_at_underarm_pinch"), 0.3, 1.0, 0.5),
        (("cup to the side", 1.0),),
        WORDS("spills_at_underarm_caution"),
    ),
    Fault(
        WORDS("seam_on_breast"),
        WORDS("seam_on_breast_cause"),
        _pinch("reach", WORDS("seam_on_breast_pinch"), 0.3, 1.0, 0.5),
        (("cup to the front", 1.0),),
        WORDS("seam_on_breast_caution"),
    ),
    Fault(
        WORDS("empty_point"),
        WORDS("empty_point_cause"),
        _pinch("fold", WORDS("empty_point_pinch"), 0.2, 0.9, 0.4),
        (("centre front dart", -1.0),),
        WORDS("empty_point_caution"),
    ),
    Fault(
        WORDS("radiates"),
        WORDS("radiates_cause"),
        _pinch("pull", WORDS("radiates_pinch"), 0.2, 0.9, 0.4),
        (("centre front dart", 1.0),),
        WORDS("radiates_caution"),
    ),
    Fault(
        WORDS("lower_cup_wrinkles"),
        WORDS("lower_cup_wrinkles_cause"),
        _pinch("fold", WORDS("folds_upright"), 0.3, 1.0, 0.5),
        (("underbust line", -1.0),),
        WORDS("lower_cup_wrinkles_caution"),
    ),
    Fault(
        WORDS("rides_up"),
        WORDS("rides_up_cause"),
        _pinch("slack", WORDS("rides_up_pinch"), 0.4, 2.4, 1.2),
        (("underbust girth", -1.0),),
        WORDS("rides_up_caution"),
        (("underbust line", 0.4),),
    ),
    Fault(
        WORDS("stands_away"),
        WORDS("stands_away_cause"),
        _pinch("bridge", WORDS("stands_away_pinch"), 0.2, 0.6, 0.3),
        (("centre front", 1.0),),
        WORDS("stands_away_caution"),
    ),
    Fault(
        WORDS("seam_beside_point"),
        WORDS("seam_beside_point_cause"),
        _pinch("aside", WORDS("seam_beside_point_pinch"), -1.0, 1.0, 0.5),
        (("bust point sideways", 1.0),),
        WORDS("seam_beside_point_caution"),
    ),
    Fault(
        WORDS("turn_off_point"),
        WORDS("turn_off_point_cause"),
        _pinch("above", WORDS("turn_off_point_pinch"), -1.0, 1.0, 0.5),
        (("bust point height", 1.0),),
        WORDS("turn_off_point_caution"),
    ),
    Fault(
        WORDS("gap_wide_top"),
        WORDS("gap_wide_top_cause"),
        _pinch("gap", WORDS("gap_wide_top_pinch"), 0.5, 4.8, 2.0),
        (("top girth", 1.0),),
        WORDS("gap_wide_top_caution"),
    ),
    Fault(
        WORDS("gap_wide_bottom"),
        WORDS("gap_wide_bottom_cause"),
        _pinch("gap", WORDS("gap_wide_bottom_pinch"), 0.5, 4.8, 2.0),
        (("hip girth", 1.0),),
        WORDS("gap_wide_bottom_caution"),
    ),
    Fault(
        WORDS("gap_wide_waist"),
        WORDS("gap_wide_waist_cause"),
        _pinch("gap", WORDS("gap_wide_waist_pinch"), 0.4, 2.4, 1.2),
        (("waist girth", 1.0),),
        WORDS("gap_wide_waist_caution"),
    ),
    Fault(
        WORDS("gap_narrow_waist"),
        WORDS("gap_narrow_waist_cause"),
        _pinch("gap", WORDS("gap_narrow_waist_pinch"), 0.4, 4.8, 2.0),
        (("waist girth", -0.5), ("top girth", 0.5), ("hip girth", 0.5)),
        WORDS("gap_narrow_waist_caution"),
    ),
    Fault(
        WORDS("side_seam_leans"),
        WORDS("side_seam_leans_cause"),
        _pinch("offset", WORDS("side_seam_leans_pinch"), -0.6, 0.6, 0.3),
        (("side seam", 1.0),),
        WORDS("side_seam_leans_caution"),
    ),
    Fault(
        WORDS("folds_tight"),
        WORDS("folds_tight_cause"),
        _pinch("missing", WORDS("folds_tight_pinch"), 0.4, 2.4, 1.2),
        (("waist girth", 1.0),),
        WORDS("folds_tight_caution"),
    ),
    Fault(
        WORDS("folds_easy"),
        WORDS("folds_easy_cause"),
        _pinch("fold", WORDS("folds_upright"), 0.3, 1.0, 0.5),
        (("length above the waist", -1.0),),
        WORDS("folds_easy_caution"),
    ),
    Fault(
        WORDS("hem_digs_front"),
        WORDS("hem_digs_front_cause"),
        _pinch("rise", WORDS("turned_up"), 0.3, 1.0, 1.0),
        (("hem at the front", 1.0),),
        WORDS("hem_digs_front_caution"),
    ),
    Fault(
        WORDS("hem_digs_side"),
        WORDS("hem_digs_side_cause"),
        _pinch("rise", WORDS("turned_up"), 0.3, 1.0, 1.0),
        (("hem at the side", 1.0),),
        WORDS("hem_digs_side_caution"),
    ),
    Fault(
        WORDS("yoke_loose"),
        WORDS("yoke_loose_cause"),
        _pinch("slack", WORDS("yoke_loose_pinch"), 0.3, 1.0, 1.0),
        (("back yoke", -1.0), ("yoke neckline", -1.0)),
        WORDS("yoke_loose_caution"),
    ),
)
"""In the order in which a toile is looked at: cup, front, lacing, side, hem, yoke."""
