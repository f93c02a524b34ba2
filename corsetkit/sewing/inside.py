"""What comes behind the outside, from the back edges to the lining; last of all the eyelets, and the first lacing."""

from corsetkit.drawing.marks import seam_letter
from corsetkit.finish.bones import SPIRAL
from corsetkit.finish.choices import FOLDED
from corsetkit.pattern.edge import Kind
from corsetkit.sewing.stage import EYELETS, IRON, LACING, NEEDLE, PLIERS, STEEL, TRIED_ON, Move, Stage
from corsetkit.sewing.work import counted, letters, listed, long_length, named
from corsetkit.units import say_both


def back_edges(work):
    """The lacing edges faced, with the channels on both sides of the eyelets."""
    choices = work.choices
    lacing = tuple(piece for piece in work.shell if any(edge.kind is Kind.LACING for edge in piece.edges))
    if choices.facing == FOLDED:
        moves = [
            Move(
                f"Fold the allowance of the lacing edge of {listed(map(named, lacing))} to the inside along its "
                f"sewing line, {say_both(choices.facing_width)} wide, and press the fold sharp. It is the facing: a "
                "second firm layer for the eyelets to sit in.",
                (),
                lacing,
            )
        ]
    else:
        facings = [one for one in work.finished.strips if one.name.startswith("facing")]
        strips = [f"{counted(one.count, 'strip')} of {say_both(one.length)}" for one in facings]
        moves = [
            Move(
                f"The facing is a second firm layer for the eyelets to sit in: {listed(strips)}. Lay each on its "
                f"lacing edge ({listed(map(named, lacing))}), right sides together, sew the edge, turn the strip to "
                f"the inside and press the edge sharp. It is {say_both(choices.facing_width)} wide now.",
                (),
                lacing,
            )
        ]
    moves.append(Move("Lay the ends of the waist tape between facing and strength layer and sew them in."))
    moves += [
        Move(
            f"{_edge(work, bone)}: {counted(bone.count, 'channel')} of {say_both(bone.channel)}, through the facing.",
            (),
            lacing,
        )
        for bone in work.bill.bones
        if work.at_lacing(bone)
    ]
    moves.append(
        Move(
            "Leave the strip for the eyelets free of stitches: their middles will lie "
            f"{say_both(choices.eyelet_inset)} from the edge."
        )
    )
    return Stage("The back edges", tuple(moves), (NEEDLE, IRON))


def _edge(work, bone):
    return bone.place[0].upper() + bone.place[1:]


def bones(work):
    """Every bone of the bill, cut, tipped and put in."""
    choices = work.choices
    moves = [
        Move(
            f"Cut each bone {say_both(choices.bone_shorter)} shorter than its channel, both ends together, so that it "
            "does not push through the cloth when the corset bends. Spiral steel bends sideways and is for curved "
            "channels; flat steel is for straight ones. Cap or file every end."
        )
    ]
    moves += [
        Move(f"{_where(work, bone)}: {counted(bone.count, f'{bone.kind} bone')} of {say_both(bone.length)}.", bones=(bone,))
        for bone in work.bill.bones
    ]
    spirals = sum(bone.count for bone in work.bill.bones if bone.kind == SPIRAL)
    total = work.bill.bone_count
    moves.append(
        Move(
            f"That is {counted(total, 'bone')} in all, {spirals} spiral and {total - spirals} flat. Slide each up "
            "to the top of its channel and tack the lower end shut. No needle may hit one from now on: sew "
            "beside them, slowly."
        )
    )
    return Stage("The bones", tuple(moves), (STEEL, PLIERS, NEEDLE))


def _where(work, bone):
    if any(bone.on is seam for seam in work.pattern.seams):
        return f"Seam {seam_letter(bone.on.number)}, {bone.place}"
    return _edge(work, bone)


def top_edge(work):
    """The free edges above: turned in, or left for a binding."""
    edges = work.free_edges()
    turned = {name: width for name, width in edges.items() if width}
    bound = [name for name, width in edges.items() if not width]
    moves = []
    if turned:
        widths = [f"{_plain(name)} {say_both(width)}" for name, width in turned.items()]
        moves += [
            Move(
                f"Turn the allowance to the inside along the sewing line ({listed(widths)}), and tack it. Snip it on "
                "curves that bend inwards; cut small wedges out of it on those that bend outwards."
            ),
            Move("Sew it to the strength layer or to the seam allowances by hand, so that no stitch shows on the shell."),
        ]
    if bound:
        moves.append(
            Move(
                f"Without allowance, to be bound later: {listed(map(_plain, bound))}. Leave the edge raw until "
                "the lining is in, and sew a row of stitches along it, so that it does not stretch."
            )
        )
    moves.append(
        Move(
            "Try it on once more with its bones: the top edge lies close and does not cut in. What gapes is "
            "drawn in with a narrow tape along the edge."
        )
    )
    return Stage("The top edge", tuple(moves), (NEEDLE, TRIED_ON))


def _plain(name):
    return {"opening": "openings"}.get(name, name)


