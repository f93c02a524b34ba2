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
    panels = (
        Panel("No measurement changes here. Which lines follow your choice?",
              ("bust_ease", "waist_side_share", "shoulder_slope")),
    )  # fmt: skip

    def measured(self):
        """Which length or width moves what."""
        return self._moving("measured", Panel("A length or a width: which lines follow it?", LENGTHS))

    def girths_measured(self):
        """Which girth moves what."""
        return self._moving("girths_measured", Panel("A girth: which lines follow it?", GIRTHS))

    def closing(self):
        """Girths that close on the body, level by level."""
        panel = Panel("Does the paper come to the body's own girth?", ("below_the_bust_line", "bust_ease", "waist_ease"))
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
        panel = Panel("How long is the front's side seam when the dart is closed?", ("dart_closed_by",))
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
        yield (
            f"Front waist length {say(body.front_waist_length)}, less neck to bust point "
            f"{say(body.neck_to_bust_point)}: the bust point is {say(block.bust_point.imag)} above the waist."
        )
        yield (
            f"At the bust half the front is {say(front.width)} wide and half the back {say(back.width)}: "
            f"all round {say(2 * (front.width + back.width))}."
        )
        if surplus > 0:
            side = 2 * (front.width - front.waist_side.real)
            yield (
                f"Half the bust is {say(surplus)} more than half the waist. The two side seams take {say(side)} of it, "
                f"the front dart {say(front.waist_dart)}, the back dart {say(back.waist_dart)}."
            )
            yield from _stopped(body, style, surplus, say)
        else:
            yield "The waist is as large as the bust or larger, so no dart is taken there and the side seams slant out."
        if block.side_dart:
            mouth = abs(block.mouth_upper - block.mouth_lower)
            yield (
                f"The front is {say(block.length_difference)} longer than the back. So the side dart opens "
                f"{degrees(block.side_dart)}, and its mouth is {say(mouth)} wide."
            )
        yield f"Front and back neckline together come to {say(body.neck_base_girth / 2)}, half the neck base girth."

    def _tape(self, steps, unit):
        block, body, style = steps.block, steps.measurements, steps.style
        for name, darts in (("bust", ""), ("waist", ", darts left out,"), ("hip", "")):
            ease = getattr(style, f"{name}_ease")
            beyond = f" and half of {say_length(ease, unit)} ease" if ease else ""
            half = (getattr(body, f"{name}_girth") + ease) / 2
            yield (
                f"At the {name} half the front and half the back{darts} together measure {say_length(half, unit)}: "
                f"half the {name} girth{beyond}."
            )
        yield "Lay front and back together at the shoulder: neckline and armscye run on without a corner."
        if block.side_dart:
            yield (
                "Pin the side dart shut: laid along the back's from the waist up, the front's side seam ends with it "
                "at the underarm."
            )

    def _asked(self, name, steps, unit, drafts):
        body, style, more = steps.measurements, style_of(steps), MORE_BUST[unit]
        if body.bust_girth + more > _declared("bust_girth").high:
            more = -more

        def at(part):
            return drafts.steps(style, self.step, body.replaced(bust_girth=body.bust_girth + more * part))[1]

        def move(part):
            now = at(part)
            title = f"Another bust girth than {name}'s"
            lines = compared(steps.block, now.block)
            sheet = two_blocks(title, steps.block, lines, unit, f"{title}: half a front and half a back move at the side.")
            return Picture(svg_text(sheet), sheet.description)

        say = Say(unit)
        start, right = steps.block.front.width, at(1).block.front.width
        shared = ("the front takes three fifths of it, the back two" if steps.style.to_the_wearer
                  else "front and back take the same of it")  # fmt: skip
        rule = (
            "Front and back share the difference, and the front takes a little more of it."
            if steps.style.to_the_wearer
            else "Front and back share the difference alike."
        )
        slips = (
            (start + more, f"you changed half the front by the whole {say(abs(more))}; "
                           "that girth runs round front and back, left and right"),
            (start + more / 2, "you halved the difference for half the body, "
                               "but half a front and half a back share that half"),
            (start + more / 4, "you let front and back share alike; here the front takes more than the back"),
        )  # fmt: skip
        return Asked(
            f"{name}'s bust measures {say(body.bust_girth)}, and half the front is {say(start)} wide there. Another "
            f"wearer's bust measures {say(body.bust_girth + more)}, all else is the same. {rule} How wide is half of her "
            "front at the bust?",
            "Half the front at the bust", "cm", start, right, NEAR,
            tuple(slip for slip in slips if abs(slip[0] - right) > NEAR),
            f"The paper shows half the body, so half of the {say(abs(more))} is to be shared; {shared} (course convention).",
            move,
        )  # fmt: skip


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
        share = f"A share of {say_number(100 * style.waist_side_share, 0)} % asks for {say(asked)}. "
        yield (
            f"{share if say(asked) != say(most) else ''}The side seams stop at {say(most)}, half of the difference "
            "between half the bust and half the underbust, so that the darts keep something to take under the breast "
            "(course convention). A larger share moves nothing."
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
        return replace(one, meaning="this wearer has no side dart: there is nothing to close, and the slider moves nothing")
    return replace(one, high=angle, step=min(one.step, angle / 4))


LESSON = BlockLesson()
