"""Lesson 05: what its drawings claim of the cup seam, lifted apart and walked, measured a second way."""

import re

import anew
import pytest
from figures import WEARERS, figure

from corsetkit import demo_wearers
from corsetkit.drawing.canvas import recorded
from corsetkit.errors import CorsetkitError
from corsetkit.geometry.points import turn_between
from corsetkit.teaching import cells as course
from corsetkit.teaching import lesson
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.controls import Control
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.shared.cup_guides import TINT
from corsetkit.teaching.shared.cup_sheet import _between, two_cups_sheet
from corsetkit.teaching.shared.cups_lifted import APART_MOST, cup_seams, cups_spread, gap_above, gap_below
from corsetkit.teaching.shared.seam_walk import KeptDraft, walked_to
from corsetkit.teaching.shared.walking import Walk
from corsetkit.units import parse_length, say_length, say_number

LESSON = lesson("05_two_part_cup")
DEMO = [name for name, _ in demo_wearers()]


def pattern_of(wearer):
    return figure(wearer, "two parts")


def walk_of(wearer):
    pattern = pattern_of(wearer)
    return Walk(cup_seams(pattern)[0])


def desk_of(wearer, **more):
    desk = Desk()
    desk.change(wearer=wearer, **more)
    return desk


def along(path, cm):
    """The point so far along a run, and the way there, by a fine polyline."""
    places = anew.points(path, 4000) @ [1, 1j]
    steps = anew.np.abs(anew.np.diff(places))
    k = int(anew.np.argmin(abs(anew.np.concatenate([[0], anew.np.cumsum(steps)]) - cm)))
    back, on = places[max(k - 1, 0)], places[min(k + 1, len(places) - 1)]
    return complex(places[k]), complex(on - back)


@pytest.mark.parametrize("wearer", DEMO)
def test_each_rung_joins_points_equally_far_along_both_edges(wearer):
    """Wherever the pieces are lifted to, a rung's ends lie on the two sewn edges, equally far from their upper ends."""
    pattern = pattern_of(wearer)
    inner, outer = pattern.steps.cup.seam.inner, pattern.steps.cup.seam.outer
    spread = cups_spread(pattern, 3.0, 0.0)
    ends = {(id(one.piece)): one for one in spread.laid}
    sides = [anew.line(anew.moved(path, ends[id(piece)].move)) for path, piece in zip((inner, outer), pattern.pieces)]
    rungs = list(spread.rungs("in"))
    assert len(rungs) >= 10
    for _, _, *points, _ in rungs:
        # The seam's first side is the outer cup; which of the points lies on which edge is found here.
        found = sorted((min((side.distance(anew.at(p)), k) for k, side in enumerate(sides)), p) for p in points)
        assert {k for (_, k), _ in found} == {0, 1} and all(away < 2e-3 for (away, _), _ in found)
        lengths = [sides[k].project(anew.at(p)) for (_, k), p in found]
        assert lengths[0] == pytest.approx(lengths[1], abs=2e-3)


@pytest.mark.parametrize("wearer", DEMO)
def test_lifted_apart_by_so_much_and_otherwise_as_drawn(wearer):
    """The pieces keep their shape and lie apart by what the slider says; at nothing they lie as they were drawn."""
    pattern = pattern_of(wearer)
    there = [one.box for one in cups_spread(pattern, 0.0, 0.0).laid]
    for apart in (0.0, 1.27, APART_MOST):
        moved = [one.box for one in cups_spread(pattern, apart, 0.0).laid]
        assert moved[1][0] - moved[0][0] - (there[1][0] - there[0][0]) == pytest.approx(apart)
        assert moved[1][2] - moved[0][2] - (there[1][2] - there[0][2]) == pytest.approx(apart)
        assert [box[1] for box in moved] == pytest.approx([box[1] for box in there])
    papers = [anew.area(piece.path) for piece in pattern.pieces[:2]]
    # They touch in the bust point; beside it their bulges lie over each other by a hair, so each is traced for itself.
    assert papers[0].intersection(papers[1]).area < 0.3


