"""The cup's outline beside what it is drawn by: circles about the bust point, fixed guides, strips to be kept."""

from corsetkit.drawing.canvas import box_run
from corsetkit.drawing.pens import BEFORE, BODY, GUIDE, HATCHING, NEW, THREAD, Pen, Tone
from corsetkit.drawing.step_values import Spot
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import direction
from corsetkit.steps.overbust import SIDE_STRIP
from corsetkit.teaching.shared.clipping import arc
from corsetkit.teaching.shared.close_up import SEEN, Note, Patch, Stroke, close_up
from corsetkit.units import CM_PER_INCH, Say, say_length, unbroken
from corsetkit.words import words_of

WORDS = words_of("03_overbust")
SHARED = words_of("shared")

FIXED = Pen("fixed-guide", 0.6, THREAD)
STRIP = Tone("strip", None, HATCHING, 1.3)
TINT = Tone("cup", "#f6e6df")
ABOVE = 4.5 * CM_PER_INCH + 1.6
"""How much of the front is shown above the bust level, cm: more than the highest overbust mark."""
_TALL = 2.2
"""How far a guide's mark reaches above and below the bust level, cm."""


def guides_sheet(steps, unit, title):
    """The sheet of the front about the bust point, with the fixed guides, whichever method drafts."""
    o, style = steps.overbust, steps.style
    point, width, strip, radius = o.bust_point, o.block.front.width, style.least_strip, o.underbust.radius
    level, low, high = point.imag, point.imag - max(radius, style.underbust_mark) - 1.2, _high(o)
    say = Say(unit, unbroken=True)
    strokes = [
        *(Stroke(path, BEFORE, name) for name, path in front_paper(o, low, high)),
        Stroke((Line(level * 1j, complex(width, level)),), BODY, SHARED("bust_level"), "body"),
        Stroke(arc(point, point + style.overbust_mark * direction(5), 170), GUIDE, WORDS("circle_above"), "guide"),
        Stroke(arc(point, point + radius * direction(185), 170), GUIDE, WORDS("circle_below"), "guide"),
        *cup_lines(o),
    ]
    notes = [
        Note(point + style.overbust_mark * direction(148), WORDS("note_circle_above", radius=say(style.overbust_mark)), True),
        Note(point + radius * direction(216), WORDS("note_circle_below", radius=say(radius)), True),
        Note(complex(strip / 2, level + 1.6 * _TALL), WORDS("note_strip", strip=say(strip)), True),
        Note(complex(width - strip / 2, level - 1.6 * _TALL), WORDS("note_strip", strip=say(strip))),
    ]
    # Both guides begin at the bust point, so each bar has a level of its own below the bust level; what is asked for at the
    # side lies above it.
    for name, start, end, up, left in (
        (WORDS("guide_to_front"), point.real, point.real - style.guide_to_front, -0.35, True),
        (WORDS("guide_to_side"), point.real, point.real + style.guide_to_side, -0.8, False),
        (WORDS("asked_at_side"), width, width - SIDE_STRIP, 0.45, False),
    ):
        tangent = up / abs(up)
        at = complex(end, level + up * _TALL)
        strokes.append(Stroke((Line(complex(start, at.imag), at),), FIXED, name, "guide"))
        # A short upright where the bar begins, and a long one down or up from the bust level where it ends.
        for x, near in ((start, up - 0.2 * tangent), (end, 0.0)):
            ends = (complex(x, level + share * _TALL) for share in (near, up + 0.2 * tangent))
            strokes.append(Stroke((Line(*ends),), FIXED))
        notes.append(Note(at, WORDS("note_guide", name=name, length=say(abs(end - start))), left))
    patches = [
        Patch(cup_outline(o), TINT),
        *(Patch(box_run(left, level - 2 * _TALL, left + strip, level + 2 * _TALL), STRIP) for left in (0.0, width - strip)),
    ]
    spots = (
        Spot(point, SHARED("bust_point"), "before"),
        Spot(o.mark, WORDS("mark")),
        Spot(point - 1j * radius, SHARED("underbust_mark")),
        Spot(o.guide_front, ""),
        Spot(o.guide_side, ""),
    )
    box = (min(0.0, point.real - style.guide_to_front) - 0.6, low - 0.2, width + 0.6, high + 0.2)
    key = (
        (NEW, WORDS("key_outline")),
        (GUIDE, WORDS("key_circles")),
        (FIXED, WORDS("key_guides")),
        (STRIP, WORDS("key_strip")),
    )
    said = WORDS(
        "guides_described",
        title=title,
        front=say(point.real - o.guide_front.real),
        side=say(o.guide_side.real - point.real),
        guide_front=say(style.guide_to_front),
        guide_side=say(style.guide_to_side),
    )
    return close_up(title, said, box, (box[3] - box[1]) / SEEN, unit, patches, strokes, spots, notes, key)


