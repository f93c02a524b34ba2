"""The few words a lesson needs, each with a small drawing."""

from dataclasses import dataclass
from html import escape

from corsetkit.drawing.canvas import Sheet
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.errors import sentence
from corsetkit.teaching.picture import Stored
from corsetkit.words import words_of

SHARED = words_of("shared")


@dataclass(frozen=True)
class Word:
    """A word of the trade, what it means in one sentence, and its small drawing."""

    word: str
    meaning: str
    sheet: Sheet


def cards(words) -> Stored:
    """The words as a table of two columns: it stands as it is in a page where nothing has run."""
    cells = [
        # Styles in the cells, for in a stored page nothing else is allowed to set them.
        f'<td style="width:120px;padding:6px">{svg_image(svg_text(one.sheet))}</td>'
        f'<td style="text-align:left;vertical-align:middle;padding:6px 18px 6px 4px">'
        f"<b>{escape(one.word)}</b><br>{escape(sentence(one.meaning))}</td>"
        for one in words
    ]
    rows = "".join(f"<tr>{''.join(cells[at : at + 2])}</tr>" for at in range(0, len(cells), 2))
    return Stored(
        f"<table><tbody>{rows}</tbody></table>",
        [
            SHARED(
                "card_told", word=one.word.capitalize(), meaning=sentence(one.meaning), drawing=sentence(one.sheet.description)
            )
            for one in words
        ],
    )
