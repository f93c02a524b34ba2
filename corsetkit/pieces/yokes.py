"""The front yoke, its tightening dart closed about the mid-shoulder, and the back yoke."""

import math
from dataclasses import dataclass

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.blend import rounded
from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.move import STAY, Move, turned_about
from corsetkit.geometry.points import Point, unit
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.pattern import Waste
from corsetkit.pattern.piece import Blend, Part
from corsetkit.steps.back import Back
from corsetkit.steps.overbust import Overbust
from corsetkit.style import Style
from corsetkit.units import say_both

ROUNDNESS = 0.34
"""How long the yoke's lines take to run smoothly across the closed dart, as a share of each: course convention."""
LEAST_SEWN = 1.5
"""Overbust line sewn on each side of an opening at least, cm."""
LEAST_ABOVE_OPENING = 3.0
"""Yoke kept between an opening and the shoulder at least, cm."""


@dataclass(frozen=True)
class Opening:
    """The front yoke's opening on the block: how much of each stretch of the overbust line is still sewn.

    `yoke` says whether there is a yoke to sew to at all. `inner` runs from the overbust line to the opening's height on
    the tightening dart's inner leg, `outer` from its height on the outer leg back to the line; both are empty where there
    is no opening.
    """

    sewn_inner: float
    sewn_outer: float
    yoke: bool
    inner: Curves = ()
    outer: Curves = ()
    warnings: tuple[str, ...] = ()


def front_opening(overbust: Overbust, style: Style) -> Opening:
    """The opening above the bust, evenly about the tightening dart; the whole overbust line is sewn without one."""
    left, right = paths.path_length(overbust.top_inner), paths.path_length(overbust.top_outer)
    if not (style.front_opening and style.yoke):
        return Opening(left, right, style.yoke)
    leg = abs(overbust.mid_shoulder - overbust.top_left)
    half = min(style.front_opening_width / 2, min(left, right) - LEAST_SEWN)
    height = min(style.front_opening_height, leg - LEAST_ABOVE_OPENING)
    if half < 1.0 or height < 1.0:
        raise CorsetkitError(
            f"front opening width is {say_both(style.front_opening_width)}: this yoke has no room for an opening; "
            "choose none (front opening no)"
        )

    def edge(path: Curves, length: float, corner: Point) -> Cubic:
        # From the overbust line, square to it, to the height on the dart's leg, square to that.
        start, up = paths.point_along(path, length), paths.tangent_along(path, length) * 1j
        along = unit(overbust.mid_shoulder - corner)
        end = corner + along * height
        across = along * -1j if corner == overbust.top_left else along * 1j
        return Cubic(start, start + up * height * style.opening_roundness, end - across * half * style.opening_roundness, end)

    inner = edge(overbust.top_inner, left - half, overbust.top_left)
    outer = edge(overbust.top_outer, half, overbust.top_right).turned_round
    said: tuple[str, ...] = ()
    if half < style.front_opening_width / 2 - 0.05 or height < style.front_opening_height - 0.05:
        said = (f"the front opening is drawn {say_both(2 * half)} wide and {say_both(height)} high, as this yoke allows",)
    return Opening(left - half, right - half, True, (inner,), (outer,), said)


@dataclass(frozen=True)
class FrontYoke:
    """The front yoke's edges, counter-clockwise: the overbust line (one edge, or two with an opening between), and on.

    `close` is the turn about the mid-shoulder that closes its tightening dart.
    """

    overbust: tuple[Edge, ...]
    opening: tuple[Edge, ...]
    armscye: Edge
    shoulder: Edge
    neckline: Edge
    centre: Edge
    close: Move
    parts: tuple[Part, ...]
    blends: tuple[Blend, ...]
    waste: tuple[Waste, ...]

    @property
    def edges(self) -> tuple[Edge, ...]:
        bottom = self.overbust if not self.opening else (self.overbust[0], *self.opening, self.overbust[1])
        return (*bottom, self.armscye, self.shoulder, self.neckline, self.centre)


