"""
Two packs told apart: facts and figures that were added, taken out or changed, findings that
appeared or vanished, by department.

What is shown the same is the same: a number that moved by less than its wording tells is no change.
Ages are left out, for they move by themselves; that something was checked again is told.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.pack import (
    Fact,
    Field,
    Figure,
    Finding,
    Item,
    Pack,
    Revision,
    Section,
    Standing,
    Verified,
)
from builder.spaces.renaming import called_alike
from builder.stock.amount import how_far, how_much, of_level
from builder.stock.differences import Difference, Part
from builder.stock.once import each_once

Told = tuple[str, str, str, str]


@dataclass(frozen=True, slots=True)
class Comparison:
    """All that changed between two packs. ``venue`` and ``revision`` are those before and after."""

    venue: tuple[str, str]
    revision: tuple[Revision, Revision]
    parts: tuple[Part, ...]
    appeared: tuple[Finding, ...]
    vanished: tuple[Finding, ...]
    spaces: tuple[tuple[str, str], ...] = ()
    """The spaces of both states: folder and name."""

    def space_of(self, finding: Finding) -> str:
        """The name of the space that a finding is of; empty where it is of the whole house."""
        return dict(self.spaces).get(finding.space, "")

    def of_kind(self, *kinds: str) -> tuple[tuple[Part, Difference], ...]:
        """The differences of some kinds, each with its department."""
        return tuple(
            (part, difference)
            for part in self.parts
            for difference in part.differences
            if difference.kind in kinds
        )

    @property
    def moved(self) -> tuple[tuple[Part, Difference], ...]:
        """The figures and maps that moved."""
        return self.of_kind("figure", "map")

    def __bool__(self) -> bool:
        return bool(self.parts or self.appeared or self.vanished)


def compare(before: Pack, after: Pack) -> Comparison:
    """What changed from one pack to another."""
    before, after = called_alike(before, after)
    old, new = ({mark_of(each): each for each in pack.sections} for pack in (before, after))
    names = {space.key: space.name for space in (*before.spaces, *after.spaces)}
    known = {space.key for space in before.spaces}
    both = [space.key for space in after.spaces if space.key in known]
    parts = {
        mark: part_of(mark, old.get(mark), new.get(mark), names.get(mark[0], ""), both)
        for mark in dict.fromkeys((*new, *old))
    }
    titles = {section.key: section.title for section in (*before.sections, *after.sections)}
    return Comparison(
        venue=(before.venue, after.venue),
        revision=(before.revision, after.revision),
        parts=tuple(part for part in each_once(parts, both, titles) if part.differences),
        appeared=without(after.findings, before.findings),
        vanished=without(before.findings, after.findings),
        spaces=tuple(names.items()),
    )


def mark_of(section: Section) -> tuple[str, str]:
    """What makes a section the one it is: its space and its department."""
    return section.space, section.key


def without(findings: Sequence[Finding], known: Sequence[Finding]) -> tuple[Finding, ...]:
    """
    Findings that are not among those known.

    A line that moved in its file makes no finding new, and neither does it that what one space said
    is now said by all, or what all said by one.
    """
    new = left_of(findings, Counter(map(told, known)))
    rest = left_of(known, Counter(map(told, findings)))
    by_one = Counter(told_bare(finding) for finding in rest)
    by_all = Counter(told_bare(finding) for finding in rest if not finding.space)
    return tuple(
        finding for finding in new if not (by_all if finding.space else by_one)[told_bare(finding)]
    )


def left_of(findings: Sequence[Finding], left: Counter[Told]) -> list[Finding]:
    """Findings without so many of each as are counted."""
    new = []
    for finding in findings:
        if left[told(finding)]:
            left[told(finding)] -= 1
        else:
            new.append(finding)
    return new


def told(finding: Finding) -> Told:
    """What makes a finding the one it is."""
    return (finding.level.value, finding.code, finding.sentence, finding.subject)


def told_bare(finding: Finding) -> Told:
    """The same, without the space that it is of."""
    return (*told(finding)[:3], finding.subject.removeprefix(f"{finding.space}/"))


def part_of(
    mark: tuple[str, str],
    before: Section | None,
    after: Section | None,
    space: str,
    both: Sequence[str],
) -> Part:
    """
    What changed in one department, which may have appeared or gone; told with its space where the
    house has several. Of a space that is not in both states, how many lines it has.
    """
    key = mark[1]
    title = (after or before or Section(key, key, ())).title
    blank = Section(key, title, (), space=mark[0])
    told = f"{title}, {space}" if space else title
    if mark[0] and mark[0] not in both:
        return Part(key, told, (came_or_went(before, after),))
    return Part(key, told, tuple(differences(before or blank, after or blank)))


def came_or_went(before: Section | None, after: Section | None) -> Difference:
    """A department of a space that is new or gone, by how many lines it has."""
    lines = len((after or before or Section("", "", ())).items)
    what = "1 line" if lines == 1 else f"{lines} lines"
    return Difference("line", "", what, "there" if before else "", "there" if after else "")


def differences(before: Section, after: Section) -> Iterator[Difference]:
    """
    What changed in a department, in the order of its lines now; what was taken out comes last.
    """
    if checked(before.verified) != checked(after.verified):
        yield Difference(
            "check",
            "",
            "Last checked",
            checked(before.verified),
            checked(after.verified),
            key=after.key,
        )
    old, new = matched(before.items, after.items)
    for identity, item in new.items():
        yield from line_differences(old.get(identity), item, before, after)
    for identity, item in old.items():
        if identity not in new:
            yield Difference(
                "line",
                item.name,
                item.kind.replace("-", " ").replace("_", " "),
                "there",
                "",
                key=item.key,
            )
    yield from plan_differences(before, after)


def matched(
    before: Sequence[Item], after: Sequence[Item]
) -> tuple[dict[object, Item], dict[object, Item]]:
    """
    The items of two states by what makes each the one it is: its kind and name where no other has
    both, its key otherwise.
    """
    shared = {
        name
        for items in (before, after)
        for name, count in Counter((item.kind, item.name) for item in items).items()
        if count > 1
    }

    def by_identity(items: Sequence[Item]) -> dict[object, Item]:
        return {
            item.key if (item.kind, item.name) in shared else (item.kind, item.name): item
            for item in items
        }

    return by_identity(before), by_identity(after)


def line_differences(
    before: Item | None, after: Item, was: Section, now: Section
) -> Iterator[Difference]:
    """What changed in one line."""
    if before is None:
        yield Difference(
            "line",
            after.name,
            after.kind.replace("-", " ").replace("_", " "),
            "",
            "there",
            key=after.key,
        )
        return
    for label, old, new in (
        ("Condition", before.condition, after.condition),
        ("Note", before.note, after.note),
    ):
        if old != new:
            yield Difference(label.lower(), after.name, label, old, new, key=after.key)
    if (old := own_check(before, was)) != (new := own_check(after, now)):
        yield Difference(
            "check",
            after.name,
            "Last checked",
            old or checked(was.verified),
            new or checked(now.verified),
            key=after.key,
        )
    yield from value_differences("fact", before, after, before.facts, after.facts)
    yield from value_differences("figure", before, after, before.figures, after.figures)


def own_check(item: Item, section: Section) -> str:
    """When a line was checked, where that is not as its department was."""
    found = next((checked(fact.verified) for fact in item.facts if fact.verified), "")
    return "" if found == checked(section.verified) else found


def checked(verified: Verified | None) -> str:
    """When, by whom and how, in words."""
    return f"{verified.on}, {verified.by}, {verified.how}" if verified else ""


def value_differences(
    kind: str,
    before: Item,
    after: Item,
    old: Sequence[Fact] | Sequence[Figure],
    new: Sequence[Fact] | Sequence[Figure],
) -> Iterator[Difference]:
    """Facts, or figures, of one line that changed."""
    was: Mapping[str, Fact | Figure] = {value.key.removeprefix(before.key): value for value in old}
    now: Mapping[str, Fact | Figure] = {value.key.removeprefix(after.key): value for value in new}
    for name in dict.fromkeys((*now, *was)):
        one, other = was.get(name), now.get(name)
        if words(one) != words(other):
            found = other or one
            by = (
                how_much(one.value, other.value)
                if one and other and one.value and other.value
                else ""
            )
            caution = found.caution if isinstance(found, Figure) else ""
            share = how_far(one.value if one else None, other.value if other else None)
            yield Difference(
                kind,
                after.name,
                found.label if found else name,
                words(one),
                words(other),
                by,
                caution,
                f"{after.key}{name}",
                share,
            )


def words(value: Fact | Figure | None) -> str:
    """A value as the page shows it, in words where there is none."""
    if value is None:
        return ""
    if value.value is not None:
        return value.value.text
    if isinstance(value, Figure):
        return "not computed"
    return {Standing.UNKNOWN: "not known yet", Standing.NONE: "none"}.get(
        value.standing, "not stated"
    )


def plan_differences(before: Section, after: Section) -> Iterator[Difference]:
    """Outlines and maps that changed."""
    shapes, shapes_now = (
        {shape.key: shape for shape in before.outlines},
        {shape.key: shape for shape in after.outlines},
    )
    for key, shape in shapes_now.items():
        if key in shapes and shapes[key].corners != shape.corners:
            yield Difference("plan", shape.name, "Outline", "as it was", "redrawn", key=key)
    maps = {each.key: each for each in before.fields}
    for field in after.fields:
        if field.key in maps and (moved := level_moved(maps[field.key], field)):
            by, share = moved
            yield Difference(
                "map",
                field.name,
                "Level over the area",
                "as it was",
                "redrawn",
                by,
                field.caution,
                field.key,
                share,
            )


def level_moved(before: Field, after: Field) -> tuple[str, float] | None:
    """
    By how much a map's levels moved at most, in words, and on average, as a share; None where they
    did not.
    """
    if before.points != after.points or before.bands != after.bands:
        return "other points or bands", 1.0
    pairs = [
        pair
        for olds, news in zip(before.levels, after.levels, strict=True)
        for pair in zip(olds, news, strict=True)
    ]
    moved = [abs(new - old) for old, new in pairs]
    return (
        (f"up to {max(moved) / 10:.1f} dB", of_level(sum(moved) / len(moved) / 10))
        if any(moved)
        else None
    )
