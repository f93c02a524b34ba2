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
from corsetkit.words import words_of

WORDS = words_of("07_back")
SHARED = words_of("shared")

_NOTHING = 0.02
"""Less than this, cm, no tape tells."""
_LEAST_UNDER = next(one.low for one in quantities(Style) if one.name == "modesty_overlap")


def waist_said(waist, gap, unit) -> str:
    """The waist's girths, from its `Girth`; `gap` is the lacing gap, cm."""
    say = Say(unit)
    return WORDS(
        "waist_girths", body=say(waist.body), intended=say(waist.intended), finished=say(waist.finished), gap=say(gap)
    )


def taken_said(taken, style, waist, unit):
    """Sentences on a `Taken`; `waist` is the `Girth` at the waist."""
    say = partial(told, unit=unit)
    far = say(abs(taken.y))
    place = WORDS("place_waist") if not taken.y else WORDS("place_above" if taken.y > 0 else "place_below", far=far)
    side, dart = say(taken.at_side), say(taken.in_dart)
    if taken.more_in_dart < -_NOTHING:
        yield WORDS("taken_takes_less", place=place, side=side, dart=dart, less=say(-taken.more_in_dart))
    elif taken.in_block > _NOTHING:
        yield WORDS("taken_takes_with_block", place=place, side=side, dart=dart, block=say(taken.in_block))
    else:
        yield WORDS("taken_takes", place=place, side=side, dart=dart)
    if taken.y == 0.0:
        yield _sum_said(taken, unit)
    elif abs(taken.all_round) > _NOTHING:
        yield WORDS("taken_narrower", narrower=say(abs(taken.all_round)))
    else:
        yield WORDS("taken_nothing")
    if taken.y > 0:
        yield WORDS("taken_to_bust")
    elif taken.y < 0:
        yield WORDS("taken_to_hem")
    yield waist_said(waist, style.lacing_gap, unit)


def _sum_said(taken, unit):
    say = partial(told, unit=unit)
    part = CM_PER_INCH / 16 if unit == "in" else 0.1
    side, dart, whole = (round((cm + TIE) / part) for cm in (taken.at_side, taken.more_in_dart, taken.all_round))
    return WORDS(
        "taken_reduction" if 2 * (side + dart) == whole else "taken_reduction_rounded",
        side=say(taken.at_side),
        dart=say(taken.more_in_dart),
        whole=say(taken.all_round),
    )


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
            yield WORDS("laced_as_drafted", apart=say(apart))
            return
        yield WORDS("laced_farther" if off > 0 else "laced_nearer", off=say(abs(off)))
        yield WORDS("laced_too_small" if off > 0 else "laced_too_large")
        return
    yield WORDS(
        "laced_v" if laced.shape == WIDE_ABOVE else "laced_inverted_v",
        above=say(laced.gap_above),
        below=say(laced.gap_below),
        drafted=say(drafted),
    )
    yield _end_said("top", laced.gap_above - drafted, say)
    yield _end_said("low", laced.gap_below - drafted, say)
    yield WORDS("laced_never")


def _end_said(end, off, say):
    """What one end of the lacing edges, "top" or "low", asks for; `off` is by how much its gap is wider than drafted, cm."""
    if abs(off) <= EVEN:
        return WORDS(f"end_{end}_as_drafted")
    if off > 0:
        return WORDS(f"end_{end}_wider", off=say(off), each=say(off / 4))
    return WORDS(f"end_{end}_narrower", off=say(-off), each=say(-off / 4))


def _panel_said(laced, unit):
    say = Say(unit)
    foot, head = map(laced.under, laced.ends)
    wide = say(laced.panel_width)
    if min(foot, head) >= JUST:
        yield WORDS("modesty_reaches", wide=wide, upper=say(head), lower=say(foot))
        if min(foot, head) < _LEAST_UNDER - JUST:
            yield WORDS("modesty_little", least=say(_LEAST_UNDER))
    elif max(foot, head) <= -JUST:
        yield WORDS("modesty_bare_both", wide=wide, upper=say(-head), lower=say(-foot))
    elif head <= -JUST:
        yield WORDS("modesty_bare_upper", wide=wide, upper=say(-head))
    elif foot <= -JUST:
        yield WORDS("modesty_bare_lower", wide=wide, lower=say(-foot))
    else:
        yield WORDS("modesty_just_meets", wide=wide)
    if laced.yoke:
        yield WORDS("modesty_not_behind_yoke")


