"""Geometry held against closed forms, shapely and scipy: nothing here knows of corsets."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from corsetkit.geometry import paths, polygon
from corsetkit.geometry.blend import blended, rounded
from corsetkit.geometry.curve import FLATNESS, Cubic, Line, curve, even_arc, quarter
from corsetkit.geometry.move import STAY, Move, slid, turned_about
from corsetkit.geometry.points import cross, direction, heading, turn_between, unit
from corsetkit.geometry.roots import bernstein_roots, root, root_near

KAPPA = 4 / 3 * math.tan(math.pi / 8)
"""The handles of a cubic quarter circle, whose radius is then kept within 0.0273 % (closed form)."""
QUARTER = Cubic(1 + 0j, 1 + KAPPA * 1j, KAPPA + 1j, 1j)
TRIANGLE = (Line(0j, 3 + 0j), Line(3 + 0j, 3 + 4j), Line(3 + 4j, 0j))

coordinates = st.floats(-50, 50).map(lambda value: round(value, 6))
places = st.builds(complex, coordinates, coordinates)
shares, leanings = st.floats(0.15, 0.55), st.floats(-75, 75)
# Curves as a draft has them: they leave and arrive forwards, and nowhere nearly stop.
cubics = st.builds(
    lambda start, span, degrees, leaves, arrives, first, second: curve(
        start, direction(degrees + leaves), direction(degrees + arrives), start + span * direction(degrees), first, second
    ),
    places,
    st.floats(0.5, 40),
    st.floats(-180, 180),
    leanings,
    leanings,
    shares,
    shares,
)
moves = st.builds(
    lambda centre, degrees, step: turned_about(centre, degrees).then(slid(step)), places, st.floats(-360, 360), places
)
gently = settings(max_examples=60, deadline=None, derandomize=True, database=None)


def in_shapely(path, tolerance):
    return shapely.LineString([(p.real, p.imag) for p in paths.flattened(path, tolerance)])


def test_a_triangle_of_3_4_5_has_length_12_and_area_6():
    """The 3-4-5 triangle is 12 round and 6 large; run the other way its area is negative."""
    assert paths.path_length(TRIANGLE) == pytest.approx(12, abs=1e-12)
    assert polygon.area(TRIANGLE) == pytest.approx(6, abs=1e-12)
    assert polygon.area(paths.turned_round(TRIANGLE)) == pytest.approx(-6, abs=1e-12)
    assert max(polygon.gaps(TRIANGLE)) == 0 and polygon.is_simple(TRIANGLE)


def test_a_quarter_circle_has_the_circles_length_area_and_turning():
    """A cubic quarter circle keeps the circle's radius, length, area and 90 degrees of turning to 0.03 %."""
    assert all(abs(QUARTER.point(t / 50)) == pytest.approx(1, rel=2.73e-4) for t in range(51))
    assert QUARTER.length == pytest.approx(math.pi / 2, rel=3e-4)
    assert QUARTER.swept_area / 2 == pytest.approx(math.pi / 4, rel=3e-4)
    assert paths.turning((QUARTER,)) == pytest.approx(90, abs=1e-9)
    assert quarter(1 + 0j, 1j, 1j, -1 + 0j).point(0.5) == pytest.approx(QUARTER.point(0.5), abs=2e-3)


@gently
@given(cubics)
def test_a_curves_length_is_the_integral_of_its_speed(c):
    """A cubic's length agrees with scipy's adaptive quadrature of its speed."""
    speed = np.polynomial.polynomial.Polynomial(
        3 * np.array([c.first - c.start, 2 * (c.second - 2 * c.first + c.start), c.end - 3 * c.second + 3 * c.first - c.start])
    )
    assert c.length == pytest.approx(quad(lambda t: abs(speed(t)), 0, 1, epsabs=1e-10, limit=500)[0], rel=1e-6)


