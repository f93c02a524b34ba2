"""What comes behind the outside: the back edges, the bones, the top edge, the lining and the modesty panel."""

from corsetkit.finish.choices import FOLDED
from corsetkit.finish.bones import SPIRAL
from corsetkit.pattern.edge import Kind
from corsetkit.drawing.marks import seam_letter
from corsetkit.units import say_both
from corsetkit.sewing.cautions import IRON, NEEDLE, PLIERS, STEEL, TRIED_ON
from corsetkit.sewing.stage import Move, Stage
from corsetkit.sewing.work import counted, letters, listed, named


def back_edges(work):
    """The lacing edges faced, with the channels on both sides of the eyelets."""
    choices = work.choices
    lacing = tuple(piece for piece in work.shell if any(edge.kind is Kind.LACING for edge in piece.edges))
    if choices.facing == FOLDED:
        moves = [Move(f"Fold the allowance of the lacing edge of {listed(map(named, lacing))} to the inside along its "
                      f"sewing line, {say_both(choices.facing_width)} wide, and press the fold sharp. It is the facing: a "
                      "second firm layer for the eyelets to sit in.", (), lacing)]
    else:
        facings = [one for one in work.finished.strips if one.name.startswith("facing")]
        strips = [f"{counted(one.count, 'strip')} of {say_both(one.length)}" for one in facings]
        moves = [Move(f"The facing is a second firm layer for the eyelets to sit in: {listed(strips)}. Lay each on its "
                      f"lacing edge ({listed(map(named, lacing))}), right sides together, sew the edge, turn the strip to "
                      f"the inside and press the edge sharp. It is {say_both(choices.facing_width)} wide now.", (), lacing)]
    moves.append(Move("Lay the ends of the waist tape between facing and strength layer and sew them in."))
    moves += [Move(f"{_edge(work, bone)}: {counted(bone.count, 'channel')} of {say_both(bone.channel)}, through the facing.",
                   (), lacing) for bone in work.bill.bones if work.at_lacing(bone)]
    moves.append(Move("Leave the strip for the eyelets free of stitches: their middles will lie "
                      f"{say_both(choices.eyelet_inset)} from the edge."))
    return Stage("The back edges", tuple(moves), (NEEDLE, IRON))


def _edge(work, bone):
    return bone.place[0].upper() + bone.place[1:]


def bones(work):
    """Every bone of the bill, cut, tipped and put in."""
    choices = work.choices
    moves = [Move(f"Cut each bone {say_both(choices.bone_shorter)} shorter than its channel, both ends together, so that it "
                  "does not push through the cloth when the corset bends. Spiral steel bends sideways and is for curved "
                  "channels; flat steel is for straight ones. Cap or file every end.")]
    moves += [Move(f"{_where(work, bone)}: {counted(bone.count, f'{bone.kind} bone')} of "
                   f"{say_both(bone.length)}.", bones=(bone,))
              for bone in work.bill.bones]
    spirals = sum(bone.count for bone in work.bill.bones if bone.kind == SPIRAL)
    total = work.bill.bone_count
    moves.append(Move(f"That is {counted(total, 'bone')} in all, {spirals} spiral and {total - spirals} flat. Slide each up "
                      "to the top of its channel and tack the lower end shut. No needle may hit one from now on: sew "
                      "beside them, slowly."))
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
            Move(f"Turn the allowance to the inside along the sewing line ({listed(widths)}), and tack it. Snip it on "
                 "curves that bend inwards; cut small wedges out of it on those that bend outwards."),
            Move("Sew it to the strength layer or to the seam allowances by hand, so that no stitch shows on the shell."),
        ]
    if bound:
        moves.append(Move(f"Without allowance, to be bound later: {listed(map(_plain, bound))}. Leave the edge raw until "
                          "the lining is in, and sew a row of stitches along it, so that it does not stretch."))
    moves.append(Move("Try it on once more with its bones: the top edge lies close and does not cut in. What gapes is "
                      "drawn in with a narrow tape along the edge."))
    return Stage("The top edge", tuple(moves), (NEEDLE, TRIED_ON))


def _plain(name):
    return {"opening": "openings"}.get(name, name)


def lining(work):
    """The lining, the lower edge and the modesty panel."""
    hem = work.free_edges((Kind.HEM,)).get(Kind.HEM.value, 0.0)
    edges = {**work.free_edges(), "hem": hem}
    bound = [_plain(name) for name, width in edges.items() if not width]
    moves = [
        Move(f"Sew the lining as you sewed the shell, seams {letters(work.order.seams)}, without channels, and press it. "
             "Close the V at the centre front in it too." if _has_v(work) else
             f"Sew the lining as you sewed the shell, seams {letters(work.order.seams)}, without channels, and press "
             "it.", (),
             work.shell),
        Move("Lay it into the corset, wrong sides together, seam on seam. Turn its edges in, a few threads short of the "
             "shell's, and fell it down by hand: small slanting stitches that catch the shell's allowance only. At the "
             "back fell it to the facing, clear of the eyelets."),
        Move(f"Lower edge: turn the hem up by {say_both(hem)}, tack, and fell the lining to it. All channels are closed by "
             "it."
             if hem else "Lower edge: tack shell and lining together and bind it. All channels are closed by the binding."),
    ]
    if others := [name for name in bound if name != "hem"]:
        moves.append(Move(f"Bind the {listed(others)}, shell and lining in one, with a strip of cloth cut slantwise to the "
                          "grain."))
    for piece in work.pattern.pieces:
        if piece.copied:
            moves.append(Move(
                f"{named(piece)}: it lies behind the lacing, so that no skin shows in the gap. Lay shell and lining right "
                "sides together, sew round and leave a hand's width open, turn it, press it, close it. Sew one long side "
                f"to the lining of the left back, so that it reaches {say_both(work.pattern.style.modesty_overlap)} under "
                "each side of the gap when laced; the other side stays free.", (), (piece,)))
    return Stage("Lining, lower edge and modesty panel", tuple(moves), (NEEDLE, IRON))


def _has_v(work):
    return any(edge.kind is Kind.CENTRE_FRONT for piece in work.shell for edge in piece.edges)
