"""Rows of words and samples one under the other, measured, so that they can be broken over pages."""

from collections.abc import Callable
from dataclasses import dataclass, field

from corsetkit.drawing.lettering import CAPITALS, fitted, wrapped
from corsetkit.drawing.pens import CUT, HEADING, NAME
from corsetkit.printing.cover import ROW

LINE = ROW * 1.15
"""A row's height, cm."""


@dataclass(frozen=True)
class Row:
    """A row so high (cm); `paint(canvas, at)` draws it on the line that begins at `at`."""

    height: float
    paint: Callable = field(repr=False)


def words(text, letter=CUT, height=LINE):
    """One line of words."""
    return Row(height, lambda canvas, at: canvas.words(at, text, letter, "start"))


def heading(text):
    """A heading, with room above it."""
    return words(text, NAME, 2 * LINE)


def title(text, width):
    """The first line of a page."""
    return words(fitted(text, HEADING, width, 1.0), HEADING, 0.9)


def paragraph(text, width):
    """Words on as many lines as they need, the first a little apart."""
    return [
        words(fitted(line, CUT, width, 1.0), CUT, LINE if number else 1.25 * LINE)
        for number, line in enumerate(wrapped(text, CUT, width, 1.0))
    ]


def cells(columns, letter=CUT):
    """Words side by side: (how far from the left, how wide, text) each, cm; too long ones are cut short."""

    def paint(canvas, at):
        for left, width, text in columns:
            if text:
                canvas.words(at + left, fitted(text, letter, width, 1.0), letter, "start")

    return Row(LINE, paint)


def sample(text, draw, height=1.3 * LINE):
    """A drawn sample and what it means; `draw(canvas, start, end)` draws on the line between the two."""

    def paint(canvas, at):
        level = at + 1j * CAPITALS / 2 * CUT.size / 10
        draw(canvas, level, level + 1.6)
        canvas.words(at + 1.95, text, CUT, "start")

    return Row(height, paint)


def paint_rows(canvas, rows, corner):
    """The rows from the upper left corner down."""
    at = corner
    for row in rows:
        at -= 1j * row.height
        row.paint(canvas, at)


def height(rows):
    return sum(row.height for row in rows)


def broken(rows, most):
    """The rows in groups none of which is higher than `most` cm."""
    groups, used = [[]], 0.0
    for row in rows:
        if groups[-1] and used + row.height > most:
            groups.append([])
            used = 0.0
        groups[-1].append(row)
        used += row.height
    return groups
