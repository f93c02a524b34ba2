"""Where each piece lies on the pages of a print, and which pages are needed: all together, or piece by piece."""

import math
from dataclasses import dataclass, replace

from corsetkit.drawing.lettering import crosses, grown, overlap
from corsetkit.geometry.move import STAY, turned_about
from corsetkit.printing.packing import GAP, packed, packed_low
from corsetkit.printing.paper import MARGIN, OVERLAP
from corsetkit.printing.printed import box_around, shown

_HALF = OVERLAP / 2
_EDGE = 0.2
"""What a piece that stands whole on one page leaves of what can be printed, for the width of its line, cm."""
_TRIES = 7
"""A piece printed by itself is tried at so many places each way within the room its pages leave."""


@dataclass(frozen=True)
class Page:
    """One page of pieces: its number in the print, its column and row (from the top), and the box that it shows.

    `pieces` are those of which some lies within the page's joins, as (`Shown`, step).
    """

    number: int
    column: int
    row: int
    box: tuple
    pieces: tuple


@dataclass(frozen=True)
class Plan:
    """Where each piece lies, as (`Shown`, step), and the pages that are needed."""

    pieces: tuple
    pages: tuple

    def joined(self, page, columns, rows):
        """The page so many columns and rows further, where a piece runs on from this one to it; else None."""
        for other in self.pages:
            if (other.column, other.row) == (page.column + columns, page.row + rows):
                if {id(one) for one, _ in page.pieces} & {id(one) for one, _ in other.pieces}:
                    return other
        return None

    def pages_with(self, piece):
        """The numbers of the pages on which some of the piece lies."""
        return tuple(page.number for page in self.pages if any(one.piece is piece for one, _ in page.pieces))


def planned(items, paper, first=2, ahead=0):
    """The items packed together on the paper's pages, the first page of them numbered `first`.

    Pieces are slid and not turned. So many items `ahead` are laid before all others, from the first page on. A piece that
    fits on a page is cut by a join only where that saves a page.
    """
    boxes, whole = [box_around(item.line) for item in items], set()
    while True:
        plan = _plan(items, packed(boxes, paper, ahead, whole), paper, first)
        # Where the joins left a piece no room for its words, it is laid whole on a page.
        crowded = {i for i, (one, _) in enumerate(plan.pieces) if one.crowded} - whole
        if not crowded:
            return plan
        whole |= crowded


def planned_on_roll(items, paper, first=1):
    """The items on one page of a roll as wide as the paper, and the paper cut to what is needed."""
    boxes = [box_around(item.line) for item in items]
    steps = packed_low(boxes, paper.window.real)
    high = max(box[3] + step.imag for box, step in zip(boxes, steps))
    paper = replace(paper, height=high + _HALF + GAP / 2 + 2 * MARGIN)
    return _plan(items, steps, paper, first), paper


def planned_by_piece(items, paper, first=2):
    """Each item on pages of its own, as few as it fits on; turned by a quarter only where that needs fewer."""
    done, pages, corner, row_top, _widest = [], [], 0j, 0.0, 0.0
    tries = [
        min(
            (_alone(item, paper, turn, number) for number, turn in enumerate((STAY, turned_about(0j, 90)))),
            key=lambda one: one[:2],
        )
        for item in items
    ]
    across = 1.3 * math.sqrt(sum(_area(one[3]) for one in tries))
    for _, _, item, places, step in tries:
        boxes = [paper.page(*place) for place in places]
        size = complex(max(box[2] for box in boxes), max(box[3] for box in boxes))
        if corner.real and corner.real + size.real > across:
            corner = complex(0, row_top)
        here = _plan([item], [step], paper, first + len(pages), corner, places)
        done += here.pieces
        pages += here.pages
        row_top = max(row_top, corner.imag + size.imag + 4)
        corner += size.real + 4
    return Plan(tuple(done), tuple(pages))


def _area(places):
    """Of a piece's own pages, about how much paper they take with what lies between them and the next, cm2."""
    return len(places) * 30.0 * 24.0


