"""The print as sheets: a cover with the test square and the plan, then the pages with the pieces at true size."""

from dataclasses import dataclass

from ..geometry.curve import Line
from ..geometry.path import flattened
from .canvas import tick
from .cover import cover
from .lettering import CAPITALS, around, crosses, fitted, grown, one_line, text_width
from .packing import packed
from .painting import owners_of, paint_piece
from .paper import OVERLAP
from .pens import JOIN, JOIN_MARK, SMALL, TINY
from .sheet import Sheet
from .views import view

_HALF = OVERLAP / 2


@dataclass(frozen=True)
class Page:
    """One page of pieces: its number in the print, its column and row (from the top), and the box that it shows.

    `pieces` are those of which some lies within the page's joins, as (view, step).
    """

    number: int
    column: int
    row: int
    box: tuple
    pieces: tuple


@dataclass(frozen=True)
class Plan:
    """Where each piece lies, as (view, step), and the pages that are needed."""

    pieces: tuple
    pages: tuple

    def joined(self, page, columns, rows):
        """The page so many columns and rows further, where a piece runs on from this one to it; else None."""
        for other in self.pages:
            if (other.column, other.row) == (page.column + columns, page.row + rows):
                both = {id(one) for one, _ in page.pieces} & {id(one) for one, _ in other.pieces}
                return other if both else None
        return None

    def pages_with(self, piece):
        """The numbers of the pages on which some of the piece lies."""
        return tuple(page.number for page in self.pages if any(one.piece is piece for one, _ in page.pieces))


def plan_print(pieces, paper, more=()):
    """The plan of the print on this paper; `more` are lines written in each piece's label."""
    outlines = [flattened(piece.run, 0.02) for piece in pieces]
    boxes = [around([(p.real, p.imag, p.real, p.imag) for p in line]) for line in outlines]
    steps = packed(boxes, paper)
    laid = [_slid(box, step) for box, step in zip(boxes, steps)]
    views = [view(piece, 1.0, (piece.cloth, *more), [_slid(strip, -step) for strip in _strips(paper, box)])
             for piece, box, step in zip(pieces, laid, steps)]
    found = []
    for column, row in {place for box in laid for place in paper.pages_of(box)}:
        box = paper.page(column, row)
        # A piece's box may reach into a page that the piece itself does not reach: such a page is not needed.
        held = tuple((one, step) for one, step, line in zip(views, steps, outlines)
                     if _comes_into(line, step, grown(box, -_HALF)))
        if held:
            found.append((-row, column, box, held))
    found.sort(key=lambda page: page[:2])
    top = -found[0][0]
    pages = tuple(Page(number, column, top + row, box, held)
                  for number, (row, column, box, held) in enumerate(found, 2))
    return Plan(tuple(zip(views, steps)), pages)


def print_sheets(pattern, paper, unit, wearer, said_date):
    """Every page of the print in order, as sheets."""
    wearer = one_line(wearer)
    more = tuple(text for text in (fitted(wearer, SMALL, 6.0, 1.0), said_date) if text)
    plan = plan_print(pattern.pieces, paper, more)
    owners = owners_of(pattern.pieces)
    heading = f"Corset pattern for {wearer}" if wearer else "Corset pattern"
    last = len(plan.pages) + 1
    first = cover(pattern, paper, plan, heading, said_date, last)
    return (first, *(_sheet(page, plan, unit, owners, heading, said_date, last) for page in plan.pages))


