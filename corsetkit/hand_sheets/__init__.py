"""The draft by hand, printed: for each step the drawing so far, and under it what the hand does, to be ticked off.

`write_hand_sheets(pattern, path, ...)` in `write.py` is the one call.
"""
