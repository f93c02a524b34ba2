"""How a finished pattern is sewn, from the toile to the first lacing: as data, and in words.

`sewing_order(finished)` in `text.py` is the one call; `write_sewing(finished, path, ...)` there puts it in a file.
The order of work is common practice, no source; the words are our own, and stand in `words/sewing.words.md`.
"""
