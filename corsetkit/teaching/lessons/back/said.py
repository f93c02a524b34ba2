"""What is said and shown of the back: what is taken in at a level, the laced edges, and the pattern's seams as a table."""

from dataclasses import dataclass, replace
from functools import partial
from html import escape

from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError, sentence
from corsetkit.pieces.measured import girths
from corsetkit.quantity import declared, quantities
from corsetkit.style import Style
from corsetkit.teaching.lessons.back.laced import EVEN, JUST, PARALLEL, WIDE_ABOVE, Laced, laced_sheet
from corsetkit.teaching.lessons.back.taken_in import TIE, lowest, taken_at, taken_sheet, told
from corsetkit.teaching.picture import Picture, Stored
from corsetkit.teaching.shared import pattern_said as said
from corsetkit.units import CM_PER_INCH, Say, say_length

_NOTHING = 0.02
"""Less than this, cm, no tape tells."""
_LEAST_UNDER = next(one.low for one in quantities(Style) if one.name == "modesty_overlap")


def waist_said(waist, gap, unit) -> str:
    """The waist's girths, from its `Girth`; `gap` is the lacing gap, cm."""
    say = Say(unit)
    return (
        f"Waist: body {say(waist.body)}, intended {say(waist.intended)}, finished {say(waist.finished)}, the gap of "
        f"{say(gap)} counted."
    )


def taken_said(taken, style, waist, unit):
    """Sentences on a `Taken`; `waist` is the `Girth` at the waist."""
    say = partial(told, unit=unit)
    place = "At the waist" if taken.y == 0.0 else f"{say(abs(taken.y))} {'above' if taken.y > 0 else 'below'} the waist"
    block = f", of which the block's own dart took {say(taken.in_block)} already" if taken.in_block > _NOTHING else ""
    if taken.more_in_dart < -_NOTHING:
        block = f", {say(-taken.more_in_dart)} less than the block's own dart, which reaches deeper"
    yield f"{place}, each side seam takes {say(taken.at_side)} and each back dart {say(taken.in_dart)}{block}."
    if taken.y == 0.0:
        yield f"{_sum_said(taken, unit)} That is the waist reduction."
    elif abs(taken.all_round) > _NOTHING:
        yield f"All four places together: here the corset's back is {say(abs(taken.all_round))} narrower than the block's."
    else:
        yield "All four places together take nothing here that the block did not take."
    if taken.y > 0:
        yield "Towards the bust level both run out to nothing, for the bust keeps its girth."
    elif taken.y < 0:
        yield (
            "Below the waist the dart runs out to nothing above the hem, and the side seam at the hip: there the body is wide "
            "again."
        )
    yield waist_said(waist, style.lacing_gap, unit)


def _sum_said(taken, unit):
    say = partial(told, unit=unit)
    words = f"Both halves: 2 x ({say(taken.at_side)} + {say(taken.more_in_dart)}) = {say(taken.all_round)}"
    part = CM_PER_INCH / 16 if unit == "in" else 0.1
    side, dart, whole = (round((cm + TIE) / part) for cm in (taken.at_side, taken.more_in_dart, taken.all_round))
    adds_up = 2 * (side + dart) == whole
    return f"{words}{'' if adds_up else ', each part rounded'}."


def laced_said(laced, style, unit):
    """Sentences on a `Laced`: what its shape means, and what the modesty panel covers."""
    yield from _shape_said(laced, style.lacing_gap, unit)
    yield from _panel_said(laced, unit)


