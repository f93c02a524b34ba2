"""Both methods over all demo wearers, with the course's own style values: a chart, a table, and what they say."""

from dataclasses import dataclass
from functools import cache, partial
from html import escape

from corsetkit.drafting import draft
from corsetkit.drawing.pens import CHALK, GRAPHITE, INK, PAPER, THREAD
from corsetkit.drawing.svg import svg_image
from corsetkit.errors import CorsetkitError, sentence
from corsetkit.style import GUIDES, WEARER, Style
from corsetkit.teaching.picture import Stored, sentences_html
from corsetkit.teaching.shared import pattern_said as said
from corsetkit.teaching.shared.chart import chart
from corsetkit.units import CM_PER_INCH, in_one_unit, say_length, say_number
from corsetkit.wearers import demo_wearers

WIDTH, HEIGHT = 18.0, 10.5

_LARGE = {"facecolor": PAPER, "edgecolor": CHALK, "hatch": "////"}
_SMALL = {"facecolor": PAPER, "edgecolor": THREAD, "hatch": "\\\\\\\\"}


def methods_chart(found, unit):
    """The chart's SVG text and its description; `found` are `Compared` wearers, from above to below."""
    drawn = [one for one in found if not one.methods[GUIDES].refused]
    per = CM_PER_INCH if unit == "in" else 1.0
    title = "How far the guides miss"
    told = "; ".join(f"{one.name} {_signed(one.methods[GUIDES].misses['underbust'], unit)}" for one in drawn)
    description = (
        f"A bar for each wearer says by how much the underbust drafted by the guides misses the intended one, "
        f"finished minus intended: {told}."
    )

    def paint(figure):
        axes = figure.add_axes((0.19, 0.145, 0.78, 0.755))
        misses = [one.methods[GUIDES].misses["underbust"] / per for one in drawn]
        for row, miss in enumerate(misses):
            large = miss > 0
            axes.barh(row, miss, 0.62, linewidth=1.2, zorder=2, **(_LARGE if large else _SMALL))
            axes.text(
                miss + (0.02 if large else -0.02) * _span(misses),
                row,
                _signed(miss * per, unit),
                va="center",
                ha="left" if large else "right",
                zorder=4,
                bbox={"facecolor": PAPER, "edgecolor": "none", "pad": 0.8},
            )
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
    axes.set_title(
        "How far the guides miss the underbust\nwearer, and what her bust has more than her underbust",
        loc="left",
        x=-0.235,
        fontsize="medium",
    )
    handles = [Patch(**_LARGE, label="too large"), Patch(**_SMALL, label="too small")]
    axes.legend(handles=handles, loc="upper right", frameon=True, facecolor=PAPER, edgecolor=GRAPHITE)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)


def _span(misses):
    return max(misses + [0.0]) - min(misses + [0.0]) or 1.0


def _signed(cm, unit):
    return f"{'+' if cm >= 0 else chr(0x2212)}{say_length(abs(cm), unit)}"


AS_INTENDED = 0.05
"""A girth that misses by less than this, cm, comes out as intended: half of what a tape tells."""


@dataclass(frozen=True)
class Compass:
    """One wearer drafted one way: by how much each finished girth misses the intended one (cm, more is above zero), the
    fullness at the bust point and a plain round cap's (degrees), the notes; or `refused`, the sentence that says why not."""

    misses: dict
    fullness: float = 0.0
    cap: float = 0.0
    notes: tuple = ()
    refused: str = ""


@dataclass(frozen=True)
class Compared:
    """One wearer in both ways; `more` is what her bust has more than her underbust, cm, `ways` maps each way to its `Way`."""

    name: str
    more: float
    methods: dict


@cache
def compared() -> tuple[Compared, ...]:
    """All demo wearers, those with the least difference between bust and underbust first."""
    found = [
        Compared(name, body.bust_minus_underbust, {method: _drafted(body, method) for method in said.METHODS})
        for name, body in demo_wearers()
    ]
    return tuple(sorted(found, key=lambda one: one.more))


def _drafted(body, method):
    try:
        pattern = draft(body, Style(method=method))
    except CorsetkitError as error:
        return Compass({}, refused=sentence(str(error)))
    misses = {level: pattern.girths[level].finished - pattern.girths[level].intended for level in said.LEVELS}
    return Compass(misses, pattern.fullness.total, pattern.fullness.cap, tuple(map(sentence, pattern.warnings)))


@cache
def all_wearers(unit: str) -> Stored:
    """Chart, table, summary and notes, lengths in `unit`."""
    found = compared()
    svg, description = methods_chart(found, unit)
    summary = summed_up(found, unit)
    notes = tuple(in_one_unit(note, unit) for note in _notes(found))
    html = (
        f"{svg_image(svg)}{sentences_html(summary)}{_table(found, unit)}"
        "<details><summary>What the draft has to say of these wearers</summary>"
        f"{sentences_html(notes)}</details>"
    )
    return Stored(html, (description, *summary, *(_told(one, unit) for one in found), *notes))


