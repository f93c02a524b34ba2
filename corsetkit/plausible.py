"""Which measurements can stand side by side on one body.

Impossible is an error; unlikely is a warning the student sees. The bounds are course convention
unless a source stands beside them.
"""

from collections.abc import Callable
from copy import copy
from dataclasses import dataclass
from typing import TYPE_CHECKING

from corsetkit.errors import CorsetkitError
from corsetkit.quantity import quantities
from corsetkit.units import CM_PER_INCH, say_both

if TYPE_CHECKING:
    from corsetkit.measurements import Measurements

BACK_NECK_RISE = 0.75 * CM_PER_INCH
"""How far the side neck point lies above the back neck point, cm: Baldt, Clothing for Women (1916), 3/4 in."""
FOLD_TO_WAIST = 3.0
"""How far above the waist the fold under the breast lies at least, cm."""
SMALL_BUST = 12.0
"""Bust minus underbust for which the fold is taken to lie 3 in below the bust point: course convention."""
FOLD_PER_CM = CM_PER_INCH / 16
"""How much lower it is taken to lie for each cm of bust minus underbust beyond that: course convention. It gives 3 1/2 in at a
difference of 20 cm, the custom's full bust; customs run from 5.7 to 12.5 cm."""
# How far below the bare body's underarm the block's is drawn unless the style says otherwise, cm:
# course convention within the usual 1.5 to 4 cm.
_BELOW_UNDERARM = 2.5


@dataclass(frozen=True)
class Rule:
    """`broken` says of a body whether the fields `names` contradict each other; `says` why."""

    names: tuple[str, ...]
    broken: "Callable[[Measurements], bool]"
    says: str


IMPOSSIBLE = (
    Rule(
        ("underbust_girth", "bust_girth"),
        lambda m: m.underbust_girth >= m.bust_girth,
        "the girth under the bust is always smaller than the girth over it",
    ),
    Rule(
        ("front_waist_length", "neck_to_bust_point"),
        lambda m: m.front_waist_length <= m.neck_to_bust_point + 5,
        "the first runs over the bust point on to the waist, so it is at least 5 cm (2 in) longer",
    ),
    Rule(
        ("bust_point_width", "bust_girth"),
        lambda m: m.bust_point_width >= m.bust_girth / 3,
        "the bust points lie less than a third of the bust girth apart",
    ),
    Rule(
        ("back_waist_length", "armscye_depth"),
        lambda m: m.back_waist_length <= m.armscye_depth + 5,
        "the waist lies at least 5 cm (2 in) below the underarm",
    ),
    Rule(
        ("across_front_width", "bust_girth"),
        lambda m: m.across_front_width >= m.bust_girth / 2,
        "the chest between the arms is less than half the bust girth",
    ),
    Rule(
        ("across_back_width", "bust_girth"),
        lambda m: m.across_back_width >= m.bust_girth / 2,
        "the back between the arms is less than half the bust girth",
    ),
    Rule(
        ("high_bust_girth", "bust_girth"),
        lambda m: m.high_bust_girth is not None and m.high_bust_girth > m.bust_girth,
        "the girth above the breasts is never larger than the girth over them",
    ),
    Rule(
        ("high_bust_girth", "underbust_girth"),
        lambda m: m.high_bust_girth is not None and m.high_bust_girth < 0.9 * m.underbust_girth,
        "the girth above the breasts is never so much smaller than the girth under them",
    ),
    Rule(
        ("bust_point_to_fold", "front_waist_length"),
        lambda m: (
            m.bust_point_to_fold is not None
            and m.bust_point_to_fold > m.front_waist_length - m.neck_to_bust_point - FOLD_TO_WAIST
        ),
        f"less neck to bust point, the second is at least {say_both(FOLD_TO_WAIST)} longer, for the fold lies above the waist",
    ),
    Rule(
        ("hip_girth", "waist_girth"),
        lambda m: m.hip_girth < m.waist_girth * 2 / 3,
        "the hips are at least two thirds of the waist",
    ),
    Rule(("waist_girth", "hip_girth"), lambda m: m.waist_girth < m.hip_girth / 2, "the waist is at least half the hips"),
    Rule(
        ("neck_to_bust_point", "armscye_depth"),
        lambda m: m.neck_to_bust_point < m.armscye_depth + BACK_NECK_RISE + _BELOW_UNDERARM,
        "the bust point would lie above the underarm, for the first must be at least "
        f"{say_both(BACK_NECK_RISE + _BELOW_UNDERARM)} longer than the second",
    ),
)

