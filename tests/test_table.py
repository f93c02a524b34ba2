"""The drafting table without a page: what a message does, what is shown, what is kept."""

from dataclasses import dataclass

import pytest

from corsetkit.errors import CorsetkitError
from corsetkit.quantity import check_all, declared, quantities
from corsetkit.style import Style
from corsetkit.teaching.controls import Control
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.play import Panel, Play
from corsetkit.teaching.widgets import Table


@dataclass(frozen=True, kw_only=True)
class Toy:
    """A stand-in for a style, small enough to reckon with by hand: 1 to 3 in, by eighths."""

    depth: float = declared("how deep", unit="cm", low=2.54, high=7.62, step=0.3175, default=5.08, group="cut")
    turn: float = declared("how steep", unit="degrees", low=10, high=30, step=0.5, default=20, group="cut")
    parts: int = declared("how many", unit="count", low=2, high=3, step=1, default=3, group="whole")
    lined: bool = declared("whether lined", unit="yes or no", default=False, group="whole")

    def __post_init__(self):
        check_all(self)


class Draft:
    """Draws the toy, refuses where it is deeper than 6.5 cm, and remembers what it was asked and told."""

    def __init__(self):
        self.drawn, self.kept = [], []

    def show(self, values):
        toy = Toy(**values)
        if toy.depth > 6.5:
            raise CorsetkitError("the cut would cross itself: keep the depth under 6.5 cm")
        self.drawn.append(toy)
        return Picture(f"<svg>{toy.depth:.4f} {toy.turn} {toy.parts}</svg>", "a toy", (f"depth {toy.depth:.2f}",))

    def play(self, values=None, unit="in"):
        panels = (Panel("How deep, how steep?", ("depth", "turn")),)
        return Play(panels, quantities(Toy), values or {}, unit, self.show, self.kept.append)


def move(play, name, at, keep=False):
    play.handle({"kind": "set", "changes": {name: {"at": at}}, "keep": keep})
    return play.shown()


def type_in(play, name, text):
    play.handle({"kind": "set", "changes": {name: {"text": text}}, "keep": True})
    return play.shown()


class TestControl:
    depth, turn, parts, lined = quantities(Toy)

    def test_inches_stop_at_eighths_from_end_to_end(self):
        control = Control(self.depth, "in")
        assert len(control.stops) == 17
        assert control.words[:3] == ("1 in", "1 1/8 in", "1 1/4 in")
        assert control.words[-1] == "3 in"

    def test_centimetres_stop_at_numbers_that_read_well(self):
        assert Control(self.depth, "cm").words[:3] == ("3 cm", "3.5 cm", "4 cm")

    @pytest.mark.parametrize("unit", ["cm", "in"])
    @pytest.mark.parametrize("one", quantities(Style), ids=lambda one: one.name)
    def test_every_stop_of_every_style_value_is_allowed_and_says_its_own_words(self, one, unit):
        control = Control(one, unit)
        assert [one.check(stop) for stop in control.stops] == list(control.stops)
        assert len(set(control.words)) == len(control.words) == len(control.stops)
        if one.is_number:
            assert list(control.stops) == sorted(control.stops)
            # The ends are reached, but for less than a step where a round number lies inside them.
            step = control.stops[1] - control.stops[0]
            assert control.stops[0] - one.low < step and one.high - control.stops[-1] < step
        assert control.state(one.default)["at"] in range(len(control.stops))

    def test_a_value_between_stops_is_said_as_it_is(self):
        state = Control(self.depth, "cm").state(5.08)
        assert state == {"at": 4, "words": "5.1 cm"}

    def test_a_number_with_few_stops_is_chosen_and_does_not_slide(self):
        assert Control(self.parts, "in").page()["kind"] == "choice"
        assert Control(self.turn, "in").page()["kind"] == "slider"

    def test_small_and_large_steps_say_what_they_add(self):
        assert Control(self.depth, "in").page()["amounts"] == ["1/8", "1/2"]
        assert Control(self.depth, "cm").page()["amounts"] == ["0.5"], "ten stops need no large step"
        assert Control(self.turn, "in").page()["amounts"] == ["0.5", "2.5"]

    @pytest.mark.parametrize(
        "answer", [{}, {"at": 17}, {"at": -1}, {"at": True}, {"at": "2"}, {"text": " "}, {"text": "blue"}]
    )
    def test_an_answer_that_means_nothing_is_refused_in_one_sentence(self, answer):
        with pytest.raises(CorsetkitError, match="^depth is ") as refusal:
            Control(self.depth, "in").read(answer)
        assert "\n" not in str(refusal.value)

    def test_what_is_typed_counts_in_the_learners_unit(self):
        assert Control(self.depth, "in").read({"text": "2 1/2"}) == pytest.approx(6.35)
        assert Control(self.depth, "in").read({"text": "2½"}) == pytest.approx(6.35)
        assert Control(self.depth, "cm").read({"text": "6.35"}) == pytest.approx(6.35)
        assert Control(self.depth, "cm").read({"text": "2.5 in"}) == pytest.approx(6.35)


