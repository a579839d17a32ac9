"""
A line more whose name differs from its neighbour's in case and signs alone is a problem that is
told, or a line of its own; it never ends the build.
"""

from collections.abc import Iterator
from contextlib import suppress
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from builder.files import Folder, read_folder, with_photos
from builder.pipeline import document_of, pack_of, venue_of
from builder.reading.nodes import compose
from builder.reading.problems import Refused
from builder.render.markdown import render
from tests.laws import share

ROOT = Path(__file__).parents[1]
VENUES = ("venue", "tests/venues/quarry", "builder/starter")
NAMING = ("name", "connector", "by", "kind", "what", "model", "for", "role", "place")
Case = tuple[str, str, tuple[str | int, ...], str]


@cache
def folder(venue: str) -> Folder:
    """A venue's files."""
    return read_folder(ROOT / venue)


@cache
def data(venue: str) -> dict[str, Any]:
    """The same as plain data."""
    return {file: compose(text, file).data for file, text in folder(venue).texts.items()}


def lists(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Where lists of named lines, or of names, stand; of lists alike the first is looked into."""
    if isinstance(value, dict):
        for key, part in value.items():
            yield from lists(part, (*path, key))
    elif isinstance(value, list) and value:
        yield path
        yield from lists(value[0], (*path, 0))


def cases() -> Iterator[Case]:
    """Each list of each venue with each key that names its lines; no key for a list of names."""
    for venue in VENUES:
        for file, content in data(venue).items():
            for path in lists(content):
                first = at(content, path)[0]
                keys = [key for key in NAMING if key in first] if isinstance(first, dict) else [""]
                yield from ((venue, file, path, key) for key in keys)


def at(value: Any, path: tuple[str | int, ...]) -> Any:
    """A part of plain data."""
    for step in path:
        value = value[step]
    return value


def alike(value: Any) -> Any:
    """A name that differs in case and signs alone; anything else as it is."""
    return f"{value.swapcase()}!" if isinstance(value, str) else value


@pytest.mark.laws
@pytest.mark.parametrize("case", share(cases(), law="alike names never end a build", usually=2))
def test_a_name_alike_never_ends_the_build(case: Case) -> None:
    venue, file, path, key = case
    content = deepcopy(data(venue))
    lines = at(content[file], path)
    more = deepcopy(lines[0])
    lines.append({**more, key: alike(more[key])} if key else alike(more))
    texts = {
        name: yaml.safe_dump(each, allow_unicode=True, sort_keys=False, width=10_000)
        for name, each in content.items()
    }
    photos = folder(venue).photos
    with suppress(Refused):
        pack = pack_of(venue_of(texts, photos))
        keys = [item.key for item in pack.items()]
        assert len(keys) == len(set(keys))
        render(with_photos(document_of(pack), photos))
