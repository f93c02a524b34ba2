"""Several lessons on one learner's folder: nothing that is kept is lost, and every lesson shows what stands."""

import asyncio
import json
import os
import random
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from corsetkit.errors import CorsetkitError
from corsetkit.finish.choices import Finish
from corsetkit.fitting.lines import LINES
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.planning import plain_plan
from corsetkit.measurements import Measurements
from corsetkit.pattern.pattern import Correction
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.teaching import cells as course
from corsetkit.teaching import cells as in_sight
from corsetkit.teaching.cells import InSight
from corsetkit.teaching.controls import Control
from corsetkit.teaching.desk import CORRECTIONS, PLANS, RECORD, WEARERS, Desk
from corsetkit.teaching.form import Form
from corsetkit.teaching.lessons.back.lesson import LESSON as BACK
from corsetkit.teaching.lessons.two_part_cup.lesson import LESSON as CUP
from corsetkit.teaching.record import Record, read_file, written
from corsetkit.teaching.shared.corrected import keep, read_kept
from corsetkit.teaching.shared.files_written import KeptPlanFile, items_by_layer
from corsetkit.teaching.widgets import FormWidget
from corsetkit.wearers import demo_wearers, write_wearers
from corsetkit.words import SUFFIX

UNREADABLE = {
    "brackets": b"[" * 200_000,
    "braces": b'{"a":' * 200_000,
    "no text": "wearer: Zoë".encode("latin-1"),
    "a list": b"[]",
    "a broken end": b'{"unit": "cm", "style": {"cup_pa',
    "a long number": b'{"later": ' + b"9" * 5000 + b"}",
    "nothing": b"",
    "noughts": bytes(400),
}
KEPT = [RECORD, CORRECTIONS, f"{PLANS}Maren.json", WEARERS]
MARK = b"\xef\xbb\xbf"


@pytest.fixture(scope="module")
def plans(finished_maren):
    """Maren's pieces by their cloth, and for each cloth plans of two widths."""
    items = items_by_layer(finished_maren)
    return items, {
        layer: [plain_plan(mine, Cloth(width=width), layer) for width in (115.0, 150.0)] for layer, mine in items.items()
    }


def change(desk, name, plans):
    """Make the lessons write that file."""
    if name == RECORD:
        desk.change(unit="cm", style={"cup_parts": 2})
    elif name == CORRECTIONS:
        return keep(desk, lambda kept: kept.with_more("Maren", [Correction("hem at the side", 0.5)]), "")
    elif name == WEARERS:
        desk.load(demo_wearers()[:2])
    else:
        items, laid = plans
        return KeptPlanFile(desk).keep("Maren", items, laid["shell"][0])
    return desk.trouble


def stands(desk, name, plans):
    """Whether what `change` wrote is read back by another lesson."""
    other = Desk(desk.folder)
    if name == RECORD:
        return (other.record.unit, other.record.style) == ("cm", {"cup_parts": 2})
    if name == CORRECTIONS:
        return read_kept(other)[0].of("Maren") == (Correction("hem at the side", 0.5),)
    if name == WEARERS:
        return list(other.loaded.items()) == list(demo_wearers()[:2])
    items, laid = plans
    return KeptPlanFile(other).read("Maren", items).plans == {"shell": laid["shell"][0]}


