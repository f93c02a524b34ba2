"""Names as files and prints bear them: safe anywhere, whole and in their order, or a number with a sentence."""

import datetime
import itertools

import pdfplumber
import pytest

from corsetkit.printing.draft_print import write_print as write_sewing_lines
from corsetkit.printing.finished_print import write_print
from corsetkit.printing.names import ascii_name, file_name, names_apart, number_of, shown_name

DAY = datetime.date(2026, 3, 1)
NAME = "\u0141\u00f3d\u017a Gr\u00f6\u00dfe"
HEBREW = "\u05e9\u05e8\u05d4 \u05dc\u05d5\u05d9"
ARABIC = "\u0644\u064a\u0644\u0649"


@pytest.mark.parametrize(
    "given, text",
    [
        ("Ana Maria", "Ana_Maria"),
        (NAME, NAME.replace(" ", "_")),
        ("", "wearer_3"),
        ("  ", "wearer_3"),
        ("O'Neil", "O_Neil"),
        ("../../etc/passwd", "etc_passwd"),
        ("a\\b:c*d?", "a_b_c_d"),
        ("C:\\Users", "C_Users"),
        ("..", "wearer_3"),
        ("...", "wearer_3"),
        ("CON", "wearer_CON"),
        ("nul.txt", "wearer_nul.txt"),
        (".hidden", "hidden"),
        ("-rf", "rf"),
        ("x" * 300, "x" * 40),
        (HEBREW, "wearer_3"),
        (ARABIC, "wearer_3"),
        ("Ana " + HEBREW, "wearer_3"),
        ("a\0b\nc", "ab_c"),
        ("\u202ecod", "cod"),
        ("\U0001f600", "wearer_3"),
        ("\u0645\u06f1", "wearer_3"),
    ],
)
def test_a_name_becomes_a_file(tmp_path, given, text):
    """A file's name has no way out of its folder, can be had on any system, and is told where it is not the name given."""
    name = file_name(given, 3)
    assert name.text == text
    (tmp_path / name.text).write_text("x")
    assert (tmp_path / name.text).resolve().parent == tmp_path.resolve()
    changed = text != " ".join(given.split()).replace(" ", "_") and given.strip() not in ("", "\u202ecod", "a\0b\nc")
    assert bool(name.said) == changed and "\n" not in name.said
    assert not changed or text in name.said


def test_a_long_name_of_wide_letters_is_a_short_file():
    """Some systems count bytes: no file's name has more than 120 of them."""
    assert len(file_name("\u0416" * 300).text.encode()) <= 120
    assert len(file_name("\uac00" * 300).text.encode()) <= 120


def test_the_number_in_a_names_place_is_its_own():
    """Whatever table and row she stands in, and whatever bears her name, one number stands for a name that cannot be had."""
    for given in (HEBREW, ARABIC):
        number = number_of(given)
        assert 10_000 <= number < 100_000 and file_name(given).text == f"wearer_{number}"
        assert shown_name(given).text == ascii_name(given).text == f"wearer {number}"
        assert names_apart(["Ana", given])[given].number == number
    assert number_of(HEBREW) != number_of(ARABIC) and number_of("Zo\u00eb") != number_of("Zoe\u0308")


ALIKE = ("I/nes", "I:nes", "I?nes", "I nes", "Zo\u00eb", "Zoe\u0308", "Ana", "ana", HEBREW)


def test_names_that_become_one_are_told_apart_by_themselves():
    """The same names are called the same in whatever order they come; the one that needs no change keeps its name."""
    made = names_apart(ALIKE)
    assert len({one.file.text.casefold() for one in made.values()}) == len(ALIKE)
    assert all(names_apart(order) == made for order in itertools.islice(itertools.permutations(ALIKE), 0, None, 9_999))
    assert {name for name, one in made.items() if one.file.text == file_name(name).text} == {"I nes", "Zo\u00eb", HEBREW}
    for name in ("I/nes", "I:nes", "I?nes"):
        assert made[name].file.text == f"I_nes_{number_of(name)}"
        assert made[name].file.said.endswith(f"so the files are called I_nes_{number_of(name)}.")
    # One more wearer moves none of them.
    assert all(names_apart([*ALIKE, "I*nes", "I_nes_1"])[name] == one for name, one in made.items())


