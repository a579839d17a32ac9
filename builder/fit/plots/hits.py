"""What was found about one rectangle of a stage plot."""

from builder.fit.notes import set_notes
from builder.fit.plots.records import Hit
from builder.fit.records import Fact, Item, Value, Word
from builder.fit.verdicts import ASK, NOTED, SHORT, fact_of
from builder.formulas.polygons import Box

SET = "set"
"""The sort of what is found where the house sets a value for a rectangle."""


def short_hit(
    sort: str,
    words: str,
    by: float,
    fact: Fact | None,
    *,
    box: Box | None = None,
    measure: str = "length",
    limit: float = 0.0,
) -> Hit:
    """Something short, by how much in which measure, with the extent of what is in the way."""
    return {
        "word": SHORT,
        "sort": sort,
        "words": words,
        "by": by,
        "measure": measure,
        "question": "",
        "fact": fact,
        "box": box,
        "limit": limit,
    }


def asked_hit(sort: str, words: str, question: str, fact: Fact | None = None) -> Hit:
    """Something that nobody has said, with the question."""
    return {**plain_hit(ASK, sort, words, fact), "question": question}


def noted_hit(sort: str, words: str) -> Hit:
    """Something to know."""
    return plain_hit(NOTED, sort, words, None)


def set_hits(value: Value | None, item: Item, kind: str) -> list[Hit]:
    """To what the house sets what a rectangle passes, where it chooses that."""
    if value is None:
        return []
    notes = set_notes(item, value, kind)
    return [plain_hit(NOTED, SET, words, fact_of(value, item)) for words in notes]


def plain_hit(word: Word, sort: str, words: str, fact: Fact | None) -> Hit:
    """Something found that has no amount."""
    return {
        "word": word,
        "sort": sort,
        "words": words,
        "by": 0.0,
        "measure": "length",
        "question": "",
        "fact": fact,
        "box": None,
        "limit": 0.0,
    }


def of_word(hits: list[Hit], word: Word) -> list[Hit]:
    """Those of one word, in order."""
    return [hit for hit in hits if hit["word"] == word]


def worst_word(hits: list[Hit]) -> Word | None:
    """The worst of them; None where nothing speaks against it."""
    words = [hit["word"] for hit in hits]
    if SHORT in words:
        return SHORT
    if ASK in words:
        return ASK
    return NOTED if NOTED in words else None
