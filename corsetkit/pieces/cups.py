"""The cups: two parts, or an upper cup and two lower ones."""

from dataclasses import dataclass
from typing import cast

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.move import STAY
from corsetkit.geometry.points import cross, unit
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Blend, Part
from corsetkit.pieces.yokes import Opening
from corsetkit.steps.cup_seam import Trued
from corsetkit.steps.darts import Darts
from corsetkit.steps.three_part_cup import ThreePartCup
from corsetkit.steps.two_part_cup import TwoPartCup


@dataclass(frozen=True)
class CupPiece:
    """One cup piece: its edges, counter-clockwise, the parts of the block it was, and its blends.

    The named edges are those that a seam asks for; the ones a piece does not have are empty.
    """

    name: str
    edges: tuple[Edge, ...]
    underbust: tuple[Edge, ...]
    top: tuple[Edge, ...]
    parts: tuple[Part, ...]
    blends: tuple[Blend, ...]
    seam: tuple[Edge, ...] = ()
    cut: tuple[Edge, ...] = ()


def _top_edges(
    inner: Curves, outer: Curves, opening: Opening, open_inner: float, open_outer: float, name: str = "top"
) -> tuple[tuple[Edge, ...], tuple[Edge, ...]]:
    """The cup's top edge from the armscye to the centre front: sewn stretches, and the free one under the opening.

    `inner` and `outer` run towards the centre front; either may be empty.
    """
    if not opening.inner:
        return (Edge(name, (*outer, *inner), Kind.CUP_SEAM if opening.yoke else Kind.TOP),), ()
    made: list[Edge] = []
    sewn: list[Edge] = []
    free: list[Line | Cubic] = []
    if outer:
        kept, rest = paths.cut_along(outer, opening.sewn_outer)
        sewn.append(Edge(f"{name}, outer", kept, Kind.CUP_SEAM))
        made.append(sewn[-1])
        free.extend(rest)
    if inner:
        rest, kept = paths.cut_along(inner, open_inner)
        free.extend(rest)
        made.append(Edge(f"{name} under the opening", tuple(free), Kind.OPENING))
        sewn.append(Edge(f"{name}, inner", kept, Kind.CUP_SEAM))
        made.append(sewn[-1])
    else:
        made.append(Edge(f"{name} under the opening", tuple(free), Kind.OPENING))
    return tuple(made), tuple(sewn)


def _tops(darts: Darts, opening: Opening, inner: Curves, outer: Curves) -> tuple[tuple[Edge, ...], tuple[Edge, ...]]:
    """The edges of the overbust line on a cup piece, and those of them that are sewn, from armscye to centre front.

    `outer` and `inner` are its stretches, in that order and sense; one that the piece does not have is empty.
    """
    made, sewn = _top_edges(inner, outer, opening, paths.path_length(darts.overbust.top_inner) - opening.sewn_inner, 0.0)
    return made, sewn or made


def two_cups(cup: TwoPartCup, opening: Opening) -> tuple[CupPiece, CupPiece]:
    """The inner and the outer cup of a two-part cup."""
    darts, o = cup.darts, cup.darts.overbust
    tops, sewn = _tops(darts, opening, cup.seam.inner_top.line, ())
    under = Edge("underbust", paths.turned_round(cup.seam.inner_low.line), Kind.CUP_SEAM)
    seam = Edge("cup seam", paths.turned_round(cup.seam.inner), Kind.CUP_SEAM)
    upper, lower = _sectors_inner(darts)
    inner = CupPiece(
        "inner cup",
        (under, seam, *tops),
        (under,),
        sewn,
        (upper, lower),
        _present(darts.inner.blend, *_shaped(cup.seam.inner_blend, cup.seam.inner_top, cup.seam.inner_low)),
        (seam,),
    )
    tops, sewn = _tops(darts, opening, (), paths.turned_round(cup.seam.outer_top.line))
    under = Edge("underbust", cup.seam.outer_low.line, Kind.CUP_SEAM)
    seam = Edge("cup seam", cup.seam.outer, Kind.CUP_SEAM)
    armscye = Edge("armscye", paths.turned_round(paths.moved(o.armscye_cup_part, darts.outer.close)), Kind.ARMSCYE)
    lower, upper = _sectors_outer(darts)
    outer = CupPiece(
        "outer cup",
        (under, armscye, *tops, seam),
        (under,),
        sewn,
        (lower, upper),
        _present(darts.outer.blend, *_shaped(cup.seam.outer_blend, cup.seam.outer_top, cup.seam.outer_low)),
        (seam,),
    )
    return inner, outer


