"""What the cells of all lessons share: a desk, one widget a cell however often it runs, and the stored state.

The page tells when it comes into sight and when it goes out of it. While one is in sight the desk is looked at each
second, which costs a look at the files' times; no page has to ask, and a page behind the others costs nothing.
"""

import asyncio
from typing import Any

from corsetkit.drafting import draft
from corsetkit.drawing.svg import svg_image
from corsetkit.errors import CorsetkitError
from corsetkit.pattern.pattern import Pattern
from corsetkit.steps.run import SomeSteps, run_steps
from corsetkit.style import Style
from corsetkit.teaching.desk import Desk, work_folder
from corsetkit.teaching.picture import stored_mode
from corsetkit.teaching.play import Play

EVERY = 1.0
"""Seconds."""


class InSight:
    """Which pages of one desk are in sight; `look()` is called as one comes into sight, and each second while one is."""

    def __init__(self, look):
        self._look = look
        self._pages = set()
        self._next = None

    def told(self, page: str, seen: bool) -> None:
        """Take the word of a page."""
        if not seen:
            self._pages.discard(page)
            return
        self._pages.add(page)
        self._look()
        if self._next is None:
            self._wait()

    def _wait(self):
        try:
            self._next = asyncio.get_running_loop().call_later(EVERY, self._again)
        except RuntimeError:
            self._next = None  # Outside a kernel nothing is waiting for.

    def _again(self):
        self._next = None
        if self._pages:
            # First the next look, so that a mistake in this one is not the last.
            self._wait()
            self._look()


_live: dict[str, Any] = {}
_desks: dict[object, tuple[Desk, InSight]] = {}


def desk() -> Desk:
    """The kernel's one desk, as the file has it now."""
    return _desk_in_sight()[0]


def _desk_in_sight():
    folder = work_folder()
    if folder not in _desks:
        the_desk = Desk(folder)
        _desks[folder] = the_desk, InSight(the_desk.look_again)
    _desks[folder][0].look_again()
    return _desks[folder]


class Drafts:
    """The drafts of the desk's wearer, one after another: each takes over the steps that are as before."""

    def __init__(self, the_desk: Desk):
        self.desk = the_desk
        self._pattern: Pattern | None = None
        self._steps: SomeSteps | None = None
        self._start: SomeSteps | None = None

    def of(self, style: dict):
        """The wearer's name and her whole pattern; CorsetkitError where either cannot be had.

        `style` holds what differs from Style().
        """
        name, body = self._body()
        self._pattern = draft(body, Style(**style), earlier=self._pattern)
        return name, self._pattern

    def steps(self, style: dict, until: str, measurements=None):
        """The wearer's name and her `Steps` up to the step `until`; CorsetkitError where either cannot be had.

        `measurements` takes the place of her own, where a lesson asks what would be.
        """
        name, body = self._body()
        self._steps = run_steps(measurements or body, Style(**style), self._steps, until)
        return name, self._steps

    def start(self, style: dict, until: str):
        """Her `Steps` in a style to compare with; kept apart, for it changes seldom."""
        _, body = self._body()
        self._start = run_steps(body, Style(**style), self._start, until)
        return self._start

    def _body(self):
        try:
            return self.desk.body()
        except CorsetkitError as error:
            raise CorsetkitError(f"the wearer's form is not finished; {error}") from None


class Lesson:
    """A lesson: each public method that is no tool is one cell, and stands alone."""

    tools: tuple[str, ...] = ("show", "table", "drawn")
    name = ""

    def show(self, cell: str, still, alive):
        """The cell's widget, or its stored state where that is asked for.

        `still(desk)` gives the Stored for an untouched desk, `alive(desk, key)` a widget whose `refresh`
        is called after each change on the desk that it did not make itself.
        """
        if stored_mode():
            # What is stored in git depends on nothing that lies on this disk.
            return still(Desk())
        key = f"{self.name}.{cell}"
        the_desk, sight = _desk_in_sight()
        if key in _live:
            # One widget a cell, however often it runs: nothing piles up, and undo is still there.
            _live[key].refresh()
        else:
            _live[key] = alive(the_desk, key)
            _live[key].stands_on(the_desk, sight)
            the_desk.watch(key, _live[key].refresh)
        return _live[key]

    def drawn(self, cell: str, panels, make, picture, quantities=(), own=None, declared=(), finish=()):
        """A cell with a drawing and its controls, still and alive from one description.

        `make(desk)` makes what draws, once a widget; `picture(made, values)` gives the Picture. `quantities` and `finish`
        are what the table offers of the desk's style and finishing. Controls of the table's own are `declared`, or for
        this wearer `own(desk, made)`; where she cannot be drafted the drawing's place says why, and they are as declared.
        """

        def alive(the_desk, key):
            made = make(the_desk)

            def controls():
                try:
                    return own(the_desk, made) if own else declared
                except CorsetkitError:
                    return declared

            return self.table(the_desk, key, panels, quantities, lambda values: picture(made, values), controls, finish)

        return self.show(cell, lambda the_desk: picture(make(the_desk), the_desk.record.style).stored(svg_image), alive)

    def table(self, the_desk: Desk, key: str, panels, quantities, show, own=lambda: (), finish=()):
        """A drafting table over the desk's style, and over controls of the table's own.

        `quantities` are the style values it offers and `finish` those of the finishing; those of them that change are
        kept on the desk. `own()` gives the declared quantities that belong to this table alone, such as how far a dart
        is closed; they are asked for anew when the desk changes. `show(values)` gives the Picture for what differs from
        the declared defaults, other style values of the desk among it, and where `finish` is offered those of the
        finishing too.
        """
        from corsetkit.teaching.widgets import Table

        groups = {"style": {one.name for one in quantities}}
        if finish:
            groups["finish"] = {one.name for one in finish}
        lasting, offered = (*quantities, *finish), set().union(*groups.values())

        def held():
            return {name: value for group in groups for name, value in getattr(the_desk.record, group).items()}

        def others(group):
            return {name: value for name, value in getattr(the_desk.record, group).items() if name not in groups[group]}

        def keep(values):
            now = {
                group: others(group) | {name: value for name, value in values.items() if name in names}
                for group, names in groups.items()
            }
            changes = {group: kept for group, kept in now.items() if kept != getattr(the_desk.record, group)}
            if changes:
                the_desk.change(key, **changes)

        play = Play(
            panels, (*own(), *lasting), held(), the_desk.record.unit,
            lambda values: show({name: value for name, value in held().items() if name not in offered} | values), keep,
        )  # fmt: skip

        def refreshed():
            now = tuple(own())
            # A control whose range was another wearer's starts anew.
            kept = {name: value for name, value in play.asked.items() if name not in offered and play.quantities[name] in now}
            return (*now, *lasting), kept | held(), the_desk.record.unit

        return Table(play, refreshed)
