"""How the block shares the girths: bust between front and back, and what bust has more than waist between seams and darts."""

FRONT_ARM_SHARE = 0.6
"""Of the girth under the arm the front takes three fifths: course convention."""
SIDE_LIMIT = 0.5
"""To the wearer the side seams take no more at the waist than this share of what bust has more than underbust, so that
the darts have something left to take at the underbust: course convention."""


def shares_of_bust(measurements, style):
    """The widths at the bust of half the front and half the back, cm.

    By the guides half each. To the wearer: what the across widths leave of half the girth lies under the
    arm, and the front takes three fifths of it, the back two (course convention).
    """
    half = (measurements.bust_girth + style.bust_ease) / 2
    if not style.to_the_wearer:
        return half / 2, half / 2
    front, back = measurements.across_front_width / 2, measurements.across_back_width / 2
    under_arm = half - front - back
    return front + FRONT_ARM_SHARE * under_arm, back + (1 - FRONT_ARM_SHARE) * under_arm


def shares_of_waist(measurements, style):
    """What each side seam, the front dart and the back dart take at the waist, cm, on the half pattern.

    The side seam takes its share from front and back alike. Where bust has nothing more than waist, the
    darts take nothing and the side seams slant out.
    """
    surplus = (measurements.bust_girth + style.bust_ease - measurements.waist_girth - style.waist_ease) / 2
    if surplus <= 0:
        return surplus / 2, 0.0, 0.0
    side, back = style.waist_side_share * surplus, style.waist_back_share * surplus
    if style.to_the_wearer:
        side = min(side, SIDE_LIMIT * measurements.bust_minus_underbust / 2)
    return side / 2, surplus - side - back, back