UNLIKELY = (
    Rule(
        ("bust_point_to_fold", "bust_girth", "underbust_girth"),
        lambda m: m.bust_point_to_fold is not None and abs(m.bust_point_to_fold - usual_fold(m.bust_minus_underbust)) > 2.5,
        "a breast as full as that usually has its fold nearer to the bust point, or farther from it, than this",
    ),
    Rule(
        ("front_waist_length", "back_waist_length"),
        lambda m: _front_longer(m) > 6,
        "the front is far longer than the back, so the side bust dart gets very deep",
    ),
    Rule(
        ("bust_girth", "underbust_girth"),
        lambda m: m.bust_girth - m.underbust_girth < 7,
        "the difference is so small that the cups will be almost flat",
    ),
    Rule(
        ("bust_girth", "underbust_girth"),
        lambda m: m.bust_girth - m.underbust_girth > 30,
        "the difference is larger than these cups are drafted for",
    ),
    Rule(
        ("bust_point_width", "bust_girth"),
        lambda m: m.bust_point_width < 0.16 * m.bust_girth,
        "the bust points are very close together for this bust",
    ),
    Rule(
        ("bust_point_width", "bust_girth"),
        lambda m: m.bust_point_width > 0.25 * m.bust_girth,
        "the bust points are very far apart for this bust",
    ),
    Rule(
        ("shoulder_length", "neck_base_girth", "across_back_width"),
        lambda m: _shoulder_span(m) > m.across_back_width + 8,
        "the shoulders are very long for this back",
    ),
    Rule(
        ("shoulder_length", "neck_base_girth", "across_back_width"),
        lambda m: _shoulder_span(m) < m.across_back_width - 6,
        "the shoulders are very short for this back",
    ),
    Rule(
        ("across_front_width", "across_back_width"),
        lambda m: not -8 <= m.across_front_width - m.across_back_width <= 2,
        "the chest is usually a little narrower than the back",
    ),
    Rule(
        ("front_waist_length", "neck_to_bust_point"),
        lambda m: not 9 <= m.front_waist_length - m.neck_to_bust_point <= 21,
        "the bust point lies unusually far from the usual height above the waist",
    ),
    # Regressions on the bust girth: US Army 2012 (ANSUR II, NATICK/TR-15/007), women; the bounds
    # are a little over three of their standard deviations (1.48 and 2.31 cm).
    Rule(
        ("neck_base_girth", "bust_girth"),
        lambda m: abs(m.neck_base_girth - 22.33 - 0.1561 * m.bust_girth) > 5,
        "few bodies with this bust have such a neck",
    ),
    Rule(
        ("across_back_width", "bust_girth"),
        lambda m: abs(m.across_back_width - 15.66 - 0.2289 * m.bust_girth) > 7.5,
        "few bodies with this bust have such a back",
    ),
)


def usual_fold(fuller: float) -> float:
    """How far below the bust point the fold under the breast usually lies, cm, where bust has so much more than underbust."""
    return 3 * CM_PER_INCH + FOLD_PER_CM * (fuller - SMALL_BUST)


def refuse_impossible(body: "Measurements") -> None:
    """Raise CorsetkitError for the first rule of IMPOSSIBLE that `body` breaks."""
    for rule in IMPOSSIBLE:
        if rule.broken(body):
            raise CorsetkitError(f"{_both_said(body, rule)} do not go together: {rule.says}{_remedy(body, rule)}")


def unlikely(body: "Measurements") -> tuple[str, ...]:
    """A sentence for each rule of UNLIKELY that `body` breaks."""
    return tuple(f"{_both_said(body, rule)}: {rule.says}; measure again to be sure." for rule in UNLIKELY if rule.broken(body))


def _front_longer(m: "Measurements") -> float:
    """How much higher the front's underarm lies above the waist than the back's, cm."""
    return m.front_waist_length - (m.back_waist_length + BACK_NECK_RISE)


def _shoulder_span(m: "Measurements") -> float:
    """From shoulder tip to shoulder tip, cm: a third of the neck and both slanting shoulders.

    Cosine of 25.8 degrees, the mean bare shoulder's slope (US Army 1988, Gordon et al. 1989).
    """
    return m.neck_base_girth / 3 + 2 * 0.9 * m.shoulder_length


def _both_said(body: "Measurements", rule: Rule) -> str:
    said = [f"{name.replace('_', ' ')} {say_both(getattr(body, name))}" for name in rule.names]
    return ", ".join(said[:-1]) + " and " + said[-1]


def _remedy(body: "Measurements", rule: Rule) -> str:
    """Name the wrong unit where changing it for one field alone would make an ordinary body."""
    limits = {one.name: one for one in quantities(type(body))}
    for name in rule.names:
        for factor, words in ((CM_PER_INCH, "inches given as centimetres"), (1 / CM_PER_INCH, "centimetres given as inches")):
            other = copy(body)  # Not made anew, for that would check it.
            object.__setattr__(other, name, getattr(body, name) * factor)
            low, high, _ = limits[name].limits
            within = low <= getattr(other, name) <= high
            if within and not any(one.broken(other) for one in IMPOSSIBLE + UNLIKELY):
                return f"; {name.replace('_', ' ')} looks like {words}"
    return "; measure " + ("both" if len(rule.names) == 2 else "them") + " again"
