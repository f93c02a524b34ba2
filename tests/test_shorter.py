"""A stored picture is written shorter than the live one, and looks the same."""

import io
import re
from pathlib import Path

import pytest
from figures import CASES, figure, words
from shapely import LineString, Point, STRtree
from svgelements import SVG
from svgelements import Path as Drawn

from corsetkit.drawing.pattern_sheet import pattern_sheet
from corsetkit.drawing.shorter import AWAY, STEP, shorter, thinned
from corsetkit.drawing.svg import svg_text

ROOT = Path(__file__).parent.parent


def size_of(svg):
    return [float(n) for n in re.search(r'viewBox="0 0 (\S+) (\S+)"', svg).groups()]


def lines_of(svg):
    """Every drawn stretch as (colour, where it begins, its middle, where it ends), read by another program."""
    found = []
    for one in SVG.parse(io.StringIO(svg), reify=True).elements():
        if isinstance(one, Drawn):
            for stretch in one:
                if type(stretch).__name__ in ("Line", "CubicBezier", "Close") and stretch.start and stretch.end:
                    middle = stretch.point(0.5)
                    found.append(tuple(complex(p.x, p.y) for p in (stretch.start, middle, stretch.end)))
    return found


@pytest.mark.parametrize("case", CASES[::9], ids=words)
def test_curves_stay_where_they_are(case):
    """Each stretch of the shorter drawing lies on one of the longer, within what rounding and thinning may move it."""
    svg = svg_text(pattern_sheet(figure(*case), "in", "A wearer"))
    short = shorter(svg)
    before, side = lines_of(svg), max(size_of(svg))
    # The shorter one counts in steps.
    after = [tuple(p * side / max(size_of(short)) for p in one) for one in lines_of(short)]
    room = side * (STEP + AWAY)
    assert len(short) < 0.6 * len(svg) and len(after) > 50
    ends = [p for one in before for p in (one[0], one[2])]
    for start, _, end in after:
        assert min(abs(start - p) for p in ends) < room and min(abs(end - p) for p in ends) < room
    # What lay on a straight line between its neighbours still lies on the line; every other end is still one.
    kept = [Point(p.real, p.imag) for one in after for p in one]
    lines = [
        LineString([(p.real, p.imag) for p in (start, end)])
        for start, middle, end in after
        if abs(start + end - 2 * middle) < 1e-6
    ]
    drawn = STRtree([*kept, *lines])
    far = [drawn.query_nearest(Point(p.real, p.imag), return_distance=True)[1][0] for p in ends]
    assert max(far) < room, "an end of a curve is gone"


def test_words_and_marks_are_all_there():
    """Every word stays with its place, and every dot; what only a page looks up is gone."""
    svg = svg_text(pattern_sheet(figure("Maren"), "in", "A wearer"))
    short = shorter(svg)
    said = lambda text: re.findall(r"<text [^>]*>([^<]*)</text>", text)
    assert said(short) == said(svg) and short.count("<circle") == svg.count("<circle")
    assert "data-" not in short and "<desc>" not in short and "ck-" not in short


def test_looks_stand_once():
    """Elements of one look name its rule, and the rule says all that they said; a dash starts anew with each line."""
    line = (
        '<path class="ck-x" d="M{0}.00 0.00L{0}.00 9.00" stroke="#123456" stroke-width="1.50" stroke-dasharray="3.00 1.00"/>'
    )
    body = "".join(line.format(k) + f'<text x="{k}.00" y="1.00" font-size="9.00">n</text>' for k in range(4))
    short = shorter(f'<svg viewBox="0 0 10.00 10.00">{body}</svg>')
    assert short.count("#123456") == 1 and "stroke-width:600;stroke-dasharray:1200 400" in short
    assert short.count('d="M800 0v3600" class="a"') == 1 and "font-size:3600px" in short


def drawn(*parts, head=""):
    """What becomes of the parts of a small picture, by itself 4 000 wide."""
    return shorter(f'<svg viewBox="0 0 4000 2000"{head}>' + "".join(parts) + "</svg>").partition(">")[2]


def test_places_are_whole_steps_and_sizes_have_one_decimal():
    """However large a picture is, it is 4 000 steps wide or high, and all that has a length is told in steps."""
    words = '<text x="1.00" y="2.00" font-size="0.33" transform="rotate(-30.50 1.00 2.00)">a 1.00</text>'
    dot = '<circle cx="1.00" cy="3.00" r="0.11" stroke-width="0.21"/>'
    short = shorter(f'<svg viewBox="0 0 20.00 10.00">{words}{dot}<svg width="20.00" height="10.00"></svg></svg>')
    assert short == (
        '<svg viewBox="0 0 4000 2000"><text x="200" y="400" font-size="66" transform="rotate(-30.5 200 400)">a 1.00</text>'
        '<circle cx="200" cy="600" r="22" stroke-width="42"/><svg width="4000" height="2000"></svg></svg>'
    )


