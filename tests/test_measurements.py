"""A wearer's measurements, alone and together."""

import pytest
from bodies import MEAN_BODY, bodies, outside, random_bodies
from hypothesis import given
from hypothesis import strategies as st

from corsetkit.errors import CorsetkitError
from corsetkit.measurements import Measurements
from corsetkit.plausible import IMPOSSIBLE, UNLIKELY
from corsetkit.quantity import quantities
from corsetkit.units import CM_PER_INCH

DECLARED = quantities(Measurements)
ROUND_FIGURE = MEAN_BODY.replaced(bust_girth=92, underbust_girth=78)


def test_the_published_mean_body_is_accepted_without_a_warning():
    """The mean woman of US Army 1988 (Gordon et al. 1989) is a body with nothing odd about it."""
    assert MEAN_BODY.warnings == ()
    # 907.1 - 769.7 mm, worked out from the published means.
    assert MEAN_BODY.bust_minus_underbust == pytest.approx(13.74)


@pytest.mark.parametrize(
    ("name", "p5", "p95"),
    [
        # US Army 1988, women (Gordon et al. 1989, NATICK/TR-89/044), 5th and 95th percentile, cm.
        ("underbust_girth", 69.60, 86.27),
        ("hip_girth", 87.18, 107.00),
        ("back_waist_length", 32.73, 40.98),
        ("neck_to_bust_point", 23.34, 30.65),
        ("armscye_depth", 16.27, 21.04),
        ("across_back_width", 33.61, 41.57),
        ("neck_base_girth", 32.03, 37.42),
    ],
)
def test_limits_hold_the_published_percentiles(name, p5, p95):
    """Limits reach well beyond the published 5th and 95th percentile, half the way more."""
    one = next(one for one in DECLARED if one.name == name)
    half = (p95 - p5) / 2
    assert one.low <= p5 - half and p95 + half <= one.high


@pytest.mark.parametrize(
    ("bust", "underbust", "waist", "neck"),
    [
        # ASTM D5585-11e1, single values in inches: size 8, size 14.
        (36.25, 30, 29.5, 14.625),
        (40.375, 34, 34, 15.5),
    ],
)
def test_published_sizes_are_bodies(bust, underbust, waist, neck):
    """Published sizes raise neither an error nor a warning."""
    inches = {
        "bust_girth": bust, "underbust_girth": underbust, "waist_girth": waist,
        "neck_base_girth": neck,
    }  # fmt: skip
    body = MEAN_BODY.replaced(**{name: CM_PER_INCH * value for name, value in inches.items()})
    assert body.warnings == ()


def test_terms_of_the_standard():
    """Terms of ISO 8559-1 stand with their clause; underbust girth and shoulder with none."""
    standard = {one.name: one.standard for one in DECLARED}
    clauses = {
        "neck_base_girth": "5.3.3",
        "bust_girth": "5.3.4",
        "waist_girth": "5.3.10",
        "hip_girth": "5.3.13",
        "back_waist_length": "5.4.5",
    }
    for name, said in standard.items():
        if name in clauses:
            assert said.startswith(f"ISO 8559-1, {clauses[name]} ")
        else:
            assert said is None or "5." not in said
    assert "underbust girth" in standard["underbust_girth"]


def test_every_measurement_is_declared_in_full():
    """A measurement has a meaning, a source for its limits, and is required but for the high bust and the fold."""
    assert len(DECLARED) == 16
    for one in DECLARED:
        assert one.unit == "cm" and one.source
        assert len(one.meaning.split()) >= 8
        assert one.optional == (one.name in ("high_bust_girth", "bust_point_to_fold"))


@given(st.data())
def test_values_outside_their_limits_are_refused(data):
    """Any measurement outside its limits is refused by its name, whatever the others are."""
    one = data.draw(st.sampled_from(DECLARED))
    with pytest.raises(CorsetkitError, match=f"^{one.label} is .*: allowed are "):
        MEAN_BODY.replaced(**{one.name: data.draw(outside(one))})


