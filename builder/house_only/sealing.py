"""
Descriptions as they are published: each line for the house only under a name that says nothing, and
without a word of its own.

Quantities stay, for such a line still weighs and draws. What refers to it refers to the new name.
It stands last in its list, so that no number of another line tells that there is one.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import count
from typing import Any, get_args

from pydantic.fields import FieldInfo

from builder.pack import Place
from builder.reading.house_only import NOT_FOR_VISITORS, hidden_within, says_house_only
from builder.reading.in_part import Between, disputed_words
from builder.reading.references import definition, records_within, spelling
from builder.reading.written import DepartmentFile, Line, RefersTo, Verification, Written
from builder.stating import place

HOUSE_ONLY = "for the house only"
THE_HOUSE = "the house"
"""Who checked a line for the house only, as it is published."""
Descriptions = Mapping[str, DepartmentFile]
NewNames = Mapping[tuple[str, str], str]
"""The name that says nothing, by kind of thing and real name."""


@dataclass(frozen=True, slots=True)
class Sealed:
    """
    What a venue publishes from: its descriptions, the names that say nothing, and the places of the
    venue's files that lines for the house only take.
    """

    descriptions: Descriptions
    names: frozenset[str]
    places: frozenset[Place]


def sealed(descriptions: Descriptions) -> Sealed:
    """The descriptions as they are published. A file without lines for the house only stays."""
    new_names = new_names_of(descriptions)
    return Sealed(
        {key: in_order(renamed(file, new_names)) for key, file in descriptions.items()},
        frozenset({HOUSE_ONLY, *new_names.values()}),
        frozenset(places_of(descriptions)),
    )


def for_the_house(descriptions: Descriptions) -> Descriptions:
    """The descriptions as the house itself reads them: what is hidden is not for visitors."""
    return {key: changed(file, not_for_visitors) for key, file in descriptions.items()}


def has_house_only(descriptions: Descriptions) -> bool:
    """Whether a venue has any line for the house only."""
    return any(says_house_only(record) for file in descriptions.values() for record in within(file))


def public_photos(photos: Mapping[str, bytes], descriptions: Descriptions) -> Mapping[str, bytes]:
    """The photos that no line for the house only shows, or a public line shows too."""
    hidden: set[str] = set()
    public: set[str] = set()
    for file in descriptions.values():
        secret = {id(record) for record in hidden_within(file)}
        for record in within(file):
            if isinstance(record, Line) and record.photo:
                (hidden if id(record) in secret else public).add(record.photo)
    return {name: photo for name, photo in photos.items() if name not in hidden - public}


def within(file: DepartmentFile) -> Iterator[Written]:
    """Every record of a file."""
    return records_within(file)


def new_names_of(descriptions: Descriptions) -> NewNames:
    """A name for each hidden thing that can be referred to, unlike any name in the venue."""
    defined = [
        bearer
        for file in descriptions.values()
        for record in within(file)
        if (bearer := definition(record))
    ]
    taken = {spelling(bearer.name) for bearer in defined}
    found: dict[tuple[str, str], str] = {}
    for file in descriptions.values():
        for record in hidden_within(file):
            if bearer := definition(record):
                used = {spelling(found[key]) for key in found if key[0] == bearer.kind}
                found[bearer.kind, bearer.name] = free_name(taken | used)
    return found


def free_name(taken: set[str]) -> str:
    """The first of the names that say nothing which nothing bears."""
    numbered = (HOUSE_ONLY if number == 1 else f"{HOUSE_ONLY} {number}" for number in count(1))
    return next(name for name in numbered if spelling(name) not in taken)


def places_of(descriptions: Descriptions) -> Iterator[Place]:
    """Every place of the venue's files within a line for the house only."""
    for file in descriptions.values():
        for record in within(file):
            if says_house_only(record):
                hidden = record.path_in_file
                for path, where in record.places_in_file.items():
                    spot = place(where)
                    if spot and path[: len(hidden)] == hidden:
                        yield spot


Change = Callable[[Written, FieldInfo, Any, bool], Any]
"""What a value of a record becomes, by its field and whether the record is hidden."""


