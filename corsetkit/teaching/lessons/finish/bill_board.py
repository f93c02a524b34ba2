"""The piece list, the cloth to buy and the bill, as tables with the rules they follow."""

from functools import lru_cache
from html import escape

from corsetkit.errors import CorsetkitError, sentence
from corsetkit.finish.bill import bill
from corsetkit.finish.finished import CLOTHS
from corsetkit.lay.cloth import WIDTHS, Cloth
from corsetkit.lay.cloth_length import say_bought, say_width
from corsetkit.lay.planning import plain_plan
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared.files_written import KeptPlanFile, items_by_layer
from corsetkit.teaching.shared.finished_drafts import Finishing, read_or_refused
from corsetkit.units import Say, in_one_unit


def cloth_rows(desk, name, finished):
    """(heads, rows, notes): a row for each cloth, with what to buy of each width, laid in rows on single cloth.

    A plan that the learner has kept is named in a note of its own.
    """
    unit = desk.record.unit
    cloths = [Cloth(width=width) for width in WIDTHS]
    items = items_by_layer(finished)
    rows = tuple((layer, *(_bought(mine, cloth, unit) for cloth in cloths)) for layer, mine in items.items())
    kept = KeptPlanFile(desk).read(name, items).plans
    notes = ["Laid plainly, row by row, on single cloth. In lesson 09 a closer lay is looked for, on the cloth you have."]
    notes += [
        f"The plan you have kept for the {layer}: {say_width(plan.cloth, unit)} wide, laid {plan.cloth.laid}, buy "
        f"{say_bought(plan.length, unit)}."
        for layer, plan in kept.items()
    ]
    return ("cloth", *(f"{say_width(cloth, unit)} wide" for cloth in cloths)), rows, tuple(notes)


def _bought(items, cloth, unit):
    length = _length(items, cloth)
    return "too narrow" if length is None else say_bought(length, unit)


@lru_cache(maxsize=24)
def _length(items, cloth):
    """The plain lay's length, cm; None where a piece is wider than the cloth. Most sliders leave outlines as they are."""
    try:
        return plain_plan(tuple(items), cloth).length
    except CorsetkitError:
        return None


_RECKONED = (
    "How the lacing is reckoned",
    "The lacing crosses every space twice, from either side. A crossing is the long side of a square-cornered "
    "triangle: across, the gap and both insets; down, the space. At one end it goes straight across once more.",
)
_LEFT = ' style="text-align:left"'


def bill_board(drafts: Finishing) -> Stored:
    """The bill of the desk's wearer, or the sentence that says why there is none."""
    return read_or_refused(lambda: _board(drafts))


def _board(drafts):
    name, finished = drafts.finished(drafts.now())
    unit = drafts.desk.record.unit
    made = bill(finished)
    parts = [
        _pieces(finished),
        _cloth(drafts.desk, name, finished),
        _strips(made, unit),
        _bones(made, unit),
        _lacing(finished, made, unit),
    ]
    if made.passings:
        parts.append(_opening(made, finished, unit))
    html = f"<p><b>What {escape(name)}'s corset needs</b></p>" + "".join(table for table, _ in parts)
    return Stored(html, [f"What {name}'s corset needs.", *(one for _, told in parts for one in told)])


def _pieces(finished):
    used = [cloth for cloth in CLOTHS if any(layer.cloth == cloth for one in finished.pieces for layer in one.layers)]
    rows, told = [], []
    for one in finished.pieces:
        counts = {layer.cloth: layer.count for layer in one.layers}
        rows.append(
            (f"{one.piece.number} {one.piece.name}", *(str(counts.get(cloth, "–")) for cloth in used), one.layers[0].how)
        )
        told.append(
            f"{one.piece.number} {one.piece.name}: "
            + ", ".join(f"{cloth} {counts[cloth]}" for cloth in used if cloth in counts)
            + (f", {one.layers[0].how}." if one.layers[0].how else ".")
        )
    note = (
        "Panels that reach the hem carry the strain and are cut of all three cloths; all other pieces of two "
        "(common practice, no source)."
    )
    return _table("Pieces to cut, for each cloth", ("piece", *used, "how"), rows, (note,)), (*told, note)


def _cloth(desk, name, finished):
    heads, rows, notes = cloth_rows(desk, name, finished)
    told = [
        f"{row[0].capitalize()}, to buy: {', '.join(f'{bought} if {width}' for width, bought in zip(heads[1:], row[1:]))}."
        for row in rows
    ]
    return _table("Cloth to buy, by its width", heads, rows, notes), (*told, *notes)


