"""The lesson on the back: what is taken in, the laced edges, the seams, and both methods over all wearers, measured anew."""

import re
from itertools import combinations

import anew
import pytest
from figures import WEARERS
from shapely import LineString, Polygon, box

from corsetkit import Style, draft
from corsetkit.drawing.canvas import recorded
from corsetkit.drawing.lettering import overlap
from corsetkit.errors import CorsetkitError
from corsetkit.teaching import cells as course
from corsetkit.teaching.build import read_text
from corsetkit.teaching.cells import Drafts
from corsetkit.teaching.desk import Desk
from corsetkit.teaching.lessons.back.all_wearers import all_wearers, compared, signed, summed_up
from corsetkit.teaching.lessons.back.both_methods import methods_beside, methods_sheet
from corsetkit.teaching.lessons.back.laced import EVEN, PARALLEL, WIDE_ABOVE, WIDE_BELOW, Laced, laced_sheet
from corsetkit.teaching.lessons.back.lesson import ASKED, LESSON
from corsetkit.teaching.lessons.back.said import WIDER, laced_said, seam_rows, seam_table, taken_picture, taken_said
from corsetkit.teaching.lessons.back.taken_in import lowest, taken_at
from corsetkit.teaching.shared import pattern_said as said
from corsetkit.units import in_one_unit, say_length

INCH = 2.54
DEMO = list(Desk().demo)
STYLES = {
    "as it comes": {},
    "much": {"waist_reduction": 3 * INCH, "reduction_at_side": 0.35},
    "nothing": {"waist_reduction": 0.0},
    "guides": {"method": "guides"},
    "no yoke, two parts": {"yoke": False, "cup_parts": 2, "waist_reduction": INCH},
}
CASES = [(wearer, style) for wearer in DEMO for style in STYLES]


def desk_of(wearer, unit="in", **style):
    desk = Desk()
    desk.change(wearer=wearer, unit=unit, style=style)
    return desk


def steps_of(wearer, style="as it comes"):
    return Drafts(desk_of(wearer)).steps(STYLES[style], "back")[1]


def level(path, y):
    """Where a run crosses a level, by shapely: the x of it, or None."""
    met = anew.line(path).intersection(LineString([(-500, y), (500, y)]))
    return None if met.is_empty else met.centroid.x


