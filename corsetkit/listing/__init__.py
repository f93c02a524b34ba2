"""Lists for spreadsheets and cutting rooms: everything to cut and to buy, and every seam with its two sides.

`write_pieces(finished, path, ...)` in `pieces.py`, `write_seams(finished, path, ...)` in `seams.py`; `table.py` is how both
are written.
"""
