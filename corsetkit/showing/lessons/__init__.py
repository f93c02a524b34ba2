"""Drawings that single lessons show: made from steps, pattern or finished pieces, named after what is seen."""
