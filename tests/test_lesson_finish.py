"""Lesson 08: what its drawings, tables and sentences claim, checked a second way."""

import math
import re
from base64 import b64decode
from urllib.parse import unquote

import anew
import pytest
from shapely import LineString, Polygon, unary_union

from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.marks import seam_letter
from corsetkit.errors import CorsetkitError
from corsetkit.finish.bill import bill
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import finish
from corsetkit.finish.lacing import RIM
from corsetkit.folder_record import RECORD
from corsetkit.output import FILES, SVG
from corsetkit.pattern.edge import Kind
from corsetkit.quantity import quantities
from corsetkit.style import Style
from corsetkit.teaching import cells as course
from corsetkit.teaching import lesson
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.lessons.finish.bill_board import bill_board
from corsetkit.teaching.lessons.finish.bones import bones_sheet
from corsetkit.teaching.lessons.finish.corner_folded import seam_corners, seam_ends, sticking_out
from corsetkit.teaching.lessons.finish.corners import Corners, corner_sheet
from corsetkit.teaching.lessons.finish.lesson import ASKED, _most_hollow
from corsetkit.teaching.lessons.finish.on_paper import by_hand, by_tape
from corsetkit.teaching.lessons.finish.pictures import bones_picture, notch_pairs, notch_picture, parallel
from corsetkit.teaching.lessons.finish.printed_square import printed, square_picture
from corsetkit.teaching.lessons.finish.ready import ALL, looked_at, ready_picture, width_at_waist
from corsetkit.teaching.lessons.finish.walked_paper import paper_of, walk_table, walkable, walked_picture
from corsetkit.teaching.play import Play
from corsetkit.teaching.record import Record, read, written
from corsetkit.teaching.shared.files_written import CHOICES, write_files
from corsetkit.teaching.shared.finished_drafts import Finishing, choices_in, offered
from corsetkit.teaching.widgets import heard_by
from corsetkit.units import CM_PER_INCH, parse_length, say_length

LESSON = lesson("08_finish")
WEARERS = list(Desk().demo)


def drafts_of(wearer, unit="in", **style):
    desk = Desk()
    desk.change(wearer=wearer, unit=unit, style=style)
    return Finishing(desk)


class TestKept:
    def test_style_and_finish_share_no_name(self):
        assert not {one.name for one in quantities(Style)} & {one.name for one in quantities(Finish)}

    def test_the_finishing_is_kept_and_read_defensively(self):
        record = Record(finish={"panel_allowance": 2.0, "facing": "folded"})
        assert read(written(record)) == record
        text = written(record).replace("2.0", "99").replace('"facing"', '"no such choice"')
        assert read(text).finish == {}
        assert read('{"finish": 7}').finish == {}

    def test_an_allowance_goes_to_the_finish_and_the_style_stays(self, work):
        course.desk().change(style={"cup_parts": 2})
        table = LESSON.drawing()
        table.answer({"kind": "set", "changes": {"panel_allowance": {"text": "2 cm"}}, "keep": True}, [])
        assert course.desk().record.finish == {"panel_allowance": 2.0}
        assert course.desk().record.style == {"cup_parts": 2}
        # Another cell's table sees it, and keeps it when it changes a choice of its own.
        bones = LESSON.bones()
        bones.answer({"kind": "set", "changes": {"bone_width": {"text": "1 cm"}}, "keep": True}, [])
        assert course.desk().record.finish == {"panel_allowance": 2.0, "bone_width": 1.0}
        assert course.Desk(work).record.finish == course.desk().record.finish

    def test_what_is_taken_over_is_what_would_be_finished_anew(self):
        """Each choice in turn, moved on a desk that has finished with the defaults before."""
        drafts = drafts_of("Brid")
        for one in offered():
            drafts.finished({})
            value = one.choices[-1] if one.choices else one.high
            try:
                _, took = drafts.finished({one.name: value})
            except CorsetkitError:
                continue
            new = finish(took.pattern, Finish(**{one.name: value}))
            assert took.choices == new.choices and took.strips == new.strips
            assert [piece.cutting for piece in took.pieces] == [piece.cutting for piece in new.pieces], one.name
            assert bill(took).lacing_open == bill(new).lacing_open

    def test_a_refused_allowance_is_one_sentence(self):
        drafts = drafts_of("Maren")
        with pytest.raises(CorsetkitError, match="panel allowance is 9 cm"):
            choices_in({"panel_allowance": 9.0})
        play = Play(
            LESSON.panels, (*looked_at(drafts), *LESSON.offered()), {}, "in", lambda values: ready_picture(drafts, values)
        )
        play.handle({"kind": "set", "changes": {"panel_allowance": {"text": "9 cm"}}})
        assert play.refused == "Panel allowance is 3 9/16 in: allowed are 1/4 to 1 1/8 in."


