"""The block's words with their small drawings, and the three drawings beside the block itself."""

from dataclasses import dataclass, replace

from corsetkit.drawing.step_values import Drawn, Spot
from corsetkit.drawing.svg import svg_text
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.plausible import BACK_NECK_RISE
from corsetkit.quantity import declared
from corsetkit.steps.block import block as drawn_block
from corsetkit.teaching.lessons.block.levels import LEVELS, gaps, girth_strip, level_at, to_waist, whole_way
from corsetkit.teaching.lessons.block.side_seams import Closing, side_seams
from corsetkit.teaching.lessons.block.two_blocks import compared, two_blocks
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.vignette import vignette
from corsetkit.teaching.shared.what_moved import degrees, what_moved
from corsetkit.teaching.word_cards import Word
from corsetkit.units import CM_PER_INCH, Say, say_length, say_number

_EASE = 2 * CM_PER_INCH
"""Much ease, so that the small drawing shows it, cm."""


def words(steps):
    """The `Word`s of the block, drawn from `steps`."""
    block = steps.block
    front, back, point = block.front, block.back, block.bust_point
    end = back.waist_centre.real
    whole = (-3, front.hip_side.imag - 3, end + 3, front.neck_side.imag + 3)
    paper = [Drawn(block.front_paper, "before"), Drawn(block.back_paper, "before")]
    eased = _eased_side(steps)
    both = lambda of: [Drawn(tuple(of(half)), "new") for half in (front, back)]
    return (
        Word("block", "half a front and half a back that fit the body and have no style yet; every pattern begins from it",
             vignette("Block", "half a front on the left and half a back on the right.",
                      [Drawn(block.front_paper, "new"), Drawn(block.back_paper, "new")], whole)),
        Word("centre front and centre back",
             "the body's middle line; the block ends there, for the other half is its mirror image",
             vignette("Centre front and centre back", "the straight edge on the far left and on the far right.",
                      [*paper, *both(lambda half: (Line(half.neck_centre, half.hip_centre),))], whole)),
        Word("armscye", "the opening for the arm, from the shoulder down to the underarm point",
             vignette("Armscye", "the curve from shoulder to underarm on front and back.",
                      [*paper, *both(lambda half: half.armscye)], whole)),
        Word("ease", "what a garment has beyond the body, so that the wearer can move and breathe",
             vignette("Ease", "the back's side seam close to the body, and the garment's once further out.",
                      [Drawn(block.back_paper, "before"), Drawn(eased, "new")],
                      (back.underarm.real - 7, -8, back.underarm.real + 11, 10),
                      (Spot(paths.at_level(eased, 3.0), "garment"), Spot(paths.at_level(back.side, -2.0), "body", "before")))),
        Word("waist dart", "a wedge with two points, which takes away cloth at the waist and nothing above and below",
             vignette("Waist dart", "two long narrow wedges, one on the front and one on the back.",
                      [*paper, *(Drawn(_closed(half.dart_legs), "waste") for half in (front, back)),
                       *(Drawn(leg, "new") for half in (front, back) for leg in half.dart_legs)], whole)),
        Word("side dart", "a wedge from the side seam to the bust point; its open end on the seam is the mouth",
             vignette("Side dart", "the wedge whose point is the bust point and whose mouth lies on the side seam.",
                      [Drawn(block.front_paper, "before"), Drawn(block.side_dart_waste.outline, "waste"),
                       Drawn((Line(block.mouth_upper, point), Line(point, block.mouth_lower)), "new")],
                      (point.real - 5, block.mouth_lower.imag - 5, front.width + 6, front.underarm.imag + 3),
                      (Spot(point, "bust point"), Spot(paths.point_along((Line(block.mouth_upper, block.mouth_lower),),
                       abs(block.mouth_upper - block.mouth_lower) / 2), "mouth", "before")))),
    )  # fmt: skip


def _eased_side(steps):
    """The back's side seam with much ease, laid so that the centre back is where it was."""
    style = replace(steps.style, bust_ease=_EASE, waist_ease=_EASE, hip_ease=_EASE)
    eased = drawn_block(steps.measurements, style).back
    return paths.moved(eased.side, slid(steps.block.back.waist_centre - eased.waist_centre))


def _closed(legs):
    """The dart's outline, from its top down one leg and up the other."""
    return (*legs[0], *paths.turned_round(legs[1]))


_MEETS = CM_PER_INCH / 8
"""A level this near to bust, waist or hip is that level, cm: half a step of its slider."""
_AGREES = 0.01
"""What strip and tape may differ by and still agree, cm."""


@dataclass(frozen=True)
class Looking:
    """Where one looks, and what one does with the paper; the limits are those of a wearer, who sets her own."""

    below_the_bust_line: float = declared(
        "how far down the front the level lies at which the paper is measured",
        unit="cm",
        low=0,
        high=50,
        step=CM_PER_INCH / 4,
        default=16,
        source="course convention",
    )
    dart_closed_by: float = declared(
        "how far the paper above the dart is turned down",
        unit="degrees",
        low=0,
        high=20,
        step=0.5,
        default=0,
        source="course convention",
    )


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
    say = Say(unit)
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
    say = Say(unit)
    front, back = (sum(map(paths.path_length, half)) for half in (level.front, level.back))
    yield f"The front's paper comes to {say(front)}, the back's to {say(back)}: together {say(level.width)}."
    left_out = [path.length for path in gaps(level)]
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
    say = Say(unit)
    block, body = one.block, one.block.measurements
    back_length = body.back_waist_length + BACK_NECK_RISE
    over = (
        f"From the side neck point to the waist the front measures {say(body.front_waist_length)}, the back {say(back_length)}"
    )
    if not block.side_dart:
        yield f"{over}. The front is not longer, so there is no dart to close."
        yield f"Both side seams measure {say(paths.path_length(one.back))} from waist to underarm."
        return
    yield f"{over}: the front is {say(block.length_difference)} longer."
    if one.still_open < 1e-6:
        yield (
            f"The dart is closed. From waist to underarm the front's side seam is now as long as the back's: "
            f"{say(paths.path_length(one.back))}."
        )
        return
    yield (
        f"The dart is closed by {say_number(one.closed, 1)} of {degrees(block.side_dart)}; "
        f"its mouth is still {say(one.mouth)} wide."
    )
    yield (
        f"From waist to underarm the front's edge measures {say(one.front_length)}, the open mouth counted; "
        f"the back's seam measures {say(paths.path_length(one.back))}."
    )
