"""The lists as a spreadsheet reads them: whole, in both units, against pattern and bill."""

import csv
import io
import re
from fractions import Fraction

import pytest
from figures import CASES, figure, ready_to_cut, words
from shapely import Polygon

from corsetkit import Correction, CorsetkitError, Style, demo_wearers, draft
from corsetkit.drawing.marks import seam_letter
from corsetkit.export.csv_table import csv_bytes
from corsetkit.export.piece_list import piece_rows, write_pieces
from corsetkit.export.seam_report import seam_rows, write_seams
from corsetkit.finish.bill import bill
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import CLOTHS, finish
from corsetkit.lay.cloth import Cloth
from corsetkit.lay.items import items_of
from corsetkit.lay.planning import plan, plans
from corsetkit.pattern.edge import Kind
from corsetkit.units import parse_length


def read_back(path):
    """The file's rows as dicts, read as a spreadsheet would: by the byte order mark, commas, quotation marks."""
    data = path.read_bytes()
    assert data.startswith(b"\xef\xbb\xbf") and data.endswith(b"\r\n")
    return list(csv.DictReader(io.StringIO(data.decode("utf-8-sig"), newline="")))


@pytest.mark.parametrize("case", CASES[::5], ids=words)
@pytest.mark.parametrize("unit", ["in", "cm"])
def test_the_piece_list_is_the_bill(tmp_path, case, unit):
    """Every piece in every cloth, strip, bone and eyelet of the bill has its row, with counts and lengths in both units."""
    finished = ready_to_cut(figure(*case))
    needed = bill(finished)
    rows = read_back(write_pieces(finished, tmp_path / "p.csv", unit, "Ana", "2026-03-01"))
    of = {what: [row for row in rows if row["what"] == what] for what in {row["what"] for row in rows}}
    counts = {(row["number"], row["name"], row["cloth"]): int(row["how many"]) for row in of["piece"]}
    assert counts == {(str(cut.number), cut.name, cut.cloth): cut.count for cut in needed.cuts}
    assert {row["cloth"] for row in of["piece"]} == set(CLOTHS)
    assert [row["how"] for row in of["piece"]] == [cut.how for cut in needed.cuts]
    assert sum(int(row["how many"]) for row in of["bone"]) == needed.bone_count
    assert sum(int(row["how many"]) for row in of["eyelet"]) == needed.eyelet_count
    (lacing,) = of["lacing"]
    assert float(lacing["length (mm)"]) == pytest.approx(10 * needed.lacing_open, abs=0.006)
    assert len(of["strip"]) + len(of["tape"]) == len(needed.strips)
    for kind, ones in (("bone", needed.bones), ("strip", finished.strips)):
        for row, one in zip(of[kind], ones):
            assert float(row["length (mm)"]) == pytest.approx(10 * one.length, abs=0.006)
            # 1/16 in is 1.5875 mm: rounded to its nearest, a length is off by no more than half of it.
            assert 10 * parse_length(row[f"length ({unit})"], unit) == pytest.approx(10 * one.length, abs=0.8)


@pytest.mark.parametrize("how", [Finish(), Finish(facing="folded", armscye_allowance=0)], ids=["strip", "folded, bound"])
def test_edges_stand_with_their_allowances(how):
    """Each piece's row lists its edges in their order, each with its allowance, bound or on the fold."""
    finished = ready_to_cut(figure("Maren"), how)
    heading, rows = piece_rows(finished, "cm")
    place = heading.index("edges and allowances (cm)")
    by_number = {row[1]: row[place].split("; ") for row in rows if row[0] == "piece"}
    for one in finished.pieces:
        told = by_number[one.piece.number]
        assert len(told) == len(one.piece.edges)
        for text, edge, width in zip(told, one.piece.edges, one.allowances):
            assert text.startswith(edge.name)
            none = "on the fold" if edge.kind.value == "fold" else "none, bound"
            assert text.endswith(f"{width:g} cm" if width else none)


