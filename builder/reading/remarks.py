"""What a check of the text says."""

from dataclasses import dataclass

from builder.reading.problems import Where

LONGEST_EXCERPT = 40


@dataclass(frozen=True, slots=True)
class Remark:
    """
    Something to look at again in the text. ``level`` is caution or note; ``asks_about`` is the
    value that may be confirmed, empty where none may; ``question`` is the end of the sentence that
    asks what else it could be.
    """

    level: str
    code: str
    sentence: str
    where: Where
    asks_about: str = ""
    question: str = ""


def spaced(key: str) -> str:
    """A key as words that begin a sentence."""
    return key.replace("_", " ").capitalize()


def excerpt(text: str) -> str:
    """As much of a text as a confirmation need quote."""
    return text if len(text) <= LONGEST_EXCERPT else f"{text[: LONGEST_EXCERPT - 1].rstrip()}…"
