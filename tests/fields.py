"""The free texts of a venue's files, and the same files with other texts in their places."""

from collections.abc import Callable, Iterator, Mapping
from copy import deepcopy
from typing import Any, get_args

import yaml
from pydantic.fields import FieldInfo

from builder.overview.log import Log
from builder.reading.nodes import compose
from builder.reading.reader import read
from builder.reading.references import records_within
from builder.reading.words import ReadBy, name, prose
from builder.registry import DEPARTMENTS

Spot = tuple[str, tuple[str | int, ...]]
KINDS = {"log.yml": Log, **{f"{each.key}.yml": each.description for each in DEPARTMENTS}}


def is_free(field: FieldInfo) -> bool:
    """Whether a field holds a name or words, and no choice from a list."""
    marks = [*field.metadata, *marks_within(field.annotation)]
    return any(isinstance(mark, ReadBy) and mark.read in (name, prose) for mark in marks)


def marks_within(annotation: Any) -> Iterator[Any]:
    """Every mark of an annotation, however deep."""
    yield from getattr(annotation, "__metadata__", ())
    for part in get_args(annotation):
        yield from marks_within(part)


def free_texts(texts: Mapping[str, str]) -> dict[Spot, str]:
    """Each free text of a venue by file and path, but for names of photos."""
    found: dict[Spot, str] = {}
    for file, text in texts.items():
        for record in records_within(read(text, file=file, kind=KINDS[file])):
            for key, field in type(record).model_fields.items():
                spoken = field.alias or key
                value = getattr(record, key)
                path = (*record.path_in_file, spoken)
                if not is_free(field) or spoken == "photo":
                    continue
                if isinstance(value, str):
                    found[file, path] = value
                elif isinstance(value, tuple):
                    for index, part in enumerate(value):
                        if isinstance(part, str):
                            found[file, (*path, index)] = part
    return found


def with_texts(
    texts: Mapping[str, str], spots: Mapping[Spot, str], other: Callable[[str], str]
) -> dict[str, str]:
    """The files with another text at each of some spots; the same text is changed alike."""
    data = {file: deepcopy(compose(text, file).data) for file, text in texts.items()}
    for (file, path), text in spots.items():
        within: Any = data[file]
        for step in path[:-1]:
            # What may be one or a list has its places as in a list.
            is_the_only_one = step == 0 and isinstance(within, dict)
            within = within if is_the_only_one else within[step]
        if isinstance(within[path[-1]], str):
            within[path[-1]] = other(text)
    return {
        file: yaml.safe_dump(value, allow_unicode=True, sort_keys=False, width=10_000)
        for file, value in data.items()
    }
