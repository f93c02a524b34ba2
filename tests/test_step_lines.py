"""The draft so far: a step's own lines strong over the earlier ones, its waste hatched, its texts apart."""

from itertools import combinations

import pytest
from figures import WEARERS, figure

from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.drawing.step_lines import draft_so_far, near, pair
from corsetkit.drawing.step_sheet import step_sheet
from corsetkit.drawing.step_values import Drawn
from corsetkit.geometry.curve import Line
from corsetkit.geometry.paths import path_length
from corsetkit.steps import ORDER

CASES = [(wearer, step) for wearer in WEARERS for step in ORDER]


def sheet(wearer, step):
    style = "two parts" if step == "two_part_cup" else "three parts"
    return draft_so_far(figure(wearer, style).steps, step)


def roles(made):
    return [call.facts.get("role") for call in made.of("line") if call.facts.get("role")]


@pytest.mark.parametrize(("wearer", "step"), CASES)
def test_texts_keep_apart_and_on_the_sheet(wearer, step):
    """No two texts of a step's sheet collide, and none leaves it."""
    drawn = sheet(wearer, step)
    boxes = [written.box for written in recorded(drawn).written]
    assert boxes
    assert not [pair for pair in combinations(boxes, 2) if overlap(*pair)]
    for left, bottom, right, top in boxes:
        assert drawn.low.real <= left and right <= drawn.high.real
        assert drawn.low.imag <= bottom and top <= drawn.high.imag


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize(("wearer", "step"), [(wearer, step) for wearer, step in CASES if step not in ("block", "back")])
def test_a_window_keeps_its_size_and_its_words(wearer, step, unit):
    """A window is as large before a slider moves as after, when a line shows where others began; no text leaves it."""
    steps = figure(wearer, "two parts" if step == "two_part_cup" else "three parts").steps
    window = near(steps, step)
    began = Drawn((Line(0j, 5 + 5j),), "ghost")
    for height in (0.0, 6.0, 14.0):
        cut = (*window[:3], window[3] - height)
        still, moved = (draft_so_far(steps, step, unit, more=more, window=cut) for more in ((), (began,)))
        assert (still.low, still.high) == (moved.low, moved.high)
        for drawn in (still, moved):
            legend = [one for one in recorded(drawn).written if ("legend", ()) in one.groups]
            assert legend
            for left, bottom, right, _ in (one.box for one in legend):
                assert drawn.low.real <= left and right <= drawn.high.real and drawn.low.imag <= bottom


@pytest.mark.parametrize("step", ORDER)
def test_only_the_steps_own_lines_are_new(step):
    """Every step draws lines of its own as new, and from the second on the earlier ones as drawn before."""
    found = roles(recorded(sheet("Maren", step)))
    assert "new" in found
    assert ("before" in found) == (step != "block")


def test_what_is_cut_away_is_hatched_from_the_step_that_cuts_it():
    """The waste of a step and of those before it is shown, and the last step's sheet shows all of the draft's."""
    waste = {cut.name: cut.step for cut in figure("Maren").waste}
    counts = [roles(recorded(sheet("Maren", step))).count("waste") for step in ORDER]
    reached = [sum(ORDER.index(made) <= number for made in waste.values()) for number in range(len(ORDER))]
    assert counts == reached
    assert counts[-1] == len(waste)


def edges(wearer, step):
    """Facts and run of each named line of a step's sheet that is no offcut."""
    return [
        (call.facts, call.what[0])
        for call in recorded(sheet(wearer, step)).of("line")
        if call.facts.get("role") not in (None, "waste")
    ]


@pytest.mark.parametrize(("wearer", "step"), CASES)
def test_every_line_has_a_name_of_its_own(wearer, step):
    """Each line of this step and of those before it, each guide and level, is told by a name that no other line has."""
    names = [facts["name"] for facts, _ in edges(wearer, step)]
    assert all(names)
    assert len(set(names)) == len(names)


