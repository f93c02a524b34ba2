"""The outside of the corset: cups, panels, channels, waist tape, and all that joins them."""

from corsetkit.drawing.marks import seam_letter
from corsetkit.pattern.edge import Kind
from corsetkit.sewing.stage import IRON, NEEDLE, PINS, TRIED_ON, Move, Stage
from corsetkit.sewing.work import counted, letters, named, seam_move
from corsetkit.units import say_both


def cups(work):
    """The cups: the seams between single parts first, then those that cross them."""
    moves = [
        Move(
            "All seams are sewn twice, on the left half and on the right half of the corset, with a few stitches "
            "back at both ends."
        )
    ]
    moves += [
        seam_move(
            work,
            seam,
            ""
            if number
            else "Snip the allowances of the curve to the depth of a few threads from the stitches, so that it can spread.",
        )
        for number, seam in enumerate(work.order.cups)
    ]
    moves.append(
        Move(
            "Press each seam open before another crosses it, over a tightly rolled towel: a cup pressed flat "
            "stays flat. Lay left and right cup on each other: they are alike."
        )
    )
    return Stage("The cups", tuple(moves), (PINS, NEEDLE, IRON))


def panels(work):
    """The panels of front and back, each from the centre to the side."""
    order = work.order
    moves = [
        *(seam_move(work, seam) for seam in (*order.front, *order.back)),
        Move(
            "Press each seam open, and snip its allowances at the waist where they pull. Front and back are still "
            "apart: the side seams come late, for they are where the corset is altered most easily."
        ),
    ]
    return Stage("The panels, from the centre to the side", tuple(moves), (PINS, IRON))


def channels(work):
    """The channels for the bones of front and back; those of side seam and lacing edge come when these are sewn."""
    choices = work.choices
    now = [bone for bone in work.bill.bones if not work.at_lacing(bone) and not work.at_side(bone)]
    moves = [
        Move(
            "A channel is a flat tube of strong tape, sewn to the inside, for a bone to slide in. All channels "
            f"together take {say_both(work.bill.channel_length)} of it. The bones are {say_both(choices.bone_width)} "
            f"wide, so two rows of stitches {say_both(work.bill.channel_width)} apart hold each: try one with a bone "
            "first."
        )
    ]
    moves += [
        Move(
            f"{_over(work, bone)}: {counted(bone.count, 'channel')} of {say_both(bone.channel)}.",
            (),
            bone.on.pieces if _is_seam(work, bone) else (bone.on,),
        )
        for bone in now
    ]
    moves.append(Move("Leave every channel open at its lower end. No channel crosses a cup."))
    return Stage("Channels for the bones", tuple(moves), (NEEDLE,))


def _is_seam(work, bone):
    return any(bone.on is seam for seam in work.pattern.seams)


def _over(work, bone):
    if _is_seam(work, bone):
        return f"Over seam {seam_letter(bone.on.number)}, {bone.on.name}"
    if any(bone.line == edge.path for edge in bone.on.edges if edge.kind is Kind.FOLD):
        return f"Down the centre front of {named(bone.on)}"
    return f"In {named(bone.on)}, upright"


def waist_tape(work):
    """The tape that takes the pull of the lacing at the waist."""
    tape = next((one for one in work.bill.strips if one.cloth == "tape"), None)
    if tape is None:
        return None
    return Stage(
        "The waist tape",
        (
            Move(
                f"The waist tape is {say_both(tape.width)} wide and {say_both(tape.length)} long: it does not give, so it "
                "takes the pull of the lacing and the cloth does not. Mark its middle."
            ),
            Move(
                "Pin its middle to the centre front on the inside, along the line of the waist, over the channels. It touches "
                "every waist notch of the front."
            ),
            Move(
                "Sew it down beside the channels and never across one: a bone must still slide through. Leave both ends loose "
                "at the side seams."
            ),
        ),
        (PINS,),
    )


def underbust(work):
    """The cups set into the front."""
    moves = [
        seam_move(
            work,
            seam,
            "Begin at the centre front, and pin and sew outwards to the armscye, the opening for "
            "the arm: first one "
            "cup, then the other. Where the curve is strong, tack it first: the cup is eased in, never "
            "stretched.",
        )
        for seam in work.order.underbust
    ]
    moves.append(
        Move(
            "Press the allowances down, towards the panels, and snip them where they pull. Close the upper ends "
            "of the front's channels with this seam: a bone ends below it."
        )
    )
    return Stage("Cups to the underbust line", tuple(moves), (PINS, IRON))


def side(work):
    """The side seams, tried on before they are sewn."""
    sewn = work.order.side
    if not sewn:
        return None
    bones = [bone for bone in work.bill.bones if work.at_side(bone)]
    moves = [
        Move(
            f"Tack {_seams(sewn)} with long stitches and the eyelet strips of the toile to the lacing edges. Put a "
            "few bones in, lace it and look at it as at the toile. Alter at the side seams, left and right alike."
        ),
        *(seam_move(work, seam, "Press it open.") for seam in sewn),
    ]
    moves += [
        Move(f"{_over(work, bone)}: {counted(bone.count, 'channel')} of {say_both(bone.channel)}.", (), bone.on.pieces)
        for bone in bones
    ]
    moves.append(
        Move(
            "Carry the waist tape on over the back, from waist notch to waist notch, sewn down beside the "
            "channels as before, and tack its ends to the lacing edges."
        )
    )
    return Stage("The side seams, late", tuple(moves), (PINS, IRON, TRIED_ON))


def yoke(work):
    """The yoke, tacked and looked at before it is sewn; None where there is none."""
    order = work.order
    sewn = (*order.back_yoke, *order.overbust, *order.shoulder)
    if not sewn:
        return None
    moves = [
        Move(
            f"Tack {_seams(sewn)} with long stitches, and try it on again. The yoke lies on the chest without pulling "
            "at the cups, and the arms come forward freely. Then sew each for good, one after the other."
        ),
        *(seam_move(work, seam) for seam in order.back_yoke),
    ]
    for seam in order.overbust:
        moves.append(seam_move(work, seam, "" if len(order.overbust) > 1 else "Begin at the centre front and sew outwards."))
    moves += [seam_move(work, seam, "Press it open.") for seam in order.shoulder]
    return Stage("The yoke", tuple(moves), (PINS, IRON, TRIED_ON))


def _seams(seams):
    return f"seam {letters(seams)}" if len(seams) == 1 else f"seams {letters(seams)}"


OUTSIDE = (cups, panels, channels, waist_tape, underbust, side, yoke)


def inside_out(work):
    """The stages of the outside in their order."""
    return tuple(stage for make in OUTSIDE if (stage := make(work)) is not None)
