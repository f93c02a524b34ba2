"""The overbust lesson's own drawings measured a second way: cups on the body, guides, pulled edge, quarrel and guess."""

import math
import re
import subprocess
import sys
from itertools import combinations
from types import SimpleNamespace

import anew
import pytest
import shapely
from figures import WEARERS
from matplotlib.figure import Figure
from scipy.special import ellipeinc

from corsetkit import Style, demo_wearers
from corsetkit.drawing.canvas import JOINED, recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.drawing.step_lines import ghosts
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.quantity import quantities
from corsetkit.steps.overbust import SIDE_STRIP
from corsetkit.steps.run import run_steps
from corsetkit.teaching import lesson
from corsetkit.teaching.build import LESSONS
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.lessons.overbust import lesson as module
from corsetkit.teaching.lessons.overbust import quarrel as quarrels
from corsetkit.teaching.lessons.overbust.on_a_body import DEPTH, Front, body_sheet
from corsetkit.teaching.lessons.overbust.overbust_sheet import overbust_sheet, yoke_halves
from corsetkit.teaching.lessons.overbust.pictures import (
    COVERING,
    Pulled,
    asking,
    body_picture,
    depth_said,
    guides_picture,
    pulled_picture,
    pulled_sheet,
)
from corsetkit.teaching.shared.clipping import clipped
from corsetkit.teaching.shared.cup_guides import dart_sheet, guides_sheet
from corsetkit.units import say_length

INCH = 2.54
METHODS = ("wearer", "guides")
BOTH = [(name, method) for name in WEARERS for method in METHODS]
LESSON = lesson("03_overbust")


def steps_of(name, **style):
    return run_steps(WEARERS[name], Style(**style), until="overbust")


def desk_for(name):
    desk = Desk()
    desk.change(wearer=name)
    return desk


def sheets(name, **style):
    """Every sheet of the lesson's own, in the states that take most room."""
    try:
        steps = steps_of(name, **style)
    except CorsetkitError:
        return
    usual = steps_of(name).overbust
    across = (Line(steps.overbust.top_left, steps.overbust.top_right),)
    yield guides_sheet(steps, "in", "Guides")
    yield dart_sheet(steps, across, "cm", "Dart")
    yield body_sheet(steps, usual, "in", "Body")
    for share in (0.0, 0.5, 1.0):
        yield pulled_sheet(steps, share, 1 - share, "cm", "Pulled")
    for unit in ("in", "cm"):
        yield overbust_sheet(steps, unit, f"Overbust for {name}", ghosts(steps, "overbust", steps_of(name)))


ENDS = [{one.name: end} for one in quantities(Style) if one.name in (*COVERING, "least_strip", "centre_front_taking_in")
        for end in (one.low, one.high)]  # fmt: skip


@pytest.mark.parametrize(("name", "method"), BOTH)
def test_words_keep_apart_and_all_stays_on_the_sheet(name, method):
    """In every sheet, also at both ends of what the lesson's sliders offer, no two texts meet and nothing lies outside."""
    for style in [{}, *ENDS]:
        for sheet in sheets(name, method=method, **style):
            drawn = recorded(sheet)
            boxes = [written.box for written in drawn.written]
            assert not [(a, b) for a, b in combinations(boxes, 2) if overlap(a, b)], (sheet.title, style)
            ends = [complex(x, y) for box in boxes for x, y in (box[:2], box[2:])]
            ends += [p for call in (*drawn.of("line"), *drawn.of("area")) for p in paths.flattened(call.what[0], 0.1)]
            for p in ends:
                assert sheet.low.real - 0.01 <= p.real <= sheet.high.real + 0.01, (sheet.title, style, p)
                assert sheet.low.imag - 0.01 <= p.imag <= sheet.high.imag + 0.01, (sheet.title, style, p)


