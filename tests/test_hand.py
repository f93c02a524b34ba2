"""The draft by hand: its data alone, lengths as a tape of sixteenths is read, lead to every construction mark."""

import re
from dataclasses import fields, is_dataclass, replace
from functools import cache, cached_property
from itertools import combinations

import pytest
from bodies import random_bodies
from following import farthest, follow, length_of

from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.hand.sentences import names_in, say, say_all, say_why
from corsetkit.hand.whole import by_hand, whole_by_hand
from corsetkit.measurements import Measurements
from corsetkit.pattern.instructions import (
    Along,
    Begin,
    Check,
    Compass,
    Curve,
    Halve,
    Join,
    Measure,
    Offset,
    OnLine,
    Same,
    Square,
    Swing,
    Towards,
    Turn,
)
from corsetkit.quantity import quantities
from corsetkit.steps.run import run_steps
from corsetkit.style import Style
from corsetkit.units import CM_PER_INCH
from corsetkit.wearers import demo_wearers

EIGHTH, SIXTEENTH = CM_PER_INCH / 8, CM_PER_INCH / 16
LINE_ROOM = 3 * SIXTEENTH
"""How far a line drawn through followed marks may lie from the draft's own: course convention."""

STYLES = {
    f"{method}, {parts} parts": Style(method=method, cup_parts=parts) for method in ("wearer", "guides") for parts in (2, 3)
}
WEARERS = dict(demo_wearers())
EARLIER = {"block", "underbust", "overbust", "darts", "measurements"}
"""Fields that hold an earlier step's value: its points are that step's."""
BY_EYE = {"inner_top", "outer_top", "inner_low", "outer_low"}
"""Lines trued at the cup seam's ends, by little more than a millimetre: a sentence asks for it, and no mark."""
NOTHING = CM_PER_INCH / 32
"""What a tape of sixteenths reads as nothing: the cup seam's end may slide by so much along the line that it meets."""


@cache
def steps_of(wearer, style):
    return run_steps(WEARERS[wearer], STYLES[style])


@pytest.fixture(params=[(wearer, style) for wearer in WEARERS for style in STYLES], ids=" - ".join)
def steps(request):
    return steps_of(*request.param)


def all_instructions(made):
    return [one for step in made.values() for one in step.instructions]


def all_marks(made):
    return [mark for step in made.values() for mark in step.marks]


def missed(made):
    """The marks that following the data does not reach within 1/8 in, and how far each is missed."""
    reached, _, _ = follow(all_instructions(made))
    assert set(reached) == {mark.name for mark in all_marks(made)}
    return {
        mark.name: abs(reached[mark.name] - mark.point)
        for mark in all_marks(made)
        if not abs(reached[mark.name] - mark.point) <= EIGHTH
    }


def held(value, name):
    """Every point that a step's value holds, by where it is held: its points, and the ends of its runs."""
    found = {}
    asked = [one.name for one in fields(value)]
    asked += [
        key for kind in type(value).__mro__ for key, at in vars(kind).items() if isinstance(at, (property, cached_property))
    ]
    for key in asked:
        # A way is a step without a place; waste and paper are areas made of the lines that are here already.
        if key.endswith("_tangent") or key in ("waste", "front_paper", "back_paper") or key in EARLIER | BY_EYE:
            continue
        if key == "waist" and type(value).__name__ == "Underbust":
            continue
        found.update(_points(getattr(value, key), f"{name}.{key}"))
    return found


def _points(thing, name):
    if isinstance(thing, complex):
        return {name: thing}
    if isinstance(thing, (Line, Cubic)):
        return {f"{name}.start": thing.start, f"{name}.end": thing.end}
    if isinstance(thing, tuple) and thing and isinstance(thing[0], (Line, Cubic)):
        return {f"{name}.start": thing[0].start, f"{name}.end": thing[-1].end}
    if isinstance(thing, tuple):
        return {at: p for k, one in enumerate(thing) for at, p in _points(one, f"{name}[{k}]").items()}
    if is_dataclass(thing) and hasattr(thing, "then"):
        return {}
    return held(thing, name) if is_dataclass(thing) else {}


def test_hand_reaches_every_mark(steps):
    assert missed(whole_by_hand(steps)) == {}


