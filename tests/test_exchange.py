"""SVG and DXF of the finished pattern, read back by libraries that did not write them."""

import os
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import ezdxf
import pytest
from drawn_patterns import drawn_patterns
from ezdxf import options
from figures import ready_to_cut
from shapely.geometry import Polygon, box
from svgelements import SVG, Group
from svgelements import Path as SvgPath
from toy_pattern import toy_pattern

from corsetkit import CorsetkitError, Style, demo_wearers, draft
from corsetkit.export.dxf import CORNER, block_name, outline_points, plain_text, write_dxf
from corsetkit.export.dxf_canvas import NUMBERS
from corsetkit.export.spread import spread, upright
from corsetkit.export.svg_mm import svg_mm, write_svg
from corsetkit.finish.finished import finish, unfolded
from corsetkit.geometry.curve import Cubic
from corsetkit.geometry.points import heading
from corsetkit.pattern.edge import Kind

DAY = "2026-03-01"
NAME = "Zo\u00eb \u0141u"
HEBREW = "\u05e9\u05e8\u05d4"
PATTERNS = drawn_patterns(every=False)
WRITERS = {"svg": write_svg, "dxf": write_dxf}


@pytest.fixture(scope="module")
def made():
    """The first demo wearer's pattern, finished."""
    return finish(draft(demo_wearers()[0][1]))


@pytest.fixture(scope="module")
def drawings(tmp_path_factory, made):
    """Both variants of the DXF: (what was written, the document read back by the library)."""
    folder = tmp_path_factory.mktemp("dxf")
    found = {}
    for version in ("R2010", "R12"):
        done = write_dxf(made, folder / f"{version}.dxf", "cm", NAME, DAY, version)
        found[version] = done, ezdxf.readfile(done.path)
    return found


# -- SVG


def _read(text, tmp_path):
    path = tmp_path / "p.svg"
    path.write_text(text, encoding="utf-8")
    # At 25.4 pixels an inch a pixel is a millimetre.
    return SVG.parse(str(path), ppi=25.4)


def _group(svg, name):
    return next(one for one in svg.select(lambda one: isinstance(one, Group) and one.id == name))


def _subpath(group):
    """The first path of a group as a list of corners, mm, y down."""
    path = next(one for one in group.select(lambda one: isinstance(one, SvgPath)))
    return [complex(part.end.x, part.end.y) for part in path if part.end is not None]


def _off(points, others):
    """The farthest that a point of the one lies from the nearest of the other."""
    return max(min(abs(p - q) for q in others) for p in points)


def test_the_svg_is_in_millimetres(made, tmp_path):
    """Width, height and view say the same millimetres, and the test square is 100 mm a side within 0.01 mm."""
    text = svg_mm(made, "cm", NAME, DAY)
    root = ET.fromstring(text)
    view = [float(one) for one in root.get("viewBox").split()]
    assert view[:2] == [0, 0] and root.get("width") == f"{view[2]:g}mm" and root.get("height") == f"{view[3]:g}mm"
    svg = _read(text, tmp_path)
    assert (svg.width, svg.height) == pytest.approx((view[2], view[3]))
    path = next(one for one in _group(svg, "test-square").select(lambda one: isinstance(one, SvgPath)))
    left, top, right, bottom = path.bbox(with_stroke=False)
    assert (right - left, bottom - top) == pytest.approx((100, 100), abs=0.01)


def test_the_svg_keeps_its_layers_apart(made):
    """A group for each kind of line holds one for each piece; every id is given once; no namespace but SVG's own."""
    root = ET.fromstring(svg_mm(made, "cm", NAME, DAY))
    assert all(element.tag.startswith("{http://www.w3.org/2000/svg}") for element in root.iter())
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(ids) == len(set(ids))
    assert {"cutting", "sewing", "notches", "grain", "fold", "words", "test-square"} <= set(ids)
    for layer in ("cutting", "sewing", "grain", "words"):
        for one in made.pieces:
            assert f"{layer}-{one.piece.number}" in ids
    groups = {element.get("id"): element for element in root.iter() if element.get("id")}
    assert not list(groups["cutting"].iter("{http://www.w3.org/2000/svg}text"))
    assert len(list(groups["cutting"].iter("{http://www.w3.org/2000/svg}path"))) == len(made.pieces)


