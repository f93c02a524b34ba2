"""The page's views of tables, guesses and forms; each answers a message of the page with a whole new state.

So nothing between the two has to hand it on, and where nobody listens, as in a test or a stored cell, nothing happens.
"""

from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path

import anywidget
import traitlets

from corsetkit.finish.choices import Finish
from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.teaching.form import Form
from corsetkit.teaching.guess import Guess
from corsetkit.teaching.play import Play
from corsetkit.words import words_of

SHARED = words_of("shared")

_LISTENER = ContextVar("who listens", default=None)


@contextmanager
def heard_by(listener):
    """While this lasts, `listener(words, share)` is called with what is said in the same thread."""
    before = _LISTENER.set(listener)
    try:
        yield
    finally:
        _LISTENER.reset(before)


def say_working(words: str, done: int = 0, total: int = 0) -> None:
    """Say what is being worked on; where it is one of several things, how many of how many are done."""
    if listener := _LISTENER.get():
        listener(words, done / total if total else None)


_PAGE = Path(__file__).with_name("page")


def bundle(name: str) -> str:
    """What the page runs for one widget: `page/NAME.js` and all that it imports, made one text by `tests/page_tools.py`.

    One for each widget and none for all: every widget takes its text with it to the page.
    """
    return (_PAGE / "built" / f"{name}.js").read_text(encoding="utf-8")


def look(*more: str) -> str:
    """How all widgets look, and over it the named style sheets of the page's side."""
    return "\n".join((_PAGE / f"{name}.css").read_text(encoding="utf-8") for name in ("look", *more))


class Answering(anywidget.AnyWidget):
    """A widget that answers each message of the page with a whole new state.

    The answer carries the asker and the number of the message, so that the page knows which of its
    questions is answered and has at most one under way. `shown` is a trait and no message, so that a
    page opened later sees the same. The page is told even of what should never happen, for else it
    would wait in vain; the error itself goes on to the log.

    An answer that takes long says how far it is by `progress.say_working`; that goes to the page at once, while the kernel
    is still at work.
    """

    _css = look()

    shown = traitlets.Dict().tag(sync=True)
    progress = traitlets.Dict().tag(sync=True)

    def __init__(self, **more):
        self._desk = self._sight = None
        super().__init__(**more)
        self.on_msg(self._on_page)

    def stands_on(self, desk, sight) -> None:
        """Look at the `desk` again before each message, for another lesson may have changed what is kept; the `InSight`
        is told whether the page is in sight."""
        self._desk, self._sight = desk, sight

    def answer(self, message: dict, buffers) -> dict:
        """The state after `message`."""
        raise NotImplementedError

    def _on_page(self, _widget, message, buffers):
        if message.get("kind") == "sight":
            if self._sight:
                self._sight.told(str(message.get("page", "")), bool(message.get("seen")))
            return
        asked = {"asker": message.get("asker", ""), "number": message.get("number", 0)}
        try:
            if self._desk:
                self._desk.look_again()
            with heard_by(self._working):
                state = self.answer(message, buffers)
        except Exception as error:
            wrong = SHARED("course_wrong", kind=type(error).__name__, error=error)
            self.shown = {**self.shown, **asked, "refused": wrong}
            raise
        self.shown = {**state, **asked}

    def _working(self, words: str, share: float | None) -> None:
        # Numbered, for a page is not told what is as it was.
        self.progress = {"words": words, "share": share, "number": self.progress.get("number", 0) + 1}

    def renew(self, state: dict) -> None:
        """Show `state`, which no page asked for."""
        self.shown = {**state, "asker": "", "number": 0}

    def __repr__(self):
        # Beside the picture, never a memory address.
        return SHARED("page_later")


_OF_THE_DESK = {one.name for kind in (Style, Finish) for one in quantities(kind)}


class Table(Answering):
    """The page's view of one `Play`; `renewed()` gives what the desk now has, as the arguments of its `take`."""

    _esm = bundle("table")

    parts = traitlets.Dict().tag(sync=True)

    def __init__(self, play: Play, renewed):
        self.play, self.renewed = play, renewed
        super().__init__(parts=self._parts(), shown=self._state())

    def answer(self, message, buffers):
        self.play.handle(message)
        return self._state()

    def refresh(self) -> None:
        """Draw again, for something on the desk has changed: wearer, unit or style."""
        self.play.take(*self.renewed())
        self.parts = self._parts()
        self.renew(self._state())

    def _parts(self):
        """The layout, and which values are the table's own: those are kept nowhere else, so the page brings them back."""
        return self.play.layout() | {"own": [name for name in self.play.quantities if name not in _OF_THE_DESK]}

    def _state(self):
        return self.play.shown()


class GuessWidget(Answering):
    """The page's view of one `Guess`; `kept()`, where it is given, is what the desk now keeps for it."""

    _esm = bundle("guess")

    def __init__(self, guess: Guess, kept=None):
        self.guess, self.kept = guess, kept
        super().__init__(shown=guess.shown())

    def answer(self, message, buffers):
        self.guess.handle(message)
        return self.guess.shown()

    def refresh(self) -> None:
        """Ask again, for something on the desk has changed: wearer, unit or style."""
        if self.kept:
            self.guess.take(self.kept())
        else:
            self.guess.refresh()
        self.renew(self.guess.shown())


class FormWidget(Answering):
    """The page's view of one `Form`; a `compact` one asks only for whom and in which unit."""

    _esm = bundle("form")

    parts = traitlets.Dict().tag(sync=True)

    def __init__(self, form: Form, compact: bool = False):
        self.form = form
        parts = {"groups": _groups(), "how": SHARED("form_how"), "file": SHARED("form_file"), "compact": compact}
        super().__init__(parts=parts, shown=form.shown())

    def answer(self, message, buffers):
        self.form.handle(message, buffers)
        return self.form.shown()

    def refresh(self) -> None:
        self.renew(self.form.shown())


def _groups() -> list:
    """The fields in the order in which a tape goes: round the body, across it, along it."""
    titles = {"girth": SHARED("form_round"), "width": SHARED("form_across"), "": SHARED("form_along")}
    groups: dict[str, list] = {title: [] for title in titles.values()}
    for one in quantities(Measurements):
        kind = one.name.rpartition("_")[2]
        told = {"name": one.name, "label": one.label.capitalize(), "meaning": one.meaning}
        if one.optional:
            told["meaning"] = SHARED("form_optional", meaning=one.meaning)
        groups[titles.get(kind, titles[""])].append(told)
    return [{"title": title, "fields": fields} for title, fields in groups.items()]