@pytest.mark.parametrize("wearer", DEMO)
def test_the_two_gaps_and_the_cups_own_angles_make_a_full_turn(wearer):
    """Gap above, outer cup, gap below, inner cup: 360 degrees about the bust point; both gaps are what the darts take."""
    pattern = pattern_of(wearer)
    cup, gaps = pattern.steps.two_part_cup, (gap_above(pattern.steps), gap_below(pattern.steps))
    assert sum(gaps) + cup.inner_angle + cup.outer_angle == pytest.approx(360, abs=1e-6)
    assert sum(gaps) == pytest.approx(sum(pattern.fullness.angles.values()), abs=0.01)
    assert min(gaps) > 0


@pytest.mark.parametrize("wearer", DEMO)
@pytest.mark.parametrize("share", [0.0, 0.2, 0.5, 0.77, 1.0])
def test_walked_both_marks_are_equally_far_and_the_pieces_touch_way_to_way(wearer, share):
    """At each place the marks lie equally far along both edges, and the outer cup, turned and slid but not stretched,
    touches the inner one there with both edges running the same way."""
    walk = walk_of(wearer)
    seam = pattern_of(wearer).steps.cup.seam
    cm = share * seam.length
    places = [along(path, cm) for path in (seam.inner, seam.outer)]
    stops = [walk.stop(side, cm) for side in (0, 1)]
    assert [stop.piece.name for stop in stops] == ["inner cup", "outer cup"]
    for stop, (point, tangent) in zip(stops, places):
        assert abs(stop.point - point) < 3e-3 and abs(turn_between(stop.tangent, tangent)) < 0.2
    move = walk.laid_along(cm)
    assert abs(move.turn) == pytest.approx(1)
    assert abs(move(places[1][0]) - places[0][0]) < 5e-3
    assert abs(turn_between(move.turn * places[1][1], places[0][1])) < 0.3


@pytest.mark.parametrize("wearer", DEMO)
def test_walked_to_its_end_the_outer_cup_has_turned_by_the_fullness(wearer):
    """What the outer cup turns while it rolls along the inner one is what the darts at the bust point have taken, and what the
    edges open at their ends."""
    walk = walk_of(wearer)
    assert walk.turned(0.0) == pytest.approx(0)
    turned = [walk.turned(walk.length * i / 12) for i in range(13)]
    seam, opened = pattern_of(wearer).steps.cup.seam, 0.0
    for path, blend in ((seam.inner, seam.inner_blend), (seam.outer, seam.outer_blend)):
        for place, leg in ((path[0].tangent(0.0), blend.before[0]), (path[-1].tangent(1.0), blend.before[1])):
            opened += abs(turn_between(place, leg.end - leg.start))
    assert turned[-1] == pytest.approx(pattern_of(wearer).fullness.total + opened, abs=0.2)
    assert turned == sorted(turned), "the edges are hollow nowhere"


@pytest.mark.parametrize("wearer", DEMO)
def test_laid_along_the_outer_cup_hardly_covers_the_inner_one(wearer):
    """The two edges are round and bend away from each other, so the papers lie beside each other and not over each other,
    but for what the edges hollow near their ends."""
    walk, pieces = walk_of(wearer), pattern_of(wearer).pieces
    still = anew.area(pieces[0].path)
    for share in (0.35, 0.5, 0.65):
        laid = anew.area(anew.moved(pieces[1].path, walk.laid_along(share * walk.length)))
        assert laid.intersection(still).area < 0.02 * still.area


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize("length", [12.34, 14.8167, 15.24, 15.918, 17.9, 21.0])
def test_the_sliders_last_stop_is_the_seams_end(unit, length):
    """In either unit the slider's box says the seam's own length at its last stop, and no stop before that does."""
    control = Control(walked_to(length, unit)[0], unit)
    assert control.stops[0] == 0 and control.words[-1] == say_length(length, unit) != control.words[-2]


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize("wearer", DEMO)
def test_at_its_last_stop_the_slider_says_what_the_drawing_says(wearer, unit):
    """The box, the sentence and the strips agree: the whole seam is walked."""
    control = Control(walked_to(walk_of(wearer).length, unit)[0], unit)
    picture = LESSON._walk_picture(KeptDraft(Drafts(desk_of(wearer, unit=unit))), {"walked": control.stops[-1]})
    whole = control.words[-1]
    assert picture.said[0].startswith(f"{whole} of {whole} are walked, ") and f">{whole} of {whole}<" in picture.svg
    assert picture.said[1] == f"Both edges end here together: {whole} on both sides."


