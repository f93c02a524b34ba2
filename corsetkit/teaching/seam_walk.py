"""Walking a seam of the wearer's pattern, with a slider: what is drawn and what is said of the place reached."""

from dataclasses import dataclass, replace

from corsetkit.quantity import declared, quantities
from corsetkit.showing.painting import owners_of
from corsetkit.showing.svg import svg_text
from corsetkit.showing.walking import Walk
from corsetkit.showing.walking_sheet import walking_sheet
from corsetkit.teaching.picture import Picture
from corsetkit.units import CM_PER_INCH, say_length, say_number

_LONGEST = 45.0
"""What the slider offers where no wearer's seam is known yet, cm."""
_PAST_THE_END = CM_PER_INCH / 8
"""So far the slider goes beyond the seam's end, so that its last stop is the end, in whatever steps it moves."""
_SAME_LINE = 0.05


@dataclass(frozen=True)
class Walked:
    """How far a seam is walked."""

    walked: float = declared(
        "how far from its upper end the seam is walked, on both sides at once", unit="cm", low=0, high=_LONGEST, step=0.25,
        default=4 * CM_PER_INCH)


@dataclass(frozen=True)
class Seam:
    """A seam to walk: the pattern's own, what people call it, and (cm from its start, words) of its named notches."""

    seam: object
    words: str
    named: tuple = ()


def walked_to(length):
    """The quantity of `Walked` for a seam that long, cm."""
    (one,) = quantities(Walked)
    return (replace(one, high=min(length + _PAST_THE_END, _LONGEST), default=min(one.default, length)),)


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


def walk_picture(name, pattern, walked, cm, unit):
    """The picture of the `Seam` walked for `cm` of the wearer's pattern, with what is to be said."""
    owners = owners_of(pattern.pieces)
    sheet = walking_sheet(walked.seam, owners, cm, unit, f"Walking the {walked.words}, for {name}", walked.named)
    return Picture(svg_text(sheet), sheet.description, tuple(_said(Walk(walked.seam, owners), walked, cm, unit)))


def _said(walk, walked, cm, unit):
    say = lambda length: say_length(length, unit)  # noqa: E731
    cm = walk.walked(cm)
    first, second = (walk.stretch(side, cm) for side in (0, 1))
    yield (f"{say(cm)} of {say(walk.length)} are walked, on the {first.piece.name} and on the {second.piece.name} alike.")
    yield _place(walk, walked, cm, say)
    turned = walk.turned(cm)
    end = min(first.end, second.end)
    if walk.turned(end) < _SAME_LINE:
        yield (f"The {second.piece.name} need not turn while it is laid along the {first.piece.name}: both edges are one "
               "line.")
    else:
        yield (f"So far the {second.piece.name} has turned {say_number(turned, 1)} degrees against the {first.piece.name}; "
               f"at the end it will have turned {say_number(walk.turned(end), 1)}.")


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