def _alone(item, paper, turn, number):
    """How few pages the item needs when it lies turned so: (count, number, item, pages, step)."""
    item = replace(item, turn=turn)
    line = item.line
    left, bottom, right, top = box = box_around(line)
    if right - left <= paper.window.real - _EDGE and top - bottom <= paper.window.imag - _EDGE:
        # Whole on one page it has no joins to keep within.
        return 1, number, item, {(0, 0)}, (paper.window - complex(right + left, top + bottom)) / 2
    start = complex(_HALF + 1e-6 - left, _HALF + 1e-6 - bottom)
    counts = [1 + max(place[i] for place in paper.pages_of(_slid(box, start))) for i in (0, 1)]
    slack = [
        max(0.0, count * step + _HALF - edge)
        for count, step, edge in zip(counts, (paper.step.real, paper.step.imag), _slid(box, start)[2:])
    ]
    # In the middle of its pages first, where a printer that feeds askew cuts nothing off.
    shares = sorted((i / (_TRIES - 1) for i in range(_TRIES)), key=lambda share: abs(share - 0.5))
    best = None
    for x in shares:
        for y in shares:
            step = start + complex(slack[0] * x * 0.98, slack[1] * y * 0.98)
            places = _needed([line], [step], paper)
            if best is None or len(places) < len(best[0]):
                best = places, step
    return len(best[0]), number, item, *best


def _needed(lines, steps, paper):
    """The (column, row) of the pages that the closed polylines come into.

    A piece's box may reach into a page that the piece itself does not reach: such a page is not needed.
    """
    return {
        place
        for line, step in zip(lines, steps)
        for place in paper.pages_of(_slid(box_around(line), step))
        if comes_into(line, step, grown(paper.page(*place), -_HALF))
    }


def _plan(items, steps, paper, first, corner=0j, places=None):
    """The plan of items slid by these steps on `places`, (column, row) each, or on what is needed; `corner` is where the
    paper's first page begins."""
    lines = [item.line for item in items]
    views = []
    for item, line, step in zip(items, lines, steps):
        box = _slid(box_around(line), step)
        strips = _strips(paper, box, places or paper.pages_of(box))
        views.append(shown(item, [_slid(strip, -step) for strip in strips]))
    found = []
    for column, row in places or _needed(lines, steps, paper):
        box = paper.page(column, row)
        held = tuple(
            (one, step + corner) for one, step, line in zip(views, steps, lines) if comes_into(line, step, grown(box, -_HALF))
        )
        found.append((-row, column, _slid(box, corner), held))
    found.sort(key=lambda page: page[:2])
    top = -found[0][0]
    pages = tuple(Page(number, column, top + row, box, held) for number, (row, column, box, held) in enumerate(found, first))
    return Plan(tuple((one, step + corner) for one, step in zip(views, steps)), pages)


def _strips(paper, box, pages):
    """The strips in which the pages that the box lies on overlap: no text goes there."""
    columns, rows = {column for column, _ in pages}, {row for _, row in pages}
    strips = [
        (column * paper.step.real, box[1], column * paper.step.real + OVERLAP, box[3])
        for column in columns
        if column - 1 in columns
    ]
    return strips + [
        (box[0], row * paper.step.imag, box[2], row * paper.step.imag + OVERLAP) for row in rows if row - 1 in rows
    ]


def _slid(box, step):
    return box[0] + step.real, box[1] + step.imag, box[2] + step.real, box[3] + step.imag


def comes_into(line, step, box):
    """Whether the closed polyline, slid by `step`, or what it encloses comes into the box."""
    points = [p + step for p in line]
    if not overlap(box_around(points), box):
        return False
    sides = list(zip(points, points[1:] + points[:1]))
    return any(crosses(a, b, box) for a, b in sides) or _encloses(sides, complex(box[0] + box[2], box[1] + box[3]) / 2)


def _encloses(sides, point):
    """Whether the point lies inside the closed polyline of these sides."""
    inside = False
    for a, b in sides:
        if (a.imag > point.imag) != (b.imag > point.imag):
            inside ^= point.real < a.real + (b.real - a.real) * (point.imag - a.imag) / (b.imag - a.imag)
    return inside
