"""The tape laid level round half a block, and its stretches of paper end to end as one strip beside the body's girth."""

from dataclasses import dataclass

from corsetkit.drawing.canvas import Sheet, box_area, box_run, tick
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import CAPITALS, text_width
from corsetkit.drawing.pens import (
    BEFORE,
    BODY,
    CUT_AWAY,
    CUT_PAPER,
    GRAPHITE,
    GUIDE,
    HEADING,
    LINE_WORDS,
    NAME,
    NEW,
    PAPER_TONE,
    RULE,
    SPOT_WORDS,
    WASTE,
    Letter,
    Pen,
)
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import unit
from corsetkit.units import CM_PER_INCH, say_length
from corsetkit.words import words_of

WORDS = words_of("01_block")

NEAR = 1e-9


@dataclass(frozen=True)
class Level:
    """The tape at one level: the stretches of paper it crosses, in order from centre front to centre back.

    `front` and `back` are tuples of stretches, each a run; what lies between two stretches of a half is its waist dart.
    `name` is "bust", "waist" or "hip" where the level has a measurement, else "". `below_bust` is how far down from the
    bust line it lies on the front, cm, and `height` how far above the waist, on the front too.
    """

    name: str
    below_bust: float
    height: float
    front: tuple
    back: tuple

    @property
    def stretches(self):
        return (*self.front, *self.back)

    @property
    def width(self):
        """What all stretches come to, laid end to end, cm."""
        return sum(map(paths.path_length, self.stretches))


def whole_way(block):
    """From the bust line down to the hip, on the front, cm."""
    return block.front.bust_level + block.measurements.waist_to_hip


def to_waist(block):
    """From the bust line down to the waist, on the front, cm."""
    return block.front.bust_level


def level_at(block, below_bust, near=NEAR):
    """The `Level` that lies `below_bust` cm below the bust line; one within `near` of bust, waist or hip is that one."""
    for name, at in (("waist", to_waist(block)), ("hip", whole_way(block)), ("bust", 0.0)):
        if abs(below_bust - at) <= near:
            return _level(block, at, name)
    return _level(block, below_bust, "")


def _level(block, below_bust, name):
    front, back = block.front, block.back
    height = front.bust_level - below_bust
    if name == "bust":
        centre = complex(back.waist_centre.real, back.bust_level)
        return Level(
            name,
            below_bust,
            height,
            ((Line(complex(0, height), complex(front.width, height)),),),
            ((Line(centre - back.width, centre),),),
        )
    if height > 0:
        return _above_the_waist(block, below_bust, height, name)
    return Level(
        name,
        below_bust,
        height,
        _straight(front, complex(0, height), _on_side(front, height)),
        _straight_back(back, height, _on_side(back, height)),
    )


def _above_the_waist(block, below_bust, height, name):
    """Between waist and bust the front is longer than the back, so the level lies at the same share of the way on both.

    At the side it comes to the same place of the seam on both. On the front it runs level to the waist dart, and from
    there to the side it dips, for the side dart is open: with the dart closed it would lie about level.
    """
    front, back = block.front, block.back
    back_height = height / front.bust_level * back.bust_level
    at_side = _on_side(back, back_height)
    up = _up_to(back, at_side)
    side_leg, centre_leg = _legs_at(front, height)
    inner = (Line(complex(0, height), centre_leg),)
    outer = _to_the_side(block, side_leg, up)
    parts = (inner, outer) if abs(side_leg - centre_leg) > NEAR else (inner + outer,)
    return Level(name, below_bust, height, parts, _straight_back(back, back_height, at_side))


def _straight(half, centre, side):
    """The stretches of a level line from the half's centre to its side, parted by its dart."""
    side_leg, centre_leg = _legs_at(half, centre.imag)
    ends = ((centre, centre_leg), (side_leg, side)) if abs(side_leg - centre_leg) > NEAR else ((centre, side),)
    return tuple((Line(a, b),) for a, b in ends)


def _straight_back(back, height, side):
    """The same on the back, from its side to its centre."""
    stretches = _straight(back, complex(back.waist_centre.real, height), side)
    return tuple(paths.turned_round(path) for path in reversed(stretches))


def _legs_at(half, height):
    """Where the level meets the waist dart's legs, the side's first; twice its own line where there is none."""
    none = complex(half.dart_axis, height)
    if not half.dart_legs:
        return none, none
    found = [paths.at_level(leg, height) for leg in half.dart_legs]
    return tuple(none if at is None else at for at in found)


