"""The three drawings of the block's lesson beside the block itself: what a measurement moves, girths, and the side dart."""

from dataclasses import dataclass

from corsetkit.geometry import paths as path
from corsetkit.plausible import BACK_NECK_RISE
from corsetkit.quantity import declared
from corsetkit.showing.lessons.girth_strip import LEVELS, girth_strip
from corsetkit.showing.lessons.levels import gaps, level_at, to_waist, whole_way
from corsetkit.showing.lessons.moved_lines import compared
from corsetkit.showing.lessons.side_seams import Closing, side_seams
from corsetkit.drawing.svg import svg_text
from corsetkit.showing.lessons.two_blocks import two_blocks
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.parts.what_moved import degrees, what_moved
from corsetkit.units import CM_PER_INCH, say_length, say_number

_MEETS = CM_PER_INCH / 8
"""A level this near to bust, waist or hip is that level, cm: half a step of its slider."""
_AGREES = 0.01
"""What strip and tape may differ by and still agree, cm."""


@dataclass(frozen=True)
class Looking:
    """Where one looks, and what one does with the paper; the limits are those of a wearer, who sets her own."""

    below_the_bust_line: float = declared(
        "how far down the front the level lies at which the paper is measured",
        unit="cm", low=0, high=50, step=CM_PER_INCH / 4, default=16, source="course convention")
    dart_closed_by: float = declared(
        "how far the paper above the dart is turned down",
        unit="degrees", low=0, high=20, step=0.5, default=0, source="course convention")


def measured(drafts, values: dict, names) -> Picture:
    """The block from moved measurements over the wearer's own.

    `drafts` are two `Drafts`, so that each takes over its own last run; `values` hold style values and those of the
    measurements `names` that are moved.
    """
    style = {name: value for name, value in values.items() if name not in names}
    who, own = drafts[0].steps(style, "block")
    unit, body = drafts[0].desk.record.unit, own.measurements
    others = {name: values[name] for name in names if name in values and values[name] != getattr(body, name)}
    _, now = drafts[1].steps(style, "block", body.replaced(**others))
    lines = compared(own.block, now.block)
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    said = [f"{name.replace('_', ' ').capitalize()}: {say(value)} instead of {say(getattr(body, name))}."
            for name, value in others.items()]  # fmt: skip
    if others:
        said += what_moved(lines, own.block, now.block, unit)
    else:
        said.append(f"Here all measurements are {who}'s own, and no line has moved.")
    title = f"Which lines move on the block of {who}"
    sheet = two_blocks(title, own.block, lines, unit, f"{title}. {' '.join(said)}")
    warnings = (*now.measurements.warnings, *now.block.warnings)
    return Picture(svg_text(sheet), sheet.description, tuple(said), warnings)


def closing(drafts, values: dict) -> Picture:
    """The paper's stretches at one level end to end, beside half the body's girths."""
    style = dict(values)
    below = style.pop("below_the_bust_line", None)
    who, steps = drafts.steps(style, "block")
    block, unit = steps.block, drafts.desk.record.unit
    end = whole_way(block)
    below = to_waist(block) if below is None else min(below, end)
    # The slider's last step may fall short of the hip, which then it means.
    level = level_at(block, end if end - below < 2 * _MEETS else below, _MEETS)
    eases = {name: getattr(steps.style, f"{name}_ease") for name in LEVELS}
    said = tuple(_closing_said(block, level, eases, unit))
    title = f"Round half of {who}, " + (f"at the {level.name}" if level.name else _place(level, unit))
    longest = max(getattr(steps.measurements, f"{name}_girth") for name in LEVELS) / 2
    sheet = girth_strip(title, block, level, unit, eases, f"{title}. {' '.join(said)}", longest)
    return Picture(svg_text(sheet), sheet.description, said, block.warnings)


def side_dart(drafts, values: dict) -> Picture:
    """Both side seams beside each other, the side dart closed so far."""
    style = dict(values)
    closed = style.pop("dart_closed_by", 0.0)
    who, steps = drafts.steps(style, "block")
    block, unit = steps.block, drafts.desk.record.unit
    one = Closing(block, min(closed, block.side_dart))
    said = tuple(_dart_said(one, unit))
    title = f"The side seams of {who}"
    sheet = side_seams(title, one, unit, f"{title}. {' '.join(said)}")
    return Picture(svg_text(sheet), sheet.description, said, block.warnings)


def _place(level, unit):
    side = "above" if level.height > 0 else "below"
    return f"{say_length(abs(level.height), unit)} {side} the waist"


def _closing_said(block, level, eases, unit):
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    front, back = (sum(map(path.run_length, half)) for half in (level.front, level.back))
    yield f"The front's paper comes to {say(front)}, the back's to {say(back)}: together {say(level.width)}."
    left_out = [run.length for run in gaps(level)]
    if left_out:
        yield f"Left out, for it is sewn away in the waist darts: {' and '.join(map(say, left_out))}."
    if not level.name:
        yield f"No tape was laid round the body here. The seams' curves decide: all round {say(2 * level.width)}."
        return
    half, ease = getattr(block.measurements, f"{level.name}_girth") / 2, eases[level.name] / 2
    beyond = f"; with half the ease, {say(ease)}, that is {say(half + ease)}" if ease else ", and no ease is added"
    agree = abs(level.width - half - ease) <= _AGREES
    verdict = "Paper and tape agree." if agree else f"Paper and tape differ by {say(abs(level.width - half - ease))}."
    yield f"Half the {level.name} girth is {say(half)}{beyond}. {verdict}"


def _dart_said(one, unit):
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    block, body = one.block, one.block.measurements
    back_length = body.back_waist_length + BACK_NECK_RISE
    over = (f"From the side neck point to the waist the front measures {say(body.front_waist_length)}, "
            f"the back {say(back_length)}")
    if not block.side_dart:
        yield f"{over}. The front is not longer, so there is no dart to close."
        yield f"Both side seams measure {say(path.run_length(one.back))} from waist to underarm."
        return
    yield f"{over}: the front is {say(block.length_difference)} longer."
    if one.still_open < 1e-6:
        yield (f"The dart is closed. From waist to underarm the front's side seam is now as long as the back's: "
               f"{say(path.run_length(one.back))}.")
        return
    yield (f"The dart is closed by {say_number(one.closed, 1)} of {degrees(block.side_dart)}; "
           f"its mouth is still {say(one.mouth)} wide.")
    yield (f"From waist to underarm the front's edge measures {say(one.front_length)}, the open mouth counted; "
           f"the back's seam measures {say(path.run_length(one.back))}.")
