"""The block's lesson: girths on the strip, moved lines and the closing dart measured anew; every slider, every wearer."""

import re
from dataclasses import replace
from itertools import combinations
from math import radians, sin

import anew
import pytest
import shapely
from figures import WEARERS
from shapely import LineString, Point
from shapely.geometry import Polygon

from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.steps.block import block
from corsetkit.style import Style
from corsetkit.teaching import cells as course
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.lessons.block import levels as girth_strip
from corsetkit.teaching.lessons.block import pictures as block_pictures
from corsetkit.teaching.lessons.block import side_seams, two_blocks
from corsetkit.teaching.lessons.block.lesson import LESSON, MORE_BUST, REACH, _around_hers, _how_far_closed, _how_far_down
from corsetkit.teaching.lessons.block.levels import gaps, level_at, to_waist, whole_way
from corsetkit.teaching.lessons.block.side_seams import Closing, torn
from corsetkit.teaching.lessons.block.two_blocks import compared
from corsetkit.teaching.shared.what_moved import degrees, far, what_moved

STYLES = {
    "wearer": {},
    "guides": {"method": "guides"},
    "ease": {"bust_ease": 2.0, "waist_ease": 3.0, "hip_ease": 4.0, "underarm_drop": 4.0},
}
CASES = [(wearer, style) for wearer in WEARERS for style in STYLES]
DEMO = list(Desk().demo)


def drawn(wearer, style="wearer", **body):
    return block(WEARERS[wearer].replaced(**body), Style(**STYLES[style]))


def desk_of(wearer, unit="in"):
    desk = Desk()
    desk.change(wearer=wearer, unit=unit)
    return desk


def drawn_paths(svg):
    return re.findall(r'<path[^>]* d="([^"]*)"', svg)


class TestLevels:
    @pytest.mark.parametrize(("wearer", "style"), CASES)
    def test_at_bust_waist_and_hip_the_paper_is_half_the_body_and_half_the_ease(self, wearer, style):
        """The strip at the three levels is half the body's girth and half the stated ease."""
        one, body = drawn(wearer, style), WEARERS[wearer]
        for name, below in (("bust", 0.0), ("waist", to_waist(one)), ("hip", whole_way(one))):
            level = level_at(one, below)
            ease = STYLES[style].get(f"{name}_ease", 0.0)
            assert level.name == name
            assert 2 * level.width == pytest.approx(getattr(body, f"{name}_girth") + ease, abs=1e-6)

    @pytest.mark.parametrize(("wearer", "style"), CASES)
    def test_below_the_waist_the_stretches_are_what_a_level_line_crosses_of_the_paper(self, wearer, style):
        """Between waist and hip shapely's level line across the paper, the darts cut out, comes to the same."""
        one = drawn(wearer, style)
        darts = [
            anew.area((*half.dart_legs[0], *paths.turned_round(half.dart_legs[1])))
            for half in (one.front, one.back)
            if half.dart_legs
        ]
        paper = anew.area(one.front_paper).union(anew.area(one.back_paper))
        for dart in darts:
            paper = paper.difference(dart)
        for share in (0.1, 0.35, 0.59, 0.62, 0.9):
            height = -share * one.measurements.waist_to_hip
            across = paper.intersection(LineString([(-99, height), (299, height)])).length
            assert level_at(one, to_waist(one) - height).width == pytest.approx(across, abs=2e-3)

    @pytest.mark.parametrize(("wearer", "style"), CASES)
    def test_between_waist_and_bust_both_halves_meet_at_one_place_of_the_seam(self, wearer, style):
        """The level leaves front and back equally far up the closed side seam, and the widths have no jump on their way."""
        one = drawn(wearer, style)
        # The front's is laid across its open mouth, which then is taken off again.
        seams = [
            LineString([*anew.points(paths.turned_round(half.side_waist)), *anew.points(paths.turned_round(half.side_above))])
            for half in (one.front, one.back)
        ]
        mouth = abs(one.mouth_upper - one.mouth_lower)
        widths = []
        for i in range(1, 60):
            level = level_at(one, to_waist(one) * i / 60)
            ends = [paths.path_end(level.front[-1]), paths.path_start(level.back[0])]
            along = [seam.project(Point(end.real, end.imag)) for seam, end in zip(seams, ends)]
            if along[0] > anew.line(one.front.side_waist).length + 1e-3:
                along[0] -= mouth
            assert along[0] == pytest.approx(along[1], abs=5e-3)
            widths.append(level.width)
        assert max(abs(a - b) for a, b in zip(widths, widths[1:])) < 0.6

    def test_gaps_are_what_the_waist_darts_take(self):
        """At the waist what is left out is the front's and the back's dart."""
        one = drawn("Maren")
        assert [gap.length for gap in gaps(level_at(one, to_waist(one)))] == pytest.approx(
            [one.front.waist_dart, one.back.waist_dart]
        )

    @pytest.mark.parametrize("unit", ["in", "cm"])
    def test_strip_and_tape_are_drawn_as_long_as_they_are_said(self, unit):
        """On the sheet the strip's cells add up to half the waist, and the waist's tape with its ease is as long."""
        one = drawn("Maren", "ease")
        sheet = girth_strip.girth_strip(
            "t", one, level_at(one, to_waist(one)), unit, {"bust": 2.0, "waist": 3.0, "hip": 4.0}, "d", 60.0
        )
        boxes = {}
        for call in recorded(sheet).of("line"):
            boxes.setdefault(call.facts.get("name"), []).append(LineString(anew.points(call.what[0])).bounds)
        cells = [boxes[f"stretch {number} of the strip"][0] for number in (1, 2, 3, 4)]
        assert all(a[2] == pytest.approx(b[0]) for a, b in zip(cells, cells[1:]))
        (tape,), (ease,) = boxes["half the waist girth"], boxes["half the waist ease"]
        assert cells[-1][2] - cells[0][0] == pytest.approx((WEARERS["Maren"].waist_girth + 3.0) / 2, abs=1e-6)
        assert ease[2] - tape[0] == pytest.approx(cells[-1][2] - cells[0][0], abs=1e-6)


