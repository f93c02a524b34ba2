"""Lesson 08, finish: from sewing lines to pieces that can be cut, what has to be bought, and the print."""

from html import escape
from math import degrees, radians

from corsetkit.drawing.finished_view import closed
from corsetkit.drawing.step_values import Drawn, Spot
from corsetkit.drawing.svg import svg_text
from corsetkit.finish.bill import bill
from corsetkit.finish.cutting_line import strokes
from corsetkit.finish.lacing import lacing_stretches
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.pattern.edge import Kind
from corsetkit.quantity import quantities
from corsetkit.teaching.course_lesson import CourseLesson
from corsetkit.teaching.guess import Asked
from corsetkit.teaching.lessons.finish import on_paper as finish_on_paper
from corsetkit.teaching.lessons.finish.bill_board import bill_board
from corsetkit.teaching.lessons.finish.corners import Corners, Pressed
from corsetkit.teaching.lessons.finish.pictures import bones_picture, hollow_sheet, lit_among, notch_picture, parallel
from corsetkit.teaching.lessons.finish.printed_square import printed, square_picture
from corsetkit.teaching.lessons.finish.ready import looked_at, most_telling, ready_picture
from corsetkit.teaching.lessons.finish.walked_paper import paper_of, walk_table, walked_picture
from corsetkit.teaching.picture import Picture, Stored
from corsetkit.teaching.play import Panel
from corsetkit.teaching.shared.files_written import CHOICES, SAID, write_files
from corsetkit.teaching.shared.finished_drafts import Finishing, offered
from corsetkit.teaching.shared.vignette import card
from corsetkit.units import CM_PER_INCH, Say, say_number
from corsetkit.words import words_of

WORDS = words_of("08_finish")


def finish_words(finished):
    """The `Word`s, drawn from a `Finished` pattern."""
    telling = most_telling(finished.pattern.pieces)
    one = next(each for each in finished.pieces if each.piece is telling)
    seam = next(edge for edge in telling.edges if edge.kind is Kind.PANEL_SEAM)
    sewing = [Drawn(edge.path, "before") for edge in telling.edges]
    cutting = Drawn(closed(one.cutting), "before")
    corner = paths.path_start(seam.path)
    near = (corner.real - 6.5, corner.imag - 3.5, corner.real + 3.5, corner.imag + 4.5)
    band = _band(one, seam)

    return (
        card(WORDS, "sewing_line", [cutting, *(Drawn(edge.path, "new") for edge in telling.edges)], near),
        card(WORDS, "cutting_line", [*sewing, Drawn(cutting.path, "new")], near),
        card(WORDS, "allowance", [*sewing, cutting, Drawn(closed(band), "waste")], near),
        *_bone_and_lacing(finished, seam),
    )


def _band(finished, edge):
    """The allowance beside one edge, as the points round it."""
    number = finished.piece.place_of(edge)
    outside = [
        p
        for each in strokes(finished.piece, finished.allowances)
        if each.edge is finished.piece.edges[number]
        for p in each.outside
    ]
    return (*paths.flattened(edge.path, 0.05), *reversed(outside))


def _bone_and_lacing(finished, seam):
    pattern, choices = finished.pattern, finished.choices
    stretch = lacing_stretches(pattern.pieces)[0]
    panel, edge = stretch.parts[-1]
    lines = [Drawn(each.path, "before") for each in panel.edges]
    foot = paths.path_start(edge.path)
    low = (foot.real - 6.5, foot.imag - 2.0, foot.real + 3.5, foot.imag + 6.0)
    middle = (foot.real - 6.5, -4.0, foot.real + 3.5, 4.0)
    places = bill(finished).eyelets[0]
    holes = [
        paths.point_along(stretch.path, place) - 1j * paths.tangent_along(stretch.path, place) * places.inset
        for place in places.places
    ]
    seen = [Spot(at, "") for at in holes if -3.6 < at.imag < 3.6]
    half, tape = (choices.bone_width + choices.channel_ease) / 2, choices.waist_tape_width / 2
    at = paths.point_along(seam.path, seam.length / 2)
    beside = [Drawn(_parallel(seam.path, off), "new") for off in (-half, half)]
    strip = tuple(Line(a, b) for a, b in ((foot - choices.facing_width, foot - choices.facing_width + 20j),))
    return (
        card(WORDS, "facing", [*lines, *(Drawn((one,), "new") for one in strip)], low),
        card(
            WORDS,
            "bone_channel",
            [Drawn(seam.path, "before"), *beside],
            (at.real - 4.0, at.imag - 3.2, at.real + 4.0, at.imag + 3.2),
        ),
        card(WORDS, "eyelet", lines, middle, seen),
        card(
            WORDS,
            "waist_tape",
            [*lines, *(Drawn((Line(complex(foot.real - 30.0, y), complex(foot.real, y)),), "new") for y in (-tape, tape))],
            middle,
        ),
    )


def _parallel(path, off):
    """A line of short strokes `off` cm to the right of the run."""
    length = paths.path_length(path)
    points = [
        paths.point_along(path, length * i / 60) - 1j * paths.tangent_along(path, length * i / 60) * off for i in range(61)
    ]
    return tuple(Line(a, b) for a, b in zip(points, points[1:]))


ASKED = CM_PER_INCH
"""How wide the allowance of the guess is, cm."""


