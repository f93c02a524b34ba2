"""The look of every drawing, declared once: pens, tones and lettering, and those of a piece that is ready to cut.

A drafting table: warm board, cut paper lying on it, dark ink for what is sewn, graphite for what was there
before, tailor's red chalk for what this step draws. Widths, dashes and heights of letters are millimetres
as seen, whatever the drawing's scale. Kinds of line differ in width and dash as well as in colour,
so that a print without colour still tells them apart.
"""

from dataclasses import dataclass

BOARD = "#ece6da"
PAPER = "#fffdf8"
INK = "#25232b"
GRAPHITE = "#635e57"
CHALK = "#a3271b"
THREAD = "#1b5a63"
OFFCUT = "#8d8272"


@dataclass(frozen=True)
class Pen:
    """A drawn line: its kind (a word for pages and tests), width in mm, ink, and dash in mm."""

    kind: str
    width: float
    ink: str = INK
    dash: tuple[float, ...] = ()


@dataclass(frozen=True)
class Tone:
    """How an area is filled: with a colour, or hatched by a pen every `spacing` mm, or both."""

    kind: str
    colour: str | None = None
    hatch: Pen | None = None
    spacing: float = 1.6


@dataclass(frozen=True)
class Letter:
    """Lettering: its kind, its height (the em) in mm, whether bold, and its ink."""

    kind: str
    size: float
    bold: bool = False
    ink: str = INK


SEWN = Pen("sewn", 0.55)
FREE = Pen("free", 0.28)
FOLD = Pen("fold", 0.36, INK, (3.2, 0.8, 0.5, 0.8))
GRAIN = Pen("grain", 0.2, GRAPHITE)
NOTCH = Pen("notch", 0.42)
LEADER = Pen("leader", 0.16, GRAPHITE)
RING = Pen("ring", 0.22, THREAD)
RULE = Pen("rule", 0.24, INK)

BEFORE = Pen("before", 0.3, GRAPHITE)
NEW = Pen("new", 0.75, CHALK)
GUIDE = Pen("guide", 0.18, THREAD, (1.6, 1.0))
GHOST = Pen("ghost", 0.34, GRAPHITE, (1.1, 0.9))
BODY = Pen("body", 0.3, GRAPHITE, (0.3, 1.0))
CUT_AWAY = Pen("waste", 0.2, OFFCUT, (0.9, 0.7))
HATCHING = Pen("hatching", 0.16, OFFCUT)
SPOT = Pen("spot", 0.25, CHALK)

GRID = Pen("grid", 0.1, "#d3cbba")

JOIN = Pen("join", 0.2, GRAPHITE, (2.0, 1.2))
JOIN_MARK = Pen("join-mark", 0.25, INK)
PLAN = Pen("plan", 0.22, INK)
PLAN_PAGE = Pen("plan-page", 0.12, GRAPHITE)
TEST_SQUARE = Pen("test-square", 0.2, INK)
TEST_INCHES = Pen("test-inches", 0.2, INK, (1.4, 0.9))

BOARD_TONE = Tone("board", BOARD)
CUT_PAPER = Tone("paper", PAPER)
PAPER_TONE = Tone("ground", PAPER)
BARE = Tone("bare", "#ffffff")
MARK_TONE = Tone("mark", PAPER)
SOLID = Tone("solid", INK)
SPOT_TONE = Tone("spot", CHALK)
WASTE = Tone("waste", None, HATCHING, 1.7)

HEADING = Letter("heading", 3.9, True)
NAME = Letter("name", 2.95, True)
CUT = Letter("cut", 2.5, False, INK)
SEAM = Letter("seam", 2.45, True, THREAD)
SMALL = Letter("small", 2.5, False, GRAPHITE)
FOLD_WORDS = Letter("fold-words", 2.5, False, INK)
SPOT_WORDS = Letter("spot-words", 2.7, False, INK)
LINE_WORDS = Letter("line-words", 2.5, False, GRAPHITE)
TINY = Letter("tiny", 2.3, False, GRAPHITE)


CUTTING = Pen("cutting", 0.7)
SEWING = Pen("sewing", 0.22, INK, (2.4, 1.1))
NOTCH_CUT = Pen("notch-cut", 0.6)
NOTCH_MARKED = Pen("notch-marked", 0.3)
FOLD_EDGE = Pen("fold-edge", 0.5, INK, (4.0, 0.9, 0.6, 0.9))
GRAIN_LINE = Pen("grain-line", 0.25, INK)
PARTNER = Letter("partner", 2.5, False, GRAPHITE)
LARGE_NAME = Letter("large-name", 4.6, True)
LARGE_CUT = Letter("large-cut", 3.2)
