"""The drawing protocol: what anything that draws may ask of a canvas; the sheet that is drawn, and a canvas that remembers.

Places are complex numbers in cm, y up, where the drawing says; widths and letters are mm as seen
(see pens.py), which a canvas multiplies by the sheet's scale. SVG, PDF and the recorder stand behind it,
so that they cannot disagree.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass, field
from typing import Any, Protocol, TypeAlias

from corsetkit.drawing.lettering import Box, text_box
from corsetkit.drawing.pens import Letter, Pen, Tone
from corsetkit.geometry.curve import Cubic, Curves, Line

NOTHING: dict[str, Any] = {}
"""No facts told of a line or a group; never written to."""

JOINED = 1e-6
"""Curves whose ends lie this near (cm) are drawn as one stroke: rounding may part what was drawn together."""


class Canvas(Protocol):
    """What is drawn on. Later calls lie on top of earlier ones."""

    scale: float
    """How many centimetres of the drawing are seen as one."""

    def line(self, path: Iterable[Line | Cubic], pen: Pen, facts: Mapping[str, Any] = NOTHING) -> None:
        """Draw the path's true curves; where it has a gap, a new stroke begins. `facts` are words told of the line."""

    def area(self, path: Iterable[Line | Cubic], tone: Tone, facts: Mapping[str, Any] = NOTHING) -> None:
        """Fill the closed run with the tone's colour. Hatching is laid by `hatching.fill`, not by a canvas."""

    def dot(self, at: complex, radius: float, tone: Tone, pen: Pen | None = None) -> None:
        """A round dot of `radius` mm as seen, with a rim where a pen is given."""

    def words(self, at: complex, text: str, letter: Letter, anchor: str = "middle", turn: float = 0.0) -> None:
        """Write one line of text standing on `at`, anchored at its "start", "middle" or "end".

        `turn` is degrees counter-clockwise about `at`.
        """

    def group(self, name: str, facts: Mapping[str, Any] = NOTHING) -> AbstractContextManager[None]:
        """A context that holds what is drawn within it together, under a name."""


def box_run(left: float, bottom: float, right: float, top: float) -> Curves:
    """A rectangle as a closed path, counter-clockwise."""
    a, b, c, d = left + bottom * 1j, right + bottom * 1j, right + top * 1j, left + top * 1j
    return Line(a, b), Line(b, c), Line(c, d), Line(d, a)


def box_area(canvas: Canvas, box: Box, tone: Tone) -> None:
    """Fill a box (left, bottom, right, top)."""
    canvas.area(box_run(*box), tone)


def tick(canvas: Canvas, start: complex, end: complex, pen: Pen) -> None:
    """One straight stroke."""
    canvas.line((Line(start, end),), pen)


@dataclass(frozen=True)
class Sheet:
    """A drawing between the corners `low` and `high` (cm), painted by `paint(canvas)`.

    `scale` says how many of its centimetres are meant to be seen as one: pens and letters grow with it. A `window` is a
    sheet beyond whose borders lines may run on, to be cut off there.
    """

    low: complex
    high: complex
    title: str
    description: str
    paint: Callable[[Canvas], None] = field(repr=False)
    scale: float = 1.0
    window: bool = False

    @property
    def size(self) -> complex:
        """Width and height in cm as one complex number."""
        return self.high - self.low


Groups: TypeAlias = tuple[tuple[str, tuple[tuple[str, Any], ...]], ...]
"""The groups that something stands in, outermost first: each one's name and facts."""


@dataclass(frozen=True)
class Call:
    """One call: its kind, what it was given, the groups it stands in (outermost first), and the facts told of it."""

    kind: str
    what: tuple[Any, ...]
    groups: Groups
    facts: dict[str, Any]


@dataclass(frozen=True)
class Written:
    """A text as drawn, and the box it stays within."""

    text: str
    letter: Letter
    box: Box
    groups: Groups


class Recorder:
    """Keeps every call in order."""

    def __init__(self, scale: float = 1.0) -> None:
        self.scale = scale
        self.calls: list[Call] = []
        self._groups: Groups = ()

    def line(self, path: Iterable[Line | Cubic], pen: Pen, facts: Mapping[str, Any] = NOTHING) -> None:
        self._keep("line", (tuple(path), pen), facts)

    def area(self, path: Iterable[Line | Cubic], tone: Tone, facts: Mapping[str, Any] = NOTHING) -> None:
        self._keep("area", (tuple(path), tone), facts)

    def dot(self, at: complex, radius: float, tone: Tone, pen: Pen | None = None) -> None:
        self._keep("dot", (at, radius, tone, pen), NOTHING)

    def words(self, at: complex, text: str, letter: Letter, anchor: str = "middle", turn: float = 0.0) -> None:
        self._keep("words", (at, text, letter, anchor, turn), NOTHING)

    @contextmanager
    def group(self, name: str, facts: Mapping[str, Any] = NOTHING) -> Iterator[None]:
        before, self._groups = self._groups, (*self._groups, (name, tuple(facts.items())))
        try:
            yield
        finally:
            self._groups = before

    def _keep(self, kind: str, what: tuple[Any, ...], facts: Mapping[str, Any]) -> None:
        self.calls.append(Call(kind, what, self._groups, dict(facts)))

    def of(self, kind: str) -> list[Call]:
        """The calls of one kind, in order."""
        return [call for call in self.calls if call.kind == kind]

    @property
    def written(self) -> list[Written]:
        """Every text with its box."""
        return [
            Written(text, letter, text_box(at, text, letter, anchor, turn, self.scale), call.groups)
            for call in self.of("words")
            for at, text, letter, anchor, turn in [call.what]
        ]


def recorded(sheet: Sheet) -> Recorder:
    """The recorder of all that the sheet paints."""
    recorder = Recorder(sheet.scale)
    sheet.paint(recorder)
    return recorder
