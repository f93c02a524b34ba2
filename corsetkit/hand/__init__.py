"""Each step of the draft as marks and instructions for a hand with tape, ruler, compass and tracing paper.

One module a step, of the same name: it works the lengths out from the step's value, and the words come after.
"""
