"""What a learner writes of the finished pattern: prints, files for other programs, lists; and her cutting plans, kept."""

from corsetkit.errors import CorsetkitError
from corsetkit.lay import plan_file as kept
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.items import fingerprint, items_of, layers_of
from corsetkit.lay.plan_pdf import write_lay_pdf
from corsetkit.lay.planning import plain_plan
from corsetkit.output import BY_HAND, CUTTING, DXF, PATTERN, PIECES, SEAMS, SVG, Wish, write_folder
from corsetkit.printing.names import file_name
from corsetkit.teaching.desk import PLANS
from corsetkit.teaching.widgets import say_working
from corsetkit.words import words_of

SHARED = words_of("shared")


class KeptPlanFile:
    """The plans kept for the wearers of a desk, one for each cloth; without a folder they last as long as this does."""

    def __init__(self, desk):
        self.desk = desk
        self._memory = {}
        self._seen, self._read = None, None

    def read(self, name, items):
        """The wearer's `KeptPlans`, given the items of each cloth; what cannot be read is told among what is obsolete."""
        prints = tuple(map(fingerprint, items.values()))
        path = self._path(name)
        if path is None:
            return kept.KeptPlans({layer: one for layer, one in self._memory.items() if one.fingerprint in prints})
        try:
            seen = path, path.stat().st_mtime_ns, prints
        except OSError:
            seen = None
        if seen is None or seen != self._seen:
            # Each plan is checked as it is read, which takes longer than to look at the file's time.
            self._seen, self._read = seen, _read(path, items)
        return self._read

    def keep(self, name, items, plan) -> str:
        """Keep a plan in the place of the one of the same cloth; CorsetkitError where the disk is in the way.

        Where the file that is there cannot be read it is put beside, and the sentence that says so is given back. A plan of
        other pieces cannot be cut any more, and goes.
        """
        path = self._path(name)
        if path is None:
            self._memory[plan.layer] = plan
            return ""
        said = self.desk.rewrite(
            path.name,
            lambda there: kept.read_file(there, items),
            lambda there, found: kept.write_file(there, {**found.plans, plan.layer: plan}.values()),
        )
        self._seen = None
        return said

    def _path(self, name):
        return self.desk.folder / f"{PLANS}{file_name(name)}.json" if self.desk.folder else None


def items_by_layer(finished):
    """The items of each cloth of a `Finished` pattern."""
    return {layer: items_of(finished, layer) for layer in layers_of(finished)}


def plans_at_hand(desk, name, finished):
    """A plan for each cloth of the wearer's pattern: the kept one, else the plain lay on the usual cloth.

    CorsetkitError where a piece cannot lie on that cloth.
    """
    items = items_by_layer(finished)
    found = KeptPlanFile(desk).read(name, items).plans
    return {layer: found.get(layer) or plain_plan(mine, Cloth(), layer) for layer, mine in items.items()}


def _read(path, items):
    try:
        return kept.read_file(path, items)
    except CorsetkitError as error:
        return kept.KeptPlans({}, (SHARED("lay_again", error=error),))


_HOME, _SHOP, _FILES = SHARED("files_home"), SHARED("files_shop"), SHARED("files_programs")
_TABLE, _ALL = SHARED("files_table"), SHARED("files_everything")
CHOICES = (
    ("A4", SHARED("file_a4"), _HOME), ("Letter", SHARED("file_letter"), _HOME), ("pieces", SHARED("file_pieces"), _HOME),
    ("A0", SHARED("file_a0"), _SHOP), ("roll", SHARED("file_roll"), _SHOP),
    ("cutting", SHARED("file_cutting"), _TABLE), ("hand", SHARED("file_hand"), _TABLE),
    ("lists", SHARED("file_lists"), _TABLE),
    ("svg", SHARED("file_svg"), _FILES), ("dxf", SHARED("file_dxf"), _FILES),
    ("all", SHARED("file_all"), _ALL),
)  # fmt: skip
"""What can be written: (its name, its words, what it is for)."""
SAID = SHARED("files_later")
_PAPERS = {
    "A4": ("A4", False),
    "Letter": ("Letter", False),
    "pieces": ("A4", True),
    "A0": ("A0", False),
    "roll": ("roll", False),
}
_WITH_PLANS = ("cutting", "lists", "all")
_LAST = SHARED("files_last")


