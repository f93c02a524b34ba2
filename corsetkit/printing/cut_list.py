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
from corsetkit.words import words_of

WORDS = words_of("printing")

_NAMES, _CLOTH, _HOW, _PAGES = 4.6, 2.4, 2.4, 4.4
"""Widths of the table's columns, cm: pieces, each cloth, how they are laid, and on which pages they are."""


def cut_rows(finished, plan, unit, width, with_pages=True):
    """All rows of the list, at most `width` cm wide."""
    rows = [title(WORDS("cut_title"), width)]
    rows += paragraph(WORDS("cut_numbers"), width)
    rows += [heading(WORDS("pieces_heading")), *_table(finished, plan, width, with_pages)]
    if finished.strips:
        rows.append(heading(WORDS("strips_heading")))
        for strip in finished.strips:
            rows += paragraph(
                WORDS(
                    "strips",
                    name=strip.name,
                    cloth=strip.cloth,
                    count=strip.count,
                    length=say_length(strip.length, unit),
                    width=say_length(strip.width, unit),
                ),
                width,
            )
    if corrections := said_corrections(finished.pattern.corrections, unit):
        told = WORDS("corrected", corrections="; ".join(corrections))
        rows += [heading(WORDS("corrected_heading")), *paragraph(told, width)]
    rows += [heading(WORDS("care_heading")), *paragraph(WORDS("care"), width)]
    rows += [heading(WORDS("allowances_heading")), *paragraph(allowance_words(finished, unit) + ".", width)]
    rows += [heading(WORDS("lines_heading")), *_key()]
    rows += [heading(WORDS("seams_heading")), *paragraph(WORDS("seams"), width)]
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
            if name := choice_of(edge, finished.choices):
                found[WORDS(f"edges_{name}")] = width
    return ", ".join(
        WORDS("allowance", edges=edges, width=say_length(width, unit)) if width else WORDS("no_allowance", edges=edges)
        for edges, width in found.items()
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
        sample(WORDS("key_cut"), with_pen(CUTTING)),
        sample(WORDS("key_sew"), with_pen(SEWING)),
        sample(WORDS("key_fold"), with_pen(FOLD_EDGE)),
        sample(WORDS("key_grain"), grain),
        sample(WORDS("key_notch"), notched(1)),
        sample(WORDS("key_double_notch"), notched(2)),
        sample(WORDS("key_letter"), lambda canvas, start, end: paint_mark(canvas, (start + end) / 2, "A"), 0.5),
    ]


def _seams(pattern, unit, width):
    yield cells(
        [
            (0.9, 5.0, WORDS("column_seam")),
            (6.0, 2.6, WORDS("column_length")),
            (8.7, 2.6, WORDS("column_notches")),
            (11.4, width - 11.4, WORDS("column_pieces")),
        ],
        SMALL,
    )
    for seam in pattern.seams:
        sides = [", ".join(map(str, seam_pieces(seam, side))) for side in (0, 1)]
        yield cells(
            [
                (0.0, 0.8, seam_letter(seam.number)),
                (0.9, 5.0, seam.name),
                (6.0, 2.6, say_length(seam.lengths[0], unit)),
                (8.7, 2.6, str(len(seam.marks) or "\u2013")),
                (11.4, width - 11.4, WORDS("sewn_to", one=sides[0], other=sides[1])),
            ]
        )
