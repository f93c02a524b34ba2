"""The order of sewing: complete, in a turn that can be sewn, with the bill's counts, and with its cautions."""

import re

import pytest
from figures import CASES, figure, ready_to_cut, words

from corsetkit import Correction, CorsetkitError, Style, demo_wearers, draft
from corsetkit.drawing.marks import seam_letter
from corsetkit.finish.bill import bill
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import finish
from corsetkit.geometry import paths
from corsetkit.pattern.edge import Kind
from corsetkit.sewing import stage as cautions
from corsetkit.sewing.matches import matches, start_words
from corsetkit.sewing.order import order_of
from corsetkit.sewing.text import WIDTH, sewing_order, sewing_text, write_sewing

FINISHES = {
    "strip": Finish(),
    "folded and bound": Finish(facing="folded", top_allowance=0, armscye_allowance=0, neckline_allowance=0, hem_allowance=0),
}
BOTH = [(case, how) for number, case in enumerate(CASES) for how in FINISHES if number % 2 == (how != "strip")]
CAUTIONS = [value for value in vars(cautions).values() if isinstance(value, cautions.Caution)]
SAID = [words(case) + ", " + how for case, how in BOTH]


def moves(stages):
    return [move for stage in stages for move in stage.moves]


@pytest.mark.parametrize("case, how", BOTH, ids=SAID)
def test_every_seam_is_sewn_once_and_in_its_turn(case, how):
    """Each seam is sewn in one move, after its pieces were cut, and after the seams that make its sides whole."""
    pattern = figure(*case)
    sewn, cut, joined = [], set(), {}

    def root(piece):
        while piece in joined:
            piece = joined[piece]
        return piece

    for move in moves(sewing_order(finish(pattern, FINISHES[how]))):
        for seam in move.seams:
            sides = [seam.pieces_on(side) for side in (0, 1)]
            assert {*sides[0], *sides[1]} <= cut and {*sides[0], *sides[1]} == set(move.pieces)
            for side in sides:
                assert len({root(piece) for piece in side}) == 1, seam.name
            for piece in sides[1]:
                if root(piece) is not root(sides[0][0]):
                    joined[root(piece)] = root(sides[0][0])
            sewn.append(seam)
            assert f"Seam {seam_letter(seam.number)}, {seam.name}" in move.text
        cut.update(move.pieces)
    assert sorted(seam.number for seam in sewn) == [seam.number for seam in pattern.seams]
    assert len({id(root(piece)) for piece in pattern.pieces if not piece.copied}) == 1


@pytest.mark.parametrize("case, how", BOTH, ids=SAID)
def test_counts_are_the_bills(case, how):
    """Every bone and every eyelet of the bill is put in once, and the words say the same numbers."""
    finished = ready_to_cut(figure(*case), FINISHES[how])
    needed, stages = bill(finished), sewing_order(finished)
    done = moves(stages)
    bones, holes = [bone for move in done for bone in move.bones], [one for move in done for one in move.eyelets]
    assert bones == list(needed.bones) and holes == list(needed.eyelets)
    told = [int(number) for move in done if move.bones for number in re.findall(r": (\d+) (?:spiral|flat) bone", move.text)]
    assert sum(told) == needed.bone_count
    channels = [int(number) for move in done for number in re.findall(r"(\d+) channels? of \d", move.text)]
    assert sum(channels) == needed.bone_count
    everything = " ".join(move.text for move in done)
    assert f"That is {needed.bone_count} bones in all" in everything
    assert f"That is {needed.eyelet_count} eyelets" in everything
    assert sum(int(number) for number in re.findall(r"(\d+) in all, left and right", everything)) == needed.eyelet_count


@pytest.mark.parametrize("case", CASES[::4], ids=words)
def test_every_layer_is_cut(case):
    """Each cloth's move names exactly the pieces that have it, with number and count; strips are named with their count."""
    finished = ready_to_cut(figure(*case))
    cutting = sewing_order(finished)[1]
    for cloth in ("shell", "strength layer", "lining"):
        (move,) = (one for one in cutting.moves if one.text.startswith(f"Of the {cloth} cut"))
        mine = [(one.piece, layer) for one in finished.pieces for layer in one.layers if layer.cloth == cloth]
        assert list(move.pieces) == [piece for piece, _ in mine]
        assert all(f"{piece.number} {piece.name} ({layer.count}" in move.text for piece, layer in mine)
    everything = " ".join(one.text for one in cutting.moves)
    assert all(f"{strip.name}: {strip.count} strips" in everything for strip in finished.strips)


@pytest.mark.parametrize("case", CASES[::3], ids=words)
def test_panels_are_sewn_from_the_centre(case):
    """In front and in back, each panel seam has a piece that is the centre or was reached before; side seams come after."""
    pattern = figure(*case)
    order = order_of(pattern)
    for seams, kind in ((order.front, Kind.FOLD), (order.back, Kind.LACING)):
        reached = {piece for piece in pattern.pieces if not piece.copied and any(edge.kind is kind for edge in piece.edges)}
        for seam in seams:
            assert reached & set(seam.pieces)
            reached |= set(seam.pieces)
    numbers = [seam.number for seam in order.seams]
    last = max(numbers.index(seam.number) for seam in (*order.cups, *order.front, *order.back, *order.underbust))
    assert all(numbers.index(seam.number) > last for seam in order.side)