@pytest.mark.parametrize("wearer", WEARERS)
class TestReady:
    def test_one_piece_alone_is_cut_as_in_the_whole_pattern(self, wearer):
        drafts = drafts_of(wearer)
        _, whole = drafts.finished({"panel_allowance": 2.1})
        for one in whole.pieces:
            _, _, alone = drafts.piece({"panel_allowance": 2.1}, one.piece.number)
            assert (alone.cutting, alone.allowances, alone.layers) == (one.cutting, one.allowances, one.layers)
            assert [(n.point, n.count, n.depth) for n in alone.notches] == [(n.point, n.count, n.depth) for n in one.notches]

    def test_the_widths_at_the_waist_are_those_shapely_measures(self, wearer):
        _, finished = drafts_of(wearer).finished({})
        level, seen = LineString([(-300, 0), (300, 0)]), 0
        for one in finished.pieces:
            if across := width_at_waist(one):
                seen += 1
                assert across[0] == pytest.approx(anew.area(one.piece.path).intersection(level).length, abs=2e-3)
                assert across[1] == pytest.approx(one.outline.intersection(level).length, abs=2e-3)
        assert seen >= 4

    def test_each_piece_and_the_whole_is_drawn_with_its_cutting_line_once(self, wearer):
        drafts = drafts_of(wearer)
        count = looked_at(drafts)[0].high
        for number in range(count + 1):
            picture = ready_picture(drafts, {"piece": number})
            assert picture.svg.count('data-edge="cutting line"') == (count if number == ALL else 1)
            assert picture.said and all(one.endswith(".") for one in picture.said)


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize("wearer", WEARERS)
def test_the_guess_is_what_shapely_and_plain_trigonometry_say(wearer, unit):
    drafts = drafts_of(wearer, unit)
    asked = LESSON._asked_of(drafts.desk, drafts)
    piece, edge = _most_hollow(drafts.pattern({})[1])
    assert asked.start == pytest.approx(anew.line(edge.path).length, abs=1e-3)
    assert say_length(asked.start, unit) in asked.question and say_length(ASKED, unit) in asked.question
    # Length at a distance is length less distance times angle, for a line that bends one way on the whole.
    points = anew.points(edge.path)
    tangents = [math.atan2(*(b - a)[::-1]) for a, b in zip(points, points[1:])]
    turned = sum(math.remainder(b - a, math.tau) for a, b in zip(tangents, tangents[1:]))
    assert asked.right == pytest.approx(asked.start + ASKED * turned, abs=0.03)
    assert asked.start - asked.right > 2 * asked.near, "there is something to see"
    for slip, _ in asked.slips:
        assert abs(slip - asked.right) > asked.near, "a slip is no right answer"
    assert len({asked.move(share).svg for share in (0.0, 0.5, 1.0)}) == 3
    # The line that is drawn lies where it should.
    drawn, piece_area = parallel(edge, ASKED)[0], anew.area(piece.path)
    for curve in drawn[::20]:
        assert anew.at(curve.start).distance(piece_area) <= ASKED + 1e-3
        assert anew.line(edge.path).distance(anew.at(curve.start)) == pytest.approx(ASKED, abs=0.02)


