"""Bodies for tests: the published mean body, random plausible ones, and hypothesis strategies.

Sources, used here and nowhere else:
- means and standard deviations: US Army 1988, women, n = 2,208 (Gordon et al. 1989,
  NATICK/TR-89/044);
- correlations with the bust girth: US Army 2012, women (ANSUR II, NATICK/TR-15/007);
- what neither has (marked "assumed") is our own assumption. Nobody here was measured by us.
"""

import math
import random
from dataclasses import dataclass

from hypothesis import strategies as st

from corsetkit.errors import CorsetkitError
from corsetkit.measurements import Measurements
from corsetkit.quantity import Quantity, quantities

# Random bodies stay within this many standard deviations in each independent draw (assumed).
SPREAD = 2.5


@dataclass(frozen=True)
class Trait:
    """Mean and standard deviation (cm), and how the deviation hangs together with three others.

    `torso` and `frame` are what the bust girth leaves unsaid of the upper body's length and of
    the breadth of shoulders and back.
    """

    mean: float
    spread: float
    with_bust: float = 0.0  # correlation with the bust girth
    with_torso: float = 0.0  # assumed, like the next
    with_frame: float = 0.0

    def at(self, bust: float, torso: float, frame: float, own: float) -> float:
        shares = (self.with_bust, self.with_torso, self.with_frame)
        rest = math.sqrt(1 - sum(share**2 for share in shares))
        together = sum(a * b for a, b in zip(shares, (bust, torso, frame)))
        return self.mean + self.spread * (together + rest * own)


TRAITS = {
    "bust_girth": Trait(90.71, 6.35, 1.0),
    "underbust_girth": Trait(76.97, 5.10, 0.88),  # correlation with the bust assumed
    "waist_girth": Trait(72.55, 6.30, 0.84),
    "hip_girth": Trait(96.69, 6.02, 0.74),
    "neck_base_girth": Trait(34.62, 1.63, 0.66),
    "shoulder_length": Trait(14.47, 1.08, 0.13, with_frame=0.6),
    "neck_to_bust_point": Trait(26.80, 2.23, 0.60, 0.60),  # correlation with the bust assumed
    "back_waist_length": Trait(36.73, 2.50, 0.47, 0.70),
    "armscye_depth": Trait(18.57, 1.44, 0.45, 0.60),  # correlation with the bust assumed
    "across_back_width": Trait(37.62, 2.41, 0.63, with_frame=0.5),
    "waist_to_hip": Trait(20.5, 1.4, 0.10, 0.40),  # all assumed
}

# Assumed: the bust points' distance as a share of the bust girth, the chest's width less the
# back's, and how much longer the front is than the back with its neck's rise.
BUST_POINT_SHARE = 0.205
CHEST_LESS_BACK = -2.5
NECK_RISE = 1.9
FRONT_LONGER = 2.5

# US Army 1988, published means; the last four are assumed as above (front waist length: back
# 36.73 + 1.9 + 2.5).
MEAN_BODY = Measurements(
    bust_girth=90.71,
    underbust_girth=76.97,
    waist_girth=72.55,
    hip_girth=96.69,
    neck_base_girth=34.62,
    shoulder_length=14.47,
    neck_to_bust_point=26.80,
    back_waist_length=36.73,
    armscye_depth=18.57,
    across_back_width=37.62,
    bust_point_width=18.6,
    front_waist_length=41.13,
    across_front_width=35.12,
    waist_to_hip=20.5,
)


def random_bodies(n: int, seed: int) -> tuple[Measurements, ...]:
    """`n` plausible bodies, the same for the same seed; only such as `Measurements` accepts."""
    draw = random.Random(seed)
    found: list[Measurements] = []
    while len(found) < n:
        try:
            found.append(Measurements(**_body([_normal(draw) for _ in range(DRAWS)])))
        except CorsetkitError:
            continue
    return tuple(found)


def bodies() -> st.SearchStrategy[Measurements]:
    """A strategy of plausible bodies; it shrinks towards the mean body."""
    deviation = st.floats(-SPREAD, SPREAD)
    draws = st.lists(deviation, min_size=DRAWS, max_size=DRAWS)
    return draws.map(_body).filter(_accepted).map(lambda values: Measurements(**values))


def within(quantity: Quantity) -> st.SearchStrategy:
    """A strategy of every value a declaration allows."""
    if quantity.unit == "yes or no":
        allowed = st.booleans()
    elif quantity.unit == "choice":
        allowed = st.sampled_from(quantity.choices)
    elif quantity.unit == "count":
        allowed = st.integers(int(quantity.low), int(quantity.high))
    else:
        allowed = st.floats(quantity.low, quantity.high)
    return st.none() | allowed if quantity.optional else allowed


def outside(quantity: Quantity) -> st.SearchStrategy[float]:
    """A strategy of numbers a numeric declaration refuses, limits missed by at least 1e-6."""
    return st.floats(max_value=quantity.low - 1e-6) | st.floats(min_value=quantity.high + 1e-6)


def values_of(cls: type) -> st.SearchStrategy[dict]:
    """A strategy of keyword values for a declared dataclass, each within its own limits."""
    return st.fixed_dictionaries({one.name: within(one) for one in quantities(cls)})


# One draw a trait, one each for torso and frame, one each for the three lengths assumed below.
DRAWS = len(TRAITS) + 5


def _body(draws: list[float]) -> dict[str, float]:
    torso, frame, points, chest, front, *own = draws
    bust = own[0]
    body = {name: trait.at(bust, torso, frame, one) for (name, trait), one in zip(TRAITS.items(), own)}
    full = body["bust_girth"] - body["underbust_girth"]
    body["bust_point_width"] = BUST_POINT_SHARE * body["bust_girth"] + 1.1 * points
    body["across_front_width"] = body["across_back_width"] + CHEST_LESS_BACK + 1.2 * chest
    # A fuller bust makes the way over it longer: 0.15 cm for each cm (assumed).
    longer = FRONT_LONGER + 0.15 * (full - 13.74) + 1.1 * front
    body["front_waist_length"] = body["back_waist_length"] + NECK_RISE + longer
    return body


def _normal(draw: random.Random) -> float:
    while abs(number := draw.gauss(0, 1)) > SPREAD:
        pass
    return number


def _accepted(values: dict[str, float]) -> bool:
    try:
        Measurements(**values)
    except CorsetkitError:
        return False
    return True
