"""The declared style values: what the page says of them is what the draft does."""

import pytest

from corsetkit import Style, draft
from corsetkit.errors import CorsetkitError
from corsetkit.quantity import quantities
from corsetkit.wearers import demo_wearers

BODY = dict(demo_wearers())["Maren"]
DECLARED = {one.name: one for one in quantities(Style)}
ONLY = [one for one in DECLARED.values() if one.only]


def lines(body=BODY, **changes):
    """Every line of the pattern, exactly: the faintest difference counts."""
    return [edge.path for piece in draft(body, Style(**changes)).pieces for edge in piece.edges]


def another(one):
    """A value of the quantity near its default, and not its default."""
    return next(value for value in (one.default + 3 * one.step, one.default - 3 * one.step) if one.low <= value <= one.high)


def without(name, wanted):
    """A value of the quantity `name` that is not the wanted one."""
    one = DECLARED[name]
    if one.unit == "yes or no":
        return not wanted
    return next(value for value in (one.choices or range(one.low, one.high + 1)) if value != wanted)


@pytest.mark.parametrize("one", ONLY, ids=lambda one: one.name)
def test_a_value_said_to_do_nothing_does_nothing_and_counts_where_it_is_said_to(one):
    name, wanted = one.only
    idle = {name: without(name, wanted)}
    assert lines(**idle) == lines(**idle, **{one.name: another(one)})
    assert lines(**{name: wanted}) != lines(**{name: wanted, one.name: another(one)})


@pytest.mark.parametrize("one", [one for one in ONLY if one.only[0] == "method"], ids=lambda one: one.name)
def test_a_value_that_counts_in_one_way_of_drafting_says_so_in_its_meaning(one):
    method = DECLARED["method"]
    assert one.meaning.startswith(f"{method.say(one.only[1])}: ")


def test_every_other_number_does_something_in_one_style_or_another():
    """Nothing is offered that does nothing; openings and ways each on and off, for one wearer or another."""
    settings = [{}, {"method": "guides"}, {"front_opening": True, "back_opening": True}]
    for one in DECLARED.values():
        if one.is_number and one.unit != "count" and not one.only:
            assert any(
                _differs(body, one, value, more)
                for body in dict(demo_wearers()).values()
                for more in settings
                for value in (another(one), one.high)
            ), one.name


def _differs(body, one, value, more):
    try:
        return lines(body, **more) != lines(body, **more, **{one.name: value})
    except CorsetkitError:
        return False
