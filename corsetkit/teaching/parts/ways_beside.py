"""One wearer drafted both ways: two sheets of pieces side by side, what the numbers mean, and the numbers."""

from html import escape

from corsetkit.errors import CorsetkitError
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.showing.lessons.ways_sheet import ways_sheet
from corsetkit.teaching import said
from corsetkit.errors import sentence
from corsetkit.teaching.stored import Stored
from corsetkit.teaching.parts.whole_pattern import both_ways


def ways_beside(desk) -> Stored:
    """Both ways for the desk's wearer and style; a way that refuses her says why in its drawing's place."""
    try:
        name, ways = both_ways(desk)
    except CorsetkitError as error:
        words = sentence(str(error))
        return Stored(f"<p>{escape(words)}</p>", (words,))
    unit = desk.record.unit
    drawn = {way: one for way, one in ways.items() if not isinstance(one, str)}
    cells, told = [], []
    for way, pattern in drawn.items():
        other = next((one for word, one in drawn.items() if word != way), None)
        words = [said.WAYS[way].lower(), *(said.WAYS[word].lower() for word in ways if word != way)]
        title = f"{said.WAYS[way]}, for {name}"
        sheet = ways_sheet(pattern, other, title, words, unit, _described(pattern, other, words))
        cells.append(f'<td style="width:50%;padding:4px;vertical-align:top">{svg_image(svg_text(sheet))}</td>')
        told.append(f"{title}. {sheet.description}")
    html = f'<table style="width:100%"><tbody><tr>{"".join(cells)}</tr></tbody></table>' if cells else ""
    if drawn:
        key = f"The numbers in the pieces: {_named(next(iter(drawn.values())))}."
        html += f"<p>{key}</p>"
    table, sentences = said.both_ways(ways, unit)
    return Stored(f"<p><b>{escape(name)}</b></p>{html}{table}", (*told, *sentences))


def _named(pattern):
    return ", ".join(f"{piece.number} {piece.name}" for piece in pattern.pieces)


def _described(pattern, other, words):
    behind = f"; behind each, as a broken line, the same piece {words[1]}" if other else ""
    return f"{len(pattern.pieces)} pieces drafted {words[0]}{behind}: {_named(pattern)}."