@gently
@given(cubics, st.floats(0, 1), st.floats(0, 1))
def test_a_part_lies_on_its_curve_and_parts_add_up(c, one, other):
    """A stretch of a curve passes the curve's own points, and the two sides of a cut are as long as the whole."""
    low, high = sorted((one, other))
    assert c.part(low, high).point(0.5) == pytest.approx(c.point((low + high) / 2), abs=1e-9)
    before, after = paths.cut_along((c,), one * c.length)
    assert paths.path_length(before + after) == pytest.approx(c.length, rel=1e-6)


@gently
@given(cubics, moves)
def test_a_move_changes_no_length_area_or_turning(c, move):
    """A rigid move keeps lengths, areas and turnings, and its way back leads home."""
    there = c.moved(move)
    assert there.length == pytest.approx(c.length, abs=1e-9)
    closed = (c, Line(c.end, c.start))
    assert polygon.area(paths.moved(closed, move)) == pytest.approx(polygon.area(closed), abs=1e-7)
    assert paths.turning((there,)) == pytest.approx(paths.turning((c,)), abs=1e-6)
    assert there.moved(move.inverse).point(0.3) == pytest.approx(c.point(0.3), abs=1e-9)
    assert move.then(move.inverse)(c.start) == pytest.approx(STAY(c.start), abs=1e-9)


@gently
@given(cubics, st.floats(0, 1))
def test_a_line_turned_round_is_the_same_line(c, share):
    """The reversed curve has the same length, and the same points counted from its other end."""
    back = c.turned_round
    assert back.length == pytest.approx(c.length, rel=1e-12)
    assert back.point(share) == pytest.approx(c.point(1 - share), abs=1e-9)
    assert back.turned_round == c
    assert paths.turning((back,)) == pytest.approx(-paths.turning((c,)), abs=1e-6)


@gently
@given(cubics)
def test_flattening_keeps_its_tolerance(c):
    """Every point of a curve lies within 0.001 cm of the polyline handed out for it."""
    line = in_shapely((c,), FLATNESS)
    on_curve = shapely.points([(p.real, p.imag) for p in (c.point(i / 400) for i in range(401))])
    assert shapely.distance(on_curve, line).max() <= FLATNESS + 1e-9
    assert line.length == pytest.approx(c.length, rel=1e-3)


@gently
@given(cubics, st.builds(complex, st.floats(-9, 9), st.floats(-9, 9)), st.floats(0, 180))
def test_crossings_are_shapelys(c, off, degrees):
    """A curve meets a straight line where shapely's polyline meets it."""
    tangent, point = direction(degrees), c.point(0.5) + off
    aside = np.array([cross(tangent, c.point(t / 200) - point) for t in range(201)])
    turns = np.flatnonzero(np.diff(np.sign(np.diff(aside)))) + 1
    # Where the line grazes the curve, a polyline may touch it and the curve not.
    assume(min(abs(aside[[0, -1, *turns]])) > 0.02)
    found = [c.point(t) for t in c.on_line(point, tangent)]
    ends = [point - 300 * tangent, point + 300 * tangent]
    met = in_shapely((c,), 1e-5).intersection(shapely.LineString([(p.real, p.imag) for p in ends]))
    assert len(found) == len(shapely.get_coordinates(met))
    assert all(met.distance(shapely.Point(p.real, p.imag)) < 0.01 for p in found)


@gently
@given(cubics, st.floats(0, 1))
def test_a_place_along_a_run_is_shapelys(c, share):
    """The point so many cm along a run is the one that shapely finds along its polyline."""
    path = (Line(c.start - 3 - 4j, c.start), c)
    along = share * paths.path_length(path)
    found, there = paths.point_along(path, along), in_shapely(path, 1e-5).interpolate(along)
    assert abs(found - complex(there.x, there.y)) < 1e-3


@gently
@given(cubics)
def test_the_highest_point_is_the_polylines(c):
    """A curve's highest point lies as high as that of a fine polyline along it, and never below one of its ends."""
    ys = np.array([c.point(t).imag for t in np.linspace(0, 1, 2001)])
    assert max(c.start.imag, c.end.imag) <= c.highest and ys.max() - 1e-9 <= c.highest <= ys.max() + 1e-4 * c.length
    assert paths.highest((Line(c.start, c.end), c)) == c.highest and Line(c.start, c.end).highest <= c.highest


