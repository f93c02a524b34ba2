"""Runs the steps by hand in their order; a single step knows the marks of those that it rests on."""

from corsetkit.hand import back, block, darts, overbust, panels, three_part_cup, two_part_cup, underbust, yoke
from corsetkit.hand.drafter import Drafter
from corsetkit.steps.run import RESTS_ON, STEPS

_DRAW = {
    "block": (block.draw,),
    "underbust": (underbust.draw,),
    "overbust": (overbust.draw, yoke.draw),
    "darts": (darts.draw,),
    "two_part_cup": (two_part_cup.draw, panels.draw),
    "three_part_cup": (three_part_cup.draw, panels.draw),
    "back": (back.draw,),
}
"""What is drawn in each step, in order: the step's own lines, and what the pieces add to them."""


def by_hand(name, value, style):
    """One step by hand.

    Args:
        name: the step's name, as "darts".
        value: the step's own value. style: the `Style` it was drawn in.

    Returns:
        A `ByHand`: what this step adds to the marks and lines of the steps it rests on.

    Raises:
        CorsetkitError: where the piece that adds to the step cannot be cut in this style, as `draft` raises it.
    """
    return by_hand_from_the_start(name, value, style)[-1]


def by_hand_from_the_start(name, value, style):
    """One step by hand, and before it each step that it rests on: a list of `ByHand`s, as `by_hand` makes the last."""
    hand, made = Drafter(), []
    chain = [(name, value)]
    while chain[0][0] in RESTS_ON:
        before = RESTS_ON[chain[0][0]]
        chain.insert(0, (before, getattr(chain[0][1], before)))
    for one, its_value in chain:
        for draw in _DRAW[one]:
            draw(hand, its_value, style)
        made.append(hand.step_made())
    return made


def whole_by_hand(steps):
    """Every step of a `Steps` that was drawn, by hand: a dict from its name to its `ByHand`, in their order.

    Raises `CorsetkitError` as `by_hand` does.
    """
    hand, made = Drafter(), {}
    for name in STEPS:
        value = getattr(steps, name)
        if value is not None:
            for draw in _DRAW[name]:
                draw(hand, value, steps.style)
            made[name] = hand.step_made()
    return made
