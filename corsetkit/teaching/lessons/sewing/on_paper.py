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

_LINES = 6
"""Of how many lines the move is told."""
_CLEAR = 0.35
"""A step is told upwards or sideways where that is so large a part of it."""


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
        words = "; ".join(self.said) or "nothing"
        if self.example:
            return (
                f"For {self.name}. No correction is kept yet, so this is an example: “{FAULTS[FIRST].seen}”. "
                f"To correct: {words}."
            )
        return f"For {self.name}, all corrections that are kept, together: {words}."

    @property
    def say(self):
        return Say(self.unit)


def by_hand(drafts) -> Stored:
    """The corrections on paper."""
    return read_or_refused(lambda: _by_hand(Corrections(drafts)))


def _by_hand(made):
    moves = [
        "Measure each pinch while it is pinned: from the pin to the fold, and double it, for the cloth lies there twice. "
        "Write it on the toile, with the day. Then take the pins out.",
        "Lay fresh paper over your block with all its lines, as it was before you cut it apart, and trace every line that "
        "stays. Keep the old one: it says where you came from.",
        *(_move(one, made) for one in _told(made)),
        "Draw each new line through its mark, in the way the old one runs, and lead it into the old line where the two meet.",
    ]
    if left := len(made.found) - len(_told(made)):
        follow = "line follows" if left == 1 else "lines follow"
        moves.append(f"{left} more {follow} by no more than that: redraw them to their new ends.")
    moves.append("Cut the pieces from the new drawing as before: darts turned, lines made smooth.")
    for one in made.seams:
        more = one.after - one.before
        moves.append(
            f"Walk seam {seam_letter(one.number)}, {one.name}: both sides are {made.say(one.after)} now, "
            f"{made.say(abs(more))} {'longer' if more > 0 else 'shorter'} than before."
        )
    moves += [
        "Lay the two sides of each of these seams on each other, and mark their notches anew, on both at once.",
        "Add the allowance anew, and write the day on the new pattern. Then sew a toile of it, and look once more.",
    ]
    title = f"On paper, for {made.name}"
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
    where = f"{made.say(abs(level))} {'above' if level > 0 else 'below'} the waist" if abs(level) > 0.3 else "at the waist"
    return (
        f"The {one.name}{',' if ',' in one.name else ''} moves most {where}: set a mark {made.say(abs(after - before))} "
        f"{_way(after - before, on_back(one.name))} from the old line."
    )


def _way(step, on_back):
    """Whither a step goes, in words; the front's side lies to the right, the back's to the left."""
    aside = -step.real if on_back else step.real
    words = []
    if abs(step.imag) >= _CLEAR * abs(step):
        words.append("up" if step.imag > 0 else "down")
    if abs(aside) >= _CLEAR * abs(step):
        words.append("towards the side" if aside > 0 else "towards the centre")
    return " and ".join(words)


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
        "On the cloth, before you cut: from the foot of each arrow to the selvedge it is as far as from its head. Half a "
        "centimetre (3/16 in) in the length of a panel is much: the panel would twist.",
        "Count what is cut: "
        + ", ".join(f"{counts[cloth]} of the {cloth}" for cloth in CLOTHS if counts[cloth])
        + ". Of each "
        "pair one is the other's mirror image: lay them on each other, right sides together, and they agree.",
    ]
    for level, girth in made.after.girths.items():
        old = made.before.girths[level].finished
        changed = made.say(girth.finished) != made.say(old)
        told.append(
            f"{level.capitalize()}, laced, the gap counted: {made.say(girth.finished)}"
            + (f", {made.say(old)} before the correction." if changed else ".")
        )
    told += [f"{named_seam(one)} on either side: {made.say(one.after)}." for one in made.seams]
    items = "".join(f"<li>{escape(one)}</li>" for one in told)
    return Stored(f"<p>{escape(made.opening)}</p><ul>{items}</ul>", (made.opening, *told))
