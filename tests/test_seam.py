"""A seam's notches: where pieces change, and where they are asked for, but never so close that they cannot be told apart."""

import anew
import pytest
from figures import WEARERS, figure

from corsetkit.geometry.curve import Line
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import CROWDED, sew


def edges(*lengths):
    """Edges end to end along the x axis, of so many cm each."""
    at, made = 0.0, []
    for length in lengths:
        made.append(Edge(f"edge of {length}", (Line(complex(at, 0), complex(at + length, 0)),), Kind.CUP_SEAM))
        at += length
    return made


def test_a_mark_too_near_a_seams_end_is_left_out():
    """A notch nearer to either end of its seam than 3 mm is left out, one farther away is borne (course convention)."""
    seam = sew("cup seam", 1, edges(10.0), edges(10.0), marks=(0.1, 0.29, 0.31, 5.0, 9.69, 9.71, 9.9))
    assert seam.marks == pytest.approx((0.31, 5.0, 9.69)) and CROWDED == 0.3


def test_a_mark_too_near_a_change_of_pieces_is_left_out():
    """Where pieces change on one side the other bears a notch, and no other within 3 mm of it."""
    seam = sew("underbust", 1, edges(4.0, 6.0), edges(10.0), marks=(3.75, 4.2, 4.31, 3.69))
    assert seam.marks == pytest.approx((3.69, 4.0, 4.31))


def test_changes_on_both_sides_at_one_place_are_one_notch():
    """Where pieces change on both sides within 0.1 mm of each other one notch serves; farther apart there are two."""
    assert sew("one", 1, edges(4.0, 6.0), edges(4.005, 5.995)).marks == pytest.approx((4.0,))
    assert sew("two", 1, edges(4.0, 6.0), edges(4.5, 5.5)).marks == pytest.approx((4.0, 4.5))


def test_an_edge_knows_its_piece_and_a_seam_its_pieces():
    """Every edge of a draft knows the one piece it is of, and each seam the pieces sewn in it, in its order."""
    for case in (("Maren",), ("Theda",)):
        pattern = figure(*case)
        for piece in pattern.pieces:
            for number, edge in enumerate(piece.edges):
                assert edge.piece is piece and piece.place_of(edge) == number
                assert piece.beside(edge, True) is piece.edges[(number + 1) % len(piece.edges)]
                assert piece.beside(edge, False) is piece.edges[number - 1]
        for seam in pattern.seams:
            for side in (0, 1):
                told = [next(one for one in pattern.pieces if one is edge.piece) for edge in seam.sides[side]]
                assert list(seam.pieces_on(side)) == sorted(set(told), key=told.index)
                assert all(seam.side_of(edge) == side for edge in seam.sides[side])
            assert seam.pieces == tuple(dict.fromkeys((*seam.pieces_on(0), *seam.pieces_on(1))))


def test_an_edge_is_of_one_piece():
    """An edge that is a piece's already cannot become another's: it would be sewn in where it does not lie."""
    first = edges(3.0, 4.0)
    Piece(1, "panel", tuple(first), (0j, 1j), 2, "shell", False, True)
    with pytest.raises(ValueError, match="copy: its edge of 3.0 is an edge of the panel already"):
        Piece(2, "copy", tuple(first), (0j, 1j), 2, "shell", False, True)


def test_the_cut_across_has_a_notch_in_the_middle_of_each_lower_cup():
    """Where two lower cups meet the upper one, each has a notch halfway, and the upper cup one where they meet."""
    for wearer in WEARERS:
        seam = next(one for one in figure(wearer).seams if one.name == "cut across")
        inner, outer = (anew.line(edge.path).length for edge in seam.sides[1])
        assert seam.marks == pytest.approx((inner / 2, inner, inner + outer / 2), abs=0.01)
