"""The shape of the pieces as a maker would sew them, measured anew over the demo wearers and 200 random bodies.

Seams that meet on paper may still make a poor cup: where an edge turns, how tightly, and what each seam takes at the underbust
is looked at here. The bounds are course convention unless a source stands beside them.
"""

from functools import cache

import anew
import numpy as np
import pytest
from bodies import random_bodies
from figures import WEARERS

from corsetkit import CorsetkitError, Style, draft
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic

BODIES = {**WEARERS, **{f"body {number}": body for number, body in enumerate(random_bodies(200, 12))}}
MOVED = "the underbust mark would lie"
SHORT = "the back is short"


@cache
def patterns(cup_parts):
    """Every body's pattern in the default style with so many parts to a cup, by name."""
    return {name: draft(body, Style(cup_parts=cup_parts)) for name, body in BODIES.items()}


def bends(path, count=80):
    """The bend at places all along a path, for each cm, left above zero: from its points alone, by circles through three."""
    found = []
    for curve in path:
        if not isinstance(curve, Cubic):
            continue
        z = np.array([curve.point(k / count) for k in range(count + 1)])
        a, b, c = z[:-2], z[1:-1], z[2:]
        cross = ((b - a).conj() * (c - b)).imag
        found.append(2 * cross / (abs(b - a) * abs(c - b) * abs(c - a)))
    return np.concatenate(found) if found else np.zeros(1)


def radius(path):
    return 1 / max(abs(bends(path)).max(), 1e-9)


def steps_along(path, count=400):
    """Places along a path and its turns between them, degrees."""
    z = anew.points(path, count) @ [1, 1j]
    steps = np.diff(z)
    along = np.cumsum(abs(steps))[:-1]
    return along, np.degrees(np.angle(steps[1:] / steps[:-1]))


def changes_of_bend(path):
    bent = bends(path)
    sides = np.sign(bent[abs(bent) > 2e-3])
    return int((sides[1:] != sides[:-1]).sum())


@pytest.mark.parametrize("cup_parts", [2, 3])
class TestTheCup:
    def test_a_dome_and_no_point_with_a_dent(self, cup_parts):
        """Both edges of the cup seam are convex from end to end; no more than 60 % of all their turning lies within 2 cm of
        the bust point."""
        for name, pattern in patterns(cup_parts).items():
            seam, near, whole = pattern.steps.cup.seam, 0.0, 0.0
            for path in (seam.inner, seam.outer):
                along, turns = steps_along(path)
                turns = turns * np.sign(turns.sum())
                assert turns.min() > -0.02, name
                near += turns[abs(along - seam.to_bust_point) <= 2.0].sum()
                whole += turns.sum()
            assert near <= 0.605 * whole, (name, near / whole)
            assert seam.near == pytest.approx(near / whole, abs=0.015)

    def test_no_tighter_than_an_inch(self, cup_parts):
        """The seam bends with a radius of 2.5 cm or more, or it is told: at most one body of a hundred."""
        told = 0
        for name, pattern in patterns(cup_parts).items():
            seam = pattern.steps.cup.seam
            least = min(radius(seam.inner), radius(seam.outer))
            if any("turn so unlike" in said for said in pattern.warnings):
                told += 1
                assert least > 1.5, name
            else:
                assert least > 2.38, (name, least)
        assert told <= 0.01 * len(BODIES)

    def test_through_the_bust_point(self, cup_parts):
        """Each edge passes the bust point within 0.1 mm, where its notch is."""
        for name, pattern in patterns(cup_parts).items():
            seam, point = pattern.steps.cup.seam, anew.at(pattern.steps.block.bust_point)
            for path in (seam.inner, seam.outer):
                assert anew.line(path).distance(point) < 0.01, name
                assert anew.line(path).interpolate(seam.to_bust_point).distance(point) < 0.01, name

    def test_the_lines_at_its_ends_are_square_and_as_long(self, cup_parts):
        """Within 3 cm of the seam the lines at its ends are trued, underbust line and cut square to it; no place of them moves
        by more than 1.4 mm."""
        for name, pattern in patterns(cup_parts).items():
            seam = pattern.steps.cup.seam
            for edge, top, low in ((seam.inner, seam.inner_top, seam.inner_low), (seam.outer, seam.outer_top, seam.outer_low)):
                for line, tangent in ((top, edge[0].tangent(0.0)), (low, edge[-1].tangent(1.0))):
                    cosine = (line.line[0].tangent(0.0) * np.conj(tangent)).real
                    assert abs(cosine) < 1e-6 or (cup_parts == 2 and line is top), name
                    assert anew.line(line.line).length == pytest.approx(anew.line(line.before).length, abs=2e-3), name
                    assert line.blend.largest_move < 0.14, name