@pytest.mark.parametrize("unit", ["in", "cm"])
def test_start_notch_and_end_are_told_when_they_are_reached(unit):
    """The sentence says when both edges begin, when the bust point's notch is reached, and that both end at one length."""
    desk = desk_of("Maren", unit=unit)
    (quantity,), kept = walked_to(walk_of("Maren").length, unit), KeptDraft(Drafts(desk))
    notch = pattern_of("Maren").steps.cup.seam.to_bust_point
    told = {}
    for stop in Control(quantity, unit).stops:
        told[stop] = LESSON._walk_picture(kept, {"walked": stop}).said[1]
    assert told[0.0] == "Both edges begin here together."
    at_notch = [stop for stop, words in told.items() if "bust point" in words]
    assert at_notch and all(abs(stop - notch) <= 0.16 for stop in at_notch)
    last = told[max(told)]
    assert last.startswith("Both edges end here together: ")
    said = parse_length(re.search(r": (.*) on both", last)[1], unit)
    assert said == pytest.approx(anew.line(pattern_of("Maren").steps.cup.seam.outer).length, abs=0.08)


@pytest.mark.parametrize("wearer", DEMO)
def test_the_guess_knows_the_length_that_the_other_roundness_gives(wearer):
    """The answer is the seam's own length, measured by shapely; no slip leads to it; the line does move."""
    desk = desk_of(wearer)
    drafts = Drafts(desk)
    name, steps = drafts.steps(LESSON.fixed, LESSON.step)
    asked = LESSON._asked(name, steps, "in", drafts)
    other = int(re.search(r"to (\d+) %, so", asked.question)[1]) / 100
    _, redrawn = drafts.steps({**LESSON.fixed, "cup_seam_roundness": other}, LESSON.step)
    assert other != steps.style.cup_seam_roundness
    assert asked.right == pytest.approx(anew.line(redrawn.two_part_cup.seam.inner).length, abs=1e-3)
    assert asked.slips and all(abs(value - asked.right) > asked.near for value, _ in asked.slips)
    assert asked.move(0.0).svg != asked.move(1.0).svg


@pytest.mark.parametrize("wearer", DEMO)
def test_no_length_stands_in_the_guess_before_it_is_locked(wearer):
    """Before the line moves, neither side of the seam bears its length; once it moves, both do."""
    drafts = Drafts(desk_of(wearer))
    asked = LESSON._asked(*drafts.steps(LESSON.fixed, LESSON.step), "in", drafts)
    written = [re.findall(r">([\d/ ]+ in)</text>", asked.move(share).svg) for share in (0.0, 1.0)]
    assert written == [[], [say_length(asked.right, "in")] * len(written[1])] and written[1]


@pytest.mark.parametrize("wearer", DEMO)
def test_the_drawing_shows_the_cup_alone_and_the_true_gaps(wearer):
    """What is tinted and hatched, measured by shapely: both cups' own areas, and nothing but the gaps between them."""
    pattern = pattern_of(wearer)
    calls = recorded(two_cups_sheet(pattern.steps, "in", "x")).of("area")
    cups = [anew.area(call.what[0]) for call in calls if call.what[1] is TINT]
    for cup, piece in zip(cups, pattern.pieces):
        assert cup.symmetric_difference(anew.area(piece.path)).area < 0.02
    for gap in map(anew.area, _between(pattern.steps.cup.seam)):
        # Beside the bust point the two bulges lie over each other by a hair.
        gap = gap.buffer(0)
        assert gap.area > 1 and all(gap.intersection(cup).area < 0.3 for cup in cups)
    notes = " ".join(one.text for one in recorded(two_cups_sheet(pattern.steps, "in", "x")).written)
    for degrees in (gap_above(pattern.steps), gap_below(pattern.steps)):
        assert f"{say_number(degrees, 1)}\u00a0degrees" in notes


