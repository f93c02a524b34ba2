"""A folder is written whole or not at all, nothing of the user's in it is lost, and a run that was killed is mended."""

import hashlib
import json
import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from corsetkit.errors import CorsetkitError
from corsetkit.files import write_whole
from corsetkit.folder_record import RECORD
from corsetkit.folders import mended, new_folder

ROOT = Path(__file__).parent.parent


def write(folder, *, again=False, of="Ana", text="new", names=("a.pdf", "a.svg")):
    """Write a folder of small files; what was said of it."""
    with new_folder(folder, of, again) as made:
        for name in names:
            write_whole(made.beside / name, text.encode())
    return made.said


def held(folder):
    """Names and texts of all that lies in a folder, hidden things too, but for the record."""
    return {
        one.relative_to(folder).as_posix(): one.read_text()
        for one in folder.rglob("*")
        if one.is_file() and one.name != RECORD
    }


def other_process(code, *words):
    """A process that has this test's `write` at hand."""
    start = "import sys, os, time; from pathlib import Path; from test_folders import *; place = Path(sys.argv[1])\n"
    return subprocess.Popen(
        [sys.executable, "-c", start + code, *map(str, words)],
        stderr=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": os.pathsep.join((str(ROOT), str(ROOT / "tests")))},
    )


def wait_for(path, process):
    while not path.exists():
        assert process.poll() is None, process.stderr.read()
        time.sleep(0.01)


def test_the_record_lists_what_was_written(tmp_path):
    """Every file but the record itself is listed with its fingerprint, and for whom it was written."""
    assert write(tmp_path / "Ana") == []
    told = json.loads((tmp_path / "Ana" / RECORD).read_text("utf-8"))
    assert told["of"] == "Ana" and told["files"] == {name: hashlib.sha256(b"new").hexdigest() for name in ("a.pdf", "a.svg")}
    assert sorted(os.listdir(tmp_path / "Ana")) == ["a.pdf", "a.svg", RECORD] and os.listdir(tmp_path) == ["Ana"]


def test_the_users_own_files_are_kept(tmp_path):
    """Written again, a folder keeps what is not listed and what was changed since, whatever its name is, and says so."""
    folder = tmp_path / "Ana"
    write(folder, text="old", names=("a.pdf", "a.svg", "gone.txt"))
    (folder / "final_a.pdf").write_text("mine")
    (folder / "cut").mkdir()
    (folder / "cut" / "a.pdf").write_text("mine too")
    (folder / "a.svg").write_text("altered")
    (folder / "a_kept.svg").write_text("altered before")
    (said,) = write(folder, again=True)
    assert held(folder) == {
        "a.pdf": "new",
        "a.svg": "new",
        "final_a.pdf": "mine",
        "cut/a.pdf": "mine too",
        "a_kept.svg": "altered before",
        "a_kept_2.svg": "altered",
    }
    assert "final_a.pdf" in said and "a.svg, changed since it was written, as a_kept_2.svg" in said and "\n" not in said
    assert os.listdir(tmp_path) == ["Ana"]
    # And once more: what was kept is the user's still.
    (said,) = write(folder, again=True, text="newer")
    assert held(folder)["a_kept_2.svg"] == "altered" and "as a_" not in said


def test_many_kept_files_are_one_short_sentence(tmp_path):
    """Of many files only the first are told by name, and the number of the others."""
    write(tmp_path / "Ana")
    for number in range(30):
        (tmp_path / "Ana" / f"mine_{number:02d}").write_text("mine")
    (said,) = write(tmp_path / "Ana", again=True)
    assert "mine_04; and 25 more" in said and len(held(tmp_path / "Ana")) == 32


@pytest.mark.parametrize("record", [None, "", "[]", '{"of": "Ana"}', '{"of": 1, "files": {}}', "[" * 200_000, "\udcff"])
def test_a_folder_without_a_record_is_left(tmp_path, record):
    """Where no record says which files are ours, nothing is replaced, as in a folder that an older version wrote."""
    folder = tmp_path / "Ana"
    folder.mkdir()
    (folder / "a.pdf").write_text("whose?")
    if record is not None:
        (folder / RECORD).write_bytes(record.encode("utf-8", "surrogateescape"))
    with pytest.raises(CorsetkitError, match="cannot be told") as told:
        write(folder, again=True)
    assert "a.pdf" in str(told.value) and "\n" not in str(told.value)
    assert held(folder) == {"a.pdf": "whose?"} and os.listdir(tmp_path) == ["Ana"]


def test_an_empty_folder_is_written_into(tmp_path):
    """A folder with nothing in it can be asked for again, for nothing of anybody's is lost."""
    (tmp_path / "Ana").mkdir()
    with pytest.raises(CorsetkitError, match="is there already"):
        write(tmp_path / "Ana")
    write(tmp_path / "Ana", again=True)
    assert len(held(tmp_path / "Ana")) == 2


