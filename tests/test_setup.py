"""The lists of packages keep in step; the set-up's modules stay plain; the Python is looked at first."""

import ast
import pathlib
import re
import shutil
import subprocess
import sys
import tomllib
from importlib import metadata

import pytest
import yaml
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from corsetkit.setup import start

ROOT = pathlib.Path(__file__).resolve().parent.parent
SETUP = ROOT / "corsetkit" / "setup"
WAYS_IN = [ROOT / "lessons" / "__main__.py", ROOT / "tests" / "__main__.py", ROOT / "tests" / "benchmarks" / "__main__.py"]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def names(requirements):
    return {canonicalize_name(Requirement(text).name) for text in requirements}


HASH = re.compile(r"--hash=sha256:[0-9a-f]{64}")


def hashed_pins(name):
    """Each pin with its hashes: a pin and its hashes are one line, broken by backslashes."""
    lines = (SETUP / name).read_text(encoding="utf-8").replace("\\\n", "").splitlines()
    return {line.partition(" --hash")[0].strip(): line.split()[-line.count("--hash") :] for line in lines}


def pins(name):
    return list(hashed_pins(name))


# The lists


def test_environment_yml_lists_what_pyproject_lists():
    entries = yaml.safe_load((ROOT / "environment.yml").read_text(encoding="utf-8"))["dependencies"]
    # What conda's own channel may lack is listed under pip.
    listed = [entry for entry in entries if isinstance(entry, str) and entry != "pip"]
    listed += [name for entry in entries if isinstance(entry, dict) for name in entry["pip"]]
    (python,) = [entry for entry in listed if entry.startswith("python ")]
    assert names(entry for entry in listed if entry != python) == names(PROJECT["dependencies"])
    assert python == "python " + PROJECT["requires-python"]


def test_what_pyproject_lists_is_pinned():
    assert names(PROJECT["dependencies"]) <= names(pins("pins.txt"))
    extras = names(PROJECT["optional-dependencies"]["test"])
    assert extras <= names(pins("pins_tests.txt"))
    # What only the tests need stays out of what a learner has to fetch. (jsonschema and the like
    # come with JupyterLab, so this looks at the listed names alone.)
    assert not extras & names(pins("pins.txt"))


def test_course_and_tests_share_their_pins():
    course, tests = hashed_pins("pins.txt"), hashed_pins("pins_tests.txt")
    assert len(course) < len(tests) and course.items() <= {pin: tests.get(pin) for pin in course}.items()


@pytest.mark.parametrize("name", ["pins.txt", "pins_tests.txt", "pins_installer.txt"])
def test_a_pin_is_a_name_and_one_version_and_no_address(name):
    lines = pins(name)
    assert lines
    for line in lines:
        pin = Requirement(line)
        assert pin.url is None and re.fullmatch(r"==[^,*/]+", str(pin.specifier)), line
        assert "/" not in line and not line.startswith("-"), line


@pytest.mark.parametrize("name", ["pins.txt", "pins_tests.txt", "pins_installer.txt"])
def test_each_pin_bears_the_hashes_of_its_files(name):
    # One pin without any, and pip would take none of the file.
    text = (SETUP / name).read_text(encoding="utf-8")
    assert "://" not in text and text.count("--hash") == len(HASH.findall(text))
    for pin, hashes in hashed_pins(name).items():
        assert hashes and all(HASH.fullmatch(one) for one in hashes), pin


def test_what_is_installed_is_what_is_pinned():
    wanted = [Requirement(line) for line in pins("pins_tests.txt")]
    wanted = {pin.name: str(pin.specifier)[2:] for pin in wanted if not pin.marker or pin.marker.evaluate()}
    assert {name: metadata.version(name) for name in wanted} == wanted


def test_what_the_installed_packages_ask_for_is_pinned():
    pinned = names(pins("pins_tests.txt"))
    for name in names(PROJECT["dependencies"] + PROJECT["optional-dependencies"]["test"]):
        for text in metadata.requires(name) or ():
            asked = Requirement(text)
            if not asked.marker or asked.marker.evaluate({"extra": ""}):
                assert canonicalize_name(asked.name) in pinned, (name, text)


def test_the_pythons_are_the_same_everywhere():
    assert PROJECT["requires-python"] == ">={}.{},<{}.{}".format(*start.OLDEST, start.NEWEST[0], start.NEWEST[1] + 1)


# The modules


@pytest.mark.parametrize("path", sorted(SETUP.glob("*.py")) + WAYS_IN, ids=lambda path: path.parent.name + "/" + path.name)
def test_a_module_of_the_set_up_is_readable_by_old_pythons_and_needs_nothing(path):
    tree = ast.parse(path.read_text(encoding="utf-8"), feature_version=(3, 6))
    imported = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            imported |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and not node.level:
            imported.add(node.module.partition(".")[0])
    if path in WAYS_IN:
        imported.discard("setup")  # the set-up itself
    assert imported <= sys.stdlib_module_names


def test_nothing_beside_the_set_up_hides_a_module_of_the_standard_library():
    # The ways in put the folder corsetkit/ first on the path while the set-up runs.
    beside = {path.stem for path in (ROOT / "corsetkit").iterdir() if not path.name.startswith("__")}
    assert "setup" in beside and not beside & set(sys.stdlib_module_names)


@pytest.mark.parametrize("way_in", WAYS_IN, ids=lambda path: path.parent.name)
def test_an_old_python_is_told_in_one_sentence_and_leaves_nothing(way_in, tmp_path):
    copy = tmp_path / "corset kit"
    shutil.copytree(SETUP, copy / "corsetkit" / "setup")
    target = copy / way_in.relative_to(ROOT)
    target.parent.mkdir(parents=True)
    shutil.copy(way_in, target)
    (target.parent / "bench_one.py").touch()
    (copy / "corsetkit" / "__init__.py").write_text("import this_package_is_never_imported\n")
    program = (
        "import runpy, sys; sys.version_info = (3, 8, 10, 'final', 0); sys.argv = sys.argv[1:]; "
        "runpy.run_path(sys.argv[0], run_name='__main__')"
    )
    done = subprocess.run([sys.executable, "-c", program, str(target.parent)], capture_output=True, text=True, cwd=tmp_path)
    assert done.returncode == 1
    assert re.fullmatch(r"Python 3\.11, 3\.12 or 3\.13, please \(this is Python 3\.8\): .+\n", done.stderr)
    assert not (copy / ".venv").exists()


@pytest.mark.parametrize(
    "version, bits, fits",
    [
        ((3, 10), 64, False),
        ((3, 11), 64, True),
        ((3, 12), 64, True),
        ((3, 13), 64, True),
        ((3, 14), 64, False),
        ((2, 7), 64, False),
        ((3, 12), 32, False),
    ],
)
def test_which_pythons_fit(version, bits, fits):
    sentence = start.wrong_python(version, bits, "lessons")
    assert (sentence is None) is fits
    if sentence:
        assert "this is Python {}.{}".format(*version) in sentence and "\n" not in sentence
    if bits == 32:
        assert "64" in sentence


def test_a_fitting_python_that_is_there_is_named():
    assert "python3.12 tests" in start.wrong_python((3, 9), 64, "tests", "python3.12")
