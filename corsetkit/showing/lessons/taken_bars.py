"""What is taken in, as bars beside the back: the four places end to end with a tape, and half the waist."""

from corsetkit.geometry import paths as path
from corsetkit.steps.underbust import level_width
from corsetkit.units import CM_PER_INCH
from corsetkit.drawing.canvas import box_run, tick
from corsetkit.drawing.hatching import fill
from corsetkit.drawing.lettering import CAPITALS
from corsetkit.drawing.pens import BEFORE, CUT_AWAY, FREE, LEADER, NAME, NEW, RULE, SMALL, SPOT_WORDS, WASTE
from corsetkit.showing.lessons.taken_in import told

LARGER, SMALLER = 2.0, 0.5
"""How large patches and half waist are drawn beside the back: the ones are narrow, the other is long."""
PLACES = ("left side seam", "left back dart", "right back dart", "right side seam")
WIDEST = 3 * CM_PER_INCH * LARGER
"""How wide the largest reduction comes out, cm."""

_PATCH, _ROW = 1.6, 2.5
_HIGH = 7 * _ROW + 3.6
"""From the top of the patches to the top of the half waist."""
_TICKS = {"in": (CM_PER_INCH / 2, 2), "cm": (1.0, 5)}
"""From one tick of the tape to the next, cm, and how many ticks to a long one."""


def paint_bars(canvas, corner, back, taken, reduction, waist, unit):
    """Paint all bars with the upper left corner at `corner`: those of a `Taken`, and those of the waist's `Girth`."""
    _paint_patches(canvas, corner, taken, reduction, unit)
    _paint_half_waist(canvas, corner - 1j * _HIGH, back, waist, unit)


def _drop(canvas):
    """From the middle of capitals down to the line they stand on."""
    return CAPITALS / 2 * SPOT_WORDS.size * canvas.scale / 10 * 1j


def _paint_patches(canvas, corner, taken, reduction, unit):
    """What each place takes as a patch, each beginning where the one above it ends; their sum; a tape of the reduction."""
    parts = (taken.at_side, taken.more_in_dart, taken.more_in_dart, taken.at_side)
    drop = _drop(canvas)
    canvas.words(corner, "What is taken here", NAME, "start")
    canvas.words(corner - 1.2j, "beyond what the block took; drawn twice as large", SMALL, "start")
    at, start = corner - 2.2j, 0.0
    for name, part in zip(PLACES, parts):
        left, right = sorted((start, start + part * LARGER))
        at -= 1j * _ROW
        patch = box_run(at.real + left, at.imag, at.real + right, at.imag + _PATCH)
        facts = {"role": "new", "name": f"what the {name} takes", "length": told(part, unit)}
        if abs(part) > 0.02:
            fill(canvas, patch, WASTE)
        canvas.line(patch, CUT_AWAY if part >= 0 else BEFORE, facts)
        words = f"{name} {told(part, unit)}"
        canvas.words(complex(at.real + max(right, start) + 0.6, at.imag + _PATCH / 2) - drop, words, SPOT_WORDS, "start")
        start += part * LARGER
    at -= 1j * (_ROW + 0.5)
    whole = box_run(at.real, at.imag, at.real + max(start, 0.0), at.imag + _PATCH)
    canvas.line(whole, NEW, {"role": "new", "name": "together", "length": told(sum(parts), unit)})
    words = f"together {told(sum(parts), unit)}"
    canvas.words(complex(at.real + max(start, 0.0) + 0.6, at.imag + _PATCH / 2) - drop, words, NAME, "start")
    _paint_tape(canvas, at - 1j * (_ROW + 0.3), reduction, unit, drop)


def _paint_tape(canvas, at, reduction, unit, drop):
    step, long = _TICKS[unit]
    length = reduction * LARGER
    canvas.line(box_run(at.real, at.imag, at.real + length, at.imag + _PATCH), RULE,
                {"name": "waist reduction", "length": told(reduction, unit)})
    for i in range(1, int(reduction / step - 1e-9) + 1):
        x = at.real + i * step * LARGER
        tick(canvas, complex(x, at.imag + _PATCH), complex(x, at.imag + _PATCH * (0.35 if i % long == 0 else 0.65)), RULE)
    words = f"waist reduction {told(reduction, unit)}"
    canvas.words(complex(at.real + length + 0.6, at.imag + _PATCH / 2) - drop, words, SPOT_WORDS, "start")


def _paint_half_waist(canvas, corner, back, waist, unit):
    """Half the body's waist as a bar, and below it what half the corset comes to: front, side back, centre back, half the gap."""
    half, taken = back.block.back, back.waist
    drop = _drop(canvas)
    legs = sorted((taken.axis - taken.dart / 2, taken.axis + taken.dart / 2))
    side = path.at_level((*taken.side_waist, *taken.side_hip), 0.0).real
    lacing, centre = back.hem.edge.real, half.waist_centre.real
    widths = (("front", level_width(back.underbust, 0.0)), ("side back", legs[0] - side),
              ("centre back", lacing - legs[1]), ("half the gap", centre - lacing))
    canvas.words(corner, "Half the waist", NAME, "start")
    canvas.words(corner - 1.2j, "drawn half as large", SMALL, "start")
    at = corner - 1j * (2.2 + _ROW)
    length = waist.body / 2
    canvas.line(box_run(at.real, at.imag, at.real + length * SMALLER, at.imag + _PATCH), BEFORE,
                {"name": "half the body's waist", "length": told(length, unit)})
    words = f"body {told(length, unit)}"
    canvas.words(complex(at.real + length * SMALLER + 0.6, at.imag + _PATCH / 2) - drop, words, SPOT_WORDS, "start")
    at -= 1j * _ROW
    x = at.real
    for name, width in widths:
        cell = box_run(x, at.imag, x + width * SMALLER, at.imag + _PATCH)
        if name == "half the gap":
            fill(canvas, cell, WASTE)
        canvas.line(cell, FREE, {"name": f"{name}, at the waist", "length": told(width, unit)})
        _paint_part(canvas, complex(x, at.imag), width * SMALLER, name)
        x += width * SMALLER
    words = f"corset {told(sum(width for _, width in widths), unit)}"
    canvas.words(complex(x + 0.6, at.imag + _PATCH / 2) - drop, words, NAME, "start")


_PARTS = {"front": (0, "middle", 0.5), "side back": (0, "middle", 0.45), "centre back": (1, "middle", 0.65),
          "half the gap": (0, "start", 0.25)}
"""Each part's name under it: in which row, how it is anchored, and at which share of the part. The narrow parts' names are
wider than they."""


def _paint_part(canvas, corner, width, name):
    row, anchor, share = _PARTS[name]
    at, down = corner + share * width, (0.36 + 0.34 * row) * canvas.scale
    if row:
        foot = corner + share * width
        tick(canvas, foot, foot - 1j * (down - 0.27 * canvas.scale), LEADER)
    canvas.words(at - 1j * down, name, SMALL, anchor)