def _shape_said(laced, drafted, unit):
    say = Say(unit)
    if laced.shape == PARALLEL:
        apart = (laced.gap_above + laced.gap_below) / 2
        off = apart - drafted
        if abs(off) <= EVEN:
            yield f"The edges stand parallel, {say(apart)} apart as drafted: every girth comes to what was drawn."
            return
        yield (
            f"The edges stand parallel, {say(abs(off))} {'farther apart' if off > 0 else 'nearer'} than drafted: so laced, "
            f"every girth is {say(abs(off))} {'more' if off > 0 else 'less'} than was drawn."
        )
        yield (
            "If it closes no farther in comfort, the whole corset is too small for this body."
            if off > 0
            else "If it must be drawn so close to hold, the whole corset is too large for this body."
        )
        return
    shape = "a V" if laced.shape == WIDE_ABOVE else "an inverted V"
    yield (
        f"The edges make {shape}: {say(laced.gap_above)} apart at the top, {say(laced.gap_below)} at the lower edge. "
        f"Drafted are {say(drafted)}."
    )
    yield _end_said("top", "above", laced.gap_above - drafted, say)
    yield _end_said("lower edge", "below", laced.gap_below - drafted, say)
    yield "Never change the centre back alone (common practice, no source). Pin, lace, and look again."


def _end_said(end, where, off, say):
    """What one end of the lacing edges asks for; `off` is by how much its gap is wider than drafted, cm."""
    if abs(off) <= EVEN:
        return f"At the {end} the gap is as drafted: leave the girth there as it is."
    size, change = (
        ("small", "let the two side seams and the two back seams out")
        if off > 0
        else ("large", "take the two side seams and the two back seams in")
    )
    return (
        f"At the {end} the gap is {say(abs(off))} {'wider' if off > 0 else 'narrower'} than drafted, so the corset is that "
        f"much too {size} there: {change} {where} the waist, each by about {say(abs(off) / 4)} at the {end}."
    )


def _panel_said(laced, unit):
    say = Say(unit)
    foot, head = map(laced.under, laced.ends)
    told = f"The modesty panel is {say(laced.panel_width)} wide"
    if min(foot, head) >= JUST:
        yield f"{told} and reaches {say(head)} under each edge at its upper end, {say(foot)} at its lower end."
        if min(foot, head) < _LEAST_UNDER - JUST:
            yield (
                f"Less than {say(_LEAST_UNDER)} under an edge is little: it slips out when the wearer moves (course "
                "convention)."
            )
    else:
        bare = [f"{say(-under)} at its {word} end" for word, under in (("upper", head), ("lower", foot)) if under <= -JUST]
        shows = f"skin shows on each side, {' and '.join(bare)}" if bare else "its end just meets the edges, and slips out"
        yield f"{told}, too narrow for this gap: {shows}."
    if laced.yoke:
        yield "Behind the yoke's lacing, above the panel's upper end, there is no panel."


WIDER = 4 * CM_PER_INCH
"""How much wider than drafted the gap can be shown, cm."""


@dataclass(frozen=True)
class Looking:
    """Where on the back one looks; the ends and the default are the wearer's own."""

    below_the_bust: float = declared(
        "how far below the bust level the back is looked at: at the waist, unless you move it",
        unit="cm",
        low=0,
        high=30,
        step=CM_PER_INCH / 8,
        default=12,
    )


@dataclass(frozen=True)
class Gaps:
    """How far the lacing edges are apart on the body."""

    gap_at_the_top: float = declared(
        "how far the lacing edges are apart at their upper ends when laced",
        unit="cm",
        low=0,
        high=30,
        step=CM_PER_INCH / 8,
        default=3 * CM_PER_INCH,
    )
    gap_at_the_hem: float = declared(
        "how far the lacing edges are apart at the lower edge when laced",
        unit="cm",
        low=0,
        high=30,
        step=CM_PER_INCH / 8,
        default=3 * CM_PER_INCH,
    )


def looking_at(back):
    """The quantities of `Looking` for that `Back`; as they are declared where there is none."""
    (looking,) = quantities(Looking)
    return (looking,) if back is None else (replace(looking, high=lowest(back), default=back.block.back.bust_level),)


def gaps_from(drafted):
    """The quantities of `Gaps`, from the drafted lacing gap, cm."""
    return tuple(replace(one, default=drafted, high=drafted + WIDER) for one in quantities(Gaps))


