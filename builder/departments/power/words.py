"""Phrases that both drawings of the power page use."""

from builder.pack import Item

PHASES = ("L1", "L2", "L3")


def ampere_words(item: Item) -> str:
    """What is free on each phase of a node, in words."""
    free = [f"{phase} {figure.value.text}" for phase in PHASES if (figure := item.figure(f"free.{phase}")) and figure.value]
    return ", ".join(free) if free else "not known"
