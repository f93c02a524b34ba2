"""The guess without a page: what locks, how the line moves, what is told of the gap, what is kept."""

import importlib
import json
import math
import pkgutil
from dataclasses import replace

import pytest

from corsetkit.errors import CorsetkitError
from corsetkit.pattern.pattern import Correction
from corsetkit.teaching import cells as course
from corsetkit.teaching import lessons
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.form import Form
from corsetkit.teaching.guess import STEPS, Asked, Guess
from corsetkit.teaching.guess_said import told
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.record import Record, read, written
from corsetkit.teaching.shared.corrected import keep
from corsetkit.teaching.widgets import GuessWidget
from corsetkit.units import CM_PER_INCH

IN = CM_PER_INCH
WHY = "The line turns about the bust point."
SLIP = "that is the line and its dart together"


def asked(start=8 * IN, right=10 * IN, unit="cm", slips=((13 * IN, SLIP),), near=0.3, move=None):
    drawn = move or (lambda share: Picture(f"<svg>{share:.4f}</svg>", "a line"))
    return Asked("Now it is raised. How long is it then?", "The line is then", unit, start, right, near, slips, WHY, drawn)


class Place:
    """A desk for one guess: the question may be another, the unit may change, and what is kept is remembered."""

    def __init__(self, question=None, unit="in", kept=None):
        self.shares, self.kept, self.unit = [], [], unit
        self.question = question or asked(move=self.move)
        self.guess = Guess(self.ask, lambda: self.unit, kept, self.kept.append)

    def ask(self):
        if isinstance(self.question, Exception):
            raise self.question
        return self.question

    def move(self, share):
        self.shares.append(share)
        return Picture(f"<svg>{share:.4f}</svg>", f"moved {share:.2f}")

    def do(self, kind, **more):
        self.guess.handle({"kind": kind, **more})
        return self.guess.shown()

    def through(self, text):
        """Lock and let the line arrive."""
        self.do("lock", text=text)
        return self.do("show", at=STEPS)


class TestLock:
    def test_before_it_is_locked_nothing_moves_and_nothing_is_told(self):
        place = Place()
        shown = place.do("show", at=STEPS)
        assert (shown["at"], shown["told"], shown["locked"]) == (0, [], False)
        assert place.do("again") == shown and set(place.shares) == {0.0}

    def test_what_was_typed_stays_and_cannot_be_changed(self):
        place = Place()
        shown = place.do("lock", text=" 9  1/2 ")
        assert shown["locked"] and shown["text"] == "9 1/2" and shown["words"] == "9 1/2 in"
        assert place.do("lock", text="10") == shown
        assert place.kept == [{"text": "9 1/2", "value": 9.5 * IN, "right": 10 * IN, "start": 8 * IN}]

    @pytest.mark.parametrize("text", ["", "  ", "long", "-3", "1/0", "nan", "9 1/2 3", "999999", "9" * 400, None, 7j, ["9"]])
    def test_what_cannot_be_read_is_one_sentence_and_locks_nothing(self, text):
        place = Place()
        shown = place.do("lock", text=text)
        assert not shown["locked"] and place.kept == []
        assert shown["unread"].startswith("Your guess is ") and shown["unread"].endswith(".")
        assert place.do("lock", text=text) == shown
        assert place.do("lock", text="9 in")["unread"] == ""

    @pytest.mark.parametrize("text", ["", "steep", "-3", "12 in", "12 cm", "1e3", "inf", "9999", '25"', "30°15"])
    def test_degrees_are_a_number(self, text):
        shown = Place(asked(20, 25, "degrees", ())).do("lock", text=text)
        assert not shown["locked"] and shown["unread"].startswith("Your guess is ")

    @pytest.mark.parametrize("text", ["25", "25,5", "25 1/2", "25½", "25.5 degrees", "25.5°", "25.5 Deg."])
    def test_a_number_of_degrees_is_read_with_or_without_its_word(self, text):
        place = Place(asked(20, 25, "degrees", ()))
        assert place.do("lock", text=text)["locked"] and place.kept[0]["value"] in (25.0, 25.5)

    def test_an_unreadable_text_stands_to_be_mended(self):
        assert Place().do("lock", text="nine")["text"] == "nine"


