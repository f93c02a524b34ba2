"""What the printed test square tells: whether the print is true, and at which scale to print again;
in words and as a table."""

import math
import numbers
import re

from corsetkit.drawing.pens import CUT, NAME
from corsetkit.errors import CorsetkitError
from corsetkit.printing.cover import paint_entries
from corsetkit.printing.page_rows import LINE
from corsetkit.units import CM_PER_INCH, say_length, shown
from corsetkit.words import words_of

WORDS = words_of("printing")

SQUARE = 100.0
"""A side of the solid test square, mm."""
TRUE = 0.5
"""A print whose square is off by no more, mm, is true: course convention."""
LEAST, MOST = 50.0, 200.0
"""A square that measures less or more, mm, is no misprint but a misreading: course convention."""

_DASHED = 40 * CM_PER_INCH
_GIVEN = re.compile(r"([0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)\s*(mm|millimetres?|millimeters?)?", re.IGNORECASE)


def scale_for(measured_mm, meant_mm=SQUARE):
    """The scale in percent that makes a side true which was meant to be `meant_mm` and came out as `measured_mm`."""
    return 100.0 * meant_mm / measured_mm


def scale_sentence(measured_mm):
    """What to do, in words, where a side of the solid test square measures so many millimetres.

    Args:
        measured_mm: a number, or a text such as "97", "97 mm" or "97,5".

    Raises:
        CorsetkitError: for what is no length, or cannot be a side of that square.
    """
    side = _number(measured_mm)
    if side is None:
        raise CorsetkitError(
            f"the test square is {shown(measured_mm)}, which is not a length: measure a side of the solid "
            "square and give it in millimetres, such as 97"
        )
    if not LEAST <= side <= MOST:
        others = ((10, "centimetres"), (10 * CM_PER_INCH, "inches"))
        remedy = next(
            (f"; it looks like {words}" for factor, words in others if 0.9 * SQUARE <= side * factor <= 1.1 * SQUARE), ""
        )
        raise CorsetkitError(
            f"the test square is {_mm(side)}: a side of the solid square measures from {LEAST:.0f} to {MOST:.0f} mm{remedy}"
        )
    if abs(side - SQUARE) <= TRUE + 1e-9:
        return WORDS("square_true", side=_mm(side))
    off = WORDS("square_small" if side < SQUARE else "square_large", side=_mm(side), scale=f"{scale_for(side):.1f}")
    return f"{off} {WORDS('square_dashed')}" if abs(side - _DASHED) <= TRUE else off


def _number(given):
    """The millimetres given, or None."""
    if isinstance(given, str):
        found = _GIVEN.fullmatch(given.strip())
        return float(found[1].replace(",", ".")) if found else None
    if isinstance(given, bool) or not isinstance(given, numbers.Real):
        return None
    try:
        side = float(given)
    except OverflowError:
        return None
    return side if math.isfinite(side) else None


def _mm(side):
    return f"{side:.1f}".removesuffix(".0") + " mm"


_MEASURED = (95, 96, 97, 98, 99, 101, 102, 103, 104, 105)
_SIXTEENTHS = (-3, -2, -1, 1, 2, 3)


def paint_square_table(canvas, corner, width):
    """The table, from its upper left corner down."""
    with canvas.group("scale-table"):
        canvas.words(corner - 1j * LINE, WORDS("table_heading"), NAME, "start")
        how = [WORDS("table_how"), WORDS("table_both_ways"), "", WORDS("table_solid", off=TRUE)]
        y = paint_entries(canvas, how, corner - 1.3j * LINE, width)
        solid = [_entry(f"{mm} mm", scale_for(mm, SQUARE)) for mm in _MEASURED]
        y = _rows(canvas, complex(corner.real, y), solid, width)
        y = paint_entries(canvas, [WORDS("table_dashed")], complex(corner.real, y - 0.6 * LINE), width)
        sides = [4 * CM_PER_INCH + one / 16 * CM_PER_INCH for one in _SIXTEENTHS]
        dashed = [_entry(say_length(side, "in"), scale_for(side, 4 * CM_PER_INCH)) for side in sides]
        _rows(canvas, complex(corner.real, y), dashed, width)


def _entry(side, scale):
    return WORDS("table_entry", side=side, scale=f"{scale:.1f}")


def _rows(canvas, corner, entries, width):
    """The entries in two columns; the level where they end."""
    half = (len(entries) + 1) // 2
    for number, text in enumerate(entries):
        column, row = divmod(number, half)
        canvas.words(corner + complex(column * width / 2, -(row + 1) * LINE), text, CUT, "start")
    return corner.imag - half * LINE
