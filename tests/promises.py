"""What a pattern promises, each promise one function: it gives the sentences in which a pattern breaks it, none where it
keeps it. Everything is measured anew (anew.py), nothing taken from the package's own proof.
"""

import itertools

import numpy as np
import shapely
from anew import (
    SMOOTH_KINDS,
    angle_at,
    area,
    at,
    corner,
    cut_girths,
    girths,
    holders,
    line,
    moved,
    one_line,
    pieces_of,
    points,
    seam_corners,
    swept,
)
from shapely import Point

from corsetkit.pattern.edge import Kind

SEAM = 0.01  # cm; the promise: 0.1 mm
AREA = 0.01  # cm2; the promise for the tiling
DEGREE = 1.0  # how far from smooth two neighbours' edges may run on
GIRTH = 0.1  # cm; the promise: 1 mm


def outline_faults(pattern):
    """Outlines are their edges end to end, valid, simple and counter-clockwise."""
    for piece in pattern.pieces:
        ring, lines = piece.outline.exterior, [edge.line for edge in piece.edges]
        for before, after in zip(lines, lines[1:] + lines[:1]):
            if Point(before.coords[-1]).distance(Point(after.coords[0])) > 1e-6:
                yield f"{piece.name}: an edge begins away from the end of the one before"
        laid = np.concatenate([np.array(one.coords)[:-1] for one in lines])
        if len(laid) != len(ring.coords) - 1 or abs(laid - np.array(ring.coords)[:-1]).max() > 1e-6:
            yield f"{piece.name}: the outline is not its edges end to end"
        if not (piece.outline.is_valid and ring.is_simple and ring.is_ccw and piece.outline.area > 1):
            yield f"{piece.name}: the outline is not valid, simple and counter-clockwise"
        finer = area(piece.path)
        if not finer.is_valid or not finer.exterior.is_ccw:
            yield f"{piece.name}: drawn finer, the outline crosses itself"
        if shapely.distance(shapely.points(points(piece.path, 25)), ring).max() > 0.0011:
            yield f"{piece.name}: the outline handed out is farther than 0.01 mm from its curves"


def _along(outline, edge, z):
    """How far `z` lies along the outline from the edge's start."""
    ring = outline.exterior
    start = ring.project(Point(edge.line.coords[0]))
    # A mark at the edge's very start may be found a rounding before it.
    return (ring.project(at(z)) - start + 1e-6) % ring.length - 1e-6


def _measured(outline, edge):
    return _along(outline, edge, complex(*edge.line.coords[-1]))


def seam_faults(pattern):
    """Each seam's two sides, and their notches, agree within 0.1 mm, measured along the pieces' outlines."""
    holder = holders(pattern)
    notches = [(notch, piece) for piece in pattern.pieces for notch in piece.notches]
    for seam in pattern.seams:
        totals, marks, changes = [], [], []
        for side, against in zip(seam.sides, seam.against):
            total, found, ends = 0.0, [], []
            for edge in side:
                outline = holder[id(edge)].outline
                length = _measured(outline, edge)
                for notch, _ in notches:
                    if notch.edge is edge and notch.seam is seam:
                        where = _along(outline, edge, notch.point)
                        found.append(total + (length - where if against else where))
                total += length
                ends.append(total)
            totals.append(total)
            marks.append(sorted(found))
            changes.append(ends[:-1])
        if abs(totals[0] - totals[1] - seam.ease) > SEAM:
            yield f"{seam.name}: its sides are {totals[0]:.4f} and {totals[1]:.4f} cm"
        if len(marks[0]) != len(marks[1]) or any(abs(a - b) > SEAM for a, b in zip(*marks)):
            yield f"{seam.name}: its notches lie at {np.round(marks[0], 3)} and {np.round(marks[1], 3)} cm"
        for mine, other in ((changes[0], marks[1]), (changes[1], marks[0])):
            for change in mine:
                if not any(abs(change - mark) < SEAM for mark in other):
                    yield f"{seam.name}: pieces change at {change:.2f} cm, and no notch stands across from it"


def rigid_faults(pattern):
    """A part moved into its piece keeps the shape of every curve to 1e-9 cm and is not turned over."""
    for piece in pieces_of(pattern):
        for part in piece.parts:
            for curve in part.outline:
                before = points((curve,), 8)
                after = points((curve.moved(part.move),), 8)
                if abs(_spans(before) - _spans(after)).max() > 1e-9:
                    yield f"{part.name}: an edge changes its shape when it is moved"
            if area(moved(part.outline, part.move)).exterior.is_ccw != area(part.outline).exterior.is_ccw:
                yield f"{part.name}: it is turned over"


def _spans(places):
    return np.hypot(*(places[:, None] - places[None]).transpose(2, 0, 1))


def assembly_faults(pattern):
    """A piece is its parts, moved and laid side by side, but for the blends it states."""
    for piece in pieces_of(pattern):
        laid = [area(moved(part.outline, part.move)) for part in piece.parts]
        if not all(one.is_valid for one in laid):
            yield f"{piece.name}: a part of it crosses itself"
            continue
        together = shapely.union_all(laid)
        if sum(one.area for one in laid) - together.area > AREA:
            yield f"{piece.name}: its parts overlap when they are laid side by side"
        off = together.symmetric_difference(area(piece.path))
        if off.area > AREA and piece.blends:
            off = off.difference(shapely.union_all([swept(blend) for blend in piece.blends]).buffer(0.003, quad_segs=1))
        if off.area > AREA:
            yield f"{piece.name}: {off.area:.3f} cm2 of it are neither its parts nor a stated blend, about {_centre(off)}"