class TestTakenIn:
    @pytest.mark.parametrize(("wearer", "style"), CASES)
    def test_at_the_waist_the_four_patches_are_the_waist_reduction(self, wearer, style):
        """2 x (side + dart's new part) is the reduction, and each half back gives half of it (common practice, no source)."""
        steps = steps_of(wearer, style)
        back, reduction = steps.back, steps.style.waist_reduction
        taken = taken_at(back, back.block.back.bust_level)
        assert taken.y == 0.0
        assert taken.all_round == pytest.approx(reduction, abs=1e-6)
        assert taken.at_side == pytest.approx(reduction / 2 * steps.style.reduction_at_side, abs=1e-6)

    @pytest.mark.parametrize(("wearer", "style"), CASES)
    def test_at_every_level_what_is_taken_is_what_shapely_measures(self, wearer, style):
        """Side seams and dart legs, old and new, crossed by the level anew; the half back's own width agrees."""
        back = steps_of(wearer, style).back
        half, waist = back.block.back, back.waist
        for share in (0.13, 0.37, 0.61, 0.83, 0.97):
            taken = taken_at(back, share * lowest(back))
            old, new = (
                level(path, taken.y) for path in ((*half.side_waist, *half.side_hip), (*waist.side_waist, *waist.side_hip))
            )
            assert taken.at_side == pytest.approx(abs(new - old), abs=2e-3)
            widths = []
            for legs in (half.dart_legs, waist.legs):
                xs = [level(leg, taken.y) for leg in legs]
                widths.append(abs(xs[1] - xs[0]) if xs and None not in xs else 0.0)
            assert (taken.in_block, taken.in_dart) == pytest.approx(widths, abs=2e-3)
            assert taken.width == pytest.approx(half.waist_centre.real - new - widths[1], abs=2e-3)

    @pytest.mark.parametrize("wearer", DEMO)
    def test_nothing_is_taken_at_the_bust_level(self, wearer):
        """The bust keeps its girth: side and dart run out there."""
        taken = taken_at(steps_of(wearer).back, 0.0)
        assert (taken.at_side, taken.in_dart, taken.all_round) == pytest.approx((0, 0, 0), abs=1e-6)

    @pytest.mark.parametrize("wearer", DEMO)
    def test_the_bars_of_half_the_waist_are_half_the_finished_waist(self, wearer):
        """Front, side back, centre back and half the gap, read off the sheet, against the drafted pattern's girth."""
        picture = taken_picture(wearer, steps_of(wearer), "cm")
        found = re.findall(r'data-name="(\w[\w ]*), at the waist" data-length="([\d.]+) cm"', picture.svg)
        assert [name for name, _ in found] == ["front", "side back", "centre back", "half the gap"]
        waist = draft(WEARERS[wearer], Style()).girths["waist"]
        assert sum(float(length) for _, length in found) == pytest.approx(waist.finished / 2, abs=0.21), "four roundings"

    def test_where_rounding_does_not_add_up_it_is_said(self):
        steps = Drafts(desk_of("Maren")).steps({"waist_reduction": 1.375 * INCH}, "back")[1]
        taken = taken_at(steps.back, steps.block.back.bust_level)
        waist = draft(WEARERS["Maren"], steps.style).girths["waist"]
        assert "2 x (3/8 in + 3/8 in) = 1 3/8 in, each part rounded." in " ".join(taken_said(taken, steps.style, waist, "in"))
        assert "rounded" not in " ".join(taken_picture("Maren", steps_of("Maren"), "in").said)


