"""How the pieces lie on the sheet: slid, never turned, in rows from above to below as they are worn.

Which row a piece lies in follows from what it is and never from its size, and places follow from sizes by
sums and largest values alone: while a slider moves, pieces slide and nothing jumps.
"""

from corsetkit.pattern.edge import Kind

YOKES, CUPS, PANELS = range(3)


def row_of(piece):
    """Panels reach down to the hem; yokes up to the shoulder; cups lie between."""
    kinds = {edge.kind for edge in piece.edges}
    if Kind.HEM in kinds:
        return PANELS
    return YOKES if Kind.SHOULDER in kinds else CUPS


def rows(pieces):
    """Three tuples of pieces: yokes, cups and panels, each as they are sewn, copies last."""
    found = ([], [], [])
    for piece in sorted(pieces, key=lambda piece: (piece.copied, piece.number)):
        found[row_of(piece)].append(piece)
    return tuple(map(tuple, found))


def beside(boxes, gap):
    """Steps that lay boxes side by side from the left, their middles on one level, and the whole's width and height.

    The whole stands with its lower left corner at zero.
    """
    height = max((top - bottom for _, bottom, _, top in boxes), default=0.0)
    steps, x = [], 0.0
    for left, bottom, right, top in boxes:
        steps.append(complex(x - left, (height - (top - bottom)) / 2 - bottom))
        x += right - left + gap
    return steps, max(x - gap, 0.0), height
