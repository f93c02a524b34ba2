"""What the lessons share: a desk, one widget a cell however often it runs, and the stored state."""

from corsetkit.drafting import draft
from corsetkit.errors import CorsetkitError
from corsetkit.style import Style
from corsetkit.teaching.desk import Desk, work_folder
from corsetkit.teaching.play import Play
from corsetkit.teaching.stored import stored_mode

_live: dict[str, object] = {}
_desks: dict[object, Desk] = {}


def desk() -> Desk:
    """The kernel's one desk, as the file has it now."""
    folder = work_folder()
    the_desk = _desks.get(folder) or _desks.setdefault(folder, Desk(folder))
    the_desk.look_again()
    return the_desk


class Drafts:
    """The patterns of the desk's wearer, one after another: each takes over the steps that are as before."""

    def __init__(self, the_desk: Desk):
        self.desk = the_desk
        self._last = None

    def of(self, style: dict):
        """The wearer's name and her pattern; CorsetkitError where either cannot be had.

        `style` holds what differs from Style().
        """
        try:
            name, body = self.desk.body()
        except CorsetkitError as error:
            raise CorsetkitError(f"the wearer's form is not finished; {error}") from None
        self._last = draft(body, Style(**style), earlier=self._last)
        return name, self._last


class Lesson:
    """A lesson: each public method is one cell, and stands alone."""

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
        the_desk = desk()
        if key in _live:
            # One widget a cell, however often it runs: nothing piles up, and undo is still there.
            _live[key].refresh()
        else:
            _live[key] = alive(the_desk, key)
            the_desk.watch(key, _live[key].refresh)
        return _live[key]

    def table(self, the_desk: Desk, key: str, panels, quantities, show):
        """A drafting table over the desk's style; `show(style)` gives the Picture for what differs from Style()."""
        from corsetkit.teaching.table import Table

        return Table(
            Play(
                panels, quantities, the_desk.record.style, the_desk.record.unit, show,
                lambda style: the_desk.change(key, style=style),
            ),
            unit=lambda: the_desk.record.unit, values=lambda: the_desk.record.style,
        )  # fmt: skip