@pytest.mark.parametrize(("wearer", "step"), CASES)
def test_lines_that_are_sewn_tell_each_other_and_are_equally_long(wearer, step):
    """Each seam of a sheet has two sides; each names the other as its partner, and both are as long as each other."""
    seams = {}
    for facts, path in edges(wearer, step):
        if "seam" in facts:
            seams.setdefault(facts["seam"], []).append((facts, path))
    assert seams
    for (one, first), (other, second) in seams.values():
        assert {one["side"], other["side"]} == {1, 2}
        assert (one["partner"], other["partner"]) == (other["name"], one["name"])
        assert one["length"] == other["length"]
        assert path_length(first) == pytest.approx(path_length(second), abs=1e-4)


SEWN = {
    "block": {"front waist dart", "back waist dart", "shoulder", "upper side seam", "lower side seam", "side dart"},
    "underbust": {"underbust dart"}, "overbust": {"tightening dart", "centre-front dart"}, "darts": set(),
    "two_part_cup": {"cup seam"}, "three_part_cup": {"cup seam"}, "back": {"back dart", "lower side seam"},
}  # fmt: skip
"""What each step draws that is sewn to a line of the sheet."""


@pytest.mark.parametrize("step", ORDER)
def test_each_step_tells_its_darts_and_seams(step):
    """The legs of every dart, shoulders, side seams and the cups' seam are told as partners, in this step and later."""
    told = edges("Maren", step)
    new = {facts["name"].partition(",")[0] for facts, _ in told if facts["role"] == "new" and "seam" in facts}
    assert new == SEWN[step]
    later = {facts["name"].partition(",")[0] for facts, _ in told if facts["role"] == "before" and "seam" in facts}
    gone = {"front waist dart", "back waist dart"}
    earlier = [one for one in ORDER[: ORDER.index(step)] if one != "two_part_cup"]
    assert later - gone == set().union(*(SEWN[one] for one in earlier)) - gone


def test_a_taken_in_side_is_sewn_to_the_front_down_to_the_hem():
    """After the back step it is the new side seam that the front's is told to be sewn to, and the old one is not."""
    told = {facts["name"]: facts for facts, _ in edges("Maren", "back")}
    assert told["lower side seam, front"]["partner"] == "lower side seam, back"
    assert told["lower side seam, back"]["role"] == "new"
    assert "seam" not in told["back side before it is taken in"] and "seam" not in told["front side, below the hem"]


def test_a_pair_is_known_by_itself_and_not_by_its_name():
    """Two pairs of one name stay two seams; a line whose partner is not drawn tells none."""
    path = (Line(0j, 5j),)
    first, second = (pair("dart", ("inner leg", path), ("outer leg", path)) for _ in range(2))
    told = [call.facts for call in recorded(step_sheet("Two darts", [*first, *second])).of("line") if call.facts]
    assert [facts["seam"] for facts in told] == [1, 1, 2, 2]
    alone = recorded(step_sheet("One leg", first[:1])).of("line")
    assert [call.facts for call in alone if call.facts] == [{"role": "new", "name": "dart, inner leg", "length": "1 15/16 in"}]


def test_listeners_hear_both_sides_at_once():
    """The description tells lines that are sewn to each other together, and each other new line with its length."""
    words = sheet("Maren", "underbust").description
    told = {facts["name"]: facts["length"] for facts, _ in edges("Maren", "underbust") if facts["role"] == "new"}
    leg = told["underbust dart, inner leg"]
    assert f"underbust dart, inner leg and outer leg, {leg} each" in words
    assert f"front hem {told['front hem']}" in words and words.count("underbust dart") == 1
    uneven = pair("seam", ("front", (Line(0j, 5 + 0j),)), ("back", (Line(0j, 6 + 0j),)))
    assert step_sheet("Ease", uneven, unit="cm").description == "Ease. New in this step: seam, front 5 cm and back 6 cm."
