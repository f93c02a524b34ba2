"""Lesson 00, measuring."""
