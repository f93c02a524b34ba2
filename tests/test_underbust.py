"""Step 2, the underbust: equal legs, one dart through waist and underbust, the girth to the wearer."""

import math
import re

import anew
import pytest
from figures import FEW, WEARERS, figure, words

from corsetkit import Style, draft
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.points import dot, heading, turn_between
from corsetkit.quantity import quantities
from corsetkit.steps.block import block
from corsetkit.steps.underbust import underbust
from corsetkit.units import say_both

INCH = 2.54


def drawn(wearer, **style):
    style = Style(**style)
    return underbust(block(WEARERS[wearer], style), style)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_darts_legs_mirror_each_other(case):
    """Mirrored on the dart's own line, the inner leg falls on the outer one, so the panels' seams are equally long."""
    u = figure(*case).steps.underbust
    point, method = u.block.bust_point, u.parting_tangent

    def mirrored(z):
        return point + method * ((z - point) / method).conjugate()

    for inner, outer in zip(u.inner_leg, u.outer_leg, strict=True):
        assert all(abs(mirrored(inner.point(t / 8)) - outer.point(t / 8)) < 1e-9 for t in range(9))
    assert anew.line(u.inner_leg).length == pytest.approx(anew.line(u.outer_leg).length, abs=1e-6)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_legs_begin_at_equal_distances(case):
    """The dart's legs meet the underbust line at the mark's distance from the bust point."""
    u = figure(*case).steps.underbust
    assert [abs(z - u.block.bust_point) for z in (u.inner, u.outer, u.mark)] == pytest.approx([u.radius] * 3)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_one_dart_runs_through_underbust_and_waist_to_nothing(case):
    """The dart runs on to the waist dart's width at the waist and to nothing below it, above the hem; there the panels part
    along its own line."""
    u = figure(*case).steps.underbust
    at_waist = [paths.at_level(leg, 0.0).real for leg in (u.inner_leg, u.outer_leg)]
    assert at_waist[1] - at_waist[0] == pytest.approx(u.block.front.waist_dart, abs=1e-9)
    ends = [paths.path_end(leg) for leg in (u.inner_leg, u.outer_leg)]
    assert ends[0] == ends[1] == u.dart_end and u.hem_level < u.dart_end.imag < 0
    assert heading(u.parting[0].tangent(0)) == pytest.approx(heading(u.parting_tangent), abs=1e-6)
    assert anew.line(u.hem).distance(anew.at(u.parting[-1].end)) < anew.FINE


@pytest.mark.parametrize("case", FEW, ids=words)
def test_three_quarters_lie_towards_the_side(case):
    """Of what the dart takes at the mark, the stated share lies on the side's side of the upright through the bust point,
    and each leg leaves the line squarely (common practice, no source: 3/4 in and 1/4 in). Fitted, the dart leans by no more
    than is stated, and takes as much."""
    pattern = figure(*case)
    u, style = pattern.steps.underbust, pattern.style
    to_front, to_side = (step.real / -step.imag * u.radius for step in (u.inner_tangent, u.outer_tangent))
    assert to_side - to_front == pytest.approx(u.intake)
    share = to_side / (to_side - to_front)
    if not style.to_the_wearer or u.lean < style.dart_lean - 1e-9:
        assert share == pytest.approx(style.dart_side_share)
    else:
        assert u.lean == pytest.approx(style.dart_lean) and 0.5 < share < style.dart_side_share
    assert turn_between(u.inner_tangent, u.outer_tangent) == pytest.approx(2 * u.half_angle)


def test_by_the_guides_the_marks_are_the_customs():
    """By the guides the mark lies 3 in below the bust point, the dart takes an inch there, and the corset is 23 in long
    (common practice, no source)."""
    u = drawn("Wanda", method="guides")
    assert u.radius == pytest.approx(3 * INCH)
    assert u.intake == pytest.approx(INCH)
    assert u.hem_level == pytest.approx(WEARERS["Wanda"].front_waist_length - 23 * INCH)
    assert drawn("Wanda", method="guides", underbust_mark=3.5 * INCH).radius == pytest.approx(3.5 * INCH)


def test_the_guides_dart_takes_18_9_degrees():
    """An inch in parts of 3/4 and 1/4 at 3 in from the bust point is atan(1/4) + atan(1/12) = 18.80 degrees (closed form)."""
    expected = math.degrees(math.atan(0.25) + math.atan(1 / 12))
    assert 2 * drawn("Maren", method="guides").half_angle == pytest.approx(expected, abs=1e-9)
    assert expected == pytest.approx(18.80, abs=0.005)


