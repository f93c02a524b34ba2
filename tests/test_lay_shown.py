"""A plan told and drawn: what to buy, the sheet, and the page to print."""

import math
import re

import pdfplumber
import pytest
from laying import LAID, judge, polygon
from shapely import Point, box

from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.drawing.pens import HEADING
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError
from corsetkit.lay.cloth import FOLDED, SINGLE, WIDTHS, Cloth
from corsetkit.lay.cloth_length import quantities_said, say_bought, to_buy
from corsetkit.lay.drawing import CLOTH, SIDE, lay_sheet
from corsetkit.lay.items import Item, items_of
from corsetkit.lay.plan_file import read, written
from corsetkit.lay.plan_pdf import lay_page, write_lay_pdf
from corsetkit.lay.planning import plan, plans
from corsetkit.printing.paper import PAPERS
from corsetkit.units import say_length

MM = 25.4 / 72
DAY = "2026-03-01"


@pytest.mark.parametrize(
    "length, unit, bought, words",
    [
        (50.9, "cm", 55, "0.55 m"),
        (55.0, "cm", 55, "0.55 m"),
        (55.1, "cm", 60, "0.6 m"),
        (101, "cm", 105, "1.05 m"),
        (50.9, "in", 57.15, "5/8 yd"),
        (91.44, "in", 91.44, "1 yd"),
        (92, "in", 102.87, "1 1/8 yd"),
        (110, "in", 114.3, "1 1/4 yd"),
    ],
)
def test_cloth_is_bought_in_the_shops_steps(length, unit, bought, words):
    """Rounded up to 5 cm or an eighth of a yard of 91.44 cm (the agreement of 1959), never down."""
    assert to_buy(length, unit) == pytest.approx(bought) and say_bought(length, unit) == words