def test_another_wearers_folder_is_left(tmp_path):
    """A folder that was written for somebody else is not replaced; the same name in other letters is the same wearer."""
    write(tmp_path / "Zoe", of="Zo\u00eb")
    with pytest.raises(CorsetkitError, match="was written for 'Zo\u00eb'"):
        write(tmp_path / "Zoe", again=True, of="Zoe")
    assert write(tmp_path / "Zoe", again=True, of="ZOE\u0308", text="again") == []


def test_a_record_cannot_reach_out_of_its_folder(tmp_path):
    """Names in a record are only compared with what lies in the folder; nothing outside is touched."""
    (tmp_path / "mine").write_text("new")
    write(tmp_path / "Ana")
    place = tmp_path / "Ana" / RECORD
    told = json.loads(place.read_text())
    told["files"]["../mine"] = told["files"]["a.pdf"]
    place.write_text(json.dumps(told))
    write(tmp_path / "Ana", again=True)
    assert (tmp_path / "mine").read_text() == "new"


def test_a_second_run_into_one_folder_is_told(tmp_path):
    """While one run writes a folder another one is refused in one sentence, in the same process and in another."""
    with new_folder(tmp_path / "Ana", "Ana") as made:
        with pytest.raises(CorsetkitError, match="another run is writing the folder") as told:
            write(tmp_path / "Ana")
        second = other_process("write(place)", tmp_path / "Ana")
        assert "another run is writing the folder" in second.communicate()[1] and second.returncode
        assert mended(tmp_path) == [] and made.beside.is_dir()
        write_whole(made.beside / "a.pdf", b"first")
    assert ".corsetkit" not in str(told.value)
    assert held(tmp_path / "Ana") == {"a.pdf": "first"} and os.listdir(tmp_path) == ["Ana"]
    with pytest.raises(CorsetkitError, match="is there already"):
        write(tmp_path / "Ana")


@pytest.mark.parametrize(
    "make", [lambda place: (place.mkdir(), (place / "x").write_text("theirs")), lambda place: place.write_text("theirs")]
)
def test_what_came_to_stand_there_meanwhile_is_not_replaced(tmp_path, make):
    """A folder or a file that another program makes while ours is written stays, and the run is refused in one sentence."""
    with pytest.raises(CorsetkitError, match="in the meantime|was not written"):
        with new_folder(tmp_path / "Ana", "Ana") as made:
            write_whole(made.beside / "a.pdf", b"x")
            make(tmp_path / "Ana")
    assert "theirs" in held(tmp_path).values() and os.listdir(tmp_path) == ["Ana"]


DIES = """
what, when, text = sys.argv[2], int(sys.argv[3]), sys.argv[4]
right, calls = getattr(Path, what), []

def dies(self, *words, **more):
    calls.append(self)
    if len(calls) == when and text == "before":
        os._exit(9)
    done = right(self, *words, **more)
    if len(calls) == when:
        os._exit(9)
    return done

setattr(Path, what, dies)
write(place, again=True)
"""
MINE = {"mine.txt": "mine", "a_kept.svg": "altered"}


@pytest.mark.parametrize("text", ["before", "after"])
@pytest.mark.parametrize(
    "what, when, stands",
    [
        ("mkdir", 1, "old"),
        ("rename", 1, "old"),
        ("rename", 2, None),
        ("rename", 3, "new"),
        ("rename", 4, "new"),
        ("unlink", 1, "new"),
        ("unlink", 2, "new"),
        ("rmdir", 1, "new"),
    ],
)
def test_a_run_that_is_killed_is_mended_by_the_next(tmp_path, what, when, stands, text):
    """Killed at any of its moves, a run leaves the old folder or the new one whole once the next has looked, hides nothing
    of it for ever, and loses no file of the user's; what was done is said."""
    folder = tmp_path / "Ana"
    write(folder, text="old")
    (folder / "mine.txt").write_text("mine")
    (folder / "a.svg").write_text("altered")
    killed = other_process(DIES, folder, what, when, text)
    assert killed.communicate()[1] == "" and killed.returncode == 9
    said = mended(tmp_path)
    if stands is None:
        stands = "new" if text == "after" else "old"
    new, old = {"a.pdf": "new", "a.svg": "new", **MINE}, {"a.pdf": "old", "a.svg": "altered", "mine.txt": "mine"}
    assert held(folder) == (new if stands == "new" else old)
    assert os.listdir(tmp_path) == ["Ana"] and mended(tmp_path) == []
    # A hidden lock of a dead run is taken away without a word.
    assert len(said) <= 2 and all(one.startswith(("A run that was broken off", "What is not ours")) for one in said)
    assert bool(said) == ((what, when, text) not in {("mkdir", 1, "before"), ("rmdir", 1, "after")})
    write(folder, again=True, text="newer")
    assert held(folder).items() >= {"a.pdf": "newer", "mine.txt": "mine"}.items()


