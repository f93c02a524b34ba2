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
from corsetkit.words import words_of

WORDS = words_of("04_darts")
SHARED = words_of("shared")

ABOVE, BELOW, BOTH = "above", "below", "both"
_SHARES = {ABOVE: 1.0, BELOW: 0.0, BOTH: 0.5}
_SAME = 1e-6
"""Paper that lies this near to its place in another drawing, cm, lies in the same place but for rounding."""
_SEEN = 0.08
"""What is less than half a sixteenth of an inch, cm, is not worth a sentence."""
_AT_END = 0.06
"""A slider says degrees to a tenth: what is nearer than this to the dart's whole angle is meant to be all of it."""
NO_SIDE_DART = WORDS("no_side_dart")


@dataclass(frozen=True)
class Turning:
    """How far the two darts still stand open, and which dart opens instead."""

    centre_front_open: float = declared(WORDS("centre_front_open"), unit="degrees", low=0, high=15, step=0.5, default=5.5)
    side_open: float = declared(WORDS("side_open"), unit="degrees", low=0, high=20, step=0.5, default=9.0)
    opens_instead: str = declared(
        WORDS("opens_instead"),
        unit="choice",
        choices=(ABOVE, BELOW, BOTH),
        choice_words=(WORDS("instead_tightening"), WORDS("instead_underbust"), WORDS("instead_both")),
        default=ABOVE,
    )


@dataclass(frozen=True)
class InTurn:
    """How far one dart after the other is closed."""

    turned_in_all: float = declared(WORDS("turned_in_all"), unit="degrees", low=0, high=35, step=0.5, default=15.0)


