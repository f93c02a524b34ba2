"""One command, a folder a wearer: whole or not at all, never over an older one unasked, honest about what was not done."""

import errno
import hashlib
import json
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ElementTree
from pathlib import Path

import ezdxf
import pypdfium2
import pytest
from bodies import MEAN_BODY
from figures import WEARERS
from quick_files import put_quick

from corsetkit import Correction, CorsetkitError, Style, command, output, read_wearers, write_wearers
from corsetkit.finish.choices import Finish
from corsetkit.fitting.corrections_file import Kept, write_file
from corsetkit.folder_record import RECORD
from corsetkit.lay.cloth import Cloth
from corsetkit.output import FILES, Wish, disk_refused, write_all
from corsetkit.printing.names import number_of

ROOT = Path(__file__).parent.parent
MAREN, INES = (WEARERS[name] for name in ("Maren", "Ines"))
DAY = "2026-03-01"
FLAT = MEAN_BODY.replaced(bust_girth=80, underbust_girth=77, waist_girth=76, hip_girth=80)
"""A body that measures like one, and that this draft may refuse or not: the tests refuse her themselves."""


def held(folder):
    """Names and bytes of all that lies in a folder, hidden things too."""
    return {str(one.relative_to(folder)): one.read_bytes() for one in sorted(folder.rglob("*")) if one.is_file()}


def files_of(name):
    """What a wearer's folder holds: her files, and the list of them."""
    return sorted([RECORD, *(f"{name}_{kind}" for kind in FILES)])


def table(path, *names):
    write_wearers(path, [(name, MAREN) for name in names], "cm")
    return str(path)


@pytest.fixture
def quick(monkeypatch):
    """Files of a few bytes in place of the real ones, for tests of what becomes of folders; Flat cannot be drafted."""

    def draft(measurements, style, corrections):
        if measurements == FLAT:
            raise CorsetkitError("the bust girth is 80 cm: this cannot be drawn, measure again")
        return type("P", (), {"measurements": measurements, "style": style, "corrections": corrections})

    def finish(pattern, choices):
        return type("F", (), {"pattern": pattern, "choices": choices, "warnings": ()})

    monkeypatch.setattr(output, "draft", draft)
    monkeypatch.setattr(output, "finish", finish)
    monkeypatch.setattr(output, "bill", lambda finished: type("B", (), {"warnings": ()}))
    put_quick(monkeypatch.setattr)


@pytest.fixture(scope="module")
def real(tmp_path_factory):
    """One wearer's real folder, with corrections and other choices."""
    folder = tmp_path_factory.mktemp("real") / "Maren"
    made = write_all(
        "Maren",
        MAREN,
        Style(cup_parts=2),
        Finish(panel_allowance=2.0),
        (Correction("underbust line", 0.5),),
        folder,
        wish=Wish("Letter", "cm", DAY),
    )
    return folder, made