class TestLaced:
    @pytest.mark.parametrize("wearer", DEMO)
    @pytest.mark.parametrize(("above", "below"), [(3.0, 3.0), (5.0, 2.0), (0.0, 7.0), (7.0, 0.0), (0.0, 0.0)])
    @pytest.mark.parametrize("yoke", [True, False])
    def test_the_edges_stand_so_far_apart_as_asked_and_keep_their_length(self, wearer, above, below, yoke):
        laced = Laced(steps_of(wearer).back, above * INCH, below * INCH, yoke)
        (edge,) = laced.half["lacing_edge"]
        assert (-2 * edge.start.real, -2 * edge.end.real) == pytest.approx((below * INCH, above * INCH), abs=1e-9)
        back = laced.back
        top = back.neckline.edge if yoke else back.yoke_line.edge
        assert edge.length == pytest.approx(top.imag - back.hem.edge.imag)
        assert laced.top == pytest.approx(edge.end.imag)
        middle = (edge.start + edge.end) / 2
        assert laced.gap_at(middle.imag) == pytest.approx(-2 * middle.real)

    @pytest.mark.parametrize("wearer", DEMO)
    @pytest.mark.parametrize(("above", "below"), [(3.0, 3.0), (6.0, 2.0), (1.0, 7.0)])
    def test_the_cloth_of_a_half_is_one_piece_beside_the_gap(self, wearer, above, below):
        laced = Laced(steps_of(wearer).back, above * INCH, below * INCH)
        cloth = Polygon(anew.points(tuple(curve for path in laced.half.values() for curve in path))[:-1])
        assert cloth.is_valid and cloth.exterior.is_ccw
        assert cloth.bounds[2] <= 1e-9, "the left half does not cross the centre back"

    @pytest.mark.parametrize("wearer", DEMO)
    @pytest.mark.parametrize(
        ("above", "below", "overlap_"), [(3.0, 3.0, 2.0), (6.0, 2.0, 1.0), (1.0, 7.0, 1.0), (5.0, 5.0, 3.0)]
    )
    def test_what_the_panel_covers_is_what_shapely_measures(self, wearer, above, below, overlap_):
        """The panel's own outline against the gap between the edges, cut at its two ends and at the waist."""
        steps = Drafts(desk_of(wearer)).steps({"modesty_overlap": overlap_ * INCH}, "back")[1]
        laced = Laced(steps.back, above * INCH, below * INCH)
        panel = Polygon(anew.points(laced.panel)[:-1])
        assert panel.is_valid
        (edge,) = laced.half["lacing_edge"]
        drafted = next(piece for piece in draft(WEARERS[wearer], steps.style).pieces if piece.copied)
        assert panel.area == pytest.approx(2 * drafted.outline.area, rel=1e-4)
        low, high = laced.ends
        assert panel.bounds[1] <= low < 0 < high <= panel.bounds[3] + 1e-9
        for y in (low + 1e-3, 0.0, high - 1e-3):
            across = panel.intersection(box(-200, y - 1e-6, 200, y + 1e-6)).bounds
            at_edge = level((edge,), y)
            assert laced.under(y) == pytest.approx(at_edge - across[0], abs=1e-3)

    def test_the_shape_has_its_name_and_its_remedy(self):
        steps = steps_of("Maren")

        def told(above, below):
            laced = Laced(steps.back, above * INCH, below * INCH)
            return laced.shape, " ".join(laced_said(laced, steps.style, "in"))

        shape, words = told(3, 3)
        assert shape == PARALLEL and "as drafted" in words
        shape, words = told(5, 2)
        assert shape == WIDE_ABOVE and "make a V: 5 in apart at the top, 2 in at the lower edge" in words
        # Drafted are 3 in: the top is 2 in too small, the lower edge 1 in too large, each shared among four seams.
        assert (
            "too small there: let the two side seams and the two back seams out above the waist, each by about 1/2 in" in words
        )
        assert (
            "too large there: take the two side seams and the two back seams in below the waist, each by about 1/4 in" in words
        )
        assert "Never change the centre back alone" in words
        shape, words = told(2, 5)
        assert shape == WIDE_BELOW and "inverted V: 2 in apart at the top, 5 in at the lower edge" in words
        assert "in above the waist, each by about 1/4 in" in words and "out below the waist, each by about 1/2 in" in words
        shape, words = told(3, 0)
        assert shape == WIDE_ABOVE and "At the top the gap is as drafted" in words and "let the" not in words
        assert "3 in narrower than drafted" in words and "in below the waist, each by about 3/4 in" in words
        shape, words = told(5, 5)
        assert shape == PARALLEL and "2 in farther apart than drafted" in words and "too small for this body" in words
        shape, words = told(1, 1)
        assert shape == PARALLEL and "2 in nearer than drafted" in words and "too large for this body" in words

    def test_where_skin_shows_it_is_said_and_hatched(self):
        steps = Drafts(desk_of("Maren")).steps({"modesty_overlap": INCH}, "back")[1]
        for above, below, words in (
            (3, 3, "1 in under each edge at its upper end, 1 in at its lower end"),
            (4, 3, "is little"),
            (3, 7, "skin shows on each side"),
        ):
            laced = Laced(steps.back, above * INCH, below * INCH)
            assert words in " ".join(laced_said(laced, steps.style, "in")), (above, below)
            sheet = laced_sheet("x", laced, 7 * INCH, "in", "x")
            hatched = [call for call in recorded(sheet).of("line") if call.what[1].kind == "hatching"]
            assert bool(hatched) == ("skin" in words)

    def test_a_gap_may_differ_by_the_width_of_a_pencil_and_is_parallel_still(self):
        back = steps_of("Maren").back
        assert Laced(back, 3 * INCH + EVEN, 3 * INCH).shape == PARALLEL
        assert Laced(back, 3 * INCH + EVEN + 0.01, 3 * INCH).shape == WIDE_ABOVE


