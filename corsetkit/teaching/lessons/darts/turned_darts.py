"""What lesson 04 lays on the board: darts closed and opened about the bust point, in any order, about another pin."""

from dataclasses import dataclass, replace

from corsetkit.drawing.step_sheet import Spot
from corsetkit.drawing.svg import svg_text
from corsetkit.geometry.points import cross, heading, unit
from corsetkit.quantity import declared, quantities
from corsetkit.style import EIGHTH
from corsetkit.teaching.lessons.darts.front_parts import (
    CENTRE_FRONT,
    INNER_LOWER,
    INNER_UPPER,
    OUTER_LOWER,
    OUTER_UPPER,
    SIDE,
    TIGHTENING,
    UNDERBUST,
    apart,
    chart_said,
    degrees,
    front_parts,
)
from corsetkit.teaching.lessons.darts.fronts_sheet import Laying, frame_of, fronts_sheet
from corsetkit.teaching.picture import Picture
from corsetkit.units import CM_PER_INCH, say_length

ABOVE, BELOW, BOTH = "above", "below", "both"
_SHARES = {ABOVE: 1.0, BELOW: 0.0, BOTH: 0.5}
_SAME = 1e-6
"""Paper that lies this near to its place in another drawing, cm, lies in the same place but for rounding."""
_SEEN = 0.08
"""What is less than half a sixteenth of an inch, cm, is not worth a sentence."""
_AT_END = 0.06
"""A slider says degrees to a tenth: what is nearer than this to the dart's whole angle is meant to be all of it."""
NO_SIDE_DART = "this front has no side dart, so this slider moves nothing"


@dataclass(frozen=True)
class Turning:
    """How far the two darts still stand open, and which dart opens instead."""

    centre_front_open: float = declared(
        "how far the centre-front dart stands open; at 0 it is closed", unit="degrees", low=0, high=15, step=0.5, default=5.5
    )
    side_open: float = declared(
        "how far the side dart stands open; at 0 it is closed", unit="degrees", low=0, high=20, step=0.5, default=9.0
    )
    opens_instead: str = declared(
        "which dart takes what these two give up",
        unit="choice",
        choices=(ABOVE, BELOW, BOTH),
        choice_words=("tightening", "underbust", "both"),
        default=ABOVE,
    )


@dataclass(frozen=True)
class InTurn:
    """How far one dart after the other is closed."""

    turned_in_all: float = declared(
        "how far both darts together are closed, one after the other", unit="degrees", low=0, high=35, step=0.5, default=15.0
    )


@dataclass(frozen=True)
class PinBeside:
    """Where the pin stands about which the paper turns."""

    pin_beside: float = declared(
        "how far from the bust point the pin stands, towards the side",
        unit="cm",
        low=0,
        high=1.5 * CM_PER_INCH,
        step=EIGHTH,
        default=CM_PER_INCH,
    )


def offered(cls, steps):
    """The declared quantities of one of the classes above, their ends those of the wearer's darts, which begin half-way.

    `steps` is None where nothing can be drafted yet.
    """
    if steps is None:
        return quantities(cls)
    front, side = steps.overbust.front_dart, steps.block.side_dart
    ends = {"centre_front_open": front, "side_open": side, "turned_in_all": front + side}
    made = []
    for one in quantities(cls):
        if ends.get(one.name):
            # To a tenth, as it is said; `_within` goes the rest of the way.
            end = round(ends[one.name], 1)
            one = replace(one, high=end, default=round(end) / 2)
        elif one.name in ends:
            one = replace(one, meaning=NO_SIDE_DART)
        made.append(one)
    return tuple(made)


def style_among(cls, values):
    """Of a table's values those that are the class's own left out."""
    names = {one.name for one in quantities(cls)}
    return {name: value for name, value in values.items() if name not in names}


def chosen(cls, values, steps):
    """The class's own of a table's values, with this wearer's beginnings for what was not moved."""
    return cls(**{one.name: values.get(one.name, one.default) for one in offered(cls, steps)})


def turning_picture(title, steps, unit, turning):
    """The front with its darts as far open as `turning` says, the angles round the bust point beside it."""
    front = front_parts(steps)
    ends = steps.overbust.front_dart, steps.block.side_dart
    share = _SHARES[turning.opens_instead]
    still_open = turning.centre_front_open, turning.side_open
    moves = front.closed(*(end - _within(open_by, end) for open_by, end in zip(still_open, ends)), share)
    return turned_picture(title, front, moves, ends, unit)


def turned_picture(title, front, moves, ends, unit):
    """The front moved by `moves`, with the chart; `ends` are the two darts' angles, which fix the frame."""
    every = [front.closed(part * ends[0], part * ends[1], share) for part in (0, 0.5, 1) for share in (0, 1)]
    laying = Laying(moves, "", (Spot(front.point, "bust point"),), True, (front.across_mark(moves),))
    said = tuple(_turning_said(front, moves, ends, unit))
    description = f"{title}: {chart_said(front, moves)}."
    sheet = fronts_sheet(title, front, (laying,), frame_of(front, every), unit, description, True)
    return Picture(svg_text(sheet), sheet.description, said)


def _turning_said(front, moves, ends, unit):
    now = front.darts(moves)
    side = f"the side dart by {degrees(now[SIDE])}" if ends[1] else "and there is no side dart"
    yield f"The centre-front dart is open by {degrees(now[CENTRE_FRONT])} degrees, {side}."
    yield (
        f"The tightening dart is open by {degrees(now[TIGHTENING])} degrees, the underbust dart by {degrees(now[UNDERBUST])}."
    )
    same = "as before" if abs(sum(now) - sum(front.drawn)) < _AT_END else f"before {degrees(sum(front.drawn))}"
    yield (
        f"All darts together: {degrees(sum(now))} degrees, {same}. The paper between them: "
        f"{degrees(sum(part.angle for part in front.parts))} degrees."
    )
    wide = say_length(front.mark_width(moves), unit)
    yield f"At the dashed line, where the underbust line meets its legs, the underbust dart is {wide} wide."
    lean = abs(heading(moves[INNER_LOWER].turn))
    if lean:
        yield (
            f"The centre front leans by {degrees(lean)} degrees: the cloth of the long centre panel would no longer run "
            "straight down."
        )


