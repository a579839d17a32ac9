"""What was found about one rectangle of a stage plot."""

from typing import Any

from builder.fit.verdicts import ASK, NOTED, SHORT, Record


def hit(
    word: str,
    sort: str,
    words: str,
    *,
    by: float = 0.0,
    measure: str = "length",
    question: str = "",
    fact: Any = None,
    box: Any = None,
    limit: float = 0.0,
) -> Record:
    """
    One thing found: its word, what sort it is, by how much, and the extent of what is in the way.
    """
    return {
        "word": word,
        "sort": sort,
        "words": words,
        "by": by,
        "measure": measure,
        "question": question,
        "fact": fact,
        "box": box,
        "limit": limit,
    }


def of_word(hits: list[Record], word: str) -> list[Record]:
    """Those of one word, in order."""
    return [each for each in hits if each["word"] == word]


def worst(hits: list[Record]) -> str:
    """The worst of them; empty where nothing speaks against it."""
    for word in (SHORT, ASK, NOTED):
        if len(of_word(hits, word)) > 0:
            return word
    return ""