def test_every_file_is_there_and_can_be_opened(real):
    """All eight files, each read by a program that did not write it, bear the wearer's name and what was chosen."""
    folder, made = real
    assert sorted(one.name for one in folder.iterdir()) == files_of("Maren")
    # The list says of each what it is, for whoever wants to know whether it was changed.
    told = json.loads(made.record.read_text("utf-8"))
    assert told["of"] == "Maren" and told["files"] == {
        one.name: hashlib.sha256(one.read_bytes()).hexdigest() for one in made.files.values()
    }
    assert made.files == {kind: folder / f"Maren_{kind}" for kind in FILES} and made.folder == folder
    book = pypdfium2.PdfDocument(made.files["pattern.pdf"])
    assert len(book) == made.pages and book[0].get_width() == pytest.approx(612, abs=0.1)
    hand = pypdfium2.PdfDocument(made.files["by_hand.pdf"])
    assert hand[0].get_width() == pytest.approx(612, abs=0.1)
    assert "two-part cup" in "".join(page.get_textpage().get_text_range() for page in hand)
    assert ElementTree.parse(made.files["pattern.svg"]).getroot().attrib["width"].endswith("mm")
    assert len(ezdxf.readfile(made.files["pattern.dxf"]).blocks) > 8
    pieces = made.files["pieces.csv"].read_text(encoding="utf-8-sig")
    plans = pypdfium2.PdfDocument(made.files["cutting.pdf"])
    assert [
        re.search(r"^Cutting plan, (.*) for Maren: (.* m), 137 cm wide", page.get_textpage().get_text_range())[1]
        for page in plans
    ] == ["shell", "strength layer", "lining"]
    assert "underbust line: 0.5 cm lower" in pieces and "side seam 2 cm" in pieces and "for Maren" in pieces
    assert made.files["seams.csv"].read_text(encoding="utf-8-sig").startswith("letter,name")
    sewing = " ".join(made.files["sewing.txt"].read_text(encoding="utf-8").split())
    assert "underbust line: 0.5 cm lower" in sewing and DAY in sewing
    assert str(made) == f"Maren: 8 files and the list of them, the pattern on {made.pages} pages"
    assert any("front opening" in one for one in made.warnings)


def test_the_same_wish_gives_the_same_bytes(tmp_path):
    """With a given date the whole folder is the same, byte for byte; on A0 the draft by hand is on A4."""
    for name in ("one", "two"):
        made = write_all("Ines", INES, None, None, (), tmp_path / name, wish=Wish("A0", "in", DAY))
    assert held(tmp_path / "one") == held(tmp_path / "two")
    assert pypdfium2.PdfDocument(made.files["pattern.pdf"])[0].get_width() > 2000
    assert pypdfium2.PdfDocument(made.files["by_hand.pdf"])[0].get_width() == pytest.approx(595.3, abs=0.1)


def test_a_table_of_wearers_is_written(tmp_path, capsys, quick):
    """A folder a wearer, a line each, the sum, and 0 for all is well; nothing hidden is left."""
    ended = command.main([table(tmp_path / "w.csv", "Ana", "Bea"), "--into", str(tmp_path / "out" / "deep"), "--date", DAY])
    told = capsys.readouterr()
    assert ended == command.ALL == 0 and "2 of 2 wearers written into" in told.out and told.err == ""
    into = tmp_path / "out" / "deep"
    assert sorted(os.listdir(into)) == ["Ana", "Bea"]
    assert sorted(os.listdir(into / "Ana")) == files_of("Ana")


def test_who_cannot_be_drafted_is_told_and_the_rest_go_on(tmp_path, capsys, quick):
    """One refusal is one sentence under her name; the others are written; the command says so and ends with 1."""
    write_wearers(tmp_path / "w.csv", [("Ana", MAREN), ("Flat", FLAT), ("Bea", MAREN)], "cm")
    ended = command.main([str(tmp_path / "w.csv"), "--into", str(tmp_path / "out")])
    told = capsys.readouterr()
    assert ended == command.NOT_ALL == 1 and sorted(os.listdir(tmp_path / "out")) == ["Ana", "Bea"]
    assert "2 of 3 wearers written" in told.out and "Not written: Flat." in told.out
    assert [line for line in told.err.splitlines() if line.startswith("Flat: not written: the bust girth is 80 cm")]


