"""A cutting plan as it is drawn: the laid cloth with its selvedges or its fold, and the pieces on it."""

from dataclasses import dataclass

from corsetkit.drawing.canvas import Canvas, Sheet, box_area, box_run, tick
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import CAPITALS, PITCH, fitted, one_line, wrapped
from corsetkit.drawing.painting import arrow
from corsetkit.drawing.pens import (
    BOARD_TONE,
    CUT,
    CUT_PAPER,
    FOLD,
    FREE,
    GRAIN,
    HATCHING,
    HEADING,
    LINE_WORDS,
    NAME,
    RULE,
    SEWN,
    SMALL,
    Tone,
)
from corsetkit.geometry.curve import Line
from corsetkit.lay.cloth_length import quantities_said, say_bought, say_share, say_width, to_buy
from corsetkit.lay.laid_marks import Marks, letter_of, marks
from corsetkit.lay.plans import LIES, Placed, Plan
from corsetkit.units import say_length
from corsetkit.words import words_of

WORDS = words_of("lay")

CLOTH = Tone("cloth", "#e6dfd0")
SELVEDGE = Tone("selvedge", None, HATCHING, 1.2)
SIDE = 0.95
"""How far beside the cloth its words and the rule of its length reach, cm as seen."""


@dataclass(frozen=True)
class Picture:
    """A plan laid out for drawing, its lower left corner at `corner`, one cm of cloth drawn as `by` cm."""

    plan: Plan
    unit: str
    corner: complex
    by: float
    marks: tuple[Marks, ...]

    def at(self, across: float, along: float) -> complex:
        """Where a place on the cloth is drawn."""
        return self.corner + complex(across, along) * self.by

    @property
    def key(self) -> tuple[str, ...]:
        """What the picture's signs mean, in sentences."""
        told = {way for one in self.marks for way in one.placed.lies}
        short = {way for one in self.marks if one.short for way in one.placed.lies}
        said = [WORDS("key_arrows")]
        for way in LIES:
            if way in short:
                said.append(WORDS(f"key_letter_{way}", letter=letter_of(way)))
            elif way in told:
                said.append(WORDS(f"key_word_{way}"))
        if self.plan.cloth.folded:
            said.append(WORDS("key_folded"))
        bare = {one.placed.number: one.placed.name for one in self.marks if not one.named}
        if bare:
            pieces = ", ".join(f"{number} {name}" for number, name in sorted(bare.items()))
            said.append(WORDS("key_numbers", pieces=pieces))
        return tuple(said)


def picture(plan: Plan, unit: str, scale: float, corner: complex = 0j, by: float = 1.0) -> Picture:
    """The `Picture` of a plan on a drawing of this scale."""
    return Picture(plan, unit, corner, by, tuple(marks(one, scale, lambda p: corner + p * by) for one in plan.placed))


def paint(canvas: Canvas, shown: Picture) -> None:
    """Paint the cloth and all that lies on it."""
    plan = shown.plan
    with canvas.group("cloth", {"layer": plan.layer, "length": say_length(plan.length, shown.unit)}):
        _cloth(canvas, shown)
    for one in shown.marks:
        placed = one.placed
        with canvas.group("piece", {"piece": placed.number, "name": placed.name, "copy": placed.copy}):
            canvas.area(one.path, CUT_PAPER)
            canvas.line(one.path, FREE, {"lies": placed.said})
            if one.arrow:
                foot, head = one.arrow
                tick(canvas, foot, head, GRAIN)
                arrow(canvas, head, (head - foot) / abs(head - foot), GRAIN, 0.2)
            for at, text, letter, turn in one.label:
                canvas.words(at, text, letter, "middle", turn)
    with canvas.group("edges"):
        _edges(canvas, shown)
        _length(canvas, shown)


def _cloth(canvas: Canvas, shown: Picture) -> None:
    plan = shown.plan
    cloth, end = plan.cloth, to_buy(plan.length, shown.unit)
    low, high = shown.at(0, 0), shown.at(cloth.span, end)
    box_area(canvas, (low.real, low.imag, high.real, high.imag), CLOTH)
    bands = ((cloth.high, cloth.span),) if cloth.folded else ((0, cloth.low), (cloth.high, cloth.span))
    for left, right in bands:
        if right - left > 1e-9:
            a, b = shown.at(left, 0), shown.at(right, end)
            fill(canvas, box_run(a.real, a.imag, b.real, b.imag), SELVEDGE)


