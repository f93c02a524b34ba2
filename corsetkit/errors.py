"""The one exception of the package with its kinds, and how a sentence stands on a page by itself."""


class CorsetkitError(ValueError):
    """A mistake a user can make, told in one sentence.

    The message is one line: which field, what was given, what is allowed and, where the usual
    mistake is known, the remedy. Nothing half-written is left behind when it is raised.
    """


class NoSuchName(CorsetkitError, KeyError):
    """A name under which there is nothing, with the names that there are; a KeyError too, for it is met as `[name]`."""

    __str__ = BaseException.__str__  # A KeyError's own puts quotes around the sentence.


def sentence(text: str) -> str:
    """`text` with a capital in front and a full stop behind."""
    text = text[:1].upper() + text[1:]
    return text if text.endswith((".", "!", "?")) else f"{text}."
