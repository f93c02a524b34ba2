"""Step 3, the overbust: the cup's outline, the centre front, the tightening dart and the yoke's neckline."""

import math

import anew
import pytest
import shapely
from figures import FEW, WEARERS, figure, words

from corsetkit import Style, draft
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.points import dot, turn_between, unit
from corsetkit.pattern.edge import Kind
from corsetkit.steps.necklines import yoke_neckline

INCH = 2.54


def outline(o):
    """The cup's outline on the block, darts open: over the top and back along the underbust line."""
    return anew.line((*o.under_inner, *o.under_outer))


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_tightening_darts_legs_are_equal(case):
    """Where the overbust line meets them, the tightening dart's legs are equally far from bust point and from mid-shoulder."""
    o = figure(*case).steps.overbust
    for end in (o.bust_point, o.mid_shoulder):
        assert abs(o.top_left - end) == pytest.approx(abs(o.top_right - end), abs=1e-9)
    assert abs(o.top_left - o.top_right) == pytest.approx(o.top_intake)
    assert o.mid_shoulder == (o.block.front.neck_side + o.block.front.shoulder_tip) / 2
    assert abs(o.mark - o.bust_point) == pytest.approx(3 * INCH)  # common practice, no source
    assert abs(turn_between(o.mark - o.bust_point, o.mid_shoulder - o.mark)) < 1e-9


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_cup_keeps_from_centre_front_and_side_seam(case):
    """The cup touches the centre front, taken in, in one point, the side seam nowhere,
    and keeps the stated strip from both."""
    pattern = figure(*case)
    o, strip = pattern.steps.overbust, pattern.style.least_strip
    front = o.block.front
    side = anew.line((*front.side_above, *front.side_waist))
    assert outline(o).distance(side) > 0.5
    centre = anew.LineString([(o.front_point.real, o.front_point.imag), (o.dart_upper.real, o.dart_upper.imag)])
    touching = outline(o).intersection(centre.buffer(1e-6))
    assert touching.length < 0.05 and touching.distance(anew.at(o.front_point)) < 1e-6
    at_bust = sorted(
        x
        for x, _ in shapely.get_coordinates(
            outline(o).intersection(anew.LineString([(-50, o.bust_point.imag), (90, o.bust_point.imag)]).buffer(1e-7))
        )
    )
    assert at_bust[0] >= strip - 1e-6 and at_bust[-1] <= front.width - strip + 1e-6


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_cups_lines_end_at_their_marks(case):
    """Along the armscye from the underarm point lie 1 1/4 in to the underbust line's end and 4 in to the overbust line's."""
    o = figure(*case).steps.overbust
    armscye = anew.line(o.block.front.armscye)
    along = [armscye.length - armscye.project(anew.at(z)) for z in (o.armscye_low, o.armscye_top)]
    assert along == pytest.approx([1.25 * INCH, 4 * INCH], abs=1e-3)  # common practice, no source
    assert paths.path_end(o.under_outer) == pytest.approx(o.armscye_low) and paths.path_end(o.top_outer) == pytest.approx(
        o.armscye_top
    )


def test_by_the_guides_the_outline_passes_the_guides():
    """By the guides the outline passes 3 in towards the centre front and 3 1/2 in towards the side, upright at both, where
    the strips leave room (common practice, no source)."""
    o = figure("Ottilie", method="guides").steps.overbust
    assert o.bust_point - o.guide_front == pytest.approx(3 * INCH) and o.guide_side - o.bust_point == pytest.approx(3.5 * INCH)
    assert outline(o).distance(anew.at(o.guide_front)) < 1e-6 and outline(o).distance(anew.at(o.guide_side)) < 1e-6
    assert o.under_inner[0].tangent(1) == pytest.approx(-1j) and o.under_outer[1].tangent(0) == pytest.approx(1j)


