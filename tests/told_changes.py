"""What a venue's pages say of some changes made at once, line by line as the search knows it."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from builder.by_configuration.joining import section_of_all
from builder.overview.home import home_page
from builder.pack import Pack
from builder.pipeline import (
    Ageing,
    Venue,
    maps_elsewhere,
    pack_of,
    published_by_configuration,
    revision_of,
    with_the_rest,
)
from builder.reading.written import DepartmentFile
from builder.registry import DEPARTMENTS
from builder.site.finding import page_lines
from tests.other_values import Change, base_data, changed, described_by, takes

Line = tuple[str, str, str, str]
Told = Callable[[str, str, str], bool]


def batches(made: Sequence[Change]) -> list[list[Change]]:
    """The changes of one venue, put together so that each is known again."""
    found: list[list[Change]] = []
    for change in made:
        batch = next((each for each in found if all(apart(change, other) for other in each)), None)
        if batch is None:
            found.append([change])
        else:
            batch.append(change)
    return found


def apart(one: Change, other: Change) -> bool:
    """Whether two changes are known from each other."""
    if one.spot.file != other.spot.file:
        return True
    here, there = one.spot.path, other.spot.path
    nested = here[: len(there)] == there or there[: len(here)] == here
    return not nested and one.words not in other.words and other.words not in one.words


def in_full(line: Line, lines: Mapping[Line, str]) -> str:
    """What a line says with its name and the heading above it; empty where there is none."""
    return f"{line[2]}; {line[3]}; {lines[line]}" if line in lines else ""


def says_more(words: str, text: str, before: str) -> bool:
    """Whether a text has words more often than before."""
    found = re.compile(rf"(?<![\w.,]){re.escape(words)}(?![\w])")
    return len(found.findall(text)) > len(found.findall(before))


class Pages:
    """A venue's pages by department, without findings, which quote what they find."""

    def __init__(self, venue: str) -> None:
        self.data = base_data(venue)
        self.descriptions = {
            file.removesuffix(".yml"): described_by(self.data, file) for file in self.data
        }
        self.pack = replace(pack_of(Venue(self.descriptions, "")), findings=())
        self.lines = {
            department.key: self.lines_of(self.pack, department.key) for department in DEPARTMENTS
        }

    def lines_of(self, pack: Pack, key: str) -> Mapping[Line, str]:
        """What a department's pages and the home page say, line by line as the search knows it."""
        section = pack.section(key)
        department = next(each for each in DEPARTMENTS if each.key == key)
        assert section is not None
        pages = [
            home_page(pack, []),
            *with_the_rest(department.pages(section, pack), section, pack),
            *maps_elsewhere(section, pack),
        ]
        return {
            (page.key, line.anchor, line.name, line.under): line.text
            for page in pages
            for line in page_lines(page)
        }

    def tells_alone(self, change: Change) -> bool:
        """Whether a line that the change alone makes other has its words."""
        stands = change.value == change.spot.value
        return not self.missing(
            [change], told=lambda words, text, before: words in text and (stands or text != before)
        )

    def missing(self, made: Sequence[Change], told: Told = says_more) -> list[Change]:
        """
        The changes of a batch whose words no line of their department's pages tells. Changes that
        contradict each other are made apart.
        """
        data = changed(self.data, made)
        files = dict.fromkeys(change.spot.file for change in made)
        if len(made) > 1 and not all(takes(data, file) for file in files):
            half = len(made) // 2
            return [*self.missing(made[:half]), *self.missing(made[half:])]
        fresh = {file.removesuffix(".yml"): described_by(data, file) for file in files}
        pack = self.pack_with(fresh)
        lines = {key: self.lines_of(pack, key) for key in fresh}
        return [
            change
            for change in made
            if not self._tells(change, lines[change.spot.file.removesuffix(".yml")], told)
        ]

    def _tells(self, change: Change, lines: Mapping[Line, str], told: Told) -> bool:
        before = self.lines[change.spot.file.removesuffix(".yml")]
        return any(
            told(change.words, in_full(line, lines), in_full(line, before)) for line in lines
        )

    def pack_with(self, fresh: Mapping[str, DepartmentFile]) -> Pack:
        """The pack with some departments published again from other descriptions."""
        venue = Venue({**self.descriptions, **fresh}, "")
        house = venue.house
        ageing = Ageing(on=house.revision.on, stale_after_days=house.stale_after_days)
        every = published_by_configuration(venue, ageing, {})
        sections = {
            part.section.key: section_of_all(
                [(names, parts[number].section) for names, parts in every]
            )
            for number, part in enumerate(every[0][1])
            if part.section.key in fresh
        }
        return replace(
            self.pack,
            venue=house.name,
            revision=revision_of(venue),
            stale_after_days=house.stale_after_days,
            sections=tuple(sections.get(each.key, each) for each in self.pack.sections),
        )
