"""The plain lay: as a drawing that keeps its size, as a table's picture, and as the guess of the lesson on sewing."""

from dataclasses import dataclass, replace

from corsetkit.drawing.canvas import Sheet, box_area
from corsetkit.drawing.lettering import wrapped
from corsetkit.drawing.pens import BOARD_TONE, HEADING
from corsetkit.drawing.svg import svg_text
from corsetkit.finish.finished import CLOTHS, SHELL
from corsetkit.lay.checking import refuse_crossed
from corsetkit.lay.cloth import FOLDED, SINGLE, Cloth
from corsetkit.lay.cloth_length import About, quantities_said, say_width, to_buy
from corsetkit.lay.drawing import SIDE, description, paint, title
from corsetkit.lay.drawing import Picture as Laid
from corsetkit.lay.drawing import picture as laid_out
from corsetkit.lay.items import items_of
from corsetkit.lay.laid_marks import marks
from corsetkit.lay.planning import planned_in_rows
from corsetkit.lay.templates import templates
from corsetkit.quantity import declared, quantities
from corsetkit.style import COURSE
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.picture import Picture
from corsetkit.units import CM_PER_INCH, Say
from corsetkit.words import words_of

WORDS = words_of("09_sewing")

_WIDE, _HIGH = 15.0, 13.0
"""Cloth is seen at most so wide and so long, cm."""
_LINE = 0.55
"""From one line of a heading to the next, cm as seen."""
USUAL = {"cm": 137.0, "in": 54 * CM_PER_INCH}
"""The width that a shop most often has, in round numbers of either unit; common practice, no source."""
_OF_CLOTH = {one.name: one for one in quantities(Cloth)}


@dataclass(frozen=True)
class OnCloth:
    """Which cloth is laid, how wide it is, and how it lies."""

    width: float = declared(
        _OF_CLOTH["width"].meaning, unit="cm", low=104, high=165, step=1, default=USUAL["cm"], source=COURSE
    )
    laid: str = declared(
        _OF_CLOTH["laid"].meaning,
        unit="choice",
        choices=_OF_CLOTH["laid"].choices,
        choice_words=_OF_CLOTH["laid"].choice_words,
        default=SINGLE,
        source=COURSE,
    )
    cloth: str = declared(
        WORDS("cloth_control"), unit="choice", choices=CLOTHS, choice_words=CLOTHS, default=SHELL, source=COURSE
    )


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
            known,
            placed=placed,
            path=tuple(one.moved(lambda p: p + step) for one in known.path),
            label=tuple((at + step, *more) for at, *more in known.label),
            arrow=tuple(p + step for p in known.arrow),
        )


WIDE, NARROW = 150.0, 115.0
"""The guess goes from the one width to the other, cm."""


class PlainPictures:
    """Pictures of the plain lays of the desk's wearer; what a finished pattern's cloth looks like is laid out once."""

    def __init__(self, drafts):
        self.drafts = drafts
        self._lays = {}
        self._finished = None

    def of(self, values: dict) -> Picture:
        """The picture for values of style and finish, and `width`, `laid` and `cloth` among them."""
        unit = self.drafts.desk.record.unit
        _, lays = self.lays(values, values.get("cloth", SHELL))
        plan = lays.plan(values.get("width", USUAL[unit]), values.get("laid", SINGLE))
        sheet, key = lays.sheet(plan)
        # What belongs to the buying is told where the closer lay is.
        said = quantities_said(plan, unit, (About.IN_ROWS, About.ROWS_LONGER, About.PRESS))
        return Picture(svg_text(sheet), sheet.description, (*said, *key))

    def lays(self, values, cloth):
        name, finished = self.drafts.finished(values)
        if finished is not self._finished:
            self._finished, self._lays = finished, {}
        asked = cloth, self.drafts.desk.record.unit, name
        if asked not in self._lays:
            self._lays[asked] = PlainLays(finished, cloth, asked[1], name)
        return name, self._lays[asked]

    def asked(self, unit: str) -> Asked:
        """How long the plain lay of the shell is on a narrower cloth."""
        name, lays = self.lays(self.drafts.now(), SHELL)
        wide, narrow = (lays.plan(width, SINGLE) for width in (WIDE, NARROW))
        say = Say(unit)
        shared = wide.length * WIDE / NARROW
        wider, narrower = (say_width(one.cloth, unit) for one in (wide, narrow))
        slips = [
            (shared, WORDS("slip_shared", wider=wider, narrower=narrower)),
            (narrow.area / narrow.cloth.room, WORDS("slip_filled")),
            (wide.length, WORDS("slip_same")),
        ]

        def move(share):
            sheet, _ = lays.sheet(lays.plan(WIDE + (NARROW - WIDE) * share, SINGLE))
            return Picture(svg_text(sheet), sheet.description)

        return Asked(
            WORDS("guess", name=name, wider=wider, length=say(wide.length), narrower=narrower),
            WORDS("guess_label"), "cm", wide.length, narrow.length, 4.0,
            tuple(one for one in slips if abs(one[0] - narrow.length) > 4.0),
            WORDS("guess_why"),
            move,
        )  # fmt: skip
