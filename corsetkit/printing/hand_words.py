"""What stands on the pages of a step: its opening, its moves with their reasons, and its checks, as rows to be set."""

from corsetkit.drawing.canvas import box_run
from corsetkit.drawing.lettering import CAPITALS, fitted, wrapped
from corsetkit.drawing.pens import GRAPHITE, RULE, Letter
from corsetkit.errors import sentence
from corsetkit.fitting.correct import said as said_corrections
from corsetkit.hand.drafter import checks_of, moves_of
from corsetkit.hand.sentences import say, say_why
from corsetkit.printing.page_rows import Row, heading
from corsetkit.words import words_of

WORDS = words_of("printing")


MOVE = Letter("hand-words", 3.0)
NUMBER = Letter("hand-number", 3.0, True)
REASON = Letter("hand-reason", 2.6, False, GRAPHITE)
_LINE, _REASON_LINE = 0.40, 0.36
_TEXT = 1.55
"""How far from the left the words of a move begin, cm: before them stand a box to tick and the number."""
_BOX = 0.3


def step_rows(by_hand, steps, unit, places, width):
    """The rows of one step: moves with their reasons, each reason given once, and what the tape should read.

    Args:
        by_hand: the step's `ByHand`. steps: the `Steps` it was drawn in. unit: "in" or "cm".
        places: the points of all marks so far, by their names. width: cm.
    """
    rows, given = [], set()
    for number, one in enumerate(moves_of(by_hand), 1):
        why = sentence(say_why(one, unit, steps.measurements, steps.style))
        rows.append(_to_tick(str(number), say(one, unit, places), "" if why in given else why, width))
        given.add(why)
    checks = checks_of(by_hand)
    if checks:
        first, *others = (_to_tick("", say(one, unit), "", width) for one in checks)
        rows += [_under(heading(WORDS("hand_check")), first), *others]
    return rows


def opening_rows(unit, corrections, width):
    """What is said above the moves."""
    text = WORDS(f"hand_opening_{unit}")
    if told := said_corrections(corrections, unit):
        text += " " + WORDS("hand_corrected", corrections="; ".join(told))
    return [_block(wrapped(text, MOVE, width, 1.0), MOVE, _LINE, 0.0, width)]


def _to_tick(number, text, why, width):
    """A move: a box to tick, its number, its words and its reason, held together on one page."""
    lines = _block(wrapped(text, MOVE, width - _TEXT, 1.0), MOVE, _LINE, _TEXT, width)
    reason = _block(wrapped(why, REASON, width - _TEXT, 1.0), REASON, _REASON_LINE, _TEXT, width) if why else None
    high = lines.height + (reason.height if reason else 0.0) + 0.14

    def paint(canvas, at):
        top = at + 1j * high
        base = top - 1j * _LINE
        middle = base.imag + CAPITALS / 2 * MOVE.size / 10
        canvas.line(box_run(at.real, middle - _BOX / 2, at.real + _BOX, middle + _BOX / 2), RULE)
        if number:
            canvas.words(base + _TEXT - 0.2, f"{number}.", NUMBER, "end")
        lines.paint(canvas, top - 1j * lines.height)
        if reason:
            reason.paint(canvas, top - 1j * (lines.height + reason.height))

    return Row(high, paint)


def _under(above, below):
    """Two rows held together."""

    def paint(canvas, at):
        above.paint(canvas, at + 1j * below.height)
        below.paint(canvas, at)

    return Row(above.height + below.height, paint)


def _block(lines, letter, line, left, width):
    """Lines of words under each other as one row; a word too long for its line is cut short."""
    high = line * len(lines)

    def paint(canvas, at):
        for number, text in enumerate(lines, 1):
            canvas.words(at + left + 1j * (high - number * line), fitted(text, letter, width - left, 1.0), letter, "start")

    return Row(high, paint)
