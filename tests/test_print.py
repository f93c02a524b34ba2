"""The print, measured in the PDF by readers that did not write it."""

import datetime
import os
import stat

import pdfplumber
import pypdfium2
import pytest
from drawn_patterns import drawn_patterns
from pdf_lines import curves
from shapely import box
from shapely.geometry import Polygon
from toy_pattern import toy_pattern

from corsetkit import CorsetkitError
from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.geometry.curve import Cubic
from corsetkit.geometry.paths import flattened
from corsetkit.printing.draft_print import write_print
from corsetkit.printing.packing import packed
from corsetkit.printing.paper import MARGIN, OVERLAP, PAPERS, paper_named
from corsetkit.printing.tiles import plan_print, print_sheets

PATTERNS = drawn_patterns(every=False)
MM = 25.4 / 72
NAME = "\u0141\u00f3d\u017a Gr\u00f6\u00dfe"
DAY = datetime.date(2026, 3, 1)


@pytest.fixture(scope="module")
def printed(tmp_path_factory):
    """The made-up pattern printed on A4."""
    path = tmp_path_factory.mktemp("print") / "pattern.pdf"
    return path, write_print(toy_pattern(), path, "A4", "in", NAME, DAY)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_squares_are_true(tmp_path, paper):
    """The test squares measure 100.00 mm and 101.60 mm a side, within 0.01 mm, on a page of the paper's size."""
    write_print(toy_pattern(), tmp_path / "p.pdf", paper, date=DAY)
    with pdfplumber.open(tmp_path / "p.pdf") as book:
        page = book.pages[0]
        sizes = {"A4": (210, 297), "Letter": (215.9, 279.4)}
        assert (float(page.width) * MM, float(page.height) * MM) == pytest.approx(sizes[paper], abs=0.01)
        sides = {
            (round((c["x1"] - c["x0"]) * MM, 2), round((c["bottom"] - c["top"]) * MM, 2))
            for c in (*page.rects, *page.curves, *page.lines)
        }
    assert (100.0, 100.0) in sides and (101.6, 101.6) in sides


def test_a_seam_is_as_long_in_the_pdf_as_in_the_pattern(printed):
    """The upper cup's overbust edge, summed from the PDF's own cubic, is its length within 0.01 mm."""
    path, _ = printed
    edge = toy_pattern().pieces[1].edges[2]
    assert [type(curve) for curve in edge.path] == [Cubic]
    with pdfplumber.open(path) as book:
        lengths = [sum(c.length for c in curves(drawn["path"])) * MM for page in book.pages[1:] for drawn in page.curves]
    assert any(length == pytest.approx(10 * edge.length, abs=0.01) for length in lengths)


def test_words_can_be_searched(printed):
    """Names with any accents, the pieces' names and the sentence about scale are text in the file."""
    path, summary = printed
    with pdfplumber.open(path) as book:
        texts = [page.extract_text() for page in book.pages]
    assert NAME in texts[0] and "10 cm" in texts[0] and "If they are off" in texts[0].replace("\n", " ")
    assert "2026-03-01" in texts[0]
    everything = "\n".join(texts[1:])
    for piece in toy_pattern().pieces:
        assert everything.count(f"{piece.number} {piece.name}") == 1
    assert all(f"page {number} of {summary.pages}" in text for number, text in enumerate(texts, 1))


def test_fonts_are_embedded(printed):
    """Every font of the file is in the file: a printer without DejaVu prints the same."""
    data = printed[0].read_bytes()
    assert data.count(b"/FontFile2") == data.count(b"/Type /FontDescriptor") >= 2


def test_pages_render_and_none_is_empty(printed):
    """Each page, drawn by another program, shows ink within the margins and none beyond them."""
    path, summary = printed
    book = pypdfium2.PdfDocument(path)
    assert len(book) == summary.pages
    for page in book:
        picture = page.render(scale=2).to_pil().convert("L")
        width, height = picture.size
        border = int(MARGIN / 21.0 * width) - 2
        inside = picture.crop((border, border, width - border, height - border))
        assert inside.getextrema()[0] < 100
        picture.paste(255, (border, border, width - border, height - border))
        assert picture.getextrema()[0] == 255


def test_the_same_pattern_gives_the_same_bytes(tmp_path):
    """With a given date, printing twice gives the same file, byte for byte."""
    for name in ("a.pdf", "b.pdf"):
        write_print(toy_pattern(), tmp_path / name, "A4", "in", NAME, DAY)
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


def test_the_summary_says_what_was_written(printed):
    """The summary names file, paper and pages in one sentence."""
    path, summary = printed
    assert summary.path == path and summary.paper == "A4"
    assert str(summary).startswith(f"pattern.pdf: {summary.pages} pages of A4")


@pytest.mark.parametrize("paper", ["A5", "", None, 4, "a4\n\n"])
def test_an_unknown_paper_is_one_sentence(tmp_path, paper):
    """A paper the course does not know is refused with the papers it does, and nothing is written."""
    if paper == "a4\n\n":
        assert paper_named(paper).name == "A4"
        return
    with pytest.raises(CorsetkitError, match="A4 or Letter"):
        write_print(toy_pattern(), tmp_path / "p.pdf", paper)
    assert list(tmp_path.iterdir()) == []