class FinishLesson(CourseLesson):
    name = "08_finish"
    drafts_of = Finishing
    panels = (
        Panel(WORDS("ask_allowances"), ("panel_allowance", "cup_allowance", "hem_allowance")),
        Panel(WORDS("ask_piece"), ("piece",)),
    )

    # The cells of its own.

    def corners(self):
        """A seam's end, opened out and pressed."""
        return self._table_cell(
            "corners",
            (
                Panel(WORDS("ask_pressed"), ("opened", "first_allowance", "second_allowance")),
                Panel(WORDS("ask_plain_corner"), ("seam_end", "plain_corner")),
            ),
            lambda drafts: Corners(drafts).picture,
            lambda drafts: quantities(Pressed),
        )

    def walked(self):
        """All seams, walked."""
        return self._to_read("walked", WORDS("walked_title"), lambda desk, drafts: walk_table(drafts))

    def walk(self):
        """One seam that came out longer on paper, and trued."""
        return self._table_cell(
            "walk",
            (Panel(WORDS("ask_walk"), ("longer_by", "redrawn", "seam")),),
            lambda drafts: lambda values: walked_picture(drafts, values),
            paper_of,
        )

    def notches(self):
        """Which notches meet."""
        return self._table_cell(
            "notches",
            (Panel(WORDS("ask_notches"), ("notch",)),),
            lambda drafts: lambda values: notch_picture(drafts, values),
            lit_among,
        )

    def bones(self):
        """Bones and eyelets where they lie."""
        names = ("widest_unsupported", "bone_width", "eyelet_spacing")
        return self._table_cell(
            "bones",
            (Panel(WORDS("ask_bones"), names),),
            lambda drafts: lambda values: bones_picture(drafts, values),
            lambda drafts: (),
            *names,
            "bone_shorter",
            "channel_ease",
            "waist_spacing",
            "eyelet_inset",
        )

    def bill(self):
        """The piece list and what has to be bought."""
        return self._to_read("bill", WORDS("bill_title"), lambda desk, drafts: bill_board(drafts))

    def print(self):
        """Buttons that write the print and other files."""
        return self.show("print", _print_still, _print_alive)

    def square(self):
        """The test square, measured."""
        return self._table_cell(
            "square", (Panel(WORDS("ask_square"), ("square",)),), lambda drafts: square_picture, lambda drafts: printed()
        )

    # What the form of the lessons asks for.

    def picture(self, drafts, values):
        return ready_picture(drafts, values)

    def offered(self):
        """The allowances; the style belongs to the lessons before."""
        return tuple(one for one in offered() if one.group == "allowances")

    def drawing(self):
        """One piece ready to cut, or the whole pattern."""
        return self.drawn(
            "drawing", self.panels, Finishing, self.picture, own=lambda desk, drafts: looked_at(drafts), finish=self.offered()
        )

    def _words_on(self, drafts):
        return finish_words(drafts.finished({})[1])

    def _moves(self, desk, drafts) -> Stored:
        return finish_on_paper.by_hand(drafts)

    def _checks(self, desk, drafts) -> Stored:
        return finish_on_paper.by_tape(drafts)

    def _asked_of(self, desk, drafts):
        name, pattern = drafts.pattern(drafts.now())
        unit = desk.record.unit
        piece, edge = _most_hollow(pattern)
        say = Say(unit)
        right = paths.path_length(parallel(edge, ASKED)[0])
        turned = abs(paths.turning(edge.path))

        def move(share):
            title = WORDS("guess_title", edge=edge.name, piece=piece.name, name=name)
            sheet = hollow_sheet(piece, edge, ASKED * share, ASKED, unit, title, WORDS("guess_described", title=title))
            return Picture(svg_text(sheet), sheet.description)

        return Asked(
            WORDS("guess", edge=edge.name, piece=piece.name, length=say(edge.length), allowance=say(ASKED)),
            WORDS("guess_label"),
            "cm",
            edge.length,
            right,
            0.2,
            ((edge.length + 2 * ASKED, WORDS("slip_both_ends")), (2 * edge.length - right, WORDS("slip_bulging"))),
            WORDS(
                "guess_why", each=say_number(degrees(1), 1), turned=say_number(turned, 1), missing=say(ASKED * radians(turned))
            ),
            move,
        )

    # How they are made.

    def _table_cell(self, cell, panels, shown, own, *names):
        """A cell with controls: `shown(drafts)` gives what makes the Picture of values, `own(drafts)` the table's own
        controls, `names` are choices of the finishing that it offers."""

        def make(desk):
            drafts = Finishing(desk)
            return drafts, shown(drafts)

        return self.drawn(
            cell,
            panels,
            make,
            lambda made, values: made[1](made[0].desk.record.finish | values),
            own=lambda desk, made: own(made[0]),
            finish=offered(*names) if names else (),
        )


def _most_hollow(pattern):
    """The sewn edge of a panel that turns most away from its piece, and the piece."""
    found = [
        (paths.turning(edge.path), piece, edge)
        for piece in pattern.pieces
        for edge in piece.edges
        if edge.kind is Kind.PANEL_SEAM
    ]
    return min(found, key=lambda one: one[0])[1:]


def _print_still(desk) -> Stored:
    return Stored(f"<p>{SAID}</p>", (SAID,))


def _print_alive(desk, key):
    from corsetkit.teaching.board import Board

    return Board(
        WORDS("files"),
        lambda: Stored(f"<p>{escape(WORDS('files_told'))}</p>", ()),
        CHOICES,
        WORDS("files_button"),
        lambda choice: write_files(Finishing(desk), choice),
    )


LESSON = FinishLesson()
