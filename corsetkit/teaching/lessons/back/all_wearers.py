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
from corsetkit.words import words_of

WORDS = words_of("07_back")
SHARED = words_of("shared")

WIDTH, HEIGHT = 18.0, 10.5

_LARGE = {"facecolor": PAPER, "edgecolor": CHALK, "hatch": "////"}
_SMALL = {"facecolor": PAPER, "edgecolor": THREAD, "hatch": "\\\\\\\\"}


def methods_chart(found, unit):
    """The chart's SVG text and its description; `found` are `Compared` wearers, from above to below."""
    drawn = [one for one in found if not one.methods[GUIDES].refused]
    per = CM_PER_INCH if unit == "in" else 1.0
    title = WORDS("chart_title")
    told = "; ".join(f"{one.name} {_signed(one.methods[GUIDES].misses['underbust'], unit)}" for one in drawn)
    description = WORDS("chart_described", misses=told)

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
    axes.set_xlabel(WORDS("chart_axis_in" if unit == "in" else "chart_axis_cm"))
    heading = f"{WORDS('chart_heading')}\n{WORDS('chart_heading_more')}"
    axes.set_title(heading, loc="left", x=-0.235, fontsize="medium")
    handles = [Patch(**_LARGE, label=WORDS("chart_large")), Patch(**_SMALL, label=WORDS("chart_small"))]
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
class Outcome:
    """One wearer drafted by one method: by how much each finished girth misses the intended one (cm, more is above zero), the
    fullness at the bust point and a plain round cap's (degrees), the notes; or `refused`, the sentence that says why not."""

    misses: dict
    fullness: float = 0.0
    cap: float = 0.0
    notes: tuple = ()
    refused: str = ""


@dataclass(frozen=True)
class Compared:
    """One wearer by both methods; `more` is what her bust has more than her underbust, cm, `methods` maps each to
    its `Outcome`."""

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
        return Outcome({}, refused=sentence(str(error)))
    misses = {level: pattern.girths[level].finished - pattern.girths[level].intended for level in said.LEVELS}
    return Outcome(misses, pattern.fullness.total, pattern.fullness.cap, tuple(map(sentence, pattern.warnings)))


@cache
def all_wearers(unit: str) -> Stored:
    """Chart, table, summary and notes, lengths in `unit`."""
    found = compared()
    svg, description = methods_chart(found, unit)
    summary = summed_up(found, unit)
    notes = tuple(in_one_unit(note, unit) for note in _notes(found))
    html = (
        f"{svg_image(svg)}{sentences_html(summary)}{_table(found, unit)}"
        f"<details><summary>{WORDS('all_notes')}</summary>"
        f"{sentences_html(notes)}</details>"
    )
    return Stored(html, (description, *summary, *(_told(one, unit) for one in found), *notes))


def summed_up(found, unit) -> tuple[str, ...]:
    """What the table says as a whole."""
    say = partial(signed, unit=unit)
    drawn = {method: [one for one in found if not one.methods[method].refused] for method in said.METHODS}
    told = [WORDS("all_drafted", fitted=len(drawn[WEARER]), guides=len(drawn[GUIDES]), all=len(found))]
    worst = max((abs(cm) for one in drawn[WEARER] for cm in one.methods[WEARER].misses.values()), default=0.0)
    # A tenth of a millimetre is far below what any hand cuts.
    told.append(WORDS("all_fitted_as_intended") if worst < 0.01 else WORDS("all_fitted_worst", off=f"{10 * worst:.1f}"))
    for level in said.LEVELS:
        misses = sorted((one.methods[GUIDES].misses[level], one.name) for one in drawn[GUIDES])
        if misses and max(abs(misses[0][0]), abs(misses[-1][0])) < AS_INTENDED:
            told.append(WORDS("all_guides_as_intended", level=level))
        elif misses:
            (least, one), (most, other) = misses[0], misses[-1]
            told.append(WORDS("all_guides_miss", level=level, least=say(least), one=one, most=say(most), other=other))
    for method, ones in drawn.items():
        angles = [one.methods[method].fullness for one in ones]
        if angles:
            told.append(WORDS(f"fullness_{method}", least=say_number(min(angles), 1), most=say_number(max(angles), 1)))
    return tuple(told)


def signed(cm, unit) -> str:
    """A miss in words: more is +, less is \u2212, and what no tape tells is 0."""
    words = say_length(abs(cm), unit)
    if abs(cm) < AS_INTENDED or words.startswith("0 "):
        return "0"
    return f"{'+' if cm > 0 else chr(0x2212)}{words}"


def _table(found, unit):
    heads = "".join(f'<th scope="col">{level}</th>' for level in said.LEVELS)
    methods = "".join(f'<th scope="col">{WORDS(f"beside_key_{method}")}</th>' for method in (WEARER, GUIDES))
    rows = "".join(_row(one, unit) for one in found)
    return (
        f"<table><caption>{WORDS('all_caption')}</caption><thead>"
        f'<tr><td></td><th rowspan="2" scope="col">{WORDS("all_head_bust")}<br>{WORDS("all_head_than")}</th>'
        f'<th colspan="{len(said.LEVELS)}" scope="colgroup">{WORDS("all_head_miss")}</th>'
        f'<th colspan="3" scope="colgroup">{WORDS("all_head_fullness")}</th></tr>'
        f'<tr><th scope="col">{SHARED("wearer")}</th>{heads}{methods}'
        f'<th scope="col">{WORDS("all_head_cap")}</th></tr></thead><tbody>{rows}</tbody></table>'
        f"<p>{said.WHAT_A_CAP_IS}</p>"
    )


def _row(one, unit):
    guides, wearer = one.methods[GUIDES], one.methods[WEARER]
    misses = (
        "".join(f"<td>{signed(guides.misses[level], unit)}</td>" for level in said.LEVELS)
        if not guides.refused
        else (f'<td colspan="{len(said.LEVELS)}">{WORDS("not_drafted")}</td>')
    )
    angles = "".join(
        f"<td>{WORDS('not_drafted') if method.refused else say_number(angle, 1)}</td>"
        for method, angle in ((wearer, wearer.fullness), (guides, guides.fullness), (wearer, wearer.cap))
    )
    return f'<tr><th scope="row">{escape(one.name)}</th><td>{say_length(one.more, unit)}</td>{misses}{angles}</tr>'


def _told(one, unit):
    guides, wearer = one.methods[GUIDES], one.methods[WEARER]
    girths = (
        WORDS("not_drafted")
        if guides.refused
        else ", ".join(f"{level} {signed(guides.misses[level], unit)}" for level in said.LEVELS)
    )
    angles = ", ".join(
        f"{WORDS(f'beside_key_{method}')} {WORDS('not_drafted') if one.refused else say_number(one.fullness, 1)}"
        for method, one in ((WEARER, wearer), (GUIDES, guides))
    )
    return WORDS("all_row", name=one.name, more=say_length(one.more, unit), girths=girths, angles=angles)


def _notes(found):
    """Refusals and warnings: of whom, and by which method; what holds by both is said once."""
    for one in found:
        for method, drafted in one.methods.items():
            if drafted.refused:
                yield WORDS("note_refused", name=one.name, method=WORDS(f"drafted_{method}"), reason=drafted.refused)
        both = [note for note in one.methods[WEARER].notes if note in one.methods[GUIDES].notes]
        yield from (WORDS("note_of_both", name=one.name, note=note) for note in both)
        for method, drafted in one.methods.items():
            words = WORDS(f"drafted_{method}")
            yield from (
                WORDS("note_of_one", name=one.name, method=words, note=note) for note in drafted.notes if note not in both
            )
