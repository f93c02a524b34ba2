"""The pattern's sheet and the step's sheet: what is drawn, where it stands, and that nothing collides."""

from collections import defaultdict
from dataclasses import replace

import pytest
from drawn_patterns import at_the_sliders_ends, drawn_patterns
from shapely import Point, Polygon, box
from toy_pattern import toy_pattern

from corsetkit import Style, demo_wearers, draft
from corsetkit.drawing.arrange import CUPS, PANELS, YOKES, row_of
from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.pattern_sheet import pattern_sheet
from corsetkit.drawing.step_sheet import Drawn, Spot, step_sheet
from corsetkit.geometry.curve import Line
from corsetkit.geometry.paths import flattened
from corsetkit.pattern.edge import Kind
from corsetkit.units import say_length

PATTERNS = drawn_patterns()


@pytest.fixture(scope="module", params=PATTERNS, ids=str)
def seen(request):
    """A pattern, its sheet, and what the sheet drew."""
    pattern = PATTERNS[request.param]
    sheet = pattern_sheet(pattern, "in", "A wearer")
    return pattern, sheet, recorded(sheet)


def polygon(path):
    return Polygon([(p.real, p.imag) for p in flattened(path)])


def outlines(canvas):
    """Each piece's number with its outline as drawn."""
    return {
        dict(call.groups[-1][1])["piece"]: polygon(call.what[0])
        for call in canvas.of("area")
        if call.groups and call.groups[-1][0] == "piece"
    }


def test_no_text_meets_another(seen):
    """No two texts come to lie on each other."""
    _, _, canvas = seen
    written = canvas.written
    for i, one in enumerate(written):
        for other in written[:i]:
            assert not overlap(one.box, other.box), (one.text, other.text)


