"""The lesson on sewing: lays measured anew, plans kept and read back, corrections that add up, and the order told whole."""

import json
import re
import sys
from html import escape

import pypdfium2
import pytest
from shapely import LineString, Polygon

from corsetkit import draft
from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.fitting.effect import moved
from corsetkit.fitting.faults import FAULTS
from corsetkit.fitting.lines import line_named
from corsetkit.geometry import paths
from corsetkit.lay.checking import faults
from corsetkit.lay.cloth import FOLDED, SINGLE, Cloth
from corsetkit.lay.cloth_length import say_bought
from corsetkit.lay.items import items_of, layers_of
from corsetkit.lay.plan_file import from_data
from corsetkit.lay.planning import plain_plan
from corsetkit.quantity import quantities
from corsetkit.sewing.text import sewing_order
from corsetkit.style import Style
from corsetkit.teaching import cells as course
from corsetkit.teaching.build import LESSONS, read_text
from corsetkit.teaching.desk import CORRECTIONS, Desk
from corsetkit.teaching.lessons.sewing import closer_lay
from corsetkit.teaching.lessons.sewing import closer_lay as lay_search
from corsetkit.teaching.lessons.sewing.board import order_board, write_order
from corsetkit.teaching.lessons.sewing.closer_lay import CloserLay
from corsetkit.teaching.lessons.sewing.corrected_sheet import farthest
from corsetkit.teaching.lessons.sewing.fitting_table import GROUPS, FittingTable, grouped
from corsetkit.teaching.lessons.sewing.lesson import LESSON, FittingWidget
from corsetkit.teaching.lessons.sewing.on_paper import by_hand, by_tape
from corsetkit.teaching.lessons.sewing.plain_lay import NARROW, WIDE, OnCloth, PlainLays, PlainPictures, controls, plan_sheet
from corsetkit.teaching.picture import STORED
from corsetkit.teaching.shared.corrected import Corrected, read_kept
from corsetkit.units import in_one_unit, parse_length, say_length

DEMO = list(Desk().demo)


def drafts_of(wearer="Maren", folder=None, **record):
    desk = Desk(folder)
    desk.change(wearer=wearer, **record)
    return Corrected(desk)


def finished_of(wearer):
    return drafts_of(wearer).finished({})[1]


def fault(words):
    return next(number for number, one in enumerate(FAULTS) if words in one.seen)


