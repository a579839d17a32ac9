"""An example of a key, from files in which it is written."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

import yaml

from builder.explaining.places import RIDER, Place, files
from builder.keys import Key
from builder.reading.nodes import compose
from builder.reading.quantities import Quantity

Examples = Sequence[tuple[str, object]]
"""What files hold in which keys are written, by the name of the file, the best first."""
LONGEST = 90
NOT_SHOWN = ("unknown", "none")
"""What may stand under most keys, and so shows of none what is its own."""


def examples_in(texts: Iterable[tuple[str, str]]) -> Examples:
    """What files hold, given as text by name."""
    return [(name, compose(text, name).data) for name, text in texts]


def example_of(alike: list[Place], examples: Examples) -> str:
    """
    A key as a file writes it; as its kind of quantity is written, where none of the files has it.

    Empty where neither is to be had.
    """
    key = alike[0].key
    for value in written(alike, examples):
        if value not in NOT_SHOWN:
            return line_of(key.name, value)
    kind = next(kinds_of(key), None)
    return line_of(key.name, kind.examples[0]) if kind else ""


def written(alike: Sequence[Place], examples: Examples) -> Iterator[object]:
    """All that files write under a key."""
    for place in alike:
        for name, data in examples:
            if name == place.file or (place.file == RIDER and name not in files()):
                yield from values_at(data, (*place.under, place.key.name))


def kinds_of(key: Key) -> Iterator[type[Quantity]]:
    """The kinds of quantity that a key takes."""
    waiting = [key.field.annotation]
    while waiting:
        part = waiting.pop(0)
        if isinstance(part, type) and issubclass(part, Quantity) and part.examples:
            yield part
        waiting += getattr(part, "__args__", ())


def values_at(data: object, path: tuple[str, ...]) -> Iterator[object]:
    """What stands at a path of keys, in any entry of the lists on the way."""
    if isinstance(data, list) and path:
        for entry in data:
            yield from values_at(entry, path)
    elif not path:
        yield data
    elif isinstance(data, dict) and path[0] in data:
        yield from values_at(data[path[0]], path[1:])


def line_of(key: str, value: object) -> str:
    """A key and its value on one line, of a list the first entry, of a group what fits."""
    first = value[:1] if isinstance(value, list) else [value]
    parts = list(first[0].items()) if first and isinstance(first[0], dict) else []
    while True:
        entry: object = dict(parts) if parts else (first[0] if first else "")
        line = flow({key: [entry] if isinstance(value, list) else entry})
        if len(line) <= LONGEST or len(parts) < 2:
            return line
        del parts[-1]


class PlainDumper(yaml.SafeDumper):
    """Writes text as an author does, with quotes only where the text would be read as another."""

    yaml_implicit_resolvers: dict[str, list[tuple[str, re.Pattern[str]]]] = {}  # noqa: RUF012 PyYAML's


def flow(data: Mapping[str, object]) -> str:
    """A key and its value as YAML on one line, without the outermost braces."""
    text: str = yaml.dump(
        dict(data),
        Dumper=PlainDumper,
        default_flow_style=True,
        width=float("inf"),
        allow_unicode=True,
        sort_keys=False,
    )
    return text.strip()[1:-1]
