"""A file of choices, JSON or CSV: read with care, told in one sentence where it is amiss."""

import json
import re

import pytest

from corsetkit import CorsetkitError, Style
from corsetkit.finish.choices import Finish
from corsetkit.lay.cloth import Cloth
from corsetkit.style_file import Choices, read_choices
from corsetkit.teaching import record


def given(tmp_path, text, name="s.json"):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return path


def test_choices_are_read_from_json_and_csv(tmp_path):
    """The same choices from JSON, from CSV with commas or semicolons, with a unit for all, and as the lessons keep them."""
    wanted = (
        Style(cup_parts=2, yoke=False, waist_reduction=3.81, method="guides"),
        Finish(panel_allowance=2.0, facing="folded"),
    )
    texts = {
        "a.json": '{"cup_parts": 2, "yoke": false, "waist reduction": "1 1/2 in", "method": "guides", '
        '"panel_allowance": "2 cm", "facing": "folded"}',
        "b.json": '{"unit": "cm", "cup_parts": 2, "yoke": "no", "waist_reduction": 3.81, "method": "guides", '
        '"panel_allowance": 2, "facing": "folded"}',
        "c.csv": "\ufeffname,value\ncup parts,2\nyoke,no\nwaist_reduction,1 1/2 in\n\nmethod,guides\npanel_allowance,2 cm\n"
        "facing,folded\n",
        "d.csv": "unit;cm\ncup_parts;2\nyoke;no\nwaist_reduction;3,81\nmethod;guides\npanel_allowance;2,0\nfacing;folded\n",
        "e.json": json.dumps(
            {
                "unit": "in",
                "wearer": "Ana",
                "style": {"cup_parts": 2, "yoke": False, "waist_reduction": 3.81, "method": "guides"},
                "finish": {"panel_allowance": 2.0, "facing": "folded"},
            }
        ),
    }
    for name, text in texts.items():
        found = read_choices(given(tmp_path, text, name))
        assert (found.style, found.finish) == wanted, name
    assert read_choices(given(tmp_path, "{}")) == Choices(Style(), Finish(), Cloth())


def test_the_cloth_stands_beside_style_and_finish(tmp_path):
    """The cloth's values are read under their own names, with a unit or with the one for all."""
    wanted = Cloth(width=114.3, laid="folded", one_way=True)
    for text in (
        '{"cloth_width": "45 in", "cloth_laid": "folded", "cloth_one_way": true}',
        "unit,in\ncloth width,45\ncloth laid,folded\ncloth one way,yes\n",
    ):
        found = read_choices(given(tmp_path, text))
        assert found.cloth == wanted and (found.style, found.finish) == (Style(), Finish())


