"""Which pieces there are and what meets what: pieces cut, numbered and sewn along their shared lines."""

from collections.abc import Iterable

from corsetkit.geometry import paths
from corsetkit.geometry.points import Point, between
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.pattern import Waste
from corsetkit.pattern.piece import Blend, Part, Piece
from corsetkit.pattern.seam import Seam, sew
from corsetkit.pieces import backs, cups, lower_front, yokes
from corsetkit.pieces.backs import BackPanel
from corsetkit.pieces.cups import CupPiece
from corsetkit.pieces.lower_front import Panel
from corsetkit.pieces.yokes import BackYoke, FrontYoke
from corsetkit.steps.back import Back
from corsetkit.steps.run import Steps
from corsetkit.steps.three_part_cup import ThreePartCup
from corsetkit.style import Style


class _Seams:
    """The seams in the order in which they are sewn, each numbered as it is made."""

    def __init__(self) -> None:
        self.made: list[Seam] = []

    def sew(
        self,
        name: str,
        first: Iterable[Edge],
        second: Iterable[Edge],
        marks: Iterable[float] = (),
        against: tuple[bool, bool] = (False, True),
    ) -> None:
        self.made.append(sew(name, len(self.made) + 1, first, second, *against, marks=marks))


def cut_and_sew(steps: Steps, style: Style) -> tuple[tuple[Piece, ...], tuple[Seam, ...], tuple[Waste, ...], tuple[str, ...]]:
    """Cut every piece along the steps' lines and sew them.

    Returns:
        (pieces, seams, waste, warnings), each a tuple.
    """
    opening = yokes.front_opening(steps.overbust, style)
    cup = cups.three_cups(steps.cup, opening) if isinstance(steps.cup, ThreePartCup) else cups.two_cups(steps.cup, opening)
    centre = lower_front.centre_panels(steps.darts, style.centre_panels)
    side = lower_front.side_panels(steps.darts, style.side_panels)
    side_back, centre_back = backs.side_back(steps.back, style.yoke), backs.centre_back(steps.back, style.yoke)
    front_yoke, back_yoke = yokes.front_yoke(steps.overbust, opening), yokes.back_yoke(steps.back)

    seams = _Seams()
    _sew_cups(seams, steps, cup)
    _sew_panels(seams, steps, cup, centre, side, side_back, centre_back)
    waste = [cut for step in (steps.block, steps.underbust, steps.overbust, steps.back) for cut in step.waste]
    if style.yoke:
        _sew_yokes(seams, steps, cup, front_yoke, back_yoke, side_back, centre_back)
        waste.extend(front_yoke.waste)
    else:
        waste.extend(
            Waste(f"above the cups and the back, {part.name}", "overbust", part.outline)
            for part in (*front_yoke.parts, *back_yoke.parts)
        )
    return (
        _number(cup, (front_yoke, back_yoke) if style.yoke else None, (*centre, *side), (side_back, centre_back), steps.back),
        tuple(seams.made),
        tuple(waste),
        opening.warnings,
    )


def _sew_cups(seams: _Seams, steps: Steps, cup: tuple[CupPiece, ...]) -> None:
    seam = steps.cup.seam
    inner, outer = cup[-2], cup[-1]
    seams.sew("cup seam", outer.seam, inner.seam, (seam.to_bust_point,))
    if len(cup) == 3:
        upper = cup[0]
        halves = [edge.length for edge in upper.cut]
        seams.sew("cut across", upper.cut, (*inner.cut, *outer.cut), (halves[0] / 2, halves[0] + halves[1] / 2))


def _sewn(edge: Edge | None) -> Edge:
    """The edge of a panel that a seam asks for; a panel on the fold or at the lacing has none on that side."""
    if edge is None:
        raise ValueError("this side of the panel is not sewn")
    return edge


