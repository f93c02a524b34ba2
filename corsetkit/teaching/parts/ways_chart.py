"""By how much the guides miss each demo wearer's girths, as a still chart."""

from corsetkit.showing.lessons.chart import chart
from corsetkit.drawing.pens import CHALK, GRAPHITE, INK, PAPER, THREAD
from corsetkit.style import GUIDES
from corsetkit.units import CM_PER_INCH, say_length

WIDTH, HEIGHT = 18.0, 10.5

_LARGE = {"facecolor": PAPER, "edgecolor": CHALK, "hatch": "////"}
_SMALL = {"facecolor": PAPER, "edgecolor": THREAD, "hatch": "\\\\\\\\"}


def ways_chart(found, unit):
    """The chart's SVG text and its description; `found` are `Compared` wearers, from above to below."""
    drawn = [one for one in found if not one.ways[GUIDES].refused]
    per = CM_PER_INCH if unit == "in" else 1.0
    title = "How far the guides miss"
    told = "; ".join(f"{one.name} {_signed(one.ways[GUIDES].misses['underbust'], unit)}" for one in drawn)
    description = (f"A bar for each wearer says by how much the underbust drafted by the guides misses the intended one, "
                   f"finished minus intended: {told}.")

    def paint(figure):
        axes = figure.add_axes((0.19, 0.145, 0.78, 0.755))
        misses = [one.ways[GUIDES].misses["underbust"] / per for one in drawn]
        for row, miss in enumerate(misses):
            large = miss > 0
            axes.barh(row, miss, 0.62, linewidth=1.2, zorder=2, **(_LARGE if large else _SMALL))
            axes.text(miss + (0.02 if large else -0.02) * _span(misses), row, _signed(miss * per, unit), va="center",
                      ha="left" if large else "right", zorder=4,
                      bbox={"facecolor": PAPER, "edgecolor": "none", "pad": 0.8})
        _finish(axes, drawn, misses, unit)

    return chart(title, description, WIDTH, HEIGHT, paint), f"{title}. {description}"


def _finish(axes, drawn, misses, unit):
    from matplotlib.patches import Patch

    axes.axvline(0.0, color=INK, linewidth=1.0, zorder=3)
    axes.set_yticks(range(len(drawn)), [f"{one.name}, {say_length(one.more, unit)}" for one in drawn])
    axes.invert_yaxis()
    axes.grid(axis="x", color=GRAPHITE, alpha=0.25, linewidth=0.5, zorder=0)
    axes.set_axisbelow(True)
    span = _span(misses)
    axes.set_xlim(min(misses + [0.0]) - 0.16 * span, max(misses + [0.0]) + 0.14 * span)
    axes.set_xlabel(f"underbust, finished minus intended, {'inches' if unit == 'in' else 'centimetres'}")
    axes.set_title("How far the guides miss the underbust\nwearer, and what her bust has more than her underbust",
                   loc="left", x=-0.235, fontsize="medium")
    handles = [Patch(**_LARGE, label="too large"), Patch(**_SMALL, label="too small")]
    axes.legend(handles=handles, loc="upper right", frameon=True, facecolor=PAPER, edgecolor=GRAPHITE)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)


def _span(misses):
    return max(misses + [0.0]) - min(misses + [0.0]) or 1.0


def _signed(cm, unit):
    return f"{'+' if cm >= 0 else chr(0x2212)}{say_length(abs(cm), unit)}"
