"""A stored picture is written shorter than the live one, and looks the same."""

import io
import re
from pathlib import Path

import pytest
from figures import CASES, figure, words
from svgelements import SVG
from svgelements import Path as Drawn

from corsetkit.drawing.pattern_sheet import pattern_sheet
from corsetkit.drawing.shorter import AWAY, STEP, shorter, thinned
from corsetkit.drawing.svg import svg_text

ROOT = Path(__file__).parent.parent


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
    before, after = lines_of(svg), lines_of(short)
    side = max(float(n) for n in re.search(r'viewBox="0 0 (\S+) (\S+)"', svg).groups())
    room = side * (STEP + AWAY)
    assert len(short) < 0.6 * len(svg) and len(after) > 50
    ends = [p for one in before for p in (one[0], one[2])]
    for start, _, end in after:
        assert min(abs(start - p) for p in ends) < room and min(abs(end - p) for p in ends) < room
    kept = [p for one in after for p in one]
    far = [min(abs(p - q) for q in kept) for one in before for p in (one[0], one[2])]
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
    body = "".join(line.format(k) + f'<text x="{k}.00" y="1.00" font-size="9.00">n</text>' for k in range(3))
    short = shorter(f'<svg viewBox="0 0 10.00 10.00">{body}</svg>')
    assert short.count("#123456") == 1 and "stroke-width:1.50;stroke-dasharray:3.00 1.00" in short
    assert ".l1{font-size:9.00px}" in short and short.count('d="M2 0l0 9"') == 1


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
    assert path.stat().st_size < 180_000
