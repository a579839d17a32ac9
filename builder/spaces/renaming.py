"""
Two states of a house whose spaces are called otherwise: one with the keys of the other, so that
what stayed is found again.

A space whose folder has another name is known by its own name. A house of one stage that became
one of several is the space with most of its stage.
"""

from collections.abc import Callable
from dataclasses import replace

from builder.pack import Finding, Pack, Section, Space
from builder.registry import HOUSE
from builder.spaces.folders import NEEDED
from builder.spaces.scoping import finding_with, keys_of, scoped_key, section_with

Named = tuple[str, str]


def called_alike(before: Pack, after: Pack) -> tuple[Pack, Pack]:
    """Two states, with one and the same key for what is one and the same space."""
    if before.spaces and after.spaces:
        return with_folders_of(before, after), after
    if after.spaces:
        return as_one_of(before, after), after
    return (before, as_one_of(after, before)) if before.spaces else (before, after)


def with_folders_of(before: Pack, after: Pack) -> Pack:
    """A house of several stages with the folders of the later state."""
    now = {space.name: space for space in after.spaces}
    taken = {space.key for space in before.spaces}
    kept = {space.key for space in after.spaces}
    new = {
        space.key: now[space.name].key
        for space in before.spaces
        if space.key not in kept and space.name in now and now[space.name].key not in taken
    }
    if not new:
        return before
    return replace(
        before,
        sections=tuple(
            in_folder(each, moved(each.space, new[each.space]), new[each.space])
            if each.space in new
            else each
            for each in before.sections
        ),
        findings=tuple(
            found_in(each, moved(each.space, new[each.space]), new[each.space])
            if each.space in new
            else each
            for each in before.findings
        ),
        spaces=tuple(Space(new.get(each.key, each.key), each.name) for each in before.spaces),
    )


def moved(old: str, new: str) -> Callable[[str], str]:
    """The key in the new folder of one in the old."""
    start = scoped_key("x", old)[:-1]

    def key_in(key: str) -> str:
        return scoped_key(key.removeprefix(start), new) if key.startswith(start) else key

    return key_in


def in_folder(section: Section, new: Callable[[str], str], folder: str) -> Section:
    """A section that is of a space, with other keys."""
    return replace(section_with(section, new), space=folder)


def found_in(finding: Finding, new: Callable[[str], str], folder: str) -> Finding:
    """A finding that is of a space, with another subject."""
    return replace(finding_with(finding, new), space=folder)


def as_one_of(alone: Pack, several: Pack) -> Pack:
    """A house of one stage as that space of another state which has most of its stage."""
    space = max(several.spaces, key=lambda each: alike(alone, several, each))
    there = {(section.space, section.key): section for section in several.sections}
    own = [
        section
        for section in alone.sections
        if ("", section.key) not in there or section.key == HOUSE.key
    ]
    keys = keys_of(own)

    def key_in(key: str) -> str:
        return scoped_key(key, space.key) if key in keys else key

    shared = [
        section if section not in own else left_to_all(section, there, space)
        for section in alone.sections
        if section not in own or section.key == HOUSE.key
    ]
    return replace(
        alone,
        sections=(*shared, *(in_folder(section, key_in, space.key) for section in own)),
        findings=tuple(
            found_in(each, key_in, space.key) if key_in(each.subject) != each.subject else each
            for each in alone.findings
        ),
        spaces=(space,),
    )


def alike(alone: Pack, several: Pack, space: Space) -> int:
    """How many lines of a house's stage a space has by name."""
    old = {name for section in alone.sections if section.key == NEEDED for name in names(section)}
    own = {
        name
        for section in several.sections
        if section.key == NEEDED and section.space == space.key
        for name in names(section)
    }
    return len(old & own)


def left_to_all(house: Section, there: dict[Named, Section], space: Space) -> Section:
    """What the house says of itself, without what the other state says of the space alone."""
    all_have = names(there["", HOUSE.key])
    own = names(there[space.key, HOUSE.key]) - all_have
    items = tuple(item for item in house.items if (item.kind, item.name) not in own)
    return replace(house, items=items)


def names(section: Section) -> set[Named]:
    """The lines of a section, by kind and name."""
    return {(item.kind, item.name) for item in section.items}
