"""The words of the lesson on sewing and fitting, each with its small drawing."""

from corsetkit.drawing.canvas import box_run
from corsetkit.drawing.step_values import Drawn, Spot
from corsetkit.finish.finished import SHELL
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.lay.cloth import FOLDED, SINGLE, Cloth
from corsetkit.lay.items import items_of
from corsetkit.lay.planning import plain_plan
from corsetkit.pattern.edge import Kind
from corsetkit.teaching.shared.vignette import card
from corsetkit.words import words_of

WORDS = words_of("09_sewing")

_PINCH = 1.2
"""How wide the pinch of its card is, cm: wider than a real one, so that it is seen."""


def sewing_words(finished):
    """The `Word`s, drawn from a `Finished` pattern."""
    items = items_of(finished, SHELL)
    single, folded = (plain_plan(items, Cloth(laid=laid), SHELL) for laid in (SINGLE, FOLDED))
    laid = [Drawn(_closed(one.outline), "before") for one in single.placed]
    cloth = box_run(0, 0, single.cloth.span, single.length + 8)
    edges = [Drawn((Line(complex(x, 0), complex(x, single.length + 8)),), "new") for x in (0.0, single.cloth.span)]
    all_of_it = (-3.0, -3.0, single.cloth.span + 3, single.length + 12)
    first = folded.placed[0]
    at_fold = next((one for one in folded.placed if one.at_fold), first)
    fold = Line(0j, 1j * (folded.length + 8))
    low = min(p.imag for p in at_fold.outline)
    half_at_fold = [Drawn(_closed(one.outline), "before") for one in folded.placed] + [Drawn((fold,), "new")]
    return (
        card(WORDS, "cutting_plan", [Drawn(cloth, "before"), *(Drawn(one.path, "new") for one in laid)], all_of_it),
        card(WORDS, "selvedge", [*laid, Drawn(cloth, "before"), *edges], all_of_it),
        card(WORDS, "fold_of_cloth", half_at_fold, (-4.0, low - 4.0, 34.0, low + 30.0)),
        card(WORDS, "nap", _nap(), (0.0, 0.0, 16.0, 12.0)),
        card(WORDS, "toile", *_toile(finished)),
        card(WORDS, "pinch", *_pinch(finished)),
    )


def _closed(points):
    return tuple(Line(a, b) for a, b in zip(points, (*points[1:], points[0])))


def _nap():
    hairs = [
        Drawn((Line(complex(x + 0.5 * (y % 2), y), complex(x + 0.5 * (y % 2) + 0.4, y - 0.7)),), "before")
        for x in range(1, 15)
        for y in range(1, 12)
    ]
    arrows = [
        Drawn(
            (
                Line(complex(x, 3), complex(x, 9)),
                Line(complex(x - 0.6, 7.6), complex(x, 9)),
                Line(complex(x, 9), complex(x + 0.6, 7.6)),
            ),
            "new",
        )
        for x in (5.0, 11.0)
    ]
    return [*hairs, *arrows]


def _panel(finished):
    """A panel with a seam on either side: the side front, by its two panel seams."""
    return next(
        one.piece
        for one in finished.pieces
        if not one.piece.on_fold and sum(edge.kind is Kind.PANEL_SEAM for edge in one.piece.edges) >= 2
    )


def _box(piece):
    """As wide as the piece, and as high as wide, about its middle."""
    points = paths.flattened(piece.path, 0.1)
    xs, ys = [p.real for p in points], [p.imag for p in points]
    left, right, middle = min(xs) - 2.0, max(xs) + 2.0, (min(ys) + max(ys)) / 2
    return left, middle - (right - left) / 2, right, middle + (right - left) / 2


def _toile(finished):
    piece = _panel(finished)
    left, bottom, right, top = _box(piece)
    stitches = []
    for edge in piece.edges:
        if edge.kind is Kind.PANEL_SEAM:
            count = int(edge.length / 1.6)
            stitches += [Drawn(paths.stretch(edge.path, 1.6 * i, 1.6 * i + 1.0), "new") for i in range(count)]
    waist = Drawn((Line(complex(left, 0), complex(right, 0)),), "body")
    return [*(Drawn(edge.path, "before") for edge in piece.edges), *stitches, waist], (left, bottom, right, top)


def _pinch(finished):
    piece = _panel(finished)
    left, bottom, right, top = _box(piece)
    middle, half = (left + right) / 2, (top - bottom) / 2 - 1.0
    centre = complex(middle, (top + bottom) / 2)
    ends = centre + 1j * half, centre - 1j * half
    legs = [
        Drawn(tuple(Line(a, b) for a, b in zip((ends[0], side, ends[1]), (side, ends[1]))), "new")
        for side in (centre - _PINCH, centre + _PINCH)
    ]
    pins = [centre + 1j * half * share for share in (-0.45, 0.0, 0.45)]
    across = [Drawn((Line(p - 1.8, p + 1.8),), "before") for p in pins]
    return (
        [*(Drawn(edge.path, "before") for edge in piece.edges), *legs, *across],
        (left, bottom, right, top),
        [Spot(p - 1.8, "", "before") for p in pins],
    )
