"""Lesson 09, sewing."""