class TestNotReadable:
    @pytest.mark.parametrize("name", KEPT)
    @pytest.mark.parametrize("why", UNREADABLE)
    def test_what_cannot_be_read_is_put_beside_and_never_written_over(self, tmp_path, name, why, plans):
        """A kept file that cannot be read still stands under another name once something else is kept, and it is said."""
        path, spoilt = tmp_path / name, UNREADABLE[why]
        path.write_bytes(spoilt)
        desk = Desk(tmp_path)
        assert path.read_bytes() == spoilt, "to read it changes nothing"
        said = change(desk, name, plans)
        beside = tmp_path / f"{path.stem}, not readable, 1{path.suffix}"
        assert beside.read_bytes() == spoilt and f"“{beside.name}”" in said and said.count("\n") == 0
        assert stands(desk, name, plans)

    @pytest.mark.parametrize("name", KEPT)
    def test_an_earlier_one_that_was_put_beside_is_never_written_over(self, tmp_path, name, plans):
        """Each file that is put beside gets the first number that is free."""
        path, spoilt = tmp_path / name, [b"[1", b"[2", b"[3"]
        for one in spoilt:
            path.write_bytes(one)
            change(Desk(tmp_path), name, plans)
        beside = [tmp_path / f"{path.stem}, not readable, {number}{path.suffix}" for number in (1, 2, 3)]
        assert [one.read_bytes() for one in beside] == spoilt

    @pytest.mark.parametrize("name", KEPT)
    def test_a_byte_order_mark_is_read(self, tmp_path, name, plans):
        """What an editor on Windows saved again is read like what the lesson wrote."""
        change(Desk(tmp_path), name, plans)
        path = tmp_path / name
        path.write_bytes(MARK + path.read_bytes())
        desk = Desk(tmp_path)
        assert desk.trouble == "" and stands(desk, name, plans)

    @pytest.mark.parametrize("why", UNREADABLE)
    def test_an_unreadable_record_is_a_fresh_start_told_in_whole_sentences(self, tmp_path, why):
        """The lesson opens, says which file cannot be read and what becomes of it, and reads it at once when it is mended."""
        (tmp_path / RECORD).write_bytes(UNREADABLE[why])
        desk = Desk(tmp_path)
        assert desk.record == Record() and desk.trouble.startswith("What was kept in record.json cannot be read (it is not ")
        assert "starts afresh" in desk.trouble and desk.trouble.endswith(".") and len(desk.trouble) < 250
        assert Form(desk, "form").shown()["trouble"] == desk.trouble
        (tmp_path / RECORD).write_text(written(Record(unit="cm")))
        desk.look_again()
        assert desk.record.unit == "cm" and desk.trouble == ""

    def test_a_lesson_that_is_open_loses_nothing_where_its_record_is_spoilt(self, tmp_path):
        """What the lesson holds is written anew, whole, beside the file that was spoilt."""
        desk = Desk(tmp_path)
        desk.change(unit="cm", style={"cup_parts": 2})
        (tmp_path / RECORD).write_bytes(b"{")
        desk.look_again()
        assert desk.record.unit == "cm" and "goes on with what it shows" in desk.trouble
        desk.change(wearer="Solveig")
        assert Desk(tmp_path).record == Record(wearer="Solveig", unit="cm", style={"cup_parts": 2})

    def test_a_correction_that_this_course_does_not_know_is_kept_in_a_copy(self, tmp_path):
        """What is read only in part is written on without the rest, and stands beside whole."""
        told = {"corrections": {"Maren": [{"line": "hem at the side", "by": 0.5}, {"line": "sleeve", "by": 1}]}}
        (tmp_path / CORRECTIONS).write_text(json.dumps(told))
        desk = Desk(tmp_path)
        said = keep(desk, lambda kept: kept.with_more("Maren", [Correction("hem at the side", 0.25)]), "")
        assert "only in part" in said
        assert json.loads((tmp_path / "corrections, not readable, 1.json").read_text()) == told
        assert [one.by for one in read_kept(desk)[0].of("Maren")] == [0.5, 0.25]

    def test_what_is_refused_leaves_the_file_where_it_was(self, tmp_path):
        """A change that is not allowed moves no file, not even one that cannot be read."""
        (tmp_path / CORRECTIONS).write_bytes(b"{")
        with pytest.raises(CorsetkitError, match="no line of the draft"):
            keep(Desk(tmp_path), lambda kept: kept.with_more("Maren", [Correction("sleeve", 0.5)]), "")
        assert os.listdir(tmp_path) == [CORRECTIONS]

    @pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the administrator may write everywhere")
    def test_in_a_folder_where_nothing_can_be_written_the_record_is_read(self, tmp_path):
        """A learner's folder that is only to be read is read, and what is chosen is said not to be kept."""
        Desk(tmp_path).change(unit="cm")
        tmp_path.chmod(0o555)
        try:
            desk = Desk(tmp_path)
            desk.change(wearer="Solveig")
        finally:
            tmp_path.chmod(0o755)
        assert desk.record.unit == "cm" and desk.trouble.startswith("What you choose is not kept beyond this sitting")

    def test_half_a_sign_is_kept_like_any_other(self, tmp_path):
        """Text that is no whole Unicode, as a page may send it, is written and read back."""
        Desk(tmp_path).change(own_name="Ad\ud83da")
        assert Desk(tmp_path).record.own_name == "Ad\ud83da"