def test_the_guides_and_the_side_strip_agree_for_one_figure():
    """3 1/2 in towards the side leave 1 3/4 in to the side seam where a quarter of the bust is 9 in and the bust points are
    7 1/2 in apart: 9 - 3 3/4 - 3 1/2 = 1 3/4 (common practice, no source)."""
    body = WEARERS["Maren"]
    assert (body.bust_girth / 4, body.bust_point_width) == pytest.approx((9 * INCH, 7.5 * INCH))
    assert figure("Maren", method="guides").steps.overbust.side_strip == pytest.approx(1.75 * INCH)
    assert not any("side seam" in said for said in figure("Maren", method="guides").warnings)
    said = [said for said in figure("Ottilie", method="guides").warnings if "between the cup and the side seam" in said]
    assert len(said) == 1 and "3 3/16 in" in said[0]


def test_a_cup_too_near_is_shortened_with_a_warning():
    """Where the guides would come nearer than the strip the cup is shortened to it, and a warning says so."""
    o = figure("Ines", method="guides").steps.overbust
    assert any("nearer to the centre front" in warning for warning in o.warnings)
    assert o.guide_front.real == pytest.approx(1.5)


def test_an_absurd_tightening_dart_is_refused_with_its_remedy():
    """A tightening dart of more than 55 degrees is refused in one sentence that says what to choose or measure."""
    body = WEARERS["Yrsa"].replaced(bust_girth=110.0)
    with pytest.raises(
        CorsetkitError, match="tightening dart .* more than 55: choose a higher overbust.mark, or measure high"
    ):
        draft(body, Style())


@pytest.mark.parametrize("wearer", WEARERS)
def test_to_the_wearer_the_outline_reaches_by_the_stated_rule(wearer):
    """To the wearer the outline reaches four fifths of the way to the centre front and two thirds of the way to the side,
    less where the strip would not be kept (course convention, from the guides for a medium figure)."""
    o = figure(wearer).steps.overbust
    front, side = o.bust_point.real, o.block.front.width - o.bust_point.real
    assert o.bust_point.real - o.guide_front.real == pytest.approx(min(0.8 * front, front - 1.5))
    assert o.guide_side.real - o.bust_point.real == pytest.approx(min(2 / 3 * side, side - 1.5))


@pytest.mark.parametrize("wearer", WEARERS)
def test_to_the_wearer_the_dart_takes_half_of_what_bust_has_more_than_high_bust(wearer):
    """To the wearer the tightening dart takes half of bust less high bust;
    by the guides an inch (common practice, no source)."""
    body = WEARERS[wearer]
    high = body.high_bust_girth or body.bust_girth - 0.4 * (body.bust_girth - body.underbust_girth)
    assert figure(wearer).steps.overbust.top_intake == pytest.approx(max(0.6, (body.bust_girth - high) / 2))
    assert figure(wearer, method="guides").steps.overbust.top_intake == pytest.approx(INCH)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_centre_front_is_taken_in_straight(case):
    """The centre front is taken in 1/2 in where the cups begin and nothing at the neck, in a straight line, and nothing at
    the centre-front dart's upper leg by the guides (common practice, no source)."""
    o = figure(*case).steps.overbust
    assert o.front_point.real == pytest.approx(INCH / 2)
    assert o.block.front.neck_centre.real == 0 and o.dart_upper.imag < o.front_point.imag < o.block.front.neck_centre.imag
    if case[2] == "guides":
        assert o.dart_upper.real == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_centre_front_dart_has_equal_legs_and_its_angle(case):
    """The centre-front dart takes 3/8 in each side at the centre front,
    2 atan(3/8 in / half the bust points' distance); to the
    wearer its lower leg lies on the bust line, so that the bust keeps its girth."""
    o = figure(*case).steps.overbust
    legs = [z - o.bust_point for z in (o.dart_upper, o.dart_lower)]
    assert abs(legs[0]) == pytest.approx(abs(legs[1]))
    expected = 2 * math.degrees(math.atan(0.375 * INCH / o.bust_point.real))
    assert turn_between(legs[0], legs[1]) == pytest.approx(expected, abs=1e-9) and o.front_dart == pytest.approx(expected)
    if case[2] == "wearer":
        assert o.dart_lower == pytest.approx(o.bust_point.imag * 1j, abs=1e-9)
    assert o.dart_lower.real == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_yokes_neckline_runs_on_across_shoulder_and_centre(case):
    """The yoke's neckline begins 1 1/4 in along the shoulder, square to it, and meets the taken-in centre front squarely."""
    o = figure(*case).steps.overbust
    shoulder = unit(o.block.front.shoulder_tip - o.block.front.neck_side)
    assert abs(o.yoke_neck - o.block.front.neck_side) == pytest.approx(1.25 * INCH)  # common practice, no source
    assert dot(o.yoke_neckline[0].tangent(0), shoulder) == pytest.approx(0, abs=1e-9)
    centre = unit(o.front_point - paths.path_end(o.yoke_neckline))
    assert dot(o.yoke_neckline[-1].tangent(1), centre) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_overbust_line_is_smooth_across_its_closed_dart(case):
    """With the tightening dart closed the overbust line's two stretches run on smoothly."""
    o = figure(*case).steps.overbust
    inner, outer = paths.path_end(o.top_inner), paths.path_start(o.top_outer)
    turned = o.top_outer[0].tangent(0) * ((inner - o.bust_point) / (outer - o.bust_point))
    assert turn_between(o.top_inner[-1].tangent(1), turned) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("changes", [{}, {"centre_front_depth": 9.0}, {"centre_front_taking_in": 0.635}], ids=str)
