"""The pattern as a value: compared by what it says, pickled whole, never changed, and said in one line."""

import copy
import pickle
from dataclasses import FrozenInstanceError, fields, is_dataclass, replace

import pytest
from figures import CASES, STYLES, WEARERS, figure, words
from toy_pattern import toy_pattern

from corsetkit import Correction, Style, draft
from corsetkit.geometry.curve import Cubic, Line
from corsetkit.pattern.by_name import ByName
from corsetkit.pattern.pattern import Pattern
from corsetkit.steps.run import STEPS, run_steps

LARGEST = Style(centre_panels=3, side_panels=3, front_opening=True, back_opening=True)
LONGEST = 200


class TestEquality:
    @pytest.mark.parametrize("case", CASES, ids=words)
    def test_the_same_draft_is_equal(self, case):
        wearer, style, method = case
        one, other = figure(*case), draft(WEARERS[wearer], Style(method=method, **STYLES[style]))
        assert one is not other and one == other and hash(one) == hash(other)

    def test_another_style_wearer_or_correction_is_not(self):
        body = WEARERS["Maren"]
        patterns = [
            draft(body),
            draft(body, Style(cup_parts=2)),
            draft(body, Style(back_yoke_depth=Style().back_yoke_depth + 0.1)),
            draft(WEARERS["Theda"]),
            draft(body, corrections=[Correction("hem at the front", 0.1)]),
        ]
        assert len(set(patterns)) == len(patterns)
        assert all((a == b) == (a is b) for a in patterns for b in patterns)
        assert patterns[0] != "a pattern" and patterns[0] != None  # noqa: E711

    def test_what_is_taken_over_from_an_earlier_pattern_makes_no_other(self):
        """A draft that takes steps over is the draft made afresh, whichever style value has changed."""
        body, before = WEARERS["Ottilie"], figure("Ottilie")
        for name in ("bust_ease", "hem_raise", "least_strip", "blend_reach", "cut_depth", "modesty_overlap", "lacing_gap"):
            style = Style().replaced(**{name: getattr(Style(), name) + 0.1})
            assert draft(body, style, earlier=before) == draft(body, style) != before

    @pytest.mark.parametrize(
        "changed",
        [
            lambda seam: replace(seam, ease=0.1),
            lambda seam: replace(seam, marks=seam.marks[1:]),
            lambda seam: replace(seam, against=(True, True)),
        ],
    )
    def test_a_seam_sewn_otherwise_is_another_pattern(self, changed):
        one, other = toy_pattern(), toy_pattern()
        assert one == other
        seams = tuple(changed(seam) if seam.name == "side" else seam for seam in other.seams)
        assert one != replace(other, seams=seams)

    def test_seams_that_meet_other_edges_make_another_pattern(self):
        """The lengths, names and paths alone are alike; which edge is sewn to which is not."""
        one, other = toy_pattern(), toy_pattern()
        first, second = other.seams[0], other.seams[1]
        assert one != replace(other, seams=(replace(first, sides=second.sides), *other.seams[1:]))

    def test_pieces_edges_and_seams_are_places_in_their_own_pattern(self):
        one, other = figure("Maren"), draft(WEARERS["Maren"])
        assert one == other
        assert one.pieces[0] != other.pieces[0] and one.seams[0] != other.seams[0]
        assert one.pieces[0].edges[0] != other.pieces[0].edges[0]


class TestPickled:
    @pytest.mark.parametrize("style", [Style(), LARGEST, Style(method="guides", cup_parts=2)], ids=["", "largest", "guides"])
    def test_it_comes_back_equal_and_joined(self, style):
        before = draft(WEARERS["Maren"], style)
        for piece in before.pieces:
            assert piece.outline.area and piece.notches is not None
        for after in (pickle.loads(pickle.dumps(before)), copy.deepcopy(before)):
            assert after == before and hash(after) == hash(before)
            seams = {id(seam) for seam in after.seams}
            for piece, old in zip(after.pieces, before.pieces):
                assert [n.point for n in piece.notches] == [n.point for n in old.notches]
                for edge, was in zip(piece.edges, old.edges):
                    assert edge.piece is piece and (id(edge.seam) in seams) == (was.seam is not None)
                    assert [one.name for one in edge.partner] == [one.name for one in was.partner]

    def test_nothing_reckoned_goes_with_it(self):
        """A pickled pattern loads without shapely, whatever was asked of it before."""
        pattern = draft(WEARERS["Maren"])
        for piece in pattern.pieces:
            assert piece.outline.is_valid and all(edge.line.length for edge in piece.edges)
        assert b"shapely" not in pickle.dumps(pattern)

    def test_it_is_no_deep_tower(self):
        """The size of a pattern costs no depth: with a hundred frames to spare the largest is pickled."""
        pattern = draft(WEARERS["Maren"], LARGEST)

        def deep(frames):
            return deep(frames - 1) if frames else pickle.loads(pickle.dumps(pattern)) == pattern

        assert deep(800)

    @pytest.mark.parametrize("name", STEPS)
    def test_a_step_comes_back_equal(self, name):
        steps = run_steps(WEARERS["Theda"], Style(cup_parts=2 if name == "two_part_cup" else 3))
        value = getattr(steps, name)
        assert pickle.loads(pickle.dumps(value)) == value and pickle.loads(pickle.dumps(steps)) == steps


