"""What stands beside the test square: at which scale to print again, by what the square measures."""

from corsetkit.showing.cover import paint_entries
from corsetkit.showing.pens import CUT, NAME
from corsetkit.units import CM_PER_INCH, say_length
from corsetkit.sheets.rows import LINE
from corsetkit.sheets.scale import SQUARE, TRUE, scale_for

_MEASURED = (95, 96, 97, 98, 99, 101, 102, 103, 104, 105)
_SIXTEENTHS = (-3, -2, -1, 1, 2, 3)

_HOW = ("Still off at 100 %? Measure a side of one square, find it below, and print this page again with the scale that "
        "stands beside it. Then measure again.",
        "Measure across and upwards: where the two differ, the printer stretches the page. Use another one.")


def paint_square_table(canvas, corner, width):
    """The table, from its upper left corner down."""
    with canvas.group("scale-table"):
        canvas.words(corner - 1j * LINE, "If the squares are off", NAME, "start")
        y = paint_entries(canvas, [*_HOW, "", f"Solid square: 10 cm. Off by up to {TRUE} mm is well."],
                          corner - 1.3j * LINE, width)
        y = _rows(canvas, complex(corner.real, y), [f"{mm} mm: {scale_for(mm, SQUARE):.1f} %" for mm in _MEASURED], width)
        y = paint_entries(canvas, ["Dashed square: 4 in."], complex(corner.real, y - 0.6 * LINE), width)
        sides = [4 * CM_PER_INCH + one / 16 * CM_PER_INCH for one in _SIXTEENTHS]
        _rows(canvas, complex(corner.real, y),
              [f"{say_length(side, 'in')}: {scale_for(side, 4 * CM_PER_INCH):.1f} %" for side in sides], width)


def _rows(canvas, corner, entries, width):
    """The entries in two columns; the level where they end."""
    half = (len(entries) + 1) // 2
    for number, text in enumerate(entries):
        column, row = divmod(number, half)
        canvas.words(corner + complex(column * width / 2, -(row + 1) * LINE), text, CUT, "start")
    return corner.imag - half * LINE