def _edges(canvas: Canvas, shown: Picture) -> None:
    """Selvedges, fold and ends of the cloth, over the pieces: a piece at the fold has none of its own there."""
    plan, scale = shown.plan, canvas.scale
    cloth, end = plan.cloth, to_buy(plan.length, shown.unit)
    for across, pen, text, side in (
        (0, FOLD if cloth.folded else SEWN, WORDS("fold" if cloth.folded else "selvedge"), -1),
        (cloth.span, SEWN, WORDS("selvedge"), 1),
    ):
        canvas.line((Line(shown.at(across, 0), shown.at(across, end)),), pen)
        beside = shown.at(across, end / 2) + (0.16 if side < 0 else 0.16 + 0.073 * LINE_WORDS.size) * side * scale
        canvas.words(beside, text, LINE_WORDS, "middle", 90.0)
    for along in (0, end):
        tick(canvas, shown.at(0, along), shown.at(cloth.span, along), FREE)


def _length(canvas: Canvas, shown: Picture) -> None:
    """The rule of the length that is taken up, at the right of the cloth."""
    plan, scale = shown.plan, canvas.scale
    foot, head = (shown.at(plan.cloth.span, along) + 0.58 * scale for along in (0, plan.length))
    tick(canvas, foot, head, RULE)
    for end, tangent in ((foot, -1j), (head, 1j)):
        arrow(canvas, end, tangent, RULE, 0.18)
        tick(canvas, end - 0.12 * scale, end + 0.12 * scale, RULE)
    at = (foot + head) / 2 + (0.12 + CAPITALS * NAME.size / 10) * scale
    canvas.words(at, say_length(plan.length, shown.unit), NAME, "middle", 90.0)


_WIDE, _HIGH, _LEAST = 17.0, 13.0, 3.5
"""The cloth is seen at most so wide and so high, cm, and never larger than one to so many."""
_MARGIN = 0.6


def lay_sheet(plan: Plan, unit: str = "in", wearer: str = "") -> Sheet:
    """The plan on one sheet: the cloth with what lies on it, and below it what to buy and what the signs mean."""
    cloth, bought = plan.cloth, to_buy(plan.length, unit)
    scale = max(cloth.span / _WIDE, bought / _HIGH, _LEAST)
    shown = picture(plan, unit, scale)
    left, width = -0.5 * scale, max(cloth.span + (SIDE + 0.5) * scale, 15.0 * scale)
    margin = _MARGIN * scale
    heading = title(plan, unit, wearer)
    lines = [
        (text, letter)
        for letter, said in ((CUT, quantities_said(plan, unit)), (SMALL, shown.key))
        for text in wrapped(" ".join(said), letter, width, scale)
    ]
    row = PITCH * CUT.size / 10 * scale
    low, high = -(len(lines) + 1.0) * row, bought + 1.0 * scale

    def painted(canvas: Canvas) -> None:
        box_area(canvas, (left - margin, low - margin, left + width + margin, high + margin), BOARD_TONE)
        canvas.words(complex(left, bought + 0.5 * scale), fitted(heading, HEADING, width, scale), HEADING, "start")
        paint(canvas, shown)
        for number, (text, letter) in enumerate(lines, 1):
            canvas.words(complex(left, -(number + 0.4) * row), text, letter, "start")

    return Sheet(
        complex(left - margin, low - margin),
        complex(left + width + margin, high + margin),
        heading,
        description(plan, unit),
        painted,
        scale,
    )


def title(plan: Plan, unit: str, wearer: str = "") -> str:
    """The plan's heading."""
    name = one_line(wearer)
    return WORDS(
        ("title_layer_for" if name else "title_layer") if plan.layer else ("title_for" if name else "title"),
        layer=plan.layer,
        wearer=name,
        bought=say_bought(plan.length, unit),
        width=say_width(plan.cloth, unit),
    )


def description(plan: Plan, unit: str) -> str:
    """The plan in words, for those who do not see it: each piece with its lowest corner's place and how it lies."""

    def place(one: Placed) -> str:
        across, along = min(p.real for p in one.outline), min(p.imag for p in one.outline)
        return WORDS(
            "placed_from_fold" if folded else "placed_from_selvedge",
            piece=f"{one.number} {one.name}",
            across=say_length(across, unit),
            along=say_length(along, unit),
            lies=one.said,
        )

    folded = plan.cloth.folded
    return WORDS(
        "described_folded" if folded else "described_single",
        length=say_length(plan.length, unit),
        share=say_share(plan.used),
        pieces="; ".join(map(place, plan.placed)),
    )
