"""Lesson 03, the overbust."""