def test_the_closed_dart_never_swings_the_cups_past_the_centre_front(changes):
    """Else the yoke and the centre front would reach beyond their own fold; what is moved for it is said."""
    from bodies import random_bodies

    from corsetkit.errors import CorsetkitError
    from corsetkit.steps.run import run_steps
    from corsetkit.style import Style

    moved = drawn = 0
    for body in random_bodies(60, 4):
        try:
            steps = run_steps(body, Style(**changes), until="darts")
        except CorsetkitError:
            continue
        drawn += 1
        assert steps.darts.front_point.real > 0
        if steps.overbust.front_point.real > steps.style.centre_front_taking_in + 0.15:
            moved += 1
            assert any("past the centre front" in one for one in steps.overbust.warnings)
    assert drawn > 40 and (moved or not changes)


def test_a_yokes_neckline_by_hand_example():
    """From a level shoulder at 12 cm height to a centre 8 cm lower and 10 cm away: the first handle goes straight down by
    half the height, the second comes level by 0.55 of the width."""
    (curve,) = yoke_neckline(10 + 12j, 1 + 0j, 0 + 4j, 1 + 0j)
    assert (curve.start, curve.end) == (10 + 12j, 4j)
    assert curve.first == pytest.approx(10 + 8j) and curve.second == pytest.approx(5.5 + 4j)
    (turned,) = yoke_neckline(10 + 12j, -1 + 0j, 0 + 4j, 1 + 0j)
    assert turned == curve, "whichever way along the shoulder the step goes, the neckline leaves it downwards"


@pytest.mark.parametrize("wanted", [2.54, 5.08, 7.62])
def test_an_opening_that_is_drawn_narrower_is_said_to_be(wanted):
    """Where the yoke has no room for the opening asked for, a sentence says how wide it is; where it has, none does."""
    narrower = 0
    for body in WEARERS.values():
        pattern = draft(body, Style(front_opening=True, front_opening_width=wanted))
        left, right = [edge for edge in pattern["front yoke"].edges if edge.kind is Kind.CUP_SEAM]
        wide = abs(right.path[0].start - left.path[-1].end)
        # Along the curve it is a little wider than straight across.
        said = [one for one in pattern.warnings if "the front opening is drawn" in one]
        assert bool(said) == (wide < wanted - 0.5), (wide, said)
        narrower += bool(said)
    assert bool(narrower) == (wanted > 7)