@pytest.mark.parametrize(("name", "method"), BOTH)
def test_the_tinted_parts_are_cup_and_yoke(name, method):
    """Measured by shapely: the four tinted parts lie apart, and each border of the yoke is a line of the draft."""
    steps = steps_of(name, method=method)
    o, calls = steps.overbust, recorded(overbust_sheet(steps, "in", "Overbust"))
    tints = {
        kind: [anew.area(call.what[0]) for call in calls.of("area") if call.what[1].kind == kind] for kind in ("cup", "yoke")
    }
    assert [len(parts) for parts in tints.values()] == [2, 2]
    for a, b in combinations([part.buffer(0) for parts in tints.values() for part in parts], 2):
        assert a.intersection(b).area < 0.02
    centre = (Line(o.block.front.neck_centre, o.front_point),)
    drawn = shapely.union_all(
        [
            anew.line(path)
            for path in (o.top_inner, o.top_outer, o.yoke_neckline, o.armscye_shoulder_part, o.block.front.shoulder, centre)
        ]
    )
    legs = shapely.union_all([anew.line((Line(o.mid_shoulder, end),)) for end in (o.top_left, o.top_right)])
    for half in yoke_halves(o):
        assert anew.area(half).exterior.difference(shapely.union(drawn, legs).buffer(0.02)).length < 0.05
    words = [written.text for written in calls.written]
    assert words.count("cup") == 2 and words.count("yoke") >= 1 and "centre-front dart" in words


def test_a_line_is_told_with_its_whole_length_where_only_a_part_of_it_is_shown():
    """The underbust dart's legs run on below the sheet; their facts keep the draft's own length and partner."""
    steps = steps_of("Maren")
    told = [call.facts for call in recorded(overbust_sheet(steps, "in", "O")).of("line")]
    facts = {one["name"]: one for one in told if "name" in one}
    inner, outer = (facts[f"underbust dart, {side} leg"] for side in ("inner", "outer"))
    assert (inner["partner"], outer["partner"]) == ("underbust dart, outer leg", "underbust dart, inner leg")
    assert inner["length"] == outer["length"] and inner["seam"] == outer["seam"]
    leg = anew.line((Line(steps.block.bust_point, steps.underbust.inner), *steps.underbust.inner_leg)).length
    assert inner["length"] == say_length(leg, "in") and leg > steps.underbust.radius + 5
    assert "lower side seam, back" not in facts and "seam" not in facts["lower side seam, front"]


@pytest.mark.parametrize("name", WEARERS)
def test_what_is_cut_off_at_a_border_is_what_lies_inside(name):
    """Held against shapely's own cut of the same line."""
    front, box = steps_of(name).block.front, (3.0, -4.0, 15.0, 30.0)
    for path in (front.armscye, front.side_waist, front.dart_legs[0] if front.dart_legs else front.neckline, front.shoulder):
        inside = anew.line(path).intersection(shapely.box(*box)).length
        # A curve that grazes the border leaves it a little sooner or later, for it is cut as short straight lines.
        assert sum(curve.length for curve in clipped(path, box)) == pytest.approx(inside, abs=0.1)
        wide = clipped(path, (-99, -99, 199, 199))
        assert wide == tuple(path)
    assert clipped(front.shoulder, (50, 50, 60, 60)) == ()


@pytest.mark.parametrize(("name", "method"), BOTH)
def test_where_the_depth_stops_is_said_just_there(name, method):
    """The sentence stands where a greater depth leaves the cups' point where it is, and nowhere else."""
    for eighths in range(24, 72, 5):
        here, more = (steps_of(name, method=method, centre_front_depth=one * INCH / 8) for one in (eighths, eighths + 1))
        still = abs(here.overbust.front_point - more.overbust.front_point) < 1e-9
        told = list(depth_said(here, "in"))
        if told:
            assert still and "moves nothing" in told[0]
        elif still:
            # The depth asks for just what is drawn, as a tape reads it.
            low = here.block.front.neck_centre.imag - here.overbust.front_point.imag
            assert say_length(low, "in") == say_length(eighths * INCH / 8, "in")