class TestMovedLines:
    @pytest.mark.parametrize("wearer", WEARERS)
    @pytest.mark.parametrize("name", REACH)
    def test_each_line_is_told_as_it_lies(self, wearer, name):
        """What stayed lies where it lay, what came along is the same line slid, and nothing lies further off than said."""
        hers = getattr(WEARERS[wearer], name)
        before, after = drawn(wearer), drawn(wearer, **{name: hers + 1.2})
        lines = compared(before, after)
        kinds = set()
        for line in lines:
            if line.name == "bust point" or not line.before or not line.after:
                continue
            # Curve by curve: the open mouth of the dart is no part of the side seam.
            old, new = (shapely.union_all([anew.line((curve,)) for curve in path]) for path in (line.before, line.after))
            apart = old.hausdorff_distance(new)
            kinds.add((line.stayed, line.came_along))
            if line.stayed:
                assert apart < 1e-5 and not line.differing
            elif line.came_along:
                assert old.length == pytest.approx(new.length, abs=1e-5) and line.most == pytest.approx(abs(line.step))
            else:
                assert line.step is None and 1e-6 < apart <= line.most + 1e-3
        assert (True, False) in kinds and (False, False) in kinds

    @pytest.mark.parametrize("wearer", WEARERS)
    def test_a_longer_front_lifts_its_upper_part_and_leaves_the_back(self, wearer):
        """Front waist length 1.5 cm longer: neckline, shoulder and armscye rise by 1.5 cm unchanged; of the back only what is
        drawn through the underbust moves, which lies higher with the bust point."""
        longer = WEARERS[wearer].front_waist_length + 1.5
        before = drawn(wearer)
        if before.length_difference < 0:
            pytest.skip("the front is shorter than the back, so part of the length makes no dart")
        lines = {line.name: line for line in compared(before, drawn(wearer, front_waist_length=longer))}
        for name in ("front neckline", "front shoulder", "front armscye", "bust point"):
            assert lines[name].came_along and lines[name].step == pytest.approx(1.5j)
        moved = {line.name for line in lines.values() if line.half == "back" and not line.stayed}
        assert moved <= {"back side seam", "back waist dart"} and all(lines[name].most < 2.4 for name in moved)
        assert lines["side dart"].step is None

    def test_sentences_name_each_line_once_and_say_how_it_moved(self):
        """Every line of the block is in just one of the three sentences."""
        before, after = drawn("Maren"), drawn("Maren", across_back_width=WEARERS["Maren"].across_back_width + 1.27)
        lines = compared(before, after)
        told = what_moved(lines, before, after, "in")
        assert [one.split(":")[0] for one in told] == ["Drawn anew", "Came along, their shape kept", "Stayed"]
        for line in lines:
            of = {"front": line.name, "back": line.name}
            both = {
                "neckline": "both necklines",
                "shoulder": "both shoulders",
                "hip line": "both hip lines",
                "waist dart": "both waist darts",
                "side seam": "both side seams",
                "armscye": "both armscyes",
            }
            word = line.name.removeprefix("front ").removeprefix("back ")
            names = (of[line.half], both.get(word, "-"), "both centre lines" if line.name.startswith("centre") else "-")
            assert sum(any(name in one for name in names) for one in told) == 1, line.name
        assert "back armscye, by up to 1/4 in" in told[0] and "back side seam, 1/8 in towards the side" in told[1]

    def test_nothing_moved_and_a_dart_that_goes_are_said(self):
        """The same block has no moved line; where the front is not longer than the back the side dart is gone."""
        before = drawn("Maren")
        assert what_moved(compared(before, before), before, before, "in") == ("No line has moved.",)
        short = drawn("Maren", front_waist_length=WEARERS["Maren"].back_waist_length + 1.5)
        assert "side dart, gone" in what_moved(compared(before, short), before, short, "cm")[0]
        assert "side dart, new" in what_moved(compared(short, before), short, before, "cm")[0]

    def test_small_amounts_are_said_as_a_tape_shows_them(self):
        assert far(0.01, "in") == "less than 1/16 in" and far(0.04, "cm") == "less than 0.1 cm"
        assert far(2.54, "in") == "1 in"
        assert (degrees(1.0), degrees(18.33)) == ("1 degree", "18.3 degrees")


