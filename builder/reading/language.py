"""
Which language a venue is written in: `language:` in ``house.yml``.

Language 2 says each thing in one way. What language 1 said otherwise stands here, and is still read
where a venue does not say that it is written in a newer one.
"""

import re
from collections.abc import Iterator, Mapping
from typing import Annotated, Any

from builder.reading.absent import Absent
from builder.reading.nodes import Path, compose, spoken
from builder.reading.numerals import Unreadable
from builder.reading.problems import Problem
from builder.reading.words import ReadBy, count
from builder.reading.written import Written

FIRST, NEWEST = 1, 2
NEWER = "language-newer"
OLD_UNKNOWN = "?"
"""The word of language 1 for `unknown`. Without quotes it is no valid YAML."""
_PERHAPS_OLD = re.compile(r"""(?:^|[\s\[{,:])["']?\?["']?\s*(?:$|[,\]}#\s])""", re.MULTILINE)


def language(text: str) -> int:
    """
    The number of a language that this program reads.

    Raises
    ------
    Unreadable
        `language-newer`, `language-unknown`, or as for a count.
    """
    number = count(text)
    if number > NEWEST:
        raise Unreadable(
            f"is newer than this version of housepack, which reads languages up to {NEWEST}",
            NEWER,
            "read this venue with a newer version of housepack",
        )
    if number < FIRST:
        raise Unreadable("is no language", "language-unknown", f"write {NEWEST}")
    return number


Language = Annotated[
    int,
    ReadBy(
        language,
        int,
        f"the language of this description: {NEWEST}, or {FIRST} as before",
        str(NEWEST),
        rf"^\s*[{FIRST}-{NEWEST}]\s*$",
    ),
]


def newer_alone(problems: list[Problem]) -> list[Problem]:
    """
    That a venue's language is newer, without what else seems wrong with it: all of that may be
    right in the newer one.
    """
    return [problem for problem in problems if problem.code == NEWER] or problems


def old_unknowns(text: str, file: str, description: Written) -> list[Path]:
    """
    Where a file that was read says `unknown` in the word of language 1. The same sign in a text,
    such as a note, is the crew's own and is none.
    """
    if not _PERHAPS_OLD.search(text):
        return []
    leaves = leaves_of(compose(text, file).data, ())
    return [
        path
        for path, value in leaves
        if value.strip() == OLD_UNKNOWN and part_at(description, path) is Absent.UNKNOWN
    ]


def leaves_of(data: Any, path: Path) -> Iterator[tuple[Path, str]]:
    """Every text within a file's data, with the path to it."""
    if isinstance(data, dict):
        for key, part in data.items():
            yield from leaves_of(part, (*path, key))
    elif isinstance(data, list):
        for index, part in enumerate(data):
            yield from leaves_of(part, (*path, index))
    else:
        yield path, data


def part_at(value: object, path: Path) -> object:
    """What was read at a path; None where the path leads into what was read as one value."""
    for step in path:
        if isinstance(value, Written):
            value = dict(value.written()).get(str(step))
        elif isinstance(value, Mapping):
            value = value.get(step)
        elif isinstance(value, tuple) and isinstance(step, int) and step < len(value):
            value = value[step]
        else:
            return None
    return value


def words_of_before(text: str, file: str, description: Written) -> list[Problem]:
    """A problem for each word of language 1 in a file of a venue that is written in a newer one."""
    paths = old_unknowns(text, file, description)
    if not paths:
        return []
    places = compose(text, file).places
    return [
        Problem(
            places[path],
            spoken(path),
            OLD_UNKNOWN,
            "is a word of language 1, and the venue is written in language 2",
            "older-word",
            f"write {Absent.UNKNOWN.value}",
        )
        for path in paths
    ]
