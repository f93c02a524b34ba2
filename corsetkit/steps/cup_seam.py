"""The seam through the bust point, the same in a two-part and in a three-part cup.

After this both cups' edges pass the bust point itself, where their closed darts leave a corner, and are smooth and convex from
end to end: below the point and above it each is as long as the other. Neither keeps the length of its straight legs, for
an edge that rounds a corner outside it grows; by how much is told.

At its ends each edge opens a little, so the lines that it meets there are trued within a few centimetres of it: the underbust
line and the cut square to it, the overbust line running on smoothly over it. They are as long as they were, for what is sewn
to them keeps its own line.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import cast

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.blend import squared
from corsetkit.geometry.curve import Cubic, Curves, Line
from corsetkit.geometry.dome import Dome, domed
from corsetkit.geometry.points import Point, dot, unit
from corsetkit.pattern.piece import Blend
from corsetkit.units import say_both

ROUND, POINTED = (0.5, 4.0), (0.3, 1.0)
"""The least radius at the bust point, cm, at the rounder and the more pointed end of `cup_seam_roundness`, in proportion
between: 2.5 cm at its default of 0.4: course convention."""
TRUED = 3.0
"""Within how much of the seam the lines that meet it are trued, cm: course convention."""
MOST_MOVED = 0.13
"""How far such a line is moved at most, cm: course convention."""
SPARE = 0.01
"""The share of turning near the bust point that is kept free for what the trued ends add to it."""
WORTH_SAYING = 0.1
"""A radius smaller than was asked for by less than this, cm, is not told."""


@dataclass(frozen=True, kw_only=True)
class Trued:
    """A line that meets the cup seam, from there on: as it was, as it is now, and the blend that says so."""

    before: Curves
    line: Curves
    blend: Blend

    def __repr__(self) -> str:
        return f"<Trued line of {paths.path_length(self.line):.1f} cm>"


@dataclass(frozen=True, kw_only=True)
class CupSeam:
    """The seam through the bust point on both cups, each path from its upper to its lower end.

    `inner` and `outer` are the shaped paths, each `length` cm long, on the cups as the closed darts leave them; the bust
    point's notch lies `to_bust_point` cm from the upper end. `grown` is what either is longer than its straight legs.
    `near` is the share of all turning that lies within 2 cm of the bust point, and `radius` the least radius there, cm.
    The four lines that meet its ends are `inner_top`, `outer_top`, `inner_low` and `outer_low`.
    """

    inner: Curves
    outer: Curves
    length: float
    to_bust_point: float
    grown: float
    near: float
    radius: float
    inner_blend: Blend
    outer_blend: Blend
    inner_top: Trued
    outer_top: Trued
    inner_low: Trued
    outer_low: Trued
    warnings: tuple[str, ...]

    def __repr__(self) -> str:
        return f"<CupSeam {self.length:.1f} cm, bust point {self.to_bust_point:.1f} cm from its upper end>"

    @property
    def fullness_left(self) -> float:
        """Degrees through which the two sewn edges turn towards each other: what the shaped seam keeps of the darts."""
        return abs(paths.turning(self.inner)) + abs(paths.turning(self.outer))


def cup_seam(point: Point, inner: tuple[Curves, Curves], outer: tuple[Curves, Curves], roundness: float, top: str) -> CupSeam:
    """The seam through the bust point, and the lines that meet its ends trued.

    Args:
        point: the bust point.
        inner, outer: of each cup the upper and the lower line that meets the seam, both from there on; the upper ones begin
            equally far from the bust point, and so do the lower ones.
        roundness: the style's cup_seam_roundness.
        top: what the upper lines are called.

    Raises:
        CorsetkitError: where no such seam exists.
    """
    lines = [*inner, *outer]
    starts = [paths.path_start(line) for line in lines]
    share = (roundness - POINTED[0]) / (ROUND[0] - POINTED[0])
    radius = POINTED[1] + share * (ROUND[1] - POINTED[1])
    dome = _domed(point, starts, 1 - roundness - SPARE, radius)
    turned = _turned(point, lines, dome)
    # A trued line begins a hair beside the straight leg's end; the seam is shaped again to end there, which turns the line by
    # another hair: then both are as they stay.
    dome = _domed(point, [paths.path_start(line) for line in turned], 1.0, dome.radius)
    turned = _turned(point, lines, dome)
    one, other = (
        _ending(edge, paths.path_start(up), paths.path_start(low))
        for edge, up, low in zip(dome.edges, turned[::2], turned[1::2])
    )
    trued = [
        Trued(before=before, line=after, blend=Blend(f"the {name}, trued at the cup seam", _changed(before, after), after[:1]))
        for before, after, name in zip(lines, turned, (top, "underbust line") * 2)
    ]
    legs = [(Line(paths.path_start(up), point), Line(point, paths.path_start(low))) for up, low in (inner, outer)]
    length = paths.path_length(one)
    said: tuple[str, ...] = ()
    if dome.radius < radius - WORTH_SAYING:
        said = (
            f"the inner and the outer cup turn so unlike at the bust point that their seam bends more tightly there than was "
            f"chosen, {say_both(dome.radius)} instead of {say_both(radius)}; a smaller dart side share makes them more alike",
        )
    return CupSeam(
        inner=one,
        outer=other,
        length=length,
        to_bust_point=dome.to_point,
        grown=length - paths.path_length(legs[0]),
        near=dome.near,
        radius=dome.radius,
        inner_blend=Blend("the cup seam, shaped over the bust point", legs[0], one),
        outer_blend=Blend("the cup seam, shaped over the bust point", legs[1], other),
        inner_top=trued[0],
        inner_low=trued[1],
        outer_top=trued[2],
        outer_low=trued[3],
        warnings=said,
    )


def _domed(point: Point, starts: Sequence[Point], near: float, radius: float) -> Dome:
    """The two edges over the point, their ends given in the order of the lines."""
    dome = domed(((starts[0], point, starts[1]), (starts[2], point, starts[3])), near, radius)
    if dome is None:
        raise CorsetkitError("the cup seam cannot be shaped over the bust point: choose another cup seam roundness")
    return dome


def _turned(point: Point, lines: Sequence[Curves], dome: Dome) -> list[Curves]:
    """The lines, each turned at the seam's end as far as the seam opens there: a line that was square to it is so again, and
    one that ran on smoothly from cup to cup still does."""
    ends = [tangent for edge in dome.edges for tangent in (edge[0].tangent(0.0), edge[-1].tangent(1.0))]
    turned = []
    for number, (line, end) in enumerate(zip(lines, ends)):
        way, leg = line[0].tangent(0.0), unit(line[0].start - point)
        opened = end / (leg if number % 2 else -leg)
        # Its start slides square to the straight leg, which so keeps its length.
        aside = 1j * leg if dot(1j * leg, way) > 0 else -1j * leg
        turned.append(squared(line, way * opened, aside, TRUED, MOST_MOVED))
    return turned


def _ending(edge: Curves, top: Point, low: Point) -> Curves:
    """The edge with its ends carried to these places, which lie less than a hundredth of a millimetre off."""
    upper, lower = (cast(Cubic, curve) for curve in edge)
    return (
        Cubic(top, upper.first + top - upper.start, upper.second, upper.end),
        Cubic(lower.start, lower.first, lower.second + low - lower.end, low),
    )


def _changed(before: Curves, after: Curves) -> Curves:
    """The stretch of a line that was redrawn from its start on."""
    return paths.cut_along(before, after[0].length)[0]