@pytest.mark.parametrize("name", WEARERS)
@pytest.mark.parametrize(
    "ends",
    [
        {},
        *(
            {name: inches * INCH}
            for name, inches in (
                ("overbust_mark", 1.5),
                ("overbust_mark", 4.5),
                ("overbust_armscye", 2),
                ("overbust_armscye", 6),
            )
        ),
    ],
)
def test_the_top_edge_on_the_body_has_no_steps(name, ends):
    """At the ends of the sliders too it runs from the centre outwards without turning back, and without a corner."""
    try:
        o = steps_of(name, **ends).overbust
    except CorsetkitError as error:
        assert "tightening dart would take" in str(error)
        return
    inner, outer = Front(o).top()
    assert anew.corner((inner,), (outer,)) == pytest.approx(180, abs=0.1)
    across = [x for x, _ in anew.points((inner, outer))]
    assert all(b > a - 0.02 for a, b in zip(across, across[1:]))


def strokes(sheet, kind):
    """The runs drawn with a pen of that kind, the samples of the row below left out."""
    return [call.what[0] for call in recorded(sheet).of("line") if call.what[1].kind == kind and not call.groups]


@pytest.mark.parametrize(("name", "method"), BOTH)
def test_circles_and_guides_are_drawn_at_their_lengths(name, method):
    """The circles go round the bust point through their marks; each guide's bar is as long as the style says, from the bust
    point or the side seam."""
    steps = steps_of(name, method=method)
    o, style, sheet = steps.overbust, steps.style, guides_sheet(steps, "in", "Guides")
    circles = strokes(sheet, "guide")
    for path, mark in zip(circles, (o.mark, steps.underbust.mark), strict=True):
        for x, y in anew.points(path):
            assert abs(complex(x, y) - o.bust_point) == pytest.approx(abs(mark - o.bust_point), rel=1e-3)
    bars = [path for path in strokes(sheet, "fixed-guide") if abs((path[0].end - path[0].start).imag) < JOINED]
    point, side = o.bust_point.real, o.block.front.width
    wanted = (point, point - style.guide_to_front), (point, point + style.guide_to_side), (side, side - 1.75 * INCH)
    assert [(path[0].start.real, path[0].end.real) for path in bars] == [pytest.approx(ends) for ends in wanted]
    # No two of them make one bar.
    assert len({round(path[0].start.imag, 3) for path in bars}) == 3


@pytest.mark.parametrize(("name", "method"), BOTH)
@pytest.mark.parametrize("share", [0.0, 0.3, 1.0])
def test_the_pulled_edge_by_trigonometry(name, method, share):
    """The gap is the chord of what is left of the dart's angle; edge and outline keep their lengths while they turn; at the
    end leg lies on leg; and what is said in all adds up."""
    o = steps_of(name, method=method).overbust
    pulled, radius = Pulled(o, share, share / 2), math.hypot(o.top_intake / 2, abs(o.mark - o.bust_point))
    whole = 2 * math.atan(o.top_intake / 2 / abs(o.mark - o.bust_point))
    assert pulled.gap == pytest.approx(2 * radius * math.sin((1 - share) * whole / 2), abs=1e-9)
    edge = anew.line(o.top_inner).length + anew.line(o.top_outer).length
    assert pulled.sewn_edge == pytest.approx(edge, abs=1e-3)
    assert pulled.flat_edge - pulled.sewn_edge == pytest.approx(o.top_intake + o.front_point.real)
    level = (1 - share / 2) * o.front_point.real
    assert pulled.edge_now == pytest.approx(edge + pulled.gap + level, abs=1e-3)
    assert o.front_point - pulled.edge_start == pytest.approx(level)
    turned = paths.moved(o.top_outer, pulled.turn)
    assert anew.line(turned).length == pytest.approx(anew.line(o.top_outer).length)
    if share == 1:
        assert pulled.turn(o.top_right) == pytest.approx(o.top_left)
        # Smooth where the closed dart joins the two stretches.
        assert anew.corner(o.top_inner, turned) == pytest.approx(180, abs=0.05)
    # Turning the outer half by an angle opens the underbust dart by that angle.
    under = o.underbust
    opened = 2 * under.radius * math.sin(math.radians(under.half_angle + share * o.top_dart / 2))
    assert pulled.opened == pytest.approx(opened, abs=1e-6)