def _sew_panels(
    seams: _Seams,
    steps: Steps,
    cup: tuple[CupPiece, ...],
    centre: tuple[Panel, ...],
    side: tuple[Panel, ...],
    side_back: BackPanel,
    centre_back: BackPanel,
) -> None:
    u, half, waist = steps.underbust, steps.block.back, steps.back.waist
    for panels in (centre, side):
        for left, right in zip(panels, panels[1:]):
            here, there = _sewn(left.towards_side), _sewn(right.towards_front)
            line = here.path[0]
            above = abs(line.end.imag) / (abs(line.end.imag) + abs(line.start.imag)) * line.length
            seams.sew("panel seam", (there,), (here,), (above,))
    seams.sew("front dart seam", (_sewn(side[0].towards_front),), (_sewn(centre[-1].towards_side),), (u.inner_leg[0].length,))
    seams.sew("underbust", [edge for piece in cup for edge in piece.underbust], [panel.top for panel in (*centre, *side)])
    top = paths.path_length(waist.legs[0][:-1]) if waist.dart > 1e-9 else waist.dart_top.imag
    parted = paths.path_length(steps.back.upper_parting)
    seams.sew("back dart seam", (centre_back.dart_seam,), (side_back.dart_seam,), (parted, parted + top))
    above = paths.path_length(half.side_above)
    seams.sew(
        "side seam",
        (_sewn(side_back.side),),
        (_sewn(side[-1].towards_side),),
        (above, above + paths.path_length(waist.side_waist)),
    )


def _sew_yokes(
    seams: _Seams,
    steps: Steps,
    cup: tuple[CupPiece, ...],
    front_yoke: FrontYoke,
    back_yoke: BackYoke,
    side_back: BackPanel,
    centre_back: BackPanel,
) -> None:
    seams.sew("back yoke", (back_yoke.lower,), (*side_back.top, *centre_back.top))
    tops = [edge for piece in cup for edge in piece.top]
    if front_yoke.opening:
        inner, outer = (tops[0], tops[1]) if len(cup) == 2 else (tops[1], tops[0])
        seams.sew("overbust, inner", (front_yoke.overbust[0],), (inner,))
        seams.sew("overbust, outer", (front_yoke.overbust[1],), (outer,))
    else:
        seams.sew("overbust", front_yoke.overbust, tops, (paths.path_length(steps.overbust.top_inner),))
    seams.sew("shoulder", (back_yoke.shoulder,), (front_yoke.shoulder,))


def _number(
    cup: Iterable[CupPiece],
    yokes: tuple[FrontYoke, BackYoke] | None,
    lower: Iterable[Panel],
    back_panels: Iterable[BackPanel],
    back: Back,
) -> tuple[Piece, ...]:
    """The pieces in the order of their numbers: cups, front yoke, lower front, back, back yoke, modesty panel."""
    made: list[Piece] = []

    def add(
        name: str,
        edges: tuple[Edge, ...],
        parts: tuple[Part, ...] = (),
        blends: tuple[Blend, ...] = (),
        on_fold: bool = False,
        copied: bool = False,
    ) -> None:
        made.append(
            Piece(
                len(made) + 1,
                name,
                edges,
                _grainline(edges),
                1 if on_fold else 2,
                "shell",
                on_fold,
                not on_fold,
                parts,
                blends,
                copied,
            )
        )

    for one in cup:
        add(one.name, one.edges, one.parts, one.blends)
    if yokes:
        front = yokes[0]
        add("front yoke", front.edges, front.parts, front.blends, on_fold=True)
    for panel in lower:
        add(panel.name, panel.edges, panel.parts, panel.blends, on_fold=panel.at_centre)
    for panel_behind in back_panels:
        add(panel_behind.name, panel_behind.edges, panel_behind.parts)
    if yokes:
        add("back yoke", yokes[1].edges, yokes[1].parts)
    add("modesty panel", backs.modesty_panel(back), on_fold=True, copied=True)
    return tuple(made)


def _grainline(edges: Iterable[Edge]) -> tuple[Point, Point]:
    """A line on the grain inside the piece: beside the fold where there is one, else upright.

    It is the longest of a few lines across the piece, its ends kept off the edges.
    """
    path = tuple(curve for edge in edges for curve in edge.path)
    fold = next((edge for edge in edges if edge.kind is Kind.FOLD), None)
    tangent = fold.path[0].tangent(0.0) if fold else 1j
    tangent = tangent if tangent.imag > 0 else -tangent
    across = [((curve.point(t) * tangent.conjugate()).imag) for curve in path for t in (0.0, 0.5)]
    low, high = min(across), max(across)
    longest, ends = 0.0, (0j, 0j)
    for share in (0.5, 0.4, 0.6, 0.3, 0.7):
        through = tangent * 1j * (low + (high - low) * share)
        along = sorted((path[i].point(t) * tangent.conjugate()).real for i, t in paths.on_line(path, through, tangent))
        for start, end in zip(along[::2], along[1::2]):
            if end - start > longest * 1.15:
                longest, ends = end - start, (through + tangent * start, through + tangent * end)
    foot, head = ends
    return between(foot, head, 0.15), between(foot, head, 0.85)
