"""A small made-up pattern for tests of drawing: five pieces with true curves, sewn as a bodice might be."""

from corsetkit.geometry.curve import Cubic, Line
from corsetkit.pattern.by_name import ByName
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.pattern import Fullness, Girth, Pattern, Waste
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import sew


def _bent(start, end, bulge):
    """A curve from start to end that bulges to its right by about `bulge` cm."""
    side = (end - start) / abs(end - start) * -1j * bulge * 4 / 3
    return Cubic(start, start + (end - start) / 3 + side, start + (end - start) * 2 / 3 + side, end)


def _edge(name, kind, *curves):
    return Edge(name, curves, kind)


def toy_pattern():
    """Yoke, upper cup, lower cup, front on the fold, side: every kind of mark a drawing has to show."""
    shoulder = _edge("shoulder", Kind.SHOULDER, Line(14 + 16j, 7 + 18j))
    yoke_foot = _edge("overbust", Kind.CUP_SEAM, _bent(2 + 4j, 16 + 3j, 1.2))
    yoke = Piece(
        1,
        "front yoke",
        (
            yoke_foot,
            _edge("armscye", Kind.ARMSCYE, _bent(16 + 3j, 14 + 16j, -2)),
            shoulder,
            _edge("neckline", Kind.NECKLINE, _bent(7 + 18j, 2 + 4j, -2)),
        ),
        (9 + 6j, 9 + 14j),
        2,
        "shell",
        False,
        True,
    )

    cup_top = _edge("overbust", Kind.CUP_SEAM, _bent(30 + 6j, 16 + 7j, 1.2))
    cup_foot = _edge("cut across", Kind.CUP_SEAM, _bent(17 + 2j, 29 + 2j, 0.8))
    upper = Piece(
        2,
        "upper cup",
        (
            cup_foot,
            _edge("armscye", Kind.ARMSCYE, Line(29 + 2j, 30 + 6j)),
            cup_top,
            _edge("centre", Kind.CUP_SEAM, Line(16 + 7j, 17 + 2j)),
        ),
        (22 + 2.5j, 22 + 6j),
        2,
        "shell",
        False,
        True,
    )

    low_top = _edge("cut across", Kind.CUP_SEAM, _bent(12 + 10j, 0 + 10j, 0.8))
    low_foot = _edge("underbust", Kind.CUP_SEAM, _bent(0 + 10j, 12 + 10j, 8))
    lower = Piece(3, "lower cup", (low_foot, low_top), (6 + 3j, 6 + 9j), 2, "shell", False, True)

    front_top = _edge("underbust", Kind.CUP_SEAM, _bent(12 + 38j, 0 + 38j, -8))
    front_side = _edge("side seam", Kind.PANEL_SEAM, Cubic(11 + 0j, 9 + 14j, 9.5 + 20j, 12 + 38j))
    front = Piece(
        4,
        "centre front",
        (
            _edge("hem", Kind.HEM, _bent(0 - 1j, 11 + 0j, 0.6)),
            front_side,
            front_top,
            _edge("centre front", Kind.FOLD, Line(0 + 38j, 0 - 1j)),
        ),
        (4 + 6j, 4 + 24j),
        1,
        "shell",
        True,
        False,
    )

    side_front = _edge("side seam", Kind.PANEL_SEAM, Cubic(2 + 38j, -0.5 + 20j, -1 + 14j, 1 + 0j))
    side_back = _edge("lacing edge", Kind.LACING, Line(14 + 1j, 14 + 36j))
    side = Piece(
        5,
        "side",
        (
            _edge("hem", Kind.HEM, _bent(1 + 0j, 14 + 1j, 0.4)),
            side_back,
            _edge("armscye", Kind.ARMSCYE, _bent(14 + 36j, 2 + 38j, -1)),
            side_front,
        ),
        (8 + 6j, 8 + 26j),
        2,
        "shell",
        False,
        True,
    )

    seams = (
        sew("overbust", 1, [yoke_foot], [cup_top]),
        sew("cut across", 2, [cup_foot], [low_top], marks=(4.0,)),
        sew("underbust", 3, [low_foot], [front_top], marks=(5.0, 12.0)),
        sew("side", 4, [front_side], [side_front], marks=(12.0, 24.0)),
    )
    girths = ByName({"waist": Girth(68.0, 72.0, 68.0)})
    waste = (Waste("bust dart", "darts", (Line(0j, 4 + 0j), Line(4 + 0j, 2 + 6j), Line(2 + 6j, 0j))),)
    return Pattern(
        measurements=None,
        style=None,
        pieces=(yoke, upper, lower, front, side),
        seams=seams,
        girths=girths,
        fullness=Fullness(ByName({}), 0.0),
        waste=waste,
        warnings=(),
        steps=(),
    )
