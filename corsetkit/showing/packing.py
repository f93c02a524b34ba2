"""How the pieces are laid for the print: slid so that few pages are needed and few pieces are cut by a join."""

from .lettering import overlap
from .paper import OVERLAP

GAP = 0.7
"""Least distance between the boxes of two pieces, cm."""

_COLUMNS, _ROWS = 8, 8


def packed(boxes, paper):
    """Steps that lay the boxes on the pages, in the boxes' order.

    The largest goes first; each goes where it opens the fewest new pages, then lies on the fewest,
    then nearest to the corner.
    """
    order = sorted(range(len(boxes)), key=lambda i: -(boxes[i][2] - boxes[i][0]) * (boxes[i][3] - boxes[i][1]))
    laid, used, steps = [], set(), [0j] * len(boxes)
    for index in order:
        left, bottom, right, top = boxes[index]
        width, height = right - left, top - bottom
        best = None
        for x in _starts(paper.step.real, _COLUMNS, [box[2] for box in laid]):
            for y in _starts(paper.step.imag, _ROWS, [box[3] for box in laid]):
                box = (x, y, x + width, y + height)
                pages = paper.pages_of(box)
                cost = len(pages - used), len(pages), x + y, x
                if (best is None or cost < best[0]) and not any(overlap(box, other, GAP) for other in laid):
                    best = cost, box, pages
        _, box, pages = best
        laid.append(box)
        used |= pages
        steps[index] = complex(box[0] - left, box[1] - bottom)
    return steps


def _starts(step, count, ends):
    """Where a box may begin: at a page's join, or behind another box."""
    return [GAP / 2 + OVERLAP / 2 + i * step for i in range(count)] + [end + GAP + 1e-6 for end in ends]