@pytest.mark.parametrize("opened", [True, False], ids=["opened", "on the fold"])
def test_the_svgs_pieces_are_the_patterns(made, tmp_path, opened):
    """Every cutting line, moved back to where it was drafted, lies on the finished one within 0.01 mm; so with the seam."""
    svg = _read(svg_mm(made, "cm", NAME, DAY, opened), tmp_path)
    laid = spread(made, NAME, DAY, opened)
    for one in laid.pieces:
        asked = unfolded(one.view.finished_piece).cutting if opened else one.view.finished_piece.cutting
        path = _subpath(_group(svg, f"cutting-{one.piece.number}"))
        drawn = [complex(p.real, laid.size.imag * 10 - p.imag) / 10 for p in path]
        assert _off(drawn, [one.move(p) for p in asked]) < 0.001
        if opened or not one.piece.on_fold:
            assert _off([one.move(p) for p in asked], drawn) < 0.001
    seam = max(made.pattern.seams, key=lambda one: one.lengths[0])
    edge = seam.sides[0][0]
    number = next(piece.number for piece in made.pattern.pieces if any(edge is mine for mine in piece.edges))
    lengths = [
        sum(part.length(error=1e-7) for part in path if part.length)
        for path in _group(svg, f"sewing-{number}").select(lambda one: isinstance(one, SvgPath))
    ]
    assert any(length == pytest.approx(10 * edge.length, abs=0.02) for length in lengths)


@pytest.mark.parametrize("what", PATTERNS, ids=str)
@pytest.mark.parametrize("opened", [True, False], ids=["opened", "on the fold"])
def test_no_piece_lies_on_another(what, opened):
    """All pieces lie within the sheet, apart from each other and from the test square, each with its grain upright."""
    laid = spread(ready_to_cut(PATTERNS[what]), NAME, DAY, opened)
    low = laid.square
    shapes = [box(low.real, low.imag, low.real + 10, low.imag + 10)]
    for one in laid.pieces:
        points = [curve.start + one.step for curve in one.view.cutting]
        assert all(0 < p.real < laid.size.real and 0 < p.imag < laid.size.imag for p in points)
        shapes.append(Polygon([(p.real, p.imag) for p in points]))
        assert shapes[-1].is_valid
        assert all(shapes[-1].distance(other) > 1.0 for other in shapes[:-1])
        foot, head = (upright(one.piece)(p) for p in one.piece.grainline)
        assert heading(head - foot) == pytest.approx(90, abs=1e-6)


@pytest.mark.parametrize("name", ["A & <b> \"x\" 'y'", HEBREW, "x\0y\ud800\ufffe", "../../a", "n" * 300, ""])
def test_any_name_may_stand_in_the_svg(made, tmp_path, name):
    """Signs of markup are escaped, what no file may hold is left out; names from right to left stay: browsers order them."""
    done = write_svg(made, tmp_path / "p.svg", "cm", name, DAY)
    root = ET.fromstring(done.path.read_bytes())
    title = root.find("{http://www.w3.org/2000/svg}title").text
    assert title.startswith("Corset pattern") and (name != HEBREW or HEBREW in title)
    assert [one.name for one in tmp_path.iterdir()] == ["p.svg"]


# -- DXF


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_the_dxf_is_sound(drawings, version):
    """Read back, the library's own audit finds nothing; the unit stands in it, and every piece is a block inserted once."""
    done, document = drawings[version]
    audit = document.audit()
    assert not audit.errors and not audit.fixes
    assert document.dxfversion == {"R2010": "AC1024", "R12": "AC1009"}[version]
    inserts = [entity.dxf.name for entity in document.modelspace().query("INSERT")]
    assert sorted(inserts) == sorted(done.pieces) and len(set(inserts)) == len(inserts)
    assert all(name in document.blocks for name in done.pieces)
    if version == "R2010":
        assert document.header["$INSUNITS"] == 4 and document.header["$MEASUREMENT"] == 1
        for number, words in NUMBERS.items():
            assert document.layers.get(str(number)).description == words
    texts = [entity.dxf.text for entity in document.modelspace().query("TEXT")]
    assert "units: mm" in texts and any("no conformity claimed" in text for text in texts)
    assert any("no conformity claimed" in said for said in done.said)


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_the_dxfs_square_is_true(drawings, version):
    """Four lines of 100 mm on a layer of their own."""
    _, document = drawings[version]
    lines = document.modelspace().query('LINE[layer=="TEST_SQUARE"]')
    assert [(line.dxf.end - line.dxf.start).magnitude for line in lines] == pytest.approx([100] * 4, abs=1e-6)


