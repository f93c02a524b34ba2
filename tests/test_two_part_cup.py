"""Step 5, the two-part cup: one smooth seam through the bust point itself, equally long on both cups."""

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
    """Above the bust point and below it the seam is as long on one cup as on the other, and longer than the straight legs by
    what is stated."""
    cup = cup_of(wearer, method)
    o, u, seam = cup.darts.overbust, cup.darts.underbust, cup.seam
    halves = [[anew.line((curve,)).length for curve in path] for path in (seam.inner, seam.outer)]
    assert halves[0] == pytest.approx(halves[1], abs=1e-3)
    assert halves[0] == pytest.approx([seam.to_bust_point, seam.length - seam.to_bust_point], abs=1e-3)
    legs = abs(o.top_left - o.bust_point) + u.radius
    assert 0 < sum(halves[0]) - legs < 0.6 and seam.grown == pytest.approx(sum(halves[0]) - legs, abs=1e-3)


@pytest.mark.parametrize("wearer, method", BOTH)
def test_the_seam_passes_the_bust_point_smoothly(wearer, method):
    """Both edges pass the bust point itself, with one tangent and one bend on either side of it; they end within 0.6 mm of
    the legs' ends, opened by 10 degrees at most. The underbust line is square to them."""
    cup = cup_of(wearer, method)
    point, seam = cup.darts.overbust.bust_point, cup.seam
    for path, ends, lines in (
        (seam.inner, (cup.inner_top, cup.darts.underbust.inner), (seam.inner_top, seam.inner_low)),
        (seam.outer, (cup.outer_top, cup.darts.underbust.outer), (seam.outer_top, seam.outer_low)),
    ):
        assert path[0].end == point == path[1].start
        assert abs(turn_between(path[0].tangent(1), path[1].tangent(0))) < 1e-6
        assert path[0].bend(1.0) == pytest.approx(path[1].bend(0.0), rel=0.02)
        for place, leaving, leg, line, end in (
            (paths.path_start(path), path[0].tangent(0), point - ends[0], lines[0], ends[0]),
            (paths.path_end(path), path[-1].tangent(1), ends[1] - point, lines[1], ends[1]),
        ):
            assert abs(place - end) < 0.06 and abs(turn_between(leaving, leg)) < 10
            assert paths.path_start(line.line) == pytest.approx(place, abs=1e-9)
            if line in (seam.inner_low, seam.outer_low):
                assert abs(turn_between(leaving, line.line[0].tangent(0))) == pytest.approx(90, abs=1e-6)
            assert paths.path_length(line.line) == pytest.approx(paths.path_length(line.before), abs=1e-5)
            assert line.blend.largest_move < 0.14
    # The overbust line runs on over the seam: its angles to both edges make a straight line.
    angles = [
        abs(turn_between(path[0].tangent(0), line.line[0].tangent(0)))
        for path, line in ((seam.inner, seam.inner_top), (seam.outer, seam.outer_top))
    ]
    assert sum(angles) == pytest.approx(180, abs=1e-6)


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
@given(st.floats(0.3, 0.5), st.sampled_from(["Maren", "Ottilie", "Ines"]))
def test_whatever_its_roundness_the_seam_is_equally_long(roundness, wearer):
    """Whatever its roundness, the seam is as long on one cup as on the other; a rounder one is never shorter."""
    seams = [
        draft(WEARERS[wearer], Style(cup_parts=2, cup_seam_roundness=each)).steps.two_part_cup.seam
        for each in (roundness, 0.5)
    ]
    for seam in seams:
        lengths = [anew.line(path).length for path in (seam.inner, seam.outer)]
        assert lengths == pytest.approx([seam.length] * 2, abs=2e-4)
    assert seams[0].length <= seams[1].length + 1e-6
