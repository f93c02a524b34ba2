"""All that leaves the course for one wearer: one folder, written whole or not at all.

`write_all` drafts, finishes and writes; a pattern at hand is written by `write_folder`. Which files there are stands in
`FILES`; with them stands the list by which a later run knows them (`folder_record.py`).
"""

from dataclasses import dataclass, replace
from pathlib import Path

from corsetkit.drafting import draft
from corsetkit.errors import CorsetkitError
from corsetkit.export.dxf import write_dxf
from corsetkit.export.piece_list import write_pieces
from corsetkit.export.seam_report import write_seams
from corsetkit.export.svg_mm import write_svg
from corsetkit.finish.bill import bill
from corsetkit.finish.finished import finish
from corsetkit.folder_record import RECORD
from corsetkit.folders import new_folder
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.plan_pdf import write_lay_pdf
from corsetkit.lay.planning import plans
from corsetkit.printing.draft_print import said_date
from corsetkit.printing.finished_print import paper_for, write_print
from corsetkit.printing.hand_pages import write_hand_sheets
from corsetkit.printing.names import names_apart
from corsetkit.printing.paper import PAPERS
from corsetkit.sewing.text import write_sewing
from corsetkit.units import check_unit, shown

PATTERN, CUTTING, BY_HAND, SVG, DXF, PIECES, SEAMS, SEWING = FILES = (
    "pattern.pdf",
    "cutting.pdf",
    "by_hand.pdf",
    "pattern.svg",
    "pattern.dxf",
    "pieces.csv",
    "seams.csv",
    "sewing.txt",
)
"""How the files' names end; the wearer's name stands before each."""


@dataclass(frozen=True)
class Output:
    """What was written: the folder, its files by their names in `FILES`, and sentences worth telling.

    `pages` is how many pages the print of the pattern has. `said` holds what could not be had as asked, such as a name that
    the print cannot set, and which of the user's files in an older folder were kept; `warnings` what the draft and the bill
    have to say of this pattern.
    """

    folder: Path
    files: dict
    pages: int
    said: tuple
    warnings: tuple

    def __str__(self):
        return (
            f"{self.folder.name}: {len(self.files)} files and the list of them, the pattern on {self.pages} "
            f"page{'s' * (self.pages != 1)}"
        )

    @property
    def record(self):
        """The list of the files, which stands with them."""
        return self.folder / RECORD


@dataclass(frozen=True)
class Wish:
    """How all is to be written: `paper` as `sheets.write.paper_for` takes it, `unit` "in" or "cm", `date` None for today.

    The pieces are laid on `cloth`, all layers on the same: plainly, row by row, or with `seconds` as closely as is found in
    that time for each layer.
    """

    paper: object = "A4"
    unit: str = "in"
    date: object = None
    cloth: Cloth = Cloth()
    seconds: float | None = None


def write_all(name, measurements, style, choices, corrections, folder, *, wish=None, called=None, again=False, placing=None):
    """Draft one wearer's pattern, make it ready to cut, and write her folder.

    Args:
        name: the wearer's name. measurements: her `Measurements`.
        style: the `Style`. choices: the `Finish`. With their defaults where None is given.
        corrections: `Correction`s from fittings, or ().
        folder: the folder to be made; its parent is there. wish: a `Wish`.
        called: what her files are called, as `names_apart` has it, where there are other wearers beside her.
        again: whether an older folder of hers is written anew. What is not ours in it, or was changed since, is kept.
        placing: called when all is written and only the move into place is left.

    Returns:
        An `Output`.

    Raises:
        CorsetkitError: one sentence, where she cannot be drafted, the folder is there already or being written, or the disk
            refuses it; then what stood there before still stands.
    """
    wish, folder = checked(wish), checked_folder(folder)
    with new_folder(folder, str(name), again, placing) as made:
        finished = finish(draft(measurements, style, corrections), choices)
        written = _write_files(finished, None, name, made.beside, wish, called)
    return _output(written, folder, made)


def write_folder(finished, name, folder, *, wish=None, called=None, again=False, laid=None, told=lambda file, done, of: None):
    """Write the folder of a `Finished` pattern; arguments, result and errors as of `write_all`.

    `laid` is its cutting plans by the cloths' names, where they are there already. `told(file, done, of)` is called before
    each file with its name and how many of how many are done.
    """
    wish, folder = checked(wish), checked_folder(folder)
    with new_folder(folder, str(name), again) as made:
        written = _write_files(finished, laid, name, made.beside, wish, called, told)
    return _output(written, folder, made)


def checked(wish):
    """The wish, its paper a `Paper` and its date a text, or CorsetkitError."""
    wish = wish or Wish()
    return replace(wish, paper=paper_for(wish.paper), unit=check_unit(wish.unit), date=said_date(wish.date))


def checked_folder(folder):
    """The folder as a path, where one can stand there; said before the work is done."""
    try:
        folder = Path(folder)
        if "\0" in str(folder) or not folder.name:
            raise ValueError
        parent = folder.parent.is_dir()
    except (TypeError, ValueError):
        raise CorsetkitError(f"{shown(folder)} is not the path of a folder") from None
    except OSError as error:
        raise CorsetkitError(f"{folder} cannot be looked at: {error.strerror or error}") from None
    if not parent:
        raise CorsetkitError(f"the folder {folder.parent} does not exist: make it first, or write to another one")
    return folder


def disk_refused(error):
    """Whether it was the disk that stood in the way, and not the wearer or the style."""
    while error is not None:
        if isinstance(error, OSError):
            return True
        error = error.__cause__ or error.__context__
    return False


def _write_files(finished, laid, name, folder, wish, called, told=lambda file, done, of: None):
    """Write every file into a folder; an `Output` of it."""
    called = called or names_apart([name])[name]
    begins, number = called.file, called.number
    laid = laid or plans(finished, wish.cloth, wish.seconds)
    files = {kind: folder / f"{begins}_{kind}" for kind in FILES}

    def next_one(kind):
        told(files[kind].name, FILES.index(kind), len(FILES))
        return files[kind]

    paper, unit, date = wish.paper, wish.unit, wish.date
    printed = write_print(finished, next_one(PATTERN), paper, unit, name, date, number=number)
    # Plans and the draft by hand are read at a table: beside a large sheet they are on A4.
    small = paper if paper in PAPERS else PAPERS[0]
    write_lay_pdf(tuple(laid.values()), next_one(CUTTING), small.name, unit, name, date)
    by_hand = write_hand_sheets(finished.pattern, next_one(BY_HAND), small, unit, name, date, number)
    svg = write_svg(finished, next_one(SVG), unit, name, date)
    dxf = write_dxf(finished, next_one(DXF), unit, name, date, number=number)
    write_pieces(finished, next_one(PIECES), unit, name, date, laid)
    write_seams(finished, next_one(SEAMS), unit)
    write_sewing(finished, next_one(SEWING), unit, name, date)
    said = (begins.said, *printed.said, *by_hand.said, *svg.said, *dxf.said)
    return Output(folder, files, printed.pages, said, (*finished.warnings, *bill(finished).warnings))


def _output(written, folder, made):
    """What was written, as it stands now that it is in its place."""
    files = {kind: folder / one.name for kind, one in written.files.items()}
    return replace(written, folder=folder, files=files, said=tuple(dict.fromkeys(filter(None, (*made.said, *written.said)))))
