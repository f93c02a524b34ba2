"""A walked seam trued in one call: both sides agree, nothing else is disturbed; all measured anew with shapely.

The lines redrawn for it are held against plain trigonometry.
"""

import math
from dataclasses import replace

import anew
import pytest
from figures import figure, words
from promises import faults

from corsetkit.errors import CorsetkitError
from corsetkit.finish.true_seam import true_seam
from corsetkit.finish.truing import bent, carried, corner_moved, redrawn_from, resewn, trued
from corsetkit.finish.walk import walk
from corsetkit.geometry.curve import Line, even_arc
from corsetkit.pattern.edge import Kind
from corsetkit.pattern.seam import sew

STYLES = ("three parts", "two parts", "three parts, no yoke", "two parts, no yoke", "two parts, openings")
CASES = [(wearer, style) for style in STYLES for wearer in ("Maren", "Ottilie", "Theda")]


def seam_named(pattern, name):
    return next(seam for seam in pattern.seams if seam.name == name)


def lengths(seam):
    return [sum(anew.line(edge.path).length for edge in side) for side in seam.sides]


def longer_on_paper(pattern, seam, number, side, by):
    """The seam walked with one stretch of one side measured longer than it was drafted."""
    measured = [list(one.lengths) for one in walk(seam).stretches]
    measured[number][side] += by
    return walk(seam, [tuple(one) for one in measured])


@pytest.mark.parametrize("case", CASES, ids=words)
def test_every_seam_is_trued_wherever_it_came_out_longer(case):
    """Each stretch of each seam, on either side: both become as long as the longer; other edges keep their length."""
    pattern = figure(*case)
    drafted = {id(edge): anew.line(edge.path).length for piece in pattern.pieces for edge in piece.edges}
    for seam in pattern.seams:
        before = lengths(seam)
        for number in range(len(seam.marks) + 1):
            for side, by in ((0, 0.3), (1, 0.8)):
                paper = longer_on_paper(pattern, seam, number, side, by)
                moves = paper.moves()
                assert moves and not any(one.startswith("Draw") for one in moves), (words(case), seam.name)
                new = true_seam(pattern, paper)
                now = new.seams[pattern.seams.index(seam)]
                for length, was in zip(lengths(now), before):
                    assert length == pytest.approx(was + by, abs=0.01), (words(case), seam.name, number, side)
                assert now.lengths[0] == pytest.approx(now.lengths[1], abs=1e-6)
                for was, one in zip(pattern.pieces, new.pieces):
                    assert one.outline.is_valid and one.outline.exterior.is_ccw
                    for old, edge in zip(was.edges, one.edges):
                        if old.seam is not None and old.seam is not seam:
                            assert anew.line(edge.path).length == pytest.approx(drafted[id(old)], abs=1e-3)
                # All that meets still meets; whoever moves an edge by hand gives up the draft's own promises.
                if side and number == len(seam.marks):
                    broken = faults(new, ("assembly", "girth", "tiling", "smooth", "rigid", "bust_point"))
                    assert not broken, (words(case), seam.name, broken)
    for piece in pattern.pieces:
        for edge in piece.edges:
            assert anew.line(edge.path).length == drafted[id(edge)], "the pattern given is as it was"


@pytest.mark.parametrize("case", CASES[:6], ids=words)
def test_a_hand_set_edge_is_trued_without_anything_measured(case):
    """One side is shortened at one end, whatever lies beyond; walked as it is, the seam says so, and is then true."""
    pattern = figure(*case)
    seen = set()
    for piece in pattern.pieces:
        for i, edge in enumerate(piece.edges):
            beyond = piece.edges[(i + 1) % len(piece.edges)]
            if edge.seam is None or beyond.kind in (Kind.FOLD, Kind.CENTRE_FRONT, Kind.LACING) or edge.seam is beyond.seam:
                continue
            try:
                short = trued(pattern, edge, -0.4, beyond)
            except CorsetkitError as refusal:
                # A cup seam is shaped as a dome: it keeps its length, and so cannot always follow so far.
                assert beyond.name == "cup seam" and "draw both sides of its seam again" in str(refusal)
                continue
            seam = short.seams[pattern.seams.index(edge.seam)]
            one, two = lengths(seam)
            assert abs(one - two) == pytest.approx(0.4, abs=1e-3)
            walked = walk(seam)
            assert len(walked.moves()) >= 1
            new = true_seam(short, walked)
            one, two = lengths(new.seams[pattern.seams.index(edge.seam)])
            assert one == pytest.approx(two, abs=0.01) == pytest.approx(max(lengths(seam)), abs=0.01)
            assert not list(faults(new, ("assembly", "girth", "tiling", "smooth", "rigid", "bust_point")))
            seen.add("sewn" if beyond.seam else "free")
    assert seen == {"sewn", "free"}


PANELS = [
    (wearer, style)
    for style in ("two and three panels", "three and two panels, two parts")
    for wearer in ("Maren", "Ottilie", "Theda")
]


