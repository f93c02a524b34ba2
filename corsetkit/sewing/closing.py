"""Last of all: the eyelets, once nothing will be altered any more, and the first lacing."""

from corsetkit.units import say_both
from corsetkit.sewing.cautions import EYELETS, LACING, TRIED_ON
from corsetkit.sewing.stage import Move, Stage
from corsetkit.sewing.work import counted, listed, long_length


def eyelets(work):
    """The eyelets of the bill, after the last fitting."""
    choices, bill = work.choices, work.bill
    moves = [Move("Last fitting: lace it with the eyelet strips of the toile. Eyelets cannot be moved, so change now what "
                  "is still to be changed."),
             Move("Try the tool on a scrap of the same layers: shell, strength layer and facing. Part the threads with an "
                  "awl and widen the hole; a punch cuts the threads that should hold the eyelet.")]
    for one in bill.eyelets:
        waist = (f" The two pairs at the waist, {say_both(one.waist)} from the top, stand {say_both(choices.waist_spacing)} "
                 "apart: the loops are pulled there." if one.waist is not None else "")
        widest = max((b for b in one.spaces), default=0.0)
        moves.append(Move(
            f"{listed(one.names).capitalize()}: {counted(one.count, 'eyelet')} on each edge, {2 * one.count} in all, left "
            f"and right at the same heights, their middles {say_both(one.inset)} from the edge and from both ends, at most "
            f"{say_both(widest)} apart.{waist} Mark them from the list of places: {_places(one)}, measured from the "
            "top.", eyelets=(one,)))
    moves.append(Move(f"That is {counted(bill.eyelet_count, 'eyelet')}. Count the pairs before you set the first one, and "
                      "check each on the back: a sharp rim is set again or taken out, for it cuts the lacing."))
    return Stage("Eyelets, after the last fitting", tuple(moves), (TRIED_ON, EYELETS))


def _places(one):
    return listed([say_both(place) for place in one.places])


def lacing(work):
    """Lacing it for the first time."""
    bill, gap = work.bill, work.pattern.style.lacing_gap
    way = bill.passing
    on = (f"Open the lacing to {say_both(max(way.gap, gap))}: so wide it goes on over {way.over} without being unlaced. "
          "There is no front opening." if way else "Open the lacing wide before it goes on. There is no front opening.")
    return Stage("Lacing it for the first time", (
        Move(f"Cut {long_length(bill.lacing_open)} of lacing: so long that the corset can be opened without being unlaced. "
             f"Laced and worn it needs {long_length(bill.lacing_worn)}. Lace crosswise from the top to the waist and from "
             "the foot to the waist, and leave a loop on each side between the two waist pairs: one pulls on the loops."),
        Move(on),
        Move("Settle it first: waist at the waist, breasts lifted into the cups by hand from the side. Then draw the slack "
             "in from both ends towards the waist, a little and a little, both sides alike, and wait a few breaths each "
             "time."),
        Move("The first time stop well before it is as close as it will be worn, and keep it on for half an hour. The "
             f"cloth and the bones take the body's shape over several wearings. Worn, the gap is {say_both(gap)} and even; "
             "a V or an X means the girths need another look."),
        Move("To take it off, open the lacing all the way before you slip it off."),
    ), (LACING,))