@dataclass(frozen=True)
class PinBeside:
    """Where the pin stands about which the paper turns."""

    pin_beside: float = declared(
        WORDS("pin_beside"), unit="cm", low=0, high=1.5 * CM_PER_INCH, step=EIGHTH, default=CM_PER_INCH
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
    laying = Laying(moves, "", (Spot(front.point, SHARED("bust_point")),), True, (front.across_mark(moves),))
    said = tuple(_turning_said(front, moves, ends, unit))
    description = f"{title}: {chart_said(front, moves)}."
    sheet = fronts_sheet(title, front, (laying,), frame_of(front, every), unit, description, True)
    return Picture(svg_text(sheet), sheet.description, said)


def _turning_said(front, moves, ends, unit):
    now = front.darts(moves)
    side = WORDS("closed_side", angle=degrees(now[SIDE])) if ends[1] else WORDS("closed_no_side")
    yield WORDS("turning_open", angle=degrees(now[CENTRE_FRONT]), side=side)
    yield WORDS("turning_others", tightening=degrees(now[TIGHTENING]), underbust=degrees(now[UNDERBUST]))
    same = (
        WORDS("turning_same")
        if abs(sum(now) - sum(front.drawn)) < _AT_END
        else WORDS("turning_before", before=degrees(sum(front.drawn)))
    )
    yield WORDS("turning_all", all=degrees(sum(now)), same=same, paper=degrees(sum(part.angle for part in front.parts)))
    wide = say_length(front.mark_width(moves), unit)
    yield WORDS("turning_wide", wide=wide)
    lean = abs(heading(moves[INNER_LOWER].turn))
    if lean:
        yield WORDS("turning_leans", angle=degrees(lean))


def order_picture(title, steps, unit, turned):
    """Both orders side by side: both darts closed one after the other into the underbust dart, the centre front pinned."""
    front = front_parts(steps)
    ends = {CENTRE_FRONT: steps.overbust.front_dart, SIDE: steps.block.side_dart}
    whole = sum(ends.values())
    turned = _within(turned, whole)
    layings, tangents = [], []
    for first, second, words in (
        (CENTRE_FRONT, SIDE, WORDS("order_centre_first")),
        (SIDE, CENTRE_FRONT, WORDS("order_side_first")),
    ):
        done = min(turned, ends[first])
        rest = min(turned - done, ends[second])
        tangents.append({first: done, second: rest})
        moves = front.closed_in_turn(((first, done), (second, rest)))
        layings.append(Laying(moves, words, (Spot(front.point, SHARED("bust_point")),)))
    every = [
        front.closed_in_turn(((CENTRE_FRONT, part * ends[CENTRE_FRONT]), (SIDE, part * ends[SIDE]))) for part in (0, 0.5, 1)
    ]
    every += [front.closed_in_turn(((CENTRE_FRONT, ends[CENTRE_FRONT]),)), front.closed_in_turn(((SIDE, ends[SIDE]),))]
    said = tuple(_order_said(front, layings, ends, tangents, turned, whole, unit))
    sheet = fronts_sheet(title, front, layings, frame_of(front, every), unit, f"{title}. {' '.join(said)}")
    return Picture(svg_text(sheet), sheet.description, said)


def _order_said(front, layings, ends, tangents, turned, whole, unit):
    yield WORDS("order_so_far", done=degrees(turned), whole=degrees(whole))
    if not ends[SIDE]:
        yield WORDS("order_one_dart", open=degrees(ends[CENTRE_FRONT] - tangents[0][CENTRE_FRONT]))
    for place, tangent in zip((SHARED("left"), SHARED("right")), tangents if ends[SIDE] else ()):
        yield WORDS(
            "order_on",
            place=place,
            centre=degrees(ends[CENTRE_FRONT] - tangent[CENTRE_FRONT]),
            side=degrees(ends[SIDE] - tangent[SIDE]),
        )
    far = apart(front, layings[0].moves, layings[1].moves)
    if far > _SAME:
        yield WORDS("order_differ", apart=say_length(far, unit))
    else:
        yield WORDS("order_same")


def pin_picture(title, steps, unit, beside):
    """Both darts closed about the bust point, and beside it about a pin that stands towards the side of it."""
    front, ends = front_parts(steps), (steps.overbust.front_dart, steps.block.side_dart)
    pin = front.point + beside
    right, mistaken = front.closed(*ends), front.closed(*ends, pin=pin)
    every = [right, front.closed(*ends, pin=front.point + quantities(PinBeside)[0].high), front.closed(0, 0)]
    words = WORDS("pin_beside_it", beside=say_length(beside, unit)) if beside else WORDS("pin_there_too")
    spots = (
        (Spot(pin, WORDS("pin")), Spot(front.point, SHARED("bust_point"))) if beside else (Spot(front.point, WORDS("pin")),)
    )
    layings = (
        Laying(right, WORDS("pin_there"), (Spot(front.point, WORDS("pin")),), False),
        Laying(mistaken, words, spots, False),
    )
    said = tuple(_pin_said(front, mistaken, ends, beside, unit))
    sheet = fronts_sheet(title, front, layings, frame_of(front, every), unit, f"{title}. {' '.join(said)}")
    return Picture(svg_text(sheet), sheet.description, said)


def _pin_said(front, moves, ends, beside, unit):
    if not beside:
        yield WORDS("pin_right")
        return
    yield WORDS("pin_stands", beside=say_length(beside, unit))
    for word, (dart, gap, along) in zip((WORDS("pin_but"), WORDS("pin_and")), leg_gaps(front, moves, ends)):
        yield WORDS(
            "pin_legs_and_shifted" if along > _SEEN else "pin_legs",
            word=word,
            dart=dart,
            how=WORDS("pin_apart" if gap > 0 else "pin_overlap"),
            gap=say_length(abs(gap), unit),
            along=say_length(along, unit),
        )
    yield WORDS("pin_cut")


def leg_gaps(front, moves, ends):
    """For each closed dart: its name, how far its legs stand apart (below zero where the paper lies double), and how far
    they are shifted along each other, cm. They are parallel, for the part has turned by the dart's whole angle."""
    found = []
    for dart, end, turned, still, sign in (
        (SHARED("centre_front_dart"), ends[0], INNER_UPPER, front.parts[INNER_LOWER].legs[0], -1),
        (SHARED("side_dart"), ends[1], OUTER_UPPER, front.parts[OUTER_LOWER].legs[1], 1),
    ):
        if end:
            off = moves[turned](front.point) - front.point
            tangent = unit(still)
            found.append((dart, sign * cross(tangent, off), abs((off * tangent.conjugate()).real)))
    return tuple(found)


def _within(value, end):
    """A slider's value on this wearer's dart: the whole of it where no more than a pencil's line is missing."""
    return end if value > end - _AT_END else value
