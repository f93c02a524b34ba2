"""The bill: layers, strips, bones, eyelets, lacing, and how far the corset opens."""

import math
from dataclasses import replace
from functools import cache

import anew
import pytest
from figures import CASES, WEARERS, figure, ready_to_cut, words
from shapely import LineString
from toy_pattern import toy_pattern

from corsetkit import Style, draft
from corsetkit.errors import CorsetkitError
from corsetkit.finish.bill import bill, passings
from corsetkit.finish.bones import FLAT, SPIRAL
from corsetkit.finish.choices import FOLDED, Finish
from corsetkit.finish.finished import LINING, SHELL, STRENGTH, finish
from corsetkit.finish.lacing import lacing_length, lacing_stretches
from corsetkit.geometry.curve import Line
from corsetkit.pattern.by_name import ByName
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.piece import Piece
from corsetkit.quantity import quantities


@cache
def bills():
    """(case, its bill) for every case."""
    return [(case, bill(ready_to_cut(figure(*case)))) for case in CASES]


def waist_of(piece):
    """The piece's width at the waist level, measured on its outline."""
    return anew.area(piece.path).intersection(LineString([(-300, 0), (300, 0)])).length


def test_layers_follow_the_pieces():
    """Panels to the hem are cut of shell, strength layer and lining; cups, yokes and modesty panel of shell and lining."""
    for case, made in bills():
        cloths = {}
        for cut in made.cuts:
            cloths.setdefault(cut.number, []).append(cut.cloth)
        for piece in figure(*case).pieces:
            strained = any(edge.kind is Kind.HEM for edge in piece.edges) and not piece.copied
            wanted = [SHELL, STRENGTH, LINING] if strained else [SHELL, LINING]
            assert cloths[piece.number] == wanted, (words(case), piece.name)
        for cut in made.cuts:
            assert (cut.count, cut.how) in ((1, "on the fold"), (2, "as a pair"))
        listed = [cut.cloth for cut in made.cuts]
        assert listed == sorted(listed, key=[SHELL, STRENGTH, LINING].index)


def test_bones_are_shorter_than_their_channels_and_end_at_the_cups():
    """Each bone is half an inch shorter than its channel; a seam's channel is the seam, and no bone lies on a cup seam."""
    for case, made in bills():
        pattern = figure(*case)
        for bone in made.bones:
            assert bone.length == pytest.approx(bone.channel - 1.27), words(case)
            assert bone.channel == pytest.approx(anew.line(bone.line).length, abs=1e-3) and bone.length > 5
        crossing = [
            seam
            for seam in pattern.seams
            if any(edge.path[0].start.imag * edge.path[-1].end.imag < 0 for side in seam.sides for edge in side)
        ]
        on_seams = [bone.on for bone in made.bones if bone.on in pattern.seams]
        assert on_seams == crossing and all(
            edge.kind is Kind.PANEL_SEAM for seam in on_seams for side in seam.sides for edge in side
        )
        for bone in made.bones:
            if bone.on in pattern.seams:
                assert bone.channel == pytest.approx(bone.on.lengths[0]) and bone.count == 2
        assert made.channel_width == pytest.approx(0.7 + 2.54 / 16)
        assert made.bone_count == sum(bone.count for bone in made.bones) and made.bone_count % 2 == 1


def test_spiral_where_a_channel_curves_and_flat_where_it_is_straight():
    """Seams shaped for the waist take spiral bones; straight cuts, centre front and lacing edge take flat ones."""
    kinds = {}
    for _, made in bills():
        for bone in made.bones:
            kinds.setdefault(bone.place.split(",")[0], set()).add(bone.kind)
    assert kinds["side seam"] == kinds["front dart seam"] == {SPIRAL}
    assert kinds["centre front"] == kinds["lacing edge"] == kinds["beyond the eyelets"] == kinds["panel seam"] == {FLAT}


