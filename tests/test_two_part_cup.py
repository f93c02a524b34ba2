"""Step 5, the two-part cup: one smooth seam through the bust point, as long on both cups as the legs it was."""

import math

import anew
import pytest
from figures import METHODS, WEARERS, figure
from hypothesis import given, settings
from hypothesis import strategies as st

from corsetkit import Style, draft
from corsetkit.geometry import paths
from corsetkit.geometry.points import turn_between

INCH = 2.54
BOTH = [(wearer, method) for wearer in WEARERS for method in METHODS]


def cup_of(wearer, method):
    return figure(wearer, "two parts", method).steps.two_part_cup


@pytest.mark.parametrize("wearer, method", BOTH)
def test_the_seam_is_equally_long_on_both_cups(wearer, method):
    """Both sides of the cup seam are as long as the straight legs above and below the bust point together."""
    cup = cup_of(wearer, method)
    o, u = cup.darts.overbust, cup.darts.underbust
    legs = abs(o.top_left - o.bust_point) + u.radius
    for path in (cup.seam.inner, cup.seam.outer):
        assert anew.line(path).length == pytest.approx(legs, abs=2e-4)
    assert cup.seam.to_bust_point == pytest.approx(abs(o.top_left - o.bust_point))


@pytest.mark.parametrize("wearer, method", BOTH)
def test_the_seam_is_smooth_and_ends_where_the_legs_end(wearer, method):
    """The seam has no corner at the bust point, and leaves and arrives as the legs do,
    so that the lines at its ends run on."""
    cup = cup_of(wearer, method)
    for path, top, low in (
        (cup.seam.inner, cup.inner_top, cup.darts.underbust.inner),
        (cup.seam.outer, cup.outer_top, cup.darts.underbust.outer),
    ):
        assert paths.path_start(path) == pytest.approx(top) and paths.path_end(path) == pytest.approx(low)
        assert all(abs(turn_between(a.tangent(1), b.tangent(0))) < 1.5 for a, b in zip(path, path[1:]))
        point = cup.darts.overbust.bust_point
        assert abs(turn_between(path[0].tangent(0), point - top)) < 1e-6
        assert abs(turn_between(path[-1].tangent(1), low - point)) < 1e-6


@pytest.mark.parametrize("wearer, method", BOTH)
def test_the_cups_own_angles_and_the_darts_make_360(wearer, method):
    """Measured on the cups' outlines before the seam is shaped,
    the angles at the bust point and the darts' make 360 degrees."""
    pattern, cup = figure(wearer, "two parts", method), cup_of(wearer, method)
    point = cup.darts.overbust.bust_point
    own = []
    for piece in pattern.pieces[:2]:
        laid = anew.shapely.union_all([anew.area(anew.moved(part.outline, part.move)).buffer(1e-7) for part in piece.parts])
        # The share of a small circle about the bust point that lies on the cup, its dart closed.
        own.append(anew.at(point).buffer(1.0, quad_segs=2000).exterior.intersection(laid).length / (2 * math.pi) * 360)
    assert own == pytest.approx([cup.inner_angle, cup.outer_angle], abs=0.005)
    assert sum(own) + pattern.fullness.total == pytest.approx(360, abs=0.01)


@pytest.mark.parametrize("wearer, method", BOTH)
def test_the_shaped_seam_keeps_most_of_the_fullness(wearer, method):
    """After shaping, the sewn edges still turn towards each other by most of what the two darts at the seam took."""
    cup, angles = cup_of(wearer, method), figure(wearer, "two parts", method).fullness.angles
    turned = 0.0
    for path in (cup.seam.inner, cup.seam.outer):
        places = anew.points(path, 200)
        steps = (places[1:] - places[:-1]) @ [1, 1j]
        turned += abs(anew.np.angle(steps[1:] / steps[:-1], deg=True).sum())
    assert cup.seam.fullness_left == pytest.approx(turned, abs=1)
    assert 0.5 * sum(angles.values()) < turned + 1 < sum(angles.values()) + 60


@pytest.mark.parametrize("wearer", ["Maren", "mean body"])
def test_the_guides_take_55_to_70_degrees_from_a_medium_wearer(wearer):
    """By the guides the darts at the bust point take about 55 to 70 degrees of a medium wearer (common practice, no
    source)."""
    assert 55 <= figure(wearer, "two parts", "guides").fullness.total <= 70


@settings(max_examples=25, deadline=None, derandomize=True, database=None)
@given(st.floats(0.17, 0.51), st.sampled_from(["Maren", "Ottilie", "Ines"]))
def test_no_roundness_stretches_the_seam(roundness, wearer):
    """Whatever its roundness, the seam keeps its length."""
    cup = draft(WEARERS[wearer], Style(cup_parts=2, cup_seam_roundness=roundness)).steps.two_part_cup
    lengths = [anew.line(path).length for path in (cup.seam.inner, cup.seam.outer)]
    assert lengths == pytest.approx([cup.seam.length] * 2, abs=2e-4)
