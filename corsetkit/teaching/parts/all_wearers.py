"""Both ways of drafting over all demo wearers, with the course's own style values: a chart, a table, and what they say."""

from dataclasses import dataclass
from functools import cache
from html import escape

from corsetkit.drafting import draft
from corsetkit.errors import CorsetkitError
from corsetkit.drawing.svg import svg_image
from corsetkit.style import GUIDES, WEARER, Style
from corsetkit.teaching import said
from corsetkit.errors import sentence
from corsetkit.teaching.stored import Stored, sentences_html
from corsetkit.teaching.parts.ways_chart import ways_chart
from corsetkit.units import in_one_unit, say_length, say_number
from corsetkit.wearers import demo_wearers

AS_INTENDED = 0.05
"""A girth that misses by less than this, cm, comes out as intended: half of what a tape tells."""


@dataclass(frozen=True)
class Way:
    """One wearer drafted one way: by how much each finished girth misses the intended one (cm, more is above nought), the
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
    ways: dict


@cache
def compared() -> tuple[Compared, ...]:
    """All demo wearers, those with the least difference between bust and underbust first."""
    found = [Compared(name, body.bust_minus_underbust, {way: _drafted(body, way) for way in said.WAYS})
             for name, body in demo_wearers()]
    return tuple(sorted(found, key=lambda one: one.more))


def _drafted(body, way):
    try:
        pattern = draft(body, Style(way=way))
    except CorsetkitError as error:
        return Way({}, refused=sentence(str(error)))
    misses = {level: pattern.girths[level].finished - pattern.girths[level].intended for level in said.LEVELS}
    return Way(misses, pattern.fullness.total, pattern.fullness.cap, tuple(map(sentence, pattern.warnings)))


@cache
def all_wearers(unit: str) -> Stored:
    """Chart, table, summary and notes, lengths in `unit`."""
    found = compared()
    svg, description = ways_chart(found, unit)
    summary = summed_up(found, unit)
    notes = tuple(in_one_unit(note, unit) for note in _notes(found))
    html = (f"{svg_image(svg)}{sentences_html(summary)}{_table(found, unit)}"
            "<details><summary>What the draft has to say of these wearers</summary>"
            f"{sentences_html(notes)}</details>")
    return Stored(html, (description, *summary, *(_told(one, unit) for one in found), *notes))


def summed_up(found, unit) -> tuple[str, ...]:
    """What the table says as a whole."""
    say = lambda cm: signed(cm, unit)  # noqa: E731
    drawn = {way: [one for one in found if not one.ways[way].refused] for way in said.WAYS}
    told = [f"Drafted to the wearer: {len(drawn[WEARER])} of {len(found)}; by the guides: {len(drawn[GUIDES])} of {len(found)}."]
    worst = max((abs(cm) for one in drawn[WEARER] for cm in one.ways[WEARER].misses.values()), default=0.0)
    # A tenth of a millimetre is far below what any hand cuts.
    told.append("To the wearer, every girth comes out as intended, to a tenth of a millimetre." if worst < 0.01 else
                f"To the wearer, the worst girth misses by {10 * worst:.1f} mm.")
    for level in said.LEVELS:
        misses = sorted((one.ways[GUIDES].misses[level], one.name) for one in drawn[GUIDES])
        if misses and max(abs(misses[0][0]), abs(misses[-1][0])) < AS_INTENDED:
            told.append(f"By the guides, the {level} comes out as intended on every one of them.")
        elif misses:
            (least, one), (most, other) = misses[0], misses[-1]
            told.append(f"By the guides, the {level} misses by {say(least)} ({one}) to {say(most)} ({other}).")
    for way, ones in drawn.items():
        angles = [one.ways[way].fullness for one in ones]
        if angles:
            told.append(f"{said.WAYS[way]}, the angle taken out (we call it fullness) lies between {say_number(min(angles), 1)} and "
                        f"{say_number(max(angles), 1)} degrees.")
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
        f"<p>{said.WHAT_A_CAP_IS}</p>")


def _row(one, unit):
    guides, wearer = one.ways[GUIDES], one.ways[WEARER]
    misses = "".join(f"<td>{signed(guides.misses[level], unit)}</td>" for level in said.LEVELS) if not guides.refused else (
        f'<td colspan="{len(said.LEVELS)}">not drafted</td>')
    angles = "".join(f"<td>{'not drafted' if way.refused else say_number(angle, 1)}</td>" for way, angle in (
        (wearer, wearer.fullness), (guides, guides.fullness), (wearer, wearer.cap)))
    return f'<tr><th scope="row">{escape(one.name)}</th><td>{say_length(one.more, unit)}</td>{misses}{angles}</tr>'


def _told(one, unit):
    guides, wearer = one.ways[GUIDES], one.ways[WEARER]
    girths = "not drafted" if guides.refused else ", ".join(
        f"{level} {signed(guides.misses[level], unit)}" for level in said.LEVELS)
    angles = ", ".join(f"{words} {'not drafted' if way.refused else say_number(way.fullness, 1)}" for words, way in (
        ("to the wearer", wearer), ("by the guides", guides)))
    return (f"{one.name}, bust {say_length(one.more, unit)} more than underbust: by the guides, {girths}; fullness in degrees, "
            f"{angles}.")


def _notes(found):
    """Refusals and warnings: of whom, and in which way; what holds in both ways is said once."""
    for one in found:
        for way, drafted in one.ways.items():
            if drafted.refused:
                yield f"{one.name}, {said.WAYS[way].lower()}: not drafted. {drafted.refused}"
        both = [note for note in one.ways[WEARER].notes if note in one.ways[GUIDES].notes]
        yield from (f"{one.name}, in both ways: {note}" for note in both)
        for way, drafted in one.ways.items():
            yield from (f"{one.name}, {said.WAYS[way].lower()}: {note}" for note in drafted.notes if note not in both)
