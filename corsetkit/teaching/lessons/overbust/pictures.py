"""What the overbust lesson's own tables show: the cup on the body, the guides, and the top edge tightened by a dart."""

from dataclasses import dataclass, replace
from functools import cached_property

from corsetkit.drawing.pens import BEFORE, BODY, GRAPHITE, GUIDE, NEW, Pen
from corsetkit.drawing.step_values import Spot
from corsetkit.drawing.svg import svg_text
from corsetkit.errors import CorsetkitError
from corsetkit.geometry import paths
from corsetkit.geometry.curve import Line
from corsetkit.geometry.move import turned_about
from corsetkit.geometry.points import between
from corsetkit.measurements import Measurements
from corsetkit.quantity import declared, quantities
from corsetkit.steps.overbust import LEAST_ABOVE_DART, SIDE_STRIP
from corsetkit.style import GUIDES, WEARER, Style
from corsetkit.teaching.lessons.overbust.on_a_body import body_sheet, edge_over
from corsetkit.teaching.picture import Picture
from corsetkit.teaching.shared.close_up import SEEN, Note, Patch, Stroke, close_up
from corsetkit.teaching.shared.cup_guides import TINT, cup_halves, front_paper, guides_sheet
from corsetkit.units import Say, say_length, say_number
from corsetkit.words import words_of

WORDS = words_of("03_overbust")
SHARED = words_of("shared")

FLAT = Pen("flat", 0.3, GRAPHITE, (1.1, 0.8))
_BELOW = 3.0


@dataclass(frozen=True)
class Pulled:
    """The cup with `share` of its tightening dart closed and `drawn_in` of its taking-in drawn in at the centre front, each
    0 to 1; lengths in cm, of one cup."""

    overbust: object
    share: float
    drawn_in: float

    @cached_property
    def turn(self):
        """The rigid move of the outer half."""
        return turned_about(self.overbust.bust_point, self.degrees)

    @property
    def degrees(self):
        return self.share * self.overbust.top_dart

    @cached_property
    def gap(self):
        """What is left open between the dart's legs at the overbust line."""
        return abs(self.turn(self.overbust.top_right) - self.overbust.top_left)

    @cached_property
    def sewn_edge(self):
        """The top edge from the cups' front point to the armscye, dart closed."""
        return paths.path_length((*self.overbust.top_inner, *self.overbust.top_outer))

    @property
    def taking_in(self):
        """What is taken in at the centre front in all."""
        return self.overbust.front_point.real

    @property
    def taken_in(self):
        """What is taken in there now."""
        return self.drawn_in * self.taking_in

    @property
    def edge_start(self):
        """Where the edge begins now, level with the cups' point: on the straight centre front, or drawn in from there."""
        return complex(self.taken_in, self.overbust.front_point.imag)

    @cached_property
    def flat_edge(self):
        """The same edge on flat paper: level from the straight centre front to the cups' point, on over the open dart."""
        return self.taking_in + self.sewn_edge + self.overbust.top_intake

    @property
    def edge_now(self):
        """The edge as it is pulled now: what is still open of the dart and not yet drawn in at the centre counts."""
        return self.sewn_edge + self.gap + self.taking_in - self.taken_in

    @cached_property
    def opened(self):
        """How wide the underbust dart stands at its mark once the outer half has turned."""
        under = self.overbust.underbust
        return abs(self.turn(under.outer) - under.inner)


