"""Notches as they are cut: on the cutting line, square to their mark, never too deep, and alike on both sides of a seam."""

import anew
import pytest
import shapely
from figures import CASES, figure, ready_to_cut, words

from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import finish
from corsetkit.pattern.edge import Kind
from corsetkit.pattern.seam import CROWDED

BOUND = Finish(neckline_allowance=0, armscye_allowance=0, top_allowance=0, hem_allowance=0)


def sewn_places(case):
    """For each seam number, the notches of each side as (cm from the seam's start, notch), and the pieces' own corners."""
    done = ready_to_cut(figure(*case))
    for seam in figure(*case).seams:
        sides, corners = [], []
        for side, against in zip(seam.sides, seam.against):
            total, found, ends = 0.0, [], []
            for edge in side:
                length = anew.line(edge.path).length
                for one in done.pieces:
                    for notch in one.notches:
                        if notch.edge is edge:
                            along = anew.line(edge.path).project(anew.at(notch_mark(notch)))
                            found.append((total + (length - along if against else along), notch))
                total += length
                ends.append((total, edge))
            sides.append(sorted(found, key=lambda one: one[0]))
            corners.append((ends, total))
        yield seam, sides, corners


def notch_mark(notch):
    """Where the line from the notch inwards meets its sewing line."""
    far = notch.point + 4 * notch.inward
    start = notch.point - 1e-6 * notch.inward
    line = shapely.LineString([(start.real, start.imag), (far.real, far.imag)])
    met = shapely.intersection(line, anew.line(notch.edge.path).buffer(1e-4))
    at = shapely.get_coordinates(met)
    return complex(*at[((at - [start.real, start.imag]) ** 2).sum(axis=1).argmin()])


def test_a_notch_is_square_to_its_mark_and_at_most_half_as_deep_as_the_allowance():
    """From each notch on the cutting line straight inwards lies the pattern's own mark, square to the sewing line."""
    seen = 0
    for case in CASES:
        for one in ready_to_cut(figure(*case)).pieces:
            ring = shapely.LinearRing([(p.real, p.imag) for p in one.cutting])
            widths = {id(edge): width for edge, width in zip(one.piece.edges, one.allowances)}
            for notch in one.notches:
                where = (words(case), one.piece.name, notch.edge.name)
                assert anew.at(notch.point).distance(ring) < 1e-6, where
                mark = next(mark for mark in one.piece.notches if mark.edge is notch.edge and mark.along == notch.along)
                step = notch.point - mark.point
                assert abs((step * mark.tangent.conjugate()).real) < 1e-6 and abs(step) <= widths[id(notch.edge)] + 0.002, (
                    where
                )
                assert abs(abs(notch.inward) - 1) < 1e-9 and abs(step / abs(step) + notch.inward) < 1e-6, where
                assert 0 < notch.depth <= min(0.5, abs(step) / 2) + 1e-9, where
                seen += 1
    assert seen > 900


def test_no_notch_at_a_pieces_corner():
    """A mark at a piece's own corner is left out; every other mark of the pattern is cut."""
    left_out = 0
    for case in CASES:
        for one in ready_to_cut(figure(*case)).pieces:
            corners = [
                a.path[-1].end
                for a, b in zip(one.piece.edges, (*one.piece.edges[1:], one.piece.edges[0]))
                if not (a.seam is not None and a.seam is b.seam)
            ]
            for mark in one.piece.notches:
                along = min(mark.along, mark.edge.length - mark.along)
                near = along <= CROWDED and any(abs(mark.point - corner) <= CROWDED for corner in corners)
                kept = any(notch.edge is mark.edge and notch.along == mark.along for notch in one.notches)
                assert kept != near, (words(case), one.piece.name, mark.edge.name, mark.along)
                left_out += near
    assert left_out > 100


def test_both_sides_of_a_seam_bear_the_same():
    """Sewn, each notch meets a notch of the same count or a corner where pieces change; where pieces change on both
    sides at one place neither bears one."""
    alone = together = 0
    for case in CASES:
        holder = anew.holders(figure(*case))
        for seam, sides, corners in sewn_places(case):
            assert len({notch.count for side in sides for _, notch in side}) <= 1, (words(case), seam.name)
            for mine, other, ends in ((0, 1, corners[1]), (1, 0, corners[0])):
                for place, _ in sides[mine]:
                    partner = min((abs(place - there) for there, _ in sides[other]), default=9.0)
                    change = min(abs(place - end) for end, _ in ends[0])
                    assert min(partner, change) < 0.02, (words(case), seam.name, place)
            changes = [
                [end for (end, edge), (_, after) in zip(ends, ends[1:]) if holder[id(edge)] is not holder[id(after)]]
                for ends, _ in corners
            ]
            for mine, other in ((0, 1), (1, 0)):
                for end in changes[mine]:
                    if any(abs(end - there) <= CROWDED for there in changes[other]):
                        together += 1
                        places = [place for side in sides for place, _ in side]
                        assert all(abs(place - end) > CROWDED for place in places), (words(case), seam.name)
                    else:
                        alone += 1
                        assert any(abs(place - end) < 0.02 for place, _ in sides[other]), (words(case), seam.name)
                        assert all(abs(place - end) > 0.02 for place, _ in sides[mine]), (words(case), seam.name)
    assert alone > 60 and together > 40


def test_two_notches_for_the_back_and_one_for_the_front():
    """Back dart seam and back yoke have two; front, cup, side and shoulder seams have one."""
    double, single = set(), set()
    for case in CASES:
        for one in ready_to_cut(figure(*case)).pieces:
            for notch in one.notches:
                (double if notch.count == 2 else single).add(notch.seam.name)
    assert double == {"back dart seam", "back yoke"}
    assert single >= {"side seam", "front dart seam", "cup seam", "underbust", "overbust"} and not double & single


@pytest.mark.parametrize("depth", [0.2, 0.8])
def test_the_chosen_depth_is_kept_where_there_is_room(depth):
    """A notch is as deep as chosen, or half the allowance where that is less."""
    for one in finish(figure("Maren"), Finish(notch_depth=depth)).pieces:
        widths = {id(edge): width for edge, width in zip(one.piece.edges, one.allowances)}
        for notch in one.notches:
            assert notch.depth == pytest.approx(min(depth, widths[id(notch.edge)] / 2), abs=1e-3)
            assert notch.edge.kind in (Kind.PANEL_SEAM, Kind.CUP_SEAM)