class TestPlainLay:
    @pytest.mark.parametrize("wearer", DEMO)
    @pytest.mark.parametrize("laid", [SINGLE, FOLDED])
    def test_everything_is_laid_on_the_cloth_and_nothing_overlaps(self, wearer, laid):
        """Counted and measured with shapely, on the narrowest and on the widest cloth of the slider."""
        finished = finished_of(wearer)
        (width, *_) = quantities(OnCloth)
        for layer in layers_of(finished):
            items = items_of(finished, layer)
            for wide in (width.low, width.high):
                plan = plain_plan(items, Cloth(width=wide, laid=laid), layer)
                assert faults(plan, items) == ()
                shapes = [Polygon([(p.real, p.imag) for p in one.outline]) for one in plan.placed]
                assert plan.length == pytest.approx(max(one.bounds[3] for one in shapes)) == plan.plain
                assert max(one.bounds[2] for one in shapes) <= plan.cloth.span - plan.cloth.selvedge + 1e-6
                cut = sum(layer_.count for one in finished.pieces for layer_ in one.layers if layer_.cloth == layer)
                cut += sum(strip.count for strip in finished.strips if strip.cloth == layer)
                halves = 2 if laid == FOLDED else 1
                assert sum(1 if one.at_fold else halves for one in plan.placed) == cut

    @pytest.mark.parametrize("wearer", DEMO)
    def test_each_drawing_is_the_plan_and_stays_in_its_frame(self, wearer):
        """What was laid out once and slid lies where a fresh plan has it; texts keep apart."""
        lays = PlainLays(finished_of(wearer), "shell", "in", wearer)
        sizes = set()
        for width in (165.0, 141.0, 104.0):
            plan = lays.plan(width, SINGLE)
            sheet, _ = lays.sheet(plan)
            sizes.add(sheet.size)
            for one, placed in zip((lays._marked(each) for each in plan.placed), plan.placed):
                assert [curve.start for curve in one.path] == pytest.approx(list(placed.outline))
            boxes = [one.box for one in recorded(sheet).written]
            assert len(boxes) > len(plan.placed)
            assert not [1 for i, a in enumerate(boxes) for b in boxes[:i] if overlap(a, b)]
            assert max(p.imag for one in plan.placed for p in one.outline) < sheet.high.imag
        assert len(sizes) == 1

    def test_the_width_starts_at_round_numbers_in_either_unit(self):
        for unit, words in (("in", "54 in"), ("cm", "137 cm")):
            (width, *_) = controls(unit)
            assert width.say(width.default, unit) == words

    @pytest.mark.parametrize("wearer", DEMO)
    def test_the_guess_asks_for_what_the_rows_come_to(self, wearer):
        """The answer stacked anew, from boxes alone: longest first, each into the first row that has room."""
        drafts = drafts_of(wearer)
        asked = PlainPictures(drafts).asked("cm")
        cloth = Cloth(width=NARROW)
        boxes = []
        for item in items_of(drafts.finished({})[1], "shell"):
            turned = Polygon([((p / item.grain * 1j).real, (p / item.grain * 1j).imag) for p in item.whole]).bounds
            boxes += [(turned[3] - turned[1], turned[2] - turned[0])] * item.count
        rows = []
        for high, wide in sorted(boxes, key=lambda box: -box[0]):
            row = next((one for one in rows if one[1] + wide <= cloth.width - 2 * cloth.selvedge + 1e-9), None)
            if row is None:
                row = [high, 0.0]
                rows.append(row)
            row[1] += wide + cloth.gap
        assert asked.right == pytest.approx(sum(row[0] for row in rows) + cloth.gap * (len(rows) - 1), abs=1e-6)
        assert asked.right > asked.start
        for slip, _ in asked.slips:
            assert abs(slip - asked.right) > asked.near
        assert "45 in" in PlainPictures(drafts).asked("in").question and "115 cm" in asked.question

    def test_the_guess_moves_from_the_wide_cloth_to_the_narrow_one(self):
        asked = PlainPictures(drafts_of()).asked("in")
        assert f"{say_length(asked.start, 'in')}" in asked.move(0.0).svg and "60 in wide" in asked.move(0.0).svg
        assert f"{say_length(asked.right, 'in')}" in asked.move(1.0).svg and "45 in wide" in asked.move(1.0).svg
        assert WIDE > NARROW


@pytest.fixture
def quick(monkeypatch):
    """Searches that are over at once: the packer's first lay alone."""
    real, further = lay_search.plan, lay_search.plan_further
    monkeypatch.setattr(lay_search, "plan", lambda items, cloth, seconds, *more: real(items, cloth, 0, *more))
    monkeypatch.setattr(lay_search, "plan_further", lambda known, items, seconds, *more: further(known, items, 0, *more))


def at_once(work):
    work()


def search(lay, **choose):
    for name, value in choose.items():
        lay.handle({"kind": "choose", "name": name, "value": value})
    lay.handle({"kind": "search", "seconds": 2})
    return lay.shown()


