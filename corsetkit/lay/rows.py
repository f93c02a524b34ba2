"""The plain lay, row by row: every piece in a box of its own, the longest first. Ours, and always valid."""

from dataclasses import dataclass, field


@dataclass
class _Row:
    """One row across the cloth: where its next piece begins, how high it is, and (template, left edge) of what is in it."""

    next: float
    height: float = 0.0
    held: list = field(default_factory=list)
    open: bool = True

    def takes(self, width, height, high):
        return self.next + width <= high + 1e-9 and (self.open or height <= self.height)

    def put(self, template, gap):
        left, bottom, right, top = template.box
        self.held.append((template, self.next - left, -bottom))
        self.next += right - left + gap
        self.height = max(self.height, top - bottom)


def rows(templates, cloth):
    """Each template as often as it is laid, as (template, degrees, step): nothing turned.

    At most one piece at the fold begins a row; the others follow by their length in the first row that has room. A row
    grows only for the first of them.
    """
    each = sorted((one for one in templates for _ in range(one.count)), key=lambda one: one.box[1] - one.box[3])
    begin = cloth.gap / 2 if cloth.folded else cloth.low
    made = []
    for one in (one for one in each if one.at_fold):
        row = _Row(0.0)
        row.put(one, cloth.gap)
        made.append(row)
    for one in (one for one in each if not one.at_fold):
        left, bottom, right, top = one.box
        row = next((row for row in made if row.takes(right - left, top - bottom, cloth.high)), None)
        if row is None:
            row = _Row(begin)
            made.append(row)
        row.put(one, cloth.gap)
        row.open = False
    return tuple(_stacked(made, cloth.gap))


def _stacked(made, gap):
    y = 0.0
    for row in made:
        for template, x, rise in row.held:
            # A template at the fold keeps its fold on nought: its box begins there.
            yield template, 0.0, complex(x, y + rise)
        y += row.height + gap