class Lessons:
    """Two lessons on one folder, and beside them what must stand in the end."""

    def __init__(self, folder, seed, plans):
        self.dice, self.folder = random.Random(seed), folder
        self.desks = [Desk(folder), Desk(folder)]
        self.items, self.laid = plans
        self.files = [KeptPlanFile(desk) for desk in self.desks]
        self.record, self.corrections, self.plans = Record(), {}, {}

    def step(self):
        which = self.dice.randrange(2)
        desk = self.desks[which]
        if self.dice.random() < 0.3:
            desk.look_again()
        kind = self.dice.choice(["style"] * 3 + ["finish", "finish", "own", "guess", "guess", "one", "correct", "plan"])
        if kind == "plan":
            layer = self.dice.choice(list(self.laid))
            self.plans[layer] = self.dice.choice(self.laid[layer])
            self.files[which].keep("Maren", self.items, self.plans[layer])
        elif kind == "correct":
            wearer, line = self.dice.choice(["Maren", "Solveig"]), self.dice.choice(LINES).name
            self.corrections.setdefault(wearer, []).append(Correction(line, 0.1))
            keep(desk, lambda kept: kept.with_more(wearer, [Correction(line, 0.1)]), "")
        elif kind == "one":
            changes = self.dice.choice(
                [
                    {"unit": self.dice.choice(["in", "cm"])},
                    {"own_name": f"Ada {self.dice.random()}"},
                    {"source": "demo", "wearer": self.dice.choice(list(desk.demo))},
                ]
            )
            # What a lesson already shows is no change.
            changes = {name: value for name, value in changes.items() if getattr(desk.record, name) != value}
            self.record = replace(self.record, **changes)
            desk.change(**changes)
        else:
            name = {"guess": "guesses"}.get(kind, kind)
            key, value = self.value(kind)
            held = dict(getattr(desk.record, name))
            mine = dict(getattr(self.record, name))
            if key in held and self.dice.random() < 0.3:
                del held[key]
                mine.pop(key, None)
            elif held.get(key) != value:
                held[key] = mine[key] = value
            self.record = replace(self.record, **{name: mine})
            desk.change(**{name: held})

    def value(self, kind):
        if kind == "guess":
            return f"0{self.dice.randrange(9)}.guess", {"text": "9", "value": self.dice.random(), "right": 2.0, "start": 1.0}
        one = self.dice.choice(quantities({"style": Style, "finish": Finish, "own": Measurements}[kind]))
        return one.name, self.dice.choice(Control(one, "cm").stops)


@pytest.mark.parametrize("seed", range(12))
def test_two_lessons_change_one_folder_in_turn_and_nothing_is_lost(tmp_path, seed, plans):
    """After a hundred changes, made in either lesson whether or not it had looked, all of them stand,
    and both show the same."""
    both = Lessons(tmp_path, seed, plans)
    for _ in range(100):
        both.step()
    for desk, file in zip(both.desks, both.files):
        desk.look_again()
        assert desk.record == both.record
        assert {name: list(read_kept(desk)[0].of(name)) for name in both.corrections} == both.corrections
        assert file.read("Maren", both.items).plans == both.plans
    assert read_file(tmp_path / RECORD) == both.record
    assert sorted(os.listdir(tmp_path)) == sorted(
        name for name, there in ((RECORD, True), (CORRECTIONS, both.corrections), (f"{PLANS}Maren.json", both.plans)) if there
    )


