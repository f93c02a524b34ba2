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
from corsetkit.words import words_of

WORDS = words_of("08_finish")
SHARED = words_of("shared")

_ENDS = 4
"""Of how many seam ends the corner is told in numbers."""


def allowance_groups(finished) -> dict:
    """The allowances that occur in a `Finished` pattern, by what people call the edges, cm."""
    found = {}
    for one in finished.pieces:
        for edge, width in zip(one.piece.edges, one.allowances):
            if name := choice_of(edge, finished.choices):
                found[WORDS(f"edges_{name}")] = width
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
    bound = [edges for edges, width in groups.items() if not width]
    moves = [
        WORDS("hand_trace"),
        WORDS("hand_marks", every=say(2.54 if unit == "in" else 2.5), widths=_widths_said(groups, say)),
        WORDS("hand_join"),
    ]
    marks = len(moves) - 1
    if bound:
        moves.append(WORDS("hand_bound", edges=", ".join(bound)))
    title = WORDS("hand_title", name=name, corner=words)
    sheet = _corner_by_hand(title, sharp, (marks, len(moves) + 1), say, unit)
    moves += [
        WORDS("hand_fold", seam=seam.name, later=sharp.later, piece=sharp.piece.name),
        WORDS("hand_copy", piece=sharp.piece.name, other=blunt.piece.name),
        WORDS("hand_free_edges"),
        WORDS("hand_notches", deep=say(choices.notch_depth), apart=say(BETWEEN)),
        WORDS("hand_write"),
    ]
    opening = SHARED(f"hand_for_{unit}", name=name)
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
        Stroke(cut, NEW, WORDS("hand_cut_later", later=corner.later), "new", 3),
        Stroke(flap, NEW, WORDS("hand_cut_seam"), "new", 3),
        Stroke(sewn, BEFORE),
        Stroke((Line(0j, 1j * seen),), SEWN, WORDS("hand_sewn_seam")),
        Stroke((Line(1j * level, complex(width, level)),), GUIDE),
        Stroke((Line(foot, along),), GUIDE),
    ]
    notes = [
        Note(complex(width, level), WORDS("note_seam", move=marking, width=unbroken(say(width)))),
        Note(along, WORDS("note_later", move=marking, width=unbroken(say(later)), later=corner.later), left=True),
        Note(fold, WORDS("note_fold", move=folding)),
        Note(below, WORDS("note_cut", move=folding), left=True),
        Note(end, WORDS("note_end", move=folding)),
    ]
    spots = [Spot(complex(width, level), ""), Spot(along, ""), Spot(end, ""), Spot(tip, "")]
    told = WORDS(
        "hand_described", title=title, piece=corner.piece.name, width=say(width), later=corner.later, later_width=say(later)
    )
    key = (
        (NEW, WORDS("cutting_line")),
        (SEWN, WORDS("key_sewn_first")),
        (BEFORE, WORDS("key_sewn_later", later=corner.later)),
    )
    return close_up(title, told, box, scale, unit, (), strokes, spots, notes, key)


def by_tape(drafts: Finishing) -> Stored:
    """What to measure on the paper before cloth is cut."""
    return read_or_refused(lambda: _by_tape(drafts))


def _by_tape(drafts):
    name, finished = drafts.finished(drafts.now())
    unit = drafts.desk.record.unit
    say = Say(unit)
    told, half = [], 0.0
    told.append(WORDS("tape_widths", widths=_widths_said(allowance_groups(finished), say)))
    ends = "; ".join(_end_words(seam, found, say) for seam, found in seam_ends(finished.pattern, finished.choices)[:_ENDS])
    told.append(WORDS("tape_ends", ends=ends))
    for one in finished.pieces:
        if across := width_at_waist(one):
            half += across[0]
            told.append(
                WORDS("tape_waist", number=one.piece.number, piece=one.piece.name, sewn=say(across[0]), paper=say(across[1]))
            )
    style, girth = finished.pattern.style, finished.pattern.girths.get("waist")
    if girth and style:
        told.append(WORDS("tape_waist_in_all", half=say(half), gap=say(style.lacing_gap), finished=say(girth.finished)))
    counts = "; ".join(
        f"{one.piece.name} {sum(n.count for n in one.notches if n.depth)}" for one in finished.pieces if one.notches
    )
    told.append(WORDS("tape_notches", counts=counts))
    folded = [one.piece.name for one in finished.pieces if any(edge.kind is Kind.FOLD for edge in one.piece.edges)]
    told.append(WORDS("tape_fold", pieces=", ".join(folded)))
    opening = SHARED(f"hand_for_{unit}", name=name)
    items = "".join(f"<li>{escape(one)}</li>" for one in told)
    return Stored(f"<p>{opening}</p><ul>{items}</ul>", (opening, *told))


def _end_words(seam, found, say):
    """Where the allowance of a seam ends at one end, as it is told of both its pieces."""
    (sharp, met), (blunt, _) = found
    return WORDS(
        "end_beyond" if met.reach >= 0 else "end_before",
        seam=seam.name,
        later=met.later.stroke.edge.name,
        sharp=sharp.name,
        blunt=blunt.name,
        reach=say(abs(met.reach)),
    )


def _widths_said(groups, say):
    return "; ".join(f"{edges} {say(width)}" for edges, width in groups.items() if width)
