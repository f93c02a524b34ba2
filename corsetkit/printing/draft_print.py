"""The print: every piece at true scale on pages of A4 or Letter, in one PDF file."""

import datetime
from dataclasses import dataclass
from os import PathLike
from pathlib import Path

from corsetkit.drawing.lettering import one_line
from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.printing.names import shown_name
from corsetkit.printing.paper import paper_named
from corsetkit.printing.pdf import pdf_bytes
from corsetkit.printing.tiles import print_sheets
from corsetkit.units import check_unit, shown
from corsetkit.words import words_of

WORDS = words_of("printing")


@dataclass(frozen=True)
class Printed:
    """What was written: the file, the paper's name, and how many pages, the first with the test square included.

    `said` are sentences about what could not be done as asked, such as a name that the print cannot set.
    """

    path: Path
    paper: str
    pages: int
    said: tuple = ()

    def __str__(self):
        return WORDS.counted("printed", self.pages, file=self.path.name, paper=self.paper)


def write_print(pattern, path, paper="A4", unit="in", wearer="", date=None):
    """Write the print to `path`, whole or not at all, and say what was written.

    `date` is written on every page: a date, a text, or None for today; with a given one the same pattern
    gives the same bytes. Raises CorsetkitError for an unknown paper or unit, and where the file can't be written.
    """
    kind, unit, path = paper_named(paper), check_unit(unit), target(path)
    name = shown_name(wearer)
    sheets = print_sheets(pattern, kind, unit, name.text, said_date(date))
    write_whole(path, pdf_bytes(sheets, kind, one_line(WORDS("draft_title", name=name))))
    return Printed(path, kind.name, len(sheets), tuple(filter(None, (name.said,))))


def said_date(date: datetime.date | str | None) -> str:
    """A date as it is written: a text as it is, a date in figures, None for today."""
    return one_line(date if isinstance(date, str) else (date or datetime.date.today()).isoformat())


def target(path: str | PathLike[str], such_as: str = "pattern.pdf") -> Path:
    """The path, where a file can stand there: said before the work is done, not after."""
    try:
        path = Path(path)
        folder, here = path.parent.is_dir(), path.is_dir()
        if "\0" in str(path):
            raise ValueError
    except (TypeError, ValueError):
        raise CorsetkitError(f"{shown(path)} is not the path of a file") from None
    if here:
        raise CorsetkitError(f"{path} is a folder: give the file a name, such as {path / such_as}")
    if not folder:
        raise CorsetkitError(f"the folder {path.parent} does not exist: make it first, or write to another one")
    return path
