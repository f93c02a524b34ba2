"""Lesson 09, sewing: the pieces laid on cloth, the order of sewing, and the fitting that leads back to the line that moves."""

from corsetkit.drawing.svg import svg_image
from corsetkit.teaching.course_lesson import CourseLesson
from corsetkit.teaching.lessons.sewing import on_paper as sewing_on_paper
from corsetkit.teaching.lessons.sewing.board import CHOICES as TEXTS
from corsetkit.teaching.lessons.sewing.board import order_board, write_order
from corsetkit.teaching.lessons.sewing.closer_lay import CloserLay
from corsetkit.teaching.lessons.sewing.fitting_table import FittingTable
from corsetkit.teaching.lessons.sewing.plain_lay import PlainPictures, controls
from corsetkit.teaching.lessons.sewing.words import sewing_words
from corsetkit.teaching.picture import Stored, sentences_html
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.corrected import Corrected
from corsetkit.teaching.shared.files_written import CHOICES as FILES
from corsetkit.teaching.shared.files_written import SAID as FILES_SAID
from corsetkit.teaching.shared.files_written import write_files
from corsetkit.teaching.widgets import Answering, bundle, look
from corsetkit.words import words_of

WORDS = words_of("09_sewing")


class FittingWidget(Answering):
    """The page's view of one `FittingTable`."""

    _esm = bundle("fitting")
    _css = look("sewing")

    def __init__(self, table: FittingTable):
        self.table = table
        super().__init__(shown=table.shown())

    def answer(self, message, buffers):
        self.table.handle(message)
        return self.table.shown()

    def refresh(self) -> None:
        self.table.refresh()
        self.renew(self.table.shown())


class SewingLesson(CourseLesson):
    name = "09_sewing"
    drafts_of = Corrected
    panels = (
        Panel(WORDS("ask_drawing"), ("width", "laid", "cloth")),
    )  # fmt: skip

    # The cells of its own.

    def lay(self):
        """The closer lay, searched for."""
        return self.show("lay", self._lay_still, self._lay_alive)

    def order(self):
        """The order of sewing."""
        return self.show("order", lambda desk: order_board(self.drafts_of(desk)), self._order_alive)

    def fitting(self):
        """A fault seen on the toile, and the line that moves."""
        return self.show("fitting", self._fitting_still, self._fitting_alive)

    def print(self):
        """Buttons that write the corrected pattern."""
        return self.show("print", _print_still, _print_alive)

    # What the form of the lessons asks for.

    def offered(self):
        """None: the style and the allowances belong to the lessons before."""
        return ()

    def drawing(self):
        """The plain lay, row by row."""
        return self.drawn(
            "drawing",
            self.panels,
            lambda desk: PlainPictures(self.drafts_of(desk)),
            lambda pictures, values: pictures.of(pictures.drafts.now() | values),
            own=lambda desk, _: controls(desk.record.unit),
        )

    def _words_on(self, drafts):
        return sewing_words(drafts.finished({})[1])

    def _asked_of(self, desk, drafts):
        return PlainPictures(drafts).asked(desk.record.unit)

    def _moves(self, desk, drafts) -> Stored:
        return sewing_on_paper.by_hand(drafts)

    def _checks(self, desk, drafts) -> Stored:
        return sewing_on_paper.by_tape(drafts)

    # How they are made.

    def _lay_still(self, desk):
        shown = CloserLay(self.drafts_of(desk)).shown()
        told = (*shown["said"], *map(_row_told, shown["rows"]), WORDS("search_later"))
        return Stored(svg_image(shown["svg"]) + sentences_html(told), (shown["description"], *told))

    def _lay_alive(self, desk, key):
        from corsetkit.teaching.lessons.sewing.closer_lay import LayWidget

        return LayWidget(self.drafts_of(desk))

    def _order_alive(self, desk, key):
        from corsetkit.teaching.board import Board

        drafts = self.drafts_of(desk)
        return Board(
            WORDS("order"),
            lambda: order_board(drafts),
            TEXTS,
            WORDS("order_button"),
            lambda choice: write_order(drafts, choice),
        )

    def _fitting_still(self, desk):
        return FittingTable(self.drafts_of(desk), "fitting").still().stored(svg_image)

    def _fitting_alive(self, desk, key):

        return FittingWidget(FittingTable(self.drafts_of(desk), key))


def _row_told(row):
    cloth, width, lies, length, bought = row[:5]
    return WORDS("row_told", cloth=cloth, width=width, lies=lies, length=length, bought=bought)


def _print_still(desk) -> Stored:
    return Stored(f"<p>{FILES_SAID}</p>", (FILES_SAID,))


def _print_alive(desk, key):
    from corsetkit.teaching.board import Board

    drafts = Corrected(desk)
    words = WORDS("files_told")
    return Board(
        WORDS("files"),
        lambda: Stored(f"<p>{words}</p>", ()),
        FILES,
        WORDS("files_button"),
        lambda choice: write_files(drafts, choice),
    )


LESSON = SewingLesson()