def test_every_construction_point_is_a_mark(steps):
    made = whole_by_hand(steps)
    marks, lost = [], {}
    for name, step in made.items():
        marks += [mark.point for mark in step.marks]
        points = held(getattr(steps, name), name)
        for at, point in points.items():
            if min(abs(point - mark) for mark in marks) > (NOTHING if ".seam." in at else 1e-6):
                lost[at] = point
        assert points
    assert lost == {}


def test_random_bodies_are_reached_too():
    refused, followed = 0, 0
    for body in random_bodies(30, 11):
        for style in STYLES.values():
            try:
                made = whole_by_hand(run_steps(body, style))
            except CorsetkitError:
                refused += 1
                continue
            followed += 1
            assert missed(made) == {}, body
    assert followed >= 100 and refused <= 12


@pytest.mark.parametrize("quantity", [one for one in quantities(Style) if one.is_number], ids=lambda one: one.name)
def test_sliders_ends_are_reached_too(quantity):
    followed = 0
    for wearer in ("Maren", "Ottilie"):
        for value in (quantity.low, quantity.high):
            for method in ("wearer", "guides"):
                try:
                    style = Style(method=method, front_opening=True, back_opening=True, **{quantity.name: value})
                    made = whole_by_hand(run_steps(WEARERS[wearer], style))
                except CorsetkitError:
                    continue
                followed += 1
                assert missed(made) == {}
    assert followed


def test_a_front_without_side_dart_is_reached_too(steps):
    body = steps.measurements
    shorter = body.replaced(front_waist_length=body.back_waist_length + 1.5)
    try:
        drawn = run_steps(shorter, steps.style)
    except CorsetkitError:
        pytest.skip("this wearer cannot be drafted without her side dart")
    assert not drawn.block.side_dart
    assert missed(whole_by_hand(drawn)) == {}


def test_a_wrong_length_misses_a_mark():
    """What the tests above rest on: the marks come from the lengths, and nothing else leads to them."""
    made = whole_by_hand(steps_of("Maren", "wearer, 3 parts"))
    points = {mark.name: mark.point for mark in all_marks(made)}
    changed = 0
    for number, one in enumerate(all_instructions(made)):
        key = {Measure: "length", Offset: "aside", Swing: "second_length"}.get(type(one))
        if key is None:
            continue
        wrong = all_instructions(made)
        wrong[number] = replace(one, **{key: getattr(one, key) + CM_PER_INCH})
        reached, _, _ = follow(wrong)
        assert abs(reached[one.to] - points[one.to]) > EIGHTH, one
        changed += 1
    assert changed > 50


def test_data_hold_no_point_but_where_a_hand_begins(steps):
    def parts(thing):
        return (
            [getattr(thing, one.name) for one in fields(thing)]
            if is_dataclass(thing)
            else list(thing)
            if isinstance(thing, tuple)
            else []
        )

    begun = 0
    for one in all_instructions(whole_by_hand(steps)):
        todo = parts(one)
        while todo:
            thing = todo.pop()
            if isinstance(thing, complex):
                assert isinstance(one, Begin)
                begun += 1
            assert isinstance(thing, (str, float, bool, complex, tuple, Compass, Towards, Along, Square, OnLine, type(None)))
            todo += parts(thing)
    assert begun == 2


def test_names_are_unique(steps):
    made = whole_by_hand(steps)
    marks = [mark.name for mark in all_marks(made)]
    lines = [name for step in made.values() for name, _ in step.lines]
    assert len(set(marks)) == len(marks) > 100
    assert len(set(lines)) == len(lines) > 50


def test_lines_drawn_through_the_marks_are_the_drafts(steps):
    made = whole_by_hand(steps)
    _, drawn, _ = follow(all_instructions(made))
    for step in made.values():
        for name, path in step.lines:
            true = paths.flattened(path, 0.01)
            assert max(farthest(drawn[name], true), farthest(true, drawn[name])) <= LINE_ROOM, name


