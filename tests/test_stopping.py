"""Ctrl-C at any moment of the command: one sentence, 130, no further wearer, and what was written is told."""

import os
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest
from figures import WEARERS

from corsetkit import command, write_wearers
from corsetkit.output import FILES
from corsetkit.stopping import Stop, stoppable

ROOT = Path(__file__).parent.parent
NAMES = ("Ana", "Bea", "Cleo")

# Loaded by Python itself before the command: presses Ctrl-C where a module is loaded, or at a move of files.
PRESSES = """
import os, signal, sys, time

kind, _, at = os.environ["PRESS_AT"].partition(" ")
how, pressed = os.environ["PRESS_HOW"], []

def press():
    if pressed:
        return
    pressed.append(at)
    if how == "from outside":
        open("reached", "w").close()
        time.sleep(float(os.environ["PRESS_FOR"]))
        return
    try:
        for _ in range(3 if how == "held down" else 1):
            signal.raise_signal(signal.SIGINT)
            sum(range(1000))
    except KeyboardInterrupt:
        if how not in ("made another error", "passed over"):
            raise
    if how == "made another error":
        raise ImportError("numpy._core.multiarray failed to import")

class Loading:
    def find_spec(self, name, path=None, target=None):
        if name == at:
            press()

def happens(event, words):
    if event == kind and os.path.basename(str(words[-1] if event != "os.rename" else words[1])) == at:
        press()
    if event == kind == "os.mkdir" and os.path.basename(str(words[0])) == at:
        press()

if kind == "import":
    sys.meta_path.insert(0, Loading())
else:
    sys.addaudithook(happens)
"""


@pytest.fixture
def run(tmp_path):
    """Runs the command for three wearers with Ctrl-C pressed at a moment: what it ends with and says, and what stands then."""
    (tmp_path / "hooks").mkdir()
    (tmp_path / "hooks" / "sitecustomize.py").write_text(PRESSES)
    write_wearers(tmp_path / "w.csv", [(name, WEARERS["Maren"]) for name in NAMES], "cm")

    def run(at, how="here", after=0.0, real=None):
        """`real` are the writers that write real files where the others need not, a word each."""
        path = os.pathsep.join((str(tmp_path / "hooks"), str(ROOT)))
        program = ["-m", "corsetkit"] if real is None else [str(ROOT / "tests" / "quick_files.py")]
        process = subprocess.Popen(
            [sys.executable, *program, "w.csv", "--into", "out"],
            cwd=tmp_path,
            text=True,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            env={
                **os.environ,
                "PYTHONPATH": path,
                "PRESS_AT": at,
                "PRESS_HOW": how,
                "PRESS_FOR": "0" if after else "2",
                "QUICK_BUT": real or "",
            },
        )
        if how == "from outside":
            while not (tmp_path / "reached").exists() and process.poll() is None:
                time.sleep(0.01)
            time.sleep(after)
            process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=60)
        assert "Traceback" not in out + err, err
        made = sorted(os.listdir(tmp_path / "out")) if (tmp_path / "out").exists() else None
        return process.returncode, out, err, made

    return run


@pytest.mark.parametrize("how", ["here", "made another error", "held down"])
@pytest.mark.parametrize("module", ["corsetkit.stopping", "corsetkit.command", "tqdm"])
def test_while_the_program_loads(run, module, how):
    """From its first line on, loading ends with one sentence and 130, and nothing is made."""
    if (module, how) == ("corsetkit.stopping", "made another error"):
        pytest.skip("nothing of ours listens before it")
    ended, out, err, made = run(f"import {module}", how)
    assert (ended, out, err.splitlines(), made) == (130, "", ["Nothing was written: stopped by hand."], None)


def test_passed_over_while_the_program_loads(run):
    """A press that a module makes nothing of, as it is loaded, is heeded as soon as that is done."""
    ended, out, err, made = run("import tqdm", "passed over")
    assert (ended, out, err.splitlines(), made) == (130, "", ["Nothing was written: stopped by hand."], None)


@pytest.mark.parametrize(
    "module, how",
    [
        *(
            (module, how)
            for module in ("shapely", "reportlab", "ezdxf")
            for how in ("here", "made another error", "held down")
        ),
        ("numpy", "here"),
        ("numpy", "held down"),
        ("ezdxf", "passed over"),
    ],
)
def test_while_a_wearers_files_load_their_tools(run, module, how):
    """What is only loaded for the first wearer stops the run too, whatever error the loading makes of it; nobody is blamed."""
    loads = {"shapely": "", "numpy": "", "reportlab": "write_print", "ezdxf": "write_dxf"}
    ended, out, err, made = run(f"import {module}", how, real=loads[module])
    assert ended == 130 and made == [] and "not written" not in err and "mistake" not in err
    assert out.splitlines() == ["0 of 3 wearers written into out. The rest was not tried: stopped by hand."]