def test_each_edge_of_the_walk_is_told_once():
    """The copy that is laid along the other tells nothing again: each of the two cups' edges has its facts once."""
    svg = LESSON._walk_picture(KeptDraft(Drafts(desk_of("Maren"))), {}).svg
    told = re.findall(r'data-piece="(\d+)" data-edge="([^"]*)"', svg)
    assert sorted(told) == sorted(
        (str(piece.number), edge.name) for piece in pattern_of("Maren").pieces[:2] for edge in piece.edges
    )


def test_what_makes_the_seam_longer_and_what_does_not():
    """As the text says: roundness and underbust reduction hardly change its length; a higher overbust mark does."""
    drafts = Drafts(desk_of("Maren"))

    def seam(**style):
        _, steps = drafts.steps({**LESSON.fixed, **style}, LESSON.step)
        return anew.line(steps.two_part_cup.seam.outer).length, gap_above(steps), gap_below(steps)

    usual, higher, tighter = seam(), seam(overbust_mark=4 * 2.54), seam(underbust_reduction=2.54)
    assert higher[0] - usual[0] == pytest.approx(2.54, abs=0.1)
    assert tighter[0] == pytest.approx(usual[0], abs=0.06)
    assert tighter[1] == pytest.approx(usual[1], abs=0.2) and tighter[2] > usual[2] + 5
    pointed, rounder = (seam(cup_seam_roundness=roundness)[0] for roundness in (0.3, 0.5))
    assert usual[0] - 0.1 < pointed < usual[0] < rounder < usual[0] + 0.1


def test_what_cannot_be_drawn_is_one_sentence_in_every_table(tmp_path, monkeypatch):
    """A top edge too low for her, and measurements not yet filled in, are told in the drawing's place."""
    monkeypatch.setenv("CORSETKIT_WORK", str(tmp_path))
    monkeypatch.setattr(course, "_live", {})
    monkeypatch.setattr(course, "_desks", {})
    tables = [LESSON.drawing(), LESSON.apart(), LESSON.walk()]
    assert all("<svg" in table.shown["svg"] and not table.shown["refused"] for table in tables)
    course.desk().change(wearer="Ottilie", style={"overbust_mark": 1.5 * 2.54})
    assert all(table.shown["refused"].startswith("The tightening dart would take") for table in tables)
    course.desk().change(source="own", style={})
    assert all(table.shown["refused"].startswith("The wearer's form is not finished") for table in tables)
    course.desk().change(source="demo", wearer="Solveig")
    assert all("Solveig" in table.shown["svg"] and not table.shown["refused"] for table in tables)


@pytest.mark.parametrize("wearer", [name for name in WEARERS if name in DEMO])
@pytest.mark.parametrize("unit", ["in", "cm"])
def test_every_wearer_is_shown_and_told_in_her_unit(wearer, unit):
    """All three drawings come with sentences, each whole, in the chosen unit and in no other."""
    desk = desk_of(wearer, unit=unit)
    kept = KeptDraft(Drafts(desk))
    for picture in (LESSON.picture(kept.drafts, {}), LESSON._apart_picture(kept, {}), LESSON._walk_picture(kept, {})):
        assert wearer in picture.svg and picture.said
        assert all(one.endswith(".") for one in picture.said)
        other = {"in": r"\d cm\b", "cm": r"\d in\b(?! all)"}[unit]
        assert not any(re.search(other, one) for one in (*picture.said, picture.description))


def test_a_refusal_is_no_other_error():
    """Every value that the tables offer is drawn or refused by the package's own exception, for every demo wearer."""
    refused = 0
    for wearer in DEMO:
        kept = KeptDraft(Drafts(desk_of(wearer)))
        for name in ("cup_seam_roundness", "overbust_mark"):
            (quantity,) = (one for one in LESSON.offered() if one.name == name)
            for value in (quantity.low, quantity.high):
                try:
                    assert LESSON._apart_picture(kept, {name: value}).svg
                except CorsetkitError as error:
                    refused += 1
                    assert str(error).count("\n") == 0
    assert refused <= 4
