"""Lesson 08, finishing."""