def test_a_row_that_cannot_be_used_is_told_and_the_rest_go_on(tmp_path, capsys, quick):
    """A row with no number, one without a name and a name given twice are told with their row; the others are written."""
    path = Path(table(tmp_path / "w.csv", "Ana", "Bea", "Cleo", "Dora"))
    heading, ana, bea, cleo, dora = path.read_text(encoding="utf-8").splitlines()
    spoilt = bea.split(",")
    spoilt[3] = "wide"
    path.write_text("\n".join((heading, ana, ",".join(spoilt), cleo.replace("Cleo", ""), ana, dora)), encoding="utf-8")
    ended = command.main([str(path), "--into", str(tmp_path / "out")])
    told = capsys.readouterr()
    assert ended == command.NOT_ALL and sorted(os.listdir(tmp_path / "out")) == ["Ana", "Dora"]
    assert "2 of 5 wearers written" in told.out and "Not written: Bea, row 4, Ana." in told.out
    lines = [line for line in told.err.splitlines() if "not written" in line]
    assert [re.search(r"w.csv, row (\d)", line)[1] for line in lines] == ["3", "4", "5"]
    assert "underbust girth is 'wide'" in lines[0] and "stands in row 2 already" in lines[2]


@pytest.mark.parametrize(
    "words, cloth, seconds",
    [
        ([], Cloth(), None),
        (["--cloth", "45 in"], Cloth(width=114.3), None),
        (["--cloth", "45"], Cloth(width=114.3), None),
        (["--cloth", "150", "--unit", "cm", "--search", "2"], Cloth(width=150), 2.0),
        (["--style", "s.json", "--cloth", "60 in"], Cloth(width=152.4, laid="folded"), None),
    ],
)
def test_the_cloth_is_as_it_was_asked_for(tmp_path, quick, monkeypatch, words, cloth, seconds):
    """Width and search from the command, all else of the cloth from the file of choices; in rows where nothing is said."""
    seen = []
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(output, "plans", lambda finished, *asked: seen.append(asked) or {})
    Path("s.json").write_text('{"cloth_laid": "folded", "cloth_width": "80 cm"}')
    assert command.main([table(tmp_path / "w.csv", "Ana"), "--into", "out", *words]) == 0
    assert seen == [(cloth, seconds)]


def test_a_mistake_of_ours_does_not_stop_the_rest(tmp_path, capsys, quick, monkeypatch):
    """Where the program itself fails with one wearer, that is told as ours, and the others are written."""
    right = output.draft
    monkeypatch.setattr(output, "draft", lambda body, *rest: right(body, *rest) if body != FLAT else 1 // 0)
    write_wearers(tmp_path / "w.csv", [("Flat", FLAT), ("Bea", MAREN)], "cm")
    assert command.main([str(tmp_path / "w.csv"), "--into", str(tmp_path / "out")]) == command.NOT_ALL
    told = capsys.readouterr()
    assert "a mistake in this program" in told.err and "ZeroDivisionError" in told.err
    assert os.listdir(tmp_path / "out") == ["Bea"]


def test_an_older_folder_is_left_unless_asked(tmp_path, capsys, quick):
    """A second run leaves what is there and says what to add; with it the folder is written anew, and what the user has
    changed or put there is kept and told, whatever it is called."""
    call = [table(tmp_path / "w.csv", "Ana"), "--into", str(tmp_path / "out")]
    assert command.main(call) == 0
    ours = tmp_path / "out" / "Ana" / "Ana_pattern.pdf"
    ours.write_bytes(b"older")
    assert command.main(call) == 1 and ours.read_bytes() == b"older"
    told = capsys.readouterr()
    assert "is there already" in told.err and "add --again" in told.err and "0 of 1 wearer written" in told.out
    mine = {"final_pattern.pdf": b"mine", "altered_pattern.svg": b"mine too"}
    for name, data in mine.items():
        (tmp_path / "out" / "Ana" / name).write_bytes(data)
    assert command.main([*call, "--again"]) == 0 and ours.read_bytes() == b"x"
    told = capsys.readouterr().err
    assert (
        all(name in told for name in mine) and "Ana_pattern.pdf, changed since it was written, as Ana_pattern_kept.pdf" in told
    )
    now = held(tmp_path / "out" / "Ana")
    assert now.items() >= {**mine, "Ana_pattern_kept.pdf": b"older"}.items() and len(now) == len(FILES) + 1 + 3
    assert sorted(os.listdir(tmp_path / "out")) == ["Ana"]


def test_what_is_not_ours_is_never_written_over(tmp_path, capsys, quick):
    """A folder that is none of ours, a file of that name, or a link is left as it is, even when asked."""
    call = [table(tmp_path / "w.csv", "Ana", "Bea", "Cleo"), "--into", str(tmp_path / "out"), "--again"]
    (tmp_path / "out" / "Ana").mkdir(parents=True)
    (tmp_path / "out" / "Ana" / "notes.txt").write_text("mine")
    (tmp_path / "out" / "Bea").write_text("a file")
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "out" / "Cleo").symlink_to(tmp_path / "elsewhere")
    before = held(tmp_path / "out")
    assert command.main(call) == 1 and held(tmp_path / "out") == before and list((tmp_path / "elsewhere").iterdir()) == []
    told = capsys.readouterr().err
    assert "notes.txt" in told and told.count("not written") == 3


