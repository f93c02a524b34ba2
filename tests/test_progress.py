"""A long answer says how far it is, to the page that asked for it and while it is still being made."""

import threading

from quick_files import put_quick

from corsetkit.output import FILES
from corsetkit.teaching import cells as course
from corsetkit.teaching.board import Board
from corsetkit.teaching.picture import Stored
from corsetkit.teaching.shared.files_written import write_files
from corsetkit.teaching.shared.finished_drafts import Finishing
from corsetkit.teaching.widgets import heard_by, say_working


def pressed(do):
    """A board whose button does `do`, pressed; in turn what its page is told, the answer last."""
    board, told = Board("Files", lambda: Stored("", ()), (), "Write", do), []
    board.observe(lambda change: told.append((change.new["words"], change.new["share"])), "progress")
    board.observe(lambda change: told.append(change.new["answer"]), "shown")
    board._on_page(board, {"kind": "do", "asker": "page", "number": 1}, [])
    return told


def test_the_page_is_told_before_the_answer_is_there():
    """What is said of the work goes to the page at once, each time anew, and the answer after it."""

    def do(_):
        for done in (0, 0, 1):
            say_working(f"Writing {done}", done, 2)
        return "Written."

    assert pressed(do) == [("Writing 0", 0.0), ("Writing 0", 0.0), ("Writing 1", 0.5), "Written."]


def test_only_who_asked_is_told():
    """Work that nobody is waiting for, or that goes on in another thread, tells no page of another question."""
    heard = []
    with heard_by(lambda words, share: heard.append(words)):
        other = threading.Thread(target=lambda: say_working("a search"))
        other.start()
        other.join()
        say_working("mine")
    say_working("nobody's")
    assert heard == ["mine"]


def test_a_folder_that_is_written_names_each_file_and_counts_them(work, monkeypatch):
    """While all files are written into a folder, the page hears of each: its name, and which of how many it is."""
    put_quick(monkeypatch.setattr)
    told = pressed(lambda _: write_files(Finishing(course.desk()), "all"))
    files = [
        (f"Writing Maren_{kind}, {number} of {len(FILES)} files.", (number - 1) / len(FILES))
        for number, kind in enumerate(FILES, 1)
    ]
    assert told[1:-1] == files and told[-1].startswith("Written into the folder")