def test_the_next_run_itself_puts_the_folder_back(tmp_path):
    """Without being asked to look first, a run into the same folder finds what was put aside, and puts it back."""
    write(tmp_path / "Ana", text="old")
    killed = other_process(DIES, tmp_path / "Ana", "rename", 1, "after")
    assert killed.communicate()[1] == "" and not (tmp_path / "Ana").exists()
    with pytest.raises(CorsetkitError, match="is there already"):
        write(tmp_path / "Ana")
    assert held(tmp_path / "Ana") == {"a.pdf": "old", "a.svg": "old"} and os.listdir(tmp_path) == ["Ana"]


def test_a_run_that_is_alive_is_not_disturbed(tmp_path):
    """What a run in another process is writing is left alone by one that looks for broken-off ones; killed, it is cleared."""
    alive = other_process(
        "with new_folder(place, 'Ana') as made:\n"
        "    (made.beside / 'a.pdf').write_text('x'); (place.parent / 'begun').write_text(''); time.sleep(60)",
        tmp_path / "Ana",
    )
    try:
        wait_for(tmp_path / "begun", alive)
        before = held(tmp_path)
        assert mended(tmp_path) == [] and held(tmp_path) == before and len(before) == 3
        with pytest.raises(CorsetkitError, match="another run is writing"):
            write(tmp_path / "Ana")
    finally:
        alive.kill()
        alive.communicate()
    (said,) = mended(tmp_path)
    assert "cleared away" in said and os.listdir(tmp_path) == ["begun"]


def test_two_folders_where_one_was_put_aside_are_both_left(tmp_path):
    """Where a folder that is none of ours stands in the place of one that was put aside, neither is touched,
    and it is said."""
    write(tmp_path / "Ana", text="old")
    (tmp_path / "Ana").rename(tmp_path / ".Ana.corsetkit.older")
    (tmp_path / "Ana").mkdir()
    (tmp_path / "Ana" / "a.pdf").write_text("mine")
    before = held(tmp_path)
    (said,) = mended(tmp_path)
    assert "keep one of them" in said and held(tmp_path) == before
    with pytest.raises(CorsetkitError, match="keep one of them"):
        write(tmp_path / "Ana", again=True)
    assert held(tmp_path) == before


def test_hidden_things_of_others_are_left(tmp_path):
    """Only names that we make ourselves are looked at; what another program hides there is not."""
    for name in (".film.part", ".Ana.older", ".Ana.123.part"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "x").write_text("theirs")
    before = held(tmp_path)
    assert mended(tmp_path) == [] and held(tmp_path) == before


class TestFile:
    def test_what_a_killed_process_left_of_a_file_is_cleared(self, tmp_path):
        """Writing a file anew takes away what one that was killed in the middle had written beside it."""
        killed = other_process("os.replace = lambda *_: os._exit(9)\nwrite_whole(place, b'half')", tmp_path / "r.json")
        assert killed.communicate()[1] == "" and killed.returncode == 9 and "half" in held(tmp_path).values()
        (tmp_path / ".r.json.backup.part").write_text("theirs")
        (tmp_path / ".s.json.12.part").write_text("another file's")
        write_whole(tmp_path / "r.json", b"whole")
        assert held(tmp_path) == {"r.json": "whole", ".r.json.backup.part": "theirs", ".s.json.12.part": "another file's"}

    def test_what_another_process_writes_at_this_moment_is_not(self, tmp_path):
        """A process that is alive keeps its half of the file and ends it; both wrote the file whole."""
        alive = other_process(
            "right = os.replace\n"
            "def slow(*both):\n    Path(sys.argv[2]).write_text(''); time.sleep(0.5); right(*both)\n"
            "os.replace = slow\nwrite_whole(place, b'first')",
            tmp_path / "r.json",
            tmp_path / "begun",
        )
        wait_for(tmp_path / "begun", alive)
        write_whole(tmp_path / "r.json", b"second")
        assert alive.communicate()[1] == "" and alive.returncode == 0
        assert held(tmp_path) == {"r.json": "second", "begun": ""}

    def test_a_folder_that_may_not_be_written_is_told_by_the_files_name(self, tmp_path):
        """Where nothing may be made beside the file the sentence names the file, and not what stands hidden beside it."""
        (tmp_path / "file").write_text("x")
        with pytest.raises(CorsetkitError) as told:
            write_whole(tmp_path / "file" / "r.json", b"x")
        assert str(told.value).startswith(f"{tmp_path / 'file' / 'r.json'} was not written: ") and ".lock" not in str(
            told.value
        )
