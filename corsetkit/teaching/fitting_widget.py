"""The page's view of the fitting."""

from corsetkit.teaching.parts.fitting_table import FittingTable
from corsetkit.teaching.widgets import Answering, page


class FittingWidget(Answering):
    """The page's view of one `FittingTable`."""

    _esm = page("common.js", "controls.js", "fitting.js")
    _css = page("look.css", "sewing.css")

    def __init__(self, table: FittingTable):
        self.table = table
        super().__init__(shown=table.shown())

    def answer(self, message, buffers):
        self.table.handle(message)
        return self.table.shown()

    def refresh(self) -> None:
        self.table.refresh()
        self.renew(self.table.shown())
