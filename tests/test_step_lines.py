"""The draft so far: a step's own lines strong over the earlier ones, its waste hatched, its texts apart."""

from itertools import combinations

import pytest
from figures import WEARERS, figure

from corsetkit.showing.lettering import overlap
from corsetkit.showing.recorder import recorded
from corsetkit.showing.step_lines import draft_so_far
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
