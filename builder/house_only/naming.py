"""
Public words that name a line for the house only: a note, a panel, an entry of the log.

Nobody but the house can mend that: a word may be there for another reason, so none is taken out.
"""

import re
from collections.abc import Iterator, Set

from builder.confirming import odd
from builder.house_only.logged import hidden_names
from builder.house_only.sealing import Descriptions, holds_free_text
from builder.overview.log import Log
from builder.pack import Finding
from builder.reading.fields import values_of
from builder.reading.house_only import KEY, hidden_within, says_house_only
from builder.reading.in_part import Between
from builder.reading.problems import Where, shortened
from builder.reading.references import name_of, records_within
from builder.reading.written import RefersTo, Written

SHORTEST = 4
"""Shorter names, such as A or R1, stand in words of any kind."""
NO_WORD_BEFORE, NO_WORD_BEHIND = r"(?<!\w)", r"(?!\w)"
ALSO_SECRET = ("phone", "mail")
Said = tuple[str, Where]
"""Public words and where they stand."""


def told_in_public(descriptions: Descriptions, log: Log | None) -> tuple[Finding, ...]:
    """A finding for each line for the house only that public words name."""
    said = list(public_words(descriptions, log))
    alone = hidden_names(descriptions).alone
    return tuple(
        finding
        for file in descriptions.values()
        for record in hidden_within(file)
        if says_house_only(record)
        for secret in secrets_of(record, alone)
        for finding in found_in(secret, record, said)
    )


def secrets_of(record: Written, alone: Set[str]) -> Iterator[str]:
    """What public words must not say of a hidden line: its name, unless public lines share it."""
    name = name_of(record)
    if name in alone and len(name) >= SHORTEST:
        yield name
    for key in ALSO_SECRET:
        value = getattr(record, key, None)
        if isinstance(value, str):
            yield value


def public_words(descriptions: Descriptions, log: Log | None) -> Iterator[Said]:
    """All words of the venue that are published as they were written."""
    for file in descriptions.values():
        hidden = {id(record) for record in hidden_within(file)}
        for record in records_within(file):
            if id(record) not in hidden:
                yield from words_of(record)
    for entry in log.entries if log else ():
        if not entry.house_only:
            for record in records_within(entry):
                yield from words_of(record)


def words_of(record: Written) -> Iterator[Said]:
    """The words of one record, without the names that it refers to."""
    for value in values_of(record):
        refers = any(isinstance(mark, RefersTo) for mark in value.field.metadata)
        if isinstance(value.value, str) and not refers and holds_free_text(value.field.annotation):
            yield value.value, value.where
    for key, written in record.written():
        if isinstance(written, Between):
            yield from ((saying.by, record.where(key)) for saying in written.sayings)


def found_in(secret: str, record: Written, said: list[Said]) -> Iterator[Finding]:
    """The finding of a hidden line whose name, telephone or mail stands in public words."""
    named = re.compile("".join((NO_WORD_BEFORE, re.escape(secret), NO_WORD_BEHIND)), re.IGNORECASE)
    places = [where for words, where in said if named.search(words)]
    if not places:
        return
    more = f" and {len(places) - 1} more" if len(places) > 1 else ""
    yield odd(
        "house-only-told",
        f"{shortened(secret)} is of a line for the house only, and words that are published tell"
        f" it, at {places[0]}{more}.",
        record.where(KEY),
        question=" Can they be said in other words?",
        asks_about=secret,
    )
