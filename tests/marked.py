"""
Venues with lines whose every word is a mark that nothing else in the venue says: a single byte of
one tells where it got out.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from pydantic.fields import FieldInfo

from builder.house_only.sealing import holds_free_text
from builder.pipeline import Venue, venue_of
from builder.reading.house_only import hidden_within
from builder.reading.references import definition, records_within
from builder.reading.written import Confirmation, DepartmentFile, Line, RefersTo, Written
from builder.stock.edits import Set, edited

MARK = "Zqxj"
Edits = dict[str, list[Set]]
Chosen = Sequence[tuple[str, Line]]
"""Lines with the files that they stand in."""


@dataclass(frozen=True, slots=True)
class Marked:
    """
    A venue with some lines marked that are told but not for visitors, and the same with those lines
    for the house only.
    """

    told: Venue
    hidden: Venue


def longest_list(texts: Mapping[str, str], photos: Mapping[str, bytes]) -> int:
    """How many lines the longest list of a venue has, counting those that may be hidden."""
    numbers = [line.path_in_file[-1] for _, line in open_lines(venue_of(texts, photos))]
    return max(number + 1 for number in numbers if isinstance(number, int))


def marked(texts: Mapping[str, str], photos: Mapping[str, bytes], number: int) -> Marked:
    """A venue with line ``number`` of every list marked."""
    venue = venue_of(texts, photos)
    chosen = [each for each in open_lines(venue) if each[1].path_in_file[-1] == number]
    terms = all_set(chosen, "terms", "not for visitors")
    told = written(texts, joined(marks(venue, chosen), terms))
    hidden = written(told, all_set(chosen, "house_only", "yes"))
    return Marked(venue_of(told, photos), venue_of(hidden, photos))


def open_lines(venue: Venue) -> Iterator[tuple[str, Line]]:
    """Every line of a venue that may be for the house only and is not."""
    for key, file in venue.descriptions.items():
        hidden = {id(record) for record in hidden_within(file)}
        for record in records_within(file):
            if isinstance(record, Line) and not record.public_because and id(record) not in hidden:
                yield f"{key}.yml", record


def written(texts: Mapping[str, str], edits: Edits) -> dict[str, str]:
    """Texts with edits made."""
    return {**texts, **{file: edited(texts[file], file, keys) for file, keys in edits.items()}}


def joined(some: Edits, others: Edits) -> Edits:
    """Edits of files, and others of the same or other files."""
    return {file: [*some.get(file, []), *others.get(file, [])] for file in {**some, **others}}


def all_set(chosen: Chosen, key: str, value: str) -> Edits:
    """The edits that write one key on each line."""
    edits: Edits = {}
    for file, line in chosen:
        edits.setdefault(file, []).append(Set((*line.path_in_file, key), value))
    return edits


def marks(venue: Venue, chosen: Chosen) -> Edits:
    """The edits that put a mark in the place of every word of lines, and of who names them."""
    edits: Edits = {}
    names: dict[tuple[str, str], str] = {}
    records = {id(record): (file, record) for file, line in chosen for record in words_of(line)}
    for file, record in records.values():
        for name, field in type(record).model_fields.items():
            value = getattr(record, name)
            if takes_mark(name, field, value):
                mark = f"{MARK} {sum(map(len, edits.values()))}"
                bearer = definition(record)
                if bearer and bearer.name == value:
                    names[bearer.kind, bearer.name] = mark
                new = mark if isinstance(value, str) else [f"{mark} {part}" for part in "abcdef"]
                path = (*record.path_in_file, field.alias or name)
                edits.setdefault(file, []).append(Set(path, new))
    for key, description in venue.descriptions.items():
        edits = joined(edits, {f"{key}.yml": list(renamings(description, names))})
    return edits


def words_of(line: Line) -> Iterator[Written]:
    """The records of a line whose words can be marked: a confirmation quotes, so it stays."""
    return (each for each in records_within(line) if not isinstance(each, Confirmation))


def takes_mark(name: str, field: FieldInfo, value: object) -> bool:
    """Whether a mark can stand in the place of a value."""
    refers = any(isinstance(mark, RefersTo) for mark in field.metadata)
    if refers or name == "photo" or not holds_free_text(field.annotation):
        return False
    return isinstance(value, str) or (isinstance(value, tuple) and value != ())


def renamings(description: DepartmentFile, names: Mapping[tuple[str, str], str]) -> Iterator[Set]:
    """The edits that let a file name marked lines by their marks."""
    for record in records_within(description):
        for name, field in type(record).model_fields.items():
            value, path = getattr(record, name), (*record.path_in_file, field.alias or name)
            for mark in field.metadata:
                if isinstance(mark, RefersTo) and isinstance(value, str | tuple):
                    yield from renaming(value, path, mark.kind, names)


def renaming(
    value: str | tuple[str, ...],
    path: tuple[str | int, ...],
    kind: str,
    names: Mapping[tuple[str, str], str],
) -> Iterator[Set]:
    """The edits that let one value name marked lines by their marks."""
    if isinstance(value, str):
        if (kind, value) in names:
            yield Set(path, names[kind, value])
        return
    for number, part in enumerate(value):
        yield from renaming(part, (*path, number), kind, names)
