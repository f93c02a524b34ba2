"""The learner at a toile: a fault seen, how much of it, the line that moves, and the corrections kept.

Nothing here knows of a page or a widget; a dict comes in, a dict goes out, and a mistake of the learner's is a sentence.
"""

from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError, sentence
from corsetkit.fitting.correct import said as said_totals
from corsetkit.fitting.effect import lines_of, moved, said_moved, said_walked, walked
from corsetkit.fitting.faults import FAULTS
from corsetkit.fitting.lines import line_named
from corsetkit.style import Style
from corsetkit.teaching.controls import Control
from corsetkit.teaching.lessons.sewing.corrected_sheet import corrected_sheet
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.corrected import Corrected, keep, read_kept
from corsetkit.teaching.shared.finished_drafts import style_in
from corsetkit.units import in_one_unit
from corsetkit.words import words_of

WORDS = words_of("09_sewing")
SHARED = words_of("shared")


def named_seam(one):
    """The beginning of a sentence on a `Walked` seam, with the letter that it bears on the pieces."""
    return WORDS("named_seam", letter=seam_letter(one.number), name=one.name)


GROUPS = {
    WORDS("group_lacing"): ("top girth", "hip girth", "waist girth", "side seam", "length above the waist"),
    WORDS("group_underbust"): ("underbust girth",),
    WORDS("group_cups"): (
        "bust point sideways",
        "bust point height",
        "cup to the side",
        "cup to the front",
        "centre front dart",
        "underbust line",
        "centre front",
    ),
    WORDS("group_top"): ("tightening dart", "overbust mark"),
    WORDS("group_hem"): ("hem at the front", "hem at the side"),
    WORDS("group_yoke"): ("back yoke", "yoke neckline"),
}
"""In which order a toile is looked at, and which lines belong there: the first moves what comes after; course convention."""
_WALKED, _LINES = 4, 4
"""How many sentences on seams and on lines are told at most."""


def grouped(style=None):
    """{group: ((number of the fault among FAULTS, fault), ...)} in the order of fitting, of what this style can show."""
    style = style or Style()
    found = {}
    for group, lines in GROUPS.items():
        mine = [(number, one) for number, one in enumerate(FAULTS) if one.moves[0][0] in lines and one.fits(style)]
        if mine:
            found[group] = tuple(sorted(mine, key=lambda one: lines.index(one[1].moves[0][0])))
    return found


FIRST = next(iter(grouped().values()))[0][0]
"""The number of the fault that is looked at first."""


