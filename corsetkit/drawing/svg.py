"""A sheet as one SVG text. The only place where the y axis is turned.

The picture's unit is the millimetre, two decimals, so a length read back from it is within 0.01 mm;
cubics stay cubics. Standard library only.
"""

import re
from contextlib import contextmanager
from functools import lru_cache
from html import escape
from urllib.parse import quote

from corsetkit.drawing.canvas import JOINED, NOTHING
from corsetkit.drawing.shorter import shorter
from corsetkit.geometry.curve import Cubic

FONTS = "DejaVu Sans, Verdana, Segoe UI, Helvetica, Arial, sans-serif"
"""DejaVu Sans, whose widths lettering.py counts with, then fonts as wide or narrower."""

_PREFIX = "ck-"
"""Before every class name, so that a page's own styles cannot touch a drawing, nor it them."""

# XML has no way to write these, however escaped: a name that holds one would spoil the whole drawing.
_UNWRITABLE = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
_UNSAFE = re.compile(_UNWRITABLE.pattern[:-1] + "&<>\"']")


def _safe(text):
    """The text as it may stand in an element or an attribute."""
    text = str(text)
    return escape(_UNWRITABLE.sub("\N{REPLACEMENT CHARACTER}", text)) if _UNSAFE.search(text) else text


class SvgCanvas:
    """Collects the SVG's elements in order."""

    def __init__(self, low, high, scale=1.0):
        self.scale = scale
        self.parts = []
        self._corner = complex(low.real, high.imag)
        self._looks = {}

    def line(self, path, pen, facts=NOTHING):
        # By the pen's id, for hashing its values costs more than the line; kept with the pen, so the id stays its own.
        pen_kept, look = self._looks.get(id(pen), (None, ""))
        if pen_kept is None:
            width = pen.width * self.scale
            dash = "".join(f"{mm * self.scale:.2f} " for mm in pen.dash).strip()
            look = f'stroke="{pen.ink}" stroke-width="{width:.2f}"' + (f' stroke-dasharray="{dash}"' if dash else "")
            self._looks[id(pen)] = pen, look
        self.parts.append(f'<path class="{_PREFIX}{pen.kind}"{_data(facts)} d="{self._way(path)}" {look}/>')

    def area(self, path, tone, facts=NOTHING):
        self.parts.append(f'<path class="{_PREFIX}{tone.kind}"{_data(facts)} d="{self._way(path)}Z" fill="{tone.colour}"/>')

    def dot(self, at, radius, tone, pen=None):
        p = (at - self._corner).conjugate() * 10
        rim = f' stroke="{pen.ink}" stroke-width="{pen.width * self.scale:.2f}"' if pen else ""
        self.parts.append(
            f'<circle class="{_PREFIX}{(pen or tone).kind}" cx="{_number(p.real)}" '
            f'cy="{_number(p.imag)}" r="{radius * self.scale:.2f}" fill="{tone.colour}"{rim}/>'
        )

    def words(self, at, text, letter, anchor="middle", turn=0.0):
        p = (at - self._corner).conjugate() * 10
        x, y = _number(p.real), _number(p.imag)
        held = "" if anchor == "start" else f' text-anchor="{anchor}"'
        bold = ' font-weight="bold"' if letter.bold else ""
        # Degrees counter-clockwise with y up are clockwise with y down: the sign turns with the axis.
        turned = f' transform="rotate({_number(-turn)} {x} {y})"' if turn else ""
        self.parts.append(
            f'<text class="{_PREFIX}{letter.kind}" x="{x}" y="{y}" '
            f'font-size="{letter.size * self.scale:.2f}"{held}{bold} fill="{letter.ink}"{turned}>{_safe(text)}</text>'
        )

    @contextmanager
    def group(self, name, facts=NOTHING):
        self.parts.append(f'<g class="{_PREFIX}{name}"{_data(facts)}>')
        yield
        self.parts.append("</g>")

    def _way(self, path):
        """The path as path data."""
        corner, here, words = self._corner, None, []
        for curve in path:
            if here is None or abs(curve.start - here) > JOINED:
                p = (curve.start - corner).conjugate() * 10
                words.append(f"M{p.real:.2f} {p.imag:.2f}")
            here = curve.end
            p = (here - corner).conjugate() * 10
            if type(curve) is Cubic:
                a, b = (curve.first - corner).conjugate() * 10, (curve.second - corner).conjugate() * 10
                words.append(f"C{a.real:.2f} {a.imag:.2f} {b.real:.2f} {b.imag:.2f} {p.real:.2f} {p.imag:.2f}")
            else:
                words.append(f"L{p.real:.2f} {p.imag:.2f}")
        return "".join(words).replace("-0.00", "0.00")


def _number(value):
    """Two decimals, and no minus zero."""
    text = f"{value:.2f}"
    return "0.00" if text == "-0.00" else text


def _data(facts):
    """Facts as data attributes, for a page to find its way by."""
    return "".join([f' data-{name}="{_safe(value)}"' for name, value in facts.items()]) if facts else ""


def svg_text(sheet, width="100%"):
    """The sheet as one SVG text in true proportions, with its title and description for those who listen."""
    canvas = SvgCanvas(sheet.low, sheet.high, sheet.scale)
    sheet.paint(canvas)
    size = sheet.size * 10
    title = _safe(sheet.title)
    if sheet.window:
        # An inner picture ends at its own border; the outer one shows more where its place on the page is wider.
        canvas.parts = [f'<svg width="{size.real:.2f}" height="{size.imag:.2f}">', *canvas.parts, "</svg>"]
    return "".join(
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" class="{_PREFIX}{"window" if sheet.window else "sheet"}" role="img" '
            f'aria-label="{title}" '
            f'viewBox="0 0 {size.real:.2f} {size.imag:.2f}" width="{_safe(width)}" fill="none" stroke-linecap="round" '
            f'stroke-linejoin="round" font-family="{FONTS}">'
            f"<title>{title}</title><desc>{_safe(sheet.description)}</desc>",
            *canvas.parts,
            "</svg>",
        )
    )


@lru_cache(maxsize=64)
def svg_image(svg, most=""):
    """The SVG as an `<img>` in text/html: what a stored output shows before anything has run.

    It is as wide as its place, but no wider than `most`, such as "760px", where that is given. A notebook that was never
    trusted shows no bare SVG, but it shows an image with a data address. A cell that runs again shows the one it had:
    writing a drawing shorter takes longer than drawing it.
    """
    # Quotes within values are written as entities, so every quote left is the markup's own, and the single
    # one needs no percent sign, as the brackets of tags need none: shorter, and readable in a diff.
    address = quote(shorter(svg).replace('"', "'"), safe=" /:;=,()'+-._~!*@?{}<>")
    title = re.search(r'aria-label="([^"]*)"', svg)[1]
    description = re.search(r"<desc>(.*?)</desc>", svg, re.DOTALL)[1]
    style = f"width:100%;max-width:{most}" if most else "width:100%"
    return f'<img alt="{title}. {description}" style="{style}" src="data:image/svg+xml,{address}">'
