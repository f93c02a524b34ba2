"""The finished pattern for other programs and for cutting rooms: SVG in millimetres, and DXF.

`svg_mm(finished)` and `write_svg` in `svg_mm.py`, `write_dxf(finished, path, ...)` in `dxf.py`.
"""