def three_cups(cup: ThreePartCup, opening: Opening) -> tuple[CupPiece, CupPiece, CupPiece]:
    """The upper cup and the inner and outer lower cups of a three-part cup."""
    darts = cup.darts
    o = darts.overbust
    top_inner = paths.turned_round(paths.moved(o.top_inner, darts.inner.close))
    top_outer = paths.turned_round(paths.moved(o.top_outer, darts.outer.close.then(cup.close_top)))
    tops, sewn = _tops(darts, opening, top_inner, top_outer)
    centre = Edge("underbust", cup.upper_centre, Kind.CUP_SEAM)
    cut = (Edge("cut, inner", cup.cut_inner, Kind.CUP_SEAM), Edge("cut, outer", cup.cut_outer, Kind.CUP_SEAM))
    armscye = Edge("armscye", paths.moved(paths.turned_round(cup.armscye_upper), cup.close_top), Kind.ARMSCYE)
    raw_cut, upper_parts, lower_parts = _cut_inner(cup)
    carried = (
        Blend("the cut, its end carried to the blended underbust line", (raw_cut,), cup.cut_inner)
        if abs(raw_cut.start - cup.front_end) > 1e-9
        else None
    )
    upper_outer, lower_outer = _cut_outer(cup)
    upper = CupPiece(
        "upper cup",
        (centre, *cut, armscye, *tops),
        (centre,),
        sewn,
        (*upper_parts, upper_outer),
        _present(darts.inner.blend, carried),
        (),
        cut,
    )
    under = Edge("underbust", paths.turned_round(cup.seam.inner_low.line), Kind.CUP_SEAM)
    seam = Edge("cup seam", paths.turned_round(cup.seam.inner), Kind.CUP_SEAM)
    top = Edge("cut", cup.seam.inner_top.line, Kind.CUP_SEAM)
    inner = CupPiece(
        "inner lower cup",
        (under, seam, top),
        (under,),
        (),
        lower_parts,
        _present(darts.inner.blend, carried, *_shaped(cup.seam.inner_blend, cup.seam.inner_top, cup.seam.inner_low)),
        (seam,),
        (top,),
    )
    under = Edge("underbust", cup.seam.outer_low.line, Kind.CUP_SEAM)
    armscye = Edge("armscye", paths.turned_round(cup.armscye_lower), Kind.ARMSCYE)
    top = Edge("cut", paths.turned_round(cup.seam.outer_top.line), Kind.CUP_SEAM)
    seam = Edge("cup seam", cup.seam.outer, Kind.CUP_SEAM)
    sector, _ = _sectors_outer(darts)
    outer = CupPiece(
        "outer lower cup",
        (under, armscye, top, seam),
        (under,),
        (),
        (sector, lower_outer),
        _present(darts.outer.blend, *_shaped(cup.seam.outer_blend, cup.seam.outer_top, cup.seam.outer_low)),
        (seam,),
        (top,),
    )
    return upper, inner, outer


def _shaped(seam: Blend, *lines: Trued) -> tuple[Blend, ...]:
    return (seam, *(line.blend for line in lines))


def _present(*blends: Blend | None) -> tuple[Blend, ...]:
    return tuple(blend for blend in blends if blend is not None)


def _sectors_inner(darts: Darts) -> tuple[Part, Part]:
    """The inner cup's two parts on the block, above and below the centre-front dart."""
    o, line, point = darts.overbust, darts.inner, darts.overbust.bust_point
    upper = (Line(point, o.top_left), *paths.turned_round(o.top_inner), *line.moving, Line(line.leg_upper, point))
    lower = (Line(point, line.leg_lower), *line.still, Line(darts.underbust.inner, point))
    return Part("inner cup, upper part", upper, line.close), Part("inner cup, lower part", lower, STAY)


