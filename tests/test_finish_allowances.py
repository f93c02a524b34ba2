"""Cutting lines: as far from the sewing line as chosen, corners that fold back under, partners' corners alike.

Sewing lines are measured anew from their control points (anew.py); distances and areas are shapely's.
"""

import math

import anew
import numpy as np
import pytest
import shapely
from bodies import random_bodies
from figures import CASES, WEARERS, figure, ready_to_cut, words
from shapely import LineString, Point, Polygon
from toy_pattern import toy_pattern

from corsetkit import Style, draft
from corsetkit.errors import CorsetkitError
from corsetkit.finish.allowances import Reaches, cutting_line
from corsetkit.finish.choices import FOLDED, Finish
from corsetkit.finish.cutting_line import crossing, without_loops
from corsetkit.finish.finished import FinishedPiece, finish, unfolded
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Piece
from corsetkit.pattern.seam import sew

EXACT = 0.002  # cm: 0.001 promised, and as much again for the lines measured by
ALIKE = Finish(panel_allowance=1.0, cup_allowance=1.0, shoulder_allowance=1.0, lacing_allowance=1.0)
BOUND = Finish(neckline_allowance=0, armscye_allowance=0, top_allowance=0, hem_allowance=0)
WIDE = Finish(panel_allowance=2.5, cup_allowance=1.2, shoulder_allowance=2.5, hem_allowance=3.0, facing=FOLDED)


SOME = CASES[::3]
"""Every third case, for choices beside the usual ones."""


def cases(choices):
    return CASES if choices == Finish() else SOME


def ring_of(points):
    return shapely.LinearRing([(p.real, p.imag) for p in points])


def corners_of(piece):
    """(the edge that arrives, the one that leaves, the piece's angle between them in degrees)."""
    return [(a, b, anew.corner(a.path, b.path)) for a, b in zip(piece.edges, (*piece.edges[1:], piece.edges[0]))]


def margins(piece, widths):
    """How far from its start and its end an edge's allowance may be shaped by the corners, cm."""
    widest, found = max(widths), {}
    for a, b, angle in corners_of(piece):
        slant = min(abs(1 / math.tan(math.radians(max(angle, 1.0)))) if abs(angle - 180) > 3 else 0.0, 8.0)
        found[id(a), 1] = found[id(b), 0] = widest * (1.5 + slant)
    return found


def rule_sides(piece):
    """For each corner in which a seam or the V ends: (edge sewn first, whether its end lies there, the other, angle)."""

    def sewn(edge):
        if edge.kind is Kind.CENTRE_FRONT:
            return 0
        return edge.seam.number if edge.seam else 1000

    for a, b, angle in corners_of(piece):
        if Kind.FOLD in (a.kind, b.kind) or abs(angle - 180) < 5 or sewn(a) == sewn(b):
            continue
        yield (a, True, b, angle) if sewn(a) < sewn(b) else (b, False, a, angle)


def frame(edge, at_end):
    """The edge's corner, the unit step beyond it along the sewing line, and the one outwards, from its control points."""
    curve = edge.path[-1 if at_end else 0]
    inner = (curve.second, curve.first) if isinstance(curve, Cubic) else (curve.start, curve.end)
    corner = curve.end if at_end else curve.start
    tangent = corner - inner[0 if at_end else 1]
    tangent /= abs(tangent)
    return corner, tangent, tangent * (-1j if at_end else 1j)


@pytest.mark.parametrize("choices", [Finish(), BOUND, WIDE], ids=["as chosen", "bound", "wide"])
def test_the_cutting_line_lies_its_width_from_the_sewing_line(choices):
    """Away from corners each edge's parallel line is on the cutting line within 0.02 mm, unless it is nearer to the piece
    elsewhere than its own width, in a hollow; and nowhere is the cutting line nearer to the edge than that width."""
    measured = 0
    for case in cases(choices):
        for one in ready_to_cut(figure(*case), choices).pieces:
            cutting, room = ring_of(one.cutting), margins(one.piece, one.allowances)
            lines = [anew.line(edge.path) for edge in one.piece.edges]
            for edge, line, width in zip(one.piece.edges, lines, one.allowances):
                if not width or edge.kind is Kind.CENTRE_FRONT:
                    continue
                low, high = room[id(edge), 0], line.length - room[id(edge), 1]
                for along in np.linspace(low, high, 25) if high > low else ():
                    here, on = line.interpolate(along), line.interpolate(along + 1e-4)
                    assert here.distance(cutting) > width - EXACT, (words(case), one.piece.name, edge.name)
                    step = complex(on.x - here.x, on.y - here.y)
                    beside = complex(here.x, here.y) - 1j * step / abs(step) * width
                    off = [anew.at(beside).distance(other) - own for other, own in zip(lines, one.allowances)]
                    if min(off) < -EXACT:
                        continue
                    measured += 1
                    assert anew.at(beside).distance(cutting) < EXACT, (words(case), one.piece.name, edge.name, along)
    assert measured > 200 * len(cases(choices))


