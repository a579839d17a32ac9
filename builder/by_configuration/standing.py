"""The descriptions of a venue with the lines that are there in a configuration."""

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from typing import Any

from builder.reading.absent import Absent
from builder.reading.references import spelling
from builder.reading.written import DepartmentFile, Movable, NamesSome, RefersTo, Written

Descriptions = Mapping[str, DepartmentFile]


@dataclass(frozen=True, slots=True)
class Standing:
    """The configurations in which the same lines are there, and the descriptions with those."""

    configurations: tuple[str, ...]
    descriptions: Descriptions


def standings(descriptions: Descriptions, names: Sequence[str]) -> list[Standing]:
    """
    What is there in each configuration, the usual one first; those that have the same lines
    together. One without a configuration where no line that figures count with says any.
    """
    if not names or not any(moving(descriptions)):
        return [Standing((), descriptions)]
    found: list[Standing] = []
    for name in names:
        there = there_in(descriptions, name)
        like = next((each for each in found if each.descriptions == there), None)
        if like is None:
            found.append(Standing((name,), there))
        else:
            found[found.index(like)] = Standing((*like.configurations, name), there)
    return found


def there_in(descriptions: Descriptions, name: str) -> Descriptions:
    """The descriptions with what is there in a configuration, and no list naming what is not."""
    gone = {
        (line.defines, spelling(line.name))
        for line in moving(descriptions)
        if not is_there(line, name) and hasattr(line, "name")
    }
    left = {key: standing_in(file, name) for key, file in descriptions.items()}
    return {key: without_names(file, gone) for key, file in left.items()} if gone else left


def without_names(file: DepartmentFile, gone: Set[tuple[str, str]]) -> DepartmentFile:
    """A file whose lines name nothing in their lists that is not there; itself if none did."""
    changed: dict[str, Any] = {}
    for key, lines in lists_of(file):
        fewer = tuple(
            line_without(line, gone) if isinstance(line, Written) else line for line in lines
        )
        if any(one is not other for one, other in zip(lines, fewer, strict=True)):
            changed[key] = fewer
    return file.model_copy(update=changed) if changed else file


def line_without(line: Written, gone: Set[tuple[str, str]]) -> Written:
    """A line whose lists of names name nothing that is not there; itself if they did not."""
    changed: dict[str, Any] = {}
    for key, field in type(line).model_fields.items():
        names, kinds = getattr(line, key), kinds_named(field.metadata)
        if kinds and isinstance(names, tuple):
            kept = tuple(
                name for name in names if all((kind, spelling(name)) not in gone for kind in kinds)
            )
            if len(kept) < len(names):
                changed[key] = kept
    return line.model_copy(update=changed) if changed else line


def kinds_named(marks: Sequence[object]) -> tuple[str, ...]:
    """The kinds of things that a field with these marks names."""
    found: list[tuple[str, ...]] = [(mark.kind,) for mark in marks if isinstance(mark, RefersTo)]
    found += [mark.kinds for mark in marks if isinstance(mark, NamesSome)]
    return tuple(kind for kinds in found for kind in kinds)


def moving(descriptions: Descriptions) -> Iterator[Movable]:
    """The lines that are not there in every configuration and that figures count with."""
    for file in descriptions.values():
        for _, lines in lists_of(file):
            yield from (line for line in lines if isinstance(line, Movable) and line.configurations)


def lists_of(file: DepartmentFile) -> Iterator[tuple[str, tuple[Any, ...]]]:
    """The lists of a file by their keys."""
    for key in type(file).model_fields:
        value = getattr(file, key)
        if isinstance(value, tuple):
            yield key, value


def standing_in(file: DepartmentFile, name: str) -> DepartmentFile:
    """
    A file without the lines that are there in other configurations only, and with those in their
    place that take another's; itself if all are there.
    """
    kept: dict[str, Any] = {}
    for key, lines in lists_of(file):
        there = tuple(line for line in lines if is_there(line, name))
        instead = [line for line in there if isinstance(line, Movable) and line.instead_of]
        if len(there) < len(lines):
            kept[key] = there or none_left(file, key)
        if instead:
            kept[instead[0].instead_of] = instead[0]
            kept[key] = ()
    return file.model_copy(update=kept) if kept else file


def none_left(file: DepartmentFile, key: str) -> Any:
    """A list of which nothing is there: none, where the key may say so."""
    field = type(file).model_fields[key]
    return Absent.NONE if isinstance(field.default, Absent) else ()


def is_there(line: object, name: str) -> bool:
    """Whether a line is there in a configuration."""
    if not isinstance(line, Movable) or not line.configurations:
        return True
    return spelling(name) in map(spelling, line.configurations)
