"""A fitting: each correction moves the line it names by what it says, every seam proven again; zero changes nothing."""

import json
import re
from functools import cache
from itertools import permutations

import anew
import pytest
from figures import WEARERS, figure
from following import follow
from promises import faults

from corsetkit import Correction, Style, draft
from corsetkit.errors import CorsetkitError
from corsetkit.fitting import corrections_file as kept
from corsetkit.fitting.correct import corrected, said, totals
from corsetkit.fitting.effect import moved, said_moved, said_walked, walked
from corsetkit.fitting.faults import FAULTS
from corsetkit.fitting.lines import LINES, line_named
from corsetkit.geometry import paths
from corsetkit.hand.sentences import say_why
from corsetkit.hand.whole import whole_by_hand
from corsetkit.pattern.edge import Kind
from corsetkit.quantity import quantities
from corsetkit.steps.run import READS, bears_on, run_steps
from corsetkit.style import Fitting
from corsetkit.units import CM_PER_INCH

SLOW = ("blend",)
"""What a blend states is slow to work out; two cases ask it too."""
EIGHTH = CM_PER_INCH / 8
METHODS = ("wearer", "guides")


def one(line, by):
    return (Correction(line, by),)


def everything(pattern):
    """All that a pattern says, exactly: the faintest difference counts."""
    return (
        repr([[piece.name, piece.grainline, [edge.path for edge in piece.edges]] for piece in pattern.pieces]),
        repr([(seam.name, seam.lengths, seam.marks) for seam in pattern.seams]),
        pattern.girths,
        pattern.fullness,
        pattern.warnings,
        repr([cut.outline for cut in pattern.waste]),
    )


def tried(wearer, corrections, **style):
    """The draft, or the one sentence that refuses it."""
    try:
        return draft(WEARERS[wearer], Style(**style), corrections)
    except CorsetkitError as refusal:
        assert str(refusal).strip() and "\n" not in str(refusal)
        return str(refusal)


@cache
def uncorrected(wearer, method):
    """What each corrected draft is compared with, drafted once."""
    return tried(wearer, (), method=method)


# What each line is measured by on the finished pattern, growing with the correction: none of it is the correction's own value.


def _waste(pattern, name):
    return next(cut.outline for cut in pattern.waste if cut.name == name)


def _dart_mouth(pattern):
    """How wide the tightening dart stands open at the overbust line."""
    point = pattern.steps.overbust.bust_point
    before, _, _, after = _waste(pattern, "tightening dart")
    assert before.start == after.end == point
    return abs(before.end - after.start)


def _front_dart(pattern):
    """The centre-front dart's width on an upright at the centre front, from its angle."""
    point, outline = pattern.steps.overbust.bust_point, _waste(pattern, "centre-front dart")
    half = anew.np.radians(anew.angle_at(outline, point) / 2)
    return 2 * point.real * anew.np.tan(half)


def _reach(path, point):
    return abs(paths.at_level(path, point.imag) - point)


def _hip(pattern):
    front, back = pattern.steps.block.front, pattern.steps.block.back
    return 2 * (front.hip_side.real + back.hip_centre.real - back.hip_side.real)


def _neckline_at_shoulder(pattern):
    yoke = next(piece for piece in pattern.pieces if piece.name == "back yoke")
    shoulder = next(edge for edge in yoke.edges if edge.kind is Kind.SHOULDER)
    return -shoulder.length


def _back_yoke(pattern):
    """From the height of the shoulder down to where the yoke ends at the lacing edge."""
    yoke = next(piece for piece in pattern.pieces if piece.name == "back yoke")
    lacing = next(edge for edge in yoke.edges if edge.kind is Kind.LACING)
    return pattern.steps.block.back.neck_side.imag - min(curve.point(t).imag for curve in lacing.path for t in (0, 1))


