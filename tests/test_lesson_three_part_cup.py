"""Lesson 06: what its drawings claim of the cut across, the closed gap, the walked seams and of two parts or three."""

import re
from itertools import combinations

import anew
import pytest
from figures import WEARERS, figure

from corsetkit import Style, demo_wearers, draft
from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.points import turn_between
from corsetkit.teaching import cells as course
from corsetkit.teaching import lesson
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.lessons.three_part_cup.lesson import (
    CUP_SEAM,
    CUT,
    UNDERBUST,
    _Both,
    _seams,
    compared,
    corners_at_the_crossing,
)
from corsetkit.teaching.shared.cup_guides import TINT
from corsetkit.teaching.shared.cup_sheet import LOWER, three_cups_sheet
from corsetkit.teaching.shared.cups_lifted import (
    APART_MOST,
    cup_seams,
    cups_beside,
    cups_lifted,
    cups_spread,
    gap_above,
    gap_below,
)
from corsetkit.teaching.shared.laid_paper import Laid, torn_below
from corsetkit.teaching.shared.seam_walk import KeptDraft
from corsetkit.teaching.shared.walking import Walk
from corsetkit.units import parse_length, say_length

LESSON = lesson("06_three_part_cup")
DEMO = [name for name, _ in demo_wearers()]


def desk_of(wearer, **more):
    desk = Desk()
    desk.change(wearer=wearer, **more)
    return desk


def walks_of(wearer):
    pattern = figure(wearer)
    return {words: Walk(one.seam) for words, one in _seams(pattern).items()}


@pytest.mark.parametrize("wearer", DEMO)
def test_swung_to_its_end_the_cut_closes_and_no_paper_lies_over_another(wearer):
    """With the gap above closed, the outer lower cup's upper edge lies on the upper cup's lower edge, the papers beside each
    other; and the straight cuts that the lower cups' seam was above the bust point lie on each other too."""
    pattern = figure(wearer)
    upper, inner, outer = cups_spread(pattern, 0.0, gap_above(pattern.steps)).laid
    cut = cup_seams(pattern)[1]
    ours = [anew.line(anew.moved(edge.path, upper.move)) for edge in cut.sides[0]]
    theirs = [anew.line(anew.moved(edge.path, laid.move)) for edge, laid in zip(cut.sides[1], (inner, outer))]
    for one, other in zip(ours, theirs):
        # Beside the cup seam the lower cups' edge is trued.
        assert one.hausdorff_distance(other) < 0.14
    papers = [anew.area(anew.moved(one.piece.path, one.move)) for one in (upper, inner, outer)]
    assert max(papers[0].intersection(paper).area for paper in papers[1:]) < 0.1
    seam = pattern.steps.cup.seam
    legs = [
        anew.line(anew.moved(blend.before[:1], laid.move))
        for blend, laid in ((seam.inner_blend, inner), (seam.outer_blend, outer))
    ]
    assert legs[0].hausdorff_distance(legs[1]) < 1e-6


@pytest.mark.parametrize("wearer", DEMO)
@pytest.mark.parametrize("share", [0.0, 0.4, 1.0])
def test_what_the_gap_above_loses_the_gap_below_gains(wearer, share):
    """Measured on the cups as they are swung, the two gaps and the papers' own angles keep making a full turn."""
    pattern = figure(wearer)
    steps = pattern.steps
    point, seam = steps.overbust.bust_point, steps.cup.seam
    swung = share * gap_above(steps)
    turn = cups_spread(pattern, 0.0, swung).laid[2].move
    inner, outer = seam.inner_blend.before, seam.outer_blend.before
    ends = [inner[0].start, inner[1].end, turn(outer[0].start), turn(outer[1].end)]
    above, below = turn_between(ends[2] - point, ends[0] - point), turn_between(ends[1] - point, ends[3] - point)
    assert above == pytest.approx(gap_above(steps) - swung, abs=1e-6)
    assert below == pytest.approx(gap_below(steps) + swung, abs=1e-6)
    assert above + below == pytest.approx(sum(pattern.fullness.angles.values()), abs=0.01)