def test_a_missing_folder_is_one_sentence(tmp_path):
    """A folder that is not there is named and not made."""
    with pytest.raises(CorsetkitError, match="does not exist") as told:
        write_print(toy_pattern(), tmp_path / "nowhere" / "p.pdf")
    assert "\n" not in str(told.value) and not (tmp_path / "nowhere").exists()


def test_a_folder_is_not_a_file(tmp_path):
    """Asked to print onto a folder, it says so and proposes a file in it."""
    with pytest.raises(CorsetkitError, match="is a folder"):
        write_print(toy_pattern(), tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("path", ["a\0b.pdf", 7, None])
def test_what_is_no_path_is_one_sentence(path):
    """What cannot be a path is refused in one sentence."""
    with pytest.raises(CorsetkitError, match="not the path of a file"):
        write_print(toy_pattern(), path)


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="whoever may write everywhere cannot be refused")
def test_a_folder_that_cannot_be_written_is_one_sentence(tmp_path):
    """A folder without leave to write is named, and nothing is left in it."""
    tmp_path.chmod(stat.S_IRUSR | stat.S_IXUSR)
    try:
        with pytest.raises(CorsetkitError, match="was not written"):
            write_print(toy_pattern(), tmp_path / "p.pdf")
        assert list(tmp_path.iterdir()) == []
    finally:
        tmp_path.chmod(stat.S_IRWXU)


def test_a_failed_print_leaves_the_old_file(tmp_path, monkeypatch):
    """Where the disk refuses, the earlier print still stands whole and nothing half-written lies beside it."""
    path = tmp_path / "p.pdf"
    path.write_bytes(b"the earlier print")

    def refuse(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(CorsetkitError, match="No space left"):
        write_print(toy_pattern(), path)
    assert path.read_bytes() == b"the earlier print" and list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("what", PATTERNS, ids=str)
@pytest.mark.parametrize("paper", PAPERS, ids=lambda paper: paper.name)
def test_the_pages_show_every_piece_whole(what, paper):
    """Within their joins the pages show all of every piece, no piece lies on another, and no page is empty."""
    pieces = PATTERNS[what].pieces
    plan = plan_print(pieces, paper)
    laid = [Polygon([((p + step).real, (p + step).imag) for p in flattened(one.piece.path)]) for one, step in plan.pieces]
    assert len(laid) == len(pieces)
    for i, one in enumerate(laid):
        assert all(one.distance(other) > 0.5 for other in laid[:i])
        rest = one
        for page in plan.pages:
            rest = rest.difference(box(*page.box).buffer(-OVERLAP / 2 + 1e-9, join_style="mitre"))
        assert rest.area < 1e-6
    for page in plan.pages:
        assert page.pieces and any(one.intersects(box(*page.box)) for one in laid)
    # Fewer pages than a page for every 16 cm of every piece's height would need.
    assert len(plan.pages) <= sum(
        len(paper.pages_of((0.5, 0.5, 0.5 + b[2] - b[0], 0.5 + b[3] - b[1]))) for b in (one.bounds for one in laid)
    )


@pytest.mark.parametrize("what", PATTERNS, ids=str)
def test_no_words_meet_on_a_page(what):
    """On no page does a text meet another or leave what can be printed; no text is cut by a join."""
    for sheet in print_sheets(PATTERNS[what], PAPERS[0], "in", NAME * 3, "2026-03-01"):
        window = (sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
        written = [one for one in recorded(sheet).written if overlap(one.box, window)]
        for i, one in enumerate(written):
            assert box(*window).covers(box(*one.box)), (sheet.title, one.text)
            for other in written[:i]:
                assert not overlap(one.box, other.box), (sheet.title, one.text, other.text)


def test_join_marks_of_neighbours_lie_on_each_other():
    """Each lozenge is drawn at the same place and with the same numbers on both pages that it joins."""
    found = {}
    for sheet in print_sheets(toy_pattern(), PAPERS[0], "in", "", "")[1:]:
        canvas = recorded(sheet)
        joins = [call for call in canvas.calls if call.groups and call.groups[-1][0] == "joins"]
        places = [
            call.what[0][0].start
            for call in joins
            if call.kind == "line" and call.what[1].kind == "join-mark" and len(call.what[0]) == 4
        ]
        words = [call.what[1] for call in joins if call.kind == "words"]
        assert len(places) == len(words)
        for place, numbers in zip(places, words):
            found.setdefault(numbers, []).append(place)
    assert found
    for numbers, places in found.items():
        assert len(places) == 2 and abs(places[0] - places[1]) < 1e-9, numbers


def test_packing_prefers_whole_pieces_on_few_pages():
    """Six pieces that fit on a page by twos take three pages, and none is cut by a join."""
    paper = PAPERS[0]
    size = (0.0, 0.0, paper.step.real - 1.0, paper.step.imag / 2 - 1.0)
    steps = packed([size] * 6, paper)
    pages = [paper.pages_of((s.real, s.imag, s.real + size[2], s.imag + size[3])) for s in steps]
    assert all(len(one) == 1 for one in pages) and len(set().union(*pages)) == 3


def test_a_name_as_long_as_a_page_is_shortened():
    """A very long name is shortened on the print and runs over nothing."""
    for sheet in print_sheets(toy_pattern(), PAPERS[1], "in", "Ana Maria " * 60, "2026-03-01"):
        window = box(sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
        assert all(window.covers(box(*one.box)) for one in recorded(sheet).written if window.intersects(box(*one.box)))
