"""The reference table of measurements, made from their declarations."""

from html import escape

from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.teaching.stored import Stored
from corsetkit.teaching.parts.tapes import TAPES, tape_sheet

_HEADS = ("", "Measurement", "How the tape runs", "The usual mistake")


def reference() -> Stored:
    """How each measurement is taken: a drawing, its meaning, the usual mistake, limits and the standard's term."""
    rows, sentences = [], []
    for one in quantities(Measurements):
        mistake = TAPES[one.name].mistake
        more = " May be left out: then it is estimated." if one.optional else ""
        meaning = f"{one.meaning[0].upper()}{one.meaning[1:]}.{more}"
        sentences.append(f"{one.label.capitalize()}: {one.meaning}.{more} Usual mistake: {mistake}")
        # Styles in the cells, for in a stored page nothing else is allowed to set them.
        standard = f"<br><small>{escape(one.standard)}</small>" if one.standard else ""
        rows.append(
            f'<tr><td style="width:150px">{svg_image(svg_text(tape_sheet(one.name)))}</td>'
            f'<th scope="row" style="text-align:left;font-weight:normal"><b>{one.label.capitalize()}</b>{standard}</th>'
            f'<td style="text-align:left">{escape(meaning)}<br><small>{escape(one.allowed)}</small></td>'
            f'<td style="text-align:left">{escape(mistake)}</td></tr>'
        )
    heads = "".join(f'<th scope="col" style="text-align:left">{head}</th>' for head in _HEADS)
    return Stored(
        "<table><caption>The mistakes are common practice, no source; limits as this course takes them."
        f"</caption><thead><tr>{heads}</tr></thead><tbody>{''.join(rows)}</tbody></table>",
        sentences,
    )
