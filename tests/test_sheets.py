"""The finished pattern on paper, measured in the PDF by readers that did not write it."""

import datetime
import os
import re
from pathlib import Path

import pdfplumber
import pypdfium2
import pytest
from drawn_patterns import drawn_patterns
from figures import WEARERS, ready_to_cut
from pdf_lines import curves
from shapely import LineString, box
from shapely.geometry import Polygon
from toy_pattern import toy_pattern

from corsetkit import Correction, CorsetkitError, Style, demo_wearers, draft
from corsetkit.drawing.canvas import Recorder, recorded
from corsetkit.drawing.finished_painting import LAYERS, paint_finished
from corsetkit.drawing.finished_view import finished_view
from corsetkit.drawing.lettering import overlap
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import finish
from corsetkit.geometry.points import heading
from corsetkit.pattern.edge import Kind
from corsetkit.printing.finished_print import print_sheets, write_print
from corsetkit.printing.paper import LARGE, MARGIN, OVERLAP, PAPERS, own_paper

CM = 2.54 / 72
DAY = datetime.date(2026, 3, 1)
NAME = "\u0141\u00f3d\u017a Gr\u00f6\u00dfe"
PATTERNS = drawn_patterns(every=False)


@pytest.fixture(scope="module")
def made():
    """The first demo wearer's pattern, finished."""
    return finish(draft(demo_wearers()[0][1]))


@pytest.fixture(scope="module")
def printed(tmp_path_factory, made):
    """It printed on A4, on A0, on the roll, and by piece: each with the summary."""
    folder = tmp_path_factory.mktemp("sheets")
    asked = {
        "A4": {},
        "Letter": {"paper": "US letter"},
        "A0": {"paper": "A0"},
        "roll": {"paper": "roll"},
        "by piece": {"by_piece": True},
        "own": {"paper": (42.0, 59.4)},
    }
    said = {"unit": "cm", "wearer": NAME, "date": DAY}
    return {
        name: (folder / f"{name}.pdf", write_print(made, folder / f"{name}.pdf", **said, **more))
        for name, more in asked.items()
    }


@pytest.mark.parametrize(
    "which, size",
    [
        ("A4", (21.0, 29.7)),
        ("Letter", (21.59, 27.94)),
        ("A0", (84.1, 118.9)),
        ("roll", (91.44, None)),
        ("by piece", (21.0, 29.7)),
        ("own", (42.0, 59.4)),
    ],
)
def test_the_squares_are_true(printed, which, size):
    """On page 1 stand squares of 100.00 mm and 101.60 mm a side, within 0.01 mm, on a page of the paper's own size."""
    with pdfplumber.open(printed[which][0]) as book:
        page = book.pages[0]
        assert page.width * CM == pytest.approx(size[0], abs=0.001)
        assert size[1] is None or page.height * CM == pytest.approx(size[1], abs=0.001)
        sides = {
            (round((c["x1"] - c["x0"]) * CM * 10, 2), round((c["bottom"] - c["top"]) * CM * 10, 2))
            for c in (*page.rects, *page.curves)
        }
    assert (100.0, 100.0) in sides and (101.6, 101.6) in sides


def test_the_square_is_true_in_pixels(printed):
    """Drawn by another program at 600 dots an inch, the solid square is 100 mm wide and high to within a dot or so."""
    with pdfplumber.open(printed["A4"][0]) as book:
        page = book.pages[0]
        square = next(c for c in (*page.rects, *page.curves) if abs((c["x1"] - c["x0"]) * CM - 10) < 1e-3)
        low, high, left, right = square["bottom"], square["top"], square["x0"], square["x1"]
    dots = 600 / 72
    picture = pypdfium2.PdfDocument(printed["A4"][0])[0].render(scale=dots).to_pil().convert("L")

    def middle_of_ink(spots):
        dark = [at for at, value in spots if value < 128]
        return sum(dark) / len(dark)

    def around(place):
        return range(int(place * dots) - 6, int(place * dots) + 7)

    def across(x, level):
        return middle_of_ink([(i, picture.getpixel((i, int(level * dots)))) for i in around(x)])

    def upwards(y, x):
        return middle_of_ink([(i, picture.getpixel((int(x * dots), i))) for i in around(y)])

    third = high + (low - high) / 3
    assert (across(right, third) - across(left, third)) / 600 * 25.4 == pytest.approx(100, abs=0.06)
    third = left + (right - left) / 3
    assert (upwards(low, third) - upwards(high, third)) / 600 * 25.4 == pytest.approx(100, abs=0.06)