class TestClosing:
    @pytest.mark.parametrize(("wearer", "style"), CASES)
    def test_closed_the_fronts_side_seam_is_as_long_as_the_backs(self, wearer, style):
        """Closed, both seams are equally long, measured anew, and the underarm is as far from the bust point as before."""
        one = drawn(wearer, style)
        shut = Closing(one, one.side_dart)
        front = anew.line(shut.lower).length + anew.line(shut.upper).length
        assert front == pytest.approx(anew.line(shut.back).length, abs=3e-4)
        assert shut.front_length == pytest.approx(front, abs=3e-4) and shut.mouth == pytest.approx(0, abs=1e-9)
        assert abs(paths.path_end(shut.upper) - one.bust_point) == pytest.approx(abs(one.front.underarm - one.bust_point))

    @pytest.mark.parametrize("wearer", WEARERS)
    @pytest.mark.parametrize("share", [0.0, 0.25, 0.8])
    def test_the_open_mouth_is_the_chord_of_what_is_still_open(self, wearer, share):
        """The mouth is twice the dart's length times the sine of half the open angle."""
        one = drawn(wearer)
        now = Closing(one, share * one.side_dart)
        length = Point(one.bust_point.real, one.bust_point.imag).distance(anew.at(one.mouth_upper))
        assert now.mouth == pytest.approx(2 * length * sin(radians(now.still_open) / 2), abs=1e-9)
        assert now.front_length - paths.path_length(now.back) == pytest.approx(now.mouth, abs=1e-6)

    def test_the_paper_above_the_dart_is_turned_and_not_stretched(self):
        """The moved flap on the sheet has the same area as before."""
        one = drawn("Ottilie")
        areas = []
        for closed in (0.0, one.side_dart):
            calls = recorded(side_seams.side_seams("t", Closing(one, closed), "cm", "d")).of("area")
            areas.append(sorted(Polygon(anew.points(call.what[0])).area for call in calls))
        # The strips change place but not size either, so all areas are as before.
        assert areas[0] == pytest.approx(areas[1], rel=1e-6)


class TestGuess:
    @pytest.mark.parametrize("unit", ["in", "cm"])
    @pytest.mark.parametrize("method", ["wearer", "guides"])
    @pytest.mark.parametrize("wearer", DEMO)
    def test_the_answer_is_the_share_of_half_the_difference(self, wearer, method, unit):
        """To the wearer three fifths of half the difference go to the front, by the guides half of it."""
        desk = desk_of(wearer, unit)
        drafts = Drafts(desk)
        name, steps = drafts.steps({"method": method}, "block")
        asked = LESSON._asked(name, steps, unit, drafts)
        more = asked.right - asked.start
        assert more == pytest.approx(MORE_BUST[unit] / 2 * (0.6 if method == "wearer" else 0.5))
        assert asked.start == pytest.approx(steps.block.front.underarm.real)
        assert all(abs(value - asked.right) > asked.near for value, _ in asked.slips) and asked.slips
        assert asked.move(0.0).svg != asked.move(1.0).svg

    def test_a_bust_at_the_limit_is_made_smaller_instead(self):
        """Where no larger bust is allowed the question takes a smaller one."""
        desk = desk_of("Ottilie")
        drafts = Drafts(desk)
        body = replace(desk.body()[1], bust_girth=160.0, underbust_girth=134.0, high_bust_girth=None)
        _, steps = drafts.steps({}, "block", body)
        asked = LESSON._asked("Ottilie", steps, "cm", drafts)
        assert asked.right < asked.start and "150 cm" in asked.question


