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
from corsetkit.words import words_of

WORDS = words_of("hand")

_QUANTITIES = {quantity.name: (owner, quantity) for owner in (Measurements, Style) for quantity in quantities(owner)}
_BRACES = re.compile(r"\{([^}]*)\}")
_LENGTH = re.compile(r"(\d+(?:\.\d+)?) cm")


def say(instruction, unit, places=None):
    """One plain sentence that tells the hand what to do, lengths in `unit` ("in" or "cm").

    `places` are the marks' points by their names, as the course draws them: with them it is also said where on the page
    the left or the right of a line lies.
    """
    one, places = instruction, places or {}
    match one:
        case Begin():
            return WORDS("begin", where=one.where, to=one.to)
        case Measure():
            return WORDS(
                "measure",
                start=one.start,
                length=say_length(one.length, unit),
                way=_way(one.bearing, places),
                to=one.to,
                on_line=_on_line(one, unit),
            )
        case Offset():
            return WORDS(
                "offset",
                start=one.start,
                length=say_length(one.length, unit),
                way=_way(one.bearing, places),
                aside=say_length(one.aside, unit),
                then=_aside(one, places),
                to=one.to,
                on_line=_on_line(one, unit),
            )
        case Swing():
            return WORDS(
                "swing_left" if one.left else "swing_right",
                first=one.first,
                first_length=say_length(one.first_length, unit),
                second=one.second,
                second_length=say_length(one.second_length, unit),
                page=_on_page(places, one.first, one.second, one.left),
                to=one.to,
                on_line=_on_line(one, unit),
            )
        case Halve():
            return WORDS("halve", start=one.start, end=one.end, to=one.to)
        case Same():
            return WORDS("same", start=one.start, to=one.to)
        case Turn():
            old, new = (_listed(names) for names in zip(*one.moved))
            return WORDS("turn", old=old, about=one.about, lay=one.lay, on=one.on, new=new)
        case Join():
            return WORDS("join", start=one.start, end=one.end, line=one.line)
        case Curve():
            return _curve(one, places)
        case Check():
            return WORDS.counted("tape", len(one.lines), lines=_listed(one.lines), length=say_length(one.length, unit))
    raise TypeError(f"{type(one).__name__} is no instruction")


def say_why(instruction, unit, *values):
    """Why, in one plain sentence.

    Where a `Measurements` or a `Style` is among `values`, its numbers stand behind the names. Braces in which nothing stands
    that is known here are left as they are: a slip in a file of sentences stops no lesson.
    """

    def named(found):
        if length := _LENGTH.fullmatch(found[1]):
            return say_length(float(length[1]), unit)
        if found[1] not in _QUANTITIES:
            return found[0]
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
    return tuple(name for name in _BRACES.findall(because) if not _LENGTH.fullmatch(name))


def _way(bearing, places):
    match bearing:
        case Compass():
            return WORDS(f"compass_{bearing.name.lower()}")
        case Towards():
            return WORDS("way_towards", mark=bearing.mark)
        case Along():
            return WORDS("way_along", start=bearing.start, end=bearing.end)
        case Square():
            return WORDS(
                "way_square_left" if bearing.left else "way_square_right",
                start=bearing.start,
                end=bearing.end,
                page=_on_page(places, bearing.start, bearing.end, bearing.left),
            )


def _aside(one, places):
    """An offset's second way, short where it is square to the first."""
    if isinstance(one.then, Square) and isinstance(one.bearing, Towards) and one.then.end == one.bearing.mark:
        then = one.then
        page = _on_page(places, then.start, then.end, then.left)
        return WORDS("way_square_to_that_left" if then.left else "way_square_to_that_right", page=page)
    return _way(one.then, places)


_PAGE = ("right", "up_right", "up", "up_left", "left", "down_left", "down", "down_right")


def _on_page(places, start, end, left):
    """Where on the page that side of the line lies: nobody need turn in mind to follow it."""
    if start not in places or end not in places or places[start] == places[end]:
        return ""
    angle = heading((places[end] - places[start]) * (1j if left else -1j))
    return f" {WORDS(f'page_{_PAGE[round(angle / 45) % 8]}')}"


def _on_line(one, unit):
    """What a tape held along the drawn line reads there, where that is said."""
    where = one.on_line
    if where is None:
        return ""
    return WORDS("on_line", length=say_length(where.length, unit), start=where.start, lines=_listed(where.lines))


def _curve(one, places):
    first, *middle, last = one.marks
    ends = _ends(one, places)
    if not middle:
        return WORDS("curve", first=first, last=last, ends=ends, line=one.line)
    if all(mark.endswith(f"helper of the {one.line}") for mark in middle):
        return WORDS.counted("curve_by_helpers", len(middle), first=first, last=last, ends=ends, line=one.line)
    return WORDS("curve_through", first=first, marks=_listed(middle), last=last, ends=ends, line=one.line)


def _ends(one, places):
    """How a curve leaves its first mark and arrives at its last, to follow on in its sentence."""
    leaves, arrives = one.leaves, one.arrives
    if leaves is None and arrives is None:
        return ""
    if leaves == arrives:
        return WORDS("ends_alike", way=_way(leaves, places))
    if arrives is None:
        return WORDS("ends_leaving", way=_way(leaves, places))
    if leaves is None:
        return WORDS("ends_arriving", way=_way(arrives, places))
    return WORDS("ends", leaves=_way(leaves, places), arrives=_way(arrives, places))


def _listed(names):
    *most, last = (WORDS("listed_one", name=name) for name in names)
    return WORDS("listed", most=", ".join(most), last=last) if most else last
