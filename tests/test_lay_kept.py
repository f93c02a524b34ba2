"""A plan kept as data comes back equal, or is told to be obsolete, or is refused in one sentence."""

import json
from dataclasses import replace

import pytest
from figures import figure, ready_to_cut
from laying import LAID, SHORT

from corsetkit import Style, demo_wearers, draft
from corsetkit.errors import CorsetkitError
from corsetkit.finish.choices import Finish
from corsetkit.finish.finished import finish
from corsetkit.lay.cloth import SINGLE, Cloth
from corsetkit.lay.items import fingerprint, items_of, layers_of
from corsetkit.lay.plan_file import read, read_file, write_file, written
from corsetkit.lay.planning import plan


def test_a_kept_plan_comes_back_equal(tmp_path, finished_maren, laid_shells):
    """As text, and through a file, every plan is the same value again: its outlines bit by bit."""
    by_layer = {layer: items_of(finished_maren, layer) for layer in layers_of(finished_maren)}
    for laid in LAID:
        made = [laid_shells[laid][1], plan(by_layer["lining"], Cloth(laid=laid, tilt=2), SHORT, layer="lining")]
        back = read(written(made), by_layer)
        assert back.obsolete == () and list(back.plans.values()) == made
        assert [one.outline for one in back.plans["shell"].placed] == [one.outline for one in made[0].placed]
        write_file(tmp_path / "plans.json", made)
        assert read_file(tmp_path / "plans.json", by_layer) == back
    assert read_file(tmp_path / "none.json", by_layer).plans == {}


def test_a_plan_is_obsolete_when_the_pattern_changes(laid_shells):
    """With other allowances, or another body, a kept plan is not used and a sentence says so; the rest stays."""
    items, made = laid_shells[SINGLE]
    text = written([made])
    for changed in (finish(figure("Maren"), Finish(hem_allowance=1.1)), ready_to_cut(figure("Ines"))):
        back = read(text, {"shell": items_of(changed, "shell")})
        assert back.plans == {} and back.obsolete == ("the pattern has changed since the shell was laid: lay it again",)
    again = items_of(finish(draft(dict(demo_wearers())["Maren"], Style())), "shell")
    assert read(text, {"shell": again}).plans["shell"] == made
    for other in ("", "~"):
        # Another print is another pattern, whichever of the two would stand first in a list of words.
        told = data_of(made)
        told["cutting plans"][0]["outlines"] = other
        assert read(json.dumps(told), {"shell": items}).plans == {}
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
    for change, said in (
        (lambda one: one["placed"][0].update(across=-40.0), "cannot be cut: .* usable width"),
        (lambda one: one["placed"].pop(), "cannot be cut: .* instead of"),
        (lambda one: one["placed"][0].update(turned="much"), "no kept cutting plan"),
        (lambda one: one["placed"][0].update(across=float("nan")), "cut|no kept cutting plan"),
        (lambda one: one["placed"][0].update(number=99), "no kept cutting plan"),
        (lambda one: one["cloth"].update(width=3), "width is 3 cm"),
        (lambda one: one.pop("plain"), "no kept cutting plan"),
    ):
        told = data_of(made)
        change(told["cutting plans"][0])
        yield json.dumps(told), said


def test_a_spoiled_text_is_one_sentence(laid_shells):
    """What was altered by hand, cut short or was never a plan is refused in one sentence each."""
    items, made = laid_shells[SINGLE]
    for text, said in spoiled_texts(made):
        with pytest.raises(CorsetkitError, match=said) as told:
            read(text, {"shell": items})
        assert "\n" not in str(told.value)