def test_areas_and_simplicity_are_shapelys():
    """Area and simplicity of closed runs agree with shapely, for simple ones, crossed ones and cut corners."""
    bulge = Cubic(0j, 2 + 6j, 6 + 6j, 8 + 0j)
    hollow = Cubic(0j, 3 + 9j, 5 + 9j, 8 + 0j)
    all_paths = {
        "simple": (bulge, Line(8 + 0j, 4 - 3j), Line(4 - 3j, 0j)),
        "crossed": (Line(0j, 4 + 4j), Line(4 + 4j, 4 + 0j), Line(4 + 0j, 0 + 4j), Line(4j, 0j)),
        "loop": (Cubic(0j, 12 + 8j, -4 + 8j, 8 + 0j), Line(8 + 0j, 4 - 3j), Line(4 - 3j, 0j)),
        "between curves": (hollow, bulge.turned_round),
        "sliver over the corner": (
            Cubic(0j, 2 + 0.2j, 4 + 1j, 6 + 0j),
            Line(6 + 0j, 6 + 3j),
            Line(6 + 3j, 5 + 3j),
            Cubic(5 + 3j, 4 + 2j, 2 + 0.1j, 0j),
        ),
        # Every side of a triangle meets every other: that its corner has no angle is all there is to see.
        "folded flat": (Line(0j, 4 + 0j), Line(4 + 0j, 2 + 0j), Line(2 + 0j, 0j)),
        "a spike": (Line(0j, 4 + 0j), Line(4 + 0j, 4 + 3j), Line(4 + 3j, 4 + 0.5j), Line(4 + 0.5j, 0j)),
        "doubled back": (Line(0j, 4 + 0j), Line(4 + 0j, 2 + 0j), Line(2 + 0j, 2 + 3j), Line(2 + 3j, 0j)),
    }
    for name, path in all_paths.items():
        shape = shapely.Polygon(in_shapely(path, 1e-5).coords[:-1])
        assert polygon.is_simple(path) == shape.is_valid, name
        if shape.is_valid:
            assert abs(polygon.area(path)) == pytest.approx(shape.area, abs=1e-3), name


@gently
@given(st.lists(st.floats(-9, 9).map(lambda value: round(value, 3)), min_size=4, max_size=4).filter(any))
def test_roots_of_a_cubic_are_numpys(b):
    """The roots in [0, 1] of a cubic in Bernstein form are numpy's; doubled ones may be told apart or joined."""
    b0, b1, b2, b3 = b
    power = np.trim_zeros([b3 - 3 * b2 + 3 * b1 - b0, 3 * (b2 - 2 * b1 + b0), 3 * (b1 - b0), b0], "f")
    expected = [r.real for r in np.roots(power) if abs(r.imag) < 1e-9 and 1e-6 < r.real < 1 - 1e-6]
    found = bernstein_roots(b0, b1, b2, b3)
    assert all(abs(np.polyval(power, t)) < 1e-7 for t in found) and found == sorted(found)
    assert all(min((abs(t - r) for t in found), default=1) < 1e-3 for r in expected)


def test_a_bracketed_root_is_scipys():
    """A bracketed root agrees with scipy's brentq, and ends of like sign are refused."""
    for function in (lambda x: math.cos(x) - x, lambda x: x**3 - 0.2, lambda x: math.exp(-30 * x) - 1e-3):
        assert root(function, 0.0, 1.5) == pytest.approx(brentq(function, 0, 1.5, xtol=1e-13), abs=1e-9)
    with pytest.raises(ValueError, match="sign"):
        root(lambda x: x * x + 1, -1, 1)


def test_curves_leave_and_arrive_as_asked():
    """A curve leaves and arrives along the steps it is given, and an even arc turns as much before its middle as after."""
    c = curve(0j, 1j, 1 - 1j, 5 + 2j)
    assert (c.tangent(0), c.tangent(1)) == (pytest.approx(1j), pytest.approx(unit(1 - 1j)))
    arc = even_arc(0j, 6 + 2j, leaving=direction(40))
    left, right = (
        turn_between(a, b) for a, b in ((arc.tangent(0), arc.end - arc.start), (arc.end - arc.start, arc.tangent(1)))
    )
    assert left == pytest.approx(right) and heading(arc.tangent(0)) == pytest.approx(40)
    assert Move(1j, 2 + 0j)(3 + 0j) == 2 + 3j