def _corners(entity):
    points = entity.get_points("xy") if entity.dxftype() == "LWPOLYLINE" else [v.dxf.location for v in entity.vertices]
    return [complex(p[0], p[1]) for p in points]


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_the_dxfs_cutting_lines_are_the_patterns(drawings, made, version):
    """Each block's layer 1 is one closed polyline, equal point by point to the piece opened out within 0.01 mm."""
    _, document = drawings[version]
    for one in made.pieces:
        block = document.blocks.get(block_name(one.piece))
        (line,) = [entity for entity in block if entity.dxf.layer == "1"]
        assert line.is_closed
        turn = upright(one.piece)
        asked = [turn(p) * 10 for p in unfolded(one).cutting]
        drawn = _corners(line)
        assert len(drawn) == len(asked) and max(abs(p - q) for p, q in zip(drawn, asked)) < 0.01


def test_the_dxfs_sewing_lines_are_true_splines(drawings, made):
    """Each cubic of a sewing line is a spline of degree 3 with its own four control points; seams keep their lengths."""
    _, document = drawings["R2010"]
    for one in made.pieces:
        block, turn = document.blocks.get(block_name(one.piece)), upright(one.piece)
        splines = [[complex(p[0], p[1]) for p in entity.control_points] for entity in block.query('SPLINE[layer=="14"]')]
        for entity in block.query("SPLINE"):
            assert entity.dxf.degree == 3 and list(entity.knots) == pytest.approx([0, 0, 0, 0, 1, 1, 1, 1])
        for edge, width in zip(one.piece.edges, one.allowances):
            for curve in edge.path if width else ():
                if type(curve) is Cubic:
                    asked = [turn(p) * 10 for p in (curve.start, curve.first, curve.second, curve.end)]
                    assert any(max(abs(p - q) for p, q in zip(asked, drawn)) < 0.01 for drawn in splines)


def test_the_old_dxf_is_of_plain_parts(drawings, made):
    """R12 is 7-bit, has no splines, and its longest seam's polyline is as long as the seam within 0.01 mm."""
    done, document = drawings["R12"]
    assert done.path.read_bytes().isascii()
    kinds = {entity.dxftype() for block in document.blocks for entity in block}
    assert kinds <= {"POLYLINE", "LINE", "POINT", "TEXT", "CIRCLE", "INSERT"}
    assert "Zoe Lu" in [entity.dxf.text for entity in document.blocks.get(done.pieces[0]).query("TEXT")]
    assert any("without its accents" in said for said in done.said)
    seam = max(made.pattern.seams, key=lambda one: one.lengths[0])
    for edge in (seam.sides[0][0], seam.sides[1][0]):
        piece = next(piece for piece in made.pattern.pieces if any(edge is mine for mine in piece.edges))
        lengths = []
        for entity in document.blocks.get(block_name(piece)).query('POLYLINE[layer=="14"]'):
            points = _corners(entity)
            lengths.append(sum(abs(q - p) for p, q in zip(points, points[1:])))
        assert any(length == pytest.approx(10 * edge.length, abs=0.01) for length in lengths)


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_the_dxfs_layers_hold_what_they_say(drawings, made, version):
    """Turn and curve points lie on the cutting line, notches are as many as in the pattern, the fold is the mirror line."""
    _, document = drawings[version]
    for one in made.pieces:
        block, whole = document.blocks.get(block_name(one.piece)), unfolded(one)
        on = {layer: [entity for entity in block if entity.dxf.layer == layer] for layer in map(str, NUMBERS)}
        turn = upright(one.piece)
        asked = [turn(p) * 10 for p in whole.cutting]
        points = [complex(entity.dxf.location.x, entity.dxf.location.y) for entity in on["2"] + on["3"]]
        assert len(points) == len(asked) and _off(points, asked) < 0.01
        assert 3 <= len(on["2"]) < len(asked) / 2 or len(asked) < 20
        cuts = [entity for entity in on["4"] if entity.dxftype() == "LINE"]
        assert len(cuts) == sum(notch.count for notch in whole.notches)
        assert len([entity for entity in on["4"] if entity.dxftype() == "POINT"]) == len(cuts)
        fold = next((edge for edge in one.piece.edges if edge.kind is Kind.FOLD), None)
        assert len(on["6"]) == (1 if fold else 0)
        if fold:
            ends = [turn(p) * 10 for p in (fold.path[0].start, fold.path[-1].end)]
            assert _off([complex(p.x, p.y) for p in (on["6"][0].dxf.start, on["6"][0].dxf.end)], ends) < 0.01
        (grain,) = on["7"]
        step = grain.dxf.end - grain.dxf.start
        assert abs(step.x) < 1e-6 and step.y > 5
        texts = " ".join(entity.dxf.text for entity in on["15"] if entity.dxftype() == "TEXT")
        assert f"{one.piece.number} {one.piece.name}" in texts and "this way up" in texts and DAY in texts
        assert not on["8"]