def _sectors_outer(darts: Darts) -> tuple[Part, Part]:
    """The outer cup's two parts on the block, below and above the side dart."""
    o, line, point = darts.overbust, darts.outer, darts.overbust.bust_point
    lower = (Line(point, darts.underbust.outer), *line.still, Line(line.leg_lower, point))
    upper = (
        Line(point, line.leg_upper),
        *line.moving,
        *paths.turned_round(o.armscye_cup_part),
        *paths.turned_round(o.top_outer),
        Line(o.top_right, point),
    )
    return Part("outer cup, lower part", lower, STAY), Part("outer cup, upper part", upper, line.close)


def _cut_inner(cup: ThreePartCup) -> tuple[Cubic, tuple[Part, ...], tuple[Part, ...]]:
    """The inner cup's parts on the block as the cut across divides them: the upper cup's, and the inner lower cup's.

    The cut ends on the blended underbust line; before the blend it would have ended where the ray from the bust
    point through that end meets the line as it was thrown off.
    """
    darts, point = cup.darts, cup.darts.overbust.bust_point
    o, line, close = darts.overbust, darts.inner, darts.inner.close
    moving, a, b = paths.moved(line.moving, close), close(line.leg_upper), line.leg_lower
    top = paths.moved(o.top_inner, close)
    left, knee = paths.path_end(top), paths.path_end(cup.cut_inner)
    below_leg = cross(b - point, cup.front_end - point) > 0
    crossed = line.still if below_leg else moving
    place = paths.on_ray(crossed, point, unit(cup.front_end - point))[0]
    before, after = paths.cut_at(crossed, *place)
    end = paths.path_end(before) if before else paths.path_start(after)
    curve = cast(Cubic, cup.cut_inner[0])
    cut = Cubic(end, curve.first + end - curve.start, curve.second, curve.end)
    leftover = (Line(knee, left), *paths.turned_round(top))
    if not below_leg:
        above = (*before, cut, *leftover)
        below = (*after, Line(a, point), Line(point, knee), cut.turned_round)
        _, still = _sectors_inner(darts)
        return (
            cut,
            (Part("upper cup, inner part", paths.moved(above, close.inverse), close),),
            (Part("inner lower cup, upper part", paths.moved(below, close.inverse), close), still),
        )
    index, t = paths.on_ray((cut,), point, unit(b - point))[0]
    first, second = cut.part(0.0, t), cut.part(t, 1.0)
    meet = first.end
    upper = (*moving, Line(a, meet), second, *leftover)
    corner = (*before, first, Line(meet, b))
    wedge = (Line(meet, point), Line(point, knee), second.turned_round)
    rest = (*after, Line(darts.underbust.inner, point), Line(point, meet), first.turned_round)
    return (
        cut,
        (Part("upper cup, inner part", paths.moved(upper, close.inverse), close), Part("upper cup, corner", corner, STAY)),
        (
            Part("inner lower cup, upper part", paths.moved(wedge, close.inverse), close),
            Part("inner lower cup, lower part", rest, STAY),
        ),
    )


def _cut_outer(cup: ThreePartCup) -> tuple[Part, Part]:
    """The outer cup's upper part on the block as the cut divides it: the upper cup's, and the outer lower cup's."""
    darts, point = cup.darts, cup.darts.overbust.bust_point
    o, line = darts.overbust, darts.outer
    home = line.close.inverse
    cut = paths.moved(paths.moved(cup.cut_outer, cup.close_top.inverse), home)
    upper_arm, lower_arm = paths.moved(cup.armscye_upper, home), paths.moved(cup.armscye_lower, home)
    knee = paths.path_start(cut)
    upper = (*cut, *paths.turned_round(upper_arm), *paths.turned_round(o.top_outer), Line(o.top_right, knee))
    lower = (
        Line(point, line.leg_upper),
        *line.moving,
        *paths.turned_round(lower_arm),
        *paths.turned_round(cut),
        Line(knee, point),
    )
    return (
        Part("upper cup, outer part", upper, line.close.then(cup.close_top)),
        Part("outer lower cup, upper part", lower, line.close),
    )
