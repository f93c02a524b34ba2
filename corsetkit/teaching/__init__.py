"""Sliders, forms, and the text of the lessons made into notebooks."""

from importlib import import_module


def lesson(name: str):
    """The lesson of that name, such as "00_measuring"; each of its methods shows one cell."""
    word = name.partition("_")[2]
    return import_module(f"corsetkit.teaching.lessons.{word}.lesson").LESSON
