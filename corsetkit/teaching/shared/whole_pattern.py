"""The whole pattern as a picture with its numbers, and the same wearer drafted by both methods."""

from corsetkit.drawing.pattern_sheet import pattern_sheet
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared import pattern_said as said


def picture(drafts: Drafts, style: dict) -> Picture:
    """The whole pattern of the wearer, in that style."""
    name, pattern = drafts.of(style)
    unit = drafts.desk.record.unit
    sheet = pattern_sheet(pattern, unit, name)
    hem = (said.HEM,) if "hem" in pattern.girths else ()
    sentences = [*said.girth_sentences(pattern, unit), *hem, said.seam_sentence(pattern)]
    return Picture(svg_text(sheet), f"{sheet.title}. {sheet.description}", tuple(sentences), tuple(pattern.warnings))


def both_methods(desk) -> tuple[str, dict]:
    """The wearer's name, and for each method her Pattern in the desk's style, or the sentence that refused it.

    Raises CorsetkitError where the wearer's form is not finished.
    """
    try:
        name, _ = desk.body()
    except CorsetkitError as error:
        raise CorsetkitError(f"the wearer's form is not finished; {error}") from None
    methods = {}
    for method in said.METHODS:
        try:
            _, methods[method] = Drafts(desk).of({**desk.record.style, "method": method})
        except CorsetkitError as error:
            methods[method] = str(error)
    return name, methods