@pytest.mark.parametrize("which", ["A0", "A4"])
def test_the_longest_seam_is_as_long_as_in_the_pattern(printed, made, which):
    """Both sides of the longest seam, summed from the PDF's own curves, have their length within 0.01 mm."""
    seam = max(made.pattern.seams, key=lambda one: one.lengths[0])
    with pdfplumber.open(printed[which][0]) as book:
        lengths = [
            sum(curve.length for curve in curves(drawn["path"])) * CM
            for page in book.pages
            for drawn in (*page.curves, *page.lines)
        ]
    for edge in (*seam.sides[0], *seam.sides[1]):
        assert any(length == pytest.approx(edge.length, abs=0.001) for length in lengths), edge.name


@pytest.mark.parametrize("which", ["A4", "Letter", "by piece", "own", "A0", "roll"])
def test_the_pages_together_show_the_whole_cutting_line(printed, made, which):
    """The strong lines of all pages, each up to its joins, add up to the pieces' cutting lines less their folds."""
    from corsetkit.drawing.pens import CUTTING

    asked = 0.0
    for one in made.pieces:
        fold = next((edge for edge in one.piece.edges if edge.kind is Kind.FOLD), None)
        for p, q in zip(one.cutting, (*one.cutting[1:], one.cutting[0])):
            start, tangent = (fold.path[0].start, fold.path[0].tangent(0)) if fold else (0, 1)
            if fold is None or max(abs(((r - start) / tangent).imag) for r in (p, q)) > 1e-5:
                asked += abs(q - p)
    shown = 0.0
    with pdfplumber.open(printed[which][0]) as book:
        for page in book.pages:
            width, height = page.width * CM, page.height * CM
            inset = MARGIN + (OVERLAP / 2 if page.extract_text().count("\u2013") else 0) - 1e-6
            joins = box(inset, inset, width - inset, height - inset)
            for drawn in (*page.curves, *page.lines):
                # The samples on the list of what to cut have the same pen, and are short.
                if drawn["linewidth"] * CM * 10 == pytest.approx(CUTTING.width, abs=0.01) and len(drawn["path"]) > 6:
                    line = LineString([(p.real * CM, height - p.imag * CM) for p in _points(drawn["path"])])
                    shown += line.intersection(joins).length if which not in ("A0", "roll") else line.length
    # What lies in the half centimetre between a join and the margin beyond it stands on the neighbour's page.
    assert shown == pytest.approx(asked, abs=0.01)


def _points(path):
    return [complex(*points[-1]) for command, *points in path if points]


@pytest.mark.parametrize("which", ["A4", "by piece", "A0", "roll"])
def test_what_a_cutter_needs_can_be_read_and_searched(printed, made, which):
    """Every piece's number, name, cloths, wearer and date, its seams' partners, and what to do if the square is off."""
    with pdfplumber.open(printed[which][0]) as book:
        texts = [page.extract_text() for page in book.pages]
        words = [word["text"] for page in book.pages for word in page.extract_words(use_text_flow=True, keep_blank_chars=True)]
    everything = "\n".join(texts)
    assert "If the squares are off" in texts[0] and "97 mm: 103.1 %" in texts[0] and "100 %" in texts[0]
    assert "Strips, cut by measure" in everything and "53.7 cm by 6 cm" in everything
    named = " ".join(words)
    # What is turned by a quarter is told apart from the list by its place alone, so each name is counted where it stands.
    for one in made.pieces:
        assert f"{one.piece.number} {one.piece.name}" in named
    for said in (
        "cut 1 on the fold: shell, strength layer, lining",
        "cut 2 as a pair: shell, lining",
        "this way up",
        NAME,
        "2026-03-01",
        "on the fold",
        "to 5, 6",
    ):
        assert said in named, said
    assert all(f"page {number} of {len(texts)}" in text for number, text in enumerate(texts, 1))


@pytest.mark.parametrize("which", ["A4", "A0"])
def test_fonts_are_embedded_in_part(printed, which):
    """Every font is in the file, and only the letters that are used."""
    data = printed[which][0].read_bytes()
    assert data.count(b"/FontFile2") == data.count(b"/Type /FontDescriptor") >= 2
    with pdfplumber.open(printed[which][0]) as book:
        fonts = {letter["fontname"] for page in book.pages for letter in page.chars}
    assert fonts and all("DejaVuSans" in font and font.index("+") == 6 for font in fonts)


