"""A cutting plan as a sheet for the screen, at the size the cloth allows."""

from corsetkit.drawing.canvas import box_area
from corsetkit.drawing.lettering import PITCH, fitted, one_line, wrapped
from corsetkit.drawing.pens import BOARD_TONE, CUT, HEADING, SMALL
from corsetkit.drawing.canvas import Sheet
from corsetkit.units import say_length
from corsetkit.lay.laid_marks import words_of
from corsetkit.lay.picture import SIDE, paint, picture
from corsetkit.lay.quantities import quantities_said, say_bought, say_share, say_width, to_buy

_WIDE, _HIGH, _LEAST = 17.0, 13.0, 3.5
"""The cloth is seen at most so wide and so high, cm, and never larger than one to so many."""
_MARGIN = 0.6


def lay_sheet(plan, unit="in", wearer=""):
    """The plan on one sheet: the cloth with what lies on it, and below it what to buy and what the signs mean."""
    cloth, bought = plan.cloth, to_buy(plan.length, unit)
    scale = max(cloth.span / _WIDE, bought / _HIGH, _LEAST)
    shown = picture(plan, unit, scale)
    left, width = -0.5 * scale, max(cloth.span + (SIDE + 0.5) * scale, 15.0 * scale)
    margin = _MARGIN * scale
    heading = title(plan, unit, wearer)
    lines = [(text, letter) for letter, said in ((CUT, quantities_said(plan, unit)), (SMALL, shown.key))
             for text in wrapped(" ".join(said), letter, width, scale)]
    row = PITCH * CUT.size / 10 * scale
    low, high = -(len(lines) + 1.0) * row, bought + 1.0 * scale

    def painted(canvas):
        box_area(canvas, (left - margin, low - margin, left + width + margin, high + margin), BOARD_TONE)
        canvas.words(complex(left, bought + 0.5 * scale), fitted(heading, HEADING, width, scale), HEADING, "start")
        paint(canvas, shown)
        for number, (text, letter) in enumerate(lines, 1):
            canvas.words(complex(left, -(number + 0.4) * row), text, letter, "start")

    return Sheet(complex(left - margin, low - margin), complex(left + width + margin, high + margin), heading,
                 description(plan, unit), painted, scale)


def title(plan, unit, wearer=""):
    """The plan's heading."""
    what = f"Cutting plan, {plan.layer}" if plan.layer else "Cutting plan"
    name = one_line(wearer)
    return f"{what}{f' for {name}' if name else ''}: {say_bought(plan.length, unit)}, {say_width(plan.cloth, unit)} wide"


def description(plan, unit):
    """The plan in words, for those who do not see it: each piece with its lowest corner's place and how it lies."""
    def place(one):
        across, along = min(p.real for p in one.outline), min(p.imag for p in one.outline)
        said = ", ".join(words_of(one)) or "as drawn"
        where = f"{say_length(across, unit)} from the {edge} and {say_length(along, unit)} up"
        return f"{one.number} {one.name}, {where}, {said}"

    edge = "fold" if plan.cloth.folded else "left selvedge"
    return (f"Cloth laid {plan.cloth.laid}, {say_length(plan.length, unit)} taken up, {say_share(plan.used)} used. "
            f"{'; '.join(map(place, plan.placed))}.")
