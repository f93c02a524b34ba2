"""A second start does nothing; a half-finished set-up is done again; a change is noticed."""

import errno
import json
import os
import pathlib
import shutil
import sys
import threading
import time

import pytest
from pretended_setup import ALL, Programs, change_a_pin, ready, root  # noqa: F401

from corsetkit.setup import install, lab, lock, places, problems, stamp


def test_from_nothing_all_is_done_and_a_second_start_does_nothing(root):
    assert ready(root)[0] == ALL
    assert ready(root) == ([], [])


def test_a_second_start_asks_for_no_lock_and_no_room(root, monkeypatch):
    ready(root)
    monkeypatch.setattr(install, "look_for_room", lambda folder: pytest.fail("asked for room"))
    with lock.Lock(places.venv_folder(root), print):
        assert ready(root) == ([], [])


def test_what_is_made_for_the_lessons_lies_in_the_environment(root):
    ready(root)
    venv = places.venv_folder(root)
    assert json.loads(pathlib.Path(lab.settings_file(venv)).read_text()) == lab.SETTINGS
    (pth,) = pathlib.Path(places.site_packages(venv)).glob("*.pth")
    # The line is run as Python runs it, with a path of its own to append to.
    line = pth.read_text(encoding="ascii")
    line = line.replace("import sys; ", "")
    path = []
    exec(line, {"sys": type("sys", (), {"path": path})})
    assert path == [root]


def test_settings_of_a_newer_clone_are_written_without_a_new_set_up(root):
    ready(root)
    pathlib.Path(lab.settings_file(places.venv_folder(root))).write_text("{}")
    assert ready(root)[0] == []
    assert json.loads(pathlib.Path(lab.settings_file(places.venv_folder(root))).read_text()) == lab.SETTINGS


def test_labs_own_part_of_a_newer_clone_is_written_without_a_new_set_up(root):
    ready(root)
    there = pathlib.Path(lab.extensions_folder(places.venv_folder(root)), lab.EXTENSION_NAME)
    # An environment from before there was one, and one that has an older one.
    for spoil in (lambda: shutil.rmtree(there), lambda: [(there / name).write_text("old") for name in lab.EXTENSION_FILES]):
        spoil()
        assert ready(root)[0] == []
        for name in lab.EXTENSION_FILES:
            assert (there / name).read_text(encoding="utf-8") == pathlib.Path(lab.EXTENSION, name).read_text(encoding="utf-8")


def test_the_tests_add_to_the_course_and_then_serve_both(root):
    ready(root)
    assert ready(root, places.TESTS)[0] == ["pip uv", "uv", "look"]
    assert ready(root, places.TESTS)[0] == ready(root, places.COURSE)[0] == []


@pytest.mark.parametrize("step", ["venv", "pip_uv", "uv", "look"])
@pytest.mark.parametrize("how", [KeyboardInterrupt(), SystemExit(1), OSError(errno.EIO, "broken")])
def test_a_set_up_that_ends_half_way_is_done_again_from_nothing(root, step, how):
    with pytest.raises((KeyboardInterrupt, SystemExit, problems.SetupProblem)):
        ready(root, **{step: how})
    left_over = os.path.join(root, ".venv", "left over", "by the first")
    os.makedirs(left_over)
    assert ready(root)[0] == ALL
    assert not os.path.exists(left_over)


def test_adding_that_ends_half_way_is_done_again_from_nothing(root):
    ready(root)
    with pytest.raises(KeyboardInterrupt):
        ready(root, places.TESTS, uv=KeyboardInterrupt())
    assert ready(root, places.COURSE)[0] == ALL


@pytest.mark.parametrize("name, course_again", [("pins.txt", True), ("pins_tests.txt", False)])
def test_changed_pins_are_installed(root, name, course_again):
    ready(root, places.TESTS)
    change_a_pin(root, name)
    assert (ready(root, places.COURSE)[0] == ALL) is course_again
    assert ready(root, places.TESTS)[0] != []