def front_yoke(overbust: Overbust, opening: Opening) -> FrontYoke:
    """Cut the front yoke and close its tightening dart by turning the shoulder's outer half about the mid-shoulder."""
    o, front, mid = overbust, overbust.block.front, overbust.mid_shoulder
    angle = 2 * math.degrees(math.atan2(o.top_intake / 2, abs(mid - o.mark)))
    close = turned_about(mid, -angle)
    inner_line, _ = paths.cut_along(o.top_inner, opening.sewn_inner)
    outer_line = paths.cut_along(o.top_outer, paths.path_length(o.top_outer) - opening.sewn_outer)[1]
    outer_closed = paths.moved(outer_line, close)
    blends: list[Blend] = []
    bottom: tuple[Edge, ...]
    free: tuple[Edge, ...]
    if opening.inner:
        rim = (*opening.inner, *paths.moved(opening.outer, close))
        bottom = (Edge("overbust, inner", inner_line, Kind.CUP_SEAM), Edge("overbust, outer", outer_closed, Kind.CUP_SEAM))
        free = (Edge("opening", rim, Kind.OPENING),)
        left, right = paths.path_end(opening.inner), paths.path_start(opening.outer)
    else:
        before = (*inner_line, *outer_closed)
        after = _redrawn(before, "the overbust line of the yoke")
        blends.append(Blend("the overbust line across the yoke's closed dart", before, after))
        bottom, free = (Edge("overbust", after, Kind.CUP_SEAM),), ()
        left, right = o.top_left, o.top_right
    tip = front.shoulder_tip
    shoulder = (Line(close(tip), mid), Line(mid, o.yoke_neck))
    shoulder_line = _redrawn(shoulder, "the yoke's shoulder")
    blends.append(Blend("the shoulder across the yoke's closed dart", shoulder, shoulder_line))
    dipped = paths.path_end(o.yoke_neckline)
    parts = (
        Part(
            "yoke, inner",
            (
                *inner_line,
                *opening.inner,
                Line(left, mid),
                Line(mid, o.yoke_neck),
                *o.yoke_neckline,
                Line(dipped, o.front_point),
            ),
            STAY,
        ),
        Part(
            "yoke, outer",
            (*opening.outer, *outer_line, *paths.turned_round(o.armscye_shoulder_part), Line(tip, mid), Line(mid, right)),
            close,
        ),
    )
    waste: tuple[Waste, ...] = ()
    if opening.inner:
        waste = (
            Waste(
                "yoke opening, inner",
                "overbust",
                (
                    *paths.cut_along(o.top_inner, opening.sewn_inner)[1],
                    Line(o.top_left, left),
                    *paths.turned_round(opening.inner),
                ),
            ),
            Waste(
                "yoke opening, outer",
                "overbust",
                (
                    *paths.cut_along(o.top_outer, paths.path_length(o.top_outer) - opening.sewn_outer)[0],
                    *paths.turned_round(opening.outer),
                    Line(right, o.top_right),
                ),
            ),
        )
    return FrontYoke(
        bottom,
        free,
        Edge("armscye", paths.moved(paths.turned_round(o.armscye_shoulder_part), close), Kind.ARMSCYE),
        Edge("shoulder", shoulder_line, Kind.SHOULDER),
        Edge("neckline", o.yoke_neckline, Kind.NECKLINE),
        Edge("centre front", (Line(dipped, o.front_point),), Kind.FOLD),
        close,
        parts,
        tuple(blends),
        waste,
    )


def _redrawn(path: Curves, name: str) -> Curves:
    """Two curves that meet in a closed dart made one smooth run of the same length."""
    first, second = path
    try:
        return rounded(first, second, ROUNDNESS)[0]
    except ValueError:
        raise CorsetkitError(
            f"{name} cannot be redrawn across its closed dart: choose a smaller tightening dart or a higher overbust mark"
        ) from None


@dataclass(frozen=True)
class BackYoke:
    """The back yoke's edges, counter-clockwise."""

    lower: Edge
    opening: tuple[Edge, ...]
    lacing: Edge
    neckline: Edge
    shoulder: Edge
    armscye: Edge
    parts: tuple[Part, ...]

    @property
    def edges(self) -> tuple[Edge, ...]:
        return (self.lower, *self.opening, self.lacing, self.neckline, self.shoulder, self.armscye)


def back_yoke(back: Back) -> BackYoke:
    """Cut the back yoke."""
    half = back.block.back
    lower, _ = paths.cut_along(back.yoke_line.kept, back.opening_sewn)
    foot = paths.path_end(back.opening) if back.opening else back.yoke_line.edge
    top = back.neckline.edge
    shoulder = (Line(back.yoke_neck, half.shoulder_tip),)
    all_paths = (lower, back.opening, (Line(foot, top),), paths.turned_round(back.neckline.kept), shoulder, back.armscye_yoke)
    return BackYoke(
        Edge("yoke line", lower, Kind.PANEL_SEAM),
        (Edge("opening", back.opening, Kind.OPENING),) if back.opening else (),
        Edge("lacing edge", all_paths[2], Kind.LACING),
        Edge("neckline", all_paths[3], Kind.NECKLINE),
        Edge("shoulder", shoulder, Kind.SHOULDER),
        Edge("armscye", back.armscye_yoke, Kind.ARMSCYE),
        (Part("back yoke", tuple(curve for path in all_paths for curve in path), STAY),),
    )
