"""Step 7, the back: the waist taken in, the yoke, the lacing gap, the modesty panel."""

import anew
import pytest
from figures import FEW, WEARERS, figure, words

from corsetkit import Style, draft
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.points import dot
from corsetkit.pattern.edge import Kind

INCH = 2.54


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_side_seams_are_equal_above_and_below_the_waist_mark(case):
    """The back's side seam, its waist taken in, is as long as the front's closed one, above and below the waist mark."""
    steps = figure(*case).steps
    front, waist = steps.block.front, steps.back.waist
    # Between the front's two stretches the dart's mouth stands open.
    above = [
        anew.line(above).length + anew.line(rest).length
        for above, rest in ((front.side_above, front.side_waist), (steps.block.back.side_above, waist.side_waist))
    ]
    below = [anew.line(path).length for path in (steps.underbust.side_below, steps.back.side_below)]
    assert above[0] == pytest.approx(above[1], abs=5e-4)
    assert below[0] == pytest.approx(below[1], abs=5e-4)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_two_inches_come_out_of_the_back_waist(case):
    """Of the 2 in taken out of the waist in all, each half back gives 1/2 in to the side waist and 1/2 in to its dart (common
    practice, no source); the laced waist is the body's less the reduction."""
    pattern = figure(*case)
    waist, back = pattern.steps.back.waist, pattern.steps.block.back
    assert (waist.at_side, waist.dart - back.waist_dart) == pytest.approx((INCH / 2, INCH / 2))
    assert anew.girths(pattern)["waist"] == pytest.approx(WEARERS[case[0]].waist_girth - 2 * INCH, abs=0.001)
    taken = anew.area(next(cut for cut in pattern.waste if cut.name == "side waist, taken in").outline)
    level = taken.intersection(anew.LineString([(-99, 0.0), (199, 0.0)]))
    assert level.length == pytest.approx(INCH / 2, abs=1e-3)


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_back_dart_is_even_and_runs_to_nothing(case):
    """The back dart's legs are mirror images about its upright axis, from nothing at or below the bust level to nothing above
    the hem, so that the bust keeps its girth."""
    back = figure(*case).steps.back
    waist = back.waist
    for left, right in zip(*waist.legs, strict=True):
        for t in range(9):
            mirrored = 2 * waist.axis - left.point(t / 8).conjugate()
            assert mirrored == pytest.approx(right.point(t / 8), abs=1e-9)
    assert waist.dart_top.imag <= back.block.back.bust_level + 1e-9
    assert back.underbust.hem_level < waist.dart_end.imag < 0
    assert waist.axis == pytest.approx(waist.dart_top.real) == waist.dart_end.real


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_lacing_edge_leaves_the_gap(case):
    """The lacing edge is upright, half the stated gap from the centre back: 1 1/2 in for 3 in (common practice, no source)."""
    pattern = figure(*case)
    centre = pattern.steps.block.back.waist_centre.real
    edges = [edge for piece in pattern.pieces for edge in piece.edges if edge.kind is Kind.LACING]
    assert len(edges) == 2
    for edge in edges:
        assert {round(x, 9) for x, _ in edge.line.coords} == {round(centre - 1.5 * INCH, 9)}


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_yoke_is_as_wide_as_the_panels_below_it(case):
    """The back yoke's lower edge is the panels' tops, level at the centre back, and its neckline begins 1 1/4 in along the
    shoulder, square to it (common practice, no source)."""
    back = figure(*case).steps.back
    half = back.block.back
    assert anew.line(back.yoke_line.kept).length == pytest.approx(
        sum(anew.line(path).length for path in back.yoke_parts), abs=1e-3
    )
    assert back.yoke_line.whole[-1].tangent(1) == pytest.approx(1)
    assert abs(back.yoke_neck - half.neck_side) == pytest.approx(1.25 * INCH)
    assert dot(back.neckline.whole[0].tangent(0), half.shoulder[0].tangent(0)) == pytest.approx(0, abs=1e-9)
    armscye = anew.line(half.armscye)
    assert armscye.length - anew.line(back.armscye_yoke).length == pytest.approx(3 * INCH, abs=1e-3)  # course convention