@pytest.mark.parametrize("again", [False, True])
@pytest.mark.parametrize("kind", FILES)
def test_a_full_disk_leaves_nothing_half_written(tmp_path, capsys, quick, monkeypatch, kind, again):
    """Wherever the disk gets full, what was there before still stands, nothing else does, and the run stops."""
    call = [table(tmp_path / "w.csv", "Ana", "Bea", "Cleo"), "--into", str(tmp_path / "out")]
    if again:
        assert command.main(call) == 0
    before = held(tmp_path / "out") if again else {}
    replace = os.replace

    def refuse(source, target):
        if str(target).endswith(f"Bea_{kind}"):
            raise OSError(errno.ENOSPC, "No space left on device")
        replace(source, target)

    monkeypatch.setattr(os, "replace", refuse)
    capsys.readouterr()
    assert command.main([*call, *(["--again"] if again else [])]) == 1
    told = capsys.readouterr()
    (line,) = (line for line in told.err.splitlines() if line.startswith("Bea: not written"))
    assert "No space left" in line and ".part" not in line and str(tmp_path / "out" / "Bea") in line
    assert "The rest was not tried: the disk is in the way." in told.out and "1 of 3 wearers" in told.out
    now = held(tmp_path / "out")
    assert {name for name in now if not name.startswith("Ana")} == {name for name in before if not name.startswith("Ana")}
    assert len([name for name in now if name.startswith("Ana")]) == len(FILES) + 1


def test_a_move_that_fails_brings_the_older_folder_back(tmp_path, quick, monkeypatch):
    """Where the last move into place is refused, the older folder stands again as it was."""
    folder = tmp_path / "Ana"
    write_all("Ana", MAREN, None, None, (), folder)
    (folder / "Ana_sewing.txt").write_bytes(b"older")
    rename = Path.rename

    def refuse(self, target):
        if self.name.endswith(".part"):
            raise PermissionError(errno.EACCES, "Permission denied")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(CorsetkitError, match="Permission denied") as told:
        write_all("Ana", MAREN, None, None, (), folder, again=True)
    assert disk_refused(told.value)
    assert (folder / "Ana_sewing.txt").read_bytes() == b"older" and os.listdir(tmp_path) == ["Ana"]
    assert sorted(os.listdir(folder)) == files_of("Ana")


def test_a_folder_that_cannot_be_written_is_one_sentence(tmp_path, capsys, quick, monkeypatch):
    """Where no folder may be made, that is told once, nothing is left, and nobody else is tried."""

    def refuse(self, *args, **more):
        raise PermissionError(errno.EACCES, "Permission denied")

    call = [table(tmp_path / "w.csv", "Ana", "Bea"), "--into", str(tmp_path / "out")]
    (tmp_path / "out").mkdir()
    monkeypatch.setattr(Path, "mkdir", lambda self, *a, **more: refuse(self) if self.name.endswith(".part") else None)
    assert command.main(call) == 1
    told = capsys.readouterr()
    assert told.err.count("Permission denied") == 1 and "0 of 2" in told.out and os.listdir(tmp_path / "out") == []
    monkeypatch.setattr(Path, "mkdir", refuse)
    assert command.main(call) == command.NOT_BEGUN
    assert "cannot be made: Permission denied" in capsys.readouterr().err


