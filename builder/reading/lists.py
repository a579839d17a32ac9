"""
How many entries a list may have: work grows with them, so each has an end, which is told. A few
must name one at least.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.reading.fields import mark_of
from builder.reading.nodes import spoken
from builder.reading.problems import Problem
from builder.reading.references import records_within
from builder.reading.written import Path, Written

MOST_ENTRIES = 1_000
"""The most of any list that says nothing else: more than a crew writes by hand."""
ADVICE = "describe fewer, and tell the rest in a note"


@dataclass(frozen=True, slots=True)
class AtMost:
    """Marks a list that has fewer entries at most than others, for each costs work."""

    entries: int


@dataclass(frozen=True, slots=True)
class AtLeastOne:
    """Marks a list that names one thing at least: the code where it names none, and the advice."""

    code: str
    advice: str


def empty_lists(description: Written) -> Iterator[Problem]:
    """Every list of a description that names nothing and has to."""
    for record in records_within(description):
        for name, field in type(record).model_fields.items():
            mark = mark_of(field, AtLeastOne)
            if mark is not None and not getattr(record, name):
                key = field.alias or name
                yield Problem(
                    record.where(key),
                    spoken((*record.path_in_file, key)),
                    "",
                    "names none",
                    mark.code,
                    mark.advice,
                )


def long_lists(description: Written) -> Iterator[Problem]:
    """Every list of a description that has too many entries."""
    for record in records_within(description):
        for name, field in type(record).model_fields.items():
            entries = getattr(record, name)
            mark = mark_of(field, AtMost)
            most = MOST_ENTRIES if mark is None else mark.entries
            if isinstance(entries, tuple) and len(entries) > most:
                yield too_many(record, (field.alias or name,), f"{len(entries):,} entries", most)


def too_many(record: Written, keys: Path, there: str, most: int, advice: str = ADVICE) -> Problem:
    """The problem with more of something than can be worked out."""
    return Problem(
        record.where(*keys),
        spoken((*record.path_in_file, *keys)),
        "",
        f"has {there}, and {most:,} is the most",
        "too-many",
        advice,
    )
