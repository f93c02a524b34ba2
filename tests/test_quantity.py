"""One declaration, and what is made of it."""

import math
from dataclasses import FrozenInstanceError, dataclass
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pytest
from bodies import outside, values_of, within
from hypothesis import given
from hypothesis import strategies as st

from corsetkit.errors import CorsetkitError
from corsetkit.quantity import Quantity, check_all, declared, quantities
from corsetkit.units import CM_PER_INCH, parse_length


@dataclass(frozen=True)
class Sample:
    """One field of each kind."""

    height: float = declared(
        "how far above the point the mark lies",
        unit="cm", low=3.8, high=11.4, step=0.3, default=7.62, group="overbust", source="a test",
    )  # fmt: skip
    slope: float = declared("how steep it is", unit="degrees", low=-10, high=40, step=1, default=20)
    part: float = declared("which part of it", unit="share", low=0, high=1, step=0.05, default=0.5)
    panels: int = declared("how many", unit="count", low=1, high=4, step=1, default=2)
    opening: bool = declared("whether it is open", unit="yes or no", default=True)
    method: str = declared("which way", unit="choice", choices=("guides", "wearer"), default="wearer")
    spare: float | None = declared(
        "a length that may be left out",
        unit="cm", low=10, high=20, step=1, default=None, optional=True,
    )  # fmt: skip
    plain: int = 7  # not declared: no quantity

    def __post_init__(self):
        check_all(self)


@dataclass(frozen=True, kw_only=True)
class Body:
    """Required fields."""

    girth: float = declared("round it", unit="cm", low=60, high=150, step=0.5)

    def __post_init__(self):
        check_all(self)


BY_NAME = {one.name: one for one in quantities(Sample)}
NUMBERS = [one for one in quantities(Sample) if one.is_number]


def test_quantities_are_the_declared_fields_in_order():
    """A quantity is named after its field, and only declared fields have one."""
    names = ["height", "slope", "part", "panels", "opening", "method", "spare"]
    assert [one.name for one in quantities(Sample)] == names
    height = BY_NAME["height"]
    assert (height.low, height.high, height.default, height.group) == (3.8, 11.4, 7.62, "overbust")
    assert height.meaning == "how far above the point the mark lies"


def test_label_is_for_people():
    """A label has blanks where the name has underscores."""
    one = Quantity("back_waist_length", "down the back", "cm", low=1, high=2, step=0.5)
    assert one.label == "back waist length"


def test_defaults_and_required_fields():
    """A field with a default may be left out, a field without must be given."""
    assert Sample() == Sample(height=7.62, slope=20, panels=2, method="wearer", spare=None)
    with pytest.raises(TypeError, match="girth"):
        Body()
    with pytest.raises(CorsetkitError, match="girth is missing: allowed are 60 to 150 cm"):
        Body(girth=None)


def test_values_are_normalised_and_frozen():
    """Whatever number is given, a declared field holds a plain float or int that cannot change."""
    sample = Sample(height=Fraction(15, 2), panels=3.0)
    assert (sample.height, type(sample.height)) == (7.5, float)
    assert (sample.panels, type(sample.panels)) == (3, int)
    with pytest.raises(FrozenInstanceError):
        sample.height = 8.0


@given(values_of(Sample))
def test_everything_within_the_limits_is_accepted(values):
    """Values within their limits are kept as they are."""
    sample = Sample(**values)
    assert {name: getattr(sample, name) for name in values} == values


@given(st.data())
def test_everything_outside_the_limits_is_refused(data):
    """A number outside its limits is refused in one line that names the field and the limits."""
    one = data.draw(st.sampled_from(NUMBERS))
    value = data.draw(outside(one))
    with pytest.raises(CorsetkitError) as caught:
        Sample(**{one.name: value})
    message = str(caught.value)
    assert message.startswith(f"{one.name} is ") and one.allowed in message
    assert "\n" not in message and len(message) < 200


NO_NUMBERS = [
    True, False, np.True_, np.False_, "7.62", "seven", math.nan, Decimal("NaN"), Decimal("sNaN"), np.float32("nan"),
    [7.62], np.array([7.62]), np.array(7.62), 7 + 0j, np.complex128(7), np.datetime64("2026-03-01"), b"7",
]  # fmt: skip


@pytest.mark.parametrize("name", [one.name for one in NUMBERS])
@pytest.mark.parametrize("value", NO_NUMBERS, ids=repr)
def test_what_is_not_a_number(name, value):
    """True, text, NaN and other things are refused where a number is asked for."""
    with pytest.raises(CorsetkitError, match=f"{name} is .*, which is not a number: allowed are"):
        BY_NAME[name].check(value)


