"""The words of the lesson on finishing, each with its small drawing."""

from corsetkit.finish.bill import bill
from corsetkit.finish.lacing import lacing_stretches
from corsetkit.finish.cutting_line import strokes
from corsetkit.geometry import paths as path
from corsetkit.geometry.curve import Line
from corsetkit.pattern.edge import Kind
from corsetkit.drawing.step_values import Drawn, Spot
from corsetkit.drawing.finished_view import closed
from corsetkit.showing.lessons.vignette import vignette
from corsetkit.teaching.parts.ready_pieces import most_telling
from corsetkit.teaching.word_cards import Word


def finish_words(finished):
    """The `Word`s, drawn from a `Finished` pattern."""
    telling = most_telling(finished.pattern.pieces)
    one = next(each for each in finished.pieces if each.piece is telling)
    seam = next(edge for edge in telling.edges if edge.kind is Kind.PANEL_SEAM)
    sewing = [Drawn(edge.run, "before") for edge in telling.edges]
    cutting = Drawn(closed(one.cutting), "before")
    corner = path.run_start(seam.run)
    near = (corner.real - 6.5, corner.imag - 3.5, corner.real + 3.5, corner.imag + 4.5)
    band = _band(one, seam)

    def card(word, meaning, told, lines, box=near, spots=()):
        return Word(word, meaning, vignette(word.capitalize(), told, lines, box, spots))

    return (
        card("sewing line", "the line on which a piece is sewn to the next",
             "the inner line drawn strongly.", [cutting, *(Drawn(edge.run, "new") for edge in telling.edges)]),
        card("cutting line", "the line along which the cloth is cut, outside the sewing line",
             "the outer line drawn strongly.", [*sewing, Drawn(cutting.run, "new")]),
        card("allowance", "the cloth between the two lines; it lies inside the finished corset and holds the seam",
             "the strip between the two lines, hatched.", [*sewing, cutting, Drawn(closed(band), "waste")]),
        *_bone_and_lacing(finished, seam, card),
    )


def _band(finished, edge):
    """The allowance beside one edge, as the points round it."""
    number = next(i for i, each in enumerate(finished.piece.edges) if each is edge)
    outside = [p for each in strokes(finished.piece, finished.allowances) if each.edge is finished.piece.edges[number]
               for p in each.outside]
    return (*path.flattened(edge.run, 0.05), *reversed(outside))


def _bone_and_lacing(finished, seam, card):
    pattern, choices = finished.pattern, finished.choices
    stretch = lacing_stretches(pattern.pieces)[0]
    panel, edge = stretch.parts[-1]
    lines = [Drawn(each.run, "before") for each in panel.edges]
    foot = path.run_start(edge.run)
    low = (foot.real - 6.5, foot.imag - 2.0, foot.real + 3.5, foot.imag + 6.0)
    middle = (foot.real - 6.5, -4.0, foot.real + 3.5, 4.0)
    places = bill(finished).eyelets[0]
    holes = [path.point_along(stretch.run, place) - 1j * path.way_along(stretch.run, place) * places.inset
             for place in places.places]
    seen = [Spot(at, "") for at in holes if -3.6 < at.imag < 3.6]
    half, tape = (choices.bone_width + choices.channel_ease) / 2, choices.waist_tape_width / 2
    at = path.point_along(seam.run, seam.length / 2)
    beside = [Drawn(_parallel(seam.run, off), "new") for off in (-half, half)]
    strip = tuple(Line(a, b) for a, b in ((foot - choices.facing_width, foot - choices.facing_width + 20j),))
    return (
        card("facing", "a strip that lines an edge from inside; here it strengthens the lacing edge behind the eyelets",
             "a line beside the lacing edge, where the facing ends.", [*lines, *(Drawn((one,), "new") for one in strip)], low),
        card("bone channel", "the tunnel of cloth in which a bone lies, a little wider than the bone",
             "two lines close to each other along a seam.", [Drawn(seam.run, "before"), *beside],
             (at.real - 4.0, at.imag - 3.2, at.real + 4.0, at.imag + 3.2)),
        card("eyelet", "a hole with a metal rim, for the lacing; two pairs stand closer together at the waist",
             "a row of small round marks beside the lacing edge.", lines, middle, seen),
        card("waist tape", "a firm tape round the waist, inside the corset, that takes the pull",
             "two level lines, one above and one below the waist.",
             [*lines, *(Drawn((Line(complex(foot.real - 30.0, y), complex(foot.real, y)),), "new") for y in (-tape, tape))],
             middle),
    )


def _parallel(run, off):
    """A line of short strokes `off` cm to the right of the run."""
    length = path.run_length(run)
    points = [path.point_along(run, length * i / 60) - 1j * path.way_along(run, length * i / 60) * off for i in range(61)]
    return tuple(Line(a, b) for a, b in zip(points, points[1:]))
