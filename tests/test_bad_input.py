"""What a user can get wrong in a style or with a wearer: one line that names the field, what was given and what is allowed."""

import math
import re
from fractions import Fraction

import pytest
from bodies import outside, random_bodies
from figures import METHODS, RANGED, STYLES, WEARERS
from hypothesis import given, settings
from hypothesis import strategies as st

from corsetkit import Correction, CorsetkitError, Measurements, Style, draft, read_wearers, write_wearers
from corsetkit.finish.choices import Finish
from corsetkit.lay.cloth import Cloth
from corsetkit.quantity import quantities
from corsetkit.style import Fitting

VALUES = quantities(Style)
NUMBERS = [quantity for quantity in VALUES if quantity.is_number]
FIELDS = [quantity.name for cls in (Style, Measurements) for quantity in quantities(cls)]
gently = settings(max_examples=60, deadline=None, derandomize=True, database=None)


def refused(**values):
    """The one sentence with which a style is refused."""
    with pytest.raises(CorsetkitError) as caught:
        Style(**values)
    said = str(caught.value)
    assert isinstance(caught.value, ValueError) and said and "\n" not in said
    return said


def names(said, field):
    """Whether a sentence names a field, as it is written in code or as its label has it."""
    return re.search(field.replace("_", "[_ ]"), said, re.IGNORECASE) is not None


@gently
@given(st.sampled_from(NUMBERS).flatmap(lambda one: st.tuples(st.just(one), outside(one))))
def test_a_number_outside_its_limits_is_refused(case):
    """A style number outside its limits is refused with its name and the limits."""
    quantity, value = case
    said = refused(**{quantity.name: value})
    assert names(said, quantity.name)
    assert "allowed" in said or "not a number" in said


@pytest.mark.parametrize(
    "value",
    [math.nan, math.inf, -math.inf, True, False, "3", "", None, [], 1j, object, b"3"],
    ids=lambda value: repr(value)[:12],
)
def test_what_is_no_number_is_refused(value):
    """NaN, infinity, true and false, text and other things are refused where a number is due, by each number's own name."""
    for quantity in NUMBERS:
        said = refused(**{quantity.name: value})
        assert names(said, quantity.name) and "allowed" in said, quantity.name


@pytest.mark.parametrize("value", [1, 0, 0.5, "maybe", "", None, [], math.nan], ids=repr)
def test_what_is_no_choice_is_refused(value):
    """A yes or no is true or false and nothing like it, and a way of drafting is one of those listed."""
    for quantity in VALUES:
        if quantity.is_number:
            continue
        said = refused(**{quantity.name: value})
        assert names(said, quantity.name) and "allowed" in said, quantity.name
        assert all(choice in said for choice in quantity.choices), quantity.name


@pytest.mark.parametrize("name", ["cup_parts", "centre_panels", "side_panels"])
def test_a_count_is_whole(name):
    """A count is a whole number: two and a half panels are refused, 2.0 and a fraction of 2 are two."""
    assert names(refused(**{name: 2.5}), name)
    assert getattr(Style(**{name: 2.0}), name) == getattr(Style(**{name: Fraction(2)}), name) == 2
    assert isinstance(getattr(Style(**{name: 2.0}), name), int)


def test_inches_given_as_centimetres_are_guessed():
    """A length that would fit in the other unit is refused with that remedy."""
    assert "inches given as centimetres" in refused(corset_length=23)
    assert "centimetres given as inches" in refused(waist_reduction=5.08 * 2.54)


def test_a_style_cannot_be_changed_only_replaced():
    """A style is frozen; `replaced` checks each new value like the first, and an unknown name is no style value."""
    with pytest.raises(AttributeError):
        Style().yoke = False
    with pytest.raises(CorsetkitError, match="allowed"):
        Style().replaced(cup_parts=7)
    with pytest.raises(CorsetkitError, match="cup_part"):
        Style().replaced(cup_part=7)


@pytest.mark.parametrize("cls", [Style, Fitting, Measurements, Finish, Cloth], ids=lambda one: one.__name__)
def test_an_unknown_word_is_refused_with_the_one_that_may_be_meant(cls):
    """A value under a name that the class does not have, or without any name, is refused in one sentence that helps."""
    first = quantities(cls)[0].name
    for values, told in (
        ({first + "s": 1}, f"did you mean {first}"),
        ({first.upper().replace("_", ""): 1}, first),
        ({"zzz": 1}, f"allowed are {first}"),
    ):
        with pytest.raises(CorsetkitError, match=re.escape(told)) as caught:
            cls(**values)
        assert "\n" not in str(caught.value) and f"is no value of {cls.__name__}" in str(caught.value)
    with pytest.raises(CorsetkitError, match=f"without a name: write {cls.__name__}"):
        cls(1)


class _Mute:
    """Something that cannot say what it is."""

    def __repr__(self):
        raise RuntimeError("no words")


OTHERS = [None, 3, 1.5, "Maren", b"", [], {"bust_girth": 90}, object(), _Mute(), "two\nlines"]