class TestCloserLay:
    def test_before_a_search_the_plain_lay_is_shown(self, tmp_path):
        shown = CloserLay(drafts_of(folder=tmp_path)).shown()
        assert shown["said"][0].startswith("This is the plain lay, row by row.")
        assert not any("lie plainly" in one for one in shown["said"][1:]), "said twice"
        assert [row[0] for row in shown["rows"]] == ["shell", "strength layer", "lining"]
        assert {row[-1] for row in shown["rows"]} == {"plain"} and not list(tmp_path.glob("*.json.*"))

    def test_what_was_found_is_kept_and_drawing_rows_and_words_agree(self, tmp_path, quick):
        lay = CloserLay(drafts_of("Ottilie", tmp_path), start=at_once)
        shown = search(lay, width="115")
        again = CloserLay(drafts_of("Ottilie", tmp_path)).shown()
        assert again["svg"] == shown["svg"] and again["rows"] == shown["rows"] and again["choice"] == shown["choice"]
        (told,) = json.loads(next(tmp_path.glob("cutting_plans*.json")).read_text())["cutting plans"]
        items = items_of(finished_of("Ottilie"), "shell")
        plan = from_data(told, items)
        assert faults(plan, items) == () and plan.length < plan.plain
        row = shown["rows"][0]
        assert row[3:5] == [say_length(plan.length, "in"), say_bought(plan.length, "in")] and row[-1] == "kept"
        assert say_length(plan.length, "in") in shown["svg"] and say_bought(plan.length, "in") in shown["svg"]
        assert shown["rows"][1][-1] == "plain"

    def test_the_sheets_are_of_the_plans_that_are_shown(self, tmp_path, quick, monkeypatch):
        lay = CloserLay(drafts_of(folder=tmp_path), start=at_once)
        search(lay)
        written = []
        real = closer_lay.write_lay_pdf
        monkeypatch.setattr(closer_lay, "write_lay_pdf", lambda laid, *more: written.extend(laid) or real(laid, *more))
        lay.handle({"kind": "sheets", "paper": "Letter"})
        rows = lay.shown()["rows"]
        assert [say_length(one.length, "in") for one in written] == [row[3] for row in rows]
        (one,) = tmp_path.glob("*.pdf")
        assert len(pypdfium2.PdfDocument(one)) == 3 and one.name in lay.note and str(tmp_path) in lay.note

    def test_looking_again_never_makes_it_longer(self, tmp_path, quick):
        lay = CloserLay(drafts_of(folder=tmp_path), start=at_once)
        first = search(lay)
        second = search(lay)
        first, again = (parse_length(shown["rows"][0][3], "in") for shown in (first, second))
        assert again <= first
        assert "closer one was found" in second["note"].lower()

    def test_another_pattern_makes_a_kept_plan_old_and_says_so(self, tmp_path, quick):
        drafts = drafts_of(folder=tmp_path)
        search(CloserLay(drafts, start=at_once))
        drafts.desk.change(finish={"panel_allowance": 2.0})
        shown = CloserLay(drafts).shown()
        assert shown["said"][0] == "The pattern has changed since the shell was laid: lay it again."
        assert {row[-1] for row in shown["rows"]} == {"plain"}

    @pytest.mark.parametrize("trouble", [ImportError("no packer here"), RuntimeError("it fell over"), ValueError("odd")])
    def test_where_the_search_fails_the_plain_lay_stays_and_says_why(self, tmp_path, monkeypatch, trouble):
        def fails(*_more, **_named):
            raise trouble

        monkeypatch.setattr("corsetkit.lay.planning.pack", fails)
        lay = CloserLay(drafts_of(folder=tmp_path), start=at_once)
        plain = lay.shown()["rows"]
        shown = search(lay)
        assert str(trouble) in shown["note"] and shown["note"].startswith("No closer lay could be searched for")
        assert not shown["busy"] and shown["rows"][0][3] == plain[0][3]

    def test_the_page_goes_on_while_a_search_runs_and_it_ends_as_it_began(self, tmp_path, quick):
        waiting, told = [], []
        drafts = drafts_of(folder=tmp_path)
        lay = CloserLay(drafts, told.append, waiting.append)
        assert search(lay)["busy"]
        assert search(lay)["note"].startswith("Not done: a lay is being searched for already")
        drafts.desk.change(wearer="Solveig")
        waiting.pop()()
        assert told[-1] is None and told[0]["share"] == 0.0 and told[-2]["share"] == 1.0
        assert [one.name for one in tmp_path.glob("cutting_plans*")] == ["cutting_plans_Maren.json"]
        assert not lay.shown()["busy"] and lay.shown()["rows"][0][-1] == "plain", "Solveig's is not laid yet"

    def test_a_file_that_cannot_be_read_is_told_and_stops_nothing(self, tmp_path, quick):
        (tmp_path / "cutting_plans_Maren.json").write_text("{")
        lay = CloserLay(drafts_of(folder=tmp_path), start=at_once)
        assert "was not read" in lay.shown()["said"][0] and lay.shown()["svg"]
        assert search(lay)["rows"][0][-1] == "kept"

    def test_cloth_that_is_too_narrow_is_a_sentence_and_the_other_cloths_are_still_told(self, tmp_path, monkeypatch):
        real = closer_lay.plain_plan

        def narrow(items, cloth, layer):
            other = cloth.replaced(width=70.0, selvedge=3.0, gap=2.0, laid=FOLDED)
            return real(items, other if layer == "shell" else cloth, layer)

        monkeypatch.setattr(closer_lay, "plain_plan", narrow)
        drafts = drafts_of("Ottilie", tmp_path, finish={"panel_allowance": 3.0, "hem_allowance": 3.0})
        room = property(lambda cloth: 20.0 if cloth.width == 70 else cloth.high)
        monkeypatch.setattr("corsetkit.lay.cloth.Cloth.room", room)
        shown = CloserLay(drafts).shown()
        assert "has room for" in shown["refused"] and shown["refused"].endswith(".") and shown["rows"][0][3] == "–"
        assert shown["rows"][1][3] != "–"

    def test_who_is_not_measured_yet_is_told_so(self, tmp_path):
        drafts = drafts_of(folder=tmp_path, source="own")
        lay, table = CloserLay(drafts), FittingTable(drafts, "fitting")
        lay.handle({"kind": "search", "seconds": 2})
        assert lay.note.startswith("Not done: the wearer's form is not finished") and not lay.busy
        for shown in (lay.shown(), table.shown()):
            assert shown["refused"].startswith("The wearer's form is not finished")
        assert "form is not finished" in repr(order_board(drafts)) and "form is not finished" in repr(by_hand(drafts))

    @pytest.mark.parametrize(
        "asked",
        [
            {"kind": "search", "seconds": 3600},
            {"kind": "search", "seconds": True},
            {"kind": "sheets", "paper": "A0"},
            {"kind": "choose", "name": "width", "value": "1"},
            {"kind": "choose", "name": "layer", "value": "felt"},
        ],
    )
    def test_what_is_not_offered_is_not_done(self, tmp_path, asked):
        lay = CloserLay(drafts_of(folder=tmp_path), start=at_once)
        lay.handle(asked)
        assert lay.note.startswith("Not done: ") and not lay.busy and not list(tmp_path.glob("cutting*"))

    def test_with_a_nap_no_head_points_down(self, tmp_path, quick):
        lay = CloserLay(drafts_of(folder=tmp_path), start=at_once)
        shown = search(lay, one_way="yes", width="115")
        assert "upside down" not in shown["description"] and shown["choice"]["one_way"] == "yes"
        assert shown["rows"][0][2] == "single, nap" and shown["rows"][0][-1] == "kept"

    def test_a_plan_kept_for_other_cloth_than_what_is_drawn_is_told_apart(self, tmp_path, quick):
        """The list goes on counting what is kept: who has napped cloth must see that it is not hers."""
        lay = CloserLay(drafts_of(folder=tmp_path), start=at_once)
        kept = search(lay)["rows"][0]
        lay.handle({"kind": "choose", "name": "one_way", "value": "yes"})
        shown = lay.shown()
        assert shown["rows"][0] == kept and kept[2] == "single"
        assert "still counts the plan that is kept for the shell: 54 in wide, single." in shown["said"][1]
        assert search(lay)["rows"][0][2] == "single, nap" and "still counts" not in " ".join(lay.shown()["said"])

    @pytest.mark.parametrize("unit", ["in", "cm"])
    @pytest.mark.parametrize("laid", [SINGLE, FOLDED])
    def test_the_heading_is_written_whole_and_over_nothing(self, unit, laid):
        finished = finished_of("Ottilie")
        for width in (115.0, 150.0):
            plan = plain_plan(items_of(finished, "shell"), Cloth(width=width, laid=laid), "shell")
            sheet, _ = plan_sheet(plan, unit, "Ottilie")
            words = list(recorded(sheet).written)
            assert not any("\u2026" in one.text for one in words)
            assert not [1 for i, a in enumerate(words) for b in words[:i] if overlap(a.box, b.box)]