@pytest.mark.parametrize("wearer", WEARERS)
class TestCorners:
    def test_two_neighbours_have_angles_that_make_a_straight_line_and_the_sharper_comes_first(self, wearer):
        pattern = drafts_of(wearer).pattern({})[1]
        ends = seam_ends(pattern, Finish())
        assert len(ends) >= 8
        for _, ((_, one), (_, two)) in ends:
            assert one.angle <= two.angle and one.angle + two.angle == pytest.approx(180, abs=1.0)
        off = [abs(90 - found[0][1].angle) for _, found in ends]
        assert off == sorted(off, reverse=True)

    def test_pressed_allowances_stay_within_the_piece_and_plain_ones_stick_out_by_twice_the_slant(self, wearer):
        """A plain corner's end is the mirror image of what would lie on the edge: it is off by 2 s / tan a."""
        for _, _, (sharp, _blunt) in seam_corners(drafts_of(wearer).pattern({})[1], Finish()):
            pressed = [complex(-p.real, p.imag) for p in sharp.flap]
            # Near its end a seam is drawn straight, which costs a little where it bends.
            assert sticking_out(pressed, sharp) < 0.03
            plain = [complex(-p.real, p.imag) for p in sharp.plain]
            wanted = 2 * sharp.width / math.tan(math.radians(sharp.angle))
            assert sticking_out(plain, sharp) == pytest.approx(wanted, abs=1e-6) and wanted > 0

    def test_the_outer_borders_end_on_the_cutting_lines_equally_far_beyond_the_seam(self, wearer):
        for _, _, corners in seam_corners(drafts_of(wearer).pattern({})[1], Finish()):
            assert corners[0].reach() == pytest.approx(corners[1].reach())
            for one in corners:
                end = complex(one.width, -one.reach())
                # Above the seam's end, where the seam bends, drawing it straight slides the corner a little.
                most = 1e-6 if one.reach() >= 0 else 0.02
                assert min(abs(p - end) for p in one.flap) < most, "the corner of the allowance is a corner of what is cut"

    def test_what_is_told_of_a_piece_has_its_area(self, wearer):
        """Sliding points along the seam's way keeps areas: body, allowance and sewn part are as large as they are cut."""
        for _, _, corners in seam_corners(drafts_of(wearer).pattern({})[1], Finish()):
            for one in corners:
                first = one.met.first
                size, p = one.seen, first.corner
                sides = [
                    p + out * first.out - up * first.ahead
                    for out, up in ((-size, -size), (size, -size), (size, size), (-size, size))
                ]
                window = Polygon([(q.real, q.imag) for q in sides])
                there = Polygon([(q.real, q.imag) for q in one.cutting]).intersection(window).area
                told = sum(Polygon([(q.real, q.imag) for q in part]).buffer(0).area for part in (one.flap, one.body))
                assert told == pytest.approx(there, rel=0.02)

    def test_every_stop_of_opening_and_pressing_is_another_drawing(self, wearer):
        corners = Corners(drafts_of(wearer))
        for name in ("opened", "first_allowance", "second_allowance"):
            assert len({corners.picture({name: float(value)}).svg for value in range(0, 181, 15)}) >= 12
        plain, cut = (corners.picture({"plain_corner": plain}) for plain in (True, False))
        assert "sticks out by" in plain.said[-1] and "lies within" in cut.said[-1]
        assert "do not end alike" in plain.said[-2] and "end at the same place" in cut.said[-2]

    def test_what_sticks_out_is_hatched_once_it_is_pressed_flat(self, wearer):
        corners = Corners(drafts_of(wearer))
        for pressed in ({"first_allowance": 180.0}, {"second_allowance": 180.0}):
            pressed["opened"] = 180.0
            plain, cut = (corners.picture(pressed | {"plain_corner": plain}).svg for plain in (True, False))
            assert "ck-hatching" in plain and "sticks out" in plain
            assert "ck-hatching" not in cut and "sticks out" not in cut

    def test_what_is_drawn_as_lying_underneath_is_covered(self, wearer):
        """Judged by shapely: as sewn, the broken strokes lie in what the first piece and its allowance cover; opened and
        pressed open, no cloth lies on another piece's lines, and none is broken."""
        for _, seam, corners in seam_corners(drafts_of(wearer).pattern({})[1], Finish()):
            for plain in (True, False):
                sewn, pressed = (
                    recorded(corner_sheet(corners, seam, opened, (over, 0.0), plain, "in", "", ""))
                    for opened, over in ((0.0, 0.0), (180.0, 180.0))
                )
                # The sample in the key is one stroke, what lies underneath is many.
                broken = [
                    one
                    for what in sewn.of("line")
                    if what.what[1].kind == "under" and len(what.what[0]) > 1
                    for one in what.what[0]
                ]
                cover = unary_union(
                    [
                        Polygon([(p.real, p.imag) for p in points]).buffer(0)
                        for points in (corners[0].body, corners[0].plain if plain else corners[0].flap)
                    ]
                )
                assert all(anew.at((one.start + one.end) / 2).distance(cover) < 1e-6 for one in broken)
                assert sum(abs(one.end - one.start) for one in broken) > 0.2, "the second piece is seen to lie under the first"
                assert not [one for one in pressed.of("line") if one.what[1].kind == "under"]

    def test_pressing_the_second_allowance_takes_the_first_along(self, wearer):
        corners = Corners(drafts_of(wearer))
        alone, both = (
            corners.picture({"opened": 180.0, "second_allowance": 120.0} | more).svg
            for more in ({}, {"first_allowance": 120.0})
        )
        assert alone == both


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize("wearer", WEARERS)
class TestWalk:
    def test_as_drafted_every_stretch_agrees(self, wearer, unit):
        stored = walk_table(drafts_of(wearer, unit))
        assert all("they agree" in one for one in stored.sentences)
        assert stored.html.count("<tr>") == len(stored.sentences) + 1

    def test_what_is_within_a_pencil_is_left_and_more_is_trued_on_the_shorter_side(self, wearer, unit):
        drafts = drafts_of(wearer, unit)
        pattern = drafts.pattern({})[1]
        _, letters, _ = paper_of(drafts)
        tangents = walkable(pattern)
        assert tuple(letters.choices) == tuple(tangents)
        assert {letter.split()[0] for letter in tangents} == {seam_letter(seam.number) for seam in pattern.seams}, "every seam"
        amount = "5 mm" if unit == "cm" else "3/16 in"
        for letter, (walked, number) in tangents.items():
            little = walked_picture(drafts, {"seam": letter, "longer_by": 0.1}).said
            assert little[-1].endswith("nothing is to be moved.")
            much = walked_picture(drafts, {"seam": letter, "longer_by": 0.5}).said
            (first, _, _), (second, edge, at) = walked.stretches[number].ends
            begun = [one.start for one in walked.stretches[: number + 1] if one.begins][-1]
            assert much[-1].startswith(
                f"Lengthen the {second.name}'s {edge.name} by {amount} at the {at.name}: measured "
                f"from {begun}, the {first.name} is longer."
            )
            assert (f"{at.name} stays as long as it is" in much[-1]) == (at.seam is not None)
            trued = walked_picture(drafts, {"seam": letter, "longer_by": 0.5, "redrawn": True})
            assert trued.said[-1].endswith("The two sides agree again.")
            assert trued.svg.count(f"{at.name}, redrawn") >= 1
            if moved := re.search(r"moves by at most ([\d/ ]+) (mm|in)", trued.said[-1]):
                # An edge that does not meet the seam squarely lies nearer to its old line than the corner does.
                by = float(moved[1]) if unit == "cm" else parse_length(moved[1], "in") * 10
                assert 2.5 < by < 6.5

    def test_nothing_longer_is_nothing_redrawn(self, wearer, unit):
        drafts = drafts_of(wearer, unit)
        assert (
            walked_picture(drafts, {"longer_by": 0.0}).svg == walked_picture(drafts, {"longer_by": 0.0, "redrawn": True}).svg
        )


