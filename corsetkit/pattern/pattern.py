"""The finished pattern: pieces, seams, girths, waste, what the draft has to say, and the corrections drawn into it."""

from dataclasses import dataclass, field


@dataclass(frozen=True)
class Correction:
    """Move `line` by `by` cm. `fitting/lines.py` says which lines can be moved, which way is above zero, and how far."""

    line: str
    by: float


@dataclass(frozen=True)
class Girth:
    """One level's girth in cm: as finished on the body (lacing gap included), the body's own, and the intended."""

    finished: float
    body: float
    intended: float


@dataclass(frozen=True)
class Waste:
    """A named region of the block that no piece takes, made by the step that cuts it away."""

    name: str
    step: str
    outline: tuple


@dataclass(frozen=True)
class Fullness:
    """What the darts at the bust point take, in degrees, and a simple shape's own beside it.

    `angles` maps each dart's name to its angle; `cap` is the angle that a spherical cap over the cup's
    outline would take, with half of bust minus underbust as what its arc has more than its chord.
    """

    angles: dict
    cap: float

    @property
    def total(self):
        return sum(self.angles.values())


@dataclass(frozen=True, eq=False)
class Pattern:
    """All pieces of one wearer's pattern in one style.

    `measurements` and `style` are as they were given; `corrections` are the fitting's, as they were given. What the steps
    were drawn from once the corrections were made stands in `steps.measurements` and `steps.style`.
    """

    measurements: object
    style: object
    pieces: tuple
    seams: tuple
    girths: dict
    fullness: Fullness
    waste: tuple
    warnings: tuple
    steps: object = field(repr=False)
    """The steps' own values, in the order in which they were drawn."""
    corrections: tuple = ()
