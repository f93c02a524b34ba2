"""Lesson 07, the back."""