@pytest.mark.parametrize("wearer", DEMO)
def test_lifted_apart_no_paper_lies_over_another(wearer):
    """However far apart and however far swung, the papers stay clear of each other but for what seams bulge."""
    pattern = figure(wearer)
    for apart in (0.0, 1.0, APART_MOST):
        for swung in (0.0, gap_above(pattern.steps) / 2, gap_above(pattern.steps)):
            papers = [anew.area(anew.moved(one.piece.path, one.move)) for one in cups_spread(pattern, apart, swung).laid]
            for a in range(3):
                for b in range(a):
                    assert papers[a].intersection(papers[b]).area < 0.04 * papers[b].area, (apart, swung)


@pytest.mark.parametrize("wearer", DEMO)
def test_the_cut_shapes_nothing_and_the_cup_seam_all(wearer):
    """Walked along the upper cup, the lower cups turn by no more than they are trued beside the seam; along the cup seam, the
    outer one turns by the whole fullness, and by what the edges open; where the cut crosses the seam the three corners make a
    full turn, on the pieces too."""
    pattern, walks = figure(wearer), walks_of(wearer)
    for cm in (0.0, 3.0, walks[CUT].length * 0.7, walks[CUT].length):
        assert walks[CUT].turned(cm) < 12
    seam = pattern.steps.cup.seam
    assert walks[CUP_SEAM].turned(walks[CUP_SEAM].length) == pytest.approx(seam.fullness_left, abs=0.3)
    assert pattern.fullness.total < seam.fullness_left < pattern.fullness.total + 60
    assert corners_at_the_crossing(pattern.steps.cup) == pytest.approx(360, abs=1e-6)
    ends = [paths.path_end(pattern.steps.cup.cut_inner), paths.path_start(seam.inner), paths.path_start(seam.outer)]
    angles = [
        anew.at(at).buffer(0.05, quad_segs=500).exterior.intersection(anew.area(piece.path)).length
        / (2 * anew.np.pi * 0.05)
        * 360
        for piece, at in zip(pattern.pieces, ends)
    ]
    assert sum(angles) == pytest.approx(360, abs=2)


@pytest.mark.parametrize("wearer", DEMO)
def test_wherever_pieces_change_there_is_a_notch_and_both_sides_end_together(wearer):
    """Each change of pieces lies on a notch of its seam, and the marks of both sides touch at every place that is walked."""
    pattern = figure(wearer)
    for words, walk in walks_of(wearer).items():
        for cm, before, after in walk.changes():
            assert before != after and min(abs(mark - cm) for mark in walk.seam.marks) < 0.02
        for side in walk.sides:
            total = sum(anew.line(edge.path).length for edge in (one.edge for one in side))
            assert total == pytest.approx(walk.length, abs=2e-3)
        for i in range(9):
            cm = walk.length * i / 8
            one, two, move = walk.stop(0, cm), walk.stop(1, cm), walk.laid_along(cm)
            assert abs(move(two.point) - one.point) < 1e-9 and abs(move.turn) == pytest.approx(1)
            assert abs(turn_between(move.turn * two.tangent, one.tangent)) < 1e-6, words
            assert anew.area(one.piece.path).distance(anew.at(one.point)) < 1e-3
            assert anew.area(two.piece.path).distance(anew.at(two.point)) < 1e-3
    names = {words: [(before, after) for _, before, after in walk.changes()] for words, walk in walks_of(wearer).items()}
    assert names[CUP_SEAM] == [] and names[CUT] == [("inner lower cup", "outer lower cup")]
    assert set(names[UNDERBUST]) == {
        ("upper cup", "inner lower cup"),
        ("inner lower cup", "outer lower cup"),
        ("centre front", "side front"),
    }
    assert pattern.pieces[0].name == "upper cup"