class TestFitting:
    def test_every_fault_stands_in_one_group_and_the_groups_in_the_order_of_fitting(self):
        told = [number for ones in grouped().values() for number, _ in ones]
        assert sorted(told) == list(range(len(FAULTS)))
        assert list(grouped()) == ["Lacing gap and waist", "Underbust", "Cups", "Top edge", "Hem", "Yoke"]
        for lines in GROUPS.values():
            for name in lines:
                assert line_named(name).name == name
        assert "Yoke" not in grouped(Style(yoke=False))

    def test_the_text_tells_the_same_order(self):
        part = read_text("09_sewing").partition("## The fitting")[2].partition("## ")[0]
        assert [one.lower() for one in re.findall(r"^\d\. \*\*(.+?)\.\*\*", part, re.M)] == [one.lower() for one in GROUPS]

    @pytest.mark.parametrize("number", range(len(FAULTS)))
    def test_each_fault_is_drawn_or_refused_in_a_sentence_at_both_ends_of_its_slider(self, number):
        wearer = DEMO[number % len(DEMO)]
        table = FittingTable(drafts_of(wearer, unit=("in", "cm")[number % 2]), "fitting")
        table.handle({"kind": "fault", "which": number})
        for at in (0, len(table.shown()["control"]["words"]) - 1):
            table.handle({"kind": "set", "changes": {"pinch": {"at": at}}})
            shown = table.shown()
            assert shown["fault"] == number and (shown["refused"] or f"for {wearer}" in shown["description"])
            assert "\u2026" not in shown["svg"], "a heading is written whole"
            for one in filter(None, (shown["refused"], *shown["said"])):
                assert one.endswith(".")
            later = [one for one in shown["said"] if "in the next pass" in one]
            assert len(later) == (1 if FAULTS[number].further and not shown["refused"] else 0)
            assert all(line in later[0] for line, _ in FAULTS[number].further if later)

    @pytest.mark.parametrize("number", range(len(FAULTS)))
    def test_the_farthest_move_is_where_shapely_finds_it(self, number):
        """Each line that moved, by the Hausdorff distance of its two states: measured by another library."""
        body = Desk().demo[DEMO[(number + 3) % len(DEMO)]]
        before = draft(body)
        for one in moved(before, draft(body, None, FAULTS[number].corrections())):
            p, q = farthest(one)
            assert abs(p - q) == pytest.approx(one.most, abs=0.02), one.name
            if one.name == "bust point" or "side seam" in one.name or one.name == "side dart":
                continue
            lines = [LineString([(z.real, z.imag) for z in paths.flattened(path, 0.005)]) for path in (one.before, one.after)]
            found = max(lines[0].hausdorff_distance(lines[1]), lines[1].hausdorff_distance(lines[0]))
            assert abs(p - q) == pytest.approx(found, abs=0.02), one.name

    def test_corrections_add_up_and_go_with_the_wearer_through_the_lesson(self, tmp_path):
        drafts = drafts_of(folder=tmp_path)
        table = FittingTable(drafts, "fitting")
        plain = drafts.pattern({})[1].girths["waist"].finished
        table.handle({"kind": "fault", "which": fault("at the waist, like ( )")})
        table.handle({"kind": "set", "changes": {"pinch": {"text": "1.2 cm"}}})
        for _ in range(2):
            table.handle({"kind": "add"})
            assert table.note.startswith("Kept for Maren.")
        assert len(table.shown()["kept"]) == 2
        assert table.shown()["totals"] == ["In all: waist girth: 15/16 in larger all round."]
        fresh = drafts_of(folder=tmp_path)
        assert fresh.pattern({})[1].girths["waist"].finished == pytest.approx(plain + 2.4, abs=1e-6)
        assert len(fresh.finished({})[1].pattern.corrections) == 2, "the print names them from here"
        assert read_kept(drafts.desk)[0].of("Solveig") == ()
        table.handle({"kind": "back", "place": 0})
        assert table.note.startswith("Taken back: waist girth") and len(table.shown()["kept"]) == 1
        assert fresh.pattern({})[1].girths["waist"].finished == pytest.approx(plain + 1.2, abs=1e-6)
        table.handle({"kind": "back", "place": 0})
        assert fresh.corrections() == () and table.shown()["kept"] == []

    def test_one_pass_too_many_is_refused_and_not_kept(self, tmp_path):
        table = FittingTable(drafts_of(folder=tmp_path), "fitting")
        table.handle({"kind": "fault", "which": fault("gapes")})
        table.handle({"kind": "set", "changes": {"pinch": {"text": "1.2 cm"}}})
        for _ in range(6):
            table.handle({"kind": "add"})
        assert len(table.shown()["kept"]) == 3, "three passes of the most are what the draft has room for"
        assert "goes too far" in table.note and table.refused.endswith(".") and "svg" in table.shown()["svg"]

    def test_what_is_typed_and_cannot_be_read_stays_to_be_mended(self, tmp_path):
        table = FittingTable(drafts_of(folder=tmp_path), "fitting")
        before = table.picture
        table.handle({"kind": "set", "changes": {"pinch": {"text": "90 cm"}}})
        shown = table.shown()
        assert shown["refused"] and shown["state"]["words"] == "90 cm" and shown["state"]["wrong"] and table.picture is before
        table.handle({"kind": "set", "changes": {"pinch": {"at": 3}}})
        assert not table.shown()["refused"]

    @pytest.mark.parametrize(
        "asked",
        [
            {"kind": "fault", "which": 999},
            {"kind": "fault"},
            {"kind": "back", "place": 7},
            {"kind": "back", "place": None},
            {"kind": "set"},
            {"kind": "sing"},
            {},
        ],
    )
    def test_what_a_page_cannot_mean_changes_nothing(self, tmp_path, asked):
        table = FittingTable(drafts_of(folder=tmp_path), "fitting")
        before = table.shown() | {"note": "", "refused": ""}
        table.handle(asked)
        assert table.shown() | {"note": "", "refused": ""} == before | {"state": table.shown()["state"]}
        assert not (tmp_path / CORRECTIONS).exists()

    def test_a_file_that_cannot_be_read_is_told_and_put_beside_before_another_is_written(self, tmp_path):
        """The corrections of before stand under another name, the new one is kept, and the page says both."""
        (tmp_path / CORRECTIONS).write_text("not ours")
        table = FittingTable(drafts_of(folder=tmp_path), "fitting")
        assert "was not read" in table.shown()["trouble"] and table.shown()["svg"]
        table.handle({"kind": "add"})
        assert table.note.startswith("Kept for Maren. corrections.json could not be read; ")
        assert (tmp_path / "corrections, not readable, 1.json").read_text() == "not ours"
        assert len(table.shown()["kept"]) == 1 and not table.shown()["trouble"]

    @pytest.mark.parametrize("unit, other", [("in", r"\d ?cm\b"), ("cm", r"\d in\b")])
    @pytest.mark.parametrize("number", range(len(FAULTS)))
    def test_whatever_is_refused_speaks_the_learners_unit_alone(self, tmp_path, number, unit, other):
        """Kept again and again until it goes too far, a correction is refused in inches where inches are chosen,
        else in cm."""
        table = FittingTable(drafts_of(("Maren", "Ottilie")[number % 2], tmp_path, unit=unit), "fitting")
        table.handle({"kind": "fault", "which": number})
        table.handle({"kind": "set", "changes": {"pinch": {"at": len(table.shown()["control"]["words"]) - 1}}})
        refused = []
        for _ in range(7):
            table.handle({"kind": "add"})
            shown = table.shown()
            refused += filter(None, (shown["refused"], shown["note"]))
            assert not (shown["refused"] and "goes on from there" in shown["note"]), "beside a refusal that is not true"
        assert any("goes too far" in one or "cannot be drawn" in one for one in refused)
        assert not [one for one in refused if re.search(other, one)]

    def test_the_last_pass_that_can_be_drawn_is_kept_and_only_that_is_said(self, tmp_path):
        """Four times "the top edge gapes": the one more that the drawing would show cannot be drawn,
        and the note is silent on it."""
        table = FittingTable(drafts_of(folder=tmp_path), "fitting")
        table.handle({"kind": "fault", "which": fault("gapes")})
        while not table.refused:
            table.handle({"kind": "add"})
        assert table.note == "Kept for Maren." and "goes too far" in table.refused and " cm" not in table.refused

    def test_a_correction_taken_back_is_the_one_that_was_shown(self, tmp_path):
        """Where another lesson has taken one back meanwhile, the button still takes back its own, and what is gone is said."""
        table, other = (FittingTable(drafts_of(folder=tmp_path), "fitting") for _ in range(2))
        for which in ("gapes", "the front when she sits"):
            table.handle({"kind": "fault", "which": fault(which)})
            table.handle({"kind": "add"})
        other.refresh()
        other.handle({"kind": "back", "place": 0})
        table.handle({"kind": "back", "place": 1})
        assert table.note.startswith("Taken back: hem at the front") and read_kept(table.drafts.desk)[0].of("Maren") == ()
        table.handle({"kind": "add"})
        other.refresh()
        table.handle({"kind": "back", "place": 0})
        other.handle({"kind": "back", "place": 0})
        assert other.note == "Not done: this correction is not there any more."

    def test_a_kept_correction_reaches_the_other_cells(self, tmp_path, monkeypatch):
        monkeypatch.setenv("CORSETKIT_WORK", str(tmp_path))
        monkeypatch.setattr(course, "_live", {})
        monkeypatch.setattr(course, "_desks", {})
        cells = {name: getattr(LESSON, name)() for name in ("drawing", "lay", "order", "hand", "tape", "fitting", "print")}
        before = {name: one.shown.get("html") or one.shown["svg"] for name, one in cells.items()}
        fitting = cells["fitting"]
        sits = {"kind": "fault", "which": fault("the front when she sits"), "asker": "a", "number": 1}
        fitting._on_page(fitting, sits, [])
        fitting._on_page(fitting, {"kind": "add", "asker": "a", "number": 2}, [])
        for name in ("drawing", "lay", "order", "hand", "tape"):
            assert (cells[name].shown.get("html") or cells[name].shown["svg"]) != before[name], name
        board = cells["print"]
        board._on_page(board, {"kind": "do", "choice": "A4", "asker": "a", "number": 1}, [])
        assert "Written into" in board.shown["answer"] and list(tmp_path.glob("*.pdf"))
        assert read_kept(course.desk())[0].of("Maren")[0].line == "hem at the front"


