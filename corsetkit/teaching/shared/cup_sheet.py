"""The cups drawn large, as the closed darts leave them: both halves with the seam between them, or the upper cup cut off."""

from corsetkit.drawing.lettering import around
from corsetkit.drawing.pens import BEFORE, GHOST, GUIDE, NEW, WASTE, Tone
from corsetkit.drawing.step_values import Drawn, Pair, Spot, seams_of
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import between
from corsetkit.teaching.shared.clipping import clipped
from corsetkit.teaching.shared.close_up import SEEN, Note, Patch, Stroke, close_up
from corsetkit.teaching.shared.cup_guides import TINT
from corsetkit.teaching.shared.cups_lifted import gap_above, gap_below
from corsetkit.units import say_number, unbroken
from corsetkit.words import words_of

TWO = words_of("05_two_part_cup")
THREE = words_of("06_three_part_cup")
SHARED = words_of("shared")

LOWER = Tone("lower-cup", "#e4ebe9")
_SPARE = 0.6
"""Paper left round the cups, cm."""
_HIGHEST = {2: 11.9, 3: 12.4}
"""So high above the bust point the sheet reaches at least, cm, by the number of parts: room for the highest top edge, so
that the drawing stands still while it is moved."""
_PENS = {"before": BEFORE, "guide": GUIDE, "ghost": GHOST, "new": NEW}


def two_cups_sheet(steps, unit, title, more=()):
    """The sheet of inner and outer cup, their seam drawn on both; `more` are further `Drawn` lines."""
    cup, point = steps.two_part_cup, steps.darts.overbust.bust_point
    seam, back = cup.seam, paths.turned_round
    # As the cups are cut: where they meet the seam these lines are trued.
    inner = back(seam.inner_top.line), back(seam.inner_low.line)
    outer = seam.outer_top.line, _outer_edges(steps)[1], back(seam.outer_low.line)
    top = back(inner[0])
    patches = [
        Patch((*inner[0], *seam.inner, *paths.turned_round(inner[1])), TINT),
        Patch((*outer[0], *outer[1], *outer[2], *paths.turned_round(seam.outer)), TINT),
        *(Patch(gap, WASTE) for gap in _between(seam)),
    ]
    sewn = Pair(TWO("cup_seam"), (TWO("inner_cup"), TWO("outer_cup")))
    lines = [
        _edge(TWO("edge_top_inner"), inner[0]),
        _edge(TWO("edge_under_inner"), inner[1]),
        _edge(TWO("edge_top_outer"), outer[0]),
        _edge(TWO("edge_armscye"), outer[1]),
        _edge(TWO("edge_under_outer"), outer[2]),
        *_straight(seam),
        *more,
        sewn.drawn(1, seam.inner),
        sewn.drawn(2, seam.outer),
    ]
    notes = [
        Note(_at(top, 0.5), TWO("note_top"), True),
        Note(point, SHARED("bust_point"), True),
        Note(_at(inner[1], 0.5), SHARED("underbust_line"), True),
        Note(
            between(paths.path_start(seam.inner), paths.path_start(seam.outer), 0.5) * 0.8 + point * 0.2,
            TWO("note_above", angle=_angle(gap_above(steps))),
        ),
        Note(_at(outer[1], 0.4), TWO("note_armscye")),
        Note(
            between(paths.path_end(seam.inner), paths.path_end(seam.outer), 0.5) * 0.8 + point * 0.2,
            TWO("note_below", angle=_angle(gap_below(steps))),
        ),
    ]
    parts = ((_middle(patches[0].path), TWO("inner_cup")), (_middle(patches[1].path), TWO("outer_cup")))
    said = TWO("sheet_described", title=title)
    return _sheet(steps, unit, title, said, 2, patches, lines, notes, parts)


def three_cups_sheet(steps, unit, title, more=()):
    """The sheet of the upper cup, its dart closed, and the lower cups below it as they are cut; `more` are further lines."""
    cup, point = steps.three_part_cup, steps.darts.overbust.bust_point
    seam, inner, outer = cup.seam, _inner_edges(steps), _outer_edges(steps)
    close = cup.close_top
    top, arm = paths.moved(outer[0], close), paths.moved(cup.armscye_upper, close)
    back = paths.turned_round
    upper = (*cup.upper_centre, *cup.cut_inner, *cup.cut_outer, *back(arm), *back(top), *back(inner[0]))
    low_inner = (*back(seam.inner_low.line), *back(seam.inner), *seam.inner_top.line)
    low_outer = (*seam.outer_top.line, *cup.armscye_lower, *back(seam.outer_low.line), *back(seam.outer))
    patches = [Patch(upper, TINT), Patch(low_inner, LOWER), Patch(low_outer, LOWER)]
    patches += [Patch(gap, WASTE) for gap in _between(seam)]
    across, low = THREE("cut_across"), (THREE("inner_lower_cup"), THREE("outer_lower_cup"))
    sewn = Pair(TWO("cup_seam"), low)
    halves = [Pair(across, (THREE("upper_inner_half"), low[0])), Pair(across, (THREE("upper_outer_half"), low[1]))]
    leg = (Line(paths.path_end(inner[0]), paths.path_end(cup.cut_inner)),)
    lines = [
        _edge(THREE("edge_top_inner"), inner[0]),
        _edge(THREE("edge_top_outer"), top),
        _edge(THREE("edge_armscye_upper"), arm),
        _edge(THREE("edge_armscye_lower"), cup.armscye_lower),
        _edge(THREE("edge_under_upper"), cup.upper_centre),
        _edge(THREE("edge_under_inner"), back(seam.inner_low.line)),
        _edge(THREE("edge_under_outer"), back(seam.outer_low.line)),
        *_straight(seam),
        *more,
        halves[0].drawn(2, cup.cut_inner),
        halves[0].drawn(1, back(seam.inner_top.line)),
        halves[1].drawn(1, cup.cut_outer),
        halves[1].drawn(2, seam.outer_top.line),
        sewn.drawn(1, seam.inner),
        sewn.drawn(2, seam.outer),
    ]
    strokes = [Stroke(leg, GUIDE, THREE("leg_closed"), "guide")]
    notes = [
        Note(between(*_ends(leg), 0.3), THREE("note_leg_closed"), True),
        Note(_at(cup.cut_inner, 0.5), across, True),
        Note(_at(cup.lower_inner, 0.6), SHARED("underbust_line"), True),
        Note(point, SHARED("bust_point"), True),
        Note(_at(arm, 0.5), THREE("note_armscye")),
        Note(_at(cup.cut_outer, 0.75), THREE("note_cut_upper")),
        Note(_at(seam.outer_top.line, 0.75), THREE("note_cut_lower")),
        Note(_at(cup.armscye_lower, 0.5), THREE("note_armscye_rest")),
        Note(between(paths.path_end(seam.inner), paths.path_end(seam.outer), 0.5) * 0.8 + point * 0.2, THREE("note_below")),
    ]
    # The upper cup is a crescent on some: its own middle would lie beside it.
    parts = (
        (between(_at(top, 0.5), _at(cup.cut_outer, 0.5), 0.5), THREE("upper_cup")),
        (_middle(low_inner), low[0]),
        (_middle(low_outer), low[1]),
    )
    said = THREE("sheet_described", title=title)
    return _sheet(steps, unit, title, said, 3, patches, lines, notes, parts, strokes)


