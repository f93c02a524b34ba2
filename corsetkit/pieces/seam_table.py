"""Which pieces there are and what meets what: pieces cut, numbered and sewn along their shared lines."""

from corsetkit.geometry import paths
from corsetkit.geometry.points import between
from corsetkit.pattern.edge import Kind
from corsetkit.pattern.pattern import Waste
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import sew
from corsetkit.pieces import backs, cups, lower_front, yokes


class _Seams:
    """The seams in the order in which they are sewn, each numbered as it is made."""

    def __init__(self):
        self.made = []

    def sew(self, name, first, second, marks=(), against=(False, True)):
        self.made.append(sew(name, len(self.made) + 1, first, second, *against, marks=marks))


def cut_and_sew(steps, style):
    """Cut every piece along the steps' lines and sew them.

    Returns:
        (pieces, seams, waste, warnings), each a tuple.
    """
    opening = yokes.front_opening(steps.overbust, style)
    cup = (cups.three_cups if style.cup_parts == 3 else cups.two_cups)(steps.cup, opening)
    centre = lower_front.centre_panels(steps.darts, style.centre_panels)
    side = lower_front.side_panels(steps.darts, style.side_panels)
    side_back, centre_back = (cut(steps.back, style.yoke) for cut in (backs.side_back, backs.centre_back))
    front_yoke, back_yoke = yokes.front_yoke(steps.overbust, opening), yokes.back_yoke(steps.back)

    seams = _Seams()
    _sew_cups(seams, steps, cup)
    _sew_panels(seams, steps, cup, centre, side, side_back, centre_back)
    waste = [cut for step in (steps.block, steps.underbust, steps.overbust, steps.back) for cut in step.waste]
    if style.yoke:
        _sew_yokes(seams, steps, cup, front_yoke, back_yoke, side_back, centre_back)
        waste.extend(front_yoke.waste)
        yoke_pieces = [("front yoke", front_yoke), ("back yoke", back_yoke)]
    else:
        waste.extend(
            Waste(f"above the cups and the back, {part.name}", "overbust", part.outline)
            for part in (*front_yoke.parts, *back_yoke.parts)
        )
        yoke_pieces = []
    return (
        _number(cup, yoke_pieces, (*centre, *side), (side_back, centre_back), steps.back),
        tuple(seams.made),
        tuple(waste),
        opening.warnings,
    )


def _sew_cups(seams, steps, cup):
    seam = steps.cup.seam
    inner, outer = cup[-2], cup[-1]
    seams.sew("cup seam", outer.seam, inner.seam, (seam.to_bust_point,))
    if len(cup) == 3:
        upper = cup[0]
        halves = [edge.length for edge in upper.cut]
        seams.sew("cut across", upper.cut, (*inner.cut, *outer.cut), (halves[0] / 2, halves[0] + halves[1] / 2))


def _sew_panels(seams, steps, cup, centre, side, side_back, centre_back):
    u, half, waist = steps.underbust, steps.block.back, steps.back.waist
    for panels in (centre, side):
        for left, right in zip(panels, panels[1:]):
            line = left.towards_side.path[0]
            above = abs(line.end.imag) / (abs(line.end.imag) + abs(line.start.imag)) * line.length
            seams.sew("panel seam", (right.towards_front,), (left.towards_side,), (above,))
    seams.sew("front dart seam", (side[0].towards_front,), (centre[-1].towards_side,), (u.inner_leg[0].length,))
    seams.sew("underbust", [edge for piece in cup for edge in piece.underbust], [panel.top for panel in (*centre, *side)])
    top = waist.legs[0][0].length if waist.dart > 1e-9 else waist.dart_top.imag
    parted = paths.path_length(steps.back.upper_parting)
    seams.sew("back dart seam", (centre_back.dart_seam,), (side_back.dart_seam,), (parted, parted + top))
    above = paths.path_length(half.side_above)
    seams.sew("side seam", (side_back.side,), (side[-1].towards_side,), (above, above + paths.path_length(waist.side_waist)))


def _sew_yokes(seams, steps, cup, front_yoke, back_yoke, side_back, centre_back):
    seams.sew("back yoke", (back_yoke.lower,), (*side_back.top, *centre_back.top))
    tops = [edge for piece in cup for edge in piece.top]
    if front_yoke.opening:
        inner, outer = (tops[0], tops[1]) if len(cup) == 2 else (tops[1], tops[0])
        seams.sew("overbust, inner", (front_yoke.overbust[0],), (inner,))
        seams.sew("overbust, outer", (front_yoke.overbust[1],), (outer,))
    else:
        seams.sew("overbust", front_yoke.overbust, tops, (paths.path_length(steps.overbust.top_inner),))
    seams.sew("shoulder", (back_yoke.shoulder,), (front_yoke.shoulder,))


def _number(cup, yoke_pieces, lower, back_panels, back):
    """The pieces in the order of their numbers: cups, front yoke, lower front, back, back yoke, modesty panel."""
    made = []

    def add(name, piece, on_fold=False, blends=(), copied=False, edges=None, parts=()):
        edges = edges or piece.edges
        made.append(
            Piece(
                len(made) + 1,
                name,
                tuple(edges),
                _grainline(edges),
                1 if on_fold else 2,
                "shell",
                on_fold,
                not on_fold,
                tuple(parts),
                tuple(blends),
                copied,
            )
        )

    for piece in cup:
        add(piece.name, piece, blends=piece.blends, parts=piece.parts)
    if yoke_pieces:
        name, piece = yoke_pieces[0]
        add(name, piece, on_fold=True, blends=piece.blends, parts=piece.parts)
    for piece in lower:
        add(piece.name, piece, on_fold=piece.at_centre, blends=piece.blends, parts=piece.parts)
    for piece in back_panels:
        add(piece.name, piece, parts=piece.parts)
    if yoke_pieces:
        name, piece = yoke_pieces[1]
        add(name, piece, parts=piece.parts)
    add("modesty panel", None, on_fold=True, copied=True, edges=backs.modesty_panel(back))
    return tuple(made)


def _grainline(edges):
    """A line on the grain inside the piece: beside the fold where there is one, else upright.

    It is the longest of a few lines across the piece, its ends kept off the edges.
    """
    path = tuple(curve for edge in edges for curve in edge.path)
    fold = next((edge for edge in edges if edge.kind is Kind.FOLD), None)
    tangent = fold.path[0].tangent(0.0) if fold else 1j
    tangent = tangent if tangent.imag > 0 else -tangent
    across = [((curve.point(t) * tangent.conjugate()).imag) for curve in path for t in (0.0, 0.5)]
    low, high = min(across), max(across)
    best = (0.0, 0j, 0j)
    for share in (0.5, 0.4, 0.6, 0.3, 0.7):
        through = tangent * 1j * (low + (high - low) * share)
        along = sorted((path[i].point(t) * tangent.conjugate()).real for i, t in paths.on_line(path, through, tangent))
        for foot, head in zip(along[::2], along[1::2]):
            if head - foot > best[0] * 1.15:
                best = head - foot, through + tangent * foot, through + tangent * head
    _, foot, head = best
    return between(foot, head, 0.15), between(foot, head, 0.85)
