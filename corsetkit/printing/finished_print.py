"""A finished pattern as the sheets of a print, cover, list of what to cut and pieces, and as a PDF at true size."""

from functools import partial

from corsetkit.drawing.canvas import Sheet, box_run
from corsetkit.drawing.finished_painting import paint_finished
from corsetkit.drawing.finished_view import closed, finished_view
from corsetkit.drawing.pens import TINY
from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.printing.cover import JOIN_HOW, SCALE_HOW, SIDE, cover, paint_head, paint_squares
from corsetkit.printing.cut_list import cut_rows
from corsetkit.printing.draft_print import Printed, said_date, target
from corsetkit.printing.names import shown_name
from corsetkit.printing.page_plan import planned, planned_by_piece, planned_on_roll
from corsetkit.printing.page_rows import broken, height, paint_rows
from corsetkit.printing.paper import LARGE, PAPERS, Paper, own_paper, paper_named
from corsetkit.printing.pdf import pdf_bytes
from corsetkit.printing.printed import Item
from corsetkit.printing.scale import paint_square_table
from corsetkit.printing.tiles import heading_for, page_of, page_sheets, whose
from corsetkit.units import check_unit
from corsetkit.words import words_of

WORDS = words_of("printing")

CUTTING_LINES = WORDS("cutting_lines")
_BLOCK = 19.0
"""How wide what is written stands beside the pieces on a large sheet, cm."""
_HEAD = 15.0


def print_sheets(finished, paper, unit, wearer, said_date, by_piece=False):
    """All sheets of the print in order, and the paper they are printed on, which a roll cuts to length."""
    items = [item(one, unit, whose(wearer, said_date)) for one in finished.pieces]
    heading = heading_for(wearer)
    if paper.whole:
        return _large(finished, items, paper, unit, heading, said_date)
    plan_of = planned_by_piece if by_piece else planned
    said_of = _alone if by_piece else _pieces
    width, high = paper.window.real - 0.2, paper.window.imag - 0.2
    count = 1
    while True:
        plan = plan_of(items, paper, 2 + count)
        groups = broken(cut_rows(finished, plan, unit, width), high)
        # Longer page numbers may need another line.
        if len(groups) <= count:
            break
        count = len(groups)
    while len(groups) < count:
        # They needed one less in the end: the pages are numbered already.
        groups.append([groups[-1].pop()])
    last = 1 + count + len(plan.pages)
    lists = [_list_sheet(rows, paper, heading, number, last) for number, rows in enumerate(groups, 2)]
    how = f"{SCALE_HOW} {JOIN_HOW}" + (f" {WORDS('by_piece')}" if by_piece else "")
    said = _said(said_date, page_of(1, last), str(paper), CUTTING_LINES)
    return (
        cover(paper, plan, heading, said, paint_square_table, how),
        *lists,
        *page_sheets(plan, heading, said_date, last, said_of),
    ), paper


def item(finished_piece, unit, more):
    """A finished piece as something to print."""

    def lay_out(boxes):
        return finished_view(finished_piece, 1.0, more, boxes)

    return Item(
        finished_piece.piece,
        closed(finished_piece.cutting),
        lay_out,
        lambda canvas, view, step: paint_finished(canvas, view, step, unit),
    )


def _said(*words):
    return " \u00b7 ".join(text for text in words if text)


def _alone(page):
    """What a page of a piece printed by itself says of it."""
    one = page.pieces[0][0]
    return WORDS("alone_turned" if one.turned else "alone", number=one.piece.number, name=one.piece.name)


def _pieces(page):
    """Which pieces are on a page: some may show there without their names."""
    numbers = [str(one.piece.number) for one, _ in page.pieces]
    return WORDS.counted("pieces", len(numbers), numbers=", ".join(numbers))


def _list_sheet(rows, paper, heading, number, last):
    """One page of the list."""
    width, top = paper.window.real, paper.window.imag

    def paint(canvas):
        canvas.words(complex(width - 0.1, top - 0.35), page_of(number, last), TINY, "end")
        with canvas.group("list"):
            paint_rows(canvas, rows, complex(0.1, top))

    title = WORDS("page_title", heading=heading, number=number)
    return Sheet(0j, paper.window, title, WORDS("list_description"), paint)


def _large(finished, items, paper, unit, heading, said_date):
    """The sheets of paper on which no piece is cut by a join; what is written lies among the pieces."""
    rows = cut_rows(finished, None, unit, _BLOCK, with_pages=False)
    said = _said(said_date, str(paper), CUTTING_LINES)
    blocks = [
        _block(_HEAD, partial(_paint_head, heading=heading, said=said)),
        _block(height(rows) + 0.3, lambda canvas, corner: paint_rows(canvas, rows, corner)),
    ]
    items = [*blocks, *items]
    if paper.name == "roll":
        plan, paper = planned_on_roll(items, paper)
    else:
        plan = planned(items, paper, 1, ahead=len(blocks))
    return page_sheets(plan, heading, said_date, len(plan.pages), lambda page: str(paper), places=False), paper


def _block(high, paint):
    """What is written on a large sheet, as something to print; `paint(canvas, corner)` from its upper left corner."""
    return Item(
        None, box_run(0.0, 0.0, _BLOCK, high), lambda boxes: None, lambda canvas, view, step: paint(canvas, step + 1j * high)
    )


def _paint_head(canvas, corner, heading, said):
    paint_head(canvas, corner, _BLOCK, heading, said, f"{SCALE_HOW} {WORDS('copy_shop')}")
    low = corner - 1j * _HEAD
    paint_squares(canvas, low + 0.1 + 0.1j)
    paint_square_table(canvas, low + complex(SIDE + 1.0, SIDE), _BLOCK - SIDE - 1.1)


def write_print(finished, path, paper="A4", unit="in", wearer="", date=None, by_piece=False, number=None):
    """Write the finished pattern to `path`, whole or not at all, and say what was written.

    Args:
        finished: a `Finished`. path: the file.
        paper: "A4" or "Letter", joined from pages; "A0" or "roll" (36 in wide), for a copy shop; or (width, height) in cm.
        unit: "cm" or "in", for the lengths that are written. wearer: the name in the pieces.
        date: a date, a text, or None for today; with a given one the same pattern gives the same bytes.
        by_piece: whether every piece begins on a page of its own.
        number: the wearer's number, which stands where the print's letters cannot set the name;
        None for one that follows from it.

    Returns:
        A `Printed`.

    Raises:
        CorsetkitError: one sentence, for an unknown paper or unit, and where the file cannot be written.
    """
    kind, unit, path = paper_for(paper), check_unit(unit), target(path)
    if kind.whole and by_piece:
        raise CorsetkitError(f"by piece is for pages that are joined: on {kind.name} every piece is whole already")
    name = shown_name(wearer, number)
    sheets, kind = print_sheets(finished, kind, unit, name.text, said_date(date), by_piece)
    write_whole(path, pdf_bytes(sheets, kind, heading_for(name.text)))
    return Printed(path, str(kind), len(sheets), tuple(filter(None, (name.said,))))


def paper_for(paper):
    """The paper of a name, of a (width, height) in cm, or itself."""
    if isinstance(paper, Paper):
        return paper
    if isinstance(paper, (tuple, list)) and len(paper) == 2:
        return own_paper(*paper)
    return paper_named(paper, PAPERS + LARGE)
