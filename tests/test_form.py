"""The wearer's form without a page, and the desk that keeps what was chosen."""

import json

import pytest

from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.form import Form
from corsetkit.teaching.record import Record, own_body, read, written
from corsetkit.wearers import demo_wearers, write_wearers

MAREN = demo_wearers()[0][1]
NEEDED = [one.name for one in quantities(Measurements) if not one.optional]


@pytest.fixture
def desk(tmp_path):
    return Desk(tmp_path / "my_work")


@pytest.fixture
def form(desk):
    return Form(desk, "form")


def fill(form, **texts):
    form.handle({"kind": "set", "changes": texts})
    return form.shown()


def all_of(body):
    known = {one: getattr(body, one.name) for one in quantities(Measurements)}
    return {one.name: one.say(value, "in") for one, value in known.items() if value is not None}


class TestWhoIsDraftedFor:
    def test_the_first_demo_wearer_is_there_at_the_start_and_said_to_be_invented(self, form):
        shown = form.shown()
        assert shown["who"] == "demo:Maren"
        assert shown["verdict"] == {"good": True, "text": "Drafting for Maren, an invented wearer."}
        assert shown["fields"]["bust_girth"]["text"] == "36 in"

    def test_all_demo_wearers_and_ones_own_can_be_picked(self, form):
        values = [value for _, inside in form.shown()["choices"] for value, _ in inside]
        assert values == [f"demo:{name}" for name, _ in demo_wearers()] + ["own"]
        for value in values:
            form.handle({"kind": "pick", "who": value})
            assert form.shown()["who"] == value

    def test_a_name_that_is_not_in_the_list_changes_nothing(self, form, desk):
        form.handle({"kind": "pick", "who": "demo:Nobody"})
        assert form.shown()["who"] == "demo:Maren" and not form.shown()["undo"]


class TestOwnMeasurements:
    @pytest.fixture(autouse=True)
    def own(self, form):
        form.handle({"kind": "pick", "who": "own"})

    def test_it_starts_empty_with_nothing_wrong(self, form):
        shown = form.shown()
        assert {field["text"] for field in shown["fields"].values()} == {""}
        assert {field["wrong"] for field in shown["fields"].values()} == {""}
        assert shown["verdict"]["text"] == "0 of 14 measurements filled in."

    @pytest.mark.parametrize("text", ["14 1/2", "14½", "14.5", "14-1/2", "36.83 cm"])
    def test_inches_are_read_as_tapes_say_them(self, form, text):
        assert fill(form, neck_base_girth=text)["fields"]["neck_base_girth"] == {"text": "14 1/2 in", "wrong": ""}

    def test_a_mistake_stands_beside_its_field_and_stays_as_it_was_typed(self, form):
        field = fill(form, waist_girth="blue")["fields"]["waist_girth"]
        assert field["text"] == "blue"
        assert field["wrong"].startswith("waist girth is 'blue', which is not a length")

    def test_centimetres_in_an_inch_field_are_told_as_such(self, form):
        wrong = fill(form, bust_girth="91")["fields"]["bust_girth"]["wrong"]
        assert "it looks like centimetres given as inches" in wrong

    def test_two_that_contradict_each_other_speak_before_the_rest_is_there(self, form):
        fields = fill(form, bust_girth="36", underbust_girth="37")["fields"]
        assert "does not go with underbust girth" in fields["bust_girth"]["wrong"]
        assert "does not go with bust girth" in fields["underbust_girth"]["wrong"]
        assert fields["waist_girth"]["wrong"] == ""

    def test_complete_numbers_are_drafted_for(self, form, desk):
        shown = fill(form, name="  Ada   L. ", **all_of(MAREN))
        assert shown["verdict"]["good"] and shown["name"] == "Ada L."
        assert desk.body() == ("Ada L.", MAREN)

    def test_what_is_unlikely_is_noted_and_no_mistake(self, form):
        shown = fill(form, **{**all_of(MAREN), "across_front_width": "14 1/2 in"})
        assert shown["verdict"]["good"]
        assert any("chest" in one for one in shown["warnings"])

    def test_changing_the_unit_back_and_forth_loses_nothing(self, form, desk):
        fill(form, bust_girth="91.3 cm")
        for unit in ("cm", "in", "cm"):
            form.handle({"kind": "unit", "unit": unit})
        assert desk.record.own["bust_girth"] == 91.3
        assert form.shown()["fields"]["bust_girth"]["text"] == "91.3 cm"

    def test_an_emptied_field_is_missing_again(self, form, desk):
        fill(form, bust_girth="36")
        fill(form, bust_girth=" ")
        assert "bust_girth" not in desk.record.own

    def test_undo_goes_back_field_by_field_and_over_start_afresh(self, form, desk):
        fill(form, bust_girth="36")
        fill(form, waist_girth="28")
        before = desk.record
        form.handle({"kind": "afresh"})
        assert desk.record == Record()
        form.handle({"kind": "undo"})
        assert desk.record == before
        form.handle({"kind": "undo"})
        assert set(desk.record.own) == {"bust_girth"}

    @pytest.mark.parametrize("name", NEEDED)
    def test_each_missing_measurement_is_named(self, name):
        own = {one: getattr(MAREN, one) for one in NEEDED if one != name}
        with pytest.raises(ValueError, match=f"^still to fill in: {name.replace('_', ' ')}$"):
            own_body(Record(source="own", own=own))

    def test_a_demo_wearers_numbers_can_be_a_start(self, form, desk):
        form.handle({"kind": "pick", "who": "demo:Solveig"})
        form.handle({"kind": "copy"})
        assert desk.body() == ("Solveig, changed", dict(demo_wearers())["Solveig"])


