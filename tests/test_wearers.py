"""Wearers read from a file and written to one."""

import os

import pytest
from bodies import MEAN_BODY, bodies, random_bodies
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from corsetkit import files
from corsetkit.errors import CorsetkitError
from corsetkit.measurements import Measurements
from corsetkit.quantity import quantities
from corsetkit.units import CM_PER_INCH
from corsetkit.wearers import read_wearers, write_wearers

NAMES = [one.name for one in quantities(Measurements) if not one.optional]
MEDIUM = {
    "bust_girth": "36 1/4", "underbust_girth": "30", "waist_girth": "29½", "hip_girth": "38.5",
    "neck_base_girth": "14 5/8", "shoulder_length": "5", "neck_to_bust_point": "10 1/2",
    "bust_point_width": "7 1/2", "front_waist_length": '17"', "back_waist_length": "14-1/2",
    "armscye_depth": "7 1/4 in", "across_front_width": "31.75 cm", "across_back_width": "13 1/2",
    "waist_to_hip": "8",
}  # fmt: skip


def sheet(*rows, columns=None, separator=","):
    """The text of a file: a heading and rows, each a dict of cells."""
    columns = columns or ["wearer", "unit", *NAMES]
    lines = [columns, *([row.get(name, "") for name in columns] for row in rows)]
    return "\n".join(separator.join(line) for line in lines) + "\n"


def row(**changes):
    """The cells of a wearer who can be read, some of them changed."""
    return {"wearer": "Maren", "unit": "in", **MEDIUM, **changes}


@pytest.fixture
def read(tmp_path):
    """Reads text or bytes as a file named w.csv."""

    def read(content):
        path = tmp_path / "w.csv"
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
        return read_wearers(path)

    return read


def refusal(read, content):
    """The one line with which `content` is refused."""
    with pytest.raises(CorsetkitError) as caught:
        read(content)
    assert "\n" not in str(caught.value)
    return str(caught.value)


def test_inches_in_all_their_spellings(read):
    """A wearer in inches is read as the same body in centimetres."""
    ((name, body),) = read(sheet(row()))
    assert name == "Maren"
    assert body.bust_girth == pytest.approx(36.25 * CM_PER_INCH)
    assert body.waist_girth == pytest.approx(29.5 * CM_PER_INCH)
    assert body.back_waist_length == pytest.approx(14.5 * CM_PER_INCH)
    assert body.across_front_width == pytest.approx(31.75)
    assert body.high_bust_girth is None


def test_rows_keep_their_order_and_their_own_unit(read):
    """Each row has its own unit, and the wearers come in the file's order."""
    in_cm = {name: str(getattr(MEAN_BODY, name)) for name in NAMES}
    found = read(sheet(row(), {"wearer": "Ada", "unit": "CM", **in_cm}))
    assert [name for name, _ in found] == ["Maren", "Ada"]
    assert found[1][1] == MEAN_BODY


def test_spreadsheets_habits(read):
    """Byte order mark, semicolons with decimal commas, CRLF, blank rows and spare cells are read."""
    columns = ["Wearer", "unit", *(name.replace("_", " ").title() for name in NAMES)]
    cells = ["Ada", "cm", *(str(getattr(MEAN_BODY, name)).replace(".", ",") for name in NAMES)]
    lines = [";" * 18, ";".join(columns) + ";;", ";" * 18, ";".join(cells) + ";;", ""]
    assert read(b"\xef\xbb\xbf" + "\r\n".join(lines).encode()) == (("Ada", MEAN_BODY),)


