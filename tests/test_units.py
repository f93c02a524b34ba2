"""Inches, fractions and centimetres."""

import math
from fractions import Fraction

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from corsetkit.errors import CorsetkitError
from corsetkit.units import CM_PER_INCH, Say, parse_length, round_to_sixteenth, say_both, say_length, say_number

REGISTRY = pint.UnitRegistry()


@given(st.floats(0, 1e4))
@settings(deadline=None)  # the library's first conversion takes its time
def test_inches_against_pint(inches):
    """An inch is what the units library pint says it is."""
    expected = REGISTRY.Quantity(inches, "inch").to("cm").magnitude
    assert parse_length(inches, "in") == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "unit", "inches"),
    [
        ("14 1/2", "in", 14.5),
        ("14½", "in", 14.5),
        ("14 ½", "in", 14.5),
        ("14-1/2", "in", 14.5),
        ("14 1\u20442", "in", 14.5),
        ("14\u00a01/2", "in", 14.5),
        ("  14.5  ", "in", 14.5),
        ("14,5", "in", 14.5),
        ("14.", "in", 14),
        (".5", "in", 0.5),
        ("½", "in", 0.5),
        ("7/8", "in", 0.875),
        ("14 1/2 in", "cm", 14.5),
        ("14 1/2in", "cm", 14.5),
        ('14 1/2"', "cm", 14.5),
        ("14½\u2033", "cm", 14.5),
        ("14.5 in.", "cm", 14.5),
        ("14.5 Inches", "cm", 14.5),
        ("36,83", "cm", 14.5),
        ("36.83 cm", "in", 14.5),
        ("36,83 centimetres", "in", 14.5),
        ("0", "cm", 0),
        (14.5, "in", 14.5),
        (Fraction(29, 2), "in", 14.5),
    ],
)
def test_text_to_length(text, unit, inches):
    """A length is read as people write it, and a unit in the text goes before the other."""
    assert parse_length(text, unit) == pytest.approx(inches * CM_PER_INCH, abs=1e-12)


@pytest.mark.parametrize(
    "given_",
    [
        "", "  ", "about 14", "14 fathoms", "nan", "inf", "-inf", "True", "1e3", "14 5/4", "14 1/0",
        "1/0", "5'2\"", "1.234,5", "14 1 2", "14 1/2 1/2", "36 .5", "²", "1_4", "-14", "-1/2",
        "\u22123", "9" * 5000, True, False, None, math.nan, math.inf, -1, -0.5, 10**400, [14], b"14",
    ],
)  # fmt: skip
def test_what_is_not_a_length(given_):
    """Anything but a length is refused in one line that names the field."""
    with pytest.raises(CorsetkitError) as caught:
        parse_length(given_, "in", what="row 2, bust girth")
    message = str(caught.value)
    assert message.startswith("row 2, bust girth is ")
    assert "\n" not in message and len(message) < 160


@pytest.mark.parametrize("unit", ["mm", "", "IN", None, 1])
def test_unit_names(unit):
    """The units are cm and in, and the refusal of another says so."""
    with pytest.raises(CorsetkitError, match="write cm or in"):
        parse_length("14", unit)
    with pytest.raises(CorsetkitError, match="write cm or in"):
        say_length(14, unit)


@pytest.mark.parametrize(
    ("inches", "said"),
    [
        (14.5, "14 1/2 in"),
        (14, "14 in"),
        (0.0625, "1/16 in"),
        (0.03, "0 in"),
        (-0.03, "0 in"),
        (-0.75, "-3/4 in"),
        (-1.5, "-1 1/2 in"),
        (3.97, "4 in"),
        (2.123, "2 1/8 in"),
    ],
)
def test_inches_in_words(inches, said):
    """Inches are said as whole and reduced fraction, rounded to a sixteenth."""
    assert say_length(inches * CM_PER_INCH, "in") == said


def test_finer_and_coarser_fractions():
    """A fraction is rounded to the part that is asked for."""
    assert say_length(2.53125 * CM_PER_INCH, "in", part=32) == "2 17/32 in"
    assert say_length(2.6 * CM_PER_INCH, "in", part=2) == "2 1/2 in"


@pytest.mark.parametrize(("cm", "said"), [(36.83, "36.8 cm"), (36.0, "36 cm"), (-0.04, "0 cm"), (0.06, "0.1 cm")])
def test_centimetres_in_words(cm, said):
    """Centimetres are said to a tenth, whole ones without a decimal, and zero without a sign."""
    assert say_length(cm, "cm") == said


def test_both_units():
    """A sentence for readers of either unit says both."""
    assert say_both(36.83) == "36.8 cm (14 1/2 in)"


@pytest.mark.parametrize(("number", "decimals", "said"), [(100, 0, "100"), (10.50, 2, "10.5"), (-0.001, 2, "0")])
def test_numbers_in_words(number, decimals, said):
    """A number loses trailing zeros behind the point and no other zeros."""
    assert say_number(number, decimals) == said


@given(st.integers(0, 3200))
def test_said_inches_are_read_back(sixteenths):
    """What is said in inches is read back as the same length."""
    cm = sixteenths / 16 * CM_PER_INCH
    assert parse_length(say_length(cm, "in"), "cm") == pytest.approx(cm, abs=1e-9)


@given(st.floats(-500, 500))
def test_rounding_to_a_sixteenth(cm):
    """The nearest sixteenth lies on the grid, within half a step."""
    rounded = round_to_sixteenth(cm)
    sixteenths = rounded / CM_PER_INCH * 16
    assert sixteenths == pytest.approx(round(sixteenths), abs=1e-9)
    assert abs(rounded - cm) <= CM_PER_INCH / 32 + 1e-9


def test_no_minus_zero():
    """Neither rounding nor reading hands on a minus zero."""
    for zero in (round_to_sixteenth(-0.01), parse_length(-0.0, "cm"), parse_length(-0.0, "in")):
        assert zero == 0 and math.copysign(1, zero) == 1


def test_one_value_says_lengths_in_the_readers_unit():
    """`Say` speaks one unit, as finely as asked, and on one line where a note must not break it."""
    assert (Say("in")(36.83), Say("cm")(36.83)) == ("14 1/2 in", "36.8 cm")
    assert (Say("in", part=32)(0.08), Say("in")(0.08)) == ("1/32 in", "1/16 in")
    assert Say("in", unbroken=True)(36.83) == "14\u00a01/2\u00a0in"
    with pytest.raises(CorsetkitError, match="write cm or in"):
        Say("inch")
