"""From key press to painted picture in the browser, beside a slider that only changes a label.

The label's slider is the floor: the same kind of widget, the same way to the kernel and back, nothing
drafted and nothing drawn. Both are measured in turn in one run. Printed, not judged.
"""

import json
import statistics
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from lab_page import browser_path, open_lab, open_page, run_all  # noqa: E402

# A block of keys, four to the right and four back in turn, so that it ends where it began.
BLOCKS, BLOCK, WARM = 4, 24, 4
PAUSE_MS = 60
HELD, HELD_EVERY_MS = 20, 33

FLOOR = '''
import traitlets
from corsetkit.teaching.widgets import Answering, page

class Label(Answering):
    _esm = page("common.js") + """
function render({ model, el }) {
  const line = new Line(model, () => {});
  const label = make("div", { class: "floor-label" });
  const slider = make("input", { type: "range", class: "floor", min: 0, max: 100, value: 50,
    oninput: () => line.ask({ kind: "set", changes: { at: slider.value } }) });
  model.on("change:shown", () => { line.answered(model.get("shown")); label.textContent = model.get("shown").label; });
  el.append(slider, label);
}
export default { render };
"""
    def answer(self, message, buffers):
        return {"label": str(message["changes"]["at"])}

Label()
'''

# Times each key: from the event's own clock to the frame that shows what followed it.
WATCH = """([slider, target]) => {
  const watched = { times: [], from: 0 };
  document.querySelector(slider).addEventListener('keydown', (event) => { watched.from ||= event.timeStamp; }, true);
  new MutationObserver(() => requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      if (watched.from) watched.times.push(performance.now() - watched.from);
      watched.from = 0;
    };
    channel.port2.postMessage(0);
  })).observe(document.querySelector(target), { childList: true, characterData: true, subtree: true });
  (window.watched ||= {})[slider] = watched;
}"""

KINDS = {
    "label only (floor)": (".floor", ".floor-label"),
    "whole pattern": (".corset-live input[type=range]", ".corset-paper"),
}


def notebook(folder: Path) -> Path:
    lesson = 'from corsetkit.teaching import lesson; lesson("00_measuring").pattern()'
    made = [
        {"cell_type": "code", "id": f"bench-{i}", "metadata": {}, "execution_count": 1, "source": source,
         "outputs": [{"output_type": "stream", "name": "stdout", "text": "not run yet"}]}
        for i, source in enumerate((FLOOR, lesson))
    ]  # fmt: skip
    kernel = {"display_name": "Python 3", "language": "python", "name": "python3"}
    book = {"cells": made, "metadata": {"kernelspec": kernel}, "nbformat": 4, "nbformat_minor": 5}
    path = folder / "bench.ipynb"
    path.write_text(json.dumps(book))
    return path


def press(page, slider, way):
    """One key, and the wait until its picture is painted; the time in ms."""
    page.evaluate("(s) => { window.watched[s].times = []; window.watched[s].from = 0; }", slider)
    page.keyboard.press(way)
    page.wait_for_function("(s) => window.watched[s].times.length > 0", arg=slider)
    page.wait_for_timeout(PAUSE_MS)
    return page.evaluate("(s) => window.watched[s].times[0]", slider)


def hold(page, slider, way):
    """Keys as fast as a held key gives them; ms from the last one to the last picture."""
    page.evaluate("(s) => { window.watched[s].times = []; }", slider)
    page.locator(slider).first.focus()
    page.wait_for_timeout(300)
    return page.evaluate(
        """async ([s, target, count, every, way]) => {
          const slider = document.querySelector(s), wait = (ms) => new Promise((done) => setTimeout(done, ms));
          let last = 0, painted = 0;
          const seen = new MutationObserver(() => requestAnimationFrame(() => { painted = performance.now(); }));
          seen.observe(document.querySelector(target), { childList: true, characterData: true, subtree: true });
          for (let i = 0; i < count; i++) {
            slider.value = Number(slider.value) + (way === 'ArrowRight' ? 1 : -1);
            last = performance.now();
            slider.dispatchEvent(new Event('input', { bubbles: true }));
            await wait(every);
          }
          await wait(400);
          seen.disconnect();
          return painted - last;
        }""",
        [slider, dict(KINDS.values())[slider], HELD, HELD_EVERY_MS, way],
    )


def said(times):
    times = sorted(times)
    return statistics.median(times), times[round(0.95 * (len(times) - 1))]


def main():
    if browser_path() is None:
        print("bench_browser: no browser of the Chromium family is installed on this machine")
        return
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        with open_lab(folder, notebook(folder)) as address, open_page(address) as page:
            run_all(page)
            for slider, target in KINDS.values():
                page.wait_for_selector(slider)
                page.evaluate(WATCH, [slider, target])
            page.wait_for_timeout(1000)
            single = {kind: [] for kind in KINDS}
            held = {kind: [] for kind in KINDS}
            for _ in range(BLOCKS):
                for kind, (slider, _) in KINDS.items():
                    # Focus scrolls the page, and the repainting of that is no part of the answer.
                    page.locator(slider).first.focus()
                    page.wait_for_timeout(300)
                    times = [press(page, slider, "ArrowRight" if i % 8 < 4 else "ArrowLeft") for i in range(BLOCK)]
                    single[kind] += times[WARM:]
            for i in range(8):
                for kind, (slider, _) in KINDS.items():
                    held[kind].append(hold(page, slider, ("ArrowLeft", "ArrowRight")[i % 2]))
            if page.troubles:
                print("the page complained:", *page.troubles, sep="\n  ")
    print("from key press to painted picture, ms (ratio to the floor of this run)")
    for heading, measured in (("single key", single), (f"held, {HELD} keys, after the last", held)):
        floor = said(next(iter(measured.values())))
        print(f"  {heading}")
        for kind, times in measured.items():
            median, p95 = said(times)
            print(f"    {kind:20} median {median:6.1f} ({median / floor[0]:.2f})   p95 {p95:6.1f} ({p95 / floor[1]:.2f})")


if __name__ == "__main__":
    main()