def test_no_cloth_at_the_waist_is_wider_than_chosen():
    """Between two bones the cloth at the waist, measured on the outline, is at most 7 cm; what needed a bone is said."""
    further = 0
    for case, made in bills():
        for bay in made.bays:
            width = waist_of(bay.piece) - (2.6 if bay.beside_lacing else 0.0)
            assert bay.width == pytest.approx(width, abs=2e-3), (words(case), bay.piece.name)
            assert bay.left <= 7.0 + 1e-9 and bay.further == max(0, math.ceil(width / 7 - 1e-6) - 1)
            assert any(bay.piece.name in said and "wide at the waist" in said for said in made.warnings) == bool(bay.further)
            extra = [bone for bone in made.bones if bone.place == f"in the {bay.piece.name}"]
            assert len(extra) == bay.further
            for bone in extra:
                ends = [anew.at(p) for p in (bone.line[0].start, bone.line[-1].end)]
                assert max(end.distance(bay.piece.outline.exterior) for end in ends) < 2e-3
            further += bay.further
    assert further > 40
    narrow = bill(finish(figure("Maren"), Finish(widest_unsupported=3.5)))
    assert max(bay.left for bay in narrow.bays) <= 3.5 and narrow.bone_count > bills()[0][1].bone_count


def test_the_eyelets_stand_evenly_with_two_pairs_at_the_waist():
    """n eyelets have n - 1 spaces, none above the chosen 2.4 cm, the waist halfway between a pair 1.2 cm apart."""
    for case, made in bills():
        edges = [
            edge for piece in figure(*case).pieces if not piece.copied for edge in piece.edges if edge.kind is Kind.LACING
        ]
        assert sum(one.length for one in made.eyelets) == pytest.approx(sum(edge.length for edge in edges))
        for one in made.eyelets:
            assert len(one.spaces) == one.count - 1 == len(one.places) - 1 and one.inset == 1.3
            assert one.places[0] == pytest.approx(1.3) and one.places[-1] == pytest.approx(one.length - 1.3)
            assert all(0 < space <= 2.4 + 1e-9 for space in one.spaces)
            above = [place for place in one.places if one.waist and place < one.waist]
            if one.waist:
                assert one.waist - above[-1] == pytest.approx(0.6)
                assert one.places[len(above)] - one.waist == pytest.approx(0.6)
                rest = sorted(one.spaces)
                assert rest[0] == pytest.approx(1.2) and rest[1] > 1.8
        top = max(p.imag for edge in edges for p in (edge.path[0].start, edge.path[-1].end))
        waisted = [one for one in made.eyelets if one.waist]
        assert len(waisted) == 1
        if len(made.eyelets) == 1:
            assert made.eyelets[0].waist == pytest.approx(top, abs=1e-6)
        assert made.eyelet_count == 2 * sum(one.count for one in made.eyelets)


def test_an_opening_parts_the_lacing_edge():
    """With a back opening there are two stretches, and two facings, as far apart as the opening is high."""
    case = ("Maren", "two parts, openings", "wearer")
    made = bill(ready_to_cut(figure(*case)))
    assert [one.names for one in made.eyelets] == [("back yoke",), ("centre back",)]
    assert made.eyelets[1].opening == pytest.approx(5.08, abs=1e-6)
    assert [one.name for one in made.strips] == ["facing, back yoke", "facing, centre back", "waist tape"]
    whole = bill(ready_to_cut(figure("Maren", "two parts", "wearer")))
    assert whole.eyelets[0].length == pytest.approx(sum(one.length for one in made.eyelets) + 5.08, abs=1e-6)


def test_the_lacing_by_hand_example():
    """Three pairs 3 cm apart, a gap of 2 cm, insets of 1 cm: four crossings of 5 cm and one of 4 cm, and 100 cm over."""
    assert lacing_length((3.0, 3.0), 2.0, 1.0, 100.0) == pytest.approx(4 * 5 + 4 + 100)
    n, s, g, e = 20, 2.3, 7.62, 1.3
    formula = (n - 1) * 2 * math.sqrt((g + 2 * e) ** 2 + s**2) + g + 2 * e
    assert lacing_length((s,) * (n - 1), g, e, 0) == pytest.approx(formula)


