"""Where the underbust line lies: how far below the bust point its mark is set on this wearer.

Fitted, it lies where the fold under the breast was measured, or else where it usually lies for her bust and underbust.
"""

from corsetkit.errors import CorsetkitError
from corsetkit.measurements import Measurements
from corsetkit.plausible import FOLD_TO_WAIST, usual_fold
from corsetkit.style import Style
from corsetkit.units import say_both


def underbust_mark(m: Measurements, style: Style, height: float) -> tuple[float, tuple[str, ...]]:
    """The distance from bust point to underbust mark, cm, and a warning where it had to be moved.

    Args:
        m: the wearer's `Measurements`.
        style: reads underbust_mark by the guides, and by how much a fitting lowers the line.
        height: how far the bust point lies above the waist, cm.
    """
    if not style.to_the_wearer:
        radius = style.underbust_mark
    elif m.bust_point_to_fold is not None:
        radius = m.bust_point_to_fold
    else:
        radius = usual_fold(m.bust_minus_underbust)
    room = height - FOLD_TO_WAIST
    if room < 4.0:
        raise CorsetkitError(
            f"the bust point lies only {say_both(height)} above the waist (front waist length less "
            "neck to bust point), which leaves no room for an underbust line: measure both again"
        )
    if style.fitting.underbust_line:
        # A fitting moves the line from where it lay.
        radius = min(radius, room) + style.fitting.underbust_line
    if radius <= room:
        return radius, ()
    return room, (
        f"the underbust mark would lie {say_both(radius)} below the bust point, too near the waist; it is "
        f"drawn at {say_both(room)}",
    )