@pytest.mark.parametrize("wearer", WEARERS)
@pytest.mark.parametrize("reduction", [0.0, 2.54])
def test_to_the_wearer_the_underbust_girth_is_the_bodys(wearer, reduction):
    """To the wearer the girth at the mark's level is the body's less the stated reduction, the lacing gap counted."""
    pattern = draft(WEARERS[wearer], Style(underbust_reduction=reduction))
    assert anew.girths(pattern)["underbust"] == pytest.approx(WEARERS[wearer].underbust_girth - reduction, abs=0.01)


def test_a_fuller_bust_sets_the_mark_lower():
    """To the wearer the mark lies 3 in below the bust point at a difference of 12 cm, and 1/16 in lower for each cm more
    (course convention; the customs' 3 and 3 1/2 in for a small and a full bust)."""
    for wearer in ("Maren", "Brid", "Yrsa"):
        body = WEARERS[wearer]
        wanted = 3 * INCH + (body.bust_girth - body.underbust_girth - 12) * INCH / 16
        assert drawn(wearer).radius == pytest.approx(min(wanted, drawn(wearer).block.bust_point.imag - 1.5))
    assert drawn("Brid").radius > 3 * INCH


@pytest.mark.parametrize("wearer", WEARERS)
def test_the_hem_is_level_in_front_and_square_to_the_side(wearer):
    """The hem leaves the centre front level and meets the side seam squarely, raised by the stated inch."""
    u = drawn(wearer)
    assert abs(u.hem[0].tangent(0) - 1) < 1e-9
    assert u.hem_side.imag - u.hem_level == pytest.approx(INCH)
    side = u.side_below[-1].tangent(1)
    assert dot(u.hem[-1].tangent(1), side) == pytest.approx(0, abs=1e-9)


def test_the_back_is_shorter_by_the_length_difference():
    """Front and back hem lie at one level at the centre, so measured from the shoulders the back is shorter by the front's
    and back's length difference."""
    steps = figure("Wanda", method="guides").steps
    lengths = [
        half.neck_side.imag - foot.imag
        for half, foot in ((steps.block.front, steps.underbust.hem[0].start), (steps.block.back, steps.back.hem.whole[-1].end))
    ]
    over_the_bust = (
        abs(steps.block.front.neck_side - steps.block.bust_point) + steps.block.bust_point.imag - steps.underbust.hem_level
    )
    assert over_the_bust == pytest.approx(23 * INCH)
    assert over_the_bust - lengths[1] == pytest.approx(steps.block.length_difference)


def test_an_absurd_dart_is_refused_with_its_remedy():
    """Where the underbust would take more than 80 degrees, one sentence names the measures and what to do."""
    body = WEARERS["Ottilie"].replaced(underbust_girth=64.0, waist_girth=100.0)
    with pytest.raises(
        CorsetkitError, match="underbust dart.* more than 80 degrees: measure bust.girth and underbust.girth again"
    ):
        underbust(block(body, Style()), Style())


def test_a_corset_that_ends_at_the_waist_is_refused_with_the_least_length():
    """By the fixed guides the hem lies at least 4 cm below the waist: a shorter corset is refused, that one is drawn."""
    shortest = next(one.low for one in quantities(Style) if one.name == "corset_length")
    refused = 0
    for name, body in WEARERS.items():
        least = body.front_waist_length + 4.0
        if least - 0.1 >= shortest:
            refused += 1
            with pytest.raises(CorsetkitError, match=re.escape(f"allowed is at least {say_both(least)}")):
                drawn(name, method="guides", corset_length=least - 0.1)
            assert paths.path_start(drawn(name, method="guides", corset_length=least).hem).imag == pytest.approx(-4.0)
    assert refused >= 4


@pytest.mark.parametrize("fold", [6.5, 8.0, 9.5])
def test_the_mark_lies_where_the_fold_was_measured(fold):
    """Fitted, a fold that was measured sets the mark, on both legs as on the upright; with fixed guides the guide does."""
    body = WEARERS["Maren"].replaced(bust_point_to_fold=fold)
    u = draft(body).steps.underbust
    assert u.radius == fold == pytest.approx(u.block.bust_point.imag - u.level)
    assert abs(u.inner - u.block.bust_point) == pytest.approx(fold) == abs(u.outer - u.block.bust_point)
    assert draft(body, Style(method="guides")).steps.underbust.radius == pytest.approx(3 * INCH)


def test_a_fold_unlike_the_breast_is_to_be_measured_again():
    """Customs run from 5.7 to 12.5 cm (common practice, no source): a fold far from what this breast has is told."""
    told = {
        fold: any("bust point to fold" in said for said in WEARERS["Maren"].replaced(bust_point_to_fold=fold).warnings)
        for fold in (5.2, 8.1, 11.5)
    }
    assert told == {5.2: True, 8.1: False, 11.5: True}
