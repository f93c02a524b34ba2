"""The sentences kept in text files, checked both ways against the Python that says them."""

import ast
import re
from pathlib import Path

import pytest

from corsetkit import words
from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.style import Style

ROOT = Path(__file__).parent.parent
FILES = sorted(path for folder in (words.PACKAGE, words.LESSONS) for path in folder.glob(f"*{words.SUFFIX}"))
NAMES = [path.name.removesuffix(words.SUFFIX) for path in FILES]
CARD = ("", "_means", "_drawing")
"""What `vignette.card` says of one name."""
NAMED = {"hand": {quantity.name for owner in (Measurements, Style) for quantity in quantities(owner)}}
"""Of a file of reasons, the places that may bear a measurement's or a style value's name: `say_why` fills them later."""
AT_MOST = 5639
"""Words of prose that stand in the package's Python still. It only falls: lower it with each file of sentences."""


class Said:
    """One place in Python that says a sentence: of which file, which names may be meant, and the places it fills."""

    def __init__(self, where, file, names, filled):
        self.where, self.file, self.names, self.filled = where, file, names, filled


def patterns(node):
    """A pattern for each name that an expression can come to: a text, a text with values in it, or a choice of these."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return [re.escape(node.value)]
    if isinstance(node, ast.JoinedStr):
        parts = [re.escape(one.value) if isinstance(one, ast.Constant) else r"\w+" for one in node.values]
        return ["".join(parts)] if any(part != r"\w+" for part in parts) else []
    if isinstance(node, ast.IfExp):
        chosen = [patterns(node.body), patterns(node.orelse)]
        return [one for found in chosen for one in found] if all(chosen) else []
    return []


def sayings(source, where):
    """Each `Said` of a module, and a sentence for each that cannot be read."""
    tree = ast.parse(source)
    files = {
        target.id: node.value.args[0].value
        for node in ast.walk(tree)
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Call) and called(node.value) == "words_of"
        for target in node.targets
    }
    # Nothing is said by a name that is handed in: only the module that names the file says its sentences.
    for node in ast.walk(tree):
        if isinstance(node, ast.Compare) and any(
            isinstance(one, ast.Call) and called(one) in files for one in (node.left, *node.comparators)
        ):
            yield f"{where}, line {node.lineno}: a sentence decides there, and another language decides otherwise"
        if not isinstance(node, ast.Call):
            continue
        name, rest, filled = called(node), node.args, {one.arg for one in node.keywords}
        if name in files:
            file, ends = files[name], ("",)
        elif isinstance(node.func, ast.Attribute) and node.func.attr == "counted" and ast.unparse(node.func.value) in files:
            file, ends, filled = files[ast.unparse(node.func.value)], ("_one", "_many"), filled | {"count"}
        elif name == "card" and rest and ast.unparse(rest[0]) in files:
            file, ends, filled, rest = files[ast.unparse(rest[0])], CARD, set(), rest[1:]
        else:
            continue
        found = patterns(rest[0]) if rest else []
        place = f"{where}, line {node.lineno}"
        if not found:
            yield f"{place}: the name of the sentence is not written there"
        elif None in filled:
            yield f"{place}: the places are not written there"
        elif ends == CARD:
            yield from (Said(place, file, [one + end], set()) for one in found for end in ends)
        else:
            yield Said(place, file, [one + end for one in found for end in ends], filled)


def called(call):
    return call.func.id if isinstance(call.func, ast.Name) else ""


def quarrels(files, modules, named=NAMED):
    """A sentence for each place where files of sentences and modules do not agree."""
    wrong, kept, used = [], {}, set()
    for file, text in files.items():
        kept[file] = {}
        for number, name, sentence in words.lines(text):
            if name in kept[file]:
                wrong.append(f"{file}, line {number}: {name} stands there a second time")
            kept[file][name] = words.places(sentence) - named.get(file, set())
        for number, line in enumerate(text.splitlines(), 1):
            if line.startswith("-") and not words.LINE.fullmatch(line.rstrip()):
                wrong.append(f"{file}, line {number}: is no sentence; write '- name: sentence'")
    for where, source in modules.items():
        for one in sayings(source, where):
            if isinstance(one, str):
                wrong.append(one)
                continue
            filled_somewhere = set()
            for pattern in one.names:
                met = [name for name in kept.get(one.file, ()) if re.fullmatch(pattern, name)]
                if not met:
                    wrong.append(f"{one.where}: {one.file} has no sentence {pattern}")
                for name in met:
                    used.add((one.file, name))
                    places = kept[one.file][name]
                    filled_somewhere |= places
                    wrong += [f"{one.where}: nothing fills {{{place}}} of {name}" for place in sorted(places - one.filled)]
            unused = one.filled - filled_somewhere - {"count"}
            wrong += [f"{one.where}: no place {{{place}}} in {' or '.join(one.names)}" for place in sorted(unused)]
    wrong += [f"{file}: nothing says {name}" for file in kept for name in kept[file] if (file, name) not in used]
    return wrong


def modules():
    return {
        str(path.relative_to(ROOT)): path.read_text(encoding="utf-8") for path in sorted((ROOT / "corsetkit").rglob("*.py"))
    }


def test_files_and_python_agree():
    """No sentence is missing or never said, no place is unfilled, nothing is handed over that no sentence has a place for."""
    assert len(NAMES) == len(set(NAMES)) and "03_overbust" in NAMES
    wrong = quarrels({name: path.read_text(encoding="utf-8") for name, path in zip(NAMES, FILES)}, modules())
    assert not wrong, "\n".join(wrong)


FILE = "# Sentences\n\n- lies: It lies {away} off.\n- bone_one: one bone\n- bone_many: {count} bones\n"
MODULE = 'WORDS = words_of("toy")\nWORDS("lies", away=say(2))\nWORDS.counted("bone", 3)\n'


@pytest.mark.parametrize(
    "file, module, told",
    [
        (FILE, MODULE, []),
        (FILE + "- more: More.\n", MODULE, ["toy: nothing says more"]),
        (FILE + "- lies: Again {away}.\n", MODULE, ["toy, line 6: lies stands there a second time"]),
        (FILE + "- More words\n", MODULE, ["toy, line 6: is no sentence; write '- name: sentence'"]),
        (FILE, MODULE.replace("away=", "far="),
         ["m, line 2: nothing fills {away} of lies", "m, line 2: no place {far} in lies"]),
        (FILE, MODULE + 'WORDS("gone")\n', ["m, line 4: toy has no sentence gone"]),
        (FILE, MODULE + "WORDS(name)\n", ["m, line 4: the name of the sentence is not written there"]),
        (FILE, MODULE + 'WORDS("lies", **values)\n', ["m, line 4: the places are not written there"]),
        (FILE, MODULE + 'WORDS("lies" if far else "gone", away=2)\n', ["m, line 4: toy has no sentence gone"]),
        (FILE, MODULE + 'WORDS(f"bone_{which}", count=2)\n', []),
        (FILE, MODULE + 'unit == WORDS("bone_one")\n',
         ["m, line 4: a sentence decides there, and another language decides otherwise"]),
        (FILE, MODULE + 'card(WORDS, "lies", lines)\n',
         ["m, line 4: nothing fills {away} of lies", "m, line 4: toy has no sentence lies_means",
          "m, line 4: toy has no sentence lies_drawing"]),
    ],
)  # fmt: skip
def test_where_they_do_not_agree_it_is_told(file, module, told):
    assert quarrels({"toy": file}, {"m": module}) == told


def test_a_reason_may_bear_names_of_measurements_and_no_other():
    """What is filled later bears a name that is declared; in another file, or misspelt, it is told."""
    module = {"m": MODULE.replace('"lies", away=say(2)', '"lies"')}
    assert quarrels({"toy": FILE}, module, {"toy": {"away"}}) == []
    assert quarrels({"toy": FILE}, module, {"toy": {"way"}}) == ["m, line 2: nothing fills {away} of lies"]
    assert quarrels({"toy": FILE}, module, {"other": {"away"}}) == ["m, line 2: nothing fills {away} of lies"]


class TestSaid:
    @pytest.fixture
    def toy(self, tmp_path, monkeypatch):
        monkeypatch.setenv(words.INSTEAD, str(tmp_path))
        (tmp_path / "toy.words.md").write_text(FILE, encoding="utf-8")
        return words.Words("toy")

    def test_places_are_filled(self, toy):
        assert toy("lies", away="3 in") == "It lies 3 in off."
        assert [toy.counted("bone", count) for count in (0, 1, 2)] == ["0 bones", "one bone", "2 bones"]

    def test_braces_in_a_value_are_no_places(self, toy):
        assert toy("lies", away="{count}") == "It lies {count} off."

    def test_what_is_missing_is_still_said_in_some_form(self, toy):
        """A sentence taken away, a place that Python does not know and a lost file stop no lesson."""
        assert toy("gone_away", far="3 in") == "gone away 3 in"
        assert toy("lies") == "It lies {away} off."
        assert words.Words("nowhere")("lies", away="3 in") == "lies 3 in"

    def test_one_file_stands_in_the_place_of_ours(self, toy):
        assert words.file_of("toy").parent != words.LESSONS
        assert words.file_of("03_overbust").parent == words.LESSONS


def prose(source):
    """The texts of five words or more in a module's strings, docstrings and errors apart."""
    tree = ast.parse(source)
    apart = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            apart.add(node.value)
        if isinstance(node, ast.Raise) or isinstance(node, ast.Call) and ast.unparse(node.func).endswith("Error"):
            apart |= set(ast.walk(node))
    for node in ast.walk(tree):
        if node in apart:
            continue
        if isinstance(node, ast.JoinedStr):
            apart |= set(ast.walk(node))
            text = " ".join(one.value if isinstance(one, ast.Constant) else "-" for one in node.values)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            text = node.value
        else:
            continue
        if len(text.split()) >= 5:
            yield text


def test_prose_in_python_only_falls():
    """What people read moves into files of sentences; the set-up, which runs before anything is there, keeps its own."""
    counted = {where: sum(len(text.split()) for text in prose(source)) for where, source in modules().items()
               if not where.startswith("corsetkit/setup/")}  # fmt: skip
    most = sorted(counted, key=counted.get, reverse=True)[:10]
    assert sum(counted.values()) <= AT_MOST, f"{sum(counted.values())} words, most in {', '.join(most)}"