def test_what_has_lengths_among_its_styles_keeps_its_unit():
    chart = '<path id="c1" d="M 10.04 10 L 30 10 L 30 20 z " style="stroke-width: 0.80"/>'
    assert shorter(f'<svg viewBox="0 0 500.5 300">{chart}</svg>') == (
        '<svg viewBox="0 0 500.5 300"><path d="M10 10h20v10z" style="stroke-width: 0.80"/></svg>'
    )


def test_groups_that_say_nothing_go_and_names_that_are_asked_for_stay():
    body = '<g class="ck-x"><g id="c1" clip-path="url(#c2)"><text x="1">n</text></g></g><g><use href="#c2"/></g>'
    assert drawn('<clipPath id="c2"></clipPath>', body).startswith(
        '<clipPath id="c2"></clipPath><g clip-path="url(#c2)"><text'
    )
    assert drawn(body).endswith('n</text></g><use href="#c2"/></svg>')


def test_lines_of_one_colour_go_by_their_pens():
    """Between two areas or words lines of one colour are one path a pen; of two colours each stays above what is under it."""
    line = lambda y, colour, width: f'<path d="M0 {y}L9 {y}" stroke="{colour}" stroke-width="{width}"/>'
    assert drawn(line(1, "#111", 2), line(2, "#111", 3), line(3, "#111", 2)).count("<path") == 2
    assert drawn(line(1, "#111", 2), line(2, "#222", 2), line(3, "#111", 2)).count("<path") == 3
    assert drawn(line(1, "#111", 2), '<text x="1" y="1">n</text>', line(3, "#111", 2)).count("<path") == 2


def test_a_line_goes_on_where_round_ends_and_corners_look_alike():
    """Where a line begins at the end of the one before it no move is told; a dash begins anew, and a square end shows."""
    lines = [f'<path d="M{a}L{b}" stroke="#111"{{0}}/>' for a, b in (("0 0", "90 10"), ("90 10", "180 0"), ("10 0", "70 5"))]
    round_ones = ' stroke-linecap="round" stroke-linejoin="round"'
    assert (
        drawn(*(one.format("") for one in lines), head=round_ones)
        == '<path d="M0 0l90 10 90-10M10 0l60 5" stroke="#111"/></svg>'
    )
    dashed = ' stroke-dasharray="3 1"'
    assert drawn(*(one.format(dashed) for one in lines[:2]), head=round_ones).count("m0 0l") == 1
    assert drawn(*(one.format("") for one in lines[:2])).count("m0 0l") == 1


def test_a_curve_that_is_straight_is_a_line():
    assert drawn('<path d="M0 0C30 0 60 0 90 0C90 30 90 60 90 90" stroke="#111"/>').startswith('<path d="M0 0h90v90"')
    assert "c" in re.search(' d="([^"]*)"', drawn('<path d="M0 0C30 9 60 9 90 0" stroke="#111"/>'))[1]
    beyond = drawn('<path d="M0 0C-30 0 120 0 90 0" stroke="#111"/>')
    assert 'd="M0 0c-30 0 120 0 90 0"' in beyond, "it goes beyond its ends"


def test_an_area_and_its_outline_are_one_path_and_nothing_else_is_joined():
    area, pen = '<path d="M0 0L9 0L9 9L0 0Z" fill="#fff"/>', '<path d="M0 0L9 0L9 9L0 0" stroke="#000"/>'
    other = '<path d="M0 0L5 5" stroke="#000"/>'
    of = lambda *parts: shorter('<svg viewBox="0 0 10.00 10.00">' + "".join(parts) + "</svg>").count("<path")
    assert of(area, pen) == 1 and of(pen, other) == 1
    assert of(area, other) == 2 and of(pen, area) == 2 and of(area, area) == 2


def test_thinned_keeps_corners_and_ends():
    """Points on a straight line go, a corner stays, and none that is left out lies farther than the room."""
    straight = [complex(k, 0) for k in range(10)]
    assert thinned(straight, 0.01) == [0j, 9 + 0j]
    corner = [*straight, *(complex(9, k) for k in range(1, 10))]
    assert thinned(corner, 0.01) == [0j, 9 + 0j, 9 + 9j]
    assert 4 < len(thinned([complex(k, k * k / 10) for k in range(40)], 0.5)) < 20


@pytest.mark.parametrize("path", sorted((ROOT / "lessons").glob("*.ipynb")), ids=lambda path: path.stem)
def test_a_notebook_is_small(path):
    """A notebook with all its stored pictures opens at once, and a change of one shows as a change of one."""
    assert path.stat().st_size < 150_000