def test_lines_that_bound_a_step_are_drawn(steps):
    """Every named run that a cup's or the back's edge is made of is drawn by hand: none is left to be guessed."""
    made = whole_by_hand(steps)
    all_paths = [path for step in made.values() for _, path in step.lines]
    over, under, back = steps.overbust, steps.underbust, steps.back
    for path in (
        over.top_inner,
        over.top_outer,
        over.yoke_neckline,
        steps.darts.inner.line,
        steps.darts.outer.line,
        under.hem,
        under.parting,
        steps.cup.seam.inner,
        steps.cup.seam.outer,
        back.hem.whole,
        back.yoke_line.whole,
        back.neckline.whole,
        back.upper_parting,
        back.lower_parting,
        steps.block.front.neckline,
    ):
        assert path in all_paths


def test_checks_say_what_they_should_measure(steps):
    made, body = whole_by_hand(steps), steps.measurements
    _, _, checks = follow(all_instructions(made))
    should = {one.lines: one.length for one, _ in checks}
    assert should[("front shoulder",)] == pytest.approx(body.shoulder_length, abs=1e-9)
    assert should[("front neckline", "back neckline")] == pytest.approx(body.neck_base_girth / 2, abs=1e-6)
    front = should[("front side seam above the bust level", "front side seam down to the waist")]
    mark = next(one for one in all_instructions(made) if getattr(one, "to", "") == "back side seam's waist mark")
    back = mark.on_line.length + paths.path_length(steps.block.back.side_above)
    assert front == pytest.approx(back, abs=1e-6)
    assert should[("inner cup's seam",)] == pytest.approx(should[("outer cup's seam",)], abs=1e-4)
    for one, measured in checks:
        assert measured == pytest.approx(one.length, abs=EIGHTH), one.lines


def test_lengths_along_a_line_lead_to_the_mark(steps):
    made = whole_by_hand(steps)
    points = {mark.name: mark.point for mark in all_marks(made)}
    all_paths = {name: path for step in made.values() for name, path in step.lines}
    told = 0
    for one in all_instructions(made):
        where = getattr(one, "on_line", None)
        if where is None:
            continue
        told += 1
        at, rest = points[where.start], where.length
        for line in where.lines:
            path = all_paths[line] if abs(all_paths[line][0].start - at) < 1e-6 else paths.turned_round(all_paths[line])
            assert abs(path[0].start - at) < 1e-6
            at, rest = paths.point_along(path, min(rest, paths.path_length(path))), rest - paths.path_length(path)
        assert rest <= 1e-9
        assert abs(at - points[one.to]) < 1e-6, one.to
    assert told >= 3


def test_one_step_alone_is_the_same_as_in_the_whole(steps):
    for name, made in whole_by_hand(steps).items():
        assert by_hand(name, getattr(steps, name), steps.style) == made


@pytest.mark.parametrize("unit, other", [("in", "cm"), ("cm", "in")])
def test_every_instruction_is_one_plain_sentence(steps, unit, other):
    for one in all_instructions(whole_by_hand(steps)):
        for text in (say(one, unit), say_why(one, unit), say_why(one, unit, steps.measurements, steps.style)):
            assert re.fullmatch(r"[A-Z].*[^.]\.", text) and not re.search(r"\. [A-Z]", text), text
            assert not re.search(r"None|nan|[{}<>_]|the the | 0 (in|cm)\b(?!\))| -|  ", text), text
            assert not re.search(rf"\d {other}\b", text), text
        lengths = [getattr(one, key) for key in ("length", "aside", "first_length", "second_length") if hasattr(one, key)]
        assert len(re.findall(rf"\d {unit}\b", say(one, unit))) == len(lengths) + bool(getattr(one, "on_line", None))
        for mark in [getattr(one, key) for key in ("start", "to", "first", "second", "about", "line") if hasattr(one, key)]:
            assert mark in say(one, unit)