@pytest.mark.parametrize("wearer", DEMO)
def test_a_torn_panel_keeps_its_sewn_edge_and_has_a_closed_border(wearer):
    """Of a long panel only the upper part is shown: a simple area within the panel's, with the whole edge that is walked."""
    pattern = figure(wearer)
    for one in walks_of(wearer)[UNDERBUST].sides[1]:
        level = torn_below(one.piece, one.edge, 6.0)
        laid = Laid(one.piece, torn=level)
        paper = anew.area(laid.outline)
        assert paper.is_valid and laid.tear and paper.bounds[1] > level - 0.3
        assert paper.difference(anew.area(one.piece.path).buffer(0.05)).area < 1e-6
        assert anew.line({id(edge): path for edge, path in laid.edges}[id(one.edge)]).length == pytest.approx(
            anew.line(one.edge.path).length, abs=0.01
        )
    cup = pattern.pieces[1]
    assert torn_below(cup, cup.edges[0], 6.0) is None


@pytest.mark.parametrize("wearer", DEMO)
def test_two_or_three_parts_in_numbers(wearer):
    """The numbers told are those of both patterns measured anew: seams, fullness, and what is cut off the corner."""
    two, three = figure(wearer, "two parts"), figure(wearer)
    told = compared(two, three, "in")
    sewn = []
    for pattern in (two, three):
        all_paths = [edge.path for seam in cup_seams(pattern) for edge in seam.sides[0]]
        sewn.append(sum(anew.line(path).length for path in all_paths))
    said = [parse_length(one, "in") for one in re.findall(r", ([\d/ ]+ in) to sew", told[0])]
    assert said == pytest.approx(sewn, abs=0.09) and "2 pieces, 1 seam " in told[0] and "3 pieces, 2 seams " in told[0]
    degrees = [float(one) for one in re.findall(r"\d+(?:\.\d+)?", told[1])]
    assert len(degrees) == 3 and degrees[2] == 0, "the cut across takes nothing"
    turned = [Walk(cup_seams(pattern)[0]) for pattern in (two, three)]
    for walk, told_of_it in zip(turned, degrees):
        assert walk.turned(walk.length) == pytest.approx(told_of_it, abs=0.1)
    # As the text says: the shorter seam bends more tightly.
    assert three.steps.cup.seam.radius <= two.steps.cup.seam.radius


@pytest.mark.parametrize("wearer", DEMO)
def test_the_guess_knows_how_wide_the_gap_below_becomes(wearer):
    """The answer is what all darts take together; no slip leads to it; swinging moves the drawing."""
    drafts = Drafts(desk_of(wearer))
    name, steps = drafts.steps(LESSON.fixed, LESSON.step)
    asked = LESSON._asked(name, steps, "in", drafts)
    assert asked.unit == "degrees"
    assert asked.right == pytest.approx(sum(figure(wearer).fullness.angles.values()), abs=0.01)
    assert asked.start == pytest.approx(gap_below(steps))
    assert all(abs(value - asked.right) > asked.near for value, _ in asked.slips)
    assert len({asked.move(share).svg for share in (0.0, 0.5, 1.0)}) == 3


def test_what_the_text_says_of_the_cuts_place():
    """For Ottilie the cut grows much as it comes down, for Maren little; farther from the front it is longer and leaves less
    of the inner lower cup's underbust edge."""

    def cut(wearer, **style):
        _, steps = Drafts(desk_of(wearer)).steps({**LESSON.fixed, **style}, LESSON.step)
        cup = steps.three_part_cup
        return anew.line((*cup.cut_inner, *cup.cut_outer)).length, anew.line(cup.lower_inner).length

    grown = {who: cut(who, cut_depth=5.715)[0] - cut(who, cut_depth=2.8575)[0] for who in ("Ottilie", "Maren")}
    assert grown["Ottilie"] > 4 and 0.5 < grown["Maren"] < 2
    near, far = (cut("Maren", cut_at_front=cm) for cm in (0.875 * 2.54, 2.875 * 2.54))
    assert far[0] > near[0] and far[1] < near[1] - 4


