"""Lesson 05, the two-part cup."""