@pytest.mark.parametrize("case", PANELS, ids=words)
def test_narrow_panels_are_trued_or_refused_in_one_sentence(case):
    """Where a panel ends in a very blunt or sharp corner, its corner would have to move far: a sentence says so."""
    pattern, true = figure(*case), 0
    panels = [seam for seam in pattern.seams if seam.name == "panel seam"]
    for seam in panels:
        for number in range(len(seam.marks) + 1):
            for side in (0, 1):
                paper = longer_on_paper(pattern, seam, number, side, 0.5)
                try:
                    new = true_seam(pattern, paper)
                except CorsetkitError as refusal:
                    assert "cannot be made 0.5 cm" in str(refusal) and "draw both sides of its seam again" in str(refusal)
                    assert "at the underbust" in str(refusal), "a hem is free, and always follows"
                else:
                    true += 1
                    one, two = lengths(new.seams[pattern.seams.index(seam)])
                    assert one == pytest.approx(two, abs=0.01)
                    assert not faults(new, ("assembly", "girth", "tiling", "smooth", "rigid", "bust_point"))
    assert true >= 2 * len(panels), "down from the waist at least"


def test_what_is_moved_is_said_for_corners_joints_and_notches():
    """A sewn corner is moved; where two pieces meet across from a notch, the piece is lengthened or the notch is moved."""
    pattern = figure("Maren")
    dart = longer_on_paper(pattern, seam_named(pattern, "front dart seam"), 0, 0, 0.3)
    assert dart.moves() == (
        "Lengthen the centre front's front dart seam by 3 mm at the underbust: measured from the waist notch, the side front "
        "is longer. Move the corner so that its underbust stays as long as it is, for that is sewn too.",
    )
    cut = seam_named(pattern, "cut across")
    assert longer_on_paper(pattern, cut, 0, 0, 0.3).moves() == (
        "Move notch 1 on the inner lower cup's cut by 3 mm away from the underbust: up to there the upper cup is longer.",
        "Lengthen the inner lower cup's cut by 3 mm at the cup seam: measured from the underbust, the upper cup is longer. "
        "Move the corner so that its cup seam stays as long as it is, for that is sewn too.",
    )
    below = longer_on_paper(pattern, cut, 1, 1, 0.3).moves()
    assert [one.split(":")[0] for one in below] == [
        "Move notch 2 on the upper cup's cut, inner by 3 mm away from the underbust",
        "Move notch 3 on the upper cup's cut, outer by 3 mm away from the underbust",
        "Lengthen the upper cup's cut, outer by 3 mm at the armscye",
    ]
    # The yoke line ends on the lacing edge, which has to stay straight: the walk sets out there.
    yoke = walk(seam_named(pattern, "back yoke"))
    assert [(one.start, one.end) for one in yoke.stretches] == [("the lacing edge", "notch 1"), ("notch 1", "the armscye")]


def test_a_moved_notch_is_moved_on_both_sides():
    """A stretch in the middle came out longer: the new notches stand where the longer side has them."""
    pattern = figure("Maren")
    side = seam_named(pattern, "side seam")
    # Up from the waist: the only notch above stands 3 mm farther from the waist, and the armscye too.
    new = true_seam(pattern, longer_on_paper(pattern, side, 0, 0, 0.3))
    now = seam_named(new, "side seam")
    above, waist = side.marks
    assert now.marks == pytest.approx((above, waist + 0.3), abs=1e-6)
    below = seam_named(true_seam(pattern, longer_on_paper(pattern, side, 2, 1, 0.3)), "side seam")
    assert below.marks == pytest.approx(side.marks, abs=1e-6)


def test_the_blends_are_recorded_on_both_pieces():
    pattern = figure("Maren")
    seam = seam_named(pattern, "front dart seam")
    new = true_seam(pattern, longer_on_paper(pattern, seam, 0, 0, 0.5))
    for was, one in zip(pattern.pieces, new.pieces):
        fresh = [blend.why for blend in one.blends[len(was.blends) :]]
        wanted = ["front dart seam trued", "underbust redrawn to the trued front dart seam"]
        assert sorted(fresh) == (wanted if was.name in ("side front", "centre front") else [])


def test_intended_ease_is_kept():
    """A seam whose first side is meant to be 4 mm longer, and is not, is trued to be so."""
    pattern = resewn(figure("Maren"), {})
    plain = seam_named(pattern, "shoulder")
    eased = sew(plain.name, plain.number, *plain.sides, *plain.against, ease=0.4)
    pattern = replace(pattern, seams=tuple(eased if one is plain else one for one in pattern.seams))
    assert walk(eased).moves()
    one, two = lengths(seam_named(true_seam(pattern, walk(eased)), "shoulder"))
    assert one - two == pytest.approx(0.4, abs=0.01)