MEASURED = {
    "overbust mark": lambda p: abs(p.steps.overbust.mark - p.steps.overbust.bust_point),
    "tightening dart": _dart_mouth,
    "centre front dart": _front_dart,
    "centre front": lambda p: paths.path_start(p.steps.overbust.top_inner).real,
    "cup to the side": lambda p: _reach(p.steps.overbust.under_outer, p.steps.overbust.bust_point),
    "cup to the front": lambda p: _reach(p.steps.overbust.under_inner, p.steps.overbust.bust_point),
    "bust point sideways": lambda p: p.steps.overbust.bust_point.real,
    "bust point height": lambda p: p.steps.overbust.bust_point.imag,
    "underbust line": lambda p: abs(p.steps.underbust.inner - p.steps.overbust.bust_point),
    "underbust girth": lambda p: anew.girths(p)["underbust"],
    "top girth": lambda p: anew.girths(p)["bust"],
    "waist girth": lambda p: anew.girths(p)["waist"],
    "hip girth": _hip,
    "side seam": lambda p: p.steps.block.front.underarm.real,
    "length above the waist": lambda p: p.steps.overbust.bust_point.imag,
    "hem at the side": lambda p: paths.path_end(p.steps.underbust.hem).imag,
    "hem at the front": lambda p: paths.path_start(p.steps.underbust.hem).imag,
    "back yoke": _back_yoke,
    "yoke neckline": _neckline_at_shoulder,
}
NEARLY = {"underbust girth": 0.02, "top girth": 0.002, "waist girth": 0.002, "back yoke": 0.02}
"""How nearly a length is measured, cm, where not to a rounding: girths are measured on flattened lines, by the guides the
underbust dart leans as it is let out, and the yoke's lower line bends a little as its end on the armscye comes lower."""


def test_every_line_is_measured_and_declared_well():
    """Each line has its name, words both ways, a source, and limits about zero within what a pass may move."""
    assert {line.name for line in LINES} == set(MEASURED) and len(LINES) == len(MEASURED)
    for line in LINES:
        limits = line.quantity
        assert limits.low == -limits.high and limits.default == 0 and limits.source == "course convention"
        assert limits.meaning and line.more != line.less and line.moves and limits.is_length
        assert line_named(line.quantity.name) is line_named(line.name) is line


def stopped(name, pattern, gained, by):
    """Whether the draft has stopped a line short of the correction, at the strip beside a cup or at the centre front; it
    must say so."""
    why = {"cup to": "the cup would come nearer", "centre": "past the centre front"}.get(name[:6])
    short = why is not None and abs(gained - by) > 1e-6
    assert not short or (0 <= gained / by < 1 and any(why in one for one in pattern.warnings))
    return short


@pytest.mark.parametrize("line", LINES, ids=lambda line: line.name)
@pytest.mark.parametrize("method", METHODS)
def test_a_line_moves_as_far_as_it_is_corrected(line, method):
    """On every wearer each line moves by the stated amount in the stated direction, or one sentence says why it cannot."""
    measure, drawn, refused = MEASURED[line.name], 0, []
    for wearer in WEARERS:
        plain = uncorrected(wearer, method)
        if isinstance(plain, str):
            continue
        for share in (1.0, -1.0, 0.5, -0.5):
            by = share * line.quantity.high
            pattern = tried(wearer, one(line.name, by), method=method)
            if isinstance(pattern, str):
                refused.append(f"{wearer}, {by}: {pattern}")
                continue
            gained = measure(pattern) - measure(plain)
            drawn += 1
            if not stopped(line.name, pattern, gained, by):
                assert gained == pytest.approx(by, abs=NEARLY.get(line.name, 1e-6)), (wearer, by)
            assert all(abs(seam.difference) <= 0.01 for seam in pattern.seams)
    print(line.name, method, drawn, *refused, sep="\n  ")
    # By the guides some cups reach their strip already and cannot be moved farther.
    others = [said for said in refused if "the cup already reaches it" not in said]
    assert drawn >= 24 and len(others) <= 2, refused


@pytest.mark.parametrize("line", LINES, ids=lambda line: line.name)
@pytest.mark.parametrize("wearer", ["Maren", "Ottilie", "Theda"])
def test_a_corrected_pattern_keeps_every_promise(line, wearer):
    """Seams, girths, tiling and all else are measured anew on corrected patterns, and a hand reaches every mark of them."""
    kept_ones = 0
    for number, (method, by) in enumerate(
        (method, by) for method in METHODS for by in (line.quantity.low, 0.6 * line.quantity.high)
    ):
        pattern = tried(wearer, one(line.name, by), method=method, cup_parts=2 + number % 2)
        if isinstance(pattern, str):
            continue
        kept_ones += 1
        assert not faults(pattern, SLOW), by
        assert_followed(pattern)
    assert kept_ones >= 2