class TestFiles:
    def test_a_typed_path_is_read_kept_and_the_first_of_it_chosen(self, form, tmp_path, desk):
        path = tmp_path / "my class.csv"
        write_wearers(path, [("Ada", MAREN), ("Eve", MAREN.replaced(bust_girth=95))], "in")
        form.handle({"kind": "path", "path": f' "{path}" '})
        assert form.shown()["who"] == "file:Ada" and "Ada, Eve" in form.shown()["file_said"]
        assert Desk(desk.folder).loaded.keys() == {"Ada", "Eve"}

    def test_an_uploaded_file_is_read_under_its_own_name(self, form, tmp_path):
        path = tmp_path / "one.csv"
        write_wearers(path, [("Ada", MAREN)], "cm")
        form.handle({"kind": "file", "name": "C:\\fakepath\\one.csv"}, [memoryview(path.read_bytes())])
        assert form.shown()["who"] == "file:Ada" and "Read from one.csv" in form.shown()["file_said"]

    def test_a_bad_file_says_row_and_field_and_changes_nothing(self, form, desk):
        heading = ",".join(["wearer", "unit", *(one.name for one in quantities(Measurements))])
        before = desk.record
        form.handle({"kind": "file", "name": "bad.csv"}, [f"{heading}\nAda,in,blue\n".encode()])
        assert form.shown()["file_said"].startswith("Not read: bad.csv, row 2, Ada: bust girth is 'blue'")
        assert desk.record == before and not form.shown()["undo"]

    def test_a_path_that_is_not_there_is_one_sentence(self, form):
        form.handle({"kind": "path", "path": "nowhere.csv"})
        assert form.shown()["file_said"].startswith("Not read: ")
        assert "\n" not in form.shown()["file_said"]


class TestWhatIsKept:
    def test_wearer_unit_and_style_survive_a_restart(self, desk):
        desk.change(wearer="Solveig", unit="cm", style={"waist_reduction": 2.54, "cup_parts": 2})
        again = Desk(desk.folder)
        assert again.record == desk.record and again.body()[0] == "Solveig"

    def test_own_numbers_survive_as_typed(self, form, desk):
        form.handle({"kind": "pick", "who": "own"})
        fill(form, bust_girth="36", waist_girth="blue")
        assert Desk(desk.folder).record.own == {"bust_girth": pytest.approx(91.44), "waist_girth": "blue"}

    def test_another_lesson_sees_the_change(self, desk):
        other = Desk(desk.folder)
        told = []
        desk.watch("a", lambda: told.append(desk.record.unit))
        other.change(unit="cm")
        desk.look_again()
        assert desk.record.unit == "cm" and told == ["cm"]

    @pytest.mark.parametrize("text", ["", "{", "[]", '{"unit": "ells"}', '{"source": "elsewhere"}', "\ufffd" * 9])
    def test_a_spoilt_record_is_a_fresh_start_and_a_sentence(self, tmp_path, text):
        (tmp_path / "record.json").write_text(text, encoding="utf-8")
        desk = Desk(tmp_path)
        assert desk.record == Record() and "starts afresh" in desk.trouble

    def test_what_this_course_does_not_know_is_left_out(self):
        told = json.loads(written(Record(style={"cup_parts": 2})))
        told["style"] |= {"sleeve": 3, "waist_reduction": 900, "lacing_gap": "wide", "yoke": None}
        told["own"] = {"bust_girth": True, "waist_girth": 70, "tail": 12, "hip_girth": float("nan")}
        told["later"] = 1
        assert read(json.dumps(told)) == Record(style={"cup_parts": 2}, own={"waist_girth": 70})

    def test_where_the_disk_refuses_the_lesson_goes_on_and_says_so(self, tmp_path):
        (tmp_path / "in the way").write_text("")
        desk = Desk(tmp_path / "in the way")
        desk.change(unit="cm")
        assert desk.record.unit == "cm"
        assert desk.trouble.startswith("What you choose is not kept beyond this sitting")

    def test_who_made_a_change_is_not_told_of_it_and_one_key_has_one_watcher(self, desk):
        told = []
        for i in range(20):
            desk.watch("table", lambda i=i: told.append(i))
        desk.watch("form", lambda: told.append("form"))
        desk.change("form", unit="cm")
        assert told == [19]


def test_numbers_of_ones_own_are_not_replaced_in_silence(form):
    """Where a wearer's numbers take the place of one's own, it is said, with the way back; and Undo is that way."""
    form.handle({"kind": "copy"})
    assert form.shown()["warnings"] == []
    fill(form, waist_girth="29")
    form.handle({"kind": "pick", "who": "demo:Ottilie"})
    form.handle({"kind": "copy"})
    assert any("Undo brings them back" in said for said in form.shown()["warnings"])
    form.handle({"kind": "undo"})
    assert not any("Undo" in said for said in form.shown()["warnings"])
    form.handle({"kind": "pick", "who": "own"})
    assert form.shown()["fields"]["waist_girth"]["text"] == "29 in"
