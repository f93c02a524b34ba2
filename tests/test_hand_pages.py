"""The draft by hand on paper: every step with its drawing, every move and check once, nothing cut off or overlapping."""

import re

import pdfplumber
import pypdfium2
import pytest
from figures import figure
from shapely import box

from corsetkit import Correction, CorsetkitError, Style, demo_wearers, draft
from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.drawing.step_sheet import hand_sheet
from corsetkit.hand.drafter import checks_of, moves_of, numbers_of
from corsetkit.hand.sentences import say, say_why
from corsetkit.hand.whole import by_hand_from_the_start, whole_by_hand
from corsetkit.printing.hand_pages import fitted_sheet, hand_pages, step_words, write_hand_sheets
from corsetkit.printing.paper import MARGIN, PAPERS

CASES = [
    ("Maren", "three parts", "wearer"),
    ("Theda", "two parts", "wearer"),
    ("Ottilie", "three parts, openings", "guides"),
    ("Wanda", "two and three panels", "wearer"),
    ("Yrsa", "two parts", "guides"),
]
NAME = "\u0141\u00f3d\u017a Gr\u00f6\u00dfe"
MM = 25.4 / 72
A4, LETTER = PAPERS


@pytest.fixture(scope="module")
def printed(tmp_path_factory):
    path = tmp_path_factory.mktemp("hand") / "h.pdf"
    return path, write_hand_sheets(figure("Maren"), path, "A4", "in", NAME, "2026-03-01")


def written_on(pages):
    """All words of all pages in their order, by page."""
    return [[one.text for one in recorded(page).written] for page in pages]


@pytest.mark.parametrize("case", CASES, ids=", ".join)
@pytest.mark.parametrize("unit", ["in", "cm"])
def test_every_move_reason_and_check_is_on_paper_once(case, unit):
    """The words of all pages of a step, joined, hold each move under its number, each reason once, and each check."""
    pattern = figure(*case)
    pages = hand_pages(pattern, A4, unit, "Ana", "2026-03-01")
    whole = whole_by_hand(pattern.steps)
    texts = {}
    for page, texts_of in zip(pages, written_on(pages)):
        texts.setdefault(page.title.split(": ")[1].partition(",")[0], []).extend(texts_of[2:])
    assert list(texts) == [step_words(name) for name in whole] and len(texts) == 6
    for name, by_hand in whole.items():
        flat = " ".join(texts[step_words(name)])
        places = {
            mark.name: mark.point
            for step in by_hand_from_the_start(name, getattr(pattern.steps, name), pattern.style)
            for mark in step.marks
        }
        moves = moves_of(by_hand)
        numbers = [int(text[:-1]) for text in texts[step_words(name)] if re.fullmatch(r"\d+\.", text)]
        assert numbers == list(range(1, len(moves) + 1))
        for number, one in enumerate(moves, 1):
            assert f"{number}. {say(one, unit, places)}" in flat
        reasons = {say_why(one, unit, pattern.steps.measurements, pattern.steps.style) for one in moves}
        assert all(flat.count(f"{why[0].upper()}{why[1:]}") >= 1 for why in reasons)
        assert all(say(one, unit) in flat for one in checks_of(by_hand))
        assert ("Check with the tape" in flat) == bool(checks_of(by_hand))


@pytest.mark.parametrize("case", CASES, ids=", ".join)
@pytest.mark.parametrize("paper", PAPERS, ids=lambda paper: paper.name)
def test_no_words_meet_and_none_leave_the_page(case, paper):
    """On no page do two texts overlap or does one leave what can be printed; every line drawn lies within it too."""
    for page in hand_pages(figure(*case), paper, "in", NAME * 8, "2026-03-01"):
        window = box(page.low.real, page.low.imag, page.high.real, page.high.imag)
        canvas = recorded(page)
        for i, one in enumerate(canvas.written):
            assert window.covers(box(*one.box)), (page.title, one.text)
            for other in canvas.written[:i]:
                assert not overlap(one.box, other.box), (page.title, one.text, other.text)
        for call in canvas.of("line"):
            for curve in call.what[0]:
                for p in (curve.start, curve.end):
                    assert -1e-6 <= p.real <= page.high.real + 1e-6 and -1e-6 <= p.imag <= page.high.imag + 1e-6
        # Moves stand below the drawing and never on it.
        drawing = [one.box for one in canvas.written if any(name == "drawing" for name, _ in one.groups)]
        told = [one for one in canvas.written if one.letter.kind in ("hand-number",)]
        if drawing and told:
            assert max(one.box[3] for one in told) < min(one[1] for one in drawing)


