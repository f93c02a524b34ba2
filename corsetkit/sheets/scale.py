"""What the printed test square tells: whether the print is true, and at which scale to print again."""

import math
import numbers
import re

from corsetkit.errors import CorsetkitError
from corsetkit.units import CM_PER_INCH, shown

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
        raise CorsetkitError(f"the test square is {shown(measured_mm)}, which is not a length: measure a side of the solid "
                             "square and give it in millimetres, such as 97")
    if not LEAST <= side <= MOST:
        others = ((10, "centimetres"), (10 * CM_PER_INCH, "inches"))
        remedy = next((f"; it looks like {words}" for factor, words in others
                       if 0.9 * SQUARE <= side * factor <= 1.1 * SQUARE), "")
        raise CorsetkitError(f"the test square is {_mm(side)}: a side of the solid square measures from {LEAST:.0f} to "
                             f"{MOST:.0f} mm{remedy}")
    if abs(side - SQUARE) <= TRUE + 1e-9:
        return f"The test square measures {_mm(side)}: all is well, the print is true to size."
    way = "small" if side < SQUARE else "large"
    dashed = (" If it was the dashed square that you measured, all is well: its side is 4 in, 101.6 mm."
              if abs(side - _DASHED) <= TRUE else "")
    return (f"The test square measures {_mm(side)} and should measure 100 mm, so the print is too {way}: print again with "
            f"the scale set to {scale_for(side):.1f} %, and measure again.{dashed}")


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
