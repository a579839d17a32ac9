"""
The descriptions of one space: its own files, with what beside ``house.yml`` is of it or of all.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from builder.reading.absent import Absent
from builder.reading.references import spelling
from builder.reading.written import DepartmentFile, InSpaces, Line

Descriptions = Mapping[str, DepartmentFile]


def of_space(shared: Descriptions, own: Descriptions, name: str) -> dict[str, DepartmentFile]:
    """The descriptions of a space by department: what all share first, then its own."""
    found: dict[str, DepartmentFile] = {}
    for key in dict.fromkeys((*shared, *own)):
        if key in shared and key in own:
            found[key] = joined(in_space(shared[key], name), own[key])
        else:
            found[key] = own[key] if key in own else in_space(shared[key], name)
    return found


def of_the_house(file: DepartmentFile) -> DepartmentFile:
    """A file with what is of the whole house, and of no space."""
    return filtered(file, lambda line: not line.spaces)


def in_space(file: DepartmentFile, name: str) -> DepartmentFile:
    """A file with what is of the whole house or of a space; itself if all is."""
    return filtered(file, lambda line: not line.spaces or named(name, line.spaces))


def named(name: str, spaces: tuple[str, ...]) -> bool:
    """Whether a list of spaces names one."""
    return spelling(name) in map(spelling, spaces)


def filtered(file: DepartmentFile, keeps: Any) -> DepartmentFile:
    """A file without the lines of spaces that are not kept; itself if all are."""
    kept: dict[str, Any] = {}
    for key in type(file).model_fields:
        value = getattr(file, key)
        if isinstance(value, tuple):
            lines = tuple(line for line in value if is_kept(line, keeps))
            if len(lines) < len(value):
                kept[key] = lines or nothing_left(file, key)
    return file.model_copy(update=kept) if kept else file


def is_kept(line: object, keeps: Any) -> bool:
    """Whether a line stays: one that can be of no space alone does."""
    return not isinstance(line, InSpaces) or keeps(line)


def nothing_left(file: DepartmentFile, key: str) -> Any:
    """A list of which nothing is left: the house has said so for others, and nothing for this."""
    field = type(file).model_fields[key]
    return Absent.NOT_STATED if isinstance(field.default, Absent) else ()


def joined(shared: DepartmentFile, own: DepartmentFile) -> DepartmentFile:
    """
    Two files of one department as one: lists one after the other, of anything else what the space
    says, else what all share.
    """
    update: dict[str, Any] = {}
    for key in type(own).model_fields:
        one, other = getattr(shared, key), getattr(own, key)
        if isinstance(one, tuple) and isinstance(other, tuple):
            update[key] = (*one, *(behind(line, len(one)) for line in other))
        elif other is Absent.UNKNOWN or (one is Absent.UNKNOWN and isinstance(other, tuple)):
            update[key] = Absent.UNKNOWN
        elif key not in own.model_fields_set or other is Absent.NOT_STATED:
            update[key] = one
    if shared.note and own.note:
        update["note"] = f"{shared.note} {own.note}"
    found = own.model_copy(update=update)
    said = (own.model_fields_set | shared.model_fields_set) & set(type(own).model_fields)
    found.__pydantic_fields_set__ = said
    found._places = {**dict(places_taken(shared, update)), **own._places}
    found._unknown = {**shared._unknown, **own._unknown}
    return found


def places_taken(shared: DepartmentFile, update: Mapping[str, Any]) -> Iterator[tuple[Any, Any]]:
    """Where the keys stand that are taken from what all share, and are no lists."""
    taken = {
        field.alias or key
        for key, field in type(shared).model_fields.items()
        if key in update and not isinstance(update[key], tuple)
    }
    for path, where in shared._places.items():
        if path and path[0] in taken:
            yield path, where


def behind(line: object, count: int) -> object:
    """A line that stands behind some others, so that its number in the list is its own."""
    if not isinstance(line, Line) or count == 0:
        return line
    copy = line.model_copy()
    copy._behind = line._behind + count
    return copy