def test_what_agrees_is_left_and_what_cannot_be_trued_is_refused():
    pattern = figure("Maren")
    seam = seam_named(pattern, "side seam")
    assert true_seam(pattern, walk(seam)) is pattern
    assert true_seam(pattern, longer_on_paper(pattern, seam, 0, 0, 0.15)) is pattern
    refused = (
        (pattern, longer_on_paper(pattern, seam, 2, 0, 2.5), "allowed is at most"),
        (figure("Theda"), walk(seam), "none of this pattern's"),
    )
    for given, walked, said in refused:
        with pytest.raises(CorsetkitError, match=said) as refusal:
            true_seam(given, walked)
        assert "\n" not in str(refusal.value)
    # The centre back's yoke line is straight and ends on the lacing edge: there it can be neither lengthened nor bent.
    back = next(piece for piece in pattern.pieces if piece.name == "centre back")
    edges = {edge.name: edge for edge in back.edges}
    with pytest.raises(CorsetkitError, match="the lacing edge has to stay as it is; draw both sides"):
        trued(pattern, edges["yoke line"], 0.5, edges["lacing edge"])


def test_a_curved_edge_between_fixed_corners_is_bent_rounder():
    """The front yoke's lower edge cannot move on the fold: it is bent, and its ends and their directions stay."""
    pattern = figure("Maren")
    yoke = next(piece for piece in pattern.pieces if piece.name == "front yoke")
    edges = {edge.name: edge for edge in yoke.edges}
    new = next(
        piece for piece in trued(pattern, edges["overbust"], 0.2, edges["centre front"]).pieces if piece.name == yoke.name
    )
    for was, one in zip(yoke.edges, new.edges):
        grown = 0.2 if was.name == "overbust" else 0.0
        assert anew.line(one.path).length - anew.line(was.path).length == pytest.approx(grown, abs=1e-3)
        assert (
            abs(one.path[0].start - was.path[0].start) < 1e-9 and abs(one.path[0].tangent(0) - was.path[0].tangent(0)) < 1e-6
        )
    assert new.blends[-1].why == "overbust trued" and 0.1 < new.blends[-1].largest_move < 0.8


def test_a_bent_arc_gains_what_it_should():
    """By plain calculus, for a shallow arc of rise s over a chord c: a rise of h more gains 64/15 s h / c + 2.44 h h / c."""
    arc = even_arc(0j, 10 + 0j, leaving=complex(math.cos(0.4), math.sin(0.4)))
    path = bent((arc,), 0.3)
    drawn, rise = anew.line(path), anew.line((arc,)).bounds[3]
    assert drawn.length == pytest.approx(arc.length + 0.3, abs=1e-3)
    a, b = 2.44 / 10, 64 / 15 * rise / 10
    assert drawn.bounds[3] - rise == pytest.approx((math.sqrt(b * b + 4 * a * 0.3) - b) / (2 * a), abs=0.05)
    assert abs(path[0].start) < 1e-9 and abs(path[-1].end - 10) < 1e-9
    assert abs(path[0].tangent(0.0) - arc.tangent(0.0)) < 1e-9 and abs(path[-1].tangent(1.0) - arc.tangent(1.0)) < 1e-9


def test_a_moved_corner_is_where_two_arcs_cross():
    """Two straight edges square to each other: the one 5 mm longer, the other as long as before, so drawn in."""
    upright, level = (Line(0j, -10j),), (Line(0j, 8 + 0j),)
    (one, _, _), (two, before, after) = corner_moved(upright, level, 0.5, 8.0)
    assert anew.line(one).length == pytest.approx(10.5, abs=1e-3) and anew.line(two).length == pytest.approx(8.0, abs=1e-3)
    corner = one[0].start
    assert corner == two[0].start and abs(corner.imag - 0.5) < 0.02
    # A line that rises by d over r is longer by about 3/5 d d / r, which the corner gives up.
    assert corner.real == pytest.approx(0.6 * 0.5**2 / 5, abs=0.005)
    assert before[-1].end == after[-1].end == 5 + 0j and two[-1].end == 8 + 0j
    assert abs(two[0].tangent(0.0) - 1) < 0.02, "it leaves the corner as it did"


def test_what_is_carried_along_runs_smoothly_into_what_stays():
    path = (Line(0j, 2 + 0j), even_arc(2 + 0j, 9 + 3j, leaving=1 + 0j))
    drawn, before, after = carried(path, 0.4j, 5.0)
    assert drawn[0].start == 0.4j and drawn[-1].end == 9 + 3j
    assert anew.line(before).length == pytest.approx(5.0, abs=1e-3)
    for one, two in zip(drawn, drawn[1:]):
        assert abs(one.end - two.start) < 1e-12 and abs(one.tangent(1.0) - two.tangent(0.0)) < 1e-6


def test_a_short_free_edge_is_turned_as_a_whole_instead_of_hooked():
    short, long = (Line(0j, 1 + 0j),), (Line(0j, 10 + 0j),)
    whole = redrawn_from(0.5j, short)[0]
    assert anew.line(whole).length == pytest.approx(math.hypot(1, 0.5), abs=1e-3) and whole[-1].end == 1 + 0j
    drawn, _, after = redrawn_from(0.5j, long)
    assert after[-1].end == 5 + 0j and abs(drawn[0].tangent(0.0) - 1) < 1e-9