def test_columns_may_stand_in_any_order_with_a_note(read):
    """Columns are known by their names, and a note is for people."""
    columns = ["note", *reversed(NAMES), "high_bust_girth", "unit", "wearer"]
    ((_, body),) = read(sheet(row(note="invented", high_bust_girth="34"), columns=columns))
    assert body.high_bust_girth == pytest.approx(34 * CM_PER_INCH)
    assert body.hip_girth == pytest.approx(38.5 * CM_PER_INCH)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"bust_girth": "wide"}, "w.csv, row 2, Maren: bust girth is 'wide', which is not a length"),
        ({"bust_girth": ""}, "w.csv, row 2, Maren: bust girth is missing: allowed are 65 to 165 cm"),
        ({"bust_girth": "nan"}, "w.csv, row 2, Maren: bust girth is 'nan', which is not a length"),
        ({"bust_girth": "True"}, "w.csv, row 2, Maren: bust girth is 'True', which is not a"),
        ({"bust_girth": "-36"}, "w.csv, row 2, Maren: bust girth is '-36': a length is never"),
        ({"bust_girth": "0"}, "w.csv, row 2, Maren: bust girth is 0 cm (0 in): allowed are 65 to 165 cm"),
        ({"bust_girth": "9999"}, "w.csv, row 2, Maren: bust girth is 25397.46 cm (9999 in): allowed"),
        ({"bust_girth": "92.1"}, "w.csv, row 2, Maren: bust girth is 233.93 cm (92 1/8 in): allowed"),
        ({"underbust_girth": "37"}, "w.csv, row 2, Maren: underbust girth 94 cm (37 in) and bust"),
        ({"unit": "mm"}, "w.csv, row 2, Maren: unit is 'mm': write cm or in"),
        ({"unit": ""}, "w.csv, row 2, Maren: unit is missing: write cm or in"),
        ({"wearer": ""}, "w.csv, row 2: wearer is missing"),
        ({"wearer": '"Ma\nren"'}, "w.csv, row 2: wearer is 'Ma\\nren': give each wearer a name on"),
        ({"hip_girth": "38,5"}, "w.csv, row 2: has 17 cells for 16 columns; a decimal comma must"),
        ({"hip_girth": '"38" 1/2'}, "w.csv, row 2: its quotation marks do not pair"),
        ({"waist_to_hip": '"8'}, "w.csv, row 2: its quotation marks do not pair"),
    ],
)
def test_mistakes_in_a_row(read, changes, message):
    """A mistake in a row is told in one line with file, row, wearer, field and what was given."""
    assert refusal(read, sheet(row(**changes))).startswith(message)


def test_a_cell_that_is_too_long_is_told_as_such(read):
    """A cell beyond what can be read is told with how long it may be, and not as quotation marks that do not pair."""
    columns = ["wearer", "unit", *NAMES, "note"]
    said = refusal(read, sheet(row(note="x" * 140_000), columns=columns))
    assert said.startswith("w.csv, row 2: a cell has more than 131072 letters: shorten it")


def test_a_cell_too_many_is_told_with_its_remedy(read):
    """A decimal comma is named only where numbers stand side by side in a file separated by commas."""
    says = "w.csv, row 2: has 17 cells for 16 columns; "
    text = "a text that holds a comma must stand in quotation marks"
    assert refusal(read, sheet(row(wearer="Smith, Ana"))) == says + text
    assert refusal(read, sheet(row(hip_girth="38,5"))) == (
        f"{says}a decimal comma must stand in a file separated by semicolons, and {text}"
    )
    semicolons = sheet(row(), separator=";").rstrip("\n") + ";9\n"
    assert refusal(read, semicolons) == says + "take out what stands beyond the last column"


def test_swapped_units_in_a_row(read):
    """Centimetres in a row of inches, and inches in a row of centimetres, are seen as such."""
    assert refusal(read, sheet(row(bust_girth="92.1"))).endswith("; it looks like centimetres given as inches")
    assert refusal(read, sheet(row(unit="cm"))).endswith("; it looks like inches given as centimetres")


def test_rows_are_counted_as_a_spreadsheet_counts_them(read):
    """The row in a message counts the heading and blank rows."""
    text = sheet(row()) + "\n\n" + sheet(row(wearer="Ada", waist_girth="x")).split("\n")[1] + "\n"
    assert refusal(read, text).startswith("w.csv, row 5, Ada: waist girth is 'x'")


def test_a_wearer_given_twice(read):
    """Two wearers of one name are refused with both rows, capitals or not."""
    message = refusal(read, sheet(row(), row(wearer="Ada"), row(wearer="maren")))
    assert message.startswith("w.csv, row 4: wearer maren stands in row 2 already")


COLUMNS = ["wearer", "unit", *NAMES]


@pytest.mark.parametrize(
    ("columns", "message"),
    [
        ([*COLUMNS, "stature"], "row 1: column 'stature' is unknown; allowed are wearer, unit, bust"),
        (COLUMNS[:-1], "row 1: missing column is waist_to_hip"),
        (COLUMNS[2:], "row 1: missing columns are wearer, unit"),
        ([*COLUMNS, "hip_girth"], "row 1: column hip_girth stands there 2 times"),
        ([*COLUMNS, "Hip girth"], "row 1: column hip_girth stands there 2 times"),
        (["wearer", "", *COLUMNS[1:]], "row 1: column 2 has no name"),
    ],
)
def test_mistakes_in_the_heading(read, columns, message):
    """Unknown, missing, doubled and nameless columns are named."""
    assert refusal(read, sheet(row(), columns=columns)).startswith(f"w.csv, {message}")


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "w.csv is empty: its first row must name the columns"),
        (b"\xef\xbb\xbf", "w.csv is empty"),
        (b"\n , ,\n", "w.csv is empty"),
        (sheet().encode(), "w.csv names no wearer"),
        (sheet(row(wearer="Zoë")).encode("latin-1"), "w.csv is not UTF-8 text"),
        (sheet(row()).encode("utf-16"), "w.csv is not UTF-8 text"),
        (sheet(row()).encode("utf-16-le"), "w.csv is not UTF-8 text"),
        (b"PK\x03\x04\x14\x00\x06\x00", "w.csv is not UTF-8 text"),
    ],
)
def test_files_that_are_no_list_of_wearers(read, content, message):
    """Empty files, other encodings and workbooks are refused by the file's name."""
    assert refusal(read, content).startswith(message)


