"""The lesson's smaller pictures: a hollow edge and its parallel, notches that meet, bones and eyelets."""

from dataclasses import dataclass, replace

from corsetkit.drawing.canvas import Sheet, tick
from corsetkit.drawing.lettering import around, grown
from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.pens import BEFORE, CUT_PAPER, FREE, GUIDE, NEW, SEWING, SEWN, SPOT, SPOT_TONE
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError
from corsetkit.finish.bill import bill
from corsetkit.finish.bones import FLAT, SPIRAL
from corsetkit.finish.lacing import beside_bone
from corsetkit.finish.notches import back_seams
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import slid
from corsetkit.quantity import declared, quantities
from corsetkit.teaching.lessons.finish.bones import bones_sheet
from corsetkit.teaching.lessons.finish.ready import Whole
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.close_up import Patch, Stroke, close_up
from corsetkit.teaching.shared.finished_drafts import Finishing
from corsetkit.teaching.shared.listed import listed
from corsetkit.units import Say, say_length
from corsetkit.words import words_of

WORDS = words_of("08_finish")

_APART = 1.6
"""From one square stroke to the next, cm along the edge."""


def hollow_sheet(piece, edge, width, widest, unit, title, description):
    """The sheet of a piece with the line `width` cm outside one of its edges; there is room for `widest` cm."""
    outline = paths.flattened(piece.path, 0.05)
    box = grown(around([(p.real, p.imag, p.real, p.imag) for p in outline]), widest + 0.6)
    scale = (box[3] - box[1]) / 11.0
    beside, square = parallel(edge, width)
    strokes = [Stroke(one.path, SEWN if one is edge else FREE, one.name) for one in piece.edges]
    if width > 1e-9:
        strokes.append(Stroke(tuple(Line(a, b) for a, b in square), GUIDE))
        strokes.append(Stroke(beside, NEW, WORDS("hollow_beside_edge", edge=edge.name), "new", 3))
    return close_up(
        title,
        description,
        box,
        scale,
        unit,
        [Patch(piece.path, CUT_PAPER)],
        strokes,
        key=(
            (SEWN, WORDS("hollow_key_edge", edge=edge.name)),
            (NEW, WORDS("hollow_key_beside")),
            (GUIDE, WORDS("hollow_key_square")),
        ),
    )


def parallel(edge, width, count=240):
    """The line `width` cm to the right of an edge as a run, and (from, to) of strokes square to the edge between the two."""
    length = edge.length
    stops = [length * i / count for i in range(count + 1)]
    points = [paths.point_along(edge.path, stop) for stop in stops]
    outs = [-1j * paths.tangent_along(edge.path, stop) * width for stop in stops]
    beside = [p + out for p, out in zip(points, outs)]
    every = max(1, round(count * _APART / length))
    square = [(points[i], beside[i]) for i in range(0, count + 1, every)]
    return tuple(Line(a, b) for a, b in zip(beside, beside[1:]) if a != b), square


_KEY = (
    (NEW, WORDS("notch_key_seam")),
    (GUIDE, WORDS("notch_key_meet")),
    (BEFORE, WORDS("cutting_line")),
    (SEWING, WORDS("notch_key_others")),
)


@dataclass(frozen=True)
class NotchPair:
    """One mark of a seam: how far from its start, cm, how many cuts it has, and its place on either side.

    `places` are (edge, cm along it, piece); `cut` says for either side whether a notch is cut there, or the piece's own
    corner is the mark.
    """

    seam: object
    at: float
    count: int
    places: tuple
    cut: tuple


def notch_pairs(finished):
    """All `NotchPair`s of a `Finished` pattern, in the order in which the seams are sewn."""
    pattern = finished.pattern
    backs = back_seams(pattern.pieces, getattr(pattern.steps, "block", None))
    there = {(id(one.edge), round(one.along, 4)) for piece in finished.pieces for one in piece.notches}
    found = []
    for seam in pattern.seams:
        for number, at in enumerate(seam.marks):
            places = tuple(seam.places(side)[number] for side in (0, 1))
            found.append(
                NotchPair(
                    seam,
                    at,
                    2 if seam.number in backs else 1,
                    tuple((edge, along, edge.piece) for edge, along in places),
                    tuple((id(edge), round(along, 4)) in there for edge, along in places),
                )
            )
    return tuple(found)