def test_reasons_name_declared_values_and_leave_none_out():
    """Each measurement, and each style value that moves a line, is named where it is used."""
    named = {method: set() for method in ("wearer", "guides")}
    for style in STYLES.values():
        style = style.replaced(back_opening=True, front_opening=True, centre_panels=2, side_panels=2)
        plain, folded = WEARERS["Maren"], WEARERS["Maren"].replaced(bust_point_to_fold=8.0)
        for body, chosen in ((plain, style), (folded, style.replaced(reduction_at_front=0.25))):
            for one in all_instructions(whole_by_hand(run_steps(body, chosen))):
                named[style.method] |= set(names_in(one.because))
    declared = {one.name for kind in (Measurements, Style) for one in quantities(kind)}
    # What is chosen and not measured.
    elsewhere = {"method", "cup_parts", "yoke", "front_opening", "back_opening"}
    assert named["wearer"] | named["guides"] == declared - elsewhere
    only_guides = {"corset_length", "underbust_mark", "underbust_dart", "overbust_dart", "guide_to_front", "guide_to_side"}
    assert named["guides"] - named["wearer"] == only_guides


def test_a_slip_in_a_reason_stops_nothing():
    """A name that is none, or a length that cannot be read, is said as it stands; what is known beside it is filled."""
    slip = Same("a", "b", because="The {bust_girt} and {1,9 cm}; the {bust_girth} and {2.54 cm}.")
    assert say_why(slip, "in") == "The {bust_girt} and {1,9 cm}; the bust girth and 1 in."


def test_steps_are_numbered():
    made = by_hand("block", steps_of("Maren", "wearer, 3 parts").block, Style())
    lines = say_all(made.instructions, "in", why=True)
    assert len(lines) == len(made.instructions)
    assert lines[1] == (
        "2. From the centre front waist measure 6 1/2 in straight up, then 3 3/4 in level towards the "
        "front's side, and mark the bust point. The height is the front waist length less the neck to bust point; "
        "the distance from the centre is half of the bust point width."
    )
    metric = say_all(made.instructions, "cm")[1]
    assert metric.startswith("2. From the centre front waist measure 16.5 cm straight up, then 9.5 cm level")


def test_the_follower_against_plain_cases():
    """Right triangles of 3, 4 and 5 in, a fold, a quarter turn: worked out beforehand, not by the package."""
    inch = CM_PER_INCH
    why = {"because": "So."}
    reached, drawn, checks = follow(
        (
            Begin("a", 1 + 1j, "here", **why),
            Measure("a", Compass.FRONT_TO_SIDE, 4.02 * inch, "b", **why),
            Measure("b", Compass.UP, 3 * inch, "c", **why),
            Swing("a", 4 * inch, "c", 3 * inch, True, "left", **why),
            Swing("a", 4 * inch, "c", 3 * inch, False, "right", **why),
            Halve("a", "c", "middle", **why),
            Offset("a", Towards("b"), 1 * inch, Square("a", "b", True), 2 * inch, "aside", **why),
            Measure("c", Along("a", "b"), 1 * inch, "further", **why),
            Same("c", "again", **why),
            Measure("a", Compass.UP, 9 * inch, "above", **why),
            Turn("a", "b", "above", (("c", "c2"),), **why),
            Join("a", "c", "long side", **why),
            Curve(("b", "c"), "arc", Compass.FRONT_TO_SIDE, Compass.FRONT_TO_CENTRE, **why),
            Check(("long side",), 5 * inch, **why),
        )
    )
    should = {
        "b": 4,
        "c": 4 + 3j,
        "right": 4,
        "left": 1.12 + 3.84j,
        "middle": 2 + 1.5j,
        "aside": 1 + 2j,
        "further": 5 + 3j,
        "again": 4 + 3j,
        "c2": -3 + 4j,
    }
    for name, place in should.items():
        assert abs(reached[name] - (1 + 1j) - place * inch) < 1e-9, name
    assert checks[0][1] == pytest.approx(5 * inch)
    assert length_of(drawn["arc"]) > 3 * inch and max(p.real for p in drawn["arc"]) > 1 + 4.5 * inch


def test_marks_of_a_step_keep_apart(steps):
    """A mark that falls on another is said to be the same, so that no hand looks for a second one.

    Turned marks may fall on others: a closed dart's legs do.
    """
    for made in whole_by_hand(steps).values():
        same = {one.to for one in made.instructions if isinstance(one, Same)}
        same |= {new for one in made.instructions if isinstance(one, Turn) for _, new in one.moved}
        near = [(a.name, b.name) for a, b in combinations(made.marks, 2) if abs(a.point - b.point) < 1e-6]
        assert all(a in same or b in same for a, b in near), near