def test_stopped_by_hand_leaves_nothing_half_written(tmp_path, capsys, quick, monkeypatch):
    """Ctrl-C in the middle of a wearer: those before her are whole, she is not there at all, and the sum says so."""
    calls = []

    def stop(finished, path, *_):
        calls.append(path)
        if "Bea" in str(path):
            raise KeyboardInterrupt
        path.write_bytes(b"x")

    monkeypatch.setattr(output, "write_sewing", stop)
    assert command.main([table(tmp_path / "w.csv", "Ana", "Bea", "Cleo"), "--into", str(tmp_path / "out")]) == 130
    assert os.listdir(tmp_path / "out") == ["Ana"] and "stopped by hand" in capsys.readouterr().out and len(calls) == 2


HEBREW = "\u05e8\u05d5\u05ea"
NAMES = {
    "../../etc": "etc",
    "A/B": f"A_B_{number_of('A/B')}",
    "A\\B": f"A_B_{number_of(chr(92).join('AB'))}",
    "x" * 300: "x" * 40,
    HEBREW: f"wearer_{number_of(HEBREW)}",
    "con": "wearer_con",
    "Zo\u00eb": "Zo\u00eb",
    "..": f"wearer_{number_of('..')}",
}


def test_any_name_makes_a_safe_folder(tmp_path, capsys, quick):
    """Signs of paths, 300 letters, right-to-left script: each has a folder of her own inside the one asked for."""
    assert command.main([table(tmp_path / "w.csv", *NAMES), "--into", str(tmp_path / "out")]) == 0
    assert sorted(os.listdir(tmp_path / "out")) == sorted(NAMES.values()) and sorted(os.listdir(tmp_path)) == ["out", "w.csv"]
    told = capsys.readouterr().err
    assert NAMES[HEBREW] in told and told.count("Note, ") >= 5


def test_names_that_clash_give_files_that_differ_in_any_order_of_rows(tmp_path, capsys, quick):
    """Files bear their folder's name, so that all can be gathered in one; re-sorting the table moves no wearer's folder."""
    names = ("I/nes", "I:nes", "Ana", "I?nes")
    for into, order in (("one", names), ("two", names[::-1])):
        assert command.main([table(tmp_path / "w.csv", *order), "--into", str(tmp_path / into)]) == 0
        told = capsys.readouterr().err
        files = [name for folder in (tmp_path / into).iterdir() for name in held(folder) if name != RECORD]
        assert len(set(files)) == len(names) * len(FILES)
        for folder in (tmp_path / into).iterdir():
            assert sorted(os.listdir(folder)) == files_of(folder.name)
            of = json.loads((folder / RECORD).read_text("utf-8"))["of"]
            assert of == "Ana" or f"{of!r} cannot stand whole in a file's name, so the files are called {folder.name}." in told
    assert dict(held(tmp_path / "one").items()) == held(tmp_path / "two")


