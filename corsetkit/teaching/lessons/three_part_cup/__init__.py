"""Lesson 06, the three-part cup."""
