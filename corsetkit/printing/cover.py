"""The print's first page: the test square, how to print and join, the plan of the pages, and what stands beside it."""

from corsetkit.drawing.canvas import Sheet, box_run
from corsetkit.drawing.labels import cut_words
from corsetkit.drawing.lettering import PITCH, fitted, wrapped
from corsetkit.drawing.marks import seam_letter
from corsetkit.drawing.name_places import Clutter
from corsetkit.drawing.pens import CUT, HEADING, NAME, PLAN, PLAN_PAGE, SMALL, TEST_INCHES, TEST_SQUARE, TINY
from corsetkit.geometry.paths import flattened, moved
from corsetkit.units import CM_PER_INCH
from corsetkit.words import words_of

WORDS = words_of("printing")

SEWING_LINES = WORDS("sewing_lines")
SIDE = 4 * CM_PER_INCH
"""Side of the larger test square, cm."""
ROW = PITCH * CUT.size / 10
"""From one line of small words to the next, cm."""

SCALE_HOW = WORDS("scale_how")
JOIN_HOW = WORDS("join_how")


def cover(paper, plan, heading, said, beside, how=f"{SCALE_HOW} {JOIN_HOW}"):
    """The first page as a sheet of the paper's printable window.

    `said` stands under the heading, `how` under that; `beside(canvas, corner, width)` paints beside the test square from
    its upper corner.
    """
    width, height = paper.window.real, paper.window.imag

    def paint(canvas):
        y = paint_head(canvas, complex(0.1, height), width - 0.2, heading, said, how)
        _plan(canvas, plan, (0.1, SIDE + 1.1, width - 0.1, y - 0.7))
        paint_squares(canvas, 0.1 + 0.1j)
        beside(canvas, complex(SIDE + 1.0, SIDE), width - SIDE - 1.1)

    title = WORDS("page_title", heading=heading, number=1)
    return Sheet(0j, paper.window, title, f"{WORDS('cover_description')} {how}", paint, 1.0)


def paint_head(canvas, corner, width, heading, said, how):
    """Heading, the line under it and how to print, from the upper left corner down; the level where they end."""
    x, y = corner.real, corner.imag - 0.9
    canvas.words(complex(x, y), fitted(heading, HEADING, width, 1.0), HEADING, "start")
    y -= 0.62
    canvas.words(complex(x, y), fitted(said, SMALL, width, 1.0), SMALL, "start")
    y -= 0.25
    for line in wrapped(how, CUT, width, 1.0):
        y -= ROW * 1.12
        canvas.words(complex(x, y), line, CUT, "start")
    return y


def paint_squares(canvas, corner):
    """Ten centimetres solid, four inches dashed, from one corner."""
    with canvas.group("test-square"):
        for side, pen in ((10.0, TEST_SQUARE), (SIDE, TEST_INCHES)):
            canvas.line(box_run(corner.real, corner.imag, corner.real + side, corner.imag + side), pen)
        canvas.words(corner + complex(5, 5.1), WORDS("ten_cm"), NAME)
        canvas.words(corner + complex(5, 4.5), WORDS("solid_square"), CUT)
        canvas.words(corner + complex(5, 3.9), WORDS("dashed_square"), CUT)


def _plan(canvas, plan, box):
    """The pages as they are joined, each with its number, and the pieces with theirs."""
    pages = [page.box for page in plan.pages]
    low = complex(min(p[0] for p in pages), min(p[1] for p in pages))
    high = complex(max(p[2] for p in pages), max(p[3] for p in pages))
    size = high - low
    by = min((box[2] - box[0]) / size.real, (box[3] - box[1]) / size.imag, 0.2)
    corner = complex((box[0] + box[2]) / 2, (box[1] + box[3]) / 2) - size * by / 2
    clutter = Clutter(box, canvas.scale)

    def shrunk(p):
        return corner + (p - low) * by

    with canvas.group("plan"):
        for page in plan.pages:
            a, b = shrunk(complex(*page.box[:2])), shrunk(complex(*page.box[2:]))
            path = box_run(a.real, a.imag, b.real, b.imag)
            clutter.draw(flattened(path))
            canvas.line(path, PLAN_PAGE)
        for one, step in plan.pieces:
            path = moved(one.border, lambda p, step=step: shrunk(p + step))
            clutter.draw(flattened(path, 0.02))
            canvas.line(path, PLAN)
        for one, step in plan.pieces:
            place = clutter.on(shrunk(one.heart + step), str(one.piece.number), NAME)
            if place:
                canvas.words(*place)
        for page in plan.pages:
            a, b = shrunk(complex(*page.box[:2])), shrunk(complex(*page.box[2:]))
            inside = (a.real, a.imag, b.real, b.imag)
            near = complex(a.real * 0.75 + b.real * 0.25, a.imag * 0.15 + b.imag * 0.85)
            place = clutter.on(near, WORDS("plan_page", number=page.number), TINY, inside)
            if place:
                canvas.words(*place)


def piece_list(pattern, plan):
    """Each piece with what to cut and on which pages it lies, and each seam with its letter, to stand beside the square."""
    entries = [
        WORDS(
            "piece",
            number=piece.number,
            name=piece.name,
            cut=cut_words(piece),
            cloth=piece.cloth,
            pages=pages_words(plan.pages_with(piece)),
        )
        for piece in pattern.pieces
    ]
    seams = ", ".join(f"{seam_letter(seam.number)}\u00a0{seam.name}" for seam in pattern.seams)
    entries += ["", WORDS("seams_listed", seams=seams)]

    def beside(canvas, corner, width):
        with canvas.group("list"):
            paint_entries(canvas, entries, corner, width)

    return beside


def pages_words(numbers):
    """Page numbers in words: "page 3", "pages 3, 4"."""
    return WORDS.counted("on_pages", len(numbers), numbers=", ".join(map(str, numbers)))


def paint_entries(canvas, entries, corner, width):
    """Small words, an entry after the other, each on as many lines as it needs; the level where they end."""
    row, y = ROW * 1.05, corner.imag
    for entry in entries:
        for text in wrapped(entry, CUT, width, 1.0):
            y -= row
            if text:
                canvas.words(complex(corner.real, y), fitted(text, CUT, width, 1.0), CUT, "start")
        y -= 0.25 * row
    return y