def assert_followed(pattern):
    made = whole_by_hand(pattern.steps)
    told = [instruction for step in made.values() for instruction in step.instructions]
    reached, _, checks = follow(told)
    for step in made.values():
        assert not {
            mark.name: abs(reached[mark.name] - mark.point)
            for mark in step.marks
            if abs(reached[mark.name] - mark.point) > EIGHTH
        }
    assert all(measured == pytest.approx(check.length, abs=EIGHTH) for check, measured in checks)
    for unit, other in (("in", "cm"), ("cm", "in")):
        for instruction in told:
            text = say_why(instruction, unit, pattern.steps.measurements, pattern.steps.style)
            assert re.fullmatch(r"[A-Z].*[^.]\.", text) and not re.search(r"\. [A-Z]|[{}<>_]| -|  ", text), text
            assert not re.search(rf"\d {other}\b", text), text


FITTED = [line for line in LINES if line.moves[0][0] is Fitting]


@pytest.mark.parametrize("line", FITTED, ids=lambda line: line.name)
def test_a_reason_that_a_fitting_changes_says_so(line):
    """The hand's reasons name what the fitting adds, where the step works the value out, and only then."""

    def reasons(pattern):
        return [instruction.because for step in whole_by_hand(pattern.steps).values() for instruction in step.instructions]

    plain = [why for why in reasons(figure("Maren")) if "fitting" in why]
    told = [why for why in reasons(draft(WEARERS["Maren"], None, one(line.name, 0.4))) if "fitting" in why]
    assert not plain and told
    opposite = [why for why in reasons(draft(WEARERS["Maren"], None, one(line.name, -0.4))) if "fitting" in why]
    assert opposite != told


@pytest.mark.parametrize(
    "case",
    [
        ("Maren", {}),
        ("Ottilie", {"method": "guides"}),
        ("Brid", {"cup_parts": 2}),
        ("Wanda", {"yoke": False}),
        ("mean body", {"front_opening": True, "back_opening": True}),
    ],
    ids=lambda case: case[0],
)
def test_nought_changes_nothing(case):
    """With every correction zero, or taken back by its opposite, the draft is the same to the last bit."""
    wearer, style = case
    plain = everything(draft(WEARERS[wearer], Style(**style)))
    lines = [line for line in LINES if not line.only or style.get("yoke", True)]
    noughts = tuple(Correction(line.name, 0.0) for line in lines)
    there_and_back = tuple(Correction(line.name, by) for by in (0.3, -0.3) for line in lines)
    for corrections in ((), noughts, there_and_back):
        assert everything(draft(WEARERS[wearer], Style(**style), corrections)) == plain
    assert corrected(WEARERS[wearer], Style(**style), there_and_back) == (WEARERS[wearer], Style(**style))


def test_corrections_add_up_and_their_order_does_not_matter():
    three = (Correction("underbust line", 0.3), Correction("centre front", 0.2), Correction("underbust line", 0.4))
    drafts = [everything(draft(WEARERS["Maren"], None, order)) for order in permutations(three)]
    assert all(one == drafts[0] for one in drafts)
    together = (Correction("centre front", 0.2), Correction("underbust line", 0.7))
    assert everything(draft(WEARERS["Maren"], None, together)) == drafts[0]
    assert totals(three) == {"centre front": 0.2, "underbust line": 0.7}
    assert said(three) == ("centre front: 0.2 cm more taken in on each half", "underbust line: 0.7 cm lower")
    assert said(one("side seam", -0.3175), "in") == ("side seam: 1/8 in farther forward",)


def test_the_pattern_keeps_what_was_given():
    """A pattern names its corrections, its body as measured and its style as chosen; the steps hold what they drew from."""
    body, style = WEARERS["Maren"], Style(cup_parts=2)
    made = (Correction("bust point sideways", 0.4), Correction("overbust mark", 0.5), Correction("back yoke", -0.5))
    pattern = draft(body, style, list(made))
    assert (pattern.corrections, pattern.measurements, pattern.style) == (made, body, style)
    assert pattern.steps.measurements.bust_point_width == pytest.approx(body.bust_point_width + 0.8)
    assert pattern.steps.style.overbust_mark == pytest.approx(style.overbust_mark + 0.5)
    assert pattern.steps.style.fitting == Fitting(back_yoke=-0.5)
    assert draft(body).corrections == ()
    # A pass more goes on from the same body and style.
    again = draft(pattern.measurements, pattern.style, (*pattern.corrections, Correction("overbust mark", -0.5)))
    assert again.steps.style.overbust_mark == style.overbust_mark