def lining(work):
    """The lining, the lower edge and the modesty panel."""
    hem = work.free_edges((Kind.HEM,)).get(Kind.HEM.value, 0.0)
    edges = {**work.free_edges(), "hem": hem}
    bound = [_plain(name) for name, width in edges.items() if not width]
    moves = [
        Move(
            f"Sew the lining as you sewed the shell, seams {letters(work.order.seams)}, without channels, and press it. "
            "Close the V at the centre front in it too."
            if _has_v(work)
            else f"Sew the lining as you sewed the shell, seams {letters(work.order.seams)}, without channels, and press it.",
            (),
            work.shell,
        ),
        Move(
            "Lay it into the corset, wrong sides together, seam on seam. Turn its edges in, a few threads short of the "
            "shell's, and fell it down by hand: small slanting stitches that catch the shell's allowance only. At the "
            "back fell it to the facing, clear of the eyelets."
        ),
        Move(
            f"Lower edge: turn the hem up by {say_both(hem)}, tack, and fell the lining to it. All channels are closed by it."
            if hem
            else "Lower edge: tack shell and lining together and bind it. All channels are closed by the binding."
        ),
    ]
    if others := [name for name in bound if name != "hem"]:
        moves.append(
            Move(f"Bind the {listed(others)}, shell and lining in one, with a strip of cloth cut slantwise to the grain.")
        )
    for piece in work.pattern.pieces:
        if piece.copied:
            moves.append(
                Move(
                    f"{named(piece)}: it lies behind the lacing, so that no skin shows in the gap. Lay shell and lining right "
                    "sides together, sew round and leave a hand's width open, turn it, press it, close it. Sew one long side "
                    f"to the lining of the left back, so that it reaches {say_both(work.pattern.style.modesty_overlap)} under "
                    "each side of the gap when laced; the other side stays free.",
                    (),
                    (piece,),
                )
            )
    return Stage("Lining, lower edge and modesty panel", tuple(moves), (NEEDLE, IRON))


def _has_v(work):
    return any(edge.kind is Kind.CENTRE_FRONT for piece in work.shell for edge in piece.edges)


def eyelets(work):
    """The eyelets of the bill, after the last fitting."""
    choices, bill = work.choices, work.bill
    moves = [
        Move(
            "Last fitting: lace it with the eyelet strips of the toile. Eyelets cannot be moved, so change now what "
            "is still to be changed."
        ),
        Move(
            "Try the tool on a scrap of the same layers: shell, strength layer and facing. Part the threads with an "
            "awl and widen the hole; a punch cuts the threads that should hold the eyelet."
        ),
    ]
    for one in bill.eyelets:
        waist = (
            f" The two pairs at the waist, {say_both(one.waist)} from the top, stand {say_both(choices.waist_spacing)} "
            "apart: the loops are pulled there."
            if one.waist is not None
            else ""
        )
        widest = max((b for b in one.spaces), default=0.0)
        moves.append(
            Move(
                f"{listed(one.names).capitalize()}: {counted(one.count, 'eyelet')} on each edge, {2 * one.count} in all, left "
                f"and right at the same heights, their middles {say_both(one.inset)} from the edge and from both ends, at "
                f"most {say_both(widest)} apart.{waist} Mark them from the list of places: {_places(one)}, measured from the "
                "top.",
                eyelets=(one,),
            )
        )
    moves.append(
        Move(
            f"That is {counted(bill.eyelet_count, 'eyelet')}. Count the pairs before you set the first one, and "
            "check each on the back: a sharp rim is set again or taken out, for it cuts the lacing."
        )
    )
    return Stage("Eyelets, after the last fitting", tuple(moves), (TRIED_ON, EYELETS))


def _places(one):
    return listed([say_both(place) for place in one.places])


def lacing(work):
    """Lacing it for the first time."""
    bill, gap = work.bill, work.pattern.style.lacing_gap
    passing = bill.passing
    on = (
        f"Open the lacing to {say_both(max(passing.gap, gap))}: so wide it goes on over {passing.over} without being unlaced. "
        "There is no front opening."
        if passing
        else "Open the lacing wide before it goes on. There is no front opening."
    )
    return Stage(
        "Lacing it for the first time",
        (
            Move(
                f"Cut {long_length(bill.lacing_open)} of lacing: so long that the corset can be opened without being unlaced. "
                f"Laced and worn it needs {long_length(bill.lacing_worn)}. Lace crosswise from the top to the waist and from "
                "the foot to the waist, and leave a loop on each side between the two waist pairs: one pulls on the loops."
            ),
            Move(on),
            Move(
                "Settle it first: waist at the waist, breasts lifted into the cups by hand from the side. Then draw the slack "
                "in from both ends towards the waist, a little and a little, both sides alike, and wait a few breaths each "
                "time."
            ),
            Move(
                "The first time stop well before it is as close as it will be worn, and keep it on for half an hour. The "
                f"cloth and the bones take the body's shape over several wearings. Worn, the gap is {say_both(gap)} and even; "
                "a V or an X means the girths need another look."
            ),
            Move("To take it off, open the lacing all the way before you slip it off."),
        ),
        (LACING,),
    )
