"""What the learner's printed test square measures, and the scale to print at again."""

from dataclasses import dataclass

from corsetkit.quantity import declared, quantities
from corsetkit.printing.scale import SQUARE, scale_sentence
from corsetkit.showing.lessons.square_sheet import square_sheet
from corsetkit.drawing.svg import svg_text
from corsetkit.teaching.picture import Picture


@dataclass(frozen=True)
class Printed:
    """A side of the solid test square as it came out of the printer."""

    square: int = declared("how long a side of the solid test square is on your print, in whole millimetres", unit="count",
                           low=85, high=115, step=1, default=int(SQUARE))


def printed():
    """The quantities of `Printed`."""
    return quantities(Printed)


def square_picture(values: dict) -> Picture:
    """The square as it came out, and what to do."""
    measured = values.get("square", Printed.square)
    told = scale_sentence(measured)
    title = "The test square, measured"
    sheet = square_sheet(measured / 10, title, f"{title}. {told}")
    return Picture(svg_text(sheet), sheet.description, (told,))
