"""The steps of the draft, one module a lesson, in the order in which they are drawn.

Each is a pure function from frozen values to a frozen value; each value can be taken on its own.
"""

ORDER = ("block", "underbust", "overbust", "darts", "two_part_cup", "three_part_cup", "back")
