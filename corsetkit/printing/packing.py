"""How the pieces are laid for the print: slid so that few pages are needed and few pieces are cut by a join."""

from corsetkit.drawing.lettering import overlap
from corsetkit.printing.paper import OVERLAP

GAP = 0.7
"""Least distance between the boxes of two pieces, cm."""

_COLUMNS, _ROWS = 8, 8
_FIRST = GAP / 2 + OVERLAP / 2


def packed(boxes, paper, ahead=0, whole=()):
    """Steps that lay the boxes on the pages, in the boxes' order.

    So many boxes `ahead` go first, then the largest; each goes where it opens the fewest new pages, then lies on the fewest,
    then nearest to the corner. Those whose numbers are in `whole` lie on the fewest first.
    """
    used = set()

    def cost(box, index):
        pages = paper.pages_of(box)
        return len(pages) if index in whole else 0, len(pages - used), len(pages), box[0] + box[1], box[0]

    first = {id(box) for box in boxes[:ahead]}
    corners = [i * paper.step for i in range(max(_COLUMNS, _ROWS))]
    return _laid(
        boxes, lambda box: (id(box) in first, _area(box)), corners, cost, lambda box: used.update(paper.pages_of(box))
    )


def packed_low(boxes, width):
    """Steps that lay the boxes within a width, the whole as low as may be: for a roll, of which only its length is paid.

    The highest goes first; each goes where it ends lowest, then farthest to the left.
    """

    def cost(box, _):
        return box[2] > width - _FIRST, box[3], box[0]

    return _laid(boxes, lambda box: box[3] - box[1], [0j], cost)


def _area(box):
    return (box[2] - box[0]) * (box[3] - box[1])


def _laid(boxes, size, corners, cost, then=lambda box: None):
    """Steps for the boxes, the largest by `size` first, each where it costs least; `then` is told where it lies."""
    order = sorted(range(len(boxes)), key=lambda i: size(boxes[i]), reverse=True)
    laid, steps = [], [0j] * len(boxes)
    for index in order:
        left, bottom, right, top = boxes[index]
        width, height = right - left, top - bottom
        best = None
        for x in _starts([corner.real for corner in corners], [box[2] for box in laid]):
            for y in _starts([corner.imag for corner in corners], [box[3] for box in laid]):
                box = (x, y, x + width, y + height)
                asked = cost(box, index)
                if (best is None or asked < best[0]) and not any(overlap(box, other, GAP) for other in laid):
                    best = asked, box
        _, box = best
        laid.append(box)
        then(box)
        steps[index] = complex(box[0] - left, box[1] - bottom)
    return steps


def _starts(joins, ends):
    """Where a box may begin: at a page's join, or behind another box."""
    return [_FIRST + join for join in joins] + [end + GAP + 1e-6 for end in ends]