def waist_girth(steps):
    """The `Girth` at the waist."""
    return girths(steps.measurements, steps.style, steps.overbust, steps.back)["waist"]


def taken_picture(name, steps, unit, below=None):
    """The back with a level across it, `below` cm under the bust level, at the waist where that is None."""
    back = steps.back
    taken = taken_at(back, back.block.back.bust_level if below is None else below)
    girth = waist_girth(steps)
    told = tuple(taken_said(taken, steps.style, girth, unit))
    title = f"Taken in, for {name}"
    sheet = taken_sheet(title, back, taken, steps.style.waist_reduction, girth, unit, f"{title}: half the back. {told[0]}")
    return Picture(svg_text(sheet), sheet.description, told)


def laced_picture(name, steps, unit, above=None, below=None):
    """The back laced, its edges `above` and `below` cm apart at top and hem; as drafted where that is None."""
    drafted = steps.style.lacing_gap
    gaps = (drafted if gap is None else gap for gap in (above, below))
    laced = Laced(steps.back, *gaps, steps.style.yoke)
    told = tuple(laced_said(laced, steps.style, unit))
    title = f"Laced, for {name}"
    sheet = laced_sheet(title, laced, drafted + WIDER, unit, f"{title}, seen from behind. {told[0]}")
    return Picture(svg_text(sheet), sheet.description, told)


LEAST = 0.005
"""Sides that differ by less than this, cm, differ by nothing that a pencil or a needle knows."""
_HEADS = ("letter", "seam", "first side", "length", "second side", "length", "difference", "notches")
_LEFT, _WRAPPED = ' style="text-align:left"', ' style="text-align:left;white-space:normal"'
"""Several pieces on one side may need two lines; a length is never broken."""


def seam_table(drafts, style) -> Stored:
    """The table for the wearer in that style, or the sentence that says why there is none."""
    try:
        name, pattern = drafts.of(style)
    except CorsetkitError as error:
        words = sentence(f"Nothing to sew yet: {error}")
        return Stored(f"<p>{escape(words)}</p>", (words,))
    rows = seam_rows(pattern, drafts.desk.record.unit)
    heads = "".join(f'<th scope="col"{_LEFT}>{head}</th>' for head in _HEADS)
    cells = "".join(
        f'<tr><th scope="row"{_LEFT}><b>{row[0]}</b></th>{"".join(_cell(one) for one in row[1:])}</tr>' for row in rows
    )
    told = said.seam_sentence(pattern)
    more = said.rounded_each(drafts.desk.record.unit)
    html = (
        f"<table><caption>The seams of {escape(name)}'s corset, in the order in which they are sewn</caption>"
        f"<thead><tr>{heads}</tr></thead><tbody>{cells}</tbody></table><p>{escape(told)} {more}</p>"
    )
    return Stored(html, (*(_told(row) for row in rows), told, more))


def seam_rows(pattern, unit) -> tuple[tuple[str, ...], ...]:
    """The cells of each seam's row, in the order of `_HEADS`."""
    return tuple(
        (
            seam_letter(seam.number),
            seam.name,
            _pieces(seam, 0),
            say_length(seam.lengths[0], unit),
            _pieces(seam, 1),
            say_length(seam.lengths[1], unit),
            _difference(seam.difference),
            str(len(seam.marks)),
        )
        for seam in pattern.seams
    )


def _pieces(seam, side):
    """The pieces of one side in their order, each once."""
    return ", ".join(f"{piece.number} {piece.name}" for piece in seam.pieces_on(side))


def _difference(cm):
    return "none" if abs(cm) < LEAST else f"{10 * cm:+.1f} mm"


def _cell(words):
    return f"<td{_WRAPPED if ',' in words else _LEFT}>{escape(words)}</td>"


def _told(row):
    letter, name, first, one, second, other, difference, notches = row
    return f"{letter}, {name}: {first} {one}; {second} {other}; difference {difference}; notches {notches}."