def test_everything_stays_on_the_sheet(seen):
    """Nothing drawn and nothing written leaves the sheet."""
    _, sheet, canvas = seen
    whole = box(sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
    for one in canvas.written:
        assert whole.covers(box(*one.box)), one.text
    for call in canvas.of("line"):
        assert all(whole.covers(Point(p.real, p.imag)) for p in flattened(call.what[0], 0.05))


def test_texts_keep_apart_at_the_sliders_ends():
    """With any style value at its least or largest, no text meets another, crosses a border or leaves the sheet."""
    count = 0
    for what, pattern in at_the_sliders_ends():
        sheet = pattern_sheet(pattern, "cm", "A wearer")
        canvas = recorded(sheet)
        borders = [outline.exterior for outline in outlines(canvas).values()]
        whole = box(sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
        written = canvas.written
        for i, one in enumerate(written):
            text = box(*one.box)
            assert whole.covers(text), (what, one.text)
            assert not any(overlap(one.box, other.box) for other in written[:i]), (what, one.text)
            assert one.letter.kind == "fold-words" or not any(border.intersects(text) for border in borders), what
        count += 1
    assert count > 60


def test_pieces_lie_apart(seen):
    """Pieces lie at least a centimetre apart, as large as they are, turned in no way."""
    pattern, _, canvas = seen
    drawn = outlines(canvas)
    assert sorted(drawn) == sorted(piece.number for piece in pattern.pieces)
    for piece in pattern.pieces:
        mine, own = drawn[piece.number], polygon(piece.path)
        step = complex(*(a - b for a, b in zip(mine.bounds[:2], own.bounds[:2])))
        moved = [v + (step.imag if i % 2 else step.real) for i, v in enumerate(own.bounds)]
        assert mine.bounds == pytest.approx(moved, abs=0.001)
        assert mine.area == pytest.approx(own.area, abs=0.01)
        for number, other in drawn.items():
            if number != piece.number:
                assert mine.distance(other) > 1.0


def test_no_text_crosses_a_border(seen):
    """A text lies wholly in one piece or wholly outside all: it is never cut through by a sewing line."""
    _, _, canvas = seen
    borders = outlines(canvas)
    for one in canvas.written:
        text = box(*one.box)
        for number, piece in borders.items():
            # Fold words may slant, and their box then reaches over what the words do not.
            if one.letter.kind != "fold-words":
                assert not piece.exterior.intersects(text), (one.text, number)


def test_rings_lie_in_their_piece_clear_of_text(seen):
    """Each seam's ring lies in its own piece, or just beside it where that is too narrow; it meets no other ring,
    no border, and no text but its own letter."""
    _, _, canvas = seen
    borders, outside = outlines(canvas), 0
    rings = [
        (call, Point(call.what[0].real, call.what[0].imag).buffer(call.what[1] * canvas.scale / 10))
        for call in canvas.of("dot")
    ]
    for i, (call, ring) in enumerate(rings):
        assert not any(ring.intersects(other) for _, other in rings[:i])
        inside = [text for text in canvas.written if ring.intersects(box(*text.box))]
        assert [text.letter.kind for text in inside] == ["seam"], [text.text for text in inside]
        if call.groups[-1][0] == "piece":
            piece = borders[dict(call.groups[-1][1])["piece"]]
            assert piece.distance(ring) < 0.5
            assert all(other.exterior.distance(ring) > 0 for other in borders.values())
            outside += not piece.covers(ring)
    assert outside <= len(rings) / 10


def test_both_sides_of_a_seam_bear_its_letter(seen):
    """Every sewn edge has its seam's letter in its piece, so each letter stands as often as the seam has edges."""
    pattern, _, canvas = seen
    found = defaultdict(list)
    for one in canvas.written:
        if one.letter.kind == "seam" and one.groups[-1][0] == "piece":
            found[one.text].append(dict(one.groups[-1][1])["piece"])
    owners = {id(edge): piece.number for piece in pattern.pieces for edge in piece.edges}
    wanted = {
        seam_letter(seam.number): sorted(owners[id(edge)] for side in seam.sides for edge in side) for seam in pattern.seams
    }
    assert {letter: sorted(numbers) for letter, numbers in found.items()} == wanted
    assert len(wanted) == len(pattern.seams)


def test_an_edges_line_says_what_it_is(seen):
    """Each edge's line carries its piece, its name, its length in words, and what it is sewn to."""
    pattern, _, canvas = seen
    told = {}
    for piece in pattern.pieces:
        mine = [call for call in canvas.of("line") if call.facts.get("piece") == piece.number]
        assert len(mine) == len(piece.edges)
        for edge, call in zip(piece.edges, mine):
            told[id(edge)] = call.facts
            assert call.facts["edge"] == edge.name and call.facts["kind"] == edge.kind.value
            assert call.facts["length"] == say_length(edge.length, "in")
            assert sum(c.length for c in call.what[0]) == pytest.approx(edge.length, abs=1e-9)
    owners = {id(edge): piece for piece in pattern.pieces for edge in piece.edges}
    for piece in pattern.pieces:
        for edge in piece.edges:
            mine = told[id(edge)]
            if edge.seam is None:
                assert not {"seam", "side", "partner"} & set(mine)
            else:
                assert mine["partner"].split("; ") == [
                    f"{owners[id(other)].number} {owners[id(other)].name}, {other.name}" for other in edge.seam.opposite(edge)
                ]
                for other in edge.seam.opposite(edge):
                    theirs = told[id(other)]
                    assert (theirs["seam"], theirs["side"]) == (mine["seam"], 3 - mine["side"])
                    assert f"{piece.number} {piece.name}, {edge.name}" in theirs["partner"].split("; ")


def test_each_notch_stands_on_its_edge(seen):
    """A notch's stroke crosses the sewing line at the notch."""
    pattern, _, canvas = seen
    borders, count = outlines(canvas), 0
    for call in canvas.of("line"):
        if call.what[1].kind == "notch" and call.groups[-1][0] == "piece":
            count += 1
            [stroke] = call.what[0]
            middle = (stroke.start + stroke.end) / 2
            border = borders[dict(call.groups[-1][1])["piece"]].exterior
            assert border.distance(Point(middle.real, middle.imag)) < 0.002
    assert count == sum(len(piece.notches) for piece in pattern.pieces) > 0


def test_each_piece_is_labelled(seen):
    """Each piece's own words give its number, its name and how to cut it."""
    pattern, _, canvas = seen
    for piece in pattern.pieces:
        words = " ".join(
            one.text
            for one in canvas.written
            if one.letter.kind in ("name", "cut") and ("piece", piece.number) in one.groups[-1][1]
        )
        assert words.startswith(f"{piece.number} {piece.name} cut {piece.cut}")
        assert ("on the fold" in words) == piece.on_fold and ("a pair" in words) == piece.pair


def test_folds_and_grain_are_marked(seen):
    """A piece on the fold has its bracket and dash-dot line; every piece has a grainline along the given direction."""
    pattern, _, canvas = seen
    for piece in pattern.pieces:
        mine = [call for call in canvas.of("line") if ("piece", piece.number) in dict(call.groups).get("piece", ())]
        grain = [call.what[0][0] for call in mine if call.groups[-1][0] == "grainline" and len(call.what[0]) == 1]
        foot, head = piece.grainline
        assert grain
        for stroke in grain:
            turned = (stroke.end - stroke.start) * (head - foot).conjugate()
            assert abs(turned.imag) < 1e-9 * abs(turned) and turned.real > 0
        assert any(call.groups[-1][0] == "fold-mark" for call in mine) == any(edge.kind is Kind.FOLD for edge in piece.edges)


def test_rows_follow_from_what_a_piece_is():
    """Yokes reach the shoulder, panels the hem, cups neither."""
    yoke, upper, lower, front, side = toy_pattern().pieces
    assert [row_of(piece) for piece in (yoke, upper, lower, front, side)] == [YOKES, CUPS, CUPS, PANELS, PANELS]


def test_pieces_slide_and_do_not_jump():
    """While a slider moves by its step, the arrangement moves by little: no piece changes its place in its row."""
    _, body = demo_wearers()[0]
    before = None
    for i in range(13):
        pattern = draft(body, Style(overbust_mark=7.0 + 0.2 * i))
        drawn = outlines(recorded(pattern_sheet(pattern)))
        order = sorted(drawn, key=lambda number: (drawn[number].bounds[1] < 30, drawn[number].bounds[0]))
        assert before is None or order == before
        before = order


def test_a_heading_too_long_is_shortened():
    """A name as long as a sentence neither widens the sheet nor runs into the other words."""
    pattern = toy_pattern()
    short, long = pattern_sheet(pattern, "in", "Ana"), pattern_sheet(pattern, "in", "Ana Maria " * 50)
    assert long.size == short.size


def test_seam_letters_go_on_after_z():
    """The letters of seams are A to Z, then AA: no two seams share one."""
    assert [seam_letter(n) for n in (1, 26, 27, 52, 53)] == ["A", "Z", "AA", "AZ", "BA"]
    assert len({seam_letter(n) for n in range(1, 1000)}) == 999


def test_lengths_follow_the_learners_unit():
    """Drawn for centimetres, the same edge says its length in centimetres."""
    canvas = recorded(pattern_sheet(toy_pattern(), "cm"))
    lengths = [call.facts["length"] for call in canvas.of("line") if "edge" in call.facts]
    assert lengths and all(length.endswith(" cm") for length in lengths)


STEP = [
    Drawn((Line(0j, 0 + 40j),), "before", "centre front"),
    Drawn((Line(0 + 20j, 25 + 20j),), "body", "waist"),
    Drawn((Line(3 + 0j, 20 + 38j),), "guide", "guide line"),
    Drawn((Line(0 + 5j, 24 + 12j),), "new", "hem"),
    Drawn((Line(10 + 25j, 16 + 25j), Line(16 + 25j, 13 + 36j), Line(13 + 36j, 10 + 25j)), "waste", "dart"),
]


def test_a_steps_lines_are_told_apart():
    """Each role has its pen; the new line lies on top; waste is hatched; names and lengths are told of each line."""
    canvas = recorded(step_sheet("3 Hem", STEP, [Spot(13 + 36j, "bust point")], "cm"))
    told = [call for call in canvas.of("line") if "role" in call.facts]
    assert [call.facts["role"] for call in told] == ["waste", "body", "guide", "before", "new"]
    assert told[-1].facts == {"role": "new", "name": "hem", "length": "25 cm"}
    assert {call.what[1].kind for call in told} == {"waste", "body", "guide", "before", "new"}
    assert any(call.what[1].kind == "hatching" for call in canvas.of("line"))
    written = {one.text for one in canvas.written}
    assert {"3 Hem", "hem", "dart", "bust point", "this step", "drawn before", "cut away"} <= written


def test_a_steps_words_do_not_collide():
    """Marks crowded together are all named, no name on another and none off the sheet."""
    spots = [Spot(complex(8 + 0.7 * (i % 6), 14 + 0.8 * (i // 6)), f"point {i}") for i in range(24)]
    sheet = step_sheet("A step", STEP, spots)
    written = recorded(sheet).written
    assert sum(one.text.startswith("point ") for one in written) == 24
    whole = box(sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
    for i, one in enumerate(written):
        assert whole.covers(box(*one.box))
        assert not any(overlap(one.box, other.box) for other in written[:i]), one.text


def test_a_sheet_can_be_painted_again():
    """Painting changes nothing: the second time the same is drawn."""
    sheet = pattern_sheet(toy_pattern())
    assert recorded(sheet).calls == recorded(sheet).calls
    assert replace(sheet, title="other").paint is sheet.paint