def test_along_the_cut_the_cups_hollow_by_no_more_than_the_seam_opens():
    """The cut's edges on the upper cup and on the lower cups differ in shape beside the seam: together they hollow by what the
    cup seam's ends open there, and by no more: what the seam turns more than the darts take is given back at its ends."""
    for name, pattern in patterns(3).items():
        upper, inner, outer = pattern.pieces[:3]
        cuts = [edge for piece in (upper, inner, outer) for edge in piece.edges if edge.name.startswith("cut")]
        assert len(cuts) == 4
        # Each edge runs with its piece to its left, so that turning left is turning outwards.
        together = sum(steps_along(edge.path)[1].sum() for edge in cuts)
        seam = pattern.steps.cup.seam
        opened = [
            abs(np.degrees(np.angle(path[0].tangent(0.0) / (blend.before[0].end - blend.before[0].start))))
            for path, blend in ((seam.inner, seam.inner_blend), (seam.outer, seam.outer_blend))
        ]
        assert -sum(opened) - 0.3 < together < 0.3 and sum(opened) < 16, (name, together, opened)


class TestTheFront:
    def test_a_bone_can_follow_the_front_seam(self):
        """No seam that carries a bone bends tighter than 4 cm, in either of its pieces, or it is told; it is told only where
        the underbust lies within 6 cm of the waist."""
        for name, pattern in patterns(3).items():
            u = pattern.steps.underbust
            least = min(radius(u.inner_leg), radius(u.outer_leg))
            told = any("bends as tightly as" in said for said in pattern.warnings)
            assert told or least > 3.8, (name, least)
            assert not told or u.level < 6, name
        assert not any("bends as tightly" in said for name in WEARERS for said in patterns(3)[name].warnings)

    def test_the_dart_leans_4_degrees_at_most(self):
        for pattern in patterns(3).values():
            assert -1e-9 <= pattern.steps.underbust.lean <= 4 + 1e-9


