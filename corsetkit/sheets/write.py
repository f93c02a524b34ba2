"""The finished pattern written as a PDF at true size."""

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.showing.names import shown_name
from corsetkit.showing.paper import LARGE, PAPERS, Paper, own_paper, paper_named
from corsetkit.showing.pdf import pdf_bytes
from corsetkit.showing.print_pdf import Printed, said_date, target
from corsetkit.showing.tiles import heading_for
from corsetkit.units import check_unit
from corsetkit.sheets.print_plan import print_sheets


def write_print(finished, path, paper="A4", unit="in", wearer="", date=None, by_piece=False, number=None):
    """Write the finished pattern to `path`, whole or not at all, and say what was written.

    Args:
        finished: a `Finished`. path: the file.
        paper: "A4" or "Letter", joined from pages; "A0" or "roll" (36 in wide), for a copy shop; or (width, height) in cm.
        unit: "cm" or "in", for the lengths that are written. wearer: the name in the pieces.
        date: a date, a text, or None for today; with a given one the same pattern gives the same bytes.
        by_piece: whether every piece begins on a page of its own.
        number: the wearer's number, which stands where the print's letters cannot set the name; None for one that follows from it.

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
