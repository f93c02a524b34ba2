"""Which lines each step draws on the block, and the sheet of the draft so far: the step's own lines over the earlier ones."""

from dataclasses import replace

from ..geometry import path
from ..geometry.curve import Line
from ..steps import ORDER
from .step_sheet import Drawn, Spot, step_sheet


def _new(name, run):
    return Drawn(tuple(run), "new", name)


def _guide(name, run):
    return Drawn(tuple(run), "guide", name)


def _block(block, step):
    front, back = block.front, block.back
    lines = []
    # A waist dart is shown until a later step draws it anew.
    for half, until in ((front, "block"), (back, "three_part_cup")):
        if ORDER.index(step) <= ORDER.index(until):
            lines += [_new(name, leg) for name, leg in zip(("waist dart", ""), half.dart_legs)]
    for half, paper in ((front, block.front_paper), (back, block.back_paper)):
        lines += [_new("neckline", half.neckline), _new("shoulder", half.shoulder), _new("armscye", half.armscye),
                  _new("side seam", half.side_above), _new("", (*half.side_waist, *half.side_hip)),
                  _new("hip", (Line(half.hip_centre, half.hip_side),)),
                  _new("", (Line(half.neck_centre, half.hip_centre),)),
                  Drawn((Line(half.waist_centre, half.waist_side),), "body", "waist")]
    lines.append(Drawn((Line(complex(0, front.bust_level), complex(front.width, front.bust_level)),), "body", "bust"))
    centre = back.waist_centre.real
    lines.append(Drawn((Line(complex(centre - back.width, back.bust_level), complex(centre, back.bust_level)),), "body", ""))
    if block.side_dart:
        lines.append(_new("side dart", (Line(block.mouth_upper, block.bust_point), Line(block.bust_point, block.mouth_lower))))
    spots = (Spot(block.bust_point, "bust point"), Spot(front.underarm, "underarm point"))
    return lines, spots


def _underbust(step):
    lines = [_new("hem", step.hem), _new("underbust dart", (Line(step.block.bust_point, step.inner), *step.inner_leg)),
             _new("", (Line(step.block.bust_point, step.outer), *step.outer_leg)), _new("parting", step.parting),
             _guide("", (Line(step.block.bust_point, step.mark),))]
    return lines, (Spot(step.mark, "underbust mark"),)


def _overbust(step):
    point = step.bust_point
    lines = [_new("overbust line", step.top_inner), _new("", step.top_outer), _new("underbust line", step.under_inner),
             _new("", step.under_outer),
             _new("tightening dart", (Line(step.mid_shoulder, step.top_left), Line(step.top_left, point))),
             _new("", (Line(step.mid_shoulder, step.top_right), Line(step.top_right, point))),
             _new("centre-front dart", (Line(step.dart_upper, point), Line(point, step.dart_lower))),
             _new("", (Line(step.block.front.neck_centre, step.front_point), Line(step.front_point, step.dart_upper))),
             _new("yoke neckline", step.yoke_neckline),
             _guide("", (Line(step.guide_front, step.guide_side),))]
    return lines, (Spot(step.mark, "overbust mark"), Spot(step.front_point, "centre-front point"))


def _darts(step):
    lines = [_new("", path.moved(step.overbust.top_inner, step.inner.close)),
             _new("", path.moved(step.overbust.top_outer, step.outer.close)),
             _new("underbust line, blended", step.inner.line), _new("", step.outer.line)]
    return lines, (Spot(step.front_point, ""),)


def _two_part_cup(step):
    return [_new("cup seam", step.seam.inner), _new("", step.seam.outer)], ()


def _three_part_cup(step):
    open_again = path.moved(step.cut_outer, step.close_top.back)
    return [_new("cut across", step.cut_inner), _new("", open_again), _new("cup seam", step.seam.inner),
            _new("", step.seam.outer)], ()


def _back(step):
    lines = [_new("back yoke line", step.yoke_line.kept), _new("hem", step.hem.kept), _new("neckline", step.neckline.kept),
             _new("lacing edge", (Line(step.neckline.edge, step.hem.edge),)),
             _new("side seam, taken in", (*step.waist.side_waist, *step.side_below)), _new("", step.upper_parting),
             _new("back dart", step.waist.legs[0]), _new("", step.waist.legs[1]), _new("", step.lower_parting)]
    if step.opening:
        lines.append(_new("opening", step.opening))
    return lines, ()


_LINES = {"underbust": _underbust, "overbust": _overbust, "darts": _darts, "two_part_cup": _two_part_cup,
          "three_part_cup": _three_part_cup, "back": _back}


def draft_so_far(steps, name, unit="in", title=""):
    """The sheet of the draft up to the step `name`: its lines strong, those of the steps before it lighter.

    What these steps cut away is hatched as waste.
    """
    drawn, spots, waste = [], [], []
    for step in ORDER[:ORDER.index(name) + 1]:
        value = getattr(steps, step)
        if value is None:
            continue
        lines, marks = _block(value, name) if step == "block" else _LINES[step](value)
        if step != name:
            lines = [replace(line, role="before", name="") if line.role != "body" else line for line in lines]
            marks = [replace(mark, role="before") for mark in marks]
        drawn += lines
        spots += marks
        waste += getattr(value, "waste", ())
    # What is named on its lines is not named on its waste as well.
    said = {line.name for line in drawn}
    drawn = [Drawn(cut.outline, "waste", "" if cut.name in said else cut.name) for cut in waste] + drawn
    return step_sheet(title or f"The draft after the step {name.replace('_', ' ')}", drawn,
                      [spot for spot in spots if spot.name], unit)
