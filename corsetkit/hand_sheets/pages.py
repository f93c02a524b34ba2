"""The pages of the hand sheets: for each step one with the drawing so far, and as many as its moves need."""

from corsetkit.hand.drafter import moves_of, numbers_of
from corsetkit.hand.whole import whole_by_hand
from corsetkit.sheets.rows import broken, height, paint_rows
from corsetkit.showing.canvas import tick
from corsetkit.showing.hand_sheet import SCALE, hand_sheet
from corsetkit.showing.lettering import fitted, text_width
from corsetkit.showing.pens import NAME, RULE, SMALL
from corsetkit.showing.sheet import Sheet
from corsetkit.steps.run import RESTS_ON
from corsetkit.hand_sheets.inset import Inset, fitted_sheet
from corsetkit.hand_sheets.words import opening_rows, step_rows

_HEAD = 0.95
"""How high the strip with wearer, step, date and page is, cm."""
_EDGE = 0.1
_DONE = "When this step is done"
_LEAST_UNDER = 2.5
"""Under a drawing moves are only begun where so much is left, cm."""


def hand_pages(pattern, paper, unit, wearer="", said_date=""):
    """All pages as sheets of the paper's window, in the order of the steps that the pattern was drawn in.

    Raises:
        CorsetkitError: where a step cannot be made by hand, as `whole_by_hand` says.
    """
    whole, laid = whole_by_hand(pattern.steps), []
    for number, name in enumerate(whole, 1):
        title = f"Step {number}: {step_words(name)}"
        laid += [(title, paint) for paint in _step(pattern, whole, name, title, unit, paper.window)]
    owner = f"By hand for {wearer}" if wearer else "By hand"
    return tuple(_page(paper, owner, title, said_date, number, len(laid), paint)
                 for number, (title, paint) in enumerate(laid, 1))


def step_words(name):
    """A step's name as people say it."""
    return name.replace("_part_", "-part ").replace("_", " ")


def _step(pattern, whole, name, title, unit, window):
    """What is painted on each page of a step, below the page's head: functions of a canvas."""
    chain = [name]
    while chain[0] in RESTS_ON:
        chain.insert(0, RESTS_ON[chain[0]])
    made = [whole[one] for one in chain]
    width, high = window.real - 2 * _EDGE, window.imag - _HEAD - 2 * _EDGE
    places = {mark.name: mark.point for one in made for mark in one.marks}
    numbers = numbers_of(moves_of(made[-1]))
    opening = opening_rows(unit, pattern.corrections, width)
    room = complex(width, high - height(opening) - 0.4)
    sheet = fitted_sheet(lambda scale: hand_sheet(made, numbers, unit, _DONE, scale), room, SCALE)
    drawn = sheet.size.imag / sheet.scale
    rows = step_rows(made[-1], pattern.steps, unit, places, width)
    left = room.imag - drawn - 0.3
    under, rest = _split(rows, left) if left >= _LEAST_UNDER else ([], rows)
    top = complex(_EDGE, high + _EDGE)

    def first(canvas):
        paint_rows(canvas, opening, top)
        low = complex(window.real / 2 - sheet.size.real / sheet.scale / 2, top.imag - height(opening) - 0.4 - drawn)
        with canvas.group("drawing"):
            sheet.paint(Inset(canvas, sheet.scale, sheet.low, low))
        paint_rows(canvas, under, complex(_EDGE, low.imag - 0.3))

    further = broken(rest, high) if rest else ()
    return [first, *((lambda canvas, rows=rows: paint_rows(canvas, rows, top)) for rows in further)]


def _split(rows, most):
    """As many rows as fit, and the rest."""
    first, *others = broken(rows, most)
    return (first, [row for group in others for row in group]) if height(first) <= most else ([], rows)


def _page(paper, owner, title, said_date, number, last, paint_below):
    window = paper.window
    place = " \u00b7 ".join(text for text in (said_date, f"page {number} of {last}") if text)

    def paint(canvas):
        level = window.imag - 0.5
        with canvas.group("head"):
            canvas.words(complex(window.real - _EDGE, level), place, SMALL, "end")
            room = window.real - 2 * _EDGE - text_width(place, SMALL, 1.0) - 0.5
            step = text_width(f" \u00b7 {title}", NAME, 1.0)
            said = f"{fitted(owner, NAME, room - step, 1.0)} \u00b7 {title}"
            canvas.words(complex(_EDGE, level), said, NAME, "start")
            tick(canvas, complex(_EDGE, level - 0.22), complex(window.real - _EDGE, level - 0.22), RULE)
        paint_below(canvas)

    return Sheet(0j, window, f"{owner}, {title}, page {number}", f"{title}. {place}.", paint)
