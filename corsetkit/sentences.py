"""Text as it stands on a page by itself."""


def sentence(text: str) -> str:
    """`text` with a capital in front and a full stop behind."""
    text = text[:1].upper() + text[1:]
    return text if text.endswith((".", "!", "?")) else f"{text}."
