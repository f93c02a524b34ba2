"""A still chart as one SVG text in the house's colours: the same bytes each time, and with its words for those who listen.

matplotlib is loaded only when a chart is asked for.
"""

import logging
import re
from html import escape

from corsetkit.drawing.pens import GRAPHITE, INK, PAPER, SMALL
from corsetkit.drawing.svg import FONTS

POINTS_PER_CM = 72 / 2.54

_LOOK = {
    "svg.fonttype": "none", "svg.hashsalt": "corsetkit", "font.family": "DejaVu Sans",
    "font.size": SMALL.size / 10 * POINTS_PER_CM, "text.color": INK, "figure.facecolor": PAPER, "axes.facecolor": PAPER,
    "axes.edgecolor": GRAPHITE, "axes.labelcolor": INK, "axes.linewidth": 0.8, "xtick.color": GRAPHITE,
    "ytick.color": GRAPHITE,
}  # fmt: skip


def chart(title, description, width, height, paint):
    """The chart of `width` by `height` cm as seen; `paint(figure)` draws it on a matplotlib figure.

    Returns an SVG text like that of a sheet.
    """
    # Finding fonts for the first time it would say so, in the middle of the lesson.
    logging.getLogger("matplotlib.font_manager").setLevel(logging.ERROR)
    from io import StringIO

    from matplotlib import rc_context
    from matplotlib.figure import Figure

    out = StringIO()
    with rc_context(_LOOK):
        figure = Figure(figsize=(width / 2.54, height / 2.54))
        paint(figure)
        figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
    return _cleaned(out.getvalue(), escape(title), escape(description))


def _cleaned(svg, title, description):
    """matplotlib's file as a drawing of this house: no addresses but the one that SVG needs, two decimals, named anew."""
    inner = svg[svg.index("<svg") :]
    box = re.search(r'viewBox="([^"]*)"', inner)[1]
    inner = inner[inner.index(">") + 1 : inner.rindex("</svg>")]
    inner = re.sub(r"<metadata>.*?</metadata>|<!--.*?-->", "", inner, flags=re.DOTALL)
    # Within tags only: what is written stays as it is written.
    inner = re.sub(r"<[^>]+>", lambda tag: re.sub(r"-?\d+\.\d+", _shorter, tag[0]), inner)
    inner = inner.replace("xlink:href", "href").replace("'DejaVu Sans'", FONTS)
    # Names made from the shapes' last decimals may differ from machine to machine; their order does not.
    for number, name in enumerate(dict.fromkeys(re.findall(r' id="([^"]+)"', inner)), 1):
        inner = re.sub(rf'(id="|#){re.escape(name)}(?=["\)])', rf"\g<1>c{number}", inner)
    inner = re.sub(r"\s*\n\s*", " ", inner)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="ck-sheet" role="img" aria-label="{title}" viewBox="{box}" '
        f'width="100%">'
        f"<title>{title}</title><desc>{description}</desc>{inner}</svg>"
    )


def _shorter(number):
    return f"{float(number[0]):.2f}".replace("-0.00", "0.00")
