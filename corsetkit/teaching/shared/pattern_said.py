"""Sentences and tables of a pattern's values, in the learner's unit.

Rounded as a tape is read, from values that are exact far beyond: so a stored sentence is the same on
every machine.
"""

from html import escape

from corsetkit.errors import sentence
from corsetkit.units import CM_PER_INCH, say_length, say_number
from corsetkit.words import words_of

SHARED = words_of("shared")

LEVELS = ("bust", "underbust", "waist", "hem")
METHODS = {"wearer": SHARED("method_wearer"), "guides": SHARED("method_guides")}

CAP = SHARED("round_cap")
WHAT_A_CAP_IS = SHARED("what_a_cap_is")
HEM = SHARED("hem_row")
"""What the hem's row means."""

# Half a tenth of a millimetre: what two sides of a seam may miss each other by, ease taken off.
_AGREE = 0.01


def rounded_each(unit: str) -> str:
    """What is said where a learner may add up what is told."""
    part = 0.1 if unit == "cm" else CM_PER_INCH / 16
    return SHARED("rounded_each", part=say_length(part, unit))


def girth_sentences(pattern, unit: str) -> list[str]:
    """One sentence for each level's girth."""
    return [
        SHARED(
            "girth",
            level=SHARED(f"level_{level}").capitalize(),
            finished=say_length(one.finished, unit),
            body=say_length(one.body, unit),
            intended=say_length(one.intended, unit),
        )
        for level, one in _girths(pattern)
    ]


def seam_sentence(pattern) -> str:
    """Whether the two sides of each seam are equally long."""
    worst = max((abs(seam.difference) for seam in pattern.seams), default=0.0)
    if worst <= _AGREE:
        return SHARED("seams_agree", seams=len(pattern.seams))
    return SHARED("seams_differ", seams=len(pattern.seams), most=say_number(10 * worst, 1))


def fullness_sentence(pattern) -> str:
    """What the darts take at the bust point, beside a plain cap's own."""
    darts = ", ".join(f"{name} {_degrees(angle)}" for name, angle in pattern.fullness.angles.items())
    return SHARED(
        "fullness", angle=_degrees(pattern.fullness.total), darts=darts, cap=CAP, cap_angle=_degrees(pattern.fullness.cap)
    )


def both_methods(methods: dict, unit: str) -> tuple[str, list[str]]:
    """HTML table and sentences for patterns drafted by both methods.

    `methods` maps "wearer" and "guides" to a Pattern, or to the sentence that refused it.
    """
    sentences = []
    for method, pattern in methods.items():
        if isinstance(pattern, str):
            sentences.append(f"{SHARED('method_not_drawn', method=METHODS[method])} {sentence(pattern)}")
        else:
            told = [*girth_sentences(pattern, unit), fullness_sentence(pattern)]
            sentences += [f"{METHODS[method]}: {one[0].lower()}{one[1:]}" for one in told]
    drawn = {method: pattern for method, pattern in methods.items() if not isinstance(pattern, str)}
    html = "".join(
        f"<p><b>{SHARED('method_not_drawn', method=METHODS[method])}</b> {escape(sentence(reason))}</p>"
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
    both = (SHARED("girths_intended"), SHARED("girths_finished"))
    under = "".join(f'<th scope="col">{one}</th>' for one in both) * len(drawn)
    rows = ""
    for level, one in _girths(next(iter(drawn.values()))):
        cells = "".join(
            f"<td>{say_length(girth.intended, unit)}</td><td><b>{say_length(girth.finished, unit)}</b></td>"
            for girth in (pattern.girths[level] for pattern in drawn.values())
        )
        rows += f'<tr><th scope="row">{SHARED(f"level_{level}")}</th><td>{say_length(one.body, unit)}</td>{cells}</tr>'
    return (
        f"<table><caption>{SHARED('girths_caption')}</caption>"
        f'<thead><tr><td></td><th rowspan="2" scope="col">{SHARED("girths_body")}</th>{heads}</tr>'
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
    for name, value in ((SHARED("all_together"), "total"), (SHARED("would_take", cap=CAP), "cap")):
        cells = "".join(_cell(getattr(pattern.fullness, value)) for pattern in drawn.values())
        rows += f'<tr class="corset-sum"><th scope="row">{name}</th>{cells}</tr>'
    return (
        f"<table><caption>{SHARED('fullness_caption')}</caption>"
        f"<thead><tr><td></td>{heads}</tr></thead><tbody>{rows}</tbody></table>"
    )


def _cell(angle) -> str:
    return f"<td>{SHARED('not_taken') if angle is None else _degrees(angle)}</td>"


def _degrees(angle: float) -> str:
    return say_number(angle, 1)