def _sheet(page, plan, unit, owners, heading, said_date, last):
    left, bottom, right, top = page.box
    place = f"page {page.number} of {last} \u00b7 row {page.row + 1}, column {page.column + 1}"
    words = fitted(" \u00b7 ".join(text for text in (place, heading, said_date) if text), TINY, right - left - 1.0, 1.0)
    # In the strip outside the join, where the neighbour's paper covers it or the scissors take it;
    # and there beside the pieces' lines and the join's mark where that can be.
    level = top - 0.2 - CAPITALS / 2 * TINY.size / 10
    lines = [(flattened(one.piece.run, 0.02), step) for one, step in page.pieces]
    middle = (left + right) / 2 if plan.joined(page, 0, -1) else left - 2

    def clear(x, end):
        return (end < middle - 0.5 or x > middle + 1.7) and not any(
            _comes_into(line, step, (x - 0.1, top - _HALF, end + 0.1, top)) for line, step in lines)

    at, words = next(((x, said) for said in (words, place) for x in _halves(left + 0.5, right - 0.5, said)
                      if clear(x, x + text_width(said, TINY, 1.0))), (left + 0.5, words))

    def paint(canvas):
        for one, step in page.pieces:
            paint_piece(canvas, one, step, unit, owners, None)
        _paint_joins(canvas, page, plan)
        canvas.words(complex(at, level), words, TINY, "start")

    return Sheet(complex(left, bottom), complex(right, top), f"{heading}, page {page.number}", place, paint, 1.0)


def _halves(left, right, words):
    """Where the words may begin between left and right, every half centimetre."""
    count = int((right - left - text_width(words, TINY, 1.0)) / 0.5)
    return [left + i * 0.5 for i in range(max(0, count) + 1)]


def _paint_joins(canvas, page, plan):
    """The joins over which a piece runs on, each with a mark that comes to lie on the neighbour's."""
    left, bottom, right, top = grown(page.box, -_HALF)
    outer = page.box
    sides = ((1, 0, complex(right, outer[1]), complex(right, outer[3])),
             (-1, 0, complex(left, outer[1]), complex(left, outer[3])),
             (0, -1, complex(outer[0], top), complex(outer[2], top)),
             (0, 1, complex(outer[0], bottom), complex(outer[2], bottom)))
    with canvas.group("joins"):
        for columns, rows, start, end in sides:
            other = plan.joined(page, columns, rows)
            if other:
                numbers = sorted((page.number, other.number))
                _paint_join(canvas, start, end, f"{numbers[0]}\u2013{numbers[1]}")


def _paint_join(canvas, start, end, words):
    """A dashed line, broken for a lozenge that lies half on either page, and the two pages' numbers beside it."""
    middle, way = (start + end) / 2, (end - start) / abs(end - start)
    upright = abs(way.imag) > 0.5
    size, aside = 0.34, (0.72 if upright else 0.95)
    tick(canvas, start, middle - way * (size + 0.15), JOIN)
    tick(canvas, middle + way * (aside + (0.3 if upright else 0.6)), end, JOIN)
    corners = [middle + size, middle + size * 1j, middle - size, middle - size * 1j]
    canvas.line(tuple(Line(a, b) for a, b in zip(corners, corners[1:] + corners[:1])), JOIN_MARK)
    tick(canvas, middle - way * size, middle + way * size, JOIN_MARK)
    canvas.words(middle + way * aside - 1j * CAPITALS / 2 * TINY.size / 10, words, TINY)


def _strips(paper, box):
    """The strips in which the pages that the box lies on overlap: no text goes there."""
    pages = paper.pages_of(box)
    columns, rows = {column for column, _ in pages}, {row for _, row in pages}
    strips = [(column * paper.step.real, box[1], column * paper.step.real + OVERLAP, box[3])
              for column in columns if column - 1 in columns]
    return strips + [(box[0], row * paper.step.imag, box[2], row * paper.step.imag + OVERLAP)
                     for row in rows if row - 1 in rows]


def _slid(box, step):
    return box[0] + step.real, box[1] + step.imag, box[2] + step.real, box[3] + step.imag


def _comes_into(line, step, box):
    """Whether the closed polyline, slid by `step`, or what it encloses comes into the box."""
    points = [p + step for p in line]
    sides = list(zip(points, points[1:] + points[:1]))
    return any(crosses(a, b, box) for a, b in sides) or _encloses(sides, complex(box[0] + box[2], box[1] + box[3]) / 2)


def _encloses(sides, point):
    """Whether the point lies inside the closed polyline of these sides."""
    inside = False
    for a, b in sides:
        if (a.imag > point.imag) != (b.imag > point.imag):
            inside ^= point.real < a.real + (b.real - a.real) * (point.imag - a.imag) / (b.imag - a.imag)
    return inside