@pytest.mark.parametrize("case", CASES[::2], ids=words)
def test_what_runs_in_runs_in_there(case):
    """A seam told to run in at a notch ends there: its edges' ends lie on the place; elsewhere one piece runs on."""
    pattern = figure(*case)
    seen = 0
    for seam in pattern.seams:
        for match, *places in zip(matches(seam, pattern), seam.places(0), seam.places(1)):
            for other, (edge, along) in zip(match.into, places):
                if other is None:
                    continue
                at = paths.point_along(edge.path, along)
                mine = [one for side in other.sides for one in side if one.piece is edge.piece]
                ends = [end for one in mine for end in (paths.path_start(one.path), paths.path_end(one.path))]
                assert min(abs(end - at) for end in ends) < 0.02, (seam.name, other.name)
                seen += 1
    changes = sum(len(set(seam.pieces_on(side))) - 1 for seam in pattern.seams for side in (0, 1))
    assert seen == changes > 0


def test_where_seams_begin_is_told_by_what_is_there():
    """A seam's start is told by the free edge there, or by the seam it meets."""
    pattern = figure("Maren")
    said = {seam.name: start_words(seam) for seam in pattern.seams}
    assert (
        said["underbust"] == "the centre front" and said["side seam"] == "the armscye" and said["back yoke"] == "the armscye"
    )
    assert said["front dart seam"] == "its end at seam D" and said["overbust"] == "the centre front"


def test_cautions_stand_where_they_matter():
    """Blades where cloth is cut, steel ends with the bones, eyelet tools with the eyelets, tight lacing with the lacing."""
    stages = sewing_order(ready_to_cut(figure("Maren")))
    with_bones = [stage for stage in stages if any(move.bones for move in stage.moves)]
    with_eyelets = [stage for stage in stages if any(move.eyelets for move in stage.moves)]
    assert len(with_bones) == 1 and cautions.STEEL in with_bones[0].cautions
    assert len(with_eyelets) == 1 and cautions.EYELETS in with_eyelets[0].cautions
    assert cautions.LACING in stages[-1].cautions and stages[-2] is with_eyelets[0]
    assert cautions.BLADES in stages[0].cautions and cautions.BLADES in stages[1].cautions
    for stage in stages:
        text = " ".join(move.text.lower() for move in stage.moves)
        for said, caution in (
            (r"\bpress(ed)?\b", cautions.IRON),
            (r"\bpin\b", cautions.PINS),
            (r"try it on", cautions.TRIED_ON),
            (r"last fitting", cautions.TRIED_ON),
            (r"\bawl\b", cautions.EYELETS),
        ):
            assert not re.search(said, text) or caution in stage.cautions, (stage.title, said)
    assert set(CAUTIONS) == {one for stage in stages for one in stage.cautions}


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize("case", CASES[::6], ids=words)
def test_words_are_in_one_unit_and_in_narrow_lines(case, unit):
    """The text names lengths in the chosen unit only, no line is too long, and every caution stands in it in full once."""
    text = sewing_text(ready_to_cut(figure(*case)), unit, "Ana", "2026-03-01")
    assert re.search(rf"\d {unit}\b", text)
    # "46 in all" is no length: inches are looked for by a fraction before them, or in brackets.
    assert not re.search(r"\d cm\b" if unit == "in" else r"\d/\d+ in\b|\(\d+ in\)", " ".join(text.split()))
    assert max(map(len, text.splitlines())) <= WIDTH
    flat = " ".join(text.split())
    for value in CAUTIONS:
        assert flat.count(value.text) == 1


def test_without_yoke_nobody_sews_one():
    """A style without a yoke has no stage and no word of one; a three-part cup has a move more than a two-part cup."""
    with_yoke, without = (
        sewing_text(ready_to_cut(figure("Maren", style)), "cm") for style in ("two parts", "two parts, no yoke")
    )
    assert "yoke" in with_yoke and "yoke" not in without
    assert "facing, centre back" in without
    three, two = (order_of(figure("Maren", style)) for style in ("three parts", "two parts"))
    assert len(three.cups) == len(two.cups) + 1


def test_a_folded_facing_has_no_strip_and_a_bound_edge_is_bound():
    """Words follow the choices: folded facings, edges without allowance."""
    text = " ".join(sewing_text(finish(figure("Maren"), FINISHES["folded and bound"]), "cm").split())
    assert "By measure cut" not in text and "Fold the allowance of the lacing edge" in text
    assert "to be bound later: armscye and neckline" in text and "bind it" in text and "Turn the allowance" not in text


def test_corrections_are_told_at_the_toile():
    """What fittings have corrected already is said before another toile is cut."""
    pattern = draft(demo_wearers()[0][1], Style(), (Correction("underbust line", 0.5),))
    first = sewing_order(finish(pattern))[0].moves[0].text
    assert "underbust line: 0.5 cm (3/16 in) lower" in first
    for unit, told in (("cm", "underbust line: 0.5 cm lower"), ("in", "underbust line: 3/16 in lower")):
        assert told in " ".join(sewing_text(finish(pattern), unit).split())
    assert not any("corrections" in move.text for move in sewing_order(ready_to_cut(figure("Maren")))[0].moves)


def test_the_text_is_written_whole_or_not_at_all(tmp_path):
    """The file is the text as UTF-8; a missing folder and an unknown unit are one sentence."""
    finished = ready_to_cut(figure("Maren"))
    done = write_sewing(finished, tmp_path / "s.txt", "cm", "\u0141\u00f3d\u017a", "2026-03-01")
    assert done.read_text(encoding="utf-8").startswith("How the corset for \u0141\u00f3d\u017a is sewn\n\n2026-03-01.")
    with pytest.raises(CorsetkitError, match="does not exist"):
        write_sewing(finished, tmp_path / "nowhere" / "s.txt")
    with pytest.raises(CorsetkitError, match="write cm or in"):
        write_sewing(finished, tmp_path / "t.txt", "ell")
    assert [one.name for one in tmp_path.iterdir()] == ["s.txt"]