@pytest.mark.parametrize("case", FEW, ids=words)
def test_the_modesty_panel_covers_the_gap_and_stays_inside_the_back(case):
    """The modesty panel, doubled, is wider than the gap and shorter than the back; it is a copy, sewn in no seam here."""
    pattern = figure(*case)
    panel = next(piece for piece in pattern.pieces if piece.copied)
    low_x, low_y, high_x, high_y = panel.outline.bounds
    lacing = next(
        edge
        for edge in pattern.pieces[-3].edges + pattern.pieces[-2].edges + pattern.pieces[-4].edges
        if edge.kind is Kind.LACING and edge.line.bounds[1] < 0
    )
    assert 2 * (high_x - low_x) == pytest.approx(pattern.style.lacing_gap + 2 * pattern.style.modesty_overlap)
    assert high_y < lacing.line.bounds[3] and low_y > lacing.line.bounds[1]
    assert panel.on_fold and all(edge.seam is None for edge in panel.edges)
    fold = next(edge for edge in panel.edges if edge.kind is Kind.FOLD)
    assert fold.line.bounds[0] == pytest.approx(pattern.steps.block.back.waist_centre.real)


@pytest.mark.parametrize("opening", ["front_opening", "back_opening"])
def test_along_an_opening_yoke_and_panel_do_not_touch(opening):
    """Each yoke has its own opening: along it yoke and neighbour are free, and the opening's edge is on both pieces."""
    pattern = draft(WEARERS["Ottilie"], Style(**{opening: True}))
    free = [edge for piece in pattern.pieces for edge in piece.edges if edge.kind is Kind.OPENING]
    assert len(free) == 2 and all(edge.seam is None and edge.length > 2 for edge in free)


@pytest.mark.parametrize("waist", [50.0, 54.0])
def test_a_dart_that_meets_the_lacing_edge_is_refused_with_its_remedy(waist):
    """Where reduction and gap leave no centre back beside the dart, one sentence names what to choose smaller."""
    body = WEARERS["Yrsa"].replaced(waist_girth=waist)
    with pytest.raises(CorsetkitError, match="(waist.reduction|lacing.gap|back.dart.place).*choose"):
        draft(body, Style(lacing_gap=4.5 * INCH, waist_reduction=3 * INCH, back_dart_place=0.3))


@pytest.mark.parametrize("height, bound", [(INCH, False), (3 * INCH, True)])
def test_an_opening_leaves_a_strip_at_the_nape(height, bound):
    """However high an opening is asked for, 2 cm of the yoke's lacing edge are kept above it, and it is said (course
    convention)."""
    style = Style(back_opening=True, back_opening_height=height, back_yoke_depth=3.25 * INCH)
    pattern = draft(WEARERS["Maren"], style)
    back = pattern.steps.back
    whole = abs(back.neckline.edge - back.yoke_line.edge)
    tall = paths.path_end(back.opening).imag - back.yoke_line.edge.imag
    assert tall == pytest.approx(min(height, whole - 2.0)) and (tall < height - 0.1) is bound
    assert any("back opening is drawn" in said for said in pattern.warnings) is bound


@pytest.mark.parametrize(
    "style, name, kind", [("three parts", "yoke line", Kind.PANEL_SEAM), ("three parts, no yoke", "top", Kind.TOP)]
)
def test_the_backs_upper_edge_is_a_seam_under_a_yoke_and_a_free_edge_without(style, name, kind):
    """What stands on the pieces says the same as the pattern does: one word where it is sewn, another where it is not."""
    pattern = figure("Maren", style)
    assert "back yoke" in [piece.name for piece in pattern.pieces] or kind is Kind.TOP
    for back in (pattern["side back"], pattern["centre back"]):
        assert [edge.kind for edge in back.edges if edge.name == name] == [kind]
