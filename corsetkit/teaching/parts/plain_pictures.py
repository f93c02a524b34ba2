"""The plain lay as a table's picture, and as the guess that the lesson on sewing asks for."""

from corsetkit.finish.finished import SHELL
from corsetkit.lay.cloth import SINGLE
from corsetkit.lay.cloth_length import quantities_said, say_width
from corsetkit.drawing.svg import svg_text
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.parts.plain_lay import USUAL, PlainLays
from corsetkit.units import say_length

WIDE, NARROW = 150.0, 115.0
"""The guess goes from the one width to the other, cm."""


class PlainPictures:
    """Pictures of the plain lays of the desk's wearer; what a finished pattern's cloth looks like is laid out once."""

    def __init__(self, drafts):
        self.drafts = drafts
        self._lays = {}
        self._finished = None

    def of(self, values: dict) -> Picture:
        """The picture for values of style and finish, and `width`, `laid` and `cloth` among them."""
        unit = self.drafts.desk.record.unit
        _, lays = self.lays(values, values.get("cloth", SHELL))
        plan = lays.plan(values.get("width", USUAL[unit]), values.get("laid", SINGLE))
        sheet, key = lays.sheet(plan)
        first, *more = quantities_said(plan, unit)
        # What belongs to the buying is told where the closer lay is.
        said = [one for one in (first, *more) if not one.startswith(("They lie plainly", "Laid plainly", "Press the cloth"))]
        return Picture(svg_text(sheet), sheet.description, (*said, *key))

    def lays(self, values, cloth):
        name, finished = self.drafts.finished(values)
        if finished is not self._finished:
            self._finished, self._lays = finished, {}
        asked = cloth, self.drafts.desk.record.unit, name
        if asked not in self._lays:
            self._lays[asked] = PlainLays(finished, cloth, asked[1], name)
        return name, self._lays[asked]

    def asked(self, unit: str) -> Asked:
        """How long the plain lay of the shell is on a narrower cloth."""
        name, lays = self.lays(self.drafts.now(), SHELL)
        wide, narrow = (lays.plan(width, SINGLE) for width in (WIDE, NARROW))
        say = lambda cm: say_length(cm, unit)  # noqa: E731
        shared = wide.length * WIDE / NARROW
        wider, narrower = (say_width(one.cloth, unit) for one in (wide, narrow))
        slips = [(shared, f"that shares out the same cloth: {wider} over {narrower} times the length. But a piece fits into "
                  "a row or it does not, so the length goes by whole rows"),
                 (narrow.area / narrow.cloth.room, "that fills the cloth without a gap; cut pieces never fit "
                  "into one another so closely"),
                 (wide.length, "that leaves the length as it is; but what no longer fits into a row has to lie above it")]

        def move(share):
            sheet, _ = lays.sheet(lays.plan(WIDE + (NARROW - WIDE) * share, SINGLE))
            return Picture(svg_text(sheet), sheet.description)

        return Asked(
            f"{name}'s shell is laid plainly, row by row, on cloth {wider} wide: it takes up {say(wide.length)} of its "
            f"length. The cloth you like is only {narrower} wide. How much of its length do the same pieces take up, laid in "
            "rows again?",
            "Of the narrower cloth they take up", "cm", wide.length, narrow.length, 4.0,
            tuple(one for one in slips if abs(one[0] - narrow.length) > 4.0),
            "A row holds whole pieces and is as high as the first, its longest. The edge of the cloth pushes the last piece "
            "of a row out, and then the length grows by a jump, or by nothing, where another row had room.",
            move,
        )  # fmt: skip
