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

_BESIDE = 2.4
"""Paper beside the centre back, cm."""
_LEGEND = 1.57
"""How much wider than high a window is that holds each row of the legend."""


@dataclass(frozen=True)
class Closing:
    """How far both darts still stand open while one looks at the underbust line."""

    still_open: float = declared(
        "how far both darts stand open: at 0 % they are closed, at 100 % as they were drawn",
        unit="share",
        low=0,
        high=1,
        step=0.05,
        default=0.0,
    )


class DartsLesson(StepLesson):
    name = "04_darts"
    step = "darts"
    panels = (
        Panel("What does a closed dart do to the line that it crosses?", ("centre_front_dart", "blend_reach")),
    )  # fmt: skip

    def turning(self):
        """Darts closed and opened about the bust point, with their angles."""
        panel = Panel("What one dart gives up, which dart takes?", ("centre_front_open", "side_open", "opens_instead"))
        return self._own("turning", panel, Turning, self._turning_picture)

    def order(self):
        """Both orders of closing, side by side."""
        panel = Panel("Does it matter which dart is closed first?", ("turned_in_all",))
        return self._own("order", panel, InTurn, self._order_picture)

    def pin(self):
        """The mistake of turning about another point."""
        panel = Panel("What if the pin does not stand in the bust point?", ("pin_beside",))
        return self._own("pin", panel, PinBeside, self._pin_picture)

    def step_line(self):
        """The underbust line across the closed darts, broken and redrawn."""
        panel = Panel("How far is the line redrawn, and how much does it move?", ("still_open", "blend_reach"))
        redrawn = tuple(one for one in self.offered() if one.name == "blend_reach")
        return self._own("step_line", panel, Closing, self._line_picture, redrawn)

    # How the tables are made.

    def _own(self, cell, panel, kind, picture, kept=()):
        """A table of the class `kind`: `picture(name, steps, unit, chosen)` is what it shows, `kept` style values it offers."""

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
        return turning_picture(f"Darts of {name}, in degrees", steps, unit, turning)

    def _order_picture(self, name, steps, unit, turned):
        return order_picture(f"Two orders for {name}, in degrees", steps, unit, turned.turned_in_all)

    def _pin_picture(self, name, steps, unit, pin):
        return pin_picture(f"Where the pin stands, for {name}", steps, unit, pin.pin_beside)

    def _line_picture(self, name, steps, unit, closing):
        share = 1.0 - closing.still_open
        said = tuple(_line_said(steps.darts, share, unit))
        title = f"The underbust line of {name}"
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
        side = f"the side dart by {degrees(steps.block.side_dart)}" if steps.block.side_dart else "and there is no side dart"
        return (
            f"The centre-front dart is closed by {degrees(steps.overbust.front_dart)} degrees, {side}.",
            f"The tightening dart takes what {'they give' if steps.block.side_dart else 'it gives'} up: it opens from "
            f"{degrees(steps.overbust.top_dart)} to "
            f"{degrees(after[TIGHTENING])} degrees.",
            *_line_said(darts, 1.0, unit),
            f"At the top of the centre front the corner has swung down and off the centre. Left and right half together leave "
            f"a V, {say_length(darts.v_width, unit)} wide and {say_length(darts.v_depth, unit)} deep.",
        )

    def _asked(self, name, steps, unit, drafts):
        front, block = front_parts(steps), steps.block
        ends = steps.overbust.front_dart, block.side_dart
        side = bool(block.side_dart)
        dart, edge = ("side dart", "side seam") if side else ("centre-front dart", "centre front")
        upper = block.mouth_upper if side else steps.overbust.dart_upper
        lower = block.mouth_lower if side else steps.overbust.dart_lower
        mouth, reach, radius = abs(upper - lower), abs(upper - front.point), steps.underbust.radius

        def moves(part):
            return front.closed(0 if side else part * ends[0], part * ends[1], 0)

        def move(part):
            return turned_picture(f"Closing the {dart} of {name}, in degrees", front, moves(part), ends, unit)

        say = Say(unit)
        start, right = front.mark_width(moves(0)), front.mark_width(moves(1))
        near = 0.3
        both = front.mark_width(front.closed(*ends, 0))
        slips = (
            (start, "that leaves the underbust dart as it was; but what one dart gives up, another must take"),
            (start + mouth, f"that adds the {dart}'s width at the {edge}, which lies farther from the bust point"),
            (both, "that closes both darts, and only one of them was asked for"),
        )
        nearer = "nearer to" if radius < reach else "farther from"
        less = "narrower" if radius < reach else "wider"
        return Asked(
            f"The {dart} is {say(mouth)} wide at the {edge}, the underbust dart {say(start)} at the dashed line. "
            f"Now the part below the {dart} turns about the bust point until the {dart} is closed. "
            "How wide is the underbust dart at the dashed line then?",
            "At the dashed line it is", "cm", start, right, near,
            tuple((value, words) for value, words in slips if abs(value - right) > near),
            f"The underbust dart opens by the same {degrees(ends[side])} degrees. But its dashed line lies {nearer} the bust "
            f"point, {say(radius)} against {say(reach)}, and there the same angle is {less}.",
            move,
        )  # fmt: skip

    def _tape(self, steps, unit):
        inner, outer = (paths.path_length(part.line) for part in (steps.darts.inner, steps.darts.outer))
        say = Say(unit)
        return (
            "Hold the paper against the light: the legs of each closed dart should lie on each other from the bust point on.",
            "On edge along the redrawn underbust line: from the centre front to the underbust dart "
            f"{say(inner)}, from there to the armscye {say(outer)}.",
        )


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
        Drawn((Line(darts.front_point, over.dart_lower),), "new", "V at the centre front", ""),
        *pair("tightening dart, opened", ("inner leg", inner), ("outer leg", outer), ("", "")),
    ]
    if steps.block.side_dart:
        close = darts.outer.close
        armscye = (*over.armscye_cup_part, *over.armscye_low_part)
        lines += [
            Drawn(paths.moved(armscye, close), "new", "armscye, side dart closed", ""),
            Drawn(paths.moved(front.side_above, close), "new", "side seam above, side dart closed", ""),
        ]
    return lines


def _line_said(darts, share, unit):
    """What becomes of the underbust line where each dart crosses it."""
    for one in crossings(darts, share):
        if not one.angle:
            yield "There is no side dart, so on that side the underbust line stays as it was."
            continue
        if share < 1:
            yield (
                f"The {one.dart} is open by {degrees(abs(one.angle) * (1 - share))} degrees; the ends of the underbust "
                f"line lie {say_length(one.step.length, unit)} apart on its legs."
            )
            continue
        step = (
            f"breaks the line with a step of {say_length(one.step.length, unit)}"
            if one.step.length > LEAST_STEP
            else "bends the line, with hardly a step in it"
        )
        longer, change = "longer" if one.blend.change > 0 else "shorter", say_length(abs(one.blend.change), unit)
        becomes = f"becomes {change} {longer}" if change != say_length(0, unit) else "hardly changes its length"
        yield (
            f"Closing the {one.dart} {step}. Redrawn, the line moves by {say_length(one.blend.largest_move, unit)} at "
            f"most and {becomes}."
        )
    if share >= 1:
        inner, outer = (say_length(paths.path_length(line.line), unit) for line in (darts.inner, darts.outer))
        yield (
            f"Cup and lower front are both cut along the redrawn line, so they still fit: {inner} from the centre front to "
            f"the underbust dart, {outer} from there to the armscye."
        )


LESSON = DartsLesson()
