"""The cutting plan: nothing overlaps, nothing is missing, all lies on grain, cloth and fold, and the paper says so truly.

Plans are judged here by shapely from the outlines alone, not by the package's own check; how a piece lies is found by
fitting a rigid move to its points. Plans differ from run to run, so no plan is compared with a stored one.
"""

import cmath
import json
import math
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pdfplumber
import pytest
from figures import figure
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon, box
from toy_pattern import toy_pattern

from corsetkit import Style, demo_wearers, draft
from corsetkit.errors import CorsetkitError
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import finish, unfolded
from corsetkit.lay import planning
from corsetkit.lay.checking import faults
from corsetkit.lay.cloth import FOLDED, SINGLE, WIDTHS, Cloth
from corsetkit.lay.drawing import lay_sheet
from corsetkit.lay.items import Item, fingerprint, items_of, layers_of
from corsetkit.lay.kept import read, read_file, write_file, written
from corsetkit.lay.lay_pdf import write_lay_pdf
from corsetkit.lay.packer import _solved
from corsetkit.lay.planning import plain_plan, plan, plan_further, plans
from corsetkit.lay.plans import Plan
from corsetkit.lay.quantities import quantities_said, say_bought, to_buy
from corsetkit.showing.lettering import overlap
from corsetkit.showing.recorder import recorded
from corsetkit.showing.svg import svg_text

SHORT = 0.3
MM = 25.4 / 72
DAY = "2026-03-01"
LAID = (SINGLE, FOLDED)


def polygon(points):
    return Polygon([(p.real, p.imag) for p in points])


def fits(true, laid):
    """Every rigid move that carries one closed line onto the other within 1e-6 cm: (mirrored, turn, the move)."""
    a, b = max(zip(true, true[1:]), key=lambda side: abs(side[1] - side[0]))
    for mirrored in (False, True):
        def hand(p, mirrored=mirrored):
            return p.conjugate() if mirrored else p
        for points in (laid, tuple(reversed(laid))):
            at, end = points[true.index(a)], points[true.index(b)]
            by = (end - at) / hand(b - a)

            def move(p, hand=hand, by=by, at=at):
                return hand(p - a) * by + at
            if len(true) == len(laid) and all(abs(move(p) - q) < 1e-6 for p, q in zip(true, points)):
                yield mirrored, by, move


def judge(made, items):
    """Assert from the outlines alone that the plan can be cut."""
    cloth = made.cloth
    shapes = [polygon(one.outline) for one in made.placed]
    for i, shape in enumerate(shapes):
        assert shape.is_valid
        for other in shapes[i + 1:]:
            assert shape.intersection(other).area < 1e-4
            assert shape.distance(other) > cloth.gap - 2e-3
    low = 0.0 if cloth.folded else cloth.selvedge
    high = (cloth.width / 2 if cloth.folded else cloth.width) - cloth.selvedge
    bounds = [shape.bounds for shape in shapes]
    assert min(b[0] for b in bounds) > low - 2e-3 and max(b[2] for b in bounds) < high + 2e-3
    assert min(b[1] for b in bounds) > -2e-3
    assert made.length == pytest.approx(max(b[3] for b in bounds), abs=1e-9)
    for item in items:
        judge_item(item, [one for one in made.placed if one.number == item.number], cloth)
    assert {one.number for one in made.placed} == {item.number for item in items}