def test_only_the_steps_that_a_correction_reaches_are_drawn_anew():
    plain = figure("Maren")
    for line, kept_steps in (
        ("tightening dart", ("block", "underbust", "back")),
        ("hem at the front", ("block",)),
        ("side seam", ()),
        ("centre front", ("block", "underbust", "back")),
    ):
        quick = draft(plain.measurements, plain.style, one(line, 0.4), earlier=plain)
        assert everything(quick) == everything(draft(plain.measurements, plain.style, one(line, 0.4)))
        assert (
            tuple(
                name
                for name in ("block", "underbust", "overbust", "darts", "three_part_cup", "back")
                if getattr(quick.steps, name) is getattr(plain.steps, name)
            )
            == kept_steps
        )
        assert everything(draft(plain.measurements, plain.style, earlier=quick)) == everything(plain)
    named = {name for names in READS.values() for name in names}
    assert all(amount.name in named for amount in quantities(Fitting))


def test_no_lesson_offers_a_fittings_amount_as_a_style_value():
    assert not {one.name for step in READS for one in bears_on(step) if one.group == "fitting"}
    assert not [one.name for one in quantities(Style) if one.group == "fitting"]


@pytest.mark.parametrize("wearer", WEARERS)
def test_only_the_stated_girth_changes(wearer):
    """What is let out at one level leaves the other levels' girths, and each girth's intended says what was corrected."""
    plain = draft(WEARERS[wearer])
    for line, level, by in (("top girth", "bust", 2.0), ("underbust girth", "underbust", -1.0), ("waist girth", "waist", 1.0)):
        pattern = draft(WEARERS[wearer], None, one(line, by))
        for name, girth in pattern.girths.items():
            before, finished = plain.girths[name], anew.girths(pattern)[name]
            assert finished == pytest.approx(girth.intended, abs=0.1) and finished == pytest.approx(girth.finished, abs=0.1)
            # A fitting is no part of the body; but the hem's highest point, where the body is asked,
            # may lie a little elsewhere.
            assert girth.body == pytest.approx(before.body, abs=0.15 if name == "hem" else 1e-6)
            if name == level:
                assert girth.intended - before.intended == pytest.approx(by, abs=1e-6)
            elif (line, name) not in (("top girth", "underbust"), ("waist girth", "hem"), ("top girth", "hem")):
                assert girth.finished == pytest.approx(before.finished, abs=1e-6), (line, name)
        if line == "top girth":
            assert 0 < pattern.girths["underbust"].intended - plain.girths["underbust"].intended < by
            # The hem is measured at its highest point, which the side seam's length moves by half a millimetre.
            assert pattern.girths["hem"].finished == pytest.approx(plain.girths["hem"].finished, abs=0.1 * by)


@pytest.mark.parametrize("wearer", ["Maren", "Ottilie", "mean body"])
def test_a_gap_at_the_top_is_let_out_evenly_at_four_edges(wearer):
    """Side seam and back seam each gain (difference) / (4k) on both their edges, k = 2, and the waist keeps every panel."""
    by, (before, after) = 2.0, (draft(WEARERS[wearer], None, corrections) for corrections in ((), one("top girth", 2.0)))
    # Panels at the bust level of the back, and at the waist: front to the side seam, side back, centre back.
    wide = [_panels(pattern.steps) for pattern in (before, after)]
    assert [b - a for a, b in zip(wide[0][0], wide[1][0])] == pytest.approx([by / 8, by / 4, by / 8], abs=1e-6)
    assert [b - a for a, b in zip(wide[0][1], wide[1][1])] == pytest.approx([0, 0, 0], abs=1e-6)