@pytest.mark.parametrize("name", [one.name for one in DECLARED if not one.optional])
def test_swapped_units_are_named(name):
    """The mean body's value in inches, or taken 2.54 times, is refused with the likely mistake."""
    value = getattr(MEAN_BODY, name)
    with pytest.raises(CorsetkitError, match="looks like inches given as centimetres"):
        MEAN_BODY.replaced(**{name: value / CM_PER_INCH})
    with pytest.raises(CorsetkitError, match="looks like centimetres given as inches"):
        MEAN_BODY.replaced(**{name: value * CM_PER_INCH})


@given(bodies(), st.sampled_from([CM_PER_INCH, 1 / CM_PER_INCH]))
def test_a_body_in_the_wrong_unit_is_refused(body, factor):
    """No plausible body passes when all its inches are taken for centimetres or the other way."""
    values = {one.name: getattr(body, one.name) for one in DECLARED if not one.optional}
    with pytest.raises(CorsetkitError, match="looks like"):
        Measurements(**{name: value * factor for name, value in values.items()})


IMPOSSIBLE_BODIES = [
    ({"underbust_girth": 92}, "underbust girth", "bust girth"),
    ({"front_waist_length": 31.8}, "front waist length", "neck to bust point"),
    ({"bust_point_width": 30.7}, "bust point width", "bust girth"),
    ({"back_waist_length": 29, "armscye_depth": 24, "neck_to_bust_point": 29}, "back waist length",
     "armscye depth"),
    ({"across_front_width": 46}, "across front width", "bust girth"),
    ({"across_back_width": 46}, "across back width", "bust girth"),
    ({"high_bust_girth": 92.1}, "high bust girth", "bust girth"),
    ({"high_bust_girth": 70}, "high bust girth", "underbust girth"),
    ({"bust_point_to_fold": 12.5}, "bust point to fold", "front waist length"),
    ({"waist_girth": 112, "hip_girth": 74}, "hip girth", "waist girth"),
    ({"waist_girth": 64, "hip_girth": 129}, "waist girth", "hip girth"),
    ({"neck_to_bust_point": 22.9}, "neck to bust point", "armscye depth"),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "first", "second"), IMPOSSIBLE_BODIES)
def test_impossible_bodies(changes, first, second):
    """Two measurements that cannot stand on one body are both named, with value and remedy."""
    with pytest.raises(CorsetkitError) as caught:
        ROUND_FIGURE.replaced(**changes)
    message = str(caught.value)
    assert message.startswith(f"{first} ") and f" and {second} " in message
    assert " do not go together: " in message
    assert message.endswith("; measure both again")
    assert "\n" not in message


def test_every_rule_has_its_body():
    """Each rule of what is impossible is met by one of the bodies above."""
    met = {(first, second) for _, first, second in IMPOSSIBLE_BODIES}
    assert met == {tuple(name.replace("_", " ") for name in rule.names) for rule in IMPOSSIBLE}


def test_wrong_unit_that_slips_through_the_limits():
    """A girth within its limits but impossible beside another is seen as one in the wrong unit."""
    large = {
        "bust_girth": 142, "underbust_girth": 122, "hip_girth": 150, "neck_base_girth": 43,
        "across_back_width": 46, "across_front_width": 44, "bust_point_width": 28,
    }  # fmt: skip
    MEAN_BODY.replaced(**large, waist_girth=130)
    with pytest.raises(CorsetkitError, match="waist girth looks like inches given as centimetres$"):
        MEAN_BODY.replaced(**large, waist_girth=130 / CM_PER_INCH)