def _on_side(half, height):
    """Where the level meets the side seam; at the seam's ends rounding must not miss it."""
    at = paths.at_level(half.side, height)
    if at is None:
        at = min((half.underarm, half.waist_side, half.hip_side), key=lambda end: abs(end.imag - height))
    return at


def _up_to(half, point):
    """How far up the side seam from the waist a point of it lies, cm along the seam."""
    up = paths.turned_round((*half.side_above, *half.side_waist))
    index, t = min(paths.on_line(up, point, 1 + 0j), key=lambda place: abs(up[place[0]].point(place[1]) - point))
    return paths.path_length(paths.cut_at(up, index, t)[0])


def _to_the_side(block, start, up):
    """From `start` to the place `up` cm above the waist on the front's side seam, its dart closed."""
    front, point = block.front, block.bust_point
    below = paths.turned_round(front.side_waist)
    rest = up - paths.path_length(below)
    if rest <= NEAR or not block.side_dart:
        side = (*below, *paths.turned_round(front.side_above))
        return (Line(start, paths.point_along(side, up)),)
    # The level comes out above the dart's mouth: it crosses the dart, from one leg to the same place on the other.
    end = paths.point_along(paths.turned_round(front.side_above), rest)
    out = abs(block.mouth_upper - point) * (1 - min(1.0, rest / (point.imag - block.mouth_upper.imag)))
    lower, upper = (point + unit(mouth - point) * out for mouth in (block.mouth_lower, block.mouth_upper))
    return Line(start, lower), Line(upper, end)


def gaps(level):
    """The straight ways across the darts, between the stretches of one half."""
    return tuple(
        Line(paths.path_end(a), paths.path_start(b)) for half in (level.front, level.back) for a, b in zip(half, half[1:])
    )


SCALE = 5.0
LEVELS = ("bust", "waist", "hip")

_STRIP, _TAPE, _APART = 3.0, 1.7, 0.9
"""How high the strip and each tape are, and how far they lie from each other, cm of the drawing."""
_MARGIN = 2.0
_BESIDE = 0.3 * SCALE
"""How far the words stand before their strip or tape."""
_QUIET = Pen("tape-quiet", 0.14, GRAPHITE)
_NUMBER = Letter("number", 2.7, True)
_DROP = CAPITALS / 2 * 0.27 * SCALE
"""From the middle of capitals down to the line they stand on."""
_TICKS = {"in": (CM_PER_INCH, 2), "cm": (1.0, 5)}
"""From one tick of the tape to the next, cm, and how many ticks to a long one."""


def girth_strip(title, block, level, unit, eases, description, frame):
    """The sheet of a `Level`: above, where it crosses the block; below, its stretches as a strip, and three tapes.

    Args:
        eases: for "bust", "waist" and "hip" what the block has beyond the body, all round, cm.
        frame: the longest strip or tape to keep room for, cm, so that the drawing stands still.
    """
    body = block.measurements
    halves = {name: getattr(body, f"{name}_girth") / 2 for name in LEVELS}
    left = text_width("waist 00 00/00 in", SPOT_WORDS, SCALE) + _BESIDE
    right = max(frame, block.back.waist_centre.real)
    top = max(half.across.imag for half in (block.front, block.back))
    rows = _rows(-body.waist_to_hip - 2.6)
    low = complex(-_MARGIN - left, rows["hip"] - 1.2)
    high = complex(right + _MARGIN, top + 1.5 * SCALE)

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), PAPER_TONE)
        canvas.words(complex(low.real + _MARGIN, high.imag - 0.85 * SCALE), title, HEADING, "start")
        _paint_block(canvas, block, unit)
        for path in gaps(level):
            canvas.line((path,), GUIDE, {"name": WORDS("strip_dart"), "length": say_length(path.length, unit)})
        for number, path in enumerate(level.stretches, 1):
            length = say_length(paths.path_length(path), unit)
            canvas.line(path, NEW, {"role": "new", "name": f"stretch {number}", "length": length})
            canvas.words(_middle(path) + 0.17j * SCALE, str(number), _NUMBER)
        _paint_strip(canvas, level, rows["paper"], unit)
        for name in LEVELS:
            _paint_tape(canvas, name, halves[name], eases[name] / 2, rows[name], unit, name == level.name)
        if level.name:
            tick(canvas, complex(level.width, rows["paper"]), complex(level.width, rows[level.name]), GUIDE)

    return Sheet(low, high, title, description, paint, SCALE)


