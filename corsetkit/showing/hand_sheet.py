"""A step as it is drawn by hand: the lines already on the paper, this step's own, and its marks with their numbers."""

from corsetkit.showing.step_sheet import Drawn, Spot, step_sheet

SCALE = 3.0
"""As large as a page shows it: the numbers are few and stand beside their marks."""


def hand_sheet(made, numbers, unit="in", title="By hand", scale=SCALE):
    """The sheet of the last step of `made`.

    Args:
        made: a list of `ByHand`s, one for each step from the first; the last is the one that is drawn now.
        numbers: for each of its marks that is written, the number beside it: a dict from the mark's name.
        unit: "in" or "cm". title: the heading. scale: how many centimetres are seen as one.
    """
    *before, now = made
    drawn = [Drawn(run, "before") for step in before for _, run in step.lines]
    drawn += [Drawn(run, "new") for _, run in now.lines]
    spots = [Spot(mark.point, str(numbers[mark.name])) for mark in now.marks if mark.name in numbers]
    # Helpers of curves: where they lie shows, but their numbers would hide the rest.
    spots += [Spot(mark.point, "", "before") for mark in now.marks if mark.name not in numbers]
    told = "; ".join(f"{numbers[mark.name]} {mark.name}" for mark in now.marks if mark.name in numbers)
    return step_sheet(title, drawn, spots, unit, f"{title}. Each number is the move that makes the mark: {told}.", scale)