def blend_faults(pattern):
    """A blend's largest move and change of length are what it states."""
    for piece in pattern.pieces:
        for blend in piece.blends:
            before, after = line(blend.before), line(blend.after)
            # The farthest point may be a sharp one, beside the step: only close places find it.
            largest = shapely.distance(before, shapely.points(points(blend.after, 800))).max()
            if abs(largest - blend.largest_move) > 0.01:
                yield f"{piece.name}, {blend.why}: moves by {largest:.3f} cm and states {blend.largest_move:.3f}"
            if abs(after.length - before.length - blend.change) > 0.001:
                yield f"{piece.name}, {blend.why}: gains {after.length - before.length:.4f} cm and states {blend.change:.4f}"


def tiling_faults(pattern):
    """Parts and waste lie on the block's papers without overlap, and together cover them, within 0.01 cm2."""
    block = pattern.steps.block
    papers = shapely.union_all([area(block.front_paper), area(block.back_paper)])
    named = [(part.name, area(part.outline)) for piece in pieces_of(pattern) for part in piece.parts]
    named += [(cut.name, area(cut.outline)) for cut in pattern.waste]
    for name, one in named:
        if not one.is_valid or not one.exterior.is_ccw:
            yield f"{name}: its outline on the block is not valid and counter-clockwise"
            return
    whole = shapely.union_all([one for _, one in named])
    if whole.symmetric_difference(papers).area > AREA:
        left = papers.difference(whole)
        yield (
            f"parts and waste leave {left.area:.4f} cm2 of the block and reach "
            f"{whole.difference(papers).area:.4f} cm2 beyond it, about {_centre(whole.symmetric_difference(papers))}"
        )
    twice = sum(one.area for _, one in named) - whole.area
    if twice > AREA:
        pairs = [
            f"{a} and {b} ({one.intersection(other).area:.3f})"
            for (a, one), (b, other) in itertools.combinations(named, 2)
            if one.intersection(other).area > AREA / 4
        ]
        yield f"{twice:.4f} cm2 of the block are taken twice: {', '.join(pairs)}"


def bust_point_faults(pattern):
    """The cups' own angles at the bust point and the darts' angles sum to 360 degrees within 0.01."""
    point = pattern.steps.overbust.bust_point
    cups = 0.0
    for piece in pieces_of(pattern):
        around = [part for part in piece.parts if angle_at(part.outline, point)]
        cups += sum(angle_at(part.outline, point) for part in around)
        if any(abs(part.move(point) - around[0].move(point)) > 1e-9 for part in around):
            yield f"{piece.name}: its parts do not meet at the bust point"
    darts = sum(angle_at(cut.outline, point) for cut in pattern.waste)
    if abs(cups + darts - 360) > 0.01:
        yield f"at the bust point the cups have {cups:.3f} degrees and the darts {darts:.3f}"
    if abs(darts - pattern.fullness.total) > 0.01:
        yield f"the darts' angles are {darts:.3f} degrees and the fullness states {pattern.fullness.total:.3f}"


def smooth_faults(pattern):
    """Across a seam the neighbours' edges run on smoothly; across a fold they stand square to it."""
    for seam, (first, second), total in seam_corners(pattern):
        if one_line(first, second) and abs(total - 180) > DEGREE:
            yield f"{first.name} has a corner of {total - 180:+.2f} degrees at the seam {seam.name}"
    for piece in pattern.pieces:
        for before, after in zip(piece.edges, piece.edges[1:] + piece.edges[:1]):
            for fold, other in ((before, after), (after, before)):
                if fold.kind is Kind.FOLD and other.kind in SMOOTH_KINDS:
                    angle = corner(before.path, after.path)
                    if abs(angle - 90) > DEGREE / 2:
                        yield f"{piece.name}: {other.name} meets the fold at {angle:.2f} degrees"


def girth_faults(pattern):
    """Finished girths, on the block and on the pieces as they are cut, are what the pattern states; fitted, they meet the
    intended within 1 mm."""
    for name, measured in girths(pattern).items():
        stated = pattern.girths[name]
        if abs(measured - stated.finished) > GIRTH:
            yield f"{name}: {measured:.2f} cm measured, {stated.finished:.2f} stated"
        if pattern.style.to_the_wearer and abs(measured - stated.intended) > GIRTH:
            yield f"{name}: {measured:.2f} cm measured, {stated.intended:.2f} intended"
    for name, measured in cut_girths(pattern).items():
        if abs(measured - pattern.girths[name].finished) > GIRTH:
            yield f"{name}: {measured:.2f} cm on the cut pieces, {pattern.girths[name].finished:.2f} stated"


def partner_faults(pattern):
    """Every sewn edge reaches the edges across from it, and they reach back; every seam's edges belong to a piece."""
    holder = holders(pattern)
    for seam in pattern.seams:
        for edge in itertools.chain(*seam.sides):
            if id(edge) not in holder or edge.seam is not seam or not edge.partner:
                yield f"{seam.name}: {edge.name} does not know its seam"
            elif any(not any(back is edge for back in across.partner) for across in edge.partner):
                yield f"{seam.name}: from {edge.name} the way across does not lead back"
    sewn = {id(edge) for seam in pattern.seams for side in seam.sides for edge in side}
    for piece in pattern.pieces:
        for edge in piece.edges:
            if (edge.seam is not None) != (id(edge) in sewn):
                yield f"{piece.name}: {edge.name} names a seam that does not sew it"


def _centre(shape):
    return f"({shape.centroid.x:.1f}, {shape.centroid.y:.1f})"


PROMISES = {name.removesuffix("_faults"): function for name, function in list(globals().items()) if name.endswith("_faults")}


def faults(pattern, but=()):
    """Every sentence in which a pattern breaks a promise; the promises named in `but` are left aside."""
    return [f"{name}: {said}" for name, check in PROMISES.items() if name not in but for said in check(pattern)]