@pytest.mark.parametrize(
    "folder, said", [(None, "not the path"), ("a\0b", "not the path"), ("", "not the path"), ("nowhere/Ana", "does not exist")]
)
def test_what_is_no_folder_is_one_sentence(tmp_path, quick, folder, said, monkeypatch):
    """What cannot be a folder's path, or has no parent, is refused before any work is done."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(output, "draft", None)
    with pytest.raises(CorsetkitError, match=said) as told:
        write_all("Ana", MAREN, None, None, (), folder)
    assert "\n" not in str(told.value) and list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "words, said",
    [
        (["--paper", "A5"], "paper 'A5' is unknown: write A4, Letter, A0 or roll"),
        (["--unit", "ell"], "write cm or in"),
        (["--cloth", "20"], "--cloth: width is 50.8 cm (20 in): allowed are 70 to 210 cm"),
        (["--cloth", "wide"], "--cloth: width"),
        (["--search", "soon"], "the time for a plan is 'soon'"),
        (["--search", "-1"], "the time for a plan is -1"),
        (["--search", "nan"], "the time for a plan is nan"),
        (["--style", "none.json"], "cannot be read"),
        (["--fittings", "none.json"], "no such file"),
    ],
)
def test_nothing_is_begun_where_the_asking_is_amiss(tmp_path, capsys, words, said, monkeypatch):
    """What was asked amiss is one sentence, nothing is made, and the command ends with 2."""
    monkeypatch.chdir(tmp_path)
    ended = command.main([table(tmp_path / "w.csv", "Ana"), "--into", "out", *words])
    told = capsys.readouterr()
    assert ended == command.NOT_BEGUN == 2 and said in told.err and told.out == ""
    assert told.err.startswith("Nothing was written: ") and len(told.err.splitlines()) == 1
    assert os.listdir(tmp_path) == ["w.csv"]


def test_a_table_that_cannot_be_read_is_one_sentence(tmp_path, capsys):
    """A table with a mistake is told with its row, and nothing is made; a file in the folder's place as well."""
    (tmp_path / "w.csv").write_text("wearer,unit\nAna,cm\n")
    assert command.main([str(tmp_path / "w.csv"), "--into", str(tmp_path / "out")]) == 2
    assert "w.csv, row 1: missing columns" in capsys.readouterr().err and os.listdir(tmp_path) == ["w.csv"]
    (tmp_path / "out").write_text("a file")
    assert command.main([table(tmp_path / "w.csv", "Ana"), "--into", str(tmp_path / "out")]) == 2
    assert "is no folder" in capsys.readouterr().err


def test_corrections_are_hers_alone(tmp_path, quick, monkeypatch):
    """Kept corrections go to the wearer they were made for, and to nobody else."""
    seen = []
    right = output.draft
    monkeypatch.setattr(output, "draft", lambda *told: seen.append(told[2]) or right(*told))
    write_file(tmp_path / "f.json", Kept({"Bea": (Correction("underbust line", 0.5),)}))
    assert (
        command.main(
            [table(tmp_path / "w.csv", "Ana", "Bea"), "--into", str(tmp_path / "out"), "--fittings", str(tmp_path / "f.json")]
        )
        == 0
    )
    assert seen == [(), (Correction("underbust line", 0.5),)]


def corrections(path, told):
    """A file of corrections as a hand may have left it: by name, lines with amounts."""
    kept = {name: [{"line": line, "by": by} for line, by in ones] for name, ones in told.items()}
    path.write_text(json.dumps({"corrections": kept}, ensure_ascii=False), encoding="utf-8")
    return ["--fittings", str(path)]


HALF = [("underbust line", 0.5)]


@pytest.mark.parametrize(
    "given, said",
    [
        ("ana", "has the name 'ana': write it there as in the table, 'Ana'"),
        (" Ana", "write it there as in the table, 'Ana'"),
        ("\u00c1na", "write it there as in the table, 'Ana'"),
        ("Zoe\u0308", "accents stored in another way: copy the name"),
        ("Zo\u00cb", "as in the table, 'Zo\u00eb'"),
    ],
)
def test_whose_name_is_written_otherwise_is_not_written(tmp_path, capsys, quick, given, said):
    """Where corrections are for a wearer's name in other letters she is not written without them, and is told the remedy."""
    words = corrections(tmp_path / "f.json", {given: HALF})
    ended = command.main([table(tmp_path / "w.csv", "Ana", "Bea", "Zo\u00eb"), "--into", str(tmp_path / "out"), *words])
    told = capsys.readouterr()
    meant = "Zo\u00eb" if given.startswith("Z") else "Ana"
    assert ended == command.NOT_ALL and meant not in os.listdir(tmp_path / "out") and f"Not written: {meant}." in told.out
    (line,) = (line for line in told.err.splitlines() if "not written" in line)
    assert line.startswith(f"{meant}: not written: the file of corrections has the name") and said in line
    assert len(os.listdir(tmp_path / "out")) == 2


