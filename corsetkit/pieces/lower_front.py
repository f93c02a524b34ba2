"""The lower front: centre and side panels under the cups, each cut further for bones where wanted."""

from dataclasses import dataclass

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Curves, Line
from corsetkit.geometry.move import STAY
from corsetkit.geometry.points import Point, unit
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Blend, Part
from corsetkit.steps.darts import Darts


@dataclass(frozen=True)
class Panel:
    """One panel of the lower front: its edges counter-clockwise, those that seams ask for, and its parts of the block."""

    name: str
    edges: tuple[Edge, ...]
    top: Edge
    hem: Edge
    towards_front: Edge | None
    towards_side: Edge | None
    parts: tuple[Part, ...]
    blends: tuple[Blend, ...]
    at_centre: bool = False


def centre_panels(darts: Darts, count: int) -> tuple[Panel, ...]:
    """The panels between centre front and underbust dart, from the centre front on."""
    o, u, line = darts.overbust, darts.underbust, darts.inner
    hem = paths.cut_at(u.hem, *_meets(u.hem, paths.path_end(u.parting)))[0]
    dart_seam = (*paths.turned_round(u.parting), *paths.turned_round(u.inner_leg))
    corner = Part(
        "lower front, corner above the centre-front dart",
        (Line(o.front_point, o.dart_upper), Line(o.dart_upper, line.leg_upper), *paths.turned_round(line.moving)),
        line.close,
    )
    first = (Line(line.leg_lower, o.dart_lower), Line(o.dart_lower, paths.path_start(u.hem)))
    centre = (
        Edge("centre front, the V", (Line(darts.front_point, o.dart_lower),), Kind.CENTRE_FRONT),
        Edge("centre front", (Line(o.dart_lower, paths.path_start(u.hem)),), Kind.FOLD),
    )
    return _panels(
        "centre front",
        _cuts(line.still, hem, line.line, count),
        _Border(centre, first, None),
        _sewn_border("front dart seam", dart_seam),
        corner,
        0,
        line.blend,
    )


def side_panels(darts: Darts, count: int) -> tuple[Panel, ...]:
    """The panels between underbust dart and side seam, from the dart on."""
    block, o, u, line = darts.block, darts.overbust, darts.underbust, darts.outer
    front = block.front
    hem = paths.cut_at(u.hem, *_meets(u.hem, paths.path_end(u.parting)))[1]
    dart_seam = (*u.outer_leg, *u.parting)
    above = paths.moved(paths.turned_round(front.side_above), line.close)
    side = (*paths.turned_round((*u.side_waist, *u.side_below)), *above)
    corner = Part(
        "lower front, corner above the side dart",
        (
            Line(line.leg_upper, block.mouth_upper),
            *paths.turned_round(front.side_above),
            *paths.turned_round(o.armscye_low_part),
            *paths.turned_round(line.moving),
        ),
        line.close,
    )
    last = (*paths.turned_round((*u.side_waist, *u.side_below)), Line(block.mouth_lower, line.leg_lower))
    ends = (
        Edge("side seam", side, Kind.PANEL_SEAM),
        Edge("armscye", paths.moved(paths.turned_round(o.armscye_low_part), line.close), Kind.ARMSCYE),
    )
    return _panels(
        "side front",
        _cuts(line.still, hem, line.line, count),
        _sewn_border("front dart seam", dart_seam),
        _Border(ends, last, ends[0]),
        corner,
        count - 1,
        line.blend,
    )


def _meets(path: Curves, point: Point) -> paths.Place:
    return paths.on_line(path, point, 1j)[0]


@dataclass(frozen=True)
class _Cuts:
    """Hem and underbust line (raw, and blended) in stretches, and the straight cuts between them, foot to top."""

    hems: tuple[Curves, ...]
    raw_tops: tuple[Curves, ...]
    tops: tuple[Curves, ...]
    raw_cuts: tuple[Line, ...]
    cuts: tuple[Line, ...]


def _cuts(still: Curves, hem: Curves, blended: Curves, count: int) -> _Cuts:
    """Divide between `count` panels: straight cuts from even places on the hem to places even across on the underbust line.

    Both lines run from front to side; the underbust line climbs steeply towards the centre front, where even places along
    it would leave a panel a spike for its top. The places are taken on the part that keeps still; on the blended line the same
    straight cut is run to where it meets it.
    """
    left, right = paths.path_start(still).real, paths.path_end(still).real
    hems: list[Curves] = []
    raw: list[Curves] = []
    tops: list[Curves] = []
    raw_cuts: list[Line] = []
    cuts: list[Line] = []
    rest_hem, rest_still, rest_line = hem, still, blended
    for k in range(1, count):
        foot_run, rest_hem = paths.cut_along(rest_hem, paths.path_length(hem) / count)
        across = complex(left + (right - left) * k / count, 0.0)
        raw_run, rest_still = paths.cut_at(rest_still, *paths.on_line(rest_still, across, 1j)[0])
        foot, top = paths.path_end(foot_run), paths.path_end(raw_run)
        places = paths.on_ray(rest_line, foot, unit(top - foot))
        if not places:
            raise CorsetkitError(f"the lower front is too narrow for {count} panels on this wearer: choose fewer")
        place = min(places, key=lambda p: abs(rest_line[p[0]].point(p[1]) - top))
        top_run, rest_line = paths.cut_at(rest_line, *place)
        hems.append(foot_run)
        raw.append(raw_run)
        tops.append(top_run)
        raw_cuts.append(Line(foot, top))
        cuts.append(Line(foot, paths.path_end(top_run)))
    return _Cuts((*hems, rest_hem), (*raw, rest_still), (*tops, rest_line), tuple(raw_cuts), tuple(cuts))


@dataclass(frozen=True)
class _Border:
    """One side of a panel: its edges in the panel's order, the lines in their place on the block, the edge that is sewn."""

    edges: tuple[Edge, ...]
    raw: Curves
    sewn: Edge | None


def _sewn_border(name: str, path: Curves, raw: Curves | None = None) -> _Border:
    edge = Edge(name, path, Kind.PANEL_SEAM)
    return _Border((edge,), raw or path, edge)


def _panels(
    name: str, cuts: _Cuts, towards_front: _Border, towards_side: _Border, corner: Part, corner_of: int, blend: Blend | None
) -> tuple[Panel, ...]:
    """The panels between the cuts, from `towards_front` to `towards_side`, the borders of the outermost.

    `corner` is the part that a closed dart swings to the panel numbered `corner_of`.
    """
    made, count = [], len(cuts.hems)
    for k in range(count):
        words = name if count == 1 else f"{name} {k + 1}"
        left = (
            _sewn_border("panel seam", (cuts.cuts[k - 1].turned_round,), (cuts.raw_cuts[k - 1].turned_round,))
            if k > 0
            else towards_front
        )
        right = _sewn_border("panel seam", (cuts.cuts[k],), (cuts.raw_cuts[k],)) if k < count - 1 else towards_side
        hem = Edge("hem", cuts.hems[k], Kind.HEM)
        top = Edge("underbust", paths.turned_round(cuts.tops[k]), Kind.CUP_SEAM)
        raw = (*cuts.hems[k], *right.raw, *paths.turned_round(cuts.raw_tops[k]), *left.raw)
        part = Part(f"lower front, {words}", raw, STAY)
        made.append(
            Panel(
                words,
                (hem, *right.edges, top, *left.edges),
                top,
                hem,
                left.sewn,
                right.sewn,
                (part, corner) if k == corner_of else (part,),
                (blend,) if blend else (),
                left.sewn is None,
            )
        )
    return tuple(made)