def test_line_ends_turned_by_git_are_no_change(root):
    ready(root)
    path = pathlib.Path(places.pins_file(places.COURSE, root))
    path.write_bytes(path.read_bytes().replace(b"\n", b"\r\n"))
    assert ready(root)[0] == []


def test_a_moved_clone_is_set_up_anew(root):
    ready(root)
    moved = root + " moved"
    os.rename(root, moved)
    assert ready(moved)[0] == ALL


def test_another_python_is_set_up_anew_but_a_patch_is_not(root, monkeypatch):
    ready(root)
    monkeypatch.setattr(sys, "version_info", sys.version_info[:2] + (99, "final", 0))
    assert ready(root)[0] == []
    monkeypatch.setattr(stamp, "this_python", lambda: "CPython 3.99 toaster")
    assert ready(root)[0] == ALL


def test_a_python_that_went_away_is_seen(root):
    ready(root)
    venv = places.venv_folder(root)
    (pathlib.Path(venv) / "pyvenv.cfg").write_text("home = {}\n".format(os.path.join(root, "gone")))
    assert ready(root)[0] == ALL
    os.remove(places.venv_python(venv))
    assert ready(root)[0] == ALL


@pytest.mark.parametrize("gone", ["numpy", "numpy/core", "numpy-1.0.dist-info", "argon2"])
def test_a_package_that_has_gone_is_seen_and_put_back(root, gone):
    """A package's folder, or one within it, that has gone since is noticed at the next start, named, and put in again."""
    ready(root)
    site = pathlib.Path(places.site_packages(places.venv_folder(root)))
    shutil.rmtree(site / gone)
    started, said = ready(root)
    assert started == ["pip uv", "uv", "look"] and (site / gone).is_dir()
    assert said[0] == "Putting back what has gone from the folder .venv: {} ...".format(
        "argon2-cffi" if gone == "argon2" else "numpy"
    )
    assert ready(root) == ([], [])


def test_what_the_tests_need_is_put_back_with_the_course(root):
    """Mended by a start of the course, an environment that had the tests' packages too has them still."""
    ready(root, places.TESTS)
    shutil.rmtree(pathlib.Path(places.site_packages(places.venv_folder(root))) / "numpy")
    assert ready(root, places.COURSE)[0] == ["pip uv", "uv", "look"]
    assert ready(root, places.TESTS)[0] == []


def test_what_python_makes_by_itself_is_not_missed(root):
    """A start looks for no __pycache__, and takes an environment of before this was looked at for one to be looked over."""
    ready(root)
    venv = pathlib.Path(places.venv_folder(root))
    found = json.loads((venv / stamp.NAME).read_text())
    assert found["packages"] == ["argon2_cffi-1.0.dist-info", "numpy-1.0.dist-info"]
    del found["packages"]
    (venv / stamp.NAME).write_text(json.dumps(found))
    assert ready(root)[0] == ["pip uv", "uv", "look"]
    assert ready(root)[0] == []


@pytest.mark.parametrize("text", ["", "{", "[]", "{}", '{"pins": 3}', '{"pins": {}}'])
def test_a_spoilt_stamp_is_no_stamp(root, text):
    ready(root)
    (pathlib.Path(root) / ".venv" / stamp.NAME).write_text(text)
    assert ready(root)[0] == ALL


def test_what_another_set_up_finished_meanwhile_is_not_done_again(root):
    venv = places.venv_folder(root)
    os.makedirs(venv)
    started, results, pretended = [], [], Programs(root)

    def slow(command, held=None):
        started.append(Programs.kind(command))
        time.sleep(0.05)
        return pretended(command)

    def one():
        results.append(install.ready(root, places.COURSE, run=slow, say=lambda _: None))

    both = [threading.Thread(target=one) for _ in range(2)]
    for thread in both:
        thread.start()
    for thread in both:
        thread.join()
    assert len(results) == 2 and started == ALL
