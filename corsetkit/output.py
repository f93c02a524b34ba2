"""All that leaves the course for one wearer: one folder, written whole or not at all.

`write_all` drafts, finishes and writes; a pattern at hand is written by `write_folder`. Which files there are stands in
`FILES`.
"""

import os
import shutil
from dataclasses import dataclass, replace
from pathlib import Path

from .drafting import draft
from .errors import CorsetkitError
from .exchange.dxf import write_dxf
from .exchange.svg_mm import write_svg
from .finish.bill import bill
from .finish.finished import finish
from .hand_sheets.write import write_hand_sheets
from .lay.cloth import Cloth
from .lay.lay_pdf import write_lay_pdf
from .lay.planning import plans
from .listing.pieces import write_pieces
from .listing.seams import write_seams
from .sewing.write import write_sewing
from .sheets.write import paper_for, write_print
from .showing.names import file_name
from .showing.paper import PAPERS
from .showing.print_pdf import said_date
from .units import check_unit, shown

PATTERN, CUTTING, BY_HAND, SVG, DXF, PIECES, SEAMS, SEWING = FILES = (
    "pattern.pdf", "cutting.pdf", "by_hand.pdf", "pattern.svg", "pattern.dxf", "pieces.csv", "seams.csv", "sewing.txt")
"""How the files' names end; the wearer's name stands before each."""


@dataclass(frozen=True)
class Output:
    """What was written: the folder, its files by their names in `FILES`, and sentences worth telling.

    `pages` is how many pages the print of the pattern has. `said` holds what could not be had as asked, such as a name that
    the print cannot set; `warnings` what the draft and the bill have to say of this pattern.
    """

    folder: Path
    files: dict
    pages: int
    said: tuple
    warnings: tuple

    def __str__(self):
        return f"{self.folder.name}: {len(self.files)} files, the pattern on {self.pages} page{'s' * (self.pages != 1)}"


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


def write_all(name, measurements, style, choices, corrections, folder, *, wish=None, number=1, again=False):
    """Draft one wearer's pattern, make it ready to cut, and write her folder.

    Args:
        name: the wearer's name. measurements: her `Measurements`.
        style: the `Style`. choices: the `Finish`. With their defaults where None is given.
        corrections: `Correction`s from fittings, or ().
        folder: the folder to be made; its parent is there. wish: a `Wish`.
        number: the wearer's number, which stands where a file or the print cannot bear her name.
        again: whether an older folder of hers is written anew.

    Returns:
        An `Output`.

    Raises:
        CorsetkitError: one sentence, where she cannot be drafted, the folder is there already, or the disk refuses it; then
            what stood there before still stands.
    """
    wish, folder = checked(wish), checked_folder(folder)
    refuse_older(folder, again)
    finished = finish(draft(measurements, style, corrections), choices)
    return write_folder(finished, name, folder, wish=wish, number=number, again=again)


def write_folder(finished, name, folder, *, wish=None, number=1, again=False, laid=None):
    """Write the folder of a `Finished` pattern; arguments, result and errors as of `write_all`.

    `laid` is its cutting plans by the cloths' names, where they are there already.
    """
    wish, folder = checked(wish), checked_folder(folder)
    refuse_older(folder, again)
    laid = laid or plans(finished, wish.cloth, wish.seconds)
    beside = folder.with_name(f".{folder.name}.{os.getpid()}.part")
    try:
        try:
            beside.mkdir()
            written = _write_files(finished, laid, name, beside, wish, number)
            _put_in_place(beside, folder)
        except BaseException:
            shutil.rmtree(beside, ignore_errors=True)
            raise
    except OSError as error:
        raise CorsetkitError(f"{folder} was not written: {error.strerror or 'the disk refused it'}") from None
    except CorsetkitError as refusal:
        # What failed stood beside for a moment only; whoever reads of it knows the folder.
        raise CorsetkitError(str(refusal).replace(str(beside), str(folder))) from refusal.__context__
    files = {kind: folder / one.name for kind, one in written.files.items()}
    return Output(folder, files, written.pages, written.said, (*finished.warnings, *bill(finished).warnings))


def folder_name(name, number=1, taken=()):
    """The wearer's folder's name, safe on any system and unlike those `taken` but for the case of letters."""
    made, known = file_name(name, number).text, {one.casefold() for one in taken}
    if made.casefold() not in known:
        return made
    # Two names may be one once their signs are left out.
    further = number
    while f"{made}_{further}".casefold() in known:
        further += 1
    return f"{made}_{further}"


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


def refuse_older(folder, again):
    """CorsetkitError where something stands at `folder` that may not be written over."""
    if not os.path.lexists(folder):
        return
    if not folder.is_dir() or folder.is_symlink():
        raise CorsetkitError(f"{folder} is there already and is no folder of ours: move it, or write to another one")
    if not again:
        raise CorsetkitError(f"the folder {folder} is there already, so it was left as it is: ask for it to be written "
                             "again, or write to another one")
    others = sorted(one.name for one in folder.iterdir() if not one.name.endswith(tuple(f"_{end}" for end in FILES)))
    if others:
        raise CorsetkitError(f"the folder {folder} holds {shown(others[0])}, which is not ours, so it was left as it is: "
                             "move that elsewhere first")


def disk_refused(error):
    """Whether it was the disk that stood in the way, and not the wearer or the style."""
    while error is not None:
        if isinstance(error, OSError):
            return True
        error = error.__cause__ or error.__context__
    return False


def _write_files(finished, laid, name, folder, wish, number):
    """Write every file into a folder; an `Output` of it."""
    begins = file_name(name, number)
    files = {kind: folder / f"{begins}_{kind}" for kind in FILES}
    paper, unit, date = wish.paper, wish.unit, wish.date
    printed = write_print(finished, files[PATTERN], paper, unit, name, date, number=number)
    # Plans and the draft by hand are read at a table: beside a large sheet they are on A4.
    small = paper if paper in PAPERS else PAPERS[0]
    write_lay_pdf(tuple(laid.values()), files[CUTTING], small.name, unit, name, date)
    by_hand = write_hand_sheets(finished.pattern, files[BY_HAND], small, unit, name, date, number)
    svg = write_svg(finished, files[SVG], unit, name, date)
    dxf = write_dxf(finished, files[DXF], unit, name, date, number=number)
    write_pieces(finished, files[PIECES], unit, name, date, laid)
    write_seams(finished, files[SEAMS], unit)
    write_sewing(finished, files[SEWING], unit, name, date)
    said = (begins.said, *printed.said, *by_hand.said, *svg.said, *dxf.said)
    return Output(folder, files, printed.pages, tuple(dict.fromkeys(filter(None, said))), ())


def _put_in_place(beside, folder):
    """Move the new folder into its place in one move; an older one is kept until that is done."""
    if not folder.exists():
        beside.rename(folder)
        return
    older = folder.with_name(f".{folder.name}.{os.getpid()}.older")
    folder.rename(older)
    try:
        beside.rename(folder)
    except BaseException:
        older.rename(folder)
        raise
    shutil.rmtree(older, ignore_errors=True)