@pytest.mark.parametrize(
    "call, field, but",
    [
        (lambda given: draft(given), "measurements", []),
        (lambda given: draft(WEARERS["Maren"], given), "style", [None]),
        (lambda given: draft(WEARERS["Maren"], corrections=given), "corrections", [[]]),
        (lambda given: draft(WEARERS["Maren"], corrections=[given]), "correction ", []),
        (lambda given: draft(WEARERS["Maren"], earlier=given), "earlier", [None]),
        (lambda given: read_wearers(given), "", []),
        (lambda given: write_wearers(given, WEARERS.items(), "cm"), "", ["Maren", "two\nlines"]),
        (lambda given: write_wearers("w.csv", given, "cm"), "wearer", [[]]),
        (lambda given: write_wearers("w.csv", [("Maren", given)], "cm"), "wearer 'Maren'", []),
        (lambda given: write_wearers("w.csv", WEARERS.items(), given), "unit", []),
    ],
    ids=["measurements", "style", "corrections", "correction", "earlier", "read", "path", "wearers", "body", "unit"],
)
def test_another_thing_than_was_asked_for_is_told_in_one_sentence(call, field, but, tmp_path, monkeypatch):
    """Whatever is given to the package's functions in place of a body, a style or a file: one sentence names it."""
    monkeypatch.chdir(tmp_path)
    for other in OTHERS:
        if other in but:
            continue
        with pytest.raises(CorsetkitError) as caught:
            call(other)
        said = str(caught.value)
        assert field in said and "\n" not in said and len(said) < 420, other.__class__
    assert not list(tmp_path.iterdir())


def test_both_ends_of_every_range_are_allowed():
    """Every style number takes both ends of its range, and a slider's rounding beyond them."""
    for name, end in RANGED:
        assert getattr(Style(**{name: end}), name) == end
    for quantity in NUMBERS:
        if quantity.unit != "count":
            assert getattr(Style(**{quantity.name: quantity.high + 1e-10}), quantity.name) == quantity.high


def test_each_range_covers_half_to_one_and_a_half_or_says_why():
    """A style number's range reaches from half its default to one and a half of it, or says why not; and it has a meaning, a
    group and a source."""
    for quantity in NUMBERS:
        # A default of zero has no half: its range begins there.
        covers = quantity.covers_half_to_one_and_a_half or quantity.default == quantity.low == 0
        assert covers or quantity.why_range, quantity.name
        assert not (covers and quantity.why_range and quantity.default), f"{quantity.name} covers and need not say why"
        assert quantity.meaning and quantity.group and quantity.source, quantity.name


def test_a_correction_of_no_known_line_is_refused():
    """A line that cannot be corrected is refused, and a correction is refused with its line's name."""
    with pytest.raises(CorsetkitError, match="hem.*no line"):
        draft(WEARERS["Maren"], corrections=(Correction("hem", 1.0),))


@pytest.mark.parametrize(
    "change, style, field",
    [
        ({"neck_to_bust_point": 21.0, "armscye_depth": 16.5}, {"underarm_drop": 4.0}, "armscye_depth"),
        ({"shoulder_length": 19.0, "armscye_depth": 12.5}, {"shoulder_slope": 34, "underarm_drop": 1.0}, "shoulder_length"),
        ({}, {"method": "guides", "corset_length": 11.5 * 2.54}, "corset_length"),
        ({"shoulder_length": 10.0}, {"yoke_shoulder": 1.875 * 2.54}, "yoke_shoulder"),
        ({}, {"overbust_armscye": 2 * 2.54, "underarm_along": 1.875 * 2.54}, "overbust_armscye"),
        ({"underbust_girth": 84.5, "bust_girth": 86.0}, {}, "underbust_girth"),
        ({"front_waist_length": 50.0, "neck_to_bust_point": 30.0}, {}, "front_waist_length"),
    ],
)
def test_a_wearer_who_cannot_be_drawn_is_told_why(change, style, field):
    """Where a step cannot be drawn, one line names the measure or style value to look at, and what to do about it."""
    with pytest.raises(CorsetkitError) as caught:
        draft(WEARERS["Maren"].replaced(**change), Style(**style))
    said = str(caught.value)
    assert "\n" not in said and names(said, field)
    assert re.search(r"allowed|choose|measure", said), said


@pytest.mark.parametrize("wearer", WEARERS)
@pytest.mark.parametrize("mark", [1.5 * 2.54, 4.5 * 2.54])
def test_a_mark_too_high_or_low_is_drawn_or_refused(wearer, mark):
    """By the guides the highest and the lowest underbust mark are drawn, or refused in one line that names a field."""
    try:
        assert draft(WEARERS[wearer], Style(method="guides", underbust_mark=mark)).pieces
    except CorsetkitError as refusal:
        assert "\n" not in str(refusal) and any(names(str(refusal), field) for field in FIELDS)


def test_every_refusal_names_a_field():
    """Whatever end of a style's range or body is refused, the sentence names a measure or style value to change."""
    refusals = set()
    bodies = [*WEARERS.values(), *random_bodies(9, 7)]
    for number, body in enumerate(bodies):
        for name, end in RANGED[number % 6 :: 6]:
            try:
                draft(body, Style(method=METHODS[number % 2], **{**STYLES["three parts, openings"], name: end}))
            except CorsetkitError as refusal:
                refusals.add((f"{name}={end:.2f}", str(refusal)))
    assert refusals
    nameless = [f"{style}: {said}" for style, said in sorted(refusals) if not any(names(said, field) for field in FIELDS)]
    assert not nameless, f"{len(nameless)} of {len(refusals)}\n" + "\n".join(nameless[:10])