@pytest.mark.parametrize("wearer", WEARERS)
class TestNotches:
    def test_both_notches_of_a_pair_lie_equally_far_along_their_sides(self, wearer):
        _, finished = drafts_of(wearer).finished({})
        pairs = notch_pairs(finished)
        assert len(pairs) == sum(len(seam.marks) for seam in finished.pattern.seams)
        for pair in pairs:
            for side, (edge, along, piece) in zip(pair.seam.sides, pair.places):
                assert any(edge is one for one in piece.edges)
                before = 0.0
                for one in side:
                    if one is edge:
                        break
                    before += one.length
                against = pair.seam.against[pair.seam.sides.index(side)]
                assert before + (edge.length - along if against else along) == pytest.approx(pair.at, abs=0.02)

    def test_the_notches_said_to_be_cut_are_those_that_are_cut(self, wearer):
        _, finished = drafts_of(wearer).finished({})
        pairs = notch_pairs(finished)
        assert sum(sum(pair.cut) for pair in pairs) == sum(len(one.notches) for one in finished.pieces)
        lacing = {one.piece.number for one in finished.pieces if any(e.kind is Kind.LACING for e in one.piece.edges)}
        for pair in pairs:
            if pair.count == 2:
                assert lacing & {piece.number for _, _, piece in pair.places}
        assert {1, 2} == {pair.count for pair in pairs}

    def test_a_place_without_a_cut_is_never_said_to_be_marked_by_one(self, wearer):
        drafts = drafts_of(wearer)
        for number, pair in enumerate(notch_pairs(drafts.finished({})[1]), 1):
            told = notch_picture(drafts, {"notch": number}).said[-1]
            names = [piece.name for _, _, piece in pair.places]
            if all(pair.cut):
                assert "Each is marked by" in told
            elif any(pair.cut):
                assert f"The {names[pair.cut.index(True)]} is marked by" in told
                assert f"the {names[pair.cut.index(False)]} has its own corner" in told
            else:
                assert "marked by" not in told and told.endswith("no notch is cut.")