@pytest.mark.parametrize(("name", "method"), BOTH)
def test_the_paper_is_laid_round_the_oval_that_is_spoken_of(name, method):
    """At the bust level a point is seen where the oval's arc, measured by an elliptic integral, is as long as the paper; a
    quarter of the oval is the front's width."""
    o = steps_of(name, method=method).overbust
    seen, m = Front(o), 1 - DEPTH**2
    assert seen.half * ellipeinc(math.pi / 2, m) == pytest.approx(o.block.front.width, rel=1e-4)
    for share in (0.1, 0.4, 0.7, 0.95):
        along = share * o.block.front.width
        at = seen(complex(along, o.bust_point.imag))
        assert seen.half * ellipeinc(math.asin(at.real / seen.half), m) == pytest.approx(along, rel=2e-3)


@pytest.mark.parametrize(("name", "method"), BOTH)
def test_the_cups_lie_on_the_body(name, method):
    """Both cups meet at the centre, as far below the neck as drawn; the top edge ends on the armscye; the sewn legs' end
    lies on the outline and the cup within the body."""
    steps = steps_of(name, method=method)
    o = steps.overbust
    seen, sheet = Front(o), body_sheet(steps, None, "in", "Body")
    (right, left), skin = strokes(sheet, "new"), recorded(sheet).of("area")[1].what[0]
    outline = anew.line(right)
    assert outline.distance(anew.at(complex(0, o.front_point.imag))) < 1e-6
    over = o.bust_point + o.top_radius * (o.mark - o.bust_point) / abs(o.mark - o.bust_point)
    assert outline.distance(anew.at(seen(over))) < 0.02 and outline.distance(anew.at(seen(o.armscye_top))) < 1e-6
    assert min(outline.bounds[0], -anew.line(left).bounds[2]) > -0.05, "no cup crosses the middle"
    body = anew.area(skin)
    assert anew.area(right).difference(body.buffer(0.25)).area < 0.01
    assert body.area > 2 * anew.area(right).area


@pytest.mark.parametrize("name", dict(demo_wearers()))
def test_what_is_said_of_the_guides_on_each_body_is_what_the_draft_does(name):
    """A body off the line gets the step's warning and one on it none; where the front has no room the cup is shortened."""
    style = Style(method="guides")
    fit, steps = quarrels.fit(name, WEARERS[name], style), steps_of(name, method="guides")
    o = steps.overbust
    warned = " ".join(o.warnings)
    assert ("the guides also ask for" in warned) == (not fit.at_side)
    assert ("nearer to the centre front" in warned) == (fit.at_front == "shortened")
    assert o.side_strip == pytest.approx(fit.left_at_side) and fit.at_front != "refused"
    assert o.bust_point.real - o.guide_front.real == pytest.approx(min(3 * INCH, fit.room_at_front))
    with pytest.raises(CorsetkitError, match="guide to front is"):
        narrow = WEARERS[name].replaced(bust_point_width=13.0)
        assert quarrels.fit(name, narrow, style).at_front == "refused"
        run_steps(narrow, style, until="overbust")


def painted(monkeypatch, chosen, unit):
    """What the chart paints, on a figure of matplotlib's own."""
    kept = SimpleNamespace()
    drawing = svg_text(guides_sheet(steps_of("Maren"), "in", "Any drawing"))
    monkeypatch.setattr(quarrels, "chart", lambda *words: setattr(kept, "paint", words[-1]) or drawing)
    quarrels._chart.cache_clear()
    quarrels.quarrel(demo_wearers(), (chosen, WEARERS[chosen]), {}, unit)
    quarrels._chart.cache_clear()
    figure = Figure()
    kept.paint(figure)
    return figure