def test_corrections_of_nobody_in_the_table_are_told(tmp_path, capsys, quick):
    """A name that is not in the table is one sentence; all are written, and the command ends with 1."""
    words = corrections(tmp_path / "f.json", {"Nobody": HALF, "Ana": HALF, "Void": [("cuff", 1)]})
    assert command.main([table(tmp_path / "w.csv", "Ana", "Bea"), "--into", str(tmp_path / "out"), *words]) == command.NOT_ALL
    told = capsys.readouterr()
    assert told.err.splitlines() == [
        f"The corrections for {name!r} are not used: no wearer of the table is called so." for name in ("Nobody", "Void")
    ]
    assert "2 of 2 wearers written" in told.out and "Corrections of nobody in the table: Nobody, Void." in told.out


@pytest.mark.parametrize("ones", [[("cuff", 0.5)], [*HALF, ("side seam", 9)], [("side seam", "much"), ("cuff", 1)]])
def test_who_cannot_be_corrected_as_kept_is_not_written(tmp_path, capsys, quick, ones):
    """A wearer of whose corrections one cannot be made is not drafted without it: one sentence, and 1 at the end."""
    words = corrections(tmp_path / "f.json", {"Ana": ones})
    assert command.main([table(tmp_path / "w.csv", "Ana", "Bea"), "--into", str(tmp_path / "out"), *words]) == command.NOT_ALL
    told = capsys.readouterr()
    assert os.listdir(tmp_path / "out") == ["Bea"] and "Not written: Ana." in told.out
    (line,) = told.err.splitlines()
    assert line.startswith("Ana: not written: a correction kept for her cannot be made (") and "mend it" in line
    assert (", and 1 more" in line) == (ones[0][1] == "much")


@pytest.mark.parametrize(
    "data, said",
    [
        ("[" * 200_000, "these are no kept corrections"),
        ("", "these are no kept corrections"),
        ("\udcff", "not UTF-8 text"),
        ('{"corrections": {"Ana": [], "Ana": []}}', "'Ana' stands there twice"),
        ("1" * 5_000, "these are no kept corrections"),
    ],
)
def test_corrections_that_cannot_be_read_are_one_sentence(tmp_path, capsys, data, said):
    """Nothing is begun where the file of corrections cannot be read, and one sentence says why."""
    (tmp_path / "f.json").write_bytes(data.encode("utf-8", "surrogateescape"))
    ended = command.main(
        [table(tmp_path / "w.csv", "Ana"), "--into", str(tmp_path / "out"), "--fittings", str(tmp_path / "f.json")]
    )
    told = capsys.readouterr().err
    assert ended == command.NOT_BEGUN and said in told and len(told.splitlines()) == 1 and not (tmp_path / "out").exists()


def test_corrections_are_read_behind_a_byte_order_mark(tmp_path, quick, monkeypatch):
    """A file of corrections saved again by an editor that puts a byte order mark before it is read as ever."""
    seen = []
    right = output.draft
    monkeypatch.setattr(output, "draft", lambda *told: seen.append(told[2]) or right(*told))
    write_file(tmp_path / "f.json", Kept({"Ana": (Correction("underbust line", 0.5),)}))
    (tmp_path / "f.json").write_bytes(b"\xef\xbb\xbf" + (tmp_path / "f.json").read_bytes())
    assert (
        command.main(
            [table(tmp_path / "w.csv", "Ana"), "--into", str(tmp_path / "out"), "--fittings", str(tmp_path / "f.json")]
        )
        == 0
    )
    assert seen == [(Correction("underbust line", 0.5),)]


