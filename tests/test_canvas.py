"""The drawing protocol, its lettering, hatching and the search for room: what every drawing rests on."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon, box

from corsetkit.drawing import pens
from corsetkit.drawing.canvas import Recorder, box_run
from corsetkit.drawing.free_space import Room
from corsetkit.drawing.hatching import fill, hatched
from corsetkit.drawing.lettering import fitted, one_line, overlap, text_box, text_width, width_in_heights, wrapped
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import CUT, HEADING, NAME, SEWN, SPOT_WORDS, WASTE, Letter
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.paths import flattened

LETTERS = [value for value in vars(pens).values() if isinstance(value, Letter)]
HALF_MOON = (Line(0j, 10 + 0j), Cubic(10 + 0j, 10 + 8j, 0 + 8j, 0j))


def shape(path):
    return Polygon([(p.real, p.imag) for p in flattened(path)[:-1]])


@pytest.fixture(scope="module")
def font_width():
    """The font's own width of a text, as the PDF library reads it from the font file."""
    from reportlab.pdfbase import pdfmetrics

    from corsetkit.printing import pdf

    pdf._fonts()
    return lambda text, bold: pdfmetrics.stringWidth(text, pdf.BOLD if bold else pdf.PLAIN, 1)


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize(
    "text",
    [
        "1 front yoke",
        "cut 2, a pair",
        "14 1/2 in",
        "WAIST & HIP 100 %",
        "\u0141\u00f3d\u017a Gr\u00f6\u00dfe",
        "\u0160\u010detina \u013d\u013e\u0165\u010f",
        "\u0152uvre \u00c6gir \u00bd",
        "\u0410\u043d\u043d\u0430 \u0416\u0443\u043a",
        "\u0395\u03bb\u03ad\u03bd\u03b7",
        "iiillljjj...",
        "\u201cquoted\u201d \u2013 \u2026 \u00b7",
    ],
)
def test_measured_width_covers_the_fonts(font_width, text, bold):
    """A text is never drawn wider than it was measured, and Latin text is measured to within 6 in 100."""
    own, measured = font_width(text, bold), width_in_heights(text, bold)
    assert own <= measured + 1e-9
    if all(ord(letter) < 127 for letter in text):
        assert measured <= 1.06 * own


def test_a_turned_text_keeps_its_size():
    """A text turned upright has its width as its box's height, and lies to the left of where it stands."""
    level = text_box(3 + 4j, "on the fold", CUT, "middle", 0, 2.0)
    upright = text_box(3 + 4j, "on the fold", CUT, "middle", 90, 2.0)
    assert upright[3] - upright[1] == pytest.approx(level[2] - level[0])
    assert upright[2] - upright[0] == pytest.approx(level[3] - level[1])
    # Ascent to the left: the box reaches farther to the left than to the right.
    assert 3 - upright[0] == pytest.approx(level[3] - 4)


def test_fitted_and_wrapped_keep_within_their_width():
    """A long name is shortened with an ellipsis, long text broken between words; nothing is wider than allowed."""
    name = "Anna Maria von und zu Hohenstein-Weissenfels"
    short = fitted(name, HEADING, 6.0, 1.0)
    assert short.endswith("\u2026") and name.startswith(short[:-1]) and text_width(short, HEADING, 1.0) <= 6.0
    lines = wrapped(name, CUT, 3.0, 1.0)
    assert " ".join(lines) == name and len(lines) > 1
    assert all(text_width(line, CUT, 1.0) <= 3.0 or " " not in line for line in lines)


def test_one_line_drops_what_no_font_draws():
    """Line breaks become blanks; control signs, and those that turn the direction of writing, are dropped."""
    assert one_line(" Anna\n\tB\x00 \u202ecod\ud800 ") == "Anna B cod"


def test_recorder_keeps_calls_in_order_with_groups_and_facts():
    """Each call stands with the groups around it; a text stands with its box."""
    canvas = Recorder(2.0)
    with canvas.group("piece", {"piece": 3}):
        canvas.line((Line(0j, 1 + 0j),), SEWN, {"edge": "hem"})
        with canvas.group("label"):
            canvas.words(1j, "hem", CUT)
    canvas.dot(0j, 1.0, WASTE)
    assert [call.kind for call in canvas.calls] == ["line", "words", "dot"]
    assert canvas.calls[0].facts == {"edge": "hem"}
    assert canvas.calls[1].groups == (("piece", (("piece", 3),)), ("label", ()))
    assert canvas.calls[2].groups == ()
    assert canvas.written[0].box == text_box(1j, "hem", CUT, "middle", 0.0, 2.0)


