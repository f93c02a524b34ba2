"""Walking a seam of the wearer's pattern, with a slider: what is drawn and what is said of the place reached."""

from dataclasses import dataclass, replace

from corsetkit.drawing.svg import svg_text
from corsetkit.quantity import declared, quantities
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.listed import listed
from corsetkit.teaching.shared.walking import Walk, walking_sheet
from corsetkit.units import CM_PER_INCH, Say, round_to_sixteenth, say_number
from corsetkit.words import words_of

SHARED = words_of("shared")

LONGEST = 45.0
"""What the slider offers where no wearer's seam is known yet, cm."""
_AT_THE_END = 0.08
"""A place this near to the seam's end, cm, is the end: a slider stops at whole sixteenths of an inch or whole millimetres."""
_SAME_LINE = 0.05


@dataclass(frozen=True)
class Walked:
    """How far a seam is walked."""

    walked: float = declared(SHARED("walk_control"), unit="cm", low=0, high=LONGEST, step=0.125, default=4 * CM_PER_INCH)


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
    length = max(walked.seam.lengths)
    cm = length if cm > length - _AT_THE_END else cm
    sheet = walking_sheet(walked.seam, cm, unit, SHARED("walk_title", seam=walked.words, name=name), walked.named)
    return Picture(svg_text(sheet), sheet.description, tuple(_said(Walk(walked.seam), walked, cm, unit)))


def _said(walk, walked, cm, unit):
    say = Say(unit)
    cm = walk.walked(cm)
    first, second = (walk.stretch(side, cm) for side in (0, 1))
    pieces = [_walked_pieces(walk, side, cm) for side in (0, 1)]
    one, other = map(_gone_along, pieces)
    yield SHARED(
        "walk_told" if any(len(names) > 1 for names in pieces) else "walk_told_alike",
        walked=say(cm),
        whole=say(walk.length),
        one=one,
        other=other,
    )
    yield _place(walk, walked, cm, say)
    turned = walk.turned(cm)
    end = min(first.end, second.end)
    at_end = walk.turned(end)
    if walk.turned(end) < _SAME_LINE:
        yield SHARED("walk_one_line", moving=second.piece.name, still=first.piece.name)
    elif cm > walk.length - 1e-9 and end > walk.length - 1e-9:
        yield SHARED("walk_turned_in_all", moving=second.piece.name, angle=say_number(at_end, 1))
    else:
        # With several pieces on a side the turning begins anew with each.
        ending = first if first.end <= second.end else second
        at = SHARED("walk_at_end") if end > walk.length - 1e-9 else SHARED("walk_where_ends", piece=ending.piece.name)
        yield SHARED(
            "walk_turned_back" if turned > at_end + _SAME_LINE else "walk_turned",
            moving=second.piece.name,
            still=first.piece.name,
            angle=say_number(turned, 1),
            where=at,
            whole=say_number(at_end, 1),
        )


def _walked_pieces(walk, side, cm):
    """The names of the pieces of one side that are walked so far, in their order."""
    return list(dict.fromkeys(one.piece.name for one in walk.sides[side] if one.start < max(cm, 1e-6)))


def _gone_along(names):
    """The same in words."""
    *before, last = names
    if not before:
        return SHARED("the_piece", piece=last)
    return SHARED("walk_together", pieces=", ".join(SHARED("the_piece", piece=one) for one in before), last=last)


def _place(walk, walked, cm, say):
    """What is at the place: an end, a notch, or how far it is to the next."""
    if cm < 1e-9:
        return SHARED("walk_begins")
    if cm > walk.length - 1e-9:
        return SHARED("walk_ends", whole=say(walk.length))
    mark = walk.reached(cm)
    if mark is None:
        after = min((one for one in walk.seam.marks if one > cm), default=None)
        return SHARED("walk_next_notch", on=say(after - cm)) if after else SHARED("walk_next_end", on=say(walk.length - cm))
    gives_way = [
        SHARED("walk_gives_way", before=before, after=after) for at, before, after in walk.changes() if abs(at - mark) < 0.02
    ]
    if gives_way:
        return SHARED("walk_notch_of_pieces", at=say(mark), change=listed(gives_way))
    words = [words for at, words in walked.named if abs(at - mark) < 0.02]
    if words:
        return SHARED("walk_notch_named", at=say(mark), name=words[0])
    return SHARED("walk_notch", at=say(mark))
