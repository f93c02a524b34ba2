"""Sentences and tables of a pattern's values, in the learner's unit.

Rounded as a tape is read, from values that are exact far beyond: so a stored sentence is the same on
every machine.
"""

from html import escape

from corsetkit.errors import sentence
from corsetkit.units import CM_PER_INCH, say_length, say_number

LEVELS = ("bust", "underbust", "waist", "hem")
METHODS = {"wearer": "To the wearer", "guides": "By the guides"}

CAP = "a plain round cap"
WHAT_A_CAP_IS = (
    "A plain round cap is a shallow bowl, even all round, over the cup's outline and as high as bust and underbust "
    "ask for. Its angle is only something to compare with: no tape says how full a cup must be."
)
HEM = (
    "At the hem no tape was laid: body is there what the block has, and intended is that less what is still taken in for "
    "the waist."
)
"""What the hem's row means."""

# Half a tenth of a millimetre: what two sides of a seam may miss each other by, ease taken off.
_AGREE = 0.01


def rounded_each(unit: str) -> str:
    """What is said where a learner may add up what is told."""
    part = 0.1 if unit == "cm" else CM_PER_INCH / 16
    return f"Each figure is rounded by itself; sums may differ by {say_length(part, unit)}."


def girth_sentences(pattern, unit: str) -> list[str]:
    """One sentence for each level's girth."""
    return [
        f"{level.capitalize()}: finished {say_length(one.finished, unit)}, "
        f"body {say_length(one.body, unit)}, intended {say_length(one.intended, unit)}."
        for level, one in _girths(pattern)
    ]


def seam_sentence(pattern) -> str:
    """Whether the two sides of each seam are equally long."""
    worst = max((abs(seam.difference) for seam in pattern.seams), default=0.0)
    if worst <= _AGREE:
        return f"{len(pattern.seams)} seams: in each the two sides are equally long."
    return f"{len(pattern.seams)} seams: in the worst the two sides differ by {10 * worst:.1f} mm."


def fullness_sentence(pattern) -> str:
    """What the darts take at the bust point, beside a plain cap's own."""
    darts = ", ".join(f"{name} {_degrees(angle)}" for name, angle in pattern.fullness.angles.items())
    return (
        f"Fullness at the bust point: {_degrees(pattern.fullness.total)} degrees are taken out in all ({darts}); "
        f"{CAP} over the same outline would take {_degrees(pattern.fullness.cap)}."
    )


def both_methods(methods: dict, unit: str) -> tuple[str, list[str]]:
    """HTML table and sentences for patterns drafted both ways.

    `ways` maps "wearer" and "guides" to a Pattern, or to the sentence that refused it.
    """
    sentences = []
    for method, pattern in methods.items():
        if isinstance(pattern, str):
            sentences.append(f"{METHODS[method]}: not drawn. {sentence(pattern)}")
        else:
            told = [*girth_sentences(pattern, unit), fullness_sentence(pattern)]
            sentences += [f"{METHODS[method]}: {one[0].lower()}{one[1:]}" for one in told]
    drawn = {method: pattern for method, pattern in methods.items() if not isinstance(pattern, str)}
    html = "".join(
        f"<p><b>{METHODS[method]}: not drawn.</b> {escape(sentence(reason))}</p>"
        for method, reason in methods.items()
        if method not in drawn
    )
    if drawn:
        html += f"{_girth_table(drawn, unit)}<p>{HEM}</p>{_fullness_table(drawn)}<p>{WHAT_A_CAP_IS}</p>"
        sentences += [HEM, WHAT_A_CAP_IS]
    return html, sentences


def _girths(pattern):
    return [(level, pattern.girths[level]) for level in LEVELS if level in pattern.girths]


def _girth_table(drawn: dict, unit: str) -> str:
    heads = "".join(f'<th colspan="2" scope="colgroup">{METHODS[method]}</th>' for method in drawn)
    under = '<th scope="col">intended</th><th scope="col">finished</th>' * len(drawn)
    rows = ""
    for level, one in _girths(next(iter(drawn.values()))):
        cells = "".join(
            f"<td>{say_length(girth.intended, unit)}</td><td><b>{say_length(girth.finished, unit)}</b></td>"
            for girth in (pattern.girths[level] for pattern in drawn.values())
        )
        rows += f'<tr><th scope="row">{level}</th><td>{say_length(one.body, unit)}</td>{cells}</tr>'
    return (
        "<table><caption>Girths all round, lacing gap included</caption>"
        f'<thead><tr><td></td><th rowspan="2" scope="col">the body</th>{heads}</tr>'
        f"<tr><td></td>{under}</tr></thead><tbody>{rows}</tbody></table>"
    )


def _fullness_table(drawn: dict) -> str:
    names = list(dict.fromkeys(name for one in drawn.values() for name in one.fullness.angles))
    heads = "".join(f'<th scope="col">{METHODS[method]}</th>' for method in drawn)
    rows = "".join(
        f'<tr><th scope="row">{escape(name)}</th>'
        + "".join(_cell(pattern.fullness.angles.get(name)) for pattern in drawn.values())
        + "</tr>"
        for name in names
    )
    for name, value in (("all together", "total"), (f"{CAP} would take", "cap")):
        cells = "".join(_cell(getattr(pattern.fullness, value)) for pattern in drawn.values())
        rows += f'<tr class="corset-sum"><th scope="row">{name}</th>{cells}</tr>'
    return (
        "<table><caption>The angles taken out at the bust point (we call them fullness), in degrees</caption>"
        f"<thead><tr><td></td>{heads}</tr></thead><tbody>{rows}</tbody></table>"
    )


def _cell(angle) -> str:
    return f"<td>{'not taken' if angle is None else _degrees(angle)}</td>"


def _degrees(angle: float) -> str:
    return say_number(angle, 1)
