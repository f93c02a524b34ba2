"""All files for one wearer, part by part, and the command for many, each beside the draft alone. Printed, not judged.

The floor of each line is the draft of the same wearers, measured in the same run. CORSETKIT_BENCH_MANY says how many the
many are (100).
"""

import os
import statistics
import sys
import tempfile
from contextlib import redirect_stderr, redirect_stdout
from io import StringIO
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from bodies import random_bodies  # noqa: E402

from corsetkit import CorsetkitError, Style, command, demo_wearers, draft, output, write_wearers  # noqa: E402
from corsetkit.finish.finished import finish  # noqa: E402

ROUNDS, WARM = 9, 2
PARTS = (
    "plans",
    "write_lay_pdf",
    "write_print",
    "write_hand_sheets",
    "write_svg",
    "write_dxf",
    "write_pieces",
    "write_seams",
    "write_sewing",
)


def timed(work):
    start = perf_counter()
    work()
    return 1e3 * (perf_counter() - start)


def one():
    """One wearer's whole folder, and each of its files, as ratios to her draft."""
    name, body = demo_wearers()[0]
    drafts, wholes, parts = [], [], {part: [] for part in PARTS}
    originals = {part: getattr(output, part) for part in PARTS}

    def watched(part):
        def write(*words, **more):
            start = perf_counter()
            done = originals[part](*words, **more)
            parts[part].append(1e3 * (perf_counter() - start))
            return done

        return write

    for part in PARTS:
        setattr(output, part, watched(part))
    try:
        with tempfile.TemporaryDirectory() as folder:
            for number in range(ROUNDS + WARM):
                drafts.append(timed(lambda: draft(body, Style())))
                into = Path(folder) / str(number)
                wholes.append(timed(lambda into=into: output.write_all(name, body, None, None, (), into)))
    finally:
        for part in PARTS:
            setattr(output, part, originals[part])
    base = statistics.median(drafts[WARM:])
    print(f"one wearer, {ROUNDS} rounds; draft alone {base:.1f} ms")
    print(f"{'':32}{'median':>10}{'to the draft':>14}")
    for what, times in (("whole folder", wholes), *parts.items()):
        print(f"{what:32}{statistics.median(times[WARM:]):7.0f} ms{statistics.median(times[WARM:]) / base:14.1f}")


def many(count):
    """The command over many random bodies, as a ratio to drafting and finishing them."""
    bodies = [(f"body {number}", body) for number, body in enumerate(random_bodies(count, 8), 1)]

    def drafts():
        for _, body in bodies:
            try:
                finish(draft(body))
            except CorsetkitError:
                pass

    with tempfile.TemporaryDirectory() as folder:
        write_wearers(Path(folder) / "wearers.csv", bodies, "cm")
        base, told = timed(drafts), StringIO()
        with redirect_stdout(told), redirect_stderr(StringIO()):
            whole = timed(lambda: command.main([str(Path(folder) / "wearers.csv"), "--into", str(Path(folder) / "out")]))
        written = next(line for line in told.getvalue().splitlines() if " written into " in line).partition(" into ")[0]
    print(
        f"{count} random bodies: {written}, {whole / 1e3:.1f} s, {whole / count:.0f} ms a wearer; drafted and finished "
        f"alone {base / count:.0f} ms a wearer; ratio {whole / base:.1f}"
    )


if __name__ == "__main__":
    one()
    many(int(os.environ.get("CORSETKIT_BENCH_MANY", "100")))
