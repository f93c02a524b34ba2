"""The cutting plan: nothing overlaps, nothing is missing, all lies on grain, cloth and fold, and the paper says so truly.

Plans are judged here by shapely from the outlines alone, not by the package's own check; how a piece lies is found by
fitting a rigid move to its points. Plans differ from run to run, so no plan is compared with a stored one.
"""

import cmath
import math
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from figures import figure, ready_to_cut
from hypothesis import given, settings
from hypothesis import strategies as st
from laying import LAID, SHORT, judge, polygon
from toy_pattern import toy_pattern

from corsetkit import demo_wearers
from corsetkit.errors import CorsetkitError
from corsetkit.finish.finished import finish, unfolded
from corsetkit.lay import planning
from corsetkit.lay.cloth import FOLDED, SINGLE, Cloth
from corsetkit.lay.items import Item, items_of, layers_of
from corsetkit.lay.packer import SLACK, _at_the_fold, _solved
from corsetkit.lay.planning import plain_plan, plan, plan_further, plans
from corsetkit.lay.plans import Plan
from corsetkit.lay.templates import Template


@pytest.mark.parametrize("laid", LAID)
@pytest.mark.parametrize("name", [name for name, _ in demo_wearers()])
def test_every_wearer_is_laid_whole(name, laid):
    """Every demo wearer's every cloth, single and folded: right counts and hands, no overlap, within the cloth, on grain."""
    done = ready_to_cut(figure(name))
    assert layers_of(done) == ("shell", "strength layer", "lining")
    for layer in layers_of(done):
        items = items_of(done, layer)
        made = plan(items, Cloth(laid=laid, width=115), SHORT, layer=layer)
        judge(made, items)
        assert made.bound <= made.length + 1e-9 <= made.plain + 2e-9


def test_the_items_are_what_the_finished_pattern_says(finished_maren):
    """Each layer's items have the count of its layer, and strips of its cloth are laid with it, by their measures."""
    for layer in layers_of(finished_maren):
        items = {item.number: item for item in items_of(finished_maren, layer)}
        for one in finished_maren.pieces:
            counts = [cut.count for cut in one.layers if cut.cloth == layer]
            assert [items[one.piece.number].count] == counts if counts else one.piece.number not in items
    strip, item = finished_maren.strips[0], items_of(finished_maren, "strength layer")[-1]
    assert (item.name, item.count, item.pair) == (strip.name, strip.count, True)
    left, bottom, right, top = polygon(item.outline).bounds
    assert (right - left, top - bottom) == pytest.approx((strip.width, strip.length))


def test_a_piece_on_the_fold_is_opened_out_on_single_cloth(finished_maren, laid_shells):
    """On single cloth the centre front lies as twice its half; on folded cloth as its half."""
    front = next(one for one in finished_maren.pieces if one.piece.name == "centre front")
    half = polygon(front.cutting).area
    for laid, times in ((SINGLE, 2), (FOLDED, 1)):
        (placed,) = (one for one in laid_shells[laid][1].placed if one.name == "centre front")
        assert polygon(placed.outline).area == pytest.approx(times * half, rel=1e-6)
        assert placed.at_fold == (laid == FOLDED)
    assert polygon(unfolded(front).cutting).area == pytest.approx(2 * half, rel=1e-6)


@pytest.mark.parametrize(
    "cloth",
    [
        Cloth(one_way=True),
        Cloth(one_way=True, laid=FOLDED),
        Cloth(tilt=3),
        Cloth(tilt=2, laid=FOLDED, one_way=True),
        Cloth(gap=0),
        Cloth(gap=2, selvedge=0),
        Cloth(gap=0, laid=FOLDED, selvedge=3),
        Cloth(width=210, gap=1, laid=FOLDED),
    ],
    ids=lambda cloth: f"{cloth.laid} {cloth.width:g} {cloth.one_way} {cloth.gap:g} {cloth.selvedge:g} {cloth.tilt:g}",
)
def test_every_choice_of_the_cloth_is_kept(finished_maren, cloth):
    """One-way cloth, tilt, gaps and selvedges: the plan keeps to what was chosen."""
    items = items_of(finished_maren, "shell")
    judge(plan(items, cloth, 1), items)


def test_what_is_used_and_the_bound_are_areas(laid_shells):
    """The share used is shapely's area of all that is cut over cloth width times length; the bound is area over room."""
    for laid, (_, made) in laid_shells.items():
        layers = 2 if laid == FOLDED else 1
        area = layers * sum(polygon(one.outline).area for one in made.placed)
        assert made.used == pytest.approx(area / (made.cloth.width * made.length), rel=1e-9)
        assert made.bound >= area / layers / (150 / layers - (1 if layers == 2 else 2)) - 1e-9
        assert 0 < made.used < 1


