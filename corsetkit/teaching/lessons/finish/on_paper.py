"""Allowances and notches by hand with a ruler, and what the tape should read on paper that is ready to cut."""

from html import escape

from corsetkit.drawing.pens import BEFORE, GUIDE, NEW, SEWN
from corsetkit.drawing.step_sheet import Spot
from corsetkit.drawing.svg import svg_image, svg_text
from corsetkit.finish.choices import choice_of
from corsetkit.finish.notches import BETWEEN
from corsetkit.geometry.curve import Line
from corsetkit.pattern.edge import Kind
from corsetkit.teaching.lessons.finish.corner_folded import seam_corners, seam_ends
from corsetkit.teaching.lessons.finish.ready import width_at_waist
from corsetkit.teaching.on_paper import WIDEST
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared.close_up import Note, Stroke, close_up
from corsetkit.teaching.shared.finished_drafts import Finishing, read_or_refused
from corsetkit.units import Say, unbroken

_GROUPS = {
    "panel_allowance": "panel seams",
    "cup_allowance": "cup seams",
    "shoulder_allowance": "shoulders",
    "neckline_allowance": "neckline and openings",
    "armscye_allowance": "armscye",
    "top_allowance": "free top edges",
    "hem_allowance": "hem",
    "v_allowance": "V at the centre front",
    "lacing_allowance": "lacing edge",
    "facing_width": "lacing edge, folded back",
}
"""What people call the edges of each choice."""
_ENDS = 4
"""Of how many seam ends the corner is told in numbers."""


def allowance_groups(finished) -> dict:
    """The allowances that occur in a `Finished` pattern, by what people call the edges, cm."""
    found = {}
    for one in finished.pieces:
        for edge, width in zip(one.piece.edges, one.allowances):
            if name := choice_of(edge, finished.choices):
                found[_GROUPS[name]] = width
    return found


def by_hand(drafts: Finishing) -> Stored:
    """The allowances by hand, as numbered moves under a drawing of one corner."""
    return read_or_refused(lambda: _by_hand(drafts))


def _by_hand(drafts):
    name, finished = drafts.finished(drafts.now())
    unit = drafts.desk.record.unit
    say = Say(unit)
    pattern, choices = finished.pattern, finished.choices
    words, seam, (sharp, blunt) = seam_corners(pattern, choices, 1)[0]
    groups = allowance_groups(finished)
    widths = "; ".join(f"{edges} {say(width)}" for edges, width in groups.items() if width)
    bound = [edges for edges, width in groups.items() if not width]
    moves = [
        "Trace each piece on fresh paper: its sewing line, its grainline, and every notch as a stroke across the sewing line.",
        f"Set marks outside the sewing line, one every {say(2.54 if unit == 'in' else 2.5)} and nearer where the line bends. "
        f"Hold the ruler square to the line each time. The widths: {widths}.",
        "Join the marks: straight where the sewing line is straight, with the curve where it bends. On a fold draw nothing.",
    ]
    marks = len(moves) - 1
    if bound:
        moves.append(f"Draw nothing beside what is bound: {', '.join(bound)}.")
    sheet = _corner_by_hand(f"By hand for {name}: {words}", sharp, (marks, len(moves) + 1), say, unit)
    moves += [
        f"At a seam's end: fold the paper along the sewing line of the seam that is sewn first (here the {seam.name}), the "
        f"allowance under the piece. Cut both layers along the cutting line of the edge that is sewn later (here the "
        f"{sharp.later}), and unfold. Do so on the piece with the sharper corner: here the {sharp.piece.name}.",
        f"Lay the {sharp.piece.name} on the {blunt.piece.name}, right sides together, sewing line on sewing line, and copy "
        "the end of the allowance. So both end alike.",
        "Where two free edges meet, as hem and lacing edge do, carry both cutting lines on to where they meet. Cut a long "
        "point off, twice the allowance from the corner of the sewing lines.",
        f"Notches: at each mark, one cut from the edge inwards, {say(choices.notch_depth)} deep and never more than half the "
        f"allowance. In a seam between back pieces two cuts, {say(BETWEEN)} apart, evenly about the mark.",
        "Write on each piece: its number and name, how many of which cloth, and whether it lies on the fold.",
    ]
    opening = f"For {name}, in {'inches' if unit == 'in' else 'centimetres'}."
    items = "".join(f'<li style="margin-bottom:6px">{escape(one)}</li>' for one in moves)
    return Stored(
        f"{svg_image(svg_text(sheet), WIDEST)}<p>{opening}</p><ol>{items}</ol>",
        (sheet.description, opening, *(f"{number}. {one}" for number, one in enumerate(moves, 1))),
    )