def _panels(steps):
    front, back, waist = steps.block.front, steps.block.back, steps.back.waist
    side = paths.path_end(back.side_above).real
    at_bust = (front.width, waist.dart_top.real - side, back.waist_centre.real - waist.dart_top.real)
    legs = [paths.at_level(leg, 0.0).real for leg in waist.legs]
    taken_in = paths.at_level((*waist.side_waist, *waist.side_hip), 0.0).real
    return at_bust, (front.waist_side.real, legs[0] - taken_in, back.waist_centre.real - legs[1])


def test_a_body_without_a_back_dart_is_taken_in_at_the_side():
    """Where the back dart has nothing to give, what is taken in above the waist comes off the side seams alone."""
    body = WEARERS["Maren"].replaced(waist_girth=WEARERS["Maren"].bust_girth + 1, hip_girth=WEARERS["Maren"].bust_girth + 6)
    for by in (-2.0, 2.0):
        before, after = (
            run_steps(*corrected(body, Style(), made), until="block").block for made in ((), one("top girth", by))
        )
        assert before.back.waist_dart == 0 <= after.back.waist_dart
        assert 2 * (after.front.width + after.back.width - before.front.width - before.back.width) == pytest.approx(by)


def test_the_tightened_top_edge_is_shorter_and_the_underbust_keeps_its_length():
    """A wedge at the mark shortens the slanting top edge by most of its width, and nothing below the bust point."""
    plain, after = figure("Maren"), draft(WEARERS["Maren"], None, one("tightening dart", 0.8))
    lengths = [{seam.name: seam.lengths[0] for seam in pattern.seams} for pattern in (plain, after)]
    assert 0.6 * 0.8 < lengths[0]["overbust"] - lengths[1]["overbust"] <= 0.8
    assert lengths[0]["underbust"] == pytest.approx(lengths[1]["underbust"], abs=1e-6)


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.seen)
def test_a_fault_is_well_told(fault):
    """Each fault says what is seen, why, and what to look out for;
    every pinch that may be given makes an allowed correction."""
    assert fault.seen and fault.cause and fault.caution.endswith(".") and fault.source == "course convention"
    for pinch in (fault.pinch.low, None, fault.pinch.high):
        made = (*fault.corrections(pinch), *fault.further_corrections(pinch))
        assert len(totals(made)) == len(fault.moves) + len(fault.further)
    with pytest.raises(CorsetkitError):
        fault.corrections(fault.pinch.high + 0.1)
    assert fault.fits(Style()) and fault.fits(Style(yoke=False)) == ("yoke" not in fault.seen)


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.seen)
def test_a_fault_acts_on_every_wearer(fault):
    """For each wearer the first move draws, moves its lines by its share of the pinch, and walks every seam within 0.1 mm."""
    refused = []
    for wearer in WEARERS:
        plain, pattern = draft(WEARERS[wearer]), tried(wearer, fault.corrections())
        if isinstance(pattern, str):
            refused.append(f"{wearer}: {pattern}")
            continue
        for name, share in fault.moves:
            gained, by = MEASURED[name](pattern) - MEASURED[name](plain), share * fault.pinch.default
            if not stopped(name, pattern, gained, by):
                assert gained == pytest.approx(by, abs=NEARLY.get(name, 1e-6)), (wearer, name)
        assert moved(plain, pattern)
        assert all(abs(seam.difference) <= 0.01 for seam in pattern.seams)
    # A cup that reaches its strip already cannot be moved farther.
    assert all("the cup already reaches it" in one for one in refused) and len(refused) <= 1, refused


def test_all_lines_at_once_keep_the_promises():
    """A whole fitting, half a pass of every line, is drawn with every promise kept, and a hand can follow it."""
    made = tuple(Correction(line.name, 0.5 * line.quantity.high * (-1) ** number) for number, line in enumerate(LINES))
    for wearer in ("Maren", "Brid"):
        pattern = draft(WEARERS[wearer], None, made)
        assert not faults(pattern)
        assert_followed(pattern)


