"""The words of lesson 04, drawn on one wearer's darts."""

from corsetkit.drawing.lettering import around
from corsetkit.drawing.step_values import Drawn, Spot
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.teaching.lessons.back.laced import mirrored
from corsetkit.teaching.lessons.darts.front_parts import INNER_LOWER, INNER_UPPER, front_parts
from corsetkit.teaching.shared.clipping import arc
from corsetkit.teaching.shared.vignette import card
from corsetkit.words import words_of

WORDS = words_of("04_darts")


def dart_words(steps):
    """The `Word`s to know before darts are closed."""
    darts, over, front = steps.darts, steps.overbust, front_parts(steps)
    point, line, close = front.point, darts.inner, darts.inner.close
    part = front.parts[INNER_UPPER]
    turned = Drawn(paths.moved(part.outline, close), "new")
    as_drawn = [Drawn(one.outline, "before") for one in front.parts]
    wedge = Drawn(
        (Line(point, over.dart_upper), Line(over.dart_upper, over.dart_lower), Line(over.dart_lower, point)), "waste"
    )
    room = _room((part.outline, turned.path))
    swing = [
        Drawn(arc(point, corner, over.front_dart), "guide") for corner in (over.front_point, over.top_left, over.dart_upper)
    ]
    at = line.leg_lower
    across = (at.real - 2.6, at.imag - 3.0, at.real + 3.4, at.imag + 2.6)
    leg = Drawn((Line(at - 2.0, point),), "before")
    broken = (paths.moved(line.moving, close), line.still)
    return (
        card(WORDS, "closing", [wedge, *as_drawn, turned], room),
        card(WORDS, "turn", [Drawn(part.outline, "before"), *swing, turned], room, (Spot(point, ""),)),
        card(WORDS, "step", [leg, *(Drawn(one, "new") for one in broken)], across),
        card(WORDS, "redraw", [leg, *(Drawn(one, "before") for one in broken), Drawn(line.line, "new")], across),
        card(
            WORDS,
            "v",
            [Drawn(one, role) for path, role in _v_lines(front, turned, darts) for one in (path, mirrored(path))],
            _v_room(darts),
        ),
    )


def _room(all_paths):
    """A window round the runs, with paper on all sides to tell what they lie beside, cm."""
    points = [p for path in all_paths for p in paths.flattened(path, 0.05)]
    left, bottom, right, top = around([(p.real, p.imag, p.real, p.imag) for p in points])
    return left - 1.2, bottom - 2.2, right + 2.6, top + 1.0


def _v_lines(front, turned, darts):
    """One half's lines round the V, and what each is."""
    low = darts.overbust.dart_lower
    return ((front.parts[INNER_LOWER].outline, "before"), (turned.path, "before"), ((Line(darts.front_point, low),), "new"))


def _v_room(darts):
    """A window on both halves about the V, wide enough that it is seen for what it is, cm."""
    half, low = 2.6 + darts.front_point.real, darts.overbust.dart_lower.imag
    return -half, low - 0.7 * half, half, low + 0.9 * half