class TestOrder:
    @pytest.mark.parametrize("wearer", DEMO[:3])
    @pytest.mark.parametrize("unit", ["in", "cm"])
    def test_every_stage_every_move_and_every_caution_is_there_in_one_unit(self, wearer, unit):
        drafts = drafts_of(wearer, unit=unit)
        stored = order_board(drafts)
        stages = sewing_order(drafts.finished({})[1])
        assert stored.html.count("<details>") == len(stages) == stored.html.count("<summary>")
        for number, stage in enumerate(stages, 1):
            assert f"{number}. {stage.title}." in stored.sentences
            cautions = [f"Take care: {one.of}. {one.text}" for one in stage.cautions]
            for text in (*(move.text for move in stage.moves), *cautions):
                assert in_one_unit(text, unit) in stored.sentences
            folded = stored.html.split("<details>")[number]
            for one in stage.cautions:
                named = re.search(rf"<b>Take care: [^<]*\b{one.of}\b[^<]*</b> ([^<]*)", folded)
                assert named and (named[1] == escape(one.text) or re.match(r"As said in stages? \d", named[1])), one.of
                assert one.of != "whoever tries it on" or named[1] == escape(one.text), "of her body in full each time"
        assert stored.html.count("Steam burns") == 1
        assert not re.search(r"cm \(-?\d[\d /]* in\)", " ".join(stored.sentences)), "both units at once"

    def test_it_is_written_where_it_says(self, tmp_path):
        drafts = drafts_of(folder=tmp_path)
        said = write_order(drafts, "text")
        assert str(tmp_path) in said and "The toile" in (tmp_path / "sewing_Maren.txt").read_text(encoding="utf-8")