# Each just beyond the bound of its rule.
UNLIKELY_BODIES = [
    ({"front_waist_length": 44.65}, "the front is far longer than the back"),
    ({"bust_point_to_fold": 5.0}, "nearer to the bust point, or farther"),
    ({"underbust_girth": 85.1}, "the cups will be almost flat"),
    ({"underbust_girth": 61.9}, "larger than these cups are drafted for"),
    ({"bust_point_width": 14.6}, "very close together"),
    ({"bust_point_width": 23.1}, "very far apart"),
    ({"shoulder_length": 17, "across_back_width": 34, "across_front_width": 32},
     "the shoulders are very long"),
    ({"shoulder_length": 11.1}, "the shoulders are very short"),
    ({"across_front_width": 39.7}, "the chest is usually a little narrower"),
    ({"across_front_width": 29.5}, "the chest is usually a little narrower"),
    ({"neck_to_bust_point": 32.2}, "unusually far from the usual height"),
    ({"neck_to_bust_point": 23, "front_waist_length": 44.1}, "unusually far from the usual height"),
    ({"neck_base_girth": 41.8}, "such a neck"),
    ({"neck_base_girth": 31.6}, "such a neck"),
    ({"across_back_width": 44.3, "across_front_width": 42, "shoulder_length": 17}, "such a back"),
    ({"across_back_width": 29.1, "across_front_width": 28, "shoulder_length": 13}, "such a back"),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "says"), UNLIKELY_BODIES)
def test_unlikely_bodies(changes, says):
    """An unlikely body is a body, with one sentence that says what to measure again."""
    assert ROUND_FIGURE.warnings == ()
    (warning,) = ROUND_FIGURE.replaced(**changes).warnings
    (rule,) = (rule for rule in UNLIKELY if says in rule.says)
    assert rule.says in warning
    assert all(name.replace("_", " ") in warning for name in rule.names)
    assert warning.endswith("; measure again to be sure.") and "\n" not in warning


def test_every_unlikely_rule_has_its_body():
    """Each rule of what is unlikely is met by one of the bodies above."""
    met = {rule for _, says in UNLIKELY_BODIES for rule in UNLIKELY if says in rule.says}
    assert met == set(UNLIKELY)


@pytest.mark.parametrize("changes", [{"waist_girth": 78}, {"waist_girth": 84}, {"hip_girth": 85}])
def test_bodies_as_they_are(changes):
    """A waist as large as the underbust or larger, or hips smaller than the bust, is a body."""
    assert ROUND_FIGURE.replaced(**changes).warnings == ()


def test_the_high_bust():
    """A high bust girth not given is the bust less 0.4 of what the underbust lacks (our own)."""
    assert MEAN_BODY.high_bust_girth is None
    assert ROUND_FIGURE.high_bust == pytest.approx(92 - 0.4 * 14)
    assert ROUND_FIGURE.replaced(high_bust_girth=88).high_bust == 88


def test_replaced_is_checked_and_leaves_the_old_body_alone():
    """A changed body is a new one, checked like any other."""
    changed = MEAN_BODY.replaced(waist_girth=70)
    assert (changed.waist_girth, MEAN_BODY.waist_girth) == (70, 72.55)
    assert changed.replaced(waist_girth=72.55) == MEAN_BODY
    with pytest.raises(CorsetkitError, match="^waist girth is 'slim', which is not a number"):
        MEAN_BODY.replaced(waist_girth="slim")


def test_random_bodies_follow_what_is_published():
    """Random bodies have the published means and spreads, and the same seed gives the same."""
    found = random_bodies(2000, seed=3)
    assert found[:20] == random_bodies(20, seed=3)
    assert found[:20] != random_bodies(20, seed=4)
    # US Army 1988: mean and standard deviation, cm; draws stop at 2.5 of them, which takes a
    # twentieth off the spread.
    for name, mean, spread in [
        ("bust_girth", 90.71, 6.35),
        ("underbust_girth", 76.97, 5.10),
        ("back_waist_length", 36.73, 2.50),
        ("shoulder_length", 14.47, 1.08),
    ]:
        values = [getattr(body, name) for body in found]
        centre = sum(values) / len(values)
        sigma = (sum((value - centre) ** 2 for value in values) / len(values)) ** 0.5
        assert centre == pytest.approx(mean, abs=0.1 * spread)
        assert sigma == pytest.approx(0.95 * spread, rel=0.06)


def test_few_random_bodies_are_odd():
    """At most one random body in twenty carries a warning: the warnings stay news."""
    found = random_bodies(1000, seed=5)
    assert sum(bool(body.warnings) for body in found) <= 50
