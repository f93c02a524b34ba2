"""The pattern finished for cutting: allowances, notches, layers, walked seams, and the bill of what has to be bought.

`finish(pattern, choices)` in `finished.py` is the one call; `bill(finished)` in `bill.py` lists what it needs.
"""