class TestSaid:
    @pytest.mark.parametrize("wearer", DEMO)
    def test_the_side_seams_limit_is_said_where_nothing_moves_any_more(self, wearer):
        """The sentence on the limit stands just there where a larger share leaves the whole block as it is."""
        desk = desk_of(wearer)
        drafts = Drafts(desk)
        for hundredths in range(17, 53, 3):
            share = hundredths / 100
            said = " ".join(LESSON.picture(drafts, {"waist_side_share": share}).said)
            here, more = (block(WEARERS[wearer], Style(waist_side_share=share + further)) for further in (0.0, 0.01))
            still = abs(here.front.waist_side - more.front.waist_side) < 1e-9
            assert still == ("A larger share moves nothing" in said), share
            assert still == (share > 0.374) or wearer != "Maren"

    def test_the_bust_point_is_worked_out_from_two_tapes(self):
        """Maren: 17 in less 10 1/2 in are 6 1/2 in."""
        said = LESSON.picture(Drafts(Desk()), {}).said[0]
        assert said == (
            "Front waist length 17 in, less neck to bust point 10 1/2 in: the bust point is 6 1/2 in above the waist."
        )


class TestTorn:
    def test_a_torn_edge_runs_from_end_to_end_and_is_never_straight(self):
        """The zigzag joins its ends without a gap, keeps near the straight line and crosses it at each tooth."""
        path = torn(1 + 2j, 1 + 12j)
        assert (path[0].start, path[-1].end) == (1 + 2j, 1 + 12j)
        assert all(a.end == b.start for a, b in zip(path, path[1:]))
        away = [curve.end.real - 1 for curve in path[:-1]]
        assert all(0.1 < abs(one) < 0.5 for one in away) and all(a * b < 0 for a, b in zip(away, away[1:]))


