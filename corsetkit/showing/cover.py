"""The print's first page: the test square, how to print and join, the plan of the pages, and the list of pieces."""

from ..geometry.path import flattened
from ..units import CM_PER_INCH
from .canvas import box_run
from .clutter import Clutter
from .labels import cut_words
from .lettering import PITCH, fitted, wrapped
from .marks import seam_letter
from .pens import CUT, HEADING, NAME, PLAN, PLAN_PAGE, SMALL, TEST_INCHES, TEST_SQUARE, TINY
from .sheet import Sheet

_HOW = ("Print at 100 %, actual size, never \u201cfit to page\u201d. Measure the squares below before cutting: the solid one "
        "is 10 cm, the dashed one 4 in a side. If they are off, set the scale to 100 % in the print window and print this "
        "page again. Join pages along their dashed lines, so that the two lozenges with the same numbers lie on each "
        "other; a page without a dashed line stands alone.")


def cover(pattern, paper, plan, heading, said_date, last):
    """The first page as a sheet of the paper's printable window."""
    width, height = paper.window.real, paper.window.imag
    side = 4 * CM_PER_INCH

    def paint(canvas):
        y = height - 0.9
        canvas.words(complex(0.1, y), fitted(heading, HEADING, width - 0.2, 1.0), HEADING, "start")
        y -= 0.62
        said = " \u00b7 ".join(text for text in (said_date, f"page 1 of {last}", paper.name,
                                            "sewing lines: add allowances when cutting") if text)
        canvas.words(complex(0.1, y), said, SMALL, "start")
        y -= 0.25
        for line in wrapped(_HOW, CUT, width - 0.2, 1.0):
            y -= PITCH * CUT.size / 10 * 1.12
            canvas.words(complex(0.1, y), line, CUT, "start")
        _plan(canvas, plan, paper, (0.1, side + 1.1, width - 0.1, y - 0.7))
        _squares(canvas)
        _list(canvas, pattern, plan, complex(side + 1.0, side), width - side - 1.1)

    return Sheet(0j, paper.window, f"{heading}, page 1",
                 "Test squares of 10 cm and 4 in, plan of the pages, list of pieces.", paint, 1.0)


def _squares(canvas):
    """Ten centimetres solid, four inches dashed, from one corner."""
    low = 0.1
    with canvas.group("test-square"):
        canvas.line(box_run(low, low, low + 10, low + 10), TEST_SQUARE)
        inches = 4 * CM_PER_INCH
        canvas.line(box_run(low, low, low + inches, low + inches), TEST_INCHES)
        canvas.words(complex(low + 5, low + 5.1), "10 cm", NAME)
        canvas.words(complex(low + 5, low + 4.5), "solid square, each side", CUT)
        canvas.words(complex(low + 5, low + 3.9), "4 in for the dashed one", CUT)


def _plan(canvas, plan, paper, box):
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
            run = box_run(a.real, a.imag, b.real, b.imag)
            clutter.draw(flattened(run))
            canvas.line(run, PLAN_PAGE)
        for one, step in plan.pieces:
            run = tuple(curve.moved(lambda p, step=step: shrunk(p + step)) for curve in one.piece.run)
            clutter.draw(flattened(run, 0.02))
            canvas.line(run, PLAN)
        for one, step in plan.pieces:
            place = clutter.on(shrunk(one.label[0][0] + step), str(one.piece.number), NAME)
            if place:
                canvas.words(*place)
        for page in plan.pages:
            a, b = shrunk(complex(*page.box[:2])), shrunk(complex(*page.box[2:]))
            inside = (a.real, a.imag, b.real, b.imag)
            near = complex(a.real * 0.75 + b.real * 0.25, a.imag * 0.15 + b.imag * 0.85)
            place = clutter.on(near, f"p. {page.number}", TINY, inside)
            if place:
                canvas.words(*place)


def _list(canvas, pattern, plan, corner, width):
    """Each piece with what to cut and on which pages it lies, and each seam with its letter."""
    entries = []
    for piece in pattern.pieces:
        numbers = plan.pages_with(piece)
        pages = f"page {numbers[0]}" if len(numbers) == 1 else f"pages {', '.join(map(str, numbers))}"
        entries.append(f"{piece.number} {piece.name}: {cut_words(piece)}, {piece.cloth}; {pages}")
    seams = ", ".join(f"{seam_letter(seam.number)}\u00a0{seam.name}" for seam in pattern.seams)
    entries += ["", f"A letter in a ring names a seam; sew it to the same letter: {seams}."]
    row = PITCH * CUT.size / 10 * 1.05
    y = corner.imag
    with canvas.group("list"):
        for entry in entries:
            for text in wrapped(entry, CUT, width, 1.0):
                y -= row
                if text:
                    canvas.words(complex(corner.real, y), fitted(text, CUT, width, 1.0), CUT, "start")
            y -= 0.25 * row
