"""Lesson 04, the darts."""
