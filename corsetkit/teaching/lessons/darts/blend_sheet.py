"""The cup's paper with both darts closing: how a closed dart breaks the underbust line, and the line redrawn."""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.drawing.canvas import Sheet, box_area
from corsetkit.drawing.lettering import around, text_width
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import (
    BEFORE,
    BOARD_TONE,
    CUT_PAPER,
    FREE,
    HEADING,
    LINE_WORDS,
    NEW,
    SEWN,
    SPOT,
    SPOT_TONE,
    SPOT_WORDS,
)
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid, turned_about
from corsetkit.geometry.points import direction, heading, unit
from corsetkit.teaching.lessons.darts.front_parts import degrees
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.teaching.shared.laid_paper import SHADOW
from corsetkit.units import say_length
from corsetkit.words import words_of

WORDS = words_of("04_darts")

SHARED = words_of("shared")

SEEN = 14.0
"""How wide the drawing is seen, cm."""
LEAST_STEP = 0.05
"""A step smaller than this, cm, is not spoken of: a pencil's line is as wide."""
_LEG_OUT = 1.6
"""How far a closed dart's legs are drawn beyond the underbust line, on the lower front, cm."""
_THICK = 0.07
_WORDS = WORDS("line_from_here"), WORDS("line_to_here")


@dataclass(frozen=True)
class Crossing:
    """One half of the cup at the underbust line, its dart closed to a `share`.

    `line` is the `CrossedLine`, `top` what bounds the part that turns, from the end of its underbust line back to the bust
    point; `far` where the line meets the underbust dart. `inner` says which half it is: there the line runs over the
    part that turns first.
    """

    dart: str
    line: object
    point: complex
    top: tuple
    far: complex
    inner: bool
    share: float

    @cached_property
    def angle(self):
        """Through how many degrees the whole closing turns, counter-clockwise above zero."""
        return heading(self.line.close.turn)

    @cached_property
    def move(self):
        return self.line.close if self.share >= 1 else turned_about(self.point, self.angle * self.share)

    @property
    def blend(self):
        """The redrawing of the closed dart's line, or None."""
        return self.line.blend if self.share >= 1 else None

    @property
    def step(self):
        """From where the line ends on one leg to where it goes on, on the other."""
        return Line(self.move(self.line.leg_upper), self.line.leg_lower)

    @cached_property
    def papers(self):
        """The half's paper as closed runs: two parts, or one with the redrawn line."""
        top, point = paths.moved(self.top, self.move), self.point
        line = self.line.line if self.blend else paths.moved(self.line.moving, self.move)
        turned = _closed((*paths.turned_round(top), *line) if self.inner else (*line, *top), point)
        return (turned,) if self.blend else (turned, _closed(self.line.still, point))


def _closed(path, point):
    """A run as a closed one, through the bust point where it does not begin or end there."""
    start, end = paths.path_start(path), paths.path_end(path)
    legs = [Line(end, point)] if abs(end - point) > 1e-9 else []
    return (*path, *legs, *([Line(point, start)] if abs(start - point) > 1e-9 else []))


def crossings(darts, share):
    """Both halves of the cup of a `Darts`, their darts closed to a share."""
    o, under = darts.overbust, darts.underbust
    point = o.bust_point
    inner = (*o.top_inner, Line(o.top_left, point))
    outer = (*paths.turned_round(o.armscye_cup_part), *paths.turned_round(o.top_outer), Line(o.top_right, point))
    return (
        Crossing(SHARED("centre_front_dart"), darts.inner, point, inner, under.inner, True, share),
        Crossing(SHARED("side_dart"), darts.outer, point, outer, under.outer, False, share),
    )


def blend_sheet(title, darts, share, unit, description):
    """The cup's paper of a `Darts`, both darts closed to a share; closed, with the underbust line redrawn."""
    crossed = crossings(darts, share)
    items = [
        (BEFORE, WORDS("line_key_broken") if share >= 1 else WORDS("line_key_before")),
        (SEWN, SHARED("underbust_line")),
        (NEW, "redrawn" if share >= 1 else "turned"),
    ]
    left, bottom, right, top = _frame(darts)
    scale = (right - left + 2.4) / SEEN
    spare = max(1.2, (max(row_width(items, scale), text_width(title, HEADING, scale) + scale) - right + left) / 2)
    low, high = complex(left - spare, bottom - 2.0 * scale), complex(right + spare, top + 1.6 * scale)
    clutter = Clutter((low.real + 0.1 * scale, low.imag + 0.9 * scale, high.real - 0.1 * scale, top + 0.4 * scale), scale)
    places = [place for place in _written(clutter, crossed, unit) if place]

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + 0.4 * scale, high.imag - 0.8 * scale), title, HEADING, "start")
        for one in crossed:
            for paper in one.papers:
                canvas.area(paths.moved(paper, slid(complex(1, -1) * _THICK * scale)), SHADOW)
                canvas.area(paper, CUT_PAPER)
        for one in crossed:
            _paint(canvas, one, unit)
        for place in places:
            canvas.words(*place)
        paint_row(canvas, complex(low.real + 0.4 * scale, low.imag + 0.5 * scale), items)

    return Sheet(low, high, title, description, paint, scale)