@pytest.mark.parametrize("wearer", WEARERS)
class TestBill:
    def test_the_table_says_what_the_bill_holds(self, wearer):
        drafts = drafts_of(wearer)
        made = bill(drafts.finished({})[1])
        told = repr(bill_board(drafts))
        for number, one in enumerate(made.bones, 1):
            assert f"Bone {number}, {one.place}: {one.kind}, {one.count}, channel {say_length(one.channel, 'in')}" in told
        assert f"{made.bone_count} bones in all." in told and f"{made.eyelet_count} eyelets in all" in told
        for one in made.passings:
            assert f"Over {one.over}: body {say_length(one.girth, 'in')}, opening {say_length(one.gap, 'in')}." in told

    def test_what_is_bought_by_length_is_never_less_than_needed(self, wearer):
        drafts = drafts_of(wearer)
        made = bill(drafts.finished({})[1])
        yards = re.search(r"Lacing: ([\d /]+) yd .* worn, ([\d /]+) yd", repr(bill_board(drafts)))
        metres = re.search(r"Lacing: ([\d.]+) m .* worn, ([\d.]+) m", repr(bill_board(drafts_of(wearer, "cm"))))
        for need, yard, metre in zip((made.lacing_worn, made.lacing_open), yards.groups(), metres.groups()):
            assert need - 1e-6 <= parse_length(yard, "in") * 36 < need + 9 * CM_PER_INCH / 2
            assert need - 1e-6 <= float(metre) * 100 < need + 5

    def test_each_bone_is_named_once_under_its_drawing(self, wearer):
        drafts = drafts_of(wearer)
        made = bill(drafts.finished({})[1])
        told = bones_picture(drafts, {}).said
        assert told[0].startswith(f"{sum(one.count for one in made.bones)} bones in the whole corset:")
        for kind in ("spiral", "flat"):
            (line,) = (one for one in told if one.startswith(f"{kind.capitalize()} bones"))
            those = [
                f"{number} {one.place} {say_length(one.length, 'in')}"
                for number, one in enumerate(made.bones, 1)
                if one.kind == kind
            ]
            assert line == f"{kind.capitalize()} bones, each with its length: {'; '.join(those)}."
        for number, one in enumerate(made.bones, 1):
            assert (f"number {number} once" in told[0]) is (one.count == 1)

    def test_bones_are_drawn_as_long_as_they_are_bought(self, wearer):
        _, finished = drafts_of(wearer).finished({})
        made = bill(finished)
        drawn = recorded(bones_sheet(finished, made, "in", "Bones"))
        shapes = [one.what[0] for one in drawn.of("line") if one.what[1].kind == "bone" and one.facts]
        assert len(shapes) == len(made.bones)
        for shape, bone in zip(shapes, made.bones):
            # A bone is a strip: half its way round, less its width, is its length.
            assert anew.line(shape).length / 2 - 0.7 == pytest.approx(bone.length, abs=0.15)
        eyelets = [one.what[0] for one in drawn.of("dot") if one.what[3] and one.what[3].kind == "eyelet"]
        assert 2 * len(eyelets) == made.eyelet_count
        edges = [
            anew.line(edge.path)
            for one in finished.pattern.pieces
            if not one.copied
            for edge in one.edges
            if edge.kind is Kind.LACING
        ]
        for at in eyelets:
            assert min(edge.distance(anew.at(at)) for edge in edges) == pytest.approx(1.3, abs=2e-3)


