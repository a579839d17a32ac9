"""
The packs of all spaces as one, and one space of it as the pack of a house of one stage.

A department that says the same in every space is told once; any other is told for each.
Departments, drawings and rules never see the joined pack.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from builder.pack import Confirmed, Finding, Pack, Section, Space
from builder.registry import DEPARTMENTS, HOUSE
from builder.spaces.folders import path_in
from builder.spaces.scoping import (
    confirmed_with,
    finding_with,
    keys_of,
    scoped_key,
    section_with,
)

Packs = Mapping[Space, Pack]
ORDER = [department.key for department in DEPARTMENTS]


def joined_pack(house: Pack, packs: Packs) -> Pack:
    """
    The pack of a house of several stages: what all share, then each space's own sections.
    ``house`` tells of the house alone.
    """
    shared = [section for section in all_share(packs) if section.key != HOUSE.key]
    whole = (*house.sections, *shared)
    own = [
        section for space, pack in packs.items() for section in own_sections(space, pack, shared)
    ]
    return replace(
        house,
        sections=tuple(sorted(whole, key=lambda section: ORDER.index(section.key))) + tuple(own),
        findings=tuple(joined_findings(house.findings, {s: p.findings for s, p in packs.items()})),
        confirmed=tuple(joined_confirmed(packs)),
        spaces=tuple(packs),
    )


def all_share(packs: Packs) -> list[Section]:
    """The sections that are the same in every space."""
    every = [{section.key: section for section in pack.sections} for pack in packs.values()]
    return [
        section
        for key, section in every[0].items()
        if all(other.get(key) == section for other in every[1:])
    ]


def own_sections(space: Space, pack: Pack, shared: Sequence[Section]) -> Iterator[Section]:
    """The sections that a space has for itself, by keys that begin with its folder."""
    told = {section.key for section in shared}
    own = [section for section in pack.sections if section.key not in told]
    new = renaming(own, space.key)
    yield from (replace(section_with(section, new), space=space.key) for section in own)


def renaming(own: Sequence[Section], folder: str) -> Callable[[str], str]:
    """The new key of each old one: what all share keeps its own."""
    keys = keys_of(own)
    return lambda key: scoped_key(key, folder) if key in keys else key


def joined_findings(
    house: Sequence[Finding], spaces: Mapping[Space, Sequence[Finding]]
) -> Iterator[Finding]:
    """
    The findings of all spaces: once what all say alike, of each what is its own, and nothing of
    what stands in another space's files, which is told there.
    """
    alike = {told(finding) for finding in house}
    for findings in spaces.values():
        here = {told(finding) for finding in findings}
        alike |= {each for each in here if all_say(each, spaces.values())}
    yield from house
    once = {told(finding) for finding in house}
    for space, findings in spaces.items():
        for finding in findings:
            if told(finding) in alike:
                if told(finding) not in once:
                    once.add(told(finding))
                    yield finding
            elif not is_of_another(finding, space, spaces):
                yield in_space(finding, space)


def all_say(finding: tuple[object, ...], spaces: Iterable[Sequence[Finding]]) -> bool:
    """Whether every space has a finding."""
    return all(finding in {told(each) for each in findings} for findings in spaces)


def told(finding: Finding) -> tuple[object, ...]:
    """What makes a finding the one it is."""
    return (finding.level, finding.code, finding.sentence, finding.place)


def is_of_another(finding: Finding, space: Space, spaces: Mapping[Space, object]) -> bool:
    """Whether a finding stands in the files of another space."""
    if finding.place is None:
        return False
    return any(
        finding.place.file.startswith(path_in(other.key, ""))
        for other in spaces
        if other is not space
    )


def in_space(finding: Finding, space: Space) -> Finding:
    """A finding that says of which space it is."""
    own = finding_with(finding, in_folder(space))
    return replace(own, space=space.key)


def joined_confirmed(packs: Packs) -> Iterator[Confirmed]:
    """What is confirmed, once where every space says it alike."""
    seen: set[tuple[object, ...]] = set()
    for space, pack in packs.items():
        for each in pack.confirmed:
            what = told(each.finding)
            if what not in seen and not is_of_another(each.finding, space, packs):
                seen.add(what)
                yield confirmed_with(each, in_folder(space))


def spaces_of(pack: Pack) -> dict[Space, Pack]:
    """Each space of a joined pack as the pack of a house of one stage."""
    return {space: pack_of_space(pack, space) for space in pack.spaces}


def pack_of_space(pack: Pack, space: Space) -> Pack:
    """One space of a joined pack: its own sections and what all share, with plain keys."""
    own = {section.key: section for section in pack.sections if section.space == space.key}
    shared = [each for each in pack.sections if not each.space and each.key not in own]
    plain = [replace(section_with(each, plain_key(space)), space="") for each in own.values()]
    sections = sorted((*plain, *shared), key=lambda section: ORDER.index(section.key))
    findings = [
        replace(finding_with(each, plain_key(space)), space="")
        for each in pack.findings
        if each.space in ("", space.key)
    ]
    return replace(
        pack,
        sections=tuple(sections),
        findings=tuple(findings),
        confirmed=tuple(
            confirmed_with(each, plain_key(space))
            for each in pack.confirmed
            if not is_of_another(each.finding, space, dict.fromkeys(pack.spaces))
        ),
        spaces=(),
    )


def in_folder(space: Space) -> Callable[[str], str]:
    """The key of the whole house, of one within a space."""
    return lambda key: scoped_key(key, space.key)


def plain_key(space: Space) -> Callable[[str], str]:
    """The key within a space, of one of the whole house."""
    return lambda key: key.removeprefix(scoped_key("x", space.key)[:-1])


def house_of(pack: Pack) -> Pack:
    """What all spaces share, as a pack of its own."""
    shared = tuple(section for section in pack.sections if not section.space)
    findings = tuple(finding for finding in pack.findings if not finding.space)
    return replace(pack, sections=shared, findings=findings, spaces=())
