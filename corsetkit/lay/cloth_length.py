"""How much cloth to buy, in the words of a shop, and what that is measured against."""

import math
from collections.abc import Container
from enum import Enum

from corsetkit.lay.cloth import WIDTHS, Cloth
from corsetkit.lay.plans import Plan
from corsetkit.units import CM_PER_INCH, check_unit, say_length, say_number
from corsetkit.words import words_of

WORDS = words_of("lay")

STEP_CM, STEP_YARD = 5.0, 1 / 8
"""Cloth is bought in steps of 5 cm or an eighth of a yard; common practice, no source."""
CM_PER_YARD = 36 * CM_PER_INCH
_MUCH = 1.3
"""A folded lay that has to be so many times as long as its bare area is worth comparing; course convention."""
_SLACK = 1e-6


def to_buy(length: float, unit: str) -> float:
    """The length (cm) to buy for a lay of this length, rounded up to the shop's next step."""
    step = STEP_CM if check_unit(unit) == "cm" else STEP_YARD * CM_PER_YARD
    return math.ceil(length / step - _SLACK) * step


def say_bought(length: float, unit: str) -> str:
    """A length to buy in the shop's words: "0.55 m" or "1 3/8 yd"."""
    bought = to_buy(length, unit)
    if unit == "cm":
        return f"{say_number(bought / 100, 2)} m"
    whole, parts = divmod(round(bought / CM_PER_YARD / STEP_YARD), 8)
    shared = math.gcd(parts, 8)
    words = [str(whole)] if whole or not parts else []
    words += [f"{parts // shared}/{8 // shared}"] if parts else []
    return f"{' '.join(words)} yd"


def say_width(cloth: Cloth, unit: str) -> str:
    """The cloth's width: in inches the usual ones as a shop calls them."""
    shop = WIDTHS.get(cloth.width) if unit == "in" else None
    return f"{shop} in" if shop else say_length(cloth.width, unit)


def say_share(share: float) -> str:
    return f"{round(100 * share)} %"


class About(Enum):
    """What one sentence on a plan's length is about."""

    BUYING, TAKEN, BOUND, ROWS_LONGER, IN_ROWS, FOLD, PRESS = range(7)


def quantities_said(plan: Plan, unit: str, apart: Container[About] = ()) -> tuple[str, ...]:
    """What to buy for one plan, and how good the plan is, as short sentences; those `apart` are not said."""
    return tuple(sentence for about, sentence in _quantities(plan, unit).items() if about not in apart)


def _quantities(plan: Plan, unit: str) -> dict[About, str]:
    said = {}
    bought, width = say_bought(plan.length, unit), say_width(plan.cloth, unit)
    said[About.BUYING] = WORDS("buy_folded" if plan.cloth.folded else "buy_single", bought=bought, width=width)
    said[About.TAKEN] = WORDS("taken", length=say_length(plan.length, unit), share=say_share(plan.used))
    longer = plan.length > plan.bound + _SLACK
    said[About.BOUND] = WORDS("bound", length=say_length(plan.bound, unit)) if longer else WORDS("bound_reached")
    if plan.plain > plan.length + _SLACK:
        said[About.ROWS_LONGER] = WORDS("rows_longer", length=say_length(plan.plain, unit))
    else:
        said[About.IN_ROWS] = WORDS("in_rows")
    even = plan.area / plan.cloth.layers / plan.cloth.room
    if sum(one.at_fold for one in plan.placed) > 1 and plan.bound > _MUCH * even:
        said[About.FOLD] = WORDS("fold_follows")
    said[About.PRESS] = WORDS("press")
    return said
