"""Walking the seams: the stretches from the waist, what was measured on paper, and an edge trued."""

import anew
import pytest
from figures import CASES, figure, words
from promises import faults

from corsetkit.errors import CorsetkitError
from corsetkit.finish.stops import waist_of
from corsetkit.finish.truing import resewn, trued
from corsetkit.finish.walk import small, walk
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.seam import sew


def seam_named(pattern, name):
    return next(seam for seam in pattern.seams if seam.name == name)


def test_every_seam_is_walked_whole_and_agrees():
    """A seam's stretches add up to its sides' lengths, measured anew, and none is beyond 0.1 mm."""
    for case in CASES:
        pattern = figure(*case)
        for seam in pattern.seams:
            walked = walk(seam)
            for number, side in enumerate(seam.sides):
                whole = sum(anew.line(edge.path).length for edge in side)
                assert sum(one.lengths[number] for one in walked.stretches) == pytest.approx(whole, abs=1e-3), words(case)
            assert len(walked.stretches) == len(seam.marks) + 1
            assert not walked.beyond(0.01) and not walked.moves(0.01) and not any(one.is_eased for one in walked.stretches)


def test_panels_are_walked_from_the_waist():
    """What crosses the waist is walked from the waist notch, up first and then down to the hem; a cup from one end."""
    for case in CASES:
        pattern = figure(*case)
        for seam in pattern.seams:
            walked = walk(seam)
            crosses = any(edge.path[0].start.imag * edge.path[-1].end.imag < 0 for side in seam.sides for edge in side)
            begun = [one for one in walked.stretches if one.begins]
            if not crosses:
                assert len(begun) == 1 and begun[0] is walked.stretches[0] and "waist" not in begun[0].start
                continue
            assert [one.start for one in begun] == ["the waist notch"] * 2, (words(case), seam.name)
            assert walked.stretches[-1].end == "the hem" and walked.stretches[0] is begun[0]
            for one, two in zip(walked.stretches, walked.stretches[1:]):
                assert two.begins or two.start == one.end


def test_measured_lengths_say_what_to_move():
    """A side seam measured 3 mm short below the waist is lengthened at the hem; 2 mm out above it, its notch moves too."""
    pattern = figure("Maren")
    side = seam_named(pattern, "side seam")
    right = [one.lengths for one in walk(side).stretches]
    below = [*right[:-1], (right[-1][0] - 0.3, right[-1][1])]
    assert walk(side, below).moves() == (
        "Lengthen the side back's side seam by 3 mm at the hem: measured from the waist notch, the side front is longer.",
    )
    in_inches = walk(side, below).moves(unit="in")[0]
    assert in_inches.startswith("Lengthen the side back's side seam by 1/8 in at the hem")
    above = [(right[0][0], right[0][1] - 0.2), *right[1:]]
    assert walk(side, above).moves() == (
        "Move notch 1 on the side front's side seam by 2 mm away from the waist notch: up to there the side back is longer.",
        "Lengthen the side front's side seam by 2 mm at the armscye: measured from the waist notch, the side back is longer.",
    )
    assert [one.end for one in walk(side, above).beyond()] == ["notch 1"]
    assert not walk(side, [(a + 0.15, b) for a, b in right[:1]] + right[1:]).moves()


def test_a_stretch_is_said_with_both_its_lengths():
    """Lengths are said to the millimetre or to 1/16 in, and whether they agree."""
    pattern = figure("Maren")
    dart = seam_named(pattern, "front dart seam")
    lengths = [(10.0, 10.0), (15.24, 14.92)]
    said = [one.said("in") for one in walk(dart, lengths).stretches]
    assert said == [
        "From the waist notch to the underbust: side front 3 15/16 in, centre front 3 15/16 in; they agree.",
        "From the waist notch to the hem: side front 6 in, centre front 5 7/8 in; they differ by 1/8 in.",
    ]
    assert [small(x, "in") for x in (0, 0.16, -0.32, 2.54, 3.0)] == ["0 in", "1/16 in", "1/8 in", "1 in", "1 3/16 in"]
    assert small(-0.32, "cm") == "3 mm"


@pytest.mark.parametrize(
    "measured, said",
    [
        ([(1, 2)], "has 1 stretches: this seam has 3"),
        ([(1, 2), (1, 2), 5], "no pair of lengths"),
        ([(1, 2), (1, 2), (1, -2)], "above zero"),
        ([(1, 2), (1, 2), (1, float("nan"))], "above zero"),
    ],
)
def test_what_is_no_measured_walk_is_refused(measured, said):
    pattern = figure("Maren")
    with pytest.raises(CorsetkitError, match=said) as refusal:
        walk(seam_named(pattern, "side seam"), measured)
    assert "\n" not in str(refusal.value)