@pytest.mark.parametrize(("chosen", "unit", "per"), [("Maren", "in", INCH), ("Ottilie", "cm", 1.0)])
def test_the_chart_shows_each_body_where_it_is(monkeypatch, chosen, unit, per):
    """Each body stands at its two measurements under its name, the desk's by its own shape; on the rising line guide to side
    and strip together are what a quarter of the bust leaves beside the bust point."""
    figure = painted(monkeypatch, chosen, unit)
    (axes,) = figure.axes
    marks = {line.get_marker(): [] for line in axes.lines}
    for line in axes.lines:
        marks[line.get_marker()].append(tuple(float(one[0]) for one in line.get_data()))
    bodies = dict(demo_wearers())
    at = lambda name: pytest.approx((bodies[name].bust_point_width / per, bodies[name].bust_girth / per))
    assert marks["s"] == [at(chosen)]
    others = sorted(bodies.keys() - {chosen}, key=lambda name: bodies[name].bust_point_width)
    assert sorted(marks["o"]) == [at(name) for name in others]
    rising = next(
        line
        for line in axes.lines
        if len(line.get_xdata()) == 2
        and line.get_ydata()[0] != line.get_ydata()[1]
        and line.get_xdata()[0] != line.get_xdata()[1]
    )
    for width, bust in zip(*rising.get_data()):
        assert bust * per / 4 - width * per / 2 == pytest.approx(3.5 * INCH + SIDE_STRIP)
    assert set(bodies) < {text.get_text() for text in figure.texts}


def test_the_chart_is_the_same_bytes_each_time_and_names_no_address():
    code = ("import sys; sys.path.insert(0, sys.argv[1]); from corsetkit import demo_wearers\n"
            "from corsetkit.teaching.lessons.overbust.quarrel import quarrel\n"
            "w = demo_wearers(); print(quarrel(w, w[0], {}, 'in').html)")  # fmt: skip
    htmls = [subprocess.run([sys.executable, "-c", code, str(LESSONS.parent)], capture_output=True, text=True, check=True,
                            env={"PYTHONHASHSEED": seed, "PATH": ""}).stdout for seed in ("1", "2")]  # fmt: skip
    assert htmls[0] == htmls[1]
    assert "data:image/svg+xml,<svg" in htmls[0] and htmls[0].count("://") == 1
    assert not re.search(r"xlink|metadata|DOCTYPE|\d\d:\d\d", htmls[0])
    assert re.search(r'alt="[^"]*Near the line: Maren, Theda, Yrsa\.', htmls[0])


def test_the_quarrel_follows_the_desk_and_says_when_there_is_nobody():
    desk = desk_for("Brid")
    read = module._quarrel_read
    assert "Brid (chosen)" in read(desk).html and repr(read(desk)).splitlines()[1].startswith("Brid: ")
    desk.change(unit="cm", style={"guide_to_side": 4 * INCH})
    assert repr(read(desk)).startswith("The guide to the side, 10.2 cm")
    desk.change(source="own")
    assert repr(read(desk)).startswith("Nothing to compare yet: the wearer's form is not finished; ")


@pytest.mark.parametrize("mark", [1.5, 3.0, 3.5, 4.5])
@pytest.mark.parametrize(("name", "method"), BOTH)
def test_the_guess_by_similar_triangles(name, method, mark):
    """What the dart takes at its mark stays; so its width elsewhere goes as the distance from the bust point."""
    style = {"method": method, "overbust_mark": mark * INCH}
    drafts = Drafts(Desk())
    try:
        steps = run_steps(WEARERS[name], Style(**style), until="overbust")
    except CorsetkitError as error:
        assert "tightening dart would take" in str(error) and mark == 1.5
        return
    drafts.steps = lambda style, until: (name, run_steps(WEARERS[name], Style(**style), until=until))
    asked = LESSON._asked(name, steps, "in", drafts)
    other = mark + 1 if mark <= 3.5 else mark - 1
    intake, place = steps.overbust.top_intake, min(mark, other)
    assert asked.start == pytest.approx(intake * place / mark) and asked.right == pytest.approx(intake * place / other)
    assert 0 < asked.near < abs(asked.right - asked.start) / 2
    assert asked.move(0.0).svg != asked.move(1.0).svg


