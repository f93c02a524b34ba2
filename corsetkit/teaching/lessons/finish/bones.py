"""Half a corset opened out as it lies on the block, with its bones in their channels, the eyelets and the waist tape."""

from corsetkit.drawing.canvas import Sheet, box_area, tick
from corsetkit.drawing.finished_view import closed
from corsetkit.drawing.lettering import CAPITALS, around, text_width
from corsetkit.drawing.painting import edge_facts, pen_of
from corsetkit.drawing.pens import (
    BOARD_TONE,
    BODY,
    CUT_PAPER,
    GUIDE,
    HATCHING,
    HEADING,
    INK,
    MARK_TONE,
    RING,
    SEAM,
    SMALL,
    Pen,
    Tone,
)
from corsetkit.finish.bones import SPIRAL
from corsetkit.finish.lacing import lacing_stretches
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import unit as unit_step
from corsetkit.pattern.edge import Kind
from corsetkit.teaching.shared.close_up import paint_row, row_width
from corsetkit.units import say_length
from corsetkit.words import words_of

WORDS = words_of("08_finish")

SCALE = 4.6
FLAT_TONE, SPIRAL_TONE = Tone("flat-bone", "#8b8478"), Tone("spiral-bone", "#ffffff")
BONE = Pen("bone", 0.22, INK)
EYELET = Pen("eyelet", 0.22, INK)
SPIRAL_KEY = Tone("spiral-bone", "#ffffff", BONE, 1.1)
"""A spiral bone as the key shows it."""
_KEY = (
    (FLAT_TONE, WORDS("key_flat_bone")),
    (SPIRAL_KEY, WORDS("key_spiral_bone")),
    (GUIDE, WORDS("key_channel")),
    (BODY, WORDS("key_waist_tape")),
)
_MARGIN, _RING = 1.6, 2.05


def bones_sheet(finished, bill, unit, title):
    """The sheet of a `Finished` pattern's pieces below the cups with the bones and eyelets of its `Bill`.

    Each bone bears its number in the bill's order; those of the lacing edge run up over the yoke where there is one.
    """
    pieces = [
        one
        for one in finished.pattern.pieces
        if not one.copied and (paths.on_line(one.path, 0j, 1 + 0j) or any(edge.kind is Kind.LACING for edge in one.edges))
    ]
    choices, stretches = finished.choices, lacing_stretches(finished.pattern.pieces)
    boxes = [(p.real, p.imag, p.real, p.imag) for one in pieces for p in paths.flattened(one.path, 0.1)]
    left, bottom, right, top = around(boxes)
    wide = max(right - left + 2 * _MARGIN, row_width(_KEY, SCALE) + 2 * _MARGIN, text_width(title, HEADING, SCALE) + 4.0)
    side = (wide - (right - left)) / 2
    low, high = complex(left - side, bottom - _MARGIN - 0.9 * SCALE), complex(right + side, top + 2.6 * SCALE)
    drawn = [(number, bone, _channel(bone, stretches, choices)) for number, bone in enumerate(bill.bones, 1)]

    def paint(canvas):
        box_area(canvas, (low.real, low.imag, high.real, high.imag), BOARD_TONE)
        canvas.words(complex(low.real + 0.4 * SCALE, high.imag - 0.8 * SCALE), title, HEADING, "start")
        for piece in pieces:
            with canvas.group("piece", {"piece": piece.number, "name": piece.name}):
                canvas.area(piece.path, CUT_PAPER)
                for edge in piece.edges:
                    canvas.line(edge.path, pen_of(edge), edge_facts(edge, piece, unit))
        tick(canvas, complex(left, 0), complex(right, 0), BODY)
        for _, bone, path in drawn:
            _paint_bone(canvas, bone, path, choices, bill.channel_width, unit)
        for stretch, made in zip(stretches, bill.eyelets):
            for place in made.places:
                at = paths.point_along(stretch.path, place) - 1j * paths.tangent_along(stretch.path, place) * made.inset
                canvas.dot(at, 0.5, MARK_TONE, EYELET)
        for number, at in _numbers(drawn, top):
            canvas.dot(at, _RING, MARK_TONE, RING)
            canvas.words(at - 1j * CAPITALS / 2 * SEAM.size * SCALE / 10, str(number), SEAM)
        canvas.words(complex(low.real + 0.4 * SCALE, high.imag - 1.45 * SCALE), WORDS("bones_caption"), SMALL, "start")
        paint_row(canvas, complex(low.real + 0.4 * SCALE, low.imag + 0.45 * SCALE), _KEY)

    return Sheet(
        low, high, title, WORDS("bones_described", title=title, bones=bill.bone_count, eyelets=bill.eyelet_count), paint, SCALE
    )


