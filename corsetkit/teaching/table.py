"""The drafting table: a drawing, beside it the panel of controls, below it what is to be said."""

import traitlets

from corsetkit.finish.choices import Finish
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.teaching.play import Play
from corsetkit.teaching.widgets import Answering, page

_OF_THE_DESK = {one.name for kind in (Style, Finish) for one in quantities(kind)}


class Table(Answering):
    """The page's view of one `Play`; `renewed()` gives what the desk now has, as the arguments of its `take`."""

    _esm = page("common.js", "edges.js", "edge_table.js", "controls.js", "table.js")

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
