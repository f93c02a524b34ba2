"""The cutting plan: pieces laid on cloth, as close as the grain, the fold and the scissors allow.

`items_of(finished, layer)` in `items.py` says what is laid, `plan(items, cloth)` in `planning.py` lays it.
"""