def notch_sheet(finished, pair, unit, title):
    """The whole pattern with both sides of the pair's seam and its two places lit."""
    whole = Whole(finished, title, _KEY)
    spots = [paths.point_along(edge.path, along) + whole.step(edge) for edge, along, _ in pair.places]

    def paint(canvas):
        whole.paint(canvas, unit, BEFORE)
        for number, side in enumerate(pair.seam.sides, 1):
            for edge in side:
                facts = {
                    "role": "new",
                    "name": WORDS("seam_of_piece", seam=pair.seam.name, piece=edge.piece.name),
                    "side": number,
                    "seam": f"{seam_letter(pair.seam.number)} lit",
                    "length": say_length(edge.length, unit),
                }
                canvas.line(paths.moved(edge.path, slid(whole.step(edge))), NEW, facts)
        tick(canvas, *spots, GUIDE)
        for at in spots:
            canvas.dot(at, 1.0, SPOT_TONE, SPOT)

    (_, _, first), (_, _, second) = pair.places
    told = WORDS(
        "notch_described", title=title, seam=pair.seam.name, first=first.name, second=second.name, at=say_length(pair.at, unit)
    )
    return Sheet(whole.low, whole.high, title, told, paint, whole.scale)


@dataclass(frozen=True)
class Lit:
    """Which notch is lit; the range is the pattern's own."""

    notch: int = declared(WORDS("notch_control"), unit="count", low=1, high=13, step=1, default=1)


def lit_among(drafts: Finishing):
    """The quantity of `Lit` for the desk's wearer; as it is declared where she cannot be drafted."""
    (one,) = quantities(Lit)
    try:
        pattern = drafts.pattern(drafts.now())[1]
    except CorsetkitError:
        # The table says why; meanwhile the slider is as it is declared.
        return (one,)
    return (replace(one, high=max(2, sum(len(seam.marks) for seam in pattern.seams))),)


def notch_picture(drafts: Finishing, values: dict) -> Picture:
    """The pattern with one pair of notches lit, for values of style and finish and the `notch` among them."""
    unit = drafts.desk.record.unit
    name, finished = drafts.finished(values)
    pairs = notch_pairs(finished)
    number = min(values.get("notch", 1), len(pairs))
    pair = pairs[number - 1]
    sheet = notch_sheet(finished, pair, unit, WORDS("notch_title", name=name))
    return Picture(svg_text(sheet), sheet.description, tuple(_notch_said(pair, number, pairs, unit)))


def _notch_said(pair, number, pairs, unit):
    seam = pair.seam
    yield WORDS(
        "notch_lies",
        number=number,
        count=len(pairs),
        letter=seam_letter(seam.number),
        seam=seam.name,
        at=say_length(pair.at, unit),
    )
    first, second = (piece.name for _, _, piece in pair.places)
    cuts = WORDS("notch_two_cuts" if pair.count == 2 else "notch_one_cut")
    cut, bare = (
        [piece.name for (_, _, piece), is_cut in zip(pair.places, pair.cut) if is_cut is wanted] for wanted in (True, False)
    )
    if not bare:
        yield WORDS("notch_on_both", first=first, second=second, cuts=cuts)
    elif cut:
        yield WORDS("notch_on_one", first=first, second=second, cut=cut[0], cuts=cuts, bare=bare[0])
    else:
        yield WORDS("notch_on_none", first=first, second=second)


def bones_picture(drafts: Finishing, values: dict) -> Picture:
    """Half the corset with bones and eyelets, for values of style and finish."""
    unit = drafts.desk.record.unit
    name, finished = drafts.finished(values)
    made = bill(finished)
    sheet = bones_sheet(finished, made, unit, WORDS("bones_title", name=name))
    warned = tuple(one for one in made.warnings if "front opening" not in one)
    return Picture(svg_text(sheet), sheet.description, tuple(_bones_said(made, finished.choices, unit)), warned)


def _bones_said(made, choices, unit):
    say = Say(unit)
    once = " ".join(WORDS("bones_once", number=number) for number, one in enumerate(made.bones, 1) if one.count == 1)
    yield WORDS("bones_some_once" if once else "bones_all_twice", count=made.bone_count, once=once)
    for kind in (SPIRAL, FLAT):
        if those := [
            f"{number} {one.place} {say(one.length)}" for number, one in enumerate(made.bones, 1) if one.kind == kind
        ]:
            yield WORDS("bones_of_kind", kind=kind.capitalize(), bones="; ".join(those))
    widest = max(made.bays, key=lambda bay: bay.left)
    yield WORDS("widest_without_bone", wide=say(widest.left), piece=widest.piece.name)
    counts = listed(str(one.count) for one in made.eyelets)
    spacing = max((max(one.spaces) for one in made.eyelets), default=0.0)
    yield WORDS("eyelets_apart", counts=counts, spacing=say(spacing))
    if beside_bone(choices) > 0:
        yield WORDS("eyelet_beside_bone", off=say(beside_bone(choices)))
