"""Lesson 02: what its own drawing and sentences claim, checked a second way."""

import math
import re

import pytest

from corsetkit.errors import CorsetkitError
from corsetkit.quantity import quantities
from corsetkit.teaching import lesson
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.lessons.underbust.lesson import Looking, _across, _depth
from corsetkit.units import parse_length, say_length

LESSON = lesson("02_underbust")
WEARERS = list(Desk().demo)


def desk_of(wearer, unit="in"):
    desk = Desk()
    desk.change(wearer=wearer, unit=unit)
    return desk


def steps_of(wearer, **style):
    return Drafts(desk_of(wearer)).steps(style, "underbust")[1]


@pytest.mark.parametrize("wearer", WEARERS)
class TestDown:
    def test_the_width_is_the_horizontal_way_across_the_dart_as_shapely_finds_it(self, wearer):
        from shapely import LineString, Polygon

        from corsetkit.geometry import paths

        found = steps_of(wearer).underbust
        dart = Polygon([(p.real, p.imag) for p in paths.flattened(found.dart_waste.outline)[:-1]])
        for share in (0.1, 0.35, 0.5, 0.8, 0.95):
            level, inner, outer = _across(found, share * _depth(found))
            line = LineString([(-50, level), (90, level)]).intersection(dart)
            assert abs(outer - inner) == pytest.approx(line.length, abs=0.01)

    def test_nothing_is_taken_at_the_bust_point_and_at_the_end(self, wearer):
        found = steps_of(wearer).underbust
        for below in (0.0, _depth(found)):
            _, inner, outer = _across(found, below)
            assert abs(outer - inner) < 0.02

    def test_every_stop_of_the_slider_is_drawn(self, wearer):
        drafts = Drafts(desk_of(wearer))
        (one,) = quantities(Looking)
        stops = [i * one.step for i in range(int(_depth(steps_of(wearer).underbust) / one.step) + 1)]
        drawn = {LESSON._width_picture(drafts, {"below_the_bust_point": stop}).svg for stop in stops}
        assert len(drawn) == len(stops)


@pytest.mark.parametrize("wearer", WEARERS)
class TestSaid:
    def test_what_the_panels_give_adds_up_to_what_the_dart_takes(self, wearer):
        found = steps_of(wearer).underbust
        told = LESSON._said(steps_of(wearer), "cm")[1]
        centre, side = (float(number) for number in re.findall(r"([\d.]+) cm", told))
        _, inner, outer = _across(found, found.radius)
        # Each is rounded to a millimetre.
        assert centre + side == pytest.approx(abs(outer - inner), abs=0.11) and side > centre > 0

    def test_the_angle_is_the_one_between_the_legs(self, wearer):
        found = steps_of(wearer).underbust
        a, b = found.inner - found.block.bust_point, found.outer - found.block.bust_point
        angle = math.degrees(math.acos((a * b.conjugate()).real / abs(a) / abs(b)))
        assert f"opens {angle:.1f}".removesuffix(".0") in LESSON._said(steps_of(wearer), "in")[2]


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize("wearer", WEARERS)
def test_the_guess_is_asked_with_her_numbers_and_answered_by_the_draft(wearer, unit):
    drafts = Drafts(desk_of(wearer, unit))
    _, steps = drafts.steps({}, "underbust")
    asked = LESSON._asked(wearer, steps, unit, drafts)
    share = float(re.search(r"to be (\d+) %", asked.question)[1]) / 100
    found = steps_of(wearer, dart_side_share=share, dart_lean=12.0).underbust
    assert asked.right == pytest.approx((_across(found, found.radius)[2] - found.block.bust_point).real)
    assert say_length(asked.start, unit) in asked.question
    assert abs(asked.right - asked.start) > 2 * asked.near, "there is something to see"
    assert asked.move(0.0).svg != asked.move(1.0).svg
    for slip, _ in asked.slips:
        assert abs(slip - asked.right) > asked.near, "a slip is no right answer"


def test_a_dart_that_cannot_be_drawn_is_a_sentence():
    desk = desk_of("Maren")
    with pytest.raises(CorsetkitError, match="underbust"):
        Drafts(desk).steps(
            {"method": "guides", "underbust_mark": parse_length("1 1/2", "in"), "underbust_dart": 3.81}, "underbust"
        )