class TestFullness:
    """The cup's fullness is the breast's, whatever the torso's length and the lacing."""

    CHANGED = (
        [("length", by, {}) for by in (-2.0, 2.0, 4.0)]
        + [("reduction", by, {"waist_reduction": by}) for by in (0.0, 2.54, 7.62)]
        + [("hips", by, {}) for by in (-8.0, 8.0)]
    )

    @staticmethod
    def changed(body, what, by):
        if what == "length":
            return body.replaced(
                front_waist_length=body.front_waist_length + by, back_waist_length=body.back_waist_length + by
            )
        return body.replaced(hip_girth=body.hip_girth + by) if what == "hips" else body

    @pytest.mark.parametrize("what, by, style", CHANGED)
    def test_torso_lacing_and_hips_leave_it(self, what, by, style):
        """It changes by no more than 2 degrees where the underbust mark keeps its distance from the bust point; where it
        changes more, it is told why."""
        compared = 0
        for name in [*WEARERS, *list(BODIES)[len(WEARERS) : len(WEARERS) + 40]]:
            plain = patterns(3)[name]
            try:
                other = draft(self.changed(BODIES[name], what, by), Style(**style))
            except CorsetkitError:
                continue
            said = [said for pattern in (plain, other) for said in pattern.warnings if said.startswith((MOVED, SHORT))]
            if not said:
                compared += 1
                assert other.fullness.total == pytest.approx(plain.fullness.total, abs=2.0), name
        assert compared >= 25

    def test_the_shares_at_the_underbust(self):
        """Of half of what bust has more than underbust, the front's side edge takes the share stated (or as much more as lets
        it bend once), the back its share (or more, told), and the cup the rest."""
        for name, pattern in patterns(3).items():
            m, s, style = BODIES[name], pattern.steps, pattern.style
            half, level = m.bust_minus_underbust / 2, s.underbust.level
            front = s.block.front.width - _at(s.block.front.side_waist, level)
            back = s.back.waist.dart_at(level) + abs(s.block.back.underarm.real - _at(s.back.waist.side_waist, level))
            most = style.underbust_side_share * half
            at_waist = s.block.front.width - s.block.front.waist_side.real
            # Without a side dart both edges of the side seam take alike.
            assert front >= min(most, 0.9 * at_waist) - 1e-3 or at_waist <= 0 or not s.block.side_dart, name
            if s.block.side_dart and not any(said.startswith(SHORT) for said in pattern.warnings):
                assert back <= style.underbust_back_share * half + 0.11, name
            cup = _at(s.underbust.outer_leg, level) - _at(s.underbust.inner_leg, level)
            assert front + back + cup == pytest.approx(half, abs=1e-3), name

    def test_side_seams_and_back_dart_bend_once_and_gently(self):
        """Above the waist side seam and back dart bend one way and then the other, never tighter than 2.5 cm; without a side
        dart, where both edges of the side seam are drawn alike, than 1.7 cm (one body of 208)."""
        for name, pattern in patterns(3).items():
            waist, block = pattern.steps.back.waist, pattern.steps.block
            for path in (block.front.side_waist, waist.side_waist, waist.legs[0][:-1]):
                assert changes_of_bend(path) <= 1, name
                assert radius(path) > (2.5 if block.side_dart else 1.7), (name, radius(path))


class TestTold:
    """What a maker would want to know before she cuts is told, just where it is so."""

    def test_a_shallow_cup(self):
        """A cup that takes less than six tenths of what a cap over its outline would, and only such a one."""
        told = {name for name, one in patterns(3).items() if any(said.startswith("the cups take") for said in one.warnings)}
        shallow = {name for name, one in patterns(3).items() if one.fullness.total < 0.6 * one.fullness.cap}
        assert told == shallow and "Theda" in shallow and 5 < len(shallow) < len(BODIES) / 2
        (theda,) = (said for said in patterns(3)["Theda"].warnings if said.startswith("the cups take"))
        assert "no longer than the back" in theda

    def test_a_centre_front_that_widens_more_than_the_corset(self):
        """Half the centre front's hem over its waist is more than the finished corset's, by 5 % or more, measured anew on the
        piece's outline, and only then."""
        told, wide = set(), set()
        for name, pattern in patterns(3).items():
            if any("the centre front widens" in said for said in pattern.warnings):
                told.add(name)
            outline = anew.area(next(piece for piece in pattern.pieces if piece.name == "centre front").path)
            waist = outline.intersection(anew.LineString([(-99, 0.0), (99, 0.0)])).length
            hem = max(x for x, y in outline.exterior.coords if y < 0)
            girths = anew.cut_girths(pattern)
            if hem / waist > 1.05 * girths["hem"] / girths["waist"]:
                wide.add(name)
        # At the bound itself a hair in the measuring may decide.
        assert len(told ^ wide) <= 1 and "Solveig" in told and "Maren" not in told

    def test_a_back_that_must_take_more_than_its_share(self):
        """A back that takes a millimetre more than its share at the underbust on each side, and only such a one."""
        told, more = set(), set()
        for name, pattern in patterns(3).items():
            steps, style = pattern.steps, pattern.style
            if not steps.block.side_dart:
                continue
            if any(said.startswith(SHORT) for said in pattern.warnings):
                told.add(name)
            level, waist = steps.underbust.level, steps.back.waist
            back = waist.dart_at(level) + abs(steps.block.back.underarm.real - _at(waist.side_waist, level))
            if back > style.underbust_back_share * BODIES[name].bust_minus_underbust / 2 + 0.1:
                more.add(name)
        assert told == more and 10 < len(more) < len(BODIES) / 2


def _at(path, y):
    return paths.reached_at(path, y).real