def pulled_sheet(steps, share, drawn_in, unit, title):
    """The sheet: the flat cup broken, the pulled one over it."""
    o = steps.overbust
    pulled, point, front = Pulled(o, share, drawn_in), o.bust_point, o.block.front
    say = Say(unit, unbroken=True)
    inner, outer = cup_halves(o)
    # The sheet has room for the dart wholly closed, so that it stands still while the dart closes.
    closed = paths.flattened(paths.moved(outer, Pulled(o, 1.0, 0.0).turn), 0.1)
    low, high = point.imag - o.underbust.radius - _BELOW, max(o.front_point.imag, *(p.imag for p in closed)) + 2.0
    turned = paths.moved(outer, pulled.turn)
    top_outer = paths.moved(o.top_outer, pulled.turn)
    strokes = [
        *(Stroke(path, BEFORE, name) for name, path in front_paper(o, low, high)),
        Stroke((Line(1j * point.imag, complex(front.width, point.imag)),), BODY, SHARED("bust_level"), "body"),
        Stroke(outer, FLAT, WORDS("pulled_flat")),
        Stroke(inner, BEFORE),
        Stroke(turned, BEFORE),
        Stroke(
            (Line(_down_to(front.neck_centre, pulled.edge_start, high), pulled.edge_start),), BEFORE, WORDS("pulled_centre")
        ),
        Stroke(o.top_inner, NEW, WORDS("pulled_inner"), "new", 3),
        Stroke(top_outer, NEW, WORDS("pulled_outer"), "new", 3),
    ]
    if pulled.taking_in - pulled.taken_in > 0.05:
        strokes.append(Stroke((Line(pulled.edge_start, o.front_point),), NEW, WORDS("pulled_level"), "new", 3))
    if pulled.taken_in > 0.05:
        strokes.append(
            Stroke((Line(1j * pulled.edge_start.imag, pulled.edge_start),), GUIDE, WORDS("pulled_at_centre"), "guide")
        )
    notes = [
        Note(pulled.edge_start, WORDS("pulled_note_taken", taken=say(pulled.taken_in)), True),
        Note(
            paths.point_along(o.top_inner, paths.path_length(o.top_inner) * 0.45),
            WORDS("pulled_note_inner", length=say(paths.path_length(o.top_inner))),
            True,
        ),
        Note(
            paths.point_along(top_outer, paths.path_length(top_outer) * 0.6),
            WORDS("pulled_note_outer", length=say(paths.path_length(top_outer))),
        ),
    ]
    open_top, open_low = pulled.turn(o.top_right), pulled.turn(o.underbust.outer)
    if pulled.gap > 0.05:
        strokes.append(Stroke((Line(o.top_left, open_top),), GUIDE, WORDS("pulled_open"), "guide"))
        notes.append(Note(between(o.top_left, open_top, 0.5), WORDS("pulled_note_open", open=say(pulled.gap))))
    strokes.append(Stroke((Line(o.underbust.inner, open_low),), GUIDE, WORDS("pulled_underbust"), "guide"))
    notes.append(Note(between(o.underbust.inner, open_low, 0.6), WORDS("pulled_note_underbust", open=say(pulled.opened))))
    spots = (Spot(point, SHARED("bust_point"), "before"),)
    box = (-0.6, low - 0.2, front.width + 0.6, high + 0.2)
    key = ((NEW, WORDS("pulled_key")), (FLAT, WORDS("pulled_flat")), (GUIDE, SHARED("measured")))
    said = WORDS(
        "pulled_described",
        title=title,
        turned=say_number(pulled.degrees, 1),
        dart=say_number(o.top_dart, 1),
        taken=say_length(pulled.taken_in, unit),
        whole=say_length(pulled.taking_in, unit),
    )
    return close_up(
        title, said, box, (box[3] - box[1]) / SEEN, unit, [Patch(inner, TINT), Patch(turned, TINT)], strokes, spots, notes, key
    )


def _down_to(start, end, level):
    """The point at which the way from `start` down to `end` passes the level, or `start` where it begins lower."""
    return start if start.imag <= level else between(start, end, (start.imag - level) / (start.imag - end.imag))


STEP = "overbust"
_METHOD = next(one for one in quantities(Style) if one.name == "method")
COVERING = ("overbust_mark", "overbust_armscye", "centre_front_depth")
"""The style values by which the cup covers more or less."""
SKETCH = WORDS("body_sketch")


