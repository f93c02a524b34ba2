"""For which bodies the fixed guides contradict each other: all demo wearers and the desk's own in one chart and one table.

The guide to the side and what is asked for at the side seam add up to one length; half the front is a quarter of the bust.
So for each distance of the bust points there is one bust girth alone on which both can be kept.
"""

from dataclasses import dataclass, replace
from functools import cache
from html import escape

from corsetkit.drawing.lettering import text_box
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import CHALK, GRAPHITE, INK, PAPER, SPOT_WORDS, THREAD
from corsetkit.drawing.svg import svg_image
from corsetkit.steps.overbust import LEAST_OF_GUIDE, SIDE_STRIP, WORTH_SAYING
from corsetkit.steps.shares import shares_of_bust
from corsetkit.style import GUIDES, Style
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared.chart import POINTS_PER_CM, chart
from corsetkit.units import CM_PER_INCH, Say, say_length
from corsetkit.words import words_of

WORDS = words_of("03_overbust")
SHARED = words_of("shared")

WIDTH, HEIGHT = 17.0, 11.2
_AXES = (2.1, 1.35, 14.6, 8.35)
"""The chart and, in it, the plotted area (left, bottom, width, height), cm as seen."""
_KEY = (0.62, 1.1, 0.25)
"""The rows that say what the lines mean: how far below the chart's top, how long a sample is, the words from it, cm."""
_TICKS = {"in": (1, 2), "cm": (2, 5)}
"""From one tick to the next, of the bust point width and of the bust girth, in each unit: a tape has a number there."""
_FAR = 0.18
"""A name farther than this from its mark gets a line to it, cm as seen."""


@dataclass(frozen=True)
class Fit:
    """How the guides fit one body, cm: `left_at_side` is what the guide to the side leaves to the side seam, `room_at_front`
    what lies between the bust point and the least strip at the centre front."""

    name: str
    bust: float
    width: float
    left_at_side: float
    room_at_front: float
    guide_to_front: float

    @property
    def over(self):
        """By how much more is left at the side than is asked for; below zero where it is less."""
        return self.left_at_side - SIDE_STRIP

    @property
    def at_side(self):
        """Whether both can be kept at the side, within what the step passes over in silence."""
        return abs(self.over) <= WORTH_SAYING

    @property
    def at_front(self):
        """ "kept", "shortened" or "refused", as the step does with the guide to the front."""
        if self.room_at_front >= self.guide_to_front:
            return "kept"
        return "shortened" if self.room_at_front >= LEAST_OF_GUIDE * self.guide_to_front else "refused"


def fit(name, body, style):
    """The `Fit` of one body in a style of fixed guides."""
    half_width, (front, _) = body.bust_point_width / 2, shares_of_bust(body, style)
    return Fit(
        name,
        body.bust_girth,
        body.bust_point_width,
        front - half_width - style.guide_to_side,
        half_width - style.least_strip,
        style.guide_to_front,
    )


def quarrel(wearers, chosen, style, unit):
    """The chart, the table and the sentences as Stored.

    `wearers` are (name, Measurements), `chosen` the one at the desk likewise, `style` what differs from Style().
    """
    style = Style(**{**style, "method": GUIDES})
    fits = [fit(name, body, style) for name, body in wearers if name != chosen[0]]
    fits = [fit(*chosen, style), *fits]
    opening = WORDS(
        "quarrel_opening",
        guide=say_length(style.guide_to_side, unit),
        asked=say_length(SIDE_STRIP, unit),
        slack=say_length(WORTH_SAYING, unit),
        side=sum(one.at_side for one in fits),
        bodies=len(fits),
        front=sum(one.at_front == "kept" for one in fits),
    )
    told = [_told(one, unit) for one in fits]
    picture = svg_image(
        _chart(
            tuple(fits),
            chosen[0],
            style.guide_to_side + SIDE_STRIP,
            style.bust_ease,
            2 * (style.guide_to_front + style.least_strip),
            unit,
        )
    )
    rows = "".join(_row(one, one.name == chosen[0], unit) for one in fits)
    heads = "".join(
        f'<th scope="col">{word}</th>'
        for word in (
            SHARED("wearer"),
            SHARED("bust"),
            WORDS("quarrel_head_points"),
            WORDS("quarrel_head_left"),
            WORDS("quarrel_head_against"),
            WORDS("quarrel_head_front"),
        )
    )
    html = (
        f"{picture}<p>{escape(opening)}</p><table><caption>{escape(WORDS('quarrel_caption'))}</caption>"
        f"<thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"
    )
    return Stored(html, (opening, *told))


def _told(one, unit):
    say = Say(unit)
    side = WORDS("quarrel_side_kept") if one.at_side else WORDS("quarrel_side_missed", apart=say(abs(one.over)))
    room = say(one.room_at_front)
    front = WORDS(f"quarrel_front_{one.at_front}", room=room)
    return WORDS("quarrel_body", name=one.name, left=say(one.left_at_side), side=side, front=front)


def _row(one, chosen, unit):
    say = Say(unit)
    name = f"<b>{escape(WORDS('quarrel_chosen', name=one.name))}</b>" if chosen else escape(one.name)
    against = WORDS(
        "quarrel_as_asked" if abs(one.over) < 0.08 else "quarrel_near_enough" if one.at_side else "quarrel_missed",
        apart=say(abs(one.over)),
        more=SHARED("more" if one.over > 0 else "less"),
    )
    front = WORDS(f"quarrel_cell_{one.at_front}", room=say(one.room_at_front))
    cells = (say(one.bust), say(one.width), say(one.left_at_side), against, front)
    return f'<tr><th scope="row">{name}</th>{"".join(f"<td>{cell}</td>" for cell in cells)}</tr>'


