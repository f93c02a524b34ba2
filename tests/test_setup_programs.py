"""What the set-up does with real programs: environments, locks, signals."""

import os
import pathlib
import signal
import subprocess
import sys
import threading

import pytest
from pretended_setup import SETUP, root  # noqa: F401

from corsetkit.setup import here, install, lab, lock, places, problems, programs, stamp


def test_a_real_environment_is_made_in_a_path_with_a_space(root):
    work = install.Work(root, say=lambda _: None)
    os.makedirs(work.venv)
    install.make_venv(work)
    install.finish(work)
    (pathlib.Path(root) / "corset_probe.py").write_text("word = 'found'\n")
    code, text = install.run([work.python, "-c", "import corset_probe; print(corset_probe.word)"])
    assert (code, text.strip()) == (0, "found")
    assert stamp.python_answers(work.venv)
    assert os.path.isdir(os.path.join(places.site_packages(work.venv), "pip"))


@pytest.mark.skipif(os.name == "nt", reason="Windows asks to leave the environment first")
def test_the_environments_own_python_hands_over_where_all_is_to_be_made_anew(root, monkeypatch, capfd):
    program = pathlib.Path(root) / "a start.py"
    program.write_text("import sys; print(sys.prefix == sys.base_prefix, sys.argv[1:]); sys.exit(4)\n")
    monkeypatch.setattr(sys, "argv", [str(program), "-k", "two words"])
    assert install.again_from_base(root, places.COURSE) == 4
    assert capfd.readouterr().out == "True ['-k', 'two words']\n"
    monkeypatch.setattr(stamp, "what_to_do", lambda venv, want: stamp.ADD)
    assert install.again_from_base(root, places.COURSE) is None


def test_a_program_that_fails_gives_its_code_and_words():
    code, text = install.run([sys.executable, "-c", "import sys; print('one'); sys.exit('twö')"])
    assert code == 1 and "one" in text and "twö" in text


def test_codes_pass_through():
    assert programs.follow([sys.executable, "-c", "raise SystemExit(7)"]) == 7


PARENT = """
import sys
sys.path.insert(0, sys.argv[1])
from setup import programs
child = "import time; print('there', flush=True); time.sleep(60)"
sys.exit(programs.follow([sys.executable, "-c", child]))
"""


@pytest.mark.skipif(os.name == "nt", reason="Windows ends a process without a word to it")
@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT])
def test_what_ends_the_start_ends_the_program_it_started(number):
    parent = subprocess.Popen(
        [sys.executable, "-c", PARENT, str(SETUP.parent)],
        text=True,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    )
    try:
        assert parent.stdout.readline() == "there\n"
        if number == signal.SIGINT:
            os.killpg(parent.pid, number)  # Ctrl-C reaches all that belongs to the terminal
            assert parent.wait(10) in (1, 128 + number)
        else:
            parent.send_signal(number)
            assert parent.wait(10) == 128 + number
        # The pipe ends when nobody holds it any more: the program is gone too.
        assert parent.stdout.read() == ""
    finally:
        parent.kill()
        parent.wait()
        parent.stdout.close()


HOLD = """
import sys, time
sys.path.insert(0, sys.argv[1])
from setup import lock
with lock.Lock(sys.argv[2], print):
    print("held", flush=True)
    time.sleep(60)
"""


def hold(folder):
    program = subprocess.Popen([sys.executable, "-c", HOLD, str(SETUP.parent), str(folder)], stdout=subprocess.PIPE, text=True)
    assert program.stdout.readline() == "held\n"
    return program


def test_a_second_set_up_waits_for_the_first_and_a_killed_one_holds_nobody(tmp_path):
    program, said = hold(tmp_path), []
    try:
        with pytest.raises(problems.SetupProblem, match="Another set-up"):
            with lock.Lock(str(tmp_path), said.append, patience=0.2, wait=0.05):
                pytest.fail("two set-ups at once")
        assert len(said) == 1 and "waiting" in said[0]
        timer = threading.Timer(0.3, program.kill)
        timer.start()
        with lock.Lock(str(tmp_path), said.append, patience=30, wait=0.05):
            assert program.wait(5) != 0
    finally:
        program.kill()
        program.wait()
        program.stdout.close()


def test_an_environment_made_by_something_else_is_served(tmp_path, capsys):
    here.main(prefix=str(tmp_path / "env"), folder=str(tmp_path / "env" / "site"))
    assert os.path.exists(lab.settings_file(str(tmp_path / "env")))
    (pth,) = (tmp_path / "env" / "site").iterdir()
    assert ascii(places.ROOT) in pth.read_text(encoding="ascii")
    assert "can be imported" in capsys.readouterr().out