@dataclass(frozen=True)
class Asking:
    """What the table of the guides asks; the bust point width is set anew for each wearer."""

    which_method: str = declared(
        WORDS("guides_which_method"),
        unit="choice",
        choices=(WEARER, GUIDES),
        choice_words=_METHOD.choice_words,
        default=WEARER,
    )
    bust_point_width: float = declared(WORDS("guides_what_if"), unit="cm", low=12, high=34, step=0.25, default=19.05)


@dataclass(frozen=True)
class Pulling:
    """How far the two things that make the top edge shorter are done."""

    dart_closed: float = declared(WORDS("pulled_dart_closed"), unit="share", low=0, high=1, step=0.02, default=0.0)
    centre_taken_in: float = declared(WORDS("pulled_taken_in"), unit="share", low=0, high=1, step=0.02, default=0.0)


def asking(desk):
    """The quantities of `Asking` about the desk's wearer: her own way and bust point width where the sliders begin."""
    method, width = quantities(Asking)
    try:
        body = desk.body()[1]
    except CorsetkitError:
        # There is nothing to draw then, and the table says so.
        body = next(iter(desk.demo.values()))
    known = next(one for one in quantities(Measurements) if one.name == "bust_point_width")
    # No bust points lie a third of the bust apart.
    own = body.bust_point_width
    low, high = max(known.low, 0.7 * own), min(known.high, 1.3 * own, body.bust_girth / 3 - 0.3)
    return (
        replace(method, default=desk.record.style.get("method", Style.method)),
        replace(width, low=low, high=high, default=own),
    )


def body_picture(drafts, usual_drafts, values):
    """The cup on the body; `usual_drafts` draw it with the usual values, for comparison."""
    name, steps = drafts.steps(values, STEP)
    unit, usual = drafts.desk.record.unit, None
    others = {one: value for one, value in values.items() if one not in COVERING}
    if others != values:
        try:
            usual = usual_drafts.steps(others, STEP)[1].overbust
        except CorsetkitError:
            usual = None
    sheet = body_sheet(steps, usual, unit, WORDS("body_title", name=name))
    said = (*_covered(steps.overbust, unit), *depth_said(steps, unit), SKETCH)
    return Picture(svg_text(sheet), sheet.description, said, steps.overbust.warnings)


def _covered(o, unit):
    say = Say(unit)
    level, neck = o.bust_point.imag, o.block.front.neck_centre.imag
    percent = lambda y: say_number(100 * (y - level) / (neck - level), 0)
    over = edge_over(o).imag
    yield WORDS("body_edge_lies", over=say(over - level), front=say(o.front_point.imag - level))
    yield WORDS("body_covered", height=say(neck - level), over=percent(over), front=percent(o.front_point.imag))
    yield WORDS("body_mark", away=say(abs(o.mark - o.bust_point)), edge=say(o.top_radius))
    cup, low = (paths.path_length(path) for path in (o.armscye_cup_part, o.armscye_low_part))
    yield WORDS("body_armscye", covered=say(cup), low=say(low), high=say(low + cup))


def depth_said(steps, unit):
    """Where the cups begin higher than the depth asks for: where they stop, and why."""
    o, asked = steps.overbust, steps.style.centre_front_depth
    say = Say(unit)
    begin = o.block.front.neck_centre.imag - o.front_point.imag
    if say(asked) != say(begin):
        yield WORDS("depth_stops", asked=say(asked), begin=say(begin), least=say(LEAST_ABOVE_DART))


def guides_picture(block_drafts, drafts, values):
    """The cup's outline with circles, guides and strips; `block_drafts` draw her own block, `drafts` what is asked."""
    style = dict(values)
    method, width = style.pop("which_method", None), style.pop("bust_point_width", None)
    style |= {"method": method} if method else {}
    name, own = block_drafts.steps(style, "block")
    unit, body = drafts.desk.record.unit, own.measurements
    asked = next(one for one in asking(drafts.desk) if one.name == "bust_point_width")
    changed = width is not None and abs(width - body.bust_point_width) > 1e-6
    if changed:
        # It may have been asked of another wearer before, for whom more was allowed.
        body = body.replaced(bust_point_width=min(max(width, asked.low), asked.high))
    steps = drafts.steps(style, STEP, body)[1]
    sheet = guides_sheet(
        steps, unit, WORDS("guides_title", name=name, method=_METHOD.choice_words[_METHOD.choices.index(steps.style.method)])
    )
    said = [*_reached(steps, unit)]
    if changed:
        said.insert(
            0,
            WORDS(
                "guides_changed",
                asked=say_length(body.bust_point_width, unit),
                own=say_length(own.measurements.bust_point_width, unit),
            ),
        )
    return Picture(svg_text(sheet), sheet.description, tuple(said), steps.overbust.warnings)


