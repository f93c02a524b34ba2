"""A correction brought onto the paper, as numbered moves with their numbers; and what to count and measure after it."""

from collections import Counter
from html import escape

from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.finish.finished import CLOTHS
from corsetkit.fitting.correct import said as said_totals
from corsetkit.fitting.effect import LEAST, lines_of, moved, walked
from corsetkit.fitting.faults import FAULTS
from corsetkit.teaching.lessons.sewing.corrected_sheet import corrected_sheet, farthest, on_back
from corsetkit.teaching.lessons.sewing.fitting_table import FIRST, named_seam
from corsetkit.teaching.on_paper import WIDEST
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared.finished_drafts import read_or_refused
from corsetkit.units import Say
from corsetkit.words import words_of

WORDS = words_of("09_sewing")
SHARED = words_of("shared")

_LINES = 6
"""Of how many lines the move is told."""
_CLEAR = 0.35
"""A step is told upwards or sideways where that is so large a part of it."""
_AT_WAIST = 0.3
"""A place nearer to the waist than this, cm, is told as at the waist."""


class Corrections:
    """The desk's kept corrections, or the first of the list as an example, with the pattern before and after."""

    def __init__(self, drafts):
        now = drafts.now()
        self.unit = drafts.desk.record.unit
        kept = drafts.corrections()
        self.example = not kept
        made = kept or FAULTS[FIRST].corrections()
        self.name, self.before = drafts.corrected(now, ())
        _, self.after = drafts.corrected(now, made)
        self.said = said_totals(made, self.unit)
        self.found = moved(self.before, self.after)
        self.seams = [
            one
            for one in walked(self.before, self.after)
            if one.before is not None and abs(one.after - one.before) >= LEAST[self.unit]
        ]

    @property
    def opening(self):
        words = "; ".join(self.said) or WORDS("nothing")
        if self.example:
            return WORDS("example", name=self.name, seen=FAULTS[FIRST].seen, corrections=words)
        return WORDS("all_kept", name=self.name, corrections=words)

    @property
    def say(self):
        return Say(self.unit)


def by_hand(drafts) -> Stored:
    """The corrections on paper."""
    return read_or_refused(lambda: _by_hand(Corrections(drafts)))


def _by_hand(made):
    moves = [WORDS("paper_pinch"), WORDS("paper_trace"), *(_move(one, made) for one in _told(made)), WORDS("paper_draw")]
    if left := len(made.found) - len(_told(made)):
        moves.append(WORDS.counted("paper_follow", left))
    moves.append(WORDS("paper_cut"))
    for one in made.seams:
        more = one.after - one.before
        moves.append(
            WORDS(
                "paper_longer" if more > 0 else "paper_shorter",
                letter=seam_letter(one.number),
                name=one.name,
                length=made.say(one.after),
                by=made.say(abs(more)),
            )
        )
    moves += [WORDS("paper_notches"), WORDS("paper_allowance")]
    title = WORDS("paper_title", name=made.name)
    sheet = corrected_sheet(lines_of(made.before.steps), made.found, made.unit, title, f"{title}. {made.opening}")
    items = "".join(f'<li style="margin-bottom:6px">{escape(one)}</li>' for one in moves)
    return Stored(
        f"{svg_image(svg_text(sheet), WIDEST)}<p>{escape(made.opening)}</p><ol>{items}</ol>",
        (sheet.description, *(f"{number}. {one}" for number, one in enumerate(moves, 1))),
    )


def _told(made):
    return [one for one in made.found if one.most is not None and one.most >= LEAST[made.unit]][:_LINES]


def _move(one, made):
    after, before = farthest(one)
    level = before.imag
    where = ("above" if level > 0 else "below") if abs(level) > _AT_WAIST else "at"
    return WORDS(
        f"move_{where}_waist",
        # A name with its side behind a comma is closed with another.
        line=f"{one.name}," if "," in one.name else one.name,
        level=made.say(abs(level)),
        far=made.say(abs(after - before)),
        way=_way(after - before, on_back(one.name)),
    )


def _way(step, on_back):
    """Whither a step goes, in words; the front's side lies to the right, the back's to the left."""
    aside = -step.real if on_back else step.real
    ways = []
    if abs(step.imag) >= _CLEAR * abs(step):
        ways.append("up" if step.imag > 0 else "down")
    if abs(aside) >= _CLEAR * abs(step):
        ways.append("side" if aside > 0 else "centre")
    return WORDS(f"way_{'_'.join(ways)}")


def by_tape(drafts) -> Stored:
    """What to count and to measure."""
    return read_or_refused(lambda: _by_tape(drafts))


def _by_tape(drafts):
    made = Corrections(drafts)
    _, finished = drafts.finished(drafts.now())
    counts = Counter()
    for one in finished.pieces:
        for layer in one.layers:
            counts[layer.cloth] += layer.count
    told = [
        WORDS("tape_grain"),
        WORDS("tape_count", counts=", ".join(_count(cloth, counts[cloth]) for cloth in CLOTHS if counts[cloth])),
    ]
    for level, girth in made.after.girths.items():
        old = made.before.girths[level].finished
        changed = made.say(girth.finished) != made.say(old)
        told.append(
            WORDS(
                "girth_changed" if changed else "girth",
                level=SHARED(f"level_{level}").capitalize(),
                finished=made.say(girth.finished),
                before=made.say(old),
            )
        )
    told += [WORDS("seam_sides", seam=named_seam(one), length=made.say(one.after)) for one in made.seams]
    items = "".join(f"<li>{escape(one)}</li>" for one in told)
    return Stored(f"<p>{escape(made.opening)}</p><ul>{items}</ul>", (made.opening, *told))


def _count(cloth, count):
    return WORDS("tape_count_of", count=count, cloth=cloth)
