"""Lesson 04: what its own drawings claim, worked out a second way, for every demo wearer."""

import cmath
import math
from itertools import combinations

import pytest
from figures import WEARERS, figure
from shapely import LineString, Polygon

from corsetkit import draft
from corsetkit.drawing.svg import svg_text
from corsetkit.geometry import paths
from corsetkit.teaching import cells as course
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.lessons.darts import turned_darts
from corsetkit.teaching.lessons.darts.front_parts import CENTRE_FRONT, DARTS, SIDE, TIGHTENING, UNDERBUST, apart, front_parts
from corsetkit.teaching.lessons.darts.lesson import LESSON, Closing
from corsetkit.teaching.lessons.darts.turned_darts import ABOVE, BELOW, BOTH, InTurn, PinBeside, Turning, offered
from corsetkit.units import say_number

METHODS = ("wearer", "guides")
CASES = [(wearer, method) for wearer in WEARERS for method in METHODS]


def steps_of(wearer, method="wearer"):
    return figure(wearer, method=method).steps


def ends(steps):
    return steps.overbust.front_dart, steps.block.side_dart


def area(path, move=lambda p: p):
    return Polygon([((q := move(p)).real, q.imag) for p in paths.flattened(path, 0.002)[:-1]])


def angle_between(a, b):
    """Degrees between two steps, by the cosine rule."""
    return math.degrees(math.acos((abs(a) ** 2 + abs(b) ** 2 - abs(a - b) ** 2) / (2 * abs(a) * abs(b))))


@pytest.mark.parametrize(("wearer", "method"), CASES)
def test_paper_and_darts_go_once_round_the_bust_point(wearer, method):
    """Four angles of paper and four darts make 360 degrees, and the darts are those that the steps drew."""
    steps = steps_of(wearer, method)
    front = front_parts(steps)
    assert sum(front.drawn) + sum(part.angle for part in front.parts) == pytest.approx(360, abs=1e-9)
    drawn = (steps.overbust.top_dart, steps.overbust.front_dart, 2 * steps.underbust.half_angle, steps.block.side_dart)
    assert front.drawn == pytest.approx(drawn, abs=1e-6)
    point = front.point
    assert front.parts[2].angle == pytest.approx(
        angle_between(steps.overbust.dart_lower - point, steps.underbust.inner - point), abs=1e-6
    )


@pytest.mark.parametrize(("wearer", "method"), CASES)
def test_the_parts_are_whole_simple_and_apart(wearer, method):
    """Each part is a simple area counter-clockwise, lies on the block's front, and overlaps no other."""
    steps = steps_of(wearer, method)
    block = area(steps.block.front_paper).buffer(0.01)
    areas = [area(part.outline) for part in front_parts(steps).parts]
    for one in areas:
        assert one.is_valid and one.exterior.is_ccw and one.area > 20 and block.contains(one)
    assert all(one.intersection(other).area < 0.01 for one, other in combinations(areas, 2))


@pytest.mark.parametrize("above", [1.0, 0.5, 0.0])
@pytest.mark.parametrize(("wearer", "method"), CASES)
def test_what_one_dart_gives_up_another_takes(wearer, method, above):
    """Closing changes no sum: what both darts lose, tightening and underbust dart gain, in the share asked for."""
    steps = steps_of(wearer, method)
    front = front_parts(steps)
    for part in (0.3, 1.0):
        given = [part * end for end in ends(steps)]
        now = front.darts(front.closed(*given, above))
        assert sum(now) == pytest.approx(sum(front.drawn), abs=1e-9)
        assert front.drawn[CENTRE_FRONT] - now[CENTRE_FRONT] == pytest.approx(given[0], abs=1e-6)
        assert front.drawn[SIDE] - now[SIDE] == pytest.approx(given[1], abs=1e-6)
        assert now[TIGHTENING] - front.drawn[TIGHTENING] == pytest.approx(sum(given) * above, abs=1e-6)
        assert now[UNDERBUST] - front.drawn[UNDERBUST] == pytest.approx(sum(given) * (1 - above), abs=1e-6)


@pytest.mark.parametrize("wearer", WEARERS)
def test_closing_above_is_what_the_step_does(wearer):
    """The course's own way turns the two upper parts as the step does, and the legs of the closed darts meet."""
    steps = steps_of(wearer)
    front, darts = front_parts(steps), steps.darts
    moves = front.closed(*ends(steps))
    for part, move, close in ((front.parts[1], moves[1], darts.inner.close), (front.parts[0], moves[0], darts.outer.close)):
        assert max(abs(move(p) - close(p)) for p in part.points) < 1e-9
    paper = [area(part.outline, move) for part, move in zip(front.parts, moves)]
    assert all(one.intersection(other).area < 0.02 for one, other in combinations(paper, 2))
    reach = abs(steps.overbust.dart_upper - front.point)
    upper, lower = (
        LineString([(front.point.real, front.point.imag), (end.real, end.imag)])
        for end in (moves[1](steps.overbust.dart_upper), steps.overbust.dart_lower)
    )
    assert upper.hausdorff_distance(lower) < 1e-9 * reach + 1e-9


