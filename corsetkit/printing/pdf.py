"""Sheets as pages of a PDF at true scale: one centimetre of a sheet is one centimetre on paper."""

import io
from collections.abc import Iterable
from contextlib import contextmanager
from pathlib import Path

from corsetkit.drawing.canvas import JOINED, NOTHING, Sheet
from corsetkit.drawing.lettering import overlap, text_box
from corsetkit.geometry.curve import Cubic
from corsetkit.printing.paper import MARGIN, Paper

_POINTS = 72 / 2.54
"""PDF points in a centimetre."""

PLAIN, BOLD = "DejaVuSans", "DejaVuSans-Bold"


class PdfCanvas:
    """Draws on the open page; what lies wholly outside the window is left out of the file."""

    def __init__(self, page, low, high, scale=1.0):
        self.scale = scale
        self._page, self._low, self._window = page, low, (low.real, low.imag, high.real, high.imag)
        self._shift = complex(MARGIN, MARGIN) - low

    def line(self, path, pen, facts=NOTHING):
        page = self._page
        page.setStrokeColor(pen.ink)
        page.setLineWidth(pen.width * self.scale / 10 * _POINTS)
        page.setDash([mm * self.scale / 10 * _POINTS for mm in pen.dash])
        page.drawPath(self._path(path), stroke=1, fill=0)

    def area(self, path, tone, facts=NOTHING):
        shape = self._path(path)
        shape.close()
        self._page.setFillColor(tone.colour)
        self._page.drawPath(shape, stroke=0, fill=1)

    def dot(self, at, radius, tone, pen=None):
        page, (x, y) = self._page, self._at(at)
        page.setFillColor(tone.colour)
        if pen:
            page.setStrokeColor(pen.ink)
            page.setLineWidth(pen.width * self.scale / 10 * _POINTS)
            page.setDash([])
        page.circle(x, y, radius * self.scale / 10 * _POINTS, stroke=1 if pen else 0, fill=1)

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        if not overlap(text_box(at, text, letter, anchor, turn, self.scale), self._window):
            return
        page = self._page
        page.saveState()
        page.setFillColor(letter.ink)
        page.setFont(BOLD if letter.bold else PLAIN, letter.size * self.scale / 10 * _POINTS)
        page.translate(*self._at(at))
        page.rotate(turn)
        {"start": page.drawString, "middle": page.drawCentredString, "end": page.drawRightString}[anchor](0, 0, text)
        page.restoreState()

    @contextmanager
    def group(self, name, facts=NOTHING):
        yield

    def _at(self, point):
        p = (point + self._shift) * _POINTS
        return p.real, p.imag

    def _path(self, path):
        shape, here = self._page.beginPath(), None
        for curve in path:
            if here is None or abs(curve.start - here) > JOINED:
                shape.moveTo(*self._at(curve.start))
            here = curve.end
            if type(curve) is Cubic:
                shape.curveTo(*self._at(curve.first), *self._at(curve.second), *self._at(here))
            else:
                shape.lineTo(*self._at(here))
        return shape


def pdf_bytes(sheets: Iterable[Sheet], paper: Paper, title: str) -> bytes:
    """The sheets as one PDF, a page each; the same bytes for the same sheets."""
    from reportlab.pdfgen.canvas import Canvas

    _fonts()
    file = io.BytesIO()
    # invariant: no clock and no random mark in the file, so that the same print is the same file.
    book = Canvas(file, pagesize=(paper.width * _POINTS, paper.height * _POINTS), invariant=1, lang="en")
    book.setTitle(title)
    book.setCreator("corsetkit")
    book.setViewerPreference("PrintScaling", "None")
    for sheet in sheets:
        book.setLineCap(1)
        book.setLineJoin(1)
        window = book.beginPath()
        window.rect(MARGIN * _POINTS, MARGIN * _POINTS, paper.window.real * _POINTS, paper.window.imag * _POINTS)
        book.clipPath(window, stroke=0, fill=0)
        sheet.paint(PdfCanvas(book, sheet.low, sheet.high, sheet.scale))
        book.showPage()
    book.save()
    return file.getvalue()


def _fonts():
    """Tell the PDF library of the fonts that lettering.py measures with: they come with matplotlib."""
    from matplotlib import get_data_path
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    folder = Path(get_data_path()) / "fonts" / "ttf"
    for name in (PLAIN, BOLD):
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, folder / f"{name}.ttf"))
