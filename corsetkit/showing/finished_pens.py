"""The look of a piece that is ready to cut, beside what pens.py declares: where the knife goes is the strongest line."""

from corsetkit.showing.pens import GRAPHITE, INK, Letter, Pen

CUTTING = Pen("cutting", 0.7)
SEWING = Pen("sewing", 0.22, INK, (2.4, 1.1))
NOTCH_CUT = Pen("notch-cut", 0.6)
NOTCH_MARKED = Pen("notch-marked", 0.3)
FOLD_EDGE = Pen("fold-edge", 0.5, INK, (4.0, 0.9, 0.6, 0.9))
GRAIN_LINE = Pen("grain-line", 0.25, INK)
PARTNER = Letter("partner", 2.5, False, GRAPHITE)
LARGE_NAME = Letter("large-name", 4.6, True)
LARGE_CUT = Letter("large-cut", 3.2)