@pytest.mark.parametrize(
    "correction, match",
    [
        (Correction("hem", 1.0), "'hem': no line .* allowed are overbust mark, .*yoke neckline"),
        (Correction(None, 1.0), "correction of None"),
        (Correction("side seam", 0.7), r"side seam is 0.7 cm .*allowed are -0.6 to 0.6 cm .*in one pass; correct less"),
        (Correction("tightening dart", 8), "8 cm .*millimetres given as centimetres"),
        (Correction("tightening dart", -9.0), "-9 cm.*millimetres"),
        (Correction("tightening dart", float("nan")), "not a number"),
        (Correction("tightening dart", float("inf")), "allowed"),
        (Correction("tightening dart", "0.5"), "not a number"),
        (Correction("tightening dart", True), "not a number"),
        (("tightening dart", 0.5), "allowed is a Correction"),
    ],
)
def test_a_correction_that_is_not_allowed_is_refused(correction, match):
    """One sentence names the line, what was given, and what is allowed."""
    with pytest.raises(CorsetkitError, match=match) as caught:
        draft(WEARERS["Maren"], corrections=(correction,))
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    "corrections, style, match",
    [
        (
            [Correction("side seam", 0.6)] * 4,
            {},
            "side seam: 2.4 cm .15/16 in. farther back, all passes together, goes too far.*-1.8 to 1.8",
        ),
        ([Correction("centre front", 0.6)] * 2, {}, "centre front: 1.2 cm .*goes too far.*0.64 to 1.91"),
        ([Correction("back yoke", -1.0)], {"yoke": False}, "back yoke: 1 cm .3/8 in. shorter: this style has no yoke"),
        ([Correction("tightening dart", -1.2)] * 3, {"method": "guides"}, "after the fitting .*tightening dart takes 2.5 cm"),
        ([Correction("underbust girth", 2.4)] * 2, {"method": "guides"}, "after the fitting .*underbust dart"),
        ([Correction("hem at the front", -1.0)] * 3, {"hem_share": 0.95}, "after the fitting .*below the hip"),
    ],
)
def test_corrections_that_go_too_far_together_are_refused(corrections, style, match):
    """One sentence, and what would be typed or measured otherwise is not offered as the remedy."""
    with pytest.raises(CorsetkitError, match=match) as caught:
        draft(WEARERS["Maren"], Style(**style), corrections)
    assert "looks like" not in str(caught.value) and "\n" not in str(caught.value)


def test_a_wearer_who_cannot_be_drawn_at_all_is_not_told_of_corrections():
    body = WEARERS["Maren"].replaced(front_waist_length=50.0, neck_to_bust_point=30.0)
    with pytest.raises(CorsetkitError) as plain:
        draft(body)
    with pytest.raises(CorsetkitError) as fitted:
        draft(body, None, one("hem at the side", 0.5))
    assert str(fitted.value) == str(plain.value)


def test_a_style_holds_amounts_of_a_fitting_only():
    with pytest.raises(CorsetkitError, match="fitting is 3: "):
        Style(fitting=3)
    with pytest.raises(CorsetkitError, match="side seam"):
        Fitting(side_seam=5.0)


class TestMoved:
    def test_nothing_moves_without_a_correction(self):
        again = draft(WEARERS["Maren"])
        assert moved(figure("Maren"), again) == ()
        assert said_moved(()) == ("No line has moved.",)
        lines = said_walked(walked(figure("Maren"), again))
        assert len(lines) == 1 and lines[0].startswith(f"All {len(again.seams)} seams are walked again")

    @pytest.mark.parametrize(
        "line, by, names",
        [
            ("hem at the front", 1.0, {"front hem", "front parting"}),
            ("cup to the side", 0.5, {"underbust line, outer"}),
            (
                "overbust mark",
                0.5,
                {"overbust line, inner", "overbust line, outer", "tightening dart, inner leg", "tightening dart, outer leg"},
            ),
        ],
    )
    def test_the_lines_that_move_are_named_with_how_far(self, line, by, names):
        found = moved(figure("Maren"), draft(WEARERS["Maren"], None, one(line, by)))
        assert {one.name for one in found} == names
        assert found[0].most == pytest.approx(by, rel=0.12) and [one.most for one in found] == sorted(
            (one.most for one in found), reverse=True
        )
        assert f"The {found[0].name}{',' if ',' in found[0].name else ''} moves by up to" in said_moved(found, "in")[0]

    def test_a_seam_slid_is_moved_by_as_much_on_both_halves(self):
        found = {one.name: one.most for one in moved(figure("Maren"), draft(WEARERS["Maren"], None, one("side seam", 0.5)))}
        # The front's lies a little farther where its open side dart has turned.
        assert found["back side seam"] == pytest.approx(0.5, abs=0.01) and 0.49 < found["front side seam"] < 0.55
        assert not any(name.startswith(("tightening", "centre", "back dart", "lacing")) for name in found)

    def test_a_line_is_measured_as_anew(self):
        """The stated move is the largest distance between both lines, measured by shapely."""
        plain, after = figure("Ottilie"), draft(WEARERS["Ottilie"], None, one("underbust line", 0.6))
        for one_line in moved(plain, after):
            if one_line.most is not None and len(one_line.before) == 1 and one_line.name.startswith(("front", "underbust")):
                far = anew.line(one_line.before).hausdorff_distance(anew.line(one_line.after))
                assert one_line.most == pytest.approx(far, abs=0.02), one_line.name

    def test_a_seam_that_changed_says_by_how_much(self):
        after = draft(WEARERS["Maren"], None, one("hem at the side", 1.0))
        found = {one.name: one for one in walked(figure("Maren"), after)}
        assert found["side seam"].before - found["side seam"].after == pytest.approx(1.0, abs=0.05)
        lines = said_walked(tuple(found.values()))
        assert any(line.startswith("The side seam is 1 cm shorter") for line in lines)
        assert re.fullmatch(r"All \d+ seams are walked again: no two sides differ by more than [\d.]+ mm\.", lines[-1])