class TestFrozen:
    def test_girths_and_angles_stay_as_they_are(self):
        pattern = figure("Maren")
        for values in (pattern.girths, pattern.fullness.angles):
            assert isinstance(values, ByName) and len(values) == 4
            name, before = next(iter(values)), dict(values)
            with pytest.raises(TypeError):
                values[name] = 1
            with pytest.raises(TypeError):
                del values[name]
            with pytest.raises(AttributeError, match="does not change"):
                values._values = {}
            assert not hasattr(values, "update") and not hasattr(values, "pop") and dict(values) == before

    def test_by_name_is_a_value(self):
        given = {"b": 2.0, "a": 1.0}
        one = ByName(given)
        given["c"] = 3.0
        assert list(one) == ["b", "a"] and one == {"a": 1.0, "b": 2.0} and {"a": 1.0, "b": 2.0} == one
        assert one == ByName({"a": 1.0, "b": 2.0}) and hash(one) == hash(ByName({"a": 1.0, "b": 2.0}))
        assert one != ByName({"a": 1.0, "b": 2.5}) and one == pickle.loads(pickle.dumps(one)) == copy.deepcopy(one)

    def test_no_field_of_a_pattern_can_be_set(self):
        pattern = figure("Maren")
        for value in (pattern, pattern.pieces[0], pattern.seams[0], pattern.pieces[0].edges[0], *pattern.steps.in_order):
            for one in fields(value):
                with pytest.raises(FrozenInstanceError):
                    setattr(value, one.name, None)

    @pytest.mark.parametrize("kind", [Pattern, *(type(one) for one in figure("Maren").steps.in_order)])
    def test_it_is_built_by_name_alone(self, kind):
        """Two of a step's points given in the wrong order would be drawn without a word."""
        assert all(one.kw_only for one in fields(kind))
        with pytest.raises(TypeError, match="positional"):
            kind(*range(len(fields(kind))))


def held(value, seen):
    """Every dataclass's value that the pattern holds, but for its curves, which are numbers."""
    if isinstance(value, (tuple, list)):
        for one in value:
            yield from held(one, seen)
    elif isinstance(value, ByName):
        yield value
        yield from held(tuple(value.values()), seen)
    elif is_dataclass(value) and not isinstance(value, (Line, Cubic)) and id(value) not in seen:
        seen.add(id(value))
        yield value
        for one in fields(value):
            if one.name not in ("measurements", "style"):
                yield from held(getattr(value, one.name), seen)


class TestSaid:
    @pytest.mark.parametrize("style", [Style(), LARGEST, Style(method="guides", cup_parts=2)], ids=["", "largest", "guides"])
    def test_everything_in_a_pattern_is_said_in_one_short_line(self, style):
        pattern = draft(WEARERS["Maren"], style)
        found = list(held(pattern, set()))
        assert len({type(one) for one in found}) >= 20
        for one in found:
            assert len(repr(one)) < LONGEST and "\n" not in repr(one), type(one)

    def test_it_says_what_a_person_would(self):
        pattern = figure("Maren")
        piece, seam = pattern.pieces[0], pattern.seams[0]
        waist = pattern.girths["waist"].finished
        assert f"{len(pattern.pieces)} pieces" in repr(pattern) and f"waist {waist:.1f} cm" in repr(pattern)
        assert f'{piece.number} "{piece.name}"' in repr(piece)
        assert f'{seam.number} "{seam.name}", {seam.lengths[0]:.1f} cm' in repr(seam)
        assert f'"{piece.edges[0].name}"' in repr(piece.edges[0]) and f"{piece.edges[0].length:.1f} cm" in repr(piece.edges[0])
        assert all(name in repr(pattern.steps) for name in ("block", "three_part_cup", "back"))
        assert "two_part_cup" not in repr(pattern.steps)
        assert f"{pattern.steps.block.side_dart:.1f} degrees" in repr(pattern.steps.block)