def summed_up(found, unit) -> tuple[str, ...]:
    """What the table says as a whole."""
    say = partial(signed, unit=unit)
    drawn = {method: [one for one in found if not one.methods[method].refused] for method in said.METHODS}
    told = [
        f"Drafted to the wearer: {len(drawn[WEARER])} of {len(found)}; by the guides: {len(drawn[GUIDES])} of {len(found)}."
    ]
    worst = max((abs(cm) for one in drawn[WEARER] for cm in one.methods[WEARER].misses.values()), default=0.0)
    # A tenth of a millimetre is far below what any hand cuts.
    told.append(
        "To the wearer, every girth comes out as intended, to a tenth of a millimetre."
        if worst < 0.01
        else f"To the wearer, the worst girth misses by {10 * worst:.1f} mm."
    )
    for level in said.LEVELS:
        misses = sorted((one.methods[GUIDES].misses[level], one.name) for one in drawn[GUIDES])
        if misses and max(abs(misses[0][0]), abs(misses[-1][0])) < AS_INTENDED:
            told.append(f"By the guides, the {level} comes out as intended on every one of them.")
        elif misses:
            (least, one), (most, other) = misses[0], misses[-1]
            told.append(f"By the guides, the {level} misses by {say(least)} ({one}) to {say(most)} ({other}).")
    for method, ones in drawn.items():
        angles = [one.methods[method].fullness for one in ones]
        if angles:
            told.append(
                f"{said.METHODS[method]}, the angle taken out (we call it fullness) lies between {say_number(min(angles), 1)} and "
                f"{say_number(max(angles), 1)} degrees."
            )
    return tuple(told)


def signed(cm, unit) -> str:
    """A miss in words: more is +, less is \u2212, and what no tape tells is 0."""
    words = say_length(abs(cm), unit)
    if abs(cm) < AS_INTENDED or words.startswith("0 "):
        return "0"
    return f"{'+' if cm > 0 else chr(0x2212)}{words}"


def _table(found, unit):
    heads = "".join(f'<th scope="col">{level}</th>' for level in said.LEVELS)
    rows = "".join(_row(one, unit) for one in found)
    return (
        "<table><caption>Each wearer in both ways, with the course's own values</caption><thead>"
        '<tr><td></td><th rowspan="2" scope="col">bust more<br>than underbust</th>'
        f'<th colspan="{len(said.LEVELS)}" scope="colgroup">by the guides, finished minus intended</th>'
        '<th colspan="3" scope="colgroup">fullness, degrees</th></tr>'
        f'<tr><th scope="col">wearer</th>{heads}<th scope="col">to the wearer</th><th scope="col">by the guides</th>'
        f'<th scope="col">plain round cap</th></tr></thead><tbody>{rows}</tbody></table>'
        f"<p>{said.WHAT_A_CAP_IS}</p>"
    )


def _row(one, unit):
    guides, wearer = one.methods[GUIDES], one.methods[WEARER]
    misses = (
        "".join(f"<td>{signed(guides.misses[level], unit)}</td>" for level in said.LEVELS)
        if not guides.refused
        else (f'<td colspan="{len(said.LEVELS)}">not drafted</td>')
    )
    angles = "".join(
        f"<td>{'not drafted' if method.refused else say_number(angle, 1)}</td>"
        for method, angle in ((wearer, wearer.fullness), (guides, guides.fullness), (wearer, wearer.cap))
    )
    return f'<tr><th scope="row">{escape(one.name)}</th><td>{say_length(one.more, unit)}</td>{misses}{angles}</tr>'


def _told(one, unit):
    guides, wearer = one.methods[GUIDES], one.methods[WEARER]
    girths = (
        "not drafted"
        if guides.refused
        else ", ".join(f"{level} {signed(guides.misses[level], unit)}" for level in said.LEVELS)
    )
    angles = ", ".join(
        f"{words} {'not drafted' if method.refused else say_number(method.fullness, 1)}"
        for words, method in (("to the wearer", wearer), ("by the guides", guides))
    )
    return (
        f"{one.name}, bust {say_length(one.more, unit)} more than underbust: by the guides, {girths}; fullness in degrees, "
        f"{angles}."
    )


def _notes(found):
    """Refusals and warnings: of whom, and in which way; what holds in both ways is said once."""
    for one in found:
        for method, drafted in one.methods.items():
            if drafted.refused:
                yield f"{one.name}, {said.METHODS[method].lower()}: not drafted. {drafted.refused}"
        both = [note for note in one.methods[WEARER].notes if note in one.methods[GUIDES].notes]
        yield from (f"{one.name}, in both ways: {note}" for note in both)
        for method, drafted in one.methods.items():
            yield from (f"{one.name}, {said.METHODS[method].lower()}: {note}" for note in drafted.notes if note not in both)
