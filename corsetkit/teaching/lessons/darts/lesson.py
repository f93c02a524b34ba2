"""Lesson 04, darts: closing one dart opens another; every turn is about the bust point; the broken line is redrawn."""

from dataclasses import dataclass

from corsetkit.drawing.step_lines import draft_so_far, near, pair
from corsetkit.drawing.step_values import Drawn
from corsetkit.drawing.svg import svg_text
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.quantity import declared
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.lessons.darts.blend_sheet import LEAST_STEP, blend_sheet, crossings
from corsetkit.teaching.lessons.darts.front_parts import TIGHTENING, degrees, front_parts
from corsetkit.teaching.lessons.darts.turned_darts import (
    InTurn,
    PinBeside,
    Turning,
    chosen,
    offered,
    order_picture,
    pin_picture,
    style_among,
    turned_picture,
    turning_picture,
)
from corsetkit.teaching.lessons.darts.words import dart_words
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel
from corsetkit.teaching.step_lesson import StepLesson
from corsetkit.units import Say, say_length
from corsetkit.words import words_of

WORDS = words_of("04_darts")
SHARED = words_of("shared")

_BESIDE = 2.4
"""Paper beside the centre back, cm."""
_LEGEND = 1.57
"""How much wider than high a window is that holds each row of the legend."""


@dataclass(frozen=True)
class Closing:
    """How far both darts still stand open while one looks at the underbust line."""

    still_open: float = declared(WORDS("both_open"), unit="share", low=0, high=1, step=0.05, default=0.0)


class DartsLesson(StepLesson):
    name = "04_darts"
    step = "darts"
    panels = (
        Panel(WORDS("ask_line"), ("centre_front_dart", "blend_reach")),
    )  # fmt: skip

    def turning(self):
        """Darts closed and opened about the bust point, with their angles."""
        panel = Panel(WORDS("ask_turning"), ("centre_front_open", "side_open", "opens_instead"))
        return self._own("turning", panel, Turning, self._turning_picture)

    def order(self):
        """Both orders of closing, side by side."""
        panel = Panel(WORDS("ask_order"), ("turned_in_all",))
        return self._own("order", panel, InTurn, self._order_picture)

    def pin(self):
        """The mistake of turning about another point."""
        panel = Panel(WORDS("ask_pin"), ("pin_beside",))
        return self._own("pin", panel, PinBeside, self._pin_picture)

    def step_line(self):
        """The underbust line across the closed darts, broken and redrawn."""
        panel = Panel(WORDS("ask_redrawn"), ("still_open", "blend_reach"))
        redrawn = tuple(one for one in self.offered() if one.name == "blend_reach")
        return self._own("step_line", panel, Closing, self._line_picture, redrawn)

    # How the tables are made.

    def _own(self, cell, panel, kind, picture, kept=()):
        """A table of the class `kind`: `picture(name, steps, unit, chosen)` is what it shows, `kept` its style values."""

        def drawn(drafts, values):
            name, steps = drafts.steps(style_among(kind, values), self.step)
            return picture(name, steps, drafts.desk.record.unit, chosen(kind, values, steps))

        return self.drawn(
            cell,
            (panel,),
            Drafts,
            drawn,
            kept,
            lambda desk, drafts: offered(kind, drafts.steps(desk.record.style, self.step)[1]),
            offered(kind, None),
        )

    def _turning_picture(self, name, steps, unit, turning):
        return turning_picture(WORDS("turning_title", name=name), steps, unit, turning)

    def _order_picture(self, name, steps, unit, turned):
        return order_picture(WORDS("order_title", name=name), steps, unit, turned.turned_in_all)

    def _pin_picture(self, name, steps, unit, pin):
        return pin_picture(WORDS("pin_title", name=name), steps, unit, pin.pin_beside)

    def _line_picture(self, name, steps, unit, closing):
        share = 1.0 - closing.still_open
        said = tuple(_line_said(steps.darts, share, unit))
        title = WORDS("line_title", name=name)
        sheet = blend_sheet(title, steps.darts, share, unit, f"{title}. {' '.join(said)}")
        return Picture(svg_text(sheet), sheet.description, said)

    # What every lesson fills in.

    def _sheet(self, steps, unit, title, more=()):
        return draft_so_far(steps, self.step, unit, title, (*_closed_paper(steps), *more), window=_window(steps, self.step))

    def _words(self, steps):
        return dart_words(steps)

    def _said(self, steps, unit):
        darts, front = steps.darts, front_parts(steps)
        after = front.darts(front.closed(steps.overbust.front_dart, steps.block.side_dart))
        side = WORDS("closed_side", angle=degrees(steps.block.side_dart)) if steps.block.side_dart else WORDS("closed_no_side")
        return (
            WORDS("closed", angle=degrees(steps.overbust.front_dart), side=side),
            WORDS(
                "tightening_takes_both" if steps.block.side_dart else "tightening_takes",
                before=degrees(steps.overbust.top_dart),
                after=degrees(after[TIGHTENING]),
            ),
            *_line_said(darts, 1.0, unit),
            WORDS("v_left", wide=say_length(darts.v_width, unit), deep=say_length(darts.v_depth, unit)),
        )

    def _asked(self, name, steps, unit, drafts):
        front, block = front_parts(steps), steps.block
        ends = steps.overbust.front_dart, block.side_dart
        side = bool(block.side_dart)
        dart, edge = (
            (SHARED("side_dart"), SHARED("side_seam")) if side else (SHARED("centre_front_dart"), SHARED("centre_front"))
        )
        upper = block.mouth_upper if side else steps.overbust.dart_upper
        lower = block.mouth_lower if side else steps.overbust.dart_lower
        mouth, reach, radius = abs(upper - lower), abs(upper - front.point), steps.underbust.radius

        def moves(part):
            return front.closed(0 if side else part * ends[0], part * ends[1], 0)

        def move(part):
            return turned_picture(WORDS("guess_title", dart=dart, name=name), front, moves(part), ends, unit)

        say = Say(unit)
        start, right = front.mark_width(moves(0)), front.mark_width(moves(1))
        near = 0.3
        both = front.mark_width(front.closed(*ends, 0))
        slips = (
            (start, WORDS("guess_slip_left")),
            (start + mouth, WORDS("guess_slip_added", dart=dart, edge=edge)),
            (both, WORDS("guess_slip_both")),
        )
        nearer = WORDS("guess_nearer") if radius < reach else WORDS("guess_farther")
        less = WORDS("guess_narrower") if radius < reach else WORDS("guess_wider")
        return Asked(
            WORDS("guess_question", dart=dart, mouth=say(mouth), edge=edge, start=say(start)),
            WORDS("guess_label"),
            "cm",
            start,
            right,
            near,
            tuple((value, words) for value, words in slips if abs(value - right) > near),
            WORDS("guess_why", angle=degrees(ends[side]), nearer=nearer, radius=say(radius), reach=say(reach), less=less),
            move,
        )

    def _tape(self, steps, unit):
        inner, outer = (paths.path_length(part.line) for part in (steps.darts.inner, steps.darts.outer))
        say = Say(unit)
        return (WORDS("tape_light"), WORDS("tape_edge", inner=say(inner), outer=say(outer)))


