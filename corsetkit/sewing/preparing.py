"""Before the corset itself: the toile and its fitting, cutting, and the two outer layers made one."""

from corsetkit.finish.finished import CLOTHS, STRENGTH
from corsetkit.finish.notches import SHARE
from corsetkit.fitting.correct import said as said_corrections
from corsetkit.pattern.edge import Kind
from corsetkit.sewing.stage import BLADES, IRON, NEEDLE, PINS, TRIED_ON, Move, Stage
from corsetkit.sewing.work import letters, listed, named
from corsetkit.units import CM_PER_INCH, say_both
from corsetkit.words import words_of

WORDS = words_of("sewing")

SPARE = 1 * CM_PER_INCH
"""Cloth left on the toile beyond side seams and lacing edges, to let out: course convention."""
ONE_PASS = 0.6
"""By how much an edge is moved after one fitting at most, cm: course convention."""


def toile(work):
    """The trial corset: cut, tacked, boned, tried on, corrected."""
    moves = [
        Move(WORDS("toile_cut", pieces=listed(map(_toile_piece, work.shell)), spare=say_both(SPARE)), (), work.shell),
        Move(WORDS("toile_draw")),
        Move(WORDS("toile_tack", letters=letters(work.order.seams))),
        Move(WORDS("toile_bones")),
        Move(WORDS("toile_lace", gap=say_both(work.pattern.style.lacing_gap))),
        Move(WORDS("toile_look")),
        Move(WORDS("toile_change", most=say_both(ONE_PASS))),
    ]
    if corrections := said_corrections(work.pattern.corrections, None):
        moves.insert(0, Move(WORDS("toile_corrected", corrections="; ".join(corrections))))
    return Stage(WORDS("toile"), tuple(moves), (BLADES, PINS, IRON, TRIED_ON))


def _toile_piece(piece):
    cut = "on_fold" if piece.on_fold else "as_pair" if piece.pair else "single"
    return WORDS(f"toile_piece_{cut}", piece=named(piece), count=piece.cut)


def cutting(work):
    """Cutting each cloth, the strips, marks and notches."""
    moves = [Move(WORDS("cut_wash"))]
    if any(one.on_fold for one in work.shell):
        moves.append(Move(WORDS("cut_on_fold"), (), tuple(one for one in work.shell if one.on_fold)))
    for cloth in CLOTHS:
        mine = [(one.piece, layer) for one in work.finished.pieces for layer in one.layers if layer.cloth == cloth]
        if mine:
            pieces = listed(_cut_piece(piece, layer) for piece, layer in mine)
            text = WORDS("cut_strength" if cloth == STRENGTH else "cut_cloth", cloth=cloth, pieces=pieces)
            moves.append(Move(text, (), tuple(piece for piece, _ in mine)))
    if work.finished.strips:
        moves.append(Move(WORDS("cut_strips", strips="; ".join(map(_cut_strip, work.finished.strips)))))
    moves += [Move(_notching(work)), Move(WORDS("cut_slips"))]
    return Stage(WORDS("cutting"), tuple(moves), (BLADES, IRON))


def _cut_piece(piece, layer):
    if layer.how:
        return WORDS("cut_piece_how", piece=named(piece), count=layer.count, how=layer.how)
    return WORDS("cut_piece", piece=named(piece), count=layer.count)


def _cut_strip(strip):
    length, width = say_both(strip.length), say_both(strip.width)
    return WORDS.counted("cut_strip", strip.count, name=strip.name, length=length, width=width, cloth=strip.cloth)


def _notching(work):
    notches = [one for piece in work.finished.pieces for one in piece.notches]
    share = WORDS("half") if SHARE == 0.5 else SHARE
    said = [WORDS("cut_notches", depth=say_both(work.choices.notch_depth), share=share)]
    if any(not one.depth for one in notches):
        said.append(WORDS("cut_notches_marked"))
    said.append(WORDS("cut_notches_count", count=len(notches)))
    return " ".join(said)


def layering(work):
    """Shell and strength layer tacked together, and the V at the centre front."""
    moves = [Move(WORDS("layer_tack", pieces=listed(map(named, work.strong))), (), work.strong)]
    for piece in work.strong:
        for edge in piece.edges:
            if edge.kind is Kind.CENTRE_FRONT:
                moves.append(Move(WORDS("layer_v", piece=named(piece), length=say_both(edge.length)), (), (piece,)))
    return Stage(WORDS("layering"), tuple(moves), (PINS, NEEDLE, IRON))
