"""Lesson 01, block: measurements become lines, girths close on the body, and a longer front becomes the side dart."""

from dataclasses import replace

from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError
from corsetkit.measurements import Measurements
from corsetkit.quantity import Quantity, quantities
from corsetkit.steps.shares import SIDE_LIMIT
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.lessons.block import pictures as block_pictures
from corsetkit.teaching.lessons.block import pictures as block_words
from corsetkit.teaching.lessons.block.pictures import Looking
from corsetkit.teaching.lessons.block.two_blocks import compared, two_blocks
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.what_moved import degrees
from corsetkit.teaching.step_lesson import StepLesson, style_of
from corsetkit.units import CM_PER_INCH, Say, say_length, say_number
from corsetkit.words import words_of

WORDS = words_of("01_block")
SHARED = words_of("shared")

LENGTHS = ("front_waist_length", "shoulder_length", "across_back_width")
GIRTHS = ("bust_girth", "waist_girth", "neck_base_girth")
REACH = dict(zip((*LENGTHS, *GIRTHS), (4.0, 2.5, 3.0, 6.0, 6.0, 3.0)))
"""Which measurements can be moved, and how far to either side, cm: course convention."""
MORE_BUST = {"in": 4 * CM_PER_INCH, "cm": 10.0}
"""By how much the guess makes the bust girth larger, cm: course convention."""
NEAR = 0.3
"""What is as good as right, cm: about an eighth of an inch."""


class BlockLesson(StepLesson):
    name = "01_block"
    step = "block"
    panels = (Panel(WORDS("ask_style"), ("bust_ease", "waist_side_share", "shoulder_slope")),)

    def measured(self):
        """Which length or width moves what."""
        return self._moving("measured", Panel(WORDS("ask_length"), LENGTHS))

    def girths_measured(self):
        """Which girth moves what."""
        return self._moving("girths_measured", Panel(WORDS("ask_girth"), GIRTHS))

    def closing(self):
        """Girths that close on the body, level by level."""
        panel = Panel(WORDS("ask_closing"), ("below_the_bust_line", "bust_ease", "waist_ease"))
        return self.drawn(
            "closing",
            (panel,),
            Drafts,
            block_pictures.closing,
            self.offered(),
            lambda desk, drafts: (_how_far_down(_body(desk)),),
        )

    def side_dart(self):
        """Where the side dart comes from."""
        panel = Panel(WORDS("ask_side_dart"), ("dart_closed_by",))
        # No style values here: the slider ends where the dart is closed, and with them it would end elsewhere.
        return self.drawn(
            "side_dart", (panel,), Drafts, block_pictures.side_dart, own=lambda desk, drafts: (_how_far_closed(desk),)
        )

    def _moving(self, cell, panel):
        """A table of her measurements over the block as it is measured."""
        return self.drawn(
            cell,
            (panel,),
            lambda desk: (Drafts(desk), Drafts(desk)),
            lambda drafts, values: block_pictures.measured(drafts, values, REACH),
            own=lambda desk, drafts: tuple(_around_hers(_body(desk), panel.names)),
        )

    def _words(self, steps):
        return block_words.words(steps)

    def _said(self, steps, unit):
        block, body, style = steps.block, steps.measurements, steps.style
        front, back = block.front, block.back
        say = Say(unit)
        surplus = (body.bust_girth + style.bust_ease - body.waist_girth - style.waist_ease) / 2
        yield WORDS(
            "bust_point_above",
            front=say(body.front_waist_length),
            neck=say(body.neck_to_bust_point),
            above=say(block.bust_point.imag),
        )
        yield WORDS("bust_wide", front=say(front.width), back=say(back.width), all=say(2 * (front.width + back.width)))
        if surplus > 0:
            side = 2 * (front.width - front.waist_side.real)
            yield WORDS(
                "surplus", surplus=say(surplus), side=say(side), front=say(front.waist_dart), back=say(back.waist_dart)
            )
            yield from _stopped(body, style, surplus, say)
        else:
            yield WORDS("no_surplus")
        if block.side_dart:
            mouth = abs(block.mouth_upper - block.mouth_lower)
            yield WORDS(
                "side_dart_opens", longer=say(block.length_difference), angle=degrees(block.side_dart), mouth=say(mouth)
            )
        yield WORDS("necklines", half=say(body.neck_base_girth / 2))

    def _tape(self, steps, unit):
        block, body, style = steps.block, steps.measurements, steps.style
        for name in ("bust", "waist", "hip"):
            ease = getattr(style, f"{name}_ease")
            half = (getattr(body, f"{name}_girth") + ease) / 2
            if ease:
                yield WORDS(
                    "tape_waist_and_ease" if name == "waist" else "tape_level_and_ease",
                    level=WORDS(f"level_{name}"),
                    half=say_length(half, unit),
                    ease=say_length(ease, unit),
                )
            else:
                yield WORDS(
                    "tape_waist" if name == "waist" else "tape_level",
                    level=WORDS(f"level_{name}"),
                    half=say_length(half, unit),
                )
        yield WORDS("tape_shoulder")
        if block.side_dart:
            yield WORDS("tape_side_dart")

    def _asked(self, name, steps, unit, drafts):
        body, style, more = steps.measurements, style_of(steps), MORE_BUST[unit]
        if body.bust_girth + more > _declared("bust_girth").high:
            more = -more

        def at(part):
            return drafts.steps(style, self.step, body.replaced(bust_girth=body.bust_girth + more * part))[1]

        def move(part):
            now = at(part)
            title = WORDS("guess_title", name=name)
            lines = compared(steps.block, now.block)
            sheet = two_blocks(title, steps.block, lines, unit, WORDS("guess_described", title=title))
            return Picture(svg_text(sheet), sheet.description)

        say = Say(unit)
        start, right = steps.block.front.width, at(1).block.front.width
        fitted = steps.style.to_the_wearer
        slips = (
            (start + more, WORDS("guess_slip_whole", more=say(abs(more)))),
            (start + more / 2, WORDS("guess_slip_half")),
            (start + more / 4, WORDS("guess_slip_alike")),
        )
        return Asked(
            WORDS(
                "guess_question",
                name=name,
                bust=say(body.bust_girth),
                start=say(start),
                other=say(body.bust_girth + more),
                rule=WORDS("guess_rule_fitted" if fitted else "guess_rule_guides"),
            ),
            WORDS("guess_label"),
            "cm",
            start,
            right,
            NEAR,
            tuple(slip for slip in slips if abs(slip[0] - right) > NEAR),
            WORDS("guess_why", more=say(abs(more)), shared=WORDS("guess_shared_fitted" if fitted else "guess_shared_guides")),
            move,
        )


