"""Before the corset itself: the toile and its fitting, cutting, and the two outer layers made one."""

from corsetkit.finish.finished import CLOTHS, STRENGTH
from corsetkit.finish.notches import SHARE
from corsetkit.fitting.correct import said as said_corrections
from corsetkit.pattern.edge import Kind
from corsetkit.sewing.stage import BLADES, IRON, NEEDLE, PINS, TRIED_ON, Move, Stage
from corsetkit.sewing.work import counted, letters, listed, named
from corsetkit.units import CM_PER_INCH, say_both

SPARE = 1 * CM_PER_INCH
"""Cloth left on the toile beyond side seams and lacing edges, to let out: course convention."""
ONE_PASS = 0.6
"""By how much an edge is moved after one fitting at most, cm: course convention."""


def toile(work):
    """The trial corset: cut, tacked, boned, tried on, corrected."""
    seams, gap = work.order.seams, work.pattern.style.lacing_gap
    moves = [
        Move(
            "A toile is a trial corset of firm, cheap cotton that does not give. Cut from one layer of it: "
            f"{listed(f'{named(one)} ({_many(one.cut, one.on_fold, one.pair)})' for one in work.shell)}. Leave "
            f"{say_both(SPARE)} beyond the sewing line at the side seams and the lacing edges, so that there is cloth to "
            "let out.",
            (),
            work.shell,
        ),
        Move("Draw on each piece its number, its sewing lines, its notches and the line of the waist."),
        Move(
            f"Tack the seams, with the longest stitch of the machine, in the order {letters(seams)}, and press them open. "
            "Long stitches come out again."
        ),
        Move(
            "Hold bones along the seams, the centre front and the lacing edges with narrow tape. Without bones a toile "
            "tells nothing about length or top edge. Old ones or cable ties do."
        ),
        Move(
            "Tack to each lacing edge a strip of strong cloth that has eyelets or lacing hooks already. No eyelet goes "
            f"into the toile, and the strips serve for every fitting. Lace until the gap is {say_both(gap)}, even from top "
            "to foot."
        ),
        Move(
            "Look at it standing and sitting. The waist notches lie at the waist; the seams of the cups run over the "
            "fullest point; no cup wrinkles or spills; the top edge lies flat, arms up and arms down; a deep breath is "
            "easy."
        ),
        Move(
            "Pin away what is too wide, cut open what is too tight, and measure it. Move an edge by no more than "
            f"{say_both(ONE_PASS)}, walk its seam again (measure its two sides against each other), sew a new toile and "
            "look anew."
        ),
    ]
    if corrections := said_corrections(work.pattern.corrections, None):
        moves.insert(0, Move(f"This pattern is drawn with these corrections from fittings before: {'; '.join(corrections)}."))
    return Stage("The toile", tuple(moves), (BLADES, PINS, IRON, TRIED_ON))


def _many(count, on_fold, pair):
    return f"{count}{' on the fold' if on_fold else ' as a pair' if pair else ''}"


def cutting(work):
    """Cutting each cloth, the strips, marks and notches."""
    moves = [
        Move(
            "Wash the cloth as the corset will be washed, and press it: cloth that shrinks, shrinks now. Lay every "
            "piece with its grain arrow along the selvedge, the cloth's own edge. Cut along the strong lines: the "
            "allowances, the cloth outside the sewing lines, are in the pieces."
        )
    ]
    if any(one.on_fold for one in work.shell):
        moves.append(
            Move(
                "A piece on the fold is drawn as half of it. Lay its fold edge on the fold of the cloth; or, on "
                "single cloth, trace it, turn the paper over along that edge, and trace the other half.",
                (),
                tuple(one for one in work.shell if one.on_fold),
            )
        )
    for cloth in CLOTHS:
        mine = [(one.piece, layer) for one in work.finished.pieces for layer in one.layers if layer.cloth == cloth]
        if mine:
            what = [f"{named(piece)} ({layer.count}{f' {layer.how}' if layer.how else ''})" for piece, layer in mine]
            moves.append(Move(f"Of the {cloth} cut {listed(what)}.{_FIRST.get(cloth, '')}", (), tuple(p for p, _ in mine)))
    if work.finished.strips:
        strips = [
            f"{one.name}: {counted(one.count, 'strip')}, {say_both(one.length)} by {say_both(one.width)}, of the "
            f"cloth of the {one.cloth}"
            for one in work.finished.strips
        ]
        moves.append(Move(f"By measure cut {'; '.join(strips)}. Allowances are in them."))
    moves.append(Move(_notching(work)))
    moves.append(
        Move(
            "Write on a slip pinned to each piece its number, its name and its cloth, and mark its wrong side. "
            "Mark the sewing lines and the waist on the strength layer, where marks do not show."
        )
    )
    return Stage("Cut, mark and notch", tuple(moves), (BLADES, IRON))


_FIRST = {
    STRENGTH: " It is the layer that carries the strain: a firm cotton cloth woven for corsets, cut exactly on the grain."
}


def _notching(work):
    notches = [one for piece in work.finished.pieces for one in piece.notches]
    cut = [one for one in notches if one.depth]
    text = (
        f"Cut the notches inwards from the edge, {say_both(work.choices.notch_depth)} deep and never deeper than "
        f"{'half' if SHARE == 0.5 else SHARE} the allowance: one cut where a front piece is sewn in the seam, two where "
        "all its pieces are back ones."
    )
    marked = " Where an edge has no allowance, mark them with a thread." if len(cut) < len(notches) else ""
    return f"{text}{marked} There are {len(notches)} on the pieces as they are drawn."


def layering(work):
    """Shell and strength layer tacked together, and the V at the centre front."""
    moves = [
        Move(
            f"Lay the shell of {listed(map(named, work.strong))} on its strength layer, wrong side to it, and smooth "
            "both from the middle outwards. Tack all round within the allowance. From now on the two are one cloth.",
            (),
            work.strong,
        )
    ]
    for piece in work.strong:
        for edge in piece.edges:
            if edge.kind is Kind.CENTRE_FRONT:
                moves.append(
                    Move(
                        f"Fold {named(piece)} on its fold, right side inside, and sew the V at its top like a small dart: "
                        f"from the top down to nothing on the fold, {say_both(edge.length)} long. Cut it open above the point "
                        "and press it open.",
                        (),
                        (piece,),
                    )
                )
    return Stage("Shell and strength layer", tuple(moves), (PINS, NEEDLE, IRON))
