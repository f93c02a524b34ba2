"""A sheet as SVG: read back by readers that did not write it."""

import re
import subprocess
import sys
from html.parser import HTMLParser
from urllib.parse import unquote
from xml.etree import ElementTree

import pytest
from svgelements import SVG, Path
from toy_pattern import toy_pattern

from corsetkit.drawing.canvas import Sheet, box_run
from corsetkit.drawing.pattern_sheet import pattern_sheet
from corsetkit.drawing.pens import CUT, CUT_PAPER, FOLD, SEWN
from corsetkit.drawing.shorter import shorter
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.geometry.paths import path_length

SPACE = "{http://www.w3.org/2000/svg}"
CURVE = (Line(0j, 4 + 3j), Cubic(4 + 3j, 6 + 5j, 9 + 5j, 10 + 0j))
HOSTILE = ["</svg><script>alert(1)</script>", "\"' onload='x", "a&b<c>", "\x00\x1b]0;", "\ud800", "\u202egnitirw", "A" * 500]


def sheet(paint, title="Sheet", description="A drawing."):
    return Sheet(-1 - 1j, 11 + 7j, title, description, paint, 2.0)


def drawn(paint, **more):
    return ElementTree.fromstring(svg_text(sheet(paint, **more)))


def test_a_length_survives_the_drawing():
    """A run read back from the SVG is as long as it was drawn, within a hundredth of a millimetre."""
    text = svg_text(sheet(lambda canvas: canvas.line(CURVE, SEWN)))
    [path] = [element for element in SVG.parse(_file(text), ppi=25.4).elements() if isinstance(element, Path)]
    # One user unit is one millimetre.
    assert path.length(error=1e-9) == pytest.approx(10 * path_length(CURVE), abs=0.01)


def test_cubics_stay_cubics_and_y_is_turned():
    """A cubic is written as one C command; what is higher on the sheet has the smaller y."""
    root = drawn(lambda canvas: canvas.line(CURVE, SEWN))
    tangent = root.find(f"{SPACE}path").get("d")
    assert re.sub(r"[-\d. ]", "", tangent) == "MLC"
    numbers = [float(n) for n in re.findall(r"-?\d+\.\d\d", tangent)]
    assert numbers[:4] == [10.0, 70.0, 50.0, 40.0]


def test_a_gap_begins_a_new_stroke_and_rounding_does_not():
    """A run's curves are one stroke where they join but for rounding, and two where they do not."""
    one = drawn(lambda canvas: canvas.line((Line(0j, 1 + 0j), Line(1 + 1e-14j, 2 + 0j)), SEWN)).find(f"{SPACE}path")
    two = drawn(lambda canvas: canvas.line((Line(0j, 1 + 0j), Line(1.5 + 0j, 2 + 0j)), SEWN)).find(f"{SPACE}path")
    assert one.get("d").count("M") == 1 and two.get("d").count("M") == 2


def test_no_number_is_minus_zero_and_all_have_two_decimals():
    """Coordinates are fixed decimals without minus zero, so that a stored drawing compares exactly."""

    def paint(canvas):
        canvas.line((Line(-1 + 7.0000001j, -1.0000001 + 7j),), FOLD)
        canvas.words(-1.0000001 + 7.0000001j, "x", CUT, "start", -1e-9)
        canvas.dot(-1.0000001 + 7j, 1, CUT_PAPER)

    text = svg_text(sheet(paint))
    assert not re.search(r"-0\.00(?!\d)", text)
    for number in re.findall(r'[\d.]+(?=[ "CLMZ])', "".join(re.findall(r' (?:d|x|y|cx|cy|r)="[^"]*"', text))):
        assert re.fullmatch(r"\d+\.\d\d", number), number


def test_widths_and_letters_are_seen_at_their_declared_size():
    """At scale 2 a pen and a letter are drawn twice their declared size: seen at half the scale they are at it."""

    def paint(canvas):
        canvas.line(CURVE, SEWN)
        canvas.words(0j, "x", CUT)

    root = drawn(paint)
    assert float(root.find(f"{SPACE}path").get("stroke-width")) == pytest.approx(2 * SEWN.width)
    assert float(root.find(f"{SPACE}text").get("font-size")) == pytest.approx(2 * CUT.size)


def test_proportions_are_true():
    """The picture's box has the sheet's own proportions, and no height that could squeeze it."""
    root = drawn(lambda canvas: None)
    assert root.get("viewBox") == "0 0 120.00 80.00"
    assert root.get("width") == "100%" and root.get("height") is None


