"""Step 4, the darts: the centre-front dart and the side dart are closed by turning about the bust point.

After this step the turned parts have every edge's length and shape, the legs of each closed dart lie on each
other, and the underbust line, thrown off where the darts cross it, is one smooth curve again, the same for
the cup and for the lower front under it.

Each dart crosses the underbust line, so each closes partly in the cup and partly in the lower front. The
part of the lower front below the centre-front dart keeps still, its centre front straight on the grain; the
corner above it swings and leaves a small V at the top of the centre front.
"""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.blend import blended
from corsetkit.geometry.curve import Curves
from corsetkit.geometry.move import Move, turned_about
from corsetkit.geometry.points import Point, unit
from corsetkit.pattern.piece import Blend
from corsetkit.steps.block import Block
from corsetkit.steps.overbust import Overbust
from corsetkit.steps.underbust import Underbust
from corsetkit.style import Style


@dataclass(frozen=True, kw_only=True)
class CrossedLine:
    """The underbust line on one side of the underbust dart, where a closed dart crosses it.

    `moving` is its stretch on the part that turns, `still` its stretch on the part that keeps, both on the
    block and run as the whole line runs (from the centre-front point to the armscye); `close` is the turn.
    `line` is the blended line, in the place of the part that keeps still.
    """

    moving: Curves
    still: Curves
    close: Move
    leg_upper: Point
    leg_lower: Point
    line: Curves
    blend: Blend | None

    def __repr__(self) -> str:
        return f"<CrossedLine {paths.path_length(self.line):.1f} cm, thrown off by {self.step:.2f} cm>"

    @property
    def step(self) -> float:
        """By how much the closed dart throws the line off, cm along the leg."""
        return abs(abs(self.close(self.leg_upper) - self.leg_lower))


@dataclass(frozen=True, kw_only=True)
class Darts:
    """Both darts closed: the inner and the outer side of the underbust line, and what each part's turn is."""

    overbust: Overbust
    inner: CrossedLine
    outer: CrossedLine

    def __repr__(self) -> str:
        return f"<Darts closed: underbust line thrown off by {self.inner.step:.2f} cm and {self.outer.step:.2f} cm>"

    @property
    def block(self) -> Block:
        return self.overbust.block

    @property
    def underbust(self) -> Underbust:
        return self.overbust.underbust

    @cached_property
    def front_point(self) -> Point:
        """The cups' point at the centre front once the centre-front dart is closed."""
        return self.inner.close(self.overbust.front_point)

    @property
    def v_width(self) -> float:
        """How wide the V at the top of the centre front stands open, both sides together, cm."""
        return 2 * self.front_point.real

    @property
    def v_depth(self) -> float:
        """How deep that V is, cm."""
        return self.front_point.imag - self.overbust.dart_lower.imag

    @property
    def warnings(self) -> tuple[str, ...]:
        return ()


def darts(overbust: Overbust, style: Style) -> Darts:
    """Close the centre-front dart and the side dart and blend the underbust line.

    Args:
        overbust: the `Overbust`.
        style: reads blend_reach.

    Returns:
        A `Darts`.

    Raises:
        CorsetkitError: where a dart's leg misses the underbust line, or the line turns back on itself.
    """
    block, point = overbust.block, overbust.bust_point
    close_front = turned_about(point, overbust.front_dart)
    close_side = turned_about(point, -block.side_dart)
    inner = _crossed(overbust.under_inner, point, overbust.dart_upper, overbust.dart_lower, "centre-front dart")
    outer = _crossed(overbust.under_outer, point, block.mouth_lower, block.mouth_upper, "side dart")
    (moving, upper), (still, lower) = inner
    path, before, after = blended(paths.moved(moving, close_front), still, style.blend_reach)
    first = CrossedLine(
        moving=moving,
        still=still,
        close=close_front,
        leg_upper=upper,
        leg_lower=lower,
        line=path,
        blend=Blend("the underbust line across the closed centre-front dart", before, after) if after else None,
    )
    (still, lower), (moving, upper) = outer
    path, before, after = blended(still, paths.moved(moving, close_side), style.blend_reach)
    second = CrossedLine(
        moving=moving,
        still=still,
        close=close_side,
        leg_upper=upper,
        leg_lower=lower,
        line=path,
        blend=Blend("the underbust line across the closed side dart", before, after) if after else None,
    )
    return Darts(overbust=overbust, inner=first, outer=second)


def _crossed(
    path: Curves, point: Point, first_end: Point, second_end: Point, name: str
) -> tuple[tuple[Curves, Point], tuple[Curves, Point]]:
    """The path before the first leg, and after the second, each with the point where the leg crosses it."""
    places = []
    for end in (first_end, second_end):
        found = paths.on_ray(path, point, unit(end - point))
        found = [
            place
            for k, place in enumerate(found)
            if k == 0 or abs(path[place[0]].point(place[1]) - path[found[k - 1][0]].point(found[k - 1][1])) > 1e-6
        ]
        if len(found) != 1 or abs(path[found[0][0]].point(found[0][1]) - point) > abs(end - point) + 1e-9:
            raise CorsetkitError(
                f"the {name} and the underbust line do not cross as they should on this wearer: choose a smaller dart, "
                "or another underbust mark"
            )
        places.append(found[0])
    before, _ = paths.cut_at(path, *places[0])
    _, after = paths.cut_at(path, *places[1])
    return (before, paths.path_end(before)), (after, paths.path_start(after))
