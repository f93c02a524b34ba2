"""The closer lay: which cloth it is wanted on, searched for while the page goes on, kept with the learner.

Nothing here knows of a page or a widget.
"""

import threading
import time
from dataclasses import dataclass, field, replace

import traitlets

from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError, sentence
from corsetkit.finish.finished import CLOTHS, SHELL
from corsetkit.lay.cloth import FOLDED, SINGLE, WIDTHS, Cloth
from corsetkit.lay.cloth_length import About, quantities_said, say_bought, say_share, say_width
from corsetkit.lay.items import items_of, layers_of
from corsetkit.lay.plan_pdf import write_lay_pdf
from corsetkit.lay.planning import plain_plan, plan, plan_further
from corsetkit.output import CUTTING
from corsetkit.printing.names import file_name
from corsetkit.teaching.lessons.sewing.plain_lay import plan_sheet
from corsetkit.teaching.shared.files_written import KeptPlanFile
from corsetkit.teaching.widgets import Answering, bundle, look
from corsetkit.units import in_one_unit, say_length
from corsetkit.words import words_of

WORDS = words_of("09_sewing")
SHARED = words_of("shared")


@dataclass(frozen=True)
class Wanted:
    """What is laid, and on what."""

    layer: str = SHELL
    cloth: Cloth = field(default_factory=Cloth)


def lies(cloth):
    """How a cloth lies, in a word or two: "single", "folded, nap"."""
    return WORDS(f"lies_{cloth.laid}_nap" if cloth.one_way else f"lies_{cloth.laid}")


def chosen(wanted, message):
    """What is wanted once the page has chosen one thing anew."""
    name, value = message.get("name"), message.get("value")
    if name == "layer" and value in CLOTHS:
        return replace(wanted, layer=value)
    if name == "width" and value in {f"{one:g}" for one in WIDTHS}:
        return replace(wanted, cloth=wanted.cloth.replaced(width=float(value)))
    if name == "laid" and value in (SINGLE, FOLDED):
        return replace(wanted, cloth=wanted.cloth.replaced(laid=value))
    if name == "one_way" and value in ("yes", "no"):
        return replace(wanted, cloth=wanted.cloth.replaced(one_way=value == "yes"))
    raise CorsetkitError(f"{name} {value} cannot be chosen")


def choices(unit):
    """The controls, each as its name, its question and its (value, words), widths in the learner's unit first."""
    widths = [
        [f"{cm:g}", WORDS("width_in_first" if unit == "in" else "width_cm_first", cm=f"{cm:g}", inches=inches)]
        for cm, inches in WIDTHS.items()
    ]
    ways = [[laid, WORDS(f"lies_{laid}")] for laid in (SINGLE, FOLDED)]
    return [
        {"name": "layer", "label": WORDS("which_cloth"), "options": [[one, one] for one in CLOTHS]},
        {"name": "width", "label": WORDS("which_width"), "options": widths},
        {"name": "laid", "label": WORDS("which_way"), "options": ways},
        {"name": "one_way", "label": WORDS("which_nap"), "options": [["no", WORDS("no_nap")], ["yes", WORDS("nap_yes")]]},
    ]


@dataclass(frozen=True)
class Search:
    """One search as it was asked for: `known` is the plan that is kept for this cloth, or None; another `offset` searches
    elsewhere."""

    items: tuple
    cloth: object
    layer: str
    known: object
    seconds: int
    offset: int


def searched(search, progress):
    """The best plan and a sentence; where the search itself fails, the plain lay and why."""
    try:
        if search.known:
            best = plan_further(search.known, search.items, search.seconds, progress, search.offset)
            closer = best.length < search.known.length - 1e-6
            return best, WORDS("closer_found" if closer else "closer_not_found")
        return plan(search.items, search.cloth, search.seconds, progress, search.layer, search.offset), WORDS("laid")
    except CorsetkitError:
        raise
    except Exception as error:  # Whatever becomes of the search, cloth can be laid without it.
        best = search.known or plain_plan(search.items, search.cloth, search.layer)
        return best, sentence(WORDS("closer_failed", kind=type(error).__name__, error=error))