class TestSheets:
    def sheets(self, wearer, unit):
        drafts = Drafts(desk_of(wearer, unit))
        name, steps = drafts.steps({}, "back")
        yield LESSON._sheet(steps, unit, "Back")
        for yoke in (True, False):
            for gaps in ((3, 3), (7, 0), (0, 7)):
                yield laced_sheet("Laced", Laced(steps.back, *(gap * INCH for gap in gaps), yoke), 7 * INCH, unit, "x")
        from corsetkit.pieces.measured import girths
        from corsetkit.teaching.lessons.back.taken_in import taken_sheet

        girth = girths(steps.measurements, steps.style, steps.overbust, steps.back)["waist"]
        for share in (0.0, 0.2, 0.45, 0.6, 0.8, 0.93, 1.0):
            taken = taken_at(steps.back, share * lowest(steps.back))
            yield taken_sheet("Taken in", steps.back, taken, steps.style.waist_reduction, girth, unit, "x")
        methods = [draft(WEARERS[wearer], Style(method=method)) for method in said.METHODS]
        yield methods_sheet(*methods, "Fitted", ("fitted", "fixed guides"), unit, "x")
        yield methods_sheet(methods[1], None, "Fixed guides", ("fixed guides", "fitted"), unit, "x")

    @pytest.mark.parametrize("unit", ["in", "cm"])
    @pytest.mark.parametrize("wearer", DEMO)
    def test_no_words_lie_over_others_and_nothing_leaves_its_sheet(self, wearer, unit):
        for sheet in self.sheets(wearer, unit):
            seen = recorded(sheet)
            boxes = [one.box for one in seen.written]
            assert not [pair for pair in combinations(seen.written, 2) if overlap(pair[0].box, pair[1].box)], sheet.title
            for left, bottom, right, top in boxes:
                assert sheet.low.real <= left and right <= sheet.high.real, sheet.title
                assert sheet.low.imag <= bottom and top <= sheet.high.imag, sheet.title
            for call in seen.of("line"):
                for x, y in anew.points(call.what[0], 8):
                    assert sheet.low.real <= x <= sheet.high.real and sheet.low.imag <= y <= sheet.high.imag, sheet.title

    @pytest.mark.parametrize("wearer", DEMO)
    def test_every_slider_of_the_tables_moves_its_drawing(self, wearer, tmp_path, monkeypatch):
        """Every control of every panel, at both ends of what can be drawn for this wearer."""
        monkeypatch.setenv("CORSETKIT_WORK", str(tmp_path))
        monkeypatch.setattr(course, "_live", {})
        monkeypatch.setattr(course, "_desks", {})
        course.desk().change(wearer=wearer)
        for cell in ("drawing", "taken_in", "laced", "whole"):
            table = getattr(LESSON, cell)()
            for panel in table.play.panels:
                for name in panel.names:
                    drawn = []
                    for at, back in ((0, 1), (len(table.play.controls[name].stops) - 1, -1)):
                        for step in range(len(table.play.controls[name].stops) - 1):
                            table.play.handle({"kind": "set", "changes": {name: {"at": at + back * step}}})
                            if not table.play.refused:
                                break
                        assert not table.play.refused, (cell, name, table.play.refused)
                        drawn.append(re.findall(r'<path[^>]* d="([^"]*)"', table.play.picture["svg"]))
                        table.play.handle({"kind": "afresh"})
                    assert drawn[0] != drawn[1], (cell, name)

    def test_another_lacing_gap_is_the_gaps_new_start(self, tmp_path, monkeypatch):
        monkeypatch.setenv("CORSETKIT_WORK", str(tmp_path))
        monkeypatch.setattr(course, "_live", {})
        monkeypatch.setattr(course, "_desks", {})
        table = LESSON.laced()
        assert table.play.value("gap_at_the_top") == pytest.approx(3 * INCH)
        course.desk().change(style={"lacing_gap": 2 * INCH})
        assert table.play.value("gap_at_the_top") == pytest.approx(2 * INCH)
        assert "2 in apart as drafted" in table.play.picture["said"][0]
        assert table.play.controls["gap_at_the_hem"].stops[-1] == pytest.approx(2 * INCH + WIDER)