def test_an_eyelet_whose_rim_would_lie_on_a_bone_is_told_and_no_other():
    """Measured on the drawing: from each eyelet's middle to the channel that is drawn in the lacing edge."""
    drafts = drafts_of("Maren")
    for change in (
        {},
        {"bone_width": 0.8},
        {"bone_width": 1.2},
        {"eyelet_inset": 1.0},
        {"bone_width": 1.2, "eyelet_inset": 2.0},
    ):
        _, finished = drafts.finished(change)
        made = bill(finished)
        drawn = recorded(bones_sheet(finished, made, "in", "Bones"))
        eyelets = [one.what[0] for one in drawn.of("dot") if one.what[3] and one.what[3].kind == "eyelet"]
        bones = [anew.line(one.what[0]) for one in drawn.of("line") if one.what[1].kind == "bone" and one.facts]
        edge = bones[next(i for i, one in enumerate(made.bones) if one.place.startswith("lacing edge"))]
        beside = min(edge.distance(anew.at(at)) for at in eyelets) - finished.choices.channel_ease / 2
        told = bones_picture(drafts, change)
        assert any("would reach onto" in one for one in told.warnings) is (beside < RIM - 1e-3), change
        if beside > 0.01:
            assert f"middle lies {say_length(beside, 'in')} from the channel" in told.said[-1]


@pytest.mark.parametrize("unit", ["in", "cm"])
@pytest.mark.parametrize("wearer", WEARERS)
def test_by_hand_and_with_the_tape_the_numbers_are_the_patterns(wearer, unit):
    drafts = drafts_of(wearer, unit)
    _, finished = drafts.finished({})
    told = by_tape(drafts).sentences
    half = next(one for one in told if one.startswith("The sewn widths"))
    girth = finished.pattern.girths["waist"].finished
    assert half.endswith(f"are {say_length(girth, unit)}, the finished waist.")
    sewn = sum(
        anew.area(one.path).intersection(LineString([(-300, 0), (300, 0)])).length
        for one in finished.pattern.pieces
        if not one.copied
    )
    assert 2 * sewn + finished.pattern.style.lacing_gap == pytest.approx(girth, abs=0.02)
    moves = by_hand(drafts).sentences
    assert any(f"panel seams {say_length(1.5, unit)}" in one for one in moves)
    for seam, ((sharp, met), (blunt, _)) in seam_ends(finished.pattern, finished.choices)[:4]:
        a = math.radians(met.angle)
        # The mirrored edge's parallel meets the seam's parallel so far beyond the corner: plain trigonometry.
        reach = (met.later.width - met.first.width * math.cos(a)) / math.sin(a) if met.angle <= 90 else None
        if reach is not None and reach >= 0:
            where = f"{seam.name} at the {met.later.stroke.edge.name} ({sharp.name} and {blunt.name})"
            assert f"{where}, {say_length(reach, unit)} beyond" in next(
                one for one in told if one.startswith("Along the seam")
            )


@pytest.mark.parametrize("bound", [{}, {"hem_allowance": 0.0}])
def test_each_number_in_the_drawing_by_hand_is_that_of_its_move(bound):
    drafts = drafts_of("Maren")
    drafts.desk.change(finish=bound)
    made = by_hand(drafts)
    svg = unquote(re.search(r'src="data:image/svg[^,]*,([^"]+)"', made.html)[1])
    svg = svg if "<svg" in svg else b64decode(svg).decode()
    said = dict(re.match(r"(\d+)\. (.*)", one).groups() for one in made.sentences[2:])
    drawn = re.findall(r">(\d+): ([a-z]*)", svg)
    assert len(drawn) == 5
    for number, word in drawn:
        assert ("Set marks" if not word else "fold the paper") in said[number]


