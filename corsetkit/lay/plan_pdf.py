"""Cutting plans on paper, one page each, in scale, with their pieces in a table."""

import datetime
from collections import Counter
from collections.abc import Iterable, Sequence
from os import PathLike
from pathlib import Path

from corsetkit.drawing.canvas import Canvas, Sheet, box_area, tick
from corsetkit.drawing.labels import Text
from corsetkit.drawing.lettering import PITCH, fitted, one_line, text_width, wrapped
from corsetkit.drawing.pens import CUT, FREE, HEADING, NAME, RULE, SMALL, SOLID, Letter
from corsetkit.files import write_whole
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.cloth_length import quantities_said, to_buy
from corsetkit.lay.drawing import SIDE, description, paint, picture, title
from corsetkit.lay.plans import Placed, Plan
from corsetkit.printing.draft_print import said_date, target
from corsetkit.printing.paper import Paper, paper_named
from corsetkit.printing.pdf import pdf_bytes
from corsetkit.units import CM_PER_INCH, check_unit, say_length
from corsetkit.words import words_of

WORDS = words_of("lay")

RATIOS = (4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200)
"""One to so many: the largest drawing that fits is taken."""
BAR = {"cm": 50.0, "in": 20 * CM_PER_INCH}
"""How long the scale bar is, cm of cloth."""
_ROW = PITCH * CUT.size / 10 * 1.05
_NAMES, _EDGE, _BESIDE, _BAR_ROW = 6.2, 0.1, 0.55, 1.0


def write_lay_pdf(
    plans: Sequence[Plan],
    path: str | PathLike[str],
    paper: str = "A4",
    unit: str = "in",
    wearer: str = "",
    date: datetime.date | str | None = None,
) -> Path:
    """Write plans as a PDF, one page each, whole or not at all, and give back its path.

    `date` is a date, a text, or None for today; with a given one the same plans give the same bytes.

    Raises:
        CorsetkitError: for an unknown paper or unit, and where the file cannot be written.
    """
    kind, unit, file = paper_named(paper), check_unit(unit), target(path, "cutting.pdf")
    said = one_line(said_date(date))
    pages = [lay_page(plan, kind, unit, wearer, said) for plan in plans]
    if len(pages) == 1:
        named = title(plans[0], unit, wearer)
    else:
        named = WORDS("titles_for" if wearer else "titles", wearer=wearer)
    write_whole(file, pdf_bytes(pages, kind, named))
    return file


def lay_page(plan: Plan, paper: Paper, unit: str, wearer: str = "", said_date: str = "") -> Sheet:
    """The page as a sheet of the paper's printable window."""
    width, height = paper.window.real, paper.window.imag
    table, figures = table_of(plan), _lines(quantities_said(plan, unit), CUT, width)
    above = 1.0 + 0.55 + len(figures) * _ROW + 0.35
    # The key's length hangs on the labels and so on the ratio: room is kept for the longest there is.
    below = _BAR_ROW + 5 * _ROW + (len(table) + 1.6) * _ROW
    ratio = _ratio(plan, unit, width - 2 * _BESIDE - SIDE, height - above - below)
    by = 1 / ratio
    span, bought = plan.cloth.span * by, to_buy(plan.length, unit) * by
    foot = height - above - bought
    corner = complex(max((width - span - SIDE) / 2, _BESIDE), foot)
    drawn = picture(plan, unit, 1.0, corner, by)
    key = _lines(drawn.key, SMALL, width)

    def painted(canvas: Canvas) -> None:
        _text(canvas, height - 0.7, [(fitted(title(plan, unit, wearer), HEADING, width - 0.2, 1.0), HEADING)])
        told = (WORDS("in_scale", ratio=ratio), said_date, paper.name)
        _text(canvas, height - 1.25, [(" \u00b7 ".join(filter(None, told)), SMALL)])
        _text(canvas, height - 1.75, figures)
        paint(canvas, drawn)
        _bar(canvas, complex(corner.real, foot - 0.75), unit, by, width)
        _text(canvas, foot - _BAR_ROW - _ROW, key)
        _table(canvas, foot - _BAR_ROW - (len(key) + 1.8) * _ROW, table, width)

    return Sheet(0j, paper.window, f"{title(plan, unit, wearer)}, 1:{ratio}", description(plan, unit), painted, 1.0)


def _ratio(plan: Plan, unit: str, width: float, height: float) -> int:
    length = to_buy(plan.length, unit)
    fits = (ratio for ratio in RATIOS if plan.cloth.span / ratio <= width and length / ratio <= height)
    return next(fits, RATIOS[-1])


def table_of(plan: Plan) -> tuple[tuple[str, str], ...]:
    """Each number once: (number and name, how it is laid in words)."""
    names = {one.number: one.name for one in plan.placed}
    return tuple(
        (f"{number} {name}", _laid([one for one in plan.placed if one.number == number], plan.cloth))
        for number, name in names.items()
    )


def _laid(ones: Sequence[Placed], cloth: Cloth) -> str:
    laid = Counter(one.said for one in ones)
    said = "; ".join(WORDS("laid", count=count, lies=lies) for lies, count in laid.items())
    if not cloth.folded:
        return said
    return WORDS("laid_opens_out" if ones[0].at_fold else "laid_both_layers", laid=said)


def _table(canvas: Canvas, y: float, table: Iterable[tuple[str, str]], width: float) -> None:
    with canvas.group("table"):
        canvas.words(complex(_EDGE, y), WORDS("piece"), NAME, "start")
        canvas.words(complex(_NAMES, y), WORDS("how_laid"), NAME, "start")
        tick(canvas, complex(_EDGE, y - 0.12), complex(width - _EDGE, y - 0.12), FREE)
        for name, said in table:
            y -= _ROW
            canvas.words(complex(_EDGE, y - 0.1), fitted(name, CUT, _NAMES - 0.3, 1.0), CUT, "start")
            canvas.words(complex(_NAMES, y - 0.1), fitted(said, CUT, width - _NAMES - _EDGE, 1.0), CUT, "start")


def _bar(canvas: Canvas, at: complex, unit: str, by: float, width: float) -> None:
    """The scale bar: half of it filled, so that it is seen as a bar."""
    length = BAR[unit]
    words = WORDS("bar", length=say_length(length, unit))
    # Under narrow cloth it may need more room than there is to the right of the cloth's own corner.
    at -= max(0.0, at.real + length * by + 0.25 + text_width(words, CUT, 1.0) - width)
    end, half = at + length * by, at + length * by / 2
    with canvas.group("scale-bar"):
        tick(canvas, at, end, RULE)
        box_area(canvas, (at.real, at.imag, half.real, at.imag + 0.12), SOLID)
        for place in (at, half, end):
            tick(canvas, place, place + 0.2j, RULE)
        canvas.words(end + 0.25, words, CUT, "start")


def _lines(sentences: Iterable[str], letter: Letter, width: float) -> list[Text]:
    return [(text, letter) for text in wrapped(" ".join(sentences), letter, width - 2 * _EDGE, 1.0)]


def _text(canvas: Canvas, y: float, lines: Iterable[Text]) -> None:
    for text, letter in lines:
        canvas.words(complex(_EDGE, y), text, letter, "start")
        y -= _ROW