def judge_item(item, mine, cloth):
    """Count, hand, grain and fold of one item's copies."""
    assert len(mine) == (math.ceil(item.count / 2) if cloth.folded and item.pair else item.count)
    assert [one.copy for one in mine] == list(range(1, len(mine) + 1))
    for one in mine:
        true = item.outline if cloth.folded and item.on_fold else item.whole
        # An outline that is its own mirror image fits both ways: one of them has to be what is told.
        assert any(as_told(one, item, cloth, *fit) for fit in fits(true, one.outline)), (item.called, one.copy)
    if item.pair:
        assert sum(one.mirrored for one in mine) == (0 if cloth.folded else item.count // 2)


def as_told(one, item, cloth, mirrored, by, move):
    """Whether a fitted move is the one that is told, keeps to the grain and puts the fold where it belongs."""
    off = abs(math.degrees(cmath.phase(by * (item.grain.conjugate() if mirrored else item.grain) / 1j)))
    if mirrored != one.mirrored or (off > 90) != one.upside_down:
        return False
    straight = off if cloth.one_way or off < 90 else 180 - off
    folded = cloth.folded and item.on_fold
    at_fold = not folded or max(abs(move(p).real) for p in item.fold) < 2e-3
    return straight <= cloth.tilt + 1e-6 and at_fold and one.at_fold == folded


@pytest.fixture(scope="module")
def ready():
    """Maren's pattern ready to cut."""
    return finish(figure("Maren"))


@pytest.fixture(scope="module")
def shells(ready):
    """Her shell laid both ways: by how the cloth lies, (items, plan)."""
    items = items_of(ready, "shell")
    return {laid: (items, plan(items, Cloth(laid=laid), 1, layer="shell")) for laid in LAID}


@pytest.mark.parametrize("laid", LAID)
@pytest.mark.parametrize("name", [name for name, _ in demo_wearers()])
def test_every_wearer_is_laid_whole(name, laid):
    """Every demo wearer's every cloth, single and folded: right counts and hands, no overlap, within the cloth, on grain."""
    done = finish(figure(name))
    assert layers_of(done) == ("shell", "strength layer", "lining")
    for layer in layers_of(done):
        items = items_of(done, layer)
        made = plan(items, Cloth(laid=laid, width=115), SHORT, layer=layer)
        judge(made, items)
        assert made.bound <= made.length + 1e-9 <= made.plain + 2e-9


def test_the_items_are_what_the_finished_pattern_says(ready):
    """Each layer's items have the count of its layer, and strips of its cloth are laid with it, by their measures."""
    for layer in layers_of(ready):
        items = {item.number: item for item in items_of(ready, layer)}
        for one in ready.pieces:
            counts = [cut.count for cut in one.layers if cut.cloth == layer]
            assert [items[one.piece.number].count] == counts if counts else one.piece.number not in items
    strip, item = ready.strips[0], items_of(ready, "strength layer")[-1]
    assert (item.name, item.count, item.pair) == (strip.name, strip.count, True)
    left, bottom, right, top = polygon(item.outline).bounds
    assert (right - left, top - bottom) == pytest.approx((strip.width, strip.length))


def test_a_piece_on_the_fold_is_opened_out_on_single_cloth(ready, shells):
    """On single cloth the centre front lies as twice its half; on folded cloth as its half."""
    front = next(one for one in ready.pieces if one.piece.name == "centre front")
    half = polygon(front.cutting).area
    for laid, times in ((SINGLE, 2), (FOLDED, 1)):
        placed, = (one for one in shells[laid][1].placed if one.name == "centre front")
        assert polygon(placed.outline).area == pytest.approx(times * half, rel=1e-6)
        assert placed.at_fold == (laid == FOLDED)
    assert polygon(unfolded(front).cutting).area == pytest.approx(2 * half, rel=1e-6)


@pytest.mark.parametrize("cloth", [
    Cloth(one_way=True), Cloth(one_way=True, laid=FOLDED), Cloth(tilt=3), Cloth(tilt=2, laid=FOLDED, one_way=True),
    Cloth(gap=0), Cloth(gap=2, selvedge=0), Cloth(gap=0, laid=FOLDED, selvedge=3), Cloth(width=210, gap=1, laid=FOLDED),
], ids=lambda cloth: f"{cloth.laid} {cloth.width:g} {cloth.one_way} {cloth.gap:g} {cloth.selvedge:g} {cloth.tilt:g}")
def test_every_choice_of_the_cloth_is_kept(ready, cloth):
    """One-way cloth, tilt, gaps and selvedges: the plan keeps to what was chosen."""
    items = items_of(ready, "shell")
    judge(plan(items, cloth, 1), items)


def test_what_is_used_and_the_bound_are_areas(shells):
    """The share used is shapely's area of all that is cut over cloth width times length; the bound is area over room."""
    for laid, (_, made) in shells.items():
        layers = 2 if laid == FOLDED else 1
        area = layers * sum(polygon(one.outline).area for one in made.placed)
        assert made.used == pytest.approx(area / (made.cloth.width * made.length), rel=1e-9)
        assert made.bound >= area / layers / (150 / layers - (1 if layers == 2 else 2)) - 1e-9
        assert 0 < made.used < 1


def test_the_same_pieces_need_the_same_area_folded_or_single(shells):
    """Folding the cloth changes where pieces lie, not how much cloth they are."""
    assert shells[SINGLE][1].area == pytest.approx(shells[FOLDED][1].area, rel=1e-6)


def test_the_packer_lays_closer_than_rows(shells):
    """Maren's shell on single cloth is packed shorter than in rows by a tenth at least, with a little patience.

    On a busy machine a second may hold little searching, so it is given five more.
    """
    items, made = shells[SINGLE]
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


@pytest.mark.parametrize("item, cloth, room", [
    (WIDE, Cloth(width=115), "113 cm"),
    (replace(WIDE, outline=(0j, 60 + 0j, 60 + 9j, 9j)), Cloth(width=115, laid=FOLDED), "56.4 cm"),
    (replace(WIDE, grain=1 + 0j, outline=(0j, 9 + 0j, 9 + 120j, 120j)), Cloth(width=115), "113 cm"),
], ids=["single", "folded", "grain across"])
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


def test_a_packed_lay_that_fails_its_check_is_not_returned(ready):
    """Where the packer lays everything on one heap, or leaves a piece out, the plain lay is returned."""
    items = items_of(ready, "shell")
    heap = lambda kinds, *given: [(one, 0.0, complex(60, 60)) for one in kinds for _ in range(one.count)]  # noqa: E731
    short = lambda kinds, *given: [(kinds[0], 0.0, complex(60, 0))]  # noqa: E731
    for spoiled in (heap, short):
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(planning, "pack", spoiled)
            made = plan(items, Cloth(), SHORT)
        judge(made, items)
        assert made.length == made.plain


def moved(made, which, by=0, **changes):
    """The plan with one of its pieces, the first of that number, slid by `by` with its outline, and then changed."""
    place = next(i for i, one in enumerate(made.placed) if one.number == which)
    one = made.placed[place]
    new = replace(replace(one, at=one.at + by, outline=tuple(p + by for p in one.outline)), **changes)
    return replace(made, placed=(*made.placed[:place], new, *made.placed[place + 1:]))


SPOILED = {
    "beyond the cloth": (SINGLE, lambda made: moved(made, 7, by=-200), "beyond the usable width"),
    "beyond the end": (SINGLE, lambda made: moved(made, 7, by=-200j), "beyond the end"),
    "one left out": (SINGLE, lambda made: replace(made, placed=made.placed[:-1]), "laid 0 times instead of 1"),
    "one too many": (SINGLE, lambda made: replace(made, placed=(*made.placed, made.placed[0])), "3 times instead of 2"),
    "wrong hand told": (SINGLE, lambda made: moved(made, 7, mirrored=True), "mirrored 2 times instead of 1"),
    "off the grain": (SINGLE, lambda made: moved(made, 7, turned=5.0), "off the grain"),
    "another outline": (SINGLE, lambda made: moved(made, 7, outline=made.placed[0].outline), "not its own"),
    "a stranger": (SINGLE, lambda made: moved(made, 7, number=70), "not to be cut"),
    "off the fold": (FOLDED, lambda made: moved(made, 5, by=3), "not lie at the fold"),
    "not at the fold": (FOLDED, lambda made: moved(made, 5, at_fold=False), "wrong place for its fold"),
}


@pytest.mark.parametrize("laid, spoil, said", SPOILED.values(), ids=SPOILED)
def test_the_check_finds_what_is_spoiled(shells, laid, spoil, said):
    """A sound plan has no fault; each way of spoiling it is told in a sentence that names the piece."""
    items, made = shells[laid]
    assert faults(made, items) == ()
    assert any(said in fault for fault in faults(spoil(made), items))


@pytest.mark.parametrize("laid", LAID)
def test_the_check_finds_overlaps_and_narrow_gaps(shells, laid):
    """Two pieces slid into each other overlap; slid to half the gap they lie too near."""
    items, made = shells[laid]
    pairs = [(i, j) for i, one in enumerate(made.placed) for j in range(i)
             if not one.at_fold and abs(polygon(one.outline).distance(polygon(made.placed[j].outline))) < 3]
    assert pairs
    i, j = pairs[0]
    one, other = made.placed[i], made.placed[j]
    a, b = polygon(one.outline), polygon(other.outline)
    way = complex(b.centroid.x - a.centroid.x, b.centroid.y - a.centroid.y)
    way /= abs(way)
    slid = replace(one, at=one.at + 5 * way, outline=tuple(p + 5 * way for p in one.outline))
    spoiled = replace(made, placed=tuple(slid if p is one else p for p in made.placed))
    names = {one.name, other.name}
    assert any(fault.endswith("overlap") and all(name in fault for name in names) for fault in faults(spoiled, items))
    wider = replace(made, cloth=made.cloth.replaced(gap=2.0))
    assert any("nearer to each other than the gap" in fault for fault in faults(wider, items))


def test_a_kept_plan_comes_back_equal(tmp_path, ready, shells):
    """As text, and through a file, every plan is the same value again: its outlines bit by bit."""
    by_layer = {layer: items_of(ready, layer) for layer in layers_of(ready)}
    for laid in LAID:
        made = [shells[laid][1], plan(by_layer["lining"], Cloth(laid=laid, tilt=2), SHORT, layer="lining")]
        back = read(written(made), by_layer)
        assert back.obsolete == () and list(back.plans.values()) == made
        assert [one.outline for one in back.plans["shell"].placed] == [one.outline for one in made[0].placed]
        write_file(tmp_path / "plans.json", made)
        assert read_file(tmp_path / "plans.json", by_layer) == back
    assert read_file(tmp_path / "none.json", by_layer).plans == {}


def test_a_plan_is_obsolete_when_the_pattern_changes(shells):
    """With other allowances, or another body, a kept plan is not used and a sentence says so; the rest stays."""
    items, made = shells[SINGLE]
    text = written([made])
    for changed in (finish(figure("Maren"), Finish(hem_allowance=1.1)), finish(figure("Ines"))):
        back = read(text, {"shell": items_of(changed, "shell")})
        assert back.plans == {} and back.obsolete == ("the pattern has changed since the shell was laid: lay it again",)
    again = items_of(finish(draft(dict(demo_wearers())["Maren"], Style())), "shell")
    assert read(text, {"shell": again}).plans["shell"] == made
    nudged = (replace(items[0], outline=tuple(p + 1e-7 for p in items[0].outline)), *items[1:])
    longer = (replace(items[0], count=4), *items[1:])
    assert fingerprint(nudged) == fingerprint(items) != fingerprint(longer)


def data_of(made):
    return json.loads(written([made]))


def spoiled_texts(made):
    """Texts that are no plans, or plans that cannot be cut."""
    yield "", "no kept cutting plans"
    yield "[1, 2]", "no kept cutting plans"
    yield '{"cutting plans": [3]}', "no kept cutting plans"
    for change, said in ((lambda one: one["placed"][0].update(across=-40.0), "cannot be cut: .* usable width"),
                         (lambda one: one["placed"].pop(), "cannot be cut: .* instead of"),
                         (lambda one: one["placed"][0].update(turned="much"), "no kept cutting plan"),
                         (lambda one: one["placed"][0].update(across=float("nan")), "cut|no kept cutting plan"),
                         (lambda one: one["placed"][0].update(number=99), "no kept cutting plan"),
                         (lambda one: one["cloth"].update(width=3), "width is 3 cm"),
                         (lambda one: one.pop("plain"), "no kept cutting plan")):
        told = data_of(made)
        change(told["cutting plans"][0])
        yield json.dumps(told), said


def test_a_spoiled_text_is_one_sentence(shells):
    """What was altered by hand, cut short or was never a plan is refused in one sentence each."""
    items, made = shells[SINGLE]
    for text, said in spoiled_texts(made):
        with pytest.raises(CorsetkitError, match=said) as told:
            read(text, {"shell": items})
        assert "\n" not in str(told.value)


def test_progress_runs_from_nought_to_one(ready):
    """Progress starts at nought with the plain length, never goes back, and ends at one with the plan's length."""
    told = []
    made = plan(items_of(ready, "shell"), Cloth(), 1, lambda *one: told.append(one))
    shares = [share for share, _ in told]
    assert told[0] == (0.0, made.plain) and told[-1] == (1.0, made.length)
    assert shares == sorted(shares) and len(told) > 5
    assert all(length > 0 for _, length in told)


def test_each_cloth_has_its_plan(ready):
    """`plans` lays every layer, each on its own cloth where that is said, under one progress."""
    told = []
    made = plans(ready, {"shell": Cloth(width=115), "strength layer": Cloth(width=137), "lining": Cloth(laid=FOLDED)},
                 SHORT, lambda *one: told.append(one[0]))
    assert list(made) == ["shell", "strength layer", "lining"] == [one.layer for one in made.values()]
    assert [one.cloth.width for one in made.values()] == [115, 137, Cloth().width] and told == sorted(told) and told[-1] == 1.0
    for layer, one in made.items():
        judge(one, items_of(ready, layer))


def test_searching_further_never_lengthens(shells):
    """Another search keeps the known plan unless it finds a shorter one."""
    items, made = shells[SINGLE]
    further = plan_further(made, items, 0)
    assert further is made
    plain = replace(made, placed=plan(items, made.cloth, 0).placed)
    better = plan_further(plain, items, 1)
    judge(better, items)
    assert better.length < plain.length


@pytest.mark.parametrize("length, unit, bought, words", [
    (50.9, "cm", 55, "0.55 m"), (55.0, "cm", 55, "0.55 m"), (55.1, "cm", 60, "0.6 m"), (101, "cm", 105, "1.05 m"),
    (50.9, "in", 57.15, "5/8 yd"), (91.44, "in", 91.44, "1 yd"), (92, "in", 102.87, "1 1/8 yd"),
    (110, "in", 114.3, "1 1/4 yd"),
])
def test_cloth_is_bought_in_the_shops_steps(length, unit, bought, words):
    """Rounded up to 5 cm or an eighth of a yard of 91.44 cm (the agreement of 1959), never down."""
    assert to_buy(length, unit) == pytest.approx(bought) and say_bought(length, unit) == words


def test_the_quantities_say_plan_bound_and_rows(shells):
    """What to buy, the share used, the bound and the plain lay are the plan's own figures, in the learner's unit."""
    for laid, (_, made) in shells.items():
        said = " ".join(quantities_said(made, "cm"))
        assert f"Buy {math.ceil(made.length / 5) * 5 / 100:g} m of cloth 137 cm wide" in said
        assert f"{made.length:.1f}".removesuffix(".0") + " cm" in said and f"{100 * made.used:.0f} %" in said
        assert f"{made.bound:.1f}".removesuffix(".0") + " cm" in said
        assert made.plain == made.length or f"{made.plain:.1f}".removesuffix(".0") + " cm" in said
        assert ("folded along its length" in said) == (laid == FOLDED)
    assert "54 in wide" in " ".join(quantities_said(shells[SINGLE][1], "in"))
    assert {round(cm / 2.54) - inches for cm, inches in WIDTHS.items()} <= {-1, 0}


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.parametrize("laid", LAID)
def test_the_sheet_shows_every_piece_where_it_lies(shells, laid, unit):
    """On the sheet every outline is the plan's own, its number stands within it, and no two texts overlap."""
    _, made = shells[laid]
    sheet = lay_sheet(made, unit, "Maren")
    drawn = recorded(sheet)
    whole = box(sheet.low.real, sheet.low.imag, sheet.high.real, sheet.high.imag)
    assert all(whole.contains(box(*one.box)) for one in drawn.written)
    texts = [one.box for one in drawn.written]
    assert not any(overlap(a, b) for i, a in enumerate(texts) for b in texts[:i])
    for one in made.placed:
        key = ("piece", (("piece", one.number), ("name", one.name), ("copy", one.copy)))
        lines = [call.what[0] for call in drawn.of("line") if key in call.groups and call.what[1].kind == "free"]
        assert [curve.start for curve in lines[0]] == list(one.outline)
        written_here = [text for text in drawn.written if key in text.groups]
        assert re.match(rf"{one.number}\b", written_here[0].text)
        inside = sum(polygon(one.outline).buffer(0.3).contains(box(*text.box)) for text in written_here)
        assert inside == len(written_here), (one.name, [text.text for text in written_here])
    said = " ".join(one.text for one in drawn.written)
    assert ("fold" in [one.text for one in drawn.written]) == (laid == FOLDED) and "selvedge" in said
    assert f"{round(100 * made.used)} %" in said
    assert ("face down" in said) == any(one.mirrored for one in made.placed)
    assert ("head points to the foot" in said) == any(one.upside_down for one in made.placed)
    for one in made.placed:
        assert f"{one.number} {one.name}" in sheet.description
        # In its label, along it or over several lines, or in the sentence of those that bear their number alone.
        assert f"{one.number} {one.name}" in said
    assert svg_text(sheet).startswith("<svg")


@pytest.mark.parametrize("laid", LAID)
def test_the_arrow_points_to_the_head(shells, laid):
    """Each grain arrow, where one is drawn, points up the plan unless its piece lies upside down."""
    _, made = shells[laid]
    drawn = recorded(lay_sheet(made, "cm"))
    found = 0
    for one in made.placed:
        key = ("piece", (("piece", one.number), ("name", one.name), ("copy", one.copy)))
        strokes = [call.what[0] for call in drawn.of("line") if key in call.groups and call.what[1].kind == "grain"]
        if strokes:
            shaft, head = strokes[0][0], strokes[1]
            assert (shaft.end.imag < shaft.start.imag) == one.upside_down
            assert head[0].end == head[1].start == shaft.end
            found += 1
    assert found > 0.8 * len(made.placed)


@pytest.mark.parametrize("paper, size", [("A4", (210, 297)), ("Letter", (215.9, 279.4))])
@pytest.mark.parametrize("laid, unit, bar", [(SINGLE, "cm", 500), (FOLDED, "in", 508)])
def test_the_page_is_in_its_scale(tmp_path, shells, paper, size, laid, unit, bar):
    """One page of the paper's size with every number and name as text; bar, cloth and length rule are true to the scale."""
    items, made = shells[laid]
    write_lay_pdf((made,), tmp_path / "lay.pdf", paper, unit, "Maren", DAY)
    with pdfplumber.open(tmp_path / "lay.pdf") as book:
        page, = book.pages
        text = page.extract_text()
        assert (float(page.width) * MM, float(page.height) * MM) == pytest.approx(size, abs=0.01)
        ratio = int(re.search(r"\(1:(\d+)\)", text)[1])
        lines = [((one["x1"] - one["x0"]) * MM, (one["bottom"] - one["top"]) * MM) for one in page.lines]
        strokes, chars = page.lines, page.chars
    for item in items:
        assert re.search(rf"^{item.number} {item.name} \d", text, re.M), "its row in the table"
    assert any(line == pytest.approx((bar / ratio, 0), abs=0.02) for line in lines), "the scale bar"
    span = 10 * made.cloth.width / (2 if laid == FOLDED else 1)
    assert sum(line == pytest.approx((span / ratio, 0), abs=0.02) for line in lines) == 2, "the cloth's two ends"
    edge = next(one for one, line in zip(strokes, lines)
                if line == pytest.approx((0, 10 * to_buy(made.length, unit) / ratio), abs=0.02))
    # The letters that stand on each outline, in the order they were written in, begin with its number.
    by = MM / 10 * ratio
    on_cloth = [(char["text"], Point((char["x0"] + char["x1"] - 2 * edge["x0"]) / 2 * by,
                                     (2 * edge["bottom"] - char["top"] - char["bottom"]) / 2 * by)) for char in chars]
    for one in made.placed:
        shape = polygon(one.outline)
        mine = "".join(letter for letter, at in on_cloth if shape.contains(at))
        assert re.match(rf"{one.number}(?!\d)", mine), (one.name, mine)
    assert any(line == pytest.approx((0, 10 * made.length / ratio), abs=0.02) for line in lines), "the length rule"
    assert "Maren" in text and DAY in text and say_bought(made.length, unit) in text


def test_every_cloth_has_its_page(tmp_path, ready):
    """The plain lays of all cloths at once: each can be cut, and each stands on a page of its own, in their order."""
    made = plans(ready, Cloth(width=150), None)
    for layer, one in made.items():
        judge(one, items_of(ready, layer))
        assert one.length == one.plain
    write_lay_pdf(tuple(made.values()), tmp_path / "all.pdf", "A4", "cm", "Maren", DAY)
    with pdfplumber.open(tmp_path / "all.pdf") as book:
        heads = [page.extract_text().splitlines()[0] for page in book.pages]
        assert book.metadata["Title"] == "Cutting plans, Maren"
    assert heads == [f"Cutting plan, {layer} for Maren: {say_bought(one.length, 'cm')}, 150 cm wide"
                     for layer, one in made.items()]


def test_the_same_plan_is_the_same_file(tmp_path, shells):
    """A kept plan printed twice with a given date is the same file, byte for byte."""
    items, made = shells[SINGLE]
    again = read(written([made]), {"shell": items}).plans["shell"]
    for name, one in (("a.pdf", made), ("b.pdf", again)):
        write_lay_pdf((one,), tmp_path / name, "A4", "cm", "Maren", DAY)
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


@pytest.mark.parametrize("given", [
    {"paper": "A5"}, {"unit": "mm"}, {"path": None}, {"path": "a\0b"}, {"path": "/none/at/all.pdf"}])
def test_a_page_that_cannot_be_written_is_one_sentence(tmp_path, shells, given):
    """An unknown paper or unit, and a place where no file can stand, are refused; nothing is left behind."""
    with pytest.raises(CorsetkitError) as told:
        write_lay_pdf((shells[SINGLE][1],), given.pop("path", tmp_path / "lay.pdf"), **given)
    assert "\n" not in str(told.value) and list(tmp_path.iterdir()) == []


def test_a_long_lay_still_fits_its_page(tmp_path):
    """Twelve large pieces on narrow cloth: the whole plan is drawn on the one page, in a smaller scale."""
    items = [Item(1, "sheet", (0j, 60 + 0j, 60 + 90j, 90j), 12)]
    made = plan(items, Cloth(width=70), 0)
    write_lay_pdf((made,), tmp_path / "long.pdf", "Letter", "cm", date=DAY)
    with pdfplumber.open(tmp_path / "long.pdf") as book:
        page, = book.pages
        wide, high = float(page.width), float(page.height)
        for one in (*page.lines, *page.curves, *page.rects):
            assert 28 < one["x0"] <= one["x1"] < wide - 28 and 28 < one["top"] <= one["bottom"] < high - 28
    assert made.length > 1000


def test_the_packer_loads_when_it_is_first_asked_for():
    """Importing every module of the lay loads neither the packer nor shapely."""
    folder = Path(planning.__file__).parent
    names = ", ".join(f"corsetkit.lay.{path.stem}" for path in sorted(folder.glob("*.py")) if path.stem != "__init__")
    code = f"import sys; import {names}; print('spyrrow' in sys.modules, 'shapely' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False,
                          cwd=folder.parent.parent)
    assert done.stdout.split() == ["False", "False"], done.stderr


def test_a_made_up_pattern_is_laid_from_its_finish():
    """Five made-up pieces with a fold and four pairs, folded and single."""
    done = finish(toy_pattern())
    for laid in LAID:
        items = items_of(done, "shell")
        made = plan(items, Cloth(laid=laid, width=115), SHORT)
        assert isinstance(made, Plan)
        judge(made, items)