def test_it_says_what_it_shows():
    """The SVG is an image with a name, a title and a description, for those who listen to it."""
    root = drawn(lambda canvas: None, title="Step 3", description="The overbust line.")
    assert (root.get("role"), root.get("aria-label")) == ("img", "Step 3")
    assert root[0].tag == f"{SPACE}title" and root[0].text == "Step 3"
    assert root[1].tag == f"{SPACE}desc" and root[1].text == "The overbust line."


@pytest.mark.parametrize("name", HOSTILE)
def test_a_wearers_name_cannot_spoil_the_drawing(name):
    """Whatever a wearer is called, the SVG is well formed, holds no element but our own, and one text is her name's."""
    text = svg_text(pattern_sheet(toy_pattern(), "in", name))
    root = ElementTree.fromstring(text.encode("utf-8"))
    assert {element.tag.removeprefix(SPACE) for element in root.iter()} == {
        "svg",
        "title",
        "desc",
        "g",
        "path",
        "circle",
        "text",
    }
    assert not any(key.startswith("on") for element in root.iter() for key in element.attrib)
    headings = [element for element in root.iter(f"{SPACE}text") if element.get("class") == "ck-heading"]
    assert len(headings) == 1 and headings[0].text.startswith("Corset pattern")


def test_facts_are_escaped():
    """A fact told of a line comes back from the data attribute as it was given."""
    root = drawn(lambda canvas: canvas.line(CURVE, SEWN, {"edge": "a \"b\" <c> & 'd'"}))
    assert root.find(f"{SPACE}path").get("data-edge") == "a \"b\" <c> & 'd'"


class _Image(HTMLParser):
    def handle_starttag(self, tag, attributes):
        self.tag, self.attributes = tag, dict(attributes)


@pytest.mark.parametrize("name", ["Ana", *HOSTILE])
def test_the_stored_image_holds_the_whole_drawing(name):
    """The image for stored outputs holds the drawing, shorter, in its data address, and its description in its alt text."""
    text = svg_text(pattern_sheet(toy_pattern(), "in", name))
    image = svg_image(text)
    reader = _Image()
    reader.feed(image)
    assert reader.tag == "img" and set(reader.attributes) == {"alt", "style", "src"}
    kind, address = reader.attributes["src"].split(",", 1)
    assert kind == "data:image/svg+xml" and address.isascii() and "#" not in address
    inside, outside = ElementTree.fromstring(unquote(address).encode()), ElementTree.fromstring(text.encode())
    assert unquote(address) == shorter(text).replace('"', "'")
    written = lambda tree: [(one.tag, one.text) for one in tree.iter() if one.tag.endswith("}text")]
    assert written(inside) == written(outside) != []
    assert reader.attributes["alt"] == f"{outside[0].text}. {outside[1].text}"


def test_drawing_needs_the_standard_library_alone():
    """Sheet and SVG are made with every outside package blocked."""
    program = (
        "import sys\n"
        "class Block:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name.split('.')[0] in {'shapely', 'numpy', 'matplotlib', 'reportlab', 'ipywidgets', 'PIL'}:\n"
        "            raise ImportError(name)\n"
        "sys.meta_path.insert(0, Block())\n"
        f"sys.path[:0] = {[p for p in sys.path if p]!r}\n"
        "from toy_pattern import toy_pattern\n"
        "from corsetkit.drawing.pattern_sheet import pattern_sheet\n"
        "from corsetkit.drawing.step_sheet import Drawn, step_sheet\n"
        "from corsetkit.drawing.svg import svg_text\n"
        "pattern = toy_pattern()\n"
        "svg_text(step_sheet('Step', [Drawn(pattern.pieces[0].path, 'waste', 'cut away')]))\n"
        "print(len(svg_text(pattern_sheet(pattern))) > 1000)\n"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True)
    assert done.stdout.strip() == "True", done.stderr


def test_an_area_is_closed():
    """An area's outline closes, and it carries its colour and no stroke."""
    path = drawn(lambda canvas: canvas.area(box_run(0, 0, 2, 1), CUT_PAPER)).find(f"{SPACE}path")
    assert path.get("d").endswith("Z") and path.get("fill") == CUT_PAPER.colour and path.get("stroke") is None


def _file(text):
    import io

    return io.StringIO(text)
