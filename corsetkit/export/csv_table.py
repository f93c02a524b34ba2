"""A table as CSV that spreadsheets open right: which marks it has, and why.

UTF-8 with a byte order mark, for without it a widespread spreadsheet takes the file for an older writing and spoils every
accent; the others leave the mark out by themselves. Commas part the cells and a full stop is the decimal mark, in every
country alike; where a spreadsheet expects semicolons it asks, or is told when the file is imported. Lines end with CR LF, as
RFC 4180 has them. A length in the learner's unit always bears its unit: a bare 1/2 would be taken for a date. A text that
begins with a sign of reckoning gets an apostrophe before it, so that nothing a wearer is called is reckoned out.
"""

import csv
import io

from corsetkit.files import write_whole
from corsetkit.units import write_number

_RECKONING = ("=", "+", "-", "@", "\t", "\r")


def csv_bytes(heading, rows):
    """The table as the bytes of a file: text cells as they are, numbers with a full stop, None as an empty cell."""
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(heading)
    for row in rows:
        if len(row) != len(heading):
            raise ValueError(f"a row has {len(row)} cells for {len(heading)} columns")
        writer.writerow([_cell(one) for one in row])
    return out.getvalue().encode("utf-8-sig")


def write_csv(path, heading, rows):
    """Write the table, whole or not at all; CorsetkitError, one sentence, where the file cannot be written."""
    write_whole(path, csv_bytes(heading, rows))


def mm(cm):
    """A length as a number of millimetres, to a hundredth."""
    return None if cm is None else round(10 * cm, 2) + 0.0


def _cell(value):
    if value is None:
        return ""
    if isinstance(value, (int, float)):
        return write_number(value, 2)
    text = " ".join(str(value).split())
    return f"'{text}" if text.startswith(_RECKONING) else text
