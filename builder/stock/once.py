"""
Differences of a house of several stages, each told once: what all spaces share moves in the pack of
each, and a space that is new or gone is told by how many lines it has.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from builder.stock.differences import Difference, Part

Mark = tuple[str, str]
"""The space of a section, empty for what all share, and its department."""
IN_ALL = "{title}, all spaces"


def each_once(
    parts: Mapping[Mark, Part], spaces: Sequence[str], titles: Mapping[str, str]
) -> Iterator[Part]:
    """
    The parts of a comparison without what others tell. ``spaces`` are the spaces of both states.
    """
    done: set[str] = set()
    for (space, key), part in parts.items():
        alike = in_all(parts, key, spaces)
        of_house = {bare(each, "") for each in of(parts, "", key)}
        if space not in spaces:
            yield part
            continue
        new = [each for each in of(parts, space, key) if bare(each, space) in alike - of_house]
        if new and key not in done:
            yield replace(part, title=IN_ALL.format(title=titles[key]), differences=tuple(new))
            done.add(key)
        told = alike | (of_house if len(spaces) > 0 else set())
        left = tuple(each for each in part.differences if bare(each, space) not in told)
        yield replace(part, differences=left)


def in_all(parts: Mapping[Mark, Part], key: str, spaces: Sequence[str]) -> set[Difference]:
    """The differences of a department that are the same in all spaces; none of one space."""
    if len(spaces) < 2:
        return set()
    every = [{bare(each, space) for each in of(parts, space, key)} for space in spaces]
    return set.intersection(*every)


def of(parts: Mapping[Mark, Part], space: str, key: str) -> tuple[Difference, ...]:
    """The differences of a department of a space."""
    part = parts.get((space, key))
    return part.differences if part else ()


def bare(difference: Difference, space: str) -> Difference:
    """A difference without the space that it is of."""
    return replace(difference, key=difference.key.removeprefix(f"{space}/"))
