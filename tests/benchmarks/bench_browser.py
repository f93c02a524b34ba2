"""From key press to painted picture in the browser, for the drawing of every lesson.

Beside each, in the same notebook and in turn: a slider of the course's own that only changes a label (the floor: the
same way to the kernel and back, nothing drafted and nothing drawn), and ipywidgets' `interact` that makes a new
matplotlib figure of the same pieces at each step (what a notebook does without further thought). Printed, not judged;
54 ms is where a hand notices lag (Forch et al. 2017, median).

`python tests/benchmarks browser` measures all lessons; CORSETKIT_BENCH=03,07 in the environment only those.
"""

import json
import os
import statistics
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from lab_page import ROOT, browser_path, open_lab, open_page, run_again
from page_tools import NotToBeHad, bundled

# A block of keys, four to the right and four back in turn, so that it ends where it began.
BLOCKS, BLOCK, WARM = 3, 24, 4
PAUSE_MS = 60
HELD, HELD_EVERY_MS, HELD_RUNS = 20, 33, 10
NOTICED_MS = 54

FLOOR = """
from corsetkit.teaching.widgets import Answering

class Label(Answering):
    _esm = {bundle!r}

    def answer(self, message, buffers):
        return {{"label": str(message["changes"]["at"])}}

Label()
"""

INTERACT = """
import ipywidgets
import matplotlib.pyplot as plt
from corsetkit import Style, draft
from corsetkit.wearers import demo_wearers

_, body = demo_wearers()[0]

def drawn(mark):
    pattern = draft(body, Style(overbust_mark=7 + mark / 20))
    figure, axes = plt.subplots()
    for piece in pattern.pieces:
        axes.plot(*piece.outline.exterior.xy)
    axes.set_aspect("equal")
    plt.show()

made = ipywidgets.interactive(drawn, mark=ipywidgets.IntSlider(20, 0, 40))
made.add_class("bench-interact")
made
"""

# Times each key: from the event's own clock to the frame that shows the first change that followed it.
WATCH = """([slider, target]) => {
  const watched = { times: [], from: 0, last: 0 }, element = document.querySelector(slider);
  element.setAttribute('data-lm-suppress-shortcuts', 'true');
  element.addEventListener('keydown', (event) => { watched.from ||= event.timeStamp; watched.key = event.timeStamp; }, true);
  new MutationObserver(() => requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      watched.last = performance.now();
      if (watched.from) watched.times.push(watched.last - watched.from);
      watched.from = 0;
    };
    channel.port2.postMessage(0);
  })).observe(document.querySelector(target), { childList: true, characterData: true, subtree: true });
  (window.watched ||= {})[slider] = watched;
}"""

KINDS = {
    "label only (floor)": (".floor", ".floor-label"),
    "the lesson": (".corset-live input[type=range]", ".corset-paper"),
    "new figure": (
        ".bench-interact [role=slider]",
        ".bench-interact .jupyter-widgets-output-area, .bench-interact .jp-OutputArea",
    ),
}


def lessons():
    """Each lesson's number and its first drawing's cell."""
    wanted = [one for one in os.environ.get("CORSETKIT_BENCH", "").split(",") if one]
    found = {}
    for path in sorted((ROOT / "lessons").glob("*.ipynb")):
        if not wanted or path.stem[:2] in wanted:
            found[path.stem] = "pattern" if path.stem == "00_measuring" else "drawing"
    return found


def notebook(folder: Path, name: str, cell: str, floor: str) -> Path:
    lesson = f'from corsetkit.teaching import lesson; lesson("{name}").{cell}()'
    made = [
        {"cell_type": "code", "id": f"bench-{i}", "metadata": {}, "execution_count": 1, "source": source,
         "outputs": [{"output_type": "stream", "name": "stdout", "text": "not run yet"}]}
        for i, source in enumerate((FLOOR.format(bundle=floor), lesson, INTERACT))
    ]  # fmt: skip
    kernel = {"display_name": "Python 3", "language": "python", "name": "python3"}
    book = {"cells": made, "metadata": {"kernelspec": kernel}, "nbformat": 4, "nbformat_minor": 5}
    path = folder / "bench.ipynb"
    path.write_text(json.dumps(book))
    return path