def test_files_that_cannot_be_opened(tmp_path):
    """A file that is missing, or a directory, is refused with its path."""
    for path in (tmp_path / "none.csv", tmp_path):
        with pytest.raises(CorsetkitError, match=f"{path.name} cannot be read: "):
            read_wearers(path)
    with pytest.raises(CorsetkitError, match="is not the path of a file"):
        read_wearers("nul\0.csv")


@given(st.binary(max_size=200) | st.text(max_size=200).map(str.encode))
@settings(deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_rubbish_is_refused_in_one_line(read, content):
    """Whatever bytes a file holds, it is refused in one line and nothing else is raised."""
    assert refusal(read, content).startswith("w.csv")


@given(bodies(), st.sampled_from(["cm", "in"]), st.none() | st.floats(-1, 1))
@settings(deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_what_is_written_is_read_back(tmp_path, body, unit, high):
    """A wearer written in either unit is read back as the same body, to 1e-9 cm."""
    if high is not None:
        body = body.replaced(high_bust_girth=min(body.bust_girth, body.high_bust + high))
    path = tmp_path / "out.csv"
    write_wearers(path, [("Zoë, the first", body), ('"O"', MEAN_BODY)], unit)
    (name, first), (other, second) = read_wearers(path)
    assert (name, other) == ("Zoë, the first", '"O"')
    assert second.bust_girth == pytest.approx(MEAN_BODY.bust_girth, abs=1e-9)
    for one in quantities(Measurements):
        before, after = getattr(body, one.name), getattr(first, one.name)
        assert after == (None if before is None else pytest.approx(before, abs=1e-9))


def test_the_limits_themselves_can_be_written(tmp_path):
    """A value that stands on its limit survives both units."""
    body = MEAN_BODY.replaced(hip_girth=65, waist_girth=60)
    for unit in ("cm", "in"):
        write_wearers(tmp_path / "w.csv", [("Ada", body)], unit)
        assert read_wearers(tmp_path / "w.csv")[0][1].hip_girth == pytest.approx(65, abs=1e-9)


@pytest.mark.parametrize(
    ("wearers", "unit", "message"),
    [
        ([("Ada", MEAN_BODY), ("ada", MEAN_BODY)], "cm", "row 3: wearer ada stands in row 2"),
        ([("", MEAN_BODY)], "cm", "wearer is missing"),
        ([("A\nda", MEAN_BODY)], "cm", "on one line"),
        ([], "cm", "names no wearer"),
        ([("Ada", MEAN_BODY)], "mm", "write cm or in"),
    ],
)
def test_what_cannot_be_read_is_not_written(tmp_path, wearers, unit, message):
    """Wearers that could not be read back are refused, and the old file still stands."""
    path = tmp_path / "w.csv"
    path.write_text("old")
    with pytest.raises(CorsetkitError, match=message):
        write_wearers(path, wearers, unit)
    assert path.read_text() == "old" and os.listdir(tmp_path) == ["w.csv"]


def test_a_disk_that_fails_leaves_the_old_file(tmp_path, monkeypatch):
    """When the disk fails half way, the old file still stands and nothing lies beside it."""
    path = tmp_path / "w.csv"
    path.write_text("old")

    def full(_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(files.os, "fsync", full)
    with pytest.raises(CorsetkitError, match="w.csv was not written: No space left on device"):
        write_wearers(path, [("Ada", MEAN_BODY)], "cm")
    assert path.read_text() == "old" and os.listdir(tmp_path) == ["w.csv"]


def test_a_missing_directory_is_named(tmp_path):
    """Writing into a directory that is not there is refused in one line."""
    with pytest.raises(CorsetkitError, match="was not written: No such file or directory"):
        write_wearers(tmp_path / "none" / "w.csv", [("Ada", MEAN_BODY)], "cm")


def test_many_wearers(tmp_path):
    """A long list of wearers is read back whole and in order."""
    wearers = [(f"wearer {number}", body) for number, body in enumerate(random_bodies(200, seed=8))]
    write_wearers(tmp_path / "w.csv", wearers, "cm")
    assert [name for name, _ in read_wearers(tmp_path / "w.csv")] == [name for name, _ in wearers]
