"""Phrases that drawings and tables of the power page share."""

from builder.layout import STANDING_WORDS
from builder.pack import Fact, Item, Standing

PHASES = ("L1", "L2", "L3")


def ampere_words(item: Item) -> str:
    """What is free on each phase of a node, in words."""
    free = [
        f"{phase} {figure.value.text}"
        for phase in PHASES
        if (figure := item.figure(f"free.{phase}")) and figure.value
    ]
    return ", ".join(free) if free else "not known"


def plain_words(fact: Fact | None, label: str) -> str:
    """
    A fact in plain words, in both unit systems where there are two, or which kind of absence it is.
    """
    if fact is None or fact.value is None:
        return f"{label} {STANDING_WORDS[fact.standing if fact else Standing.NOT_STATED]}"
    return f"{fact.value.text} ({fact.value.also})" if fact.value.also else fact.value.text
