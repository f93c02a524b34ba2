"""The cutting plan: which share of the cloth becomes the corset after so many seconds of laying.

The floor is the plain row-by-row lay of the same pieces, the ceiling the bound below which no lay can come. Lengths are of
cloth 150 cm wide, the shell of three demo wearers, on single and on folded cloth. Each figure is the middle one of three
searches, with the shortest and the longest behind it. Printed, not judged.
"""

import statistics
import sys
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from corsetkit import Style, demo_wearers, draft
from corsetkit.finish.finished import finish
from corsetkit.lay.cloth import FOLDED, SINGLE, Cloth
from corsetkit.lay.items import items_of
from corsetkit.lay.planning import plan

SECONDS, SEARCHES = (0, 1, 2, 5), 3


def row(name, length, made, took=""):
    used = made.area / (made.cloth.width * length)
    print(f"    {name:22}{length:7.1f} cm{100 * used:6.1f} %{100 * length / made.plain:8.1f} % of the plain lay{took}")


def main():
    for laid in (SINGLE, FOLDED):
        for name, body in demo_wearers()[:3]:
            items, cloth = items_of(finish(draft(body, Style())), "shell"), Cloth(laid=laid, width=150)
            print(f"{name}, shell, {len(items)} pieces, cloth {cloth.width:g} cm laid {laid}")
            first = plan(items, cloth, 0)
            row("plain, row by row", first.plain, first)
            for seconds in SECONDS:
                lengths, times = [], []
                for offset in range(SEARCHES):
                    start = perf_counter()
                    lengths.append(plan(items, cloth, seconds, offset=offset).length)
                    times.append(perf_counter() - start)
                spread = f"   ({min(lengths):.1f} to {max(lengths):.1f} cm; took {statistics.median(times):.1f} s)"
                row(f"packed, {seconds} s", statistics.median(lengths), first, spread)
            row("bound", first.bound, first)


if __name__ == "__main__":
    main()