class TestOnPaper:
    def test_without_corrections_it_is_an_example_and_says_so(self):
        assert "so this is an example" in by_tape(drafts_of()).sentences[0]

    @pytest.mark.parametrize("wearer", DEMO)
    def test_the_marks_and_seams_are_those_of_the_two_patterns(self, wearer, tmp_path):
        drafts = drafts_of(wearer, tmp_path, unit="cm")
        table = FittingTable(drafts, "fitting")
        table.handle({"kind": "fault", "which": fault("digs in at the side")})
        table.handle({"kind": "add"})
        told = " ".join(by_hand(drafts).sentences)
        body = drafts.desk.body()[1]
        before, after = draft(body), draft(body, None, drafts.corrections())
        (seam,) = [(a.lengths[0], b.lengths[0]) for a, b in zip(before.seams, after.seams) if a.name == "side seam"]
        assert (
            f", side seam: both sides are {say_length(seam[1], 'cm')} now, {say_length(seam[0] - seam[1], 'cm')} shorter"
            in told
        )
        assert "set a mark 1 cm up" in told.replace("1.0 cm", "1 cm")
        for level, girth in after.girths.items():
            assert f"{level.capitalize()}, laced, the gap counted: {say_length(girth.finished, 'cm')}" in " ".join(
                by_tape(drafts).sentences
            )

    def test_on_the_back_the_side_lies_to_the_left(self):
        """A larger top girth moves the back's side seam outwards: away from the centre back."""
        told = [one for one in by_hand(drafts_of()).sentences if "back side seam" in one]
        assert told and "towards the side" in told[0]


