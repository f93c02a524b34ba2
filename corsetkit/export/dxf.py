"""The finished pattern as a DXF in millimetres: a block for each piece, laid out by inserts.

Two variants: R2010 with true splines, and R12, which older programs read, with polylines and plain letters only.
"""

import io
import logging
from contextlib import contextmanager

from corsetkit.drawing.canvas import box_run
from corsetkit.drawing.finished_painting import LAYERS, paint_layer
from corsetkit.errors import CorsetkitError
from corsetkit.export import dxf_canvas as layers
from corsetkit.export.dxf_canvas import DxfCanvas, xy
from corsetkit.export.spread import SQUARE, Written, spread
from corsetkit.files import write_whole
from corsetkit.geometry.points import turn_between
from corsetkit.printing.draft_print import said_date, target
from corsetkit.printing.names import ascii_name, plain_letters, shown_name
from corsetkit.units import check_unit, shown

VERSIONS = ("R2010", "R12")
CORNER = 15.0
"""Where the cutting line turns by more than so many degrees in one point, it is a turn point: course convention."""

_MILLIMETRES, _UNSAID, _METRIC = 4, 0, 1


def write_dxf(finished, path, unit="cm", wearer="", date=None, version="R2010", opened=True, number=None):
    """Write the pattern to `path`, whole or not at all; the same pattern gives the same bytes.

    Args:
        finished: a `Finished`. unit: "cm" or "in" for lengths in words; the drawing itself is in mm.
        date: a date, a text, or None for today. version: "R2010" with splines, or "R12" with polylines and ASCII only.
        opened: whether a piece on the fold is written whole, with its fold as a line; else as its half.
        number: the wearer's number, which stands where the file cannot hold the name; None for one that follows from it.

    Returns:
        A `Written`; its `pieces` are the blocks' names.

    Raises:
        CorsetkitError: one sentence, for an unknown version and where the file cannot be written.
    """
    check_unit(unit)
    if version not in VERSIONS:
        raise CorsetkitError(f"version {shown(version)} is unknown: write {' or '.join(VERSIONS)}")
    path, old = target(path, "pattern.dxf"), version == "R12"
    name = (ascii_name if old else shown_name)(wearer, number)
    laid = spread(finished, name.text, said_date(date), opened)
    with _fixed():
        document, blocks = _document(laid, version, unit)
        text = io.StringIO()
        document.write(text)
    # Plain letters only in the old variant: any other would be an error of ours, and is not written.
    data = text.getvalue().encode("ascii") if old else document.encode(text.getvalue())
    write_whole(path, data)
    known = tuple(f"{number} {words}" for number, words in layers.NUMBERS.items())
    return Written(path, blocks, (*known, layers.SQUARE), (*filter(None, (name.said,)), layers.SAID))


def _document(laid, version, unit):
    """The ezdxf document, and the names of its blocks."""
    import ezdxf

    # R12 has no word for its unit: there it is said in a text beside the test square.
    document = ezdxf.new(version, setup=False, units=_UNSAID if version == "R12" else _MILLIMETRES)
    document.header["$MEASUREMENT"] = _METRIC
    for number, words in layers.NUMBERS.items():
        layer = document.layers.add(str(number))
        if version != "R12":
            layer.description = words
    document.layers.add(layers.SQUARE)
    splines, model = version != "R12", document.modelspace()
    plain = _unread if splines else plain_text
    blocks = []
    for one in laid.pieces:
        blocks.append(block_name(one.piece))
        _paint_block(DxfCanvas(document.blocks.new(blocks[-1]), splines, plain), one.view, unit)
        model.add_blockref(blocks[-1], xy(one.step), dxfattribs={"layer": "1"})
    _test_square(model, laid.square)
    # The library adds these by itself, but out of a set, so in an order that is another one in every process.
    for kind in sorted(document.entitydb.dxf_types_in_use()):
        document.classes.add_class(kind)
    return document, tuple(sorted(blocks))


def _paint_block(canvas, view, unit):
    """One piece where it was drafted: its layers as they are drawn, and the points that only a DXF has."""
    for layer in LAYERS:
        if layer != "grain":
            paint_layer(canvas, layer, view, 0j, unit)
    with canvas.group("grain"):
        # One unbroken stroke, for programs that lay the piece by it.
        canvas.polyline((view.view.grain[0][0], view.view.grain[-1][1]))
    for at, is_corner in outline_points(view.cutting):
        canvas.point(at, layers.TURN if is_corner else layers.CURVE)
    for start, _ in (*view.cuts, *view.marked):
        canvas.point(start, layers.NOTCH)


def outline_points(cutting):
    """The cutting line's points, each with whether it is a corner."""
    return [
        (after.start, abs(turn_between(before.tangent(0.0), after.tangent(0.0))) > CORNER)
        for before, after in zip((cutting[-1], *cutting[:-1]), cutting)
    ]


def _test_square(model, low):
    """A square of 100 mm with its size and the file's unit in words, and beside it what the layers hold."""
    points = [curve.start for curve in box_run(low.real, low.imag, low.real + SQUARE, low.imag + SQUARE)]
    for start, end in zip(points, points[1:] + points[:1]):
        model.add_line(xy(start), xy(end), dxfattribs={"layer": layers.SQUARE})
    beside = (layers.SAID, *(f"layer {number}: {words}" for number, words in layers.NUMBERS.items()))
    for left, lines in ((0.3, ("units: mm", "this square: 100 mm each side")), (SQUARE + 1.0, beside)):
        for number, text in enumerate(lines):
            model.add_text(text, height=2.5, dxfattribs={"layer": layers.SQUARE}).set_placement(
                xy(low + complex(left, SQUARE - 0.8 - 0.5 * number))
            )


def block_name(piece):
    """The block's name: the piece's number and name in plain capital letters."""
    name = plain_text(piece.name).upper()
    return f"P{piece.number:02d}_" + "".join(letter if letter.isalnum() else "_" for letter in name)


def plain_text(text):
    """The text in 7-bit letters; signs that have none are left out."""
    return _unread(plain_letters(text.removeprefix("\u2191 ")).encode("ascii", "ignore").decode("ascii"))


def _unread(text):
    """The text without what programs read as a sign: two percent signs begin one."""
    while "%%" in text:
        text = text.replace("%%", "%")
    return text


@contextmanager
def _fixed():
    """Without clock and random marks in the file, so that the same pattern is the same file.

    The library's warning that R12 has no word for its unit is kept back: the file says it in a text.
    """
    from ezdxf import options

    log = logging.getLogger("ezdxf")
    before = options.write_fixed_meta_data_for_testing, log.level
    options.write_fixed_meta_data_for_testing = True
    log.setLevel(logging.ERROR)
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before[0]
        log.setLevel(before[1])
