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
from corsetkit.teaching.shared.listed import listed
from corsetkit.units import Say, in_one_unit
from corsetkit.words import words_of

WORDS = words_of("08_finish")


def cloth_rows(desk, name, finished):
    """(heads, rows, notes): a row for each cloth, with what to buy of each width, laid in rows on single cloth.

    A plan that the learner has kept is named in a note of its own.
    """
    unit = desk.record.unit
    cloths = [Cloth(width=width) for width in WIDTHS]
    items = items_by_layer(finished)
    rows = tuple((layer, *(_bought(mine, cloth, unit) for cloth in cloths)) for layer, mine in items.items())
    kept = KeptPlanFile(desk).read(name, items).plans
    notes = [WORDS("cloth_plainly")]
    notes += [
        WORDS(
            "cloth_kept",
            cloth=layer,
            wide=say_width(plan.cloth, unit),
            laid=plan.cloth.laid,
            length=say_bought(plan.length, unit),
        )
        for layer, plan in kept.items()
    ]
    heads = (WORDS("cloth"), *(WORDS("cloth_wide", wide=say_width(cloth, unit)) for cloth in cloths))
    return heads, rows, tuple(notes)


def _bought(items, cloth, unit):
    length = _length(items, cloth)
    return WORDS("cloth_too_narrow") if length is None else say_bought(length, unit)


@lru_cache(maxsize=24)
def _length(items, cloth):
    """The plain lay's length, cm; None where a piece is wider than the cloth. Most sliders leave outlines as they are."""
    try:
        return plain_plan(tuple(items), cloth).length
    except CorsetkitError:
        return None


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
    title = WORDS("bill_heading", name=name)
    html = f"<p><b>{escape(title, quote=False)}</b></p>" + "".join(table for table, _ in parts)
    return Stored(html, [sentence(title), *(one for _, told in parts for one in told)])


def _pieces(finished):
    used = [cloth for cloth in CLOTHS if any(layer.cloth == cloth for one in finished.pieces for layer in one.layers)]
    rows, told = [], []
    for one in finished.pieces:
        counts = {layer.cloth: layer.count for layer in one.layers}
        rows.append(
            (f"{one.piece.number} {one.piece.name}", *(str(counts.get(cloth, "–")) for cloth in used), one.layers[0].how)
        )
        cloths, how = ", ".join(f"{cloth} {counts[cloth]}" for cloth in used if cloth in counts), one.layers[0].how
        told.append(
            WORDS(
                "piece_cut_how" if how else "piece_cut", number=one.piece.number, piece=one.piece.name, cloths=cloths, how=how
            )
        )
    note = WORDS("pieces_note")
    return _table(WORDS("pieces_caption"), (WORDS("pieces_piece"), *used, WORDS("pieces_how")), rows, (note,)), (*told, note)


def _cloth(desk, name, finished):
    heads, rows, notes = cloth_rows(desk, name, finished)
    told = []
    for row in rows:
        bought = (WORDS("cloth_if", length=length, wide=wide) for wide, length in zip(heads[1:], row[1:]))
        told.append(WORDS("cloth_to_buy", cloth=row[0].capitalize(), lengths=", ".join(bought)))
    return _table(WORDS("cloth_caption"), heads, rows, notes), (*told, *notes)


def _strips(made, unit):
    say = Say(unit)
    rows = [(one.name, one.cloth, str(one.count), say(one.length), say(one.width)) for one in made.strips]
    told = [
        WORDS(
            "strip",
            strip=one.name[:1].upper() + one.name[1:],
            cloth=one.cloth,
            count=one.count,
            long=say(one.length),
            wide=say(one.width),
        )
        for one in made.strips
    ]
    note = WORDS("strips_note")
    heads = (WORDS("strips_strip"), WORDS("strips_of"), WORDS("how_many"), WORDS("long"), WORDS("strips_wide"))
    return _table(WORDS("strips_caption"), heads, rows, (note,)), (*told, note)


def _bones(made, unit):
    say = Say(unit)
    rows = [
        (str(number), one.place, one.kind, str(one.count), say(one.channel), say(one.length))
        for number, one in enumerate(made.bones, 1)
    ]
    told = [
        WORDS(
            "bone",
            number=number,
            place=one.place,
            kind=one.kind,
            count=one.count,
            channel=say(one.channel),
            length=say(one.length),
        )
        for number, one in enumerate(made.bones, 1)
    ]
    short = made.bones[0].channel - made.bones[0].length
    widest = max(made.bays, key=lambda bay: bay.left)
    notes = (
        WORDS(
            "bones_in_all", count=made.bone_count, wide=say(made.channel_width), length=say_bought(made.channel_length, unit)
        ),
        WORDS("widest_without_bone", wide=say(widest.left), piece=widest.piece.name),
        WORDS("bones_note", short=say(short)),
    )
    heads = (
        WORDS("bones_number"),
        WORDS("bones_where"),
        WORDS("bones_kind"),
        WORDS("how_many"),
        WORDS("key_channel"),
        WORDS("bones_bone"),
    )
    return _table(WORDS("bones_heading"), heads, rows, notes), (*told, *notes)


def _lacing(finished, made, unit):
    say = Say(unit)
    rows = [
        (listed(one.names), say(one.length), str(one.count), str(len(one.spaces)), say(max(one.spaces)))
        for one in made.eyelets
    ]
    told = [
        WORDS("eyelets", pieces=listed(one.names), count=one.count, spaces=len(one.spaces), most=say(max(one.spaces)))
        for one in made.eyelets
    ]
    choices = finished.choices
    notes = (
        WORDS("eyelets_in_all", count=made.eyelet_count, inset=say(choices.eyelet_inset), apart=say(choices.waist_spacing)),
        WORDS(
            "lacing",
            worn=say_bought(made.lacing_worn, unit),
            open=say_bought(made.lacing_open, unit),
            tails=say(choices.tails),
        ),
    )
    heads = (
        WORDS("lacing_edge_of"),
        WORDS("long"),
        WORDS("lacing_a_side"),
        WORDS("lacing_spaces"),
        WORDS("lacing_most_apart"),
    )
    reckoned = WORDS("lacing_reckoned")
    folded = WORDS("lacing_how_reckoned"), reckoned
    return _table(WORDS("lacing_caption"), heads, rows, notes, folded), (*told, *notes, reckoned)


def _opening(made, finished, unit):
    say = Say(unit)
    rows = [(WORDS("over", over=one.over), say(one.girth), say(one.girth - one.gap), say(one.gap)) for one in made.passings]
    told = [WORDS("opening_told", over=one.over, girth=say(one.girth), gap=say(one.gap)) for one in made.passings]
    notes = tuple(sentence(in_one_unit(one, unit)) for one in made.warnings if "front opening" in one)
    notes += (WORDS("opening_note"),)
    heads = (WORDS("opening_put_on"), WORDS("opening_body"), WORDS("opening_cloth"), WORDS("opening_opening"))
    return _table(WORDS("opening_caption"), heads, rows, notes), (*told, *notes)


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
