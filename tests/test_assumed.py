"""What the program counts with where a house writes nothing is told as assumed, or not told."""

from collections.abc import Iterator

import pytest
from pydantic.fields import FieldInfo

from builder.layout import shown_fact
from builder.pack import Fact, Standing
from builder.pipeline import pack_of, venue_of
from builder.reading.absent import Absent
from builder.reading.fields import mark_of
from builder.reading.written import Assumed, Written
from builder.registry import DEPARTMENTS
from builder.stating import QUALIFIERS
from tests.sweep import VENUES, folder

SAYS_NOTHING = {
    ("House", "language"): "it tells how the files are written, and nothing of the house",
    ("HungThing", "count"): "a line without a count is one thing",
    ("Riser", "count"): "a line without a count is one thing",
}
"""Defaults that say nothing about a house, each with the reason."""


def kinds_within(kind: type[Written], seen: set[type[Written]]) -> Iterator[type[Written]]:
    """A kind of record and all kinds that stand within it."""
    if kind in seen:
        return
    seen.add(kind)
    yield kind
    for field in kind.model_fields.values():
        for inner in records_in(field.annotation):
            yield from kinds_within(inner, seen)


def records_in(annotation: object) -> Iterator[type[Written]]:
    """The kinds of record that an annotation names."""
    if isinstance(annotation, type) and issubclass(annotation, Written):
        yield annotation
    for part in getattr(annotation, "__args__", ()):
        yield from records_in(part)


def counts_by_default(name: str, field: FieldInfo) -> bool:
    """Whether a key that nobody writes has a value all the same."""
    return (
        name not in QUALIFIERS
        and not field.is_required()
        and field.default is not None
        and not isinstance(field.default, Absent)
        and field.default != ()
    )


def test_every_key_that_counts_unwritten_says_that_it_is_assumed_or_says_nothing() -> None:
    seen: set[type[Written]] = set()
    kinds = [kind for each in DEPARTMENTS for kind in kinds_within(each.description, seen)]
    bare = [
        (kind.__name__, name)
        for kind in kinds
        for name, field in kind.model_fields.items()
        if counts_by_default(name, field) and mark_of(field, Assumed) is None
    ]
    assert set(bare) - set(SAYS_NOTHING) == set()


def facts_of(venue: str) -> list[Fact]:
    """Every fact of a venue's pack."""
    there = folder(venue)
    pack = pack_of(venue_of(there.texts, there.photos))
    return [fact for item in pack.items() for fact in item.facts]


@pytest.mark.parametrize("venue", VENUES)
def test_what_is_assumed_has_no_line_in_a_file_and_a_reason(venue: str) -> None:
    for fact in facts_of(venue):
        if fact.standing is Standing.ASSUMED:
            assert (fact.place, bool(fact.note), bool(fact.value)) == (None, True, True)


def test_a_page_says_what_is_assumed_beside_the_value() -> None:
    assumed = [fact for fact in facts_of("demo") if fact.standing is Standing.ASSUMED]
    metal = next(fact for fact in assumed if fact.key.endswith(".metal"))
    shown = "".join(str(part) for part in shown_fact(metal))
    assert "copper" in shown
    assert "assumed: the usual" in shown