def test_a_half_may_be_written(made, tmp_path):
    """On the fold, the cutting line runs open from one end of the fold to the other."""
    document = ezdxf.readfile(write_dxf(made, tmp_path / "p.dxf", "cm", "", DAY, opened=False).path)
    one = next(one for one in made.pieces if one.piece.on_fold)
    (line,) = [entity for entity in document.blocks.get(block_name(one.piece)) if entity.dxf.layer == "1"]
    turn = upright(one.piece)
    assert not line.is_closed
    assert _off(_corners(line), [turn(p) * 10 for p in one.cutting]) < 0.01
    texts = [entity.dxf.text for entity in document.blocks.get(block_name(one.piece)).query("TEXT")]
    assert "on the fold" in texts


@pytest.mark.parametrize("what", list(PATTERNS)[:6], ids=str)
@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_other_patterns_are_sound_too(tmp_path, what, version):
    """Patterns of other wearers and styles pass the audit, with a block for each piece."""
    made = ready_to_cut(PATTERNS[what])
    done = write_dxf(made, tmp_path / "p.dxf", "in", "Ana", DAY, version)
    document = ezdxf.readfile(done.path)
    audit = document.audit()
    assert not audit.errors and not audit.fixes and len(done.pieces) == len(made.pieces) == len(set(done.pieces))


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_the_same_pattern_gives_the_same_bytes(made, tmp_path, version):
    """No clock and no random mark is in the file, and the library's own setting is left as it was."""
    before = options.write_fixed_meta_data_for_testing
    files = [write_dxf(made, tmp_path / f"{i}.dxf", "cm", NAME, DAY, version).path.read_bytes() for i in (0, 1)]
    assert files[0] == files[1] and options.write_fixed_meta_data_for_testing == before
    assert svg_mm(made, "cm", NAME, DAY) == svg_mm(made, "cm", NAME, DAY)


def test_the_same_pattern_gives_the_same_bytes_in_every_process(tmp_path):
    """Nothing in a DXF follows from the order of a set, which is another one in every process."""
    code = (
        "import sys; from corsetkit import demo_wearers, draft; from corsetkit.export.dxf import write_dxf; "
        "from corsetkit.finish.finished import finish; "
        f"write_dxf(finish(draft(demo_wearers()[0][1])), sys.argv[1], 'cm', 'Ana', '{DAY}')"
    )
    for seed in ("2", "4"):
        subprocess.run(
            [sys.executable, "-c", code, str(tmp_path / seed)],
            check=True,
            env={**os.environ, "PYTHONPATH": str(Path(__file__).parent.parent), "PYTHONHASHSEED": seed},
        )
    assert (tmp_path / "2").read_bytes() == (tmp_path / "4").read_bytes()