@pytest.mark.parametrize("angle", [-60, -20, -4, 5, 30, 70])
def test_a_rounded_corner_keeps_length_and_ends(angle):
    """Two lines that meet in a corner are made one smooth run of the same length, leaving and arriving as they did."""
    first, second = Line(-8 + 0j, 0j), Line(0j, 6 * direction(angle))
    path, mark = rounded(first, second, 0.34)
    assert paths.path_length(path) == pytest.approx(14, abs=1e-9) and mark == 8
    assert (path[0].start, path[-1].end) == (first.start, second.end)
    assert abs(turn_between(first.tangent(0), path[0].tangent(0))) < 1e-6
    assert abs(turn_between(second.tangent(1), path[-1].tangent(1))) < 1e-6
    assert all(abs(turn_between(a.tangent(1), b.tangent(0))) < 0.1 for a, b in zip(path, path[1:]))


def test_a_blend_leaves_the_undisturbed_part_alone():
    """Beyond its reach a blend leaves both lines as they were, and within it runs on smoothly from each."""
    first, second = (Line(0j, 10 + 0j),), (Line(10 + 0.8j, 20 + 1.8j),)
    path, before, after = blended(first, second, 3)
    assert path[0] == Line(0j, 7 + 0j)
    assert path[-1].end == second[0].end and abs(path[-1].start - paths.point_along(second, 3)) < 1e-12
    assert len(after) == 1 and path[1] is after[0]
    assert turn_between(path[0].tangent(1), after[0].tangent(0)) == pytest.approx(0, abs=1e-9)
    assert turn_between(after[0].tangent(1), path[-1].tangent(0)) == pytest.approx(0, abs=1e-9)
    assert paths.path_length(before) == pytest.approx(3 + 0.8 + 3)
    together = (Line(10 + 0j, 20 + 0j),)
    assert blended(first, together, 3) == ((*first, *together), (), ())


def test_a_blend_leaves_a_fifth_of_each_line_alone():
    """However far it may reach, a blend takes no more than four fifths of either line (course convention)."""
    first, second = (Line(0j, 10 + 0j),), (Line(10 + 0.8j, 20 + 1.8j),)
    path, before, after = blended(first, second, 50)
    assert path[0] == Line(0j, 2 + 0j) and path[-1].end == 20 + 1.8j
    assert path[-1].length == pytest.approx(second[0].length / 5)
    assert paths.path_length(before) == pytest.approx(8 + 0.8 + 0.8 * second[0].length)


def test_a_root_near_a_guess_is_the_bracketed_root_and_needs_one():
    """The secant from a guess finds the root the bracket holds, falls back on it, and says when there is none."""
    from corsetkit.geometry.roots import root_near

    assert root_near(lambda x: x**3 - 2, 1.3, 0.0, 2.0) == pytest.approx(2 ** (1 / 3), abs=1e-11)
    assert root_near(math.atan, 1.9, -1.0, 2.0) == pytest.approx(0.0, abs=1e-11)
    with pytest.raises(ValueError):
        root_near(lambda x: x * x + 1, 0.5, -1.0, 1.0)


def test_a_good_guess_takes_a_few_steps():
    """A nearly straight function is solved at once; where the guess leads out of the bracket the root is found yet."""
    asked = []

    def bent(x):
        asked.append(x)
        return math.sin(x) - 0.5

    assert root_near(bent, 0.5, 0.0, 1.2) == pytest.approx(math.pi / 6, abs=1e-12)
    assert len(asked) <= 8
    assert root_near(lambda x: x**3 - 0.001, 0.0, -0.5, 2.0) == pytest.approx(0.1, abs=1e-10)
    with pytest.raises(ValueError):
        root_near(lambda x: x * x + 1, 0.5, 0.0, 1.2)