class TestPage:
    def test_the_fault_that_is_chosen_stays_chosen_whatever_number_a_question_has(self, tmp_path):
        """The answer bears the question's own number, so nothing of the fitting may be called so."""
        table = FittingTable(drafts_of(folder=tmp_path), "fitting")
        assert not table.shown().keys() & {"number", "asker"}
        page = FittingWidget(table)
        for number, asked in enumerate(({"kind": "fault", "which": fault("gapes")}, {"kind": "add"}, {"kind": "add"}), 1):
            page._on_page(page, asked | {"asker": "a", "number": number}, [])
            assert page.shown["fault"] == fault("gapes") and page.shown["number"] == number

    def test_no_message_uses_a_word_that_the_line_to_the_kernel_keeps_for_itself(self):
        """The page numbers its questions, so a message's own number would be lost."""
        for page in (LESSONS.parent / "corsetkit/teaching/page").glob("*.js"):
            for asked in re.findall(r"\.ask\(\{([^}]*)\}", page.read_text("utf-8")):
                assert not re.search(r"\b(number|asker)\b\s*:", asked), f"{page.name}: {asked}"

    def test_the_stored_state_asks_no_packer(self, monkeypatch):
        monkeypatch.setenv(STORED, "1")
        monkeypatch.setitem(sys.modules, "spyrrow", None)
        first = [repr(getattr(LESSON, name)()) for name in ("drawing", "lay", "guess", "fitting")]
        assert first == [repr(getattr(LESSON, name)()) for name in ("drawing", "lay", "guess", "fitting")]
        assert all(one.endswith(".") for one in first)
