"""The finished pattern as one SVG in millimetres, its layers kept apart by what they hold."""

from contextlib import contextmanager
from html import escape

from corsetkit.drawing.canvas import NOTHING, box_run
from corsetkit.drawing.finished_painting import LAYERS, paint_layer, piece_facts
from corsetkit.drawing.lettering import one_line
from corsetkit.drawing.pens import CUT, TEST_SQUARE
from corsetkit.drawing.svg import FONTS, SvgCanvas
from corsetkit.export.spread import SQUARE, Written, spread
from corsetkit.files import write_whole
from corsetkit.printing.draft_print import said_date, target
from corsetkit.printing.tiles import heading_for
from corsetkit.units import check_unit


class LayerCanvas(SvgCanvas):
    """Draws like any SVG; a group bears its name as its id, and what is in one layer of one piece is named after both."""

    def __init__(self, low, high):
        super().__init__(low, high)
        self._within = ()

    @contextmanager
    def group(self, name, facts=NOTHING):
        self._within += (str(facts.get("piece", name)),)
        with super().group(name, facts):
            told = self.parts[-1].partition('"')[2].partition('"')[2]
            self.parts[-1] = f'<g id="{"-".join(self._within)}"{told}'
            yield
        self._within = self._within[:-1]


def svg_mm(finished, unit="cm", wearer="", date=None, opened=True):
    """The pattern as SVG text: a millimetre of it is one unit, and its width and height are in mm.

    Groups named cutting, sewing, notches, grain, fold and words hold a group for each piece; test-square holds 100 mm.
    `opened` draws a piece on the fold whole, with its fold as a line; else as its half. Cubics stay cubics; all is written
    to a hundredth of a millimetre.
    """
    laid = spread(finished, one_line(wearer), said_date(date), opened)
    canvas = LayerCanvas(0j, laid.size)
    for layer in LAYERS:
        with canvas.group(layer):
            for one in laid.pieces:
                with canvas.group("piece", piece_facts(one.view)):
                    paint_layer(canvas, layer, one.view, one.step, check_unit(unit))
    with canvas.group("test-square"):
        low = laid.square
        canvas.line(box_run(low.real, low.imag, low.real + SQUARE, low.imag + SQUARE), TEST_SQUARE)
        canvas.words(low + SQUARE / 2 * (1 + 1j), "100 mm", CUT)
    width, height = (f"{side * 10:g}" for side in (laid.size.real, laid.size.imag))
    title = "".join(letter for letter in heading_for(one_line(wearer)) if letter.isprintable())
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}" '
            f'fill="none" stroke-linecap="round" stroke-linejoin="round" font-family="{FONTS}">'
            f"<title>{escape(title)}</title>",
            *canvas.parts,
            "</svg>\n",
        )
    )


def write_svg(finished, path, unit="cm", wearer="", date=None, opened=True):
    """Write `svg_mm` to `path`, whole or not at all, and say what was written.

    Raises:
        CorsetkitError: one sentence, where the file cannot be written.
    """
    path = target(path, "pattern.svg")
    write_whole(path, svg_mm(finished, unit, wearer, date, opened).encode("utf-8"))
    return Written(path, tuple(one.piece.name for one in finished.pieces), (*LAYERS, "test-square"))