def test_nothing_is_said_beside_the_file(made, tmp_path, caplog, capfd):
    """The library's warnings about what we mean to do reach nobody."""
    write_dxf(made, tmp_path / "p.dxf", "cm", NAME, DAY, "R12")
    assert not caplog.records and capfd.readouterr() == ("", "")


@pytest.mark.parametrize(
    "name, said", [(HEBREW, "wearer 1"), ("\u0410\u043d\u043d\u0430", None), ("Ana\nB\\P{x}", None), ("50%", None)]
)
def test_no_dxf_garbles_a_name(made, tmp_path, name, said):
    """A name that runs from right to left is replaced and said to be; others stand on one line."""
    done = write_dxf(made, tmp_path / "p.dxf", "cm", name, DAY, number=1)
    texts = {entity.dxf.text for block in ezdxf.readfile(done.path).blocks for entity in block.query("TEXT")}
    assert (said or " ".join(name.split())) in texts
    assert bool(said) == any("wearer 1" in one for one in done.said)


def test_corners_and_curves_are_told_apart():
    """A square's four corners are turn points; what is added on its sides is not."""
    from corsetkit.drawing.finished_view import closed

    found = outline_points(closed((0j, 5 + 0j, 10 + 0j, 10 + 10j, 10j)))
    assert [at for at, corner in found if corner] == [0j, 10 + 0j, 10 + 10j, 10j] and CORNER < 45
    assert [at for at, corner in found if not corner] == [5 + 0j]


def test_block_names_are_plain():
    """A block's name has capitals, digits and low lines only."""
    names = [block_name(piece) for piece in toy_pattern().pieces]
    assert names[0] == "P01_FRONT_YOKE" and all(name.replace("_", "").isalnum() and name.isascii() for name in names)
    assert plain_text("\u2191 this way up \u2013 \u00e9") == "this way up - e"


# -- files


@pytest.mark.parametrize("write", WRITERS.values(), ids=WRITERS)
def test_a_missing_folder_is_one_sentence(tmp_path, made, write):
    """A folder that is not there is named and not made."""
    with pytest.raises(CorsetkitError, match="does not exist") as told:
        write(made, tmp_path / "nowhere" / "p.x")
    assert "\n" not in str(told.value) and not (tmp_path / "nowhere").exists()


@pytest.mark.parametrize("write", WRITERS.values(), ids=WRITERS)
def test_a_folder_is_not_a_file(tmp_path, made, write):
    """Asked to write onto a folder, it proposes a file in it."""
    with pytest.raises(CorsetkitError, match=r"is a folder.*pattern\.(svg|dxf)"):
        write(made, tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("write", WRITERS.values(), ids=WRITERS)
@pytest.mark.skipif(not Path("/proc/self").is_dir(), reason="no folder here in which nobody may write")
def test_a_folder_nobody_may_write_in_is_one_sentence(made, write):
    """Where the system takes no files, the sentence says that nothing was written."""
    with pytest.raises(CorsetkitError, match="was not written") as told:
        write(made, "/proc/p.x")
    assert "\n" not in str(told.value)


@pytest.mark.parametrize("write", WRITERS.values(), ids=WRITERS)
def test_a_failed_write_leaves_the_old_file(tmp_path, made, monkeypatch, write):
    """Where the disk refuses, the earlier file still stands whole and nothing half-written lies beside it."""
    path = tmp_path / "p.x"
    path.write_bytes(b"the earlier one")

    def refuse(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(CorsetkitError, match="No space left"):
        write(made, path)
    assert path.read_bytes() == b"the earlier one" and list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("version", ["R14", "", None, 12])
def test_an_unknown_version_is_one_sentence(tmp_path, made, version):
    """A variant that is not written is refused with those that are."""
    with pytest.raises(CorsetkitError, match="R2010 or R12"):
        write_dxf(made, tmp_path / "p.dxf", version=version)
    assert list(tmp_path.iterdir()) == []


def test_style_without_yoke_is_written(tmp_path):
    """A pattern without yokes leaves their row empty, and nothing else changes."""
    made = finish(draft(demo_wearers()[1][1], Style(yoke=False)))
    done = write_dxf(made, tmp_path / "p.dxf", "cm", "", DAY)
    assert len(done.pieces) == len(made.pieces) and not any("YOKE" in name for name in done.pieces)