@pytest.mark.parametrize(("wearer", "method"), CASES)
def test_both_orders_end_alike_and_differ_on_the_way(wearer, method):
    """Closing in turn about the bust point ends the same to a hair, whichever dart is first."""
    steps = steps_of(wearer, method)
    front, (cf, side) = front_parts(steps), ends(steps)
    one = front.closed_in_turn(((CENTRE_FRONT, cf), (SIDE, side)))
    other = front.closed_in_turn(((SIDE, side), (CENTRE_FRONT, cf)))
    assert apart(front, one, other) < 1e-9
    now = front.darts(one)
    assert now[CENTRE_FRONT] == pytest.approx(0, abs=1e-6) and now[SIDE] == pytest.approx(0, abs=1e-6)
    assert now[TIGHTENING] == pytest.approx(front.drawn[TIGHTENING], abs=1e-9)
    assert now[UNDERBUST] == pytest.approx(front.drawn[UNDERBUST] + cf + side, abs=1e-6)
    if side:
        assert apart(front, front.closed_in_turn(((CENTRE_FRONT, cf),)), front.closed_in_turn(((SIDE, side),))) > 1.0


@pytest.mark.parametrize("wearer", WEARERS)
@pytest.mark.parametrize("beside", [0.5, 2.54])
def test_a_pin_beside_the_bust_point_parts_the_legs_evenly(wearer, beside):
    """Turned about a pin `d` away by `a` degrees, a leg lies 2 d sin(a/2) from where it belongs (closed form), and what
    gapes or lies double is what shapely finds between the papers."""
    steps = steps_of(wearer)
    front, both = front_parts(steps), ends(steps)
    moves = front.closed(*both, pin=front.point + beside)
    told = turned_darts.leg_gaps(front, moves, both)
    assert len(told) == (2 if both[1] else 1)
    for (name, gap, along), end in zip(told, [end for end in both if end]):
        assert math.hypot(gap, along) == pytest.approx(2 * beside * math.sin(math.radians(end) / 2), abs=1e-9)
        upper, lower = (0, 3) if name == "side dart" else (1, 2)
        reach = abs(front.parts[upper].legs[0 if upper == 0 else 1])
        double = area(front.parts[upper].outline, moves[upper]).intersection(area(front.parts[lower].outline)).area
        if gap < 0:
            assert double == pytest.approx(-gap * reach, rel=0.2), "a strip as long as the leg"
        else:
            assert double < 0.02
    assert turned_darts.leg_gaps(front, front.closed(*both), both)[0][1] == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("wearer", "method"), CASES)
def test_the_guess_is_what_trigonometry_gives(wearer, method):
    """The underbust dart's width at the mark before and after, as 2 r sin(angle / 2); each misconception leads elsewhere."""
    steps = steps_of(wearer, method)
    asked = LESSON._asked(wearer, steps, "in", None)
    cf, side = ends(steps)
    wide = lambda angle: 2 * steps.underbust.radius * math.sin(math.radians(angle) / 2)
    now = 2 * steps.underbust.half_angle
    assert asked.start == pytest.approx(wide(now), abs=1e-6)
    assert asked.right == pytest.approx(wide(now + (side or cf)), abs=1e-6)
    assert asked.slips and all(abs(value - asked.right) > asked.near for value, _ in asked.slips)
    assert abs(asked.start - asked.right) > 1.5 * asked.near, "something moves"
    assert asked.move(0.0).svg != asked.move(1.0).svg


@pytest.mark.parametrize("wearer", WEARERS)
def test_the_redrawn_line_is_told_as_shapely_finds_it(wearer):
    """Largest move (to a tenth of a millimetre) and change of length of each redrawing, from fine polylines."""
    for line in (steps_of(wearer).darts.inner, steps_of(wearer).darts.outer):
        if not line.blend:
            continue
        old, new = (
            LineString([(p.real, p.imag) for p in paths.flattened(path, 0.0005)])
            for path in (line.blend.before, line.blend.after)
        )
        fine = [new.interpolate(i / 2000, normalized=True) for i in range(2001)]
        assert line.blend.largest_move == pytest.approx(max(old.distance(p) for p in fine), abs=0.01)
        assert line.blend.change == pytest.approx(new.length - old.length, abs=0.003)
        assert line.blend.change < 0, "the lesson says that it becomes shorter"