def write_files(drafts, choice: str) -> str:
    """Write what is chosen for the desk's wearer, style and allowances, and say where it is."""
    if choice not in {one for one, _, _ in CHOICES}:
        raise CorsetkitError(f"the choice is {choice}: allowed are {', '.join(words for _, words, _ in CHOICES)}")
    say_working(SHARED("files_finishing"))
    name, finished = drafts.finished(drafts.now())
    folder, unit = drafts.desk.make_folder(), drafts.desk.record.unit
    laid = plans_at_hand(drafts.desk, name, finished) if choice in _WITH_PLANS else None
    if choice == "all":
        done = write_folder(
            finished, name, folder / file_name(name).text, wish=Wish("A4", unit), again=True, laid=laid, told=_working_on
        )
        return " ".join(
            (
                SHARED(
                    "files_in_folder",
                    folder=done.folder,
                    files=", ".join(one.name for one in done.files.values()),
                    pages=done.pages,
                ),
                *done.said,
                _LAST,
            )
        )
    begins = file_name(name)
    told, said = _written(finished, laid, choice, folder, begins, unit, name)
    last = _LAST if choice in _PAPERS else ""
    return " ".join(filter(None, (SHARED("files_written", folder=folder, files=told), begins.said, *said, last)))


def _working_on(file, done=0, of=1):
    if of > 1:
        say_working(SHARED("writing_one_of", file=file, number=done + 1, count=of), done, of)
    else:
        say_working(SHARED("writing", file=file))


def _next(path, done=0, of=1):
    """The path of a file that is going to be written, once the page has heard of it."""
    _working_on(path.name, done, of)
    return path


def _written(finished, laid, choice, folder, begins, unit, name):
    """Write one choice: its file's name with its pages, and sentences about what could not be had as asked."""
    if choice in _PAPERS:
        from corsetkit.printing.finished_print import write_print

        paper, alone = _PAPERS[choice]
        done = write_print(finished, _next(folder / f"{begins}_{choice}_{PATTERN}"), paper, unit, name, by_piece=alone)
        return SHARED.counted("file_pages", done.pages, file=done.path.name), done.said
    if choice == "hand":
        from corsetkit.printing.hand_pages import write_hand_sheets

        done = write_hand_sheets(finished.pattern, _next(folder / f"{begins}_{BY_HAND}"), "A4", unit, name)
        return SHARED.counted("file_pages", done.pages, file=done.path.name), done.said
    if choice == "lists":
        from corsetkit.export.piece_list import write_pieces
        from corsetkit.export.seam_report import write_seams

        pieces, seams = (folder / f"{begins}_{kind}" for kind in (PIECES, SEAMS))
        write_pieces(finished, _next(pieces, 0, 2), unit, name, plans=laid)
        write_seams(finished, _next(seams, 1, 2), unit)
        return SHARED("pair", one=pieces.name, other=seams.name), ()
    if choice == "cutting":
        path = write_lay_pdf(tuple(laid.values()), _next(folder / f"{begins}_{CUTTING}"), "A4", unit, name)
        return SHARED("file_plans", file=path.name, count=len(laid)), ()
    if choice == "svg":
        from corsetkit.export.svg_mm import write_svg

        done = write_svg(finished, _next(folder / f"{begins}_{SVG}"), unit, name)
    else:
        from corsetkit.export.dxf import write_dxf

        done = write_dxf(finished, _next(folder / f"{begins}_{DXF}"), unit, name)
    return done.path.name, done.said