@pytest.mark.parametrize("which", ["A4", "Letter", "by piece", "A0", "roll"])
def test_every_page_has_ink_and_none_in_its_margins(printed, which):
    """Each page, drawn by another program, shows ink, and none within 1 cm of the paper's edge."""
    path, summary = printed[which]
    book = pypdfium2.PdfDocument(path)
    assert len(book) == summary.pages
    for page in book:
        scale = 2 if summary.pages > 1 else 0.5
        picture = page.render(scale=scale).to_pil().convert("L")
        width, height = picture.size
        border = int(MARGIN / CM * scale) - 2
        assert picture.crop((border, border, width - border, height - border)).getextrema()[0] < 100
        picture.paste(255, (border, border, width - border, height - border))
        assert picture.getextrema()[0] == 255


def test_the_large_papers_are_one_page(printed):
    """A0 and the roll are one page each, and the summary says which paper."""
    for which, words in (("A0", "1 page of A0"), ("roll", "1 page of a roll 91.4 cm (36 in) wide")):
        assert printed[which][1].pages == 1 and words in str(printed[which][1])


@pytest.mark.parametrize("what", PATTERNS, ids=str)
@pytest.mark.parametrize("by_piece", [False, True], ids=["together", "by piece"])
def test_the_pages_show_every_piece_whole(what, by_piece):
    """Within their joins the pages show all of every piece, no piece lies on another, and no page is without one."""
    from corsetkit.printing.finished_print import item
    from corsetkit.printing.page_plan import planned, planned_by_piece

    made = ready_to_cut(PATTERNS[what])
    paper = PAPERS[1]
    plan = (planned_by_piece if by_piece else planned)([item(one, "cm", ()) for one in made.pieces], paper)
    laid = [Polygon([((p + step).real, (p + step).imag) for p in one.item.line]) for one, step in plan.pieces]
    assert [one.piece for one, _ in plan.pieces] == list(made.pattern.pieces)
    for i, one in enumerate(laid):
        assert all(one.distance(other) > 0.5 for other in laid[:i])
        rest = one
        numbers = plan.pages_with(plan.pieces[i][0].piece)
        for page in plan.pages:
            # A piece that is whole on its page has no joins to keep within.
            inset = OVERLAP / 2 if len(numbers) > 1 or not by_piece else 0.05
            rest = rest.difference(box(*page.box).buffer(-inset + 1e-9, join_style="mitre"))
        assert rest.area < 1e-6
    assert all(page.pieces for page in plan.pages)
    if by_piece:
        assert all(len(page.pieces) == 1 for page in plan.pages)
        for (one, _), shape in zip(plan.pieces, laid):
            left, bottom, right, top = shape.bounds
            counts = [
                len(paper.pages_of((0.5001, 0.5001, 0.5001 + a, 0.5001 + b)))
                for a, b in ((right - left, top - bottom), (top - bottom, right - left))
            ]
            used = len(plan.pages_with(one.piece))
            assert used <= min(counts)
            # Turned only where that saves a page.
            assert not one.turned or used < counts[1]
            foot, head = (one.item.turn(p) for p in one.piece.grainline)
            assert abs(heading(head - foot) - (180 if one.turned else 90)) % 360 < 15 or one.piece.on_fold


