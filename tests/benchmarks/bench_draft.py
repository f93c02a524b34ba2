"""The draft in the kernel: whole, step by step, redrawn as SVG, and taken over from an earlier one.

The floor of each line is a plain Python loop of as many float operations and as many string joins as the work itself
runs through, counted once by the interpreter's own instructions, and measured in turn with it. Printed, not judged.
"""

import statistics
import sys
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

import opcode

from corsetkit import Style, demo_wearers, draft
from corsetkit.drawing.pattern_sheet import pattern_sheet
from corsetkit.drawing.svg import svg_text
from corsetkit.pieces.proof import prove
from corsetkit.pieces.seam_table import cut_and_sew
from corsetkit.steps.run import RESTS_ON, STEPS, run_steps

ROUNDS, WARM = 60, 5
AIMS = {"draft, to the wearer": 40.0, "draft, by the guides": 15.0, "redraw as SVG text": 5.0}
"""Milliseconds, the project's own aims."""
LATER = {
    "block": "waist_side_share",
    "underbust": "hem_raise",
    "overbust": "overbust_mark",
    "darts": "blend_reach",
    "three_part_cup": "cut_depth",
    "back": "modesty_overlap",
}
"""One value of each step, changed by one slider step."""

BODY = dict(demo_wearers())["Maren"]
FLOATS = {opcode.opmap["BINARY_OP"], opcode.opmap["COMPARE_OP"]}
STRINGS = {opcode.opmap["BUILD_STRING"]}


def counted(work):
    """How many float operations and comparisons, and how many joined strings, the work runs through."""
    found = [0, 0]

    def trace(frame, event, arg):
        frame.f_trace_opcodes = True
        if event == "opcode":
            one = frame.f_code.co_code[frame.f_lasti]
            found[0] += one in FLOATS
            found[1] += one in STRINGS
        return trace

    before = sys.gettrace()
    sys.settrace(trace)
    try:
        work()
    finally:
        sys.settrace(before)
    return found


def floor(floats, strings):
    """As many float operations in a plain loop, and as many strings joined."""
    total, step = 0.0, 1.000001
    for _ in range(floats):
        total = total * step
    return " ".join([f"{total:.2f},{step:.2f}" for _ in range(strings)])


def works():
    """Name -> a function that prepares the work, untimed, and gives it back ready to be run."""
    wearer, guides = Style(), Style(method="guides")
    made = {
        "draft, to the wearer": lambda: lambda: draft(BODY, wearer),
        "draft, by the guides": lambda: lambda: draft(BODY, guides),
    }

    def step(name, style):
        def prepared():
            # Fresh values each time: what a value has worked out once it remembers.
            value, below = BODY, []
            base = name
            while base in RESTS_ON:
                base = RESTS_ON[base]
                below.insert(0, base)
            for each in below:
                value = STEPS[each](value, style)
            return lambda: STEPS[name](value, style)

        return prepared

    for name in STEPS:
        made[f"step {name}"] = step(name, Style(cup_parts=2) if name == "two_part_cup" else wearer)

    def pieces():
        steps = run_steps(BODY, wearer)
        return lambda: cut_and_sew(steps, wearer)

    def proof():
        steps = run_steps(BODY, wearer)
        cut, seams, waste, _ = cut_and_sew(steps, wearer)
        return lambda: prove(steps, cut, seams, waste)

    def redraw():
        pattern = draft(BODY, wearer)
        return lambda: svg_text(pattern_sheet(pattern, "in", "Maren"))

    made["pieces and seams"], made["proof"], made["redraw as SVG text"] = pieces, proof, redraw

    def again(name):
        from corsetkit.quantity import quantities

        step = next(quantity.step for quantity in quantities(Style) if quantity.name == name)

        def prepared():
            earlier = draft(BODY, wearer)
            moved = wearer.replaced(**{name: getattr(wearer, name) - step})
            return lambda: draft(BODY, moved, earlier=earlier)

        return prepared

    for group, name in LATER.items():
        made[f"slider {name} (from {group} on)"] = again(name)
    return made


def measured(prepare, floats, strings):
    """Times in ms of the work and of its floor, in turn."""
    mine, bare = [], []
    for number in range(ROUNDS + WARM):
        work = prepare()
        start = perf_counter()
        work()
        between = perf_counter()
        floor(floats, strings)
        end = perf_counter()
        if number >= WARM:
            mine.append(1e3 * (between - start))
            bare.append(1e3 * (end - between))
    return mine, bare


def p95(times):
    return sorted(times)[int(0.95 * len(times))]


def main():
    print(f"{ROUNDS} rounds each, Maren; floor: a plain loop of as many float operations and string joins, in the same run")
    print(f"{'':44}{'median':>9}{'p95':>9}{'floats':>9}{'joins':>7}{'floor':>9}{'ratio':>8}{'at p95':>8}")
    for name, prepare in works().items():
        floats, strings = counted(prepare())
        mine, bare = measured(prepare, floats, strings)
        median, base = statistics.median(mine), statistics.median(bare)
        aim = f"   aim {AIMS[name]:g} ms" if name in AIMS else ""
        print(
            f"{name:44}{median:6.2f} ms{p95(mine):6.2f} ms{floats:9d}{strings:7d}{base:6.2f} ms"
            f"{median / base:8.1f}{p95(mine) / base:8.1f}{aim}"
        )


if __name__ == "__main__":
    main()
