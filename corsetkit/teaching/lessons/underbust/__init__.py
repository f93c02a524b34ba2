"""Lesson 02, the underbust."""
