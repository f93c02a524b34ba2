"""The whole pattern's seams as a table: which pieces meet, how long both sides are, and how many notches they bear."""

from html import escape

from corsetkit.errors import CorsetkitError
from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.painting import owners_of
from corsetkit.teaching import said
from corsetkit.errors import sentence
from corsetkit.teaching.stored import Stored
from corsetkit.units import say_length

LEAST = 0.005
"""Sides that differ by less than this, cm, differ by nothing that a pencil or a needle knows."""
_HEADS = ("letter", "seam", "first side", "length", "second side", "length", "difference", "notches")
_LEFT, _WRAPPED = ' style="text-align:left"', ' style="text-align:left;white-space:normal"'
"""Several pieces on one side may need two lines; a length is never broken."""


def seam_table(drafts, style) -> Stored:
    """The table for the wearer in that style, or the sentence that says why there is none."""
    try:
        name, pattern = drafts.of(style)
    except CorsetkitError as error:
        words = sentence(f"Nothing to sew yet: {error}")
        return Stored(f"<p>{escape(words)}</p>", (words,))
    rows = seam_rows(pattern, drafts.desk.record.unit)
    heads = "".join(f'<th scope="col"{_LEFT}>{head}</th>' for head in _HEADS)
    cells = "".join(f'<tr><th scope="row"{_LEFT}><b>{row[0]}</b></th>{"".join(_cell(one) for one in row[1:])}</tr>'
                    for row in rows)
    told = said.seam_sentence(pattern)
    more = said.rounded_each(drafts.desk.record.unit)
    html = (f"<table><caption>The seams of {escape(name)}'s corset, in the order in which they are sewn</caption>"
            f"<thead><tr>{heads}</tr></thead><tbody>{cells}</tbody></table><p>{escape(told)} {more}</p>")
    return Stored(html, (*(_told(row) for row in rows), told, more))


def seam_rows(pattern, unit) -> tuple[tuple[str, ...], ...]:
    """The cells of each seam's row, in the order of `_HEADS`."""
    owners = owners_of(pattern.pieces)
    return tuple(
        (seam_letter(seam.number), seam.name, _pieces(seam.sides[0], owners), say_length(seam.lengths[0], unit),
         _pieces(seam.sides[1], owners), say_length(seam.lengths[1], unit), _difference(seam.difference), str(len(seam.marks)))
        for seam in pattern.seams)


def _pieces(side, owners):
    """The pieces of one side in their order, each once."""
    found = dict.fromkeys(owners[id(edge)].number for edge in side)
    names = {owners[id(edge)].number: owners[id(edge)].name for edge in side}
    return ", ".join(f"{number} {names[number]}" for number in found)


def _difference(cm):
    return "none" if abs(cm) < LEAST else f"{10 * cm:+.1f} mm"


def _cell(words):
    return f"<td{_WRAPPED if ',' in words else _LEFT}>{escape(words)}</td>"


def _told(row):
    letter, name, first, one, second, other, difference, notches = row
    return f"{letter}, {name}: {first} {one}; {second} {other}; difference {difference}; notches {notches}."
