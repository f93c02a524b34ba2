"""The back panels and the modesty panel."""

from dataclasses import dataclass

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import STAY
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Part
from corsetkit.steps.back import Back


@dataclass(frozen=True)
class BackPanel:
    """One back panel: its edges counter-clockwise, those that seams ask for, and its part of the block."""

    name: str
    edges: tuple[Edge, ...]
    top: tuple[Edge, ...]
    dart_seam: Edge
    side: Edge | None
    parts: tuple[Part, ...]


def side_back(back: Back, yoke: bool = True) -> BackPanel:
    """The panel between side seam and back dart."""
    half, waist = back.block.back, back.waist
    seam = (
        *paths.turned_round(back.lower_parting),
        *paths.turned_round(waist.legs[0]),
        *paths.turned_round(back.upper_parting),
    )
    hem = Edge("hem", back.hem_parts[0], Kind.HEM)
    dart_seam = Edge("back dart seam", seam, Kind.PANEL_SEAM)
    top = Edge("yoke line" if yoke else "top", paths.turned_round(back.yoke_parts[0]), Kind.PANEL_SEAM if yoke else Kind.TOP)
    armscye = Edge("armscye", back.armscye_panel, Kind.ARMSCYE)
    side = Edge("side seam", (*half.side_above, *waist.side_waist, *back.side_below), Kind.PANEL_SEAM)
    edges = (hem, dart_seam, top, armscye, side)
    return BackPanel("side back", edges, (top,), dart_seam, side, (_whole("side back", edges),))


def centre_back(back: Back, yoke: bool = True) -> BackPanel:
    """The panel between back dart and lacing edge."""
    waist = back.waist
    seam = (*back.upper_parting, *waist.legs[1], *back.lower_parting)
    hem = Edge("hem", back.hem_parts[1], Kind.HEM)
    lacing = Edge("lacing edge", (Line(back.hem.edge, back.yoke_line.edge),), Kind.LACING)
    sewn = paths.path_length(back.yoke_parts[0])
    top_run = paths.turned_round(back.yoke_parts[1])
    tops: tuple[Edge, ...]
    if back.opening and yoke:
        free, kept = paths.cut_along(top_run, paths.path_length(top_run) - (back.opening_sewn - sewn))
        top = Edge("yoke line", kept, Kind.PANEL_SEAM)
        tops = (Edge("top under the opening", free, Kind.OPENING), top)
    else:
        top = Edge("yoke line" if yoke else "top", top_run, Kind.PANEL_SEAM if yoke else Kind.TOP)
        tops = (top,)
    dart_seam = Edge("back dart seam", seam, Kind.PANEL_SEAM)
    edges = (hem, lacing, *tops, dart_seam)
    return BackPanel("centre back", edges, (top,), dart_seam, None, (_whole("centre back", edges),))


def modesty_panel(back: Back) -> tuple[Edge, ...]:
    """The panel behind the lacing, the back copied on the fold; sewn to the lining, so its edges are free."""
    hem, fold, top, side = back.modesty
    return (
        Edge("hem", hem, Kind.HEM),
        Edge("fold", fold, Kind.FOLD),
        Edge("top", top, Kind.TOP),
        Edge("side", side, Kind.TOP),
    )


def _whole(name: str, edges: tuple[Edge, ...]) -> Part:
    return Part(name, tuple(curve for edge in edges for curve in edge.path), STAY)
