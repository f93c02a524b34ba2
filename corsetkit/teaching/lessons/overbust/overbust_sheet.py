"""The overbust step on the front, drawn large: cup and yoke tinted and named, each new line with a note beside it."""

from corsetkit.drawing.hatching import hatched
from corsetkit.drawing.lettering import text_width
from corsetkit.drawing.pens import BEFORE, GHOST, NAME, NEW, WASTE, Tone
from corsetkit.drawing.step_lines import lines_so_far
from corsetkit.drawing.step_sheet import PENS
from corsetkit.drawing.step_values import Spot, seams_of
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import between, cross
from corsetkit.teaching.shared.clipping import clipped
from corsetkit.teaching.shared.close_up import SEEN, Note, Patch, Stroke, close_up
from corsetkit.teaching.shared.cup_guides import TINT, cup_halves
from corsetkit.units import Say, say_length, unbroken
from corsetkit.words import words_of

WORDS = words_of("03_overbust")
SHARED = words_of("shared")

YOKE = Tone("yoke", "#e4ebe9")
_BELOW, _ABOVE = 1.4, 0.4
"""How much is shown below the underbust mark and above the shoulder, cm."""


def overbust_sheet(steps, unit, title, more=()):
    """The sheet; `more` are further `Drawn` lines."""
    o = steps.overbust
    front, point = o.block.front, o.bust_point
    box = (-0.6, point.imag - o.underbust.radius - _BELOW, front.width + 0.6, front.neck_side.imag + _ABOVE)
    scale = (box[3] - box[1]) / SEEN
    strokes = list(_strokes([*lines_so_far(steps, "overbust")[0], *more], box, scale))
    inner, outer = cup_halves(o)
    yoke_inner, yoke_outer = yoke_halves(o)
    patches = [*(Patch(path, TINT) for path in (inner, outer)), *(Patch(path, YOKE) for path in (yoke_inner, yoke_outer))]
    spots = (
        Spot(o.mark, ""),
        Spot(o.front_point, ""),
        Spot(o.underbust.mark, ""),
        Spot(point, SHARED("bust_point"), "before"),
    )
    key = [(NEW, SHARED("this_step")), (BEFORE, SHARED("drawn_before")), (WASTE, SHARED("cut_away"))]
    if any(line.role == "ghost" for line in more):
        key.append((GHOST, SHARED("as_it_starts")))
    high = front.neck_centre.imag - o.front_point.imag
    said = WORDS("sheet_described", title=title, edge=say_length(o.top_radius, unit), below=say_length(high, unit))
    return close_up(title, said, box, scale, unit, patches, strokes, spots, _notes(o, unit), key, _parts(o, scale))


def yoke_halves(o):
    """The yoke's inner and outer half on the block as closed runs, its dart open between them."""
    front, mid = o.block.front, o.mid_shoulder
    inner = (
        Line(paths.path_end(o.yoke_neckline), o.front_point),
        *o.top_inner,
        Line(o.top_left, mid),
        Line(mid, o.yoke_neck),
        *o.yoke_neckline,
    )
    outer = (*o.top_outer, *paths.turned_round(o.armscye_shoulder_part), Line(front.shoulder_tip, mid), Line(mid, o.top_right))
    return inner, outer


def _strokes(drawn, box, scale):
    """What of the lines lies in the box, in the order of their pens; the hatching of what falls away under all."""
    shown = [(line, clipped(line.path, box)) for line in drawn]
    shown = [(line, path) for line, path in shown if path]
    seams = seams_of([line for line, _ in shown])
    for line, _ in shown:
        if line.role == "waste":
            strokes = clipped(hatched(line.path, WASTE.spacing * scale / 10), box)
            if strokes:
                yield Stroke(strokes, WASTE.hatch)
    for role, pen in PENS.items():
        for line, path in shown:
            if line.role == role:
                heavy, long = (3 if role == "new" else 1), paths.path_length(line.path)
                yield Stroke(path, pen, line.name, role, heavy, long, _sewn(line, seams))


def _sewn(line, seams):
    """The facts of the line's seam, where both its sides are in sight."""
    if not line.pair or id(line.pair) not in seams:
        return None
    number, sides = seams[id(line.pair)]
    return {"seam": number, "side": line.side, "partner": "; ".join(other.name for other in sides[3 - line.side])}


def _notes(o, unit):
    say = Say(unit, unbroken=True)
    half = lambda path: paths.point_along(path, paths.path_length(path) / 2)
    front, point, under = o.block.front, o.bust_point, o.underbust
    below = front.neck_centre.imag - o.front_point.imag
    notes = [
        Note(half(o.yoke_neckline), WORDS("note_neckline"), True),
        Note(between(front.neck_centre, o.front_point, 0.55), WORDS("note_front", taken=unbroken(WORDS("taken_in"))), True),
        Note(o.front_point, WORDS("note_begin", below=say(below)), True),
        Note((o.dart_upper + o.dart_lower) / 2 + 0.25 * (point - o.dart_lower), SHARED("centre_front_dart"), True),
        Note(half(o.under_inner), SHARED("underbust_line"), True),
        Note(under.mark, SHARED("underbust_mark"), True),
        Note(between(o.mid_shoulder, o.top_right, 0.45), WORDS("tightening")),
        Note(o.mark, WORDS("note_mark", away=say(abs(o.mark - point)))),
        Note(half(o.top_outer), WORDS("line")),
        Note(between(point, under.outer, 0.8), SHARED("underbust_dart")),
    ]
    if o.block.side_dart:
        notes.append(Note(point + 0.72 * ((o.block.mouth_upper + o.block.mouth_lower) / 2 - point), WORDS("note_side_dart")))
    return notes


def _parts(o, scale):
    """Where cup and yoke are named: on both sides of their open darts, but not on a half too narrow for the word."""
    point, least = o.bust_point, text_width(WORDS("yoke"), NAME, scale) + 0.4 * scale
    return (
        (between(point, o.guide_front, 0.5) - 0.3j * o.underbust.radius, SHARED("cup")),
        (between(point, o.guide_side, 0.6) + 0.5j * o.underbust.radius, SHARED("cup")),
        *((_middle(half), WORDS("yoke")) for half in yoke_halves(o) if _wide(half) > least),
    )


def _wide(path):
    """How wide the area that a closed run bounds is at the level of its middle."""
    middle = _middle(path)
    ends = [(path[i].point(t) - middle).real for i, t in paths.on_line(path, middle, 1 + 0j)]
    return min((x for x in ends if x > 0), default=0.0) - max((x for x in ends if x < 0), default=0.0)


def _middle(path):
    """The middle of the area that a closed run bounds."""
    points = paths.flattened(path, 0.1)
    pairs = [(a, b, cross(a, b)) for a, b in zip(points, points[1:] + points[:1])]
    return sum((a + b) * twice for a, b, twice in pairs) / (3 * sum(twice for _, _, twice in pairs))
