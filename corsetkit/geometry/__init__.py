"""Points, moves, curves, paths, roots and polygons: the geometry of drafting, knowing nothing of corsets.

Points are complex numbers, `x + yj`, in centimetres, x to the right and y up; angles are degrees.
"""
