"""The angles round the bust point as a chart: a wheel of paper and darts, and under it a row for each dart and their sum."""

from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import direction, heading
from corsetkit.units import say_number
from corsetkit.showing.lessons.arcs import arc
from corsetkit.drawing.canvas import box_run
from corsetkit.showing.lessons.front_parts import DARTS
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import CAPITALS
from corsetkit.drawing.pens import BEFORE, CUT_PAPER, FREE, LINE_WORDS, NAME, NEW, SMALL, WASTE

WIDE, HIGH = 7.4, 10.7
"""How much room the chart takes, cm as seen."""
_RADIUS = 2.0
_WHEEL_ROOM = 5.3
_ROW, _BAR = 0.86, 0.28
_NUMBER = 0.95
_GAP = 0.15


def paint_chart(canvas, corner, front, moves):
    """Paint the chart with its upper left corner at `corner`."""
    scale = canvas.scale
    middle = corner + complex(WIDE / 2, -_WHEEL_ROOM / 2) * scale
    with canvas.group("wheel"):
        _wheel(canvas, middle, _RADIUS * scale, front, moves)
    with canvas.group("rows"):
        _rows(canvas, corner - 1j * (_WHEEL_ROOM + 0.5) * scale, front.drawn, front.darts(moves))


def chart_said(front, moves):
    """The chart in words."""
    darts = front.darts(moves)
    return (", ".join(f"{name} {degrees(angle)}" for name, angle in zip(DARTS, darts))
            + f", all together {degrees(sum(darts))}; paper between them "
            + ", ".join(degrees(part.angle) for part in front.parts) + " degrees")


def degrees(angle):
    """An angle as the lesson writes it, to a tenth of a degree."""
    return say_number(angle, 1)


def _tenths(angle):
    """An angle as it stands in a column of angles: always with its tenth."""
    return f"{abs(angle) if abs(angle) < 0.05 else angle:.1f}"


def _wheel(canvas, middle, radius, front, moves):
    scale = canvas.scale
    drop = CAPITALS / 2 * LINE_WORDS.size * scale / 10
    starts = [heading(move.turn * part.legs[0]) for part, move in zip(front.parts, moves)]
    darts = front.darts(moves)
    for number, (part, start) in enumerate(zip(front.parts, starts)):
        if darts[number] > 0.05:
            gap = _sector(middle, radius, start + part.angle, darts[number])
            fill(canvas, gap, WASTE)
        canvas.area(_sector(middle, radius, start, part.angle), CUT_PAPER)
    for part, start, move in zip(front.parts, starts, moves):
        canvas.line(_sector(middle, radius, start, part.angle), FREE if move.turn == 1 else NEW)
        at = middle + 0.66 * radius * direction(start + part.angle / 2)
        canvas.words(at - 1j * drop, _tenths(part.angle), LINE_WORDS)
    far, line = radius + 0.2 * scale, 1.3 * SMALL.size * scale / 10
    size = SMALL.size * scale / 10
    canvas.words(middle + 1j * far, "tightening dart", SMALL)
    canvas.words(middle - 1j * (far + 0.75 * size), "underbust dart", SMALL)
    for side, anchor, name in ((-far, "end", "centre-front"), (far, "start", "side")):
        canvas.words(middle + side, name, SMALL, anchor)
        canvas.words(middle + side - 1j * line, "dart", SMALL, anchor)


def _rows(canvas, top, drawn, now):
    scale = canvas.scale
    canvas.words(top, "degrees of each dart", NAME, "start")
    long = (WIDE - _NUMBER - _GAP) * scale / sum(drawn)
    names = [*DARTS, "all together"]
    for row, name in enumerate(names):
        base = top - 1j * ((row + 1) * _ROW + 0.1) * scale
        canvas.words(base + 1j * (_BAR + 0.1) * scale, name, SMALL, "start")
        whole = row == len(DARTS)
        before, after = (drawn, now) if whole else ((drawn[row],), (now[row],))
        _bars(canvas, base, before, long, BEFORE, False)
        changed = any(abs(a - b) > 0.05 for a, b in zip(before, after))
        _bars(canvas, base, after, long, NEW if changed else FREE, True)
        canvas.words(base + WIDE * scale + 0.04j * scale, _tenths(sum(after)), LINE_WORDS, "end")


def _bars(canvas, at, angles, long, pen, hatched):
    for angle in angles:
        if angle > 0.05:
            run = box_run(at.real, at.imag, at.real + angle * long, at.imag + _BAR * canvas.scale)
            if hatched:
                fill(canvas, run, WASTE)
            canvas.line(run, pen)
            at += angle * long


def _sector(middle, radius, start, angle):
    """A sector of a disc as a closed run, counter-clockwise; angles in degrees."""
    rim = arc(middle, middle + radius * direction(start), angle)
    return (Line(middle, rim[0].start), *rim, Line(rim[-1].end, middle))
