"""The wearer's drafts with the corrections of her fittings made, and the file in which these are kept."""

from corsetkit.drafting import draft
from corsetkit.errors import CorsetkitError
from corsetkit.fitting import corrections_file as kept
from corsetkit.pattern.pattern import Pattern
from corsetkit.style import Style
from corsetkit.teaching.desk import CORRECTIONS
from corsetkit.teaching.shared.finished_drafts import Finishing, style_in


class Corrected(Finishing):
    """As `Finishing`, drawn with the corrections kept for the wearer."""

    def __init__(self, the_desk):
        super().__init__(the_desk)
        self._asked = self._drafted = None

    def corrections(self) -> tuple:
        """The corrections kept for the desk's wearer; CorsetkitError where there is no wearer."""
        return read_kept(self.desk)[0].of(self._body()[0])

    def pattern(self, values: dict) -> tuple[str, Pattern]:
        """The wearer's name and her pattern, corrected, for values of style and finish as `now` gives them."""
        return self.corrected(values, self.corrections())

    def corrected(self, values: dict, corrections) -> tuple[str, Pattern]:
        """The same with other corrections than the kept ones."""
        name, body = self._body()
        asked = body, style_in(values), tuple(corrections)
        if asked != self._asked:
            self._asked = None
            self._drafted = draft(body, Style(**asked[1]), asked[2], earlier=self._drafted)
            self._asked = asked
        return name, self._drafted


def read_kept(desk):
    """All wearers' kept corrections, and a sentence where the file cannot be read; then there are none."""
    if not desk.folder:
        return desk.corrections, ""
    try:
        found = kept.read_file(desk.folder / CORRECTIONS)
    except CorsetkitError as error:
        return kept.Kept(), str(error)
    return found, "; ".join(found.left_out)


def keep(desk, changed, by: str) -> str:
    """Keep what `changed(kept)` makes of the kept corrections, and tell all cells but `by`.

    Where the file that is there cannot be read, or not all of it, it is put beside, and the sentence that says so is given
    back. CorsetkitError where a correction is not allowed, and where the disk is in the way.
    """
    said = ""
    if desk.folder:
        said = desk.rewrite(
            CORRECTIONS,
            kept.read_file,
            lambda path, found: kept.write_file(path, changed(found)),
            lambda found: not found.left_out,
        )
    else:
        desk.corrections = changed(desk.corrections)
    desk.change(by)
    return said