class TestSliders:
    @pytest.mark.parametrize("wearer", DEMO)
    def test_every_measurement_at_both_ends_draws_or_says_why(self, wearer):
        """Each measurement moved as far as its slider goes gives a drawing, or one clear sentence."""
        desk = desk_of(wearer)
        drafts = Drafts(desk), Drafts(desk)
        drawings = 0
        for one in _around_hers(desk.body()[1]):
            for value in (one.low, one.high):
                try:
                    picture = block_pictures.measured(drafts, {one.name: value}, REACH)
                except CorsetkitError as error:
                    assert ";" in str(error) or ":" in str(error)
                    continue
                drawings += 1
                assert picture.said[0].startswith(one.label.capitalize()) and len(picture.said) > 2
        assert drawings >= 2 * len(REACH) - 1

    def test_each_slider_moves_the_first_wearers_drawing(self):
        """Both ends of each slider give other lines."""
        desk = Desk()
        body, drafts = desk.body()[1], (Drafts(desk), Drafts(desk))
        tables = [(one, lambda values: block_pictures.measured(drafts, values, REACH)) for one in _around_hers(body)]
        tables.append((_how_far_down(body), lambda values: block_pictures.closing(drafts[0], values)))
        tables.append((_how_far_closed(desk), lambda values: block_pictures.side_dart(drafts[0], values)))
        style = {one.name: one for one in LESSON.offered()}
        tables += [(style[name], lambda values: LESSON.picture(drafts[0], values)) for name in LESSON.panels[0].names]
        tables += [
            (style[name], lambda values: block_pictures.closing(drafts[0], values)) for name in ("bust_ease", "waist_ease")
        ]
        for one, show in tables:
            low, high = (drawn_paths(show({one.name: value}).svg) for value in (one.low, one.high))
            assert low != high, one.name

    @pytest.mark.parametrize("wearer", DEMO)
    def test_each_level_and_each_angle_is_drawn_for_everybody(self, wearer):
        """From end to end of both sliders there is a drawing, and the levels that have a name are reached."""
        desk = desk_of(wearer, "cm")
        drafts, body = Drafts(desk), desk.body()[1]
        down, shut = _how_far_down(body), _how_far_closed(desk)
        said = [block_pictures.closing(drafts, {down.name: down.high * i / 20}).said[-1] for i in range(21)]
        assert said[0].startswith("Half the bust girth") and said[-1].startswith("Half the hip girth")
        assert block_pictures.closing(drafts, {}).said[-1].startswith("Half the waist girth")
        assert all(one.endswith("Paper and tape agree.") for one in said if one.startswith("Half"))
        for i in range(5):
            assert block_pictures.side_dart(drafts, {shut.name: shut.high * i / 4}).said

    def test_unfinished_measurements_are_refused_in_one_sentence_and_the_sliders_still_stand(self, work):
        """With an empty form of one's own the tables can be built, and what they show is the reason."""
        desk = course.desk()
        desk.change(source="own")
        with pytest.raises(CorsetkitError, match="the wearer's form is not finished"):
            block_pictures.side_dart(Drafts(desk), {})
        for name in ("measured", "girths_measured", "closing", "side_dart"):
            table = getattr(LESSON, name)()
            assert table.shown["refused"].startswith("The wearer's form is not finished")

    def test_no_table_of_measurements_has_more_than_three_sliders(self, work):
        """Lengths and girths are two tables, and each measurement that can be moved is in just one of them."""
        tables = [LESSON.measured(), LESSON.girths_measured()]
        shown = [list(table.play.quantities) for table in tables]
        assert all(len(names) <= 3 for names in shown) and sorted(sum(shown, [])) == sorted(REACH)

    def test_a_wearer_without_a_side_dart_is_told_that_its_slider_does_nothing(self):
        """Theda's front is not longer than her back: the slider says so, and both its ends draw the same."""
        desk = desk_of("Theda")
        one = _how_far_closed(desk)
        assert "the slider moves nothing" in one.meaning and "nothing" not in _how_far_closed(desk_of("Maren")).meaning
        low, high = (block_pictures.side_dart(Drafts(desk), {one.name: value}).svg for value in (one.low, one.high))
        assert low == high

    def test_nothing_of_the_moved_measurements_is_kept(self, work):
        """A moved measurement changes neither the wearer nor the style on the desk."""
        desk, table = course.desk(), LESSON.girths_measured()
        before = desk.body()[1]
        table._on_page(table, {"kind": "set", "changes": {"bust_girth": {"at": 0}}, "keep": True}, [])
        assert table.shown["said"][0].startswith("Bust girth: ") and not table.shown["refused"]
        assert desk.body()[1] == before and desk.record.style == {}


def _sheets(wearer):
    one = drawn(wearer)
    for i in range(7):
        level = level_at(one, whole_way(one) * i / 6, 0.3)
        eases = dict.fromkeys(girth_strip.LEVELS, 0.0)
        yield girth_strip.girth_strip(f"Round half of {wearer}", one, level, "in", eases, "d", 60.0)
        yield side_seams.side_seams(f"The side seams of {wearer}", Closing(one, one.side_dart * i / 6), "in", "d")
    for name in REACH:
        for change in (-2.0, 2.0):
            now = drawn(wearer, **{name: getattr(WEARERS[wearer], name) + change})
            yield two_blocks.two_blocks(f"Which lines move on the block of {wearer}", one, compared(one, now), "in", "d")


@pytest.mark.parametrize("wearer", DEMO)
def test_texts_keep_apart_and_on_their_sheets(wearer):
    """On every sheet of the lesson no two texts collide, and none leaves the paper."""
    for sheet in _sheets(wearer):
        boxes = [written.box for written in recorded(sheet).written]
        assert not [pair for pair in combinations(boxes, 2) if overlap(*pair)], sheet.title
        for left, bottom, right, top in boxes:
            assert sheet.low.real <= left and right <= sheet.high.real, sheet.title
            assert sheet.low.imag <= bottom and top <= sheet.high.imag, sheet.title


@pytest.mark.parametrize("wearer", DEMO)
def test_lines_keep_on_their_sheets(wearer):
    """No line of the lesson's sheets leaves its paper."""
    for sheet in _sheets(wearer):
        for call in recorded(sheet).of("line"):
            for x, y in anew.points(call.what[0], 8):
                assert sheet.low.real <= x <= sheet.high.real and sheet.low.imag <= y <= sheet.high.imag, sheet.title
