"""How much cloth to buy, in the words of a shop, and what that is measured against."""

import math

from corsetkit.lay.cloth import WIDTHS, Cloth
from corsetkit.lay.plans import Plan
from corsetkit.units import CM_PER_INCH, check_unit, say_length, say_number

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


def quantities_said(plan: Plan, unit: str) -> tuple[str, ...]:
    """What to buy for one plan, and how good the plan is, as short sentences."""
    lies = "folded along its length" if plan.cloth.folded else "single"
    said = [
        f"Buy {say_bought(plan.length, unit)} of cloth {say_width(plan.cloth, unit)} wide, and lay it {lies}.",
        f"The pieces take up {say_length(plan.length, unit)} of its length, and {say_share(plan.used)} of that cloth "
        "becomes the corset.",
    ]
    if plan.length > plan.bound + _SLACK:
        said.append(f"No lay of these pieces on this cloth can be shorter than {say_length(plan.bound, unit)}.")
    else:
        said.append("No lay of these pieces on this cloth can be shorter.")
    if plan.plain > plan.length + _SLACK:
        said.append(f"Laid plainly, row by row, they would take up {say_length(plan.plain, unit)}.")
    else:
        said.append("They lie plainly, row by row.")
    even = plan.area / plan.cloth.layers / plan.cloth.room
    if sum(one.at_fold for one in plan.placed) > 1 and plan.bound > _MUCH * even:
        said.append(
            "The pieces on the fold follow one another along it; on cloth laid single they are opened out, and may "
            "take up less."
        )
    said.append("Press the cloth and straighten its end before you lay the pieces; buy more where it will shrink.")
    return tuple(said)
