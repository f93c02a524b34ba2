"""Walking a seam of the wearer's pattern, with a slider: what is drawn and what is said of the place reached."""

from dataclasses import dataclass, replace

from corsetkit.drawing.painting import owners_of
from corsetkit.drawing.svg import svg_text
from corsetkit.quantity import declared, quantities
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.walking import Walk, walking_sheet
from corsetkit.units import CM_PER_INCH, Say, round_to_sixteenth, say_number

LONGEST = 45.0
"""What the slider offers where no wearer's seam is known yet, cm."""
_AT_THE_END = 0.08
"""A place this near to the seam's end, cm, is the end: a slider stops at whole sixteenths of an inch or whole millimetres."""
_SAME_LINE = 0.05


@dataclass(frozen=True)
class Walked:
    """How far a seam is walked."""

    walked: float = declared(
        "how far from its upper end the seam is walked, on both sides at once",
        unit="cm",
        low=0,
        high=LONGEST,
        step=0.125,
        default=4 * CM_PER_INCH,
    )


@dataclass(frozen=True)
class Seam:
    """A seam to walk: the pattern's own, what people call it, and (cm from its start, words) of its named notches."""

    seam: object
    words: str
    named: tuple = ()


def walked_to(length, unit):
    """The quantity of `Walked` for a seam that long, cm."""
    return (ending(*quantities(Walked), length, unit),)


def ending(quantity, length, unit):
    """The quantity of how far a seam of that `length`, cm, is walked, with its end where the tape says that the seam ends."""
    high = min(round_to_sixteenth(length) if unit == "in" else round(length, 1), LONGEST)
    return replace(quantity, high=high, default=min(quantity.default, high))


class KeptDraft:
    """The wearer's pattern, drafted anew only where the wearer or the style is another: walking changes neither."""

    def __init__(self, drafts):
        self.drafts = drafts
        self._asked = self._found = None

    def of(self, style):
        """As `Drafts.of`."""
        desk = self.drafts.desk
        asked = desk.record, desk.loaded, style
        if asked != self._asked:
            self._asked, self._found = None, self.drafts.of(style)
            self._asked = desk.record, dict(desk.loaded), dict(style)
        return self._found


def kept_draft(desk) -> KeptDraft:
    """The `KeptDraft` of a desk."""
    return KeptDraft(Drafts(desk))


def walk_picture(name, pattern, walked, cm, unit):
    """The picture of the `Seam` walked for `cm` of the wearer's pattern, with what is to be said."""
    owners = owners_of(pattern.pieces)
    length = max(walked.seam.lengths)
    cm = length if cm > length - _AT_THE_END else cm
    sheet = walking_sheet(walked.seam, owners, cm, unit, f"Walking the {walked.words}, for {name}", walked.named)
    return Picture(svg_text(sheet), sheet.description, tuple(_said(Walk(walked.seam, owners), walked, cm, unit)))


def _said(walk, walked, cm, unit):
    say = Say(unit)
    cm = walk.walked(cm)
    first, second = (walk.stretch(side, cm) for side in (0, 1))
    one, other = (_gone_along(walk, side, cm) for side in (0, 1))
    alike = f"{one}, and on {other}" if "together" in one + other else f"{one} and on {other} alike"
    yield f"{say(cm)} of {say(walk.length)} are walked, on {alike}."
    yield _place(walk, walked, cm, say)
    turned = walk.turned(cm)
    end = min(first.end, second.end)
    at_end = walk.turned(end)
    if walk.turned(end) < _SAME_LINE:
        yield (
            f"The {second.piece.name} need not turn while it is laid along the {first.piece.name}: both edges are one line."
        )
    elif cm > walk.length - 1e-9 and end > walk.length - 1e-9:
        yield f"From where they began together the {second.piece.name} has turned {say_number(at_end, 1)} degrees."
    else:
        back = ", for it turns back a little before" if turned > at_end + _SAME_LINE else ""
        # With several pieces on a side the turning begins anew with each.
        ending = first if first.end <= second.end else second
        where = "at the end" if end > walk.length - 1e-9 else f"where the {ending.piece.name} ends"
        yield (
            f"So far the {second.piece.name} has turned {say_number(turned, 1)} degrees against the {first.piece.name}; "
            f"{where} it will have turned {say_number(at_end, 1)}{back}."
        )


def _gone_along(walk, side, cm):
    """The pieces of one side that are walked so far, in words."""
    *before, last = dict.fromkeys(one.piece.name for one in walk.sides[side] if one.start < max(cm, 1e-6))
    return f"the {', the '.join(before)} and the {last} together" if before else f"the {last}"


def _place(walk, walked, cm, say):
    """What is at the place: an end, a notch, or how far it is to the next."""
    if cm < 1e-9:
        return "Both edges begin here together."
    if cm > walk.length - 1e-9:
        return f"Both edges end here together: {say(walk.length)} on both sides."
    mark = walk.reached(cm)
    if mark is None:
        after = min((one for one in walk.seam.marks if one > cm), default=None)
        what, at = ("next notch", after) if after else ("end", walk.length)
        return f"The {what} is {say(at - cm)} further on."
    gives_way = [f"the {before} gives way to the {after}" for at, before, after in walk.changes() if abs(at - mark) < 0.02]
    words = [words for at, words in walked.named if abs(at - mark) < 0.02]
    if gives_way:
        return f"A notch, {say(mark)} from the start: here {' and '.join(gives_way)}."
    return f"A notch on both sides, {say(mark)} from the start{f': the {words[0]}' if words else ''}."