def test_names_without_one_that_needs_no_change_all_bear_their_number():
    """Where none of the names that become one is borne as it is, each has its number, so that a further one moves none."""
    made = names_apart(("I/nes", "I:nes"))
    assert {one.file.text for one in made.values()} == {f"I_nes_{number_of(one)}" for one in ("I/nes", "I:nes")}
    assert names_apart(["I/nes"])["I/nes"].file.text == "I_nes"


def test_a_number_that_is_taken_is_passed_over():
    """A name that is spelt like another's numbered one is not taken from it."""
    spelt = f"I_nes_{number_of('I/nes')}"
    made = names_apart(("I/nes", "I:nes", spelt))
    assert made[spelt].file.text == spelt and made["I/nes"].file.text == f"I_nes_{number_of('I/nes') + 1}"


@pytest.mark.parametrize(
    "given, text",
    [
        ("Ana", "Ana"),
        (NAME, NAME),
        ("", ""),
        (HEBREW, "wearer 2"),
        (ARABIC, "wearer 2"),
        ("Ana " + HEBREW, "wearer 2"),
        ("\u5c71\u7530", "wearer 2"),
        ("\U0001f980 Ana", "wearer 2"),
        ("Zoe\u0308", "Zo\u00eb"),
        ("x\u0302", "wearer 2"),
        ("\u0410\u043d\u043d\u0430", "\u0410\u043d\u043d\u0430"),
        ("y" * 300, "y" * 59 + "\u2026"),
        ("a\u202eb", "ab"),
    ],
)
def test_a_name_is_shown_whole_or_not_at_all(given, text):
    """The print shows a name in its right order, or a number in its place with a sentence."""
    name = shown_name(given, 2)
    assert name.text == text
    assert bool(name.said) == (text in ("wearer 2", "y" * 59 + "\u2026")) and "\n" not in name.said


@pytest.mark.parametrize(
    "given, text",
    [
        ("Zo\u00eb \u0141u", "Zoe Lu"),
        ("Gr\u00f6\u00dfe", "Grosse"),
        (HEBREW, "wearer 2"),
        ("\u0410\u043d\u043d\u0430", "wearer 2"),
        ("Ana", "Ana"),
    ],
)
def test_a_name_in_plain_letters(given, text):
    """Where only plain letters may stand, accents are left out and said to be."""
    name = ascii_name(given, 2)
    assert name.text == text and name.text.isascii() and bool(name.said) == (given != text)


@pytest.mark.parametrize("given", [HEBREW, ARABIC, "Ana " + HEBREW])
def test_no_print_garbles_a_name(tmp_path, finished_maren, given):
    """Neither print writes a letter of a name it cannot set; both say what stands in its place."""
    for write, what in ((write_print, finished_maren), (write_sewing_lines, finished_maren.pattern)):
        done = write(what, tmp_path / "p.pdf", wearer=given, date=DAY)
        with pdfplumber.open(tmp_path / "p.pdf") as book:
            text = "".join(page.extract_text() for page in book.pages)
        assert f"wearer {number_of(given)}" in text and not set(given) & set(text) - set("Ana ")
        assert len(done.said) == 1 and f"wearer {number_of(given)}" in done.said[0]


@pytest.mark.parametrize("given", ["../../x", "a/b\\c", "x" * 300, "<b>&amp;", "%PDF (a) \\n"])
def test_any_name_can_be_printed(tmp_path, finished_maren, given):
    """Signs of paths and of markup, and very long names, are written as they are or cut short."""
    write_print(finished_maren, tmp_path / "p.pdf", wearer=given, date=DAY)
    with pdfplumber.open(tmp_path / "p.pdf") as book:
        assert given[:30] in book.pages[0].extract_text()
    assert [one.name for one in tmp_path.iterdir()] == ["p.pdf"]