def test_the_same_pieces_need_the_same_area_folded_or_single(laid_shells):
    """Folding the cloth changes where pieces lie, not how much cloth they are."""
    assert laid_shells[SINGLE][1].area == pytest.approx(laid_shells[FOLDED][1].area, rel=1e-6)


def test_the_packer_lays_closer_than_rows(laid_shells):
    """Maren's shell on single cloth is packed shorter than in rows by a tenth at least, with a little patience.

    On a busy machine a second may hold little searching, so it is given five more.
    """
    items, made = laid_shells[SINGLE]
    for offset in range(1, 6):
        if made.length > 0.9 * made.plain:
            made = plan_further(made, items, 1, offset=offset)
    assert made.length < 0.9 * made.plain


OUTLINES = st.lists(st.tuples(st.integers(3, 7), st.floats(3, 16), st.floats(3, 24)), min_size=1, max_size=7)


def stars(sizes, count):
    """Made-up items: a slanted polygon each, as wide and high as the sizes say, every second one a pair."""
    made = []
    for number, (corners, wide, high) in enumerate(sizes, 1):
        turn = 2j * math.pi / corners
        points = tuple(complex(wide * p.real, high * p.imag) for p in (cmath.exp(turn * i + 0.3j) for i in range(corners)))
        made.append(Item(number, f"shape {number}", points, count, number % 2 == 0 and count % 2 == 0))
    return tuple(made)


@settings(max_examples=12, deadline=None)
@given(OUTLINES, st.sampled_from((1, 2, 4)), st.booleans())
def test_any_shapes_are_laid_whole(sizes, count, one_way):
    """Made-up polygons in any number lie as they have to, on one-way cloth or any."""
    items = stars(sizes, count)
    judge(plan(items, Cloth(width=115, one_way=one_way), 0), items)


@settings(max_examples=40, deadline=None)
@given(OUTLINES, st.sampled_from((1, 2, 3)))
def test_the_plain_lay_is_always_valid(sizes, count):
    """Without the packer the rows alone are a whole plan."""
    items = stars(sizes, count)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(planning, "pack", lambda *given: None)
        made = plan(items, Cloth(width=115), 0)
    judge(made, items)
    assert made.length == made.plain and made == plain_plan(items, Cloth(width=115))


WIDE = Item(3, "front skirt", (0j, 160 + 0j, 160 + 50j, 50j), 2, True)


@pytest.mark.parametrize(
    "item, cloth, room",
    [
        (WIDE, Cloth(width=115), "113 cm"),
        (replace(WIDE, outline=(0j, 60 + 0j, 60 + 9j, 9j)), Cloth(width=115, laid=FOLDED), "56.4 cm"),
        (replace(WIDE, grain=1 + 0j, outline=(0j, 9 + 0j, 9 + 120j, 120j)), Cloth(width=115), "113 cm"),
    ],
    ids=["single", "folded", "grain across"],
)
def test_a_piece_too_wide_is_one_sentence(item, cloth, room):
    """A piece wider than the cloth is refused before the packer sees it: piece, its width, the cloth's, and a remedy."""
    with pytest.raises(CorsetkitError) as told:
        plan([item], cloth, SHORT)
    said = str(told.value)
    assert "3 front skirt" in said and "115 cm (45 1/4 in)" in said and room in said and "wider" in said
    assert f"{max(p.real for p in item.outline) if item.grain == 1j else 120:g} cm" in said and "\n" not in said


def test_a_piece_as_wide_as_the_room_is_laid():
    """A piece that just fits lies in rows, though its widened outline is too much for the packer."""
    item = Item(1, "apron", (0j, 113 + 0j, 113 + 40j, 40j), 2)
    made = plan([item, Item(2, "band", (0j, 20 + 0j, 20 + 5j, 5j), 2)], Cloth(width=115), SHORT)
    judge(made, [item, Item(2, "band", (0j, 20 + 0j, 20 + 5j, 5j), 2)])


def test_a_lone_piece_on_folded_cloth_is_refused():
    """Folded cloth gives two of each, so what is neither a pair nor on the fold is refused with the remedy."""
    with pytest.raises(CorsetkitError, match="2 pocket is neither .* lay the cloth single"):
        plan([Item(2, "pocket", (0j, 9 + 0j, 9 + 12j))], Cloth(laid=FOLDED), SHORT)


def test_nothing_to_lay_and_crossed_lines_are_refused():
    """No items, and a line that crosses itself, are one sentence each."""
    with pytest.raises(CorsetkitError, match="nothing is cut of this cloth"):
        plan([], Cloth())
    with pytest.raises(CorsetkitError, match="4 bow crosses itself"):
        plan([Item(4, "bow", (0j, 9 + 9j, 9 + 0j, 9j))], Cloth())