def test_waist_tape_facing_and_the_opening_to_put_it_on():
    """The tape is the cloth at the waist; the facing as long as its edge with its ends; the gap what the girth has more."""
    for case, made in bills():
        pattern, body = figure(*case), WEARERS[case[0]]
        cloth = 2 * sum(waist_of(piece) for piece in pattern.pieces if not piece.copied)
        tape = next(strip for strip in made.strips if strip.name == "waist tape")
        assert tape.length == pytest.approx(cloth, abs=0.02) and tape.width == 2.2
        narrowest = min(girth.finished for girth in pattern.girths.values()) - pattern.style.lacing_gap
        for passing in made.passings:
            assert narrowest + passing.gap == pytest.approx(
                {"the bust": body.bust_girth, "the hips": body.hip_girth}[passing.over]
            )
        assert made.passing.gap == min(passing.gap for passing in made.passings)
        # Bought is what the easier way of putting it on needs, worked out here from the eyelets' places.
        across = max(pattern.style.lacing_gap, min(body.bust_girth, body.hip_girth) - narrowest) + 2 * Finish().eyelet_inset
        whole = [place for one in made.eyelets for place in one.places]
        if len(made.eyelets) == 1:
            crossings = sum(2 * math.hypot(across, after - before) for before, after in zip(whole, whole[1:]))
            assert made.lacing_open == pytest.approx(crossings + across + Finish().tails), words(case)
        assert made.lacing_open > made.lacing_worn > 100
        assert any("no front opening" in said for said in made.warnings)
    strip = bills()[0][1].strips[0]
    assert strip.length == pytest.approx(bills()[0][1].eyelets[0].length + 2.0) and strip.width == pytest.approx(6.0)
    folded = finish(figure("Maren"), Finish(facing=FOLDED))
    assert not folded.strips
    assert {w for one in folded.pieces for e, w in zip(one.piece.edges, one.allowances) if e.kind is Kind.LACING} == {4.5}


def test_no_room_beyond_the_eyelets_is_said():
    """With eyelets far from the edge a centre back too narrow for another bone goes without, and it is said."""
    made = bill(finish(figure("Maren"), Finish(eyelet_inset=2.0, bone_width=1.3)))
    assert not any("beyond the eyelets" in bone.place for bone in made.bones)
    assert any("no room at the waist for a bone beyond the eyelets" in said for said in made.warnings)
    assert any("beyond the eyelets" in bone.place for bone in bills()[0][1].bones)


def test_a_pattern_without_wearer_has_a_bill_too():
    """The made-up pattern, with neither measurements nor style, has pieces, bones and eyelets, and no way of passing."""
    made = bill(finish(toy_pattern()))
    assert made.cuts and made.bones and made.eyelets and made.passing is None


def test_how_it_goes_on_is_said_only_where_both_body_and_cloth_are_known():
    """Without a wearer, without any girth, or with one that cannot be had without the lacing gap, there is nothing to say."""
    whole = figure("Maren")
    assert len(passings(whole)) == 2
    for unknown in (
        {"measurements": None},
        {"girths": ByName({})},
        {"style": None},
        {"measurements": None, "girths": ByName({})},
    ):
        assert passings(replace(whole, **unknown)) == ()


def test_three_lengths_of_one_lacing_edge_are_two_stretches_where_one_opening_parts_them():
    """From the top down: an edge by itself, an opening of 2 cm, and two that join."""
    pieces = []
    for number, (low, high) in enumerate(((0, 10), (20, 28), (10, 18)), 1):
        corners = [complex(0, low), complex(5, low), complex(5, high), complex(0, high)]
        kinds = (Kind.HEM, Kind.LACING, Kind.TOP, Kind.TOP)
        edges = tuple(Edge(kind.value, (Line(a, b),), kind) for kind, a, b in zip(kinds, corners, (*corners[1:], corners[0])))
        pieces.append(Piece(number, f"piece {number}", edges, (1j * low, 1j * high), 2, "shell", False, True))
    stretches = lacing_stretches(pieces)
    assert [[piece.number for piece, _ in one.parts] for one in stretches] == [[2], [3, 1]]


def test_choices_are_declared_and_checked():
    """Every choice is a declared quantity with a source, reaches half and one and a half of its default, and is checked."""
    for quantity in quantities(Finish):
        assert quantity.source in ("common practice, no source", "course convention"), quantity.name
        if quantity.is_number:
            assert quantity.covers_half_to_one_and_a_half or quantity.why_range, quantity.name
            steps = [(value - quantity.low) / quantity.step for value in (quantity.default, quantity.high)]
            assert steps == pytest.approx([round(step) for step in steps]), f"{quantity.name}: no slider stands there"
    for wrong in ({"panel_allowance": 9}, {"facing": "none"}, {"eyelet_spacing": 3.5}, {"cup_allowance": "wide"}):
        with pytest.raises(CorsetkitError) as refusal:
            Finish(**wrong)
        assert "\n" not in str(refusal.value) and "allowed" in str(refusal.value)
    assert draft(WEARERS["Maren"], Style()).style.lacing_gap == 3 * 2.54
