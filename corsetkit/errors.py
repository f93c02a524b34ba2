"""The one exception of the package."""


class CorsetkitError(ValueError):
    """A mistake a user can make, told in one sentence.

    The message is one line: which field, what was given, what is allowed and, where the usual
    mistake is known, the remedy. Nothing half-written is left behind when it is raised.
    """