def _rows(top):
    """The lower edge of the strip and of each tape."""
    rows, at = {"paper": top - _STRIP}, top - _STRIP
    for name in LEVELS:
        at -= _APART + _TAPE
        rows[name] = at
    return rows


def _paint_block(canvas, block, unit):
    """The block from hip to armscye, and the body's three levels."""
    for side, (word, half) in enumerate((("front", block.front), ("back", block.back)), 1):
        inwards = 0.4 * (half.across - half.waist_centre).real
        canvas.words(complex(half.waist_centre.real + inwards, half.across.imag - 0.6 * SCALE), word, NAME)
        up = complex(half.waist_centre.real, half.across.imag)
        lines = {
            f"{word} armscye": half.armscye[1:],
            f"{word} side seam": half.side,
            f"centre {word}": (Line(up, half.hip_centre),),
            f"{word} hip line": (Line(half.hip_centre, half.hip_side),),
        }
        sewn = {f"{word} side seam": ("side seam", side)}
        for number, (leg, path) in enumerate(zip(("side leg", "centre leg"), half.dart_legs), 1):
            lines[f"{word} waist dart, {leg}"] = path
            sewn[f"{word} waist dart, {leg}"] = f"{word} waist dart", number
        for name, path in lines.items():
            facts = {"role": "before", "name": name, "length": say_length(paths.path_length(path), unit)}
            canvas.line(path, BEFORE, facts | dict(zip(("seam", "side"), sewn.get(name, ()))))
        tick(canvas, half.waist_centre, half.waist_side, BODY)
        centre = complex(half.waist_centre.real, half.bust_level)
        tick(canvas, centre, complex(half.underarm.real, half.bust_level), BODY)
    if block.side_dart:
        for number, (leg, end) in enumerate((("upper leg", block.mouth_upper), ("lower leg", block.mouth_lower)), 1):
            canvas.line(
                (Line(block.bust_point, end),),
                BEFORE,
                {
                    "role": "before",
                    "name": f"side dart, {leg}",
                    "length": say_length(abs(end - block.bust_point), unit),
                    "seam": "side dart",
                    "side": number,
                },
            )


def _middle(path):
    return paths.point_along(path, paths.path_length(path) / 2)


def _paint_strip(canvas, level, bottom, unit):
    canvas.words(
        complex(-_BESIDE, bottom + _STRIP / 2 - _DROP),
        WORDS("strip_paper", length=say_length(level.width, unit)),
        SPOT_WORDS,
        "end",
    )
    start = 0.0
    for number, path in enumerate(level.stretches, 1):
        length = paths.path_length(path)
        cell = box_run(start, bottom, start + length, bottom + _STRIP)
        canvas.area(cell, CUT_PAPER)
        canvas.line(
            cell, NEW, {"role": "new", "name": WORDS("strip_stretch", number=number), "length": say_length(length, unit)}
        )
        canvas.words(complex(start + length / 2, bottom + _STRIP / 2 - _DROP), str(number), _NUMBER)
        start += length


def _paint_tape(canvas, name, half, ease, bottom, unit, strong):
    """The tape of half a girth, ticks as on a tape; what the block has beyond it is hatched."""
    pen = RULE if strong else _QUIET
    top = bottom + _TAPE
    canvas.line(
        box_run(0.0, bottom, half, top),
        pen,
        {"name": WORDS("strip_girth", level=WORDS(f"level_{name}")), "length": say_length(half, unit)},
    )
    step, long = _TICKS[unit]
    canvas.line(
        tuple(
            Line(complex(i * step, top), complex(i * step, top - _TAPE * (0.62 if i % long == 0 else 0.36)))
            for i in range(1, int(half / step - 1e-9) + 1)
        ),
        pen,
    )
    words = f"{name} {say_length(half, unit)}"
    canvas.words(complex(-_BESIDE, bottom + _TAPE / 2 - _DROP), words, SPOT_WORDS if strong else LINE_WORDS, "end")
    if ease > 1e-9:
        patch = box_run(half, bottom, half + ease, top)
        fill(canvas, patch, WASTE)
        canvas.line(
            patch, CUT_AWAY, {"name": WORDS("strip_ease", level=WORDS(f"level_{name}")), "length": say_length(ease, unit)}
        )