def renamed(file: DepartmentFile, new_names: NewNames) -> DepartmentFile:
    """A file with hidden lines under their new names, and all that refers to them."""

    def neutral(record: Written, field: FieldInfo, value: Any, hidden: bool) -> Any:
        kinds = [mark.kind for mark in field.metadata if isinstance(mark, RefersTo)]
        if kinds:
            return in_each(value, lambda name: new_names.get((kinds[0], name), name))
        if not hidden:
            return value
        if isinstance(record, Line) and field is type(record).model_fields["confirmed"]:
            return ()
        if not holds_free_text(field.annotation):
            return without_sayers(value)
        if isinstance(record, Verification):
            return in_each(value, lambda _: THE_HOUSE)
        if (bearer := definition(record)) and value == bearer.name:
            return new_names[bearer.kind, bearer.name]
        if isinstance(value, str) and not field.is_required() and field.default is None:
            return None
        return in_each(value, lambda _: HOUSE_ONLY)

    return changed(file, neutral)


def not_for_visitors(record: Written, field: FieldInfo, value: Any, hidden: bool) -> Any:
    """The terms of a hidden line; every other value as it is."""
    is_terms = isinstance(record, Line) and field is type(record).model_fields["terms"]
    return NOT_FOR_VISITORS if hidden and is_terms else value


def without_sayers(value: Any) -> Any:
    """What is disputed, without who says what; anything else as it is."""
    if not isinstance(value, Between) or not value.sayings:
        return value
    sayings = tuple(replace(saying, by=HOUSE_ONLY, on="") for saying in value.sayings)
    return replace(value, value=disputed_words(sayings), sayings=sayings)


def in_each(value: Any, new: Callable[[str], str]) -> Any:
    """A text, or each text of a list, made new; anything else as it is."""
    if isinstance(value, tuple):
        return tuple(in_each(part, new) for part in value)
    return new(value) if isinstance(value, str) else value


def holds_free_text(annotation: object) -> bool:
    """Whether a field holds words that an author chooses, and not one of a list."""
    return annotation is str or any(holds_free_text(part) for part in get_args(annotation))


def changed(file: DepartmentFile, change: Change) -> DepartmentFile:
    """A file with its values changed; the same file where none is."""
    found = changed_record(file, change, False, None)
    if not isinstance(found, DepartmentFile):
        raise TypeError(f"found must be a DepartmentFile, got {type(found).__name__}")
    return found


def changed_record(
    record: Written, change: Change, hidden: bool, above: Verification | None
) -> Written:
    """
    A record with its values changed, and those within it; the same record where none is. ``above``
    is the changed check of what it stands in, None where none was changed.
    """
    hidden = hidden or says_house_only(record)
    update: dict[str, Any] = {}
    check = above
    for name, field in checks_first(record):
        value = getattr(record, name)
        new = changed_value(change(record, field, value, hidden), change, hidden, check)
        if new is not value and new != value:
            update[name] = new
            check = new if isinstance(new, Verification) else check
    if not update and above is None:
        return record
    copy = record.model_copy(update=update)
    if above is not None:
        copy._above = above
    return copy


def checks_first(record: Written) -> list[tuple[str, FieldInfo]]:
    """The fields of a record, its own check first: what stands in the record was checked so too."""
    return sorted(type(record).model_fields.items(), key=lambda named: named[0] != "verified")


def changed_value(value: Any, change: Change, hidden: bool, above: Verification | None) -> Any:
    """A value with the records within it changed."""
    if isinstance(value, Written):
        return changed_record(value, change, hidden, above)
    if isinstance(value, tuple):
        parts = tuple(changed_value(part, change, hidden, above) for part in value)
        same = all(new is old for new, old in zip(parts, value, strict=True))
        return value if same else parts
    return value


def in_order(file: DepartmentFile) -> DepartmentFile:
    """A file with the hidden lines of each list at its end."""
    update = {}
    for name in type(file).model_fields:
        value = getattr(file, name)
        if isinstance(value, tuple) and any(says_house_only(part) for part in value):
            update[name] = tuple(sorted(value, key=says_house_only))
    return file.model_copy(update=update) if update else file