def _strips(made, unit):
    say = Say(unit)
    rows = [(one.name, one.cloth, str(one.count), say(one.length), say(one.width)) for one in made.strips]
    told = [
        f"{one.name[:1].upper()}{one.name[1:]}: {one.cloth}, {one.count} of {say(one.length)} by {say(one.width)}."
        for one in made.strips
    ]
    note = (
        "The waist tape is as long as the finished cloth at the waist. It lies inside and takes the pull, so that the cloth "
        "need not (common practice, no source)."
    )
    return _table("Strips and tape, cut by measure", ("strip", "of", "how many", "long", "wide"), rows, (note,)), (*told, note)


def _bones(made, unit):
    say = Say(unit)
    rows = [
        (str(number), one.place, one.kind, str(one.count), say(one.channel), say(one.length))
        for number, one in enumerate(made.bones, 1)
    ]
    told = [
        f"Bone {number}, {one.place}: {one.kind}, {one.count}, channel {say(one.channel)}, bone {say(one.length)}."
        for number, one in enumerate(made.bones, 1)
    ]
    total = (
        f"{made.bone_count} bones in all. The channels are {say(made.channel_width)} wide and together "
        f"{say_bought(made.channel_length, unit)} long."
    )
    short = made.bones[0].channel - made.bones[0].length
    widest = max(made.bays, key=lambda bay: bay.left)
    notes = (
        total,
        f"The widest cloth without a bone at the waist is {say(widest.left)}, in the {widest.piece.name}.",
        f"A bone is {say(short)} shorter than its channel; a channel is a little wider than its bone. Spiral bones "
        "where a channel curves sideways, flat ones where it is straight (common practice, no source).",
    )
    table = _table("Bones", ("number", "where", "kind", "how many", "channel", "bone"), rows, notes)
    return table, (*told, *notes)


def _lacing(finished, made, unit):
    say = Say(unit)
    rows = [
        (" and ".join(one.names), say(one.length), str(one.count), str(len(one.spaces)), say(max(one.spaces)))
        for one in made.eyelets
    ]
    told = [
        f"{' and '.join(one.names)}: {one.count} eyelets on each side, {len(one.spaces)} spaces of at most "
        f"{say(max(one.spaces))}."
        for one in made.eyelets
    ]
    choices = finished.choices
    notes = (
        f"{made.eyelet_count} eyelets in all, {say(choices.eyelet_inset)} from the edge. Two pairs stand at the waist, "
        f"{say(choices.waist_spacing)} apart, for there the pull is strongest (common practice, no source).",
        f"Lacing: {say_bought(made.lacing_worn, unit)} for the gap as it is worn, "
        f"{say_bought(made.lacing_open, unit)} to put the corset on "
        f"without unlacing it; {say(choices.tails)} of either are loops and tails (course convention).",
    )
    return _table(
        "Eyelets and lacing", ("lacing edge of", "long", "eyelets a side", "spaces", "at most apart"), rows, notes, _RECKONED
    ), (*told, *notes, _RECKONED[1])


def _opening(made, finished, unit):
    say = Say(unit)
    rows = [(f"over {one.over}", say(one.girth), say(one.girth - one.gap), say(one.gap)) for one in made.passings]
    told = [f"Over {one.over}: body {say(one.girth)}, opening {say(one.gap)}." for one in made.passings]
    notes = tuple(sentence(in_one_unit(one, unit)) for one in made.warnings if "front opening" in one)
    notes += (
        "Cloth and opening together have to be as much as the widest girth on the way. It is reckoned as if nothing "
        "gave and no arm were in the way; try it with a tape before you buy the lacing.",
    )
    return _table("How far it has to open", ("put on", "the body there", "cloth at its narrowest", "opening"), rows, notes), (
        *told,
        *notes,
    )


def _table(caption, heads, rows, notes, folded=()):
    """A table with notes under it; `folded` is a note's heading and the note, folded away until it is asked for."""
    head = "".join(f'<th scope="col"{_LEFT}>{escape(one)}</th>' for one in heads)
    body = "".join(
        f'<tr><th scope="row"{_LEFT}>{escape(row[0])}</th>'
        + "".join(f"<td{_LEFT}>{escape(one)}</td>" for one in row[1:])
        + "</tr>"
        for row in rows
    )
    told = "".join(f"<p>{escape(one)}</p>" for one in notes)
    if folded:
        told += f"<details><summary>{escape(folded[0])}</summary><p>{escape(folded[1])}</p></details>"
    return f"<table><caption>{escape(caption)}</caption><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>{told}"
