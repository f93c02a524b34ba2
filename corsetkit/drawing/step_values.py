"""What a step's sheet is made of: lines, pairs of lines that are sewn to each other, and marks."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Drawn:
    """A line of a step: its run, what it is ("before", "ghost", "new", "guide", "waste", "body"), and its name.

    A "ghost" is where a line of this step was before something was changed. A "waste" run is closed and hatched. `name` is
    told to whoever points at the line or listens; `label` is what is written beside it, "" for nothing, None for the name
    itself. Lines that are sewn to each other hold the same `pair`, each its own `side` of it, 1 or 2.
    """

    path: tuple
    role: str
    name: str = ""
    label: str | None = None
    pair: object = None
    side: int = 0

    @property
    def written(self):
        return self.name if self.label is None else self.label


@dataclass(frozen=True, eq=False)
class Pair:
    """What two lines that are sewn to each other share: its name, and the word for each side ("inner leg", "outer leg").

    A pair is known by being the same one, never by its name.
    """

    name: str
    sides: tuple

    def drawn(self, side, path, role="new", label=""):
        """The line of one side, 1 or 2."""
        return Drawn(tuple(path), role, f"{self.name}, {self.sides[side - 1]}", label, self, side)


@dataclass(frozen=True)
class Spot:
    """A construction mark with its name, new in this step or there "before"."""

    point: complex
    name: str
    role: str = "new"


def seams_of(drawn):
    """The pairs of which both sides are drawn, by their ids: each pair's number on this sheet, and its lines by side."""
    sides = {}
    for line in drawn:
        if line.pair:
            sides.setdefault(id(line.pair), {1: [], 2: []})[line.side].append(line)
    whole = [(key, lines) for key, lines in sides.items() if lines[1] and lines[2]]
    return {key: (number, lines) for number, (key, lines) in enumerate(whole, 1)}