def test_corrections_and_notes_are_rows():
    """What fittings corrected and what the bill warns of stands in the list, in one unit."""
    pattern = draft(demo_wearers()[0][1], Style(), (Correction("underbust line", 0.5), Correction("hem at the side", -0.4)))
    _, rows = piece_rows(finish(pattern), "cm")
    assert [row[2] for row in rows if row[0] == "correction"] == [
        "underbust line: 0.5 cm lower",
        "hem at the side: 0.4 cm lower",
    ]
    notes = [row[2] for row in rows if row[0] == "note"]
    assert any("no front opening" in note for note in notes) and not any(" in)" in note for note in notes)
    assert not any(row[0] == "correction" for row in piece_rows(ready_to_cut(figure("Maren")))[1])


@pytest.mark.parametrize("case", CASES[::7], ids=words)
def test_cloth_to_buy_is_enough_and_no_ell_too_much(case):
    """Each cloth's row: what is bought covers the lay, by less than a shop's step; the share is area over bought width.

    The area is shapely's, of every cutting line opened out; strips are rectangles. Steps of 1/8 yd and 5 cm are common
    practice, no source."""
    finished = ready_to_cut(figure(*case))
    laid = plans(finished, Cloth(width=150), None)
    whole = {}
    for one in finished.pieces:
        for layer in one.layers:
            area = Polygon([(p.real, p.imag) for p in one.cutting]).area
            halves = 2 if any(edge.kind is Kind.FOLD for edge in one.piece.edges) else 1
            whole[layer.cloth] = whole.get(layer.cloth, 0) + area * halves * layer.count
    for strip in finished.strips:
        if strip.cloth in whole:
            whole[strip.cloth] += strip.count * strip.length * strip.width
    for unit, cm, step in (("in", 91.44, 11.43), ("cm", 100, 5)):
        heading, rows = piece_rows(finished, unit, plans=laid)
        mine = [dict(zip(heading, row)) for row in rows if row[0] == "cloth"]
        assert [row["name"] for row in mine] == list(CLOTHS)
        for row in mine:
            length = row["length (mm)"] / 10
            amount, yards = re.match(r"buy (.*) (yd|m);", row["note"]).groups()
            bought = cm * sum(map(float, map(Fraction, amount.split())))
            assert (yards == "yd") == (unit == "in") and 0 <= bought - length < step + 0.01
            share = float(re.search(r"(\d+) % of it", row["note"])[1]) / 100
            assert share == pytest.approx(whole[row["name"]] / (150 * length), abs=0.0051)
            assert row["width (mm)"] == 1500 and row["how"] == "laid single, in rows"
    assert not any(row[0] == "cloth" for row in piece_rows(finished)[1])


def test_a_closer_lay_is_called_so():
    """A plan that takes up less than the rows is told as such, with its own length."""
    finished = ready_to_cut(figure("Maren"))
    laid = {"shell": plan(items_of(finished, "shell"), Cloth(width=150), 1, layer="shell")}
    assert laid["shell"].length < laid["shell"].plain
    (row,) = (row for row in piece_rows(finished, "cm", plans=laid)[1] if row[0] == "cloth")
    assert row[5] == "laid single, closer than in rows" and row[7] == pytest.approx(10 * laid["shell"].length, abs=0.006)


def test_channels_and_the_widest_cloth_between_bones_are_rows():
    """The channels' sum is over every bone; no cloth between two bones is wider than was asked for."""
    choices = Finish(widest_unsupported=5.0)
    finished = ready_to_cut(figure("Maren"), choices)
    heading, rows = piece_rows(finished, "cm")
    rows = [dict(zip(heading, row)) for row in rows]
    (channel,) = (row for row in rows if row["what"] == "channel")
    bones = [row for row in rows if row["what"] == "bone"]
    longer = sum(row["how many"] * (row["length (mm)"] + 10 * choices.bone_shorter) for row in bones)
    assert channel["length (mm)"] == pytest.approx(longer, abs=0.1) and channel["how many"] == sum(
        row["how many"] for row in bones
    )
    between = [row["length (mm)"] for row in rows if row["what"] == "between bones"]
    assert len(between) == 4 and max(between) <= 50


