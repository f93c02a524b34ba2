"""The draft by hand on paper: for each step the drawing so far, set into a page, and its moves; written as a PDF."""

from contextlib import contextmanager

from corsetkit.drawing.canvas import NOTHING, Sheet, tick
from corsetkit.drawing.lettering import fitted, text_width
from corsetkit.drawing.pens import NAME, RULE, SMALL
from corsetkit.drawing.step_sheet import HAND_SCALE, hand_sheet
from corsetkit.files import write_whole
from corsetkit.geometry import paths
from corsetkit.hand.drafter import moves_of, numbers_of
from corsetkit.hand.whole import whole_by_hand
from corsetkit.printing.draft_print import Printed, said_date, target
from corsetkit.printing.hand_words import opening_rows, step_rows
from corsetkit.printing.names import shown_name
from corsetkit.printing.page_rows import broken, height, paint_rows
from corsetkit.printing.paper import Paper, paper_named
from corsetkit.printing.pdf import pdf_bytes
from corsetkit.printing.tiles import page_of
from corsetkit.steps.run import RESTS_ON
from corsetkit.units import check_unit
from corsetkit.words import words_of

WORDS = words_of("printing")


class Inset:
    """Passes what is drawn on to a page's canvas: `scale` centimetres of the drawing are one of the page's."""

    def __init__(self, page, scale, low, corner):
        """`low` is the drawing's lower left corner, `corner` where that lies on the page."""
        self.scale = scale
        self._page, self._low, self._corner = page, low, corner

    def line(self, path, pen, facts=NOTHING):
        self._page.line(paths.moved(path, self._at), pen, facts)

    def area(self, path, tone, facts=NOTHING):
        self._page.area(paths.moved(path, self._at), tone, facts)

    def dot(self, at, radius, tone, pen=None):
        self._page.dot(self._at(at), radius, tone, pen)

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        self._page.words(self._at(at), text, letter, anchor, turn)

    @contextmanager
    def group(self, name, facts=NOTHING):
        with self._page.group(name, facts):
            yield

    def _at(self, point):
        return self._corner + (point - self._low) / self.scale


def fitted_sheet(make, room, start):
    """The sheet that `make(scale)` gives at the scale at which it fills `room` (width and height, cm, as one complex).

    Margins and headings grow with the scale, so it is looked for in a few turns, from `start` on.
    """
    scale = start
    for _ in range(6):
        sheet = make(scale)
        needed = max(sheet.size.real / room.real, sheet.size.imag / room.imag)
        if needed <= scale <= needed * 1.01:
            break
        scale = needed * 1.002
    return sheet


_HEAD = 0.95
"""How high the strip with wearer, step, date and page is, cm."""
_EDGE = 0.1
_LEAST_UNDER = 2.5
"""Under a drawing moves are only begun where so much is left, cm."""


def hand_pages(pattern, paper, unit, wearer="", said_date=""):
    """All pages as sheets of the paper's window, in the order of the steps that the pattern was drawn in.

    Raises:
        CorsetkitError: where a step cannot be made by hand, as `whole_by_hand` says.
    """
    whole, laid = whole_by_hand(pattern.steps), []
    for number, name in enumerate(whole, 1):
        title = WORDS("hand_step", number=number, step=step_words(name))
        laid += [(title, paint) for paint in _step(pattern, whole, name, title, unit, paper.window)]
    owner = _owner(wearer)
    return tuple(
        _page(paper, owner, title, said_date, number, len(laid), paint) for number, (title, paint) in enumerate(laid, 1)
    )


def _owner(wearer):
    return WORDS("hand_for", wearer=wearer) if wearer else WORDS("hand")


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
    sheet = fitted_sheet(lambda scale: hand_sheet(made, numbers, unit, WORDS("hand_done"), scale), room, HAND_SCALE)
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
    place = " \u00b7 ".join(text for text in (said_date, page_of(number, last)) if text)

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

    return Sheet(0j, window, WORDS("hand_title", owner=owner, title=title, number=number), f"{title}. {place}.", paint)


class HandSheets(Printed):
    """What was written, as of a print; there is nothing on these pages that has to be true to size."""

    def __str__(self):
        return WORDS("hand_printed", file=self.path.name, pages=self.pages, paper=self.paper)


def write_hand_sheets(pattern, path, paper="A4", unit="in", wearer="", date=None, number=None):
    """Write the draft by hand, step by step, to `path`, whole or not at all, and say what was written.

    Args:
        pattern: the `Pattern`. path: the file. paper: "A4" or "Letter". unit: "in" or "cm".
        wearer: the name on every page. date: a date, a text, or None for today; with a given one the same pattern gives
            the same bytes. number: the wearer's number, which stands where the print's letters cannot set the name;
            None for one that follows from it.

    Returns:
        A `HandSheets`.

    Raises:
        CorsetkitError: one sentence, for an unknown paper or unit, and where the file cannot be written.
    """
    kind = paper if isinstance(paper, Paper) else paper_named(paper)
    check_unit(unit)
    path = target(path, "by hand.pdf")
    name = shown_name(wearer, number)
    pages = hand_pages(pattern, kind, unit, name.text, said_date(date))
    write_whole(path, pdf_bytes(pages, kind, _owner(name.text)))
    return HandSheets(path, str(kind), len(pages), tuple(filter(None, (name.said,))))
