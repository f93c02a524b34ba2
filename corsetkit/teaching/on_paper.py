"""A step on paper: its hand instructions for the wearer, and how to check it with a tape."""

from html import escape

from corsetkit.drawing.step_sheet import hand_sheet
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.errors import CorsetkitError, sentence
from corsetkit.hand.drafter import checks_of, moves_of, numbers_of
from corsetkit.hand.sentences import say, say_why
from corsetkit.hand.whole import by_hand_from_the_start
from corsetkit.teaching.picture import Stored
from corsetkit.words import words_of

SHARED = words_of("shared")

WIDEST = "820px"
"""How wide the drawing to draw after is on the page: all of it in sight at once."""


def moves(name: str, steps, step: str, unit: str) -> Stored:
    """The step `step` of the wearer's `steps` as numbered moves, each with its reason in small print, under the drawing
    in which each mark bears the number of its move."""
    made = by_hand_from_the_start(step, getattr(steps, step), steps.style)
    told = moves_of(made[-1])
    places = {mark.name: mark.point for step_made in made for mark in step_made.marks}
    lines, reasons = [], set()
    for one in told:
        why = sentence(say_why(one, unit, steps.measurements, steps.style))
        # A reason is given once.
        lines.append((say(one, unit, places), "" if why in reasons else why))
        reasons.add(why)
    sheet = hand_sheet(made, numbers_of(told), unit, SHARED("hand_title", name=name))
    opening = SHARED("hand_opening", whom=_for(name, unit), part=_part(unit))
    items = "".join(
        f'<li style="margin-bottom:6px">{escape(what)}{f"<br><small>{escape(why)}</small>" if why else ""}</li>'
        for what, why in lines
    )
    return Stored(
        f"{svg_image(svg_text(sheet), WIDEST)}<p>{escape(opening)}</p><ol>{items}</ol>",
        (sheet.description, opening, *(f"{number}. {what} {why}".rstrip() for number, (what, why) in enumerate(lines, 1))),
    )


def checks(name: str, steps, step: str, unit: str, more=()) -> Stored:
    """What the tape should read on the finished drawing; `more` are sentences of the lesson's own."""
    made = by_hand_from_the_start(step, getattr(steps, step), steps.style)[-1]
    found = [*(say(one, unit) for one in checks_of(made)), *more]
    opening = _for(name, unit)
    items = "".join(f"<li>{escape(one)}</li>" for one in found)
    return Stored(f"<p>{escape(opening)}</p><ul>{items}</ul>", (opening, *found))


def of_desk(the_desk, drafts, step: str, style: dict, make) -> Stored:
    """`make(name, steps)` for the desk's wearer, or the sentence that says why there is nothing to draw."""
    try:
        return make(*drafts.steps({**the_desk.record.style, **style}, step))
    except CorsetkitError as error:
        words = sentence(SHARED("hand_nothing", error=error))
        return Stored(f"<p>{escape(words)}</p>", (words,))


def _for(name: str, unit: str) -> str:
    return SHARED(f"hand_for_{unit}", name=name)


def _part(unit: str) -> str:
    return SHARED("hand_sixteenth" if unit == "in" else "hand_millimetre")
