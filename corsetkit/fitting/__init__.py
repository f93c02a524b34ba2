"""Fitting: from what is seen on the toile to the line that moves, and what that does to this wearer's pattern."""