class TestPlay:
    def test_a_movement_draws_at_once_and_is_kept_only_at_rest(self):
        draft = Draft()
        play = draft.play()
        shown = move(play, "depth", 9)
        assert shown["svg"] == "<svg>5.3975 20.0 3</svg>"
        assert shown["state"]["depth"] == {"at": 9, "words": "2 1/8 in", "idle": ""}
        assert draft.kept == []
        play.handle({"kind": "keep"})
        assert draft.kept == [{"depth": pytest.approx(5.3975)}]
        assert len(draft.drawn) == 2, "to keep is not to draw again"

    def test_several_changes_in_one_message_are_drawn_once(self):
        draft = Draft()
        play = draft.play()
        play.handle({"kind": "set", "changes": {"depth": {"at": 0}, "turn": {"at": 0}}})
        assert play.shown()["svg"] == "<svg>2.5400 10.0 3</svg>"
        assert len(draft.drawn) == 2

    def test_a_refused_value_keeps_the_last_drawing_and_says_why(self):
        draft = Draft()
        play = draft.play()
        shown = move(play, "depth", 16, keep=True)
        assert shown["refused"] == "The cut would cross itself: keep the depth under 6.5 cm."
        assert shown["svg"] == "<svg>5.0800 20.0 3</svg>"
        assert shown["state"]["depth"]["words"] == "3 in", "the slider stays where the hand put it"
        assert draft.kept == [], "what does not draw is not kept"
        assert move(play, "depth", 8)["refused"] == ""

    def test_a_text_that_says_no_length_stays_to_be_mended(self):
        play = Draft().play()
        shown = type_in(play, "depth", "blue")
        assert shown["refused"].startswith("Depth is 'blue', which is not a length")
        assert shown["state"]["depth"] == {"at": 8, "words": "blue", "wrong": True, "idle": ""}
        assert shown["undo"]
        play.handle({"kind": "undo"})
        assert play.shown()["state"]["depth"] == {"at": 8, "words": "2 in", "idle": ""}
        assert play.shown()["refused"] == ""

    def test_undo_goes_back_one_rest_at_a_time_without_end(self):
        play = Draft().play()
        for at in range(8):
            move(play, "depth", at)
            play.handle({"kind": "keep"})
        for at in reversed(range(7)):
            assert play.shown()["undo"]
            play.handle({"kind": "undo"})
            assert play.shown()["state"]["depth"]["at"] == at
        play.handle({"kind": "undo"})
        assert play.shown()["state"]["depth"]["at"] == 8 and not play.shown()["undo"]

    def test_one_movement_is_one_step_back(self):
        play = Draft().play()
        for at in (7, 6, 5, 4):
            move(play, "depth", at)
        play.handle({"kind": "keep"})
        play.handle({"kind": "undo"})
        assert play.shown()["state"]["depth"]["words"] == "2 in"

    def test_what_is_undone_is_kept_undone(self):
        draft = Draft()
        play = draft.play()
        move(play, "depth", 3, keep=True)
        play.handle({"kind": "undo"})
        assert draft.kept[-1] == {}

    def test_start_afresh_can_be_undone(self):
        draft = Draft()
        play = draft.play({"parts": 2})
        play.handle({"kind": "afresh"})
        assert play.shown()["fresh"] and draft.kept == [{}]
        play.handle({"kind": "undo"})
        assert play.value("parts") == 2

    def test_another_unit_changes_words_and_no_value(self):
        draft = Draft()
        play = draft.play()
        move(play, "depth", 9, keep=True)
        play.take(play.quantities.values(), {"depth": 5.3975}, "cm")
        assert play.shown()["state"]["depth"]["words"] == "5.4 cm"
        assert draft.drawn[-1].depth == pytest.approx(5.3975)

    def test_ten_thousand_movements_leave_no_more_than_their_rests(self):
        play = Draft().play()
        for i in range(10_000):
            move(play, "depth", i % 12)
        play.handle({"kind": "keep"})
        assert len(play.rests) == 2

    def test_no_drawing_yet_and_refused_is_a_sentence_and_no_error(self):
        play = Draft().play({"depth": 7.0})
        assert play.shown()["refused"] and play.shown()["svg"] == ""

    def test_all_values_stand_in_the_layout_once(self):
        layout = Draft().play().layout()
        live = [one["name"] for panel in layout["panels"] for one in panel["controls"]]
        folded = [one["name"] for group in layout["folded"] for one in group["controls"]]
        assert live == ["depth", "turn"] and folded == ["parts", "lined"]
        assert [group["title"] for group in layout["folded"]] == ["Whole"]

    def test_a_panel_has_at_most_three_controls(self):
        with pytest.raises(ValueError, match="one to three"):
            Panel("Too many?", ("a", "b", "c", "d"))


class TestTable:
    def table(self, draft):
        return Table(play := draft.play(), lambda: (play.quantities.values(), {}, "in"))

    def test_an_answer_carries_the_asker_and_the_number_of_the_question(self):
        table = self.table(Draft())
        table._on_page(table, {"kind": "set", "changes": {"depth": {"at": 3}}, "asker": "page-1", "number": 7}, [])
        assert table.shown["asker"] == "page-1" and table.shown["number"] == 7
        assert table.shown["state"]["depth"]["at"] == 3

    def test_a_refusal_is_answered_like_anything_else(self):
        table = self.table(Draft())
        table._on_page(table, {"kind": "set", "changes": {"depth": {"at": 16}}, "asker": "page-1", "number": 8}, [])
        assert table.shown["number"] == 8 and table.shown["refused"]

    def test_even_a_mistake_of_the_course_is_answered_and_goes_on_to_the_log(self):
        draft = Draft()
        table = self.table(draft)

        def broken(values):
            raise ZeroDivisionError("division by zero")

        table.play.show = broken
        with pytest.raises(ZeroDivisionError):
            table._on_page(table, {"kind": "set", "changes": {"depth": {"at": 3}}, "asker": "page-1", "number": 9}, [])
        assert table.shown["number"] == 9 and "ZeroDivisionError" in table.shown["refused"]

    def test_the_pages_side_is_text_and_names_no_path(self):
        table = self.table(Draft())
        assert isinstance(table._esm, str) and "as default}" in table._esm
        assert "://" not in table._esm and "://" not in table._css, "nothing is asked from outside"
