"""The cups as paper pieces lifted apart: two parts, three parts, and both patterns side by side."""

from corsetkit.geometry.move import slid, turned_about
from corsetkit.geometry.paths import moved
from corsetkit.geometry.points import heading, turn_between, unit as unit_step
from corsetkit.units import say_length, say_number
from corsetkit.showing.lessons.laid import Laid
from corsetkit.drawing.lettering import around, grown
from corsetkit.showing.lessons.lifted_sheet import Spread, lifted_sheet
from corsetkit.drawing.painting import owners_of

APART_MOST = 6.35
"""How far the cups can be lifted apart, cm: 2 1/2 in."""

_SPARE, _OFF = 0.7, 0.55
"""Paper left round the pieces, cm, and how far the upper cup is lifted off the inner lower one for each cm that the lower cups
are apart."""
_BESIDE, _BETWEEN = 3.2, 2.5
"""How far the pieces lie apart where both patterns lie side by side, and the patterns from each other, cm."""


def cups_of(pattern):
    """The cups' pieces of a pattern: the upper cup, where there is one, and then the inner and the outer one."""
    return pattern.pieces[:pattern.style.cup_parts]


def cup_seams(pattern):
    """The seams sewn between the cups: the seam through the bust point, and the cut across where there is one."""
    ids = {id(edge) for piece in cups_of(pattern) for edge in piece.edges}
    return tuple(seam for seam in pattern.seams if all(id(edge) in ids for side in seam.sides for edge in side))


def gap_above(steps):
    """Degrees by which the two cups stand open above the bust point as they are drawn: what the tightening dart takes once
    the darts before it are closed."""
    if steps.three_part_cup:
        return heading(steps.cup.close_top.turn)
    point = steps.darts.overbust.bust_point
    return turn_between(steps.cup.outer_top - point, steps.cup.inner_top - point)


def gap_below(steps):
    """Degrees by which they stand open below it: what the underbust dart takes."""
    return 2 * steps.underbust.half_angle


def cups_lifted(pattern, apart, swung, unit, title, lengths=True):
    """The sheet of the cups lifted `apart` cm; the outer one is swung up about the bust point by `swung` degrees.

    Without `lengths` no edge's length is written on it.
    """
    steps = pattern.steps
    spread = cups_spread(pattern, apart, swung)
    # Wherever they are slid and swung to: the drawing stands still while a slider moves.
    whole = gap_above(steps)
    places = [cups_spread(pattern, how_far, how_much, edges=False) for how_far in (0.0, APART_MOST)
              for how_much in ((0.0, whole / 3, 2 * whole / 3, whole) if len(spread.laid) == 3 else (0.0,))]
    frame = grown(around([one.box for place in places for one in place.laid]), _SPARE)
    told = "; ".join(f"{seam.name} {say_length(seam.lengths[0], unit)} on both sides" for seam in spread.seams)
    above, below = gap_above(steps) - swung, gap_below(steps) + swung
    words = (f"{title}. {len(spread.laid)} pieces, lifted {say_length(apart, unit)} apart: {told}. The gap above the "
             f"bust point is {say_number(above, 1)} degrees, below it {say_number(below, 1)}.")
    return lifted_sheet(title, (spread,), unit, frame, words, lengths)


def cups_beside(two, three, unit, title):
    """The sheet of both patterns' cups, two parts on the left, three on the right, a little apart."""
    spreads, left = [], 0.0
    for pattern, caption in ((two, "two parts"), (three, "three parts")):
        spread = cups_spread(pattern, _BESIDE, 0.0 if pattern is two else gap_above(pattern.steps) / 2)
        box = around([one.box for one in spread.laid])
        step = complex(left - box[0], -(box[1] + box[3]) / 2)
        spreads.append(_slid(spread, step, caption, f" of the cup of {caption}"))
        left += box[2] - box[0] + _BETWEEN
    frame = grown(around([one.box for spread in spreads for one in spread.laid]), _SPARE)
    told = "; ".join(f"{one.caption}: {', '.join(laid.piece.name for laid in one.laid)}" for one in spreads)
    return lifted_sheet(title, spreads, unit, frame, f"{title}. {told[0].upper()}{told[1:]}.")


def cups_spread(pattern, apart, swung, edges=True):
    """The `Spread` of a pattern's cups, lifted `apart` cm and the outer one swung up by `swung` degrees; without `edges`
    only the papers."""
    cups, seam, point = cups_of(pattern), pattern.steps.cup.seam, pattern.steps.darts.overbust.bust_point
    moves = [slid(-apart / 2 + 0j), turned_about(point, swung).then(slid(apart / 2 + 0j))]
    straight = tuple(moved(blend.before, move) for blend, move in zip((seam.inner_blend, seam.outer_blend), moves))
    if len(cups) == 3:
        # Lifted off the inner lower cup square to the cut, so that their edges stand clear of each other.
        cut = pattern.steps.three_part_cup
        off = unit_step(cut.cut_inner[-1].end - cut.front_end) * 1j
        moves.insert(0, slid((-0.5 + _OFF * off) * apart))
    laid = tuple(Laid(piece, move) for piece, move in zip(cups, moves))
    if not edges:
        return Spread(laid, (), {})
    seams = cup_seams(pattern)
    through = next(one for one in seams if len(one.sides[0]) == 1)
    named = ((through, seam.to_bust_point, "bust point"),) if seam.to_bust_point in through.marks else ()
    return Spread(laid, seams, owners_of(pattern.pieces), straight, named)


def _slid(spread, step, caption, mark):
    box = around([one.box for one in spread.laid])
    return Spread(tuple(one.then(step) for one in spread.laid), spread.seams, spread.owners,
                  tuple(moved(run, slid(step)) for run in spread.straight), spread.named, caption,
                  complex((box[0] + box[2]) / 2, 0) + step.real, mark)