def test_the_quantities_say_plan_bound_and_rows(laid_shells):
    """What to buy, the share used, the bound and the plain lay are the plan's own figures, in the learner's unit."""
    for laid, (_, made) in laid_shells.items():
        said = " ".join(quantities_said(made, "cm"))
        assert f"Buy {math.ceil(made.length / 5) * 5 / 100:g} m of cloth 137 cm wide" in said
        assert f"{made.length:.1f}".removesuffix(".0") + " cm" in said and f"{100 * made.used:.0f} %" in said
        assert f"{made.bound:.1f}".removesuffix(".0") + " cm" in said
        assert made.plain == made.length or f"{made.plain:.1f}".removesuffix(".0") + " cm" in said
        assert ("folded along its length" in said) == (laid == FOLDED)
    assert "54 in wide" in " ".join(quantities_said(laid_shells[SINGLE][1], "in"))
    assert {round(cm / 2.54) - inches for cm, inches in WIDTHS.items()} <= {-1, 0}


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.parametrize("laid", LAID)
def test_the_sheet_shows_every_piece_where_it_lies(laid_shells, laid, unit):
    """On the sheet every outline is the plan's own, its number stands within it, and no two texts overlap."""
    _, made = laid_shells[laid]
    sheet = lay_sheet(made, unit, "Maren")
    drawn = recorded(sheet)
    whole = box(sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
    assert all(whole.contains(box(*one.box)) for one in drawn.written)
    texts = [one.box for one in drawn.written]
    assert not any(overlap(a, b) for i, a in enumerate(texts) for b in texts[:i])
    for one in made.placed:
        key = ("piece", (("piece", one.number), ("name", one.name), ("copy", one.copy)))
        lines = [call.what[0] for call in drawn.of("line") if key in call.groups and call.what[1].kind == "free"]
        assert [curve.start for curve in lines[0]] == list(one.outline)
        written_here = [text for text in drawn.written if key in text.groups]
        assert re.match(rf"{one.number}\b", written_here[0].text)
        inside = sum(polygon(one.outline).buffer(0.3).contains(box(*text.box)) for text in written_here)
        assert inside == len(written_here), (one.name, [text.text for text in written_here])
    said = " ".join(one.text for one in drawn.written)
    assert ("fold" in [one.text for one in drawn.written]) == (laid == FOLDED) and "selvedge" in said
    assert f"{round(100 * made.used)} %" in said
    assert ("face down" in said) == any(one.mirrored for one in made.placed)
    assert ("head points to the foot" in said) == any(one.upside_down for one in made.placed)
    for one in made.placed:
        assert f"{one.number} {one.name}" in sheet.description
        # In its label, along it or over several lines, or in the sentence of those that bear their number alone.
        assert f"{one.number} {one.name}" in said
    assert svg_text(sheet).startswith("<svg")


@pytest.mark.parametrize("laid", LAID)
def test_lengths_along_the_cloth_are_written_along_it(laid_shells, laid):
    """The length taken up, and the names of the cloth's edges, stand upright beside their lines, to be read from the right."""
    _, made = laid_shells[laid]
    svg = svg_text(lay_sheet(made, "cm"))
    for words in (say_length(made.length, "cm"), "selvedge", *(["fold"] if laid == FOLDED else [])):
        turns = re.findall(rf'<text [^>]*?(?:transform="rotate\((\S+) [^"]*")?>{re.escape(words)}<', svg)
        assert turns and set(turns) == {"-90.00"}, words


@pytest.mark.parametrize("laid", LAID)
def test_the_cloth_is_drawn_whole_and_the_heading_stands_above_it(laid_shells, laid):
    """From edge to edge and as long as it is bought the cloth lies under the pieces, and the heading beyond its end."""
    _, made = laid_shells[laid]
    drawn = recorded(lay_sheet(made, "cm", "Maren"))
    (cloth,) = [call.what[0] for call in drawn.of("area") if call.what[1] is CLOTH]
    corners = [curve.start for curve in cloth]
    bought = to_buy(made.length, "cm")
    assert (min(p.real for p in corners), max(p.real for p in corners)) == pytest.approx((0, made.cloth.span))
    assert (min(p.imag for p in corners), max(p.imag for p in corners)) == pytest.approx((0, bought))
    (heading,) = [one for one in drawn.written if one.letter is HEADING]
    assert heading.box[1] > bought


@pytest.mark.parametrize("laid", LAID)
def test_the_arrow_points_to_the_head(laid_shells, laid):
    """Each grain arrow, where one is drawn, points up the plan unless its piece lies upside down."""
    _, made = laid_shells[laid]
    drawn = recorded(lay_sheet(made, "cm"))
    found = 0
    for one in made.placed:
        key = ("piece", (("piece", one.number), ("name", one.name), ("copy", one.copy)))
        strokes = [call.what[0] for call in drawn.of("line") if key in call.groups and call.what[1].kind == "grain"]
        if strokes:
            shaft, head = strokes[0][0], strokes[1]
            assert (shaft.end.imag < shaft.start.imag) == one.upside_down
            assert head[0].end == head[1].start == shaft.end
            found += 1
    assert found > 0.8 * len(made.placed)


@pytest.mark.parametrize("paper, size", [("A4", (210, 297)), ("Letter", (215.9, 279.4))])
@pytest.mark.parametrize("laid, unit, bar", [(SINGLE, "cm", 500), (FOLDED, "in", 508)])
def test_the_page_is_in_its_scale(tmp_path, laid_shells, paper, size, laid, unit, bar):
    """One page of the paper's size with every number and name as text; bar, cloth and length rule are true to the scale."""
    items, made = laid_shells[laid]
    write_lay_pdf((made,), tmp_path / "lay.pdf", paper, unit, "Maren", DAY)
    with pdfplumber.open(tmp_path / "lay.pdf") as book:
        (page,) = book.pages
        text = page.extract_text()
        assert (float(page.width) * MM, float(page.height) * MM) == pytest.approx(size, abs=0.01)
        ratio = int(re.search(r"\(1:(\d+)\)", text)[1])
        lines = [((one["x1"] - one["x0"]) * MM, (one["bottom"] - one["top"]) * MM) for one in page.lines]
        strokes, chars = page.lines, page.chars
    for item in items:
        assert re.search(rf"^{item.number} {item.name} \d", text, re.M), "its row in the table"
    assert any(line == pytest.approx((bar / ratio, 0), abs=0.02) for line in lines), "the scale bar"
    span = 10 * made.cloth.width / (2 if laid == FOLDED else 1)
    assert sum(line == pytest.approx((span / ratio, 0), abs=0.02) for line in lines) == 2, "the cloth's two ends"
    edge = next(
        one
        for one, line in zip(strokes, lines)
        if line == pytest.approx((0, 10 * to_buy(made.length, unit) / ratio), abs=0.02)
    )
    # The letters that stand on each outline, in the order they were written in, begin with its number.
    by = MM / 10 * ratio
    on_cloth = [
        (
            char["text"],
            Point(
                (char["x0"] + char["x1"] - 2 * edge["x0"]) / 2 * by,
                (2 * edge["bottom"] - char["top"] - char["bottom"]) / 2 * by,
            ),
        )
        for char in chars
    ]
    for one in made.placed:
        shape = polygon(one.outline)
        mine = "".join(letter for letter, at in on_cloth if shape.contains(at))
        assert re.match(rf"{one.number}(?!\d)", mine), (one.name, mine)
    assert any(line == pytest.approx((0, 10 * made.length / ratio), abs=0.02) for line in lines), "the length rule"
    assert "Maren" in text and DAY in text and say_bought(made.length, unit) in text


def test_every_cloth_has_its_page(tmp_path, finished_maren):
    """The plain lays of all cloths at once: each can be cut, and each stands on a page of its own, in their order."""
    made = plans(finished_maren, Cloth(width=150), None)
    for layer, one in made.items():
        judge(one, items_of(finished_maren, layer))
        assert one.length == one.plain
    write_lay_pdf(tuple(made.values()), tmp_path / "all.pdf", "A4", "cm", "Maren", DAY)
    with pdfplumber.open(tmp_path / "all.pdf") as book:
        heads = [page.extract_text().splitlines()[0] for page in book.pages]
        assert book.metadata["Title"] == "Cutting plans, Maren"
    assert heads == [
        f"Cutting plan, {layer} for Maren: {say_bought(one.length, 'cm')}, 150 cm wide" for layer, one in made.items()
    ]


def test_the_same_plan_is_the_same_file(tmp_path, laid_shells):
    """A kept plan printed twice with a given date is the same file, byte for byte."""
    items, made = laid_shells[SINGLE]
    again = read(written([made]), {"shell": items}).plans["shell"]
    for name, one in (("a.pdf", made), ("b.pdf", again)):
        write_lay_pdf((one,), tmp_path / name, "A4", "cm", "Maren", DAY)
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


@pytest.mark.parametrize(
    "given", [{"paper": "A5"}, {"unit": "mm"}, {"path": None}, {"path": "a\0b"}, {"path": "/none/at/all.pdf"}]
)
def test_a_page_that_cannot_be_written_is_one_sentence(tmp_path, laid_shells, given):
    """An unknown paper or unit, and a place where no file can stand, are refused; nothing is left behind."""
    with pytest.raises(CorsetkitError) as told:
        write_lay_pdf((laid_shells[SINGLE][1],), given.pop("path", tmp_path / "lay.pdf"), **given)
    assert "\n" not in str(told.value) and list(tmp_path.iterdir()) == []


def test_a_long_lay_still_fits_its_page(tmp_path):
    """Twelve large pieces on narrow cloth: the whole plan is drawn on the one page, in a smaller scale."""
    items = [Item(1, "sheet", (0j, 60 + 0j, 60 + 90j, 90j), 12)]
    made = plan(items, Cloth(width=70), 0)
    write_lay_pdf((made,), tmp_path / "long.pdf", "Letter", "cm", date=DAY)
    with pdfplumber.open(tmp_path / "long.pdf") as book:
        (page,) = book.pages
        wide, high = float(page.width), float(page.height)
        for one in (*page.lines, *page.curves, *page.rects):
            assert 28 < one["x0"] <= one["x1"] < wide - 28 and 28 < one["top"] <= one["bottom"] < high - 28
    assert made.length > 1000


@pytest.mark.parametrize("laid", LAID)
def test_wide_cloth_fits_its_page_with_what_stands_beside_it(laid):
    """Of whatever width the cloth is, the drawing with its edges' names and the rule of its length lies within the page."""
    items = [Item(1, "sheet", (0j, 20 + 0j, 20 + 10j, 10j), 2, pair=True)]
    scales = set()
    for width in range(70, 211, 5):
        page = lay_page(plan(items, Cloth(width=width, laid=laid), 0), PAPERS[0], "cm")
        drawn = recorded(page)
        ends = [p for call in drawn.of("line") for curve in call.what[0] for p in (curve.start, curve.end)]
        corners = [complex(*one.box[i : i + 2]) for one in drawn.written for i in (0, 2)]
        for p in (*ends, *corners):
            assert -1e-9 <= p.real <= page.high.real and -1e-9 <= p.imag <= page.high.imag, (width, p)
        # The cloth is in the middle, but for what stands at its right, or as far to the left as it may.
        across = Cloth(width=width, laid=laid).span / int(page.title.rpartition(":")[2])
        left = next(
            min(curve.start.real, curve.end.real)
            for call in drawn.of("line")
            for curve in call.what[0]
            if abs(abs(curve.end - curve.start) - across) < 1e-6 and abs((curve.end - curve.start).imag) < 1e-9
        )
        assert left <= page.high.real - left - across <= max(left, 0.55) + SIDE + 1e-9, width
        scales.add(page.title.rpartition(":")[2])
    assert len(scales) > 1