KINDS = [int, float, Fraction, Decimal, np.int8, np.uint16, np.int64, np.float16, np.float32, np.float64, np.longdouble]


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_real_number_is_a_number(kind):
    """Python's and numpy's whole and broken numbers are taken for what they are, and kept as plain ones."""
    sample = Sample(height=kind(8), panels=kind(3), slope=kind(20))
    assert (sample.height, sample.panels, sample.slope) == (8.0, 3, 20.0)
    assert [type(one) for one in (sample.height, sample.panels, sample.slope)] == [float, int, float]
    assert parse_length(kind(8), "in") == 8 * CM_PER_INCH


@pytest.mark.parametrize("value", [Decimal("7.62"), Fraction(381, 50), np.float64(7.62)])
def test_a_broken_number_is_the_nearest_float(value):
    """A number that is no whole one becomes the float nearest to it."""
    assert Sample(height=value).height == 7.62


@pytest.mark.parametrize(
    "value",
    [math.inf, -math.inf, Decimal("Infinity"), Decimal("-1e999"), np.float32("inf"), 10**400, -(10**400), 0, -7.62, 1e9],
)
def test_absurd_numbers(value):
    """Infinite, huge, zero and negative lengths are refused like others outside the limits."""
    with pytest.raises(CorsetkitError, match="height is .*: allowed are 3.8 to 11.4 cm"):
        Sample(height=value)


@pytest.mark.parametrize(
    ("name", "value", "allowed"),
    [
        ("panels", 2.5, "allowed are whole numbers from 1 to 4"),
        ("opening", 1, "allowed are yes and no"),
        ("opening", "yes", "allowed are yes and no"),
        ("method", "other", "allowed are guides, wearer"),
        ("method", 1, "allowed are guides, wearer"),
        ("method", None, "method is missing"),
        ("slope", 41, "allowed are -10 to 40 degrees"),
        ("part", 1.2, "part is 120 %: allowed are 0 to 100 %"),
    ],
)
def test_refusals_say_what_is_allowed(name, value, allowed):
    """A refusal says what is allowed, in the quantity's own terms."""
    with pytest.raises(CorsetkitError, match=allowed):
        Sample(**{name: value})


def test_limits_of_lengths_are_said_in_both_units():
    """A length's refusal names value and limits in both units; the inches lie within."""
    with pytest.raises(CorsetkitError) as caught:
        BY_NAME["height"].check(1.27, "row 3, Maren: ")
    assert str(caught.value) == ("row 3, Maren: height is 1.27 cm (1/2 in): allowed are 3.8 to 11.4 cm (1 1/2 to 4 7/16 in)")


def test_wrong_unit_is_named():
    """Where the other unit would explain a refused length, the message says so; else not."""
    girth = quantities(Body)[0]
    with pytest.raises(CorsetkitError, match="; it looks like inches given as centimetres$"):
        girth.check(36)
    with pytest.raises(CorsetkitError, match="; it looks like centimetres given as inches$"):
        girth.check(92 * CM_PER_INCH)
    with pytest.raises(CorsetkitError, match=r" in\)$"):
        girth.check(10)


def test_a_sliders_last_step_is_accepted():
    """The float dust of a slider's steps does not push its end out of the limits."""
    one = BY_NAME["part"]
    assert 3 * 1.1 - 2.3 > 1.0
    assert one.check(3 * 1.1 - 2.3) == 1.0


@given(st.data())
def test_limits_in_inches_lie_within(data):
    """In inches, both limits are whole steps within the declared limits, at most a step lost."""
    low = data.draw(st.floats(0, 100))
    high = low + data.draw(st.floats(2, 100))
    one = Quantity("x", "x", "cm", low=low, high=high, step=data.draw(st.floats(0.1, 1.0)))
    first, last, step = one.limits_in("in")
    assert step in (1 / 16, 1 / 8, 1 / 4, 1 / 2)
    for end in (first, last):
        assert (end / step).is_integer()
        one.check(end * CM_PER_INCH)
    assert (first - step) * CM_PER_INCH < low
    assert (last + step) * CM_PER_INCH > high


@pytest.mark.parametrize(("cm", "inches"), [(0.1, 1 / 16), (0.25, 1 / 8), (0.3, 1 / 8), (0.5, 1 / 4), (1.0, 1 / 2)])
def test_steps_in_inches(cm, inches):
    """A step in inches is the fraction of a tape nearest to the declared step."""
    assert Quantity("x", "x", "cm", low=10, high=20, step=cm).limits_in("in")[2] == inches