class TestGuess:
    @pytest.mark.parametrize("unit", ["in", "cm"])
    @pytest.mark.parametrize(("wearer", "style"), CASES)
    def test_the_answer_is_what_the_block_took_and_the_darts_share_of_half_the_reduction(self, wearer, style, unit):
        drafts = Drafts(desk_of(wearer, unit))
        name, steps = drafts.steps(STYLES[style], "back")
        asked = LESSON._asked(name, steps, unit, drafts)
        block, share, now = steps.block.back.waist_dart, 1 - steps.style.reduction_at_side, steps.style.waist_reduction
        fits = [value for value in ASKED if asked.right == pytest.approx(block + value / 2 * share, abs=1e-6)]
        assert len(fits) == 1 and abs(fits[0] - now) >= INCH / 2
        assert asked.start == pytest.approx(block + now / 2 * share, abs=1e-6)
        assert f"is set to {say_length(fits[0], unit)}." in asked.question
        for value, _ in asked.slips:
            assert value > 0 and abs(value - asked.right) > asked.near
        assert asked.move(0.0).svg != asked.move(0.5).svg != asked.move(1.0).svg
        assert f"each back dart {say_length(asked.right, unit)}" in asked.move(1.0).said[0]

    def test_where_the_back_has_no_room_for_three_inches_one_is_asked_for(self):
        """Found by trying: with this wide a gap 2 in can be drawn on Wanda, 3 in cannot."""
        style = {"lacing_gap": 4.25 * INCH}
        drafts = Drafts(desk_of("Wanda"))
        name, steps = drafts.steps(style, "back")
        with pytest.raises(CorsetkitError):
            drafts.steps({**style, "waist_reduction": ASKED[0]}, "back")
        asked = LESSON._asked(name, steps, "in", drafts)
        assert "is set to 1 in." in asked.question and asked.right < asked.start


class TestSeams:
    @pytest.mark.parametrize("style", [{}, {"cup_parts": 2, "side_panels": 3}, {"yoke": False}, {"method": "guides"}])
    @pytest.mark.parametrize("wearer", DEMO)
    def test_each_row_says_what_the_edges_measure(self, wearer, style):
        """Both lengths measured anew along each side; the pieces named are those that own the edges."""
        pattern = draft(WEARERS[wearer], Style(**style))
        rows = seam_rows(pattern, "cm")
        assert len(rows) == len(pattern.seams)
        for row, seam in zip(rows, pattern.seams):
            for pieces, length, side in ((row[2], row[3], seam.sides[0]), (row[4], row[5], seam.sides[1])):
                assert float(length.removesuffix(" cm")) == pytest.approx(
                    sum(anew.line(edge.path).length for edge in side), abs=0.06
                )
                owners = {f"{piece.number} {piece.name}" for piece in pattern.pieces
                          for edge in piece.edges if any(edge is mine for mine in side)}  # fmt: skip
                assert set(pieces.split(", ")) == owners
            assert row[6] == "none" and int(row[7]) == len(seam.places(0)) == len(seam.places(1))

    def test_it_follows_the_desk_and_a_refusal_is_one_sentence(self):
        desk = desk_of("Maren", "cm", cup_parts=2)
        text = repr(seam_table(Drafts(desk), desk.record.style))
        assert "cut across" not in text and " cm; " in text
        refused = seam_table(Drafts(desk), {"waist_reduction": 3 * INCH, "lacing_gap": 4.5 * INCH})
        assert repr(refused).startswith("Nothing to sew yet: waist reduction is 7.6 cm") and repr(refused).endswith(".")


