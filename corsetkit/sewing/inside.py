"""What comes behind the outside, from the back edges to the lining; last of all the eyelets, and the first lacing."""

from corsetkit.drawing.marks import seam_letter
from corsetkit.finish.bones import SPIRAL
from corsetkit.finish.choices import FOLDED
from corsetkit.pattern.edge import Kind
from corsetkit.sewing.stage import EYELETS, IRON, LACING, NEEDLE, PLIERS, STEEL, TRIED_ON, Move, Stage
from corsetkit.sewing.work import letters, listed, long_length, named
from corsetkit.units import say_both
from corsetkit.words import words_of

WORDS = words_of("sewing")


def back_edges(work):
    """The lacing edges faced, with the channels on both sides of the eyelets."""
    choices = work.choices
    lacing = tuple(piece for piece in work.shell if any(edge.kind is Kind.LACING for edge in piece.edges))
    pieces, width = listed(map(named, lacing)), say_both(choices.facing_width)
    if choices.facing == FOLDED:
        text = WORDS("facing_folded", pieces=pieces, width=width)
    else:
        facings = [one for one in work.finished.strips if one.name.startswith("facing")]
        strips = [WORDS.counted("facing_strip", one.count, length=say_both(one.length)) for one in facings]
        text = WORDS("facing_strips", strips=listed(strips), pieces=pieces, width=width)
    moves = [Move(text, (), lacing), Move(WORDS("facing_tape"))]
    moves += [
        Move(WORDS.counted("facing_channel", bone.count, where=_edge(bone), length=say_both(bone.channel)), (), lacing)
        for bone in work.bill.bones
        if work.at_lacing(bone)
    ]
    moves.append(Move(WORDS("facing_free", inset=say_both(choices.eyelet_inset))))
    return Stage(WORDS("back_edges"), tuple(moves), (NEEDLE, IRON))


def _edge(bone):
    return bone.place[0].upper() + bone.place[1:]


def bones(work):
    """Every bone of the bill, cut, tipped and put in."""
    moves = [Move(WORDS("bones_cut", shorter=say_both(work.choices.bone_shorter)))]
    moves += [Move(_bone_words(work, bone), bones=(bone,)) for bone in work.bill.bones]
    spirals = sum(bone.count for bone in work.bill.bones if bone.kind == SPIRAL)
    total = work.bill.bone_count
    moves.append(Move(WORDS.counted("bones_all", total, spiral=spirals, flat=total - spirals)))
    return Stage(WORDS("bones"), tuple(moves), (STEEL, PLIERS, NEEDLE))


def _bone_words(work, bone):
    length = say_both(bone.length)
    if work.at_seam(bone):
        letter = seam_letter(bone.on.number)
        return WORDS.counted("bone_seam", bone.count, letter=letter, place=bone.place, kind=bone.kind, length=length)
    return WORDS.counted("bone_edge", bone.count, where=_edge(bone), kind=bone.kind, length=length)


def top_edge(work):
    """The free edges above: turned in, or left for a binding."""
    edges = work.free_edges()
    turned = {name: width for name, width in edges.items() if width}
    bound = [name for name, width in edges.items() if not width]
    moves = []
    if turned:
        widths = [WORDS("top_width", edge=_plain(name), width=say_both(width)) for name, width in turned.items()]
        moves += [Move(WORDS("top_turn", widths=listed(widths))), Move(WORDS("top_sew"))]
    if bound:
        moves.append(Move(WORDS("top_bound", edges=listed(map(_plain, bound)))))
    moves.append(Move(WORDS("top_try")))
    return Stage(WORDS("top_edge"), tuple(moves), (NEEDLE, TRIED_ON))


def _plain(name):
    return WORDS("openings") if name == Kind.OPENING.value else name


def lining(work):
    """The lining, the lower edge and the modesty panel."""
    hem = work.free_edges((Kind.HEM,)).get(Kind.HEM.value, 0.0)
    bound = [_plain(name) for name, width in work.free_edges().items() if not width]
    sewn = [WORDS("lining_sew", letters=letters(work.order.seams))]
    if _has_v(work):
        sewn.append(WORDS("lining_v"))
    moves = [
        Move(" ".join(sewn), (), work.shell),
        Move(WORDS("lining_fell")),
        Move(WORDS("hem_turned", hem=say_both(hem)) if hem else WORDS("hem_bound")),
    ]
    if bound:
        moves.append(Move(WORDS("lining_bind", edges=listed(bound))))
    overlap = say_both(work.pattern.style.modesty_overlap)
    for piece in work.pattern.pieces:
        if piece.copied:
            moves.append(Move(WORDS("modesty", piece=named(piece), overlap=overlap), (), (piece,)))
    return Stage(WORDS("lining"), tuple(moves), (NEEDLE, IRON))


def _has_v(work):
    return any(edge.kind is Kind.CENTRE_FRONT for piece in work.shell for edge in piece.edges)


def eyelets(work):
    """The eyelets of the bill, after the last fitting."""
    moves = [Move(WORDS("eyelets_fitting")), Move(WORDS("eyelets_try"))]
    moves += [Move(_row_words(one, work.choices), eyelets=(one,)) for one in work.bill.eyelets]
    moves.append(Move(WORDS.counted("eyelets_all", work.bill.eyelet_count)))
    return Stage(WORDS("eyelets"), tuple(moves), (TRIED_ON, EYELETS))


def _row_words(one, choices):
    said = [
        WORDS.counted(
            "eyelets_row",
            one.count,
            edges=listed(one.names).capitalize(),
            both=2 * one.count,
            inset=say_both(one.inset),
            apart=say_both(max(one.spaces, default=0.0)),
        )
    ]
    if one.waist is not None:
        said.append(WORDS("eyelets_waist", waist=say_both(one.waist), apart=say_both(choices.waist_spacing)))
    said.append(WORDS("eyelets_places", places=listed(map(say_both, one.places))))
    return " ".join(said)


def lacing(work):
    """Lacing it for the first time."""
    bill, gap = work.bill, work.pattern.style.lacing_gap
    passing = bill.passing
    on = WORDS("lace_over", gap=say_both(max(passing.gap, gap)), over=passing.over) if passing else WORDS("lace_wide")
    return Stage(
        WORDS("first_lacing"),
        (
            Move(WORDS("lace_cut", open=long_length(bill.lacing_open), worn=long_length(bill.lacing_worn))),
            Move(on),
            Move(WORDS("lace_settle")),
            Move(WORDS("lace_first", gap=say_both(gap))),
            Move(WORDS("lace_off")),
        ),
        (LACING,),
    )
