"""A canvas that remembers what was asked of it, for tests and for measuring before drawing."""

from contextlib import contextmanager
from dataclasses import dataclass

from corsetkit.showing.canvas import NOTHING
from corsetkit.showing.lettering import text_box


@dataclass(frozen=True)
class Call:
    """One call: its kind, what it was given, the groups it stands in (outermost first), and the facts told of it."""

    kind: str
    what: tuple
    groups: tuple
    facts: dict


@dataclass(frozen=True)
class Written:
    """A text as drawn, and the box it stays within."""

    text: str
    letter: object
    box: tuple
    groups: tuple


class Recorder:
    """Keeps every call in order."""

    def __init__(self, scale=1.0):
        self.scale = scale
        self.calls = []
        self._groups = ()

    def line(self, run, pen, facts=NOTHING):
        self._keep("line", (tuple(run), pen), facts)

    def area(self, run, tone, facts=NOTHING):
        self._keep("area", (tuple(run), tone), facts)

    def dot(self, at, radius, tone, pen=None):
        self._keep("dot", (at, radius, tone, pen), NOTHING)

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        self._keep("words", (at, text, letter, anchor, turn), NOTHING)

    @contextmanager
    def group(self, name, facts=NOTHING):
        before, self._groups = self._groups, (*self._groups, (name, tuple(facts.items())))
        try:
            yield
        finally:
            self._groups = before

    def _keep(self, kind, what, facts):
        self.calls.append(Call(kind, what, self._groups, dict(facts)))

    def of(self, kind):
        """The calls of one kind, in order."""
        return [call for call in self.calls if call.kind == kind]

    @property
    def written(self):
        """Every text with its box."""
        return [Written(text, letter, text_box(at, text, letter, anchor, turn, self.scale), call.groups)
                for call in self.of("words") for at, text, letter, anchor, turn in [call.what]]


def recorded(sheet):
    """The recorder of all that the sheet paints."""
    recorder = Recorder(sheet.scale)
    sheet.paint(recorder)
    return recorder