def press(page, slider, tangent):
    """One key, and the wait until its picture is painted; the time in ms, None where the key changes nothing."""
    from playwright.sync_api import TimeoutError as NoPicture

    page.evaluate("(s) => { window.watched[s].times = []; window.watched[s].from = 0; }", slider)
    page.keyboard.press(tangent)
    try:
        page.wait_for_function("(s) => window.watched[s].times.length > 0", arg=slider, timeout=2_000)
    except NoPicture:
        return None
    page.wait_for_timeout(PAUSE_MS)
    return page.evaluate("(s) => window.watched[s].times[0]", slider)


HOLD = """async ([s, count, every, way]) => {
  const element = document.querySelector(s), wait = (ms) => new Promise((done) => setTimeout(done, ms));
  const watched = window.watched[s], step = way === 'ArrowRight' ? 1 : -1;
  if (element.matches('input')) {
    // From the other end, and no farther than to the last stop but one: a key at the end changes nothing.
    count = Math.min(count, Number(element.max) - Number(element.min) - 1);
    element.value = step > 0 ? element.min : element.max;
    element.dispatchEvent(new Event('input', { bubbles: true }));
    await wait(600);
  }
  for (let i = 0; i < count; i++) {
    watched.key = performance.now();
    if (element.matches('input')) {
      element.value = Number(element.value) + step;
      element.dispatchEvent(new Event('input', { bubbles: true }));
    } else element.dispatchEvent(new KeyboardEvent('keydown', { key: way, bubbles: true, cancelable: true }));
    await wait(every);
  }
  // Until the last value has long been shown, and before a movement counts as come to rest.
  const until = performance.now() + 300;
  while (performance.now() < until) await wait(20);
  return watched.last - watched.key;
}"""


def hold(page, slider, tangent):
    """Steps as fast as a held key gives them, made within the page; ms from the last one to the last picture."""
    return page.evaluate(HOLD, [slider, HELD, HELD_EVERY_MS, tangent])


def said(times):
    times = sorted(times) or [float("nan")]
    return statistics.median(times), times[round(0.95 * (len(times) - 1))]


def measured(page):
    """For each kind the times of single keys, and of held ones."""
    single, held = {kind: [] for kind in KINDS}, {kind: [] for kind in KINDS}

    def at(kind):
        # Focus scrolls the page, and the repainting of that is no part of the answer.
        page.locator(KINDS[kind][0]).first.focus()
        page.wait_for_timeout(400)
        return KINDS[kind][0]

    for _ in range(BLOCKS):
        for kind in KINDS:
            slider = at(kind)
            times = [press(page, slider, "ArrowRight" if i % 8 < 4 else "ArrowLeft") for i in range(BLOCK)]
            single[kind] += [time for time in times[WARM:] if time is not None]
    for i in range(HELD_RUNS):
        for kind in KINDS:
            slider = at(kind)
            late = hold(page, slider, ("ArrowLeft", "ArrowRight")[i % 2])
            if late > 0:
                # Else the slider stood at its end before the last key, and that key changed nothing.
                held[kind].append(late)
    return single, held


def main():
    if browser_path() is None:
        print("bench_browser: no browser of the Chromium family is installed on this machine")
        return
    try:
        (floor,) = bundled([Path(__file__).with_name("label.js")]).values()
    except NotToBeHad as error:
        print("bench_browser:", error)
        return
    print("from key press to painted picture, ms (ratio to the floor of the same run);", f"a hand notices {NOTICED_MS} ms")
    for name, cell in lessons().items():
        with tempfile.TemporaryDirectory() as place:
            folder = Path(place)
            with open_lab(folder, notebook(folder, name, cell, floor)) as address, open_page(address) as page:
                run_again(page)  # no lesson of the course, so it does not run by itself
                for slider, target in KINDS.values():
                    page.wait_for_selector(slider)
                    page.evaluate(WATCH, [slider, target])
                page.wait_for_timeout(1000)
                single, held = measured(page)
                troubles = page.troubles
        for heading, times in (("single keys", single), (f"held, {HELD} keys, after the last", held)):
            floor = said(times["label only (floor)"])
            print(f"  {name}, {heading}")
            for kind, one in times.items():
                median, p95 = said(one)
                print(
                    f"    {kind:20} median {median:6.1f} ({median / floor[0]:.2f})   p95 {p95:6.1f} ({p95 / floor[1]:.2f})",
                    flush=True,
                )
        if troubles:
            print("  the page complained:", *troubles, sep="\n    ")


if __name__ == "__main__":
    main()
