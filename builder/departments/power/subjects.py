"""Which item of the pack a finding is about."""

from builder.departments.power.description import Board, Fed, Generator, Service, Supply
from builder.pack import Finding, Level
from builder.reading.references import spelling
from builder.stating import place


def kind_of(record: Supply | Generator | Fed) -> str:
    """The kind of item that a node becomes."""
    return {Supply: "supply", Generator: "generator", Service: "service", Board: "board"}[
        type(record)
    ]


def subject_of(record: Supply | Generator | Fed) -> str:
    """The key of a node's item."""
    return f"power.{kind_of(record)}.{spelling(record.name)}"


def told(
    level: Level, code: str, sentence: str, record: Supply | Generator | Fed, key: str = "name"
) -> Finding:
    """A finding on a node."""
    return Finding(level, code, sentence, subject_of(record), place(record.where(key)))