def test_one_width_all_round_gives_shapelys_buffer():
    """With one width everywhere the area cut is shapely's buffer of the piece, but for the corners."""
    for case in SOME:
        for one in ready_to_cut(figure(*case), ALIKE).pieces:
            outline, whole = Polygon([(p.real, p.imag) for p in one.cutting]), one.piece.outline
            corners = [anew.at(edge.path[0].start) for edge in one.piece.edges]
            beyond = whole.buffer(1.0, quad_segs=64)
            fold = next((edge for edge in one.piece.edges if edge.kind is Kind.FOLD), None)
            if fold:
                beyond = beyond.intersection(left_of(fold))
            off = outline.symmetric_difference(beyond).difference(shapely.union_all([p.buffer(2.05) for p in corners]))
            assert off.area < 0.02, (words(case), one.piece.name, off.area)
            assert (
                outline.area
                > whole.area
                + 0.9
                * (
                    whole.exterior.length
                    - sum(edge.length for edge in one.piece.edges if edge.kind in (Kind.FOLD, Kind.CENTRE_FRONT))
                )
                * 0.9
            )


def left_of(fold):
    start, end = fold.path[0].start, fold.path[-1].end
    tangent = (end - start) / abs(end - start) * 300
    corners = (start - tangent, start + tangent, start + tangent + 1j * tangent, start - tangent + 1j * tangent)
    return Polygon([(p.real, p.imag) for p in corners])


def piece_of(points, kinds, number=1):
    edges = tuple(
        Edge(f"edge {i + 1}", (Line(a, b),), kind)
        for i, (a, b, kind) in enumerate(zip(points, (*points[1:], points[0]), kinds))
    )
    return Piece(number, "trial piece", edges, (points[0], points[1]), 1, "shell", False, False)


def test_free_corners_are_mitred_by_hand_example():
    """A square of 10 cm with 1 cm all round is cut 12 by 12; with 1 cm and 1.5 cm in turn 13 by 12."""
    square = (0j, 10 + 0j, 10 + 10j, 10j)
    alike = cutting_line(piece_of(square, [Kind.HEM] * 4), Finish())
    assert Polygon([(p.real, p.imag) for p in alike]).area == pytest.approx(144, abs=1e-9)
    assert all(min(abs(p - one) for p in alike) < 1e-9 for one in (-1 - 1j, -1 + 11j, 11 - 1j, 11 + 11j))
    turns = piece_of(square, [Kind.HEM, Kind.TOP, Kind.HEM, Kind.TOP])
    mixed = cutting_line(turns, Finish(hem_allowance=1, top_allowance=1.5))
    assert ring_of(mixed).bounds == pytest.approx((-1.5, -1, 11.5, 11))


def test_a_sharp_free_corner_is_squared_off():
    """A point of 20 degrees with 1 cm all round would reach 5.8 cm: it is squared off 2 cm from the corner."""
    tip = 30 * math.tan(math.radians(10))
    line = cutting_line(piece_of((0j, 30 - 1j * tip, 30 + 1j * tip), [Kind.HEM] * 3), Finish())
    assert min(p.real for p in line) == pytest.approx(-2, abs=1e-9)
    assert sum(1 for p in line if abs(p.real + 2) < 1e-9) == 2