class TestTables:
    @pytest.mark.parametrize("name", dict(demo_wearers()))
    def test_what_if_is_drawn_and_leaves_her_own_numbers(self, name):
        desk = desk_for(name)
        method, width = asking(desk)
        assert (method.default, width.default) == ("wearer", WEARERS[name].bust_point_width)
        own, drafts = Drafts(desk), Drafts(desk)
        for method in METHODS:
            plain = guides_picture(own, drafts, {"which_method": method})
            assert not plain.said[0].startswith("What if")
            drawn = set()
            for end in (width.low, width.high, 12.0, 34.0):
                try:
                    picture = guides_picture(own, drafts, {"which_method": method, "bust_point_width": end})
                except CorsetkitError as error:
                    assert method == "guides" and "draft it fitted" in str(error)
                    continue
                assert picture.said[0].startswith("What if her bust points lay ") and picture.svg != plain.svg
                drawn.add(picture.svg)
            assert drawn
            assert guides_picture(own, drafts, {"which_method": method}) == plain

    def test_the_way_is_that_of_the_desk_where_none_is_chosen(self):
        desk = desk_for("Maren")
        desk.change(style={"method": "guides"})
        assert asking(desk)[0].default == "guides"
        assert "Maren, fixed guides" in guides_picture(Drafts(desk), Drafts(desk), desk.record.style).svg

    def test_an_unfinished_form_still_has_its_sliders_and_says_why_nothing_is_drawn(self):
        desk = Desk()
        desk.change(source="own")
        assert len(asking(desk)) == 2
        with pytest.raises(CorsetkitError, match="the wearer's form is not finished"):
            guides_picture(Drafts(desk), Drafts(desk), {})

    @pytest.mark.parametrize("name", dict(demo_wearers()))
    def test_how_much_is_covered_is_told_in_her_own_measure(self, name):
        desk = desk_for(name)
        o = steps_of(name).overbust
        said = body_picture(Drafts(desk), Drafts(desk), {}).said
        neck, level = o.block.front.neck_centre.imag, o.bust_point.imag
        shares = [int(one) for one in re.findall(r"(\d+) %", said[1])]
        over = o.top_radius * (o.mark - o.bust_point).imag / abs(o.mark - o.bust_point)
        assert shares == [round(100 * up / (neck - level)) for up in (over, o.front_point.imag - level)]

    def test_the_usual_cup_shows_only_beside_another(self):
        desk = desk_for("Maren")
        draw = lambda values: body_picture(Drafts(desk), Drafts(desk), values).svg
        assert "with the usual values" not in draw({})
        assert "with the usual values" in draw({"overbust_mark": 4 * INCH})

    def test_the_words_say_by_how_much_the_edge_is_shorter(self):
        desk = desk_for("Maren")
        said = pulled_picture(Drafts(desk), {"dart_closed": 1.0, "centre_taken_in": 1.0}).said
        assert "1 3/4 in less than on flat paper" in said[2]
        assert "1 1/4 in less by the dart and 1/2 in less by the taking-in" in said[3]
        assert "(measured), 2 1/2 in less" in said[5] and "(reckoned" in pulled_picture(Drafts(desk_for("Ines")), {}).said[5]
        assert "darts take 2 1/2 in together" in said[5]
        assert said[6].startswith("Left and right of the centre front 1 in more")

    @pytest.mark.parametrize("name", dict(demo_wearers()))
    def test_with_nothing_done_the_edge_is_as_long_as_on_flat_paper(self, name):
        """At the start of both sliders nothing is taken up, and what is done by one adds to what is done by the other."""
        o = steps_of(name).overbust
        said = pulled_picture(Drafts(desk_for(name)), {}).said
        assert said[2].endswith("as long as on flat paper.")
        less = lambda *done: Pulled(o, *done).flat_edge - Pulled(o, *done).edge_now
        assert less(0.0, 0.0) == pytest.approx(0) and less(0.0, 1.0) == pytest.approx(o.front_point.real)
        assert less(1.0, 1.0) == pytest.approx(less(1.0, 0.0) + less(0.0, 1.0))