def _window(steps, step):
    """The window on the step, wide enough for the whole back and for the longest legend, so that it keeps its size."""
    left, bottom, right, top = near(steps, step)
    return left, bottom, max(right, steps.block.back.waist_centre.real + _BESIDE, left + _LEGEND * (top - bottom)), top


def _closed_paper(steps):
    """The borders of the parts that have turned, which close the outline of the new lines."""
    darts, over, front = steps.darts, steps.overbust, steps.block.front
    inner, outer = (
        (Line(over.bust_point, close(end)),)
        for end, close in ((over.top_left, darts.inner.close), (over.top_right, darts.outer.close))
    )
    lines = [
        Drawn((Line(darts.front_point, over.dart_lower),), "new", WORDS("v"), ""),
        *pair(WORDS("line_tightening"), (WORDS("line_inner_leg"), inner), (WORDS("line_outer_leg"), outer), ("", "")),
    ]
    if steps.block.side_dart:
        close = darts.outer.close
        armscye = (*over.armscye_cup_part, *over.armscye_low_part)
        lines += [
            Drawn(paths.moved(armscye, close), "new", WORDS("line_armscye"), ""),
            Drawn(paths.moved(front.side_above, close), "new", WORDS("line_side_above"), ""),
        ]
    return lines


def _line_said(darts, share, unit):
    """What becomes of the underbust line where each dart crosses it."""
    for one in crossings(darts, share):
        if not one.angle:
            yield WORDS("line_no_side_dart")
            continue
        if share < 1:
            yield WORDS(
                "line_open",
                dart=one.dart,
                angle=degrees(abs(one.angle) * (1 - share)),
                apart=say_length(one.step.length, unit),
            )
            continue
        step = (
            WORDS("line_broken", step=say_length(one.step.length, unit))
            if one.step.length > LEAST_STEP
            else WORDS("line_bent")
        )
        change = say_length(abs(one.blend.change), unit)
        becomes = (
            WORDS("line_longer" if one.blend.change > 0 else "line_shorter", change=change)
            if change != say_length(0, unit)
            else WORDS("line_keeps_length")
        )
        yield WORDS("line_redrawn", dart=one.dart, step=step, most=say_length(one.blend.largest_move, unit), becomes=becomes)
    if share >= 1:
        inner, outer = (say_length(paths.path_length(line.line), unit) for line in (darts.inner, darts.outer))
        yield WORDS("line_still_fits", inner=inner, outer=outer)


LESSON = DartsLesson()