class TestKept:
    MADE = (Correction("underbust line", 0.3), Correction("side seam", -0.2), Correction("underbust line", 0.2))

    def test_what_is_kept_comes_back_in_its_order(self, tmp_path):
        place = tmp_path / "fittings.json"
        assert kept.read_file(place) == kept.Kept()
        one_pass = kept.Kept().with_more("Maren", self.MADE).with_more("Ottilie Ödegård", self.MADE[:1])
        kept.write_file(place, one_pass)
        assert kept.read_file(place) == one_pass and kept.read(kept.written(one_pass)) == one_pass
        assert one_pass.with_more("Maren", self.MADE[:1]).of("Maren") == (*self.MADE, self.MADE[0])
        assert one_pass.with_only("Maren", self.MADE[:1]).of("Maren") == self.MADE[:1]
        assert "Maren" not in one_pass.with_only("Maren", ()).by_wearer
        assert one_pass.of("Nobody") == ()
        assert everything(draft(WEARERS["Maren"], None, kept.read_file(place).of("Maren"))) == everything(
            draft(WEARERS["Maren"], None, self.MADE)
        )

    def test_what_is_not_known_is_left_out_and_told(self):
        told = {
            "Maren": [
                {"line": "side seam", "by": 0.2},
                {"line": "cuff", "by": 0.2},
                {"line": "side seam", "by": 9},
                {"line": "side seam"},
                7,
                {"line": ["x"], "by": {}},
            ],
            "Brid": None,
        }
        found = kept.read(json.dumps({"corrections": told, "later": 1}))
        assert found.by_wearer == {"Maren": (Correction("side seam", 0.2),)}
        assert len(found.left_out) == 6 and all(
            one.startswith(("Maren: ", "Brid: ")) and "\n" not in one for one in found.left_out
        )

    @pytest.mark.parametrize("text", ["", "[]", "nothing", "{}", '{"corrections": []}', '{"corrections": 1}', "[" * 100_000])
    def test_a_text_that_holds_none_is_refused(self, text, tmp_path):
        with pytest.raises(CorsetkitError, match="no kept corrections"):
            kept.read(text)
        place = tmp_path / "fittings.json"
        place.write_text(text, encoding="utf-8")
        with pytest.raises(CorsetkitError, match="fittings.json was not read"):
            kept.read_file(place)

    def test_a_file_that_is_no_text_or_no_file_is_refused(self, tmp_path):
        place = tmp_path / "fittings.json"
        place.write_bytes(b"\xff\xfe\x00")
        for wrong in (place, tmp_path):
            with pytest.raises(CorsetkitError, match="was not read"):
                kept.read_file(wrong)

    def test_nothing_that_cannot_be_applied_is_kept(self):
        with pytest.raises(CorsetkitError, match="^Maren: correction of side seam is 2 cm"):
            kept.Kept().with_more("Maren", one("side seam", 2.0))
        with pytest.raises(CorsetkitError, match="fittings"):
            kept.write_file("/nowhere/at/all/fittings.json", kept.Kept())
