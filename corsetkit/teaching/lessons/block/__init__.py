"""Lesson 01, the block."""
