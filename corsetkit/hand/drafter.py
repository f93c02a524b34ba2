"""Collects a step's marks, lines and instructions, and says which number a mark bears in the drawing.

Rounding adds up along a chain of marks, so marks are measured from the first ones wherever a hand can do it.
"""

from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.points import between, cross, dot, unit
from corsetkit.pattern.instructions import (
    Along,
    Begin,
    ByHand,
    Check,
    Compass,
    Curve,
    Halve,
    Join,
    Mark,
    Measure,
    Offset,
    OnLine,
    Same,
    Square,
    Swing,
    Towards,
    Turn,
)
from corsetkit.units import CM_PER_INCH
from corsetkit.words import words_of

WORDS = words_of("hand")

LEAST = CM_PER_INCH / 32
"""A length below this reads as zero on a tape of sixteenths, so a hand leaves it out."""

APART = 2.5
"""A curve has no more than one helper to so many cm: nearer together they guide no hand."""
NEARLY_STRAIGHT = CM_PER_INCH / 16
"""A curve whose helpers would stand out less than this, cm, is drawn from its ends alone."""

FRONT = (Compass.FRONT_TO_SIDE, Compass.FRONT_TO_CENTRE)
BACK = (Compass.BACK_TO_SIDE, Compass.BACK_TO_CENTRE)
_COUNTED = ("first", "second", "third")


def fitted(amount, more, less):
    """What a fitting adds to a value, to follow on in its reason; nothing where it adds nothing.

    `amount` is in cm; `more` and `less` end the name of the sentence that says it.
    """
    return WORDS(f"fit_{more if amount > 0 else less}", by=f"{{{abs(amount):.6f} cm}}") if amount else ""


