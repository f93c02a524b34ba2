"""The joins over which a piece runs on to the next page, each with a mark that comes to lie on the neighbour's."""

from corsetkit.geometry.curve import Line
from corsetkit.showing.canvas import tick
from corsetkit.showing.lettering import CAPITALS, grown
from corsetkit.showing.paper import OVERLAP
from corsetkit.showing.pens import JOIN, JOIN_MARK, TINY


def paint_joins(canvas, page, plan):
    """Every join of the page over which a piece runs on."""
    left, bottom, right, top = grown(page.box, -OVERLAP / 2)
    outer = page.box
    sides = ((1, 0, complex(right, outer[1]), complex(right, outer[3])),
             (-1, 0, complex(left, outer[1]), complex(left, outer[3])),
             (0, -1, complex(outer[0], top), complex(outer[2], top)),
             (0, 1, complex(outer[0], bottom), complex(outer[2], bottom)))
    with canvas.group("joins"):
        for columns, rows, start, end in sides:
            other = plan.joined(page, columns, rows)
            if other:
                numbers = sorted((page.number, other.number))
                _paint_join(canvas, start, end, f"{numbers[0]}\u2013{numbers[1]}")


def _paint_join(canvas, start, end, words):
    """A dashed line, broken for a lozenge that lies half on either page, and the two pages' numbers beside it."""
    middle, way = (start + end) / 2, (end - start) / abs(end - start)
    upright = abs(way.imag) > 0.5
    size, aside = 0.34, (0.72 if upright else 0.95)
    tick(canvas, start, middle - way * (size + 0.15), JOIN)
    tick(canvas, middle + way * (aside + (0.3 if upright else 0.6)), end, JOIN)
    corners = [middle + size, middle + size * 1j, middle - size, middle - size * 1j]
    canvas.line(tuple(Line(a, b) for a, b in zip(corners, corners[1:] + corners[:1])), JOIN_MARK)
    tick(canvas, middle - way * size, middle + way * size, JOIN_MARK)
    canvas.words(middle + way * aside - 1j * CAPITALS / 2 * TINY.size / 10, words, TINY)
