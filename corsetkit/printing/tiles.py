"""The print as sheets: a cover with the test square and the plan, then the pages with their joins."""

from corsetkit.drawing.canvas import Sheet, tick
from corsetkit.drawing.lettering import CAPITALS, fitted, grown, one_line, text_width
from corsetkit.drawing.painting import paint_piece
from corsetkit.drawing.pens import JOIN, JOIN_MARK, SMALL, TINY
from corsetkit.drawing.views import view
from corsetkit.geometry.curve import Line
from corsetkit.printing.cover import SEWING_LINES, cover, piece_list
from corsetkit.printing.page_plan import comes_into, planned
from corsetkit.printing.paper import OVERLAP
from corsetkit.printing.printed import Item
from corsetkit.words import words_of

WORDS = words_of("printing")


def paint_joins(canvas, page, plan):
    """Every join of the page over which a piece runs on."""
    left, bottom, right, top = grown(page.box, -OVERLAP / 2)
    outer = page.box
    sides = (
        (1, 0, complex(right, outer[1]), complex(right, outer[3])),
        (-1, 0, complex(left, outer[1]), complex(left, outer[3])),
        (0, -1, complex(outer[0], top), complex(outer[2], top)),
        (0, 1, complex(outer[0], bottom), complex(outer[2], bottom)),
    )
    with canvas.group("joins"):
        for columns, rows, start, end in sides:
            other = plan.joined(page, columns, rows)
            if other:
                numbers = sorted((page.number, other.number))
                _paint_join(canvas, start, end, f"{numbers[0]}\u2013{numbers[1]}")


def _paint_join(canvas, start, end, words):
    """A dashed line, broken for a lozenge that lies half on either page, and the two pages' numbers beside it."""
    middle, tangent = (start + end) / 2, (end - start) / abs(end - start)
    upright = abs(tangent.imag) > 0.5
    size, aside = 0.34, (0.72 if upright else 0.95)
    tick(canvas, start, middle - tangent * (size + 0.15), JOIN)
    tick(canvas, middle + tangent * (aside + (0.3 if upright else 0.6)), end, JOIN)
    corners = [middle + size, middle + size * 1j, middle - size, middle - size * 1j]
    canvas.line(tuple(Line(a, b) for a, b in zip(corners, corners[1:] + corners[:1])), JOIN_MARK)
    tick(canvas, middle - tangent * size, middle + tangent * size, JOIN_MARK)
    canvas.words(middle + tangent * aside - 1j * CAPITALS / 2 * TINY.size / 10, words, TINY)


def plan_print(pieces, paper, more=(), unit="in"):
    """The plan of the print on this paper; `more` are lines written in each piece's label."""
    return planned([_item(piece, more, unit) for piece in pieces], paper)


def _item(piece, more, unit):
    return Item(
        piece,
        piece.path,
        lambda boxes: view(piece, 1.0, (piece.cloth, *more), boxes),
        lambda canvas, laid, step: paint_piece(canvas, laid, step, unit, None),
    )


def print_sheets(pattern, paper, unit, wearer, said_date):
    """Every page of the print in order, as sheets."""
    wearer = one_line(wearer)
    plan = plan_print(pattern.pieces, paper, whose(wearer, said_date), unit)
    heading = heading_for(wearer)
    last = len(plan.pages) + 1
    said = " \u00b7 ".join(text for text in (said_date, page_of(1, last), paper.name, SEWING_LINES) if text)
    first = cover(paper, plan, heading, said, piece_list(pattern, plan))
    return (first, *page_sheets(plan, heading, said_date, last))


def heading_for(wearer):
    return WORDS("heading_for", wearer=wearer) if wearer else WORDS("heading")


def page_of(number, last):
    """Which page of how many."""
    return WORDS("page_of", number=number, last=last)


def whose(wearer, said_date):
    """The lines in each piece's label that say whose it is."""
    return tuple(text for text in (fitted(wearer, SMALL, 6.0, 1.0), said_date) if text)


def page_sheets(plan, heading, said_date, last, say=lambda page: "", places=True):
    """The plan's pages as sheets, `last` the number of the print's last one.

    `say(page)` is told beside the page's number and, with `places`, its row and column.
    """
    return tuple(_sheet(page, plan, heading, said_date, last, places, say(page)) for page in plan.pages)


def _sheet(page, plan, heading, said_date, last, places, more):
    left, bottom, right, top = page.box
    at = WORDS("page_at", row=page.row + 1, column=page.column + 1) if places else ""
    number = page_of(page.number, last)
    place = " \u00b7 ".join(text for text in (number, at, more) if text)
    words = fitted(" \u00b7 ".join(text for text in (place, heading, said_date) if text), TINY, right - left - 1.0, 1.0)
    # In the strip outside the join, where the neighbour's paper covers it or the scissors take it;
    # and there beside the pieces' lines and the join's mark where that can be.
    half = OVERLAP / 2
    level = top - 0.2 - CAPITALS / 2 * TINY.size / 10
    lines = [(one.item.line, step) for one, step in page.pieces]
    middle = (left + right) / 2 if plan.joined(page, 0, -1) else left - 2

    def clear(x, end):
        return (end < middle - 0.5 or x > middle + 1.7) and not any(
            comes_into(line, step, (x - 0.1, top - half, end + 0.1, top)) for line, step in lines
        )

    at, words = next(
        (
            (x, said)
            for said in (words, place, number)
            for x in _places(left + 0.5, right - 0.5, said)
            if clear(x, x + text_width(said, TINY, 1.0))
        ),
        (left + 0.5, number),
    )

    def paint(canvas):
        for one, step in page.pieces:
            one.paint(canvas, step)
        paint_joins(canvas, page, plan)
        canvas.words(complex(at, level), words, TINY, "start")

    title = WORDS("page_title", heading=heading, number=page.number)
    return Sheet(complex(left, bottom), complex(right, top), title, place, paint, 1.0)


def _places(left, right, words):
    """Where the words may begin between left and right, every two millimetres."""
    count = int((right - left - text_width(words, TINY, 1.0)) / 0.2)
    return [left + i * 0.2 for i in range(max(0, count) + 1)]
