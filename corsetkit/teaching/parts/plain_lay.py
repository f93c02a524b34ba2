"""The plain lay as a drawing that keeps its size while the cloth changes: every piece in its row, seen at once."""

from dataclasses import dataclass, replace

from corsetkit.lay.checking import refuse_crossed
from corsetkit.lay.cloth import FOLDED, SINGLE, Cloth
from corsetkit.lay.drawing import description, title
from corsetkit.lay.items import items_of
from corsetkit.lay.laid_marks import marks
from corsetkit.lay.drawing import SIDE, Picture as Laid, paint, picture as laid_out
from corsetkit.lay.planning import planned_in_rows
from corsetkit.lay.cloth_length import to_buy
from corsetkit.lay.templates import templates
from corsetkit.finish.finished import CLOTHS, SHELL
from corsetkit.quantity import declared, quantities
from corsetkit.drawing.canvas import box_area
from corsetkit.drawing.lettering import wrapped
from corsetkit.drawing.pens import BOARD_TONE, HEADING
from corsetkit.drawing.canvas import Sheet
from corsetkit.style import COURSE
from corsetkit.units import CM_PER_INCH

_WIDE, _HIGH = 15.0, 13.0
"""Cloth is seen at most so wide and so long, cm."""
_LINE = 0.55
"""From one line of a heading to the next, cm as seen."""
USUAL = {"cm": 137.0, "in": 54 * CM_PER_INCH}
"""The width that a shop most often has, in round numbers of either unit; common practice, no source."""


@dataclass(frozen=True)
class OnCloth:
    """Which cloth is laid, how wide it is, and how it lies."""

    width: float = declared("how wide the cloth is, from selvedge to selvedge", unit="cm", low=104, high=165, step=1,
                            default=USUAL["cm"], source=COURSE)
    laid: str = declared("whether the cloth lies single, or folded along its length so that two layers are cut at once",
                         unit="choice", choices=(SINGLE, FOLDED), choice_words=("single", "folded"), default=SINGLE,
                         source=COURSE)
    cloth: str = declared("which cloth of the corset is cut", unit="choice", choices=CLOTHS, choice_words=CLOTHS,
                          default=SHELL, source=COURSE)


def controls(unit: str):
    """The quantities of `OnCloth`, the width starting at what a shop calls usual in this unit."""
    return tuple(replace(one, default=USUAL[unit]) if one.name == "width" else one for one in quantities(OnCloth))


def plan_sheet(plan, unit, name):
    """A plan's sheet as large as its cloth allows, and what its signs mean in sentences."""
    bought = to_buy(plan.length, unit)
    scale = max(plan.cloth.span / _WIDE, bought / _HIGH)
    shown = laid_out(plan, unit, scale)
    return _sheet(shown, plan.cloth.span, bought, scale, name), shown.key


def _sheet(shown, wide, long, scale, name):
    """The laid cloth with its heading, in a frame for cloth so wide and so long; its words stand beside the drawing."""
    plan, unit = shown.plan, shown.unit
    low = complex(-SIDE * scale, -0.6 * scale)
    right, room = wide + (SIDE + 0.6) * scale, wide + (2 * SIDE + 0.6 - 1.0) * scale
    heading = title(plan, unit, name)
    # The narrowest cloth of a frame would have the heading cut off: it goes on in a second line.
    lines = wrapped(heading, HEADING, room, scale)
    high = complex(right, long + (1.5 + (len(lines) - 1) * _LINE) * scale)

    def painted(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        at = complex(low.real + 0.5 * scale, high.imag - 0.85 * scale)
        for place, words in enumerate(lines):
            canvas.words(at - place * _LINE * 1j * scale, words, HEADING, "start")
        paint(canvas, shown)

    return Sheet(low, high, heading, f"{heading}. {description(plan, unit)}", painted, scale)


class PlainLays:
    """The plain lays of one finished pattern's cloth, drawn in one frame; what a piece looks like is laid out once."""

    def __init__(self, finished, layer, unit, name):
        self.items = items_of(finished, layer)
        refuse_crossed(self.items)
        self.layer, self.unit, self.name = layer, unit, name
        self._marks = {}
        (width, *_) = quantities(OnCloth)
        self.scale, self._widest = width.high / _WIDE, width.high
        # The frame is as long as the longest plain lay that the sliders reach.
        narrow = [self.plan(width.low, laid) for laid in (SINGLE, FOLDED)]
        self._longest = max(to_buy(one.length, unit) for one in narrow)

    def plan(self, width, laid):
        cloth = Cloth(width=width, laid=laid)
        return planned_in_rows(templates(self.items, cloth), self.items, cloth, self.layer)

    def sheet(self, plan):
        """The plan's sheet, and what its signs mean in sentences."""
        shown = Laid(plan, self.unit, 0j, 1.0, tuple(map(self._marked, plan.placed)))
        return _sheet(shown, self._widest, self._longest, self.scale, self.name), shown.key

    def _marked(self, placed):
        """The marks of a placed piece: laid out where it first lay, and slid."""
        key = placed.number, placed.mirrored, placed.at_fold
        if key not in self._marks:
            self._marks[key] = marks(placed, self.scale, lambda p: p)
        known = self._marks[key]
        step = placed.at - known.placed.at
        return replace(
            known, placed=placed, run=tuple(one.moved(lambda p: p + step) for one in known.run),
            label=tuple((at + step, *more) for at, *more in known.label), arrow=tuple(p + step for p in known.arrow))
