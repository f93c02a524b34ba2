"""The end of a seam, opened out and pressed: which end, how far, and what is said of it."""

from dataclasses import dataclass

from corsetkit.quantity import declared, quantities
from corsetkit.showing.lessons.corner_folded import MANY, NOTHING, seam_corners, sticking_out
from corsetkit.showing.lessons.corner_sheet import corner_sheet
from corsetkit.drawing.svg import svg_text
from corsetkit.teaching.parts.finishing import Finishing, choices_in
from corsetkit.teaching.picture import Picture
from corsetkit.units import say_length, say_number


@dataclass(frozen=True)
class Pressed:
    """How the two pieces and their allowances lie."""

    opened: float = declared(
        "how far the second piece is opened out: at 0 it lies under the first, as they were sewn", unit="degrees", low=0,
        high=180, step=5, default=0)
    first_allowance: float = declared(
        "how far the first piece's allowance is pressed over onto it: at 0 it lies as it was sewn", unit="degrees", low=0,
        high=180, step=5, default=0)
    second_allowance: float = declared(
        "how far the second piece's allowance is pressed over to the first; it takes the first one's along", unit="degrees",
        low=0, high=180, step=5, default=0)
    seam_end: int = declared("which seam's end you look at: 1 is the least square one", unit="count", low=1, high=MANY, step=1,
                             default=1)
    plain_corner: bool = declared("whether both cutting lines are simply carried on to where they meet", unit="yes or no",
                                  default=False)


class Corners:
    """The seam ends of the drafts' wearer, found anew only where her pattern or an allowance is another."""

    def __init__(self, drafts: Finishing):
        self.drafts = drafts
        self._asked = self._found = None

    def picture(self, values: dict) -> Picture:
        """The picture for values of style, finish and `Pressed`."""
        lie = Pressed(**{one.name: values[one.name] for one in quantities(Pressed) if one.name in values})
        (name, pattern), choices = self.drafts.pattern(values), choices_in(values)
        if self._asked is None or self._asked[0] is not pattern or self._asked[1] != choices:
            self._asked, self._found = (pattern, choices), seam_corners(pattern, choices)
        words, seam, corners = self._found[min(lie.seam_end, len(self._found)) - 1]
        unit = self.drafts.desk.record.unit
        told = tuple(_said(words, corners, lie, unit))
        title = f"{words[:1].upper()}{words[1:]}, from inside, for {name}"
        # Seen from inside the second one's lies below: what swings it over swings the first one's before it.
        pressed = max(lie.first_allowance, lie.second_allowance), lie.second_allowance
        sheet = corner_sheet(corners, seam, lie.opened, pressed, lie.plain_corner, unit, title, f"{title}. {told[0]}")
        return Picture(svg_text(sheet), sheet.description, told)


def _said(words, corners, lie, unit):
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    first, second = corners
    yield (f"At this end the {first.piece.name} has a corner of {say_number(first.angle, 1)} degrees, the "
           f"{second.piece.name} one of {say_number(second.angle, 1)}.")
    yield f"The seam's allowance is {say(first.width)}; that of the {first.later}, sewn later, is {say(first.later_width)}."
    reach = [one.reach(lie.plain_corner) for one in corners]
    longer, shorter = (first, second) if reach[0] > reach[1] else (second, first)
    if abs(reach[0] - reach[1]) < NOTHING:
        yield "Right sides together, the outer borders of the two allowances end at the same place."
    else:
        yield (f"Right sides together, the allowances do not end alike: that of the {longer.piece.name} goes on "
               f"{say(abs(reach[0] - reach[1]))} farther than that of the {shorter.piece.name}.")
    flap = first.plain if lie.plain_corner else first.flap
    out = sticking_out([complex(-p.real, p.imag) for p in flap], first)
    if out < NOTHING:
        yield f"Pressed onto the {first.piece.name}, its allowance lies within the cutting line of the {first.later}."
    else:
        yield (f"Pressed onto the {first.piece.name}, its allowance sticks out by {say(out)} beyond the cutting line of the "
               f"{first.later}: it would show, or have to be cut off.")
