"""The seam report: each seam with its two sides, by how much they miss each other, and where its notches stand."""

from corsetkit.drawing.marks import seam_letter
from corsetkit.export.csv_table import mm, write_csv
from corsetkit.finish.notches import back_seams
from corsetkit.finish.walk import small
from corsetkit.printing.draft_print import target
from corsetkit.units import check_unit, say_length


def seam_rows(finished, unit="in"):
    """The report as (heading, rows), a seam a row: lengths in `unit` and as numbers of mm; differences to 1/16 in or mm."""
    check_unit(unit)
    pattern = finished.pattern
    double = back_seams(pattern.pieces, getattr(pattern.steps, "block", None))
    heading = (
        "letter",
        "name",
        "side one",
        "side two",
        f"side one ({unit})",
        f"side two ({unit})",
        f"difference ({unit})",
        "side one (mm)",
        "side two (mm)",
        "difference (mm)",
        "ease meant (mm)",
        "notches",
        "cuts a notch",
        f"notches from the start ({unit})",
        "notches from the start (mm)",
    )
    rows = []
    for seam in pattern.seams:
        sides = [", ".join(f"{piece.number} {piece.name}" for piece in seam.pieces_on(side)) for side in (0, 1)]
        first, second = seam.lengths
        rows.append(
            (
                seam_letter(seam.number),
                seam.name,
                *sides,
                say_length(first, unit),
                say_length(second, unit),
                small(seam.difference, unit),
                mm(first),
                mm(second),
                mm(seam.difference),
                mm(seam.ease),
                len(seam.marks),
                (2 if seam.number in double else 1) if seam.marks else None,
                "; ".join(say_length(mark, unit) for mark in seam.marks),
                "; ".join(f"{mm(mark):g}" for mark in seam.marks),
            )
        )
    return heading, tuple(rows)


def write_seams(finished, path, unit="in"):
    """Write the seam report as CSV to `path`, whole or not at all, and hand the path back.

    Raises:
        CorsetkitError: one sentence, for an unknown unit, and where the file cannot be written.
    """
    path = target(path, "seams.csv")
    write_csv(path, *seam_rows(finished, unit))
    return path
