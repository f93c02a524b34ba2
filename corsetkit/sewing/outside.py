"""The outside of the corset: cups, panels, channels, waist tape, and all that joins them."""

from corsetkit.drawing.marks import seam_letter
from corsetkit.pattern.edge import Kind
from corsetkit.sewing.stage import IRON, NEEDLE, PINS, TRIED_ON, Move, Stage
from corsetkit.sewing.work import letters, named, seam_move
from corsetkit.units import say_both
from corsetkit.words import words_of

WORDS = words_of("sewing")


def cups(work):
    """The cups: the seams between single parts first, then those that cross them."""
    moves = [
        Move(WORDS("cups_twice")),
        *(seam_move(work, seam, "" if number else WORDS("cups_snip")) for number, seam in enumerate(work.order.cups)),
        Move(WORDS("cups_press")),
    ]
    return Stage(WORDS("cups"), tuple(moves), (PINS, NEEDLE, IRON))


def panels(work):
    """The panels of front and back, each from the centre to the side."""
    order = work.order
    moves = [*(seam_move(work, seam) for seam in (*order.front, *order.back)), Move(WORDS("panels_press"))]
    return Stage(WORDS("panels"), tuple(moves), (PINS, IRON))


def channels(work):
    """The channels for the bones of front and back; those of side seam and lacing edge come when these are sewn."""
    tape, apart = say_both(work.bill.channel_length), say_both(work.bill.channel_width)
    now = [bone for bone in work.bill.bones if not work.at_lacing(bone) and not work.at_side(bone)]
    moves = [
        Move(WORDS("channels_tape", tape=tape, bone=say_both(work.choices.bone_width), apart=apart)),
        *(_channel_move(work, bone) for bone in now),
        Move(WORDS("channels_open")),
    ]
    return Stage(WORDS("channels"), tuple(moves), (NEEDLE,))


def _channel_move(work, bone):
    length = say_both(bone.channel)
    if work.at_seam(bone):
        letter = seam_letter(bone.on.number)
        text = WORDS.counted("channel_seam", bone.count, letter=letter, name=bone.on.name, length=length)
        return Move(text, (), bone.on.pieces)
    on_fold = any(bone.line == edge.path for edge in bone.on.edges if edge.kind is Kind.FOLD)
    text = WORDS.counted("channel_fold" if on_fold else "channel_upright", bone.count, name=named(bone.on), length=length)
    return Move(text, (), (bone.on,))


def waist_tape(work):
    """The tape that takes the pull of the lacing at the waist."""
    tape = next((one for one in work.bill.strips if one.cloth == "tape"), None)
    if tape is None:
        return None
    moves = (
        Move(WORDS("tape_long", width=say_both(tape.width), length=say_both(tape.length))),
        Move(WORDS("tape_pin")),
        Move(WORDS("tape_sew")),
    )
    return Stage(WORDS("waist_tape"), moves, (PINS,))


def underbust(work):
    """The cups set into the front."""
    moves = [*(seam_move(work, seam, WORDS("underbust_sew")) for seam in work.order.underbust), Move(WORDS("underbust_press"))]
    return Stage(WORDS("underbust"), tuple(moves), (PINS, IRON))


def side(work):
    """The side seams, tried on before they are sewn."""
    sewn = work.order.side
    if not sewn:
        return None
    moves = [
        Move(WORDS("side_tack", seams=_seams(sewn))),
        *(seam_move(work, seam, WORDS("press_open")) for seam in sewn),
        *(_channel_move(work, bone) for bone in work.bill.bones if work.at_side(bone)),
        Move(WORDS("side_tape")),
    ]
    return Stage(WORDS("side"), tuple(moves), (PINS, IRON, TRIED_ON))


def yoke(work):
    """The yoke, tacked and looked at before it is sewn; None where there is none."""
    order = work.order
    sewn = (*order.back_yoke, *order.overbust, *order.shoulder)
    if not sewn:
        return None
    outwards = "" if len(order.overbust) > 1 else WORDS("yoke_outwards")
    moves = [
        Move(WORDS("yoke_tack", seams=_seams(sewn))),
        *(seam_move(work, seam) for seam in order.back_yoke),
        *(seam_move(work, seam, outwards) for seam in order.overbust),
        *(seam_move(work, seam, WORDS("press_open")) for seam in order.shoulder),
    ]
    return Stage(WORDS("yoke"), tuple(moves), (PINS, IRON, TRIED_ON))


def _seams(seams):
    return WORDS.counted("seams", len(seams), letters=letters(seams))


OUTSIDE = (cups, panels, channels, waist_tape, underbust, side, yoke)


def inside_out(work):
    """The stages of the outside in their order."""
    return tuple(stage for make in OUTSIDE if (stage := make(work)) is not None)
