"""What several processes write is written by one at a time."""

import os
import subprocess
import sys
import threading
import time

import pytest

from corsetkit.errors import CorsetkitError
from corsetkit.lock import one_at_a_time

ADDS = """
import sys
from pathlib import Path
from corsetkit.lock import one_at_a_time
number = Path(sys.argv[1])
for _ in range(200):
    with one_at_a_time(number.with_name("lock"), patience=60):
        number.write_text(str(int(number.read_text()) + 1))
"""
HOLDS = """
import sys, time
from corsetkit.lock import one_at_a_time
with one_at_a_time(sys.argv[1]):
    print("held", flush=True)
    time.sleep(600)
"""


def process(code, *said):
    return subprocess.Popen([sys.executable, "-c", code, *map(str, said)], stdout=subprocess.PIPE, text=True)


def test_what_three_processes_add_at_the_same_time_is_all_there(tmp_path):
    """Reading and writing anew under the lock loses nothing, and the lock's file is gone afterwards."""
    number = tmp_path / "number"
    number.write_text("0")
    running = [process(ADDS, number) for _ in range(3)]
    assert [one.wait(120) for one in running] == [0, 0, 0]
    assert number.read_text() == "600" and os.listdir(tmp_path) == ["number"]


def test_a_lock_ends_with_the_process_that_holds_it(tmp_path):
    """A killed process leaves no lock behind; while it lived, others waited and were told so."""
    held = process(HOLDS, tmp_path / "lock")
    try:
        assert held.stdout.readline() == "held\n"
        with pytest.raises(CorsetkitError, match="^wait a little$"), one_at_a_time(tmp_path / "lock", 0.1, "wait a little"):
            pass
    finally:
        held.kill()
        held.wait()
        held.stdout.close()
    with one_at_a_time(tmp_path / "lock", 5):
        pass
    assert os.listdir(tmp_path) == []


def test_two_threads_of_one_process_wait_for_each_other_too(tmp_path):
    """A second thread comes in only when the first is out."""
    order = []

    def first():
        with one_at_a_time(tmp_path / "lock"):
            order.append("in")
            inside.set()
            time.sleep(0.1)
            order.append("out")

    inside, thread = threading.Event(), threading.Thread(target=first)
    thread.start()
    inside.wait(10)
    with one_at_a_time(tmp_path / "lock"):
        order.append("second")
    thread.join()
    assert order == ["in", "out", "second"]


def test_a_place_that_cannot_be_had_is_one_sentence(tmp_path):
    """Where the lock's file cannot be made, one sentence names it; an error inside the block goes its own way."""
    with pytest.raises(CorsetkitError, match="was not written"), one_at_a_time(tmp_path / "nowhere" / "lock"):
        pass
    with pytest.raises(OSError, match="mine"), one_at_a_time(tmp_path / "lock"):
        raise OSError("mine")
    assert os.listdir(tmp_path) == []