def _body(desk) -> Measurements:
    """The wearer's body; while the form is not finished, one that the sliders can be declared by."""
    try:
        return desk.body()[1]
    except CorsetkitError:
        return next(iter(desk.demo.values()))


def _declared(name: str, owner=Measurements) -> Quantity:
    return next(one for one in quantities(owner) if one.name == name)


def _stopped(body, style, surplus, say):
    """Why the side seams take no more, where their share asks for more than they may have."""
    most = SIDE_LIMIT * body.bust_minus_underbust / 2
    asked = style.waist_side_share * surplus
    if style.to_the_wearer and asked > most:
        yield WORDS(
            "stopped" if say(asked) == say(most) else "stopped_short",
            most=say(most),
            share=say_number(100 * style.waist_side_share, 0),
            asked=say(asked),
        )


def _around_hers(body: Measurements, names=tuple(REACH)):
    """The measurements that can be moved, each around this wearer's own value and within what is allowed."""
    for name in names:
        one, hers, reach = _declared(name), getattr(body, name), REACH[name]
        yield replace(one, low=max(one.low, hers - reach), high=min(one.high, hers + reach), default=hers, group=None)


def _how_far_down(body: Measurements) -> Quantity:
    """The level looked at: from the bust line down to the hip, beginning at the waist."""
    waist = body.front_waist_length - body.neck_to_bust_point
    return replace(_declared("below_the_bust_line", Looking), high=waist + body.waist_to_hip, default=waist)


def _how_far_closed(desk) -> Quantity:
    """How far the side dart is closed, from open to the wearer's whole dart."""
    one = _declared("dart_closed_by", Looking)
    try:
        angle = Drafts(desk).steps(desk.record.style, "block")[1].block.side_dart
    except CorsetkitError:
        return one
    if not angle:
        return replace(one, meaning=WORDS("no_side_dart"))
    return replace(one, high=angle, step=min(one.step, angle / 4))


LESSON = BlockLesson()