def order_picture(title, steps, unit, turned):
    """Both orders side by side: both darts closed one after the other into the underbust dart, the centre front pinned."""
    front = front_parts(steps)
    ends = {CENTRE_FRONT: steps.overbust.front_dart, SIDE: steps.block.side_dart}
    whole = sum(ends.values())
    turned = _within(turned, whole)
    layings, tangents = [], []
    for first, second, words in ((CENTRE_FRONT, SIDE, "centre-front dart first"), (SIDE, CENTRE_FRONT, "side dart first")):
        done = min(turned, ends[first])
        rest = min(turned - done, ends[second])
        tangents.append({first: done, second: rest})
        moves = front.closed_in_turn(((first, done), (second, rest)))
        layings.append(Laying(moves, words, (Spot(front.point, "bust point"),)))
    every = [
        front.closed_in_turn(((CENTRE_FRONT, part * ends[CENTRE_FRONT]), (SIDE, part * ends[SIDE]))) for part in (0, 0.5, 1)
    ]
    every += [front.closed_in_turn(((CENTRE_FRONT, ends[CENTRE_FRONT]),)), front.closed_in_turn(((SIDE, ends[SIDE]),))]
    said = tuple(_order_said(front, layings, ends, tangents, turned, whole, unit))
    sheet = fronts_sheet(title, front, layings, frame_of(front, every), unit, f"{title}. {' '.join(said)}")
    return Picture(svg_text(sheet), sheet.description, said)


def _order_said(front, layings, ends, tangents, turned, whole, unit):
    yield f"Closed so far: {degrees(turned)} of {degrees(whole)} degrees."
    if not ends[SIDE]:
        yield (
            f"The centre-front dart is open by {degrees(ends[CENTRE_FRONT] - tangents[0][CENTRE_FRONT])} degrees. This front "
            "has no side dart, so there is one dart to close and only one order."
        )
    for place, tangent in zip(("left", "right"), tangents if ends[SIDE] else ()):
        yield (
            f"On the {place} the centre-front dart is open by {degrees(ends[CENTRE_FRONT] - tangent[CENTRE_FRONT])} degrees, "
            f"the side dart by {degrees(ends[SIDE] - tangent[SIDE])}."
        )
    far = apart(front, layings[0].moves, layings[1].moves)
    if far > _SAME:
        yield f"The two drawings differ: one corner lies {say_length(far, unit)} from its place in the other."
    else:
        yield "The two drawings are the same: no point of the paper lies elsewhere, not by a hair."


def pin_picture(title, steps, unit, beside):
    """Both darts closed about the bust point, and beside it about a pin that stands towards the side of it."""
    front, ends = front_parts(steps), (steps.overbust.front_dart, steps.block.side_dart)
    pin = front.point + beside
    right, mistaken = front.closed(*ends), front.closed(*ends, pin=pin)
    every = [right, front.closed(*ends, pin=front.point + quantities(PinBeside)[0].high), front.closed(0, 0)]
    words = f"about a pin {say_length(beside, unit)} beside it" if beside else "about the bust point too"
    spots = (Spot(pin, "pin"), Spot(front.point, "bust point")) if beside else (Spot(front.point, "pin"),)
    layings = (
        Laying(right, "about the bust point", (Spot(front.point, "pin"),), False),
        Laying(mistaken, words, spots, False),
    )
    said = tuple(_pin_said(front, mistaken, ends, beside, unit))
    sheet = fronts_sheet(title, front, layings, frame_of(front, every), unit, f"{title}. {' '.join(said)}")
    return Picture(svg_text(sheet), sheet.description, said)


def _pin_said(front, moves, ends, beside, unit):
    if not beside:
        yield "The pin stands in the bust point: the legs of each closed dart lie on each other from end to end."
        return
    yield (
        f"The pin stands {say_length(beside, unit)} from the bust point. Each part has turned by its dart's degrees, as it "
        "should."
    )
    for word, (dart, gap, along) in zip(("But", "And"), leg_gaps(front, moves, ends)):
        how = "stand apart" if gap > 0 else "overlap"
        shifted = f", and are shifted along each other by {say_length(along, unit)}" if along > _SEEN else ""
        yield f"{word} the legs of the {dart} {how} by {say_length(abs(gap), unit)} from end to end{shifted}."
    yield "Cut like this, a gap adds cloth that nobody measured, and an overlap takes cloth from the cup."


def leg_gaps(front, moves, ends):
    """For each closed dart: its name, how far its legs stand apart (below zero where the paper lies double), and how far
    they are shifted along each other, cm. They are parallel, for the part has turned by the dart's whole angle."""
    found = []
    for dart, end, turned, still, sign in (
        ("centre-front dart", ends[0], INNER_UPPER, front.parts[INNER_LOWER].legs[0], -1),
        ("side dart", ends[1], OUTER_UPPER, front.parts[OUTER_LOWER].legs[1], 1),
    ):
        if end:
            off = moves[turned](front.point) - front.point
            tangent = unit(still)
            found.append((dart, sign * cross(tangent, off), abs((off * tangent.conjugate()).real)))
    return tuple(found)


def _within(value, end):
    """A slider's value on this wearer's dart: the whole of it where no more than a pencil's line is missing."""
    return end if value > end - _AT_END else value
