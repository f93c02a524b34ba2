"""The lessons' code: a folder a lesson, named by the lesson's word; lesson.py has its cells,
the rest is what only it shows."""