class TestMove:
    def test_the_line_moves_between_before_and_after_and_no_farther(self):
        place = Place()
        place.do("lock", text="9")
        for at in (1, 7, -5, STEPS + 5, 3, 3, 0):
            assert 0 <= place.do("show", at=at)["at"] <= STEPS
        assert min(place.shares) == 0 and max(place.shares) == 1
        for at in (None, "3", 2.5, math.nan, True):
            assert place.do("show", at=at)["at"] == 0

    def test_the_gap_is_told_once_the_line_has_arrived_and_stays_told(self):
        place = Place()
        place.do("lock", text="9")
        for at in range(STEPS):
            shown = place.do("show", at=at)
            assert shown["told"] == [] and "10 in" not in json.dumps(shown)
        there = place.do("show", at=STEPS)
        assert there["told"][0] == "You said 9 in. It is 10 in: 1 in more than you said."
        assert place.do("show", at=STEPS) == there
        back = place.do("show", at=5)
        assert back["told"] == there["told"] and back["svg"] == f"<svg>{5 / STEPS:.4f}</svg>"

    def test_a_place_that_cannot_be_drawn_is_said_and_the_last_drawing_stays(self):
        def move(share):
            if share == 0.5:
                raise CorsetkitError("the lines would cross")
            return Picture(f"<svg>{share}</svg>", "a line")

        place = Place(asked(move=move))
        place.do("lock", text="9")
        shown = place.do("show", at=STEPS // 2)
        assert shown["refused"] == "The lines would cross." and shown["svg"] == "<svg>0.0</svg>"
        assert place.do("show", at=STEPS)["refused"] == ""


class TestAgain:
    def test_a_second_guess_is_possible_once_told_and_says_that_the_answer_was_seen(self):
        place = Place()
        place.do("lock", text="9")
        assert place.do("again")["locked"], "not before the line has arrived"
        place.do("show", at=STEPS)
        shown = place.do("again")
        assert not shown["locked"] and shown["told"] == [] and shown["at"] == 0 and shown["text"] == ""
        assert "seen the answer" in shown["note"] and place.kept[-1] is None
        assert place.do("again") == shown
        assert "seen the answer" in place.through("10")["note"]

    def test_another_question_is_fresh_and_makes_no_claim_of_the_answer(self):
        place = Place()
        place.through("9")
        place.do("again")
        place.question = asked(right=11 * IN)
        place.guess.refresh()
        shown = place.guess.shown()
        assert not shown["locked"] and shown["note"] == ""


class TestKept:
    def test_a_locked_guess_survives_a_restart_with_what_was_told(self):
        place = Place()
        before = place.through("9")
        after = Place(kept=place.kept[-1])
        assert after.guess.shown() == before
        assert after.do("lock", text="10")["text"] == "9"

    @pytest.mark.parametrize("other", [{"start": 8 * IN + 1e-5}, {"right": 10 * IN + 1e-5}])
    def test_without_the_numbers_it_was_given_for_it_counts_only_for_its_own_question(self, other):
        """A guess kept by a course that did not keep what it was asked of cannot be asked of that again."""
        place = Place()
        before = place.through("9")
        first, place.question = place.question, replace(place.question, **other)
        place.guess.refresh()
        shown = place.guess.shown()
        assert not shown["locked"] and shown["told"] == [] and shown["at"] == 0 and shown["svg"] == "<svg>0.0000</svg>"
        assert not Place(place.question, kept=place.kept[-1]).guess.locked
        place.question = first
        place.guess.refresh()
        assert place.guess.shown() == before, "back with her, what she locked stands as it did"

    def test_a_change_that_leaves_the_question_leaves_all(self):
        place = Place()
        place.do("lock", text="9")
        before = place.do("show", at=7)
        place.guess.refresh()
        assert place.guess.shown() == before

    def test_another_unit_says_the_same_guess_in_other_words(self):
        place = Place()
        place.through("9")
        place.unit = "cm"
        place.guess.refresh()
        shown = place.guess.shown()
        assert shown["locked"] and shown["text"] == shown["words"] == "22.9 cm"
        assert shown["told"][0] == "You said 22.9 cm. It is 25.4 cm: 2.5 cm more than you said."
        place.unit = "in"
        assert place.guess.shown()["text"] == "9"

    def test_what_cannot_be_drawn_is_said_in_the_drawings_place_and_nothing_locks(self):
        place = Place()
        before, first = place.through("9"), place.question
        place.question = CorsetkitError("the wearer's form is not finished")
        place.guess.refresh()
        shown = place.do("lock", text="9")
        assert shown["refused"] == "The wearer's form is not finished." and shown["question"] == "" and not shown["locked"]
        assert shown["told"] == [] and len(place.kept) == 1
        place.question = first
        place.guess.refresh()
        assert place.guess.shown() == before

    def test_a_guess_taken_away_from_outside_is_gone(self):
        place = Place()
        place.through("9")
        place.guess.take(None)
        shown = place.guess.shown()
        assert not shown["locked"] and shown["told"] == [] and shown["at"] == 0

    @pytest.mark.parametrize("text", ["spoilt", "", "9 cm in", "4"])
    def test_a_text_spoilt_on_the_disk_is_said_by_its_value(self, text):
        shown = Place(kept={"text": text, "value": 9 * IN, "right": 10 * IN, "start": 8 * IN}).guess.shown()
        assert shown["locked"] and shown["text"] == shown["words"] == "9 in" and len(shown["told"]) == 3


LESSONS = sorted({name.partition(".")[0] for _, name, _ in pkgutil.iter_modules(lessons.__path__)} - {"measuring"})


def lesson_named(name):
    return importlib.import_module(f"corsetkit.teaching.lessons.{name}.lesson").LESSON


class TestStaysLocked:
    """A locked guess stays with the numbers it was given for, whatever is changed afterwards."""

    @staticmethod
    def ask(cell, kind, **more):
        cell._on_page(cell, {"kind": kind, "asker": "a", "number": 1, **more}, [])
        return cell.shown

    def told(self, cell):
        """Locked and moved to the end: what the page shows then."""
        self.ask(cell, "lock", text="5 degrees" if cell.guess.asked.unit == "degrees" else "5 in")
        return self.ask(cell, "show", at=STEPS)

    @staticmethod
    def anew(monkeypatch):
        """As after a restart of the kernel."""
        monkeypatch.setattr(course, "_live", {})
        monkeypatch.setattr(course, "_desks", {})

    OF_THE_QUESTION = ("question", "label", "locked", "text", "words", "told", "at", "svg", "description", "refused")

    def same(self, shown, before):
        differ = [one for one in self.OF_THE_QUESTION if shown[one] != before[one]]
        # Where a grain arrow lies on a laid piece depends on which width of cloth was drawn first.
        return differ == [] or differ == ["svg"] and "on cloth" in before["question"]

    def test_an_earlier_slider_leaves_it_locked(self, work):
        """Lesson 05: the guess is locked, the overbust mark is moved, and the guess stands as it was told,
        with a word on it."""
        cell, table = lesson_named("two_part_cup").guess(), lesson_named("two_part_cup").drawing()
        before = self.told(cell)
        assert before["note"] == "" and before["again"].startswith("The answer has been seen")
        self.ask(table, "set", changes={"overbust_mark": {"text": "4"}}, keep=True)
        assert self.same(cell.shown, before)
        assert "pattern has changed since" in cell.shown["note"] and "for Maren" in cell.shown["note"]
        self.ask(table, "undo")
        assert self.same(cell.shown, before) and cell.shown["note"] == ""

    @pytest.mark.parametrize("name", LESSONS)
    def test_another_wearer_leaves_it_locked_in_every_lesson_and_guess_again_asks_of_her(self, work, monkeypatch, name):
        """Question, drawing and answer are those of the wearer who was drafted for, after a restart too; then it asks anew."""
        cell, desk = lesson_named(name).guess(), course.desk()
        before = self.told(cell)
        assert before["locked"] and before["told"]
        desk.change(wearer="Ottilie", style={"waist_reduction": 2.54, "cup_roundness": 0.3}, finish={"seam_allowance": 2.0})
        assert self.same(cell.shown, before) and "pattern has changed since" in cell.shown["note"]
        self.anew(monkeypatch)
        cell = lesson_named(name).guess()
        assert self.same(cell.shown, before) and "pattern has changed since" in cell.shown["note"]
        fresh = self.ask(cell, "again")
        assert not fresh["locked"] and fresh["question"] != before["question"] and fresh["note"] == "" and not fresh["refused"]
        after = self.told(cell)
        assert after["told"] and after["told"] != before["told"] and after["note"] == ""

    def test_in_another_unit_it_says_the_same_numbers(self, work):
        """The question of then is asked in the unit of now."""
        cell, desk = lesson_named("back").guess(), course.desk()
        self.ask(cell, "lock", text="5")
        self.ask(cell, "show", at=STEPS)
        desk.change(wearer="Ottilie")
        desk.change(unit="cm")
        assert cell.shown["text"] == "12.7 cm" and " in." not in " ".join([cell.shown["question"], *cell.shown["told"]])
        desk.change(wearer="Maren")
        shown = dict(cell.shown)
        desk.change(wearer="Ottilie")
        assert self.same(cell.shown, shown)

    def test_corrections_of_a_fitting_are_among_the_numbers_it_was_given_for(self, work, monkeypatch):
        """Lesson 09: a guess of a corrected pattern is asked of the corrected pattern again."""
        keep(course.desk(), lambda kept: kept.with_more("Maren", [Correction("waist girth", 1.0)]), "")
        cell = lesson_named("sewing").guess()
        before = self.told(cell)
        keep(course.desk(), lambda kept: kept.with_more("Maren", [Correction("waist girth", 1.0)]), "")
        assert self.same(cell.shown, before)
        self.anew(monkeypatch)
        assert self.same(lesson_named("sewing").guess().shown, before)

    def test_a_wearer_whose_numbers_are_not_complete_leaves_it_locked(self, work):
        """Nothing can be drafted now, and still the guess stands; guessing again says what is missing."""
        cell, desk = lesson_named("underbust").guess(), course.desk()
        before = self.told(cell)
        desk.change(source="own")
        assert self.same(cell.shown, before) and "pattern has changed since" in cell.shown["note"]
        assert "not finished" in self.ask(cell, "again")["refused"]

    def test_a_guess_kept_without_its_numbers_learns_them_while_they_stand(self, work, monkeypatch):
        """A record of an earlier course is read, and once its question stands its guess stays locked like any other."""
        cell = lesson_named("two_part_cup").guess()
        before = self.told(cell)
        kept = {one: told for one, told in course.desk().record.guesses["05_two_part_cup.guess"].items() if one != "of"}
        (work / "record.json").write_text(json.dumps({"guesses": {"05_two_part_cup.guess": kept}}))
        self.anew(monkeypatch)
        cell = lesson_named("two_part_cup").guess()
        assert self.same(cell.shown, before)
        course.desk().change(style={"overbust_mark": 10.16})
        assert self.same(cell.shown, before)
        self.anew(monkeypatch)
        assert self.same(lesson_named("two_part_cup").guess().shown, before)

    @pytest.mark.parametrize(
        "spoilt",
        [
            7,
            {},
            {"wearer": 3},
            {"wearer": "Maren", "body": {}},
            {"wearer": "Maren", "body": {"bust_girth": 1}},
            {"wearer": "Maren", "body": {"bust_girth": True}, "style": [], "corrections": {}},
        ],
    )
    def test_numbers_spoilt_on_the_disk_leave_the_guess_without_them(self, work, monkeypatch, spoilt):
        """What it was asked of cannot be read: then it counts where its question stands, as one of an earlier course does."""
        cell = lesson_named("two_part_cup").guess()
        before = self.told(cell)
        guesses = {one: {**told, "of": spoilt} for one, told in course.desk().record.guesses.items()}
        (work / "record.json").write_text(json.dumps({"wearer": "Ottilie", "guesses": guesses}))
        self.anew(monkeypatch)
        cell = lesson_named("two_part_cup").guess()
        assert not cell.shown["locked"] and course.desk().trouble == ""
        course.desk().change(wearer="Maren")
        assert self.same(cell.shown, before)


class TestRecord:
    KEPT = {"text": "9", "value": 22.86, "right": 25.4, "start": 20.32}

    def test_guesses_are_written_and_read_again(self):
        record = Record(guesses={"02_underbust.guess": self.KEPT})
        assert read(written(record)) == record

    @pytest.mark.parametrize(
        "spoilt",
        [7, None, [], {}, {**KEPT, "text": 9}, {**KEPT, "value": "9"}, {**KEPT, "right": math.nan}, {**KEPT, "start": True},
         {**KEPT, "value": 10**400}, {**KEPT, "start": None}, {**KEPT, "right": -math.inf}],
    )  # fmt: skip
    def test_what_is_malformed_is_left_out_and_the_rest_is_kept(self, spoilt):
        told_there = {"unit": "cm", "guesses": {"a": spoilt, "b": {**self.KEPT, "more": 1}}}
        assert read(json.dumps(told_there)) == Record(unit="cm", guesses={"b": self.KEPT})

    @pytest.mark.parametrize("guesses", [None, 3, "guesses", [1]])
    def test_no_guesses_at_all_is_no_trouble(self, guesses):
        assert read(json.dumps({"guesses": guesses})) == Record()

    def test_it_goes_through_the_desk_to_the_disk_and_start_afresh_clears_it(self, tmp_path):
        desk = Desk(tmp_path)
        heard = []
        desk.watch("x.guess", lambda: heard.append("own"))

        def widget(the_desk):
            return GuessWidget(
                Guess(asked, lambda: the_desk.record.unit, the_desk.record.guesses.get("x.guess"),
                      lambda kept: the_desk.change("x.guess", guesses={"x.guess": kept} if kept else {})),
                lambda: the_desk.record.guesses.get("x.guess"))  # fmt: skip

        first = widget(desk)
        first._on_page(first, {"kind": "lock", "text": "9", "asker": "a", "number": 1}, [])
        assert first.shown["locked"] and first.shown["number"] == 1 and heard == []
        again = Desk(tmp_path)
        second = widget(again)
        assert second.shown["locked"] and second.shown["at"] == STEPS and second.shown["told"]
        again.watch("x.guess", second.refresh)
        Form(again, "form").handle({"kind": "afresh"})
        assert not second.shown["locked"] and Desk(tmp_path).record == Record()


def reasons(text, question, unit="in"):
    return Place(question, unit).through(text)["told"]


class TestTold:
    def test_the_lessons_slip_is_named_where_the_guess_points_to_it(self):
        for text in ("13", "12 7/8", "13 1/4"):
            assert reasons(text, asked())[1] == "That is the line and its dart together."
        assert "dart" not in reasons("12", asked())[1]

    def test_the_nearest_slip_is_named(self):
        two = asked(slips=((13 * IN, "the one"), (13.25 * IN, "the other")))
        assert reasons("13", two)[1] == "The one." and reasons("13 1/4", two)[1] == "The other."

    def test_a_slip_that_lies_by_the_right_value_takes_no_right_guess(self):
        question = asked(slips=((10.2 * IN, "near by chance"),))
        assert reasons("10", question)[1] == WHY
        assert "chance" not in reasons("10 1/8", question)[1], "as near to the one as to the other"
        assert reasons("10 1/4", question)[1] == "Near by chance."

    @pytest.mark.parametrize(
        ("text", "reason"),
        [
            ("8", "You left it where it was, at 8 in."),
            ("8 1/8", "You left it nearly where it was, at 8 in."),
            ("7", "You let it shrink from 8 in by 1 in; it grows, by 2 in."),
            ("9 1/4", "It grows, as you said, but by 2 in, not by 1 1/4 in: you stopped too soon."),
            ("11 1/2", "It grows, as you said, but by 2 in, not by 3 1/2 in: you went too far."),
        ],
    )
    def test_where_no_slip_fits_the_direction_is_told(self, text, reason):
        assert reasons(text, asked())[1] == reason

    @pytest.mark.parametrize(
        ("text", "reason"),
        [
            ("10", "You left it where it was, at 10 in."),
            ("12", "You let it grow from 10 in by 2 in; it shrinks, by 2 in."),
            ("9 1/4", "It shrinks, as you said, but by 2 in, not by 3/4 in: you stopped too soon."),
            ("5", "It shrinks, as you said, but by 2 in, not by 5 in: you went too far."),
        ],
    )
    def test_and_so_where_the_line_shrinks(self, text, reason):
        assert reasons(text, asked(start=10 * IN, right=8 * IN))[1] == reason

    def test_where_the_line_stays_a_guess_on_the_start_is_right(self):
        still = asked(start=10 * IN, right=10 * IN)
        assert reasons("10", still) == ["You said 10 in; it is 10 in. That is as near as a tape reads.", WHY]
        assert reasons("12", still)[1] == "You let it grow by 2 in; it stays at 10 in."
        nearly = asked(start=10 * IN, right=10 * IN + 0.2)
        assert reasons("8", nearly)[1] == "You let it shrink by 2 in; it stays nearly at 10 in."

    def test_within_near_is_as_good_as_right_and_just_beyond_is_not(self):
        question = asked(start=20, right=25, near=0.3, slips=())
        for text, near in (("25.3", True), ("24.7", True), ("25.31", False), ("24.69", False)):
            assert ("as near as" in reasons(text, question, "cm")[0]) == near

    @pytest.mark.parametrize(("unit", "text", "word"), [("in", "25.4", "centimetres"), ("cm", "10", "inches")])
    def test_a_number_off_the_tapes_other_side_is_recognised(self, unit, text, word):
        question = asked(start=8 * IN, right=10 * IN, slips=())
        assert reasons(text, question, unit)[1].startswith(f"Read as {word}, your number would be as near as a tape reads.")
        named = f"{text} {unit}"
        assert "Read as" not in reasons(named, question, unit)[1], "who names the unit did not mistake it"

    def test_a_unit_in_the_text_goes_before_the_learners(self):
        assert reasons("25.4 cm", asked())[0] == (
            "You said 25.4 cm, that is 10 in; it is 10 in. That is as near as a tape reads."
        )
        assert reasons("8.3", asked())[0] == "You said 8.3 in, that is 8 5/16 in. It is 10 in: 1 11/16 in more than you said."

    @pytest.mark.parametrize("unit", ["in", "cm"])
    def test_the_numbers_told_add_up_as_they_are_shown(self, unit):
        for i in range(60):
            question = asked(start=20, right=25 + 0.0317 * i, slips=())
            value = 21.5 + 0.0173 * i
            first = told(f"{value} cm", value, question, unit)[0]
            said, right, gap = (one.split() for one in _lengths(first, unit))
            assert abs(_cm(right) - _cm(said) - _cm(gap)) < 1e-9, first

    def test_a_gap_below_what_is_shown_is_not_called_nothing(self):
        question = asked(start=20, right=25, near=0.01, slips=())
        assert "less than 1/16 in more" in told("24.98 cm", 24.98, question, "in")[0]
        turned = asked(start=20, right=25, near=0.01, unit="degrees", slips=())
        assert reasons("24.98", turned)[0] == (
            "You said 24.98 degrees, that is 25 degrees. It is 25 degrees: less than 0.1 degrees more than you said."
        )

    def test_degrees_are_told_in_degrees(self):
        turned = asked(start=20, right=25.4, near=1, unit="degrees", slips=((40, "twice the turn"),))
        assert reasons("25", turned, "cm")[0] == (
            "You said 25 degrees; it is 25.4 degrees. That is as near as a protractor reads."
        )
        assert reasons("40°", turned)[1] == "Twice the turn."
        assert reasons("1", turned)[0] == "You said 1 degree. It is 25.4 degrees: 24.4 degrees more than you said."

    @pytest.mark.parametrize("start", [0.0, 5.0, 25.0, 60.0])
    @pytest.mark.parametrize("right", [0.0, 5.0, 25.0, 60.0])
    @pytest.mark.parametrize("kind", ["cm", "degrees"])
    def test_every_guess_gets_whole_sentences_and_is_never_called_wrong(self, start, right, kind):
        question = asked(start=start, right=right, unit=kind, slips=((12.0, "a half of it"),))
        for unit in ("in", "cm"):
            for i in range(240):
                place = Place(question, unit)
                place.do("lock", text=f"{0.25 * i} {'' if kind == 'degrees' else 'cm'}")
                shown = place.do("show", at=STEPS)
                sentences = shown["told"] or [shown["unread"]]
                assert all(one[:1].isupper() and one.endswith(".") for one in sentences), sentences
                assert not any("wrong" in one.lower() for one in sentences)
                assert len(sentences) in (1, 2, 3)


def _lengths(sentence, unit):
    """Guess, right value and gap of "You said A, that is B. It is C: D more than you said."."""
    said, _, rest = sentence.partition(". It is ")
    said = said.removeprefix("You said ").rpartition("that is ")[2]
    right, gap = rest.split(": ")
    return said, right, gap.split(" more")[0]


def _cm(words):
    *numbers, unit = words
    value = sum(float(a) / float(b or 1) for a, _, b in (one.partition("/") for one in numbers))
    return value * IN if unit == "in" else value


class TestAsked:
    def test_a_question_that_cannot_be_guessed_at_is_a_mistake_of_the_lesson(self):
        for other in ({"unit": "share"}, {"start": -1}, {"right": math.nan}, {"near": 0}):
            with pytest.raises(ValueError, match="guess"):
                asked(**other)

    def test_the_stored_state_asks_and_does_not_answer(self):
        stored = Guess(asked, lambda: "in", None, None).stored(lambda svg: f"[{svg}]")
        text = stored.html + repr(stored)
        assert "[<svg>0.0000</svg>]" in stored.html and "How long is it then?" in text and "once the lesson runs" in text
        assert "10 in" not in text and "dart" not in text and "bust point" not in text

    def test_what_cannot_be_asked_is_stored_as_its_sentence(self):
        def ask():
            raise CorsetkitError("the form is not <finished>")

        stored = Guess(ask, lambda: "in", None, None).stored(None)
        assert repr(stored) == "The form is not <finished>." and "&lt;finished&gt;" in stored.html


class TestPage:
    def test_the_pages_side_is_text_and_names_no_path(self):
        widget = GuessWidget(Place().guess)
        assert "as default}" in widget._esm and "://" not in widget._esm and "://" not in widget._css
