"""Two blocks laid one on the other: which lines stayed, which only came along, and which are drawn anew."""

from dataclasses import dataclass
from functools import cached_property

from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.move import slid
from corsetkit.geometry.paths import moved

SAME = 1e-6
"""What two places may differ by and still be one, cm: far below what a pencil draws, far above rounding."""
_LOOKED_AT = tuple(i / 16 for i in range(17))
"""Where along a curve its two states are compared, as shares of t."""


@dataclass(frozen=True)
class Compared:
    """A line of the block before and after, both measured from the same mark: the centre of its half at the waist.

    `name` is the line's, `half` "front" or "back"; `before` and `after` are runs of as many curves, or empty where the
    line is not there.
    """

    name: str
    half: str
    before: tuple
    after: tuple

    @cached_property
    def step(self):
        """By how much the whole line was slid, 0j where it stayed; None where its shape or length is another."""
        if len(self.before) != len(self.after):
            return None
        steps = [b - a for old, new in zip(self.before, self.after) for a, b in zip(_points(old), _points(new))]
        return steps[0] if all(abs(step - steps[0]) < SAME for step in steps) else None

    @property
    def stayed(self):
        return self.step is not None and abs(self.step) < SAME

    @property
    def came_along(self):
        return self.step is not None and abs(self.step) >= SAME

    @cached_property
    def most(self):
        """How far the point of the line that moved most has moved, cm."""
        return max((abs(new.point(t) - old.point(t)) for old, new in zip(self.before, self.after) for t in _LOOKED_AT),
                   default=0.0)

    @cached_property
    def differing(self):
        """The curves of `after` that lie elsewhere than before."""
        if len(self.before) != len(self.after):
            return self.after
        return tuple(new for old, new in zip(self.before, self.after)
                     if any(abs(b - a) >= SAME for a, b in zip(_points(old), _points(new))))


def compared(before, after):
    """Each line of the `Block` `before` beside the same line of the `Block` `after`, as a list of `Compared`.

    The back of `after` is slid so that both backs have the same centre: how much paper lies between the halves is no
    part of either.
    """
    to_back = slid(before.back.waist_centre - after.back.waist_centre)
    found = []
    for half in ("front", "back"):
        old, new = lines_of(before, half), lines_of(after, half)
        for name in old:
            run = new[name] if half == "front" else moved(new[name], to_back)
            # A line that neither block has, as a dart that takes nothing, is no line.
            if old[name] or run:
                found.append(Compared(name, half, tuple(old[name]), tuple(run)))
    return found


def lines_of(block, word):
    """The lines of one half, "front" or "back", by their names; a point is a line of no length."""
    half = getattr(block, word)
    lines = {
        f"{word} neckline": half.neckline,
        f"{word} shoulder": half.shoulder,
        f"{word} armscye": half.armscye,
        f"{word} side seam": half.side,
        f"{word} waist dart": tuple(curve for leg in half.dart_legs for curve in leg),
        f"centre {word}": (Line(half.neck_centre, half.hip_centre),),
        f"{word} hip line": (Line(half.hip_centre, half.hip_side),),
    }
    if word == "front":
        point = block.bust_point
        dart = (Line(block.mouth_upper, point), Line(point, block.mouth_lower)) if block.side_dart else ()
        lines |= {"side dart": dart, "bust point": (Line(point, point),)}
    return lines


def _points(curve):
    return (curve.start, curve.first, curve.second, curve.end) if isinstance(curve, Cubic) else (curve.start, curve.end)