@pytest.mark.parametrize("wearer", DEMO)
def test_a_cut_too_deep_is_stopped_and_told(wearer):
    """The deepest cut is drawn no nearer to the bust point than 1.2 cm, with a note; or it is refused in one sentence."""
    try:
        picture = LESSON.picture(Drafts(desk_of(wearer)), {"cut_depth": 3.375 * 2.54})
    except CorsetkitError as error:
        assert str(error) and "\n" not in str(error)
    else:
        assert any(
            re.match("cut depth along the cup seam is .*; the cut is kept 1.2 cm .1/2 in. from the bust point", one)
            for one in picture.warnings
        )


@pytest.mark.parametrize("wearer", DEMO)
@pytest.mark.parametrize("style", ["three parts", "two and three panels", "three parts, openings"])
def test_an_edge_lies_opposite_to_what_it_shares_a_stretch_of_the_seam_with(wearer, style):
    """Walked in small steps, the edge on the other side at each place, away from where pieces change,
    is one named as opposite, and each one so named is met."""
    pattern = figure(wearer, style)
    for seam in pattern.seams:
        met = {}
        ends = [[sum(edge.length for edge in side[:k]) for k in range(len(side) + 1)] for side in seam.sides]
        for i in range(1, 400):
            share = i / 400
            here = []
            for side, stops in zip(seam.sides, ends):
                cm = share * stops[-1]
                here.append(next(edge for k, edge in enumerate(side) if cm <= stops[k + 1] + 1e-9))
                near = min(abs(cm - stop) for stop in stops)
                here[-1] = (here[-1], near)
            if min(near for _, near in here) > 0.12:
                (one, _), (other, _) = here
                met.setdefault(id(one), set()).add(id(other))
                met.setdefault(id(other), set()).add(id(one))
        for edge in (*seam.sides[0], *seam.sides[1]):
            if id(edge) in met:
                assert {id(one) for one in seam.opposite(edge)} == met[id(edge)], (seam.name, edge.name)
            assert all(any(edge is back for back in seam.opposite(one)) for one in seam.opposite(edge))


@pytest.mark.parametrize("wearer", DEMO)
def test_the_drawing_shows_three_cups_as_the_pattern_has_them(wearer):
    """The upper cup is drawn closed, the lower ones as they are cut: each tinted area is its piece's own,
    measured by shapely."""
    pattern = figure(wearer)
    sheet = recorded(three_cups_sheet(pattern.steps, "in", "x"))
    areas = [anew.area(call.what[0]) for call in sheet.of("area") if call.what[1] in (TINT, LOWER)]
    for area, piece in zip(areas, pattern.pieces):
        assert area.symmetric_difference(anew.area(piece.path)).area < 0.02
    assert len(areas) == 3
    assert {"upper cup", "inner lower cup", "outer lower cup"} <= {one.text for one in sheet.written}


@pytest.mark.parametrize("wearer", DEMO)
@pytest.mark.parametrize("depth", [1.125, 1.5, 2.25, 3.0, 3.375])
def test_wherever_the_cut_lies_all_cups_are_named_and_lie_clear_of_each_other(wearer, depth):
    """In both drawings of lifted cups, at every depth that can be drawn: each name once, no words over others, no paper over
    another."""
    try:
        three = draft(WEARERS[wearer], Style(cut_depth=depth * 2.54))
    except CorsetkitError:
        return
    for sheet in (
        cups_beside(figure(wearer, "two parts"), three, "in", "x"),
        cups_lifted(three, 0.0, gap_above(three.steps), "in", "x"),
        cups_lifted(three, 5.0, 10.0, "in", "x"),
    ):
        written = recorded(sheet).written
        text = " ".join(one.text for one in written)
        for piece in three.pieces[:3]:
            assert text.count(piece.name) == 1, piece.name
        for a, b in combinations(written, 2):
            assert not overlap(a.box, b.box), (a.text, b.text)
        for one in written:
            assert sheet.low.real <= one.box[0] and one.box[2] <= sheet.high.real
    papers = [
        anew.area(anew.moved(one.piece.path, one.move)) for one in cups_spread(three, 3.2, gap_above(three.steps) / 2).laid
    ]
    assert all(a.distance(b) > 1.0 for a, b in combinations(papers, 2))


