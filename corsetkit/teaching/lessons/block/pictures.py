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
from corsetkit.teaching.shared.vignette import card
from corsetkit.teaching.shared.what_moved import degrees, what_moved
from corsetkit.units import CM_PER_INCH, Say, say_length, say_number
from corsetkit.words import words_of

WORDS = words_of("01_block")
SHARED = words_of("shared")

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
        card(WORDS, "block", [Drawn(block.front_paper, "new"), Drawn(block.back_paper, "new")], whole),
        card(WORDS, "centre", [*paper, *both(lambda half: (Line(half.neck_centre, half.hip_centre),))], whole),
        card(WORDS, "armscye", [*paper, *both(lambda half: half.armscye)], whole),
        card(
            WORDS,
            "ease",
            [Drawn(block.back_paper, "before"), Drawn(eased, "new")],
            (back.underarm.real - 7, -8, back.underarm.real + 11, 10),
            (
                Spot(paths.at_level(eased, 3.0), WORDS("ease_garment")),
                Spot(paths.at_level(back.side, -2.0), WORDS("ease_body"), "before"),
            ),
        ),
        card(
            WORDS,
            "waist_dart",
            [
                *paper,
                *(Drawn(_closed(half.dart_legs), "waste") for half in (front, back)),
                *(Drawn(leg, "new") for half in (front, back) for leg in half.dart_legs),
            ],
            whole,
        ),
        card(
            WORDS,
            "side_dart",
            [
                Drawn(block.front_paper, "before"),
                Drawn(block.side_dart_waste.outline, "waste"),
                Drawn((Line(block.mouth_upper, point), Line(point, block.mouth_lower)), "new"),
            ],
            (point.real - 5, block.mouth_lower.imag - 5, front.width + 6, front.underarm.imag + 3),
            (
                Spot(point, SHARED("bust_point")),
                Spot(
                    paths.point_along(
                        (Line(block.mouth_upper, block.mouth_lower),), abs(block.mouth_upper - block.mouth_lower) / 2
                    ),
                    WORDS("side_dart_mouth"),
                    "before",
                ),
            ),
        ),
    )


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
        WORDS("how_far_down"), unit="cm", low=0, high=50, step=CM_PER_INCH / 4, default=16, source="course convention"
    )
    dart_closed_by: float = declared(
        WORDS("how_far_closed"), unit="degrees", low=0, high=20, step=0.5, default=0, source="course convention"
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
    said = [
        WORDS("moved_instead", measurement=name.replace("_", " ").capitalize(), value=say(value), own=say(getattr(body, name)))
        for name, value in others.items()
    ]
    if others:
        said += what_moved(lines, own.block, now.block, unit)
    else:
        said.append(WORDS("moved_nothing", who=who))
    title = WORDS("moved_title", who=who)
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
    title = (
        WORDS("closing_title_level", who=who, level=WORDS(f"level_{level.name}"))
        if level.name
        else WORDS(
            "closing_title_above" if level.height > 0 else "closing_title_below",
            who=who,
            height=say_length(abs(level.height), unit),
        )
    )
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
    title = WORDS("seams_title", who=who)
    sheet = side_seams(title, one, unit, f"{title}. {' '.join(said)}")
    return Picture(svg_text(sheet), sheet.description, said, block.warnings)


def _closing_said(block, level, eases, unit):
    say = Say(unit)
    front, back = (sum(map(paths.path_length, half)) for half in (level.front, level.back))
    yield WORDS("closing_paper", front=say(front), back=say(back), all=say(level.width))
    left_out = [path.length for path in gaps(level)]
    if left_out:
        lengths = [say(length) for length in left_out]
        yield WORDS(
            "closing_left_out", lengths=lengths[0] if len(lengths) == 1 else SHARED("pair", one=lengths[0], other=lengths[1])
        )
    if not level.name:
        yield WORDS("closing_no_tape", all=say(2 * level.width))
        return
    half, ease = getattr(block.measurements, f"{level.name}_girth") / 2, eases[level.name] / 2
    apart = abs(level.width - half - ease)
    yield WORDS(
        "closing_girth_and_ease" if ease else "closing_girth",
        level=WORDS(f"level_{level.name}"),
        half=say(half),
        ease=say(ease),
        all=say(half + ease),
        verdict=WORDS("closing_agree") if apart <= _AGREES else WORDS("closing_differ", apart=say(apart)),
    )


def _dart_said(one, unit):
    say = Say(unit)
    block, body = one.block, one.block.measurements
    back_length = body.back_waist_length + BACK_NECK_RISE
    over = WORDS("seams_over", front=say(body.front_waist_length), back=say(back_length))
    if not block.side_dart:
        yield WORDS("seams_not_longer", over=over)
        yield WORDS("seams_both", length=say(paths.path_length(one.back)))
        return
    yield WORDS("seams_longer", over=over, longer=say(block.length_difference))
    if one.still_open < 1e-6:
        yield WORDS("seams_closed", length=say(paths.path_length(one.back)))
        return
    yield WORDS("seams_still", closed=say_number(one.closed, 1), whole=degrees(block.side_dart), mouth=say(one.mouth))
    yield WORDS("seams_edge", front=say(one.front_length), back=say(paths.path_length(one.back)))
