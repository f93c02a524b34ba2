"""The hand sheets written as a PDF."""

from corsetkit.files import write_whole
from corsetkit.showing.names import shown_name
from corsetkit.showing.paper import Paper, paper_named
from corsetkit.showing.pdf import pdf_bytes
from corsetkit.showing.print_pdf import Printed, said_date, target
from corsetkit.units import check_unit
from corsetkit.hand_sheets.pages import hand_pages


class HandSheets(Printed):
    """What was written, as of a print; there is nothing on these pages that has to be true to size."""

    def __str__(self):
        return f"{self.path.name}: {self.pages} pages of {self.paper}, a page with a drawing for each step"


def write_hand_sheets(pattern, path, paper="A4", unit="in", wearer="", date=None, number=None):
    """Write the draft by hand, step by step, to `path`, whole or not at all, and say what was written.

    Args:
        pattern: the `Pattern`. path: the file. paper: "A4" or "Letter". unit: "in" or "cm".
        wearer: the name on every page. date: a date, a text, or None for today; with a given one the same pattern gives
            the same bytes. number: the wearer's number, which stands where the print's letters cannot set the name;
            None for one that follows from it.

    Returns:
        A `HandSheets`.

    Raises:
        CorsetkitError: one sentence, for an unknown paper or unit, and where the file cannot be written.
    """
    kind = paper if isinstance(paper, Paper) else paper_named(paper)
    check_unit(unit)
    path = target(path, "by hand.pdf")
    name = shown_name(wearer, number)
    pages = hand_pages(pattern, kind, unit, name.text, said_date(date))
    write_whole(path, pdf_bytes(pages, kind, f"By hand for {name}" if name.text else "By hand"))
    return HandSheets(path, str(kind), len(pages), tuple(filter(None, (name.said,))))