@pytest.mark.parametrize("seconds", [-1, float("nan"), float("inf"), "2", None, True, 1e6])
def test_a_time_that_is_none_is_refused(seconds):
    """The time has to be a number of seconds within its limits."""
    with pytest.raises(CorsetkitError, match="0 to 3600 seconds"):
        plan([WIDE], Cloth(width=210), seconds)


def test_the_packers_panic_is_caught():
    """Given a shape higher than its strip the packer gives nothing back, and raises nothing."""
    tall = [("0", [(0.0, 0.0), (5.0, 0.0), (5.0, 50.0), (0.0, 50.0)], 1, (0.0,))]
    assert _solved(tall, 20.0, 0, None, 99.0, 0) is None


def test_a_packed_lay_that_fails_its_check_is_not_returned(finished_maren):
    """Where the packer lays everything on one heap, or leaves a piece out, the plain lay is returned."""
    items = items_of(finished_maren, "shell")
    heap = lambda kinds, *given: [(one, 0.0, complex(60, 60)) for one in kinds for _ in range(one.count)]
    short = lambda kinds, *given: [(kinds[0], 0.0, complex(60, 0))]
    for spoiled in (heap, short):
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(planning, "pack", spoiled)
            made = plan(items, Cloth(), SHORT)
        judge(made, items)
        assert made.length == made.plain


def test_progress_runs_from_nought_to_one(finished_maren):
    """Progress starts at zero with the plain length, never goes back, and ends at one with the plan's length."""
    told = []
    made = plan(items_of(finished_maren, "shell"), Cloth(), 1, lambda *one: told.append(one))
    shares = [share for share, _ in told]
    assert told[0] == (0.0, made.plain) and told[-1] == (1.0, made.length)
    assert shares == sorted(shares) and len(told) > 5
    assert all(length > 0 for _, length in told)


def test_each_cloth_has_its_plan(finished_maren):
    """`plans` lays every layer, each on its own cloth where that is said, under one progress."""
    told = []
    cloths = {"shell": Cloth(width=115), "strength layer": Cloth(width=150), "lining": Cloth(laid=FOLDED)}
    made = plans(finished_maren, cloths, SHORT, lambda *one: told.append(one[0]))
    assert list(made) == ["shell", "strength layer", "lining"] == [one.layer for one in made.values()]
    assert {layer: one.cloth for layer, one in made.items()} == cloths and told == sorted(told) and told[-1] == 1.0
    for layer, one in made.items():
        judge(one, items_of(finished_maren, layer))


def test_searching_further_never_lengthens(laid_shells):
    """Another search keeps the known plan unless it finds a shorter one."""
    items, made = laid_shells[SINGLE]
    further = plan_further(made, items, 0)
    assert further is made
    plain = replace(made, placed=plan(items, made.cloth, 0).placed)
    better = plan_further(plain, items, 1)
    judge(better, items)
    assert better.length < plain.length


def test_the_packer_loads_when_it_is_first_asked_for():
    """Importing every module of the lay loads neither the packer nor shapely."""
    folder = Path(planning.__file__).parent
    names = ", ".join(f"corsetkit.lay.{path.stem}" for path in sorted(folder.glob("*.py")) if path.stem != "__init__")
    code = f"import sys; import {names}; print('spyrrow' in sys.modules, 'shapely' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False, cwd=folder.parent.parent)
    assert done.stdout.split() == ["False", "False"], done.stderr


def test_a_made_up_pattern_is_laid_from_its_finish():
    """Five made-up pieces with a fold and four pairs, folded and single."""
    done = finish(toy_pattern())
    for laid in LAID:
        items = items_of(done, "shell")
        made = plan(items, Cloth(laid=laid, width=115), SHORT)
        assert isinstance(made, Plan)
        judge(made, items)


def test_pieces_at_the_fold_lie_close_up_in_the_order_that_takes_least():
    """Two triangles that make a square lie as one, whichever comes first, their slants as near as the packer lets any."""
    halves = [(0j, 10 + 0j, 10j), (10 + 0j, 10 + 10j, 10j)]
    cloth = Cloth(laid=FOLDED)
    for order in (halves, halves[::-1]):
        laid = _at_the_fold([Template(None, False, True, 1, one) for one in order], cloth)
        shapes = [polygon([p + 1j * up for p in one.flat]) for one, up in laid]
        assert [one.flat for one, _ in laid] == halves
        assert shapes[0].distance(shapes[1]) == pytest.approx(cloth.gap + 2 * SLACK, abs=1e-3)