class TestSquare:
    def test_a_square_of_97_millimetres_gives_the_scale_to_set(self):
        (told,) = square_picture({"square": 97}).said
        assert "103.1 %" in told and pytest.approx(103.1, abs=0.05) == 100 / 97 * 100

    def test_a_true_square_is_said_to_be_true_and_every_stop_is_drawn(self):
        assert "all is well" in square_picture({}).said[0]
        (one,) = printed()
        assert len({square_picture({"square": side}).svg for side in range(one.low, one.high + 1)}) == one.high - one.low + 1


class TestFiles:
    def test_each_choice_writes_its_file_for_the_desks_wearer_and_allowances(self, work):
        desk = course.desk()
        desk.change(wearer="Theda", finish={"panel_allowance": 2.0})
        for choice, words, _ in CHOICES:
            if choice != "all":
                heard = []
                with heard_by(lambda said, share, heard=heard: heard.append(said)):
                    told = write_files(Finishing(desk), choice)
                names = re.findall(r"[\w.]+\.(?:pdf|svg|dxf|csv)", told)
                # The page heard of each before it was written.
                assert [one.split()[1].rstrip(".,") for one in heard if one.startswith("Writing")] == names, words
                assert names and all((work / one).stat().st_size > 500 and "Theda" in one for one in names), words
        assert f"side seam {say_length(2.0, 'in')}" in (work / "Theda_pieces.csv").read_text("utf-8")

    def test_all_writes_everything_at_once(self, work):
        told = write_files(Finishing(course.desk()), "all")
        ours = sorted([RECORD, *(f"Maren_{kind}" for kind in FILES)])
        assert sorted(one.name for one in (work / "Maren").iterdir()) == ours
        assert all(f"Maren_{kind}" in told for kind in FILES)
        # Again, for an allowance has changed: the folder is written anew, and the learner's own file in it is kept.
        (work / "Maren" / "my_pattern.pdf").write_bytes(b"mine")
        before = (work / "Maren" / f"Maren_{SVG}").read_bytes()
        course.desk().change(finish={"panel_allowance": 2.5})
        told = write_files(Finishing(course.desk()), "all")
        assert (work / "Maren" / f"Maren_{SVG}").read_bytes() != before
        assert sorted(one.name for one in (work / "Maren").iterdir()) == sorted([*ours, "my_pattern.pdf"])
        assert "What is not ours in the folder Maren was kept: my_pattern.pdf." in told

    def test_an_unknown_choice_is_a_sentence(self, work):
        with pytest.raises(CorsetkitError, match="the choice is A7"):
            write_files(Finishing(course.desk()), "A7")

    def test_a_name_with_strokes_writes_nowhere_else(self, work):
        body = Desk().demo["Maren"]
        desk = course.desk()
        desk.load([("../Mar/en", body)])
        write_files(Finishing(desk), "svg")
        assert [one.name for one in work.glob("*.svg")] and not list(work.parent.glob("*.svg"))


@pytest.mark.parametrize(
    "style",
    [
        {"yoke": False, "cup_parts": 2},
        {"front_opening": True, "back_opening": True},
        {"centre_panels": 2, "side_panels": 3},
        {"method": "guides"},
    ],
)
def test_every_cell_is_drawn_in_other_styles_or_refused_in_a_sentence(work, style):
    course.desk().change(style=style)
    for cell in ("drawing", "guess", "corners", "walk", "walked", "notches", "bones", "bill", "hand", "tape"):
        shown = getattr(LESSON, cell)().shown
        assert shown.get("svg") or shown.get("html"), (cell, shown.get("refused"))
        assert not shown.get("refused"), cell


def test_a_whole_pattern_is_one_drawing_of_all_its_pieces():
    _, finished = drafts_of("Maren").finished({})
    svg = ready_picture(drafts_of("Maren"), {"piece": ALL}).svg
    for one in finish(finished.pattern).pieces:
        assert f'data-name="{one.piece.name}"' in svg