@pytest.mark.parametrize("what", PATTERNS, ids=str)
@pytest.mark.parametrize(
    "paper, by_piece",
    [(PAPERS[0], False), (PAPERS[0], True), (LARGE[0], False), (LARGE[1], False)],
    ids=["A4", "A4 by piece", "A0", "roll"],
)
def test_no_words_meet(what, paper, by_piece):
    """On no page does a text meet another or leave what can be printed."""
    sheets, paper = print_sheets(ready_to_cut(PATTERNS[what]), paper, "in", NAME * 3, "2026-03-01", by_piece)
    for sheet in sheets:
        window = (sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
        written = [one for one in recorded(sheet).written if overlap(one.box, window)]
        for i, one in enumerate(written):
            assert box(*window).covers(box(*one.box)), (sheet.title, one.text)
            for other in written[:i]:
                assert not overlap(one.box, other.box), (sheet.title, one.text, other.text)
        assert paper.window == sheet.size or paper.window.real == pytest.approx(sheet.size.real)


@pytest.mark.parametrize("by_piece", [False, True], ids=["together", "by piece"])
def test_join_marks_of_neighbours_lie_on_each_other(made, by_piece):
    """Each lozenge is drawn at the same place and with the same numbers on both pages that it joins."""
    found = {}
    for sheet in print_sheets(made, PAPERS[0], "in", "", "", by_piece)[0][2:]:
        joins = [call for call in recorded(sheet).calls if call.groups and call.groups[-1][0] == "joins"]
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


def test_a_piece_is_painted_in_its_layers(made):
    """Cutting line strongest and unbroken, sewing line fine and broken; as many notch cuts as notches say, each inwards."""
    for one in made.pieces:
        canvas = Recorder()
        view = finished_view(one, 1.0, ("Ana", "2026-03-01"))
        paint_finished(canvas, view, 0j, "cm")
        layers = [call.groups[1][0] for call in canvas.calls]
        assert sorted(set(layers), key=LAYERS.index) == sorted(set(layers), key=layers.index)
        by_layer = {layer: [call for call in canvas.of("line") if call.groups[1][0] == layer] for layer in LAYERS}
        cutting = [call.what[1] for call in by_layer["cutting"]]
        sewing = [call.what[1] for call in by_layer["sewing"]]
        assert len(cutting) == 1 and not cutting[0].dash
        assert all(pen.dash and pen.width < 0.5 * cutting[0].width for pen in sewing)
        assert len(by_layer["notches"]) == sum(notch.count for notch in one.notches)
        for call in by_layer["notches"]:
            start, end = call.what[0][0].start, call.what[0][0].end
            edge = LineString([(p.real, p.imag) for p in (*one.cutting, one.cutting[0])])
            assert edge.distance(LineString([(start.real, start.imag), (start.real + 1e-9, start.imag)])) < 1e-4
            assert one.outline.covers(LineString([(end.real, end.imag), (end.real, end.imag + 1e-9)]))
        texts = " ".join(text.text for text in canvas.written)
        assert f"{one.piece.number} {one.piece.name}" in texts and "this way up" in texts and "Ana" in texts
        assert ("on the fold" in texts) == one.piece.on_fold


@pytest.mark.parametrize("wearer, style", [("Maren", {}), ("Ottilie", {"cup_parts": 2, "side_panels": 2, "yoke": False})])
def test_the_printed_list_says_how_many_to_cut(tmp_path, wearer, style):
    """Read back from the PDF, the table says for each piece and cloth how many to cut: one on the fold, two as a pair."""
    finished = finish(draft(WEARERS[wearer], Style(**style)))
    write_print(finished, tmp_path / "p.pdf", "A4", "in", wearer, DAY)
    with pdfplumber.open(tmp_path / "p.pdf") as book:
        text = "\n".join(page.extract_text() for page in book.pages if "What to cut" in page.extract_text())
    assert re.search(r"^shell strength layer lining$", text, re.MULTILINE)
    for one in finished.pieces:
        row = re.search(rf"^{one.piece.number} {one.piece.name} (\S) (\S) (\S) (on the fold|as a pair)", text, re.MULTILINE)
        folded = any(edge.kind is Kind.FOLD for edge in one.piece.edges)
        copies = "1" if folded else "2"
        strained = any(edge.kind is Kind.HEM for edge in one.piece.edges) and not one.piece.copied
        assert row.groups() == (copies, copies if strained else "\u2013", copies, "on the fold" if folded else "as a pair")


@pytest.mark.parametrize("unit, words", [("cm", "underbust line: 0.5 cm lower"), ("in", "underbust line: 3/16 in lower")])
def test_corrections_and_cautions_stand_in_the_list(tmp_path, unit, words):
    """What fittings have corrected is told on paper, in the learner's unit; without any, nothing is; care is told always."""
    for corrections in ((Correction("underbust line", 0.5),), ()):
        finished = finish(draft(demo_wearers()[0][1], Style(), corrections))
        write_print(finished, tmp_path / "p.pdf", unit=unit, date=DAY)
        with pdfplumber.open(tmp_path / "p.pdf") as book:
            text = " ".join(book.pages[1].extract_text().split())
        assert (f"{words}. All of it is drawn in." in text) == ("Corrected after fittings" in text) == bool(corrections)
        assert "Sew a toile" in text and "close the blade after each cut" in text


def test_bound_edges_are_cut_on_their_line_and_marked():
    """Without an allowance there is no second line, and a notch is marked across the line and not cut."""
    made = finish(toy_pattern(), Finish(neckline_allowance=0, armscye_allowance=0))
    yoke = finished_view(made.pieces[0], 1.0)
    assert {one.edge.name for one in yoke.sewing} == {"overbust", "shoulder"}
    assert not any(notch.depth == 0 for one in made.pieces for notch in one.notches) or any(
        finished_view(one, 1.0, {}).marked for one in made.pieces
    )


def test_a_seam_names_those_it_is_sewn_to(made):
    """The underbust of a cup lies against the panels that it meets along its own stretch, and against no other."""
    underbust = next(seam for seam in made.pattern.seams if seam.name == "underbust")
    first, second = underbust.sides
    for side, others in ((first, second), (second, first)):
        met = [one for edge in side for one in edge.seam.opposite(edge)]
        assert {id(one) for one in met} == {id(one) for one in others}
        assert side[0].seam.opposite(side[0])[0] is others[0] and side[-1].seam.opposite(side[-1])[-1] is others[-1]
    assert any(len(edge.seam.opposite(edge)) < len(underbust.sides[1]) for edge in first)


def test_the_same_pattern_gives_the_same_bytes(tmp_path, made):
    """With a given date, printing twice gives the same file, byte for byte."""
    for name in ("a.pdf", "b.pdf"):
        write_print(made, tmp_path / name, wearer=NAME, date=DAY)
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


@pytest.mark.parametrize("style", [Style(cup_parts=2, yoke=False), Style(centre_panels=3)], ids=["few pieces", "many"])
def test_other_styles_are_printed_whole(tmp_path, style):
    """A pattern of few or of many pieces names each on its pages."""
    made = finish(draft(demo_wearers()[2][1], style))
    write_print(made, tmp_path / "p.pdf", "A0", date=DAY)
    with pdfplumber.open(tmp_path / "p.pdf") as book:
        text = book.pages[0].extract_text()
    assert all(f"{one.piece.number} {one.piece.name}" in text for one in made.pieces)


# -- the square and the scale


@pytest.mark.parametrize(
    "paper, said",
    [
        ((2.0, 2.0), "too small for the margins"),
        ((19.0, 30.0), "too small for the margins"),
        ((30, 24), "too small"),
        ((0, 30), "no length"),
        ((float("nan"), 30), "no length"),
        (("a", 30), "no length"),
        ((True, 30), "no length"),
        ((30, 900), "longer than a page"),
        ("A5", "A4, Letter, A0 or roll"),
        (None, "A4, Letter, A0 or roll"),
        ((1, 2, 3), "unknown"),
    ],
)
def test_a_paper_that_does_not_do_is_one_sentence(tmp_path, made, paper, said):
    """A page too small for margins and square, or no page at all, is refused before anything is written."""
    with pytest.raises(CorsetkitError, match=said) as told:
        write_print(made, tmp_path / "p.pdf", paper)
    assert "\n" not in str(told.value) and list(tmp_path.iterdir()) == []


def test_the_least_paper_does(tmp_path, made):
    """The smallest paper that is allowed holds everything within its margins."""
    sheets, _ = print_sheets(made, own_paper(19.5, 25.0), "in", NAME, "2026-03-01")
    for sheet in sheets:
        window = (sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
        written = [one for one in recorded(sheet).written if overlap(one.box, window)]
        for i, one in enumerate(written):
            assert box(*window).covers(box(*one.box)), (sheet.title, one.text)
            assert not any(overlap(one.box, other.box) for other in written[:i]), (sheet.title, one.text)


def test_by_piece_is_for_joined_pages(tmp_path, made):
    """On a large sheet no piece is cut, so there is nothing to print by piece."""
    with pytest.raises(CorsetkitError, match="whole already"):
        write_print(made, tmp_path / "p.pdf", "A0", by_piece=True)


def test_a_missing_folder_is_one_sentence(tmp_path, made):
    """A folder that is not there is named and not made."""
    with pytest.raises(CorsetkitError, match="does not exist") as told:
        write_print(made, tmp_path / "nowhere" / "p.pdf")
    assert "\n" not in str(told.value) and not (tmp_path / "nowhere").exists()


@pytest.mark.skipif(not Path("/proc/self").is_dir(), reason="no folder here in which nobody may write")
def test_a_folder_nobody_may_write_in_is_one_sentence(made):
    """Where the system takes no files, the sentence says that nothing was written."""
    with pytest.raises(CorsetkitError, match="was not written") as told:
        write_print(made, "/proc/p.pdf")
    assert "\n" not in str(told.value)


def test_a_failed_print_leaves_the_old_file(tmp_path, made, monkeypatch):
    """Where the disk refuses, the earlier print still stands whole and nothing half-written lies beside it."""
    path = tmp_path / "p.pdf"
    path.write_bytes(b"the earlier print")

    def refuse(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(CorsetkitError, match="No space left"):
        write_print(made, path)
    assert path.read_bytes() == b"the earlier print" and list(tmp_path.iterdir()) == [path]