class FittingTable:
    """One fault at a time, over the desk's wearer with her kept corrections."""

    def __init__(self, drafts: Corrected, key: str):
        self.drafts, self.key = drafts, key
        # What is kept and what is tried are drafted side by side, so that neither pushes the other out.
        self._tried = Corrected(drafts.desk)
        self.number = FIRST
        self.pinch: dict = {}
        self._listed = ()
        self.typed = ""
        self.note = self.refused = ""
        self.picture = Picture("", "")
        self.draw()

    @property
    def fault(self):
        return FAULTS[self.number]

    @property
    def amount(self):
        """The pinch in cm."""
        return self.pinch.get(self.number, self.fault.pinch.default)

    def handle(self, message: dict) -> None:
        """Do what the page asks."""
        kind, self.note, self.typed, goes_on = message.get("kind"), "", "", ""
        try:
            if kind == "fault" and message.get("which") in range(len(FAULTS)):
                self.number = message["which"]
            elif kind == "set":
                self._set((message.get("changes") or {}).get("pinch") or {})
                return
            elif kind == "add":
                goes_on = self._add()
            elif kind == "back":
                self._take_back(message.get("place"))
        except CorsetkitError as error:
            self.note = sentence(SHARED("not_done", error=self._said(error)))
        self.draw()
        if goes_on and not self.refused:
            self.note = f"{self.note} {goes_on}"

    def refresh(self) -> None:
        """Draw anew, for something on the desk has changed."""
        self.note = self.typed = ""
        if not self.fault.fits(Style(**self.drafts.desk.record.style)):
            self.number = FIRST
        self.draw()

    def draw(self) -> None:
        """Draw what the correction does; where that is refused, the last drawing stays and the reason is kept."""
        try:
            self.picture, self.refused = self._pictured(self.amount), ""
        except CorsetkitError as error:
            self.refused = sentence(self._said(error))
        self._listed = self._corrections()

    def shown(self) -> dict:
        """The whole state of the page."""
        unit, fault = self.drafts.desk.record.unit, self.fault
        control = Control(fault.pinch, unit)
        state = control.state(self.amount) | ({"words": self.typed, "wrong": True} if self.typed else {})
        return {
            "faults": [[group, [[number, one.seen] for number, one in ones]] for group, ones in self._grouped().items()],
            "fault": self.number,
            "control": control.page() | {"name": "pinch"},
            "state": state | {"idle": ""},
            "cause": WORDS("likely", cause=fault.cause),
            "caution": fault.caution,
            "svg": self.picture.svg,
            "description": self.picture.description,
            "said": list(self.picture.said),
            "refused": self.refused,
            "note": self.note,
            "kept": self._kept(),
            "totals": self._totals(),
            "trouble": read_kept(self.drafts.desk)[1],
        }

    def still(self) -> Picture:
        """The picture as a page shows it before anything runs, with what it is about."""
        fault, unit = self.fault, self.drafts.desk.record.unit
        about = (
            WORDS("seen", seen=fault.seen),
            WORDS("likely", cause=fault.cause),
            WORDS("measured", meaning=fault.pinch.meaning, amount=fault.pinch.say(self.amount, unit)),
            fault.caution,
        )
        picture = self._pictured(self.amount)
        return Picture(picture.svg, picture.description, (*about, *picture.said))

    # How it is made.

    def _pictured(self, amount):
        unit, fault, now = self.drafts.desk.record.unit, self.fault, self.drafts.now()
        name, before = self.drafts.pattern(now)
        made = fault.corrections(amount)
        _, after = self._tried.corrected(now, (*before.corrections, *made))
        found, seams = moved(before, after), walked(before, after)
        said, next_pass = (
            "; ".join(line_named(one.line).said(one.by, unit) for one in ones)
            for ones in (made, fault.further_corrections(amount))
        )
        title = WORDS("fitting_title", seen=f"{fault.seen[0].upper()}{fault.seen[1:]}", name=name)
        told = [
            WORDS("corrected", corrections=said),
            *_few(said_moved(found, unit), _LINES, lambda left: WORDS.counted("more_lines", left)),
            *([WORDS("next_pass", corrections=next_pass)] if next_pass else []),
            *_few(said_walked(seams, unit, named_seam), _WALKED, lambda left: WORDS.counted("more_seams", left)),
        ]
        sheet = corrected_sheet(lines_of(before.steps), found, unit, title, f"{title}. {' '.join(told)}")
        return Picture(svg_text(sheet), sheet.description, tuple(told))

    def _set(self, answer):
        try:
            self.pinch[self.number] = Control(self.fault.pinch, self.drafts.desk.record.unit).read(answer)
        except CorsetkitError as error:
            self.typed = str(answer.get("text") or "")
            self.refused = sentence(self._said(error))
            return
        self.draw()

    def _add(self):
        # Drawn first: what cannot be drawn is not kept.
        self._pictured(self.amount)
        made = self.fault.corrections(self.amount)
        name = self.drafts.desk.body()[0]
        beside = keep(self.drafts.desk, lambda kept: kept.with_more(name, made), self.key)
        self.note = f"{WORDS('kept_for', name=name)} {beside}".rstrip()
        return WORDS("goes_on")

    def _take_back(self, place):
        if isinstance(place, bool) or not isinstance(place, int) or not 0 <= place < len(self._listed):
            raise _gone()
        name, taken = self.drafts.desk.body()[0], self._listed[place]

        def without(kept):
            ones = list(kept.of(name))
            # Another lesson may have kept or taken back some since the page was told; the same one is meant all the same.
            if taken not in ones:
                raise _gone()
            at = place if ones[place : place + 1] == [taken] else ones.index(taken)
            return kept.with_only(name, ones[:at] + ones[at + 1 :])

        beside = keep(self.drafts.desk, without, self.key)
        said = line_named(taken.line).said(taken.by, self.drafts.desk.record.unit)
        self.note = f"{WORDS('taken_back', correction=said)} {beside}".rstrip()

    def _corrections(self):
        try:
            return self.drafts.corrections()
        except CorsetkitError:
            # Without a wearer there is nothing kept for her; the drawing's place says who is missing.
            return ()

    def _kept(self):
        unit = self.drafts.desk.record.unit
        return [line_named(one.line).said(one.by, unit) for one in self._listed]

    def _totals(self):
        ones = self._listed
        if len(ones) < 2:
            return []
        return [WORDS("in_all", corrections="; ".join(said_totals(ones, self.drafts.desk.record.unit)) or WORDS("nothing"))]

    def _grouped(self):
        return grouped(Style(**style_in(self.drafts.desk.record.style)))

    def _said(self, error):
        return in_one_unit(str(error), self.drafts.desk.record.unit)


def _gone():
    return CorsetkitError("this correction is not there any more")


def _few(told, most, more):
    """The first sentences and the last, which sums up; `more(left)` says how many are left out."""
    if (left := len(told) - most - 1) <= 0:
        return told
    return (*told[:most], more(left), told[-1])
