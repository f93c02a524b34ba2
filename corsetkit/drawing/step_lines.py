"""Which lines each step draws on the block, and the sheet of the draft so far: the step's own lines over the earlier ones."""

from dataclasses import replace

from corsetkit.drawing.step_sheet import step_sheet
from corsetkit.drawing.step_values import Drawn, Pair, Spot
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.steps import ORDER

_LOWER_SIDE = Pair("lower side seam", ("front", "back"))
"""Kept here, for the back step draws one side of it anew."""


def pair(name, first, second, labels=None, role="new"):
    """Two lines that are sewn to each other; `first` and `second` are each a word for the side and its run.

    The name is written once, on the first, unless `labels` says what is written on each.
    """
    shared = Pair(name, (first[0], second[0]))
    return [
        shared.drawn(side, path, role, label) for side, (_, path), label in zip((1, 2), (first, second), labels or (name, ""))
    ]


def _new(name, path, label=None):
    return Drawn(tuple(path), "new", name, label)


def _guide(name, start, end, label=""):
    return Drawn((Line(start, end),), "guide", name, label)


def _until(shown, last):
    """Whether lines that a later step draws anew still stand on the sheet of the step `shown`."""
    return ORDER.index(shown) <= ORDER.index(last)


def _block(steps, shown):
    block = steps.block
    front, back = block.front, block.back
    lines = []
    for word, half, last in (("front", front, "block"), ("back", back, "three_part_cup")):
        if half.dart_legs and _until(shown, last):
            lines += pair(f"{word} waist dart", *zip(("side leg", "centre leg"), half.dart_legs), ("waist dart", ""))
    for word, half in (("front", front), ("back", back)):
        lines += [
            _new(f"{word} neckline", half.neckline, "neckline"),
            _new(f"{word} armscye", half.armscye, "armscye"),
            _new(f"{word} hip line", (Line(half.hip_centre, half.hip_side),), "hip"),
            _new(f"centre {word}", (Line(half.neck_centre, half.hip_centre),), ""),
            Drawn((Line(half.waist_centre, half.waist_side),), "body", f"waist, {word}", "waist"),
        ]
    for name, what, label in (("shoulder", "shoulder", "shoulder"), ("upper side seam", "side_above", "side seam")):
        lines += pair(name, ("front", getattr(front, what)), ("back", getattr(back, what)), (label, label))
    lines += _lower_side(steps, shown)
    lines.append(
        Drawn((Line(complex(0, front.bust_level), complex(front.width, front.bust_level)),), "body", "bust, front", "bust")
    )
    centre = back.waist_centre.real
    lines.append(
        Drawn(
            (Line(complex(centre - back.width, back.bust_level), complex(centre, back.bust_level)),),
            "body",
            "bust, back",
            "bust",
        )
    )
    if block.side_dart:
        lines += pair(
            "side dart",
            ("upper leg", (Line(block.mouth_upper, block.bust_point),)),
            ("lower leg", (Line(block.bust_point, block.mouth_lower),)),
        )
    return lines, (Spot(block.bust_point, "bust point"), Spot(front.underarm, "underarm point"))


def _lower_side(steps, shown):
    """Both side seams from where the front's dart would lie down to the hip; once the back's waist is taken in, the front's
    is parted at the hem, for it is sewn to the new one down to there."""
    front, back = ((*half.side_waist, *half.side_hip) for half in (steps.block.front, steps.block.back))
    if _until(shown, "three_part_cup"):
        return [_LOWER_SIDE.drawn(1, front), _LOWER_SIDE.drawn(2, back)]
    u = steps.underbust
    to_hem, rest = paths.cut_along((*u.side_waist, *u.side_hip), paths.path_length((*u.side_waist, *u.side_below)))
    return [
        _LOWER_SIDE.drawn(1, to_hem),
        _new("front side, below the hem", rest, ""),
        _new("back side before it is taken in", back, ""),
    ]


def _underbust(steps, shown):
    step, point = steps.underbust, steps.block.bust_point
    lines = [
        _new("front hem", step.hem, "hem"),
        *pair(
            "underbust dart",
            ("inner leg", (Line(point, step.inner), *step.inner_leg)),
            ("outer leg", (Line(point, step.outer), *step.outer_leg)),
        ),
        _new("front parting", step.parting, "parting"),
        _guide("upright from the bust point to the underbust mark", point, step.mark, "upright"),
        _guide("the dart's own line, on which it folds", point, step.dart_end, "fold line"),
    ]
    return lines, (Spot(step.mark, "underbust mark"),)