def _reached(steps, unit):
    o, style = steps.overbust, steps.style
    say = Say(unit)
    front, side = o.bust_point.real, o.block.front.width - o.bust_point.real
    to_front, to_side = front - o.guide_front.real, o.guide_side.real - o.bust_point.real
    yield WORDS(
        "guides_front",
        room=say(front - style.least_strip),
        whole=say(front),
        strip=say(style.least_strip),
        guide=say(style.guide_to_front),
        reach=say(to_front),
    )
    yield WORDS(
        "guides_side",
        room=say(side - style.least_strip),
        whole=say(side),
        guide=say(style.guide_to_side),
        reach=say(to_side),
        left=say(side - to_side),
        asked=say(SIDE_STRIP),
    )
    quarter = (steps.measurements.bust_girth + style.bust_ease) / 4
    wide = o.block.front.width
    if style.to_the_wearer and say(quarter) != say(wide):
        yield WORDS(
            "guides_quarter_and_ease" if style.bust_ease else "guides_quarter",
            wide=say(wide),
            quarter=say(quarter),
            apart=say(abs(wide - quarter)),
            more=SHARED("less" if quarter < wide else "more"),
        )
    yield WORDS("guides_circles", above=say(style.overbust_mark), below=say(o.underbust.radius))


def pulled_picture(drafts, values):
    """The top edge with the dart closed and the centre front taken in so far."""
    style = dict(values)
    share, drawn_in = (style.pop(one.name, one.default) for one in quantities(Pulling))
    name, steps = drafts.steps(style, STEP)
    unit = drafts.desk.record.unit
    sheet = pulled_sheet(steps, share, drawn_in, unit, WORDS("pulled_title", name=name))
    said = (*_shorter(Pulled(steps.overbust, share, drawn_in), unit), *_why(steps, unit))
    return Picture(svg_text(sheet), sheet.description, said, steps.overbust.warnings)


def _shorter(pulled, unit):
    say = Say(unit)
    yield WORDS("pulled_on_paper", flat=say(pulled.flat_edge))
    state = WORDS("pulled_closed") if pulled.gap < 0.05 else WORDS("pulled_gap", open=say(pulled.gap))
    turned, dart = (say_number(angle, 1) for angle in (pulled.degrees, pulled.overbust.top_dart))
    yield WORDS("pulled_now", turned=turned, dart=dart, state=state, taken=say(pulled.taken_in), whole=say(pulled.taking_in))
    less = pulled.flat_edge - pulled.edge_now
    yield WORDS(
        "pulled_half_now",
        now=say(pulled.edge_now),
        less=WORDS("pulled_same") if less < 1e-6 else WORDS("pulled_less", less=say(less)),
    )
    yield WORDS("pulled_sewn", sewn=say(pulled.sewn_edge), dart=say(pulled.overbust.top_intake), taken=say(pulled.taking_in))
    yield WORDS("pulled_below", open=say(pulled.opened))


def _why(steps, unit):
    say = Say(unit)
    m, intake = steps.measurements, steps.overbust.top_intake
    over = m.bust_girth - m.high_bust
    known = SHARED("measured") if m.high_bust_girth is not None else WORDS("pulled_reckoned")
    yield WORDS("pulled_why", above=say(m.high_bust), known=known, over=say(over), both=say(2 * intake))
    yield WORDS("pulled_hollow", taken=say(2 * steps.overbust.front_point.real))
