"""What is drawn for a step, for the pattern and for one piece: a drawing protocol, and the canvases behind it."""