def test_closed_up_a_length_is_written_once():
    """Where two sewn edges lie on each other their common length stands there once; apart it stands on both."""
    pattern = figure("Maren")
    for swung, times in ((gap_above(pattern.steps), 1), (0.0, 2)):
        written = [one.text for one in recorded(cups_lifted(pattern, 0.0, swung, "in", "x")).written]
        assert written.count(say_length(cup_seams(pattern)[1].sides[0][1].length, "in")) == times


def test_what_is_walked_is_told_of_all_pieces_it_goes_along():
    """Four inches of the cut across lie on two lower cups, not on one; a seam that turns one way alone does not turn back."""
    kept = KeptDraft(Drafts(desk_of("Maren")))
    told = LESSON._walk_picture(kept, {"walked": 11.0}).said
    assert told[0].endswith("on the upper cup, and on the inner lower cup and the outer lower cup together.")
    told = LESSON._walk_picture(kept, {"seam": CUP_SEAM, "walked": 6.2}).said
    assert told[0].endswith("on the inner lower cup and on the outer lower cup alike.")
    assert not any("turns back" in one for one in told)
    told = LESSON._walk_picture(kept, {"seam": CUP_SEAM, "walked": 99.0}).said
    assert told[1].startswith("Both edges end here together: ")


def test_the_swing_ends_where_her_gap_is_closed(tmp_path, monkeypatch):
    """The slider goes as far as this wearer's gap, and follows when another is chosen; unfinished measurements are told."""
    monkeypatch.setenv("CORSETKIT_WORK", str(tmp_path))
    monkeypatch.setattr(course, "_live", {})
    monkeypatch.setattr(course, "_desks", {})
    tables = [LESSON.drawing(), LESSON.apart(), LESSON.walk(), LESSON.two_or_three()]
    apart = tables[1]
    for wearer in ("Maren", "Ottilie"):
        course.desk().change(wearer=wearer)
        stops = apart.play.controls["swing_the_outer_cup_up"].stops
        assert gap_above(figure(wearer).steps) <= stops[-1] < gap_above(figure(wearer).steps) + 0.11
        apart.play.handle({"kind": "set", "changes": {"swing_the_outer_cup_up": {"at": len(stops) - 1}}, "keep": True})
        assert apart.play.shown()["said"][0].startswith("The gap above the bust point: 0 degrees")
    course.desk().change(source="own")
    assert all(table.shown["refused"].startswith("The wearer's form is not finished") for table in tables)
    course.desk().change(source="demo", wearer="Theda")
    assert all("Theda" in table.shown["svg"] and not table.shown["refused"] for table in tables)


def test_the_two_parts_are_not_drafted_anew_for_the_cut():
    """While the cut is moved, the pattern of two parts stays the very same one."""
    both = _Both(desk_of("Maren"))
    first = both.picture({}), both.two._found[1]
    second = both.picture({"cut_depth": 5.08}), both.two._found[1]
    assert first[1] is second[1] and first[0].svg != second[0].svg
    third = both.picture({"cup_seam_roundness": 0.5}), both.two._found[1]
    assert third[1] is not first[1]


@pytest.mark.parametrize("wearer", DEMO)
@pytest.mark.parametrize("unit", ["in", "cm"])
def test_every_wearer_is_shown_and_told_in_her_unit(wearer, unit):
    """All drawings come with whole sentences, in the chosen unit and in no other."""
    desk = desk_of(wearer, unit=unit)
    kept = KeptDraft(Drafts(desk))
    pictures = [
        LESSON.picture(kept.drafts, {}),
        LESSON._apart_picture(kept, {"swing_the_outer_cup_up": 10.0, "apart": 2.54}),
        _Both(desk).picture({}),
    ]
    pictures += [LESSON._walk_picture(kept, {"seam": seam}) for seam in (CUP_SEAM, UNDERBUST)]
    for picture in pictures:
        assert wearer in picture.svg and picture.said
        assert all(one.endswith(".") for one in picture.said)
        other = {"in": r"\d cm\b", "cm": r"\d in\b(?! all)"}[unit]
        assert not any(re.search(other, one) for one in (*picture.said, picture.description))
