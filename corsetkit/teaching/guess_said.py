"""A guess read and answered in words: what was said, how far it is from what came, and the likely reason.

Values are in the package's units: "cm" or "degrees", as `asked.unit` says. `unit` is the learner's, "in" or "cm".
"""

from corsetkit.errors import CorsetkitError, sentence
from corsetkit.teaching.shared.what_moved import degrees, far
from corsetkit.units import CM_PER_INCH, parse_length, round_to_sixteenth, say_length, say_number, shown
from corsetkit.words import words_of

SHARED = words_of("shared")

_FAR = 10
"""A guess this many times what was to be expected is a slip of the pen, and is asked for again: course convention."""
_SLACK = 1e-9
_SAME = 1e-6
_OTHER_SIDE = {"in": CM_PER_INCH, "cm": 1 / CM_PER_INCH}
"""For each unit of the learner's, what a number of the tape's other side counts too much."""


def read_guess(text: str, asked, unit: str) -> float:
    """What was typed as a value; CorsetkitError where it cannot be read or can hardly be meant."""
    value = _read_degrees(text) if asked.unit == "degrees" else parse_length(text, unit, what="your guess")
    if value > _FAR * max(asked.start, asked.right, asked.near, *(slip for slip, _ in asked.slips)):
        raise CorsetkitError(
            f"your guess is {shown(text)}, which is far more than this can be: look at the number again, it is not locked yet"
        )
    return value


def say_value(value: float, asked, unit: str) -> str:
    """`value` as tape or protractor says it: "9 1/2 in", "24.1 cm", "25.5 degrees"."""
    if asked.unit == "cm":
        return say_length(value, unit)
    return degrees(value)


def say_guess(text: str, value: float, asked, unit: str) -> str:
    """The guess in the learner's words, and as the tape says it where that differs: "24 cm, that is 9 7/16 in"."""
    words = say_value(value, asked, unit)
    if not reads_as(text, value, asked, unit):
        return words
    named, own = _named_unit(text, asked), "degrees" if asked.unit == "degrees" else unit
    if named in ("", own) and abs(_rounded(value, asked, unit) - value) < _SAME:
        return words
    typed = text if named else f"{text} {words.rpartition(' ')[2]}"
    return SHARED("guess_that_is", typed=typed, words=words)


def reads_as(text: str, value: float, asked, unit: str) -> bool:
    """Whether `text` still says `value`: a bare number does not once the unit is another."""
    try:
        return abs(read_guess(text, asked, unit) - value) < _SAME
    except CorsetkitError:
        return False


def told(text: str, value: float, asked, unit: str) -> list[str]:
    """What is to be said once the line has moved: the gap in her numbers, the likely reason, and why it moves so."""
    right, said = say_value(asked.right, asked, unit), say_guess(text, value, asked, unit)
    if _is_near(value, asked):
        near = SHARED("guess_near_angle" if asked.unit == "degrees" else "guess_near", said=said, right=right)
        return [near, sentence(asked.why)]
    off = SHARED(
        "guess_more" if asked.right > value else "guess_less",
        said=said,
        right=right,
        apart=_apart(value, asked.right, asked, unit),
    )
    return [off, _reason(text, value, asked, unit), sentence(asked.why)]


def _reason(text, value, asked, unit):
    """The slip that the guess clearly points to, else in which direction and how far it went."""
    met = [
        (abs(value - slip), reason)
        for slip, within, reason in _slips(text, value, asked, unit)
        if abs(value - slip) <= within + _SLACK and 2 * abs(value - slip) <= abs(value - asked.right)
    ]
    return min(met, key=lambda one: one[0])[1] if met else _direction(value, asked, unit)


def _slips(text, value, asked, unit):
    """Value, how near a guess must lie to it, and the reason: the lesson's own first, then those that any lesson has."""
    within = lambda slip: max(asked.near, abs(slip - asked.right) / 10)
    for slip, reason in asked.slips:
        yield slip, within(slip), sentence(reason)
    if not _is_near(asked.start, asked):
        start = say_value(asked.start, asked, unit)
        same = start == say_value(value, asked, unit)
        yield asked.start, within(asked.start), SHARED("guess_left" if same else "guess_left_nearly", start=start)
    if asked.unit == "cm" and not _named_unit(text, asked):
        times = _OTHER_SIDE[unit]
        yield (asked.right * times, asked.near * times, SHARED(f"guess_other_side_{unit}"))


def _direction(value, asked, unit):
    start = say_value(asked.start, asked, unit)
    mine, its = (_apart(one, asked.start, asked, unit) for one in (value, asked.right))
    grew, grows = value > asked.start, asked.right > asked.start
    if _is_near(asked.start, asked):
        same = start == say_value(asked.right, asked, unit)
        let = "grew" if grew else "shrank"
        return SHARED(f"guess_{let}_but_stays" if same else f"guess_{let}_but_nearly_stays", mine=mine, start=start)
    if grew != grows:
        return SHARED("guess_shrank_but_grows" if grows else "guess_grew_but_shrinks", start=start, mine=mine, its=its)
    way = "grows" if grows else "shrinks"
    past = abs(value - asked.start) > abs(asked.right - asked.start)
    return SHARED(f"guess_{way}_less" if past else f"guess_{way}_more", its=its, mine=mine)


def _apart(one, other, asked, unit):
    """How far two values lie apart, as the difference of the numbers that are shown, so that it adds up."""
    shown_apart = abs(_rounded(one, asked, unit) - _rounded(other, asked, unit))
    if shown_apart > _SAME:
        return say_value(shown_apart, asked, unit)
    return (
        SHARED("guess_less_than_a_tenth", tenth=say_number(0.1, 1)) if asked.unit == "degrees" else far(abs(one - other), unit)
    )


def _rounded(value, asked, unit):
    return round_to_sixteenth(value) if asked.unit == "cm" and unit == "in" else round(value, 1)


def _is_near(value, asked) -> bool:
    return abs(value - asked.right) <= asked.near + _SLACK


def _named_unit(text, asked) -> str:
    """The unit that the text names; empty for a bare number, which counts in the learner's unit."""
    if asked.unit == "degrees":
        return "degrees" if _number_of_degrees(text) != text.strip().lower() else ""
    try:
        if parse_length(text, "cm") != parse_length(text, "in") or not parse_length(text, "cm"):
            return ""
    except CorsetkitError:
        return ""
    return "in" if any(mark in text.lower() for mark in ("in", '"', "''", "\u2033", "\u201d")) else "cm"


def _number_of_degrees(text) -> str:
    plain = text.strip().lower()
    for word in ("degrees", "degree", "deg.", "deg", "\u00b0"):
        plain = plain.removesuffix(word)
    return plain.strip()


def _read_degrees(text) -> float:
    number = _number_of_degrees(text)
    if number.startswith(("-", "\u2212")):
        raise CorsetkitError(f"your guess is {shown(text)}: the angle is never negative")
    try:
        if any(mark.isalpha() or mark in "\"'\u2033\u201d" for mark in number):
            raise CorsetkitError("a length or a word")
        # Only the number: how people write numbers and fractions is known there.
        return parse_length(number, "cm")
    except CorsetkitError:
        raise CorsetkitError(
            f"your guess is {shown(text)}, which is not a number of degrees: write it like 25 or 25.5"
        ) from None