WRITES = """
import sys
from corsetkit.pattern.pattern import Correction
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.shared.corrected import keep
folder, half = sys.argv[1], int(sys.argv[2])
desk = Desk(folder)
print("ready", flush=True)
sys.stdin.readline()
mine = [one for one in quantities(Style) if one.unit == "cm"][half::2]
for i in range(60):
    one = mine[i % len(mine)]
    value = one.low if i // len(mine) % 2 else one.high
    desk.change(style=desk.record.style | {one.name: value})
    desk.change(guesses=desk.record.guesses | {f"{half}.{i}": {"text": "9", "value": float(i), "right": 2.0, "start": 1.0}})
    keep(desk, lambda kept: kept.with_more(str(half), [Correction("hem at the side", i / 100)]), "")
assert desk.trouble == "", desk.trouble
for one in mine:
    print(one.name, desk.record.style[one.name])
"""


def test_two_processes_write_at_the_same_time_and_nothing_is_lost(tmp_path):
    """Two kernels that write as fast as they can lose neither values nor guesses nor corrections of each other."""
    running = [
        subprocess.Popen(
            [sys.executable, "-c", WRITES, str(tmp_path), str(half)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        )
        for half in (0, 1)
    ]
    for one in running:
        assert one.stdout.readline() == "ready\n"
    for one in running:
        one.stdin.write("go\n")
        one.stdin.flush()
    told = [one.communicate(timeout=120)[0] for one in running]
    assert [one.returncode for one in running] == [0, 0]
    desk = Desk(tmp_path)
    assert desk.trouble == ""
    assert {name: f"{value}" for name, value in desk.record.style.items()} == dict(
        line.split(" ") for one in told for line in one.splitlines()
    )
    assert desk.record.guesses.keys() == {f"{half}.{i}" for half in (0, 1) for i in range(60)}
    assert [len(read_kept(desk)[0].of(str(half))) for half in (0, 1)] == [60, 60]


class TestTwoLessons:
    """Two lessons, each on a desk of its own, as in two kernels."""

    @pytest.fixture
    def open_lesson(self, work, monkeypatch):
        def opened(lesson, cell):
            monkeypatch.setattr(course, "_live", {})
            monkeypatch.setattr(course, "_desks", {})
            return getattr(lesson, cell)()

        return opened

    @staticmethod
    def ask(cell, kind, **more):
        cell._on_page(cell, {"kind": kind, "asker": "a", "number": 1, **more}, [])
        return cell.shown

    def test_what_was_changed_in_one_lesson_is_not_undone_by_another(self, open_lesson, work):
        """A wearer chosen in a lesson that stayed open behind takes back no style value of the lesson before."""
        who, back = open_lesson(CUP, "wearer"), open_lesson(BACK, "drawing")
        self.ask(back, "set", changes={"waist_reduction": {"text": "2 1/2"}}, keep=True)
        self.ask(who, "pick", who="demo:Wanda")
        assert Desk(work).record == Record(wearer="Wanda", style={"waist_reduction": pytest.approx(6.35)})
        shown = self.ask(back, "set", changes={"lacing_gap": {"text": "2"}}, keep=True)
        assert "for Wanda" in shown["description"] and shown["state"]["waist_reduction"]["words"] == "2 1/2 in"
        assert Desk(work).record.wearer == "Wanda" and Desk(work).record.style.keys() == {"waist_reduction", "lacing_gap"}

    def test_undo_in_the_form_takes_back_only_what_the_form_changed(self, open_lesson, work):
        """A slider moved elsewhere since stays moved."""
        who, back = open_lesson(CUP, "wearer"), open_lesson(BACK, "drawing")
        self.ask(who, "pick", who="demo:Wanda")
        self.ask(back, "set", changes={"waist_reduction": {"text": "2 1/2"}}, keep=True)
        assert self.ask(who, "undo")["who"] == "demo:Maren"
        assert Desk(work).record.style == {"waist_reduction": pytest.approx(6.35)}

    def test_a_slider_under_the_hand_moves_on_where_another_lesson_changes_something(self, open_lesson, work):
        """A movement that has not come to rest yet is not lost, and is kept when it has."""
        back, who = open_lesson(BACK, "drawing"), open_lesson(CUP, "wearer")
        self.ask(back, "set", changes={"waist_reduction": {"text": "2 1/2"}})
        self.ask(who, "pick", who="demo:Wanda")
        shown = self.ask(back, "keep")
        assert shown["state"]["waist_reduction"]["words"] == "2 1/2 in" and "for Wanda" in shown["description"]
        assert Desk(work).record == Record(wearer="Wanda", style={"waist_reduction": pytest.approx(6.35)})

    def test_a_page_that_comes_into_sight_shows_what_stands(self, open_lesson):
        """The page's word that it is seen is enough, and it is no question that waits for an answer."""
        back, who = open_lesson(BACK, "drawing"), open_lesson(CUP, "wearer")
        self.ask(who, "pick", who="demo:Wanda")
        assert "for Maren" in back.shown["description"]
        back._on_page(back, {"kind": "sight", "page": "p", "seen": True}, [])
        assert "for Wanda" in back.shown["description"] and back.shown["asker"] == ""

    def test_of_two_pages_side_by_side_the_other_learns_of_a_change_by_itself(self, open_lesson, monkeypatch):
        """While a page is in sight its lesson looks from time to time; once it is out of sight it looks no more."""
        monkeypatch.setattr(in_sight, "EVERY", 0.02)
        back, who = open_lesson(BACK, "drawing"), open_lesson(CUP, "wearer")

        async def beside_each_other():
            back._on_page(back, {"kind": "sight", "page": "p", "seen": True}, [])
            self.ask(who, "pick", who="demo:Wanda")
            await asyncio.sleep(0.5)
            seen = back.shown["description"]
            back._on_page(back, {"kind": "sight", "page": "p", "seen": False}, [])
            await asyncio.sleep(0.1)
            self.ask(who, "pick", who="demo:Solveig")
            await asyncio.sleep(0.5)
            return seen, back.shown["description"]

        seen, behind = asyncio.run(beside_each_other())
        assert "for Wanda" in seen and "for Wanda" in behind

    def test_a_mistake_in_one_look_is_not_the_last_look(self, monkeypatch):
        """Where a look goes wrong, the next one is made all the same."""
        monkeypatch.setattr(in_sight, "EVERY", 0.01)
        looks = []

        def look():
            looks.append(1)
            if len(looks) == 2:
                raise ZeroDivisionError

        async def for_a_while():
            asyncio.get_running_loop().set_exception_handler(lambda *_: None)
            sight = InSight(look)
            sight.told("p", True)
            await asyncio.sleep(0.3)
            sight.told("p", False)

        asyncio.run(for_a_while())
        assert len(looks) > 3

    def test_a_look_where_nothing_has_changed_reads_no_file(self, open_lesson, monkeypatch):
        """A message of the page costs a look at the files' times and no reading."""
        back = open_lesson(BACK, "drawing")
        self.ask(back, "set", changes={"waist_reduction": {"text": "2 1/2"}}, keep=True)

        def read_at_all(path):
            raise AssertionError(path)

        monkeypatch.setattr("corsetkit.teaching.record.read_file", read_at_all)
        assert self.ask(back, "set", changes={"waist_reduction": {"text": "2"}})["refused"] == ""

    def test_every_lesson_has_the_form_that_tells_whether_the_page_is_in_sight(self):
        """One form a lesson, and it brings the page's part along."""
        texts = sorted(
            one for one in (Path(__file__).parents[1] / "lessons" / "text").glob("*.md") if not one.name.endswith(SUFFIX)
        )
        assert texts and all(one.read_text("utf-8").count("```show\nwearer\n") == 1 for one in texts)
        assert re.search(r'kind: ?"sight"', FormWidget._esm)


def test_wearers_read_in_one_lesson_are_in_the_list_of_another(tmp_path):
    """A table of wearers that one lesson has read is read by the lessons that are open beside it."""
    one, other = Desk(tmp_path / "work"), Desk(tmp_path / "work")
    write_wearers(tmp_path / "mine.csv", [("Ada", demo_wearers()[1][1])], "cm")
    Form(one, "form").handle({"kind": "path", "path": str(tmp_path / "mine.csv")})
    other.change(unit="cm")
    assert other.body() == ("Ada", demo_wearers()[1][1])
    one.look_again()
    assert one.record == other.record