WIDER = 4 * CM_PER_INCH
"""How much wider than drafted the gap can be shown, cm."""


@dataclass(frozen=True)
class Looking:
    """Where on the back one looks; the ends and the default are the wearer's own."""

    below_the_bust: float = declared(WORDS("look_control"), unit="cm", low=0, high=30, step=CM_PER_INCH / 8, default=12)


@dataclass(frozen=True)
class Gaps:
    """How far the lacing edges are apart on the body."""

    gap_at_the_top: float = declared(
        WORDS("gap_top_control"), unit="cm", low=0, high=30, step=CM_PER_INCH / 8, default=3 * CM_PER_INCH
    )
    gap_at_the_hem: float = declared(
        WORDS("gap_hem_control"), unit="cm", low=0, high=30, step=CM_PER_INCH / 8, default=3 * CM_PER_INCH
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
    title = WORDS("taken_title", name=name)
    words = WORDS("taken_described", title=title, said=told[0])
    sheet = taken_sheet(title, back, taken, steps.style.waist_reduction, girth, unit, words)
    return Picture(svg_text(sheet), sheet.description, told)


def laced_picture(name, steps, unit, above=None, below=None):
    """The back laced, its edges `above` and `below` cm apart at top and hem; as drafted where that is None."""
    drafted = steps.style.lacing_gap
    gaps = (drafted if gap is None else gap for gap in (above, below))
    laced = Laced(steps.back, *gaps, steps.style.yoke)
    told = tuple(laced_said(laced, steps.style, unit))
    title = WORDS("laced_title", name=name)
    sheet = laced_sheet(title, laced, drafted + WIDER, unit, WORDS("laced_described", title=title, said=told[0]))
    return Picture(svg_text(sheet), sheet.description, told)


LEAST = 0.005
"""Sides that differ by less than this, cm, differ by nothing that a pencil or a needle knows."""
_HEADS = (
    WORDS("seams_head_letter"),
    WORDS("seams_head_seam"),
    WORDS("seams_head_first"),
    WORDS("seams_head_length"),
    WORDS("seams_head_second"),
    WORDS("seams_head_length"),
    WORDS("seams_head_difference"),
    WORDS("seams_head_notches"),
)
_LEFT, _WRAPPED = ' style="text-align:left"', ' style="text-align:left;white-space:normal"'
"""Several pieces on one side may need two lines; a length is never broken."""


def seam_table(drafts, style) -> Stored:
    """The table for the wearer in that style, or the sentence that says why there is none."""
    try:
        name, pattern = drafts.of(style)
    except CorsetkitError as error:
        words = sentence(WORDS("seams_nobody", error=error))
        return Stored(f"<p>{escape(words)}</p>", (words,))
    rows = seam_rows(pattern, drafts.desk.record.unit)
    heads = "".join(f'<th scope="col"{_LEFT}>{head}</th>' for head in _HEADS)
    cells = "".join(
        f'<tr><th scope="row"{_LEFT}><b>{row[0]}</b></th>{"".join(_cell(one) for one in row[1:])}</tr>' for row in rows
    )
    told = said.seam_sentence(pattern)
    more = said.rounded_each(drafts.desk.record.unit)
    html = (
        f"<table><caption>{WORDS('seams_caption', name=escape(name))}</caption>"
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
    return SHARED("none") if abs(cm) < LEAST else WORDS("seams_off", off=f"{10 * cm:+.1f}")


def _cell(words):
    return f"<td{_WRAPPED if ',' in words else _LEFT}>{escape(words)}</td>"


def _told(row):
    letter, name, first, one, second, other, difference, notches = row
    return WORDS(
        "seams_row",
        letter=letter,
        name=name,
        first=first,
        one=one,
        second=second,
        other=other,
        difference=difference,
        notches=notches,
    )