def _corner_by_hand(title, corner, numbers, say, unit):
    """One corner with the marks that are set by hand, its seam drawn upright; `numbers` are those of the two moves, the one
    that sets marks and the one that folds and cuts."""
    seen, width, later = corner.seen, corner.width, corner.later_width
    marking, folding = numbers
    flap, cut, sewn = (tuple(Line(a, b) for a, b in lines) for lines in corner.lines)
    end = complex(width, -corner.reach())
    tip = min(corner.flap, key=lambda p: p.imag)
    along, below = (min((one.start for one in cut), key=lambda p: abs(p.real + share * seen)) for share in (0.72, 0.3))
    foot = min((one.start for one in sewn), key=lambda p: abs(p - along))
    level = 0.66 * seen
    # Between the two notes that stand in the same margin, whatever the corner.
    fold = 1j * max(0.12 * seen, (level + end.imag) / 2)
    low = min(p.imag for path in (flap, cut, sewn) for one in path for p in (one.start, one.end))
    box = (-seen, low - 0.1 * seen, width + 0.25 * seen, seen)
    scale = (box[3] - box[1]) / 9.0
    strokes = [
        Stroke(cut, NEW, f"cutting line of the {corner.later}", "new", 3),
        Stroke(flap, NEW, "cutting line of the seam", "new", 3),
        Stroke(sewn, BEFORE),
        Stroke((Line(0j, 1j * seen),), SEWN, "sewing line of the seam"),
        Stroke((Line(1j * level, complex(width, level)),), GUIDE),
        Stroke((Line(foot, along),), GUIDE),
    ]
    notes = [
        Note(complex(width, level), f"{marking}: {unbroken(say(width))} outside the seam"),
        Note(along, f"{marking}: {unbroken(say(later))} outside the {corner.later}", left=True),
        Note(fold, f"{folding}: fold here, the allowance under the piece"),
        Note(below, f"{folding}: cut here, through both layers", left=True),
        Note(end, f"{folding}: unfolded, the end lies here"),
    ]
    spots = [Spot(complex(width, level), ""), Spot(along, ""), Spot(end, ""), Spot(tip, "")]
    told = (
        f"{title}: the corner of the {corner.piece.name}. The seam's allowance is {say(width)}, that of the {corner.later} "
        f"{say(later)}; folded along the seam, both are cut along the line of the {corner.later}."
    )
    key = ((NEW, "cutting line"), (SEWN, "seam, sewn first"), (BEFORE, f"{corner.later}, sewn later"))
    return close_up(title, told, box, scale, unit, (), strokes, spots, notes, key)


def by_tape(drafts: Finishing) -> Stored:
    """What to measure on the paper before cloth is cut."""
    return read_or_refused(lambda: _by_tape(drafts))


def _by_tape(drafts):
    name, finished = drafts.finished(drafts.now())
    unit = drafts.desk.record.unit
    say = Say(unit)
    told, half = [], 0.0
    widths = "; ".join(f"{edges} {say(width)}" for edges, width in allowance_groups(finished).items() if width)
    told.append(f"From sewing line to cutting line, wherever you measure square to the line: {widths}.")
    ends = "; ".join(_end_words(seam, found, say) for seam, found in seam_ends(finished.pattern, finished.choices)[:_ENDS])
    told.append(
        f"Along the seam, from the corner of the sewing lines to where the outer border of the seam's allowance ends: {ends}."
    )
    for one in finished.pieces:
        if across := width_at_waist(one):
            half += across[0]
            told.append(f"{one.piece.number} {one.piece.name} at the waist: {say(across[0])} sewn, {say(across[1])} of paper.")
    style, girth = finished.pattern.style, finished.pattern.girths.get("waist")
    if girth and style:
        told.append(
            f"The sewn widths at the waist together are {say(half)}. Twice that and the lacing gap of "
            f"{say(style.lacing_gap)} are {say(girth.finished)}, the finished waist."
        )
    told.append(
        "Cuts for notches: "
        + "; ".join(
            f"{one.piece.name} {sum(n.count for n in one.notches if n.depth)}" for one in finished.pieces if one.notches
        )
        + "."
    )
    folded = [one.piece.name for one in finished.pieces if any(edge.kind is Kind.FOLD for edge in one.piece.edges)]
    told.append(f"On the fold no allowance: {', '.join(folded)}.")
    opening = f"For {name}, in {'inches' if unit == 'in' else 'centimetres'}."
    items = "".join(f"<li>{escape(one)}</li>" for one in told)
    return Stored(f"<p>{opening}</p><ul>{items}</ul>", (opening, *told))


def _end_words(seam, found, say):
    """Where the allowance of a seam ends at one end, as it is told of both its pieces."""
    (sharp, met), (blunt, _) = found
    where = "beyond it" if met.reach >= 0 else "before it"
    return f"{seam.name} at the {met.later.stroke.edge.name} ({sharp.name} and {blunt.name}), {say(abs(met.reach))} {where}"