@pytest.mark.parametrize("wearer", WEARERS)
def test_cup_and_lower_front_are_cut_along_one_line(wearer):
    """The lengths that the lesson tells of the redrawn line are those of the cup's and of the lower front's edges."""
    darts = steps_of(wearer).darts
    whole = paths.path_length(darts.inner.line) + paths.path_length(darts.outer.line)
    seam = next(
        edge.seam
        for piece in figure(wearer).pieces
        for edge in piece.edges
        if edge.seam and len(edge.seam.sides[0]) == 3 and len(edge.seam.sides[1]) == 2
    )
    for side in seam.sides:
        assert sum(edge.length for edge in side) == pytest.approx(whole, abs=1e-6)


@pytest.fixture
def drafts(tmp_path, monkeypatch):
    monkeypatch.setenv("CORSETKIT_WORK", str(tmp_path))
    monkeypatch.setattr(course, "_live", {})
    monkeypatch.setattr(course, "_desks", {})
    return lambda wearer: _drafts_of(tmp_path, wearer)


def _drafts_of(folder, wearer):
    desk = Desk(folder)
    desk.change(wearer=wearer)
    return Drafts(desk)


DEMO = [wearer for wearer in WEARERS if wearer != "mean body"]
PICTURES = {
    Turning: LESSON._turning_picture,
    InTurn: LESSON._order_picture,
    PinBeside: LESSON._pin_picture,
    Closing: LESSON._line_picture,
}


def picture_of(kind, mine, values):
    """What a table of the lesson shows for values that differ from its beginnings."""
    name, steps = mine.steps(turned_darts.style_among(kind, values), "darts")
    return PICTURES[kind](name, steps, mine.desk.record.unit, turned_darts.chosen(kind, values, steps))


@pytest.mark.parametrize("wearer", DEMO)
def test_each_control_moves_its_drawing(drafts, wearer):
    """Every slider changes the drawing between its ends; that of a side dart which is not there says so instead."""
    mine = drafts(wearer)
    steps = mine.steps({}, "darts")[1]
    for kind in PICTURES:
        for one in offered(kind, steps):
            low, high = (one.choices[0], one.choices[1]) if one.unit == "choice" else (one.low, one.high)
            drawn = [picture_of(kind, mine, {one.name: value}).svg for value in (low, high)]
            if one.meaning == turned_darts.NO_SIDE_DART:
                assert drawn[0] == drawn[1] and not steps.block.side_dart
            else:
                assert drawn[0] != drawn[1], one.name


def test_the_tables_follow_the_wearer(drafts):
    """One after the other, each demo wearer is drawn on all tables, with her own darts as their sliders' ends, whatever was
    left on them before."""
    tables = {cell: getattr(LESSON, cell)() for cell in ("drawing", "turning", "order", "pin", "step_line")}
    desk = course.desk()
    for wearer in DEMO:
        desk.change(wearer=wearer)
        steps = steps_of(wearer)
        for cell, table in tables.items():
            assert table.shown["refused"] == "" and wearer in table.shown["svg"], cell
        ends_now = tables["turning"].play.quantities
        assert ends_now["centre_front_open"].high == round(steps.overbust.front_dart, 1)
        for cell, name in (("turning", "side_open"), ("order", "turned_in_all")):
            top = len(tables[cell].play.controls[name].stops) - 1
            tables[cell].play.handle({"kind": "set", "changes": {name: {"at": top}}, "keep": True})
        assert tables["turning"].play.refused == ""
        assert tables["order"].play.picture["said"][-1].startswith("The two drawings are the same")


def test_a_value_kept_from_another_wearer_closes_this_ones_dart(drafts):
    """Degrees beyond the wearer's own dart leave it as it was drawn, and no more; at zero it is closed."""
    mine = drafts("Ottilie")
    drawn = say_number(mine.steps({}, "darts")[1].overbust.front_dart, 1)
    for value, told in ((14.5, drawn), (0.0, "0")):
        said = picture_of(Turning, mine, {"centre_front_open": value, "opens_instead": BELOW}).said
        assert said[0].startswith(f"The centre-front dart is open by {told} degrees")


def test_the_sentences_follow_the_drawing(drafts):
    """The sums told are the drawing's; a leaning centre front is told only where the lower part turned."""
    mine = drafts("Maren")
    taken = say_number(draft(WEARERS["Maren"]).fullness.total, 1)
    for method, leans in ((ABOVE, False), (BELOW, True), (BOTH, True)):
        picture = picture_of(Turning, mine, {"centre_front_open": 6.0, "opens_instead": method})
        assert any("leans" in one for one in picture.said) == leans
        assert any(one.startswith(f"All darts together: {taken} degrees, as before.") for one in picture.said)
    steps = mine.steps({}, "darts")[1]
    assert "The two drawings are the same" in picture_of(InTurn, mine, {"turned_in_all": sum(ends(steps))}).said[-1]
    assert "differ" in picture_of(InTurn, mine, {"turned_in_all": 12.0}).said[-1]
    assert "sewn" not in picture_of(PinBeside, mine, {"pin_beside": 0.0}).said[0]
    assert picture_of(PinBeside, mine, {"pin_beside": 0.0}).said[0].endswith("from end to end.")


