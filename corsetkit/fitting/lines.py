"""The lines that a fitting can correct, each declared once: its name, what it is, how far a pass moves it, and which way.

Limits are course convention: an edge is moved by no more than 6 mm in one pass and a free edge by no more than 10 mm; then
the seam is walked and the toile is tried on again.
"""

from dataclasses import dataclass, replace
from typing import TypeAlias

from corsetkit.errors import CorsetkitError
from corsetkit.measurements import Measurements
from corsetkit.quantity import Quantity, Value, quantities
from corsetkit.style import COURSE, PASSES, Fitting, Style
from corsetkit.units import say_both, say_length, shown
from corsetkit.words import words_of

WORDS = words_of("fitting")

_STEP = 0.1
EDGE, FREE = 0.6, 1.0
"""The most that one pass moves a sewn edge, and a free edge or a point, cm."""


Added: TypeAlias = tuple[type[Style] | type[Fitting] | type[Measurements], str, float]
"""What is added to for each cm: whose field it is, its name, and the factor."""
Only: TypeAlias = tuple[str, Value]
"""A style value's name, and what it must be."""


@dataclass(frozen=True)
class Line:
    """A line that a correction moves.

    `quantity` holds its name, meaning, and limits for one pass in cm; `more` and `less` say in words what a correction above
    and below zero does. `moves` are (owner, field, factor): what is added to which field of the `Style`, of its `Fitting`
    or of the `Measurements` for each cm. `only` is the name and the value of a style value without which it does nothing.
    """

    quantity: Quantity
    more: str
    less: str
    moves: tuple[Added, ...]
    only: Only | None = None

    @property
    def name(self) -> str:
        """The name for people, which is a correction's `line`."""
        return self.quantity.label

    def said(self, by: float, unit: str | None = "cm") -> str:
        """A correction of this line in words: "underbust line: 0.5 cm lower"; `unit` None says it in both."""
        length = say_length(abs(by), unit) if unit else say_both(abs(by))
        return WORDS("line_corrected", line=self.name, by=length, which_way=self.more if by >= 0 else self.less)


def _line(name: str, meaning: str, most: float, more: str, less: str, *moves: Added, only: Only | None = None) -> Line:
    # An amount beyond a pass is refused by the correction; zero lies in the middle, where a slider begins.
    quantity = Quantity(name, meaning, "cm", low=-most, high=most, step=_STEP, default=0.0, source=COURSE, group="fitting")
    return Line(quantity, more, less, moves, only)


def _fitted(name: str, more: str, less: str, only: Only | None = None) -> Line:
    """A line that a step works out: the amount is declared beside the style, with room for a few passes."""
    own = next(one for one in quantities(Fitting) if one.name == name)
    low, high, _ = own.limits
    return Line(replace(own, low=low / PASSES, high=high / PASSES, why_range=None), more, less, ((Fitting, name, 1.0),), only)


def _styled(
    name: str, field: str, meaning: str, most: float, more: str, less: str, factor: float = 1.0, only: Only | None = None
) -> Line:
    return _line(name, meaning, most, more, less, (Style, field, factor), only=only)


LINES = (
    _styled("overbust_mark", "overbust_mark", WORDS("overbust_mark"), FREE, WORDS("higher"), WORDS("lower")),
    _fitted("tightening_dart", WORDS("more_taken_in"), WORDS("less_taken_in")),
    _styled(
        "centre_front_dart",
        "centre_front_dart",
        WORDS("centre_front_dart"),
        1.5 * EDGE,
        WORDS("more_taken_in"),
        WORDS("less_taken_in"),
    ),
    _styled(
        "centre_front",
        "centre_front_taking_in",
        WORDS("centre_front"),
        EDGE,
        WORDS("more_taken_in_each"),
        WORDS("less_taken_in_each"),
    ),
    _fitted("cup_to_the_side", WORDS("towards_side"), WORDS("nearer_bust_point")),
    _fitted("cup_to_the_front", WORDS("towards_front"), WORDS("nearer_bust_point")),
    _line(
        "bust_point_sideways",
        WORDS("bust_point_sideways"),
        FREE,
        WORDS("nearer_side"),
        WORDS("nearer_front"),
        (Measurements, "bust_point_width", 2.0),
    ),
    _line(
        "bust_point_height",
        WORDS("bust_point_height"),
        FREE,
        WORDS("higher"),
        WORDS("lower"),
        (Measurements, "neck_to_bust_point", -1.0),
    ),
    _fitted("underbust_line", WORDS("lower"), WORDS("higher")),
    _fitted("underbust_girth", WORDS("larger"), WORDS("smaller")),
    _fitted("top_girth", WORDS("larger"), WORDS("smaller")),
    _styled("waist_girth", "waist_reduction", WORDS("waist_girth"), 4 * EDGE, WORDS("larger"), WORDS("smaller"), -1.0),
    _fitted("hip_girth", WORDS("larger"), WORDS("smaller")),
    _fitted("side_seam", WORDS("back"), WORDS("forward")),
    _line(
        "length_above_the_waist",
        WORDS("length_above_the_waist"),
        FREE,
        WORDS("longer"),
        WORDS("shorter"),
        (Measurements, "front_waist_length", 1.0),
        (Measurements, "back_waist_length", 1.0),
    ),
    _styled("hem_at_the_side", "hem_raise", WORDS("hem_at_the_side"), FREE, WORDS("higher"), WORDS("lower")),
    _fitted("hem_at_the_front", WORDS("higher"), WORDS("lower")),
    _fitted("back_yoke", WORDS("longer"), WORDS("shorter"), only=("yoke", True)),
    _styled(
        "yoke_neckline",
        "yoke_shoulder",
        WORDS("yoke_neckline"),
        FREE,
        WORDS("farther_neck"),
        WORDS("nearer_neck"),
        only=("yoke", True),
    ),
)
_BY_NAME = {line.name: line for line in LINES}


def line_named(name: object) -> Line:
    """The `Line` of that name; CorsetkitError where the draft has none."""
    known = _BY_NAME.get(name.replace("_", " ")) if isinstance(name, str) else None
    if known is None:
        raise CorsetkitError(
            f"correction of {shown(name)}: no line of the draft that can be corrected is called so; "
            f"allowed are {', '.join(_BY_NAME)}"
        )
    return known
