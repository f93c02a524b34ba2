"""What is said of the back: what is taken in at one level, and what shape the laced edges make."""

from corsetkit.quantity import quantities
from corsetkit.showing.lessons.laced import EVEN, PARALLEL, WIDE_ABOVE
from corsetkit.showing.lessons.laced_sheet import JUST
from corsetkit.showing.lessons.taken_in import TIE, told
from corsetkit.style import Style
from corsetkit.units import CM_PER_INCH, say_length

_NOTHING = 0.02
"""Less than this, cm, no tape tells."""
_LEAST_UNDER = next(one.low for one in quantities(Style) if one.name == "modesty_overlap")


def waist_said(waist, gap, unit) -> str:
    """The waist's girths, from its `Girth`; `gap` is the lacing gap, cm."""
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    return (f"Waist: body {say(waist.body)}, intended {say(waist.intended)}, finished {say(waist.finished)}, the gap of "
            f"{say(gap)} counted.")


def taken_said(taken, style, waist, unit):
    """Sentences on a `Taken`; `waist` is the `Girth` at the waist."""
    say = lambda cm: told(cm, unit)  # noqa: E731
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
        yield ("Below the waist the dart runs out to nothing above the hem, and the side seam at the hip: there the body is wide "
               "again.")
    yield waist_said(waist, style.lacing_gap, unit)


def _sum_said(taken, unit):
    say = lambda cm: told(cm, unit)  # noqa: E731
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
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    if laced.shape == PARALLEL:
        apart = (laced.gap_above + laced.gap_below) / 2
        off = apart - drafted
        if abs(off) <= EVEN:
            yield f"The edges stand parallel, {say(apart)} apart as drafted: every girth comes to what was drawn."
            return
        yield (f"The edges stand parallel, {say(abs(off))} {'farther apart' if off > 0 else 'nearer'} than drafted: so laced, "
               f"every girth is {say(abs(off))} {'more' if off > 0 else 'less'} than was drawn.")
        yield ("If it closes no farther in comfort, the whole corset is too small for this body." if off > 0 else
               "If it must be drawn so close to hold, the whole corset is too large for this body.")
        return
    shape = "a V" if laced.shape == WIDE_ABOVE else "an inverted V"
    yield (f"The edges make {shape}: {say(laced.gap_above)} apart at the top, {say(laced.gap_below)} at the lower edge. "
           f"Drafted are {say(drafted)}.")
    yield _end_said("top", "above", laced.gap_above - drafted, say)
    yield _end_said("lower edge", "below", laced.gap_below - drafted, say)
    yield "Never change the centre back alone (common practice, no source). Pin, lace, and look again."


def _end_said(end, where, off, say):
    """What one end of the lacing edges asks for; `off` is by how much its gap is wider than drafted, cm."""
    if abs(off) <= EVEN:
        return f"At the {end} the gap is as drafted: leave the girth there as it is."
    size, change = ("small", "let the two side seams and the two back seams out") if off > 0 else (
        "large", "take the two side seams and the two back seams in")
    return (f"At the {end} the gap is {say(abs(off))} {'wider' if off > 0 else 'narrower'} than drafted, so the corset is that "
            f"much too {size} there: {change} {where} the waist, each by about {say(abs(off) / 4)} at the {end}.")


def _panel_said(laced, unit):
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    foot, head = map(laced.under, laced.ends)
    told = f"The modesty panel is {say(laced.panel_width)} wide"
    if min(foot, head) >= JUST:
        yield f"{told} and reaches {say(head)} under each edge at its upper end, {say(foot)} at its lower end."
        if min(foot, head) < _LEAST_UNDER - JUST:
            yield (f"Less than {say(_LEAST_UNDER)} under an edge is little: it slips out when the wearer moves (course "
                   "convention).")
    else:
        bare = [f"{say(-under)} at its {word} end" for word, under in (("upper", head), ("lower", foot)) if under <= -JUST]
        shows = f"skin shows on each side, {' and '.join(bare)}" if bare else "its end just meets the edges, and slips out"
        yield f"{told}, too narrow for this gap: {shows}."
    if laced.yoke:
        yield "Behind the yoke's lacing, above the panel's upper end, there is no panel."