def _overbust(steps, shown):
    step, point = steps.overbust, steps.block.bust_point
    lines = [
        _new("overbust line, inner", step.top_inner, "overbust line"),
        _new("overbust line, outer", step.top_outer, ""),
        _new("underbust line, inner", step.under_inner, "underbust line"),
        _new("underbust line, outer", step.under_outer, ""),
        *pair(
            "tightening dart",
            ("inner leg", (Line(step.mid_shoulder, step.top_left), Line(step.top_left, point))),
            ("outer leg", (Line(step.mid_shoulder, step.top_right), Line(step.top_right, point))),
        ),
        *pair(
            "centre-front dart", ("upper leg", (Line(step.dart_upper, point),)), ("lower leg", (Line(point, step.dart_lower),))
        ),
        _new(
            "centre front, taken in",
            (Line(step.block.front.neck_centre, step.front_point), Line(step.front_point, step.dart_upper)),
            "",
        ),
        _new("yoke neckline", step.yoke_neckline),
        _guide("how far the cup reaches at the bust level", step.guide_front, step.guide_side),
    ]
    return lines, (Spot(step.mark, "overbust mark"), Spot(step.front_point, "centre-front point"))


def _darts(steps, shown):
    step, cut = steps.darts, steps.overbust
    lines = [
        _new("overbust line, inner, darts closed", paths.moved(cut.top_inner, step.inner.close), ""),
        _new("overbust line, outer, darts closed", paths.moved(cut.top_outer, step.outer.close), ""),
        _new("underbust line, inner, blended", step.inner.line, "underbust line, blended"),
        _new("underbust line, outer, blended", step.outer.line, ""),
    ]
    return lines, (Spot(step.front_point, ""),)


def _cup_seam(seam):
    return pair("cup seam", ("inner cup", seam.inner), ("outer cup", seam.outer))


def _two_part_cup(steps, shown):
    return _cup_seam(steps.two_part_cup.seam), ()


def _three_part_cup(steps, shown):
    step = steps.three_part_cup
    open_again = paths.moved(step.cut_outer, step.close_top.inverse)
    return [
        _new("cut across, inner", step.cut_inner, "cut across"),
        _new("cut across, outer", open_again, ""),
        *_cup_seam(step.seam),
    ], ()


def _back(steps, shown):
    step = steps.back
    legs = step.waist.legs
    lines = [
        _new("back yoke line", step.yoke_line.kept),
        _new("back hem", step.hem.kept, "hem"),
        _new("new back neckline", step.neckline.kept, "neckline"),
        _new("lacing edge", (Line(step.neckline.edge, step.hem.edge),)),
        _LOWER_SIDE.drawn(2, (*step.waist.side_waist, *step.side_below), label="side seam, taken in"),
        _new("back parting, above the dart", step.upper_parting, ""),
        *pair("back dart", ("side leg", legs[0]), ("centre leg", legs[1])),
        _new("back parting, below the dart", step.lower_parting, ""),
    ]
    if step.opening:
        lines.append(_new("back opening", step.opening, "opening"))
    return lines, ()


_LINES = {
    "block": _block,
    "underbust": _underbust,
    "overbust": _overbust,
    "darts": _darts,
    "two_part_cup": _two_part_cup,
    "three_part_cup": _three_part_cup,
    "back": _back,
}


def lines_so_far(steps, name):
    """The `Drawn` lines and the `Spot`s of the draft up to the step `name`, waste first, for a sheet that adds its own."""
    drawn, spots, waste = [], [], []
    for step in ORDER[: ORDER.index(name) + 1]:
        value = getattr(steps, step)
        if value is None:
            continue
        lines, marks = _LINES[step](steps, name)
        if step != name:
            # Told, not written: they were named in their own step.
            lines = [replace(line, role="before", label="") if line.role != "body" else line for line in lines]
            marks = [replace(mark, role="before") for mark in marks]
        drawn += lines
        spots += marks
        waste += getattr(value, "waste", ())
    # What is written on its lines is not written on its waste as well.
    said = {line.written for line in drawn}
    drawn = [Drawn(cut.outline, "waste", cut.name, "" if cut.name in said else None) for cut in waste] + drawn
    return drawn, [spot for spot in spots if spot.name]


def near(steps, name):
    """The window (left, bottom, right, top) in which the step `name` draws, cm; None for a step that draws everywhere.

    It rests on the block alone, so that the paper keeps still while the step's own lines move.
    """
    front = steps.block.front
    level, sides = front.bust_level, (-5.0, front.width + 6.0)
    if name in ("block", "back"):
        return None
    if name == "underbust":
        return sides[0], front.hip_centre.imag, sides[1], level + 8.0
    return sides[0], level - 14.0, sides[1], front.neck_side.imag


def ghosts(steps, name, other):
    """The lines of the step `name` that lie elsewhere in the `Steps` `other`, as they lie there."""
    here, there = ([line for line in _LINES[name](one, name)[0] if line.role == "new"] for one in (steps, other))
    all_paths = {line.path for line in here}
    return [Drawn(line.path, "ghost", f"{line.name}, as it starts", "") for line in there if line.path not in all_paths]


def draft_so_far(steps, name, unit="in", title="", more=(), more_spots=(), window=None):
    """The sheet of the draft up to the step `name`: its lines strong, those of the steps before it lighter.

    What these steps cut away is hatched as waste. `more` are lines and `more_spots` marks of whoever shows it, `window`
    as `near` gives it.
    """
    drawn, spots = lines_so_far(steps, name)
    return step_sheet(
        title or f"The draft after the step {name.replace('_', ' ')}",
        [*drawn, *more],
        [*spots, *more_spots],
        unit,
        window=window,
    )
