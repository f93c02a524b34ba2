"""The printed test square with a ruler laid along it, what it measures, and the scale to print at again."""

from dataclasses import dataclass

from corsetkit.drawing.canvas import Sheet, box_area, box_run, tick
from corsetkit.drawing.pens import BARE, BEFORE, BOARD_TONE, HEADING, NEW, PAPER_TONE, RULE, SMALL, SPOT_WORDS
from corsetkit.drawing.svg import svg_text
from corsetkit.printing.scale import SQUARE, scale_sentence
from corsetkit.quantity import declared, quantities
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.units import say_number
from corsetkit.words import words_of

WORDS = words_of("08_finish")

SIDE = 10.0
"""A side of the solid test square, cm."""
_MOST = 12.0
_KEY = ((BEFORE, WORDS("square_key_meant")), (NEW, WORDS("square_key_printed")))


def square_sheet(measured, title, description):
    """The sheet of a test square whose side measures `measured` cm."""
    wide = max(_MOST + 3.0, row_width(_KEY, 1.0) + 1.0)
    low, high = complex(-1.2, -2.6), complex(wide, _MOST + 1.6)

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + 0.4, high.imag - 0.8), title, HEADING, "start")
        canvas.area(box_run(-0.6, -0.05, _MOST + 1.6, _MOST + 0.4), BARE)
        canvas.line(box_run(0.0, 0.0, SIDE, SIDE), BEFORE)
        canvas.line(
            box_run(0.0, 0.0, measured, measured),
            NEW,
            {"role": "new", "name": WORDS("square_side"), "length": f"{say_number(measured * 10, 1)} mm"},
        )
        _paint_ruler(canvas)
        canvas.words(
            complex(min(SIDE, measured) / 2, min(SIDE, measured) / 2), f"{say_number(measured * 10, 1)} mm", SPOT_WORDS
        )
        paint_row(canvas, complex(low.real + 0.4, low.imag + 0.4), _KEY)

    return Sheet(low, high, title, description, paint, 1.0)


def _paint_ruler(canvas):
    """A ruler's edge along the square's lower side, in centimetres."""
    canvas.area(box_run(-0.6, -1.3, _MOST + 1.6, 0.0), PAPER_TONE)
    canvas.line(box_run(-0.6, -1.3, _MOST + 1.6, 0.0), RULE)
    for mm in range(int(_MOST * 10) + 1):
        long = 0.5 if mm % 10 == 0 else 0.34 if mm % 5 == 0 else 0.2
        tick(canvas, complex(mm / 10, 0.0), complex(mm / 10, -long), RULE)
        if mm % 10 == 0:
            canvas.words(complex(mm / 10, -0.95), str(mm // 10), SMALL)


@dataclass(frozen=True)
class Printed:
    """A side of the solid test square as it came out of the printer."""

    square: int = declared(WORDS("square_control"), unit="count", low=85, high=115, step=1, default=int(SQUARE))


def printed():
    """The quantities of `Printed`."""
    return quantities(Printed)


def square_picture(values: dict) -> Picture:
    """The square as it came out, and what to do."""
    measured = values.get("square", Printed.square)
    told = scale_sentence(measured)
    title = WORDS("square_title")
    sheet = square_sheet(measured / 10, title, WORDS("described", title=title, told=told))
    return Picture(svg_text(sheet), sheet.description, (told,))
