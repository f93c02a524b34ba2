"""The finished pattern on paper: pages for a printer at home, one sheet or a roll at a copy shop, or piece by piece.

`write_print(finished, path, ...)` in `write.py` is the one call; `scale_sentence` in `scale.py` says what the printed test
square tells.
"""