def test_what_a_killed_run_left_is_mended_and_told(tmp_path, capsys, quick):
    """The next run puts back a folder that was put aside, whoever is in its table, and clears what was begun."""
    assert command.main([table(tmp_path / "w.csv", "Ana", "Bea"), "--into", str(tmp_path / "out")]) == 0
    before = held(tmp_path / "out")
    (tmp_path / "out" / "Ana").rename(tmp_path / "out" / ".Ana.corsetkit.older")
    (tmp_path / "out" / ".Bea.corsetkit.part").mkdir()
    capsys.readouterr()
    assert command.main([table(tmp_path / "w.csv", "Cleo"), "--into", str(tmp_path / "out")]) == 0
    told = capsys.readouterr().err.splitlines()
    assert told == [
        "Note: A run that was broken off had put the folder Ana aside: it was put back as it was.",
        "Note: A run that was broken off had begun the folder Bea: what it had begun was cleared away.",
    ]
    assert {name: data for name, data in held(tmp_path / "out").items() if not name.startswith("Cleo")} == before


def test_two_runs_at_once_into_one_folder_do_not_both_say_written(tmp_path):
    """Of two commands that write one wearer's folder at the same time one writes it, and the other one is told."""
    runs = []
    for number, body in enumerate((MAREN, INES)):
        write_wearers(tmp_path / f"{number}.csv", [("Ana", body)], "cm")
        words = ("-m", "corsetkit", f"{number}.csv", "--into", "out", "--date", DAY)
        runs.append(
            subprocess.Popen(
                [sys.executable, *words],
                cwd=tmp_path,
                stdout=subprocess.PIPE,
                stderr=subprocess.PIPE,
                text=True,
                env={**os.environ, "PYTHONPATH": str(ROOT)},
            )
        )
    told = [run.communicate() for run in runs]
    assert sorted(run.returncode for run in runs) == [command.ALL, command.NOT_ALL], told
    first = next(number for number, run in enumerate(runs) if run.returncode == command.ALL)
    assert re.search("another run is writing|is there already", told[1 - first][1]) and "0 of 1" in told[1 - first][0]
    # The body as the table has it, to its last decimal.
    ((_, body),) = read_wearers(tmp_path / f"{first}.csv")
    alone = write_all("Ana", body, None, None, (), tmp_path / "alone", wish=Wish(date=DAY))
    assert held(tmp_path / "out" / "Ana") == held(alone.folder) and os.listdir(tmp_path / "out") == ["Ana"]


def test_it_runs_from_the_shell(tmp_path):
    """`python -m corsetkit` writes a real folder; with a paper amiss it ends with 2 and a sentence."""

    def run(*words):
        return subprocess.run(
            [sys.executable, "-m", "corsetkit", *words],
            cwd=tmp_path,
            capture_output=True,
            text=True,
            check=False,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
        )

    write_wearers(tmp_path / "w.csv", [("Ana", MAREN)], "cm")
    done = run("w.csv", "--into", "out", "--unit", "cm")
    assert done.returncode == 0 and "1 of 1 wearer written into out." in done.stdout, done.stderr
    assert sorted(os.listdir(tmp_path / "out" / "Ana")) == files_of("Ana")
    amiss = run("w.csv", "--into", "out", "--paper", "A5")
    assert amiss.returncode == 2 and "Traceback" not in amiss.stderr and len(amiss.stderr.splitlines()) == 1


@pytest.mark.parametrize("words, ended", [([], 2), (["--help"], 0)])
def test_it_says_how_it_is_called(capsys, words, ended):
    """Without words it ends with 2 and says what it takes; asked for help it says all of that, and ends with 0."""
    with pytest.raises(SystemExit) as end:
        command.main(words)
    told = capsys.readouterr()
    assert end.value.code == ended
    assert "usage" in (told.err if ended else told.out) and (ended or ("--again" in told.out and "FOLDER" in told.out))