@pytest.mark.parametrize("case", CASES, ids=", ".join)
def test_each_step_has_its_drawing_with_its_marks_and_lines(case):
    """The first page of each step shows the lines before and the new ones, in true proportion, and the marks' numbers."""
    pattern = figure(*case)
    first = {}
    for page in hand_pages(pattern, A4, "in"):
        first.setdefault(page.title.split(": ")[1].partition(",")[0], page)
    for name, now in whole_by_hand(pattern.steps).items():
        canvas = recorded(first[step_words(name)])
        drawn = [call for call in canvas.of("line") if any(group == "drawing" for group, _ in call.groups)]
        new = [call for call in drawn if call.what[1].kind == "new" and call.facts]
        assert len(new) == len(now.lines)
        ratios = [sum(c.length for c in call.what[0]) / sum(c.length for c in path) for call, (_, path) in zip(new, now.lines)]
        assert max(ratios) - min(ratios) < 1e-9 and 0.15 < ratios[0] < 0.6
        assert any(call.what[1].kind == "before" for call in drawn) == (name != "block")
        wanted = numbers_of(moves_of(now))
        shown = [one.text for one in canvas.written if one.letter.kind == "spot-words"]
        assert sorted(shown) == sorted(wanted.values())


def test_a_drawing_fills_the_page(printed):
    """The drawing is as wide or as high as its room, within one part in a hundred, whatever the wearer."""
    for case in CASES:
        pattern = figure(*case)
        by_hand = by_hand_from_the_start("block", pattern.steps.block, pattern.style)
        sheet = fitted_sheet(lambda scale, by_hand=by_hand: hand_sheet(by_hand, {}, "in", "x", scale), 18 + 24j, 3.0)
        filled = max(sheet.size.real / sheet.scale / 18, sheet.size.imag / sheet.scale / 24)
        assert 0.985 < filled <= 1.0 + 1e-9


def test_pages_bear_wearer_step_date_and_number(printed):
    """Each page says whose it is, which step, the date, and which page of how many, as text that can be searched."""
    path, summary = printed
    book = pypdfium2.PdfDocument(path)
    assert len(book) == summary.pages
    assert [size * MM for size in book[0].get_size()] == pytest.approx((210, 297), abs=0.01)
    steps = []
    for number, page in enumerate(book, 1):
        head = page.get_textpage().get_text_bounded().splitlines()[0]
        assert head.startswith(f"By hand for {NAME} \u00b7 Step ") and head.endswith(
            f"2026-03-01 \u00b7 page {number} of {summary.pages}"
        )
        steps.append(int(re.search(r"Step (\d)", head)[1]))
    assert steps == sorted(steps) and set(steps) == {1, 2, 3, 4, 5, 6}
    data = path.read_bytes()
    assert data.count(b"/FontFile2") == data.count(b"/Type /FontDescriptor") >= 2
    assert str(summary) == f"h.pdf: {summary.pages} pages of A4, a page with a drawing for each step"


def test_pages_render_within_their_margins(printed):
    """Each page, drawn by another program, has ink within the margins and none beyond them."""
    for page in pypdfium2.PdfDocument(printed[0]):
        picture = page.render(scale=1.5).to_pil().convert("L")
        width, height = picture.size
        border = int(MARGIN / 21.0 * width) - 2
        assert picture.crop((border, border, width - border, height - border)).getextrema()[0] < 100
        picture.paste(255, (border, border, width - border, height - border))
        assert picture.getextrema()[0] == 255


def test_corrections_are_told_and_drawn():
    """After a fitting the sheets say what was corrected, and their lengths are those of the corrected draft."""
    name, body = demo_wearers()[0]
    before, after = draft(body), draft(body, Style(), (Correction("underbust line", 0.5),))
    told = [" ".join(" ".join(texts) for texts in written_on(hand_pages(one, A4, "cm", name))) for one in (before, after)]
    assert "underbust line: 0.5 cm lower" in told[1] and "corrections" not in told[0] and told[0] != told[1]


def test_the_same_pattern_gives_the_same_bytes(tmp_path, printed):
    """With a given date the file is the same, byte for byte; on Letter it is another."""
    for name, paper in (("b", "A4"), ("c", "Letter")):
        write_hand_sheets(figure("Maren"), tmp_path / name, paper, "in", NAME, "2026-03-01")
    b, c = ((tmp_path / name).read_bytes() for name in "bc")
    assert printed[0].read_bytes() == b != c


def test_a_name_that_cannot_be_set_is_a_number(tmp_path):
    """A name from right to left is replaced by the wearer's number, and a sentence says so."""
    done = write_hand_sheets(figure("Maren"), tmp_path / "h.pdf", "A4", "in", "\u05e8\u05d5\u05ea", "2026-03-01", 7)
    assert len(done.said) == 1 and "wearer 7" in done.said[0]
    with pdfplumber.open(tmp_path / "h.pdf") as book:
        assert "By hand for wearer 7" in book.pages[0].extract_text()


@pytest.mark.parametrize(
    "changes, said",
    [
        ({"paper": "A0"}, "A4 or Letter"),
        ({"paper": None}, "A4 or Letter"),
        ({"unit": "ell"}, "write cm or in"),
        ({"path": "nowhere/h.pdf"}, "does not exist"),
    ],
)
def test_what_cannot_be_written_is_one_sentence(tmp_path, changes, said):
    """Unknown paper or unit, a missing folder: one sentence, and nothing is left."""
    given = {"path": "h.pdf", "paper": "A4", "unit": "in", **changes}
    with pytest.raises(CorsetkitError, match=said) as told:
        write_hand_sheets(figure("Maren"), tmp_path / given["path"], given["paper"], given["unit"])
    assert "\n" not in str(told.value) and list(tmp_path.iterdir()) == []