def _sheet(steps, unit, title, said, count, patches, lines, notes, parts, strokes=()):
    """The sheet; `said` is what is drawn, in words, `count` the number of the cup's parts."""
    point = steps.darts.overbust.bust_point
    points = [p for patch in patches for p in paths.flattened(patch.path, 0.1)]
    left, bottom, right, top = around([(p.real, p.imag, p.real, p.imag) for p in points])
    box = (left - _SPARE, bottom - _SPARE, right + _SPARE, max(top + _SPARE, point.imag + _HIGHEST[count]))
    seams = seams_of(lines)
    shown = [(line, clipped(line.path, box)) for line in lines]
    drawn = [
        *strokes,
        *(
            Stroke(
                path,
                _PENS[line.role],
                line.name,
                line.role,
                3 if line.role == "new" else 1,
                paths.path_length(line.path),
                _sewn(line, seams),
            )
            for role in _PENS
            for line, path in shown
            if line.role == role and path
        ),
    ]
    key = [
        (NEW, SHARED("this_step")),
        (BEFORE, SHARED("drawn_before")),
        (GUIDE, SHARED("straight_cut")),
        (WASTE, SHARED("open_gap")),
    ]
    if any(line.role == "ghost" for line in lines):
        key.append((GHOST, SHARED("as_it_starts")))
    return close_up(
        title, said, box, (box[3] - box[1]) / SEEN, unit, patches, drawn, (Spot(point, "", "before"),), notes, key, parts
    )


def _inner_edges(steps):
    """Of the inner cup with its dart closed: the overbust line to the seam, and the underbust line to the seam."""
    darts = steps.darts
    return paths.moved(darts.overbust.top_inner, darts.inner.close), darts.inner.line


def _outer_edges(steps):
    """Of the outer cup with its dart closed: the overbust line from the seam, the armscye, and the underbust line to it."""
    darts = steps.darts
    close, o = darts.outer.close, darts.overbust
    line = darts.outer.line
    if abs(paths.path_end(line) - darts.underbust.outer) > abs(paths.path_start(line) - darts.underbust.outer):
        line = paths.turned_round(line)
    return paths.moved(o.top_outer, close), paths.moved(o.armscye_cup_part, close), line


def _between(seam):
    """The open gaps above the bust point and below it: what lies between the two sewn lines, each as a closed path."""
    (a, b), (c, d) = _ends(seam.inner), _ends(seam.outer)
    return (
        (*seam.inner[:1], *paths.turned_round(seam.outer[:1]), Line(c, a)),
        (*seam.inner[1:], Line(b, d), *paths.turned_round(seam.outer[1:])),
    )


def _straight(seam):
    """The cuts as they were before the seam was shaped."""
    return [
        Drawn(blend.before, "guide", SHARED("straight_cut_inner" if blend is seam.inner_blend else "straight_cut_outer"))
        for blend in (seam.inner_blend, seam.outer_blend)
    ]


def _angle(degrees):
    """An angle for a note, on one line."""
    return unbroken(SHARED("degrees", angle=say_number(degrees, 1)))


def _edge(name, path):
    return Drawn(tuple(path), "before", name)


def _sewn(line, seams):
    if not line.pair or id(line.pair) not in seams:
        return None
    number, sides = seams[id(line.pair)]
    return {"seam": number, "side": line.side, "partner": "; ".join(other.name for other in sides[3 - line.side])}


def _ends(path):
    return paths.path_start(path), paths.path_end(path)


def _at(path, share):
    return paths.point_along(path, share * paths.path_length(path))


def _middle(path):
    """About the middle of the area that a closed path bounds."""
    points = paths.flattened(path, 0.1)
    box = around([(p.real, p.imag, p.real, p.imag) for p in points])
    return complex(box[0] + box[2], box[1] + box[3]) / 2