def _channel(bone, stretches, choices):
    """The run along the middle of a bone's channel, where its piece lies."""
    edge = next((one for one in stretches if one.path == bone.line), None)
    if edge is None:
        return bone.line
    # At the very edge the channel lies inside it; the other lies as far beyond the eyelets as they lie from the edge.
    inset = choices.bone_width / 2 if bone.place.startswith("lacing edge") else 2 * choices.eyelet_inset
    return tuple(Line(a, b) for a, b in _pairs(_beside(bone.line, inset)))


def _beside(path, off):
    """Points along the run, `off` cm to its right."""
    points = paths.flattened(path, 0.02)
    points = [p for i, p in enumerate(points) if not i or abs(p - points[i - 1]) > 1e-6]
    tangents = [unit_step(b - a) for a, b in _pairs(points)]
    turned = [tangents[0], *(unit_step(a + b) for a, b in _pairs(tangents)), tangents[-1]]
    return [p - 1j * tangent * off for p, tangent in zip(points, turned)]


def _pairs(points):
    return zip(points, points[1:])


def _paint_bone(canvas, bone, path, choices, channel, unit):
    length = paths.path_length(path)
    for off in (-channel / 2, channel / 2):
        canvas.line(tuple(Line(a, b) for a, b in _pairs(_beside(path, off))), GUIDE)
    spare = min(choices.bone_shorter / 2, length / 4)
    inner = paths.stretch(path, spare, length - spare)
    half = choices.bone_width / 2
    right, left_ = _beside(inner, half), _beside(inner, -half)
    shape = closed((*right, *left_[::-1]))
    canvas.area(shape, SPIRAL_TONE if bone.kind == SPIRAL else FLAT_TONE)
    if bone.kind == SPIRAL:
        canvas.line(tuple(_coil(inner, half)), HATCHING)
    canvas.line(
        shape,
        BONE,
        {
            "role": "new",
            "name": WORDS("bone_named", place=bone.place, kind=bone.kind),
            "length": say_length(bone.length, unit),
        },
    )


def _coil(path, half):
    """Slanting strokes across a spiral bone."""
    right, left, step = _beside(path, half), _beside(path, -half), 0.45
    along, next_at = 0.0, 0.0
    for (a, b), (c, d) in zip(_pairs(left), _pairs(right)):
        length = abs(b - a)
        while next_at < along + length:
            share = (next_at - along) / length
            # The other end lies a little farther on, as a coil does.
            on = min(share + step / length, 1.0) if length > step else 1.0
            yield Line(a + (b - a) * share, c + (d - c) * on)
            next_at += step
        along += length


def _numbers(drawn, top):
    """Where the bones' numbers stand: over each bone's upper end, raised where two would meet."""
    radius = _RING * SCALE / 10
    taken = []
    for number, _, path in sorted(drawn, key=lambda one: max(paths.path_start(one[2]), paths.path_end(one[2]), key=_up).real):
        head = max(paths.path_start(path), paths.path_end(path), key=_up)
        at = head + 1j * (radius + 0.35)
        while any(abs(at - other) < 2.15 * radius for other in taken):
            at += 0.5j * radius
        taken.append(at)
        yield number, at


def _up(point):
    return point.imag