@pytest.mark.parametrize("choices", [Finish(), BOUND, WIDE], ids=["as chosen", "bound", "wide"])
def test_a_seams_end_lies_under_the_edge_once_it_is_pressed(choices):
    """Mirrored about the sewing line, the end of an allowance lies within what is cut of its own piece.

    Corners beside an edge that is hardly longer than its allowances are left aside: there the end lies across two edges.
    """
    seen = 0
    for case in SOME:
        for one in ready_to_cut(figure(*case), choices).pieces:
            cut, widths = one.outline, {id(e): w for e, w in zip(one.piece.edges, one.allowances)}
            for first, at_end, other, angle in rule_sides(one.piece):
                width = widths[id(first)]
                if (
                    angle >= 90
                    or Kind.CENTRE_FRONT in (first.kind, other.kind)
                    or min(anew.line(edge.path).length for edge in (first, other)) < 2.5 * max(widths.values())
                ):
                    continue
                corner, tangent, out = frame(first, at_end)
                end = [
                    p
                    for p in one.cutting
                    if -0.02 <= ((p - corner) / out).real <= width + 0.02
                    and abs(((p - corner) / tangent).real) < 2.5 * max(widths.values())
                ]
                assert end
                for point in end:
                    step = (point - corner) / tangent
                    mirrored = corner + tangent * step.conjugate()
                    # The later edge may curve away from the straight end by a little.
                    assert anew.at(mirrored).distance(cut) < 0.2, (words(case), one.piece.name, first.name, other.name)
                    seen += 1
    assert seen > 300


def far_end(one, edge, at_end, width):
    """How far beyond the corner an edge's allowance keeps its full width, cm along its sewing line carried straight on."""
    corner, tangent, out = frame(edge, at_end)
    line = np.array(anew.points(edge.path))
    line = line if at_end else line[::-1]
    length = anew.line(edge.path).length
    beyond = corner + 20 * tangent
    carried = LineString([*line, (beyond.real, beyond.imag)])
    found = [
        carried.project(anew.at(p)) - length
        for p in one.cutting
        if ((p - corner) / out).real > 0.5 * width
        and abs(p - corner) < 8
        and abs(anew.at(p).distance(carried) - width) < EXACT
    ]
    return max(found)


@pytest.mark.parametrize("choices", [Finish(), BOUND, WIDE], ids=["as chosen", "bound", "wide"])
def test_partners_corners_coincide(choices):
    """Laid right sides together along the seam, both allowances keep their width equally far at both of its ends."""
    seen = 0
    for case in cases(choices):
        done = ready_to_cut(figure(*case), choices)
        holder = {id(edge): one for one in done.pieces for edge in one.piece.edges}
        for seam in figure(*case).seams:
            for number in (0, -1):
                both = []
                for side, against in zip(seam.sides, seam.against):
                    edge, at_end = side[number], (number == -1) != against
                    one = holder[id(edge)]
                    if any(first is edge and end == at_end for first, end, _, _ in rule_sides(one.piece)):
                        widths = {id(e): w for e, w in zip(one.piece.edges, one.allowances)}
                        both.append((one, edge, at_end, widths[id(edge)]))
                if len(both) == 2:
                    assert both[0][3] == both[1][3]
                    ends = [far_end(*one) for one in both]
                    seen += 1
                    assert abs(ends[0] - ends[1]) < 0.02, (words(case), seam.name, number, ends)
    assert seen > 8 * len(cases(choices))


@pytest.mark.parametrize("angles, reach", [((70, 80), 0.518), ((100, 120), 0.289), ((80, 100), 0.751)])
def test_of_two_unlike_corners_the_lesser_end_serves_both(angles, reach):
    """Two pieces whose hems meet the seam at angles that do not make 180 degrees are cut alike, to the lesser of both ends.

    By hand, with 1.5 cm at the seam and 1 cm at the hem: (1 - 1.5 |cos a|) / sin a is 0.518 at 70 degrees, 0.751 at 80 and
    at 100, 0.289 at 120.
    """
    seams, pieces = [], []
    for number, angle in enumerate(angles):
        foot = 12 * np.exp(1j * math.radians(90 + angle))
        points = [complex(p) for p in (foot, 0, 20j, complex(foot.real, 20))]
        kinds = [Kind.HEM, Kind.PANEL_SEAM, Kind.TOP, Kind.TOP]
        if number:
            points = [-p.conjugate() for p in (points[1], points[0], points[3], points[2])]
            kinds = [Kind.HEM, Kind.TOP, Kind.TOP, Kind.PANEL_SEAM]
        pieces.append(piece_of(points, kinds, number + 1))
        seams.append(next(edge for edge in pieces[-1].edges if edge.kind is Kind.PANEL_SEAM))
    sew("trial seam", 1, seams[:1], seams[1:])
    reaches = Reaches(pieces, Finish())
    for piece, edge, at_end in zip(pieces, seams, (False, True)):
        one = FinishedPiece(piece, (), cutting_line(piece, Finish(), reaches), (), ())
        assert far_end(one, edge, at_end, 1.5) == pytest.approx(reach, abs=1e-3)


