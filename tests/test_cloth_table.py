"""Cloth to buy in the bill, and the kept plans in lists and files of the lessons: one plan, one figure everywhere."""

import csv
import io

import pypdfium2
import pytest

from corsetkit.lay.cloth import WIDTHS, Cloth
from corsetkit.lay.cloth_length import say_bought
from corsetkit.lay.planning import plain_plan, plan
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.lessons.finish.bill_board import bill_board, cloth_rows
from corsetkit.teaching.shared.files_written import KeptPlanFile, items_by_layer, write_files
from corsetkit.teaching.shared.finished_drafts import Finishing


@pytest.fixture
def drafts(tmp_path):
    return Finishing(Desk(tmp_path / "work"))


def keep_a_plan(drafts):
    """A plan of the shell on folded cloth of 115 cm, kept as the lesson on sewing keeps it."""
    name, finished = drafts.finished(drafts.now())
    items = items_by_layer(finished)
    kept = plan(items["shell"], Cloth(width=115, laid="folded"), 0, layer="shell")
    KeptPlanFile(drafts.desk).keep(name, items, kept)
    return kept


def test_every_usual_width_has_its_length(drafts):
    """Each cloth and width has what its own plain lay comes to; on wider cloth never more is bought."""
    name, finished = drafts.finished(drafts.now())
    heads, rows, notes = cloth_rows(drafts.desk, name, finished)
    assert heads == ("cloth", "45 in wide", "54 in wide", "60 in wide") and len(notes) == 1
    items = items_by_layer(finished)
    assert [row[0] for row in rows] == list(items)
    for layer, *bought in rows:
        lengths = [plain_plan(items[layer], Cloth(width=width)).length for width in WIDTHS]
        assert bought == [say_bought(one, "in") for one in lengths] and lengths == sorted(lengths, reverse=True)


def test_the_bill_names_the_plan_that_is_kept(drafts):
    """Once a plan is kept, the bill says its width and length; where an allowance has changed since, it is not named."""
    kept = keep_a_plan(drafts)
    said = f"The plan you have kept for the shell: 45 in wide, laid folded, buy {say_bought(kept.length, 'in')}."
    assert said in bill_board(drafts).sentences
    drafts.desk.change(finish={"panel_allowance": 2.0})
    assert not any("you have kept" in one for one in bill_board(drafts).sentences)


def test_lists_and_plans_are_of_the_kept_plan(drafts):
    """The list of pieces and the drawn plans bear the kept plan for its cloth, the plain lay for the others."""
    kept = keep_a_plan(drafts)
    assert "3 pages" in write_files(drafts, "cutting") and "test square" not in write_files(drafts, "lists")
    folder = drafts.desk.folder
    text = (folder / "Maren_pieces.csv").read_text(encoding="utf-8-sig")
    rows = {row["name"]: row for row in csv.DictReader(io.StringIO(text)) if row["what"] == "cloth"}
    assert float(rows["shell"]["length (mm)"]) == pytest.approx(10 * kept.length, abs=0.006)
    assert rows["shell"]["width (in)"] == "45 in" and rows["lining"]["width (in)"] == "54 in"
    book = pypdfium2.PdfDocument(folder / "Maren_cutting.pdf")
    heads = [page.get_textpage().get_text_range().splitlines()[0] for page in book]
    assert heads[0] == f"Cutting plan, shell for Maren: {say_bought(kept.length, 'in')}, 45 in wide"
    assert [" ".join(head.split()[-3:]) for head in heads[1:]] == ["54 in wide"] * 2


def test_the_whole_folder_has_the_same_plans(drafts):
    """All of it in a folder: the same kept plan in list and drawing there."""
    kept = keep_a_plan(drafts)
    told = write_files(drafts, "all")
    folder = drafts.desk.folder / "Maren"
    assert "Maren_cutting.pdf" in told
    assert f"buy {say_bought(kept.length, 'in')}" in (folder / "Maren_pieces.csv").read_text("utf-8-sig")
    assert len(pypdfium2.PdfDocument(folder / "Maren_cutting.pdf")) == 3