class Drafter:
    """The draft as far as it is made: knows each mark's point and each line's run by their names."""

    def __init__(self):
        self._points, self._runs, self._level = {}, {}, {}
        self._new_marks, self._new_lines, self._new = [], [], []

    def __getitem__(self, name):
        """A mark's point."""
        return self._points[name]

    def __contains__(self, name):
        return name in self._points

    def run(self, line):
        """A drawn line's run."""
        return self._runs[line]

    def step_made(self):
        """What was added since the last call, as a `ByHand`."""
        made = ByHand(tuple(self._new_marks), tuple(self._new_lines), tuple(self._new))
        self._new_marks, self._new_lines, self._new = [], [], []
        return made

    def begin(self, name, point, level, where, because):
        """Choose a mark; `level` is FRONT or BACK, the half that is measured from it."""
        self._level[name] = level
        self._mark(Begin(name, point, where, because=because), name, point)

    def square(self, start, name, point, because, on_line=None):
        """Up or down from `start`, then level across; what a tape reads as zero is left out."""
        step, to_side = point - self[start], self._level[start][0].step.real
        bearings = [
            (bearing, length)
            for bearing, length in (
                (Compass.UP if step.imag > 0 else Compass.DOWN, abs(step.imag)),
                (self._level[start][0 if step.real * to_side > 0 else 1], abs(step.real)),
            )
            if length >= LEAST
        ]
        self._placed(start, bearings, name, point, on_line, because)

    def measure(self, start, bearing, name, point, because, on_line=None):
        """From `start` one length along `bearing`."""
        length = dot(self._step(bearing, start), point - self[start])
        self._placed(start, [(bearing, length)] if length >= LEAST else [], name, point, on_line, because)

    def beside(self, start, end, name, point, because, on_line=None):
        """From `start` along the straight line towards `end`, then square out from it."""
        along, step = unit(self[end] - self[start]), point - self[start]
        ahead, aside = dot(along, step), cross(along, step)
        # A mark that lies behind the start is measured from the line's other end.
        if ahead < 0:
            self.beside(end, start, name, point, because, on_line)
            return
        bearings = [pair for pair in ((Towards(end), ahead), (Square(start, end, aside > 0), abs(aside))) if pair[1] >= LEAST]
        self._placed(start, bearings, name, point, on_line, because)

    def swing(self, first, second, name, point, because, on_line=None):
        """Where two arcs cross."""
        a, b = self[first], self[second]
        self._level[name] = self._level[first]
        self._mark(
            Swing(first, abs(point - a), second, abs(point - b), cross(b - a, point - a) > 0, name, on_line, because=because),
            name,
            point,
        )

    def halve(self, start, end, name, because):
        self._level[name] = self._level[start]
        self._mark(Halve(start, end, name, because=because), name, between(self[start], self[end], 0.5))

    def same(self, start, name, because):
        """A mark that falls on another one."""
        self._placed(start, [], name, self[start], None, because)

    def turn(self, about, lay, on, names, move, because, named=None):
        """Turn the traced marks with the rigid `move`; each is then called as `named` says, else by its name as `turned`."""
        moved = tuple((old, (named or turned)(old)) for old in names)
        self._new.append(Turn(about, lay, on, moved, because=because))
        for old, new in moved:
            self._level[new] = self._level[old]
            self._keep(new, move(self[old]))

    def join(self, start, end, line, because):
        self._line(line, (Line(self[start], self[end]),))
        self._new.append(Join(start, end, line, because=because))

    def curve(self, start, end, line, path, because, helpers=1, leaves=None, arrives=None):
        """A smooth curve: its helpers are squared out from the straight line between its ends."""
        marks = (start, *self.helpers(start, end, line, path, helpers), end)
        self.smooth(marks, line, path, because, leaves, arrives)

    def helpers(self, start, end, line, path, count=1):
        """Helper marks for a curve, squared out from the straight line between two marks; their names.

        `count` are evenly spread, fewer on a short curve and none on one that keeps near the straight line; a tuple says
        their places as shares of the straight line, for a curve that turns sharply in one place.
        """
        even, shares = isinstance(count, int), count
        if even:
            count = min(count, int(paths.path_length(path) / APART))
            shares = tuple((number + 1) / (count + 1) for number in range(count))
        points = [_over(path, self[start], self[end], share) for share in shares]
        bearing = unit(self[end] - self[start])
        if even and all(abs(cross(bearing, point - self[start])) < NEARLY_STRAIGHT for point in points):
            return []
        names = []
        for number, point in enumerate(points):
            name = f"{_COUNTED[number] + ' ' if len(points) > 1 else ''}helper of the {line}"
            self.beside(start, end, name, point, WORDS("helper"))
            names.append(name)
        return names

    def smooth(self, marks, line, path, because, leaves=None, arrives=None):
        """A smooth curve through marks that are there already."""
        self._line(line, path)
        self._new.append(Curve(tuple(marks), line, leaves, arrives, because=because))

    def through(self, marks, line, path, because, helpers=1, leaves=None, arrives=None):
        """A smooth curve through marks between which the parts of `path` run, each with helpers of its own."""
        every = [marks[0]]
        for number, (start, end, part) in enumerate(zip(marks, marks[1:], path)):
            words = line if len(path) == 1 else f"{('upper', 'lower')[number]} part of the {line}"
            every += [*self.helpers(start, end, words, part, helpers), end]
        self.smooth(every, line, tuple(curve for part in path for curve in part), because, leaves, arrives)

    def along(self, lines, start, length):
        """Where a mark lies: so far from `start` along the lines, those that are needed of them."""
        rest = length
        for count, line in enumerate(lines, 1):  # noqa: B007  (how many were needed is asked of below)
            rest -= paths.path_length(self._runs[line])
            if rest <= 1e-9:
                break
        return OnLine(tuple(lines[:count]), start, length)

    def check(self, lines, because):
        """The tape along drawn lines; the length is the lines' own."""
        self._new.append(Check(tuple(lines), sum(paths.path_length(self._runs[line]) for line in lines), because=because))

    def _step(self, bearing, start):
        if isinstance(bearing, Compass):
            return bearing.step
        if isinstance(bearing, Towards):
            return unit(self[bearing.mark] - self[start])
        step = unit(self[bearing.end] - self[bearing.start])
        return step if isinstance(bearing, Along) else step * (1j if bearing.left else -1j)

    def _placed(self, start, bearings, name, point, on_line, because):
        self._level[name] = self._level[start]
        if len(bearings) == 2:
            (bearing, length), (then, aside) = bearings
            made = Offset(start, bearing, length, then, aside, name, on_line, because=because)
        elif bearings:
            made = Measure(start, *bearings[0], name, on_line, because=because)
        else:
            made = Same(start, name, because=because)
        self._mark(made, name, point)

    def _mark(self, instruction, name, point):
        self._new.append(instruction)
        self._keep(name, point)

    def _keep(self, name, point):
        self._points[name] = point
        self._new_marks.append(Mark(name, point))

    def _line(self, line, path):
        self._runs[line] = path
        self._new_lines.append((line, path))


def _over(path, start, end, share):
    """Where the run lies over a place of the straight line between its ends; along the run where it never does."""
    foot = between(start, end, share)
    over = [path[i].point(t) for i, t in paths.on_line(path, foot, unit(end - start) * 1j)]
    return min(over, key=lambda p: abs(p - foot)) if over else paths.point_along(path, share * paths.path_length(path))


def turned(name):
    """The name of a mark once it is turned, or turned again."""
    once = " (turned)"
    return f"{name.removesuffix(once)} (turned twice)" if name.endswith(once) else name + once


def moves_of(by_hand):
    """The instructions of a step without its checks, in their order."""
    return tuple(one for one in by_hand.instructions if not isinstance(one, Check))


def checks_of(by_hand):
    """The checks of a step, in their order."""
    return tuple(one for one in by_hand.instructions if isinstance(one, Check))


def numbers_of(moves):
    """For each mark the number of the move that makes it, with a letter where it makes several: a dict from its name.

    Helpers of curves are left out: their numbers would hide the rest.
    """
    numbers = {}
    for number, one in enumerate(moves, 1):
        names = [new for _, new in one.moved] if isinstance(one, Turn) else [getattr(one, "to", None)]
        names = [name for name in names if name and "helper" not in name]
        for letter, name in zip("abcdefghijklmnopqrstuvwxyz" if len(names) > 1 else ("",), names):
            numbers.setdefault(name, f"{number}{letter}")
    return numbers
