// Whether the lesson is in sight: its page is the one in front, and the browser's window is not covered or minimised.

import { newId } from "./elements.js";

// Tells the kernel when the lesson comes into sight and when it goes out of it, until the view goes: then it looks whether
// another lesson has changed what is kept. It is told and not asked, so no answer is waited for.
export function tellSight(model, el, ends) {
  const page = newId("sight");
  let inFront = false, told = false, waiting = 0, watch = null;
  const tell = (seen) => {
    if (seen === told) return;
    told = seen;
    try {
      model.send({ kind: "sight", page, seen });
    } catch {
      // The kernel is gone; one that comes after it hears of the lesson from its own widget.
    }
  };
  const look = () => tell(inFront && !document.hidden);
  // Only what hangs in the page knows which notebook it belongs to.
  const begin = () => {
    if (!el.isConnected) {
      waiting = requestAnimationFrame(begin);
      return;
    }
    watch = new IntersectionObserver((seen) => {
      inFront = seen[seen.length - 1].isIntersecting;
      look();
    });
    watch.observe(el.closest(".jp-NotebookPanel") || el);
  };
  begin();
  document.addEventListener("visibilitychange", look);
  ends.push(() => {
    cancelAnimationFrame(waiting);
    if (watch) watch.disconnect();
    document.removeEventListener("visibilitychange", look);
    tell(false);
  });
}