@pytest.mark.parametrize(
    "text, said",
    [
        ('{"waist_reduction": "30 cm"}', r"s.json: waist reduction is 30 cm .*: allowed are 0 to 7.62 cm"),
        ('{"waist_reduction": 2}', "waist reduction is 2 without a unit: write 2 in or 5.1 cm.*allowed are 0 to"),
        ('{"waist_reduction": "2"}', "without a unit"),
        ('{"unit": "ell"}', "unit is 'ell': write cm or in"),
        ('{"cup_parts": 4}', "cup parts is 4: allowed are whole numbers from 2 to 3"),
        ('{"cup_parts": "many"}', "cup parts is 'many': allowed"),
        ('{"yoke": 1}', "yoke is 1: allowed are yes and no"),
        ('{"yoke": null}', "yoke is missing: allowed are yes and no"),
        ('{"method": "mine"}', "method is 'mine': allowed are wearer, guides"),
        ('{"colour": "red"}', "'colour' is no value of style, finish or cloth; allowed are unit, method, cup_parts"),
        ('{"cloth_width": "20 cm"}', "cloth width is 20 cm .*: allowed are 70 to 210 cm"),
        ('{"cloth_width": 150}', "cloth width is 150 without a unit"),
        ('{"width": "150 cm"}', "'width' is no value"),
        ('{"yoke": true, "yoke": false}', "yoke stands there twice"),
        ('{"unit": "cm", "unit": "in"}', "once"),
        ('{"yoke": true', "s.json, line 1: this is not JSON"),
        ("[1, 2]", "names and values are expected"),
        ('{"waist_reduction": [1]}', "waist reduction is"),
        ('{"waist_reduction": {}}', "waist reduction is"),
        ('{"waist_reduction": true}', "waist reduction is True"),
        ('{"waist_reduction": NaN, "unit": "cm"}', "waist reduction is"),
        ("yoke,no,maybe", "row 1 has 3 cells"),
        ('yoke,"no', "quotation marks"),
        ('{"style": {"colour": 1}}', "'colour' is no value"),
        ('{"style": {"waist_reduction": 99}}', "waist reduction is 99 cm"),
        ("[" * 100000, "not JSON"),
        ("", "s.json is empty: write a choice into it"),
        ("\ufeff\n,\n", "s.json is empty"),
        ("name,value\n", "no choice stands in it"),
        ("[]", "names and values are expected"),
        ("7", "row 1 has 1 cells"),
        ('{"style": {"yoke": false}, "finish": 5}', "finish is 5: names and values are expected there"),
        ('{"style": [["yoke", false]]}', "style is .*: names and values are expected there"),
        ('{"style": null}', "style is None: names and values"),
        ('{"finish": {}, "style": [1]}', "style is .1.: names and values"),
        ('{"style": {}, "yoke": false}', "yoke stands beside style: write all the choices without such parts"),
        ('{"style": {}, "finish": {}, "cloth": {"width": 150}}', "cloth stands beside style and finish"),
        (f"yoke,{'x' * 200_000}", "a cell is too long"),
    ],
)
def test_a_style_amiss_is_one_sentence(tmp_path, text, said):
    """Each mistake in a file of choices is one line with the field, what was given, and what is allowed."""
    with pytest.raises(CorsetkitError) as told:
        read_choices(given(tmp_path, text))
    assert re.search(said, str(told.value)) and "\n" not in str(told.value), str(told.value)


def test_a_style_that_is_no_text_is_one_sentence(tmp_path):
    """A file that is no UTF-8, a folder, and no file at all are told as such."""
    (tmp_path / "s.json").write_bytes(b"\xff\xfe\x00")
    for path, said in (
        (tmp_path / "s.json", "not UTF-8"),
        (tmp_path, "cannot be read"),
        (tmp_path / "none", "cannot be read"),
    ):
        with pytest.raises(CorsetkitError, match=said):
            read_choices(path)


def test_a_value_that_does_nothing_is_told(tmp_path):
    """A value that counts only with another is read, and a sentence says that it does nothing."""
    (said,) = read_choices(given(tmp_path, '{"corset_length": "60 cm"}')).said
    assert said == "corset length does nothing here: it counts only where method is fixed guides"
    assert read_choices(given(tmp_path, '{"corset_length": "60 cm", "method": "guides"}')).said == ()


OF_EARLIER = """{
 "source": "demo", "wearer": "Ines", "unit": "cm", "own_name": "", "own": {},
 "style": {"way": "guides", "cup_parts": 2, "waist_reduction": 6.35}, "finish": {"panel_allowance": 2.0},
 "guesses": {"back.guess": {"text": "3", "value": 7.62, "right": 7.0, "start": 6.0, "of": {"wearer": "Ines", "body": {},
  "style": {"way": "guides"}, "finish": {}, "corrections": []}}}
}
"""
"""What a lesson kept when the method of drafting was still called its way."""


def test_a_file_of_earlier_is_read_under_its_old_names(tmp_path):
    """A style value that was renamed is read under its old name, from a record, a file of choices and a table alike."""
    (tmp_path / "record.json").write_text(OF_EARLIER, encoding="utf-8")
    kept = record.read_file(tmp_path / "record.json")
    assert kept.style == {"method": "guides", "cup_parts": 2, "waist_reduction": 6.35} and kept.finish == {
        "panel_allowance": 2.0
    }
    assert read_choices(tmp_path / "record.json").style == Style(method="guides", cup_parts=2, waist_reduction=6.35)
    (tmp_path / "c.json").write_text('{"way": "guides"}', encoding="utf-8")
    (tmp_path / "c.csv").write_text("way,guides\n", encoding="utf-8")
    assert read_choices(tmp_path / "c.json").style == read_choices(tmp_path / "c.csv").style == Style(method="guides")
    (tmp_path / "twice.json").write_text('{"way": "guides", "method": "wearer"}', encoding="utf-8")
    with pytest.raises(CorsetkitError, match="method stands there twice"):
        read_choices(tmp_path / "twice.json")
