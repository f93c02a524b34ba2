"""Instructions in plain words, their lengths in the learner's unit."""

import re

from corsetkit.geometry.points import heading
from corsetkit.measurements import Measurements
from corsetkit.pattern.instructions import (
    Along,
    Begin,
    Check,
    Compass,
    Curve,
    Halve,
    Join,
    Measure,
    Offset,
    Same,
    Square,
    Swing,
    Towards,
    Turn,
)
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.units import say_length

_QUANTITIES = {quantity.name: (owner, quantity) for owner in (Measurements, Style) for quantity in quantities(owner)}
_BRACES = re.compile(r"\{([^}]*)\}")


def say(instruction, unit, places=None):
    """One plain sentence that tells the hand what to do, lengths in `unit` ("in" or "cm").

    `places` are the marks' points by their names, as the course draws them: with them it is also said where on the page
    the left or the right of a line lies.
    """
    one, places = instruction, places or {}
    match one:
        case Begin():
            return f"Choose a mark {one.where}: the {one.to}; draw an upright and a level line through it."
        case Measure():
            return (
                f"From the {one.start} measure {say_length(one.length, unit)} {_way(one.bearing, places)} and mark the "
                f"{one.to}{_on_line(one, unit)}."
            )
        case Offset():
            return (
                f"From the {one.start} measure {say_length(one.length, unit)} {_way(one.bearing, places)}, then "
                f"{say_length(one.aside, unit)} {_aside(one, places)}, and mark the {one.to}{_on_line(one, unit)}."
            )
        case Swing():
            return (
                f"With the compass draw an arc {say_length(one.first_length, unit)} about the {one.first} and one "
                f"{say_length(one.second_length, unit)} about the {one.second}; where they cross, to the "
                f"{_hand(one.left)} of the line from the first to the second"
                f"{_on_page(places, one.first, one.second, one.left)}, mark the {one.to}{_on_line(one, unit)}."
            )
        case Halve():
            return f"Halve the straight line from the {one.start} to the {one.end} and mark the {one.to}."
        case Same():
            return f"The {one.start} is the {one.to} as well."
        case Turn():
            old, new = (_listed(names) for names in zip(*one.moved))
            return (
                f"Trace {old}; pin the tracing at the {one.about}, turn it until the {one.lay} lies on the line to the "
                f"{one.on}, and prick through {new}."
            )
        case Join():
            return f"Draw a straight line from the {one.start} to the {one.end}: the {one.line}."
        case Curve():
            return f"Draw a smooth curve {_through(one)}{_ends(one, places)}: the {one.line}."
        case Check():
            verb = "measures" if len(one.lines) == 1 else "together measure"
            return f"Check with the tape that {_listed(one.lines)} {verb} {say_length(one.length, unit)}."
    raise TypeError(f"{type(one).__name__} is no instruction")


def say_why(instruction, unit, *values):
    """Why, in one plain sentence.

    Where a `Measurements` or a `Style` is among `values`, its numbers stand behind the names.
    """

    def named(found):
        if found[1].endswith(" cm"):
            return say_length(float(found[1].removesuffix(" cm")), unit)
        owner, quantity = _QUANTITIES[found[1]]
        given = [getattr(value, quantity.name) for value in values if isinstance(value, owner)]
        return quantity.label + (f" ({quantity.say(given[0], unit)})" if given and given[0] is not None else "")

    return _BRACES.sub(named, instruction.because)


def say_all(instructions, unit, *values, why=False):
    """The instructions as numbered lines, with `why` each followed by its reason."""
    return tuple(
        f"{number}. {say(one, unit)}" + (f" {say_why(one, unit, *values)}" if why else "")
        for number, one in enumerate(instructions, 1)
    )


def names_in(because):
    """The names of the measurements and style values that a reason names."""
    return tuple(name for name in _BRACES.findall(because) if not name.endswith(" cm"))


def _way(bearing, places):
    match bearing:
        case Compass():
            return bearing.words
        case Towards():
            return f"towards the {bearing.mark}"
        case Along():
            return f"as the line from the {bearing.start} to the {bearing.end} runs"
        case Square():
            return (
                f"square to the line from the {bearing.start} to the {bearing.end} on its {_hand(bearing.left)}"
                f"{_on_page(places, bearing.start, bearing.end, bearing.left)}"
            )


def _aside(one, places):
    """An offset's second way, short where it is square to the first."""
    if isinstance(one.then, Square) and isinstance(one.bearing, Towards) and one.then.end == one.bearing.mark:
        then = one.then
        return f"square to that line on its {_hand(then.left)}{_on_page(places, then.start, then.end, then.left)}"
    return _way(one.then, places)


_PAGE = ("right", "up and right", "up", "up and left", "left", "down and left", "down", "down and right")


def _on_page(places, start, end, left):
    """Where on the page that side of the line lies: nobody need turn in mind to follow it."""
    if start not in places or end not in places or places[start] == places[end]:
        return ""
    angle = heading((places[end] - places[start]) * (1j if left else -1j))
    return f" ({_PAGE[round(angle / 45) % 8]} on the page)"


def _hand(left):
    return "left" if left else "right"


def _on_line(one, unit):
    """What a tape held along the drawn line reads there, where that is said."""
    where = one.on_line
    if where is None:
        return ""
    return f", {say_length(where.length, unit)} from the {where.start} along {_listed(where.lines)}"


def _through(curve):
    first, *middle, last = curve.marks
    if middle and all(mark.endswith(f"helper of the {curve.line}") for mark in middle):
        through = " through its helper" if len(middle) == 1 else " through its helpers in order"
    else:
        through = f" through {_listed(middle)}" if middle else ""
    return f"from the {first}{through} to the {last}"


def _ends(one, places):
    if one.leaves is not None and one.leaves == one.arrives:
        return f", leaving and arriving {_way(one.leaves, places)}"
    said = [
        f"{verb} {_way(bearing, places)}"
        for verb, bearing in (("leaving", one.leaves), ("arriving", one.arrives))
        if bearing is not None
    ]
    return ", " + " and ".join(said) if said else ""


def _listed(names):
    *most, last = (f"the {name}" for name in names)
    return f"{', '.join(most)} and {last}" if most else last