@cache
def _chart(fits, chosen, side, ease, least_width, unit):
    """The chart's SVG text; `side` is what both guides at the side ask for together, `least_width` the least bust point
    width on which the guide to the front is kept, cm."""
    per = CM_PER_INCH if unit == "in" else 1.0

    def bust_for(width):
        return 4 * (width / 2 + side) - ease

    xs, ys = [one.width for one in fits] + [least_width], [one.bust for one in fits]
    low = complex(min(xs) - 1.2, min(ys) - 6)
    high = complex(max(xs) + 1.6, max(ys) + 6)

    def place(width, bust):
        """Where a body stands on the chart, cm as seen from its lower left corner."""
        left, bottom, wide, tall = _AXES
        size = high - low
        return complex(left + wide * (width - low.real) / size.real, bottom + tall * (bust - low.imag) / size.imag)

    def paint(figure):
        left, bottom, wide, tall = _AXES
        axes = figure.add_axes((left / WIDTH, bottom / HEIGHT, wide / WIDTH, tall / HEIGHT))
        for axis, step in zip((axes.xaxis, axes.yaxis), _TICKS[unit]):
            axis.set_ticks([step * i for i in range(1, 200)])
        axes.set_xlim(low.real / per, high.real / per)
        axes.set_ylim(low.imag / per, high.imag / per)
        axes.set_xlabel(WORDS("quarrel_axis_width", unit=unit))
        axes.set_ylabel(WORDS("quarrel_axis_bust", unit=unit))
        ends = (low.real, high.real)
        slack = 4 * WORTH_SAYING / per
        line = [bust_for(width) / per for width in ends]
        axes.fill_between(
            [x / per for x in ends],
            [y - slack for y in line],
            [y + slack for y in line],
            color=THREAD,
            alpha=0.14,
            linewidth=0,
        )
        axes.plot([x / per for x in ends], line, color=THREAD, linewidth=1.4)
        axes.axvline(least_width / per, color=GRAPHITE, linewidth=1.0, linestyle=(0, (5, 3)))
        clutter = Clutter((left + 0.1, bottom + 0.1, left + wide - 0.1, bottom + tall - 0.1), 1.0)
        clutter.draw([place(width, bust_for(width)) for width in ends])
        clutter.draw([place(least_width, low.imag), place(least_width, high.imag)])
        for one in fits:
            clutter.dot(place(one.width, one.bust))
        # From the right, so that of two bodies near each other the right one is named to its right.
        for one in sorted(fits, key=lambda one: -one.width):
            mine = one.name == chosen
            axes.plot(
                [one.width / per],
                [one.bust / per],
                marker="s" if mine else "o",
                markersize=7 if mine else 5.5,
                color=CHALK if mine else PAPER,
                markeredgecolor=CHALK if mine else INK,
                linestyle="none",
                zorder=5,
            )
            name = clutter.beside(place(one.width, one.bust), one.name, replace(SPOT_WORDS, bold=mine))
            _lead(figure, place(one.width, one.bust), name)
            _write(figure, name)
        _key(figure, unit)

    return chart(WORDS("quarrel_chart"), _described(fits, chosen, unit), WIDTH, HEIGHT, paint)


def _key(figure, unit):
    """Above the chart, what its lines and its band mean."""
    from matplotlib.lines import Line2D

    down, long, space = _KEY
    samples = (
        ({"color": THREAD, "linewidth": 1.4}, WORDS("quarrel_key_kept")),
        ({"color": THREAD, "linewidth": 9, "alpha": 0.14}, WORDS("quarrel_key_missed", apart=say_length(WORTH_SAYING, unit))),
        ({"color": GRAPHITE, "linewidth": 1.0, "linestyle": (0, (5, 3))}, WORDS("quarrel_key_front")),
    )
    left = _AXES[0]
    for number, (look, words) in enumerate(samples):
        # The first two stand in one row.
        at = complex(left + (8.2 if number == 1 else 0.0), HEIGHT - down * (2 if number == 2 else 1))
        figure.add_artist(Line2D([at.real / WIDTH, (at.real + long) / WIDTH], [at.imag / HEIGHT] * 2, **look))
        _write(figure, (at + long + space - 0.1j, words, SPOT_WORDS, "start"))


def _lead(figure, point, name):
    """A thin line from a body to its name, where others kept the name away from it."""
    from matplotlib.lines import Line2D

    if name:
        left, bottom, right, top = text_box(*name, 0.0, 1.0)
        nearest = complex(min(max(point.real, left), right), min(max(point.imag, bottom), top))
        if abs(nearest - point) > _FAR:
            ends = [complex(one.real / WIDTH, one.imag / HEIGHT) for one in (point, nearest)]
            figure.add_artist(Line2D([one.real for one in ends], [one.imag for one in ends], color=GRAPHITE, linewidth=0.5))


def _write(figure, placed, colour=INK):
    """Write a text where the clutter has found room, its place in cm from the figure's corner."""
    if placed:
        at, text, letter, anchor = placed
        held = {"start": "left", "middle": "center", "end": "right"}[anchor]
        figure.text(
            at.real / WIDTH,
            at.imag / HEIGHT,
            text,
            color=colour,
            ha=held,
            va="baseline",
            fontsize=letter.size / 10 * POINTS_PER_CM,
            fontweight="bold" if letter.bold else "normal",
        )


def _described(fits, chosen, unit):
    near = [one.name for one in fits if one.at_side]
    return WORDS("quarrel_described", bodies=len(fits), near=", ".join(near) or SHARED("none"), chosen=chosen)
