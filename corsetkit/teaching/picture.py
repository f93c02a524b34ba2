"""What a table shows for one set of values: a drawing and what is to be said of it."""

from dataclasses import dataclass

from corsetkit.errors import sentence
from corsetkit.teaching.stored import Stored, sentences_html
from corsetkit.units import in_one_unit


@dataclass(frozen=True)
class Picture:
    """An SVG text with its description, sentences of values, and warnings."""

    svg: str
    description: str
    said: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()

    def stored(self, svg_image, unit="in") -> Stored:
        """The still state; `svg_image` makes an <img> with its description of an SVG text."""
        warnings = [sentence(in_one_unit(one, unit)) for one in self.warnings]
        html = svg_image(self.svg) + sentences_html(self.said)
        return Stored(
            html + sentences_html(warnings, "warnings"),
            (self.description, *self.said, *(f"Note: {one}" for one in warnings)),
        )