def dart_sheet(steps, across, unit, title):
    """The sheet of the cup with its tightening dart up to the overbust line; `across` is a line in it that is looked at."""
    o, style = steps.overbust, steps.style
    level = o.bust_point.imag
    low, high = level - o.underbust.radius - 1.2, _high(o)
    strokes = [
        *(Stroke(path, BEFORE, name) for name, path in front_paper(o, low, high)),
        *cup_lines(o),
        Stroke((Line(o.bust_point, o.mark),), GUIDE, WORDS("dart_line"), "guide"),
        Stroke(across, FIXED, WORDS("width_asked"), "guide", 3),
    ]
    notes = [
        Note(across[0].point(0.5), WORDS("width_asked")),
        Note(o.mark, WORDS("dart_note_mark", away=unbroken(say_length(style.overbust_mark, unit))), True),
    ]
    spots = (Spot(o.bust_point, SHARED("bust_point"), "before"), Spot(o.mark, ""))
    box = (-0.6, low - 0.2, o.block.front.width + 0.6, high + 0.2)
    said = WORDS("dart_described", title=title, away=say_length(style.overbust_mark, unit))
    return close_up(
        title,
        said,
        box,
        (box[3] - box[1]) / SEEN,
        unit,
        [Patch(cup_outline(o), TINT)],
        strokes,
        spots,
        notes,
        ((NEW, WORDS("key_outline")), (FIXED, WORDS("width_asked"))),
    )


def front_paper(o, low, high):
    """The front's borders between two levels, each with its name; the side dart's mouth is left open."""
    front = o.block.front
    all_paths = (
        (SHARED("armscye"), _between(paths.turned_round(front.armscye), low, high)),
        (SHARED("side_seam"), front.side_above),
        (WORDS("side_seam_below"), paths.turned_round(_between(paths.turned_round(front.side_waist), low, high))),
        (SHARED("centre_front"), (Line(complex(0, min(high, front.neck_centre.imag)), complex(0, low)),)),
    )
    return [(name, path) for name, path in all_paths if path]


def cup_lines(o):
    """The cup's four lines on the block, and the legs between which its darts lie."""
    lines = (
        (WORDS("over_inner"), o.top_inner),
        (WORDS("over_outer"), o.top_outer),
        (WORDS("under_inner"), o.under_inner),
        (WORDS("under_outer"), o.under_outer),
    )
    legs = [Line(o.bust_point, end) for end in (o.top_left, o.top_right, o.underbust.inner, o.underbust.outer)]
    return [*(Stroke((leg,), BEFORE) for leg in legs), *(Stroke(path, NEW, name, "new", 3) for name, path in lines)]


def cup_halves(o):
    """The cup's inner and outer half on the block as closed paths, each from the bust point along its edge of the darts."""
    point, under = o.bust_point, o.underbust
    inner = (Line(point, o.top_left), *paths.turned_round(o.top_inner), *o.under_inner, Line(under.inner, point))
    outer = (
        Line(point, under.outer),
        *o.under_outer,
        *paths.turned_round(o.armscye_cup_part),
        *paths.turned_round(o.top_outer),
        Line(o.top_right, point),
    )
    return inner, outer


def cup_outline(o):
    """Both halves as one closed path."""
    inner, outer = cup_halves(o)
    return (*inner, *outer)


def _high(o):
    """Up to which level the front is shown: the same wherever the overbust mark lies."""
    return max(o.bust_point.imag + ABOVE, o.armscye_top.imag + 0.8, o.front_point.imag + 0.8)


def _between(path, low, high):
    """The stretch of a path, which rises from its start, that lies between two levels."""
    for level, below in ((low, False), (high, True)):
        found = paths.on_line(path, 1j * level, 1 + 0j)
        if found:
            path = paths.cut_at(path, *found[0])[0 if below else 1]
        elif (max(p.imag for p in paths.flattened(path, 0.1)) < level) != below:
            return ()
    return path