@pytest.mark.parametrize("wearer", DEMO)
def test_no_sentence_measures_a_dart_that_is_not_there(drafts, wearer):
    """Of a side dart degrees are told where there is one, and only there."""
    mine = drafts(wearer)
    steps = mine.steps({}, "darts")[1]
    for kind in (Turning, InTurn, Closing):
        said = " ".join(picture_of(kind, mine, {one.name: one.low for one in offered(kind, steps) if one.is_number}).said)
        assert ("side dart by" in said or "Closing the side dart" in said) == bool(steps.block.side_dart), kind


@pytest.mark.parametrize("wearer", DEMO)
def test_no_text_meets_another_or_leaves_the_sheet(drafts, wearer, monkeypatch):
    """The lesson's own sheets keep their texts apart and on the paper, at the ends and in between."""
    from corsetkit.drawing.canvas import recorded
    from corsetkit.drawing.lettering import overlap

    sheets = []
    keep = lambda sheet: sheets.append(sheet) or svg_text(sheet)
    monkeypatch.setattr(turned_darts, "svg_text", keep)
    monkeypatch.setattr("corsetkit.teaching.lessons.darts.lesson.svg_text", keep)
    mine = drafts(wearer)
    for kind in PICTURES:
        many = offered(kind, mine.steps({}, "darts")[1])
        for share in (0.0, 0.37, 0.62, 1.0):
            values = {one.name: one.low + share * (one.high - one.low) for one in many if one.is_number}
            for method in (ABOVE, BELOW, BOTH) if kind is Turning else (None,):
                picture_of(kind, mine, values | ({"opens_instead": method} if method else {}))
    assert len(sheets) == 4 * (3 + 3)
    for sheet in sheets:
        boxes = [written.box for written in recorded(sheet).written]
        assert not [pair for pair in combinations(boxes, 2) if overlap(*pair)]
        for left, bottom, right, top in boxes:
            assert sheet.low.real <= left and right <= sheet.high.real
            assert sheet.low.imag <= bottom and top <= sheet.high.imag


@pytest.mark.parametrize("wearer", DEMO)
def test_each_darts_degrees_stand_between_its_legs(wearer):
    """A number written in a dart lies wholly inside it: all corners of its box have headings between the legs'.
    Drawn open, every dart of more than 22 degrees has one."""
    from corsetkit.drawing.lettering import text_box
    from corsetkit.teaching.lessons.darts import fronts_sheet

    steps = steps_of(wearer)
    front = front_parts(steps)
    for part in (0.0, 0.4, 0.8):
        moves = front.closed(*[part * end for end in ends(steps)])
        for number, angle in enumerate(front.darts(moves)):
            at = fronts_sheet._between_legs(front, moves, number, angle, 3.0)
            if at is None:
                assert part or angle < 22, "a wide dart has room for its number"
                continue
            size = fronts_sheet.LINE_WORDS.size * 3.0 / 10
            drop = 1j * fronts_sheet.CAPITALS / 2 * size
            left, _, right, _ = text_box(at - drop, fronts_sheet.degrees(angle), fronts_sheet.LINE_WORDS, "middle", 0.0, 3.0)
            start = moves[number].turn * front.parts[number].legs[1]
            for corner in (complex(left, 0), complex(right, 0)):
                for height in (at - drop, at + drop):
                    turn = math.degrees(cmath.phase((complex(corner.real, height.imag) - front.point) / start))
                    assert 0 < turn < angle, (DARTS[number], part)


def test_refused_values_are_one_sentence(drafts):
    """A value beyond its limits is refused by its declaration, in a sentence that names it."""
    from corsetkit.errors import CorsetkitError

    steps = drafts("Maren").steps({}, "darts")[1]
    for kind in PICTURES:
        for one in offered(kind, steps):
            assert one.check(one.default) == one.default
            if one.is_number:
                with pytest.raises(CorsetkitError, match=one.label):
                    one.check(one.high + 1)


def test_unfinished_numbers_leave_the_declared_controls():
    """Where nothing can be drafted yet, the tables still have their controls."""
    assert [one.name for one in offered(Turning, None)] == ["centre_front_open", "side_open", "opens_instead"]