def spoilt(pattern, by):
    """The pattern with the side back's side seam `by` cm shorter at the hem, its hem left as it was drawn but for that."""
    piece = next(one for one in pattern.pieces if one.name == "side back")
    number = next(i for i, edge in enumerate(piece.edges) if edge.name == "side seam")
    side, hem = piece.edges[number], piece.edges[(number + 1) % len(piece.edges)]
    assert hem.kind is Kind.HEM
    path = paths.cut_along(side.path, side.length - by)[0]
    cut, kept = paths.cut_along(hem.path, 3.0)
    return resewn(pattern, {id(side): path, id(hem): (Line(paths.path_end(path), paths.path_end(cut)), *kept)})


def test_an_edge_is_trued_at_the_hem():
    """A side seam cut 4 mm short is walked, named, and trued; then the seam agrees, and the pattern given is as it was."""
    pattern = figure("Maren")
    short = spoilt(pattern, 0.4)
    side = seam_named(short, "side seam")
    assert walk(side).moves() == (
        "Lengthen the side back's side seam by 4 mm at the hem: measured from the waist notch, the side front is longer.",
    )
    piece = next(one for one in short.pieces if one.name == "side back")
    edge = next(one for one in piece.edges if one.name == "side seam")
    hem = next(one for one in piece.edges if one.kind is Kind.HEM)
    mended = trued(short, edge, 0.4, hem)
    assert not walk(seam_named(mended, "side seam")).beyond(0.001)
    assert walk(side).beyond()
    new = next(one for one in mended.pieces if one.name == "side back")
    blend = new.blends[-1]
    assert "hem" in blend.why and 0.3 < blend.largest_move < 0.6
    # Rigid parts and the tiling are the draft's own promises; whoever moves an edge by hand gives those up.
    kept = faults(mended, ("assembly", "girth", "tiling", "smooth", "rigid"))
    assert not kept, kept
    seams = {seam.number: seam for seam in mended.seams}
    assert [seams[seam.number].marks for seam in pattern.seams] == [seam.marks for seam in pattern.seams]


def test_an_edge_is_trued_at_its_start_and_shortened():
    """Cut back by 2 mm at the edge's own start, the neighbour redrawn ends where it does and leaves as it did."""
    pattern = figure("Maren")
    piece = next(one for one in pattern.pieces if one.name == "side front")
    number = next(i for i, edge in enumerate(piece.edges) if edge.name == "side seam")
    edge, hem = piece.edges[number], piece.edges[number - 1]
    new = next(one for one in trued(pattern, edge, -0.2, hem).pieces if one.name == "side front")
    assert new.edges[number].length == pytest.approx(edge.length - 0.2, abs=1e-6)
    assert abs(paths.path_start(new.edges[number - 1].path) - paths.path_start(hem.path)) < 1e-9
    assert max(abs(a.path[-1].end - b.path[0].start) for a, b in zip(new.edges, (*new.edges[1:], new.edges[0]))) < 1e-9
    assert abs(new.edges[number - 1].path[-1].tangent(1.0) - hem.path[-1].tangent(1.0)) < 1e-6


def test_what_cannot_be_trued_is_refused():
    """An edge elsewhere, and too large a move, are each refused in one sentence."""
    pattern = figure("Maren")
    piece = next(one for one in pattern.pieces if one.name == "side front")
    edges = {edge.name: edge for edge in piece.edges}
    for edge, by, at, said in (
        ("side seam", 0.3, "underbust", "does not lie"),
        ("side seam", 2.5, "hem", "allowed is at most"),
    ):
        with pytest.raises(CorsetkitError, match=said) as refusal:
            trued(pattern, edges[edge], by, edges[at])
        assert "\n" not in str(refusal.value)


@pytest.mark.parametrize(
    "waist", [(0.0, 6.0), (6.0, 0.0), (6.0, 6.0)], ids=["on the first side", "on the second", "on neither"]
)
def test_the_waist_is_where_either_side_has_its_mark(waist):
    """Pieces may lie at different heights: the mark at the waist on one side is the seam's, and on neither is none."""
    sides = []
    for number, level in enumerate(waist, 1):
        up = number == 1
        ends = (complex(0, level - 8), complex(0, level + 8))
        edge = Edge("side", (Line(*(ends if up else ends[::-1])),), Kind.PANEL_SEAM)
        sides.append([edge])
    seam = sew("side", 1, *sides, marks=(4.0, 8.0))
    assert seam.lengths == (16.0, 16.0) and waist_of(seam) == (None if min(waist) else 2)