def test_what_is_sewn_later_runs_across_what_is_sewn_before():
    """Where one seam's edge goes on across another seam, that one has the lower number, by which corners are cut."""
    seen = 0
    for case in CASES:
        for seam, (first, second), _ in anew.seam_corners(figure(*case)):
            if first.seam and anew.one_line(first, second):
                assert seam.number < first.seam.number, (words(case), seam.name, first.name)
                seen += 1
    assert seen > 100


def test_no_spikes_and_nothing_crosses():
    """Every cutting line is simple and counter-clockwise, holds its piece, and reaches no farther than 2.1 of its widest
    allowances from it, and no point of it is thinner than 2 mm half a centimetre from its tip."""
    for choices in (Finish(), BOUND, WIDE):
        for case in cases(choices):
            for one in ready_to_cut(figure(*case), choices).pieces:
                where = (words(case), one.piece.name)
                ring = ring_of(one.cutting)
                assert ring.is_simple and ring.is_ccw, where
                assert one.outline.buffer(1e-5).covers(one.piece.outline), where
                away = shapely.distance(shapely.points([(p.real, p.imag) for p in one.cutting]), one.piece.outline)
                assert away.max() <= 2.1 * max(one.allowances) + EXACT, where
                thinned = one.outline.buffer(-0.1).buffer(0.1 * 4.7, join_style="mitre", mitre_limit=5)
                assert thinned.covers(one.outline), where


def test_bound_edges_and_folds_are_cut_on_their_own_line():
    """Where the allowance is zero the cutting line is the sewing line."""
    for case in SOME:
        for one in ready_to_cut(figure(*case), BOUND).pieces:
            ring = ring_of(one.cutting)
            for edge, width in zip(one.piece.edges, one.allowances):
                if not width:
                    off = shapely.distance(shapely.points(anew.points(edge.path, 12)), ring)
                    assert off.max() < EXACT, (words(case), one.piece.name, edge.name)
    assert {
        edge.kind
        for one in finish(figure("Maren"), Finish()).pieces
        for edge, width in zip(one.piece.edges, one.allowances)
        if not width
    } == {Kind.FOLD}


def test_a_piece_on_the_fold_opens_to_twice_its_half():
    """A half reaches nowhere beyond its fold; opened out it is one simple outline of twice the area."""
    for case in CASES:
        for one in ready_to_cut(figure(*case)).pieces:
            whole = Polygon([(p.real, p.imag) for p in unfolded(one).cutting])
            assert whole.is_valid and whole.exterior.is_ccw, (words(case), one.piece.name)
            assert whole.area == pytest.approx(one.outline.area * (2 if one.piece.on_fold else 1), abs=1e-3)
            for fold in (edge for edge in one.piece.edges if edge.kind is Kind.FOLD):
                assert one.outline.difference(left_of(fold).buffer(1e-5)).area < 1e-6
            all_paths = [curve for _, path in unfolded(one).edges for curve in path]
            gaps = sorted(abs(b.start - a.end) for a, b in zip(all_paths, all_paths[1:] + all_paths[:1]))
            assert gaps[-1] < 1e-6, (words(case), one.piece.name)


def test_an_allowance_that_crosses_itself_is_refused_in_one_sentence():
    """A deep keyhole narrower than two allowances is refused with choice, piece, edge, given and allowed."""
    left = [Line(0j, 12 + 0j), Line(12 + 0j, 12 + 12j), Line(12 + 12j, 6.4 + 12j)]
    corners = (6.4 + 12j, 6.4 + 4j, 9 + 4j, 9 + 1j, 3 + 1j, 3 + 4j, 5.6 + 4j, 5.6 + 12j)
    hole = tuple(Line(a, b) for a, b in zip(corners, corners[1:]))
    edges = (
        Edge("hem", (left[0],), Kind.HEM),
        Edge("side", (left[1],), Kind.TOP),
        Edge("top", (left[2],), Kind.TOP),
        Edge("keyhole", hole, Kind.OPENING),
        Edge("other top", (Line(5.6 + 12j, 12j),), Kind.TOP),
        Edge("other side", (Line(12j, 0j),), Kind.TOP),
    )
    piece = Piece(1, "trial piece", edges, (1 + 1j, 1 + 9j), 1, "shell", False, False)
    with pytest.raises(CorsetkitError) as refusal:
        cutting_line(piece, Finish())
    said = str(refusal.value)
    assert "\n" not in said
    for word in ("neckline allowance is 1 cm", "keyhole of the trial piece", "allowed there is at most 0.3 cm"):
        assert word in said
    assert ring_of(cutting_line(piece, Finish(neckline_allowance=0.3))).is_simple