def test_limits_of_what_is_no_length():
    """Only lengths change with the unit, and what is no number has no limits."""
    assert BY_NAME["slope"].limits_in("in") == BY_NAME["slope"].limits_in("cm") == (-10, 40, 1)
    assert BY_NAME["height"].limits_in("cm") == (3.8, 11.4, 0.3)
    with pytest.raises(ValueError, match="no limits"):
        BY_NAME["method"].limits_in("cm")


@pytest.mark.parametrize(
    ("name", "text", "unit", "value"),
    [
        ("height", "3", "in", 7.62),
        ("height", "3 in", "cm", 7.62),
        ("height", "7,62", "cm", 7.62),
        ("slope", "-5,5", "cm", -5.5),
        ("panels", "3", "cm", 3),
        ("opening", "No", "cm", False),
        ("method", " guides ", "cm", "guides"),
        ("spare", "  ", "cm", None),
        ("part", "0,35", "cm", 0.35),
        ("part", "35 %", "in", 0.35),
        ("part", "35", "cm", 0.35),
        ("part", "0.5%", "cm", 0.005),
        ("part", "1", "cm", 1.0),
    ],
)
def test_reading_text(name, text, unit, value):
    """Typed text is read as the declared kind of value."""
    assert BY_NAME[name].read(text, unit) == pytest.approx(value)


@pytest.mark.parametrize(
    ("name", "text"),
    [("height", "high"), ("height", ""), ("slope", "steep"), ("slope", "nan"), ("panels", "2.5"),
     ("opening", "perhaps"), ("method", "none")],
)  # fmt: skip
def test_text_that_cannot_be_read(name, text):
    """Typed text of the wrong kind is refused with the place and the field."""
    with pytest.raises(CorsetkitError, match=f"^row 2, {name} is "):
        BY_NAME[name].read(text, "cm", "row 2, ")


@given(st.data())
def test_said_values_are_read_back(data):
    """What a quantity says in cm is read back as the same value, to what is said."""
    one = data.draw(st.sampled_from([one for one in quantities(Sample) if one.name != "spare"]))
    value = data.draw(within(one))
    said = one.say(value).removesuffix(" degrees")
    if one.is_length:
        assert abs(float(said.removesuffix(" cm")) - value) <= 0.05 + 1e-9
    else:
        assert one.read(said) == pytest.approx(value, abs=0.005 + 1e-9)


def test_words_for_values():
    """A value is said with its unit, a missing one as not given."""
    assert BY_NAME["height"].say(7.62, "in") == "3 in"
    assert BY_NAME["slope"].say(25.8) == "25.8 degrees"
    assert BY_NAME["opening"].say(False) == "no"
    assert BY_NAME["spare"].say(None) == "not given"


def test_width_of_a_range():
    """A range covers half to one and a half of its default or is seen not to."""
    assert BY_NAME["part"].covers_half_to_one_and_a_half
    assert BY_NAME["height"].covers_half_to_one_and_a_half is False  # 3.81 to 11.43
    wide = Quantity("x", "x", "cm", low=1, high=3, step=0.5, default=2)
    assert wide.covers_half_to_one_and_a_half


@pytest.mark.parametrize(
    "wrong",
    [
        {"unit": "mm", "low": 1, "high": 2, "step": 0.5},
        {"unit": "cm", "low": 1, "high": 2},
        {"unit": "cm", "low": 2, "high": 1, "step": 0.5},
        {"unit": "cm", "low": 1, "high": 2, "step": 0},
        {"unit": "cm", "low": 1, "high": 2, "step": 0.5, "default": 3},
        {"unit": "choice"},
        {"unit": "cm", "low": 1, "high": 2, "step": 0.5, "choices": ("a",)},
        {"unit": "yes or no", "default": "yes"},
    ],
)
def test_declarations_that_contradict_themselves(wrong):
    """A declaration that contradicts itself is refused where it is written."""
    with pytest.raises(ValueError, match=r"^\(not named yet\)"):
        declared("a meaning", **wrong)


def test_a_typed_length_is_told_only_the_mistake_it_can_be():
    """Inches typed as inches are not called inches given as centimetres, and a named unit is believed."""
    from corsetkit.measurements import Measurements

    waist = next(one for one in quantities(Measurements) if one.name == "waist_girth")
    for text, unit, told in (("14 1/2", "in", False), ("92", "in", True), ("30", "cm", True), ("30 cm", "in", False)):
        with pytest.raises(CorsetkitError) as refused:
            waist.read(text, unit)
        assert ("it looks like" in str(refused.value)) == told
