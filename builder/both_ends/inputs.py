"""
The values of a venue that have two ends, in groups that are worked out together, and the
descriptions with such values put at their ends.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import product
from typing import Any

from builder.both_ends.one_way import FROM_NOTHING, ONE_WAY
from builder.reading.in_part import Between, amount_of, ends_of, like
from builder.reading.written import DepartmentFile, Written

Descriptions = Mapping[str, DepartmentFile]
Path = tuple[str | int, ...]
Group = tuple["Inexact", ...]
MOST_TOGETHER = 4
"""More values than these have too many corners: they are then parted by file, and by line."""
MOST_GROUPS = 8
"""More groups take longer than a crew waits; the figures of the others stay without two ends."""


@dataclass(frozen=True, slots=True)
class Inexact:
    """A value with two ends: in which file, where, and what is known of it."""

    file: str
    path: Path
    known: Between[Any]

    @property
    def department(self) -> str:
        """The department of its file, which may be one of another space."""
        return department_of(self.file)

    @property
    def line(self) -> Path:
        """The line of the file that it stands in."""
        return self.path[:2]


def department_of(file: str) -> str:
    """The department of a file by its key, with the space before it or without."""
    return file.rpartition("/")[2]


def inexact(descriptions: Descriptions) -> Iterator[Inexact]:
    """Every value with two ends that moves figures one way, in the order of the files."""
    for file, description in descriptions.items():
        department = department_of(file)
        for path, known in between_within(description, ()):
            keys = keys_of(path)
            if keys not in ONE_WAY.get(department, ()):
                continue
            whole = from_nothing(known) if keys in FROM_NOTHING.get(department, ()) else known
            if whole.least is not None and whole.most is not None:
                yield Inexact(file, path, whole)


def from_nothing(known: Between[Any]) -> Between[Any]:
    """What is known in part, from nothing up where nobody says what it is at least."""
    if known.least is not None or known.most is None:
        return known
    return replace(known, least=like(known.most, Fraction(0), down=True))


def between_within(value: object, path: Path) -> Iterator[tuple[Path, Between[Any]]]:
    """Every value that is known in part within a value, with the way to it."""
    if isinstance(value, Between):
        yield path, value
    elif isinstance(value, Written):
        for name in type(value).model_fields:
            yield from between_within(getattr(value, name), (*path, name))
    elif isinstance(value, tuple):
        for index, part in enumerate(value):
            yield from between_within(part, (*path, index))


def keys_of(path: Path) -> str:
    """The keys that a way goes by, without the places in lists."""
    return ".".join(step for step in path if isinstance(step, str))


def groups(values: Sequence[Inexact]) -> list[Group]:
    """
    The values in groups of few: all together, else by file, else by line. The values of another
    group stay as they are, so what one group gives is true by itself.
    """
    if not values:
        return []
    if len(values) <= MOST_TOGETHER:
        return [tuple(values)]
    found: list[Group] = []
    for file in dict.fromkeys(value.file for value in values):
        of_file = [value for value in values if value.file == file]
        if len(of_file) <= MOST_TOGETHER:
            found.append(tuple(of_file))
            continue
        for line in dict.fromkeys(value.line for value in of_file):
            of_line = tuple(value for value in of_file if value.line == line)
            found += [of_line] if len(of_line) <= MOST_TOGETHER else []
    return found[:MOST_GROUPS]


def corners(descriptions: Descriptions, group: Group) -> Iterator[Descriptions]:
    """The descriptions with the values of a group at their ends, in every combination."""
    for ends in product((0, 1), repeat=len(group)):
        found = dict(descriptions)
        for value, end in zip(group, ends, strict=True):
            amount = value.known.most if end else value.known.least
            found[value.file] = put(found[value.file], value.path, amount)
        yield found


def middle(descriptions: Descriptions, group: Group) -> Descriptions:
    """The descriptions with the values of a group in the middle between their ends."""
    found = dict(descriptions)
    for value in group:
        least, most = (Fraction(amount_of(end)) for end in ends_of(value.known))
        amount = like(value.known.least, (least + most) / 2, down=True)
        found[value.file] = put(found[value.file], value.path, amount)
    return found


def put(holder: Any, path: Path, amount: object) -> Any:
    """A record or list with another value at a path."""
    if not path:
        return amount
    step, rest = path[0], path[1:]
    if isinstance(step, int):
        return (*holder[:step], put(holder[step], rest, amount), *holder[step + 1 :])
    return holder.model_copy(update={step: put(getattr(holder, step), rest, amount)})