def test_hatching_lies_inside_and_fills():
    """Every stroke lies in the region, and no place of the region is farther than the spacing from a stroke."""
    strokes = hatched(HALF_MOON, 0.5)
    region = shape(HALF_MOON)
    lines = [LineString([(s.start.real, s.start.imag), (s.end.real, s.end.imag)]) for s in strokes]
    assert all(region.buffer(0.03).covers(line) for line in lines)
    covered = lines[0].buffer(0.5)
    for line in lines[1:]:
        covered = covered.union(line.buffer(0.5))
    # Where the region runs out to a point narrower than the spacing there may be no stroke.
    assert region.difference(covered).area < 0.01 * region.area


def test_hatching_stands_still_while_a_border_moves():
    """Strokes lie on fixed lines of the drawing, so a moved border does not make them swim."""

    def levels(path):
        return {round((s.start * complex(1, -1)).imag / 2**0.5, 6) for s in hatched(path, 0.5)}

    assert levels(box_run(0, 0, 10, 6)) <= levels(box_run(0, 0, 10.3, 6.2))


def test_waste_is_hatched_on_every_canvas():
    """Waste is told by strokes, not by a colour alone."""
    canvas = Recorder(1.0)
    fill(canvas, HALF_MOON, WASTE)
    [call] = canvas.of("line")
    assert len(call.what[0]) > 20


def test_pens_differ_without_colour():
    """No two kinds of line on one sheet have the same width and dash: without colour they are still told apart."""
    from corsetkit.drawing import painting, step_sheet

    for some in ([painting.SEWN, painting.FREE, painting.FOLD, painting.GRAIN], list(step_sheet.PENS.values())):
        assert len({(pen.width, pen.dash) for pen in some}) == len(some)
    assert step_sheet.PENS["new"].width > 2 * step_sheet.PENS["before"].width


@pytest.mark.parametrize("letter", LETTERS, ids=lambda letter: letter.kind)
def test_letters_are_readable(letter):
    """Lettering is at least 2.3 mm high and stands out from paper and board by 4.5 to 1 (WCAG 2, contrast minimum)."""
    assert letter.size >= 2.3
    assert min(contrast(letter.ink, pens.PAPER), contrast(letter.ink, pens.BOARD)) >= 4.5


def contrast(one, other):
    """The contrast ratio of two colours, as WCAG 2 defines it."""

    def light(colour):
        parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
        parts = [p / 12.92 if p <= 0.03928 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]

    high, low = sorted((light(one), light(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@given(st.floats(0.5, 4), st.floats(0.3, 2), st.floats(0, 10), st.floats(0, 6))
def test_a_place_found_lies_inside_and_clear(width, height, x, y):
    """A box placed in a piece lies within its outline and clear of what is taken; one that is found nowhere is None."""
    room = Room(flattened(HALF_MOON, 0.05), 0.3)
    room.taken.append((4.0, 1.0, 6.0, 2.0))
    at = room.place(width, height, complex(x, y), 0.1)
    if at is None:
        assert width > 3 or height > 1.5
        return
    placed = (at.real - width / 2, at.imag - height / 2, at.real + width / 2, at.imag + height / 2)
    assert not overlap(placed, room.taken[0], 0.1 - 1e-9)
    assert shape(HALF_MOON).buffer(0.03).covers(box(*placed))


def test_a_place_moves_little_when_the_outline_moves_little():
    """While a border slides, the place slides with it and does not jump."""

    def place(width):
        return Room(flattened(box_run(0, 0, width, 5)), 0.3).place(3, 1, 3 + 2.5j, 0.1)

    widths = [4.0 + 0.05 * i for i in range(40)]
    places = [place(width) for width in widths]
    assert max(abs(b - a) for a, b in zip(places, places[1:])) <= 0.05 + 1e-9


def test_names_of_points_near_each_other_do_not_collide():
    """Twenty marks crowded into a few centimetres all get their names, none over another."""
    clutter = Clutter((-20, -20, 20, 20), 1.0)
    points = [complex(i % 5, i // 5) * 0.9 for i in range(20)]
    for point in points:
        clutter.dot(point)
    placed = [clutter.beside(point, f"mark {i}", SPOT_WORDS) for i, point in enumerate(points)]
    boxes = [text_box(at, text, letter, anchor, 0, 1.0) for at, text, letter, anchor in filter(None, placed)]
    assert len(boxes) == 20
    assert not any(overlap(a, b) for i, a in enumerate(boxes) for b in boxes[:i])


def test_a_lines_name_is_left_out_rather_than_written_over_something():
    """Where every place beside a line is taken, its name is not written."""
    clutter = Clutter((-1, -1, 11, 1), 1.0)
    line = [0j, 10 + 0j]
    for i in range(-20, 220):
        clutter.draw([complex(i / 20, -1), complex(i / 20, 1)])
    assert clutter.along(line, "underbust line", NAME) is None
    assert Clutter((-1, -1, 11, 1), 1.0).along(line, "underbust line", NAME) is not None