def _frame(darts):
    """The box that holds the cup's paper at any share: it stands still while the darts close."""
    points = [
        p
        for share in (0.0, 0.5, 1.0)
        for one in crossings(darts, share)
        for path in (*one.papers, _legs(one))
        for p in paths.flattened(path, 0.05)
    ]
    return around([(p.real, p.imag, p.real, p.imag) for p in points])


def _paint(canvas, one, unit):
    def line(path, pen, role, name):
        canvas.line(path, pen, {"role": role, "name": name, "length": say_length(paths.path_length(path), unit)})

    with canvas.group("crossing", {"name": one.dart}):
        turning = NEW if 0 < one.share < 1 else FREE
        for paper in one.papers:
            canvas.line(paper, FREE)
        # Once the dart is closed, the line that was broken stands for what was there before.
        if 0 < one.share < 1 and one.angle:
            line(one.line.moving, BEFORE, "before", WORDS("line_before", dart=one.dart))
        for leg, pen in zip(_legs(one), (turning, FREE)):
            canvas.line((leg,), pen)
        if one.blend:
            line(one.line.line, SEWN, "before", WORDS("line_closed", dart=one.dart))
            line(one.blend.before, BEFORE, "before", WORDS("line_broken_now"))
            line(one.blend.after, NEW, "new", WORDS("line_across", dart=one.dart))
            for end in _ends(one):
                canvas.dot(end, 0.75, SPOT_TONE, SPOT)
        else:
            line(
                paths.moved(one.line.moving, one.move),
                turning if turning is NEW else SEWN,
                "new",
                WORDS("line_turning", dart=one.dart),
            )
            line(one.line.still, SEWN, "before", WORDS("line_still", dart=one.dart))


def _legs(one):
    """The leg that turns and the one that lies still, from the bust point to a little way over the lower front."""
    return tuple(
        Line(one.point, leg + _LEG_OUT * unit(leg - one.point)) for leg in (one.move(one.line.leg_upper), one.line.leg_lower)
    )


def _ends(one):
    return paths.path_start(one.blend.after), paths.path_end(one.blend.after)


def _written(clutter, crossed, unit):
    """Where the words stand: first the marks', then the darts' and the two sides of the line."""
    for one in crossed:
        lines = one.blend.before if one.blend else one.line.moving
        for path in (*one.papers, lines, _legs(one)):
            clutter.draw(paths.flattened(path, 0.1), 2)
        for end in _ends(one) if one.blend else ():
            clutter.dot(end)
    for one in crossed:
        if one.blend:
            for end, words in zip(_ends(one), _WORDS if one.inner else _WORDS[::-1]):
                yield clutter.beside(end, words, LINE_WORDS)
            if one.step.length > LEAST_STEP:
                yield clutter.beside(
                    one.step.point(0.5), WORDS("line_note_step", step=say_length(one.step.length, unit)), SPOT_WORDS
                )
    for one in crossed:
        if one.angle:
            turned, still = ([leg.start, leg.end] for leg in _legs(one))
            yield (
                clutter.along(still, _said(one), LINE_WORDS)
                or clutter.along(turned, _said(one), LINE_WORDS)
                or clutter.beside(still[1], _said(one), LINE_WORDS)
            )
        middle = one.point + direction(heading(one.far - one.point) + (-35 if one.inner else 25)) * abs(one.far - one.point)
        yield clutter.on(one.point + 0.6 * (middle - one.point), "cup", SPOT_WORDS)
        yield clutter.on(one.point + 1.22 * (middle - one.point), WORDS("line_lower_front"), SPOT_WORDS)


def _said(one):
    return (
        one.dart if one.share >= 1 else WORDS("line_note_dart", dart=one.dart, angle=degrees(abs(one.angle) * (1 - one.share)))
    )