SECONDS = (2, 5, 10)
PAPERS = (("A4", WORDS("paper_a4")), ("Letter", WORDS("paper_letter")))


def in_a_thread(work):
    threading.Thread(target=work, daemon=True).start()


class CloserLay:
    """One learner's cutting plans.

    `told(progress)` is called with {"share", "words"} while a search runs and with None when it has ended; `start(work)`
    runs a search.
    """

    def __init__(self, drafts, told=lambda progress: None, start=in_a_thread):
        self.drafts, self.told, self._start = drafts, told, start
        self.wanted = Wanted()
        self.busy, self.note = False, ""
        self._offset = 0
        self._plans = KeptPlanFile(drafts.desk)
        self.adopt()

    def adopt(self) -> None:
        """Begin with the cloth of the plan that is kept, where there is one."""
        try:
            one = self._now()[2].plans.get(self.wanted.layer)
        except CorsetkitError:
            # Who cannot be drafted is told so in the drawing's place.
            return
        if one:
            self.wanted = replace(self.wanted, cloth=one.cloth)

    # What the page asks.

    def handle(self, message: dict) -> None:
        """Do what the page asks."""
        kind, self.note = message.get("kind"), ""
        try:
            if kind == "choose":
                self.wanted = chosen(self.wanted, message)
                if message.get("name") == "layer":
                    self.adopt()
            elif kind == "search":
                self._search(message.get("seconds"))
            elif kind == "sheets":
                self.note = self._write(message.get("paper"))
        except CorsetkitError as error:
            self.note = sentence(SHARED("not_done", error=self._said(error)))

    def shown(self) -> dict:
        """The whole state of the page."""
        cloth = self.wanted.cloth
        told = {
            "svg": "",
            "description": "",
            "said": [],
            "rows": [],
            "refused": "",
            "note": self.note,
            "busy": self.busy,
            "choice": {
                "layer": self.wanted.layer,
                "width": f"{cloth.width:g}",
                "laid": cloth.laid,
                "one_way": "yes" if cloth.one_way else "no",
            },
        }
        unit = self.drafts.desk.record.unit
        try:
            name, items, found = self._now()
            told["rows"] = [self._row(layer, items[layer], found.plans.get(layer)) for layer in items]
            mine = self._mine(items, found)
            sheet, key = plan_sheet(mine, unit, name)
        except CorsetkitError as error:
            return told | {"refused": sentence(self._said(error))}
        old = [sentence(one) for one in found.obsolete]
        # That a plain lay lies in rows is said with which lay it is.
        return told | {
            "svg": svg_text(sheet),
            "description": sheet.description,
            "said": [*old, *self._how(mine, found), *quantities_said(mine, unit, (About.IN_ROWS,)), *key],
        }

    # How it is made.

    def _now(self):
        """The wearer's name, the items of each cloth, and the kept plans."""
        name, finished = self.drafts.finished(self.drafts.now())
        items = {layer: items_of(finished, layer) for layer in layers_of(finished)}
        return name, items, self._plans.read(name, items)

    def _mine(self, items, found):
        """The kept plan where it is one of what is wanted, else the plain lay."""
        layer, cloth = self.wanted.layer, self.wanted.cloth
        if layer not in items:
            raise CorsetkitError(f"nothing is cut of the {layer}")
        one = found.plans.get(layer)
        return one if one and one.cloth == cloth else plain_plan(items[layer], cloth, layer)

    def _how(self, mine, found):
        if found.plans.get(mine.layer) is mine:
            return [WORDS("this_is_kept")]
        plain = WORDS("this_is_plain")
        if other := found.plans.get(mine.layer):
            width = say_width(other.cloth, self.drafts.desk.record.unit)
            return [plain, WORDS("list_counts", layer=mine.layer, width=width, lies=lies(other.cloth))]
        return [plain]

    def _row(self, layer, items, one):
        """One line of the list of what to buy: cloth, how it lies, length, to buy, share, which lay."""
        unit = self.drafts.desk.record.unit
        try:
            laid = one or plain_plan(items, self.wanted.cloth, layer)
        except CorsetkitError as error:
            cloth = self.wanted.cloth
            return [layer, say_width(cloth, unit), lies(cloth), "–", "–", "–", self._said(error)]
        return [
            layer,
            say_width(laid.cloth, unit),
            lies(laid.cloth),
            say_length(laid.length, unit),
            say_bought(laid.length, unit),
            say_share(laid.used),
            WORDS("row_kept" if one else "row_plain"),
        ]

    def _search(self, seconds):
        if seconds not in SECONDS or isinstance(seconds, bool):
            raise CorsetkitError(f"the time is {seconds}: allowed are {', '.join(map(str, SECONDS))} seconds")
        if self.busy:
            raise CorsetkitError("a lay is being searched for already; wait until it is there")
        name, items, found = self._now()
        mine = self._mine(items, found)
        self._offset += 1
        known = mine if mine is found.plans.get(mine.layer) else None
        asked = Search(items[mine.layer], mine.cloth, mine.layer, known, seconds, self._offset)
        self.busy = True
        # Whatever is changed on the page meanwhile, it ends as it began: for this wearer and these pieces.
        self._start(lambda: self._run(asked, name, items))

    def _run(self, asked, name, items):
        try:
            best, self.note = searched(asked, self._progress)
            self.note = f"{self.note} {self._plans.keep(name, items, best)}".rstrip()
        except CorsetkitError as error:
            self.note = sentence(SHARED("not_done", error=self._said(error)))
        finally:
            self.busy = False
            self.told(None)

    def _progress(self, share, length):
        so_far = say_length(length, self.drafts.desk.record.unit)
        self.told({"share": share, "words": WORDS("shortest_so_far", length=so_far)})

    def _write(self, paper):
        if paper not in dict(PAPERS):
            raise CorsetkitError(f"paper is {paper}: allowed are A4 and Letter")
        name, items, found = self._now()
        folder, unit, base = self.drafts.desk.make_folder(), self.drafts.desk.record.unit, file_name(name)
        laid = tuple(found.plans.get(layer) or plain_plan(mine, self.wanted.cloth, layer) for layer, mine in items.items())
        path = write_lay_pdf(laid, folder / f"{base}_{CUTTING}", paper, unit, name)
        return f"{WORDS('plans_written', folder=folder, file=path.name)} {base.said}".rstrip()

    def _said(self, error):
        return in_one_unit(str(error), self.drafts.desk.record.unit)


_EVERY = 0.15
"""Seconds between two words of a search's progress to the page."""


class LayWidget(Answering):
    """The page's view of one `CloserLay`."""

    _esm = bundle("lay")
    _css = look("sewing")

    parts = traitlets.Dict().tag(sync=True)

    def __init__(self, drafts, start=in_a_thread):
        self.lay = CloserLay(drafts, self._told, start)
        self._last = 0.0
        parts = {
            "choices": choices(drafts.desk.record.unit),
            "seconds": list(SECONDS),
            "papers": [list(one) for one in PAPERS],
        }
        super().__init__(parts=parts, progress={"share": 0.0, "words": ""}, shown=self.lay.shown())

    def answer(self, message, buffers):
        self.lay.handle(message)
        return self.lay.shown()

    def refresh(self) -> None:
        self.lay.note = ""
        self.renew(self.lay.shown())

    def _told(self, progress):
        if progress is None:
            self.progress = {"share": 0.0, "words": ""}
            self.renew(self.lay.shown())
        elif time.monotonic() - self._last >= _EVERY:
            self._last = time.monotonic()
            self.progress = progress
