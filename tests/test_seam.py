"""A seam's notches: where pieces change, and where they are asked for, but never so close that they cannot be told apart."""

import pytest

from corsetkit.geometry.curve import Line
from corsetkit.pattern.edge import Edge, Kind
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
