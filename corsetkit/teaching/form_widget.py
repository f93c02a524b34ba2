"""The page's view of the wearer's form."""

import traitlets

from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.teaching.form import Form
from corsetkit.teaching.widgets import Answering, page

HOW_TO_WRITE = (
    "Write a length as your tape says it: 14 1/2, 14½ or 14.5. With cm or in behind it, it counts in that "
    "unit whatever is chosen above."
)
FILE_HELP = (
    "A table saved as CSV: a row for each wearer; columns wearer, unit (cm or in) and the measurements "
    "under the names used here. The file is read and left as it is."
)


class FormWidget(Answering):
    """The page's view of one `Form`; a `compact` one asks only for whom and in which unit."""

    _esm = page("common.js", "sight.js", "form.js")

    parts = traitlets.Dict().tag(sync=True)

    def __init__(self, form: Form, compact: bool = False):
        self.form = form
        parts = {"groups": _groups(), "how": HOW_TO_WRITE, "file": FILE_HELP, "compact": compact}
        super().__init__(parts=parts, shown=form.shown())

    def answer(self, message, buffers):
        self.form.handle(message, buffers)
        return self.form.shown()

    def refresh(self) -> None:
        self.renew(self.form.shown())


def _groups() -> list:
    """The fields in the order in which a tape goes: round the body, across it, along it."""
    titles = {"girth": "Round the body", "width": "Across the body", "": "Along the body"}
    groups: dict[str, list] = {title: [] for title in titles.values()}
    for one in quantities(Measurements):
        kind = one.name.rpartition("_")[2]
        told = {"name": one.name, "label": one.label.capitalize(), "meaning": one.meaning}
        if one.optional:
            told["meaning"] += " (may be left out)"
        groups[titles.get(kind, titles[""])].append(told)
    return [{"title": title, "fields": fields} for title, fields in groups.items()]