def test_a_piece_beyond_its_fold_is_refused():
    """A centre front that reaches beyond its fold cannot be cut on it; the draft itself makes no such piece."""
    edges = (
        Edge("hem", (Line(0j, 6 + 0j),), Kind.HEM),
        Edge("side", (Line(6 + 0j, 6 + 10j),), Kind.TOP),
        Edge("top", (Line(6 + 10j, -0.5 + 10j),), Kind.TOP),
        Edge("V", (Line(-0.5 + 10j, 8j),), Kind.CENTRE_FRONT),
        Edge("fold", (Line(8j, 0j),), Kind.FOLD),
    )
    with pytest.raises(CorsetkitError, match="0.5 cm .* beyond its fold"):
        cutting_line(Piece(1, "trial front", edges, (1 + 1j, 1 + 7j), 1, "shell", True, False), Finish())
    finish(draft(WEARERS["Maren"], Style(centre_front_depth=7.62)))


def test_made_up_pieces_and_random_bodies_are_finished():
    """The made-up pattern and plausible random bodies' patterns have simple cutting lines, or are refused in one line."""
    refused = []
    for pattern in (toy_pattern(), *(draft(body, Style()) for body in random_bodies(30, 1989))):
        try:
            for one in finish(pattern).pieces:
                assert ring_of(one.cutting).is_simple and one.outline.buffer(1e-5).covers(one.piece.outline)
        except CorsetkitError as refusal:
            refused.append(str(refusal))
    assert all("\n" not in one and "beyond its fold" in one for one in refused)
    assert len(refused) <= 2, refused


def test_a_hollow_tighter_than_its_allowance_keeps_its_distance():
    """In a hollow of 0.6 cm radius an allowance of 1 cm ends where its arms cross, nowhere nearer than 1 cm."""
    round_ = 0.6 * 0.5523
    hollow = (
        Cubic(6.6 + 8j, 6.6 + (8 - round_) * 1j, 6 + round_ + 7.4j, 6 + 7.4j),
        Cubic(6 + 7.4j, 6 - round_ + 7.4j, 5.4 + (8 - round_) * 1j, 5.4 + 8j),
    )
    edges = (
        Edge("hem", (Line(0j, 12 + 0j),), Kind.HEM),
        Edge("side", (Line(12 + 0j, 12 + 10j),), Kind.TOP),
        Edge("neckline", (Line(12 + 10j, 6.6 + 8j), *hollow, Line(5.4 + 8j, 10j)), Kind.NECKLINE),
        Edge("other side", (Line(10j, 0j),), Kind.TOP),
    )
    piece = Piece(1, "trial piece", edges, (1 + 1j, 1 + 9j), 1, "shell", False, False)
    ring = ring_of(cutting_line(piece, Finish()))
    assert ring.distance(anew.line(edges[2].path)) == pytest.approx(1.0, abs=EXACT)
    assert ring.distance(Point(6, 7.4)) > 1.2


def test_what_cannot_be_unlooped_is_left_as_it_is():
    """A line turned inside out, or folded back onto itself, is named by its first two sides, and nothing of it is left out."""
    for line in ((0j, 10j, 10 + 10j, 10 + 0j), (0j, 10 + 0j, 5 + 0j)):
        assert crossing(line) == (0, 1)
        assert without_loops(line, range(len(line))) == (line, tuple(range(len(line))))


def test_a_small_loop_is_left_out_where_its_sides_cross():
    """A square of 10 cm with a loop of 1 cm on its foot keeps the point where the loop begins, and all beyond it, however
    many loops there are."""
    loops = [p for k in range(50) for p in (0.2 * k + 0.1 + 0.05j, 0.2 * k + 0.05 + 0.05j, 0.2 * k + 0.12 - 0.01j)]
    line = (-1 + 0j, *loops, 11 + 0j, 11 + 10j, -1 + 10j)
    assert crossing(line)
    left, owners = without_loops(line, range(len(line)))
    assert crossing(left) is None and len(left) == len(owners) < len(line)
    assert {line[0], *line[-3:]} <= set(left) and max(abs(p.imag) for p in left[:-2]) <= 0.05
