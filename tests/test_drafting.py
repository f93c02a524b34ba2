"""The steps run as one draft: taken over from an earlier one, values that stay as they are, names that are for people."""

from dataclasses import FrozenInstanceError, fields
from types import SimpleNamespace

import pytest
from figures import CASES, WEARERS, figure

from corsetkit import Style, draft
from corsetkit.errors import CorsetkitError
from corsetkit.geometry.curve import Line
from corsetkit.pattern.edge import Edge, Kind
from corsetkit.pattern.seam import Seam
from corsetkit.pieces.proof import prove
from corsetkit.steps.run import STEPS, bears_on

# Each slider, the steps it must leave alone, and those it must draw anew.
SLIDERS = [
    ("cut_depth", ("block", "underbust", "overbust", "darts", "back"), ("three_part_cup",)),
    ("blend_reach", ("block", "underbust", "overbust", "back"), ("darts", "three_part_cup")),
    ("overbust_mark", ("block", "underbust"), ("overbust", "darts", "three_part_cup")),
    ("modesty_overlap", ("block", "underbust", "overbust", "darts", "three_part_cup"), ("back",)),
    ("hem_raise", ("block",), ("underbust", "overbust", "darts", "three_part_cup", "back")),
    ("waist_side_share", (), ("block", "underbust", "overbust", "darts", "three_part_cup", "back")),
]


def outlines(pattern):
    return [piece.path for piece in pattern.pieces]


@pytest.mark.parametrize("name, kept, drawn", SLIDERS, ids=[name for name, *_ in SLIDERS])
def test_a_slider_computes_only_later_steps(name, kept, drawn):
    """With an earlier pattern only the steps that a changed value reaches are drawn anew, and the draft is the same."""
    before = figure("Maren")
    style = before.style.replaced(**{name: 0.97 * getattr(before.style, name)})
    after = draft(before.measurements, style, earlier=before)
    assert {step: getattr(after.steps, step) is getattr(before.steps, step) for step in (*kept, *drawn)} == {
        **dict.fromkeys(kept, True),
        **dict.fromkeys(drawn, False),
    }
    assert outlines(after) == outlines(draft(before.measurements, style)) != outlines(before)


def test_another_wearer_or_kind_of_cup_takes_nothing_wrong_over():
    """From an earlier pattern of another wearer, or with another number of cup parts, the draft is the same as from none."""
    before = figure("Maren")
    for body, style in (
        (WEARERS["Ottilie"], Style()),
        (WEARERS["Maren"], Style(cup_parts=2)),
        (WEARERS["Maren"], Style(method="guides", yoke=False)),
    ):
        assert outlines(draft(body, style, earlier=before)) == outlines(draft(body, style))


def test_a_draft_is_the_same_each_time():
    """The same wearer and style give the same pattern, point for point, and an omitted style is the default one."""
    again = draft(WEARERS["Brid"])
    assert outlines(again) == outlines(figure("Brid"))
    assert again.warnings == figure("Brid").warnings and again.girths == figure("Brid").girths


def test_steps_can_be_taken_one_by_one():
    """Each step is a pure function: called by itself on the step before, it gives the value the draft holds."""
    steps, style = figure("Wanda").steps, figure("Wanda").style
    block = STEPS["block"](WEARERS["Wanda"], style)
    assert block == steps.block
    underbust = STEPS["underbust"](block, style)
    darts = STEPS["darts"](STEPS["overbust"](underbust, style), style)
    assert (underbust, darts) == (steps.underbust, steps.darts)
    assert (STEPS["three_part_cup"](darts, style), STEPS["back"](underbust, style)) == (steps.three_part_cup, steps.back)


def test_what_a_draft_gives_cannot_be_changed():
    """Steps, pieces, edges and seams are frozen."""
    pattern = figure("Maren")
    for value, field in (
        (pattern, "pieces"),
        (pattern.pieces[0], "name"),
        (pattern.pieces[0].edges[0], "run"),
        (pattern.seams[0], "sides"),
        (pattern.steps.block, "front"),
    ):
        with pytest.raises(FrozenInstanceError):
            setattr(value, field, None)


def test_names_are_for_people(monkeypatch):
    """With every edge and seam called the same, the draft is the same."""
    known = [figure("Maren", "three parts, openings"), figure("Ottilie", "two parts")]
    for cls in (Edge, Seam):
        place = [field.name for field in fields(cls)].index("name")
        monkeypatch.setattr(cls, "__init__", _renaming(cls.__init__, place))
    for one in known:
        again = draft(one.measurements, one.style)
        assert {edge.name for piece in again.pieces for edge in piece.edges} == {"same"}
        assert [piece.path for piece in again.pieces] == [piece.path for piece in one.pieces]
        assert [(seam.lengths, seam.marks) for seam in again.seams] == [(seam.lengths, seam.marks) for seam in one.seams]


def _renaming(init, place):
    def renamed(self, *given, **more):
        given = tuple("same" if number == place else value for number, value in enumerate(given))
        init(self, *given, **{key: "same" if key == "name" else value for key, value in more.items()})

    return renamed


def test_a_part_that_crosses_itself_is_refused_though_its_piece_is_whole():
    """What blends have smoothed on the piece may be crossed on the block, where it has to be cut."""
    pattern = figure("Maren")
    number, piece = next((n, one) for n, one in enumerate(pattern.pieces) if any(p.outline != one.path for p in one.parts))
    square = (0j, 4 + 0j, 4 + 4j, 4j)
    knot = tuple(Line(square[a], square[b]) for a, b in ((0, 1), (1, 3), (3, 2), (2, 0)))
    crossed = SimpleNamespace(
        name=piece.name, path=piece.path, edges=piece.edges, parts=(SimpleNamespace(name="a knot", outline=knot),)
    )
    pieces = (*pattern.pieces[:number], crossed, *pattern.pieces[number + 1 :])
    prove(pattern.steps, pattern.pieces, pattern.seams, pattern.waste)
    with pytest.raises(CorsetkitError, match="the a knot cannot be drawn .* its outline crosses itself"):
        prove(pattern.steps, pieces, pattern.seams, pattern.waste)


def test_a_piece_is_on_the_fold_where_one_of_its_edges_is():
    """One is cut on the fold, of every other piece a pair; the fold is an edge of what is cut on it, and of nothing else."""
    seen = set()
    for case in CASES:
        for piece in figure(*case).pieces:
            folded = any(edge.kind is Kind.FOLD for edge in piece.edges)
            assert (piece.on_fold, piece.pair, piece.cut) == ((True, False, 1) if folded else (False, True, 2)), piece.name
            seen.add(folded)
    assert seen == {True, False}


@pytest.mark.parametrize("name, kept, drawn", SLIDERS, ids=[name for name, *_ in SLIDERS])
def test_a_slider_bears_on_the_steps_that_it_draws_anew(name, kept, drawn):
    """A lesson offers what bears on its step: what the step reads, and what those read that it rests on."""
    bears = {step: name in {one.name for one in bears_on(step)} for step in (*kept, *drawn)}
    assert bears == {**dict.fromkeys(kept, False), **dict.fromkeys(drawn, True)}