@pytest.mark.parametrize("case", CASES[::5], ids=words)
@pytest.mark.parametrize("unit", ["in", "cm"])
def test_the_seam_report_is_the_pattern(tmp_path, case, unit):
    """Every seam has a row under its letter, both sides with their lengths, the difference, and its notches."""
    pattern = figure(*case)
    rows = read_back(write_seams(finish(pattern), tmp_path / "s.csv", unit))
    assert [row["letter"] for row in rows] == [seam_letter(seam.number) for seam in pattern.seams]
    for row, seam in zip(rows, pattern.seams):
        for side, name in ((0, "one"), (1, "two")):
            assert float(row[f"side {name} (mm)"]) == pytest.approx(10 * seam.lengths[side], abs=0.006)
            assert 10 * parse_length(row[f"side {name} ({unit})"], unit) == pytest.approx(10 * seam.lengths[side], abs=0.8)
        assert float(row["difference (mm)"]) == pytest.approx(10 * seam.difference, abs=0.006)
        assert int(row["notches"]) == len(seam.marks)
        marks = [float(one) for one in row["notches from the start (mm)"].split("; ") if one]
        assert marks == pytest.approx([10 * mark for mark in seam.marks], abs=0.006)
        back = seam.name in ("back dart seam", "back yoke")
        assert row["cuts a notch"] == ("" if not seam.marks else "2" if back else "1")


def test_a_difference_is_told_where_there_is_one():
    """A seam whose sides differ says by how much, in the small unit of a hand and in mm."""
    finished = ready_to_cut(figure("Maren"))
    seam = finished.pattern.seams[4]

    class Longer:
        def __getattr__(self, name):
            changed = {"lengths": (seam.lengths[0] + 0.32, seam.lengths[1]), "difference": 0.32}
            return changed.get(name) or getattr(seam, name)

    class Changed:
        pattern = type("P", (), {"seams": (Longer(),), "pieces": finished.pattern.pieces, "steps": finished.pattern.steps})

    heading, (row,) = seam_rows(Changed, "in")
    told = dict(zip(heading, row))
    assert told["difference (in)"] == "1/8 in" and told["difference (mm)"] == 3.2


def test_no_cell_is_taken_for_a_date_or_reckoned_out():
    """No cell is a bare fraction, a name that begins like a formula has an apostrophe before it, numbers stay numbers."""
    finished = ready_to_cut(figure("Maren"))
    for heading, rows in (piece_rows(finished, "in", "=1+2"), seam_rows(finished, "in")):
        table = list(csv.reader(io.StringIO(csv_bytes(heading, rows).decode("utf-8-sig"), newline="")))
        assert all(len(row) == len(heading) for row in table)
        for cell in (cell for row in table for cell in row):
            assert not re.fullmatch(r"[\d ]*\d+/\d+", cell) and not cell.startswith(("=", "+", "@"))
    text = csv_bytes(("a", "b", "c"), [("=cmd", -0.5, "a\nb")]).decode("utf-8-sig")
    assert text == "a,b,c\r\n'=cmd,-0.5,a b\r\n"
    with pytest.raises(ValueError, match="2 cells for 3"):
        csv_bytes(("a", "b", "c"), [("1", "2")])


def test_lists_are_written_whole_or_not_at_all(tmp_path):
    """A missing folder and an unknown unit are one sentence, and nothing is left."""
    finished = ready_to_cut(figure("Maren"))
    for write in (write_pieces, write_seams):
        with pytest.raises(CorsetkitError, match="does not exist"):
            write(finished, tmp_path / "nowhere" / "x.csv")
        with pytest.raises(CorsetkitError, match="write cm or in"):
            write(finished, tmp_path / "x.csv", "ell")
    assert list(tmp_path.iterdir()) == []
