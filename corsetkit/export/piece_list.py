"""The piece list: every piece in every cloth, cloth to buy, strips, tape, bones, eyelets, lacing, and corrections made."""

from corsetkit.drawing.lettering import one_line
from corsetkit.export.csv_table import mm, write_csv
from corsetkit.finish.bill import bill
from corsetkit.fitting.correct import said as said_corrections
from corsetkit.lay.cloth_length import say_bought, say_share, say_width
from corsetkit.pattern.edge import Kind
from corsetkit.printing.draft_print import said_date, target
from corsetkit.units import check_unit, in_one_unit, say_length


def piece_rows(finished, unit="in", wearer="", date=None, plans=None):
    """The list as (heading, rows): lengths in `unit` with their unit, and beside them as numbers of mm.

    A piece has a row for each cloth, without length and width, for it has a pattern. Strips have theirs; a bone has its own
    and, in words, its channel's. `plans` are the cutting plans by the cloths' names: each has a row with what to buy.
    """
    check_unit(unit)
    made, bought = bill(finished), []
    heading = (
        "what",
        "number",
        "name",
        "cloth",
        "how many",
        "how",
        f"length ({unit})",
        "length (mm)",
        f"width ({unit})",
        "width (mm)",
        "notches",
        f"edges and allowances ({unit})",
        "note",
    )

    def row(
        what,
        name,
        cloth="",
        count=None,
        how="",
        length=None,
        width=None,
        number=None,
        notches=None,
        edges="",
        note="",
        wide=None,
    ):
        said = [None if one is None else say_length(one, unit) for one in (length, width)]
        bought.append(
            (what, number, name, cloth, count, how, said[0], mm(length), wide or said[1], mm(width), notches, edges, note)
        )

    row("pattern", f"for {one_line(wearer)}" if one_line(wearer) else "for no wearer named", note=said_date(date))
    of = {one.piece.number: one for one in finished.pieces}
    for cut in made.cuts:
        one = of[cut.number]
        row(
            "piece",
            cut.name,
            cut.cloth,
            cut.count,
            cut.how,
            number=cut.number,
            notches=len(one.notches),
            edges=_edges(one, unit),
        )
    for one in (plans or {}).values():
        row(
            "cloth",
            one.layer,
            one.layer,
            1,
            f"laid {one.cloth.laid}, {one.how}",
            one.length,
            one.cloth.width,
            note=f"buy {say_bought(one.length, unit)}; {say_share(one.used)} of it becomes the corset",
            wide=say_width(one.cloth, unit),
        )
    for one in made.strips:
        row("tape" if one.cloth == "tape" else "strip", one.name, one.cloth, one.count, "by measure", one.length, one.width)
    for one in made.bones:
        row(
            "bone",
            one.place,
            one.kind,
            one.count,
            "",
            one.length,
            finished.choices.bone_width,
            note=f"channel {say_length(one.channel, unit)} long, {say_length(made.channel_width, unit)} wide",
        )
    row(
        "channel",
        "bone channels, all together",
        "tape or cloth",
        made.bone_count,
        "",
        made.channel_length,
        made.channel_width,
        note=f"buy {say_bought(made.channel_length, unit)}",
    )
    for one in made.bays:
        row("between bones", one.piece.name, length=one.left, note="the widest cloth without a bone at the waist")
    for one in made.eyelets:
        row(
            "eyelet",
            " and ".join(one.names),
            "metal",
            2 * one.count,
            f"{one.count} on each edge",
            one.length,
            note=f"{say_length(one.inset, unit)} from the edge; from the top: "
            + ", ".join(say_length(place, unit) for place in one.places),
        )
    if made.eyelets:
        row(
            "lacing",
            "lacing",
            "cord or ribbon",
            1,
            "so long that it opens without being unlaced",
            made.lacing_open,
            note=f"buy {say_bought(made.lacing_open, unit)}; {say_bought(made.lacing_worn, unit)} for the gap as it is worn",
        )
    for text in said_corrections(finished.pattern.corrections, unit):
        row("correction", text, note="made in the pattern already")
    for text in (*finished.warnings, *made.warnings):
        row("note", in_one_unit(text, unit))
    return heading, tuple(bought)


def _edges(one, unit):
    """The piece's edges in their order, each with its allowance."""
    return "; ".join(f"{edge.name} {_allowance(edge, width, unit)}" for edge, width in zip(one.piece.edges, one.allowances))


def _allowance(edge, width, unit):
    return "on the fold" if edge.kind is Kind.FOLD else say_length(width, unit) if width else "none, bound"


def write_pieces(finished, path, unit="in", wearer="", date=None, plans=None):
    """Write the piece list as CSV to `path`, whole or not at all, and hand the path back.

    Raises:
        CorsetkitError: one sentence, for an unknown unit, and where the file cannot be written.
    """
    path = target(path, "pieces.csv")
    write_csv(path, *piece_rows(finished, unit, wearer, date, plans))
    return path