class TestBothMethods:
    def test_side_by_side_stand_two_drawings_and_their_numbers(self):
        stored = methods_beside(desk_of("Ottilie"))
        assert len(re.findall(r'<img alt="[^"]{40,}"', stored.html)) == 2
        pattern = draft(WEARERS["Ottilie"], Style(method="guides"))
        assert f"Fixed guides: underbust: finished {say_length(pattern.girths['underbust'].finished, 'in')}" in repr(stored)

    def test_a_method_that_cannot_draft_her_says_why(self):
        desk = desk_of("Ines", guide_to_front=4.5 * INCH)
        stored = methods_beside(desk)
        with pytest.raises(CorsetkitError) as why:
            draft(WEARERS["Ines"], Style(method="guides", guide_to_front=4.5 * INCH))
        assert stored.html.count("<img ") == 1 and str(why.value)[1:60] in repr(stored)

    def test_panels_of_both_methods_lie_with_their_waists_on_one_level(self):
        """The same piece by the other method is only slid aside: its lowest point lies as far below the waist as drafted."""
        methods = [draft(WEARERS["Ottilie"], Style(method=method)) for method in said.METHODS]
        calls = recorded(methods_sheet(*methods, "x", ("a", "b"), "in", "x")).of("line")
        for mine, other in zip(*(pattern.pieces for pattern in methods)):
            if mine.name not in ("centre front", "side front", "side back", "centre back"):
                continue
            group = [call for call in calls if ("name", mine.name) in call.groups[-1][1]]
            (like,) = [call for call in group if call.what[1].kind == "other-way"]
            edges = [call for call in group if call.what[1].kind != "other-way"]
            low = [min(anew.points(call.what[0])[:, 1].min() for call in calls_) for calls_ in (edges, [like])]
            assert low[0] - low[1] == pytest.approx(mine.outline.bounds[1] - other.outline.bounds[1], abs=1e-3)

    def test_the_table_says_what_a_new_draft_measures(self):
        """Finished girths with fixed guides, measured anew with shapely, less the intended ones."""
        for one in compared():
            pattern = draft(WEARERS[one.name], Style(method="guides"))
            mine = anew.girths(pattern)
            for name in said.LEVELS:
                if name in mine:
                    miss = mine[name] - pattern.girths[name].intended
                    assert one.methods["guides"].misses[name] == pytest.approx(miss, abs=0.02), name
        assert {one.name for one in compared()} == set(DEMO)
        assert {"underbust", "waist"} <= set(mine)

    def test_what_the_text_says_of_the_guides_is_what_they_do(self):
        text = read_text("07_back")
        found = {one.name: one for one in compared()}
        guides = {name: one.methods["guides"] for name, one in found.items()}
        miss = {name: one.misses["underbust"] for name, one in guides.items()}
        assert f"{say_length(-miss['Ines'], 'in')} too small on Ines" in text and miss["Ines"] == min(miss.values())
        assert f"{say_length(miss['Ottilie'], 'in')} too large on Ottilie" in text and miss["Ottilie"] == max(miss.values())
        assert all(abs(one) > 0.5 for one in miss.values()), "on every one of the eight"
        small = {name for name, one in miss.items() if one < 0}
        assert small == {"Theda", "Ines"}
        assert f"{say_length(max(found[name].more for name in small), 'in')} or less (Theda, Ines)" in text
        assert f"{say_length(min(found[name].more for name in set(found) - small), 'in')} or more" in text
        for method in said.METHODS:
            angles = [one.methods[method].fullness for one in found.values()]
            assert f"between {min(angles):.1f} and {max(angles):.1f}" in text
        assert max(abs(one.misses["bust"]) for one in guides.values()) < INCH / 16 < 0.2
        assert max(abs(one.misses["waist"]) for one in guides.values()) < 1e-3

        def noted(words):
            return {name for name, one in guides.items() if any(words in note for note in one.notes)}

        assert noted("nearer to the centre front") == {"Ines", "Theda", "Yrsa"}
        assert noted("below this wearer's hip") == {"Ines", "Yrsa"}
        assert len(noted("guides also ask for")) == 6 - 1

    def test_what_the_text_says_of_pieces_and_seams(self):
        def of(**style):
            pattern = draft(WEARERS["Maren"], Style(**style))
            girths = {name: one.finished for name, one in pattern.girths.items()}
            return {seam.name for seam in pattern.seams}, len(pattern.seams), girths

        names, count, girths = of()
        assert of(side_panels=3)[1] == count + 2 and of(side_panels=3)[2] == pytest.approx(girths)
        assert names - of(yoke=False)[0] == {"overbust", "shoulder", "back yoke"}
        assert of(lacing_gap=1.5 * INCH)[2] == pytest.approx(girths)
        drafts = Drafts(desk_of("Maren"))
        intakes = [drafts.steps({"waist_reduction": cm}, "back")[1].underbust.intake for cm in (0.0, 5.0, 7.6)]
        assert intakes == pytest.approx(intakes[:1] * 3, abs=0.01), "tighter lacing makes no shallower cup"

    def test_the_chart_is_the_same_each_time_and_says_what_the_table_says(self):
        from corsetkit.teaching.lessons.back.all_wearers import methods_chart

        (svg, description), (again, _) = (methods_chart(compared(), "in") for _ in range(2))
        assert svg == again
        for one in compared():
            miss = one.methods["guides"].misses["underbust"]
            assert f"{one.name} {signed(miss, 'in')}" in description and f">{signed(miss, 'in')}<" in svg
        assert "matplotlib" not in svg and "Date" not in svg

    @pytest.mark.parametrize("unit", ["in", "cm"])
    def test_each_wearer_has_her_row_and_each_note_is_there(self, unit):
        stored = all_wearers(unit)
        for one in compared():
            assert f'<th scope="row">{one.name}</th>' in stored.html
            for method in one.methods.values():
                assert all(in_one_unit(note, unit) in "\n".join(stored.sentences) for note in method.notes)
        other = {"in": r"\d cm\b", "cm": r"\d in\b"}[unit]
        assert not re.search(other, repr(stored)) and "<details><summary>What the draft has to say" in stored.html

    def test_a_refused_wearer_is_told_and_not_counted(self):
        from dataclasses import replace

        from corsetkit.teaching.lessons.back import all_wearers as module

        first, *rest = compared()
        refused = replace(
            first, methods={**first.methods, "guides": module.Outcome({}, refused="The outline <crosses> itself.")}
        )
        found = (refused, *rest)
        assert "with fixed guides, 7 of 8" in summed_up(found, "in")[0]
        assert not any(first.name in words for words in summed_up(found, "in"))
        assert '<td colspan="4">not drafted</td>' in module._row(refused, "in")
        assert any(words.startswith(f"{first.name}, with fixed guides: not drafted. ") for words in module._notes(found))


@pytest.mark.parametrize("wearer", DEMO)
def test_the_tape_adds_up_to_the_finished_waist(wearer):
    """Twice front and back panels and the gap is the finished waist, from the sentence's own numbers."""
    steps = steps_of(wearer)
    words = LESSON._tape(steps, "cm")[0]
    front, back, gap, waist = (float(number) for number in re.findall(r"([\d.]+) cm", words))
    assert 2 * (front + back) + gap == pytest.approx(waist, abs=0.3), "four roundings, two of them doubled"
    assert waist == pytest.approx(WEARERS[wearer].waist_girth - 2 * INCH, abs=0.06)


def test_the_drawing_says_what_falls_to_each_place():
    told = LESSON._said(steps_of("Maren"), "in")
    assert told[0].endswith("1/2 in at the side seam, 1/2 in in the back dart.")
    assert told[3] == "Waist: body 28 in, intended 26 in, finished 26 in, the gap of 3 in counted."
