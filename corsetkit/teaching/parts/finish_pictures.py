"""Notches that meet, bones and eyelets, and the test square: the lesson's smaller pictures."""

from dataclasses import dataclass, replace

from corsetkit.errors import CorsetkitError
from corsetkit.finish.bill import bill
from corsetkit.finish.bones import FLAT, SPIRAL
from corsetkit.finish.lacing import beside_bone
from corsetkit.quantity import declared, quantities
from corsetkit.showing.lessons.bones_sheet import bones_sheet
from corsetkit.drawing.marks import seam_letter
from corsetkit.showing.lessons.notch_pairs import notch_pairs, notch_sheet
from corsetkit.drawing.svg import svg_text
from corsetkit.teaching.parts.finishing import Finishing
from corsetkit.teaching.picture import Picture
from corsetkit.units import say_length


@dataclass(frozen=True)
class Lit:
    """Which notch is lit; the range is the pattern's own."""

    notch: int = declared("which notch is lit, counted seam by seam in the order of sewing", unit="count", low=1, high=13,
                          step=1, default=1)


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
    sheet = notch_sheet(finished, pair, unit, f"Notches, for {name}")
    return Picture(svg_text(sheet), sheet.description, tuple(_notch_said(pair, number, pairs, unit)))


def _notch_said(pair, number, pairs, unit):
    seam = pair.seam
    yield (f"Notch {number} of {len(pairs)}: seam {seam_letter(seam.number)}, {seam.name}, {say_length(pair.at, unit)} from its "
           "start along the sewing line.")
    (_, _, first), (_, _, second) = pair.places
    cuts = "two cuts beside each other, for only back pieces meet here" if pair.count == 2 else \
        "one cut, for a front piece is in this seam"
    met = f"The {first.name} meets the {second.name} there"
    cut, bare = ([piece.name for (_, _, piece), is_cut in zip(pair.places, pair.cut) if is_cut is wanted]
                 for wanted in (True, False))
    if not bare:
        yield f"{met}. Each is marked by {cuts}."
    elif cut:
        yield f"{met}. The {cut[0]} is marked by {cuts}; the {bare[0]} has its own corner there, and the corner is the mark."
    else:
        yield f"{met}. On both sides one piece ends and the next begins: the corners are the marks, and no notch is cut."


def bones_picture(drafts: Finishing, values: dict) -> Picture:
    """Half the corset with bones and eyelets, for values of style and finish."""
    unit = drafts.desk.record.unit
    name, finished = drafts.finished(values)
    made = bill(finished)
    sheet = bones_sheet(finished, made, unit, f"Bones and eyelets, for {name}")
    warned = tuple(one for one in made.warnings if "front opening" not in one)
    return Picture(svg_text(sheet), sheet.description, tuple(_bones_said(made, finished.choices, unit)), warned)


def _bones_said(made, choices, unit):
    say = lambda cm: say_length(cm, unit)  # noqa: E731
    once = "".join(f"number {number} once, in the middle, " for number, one in enumerate(made.bones, 1) if one.count == 1)
    others = "and each of the others" if once else "each of them"
    yield f"{made.bone_count} bones in the whole corset: {once}{others} left and right."
    for kind in (SPIRAL, FLAT):
        if those := [f"{number} {one.place} {say(one.length)}" for number, one in enumerate(made.bones, 1) if one.kind == kind]:
            yield f"{kind.capitalize()} bones, each with its length: {'; '.join(those)}."
    widest = max(made.bays, key=lambda bay: bay.left)
    yield f"The widest cloth without a bone at the waist is {say(widest.left)}, in the {widest.piece.name}."
    counts = " and ".join(str(one.count) for one in made.eyelets)
    spacing = max((max(one.spaces) for one in made.eyelets), default=0.0)
    yield f"{counts} eyelets down each lacing edge, at most {say(spacing)} apart."
    if beside_bone(choices) > 0:
        yield f"An eyelet's middle lies {say(beside_bone(choices))} from the channel in the lacing edge."