@pytest.mark.parametrize(
    "at, how, written",
    [
        ("os.rename Bea_cutting.pdf", "passed over", 2),
        ("os.rename Ana", "here", 1),
        ("os.rename Ana", "held down", 1),
        ("os.mkdir .Bea.corsetkit.part", "here", 1),
        ("os.rename Bea_cutting.pdf", "here", 1),
        ("os.rename Cleo", "here", 3),
        ("os.rename Bea_cutting.pdf", "made another error", 1),
    ],
)
def test_in_the_middle_of_the_run(run, tmp_path, at, how, written):
    """Whoever was written before is whole and counted, nobody further is begun, and nothing is left half-written or hidden."""
    ended, out, err, made = run(at, how, real="")
    assert ended == 130 and made == list(NAMES[:written])
    assert all(len(os.listdir(tmp_path / "out" / name)) == len(FILES) + 1 for name in made)
    rest = " The rest was not tried: stopped by hand." if written < 3 else ""
    assert f"{written} of 3 wearers written into out.{rest}" in out.splitlines()
    assert out.count(" files and the list of them") == written


@pytest.mark.skipif(os.name == "nt", reason="a process of Windows is sent no Ctrl-C alone")
@pytest.mark.parametrize("at", ["import corsetkit.command", "import numpy", "os.mkdir .Bea.corsetkit.part"])
def test_pressed_from_outside(run, at):
    """The system's own signal, sent to the process while it loads and while it writes, ends it in the same way."""
    ended, out, err, made = run(at, "from outside")
    assert ended == 130 and "stopped by hand." in out + err
    assert made == {"c": None, "n": [], ".": ["Ana"]}[at.split()[1][0]]


@pytest.mark.skipif(os.name == "nt", reason="a process of Windows is sent no Ctrl-C alone")
@pytest.mark.parametrize("seconds", [0.15, 0.3, 0.45, 0.6, 0.9, 1.5])
def test_pressed_at_any_time(run, tmp_path, seconds):
    """Whenever it comes once our first line runs, it is one sentence and 130; what stands is whole, and counted."""
    ended, out, err, made = run("import corsetkit.stopping", "from outside", seconds)
    assert ended == 130 and "stopped by hand." in out + err and "mistake" not in err
    assert all(len(os.listdir(tmp_path / "out" / name)) == len(FILES) + 1 for name in made or ())
    assert out.count(" files and the list of them") == len(made or ())


def pressed():
    signal.raise_signal(signal.SIGINT)
    sum(range(1000))


def test_a_stop_is_raised_and_remembered():
    """It is raised as ever, remembered whatever becomes of it, and what listened before listens again afterwards."""
    before = signal.getsignal(signal.SIGINT)
    with Stop() as stop:
        stop.heed()
        with pytest.raises(KeyboardInterrupt):
            pressed()
        assert stop.asked
        pressed()  # the same one: the key is held down
        with pytest.raises(KeyboardInterrupt):
            stop.heed()
    assert signal.getsignal(signal.SIGINT) == before


def test_a_stop_waits_while_it_has_to():
    """While it has to wait it is only remembered, and raised as soon as it is asked for."""
    with Stop() as stop:
        stop.later()
        pressed()
        with pytest.raises(KeyboardInterrupt):
            stop.heed()


def test_where_ctrl_c_is_ignored_it_stays_so():
    """A run in the background, for which the system ignores Ctrl-C, is not stopped by it."""
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        with Stop() as stop:
            pressed()
        assert not stop.asked and signal.getsignal(signal.SIGINT) == signal.SIG_IGN
    finally:
        signal.signal(signal.SIGINT, before)


def test_another_thread_listens_to_nothing():
    """Only the first thread hears Ctrl-C; run in another one, the command goes on without."""
    found = []
    thread = threading.Thread(target=lambda: found.append(stoppable(lambda stop: stop.asked)))
    thread.start()
    thread.join()
    assert found == [False]


def test_an_error_that_nobody_stopped_is_an_error():
    """What goes wrong without Ctrl-C comes through as it is."""
    before = signal.getsignal(signal.SIGINT)
    try:
        with pytest.raises(ZeroDivisionError):
            stoppable(lambda stop: 1 // 0)
    finally:
        signal.signal(signal.SIGINT, before)
    assert command.STOPPED == 130
