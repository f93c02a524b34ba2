"""A set-up with programs that only pretend: for test_setup_stamp.py and test_setup_failures.py."""

import os
import pathlib
import shutil
import sys

import pytest

from corsetkit.setup import install, places, problems, stamp

SETUP = pathlib.Path(places.HERE)


class Programs:
    """Stands for venv, pip and uv: notes what is started, and makes what they would leave behind."""

    def __init__(self, root, fails=()):
        self.started, self.root, self.fails = [], root, dict(fails)

    @staticmethod
    def kind(command):
        if "venv" in command:
            return "venv"
        if "uv" in command:
            return "uv"
        if "-c" in command:
            return "look"
        return "pip uv" if command[-1].endswith("pins_installer.txt") else "pip"

    def __call__(self, command, held=None):
        kind = self.kind(command)
        self.started.append(kind)
        # Each word stands for itself: a path with a space stays one word.
        assert not any(str(self.root) in word and not word.startswith(str(self.root)) for word in command)
        assert not os.path.exists(os.path.join(places.venv_folder(self.root), stamp.NAME))
        answer = self.fails.get(kind)
        if isinstance(answer, BaseException):
            raise answer
        if answer:
            return 1, answer
        if kind == "venv":
            self.make_venv(command[-1], with_pip="--without-pip" not in command)
        if kind in ("uv", "pip"):
            self.install("numpy", "numpy/core")
            self.install("argon2_cffi", "argon2")
        return 0, ""

    def install(self, name, *more):
        """Like an installer, which leaves alone what is written down as there."""
        site = pathlib.Path(places.site_packages(places.venv_folder(self.root)))
        record = site / f"{name}-1.0.dist-info" / "RECORD"
        if record.exists():
            return
        files = [f"{folder}/{file}" for folder in (name, *more) for file in ("__init__.py", "other.py")]
        for file in files:
            (site / file).parent.mkdir(parents=True, exist_ok=True)
            (site / file).write_text("")
        record.parent.mkdir()
        record.write_text(
            "".join(f"{one},sha256=x,0\n" for one in files + [f"{name}/__pycache__/other.pyc", f"{record.parent.name}/RECORD"])
        )

    def make_venv(self, venv, with_pip):
        for path in (places.venv_python(venv), os.path.join(venv, "pyvenv.cfg")):
            os.makedirs(os.path.dirname(path), exist_ok=True)
            with open(path, "w", encoding="utf-8") as file:
                file.write(f"home = {os.path.dirname(sys.executable)}\nversion = 3\n")
        os.makedirs(os.path.join(places.site_packages(venv), *["pip"] * with_pip))


ALL = ["venv", "pip uv", "uv", "look"]


@pytest.fixture
def root(tmp_path):
    """A clone in a path with a space and a letter beyond ASCII."""
    root = tmp_path / "my cörset" / "corset kit"
    (root / "corsetkit" / "setup").mkdir(parents=True)
    for name in ("pins.txt", "pins_tests.txt", "pins_installer.txt"):
        shutil.copy(SETUP / name, root / "corsetkit" / "setup" / name)
    return str(root)


def ready(root, pins=places.COURSE, **fails):
    """(what was started, what was said); problems pass through."""
    pretended, said = Programs(root, {key.replace("_", " "): value for key, value in fails.items()}), []
    assert install.ready(root, pins, run=pretended, say=said.append) == places.venv_python(os.path.join(root, ".venv"))
    return pretended.started, said


def stopped(root, pins=places.COURSE, **fails):
    """(what was started, the sentence) of a set-up that cannot be finished."""
    pretended = Programs(root, {key.replace("_", " "): value for key, value in fails.items()})
    with pytest.raises(problems.SetupProblem) as caught:
        install.ready(root, pins, run=pretended, say=lambda _: None)
    assert "\n" not in str(caught.value) and str(caught.value).endswith(".")
    assert stamp.read(places.venv_folder(root)) is None
    return pretended.started, str(caught.value)


def change_a_pin(root, name):
    path = places.pins_file(name, root)
    pathlib.Path(path).write_text(pathlib.Path(path).read_text() + "another==1.0\n")
