"""What to cut: every piece with its cloths and pages, the strips, the allowances, the lines' meanings, and the seams."""

from corsetkit.drawing.canvas import tick
from corsetkit.drawing.labels import seam_pieces
from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.painting import arrow, paint_mark
from corsetkit.drawing.pens import CUTTING, FOLD_EDGE, GRAIN_LINE, NOTCH_CUT, SEWING, SMALL
from corsetkit.finish.choices import choice_of
from corsetkit.finish.finished import CLOTHS
from corsetkit.fitting.correct import said as said_corrections
from corsetkit.geometry.points import direction
from corsetkit.printing.cover import pages_words
from corsetkit.printing.page_rows import cells, heading, paragraph, sample, title
from corsetkit.units import say_length

_NAMES, _CLOTH, _HOW, _PAGES = 4.6, 2.4, 2.4, 4.4
"""Widths of the table's columns, cm: pieces, each cloth, how they are laid, and on which pages they are."""

_SEAMS = (
    "A letter in a ring names a seam: sew it to the same letter. Beside the ring stand the pieces it is sewn to. "
    "Lengths are those of the sewing lines."
)
_CARE = (
    "Sew a toile of firm, cheap cloth first, and fit it: comfort and breath come before every line here. Cut away from "
    "your hand, close the blade after each cut, and keep pins in a cushion."
)
_SAID = {
    "panel_allowance": "panel seams",
    "cup_allowance": "cup seams",
    "neckline_allowance": "neckline and openings",
    "v_allowance": "V at the centre front",
    "lacing_allowance": "lacing edge",
    "top_allowance": "top edge",
    "facing_width": "lacing edge, folded back",
}
"""Choices of allowances in fewer or other words than their names."""


def cut_rows(finished, plan, unit, width, with_pages=True):
    """All rows of the list, at most `width` cm wide."""
    rows = [title("What to cut", width)]
    rows += paragraph(
        "The numbers say how many to cut of each cloth. Allowances are in the pieces: cut along the strong "
        "line, sew along the broken one.",
        width,
    )
    rows += [heading("Pieces"), *_table(finished, plan, width, with_pages)]
    if finished.strips:
        rows.append(heading("Strips, cut by measure: they have no pattern piece"))
        for strip in finished.strips:
            rows += paragraph(
                f"{strip.name}: {strip.cloth}, {strip.count} strips of {say_length(strip.length, unit)} by "
                f"{say_length(strip.width, unit)}, allowances in them",
                width,
            )
    if corrections := said_corrections(finished.pattern.corrections, unit):
        rows += [heading("Corrected after fittings"), *paragraph(f"{'; '.join(corrections)}. All of it is drawn in.", width)]
    rows += [heading("Before you cut"), *paragraph(_CARE, width)]
    rows += [heading("Allowances"), *paragraph(allowance_words(finished, unit) + ".", width)]
    rows += [heading("What the lines mean"), *_key()]
    rows += [heading("Seams"), *paragraph(_SEAMS, width)]
    return [*rows, *_seams(finished.pattern, unit, width)]


def _table(finished, plan, width, with_pages):
    used = [cloth for cloth in CLOTHS if any(layer.cloth == cloth for one in finished.pieces for layer in one.layers)]
    lefts = [_NAMES + i * _CLOTH for i in range(len(used) + 1)]
    how, pages = lefts[-1], lefts[-1] + _HOW
    yield cells([(0.0, _NAMES, ""), *((left, _CLOTH - 0.2, cloth) for left, cloth in zip(lefts, used))], SMALL)
    for one in finished.pieces:
        counts = {layer.cloth: str(layer.count) for layer in one.layers}
        said = pages_words(plan.pages_with(one.piece)) if with_pages else ""
        yield cells(
            [
                (0.0, _NAMES - 0.2, f"{one.piece.number} {one.piece.name}"),
                *((left, _CLOTH - 0.2, counts.get(cloth, "\u2013")) for left, cloth in zip(lefts, used)),
                (how, _HOW - 0.2, one.layers[0].how),
                (pages, min(_PAGES, width - pages), said),
            ]
        )


def allowance_words(finished, unit):
    """The allowances that the pieces have, each said once: "panel seams 1.5 cm, hem 1 cm"."""
    found = {}
    for one in finished.pieces:
        for edge, width in zip(one.piece.edges, one.allowances):
            name = choice_of(edge, finished.choices)
            if name:
                found[_SAID.get(name) or name.removesuffix("_allowance").replace("_", " ")] = width
    return ", ".join(
        f"{name} {say_length(width, unit)}" if width else f"{name} none, for it is bound" for name, width in found.items()
    )


def _key():
    def with_pen(pen):
        return lambda canvas, start, end: tick(canvas, start, end, pen)

    def notched(count):
        def draw(canvas, start, end):
            tick(canvas, start, end, CUTTING)
            middle = (start + end) / 2
            for at in (middle,) if count == 1 else (middle - 0.3, middle + 0.3):
                tick(canvas, at, at + 0.22j, NOTCH_CUT)

        return draw

    def grain(canvas, start, end):
        tick(canvas, start, end, GRAIN_LINE)
        arrow(canvas, end, direction(0), GRAIN_LINE)
        arrow(canvas, start, direction(180), GRAIN_LINE)

    return [
        sample("cut here", with_pen(CUTTING)),
        sample("sew here", with_pen(SEWING)),
        sample("fold of the cloth: lay this edge on it, and do not cut it", with_pen(FOLD_EDGE)),
        sample("grain: lay the arrow along the selvedge", grain),
        sample(
            "notch of a seam with a front piece: one short cut inwards from the edge, no farther than it is drawn", notched(1)
        ),
        sample("notch of a back seam: two cuts beside each other", notched(2)),
        sample("a seam's letter", lambda canvas, start, end: paint_mark(canvas, (start + end) / 2, "A"), 0.5),
    ]


def _seams(pattern, unit, width):
    yield cells([(0.9, 5.0, "seam"), (6.0, 2.6, "length"), (8.7, 2.6, "notches"), (11.4, width - 11.4, "pieces")], SMALL)
    for seam in pattern.seams:
        sides = [", ".join(map(str, seam_pieces(seam, side))) for side in (0, 1)]
        yield cells(
            [
                (0.0, 0.8, seam_letter(seam.number)),
                (0.9, 5.0, seam.name),
                (6.0, 2.6, say_length(seam.lengths[0], unit)),
                (8.7, 2.6, str(len(seam.marks) or "\u2013")),
                (11.4, width - 11.4, f"{sides[0]} to {sides[1]}"),
            ]
        )
