"""
The laws of what is for the house only, line by line through the whole demo: no byte of it is
published, what it weighs and draws counts as before, and no show is promised more.

Each case hides one line of every list at once.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

from builder.files import Folder, read_folder, with_photos
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import RiderAsked
from builder.house_only.sealing import HOUSE_ONLY, public_photos
from builder.pack import (
    Figure,
    Finding,
    Item,
    Level,
    Pack,
    Section,
)
from builder.pack_json import to_json
from builder.pipeline import Packs, Venue, document_of, packs_of
from builder.reading.addresses import address
from builder.registry import RULES
from builder.render.markdown import render
from builder.rider.asked import rider_of
from builder.site.finding import entries_script, searched
from tests.laws import share
from tests.marked import MARK, longest_list, marked

ROOT = Path(__file__).parent.parent.parent
PROMISES = ("fits", "fits, with a note")


@cache
def demo() -> Folder:
    """The demo's files."""
    return read_folder(ROOT / "venue")


@dataclass(frozen=True, slots=True)
class Case:
    """The demo with some lines marked: what is published with them told, and its packs without."""

    hidden: Venue
    told: Pack
    packs: Packs


def cases() -> list[int]:
    """The numbers of lines."""
    return list(range(longest_list(demo().texts, demo().photos)))


@pytest.fixture(scope="module", params=share(cases(), law="for the house only", usually=1))
def case(request: pytest.FixtureRequest) -> Case:
    """The demo with the lines of one number marked. One case at a time is kept."""
    venues = marked(demo().texts, demo().photos, request.param)
    return Case(venues.hidden, packs_of(venues.told).published, packs_of(venues.hidden))


def riders() -> Iterator[RiderAsked]:
    """The riders of the tests, and the shows on the demo's books."""
    for folder in (ROOT / "tests" / "riders", ROOT / "venue" / "shows"):
        for path in sorted(folder.glob("*.yml")):
            yield rider_of(path.read_text(encoding="utf-8"), file=path.name, rules=RULES)


def published_bytes(pack: Pack, venue: Venue) -> dict[str, bytes]:
    """Every file and page that is made of a pack, search and drawings included."""
    document = with_photos(document_of(pack), public_photos(demo().photos, venue.descriptions))
    rendered = render(document)
    files = {
        path: text.encode() if isinstance(text, str) else text
        for path, text in rendered.pages.items()
    }
    files |= {part.path: part.content for part in document.files}
    files["search"] = entries_script(searched(document)).encode()
    return {**files, "navigation": repr(rendered.navigation).encode()}


@pytest.mark.laws
def test_no_byte_of_a_line_for_the_house_only_is_published(case: Case) -> None:
    assert MARK in to_json(case.told)
    assert MARK in to_json(case.packs.house)
    files = published_bytes(case.packs.published, case.hidden)
    assert {"pack.json", "fit.json"} <= files.keys()
    mark = MARK.lower().encode()
    assert {name for name, content in files.items() if mark in content.lower()} == set()


def shared_figures(told: Section, hidden: Section) -> Iterator[tuple[Figure, Figure]]:
    """
    The figures of each public item in two packs of one section, where the item goes by its kind and
    name in both.
    """
    by_name: dict[tuple[str, str], list[Item]] = {}
    for item in told.items:
        by_name.setdefault((item.kind, item.name), []).append(item)
    now: dict[tuple[str, str], list[Item]] = {}
    for item in hidden.items:
        if not item.house_only and HOUSE_ONLY not in item.name:
            now.setdefault((item.kind, item.name), []).append(item)
    for name, items in now.items():
        before = by_name.get(name, [])
        if len(before) == len(items):
            for one, other in zip(before, items, strict=True):
                yield from shared_of(one, other)


def shared_of(one: Item, other: Item) -> Iterator[tuple[Figure, Figure]]:
    """
    The figures of one item in two packs. One that bears the name of a hidden line, such as a leg of
    a bridle there, has none to compare it with; all others are in both.
    """
    before = {figure.key.removeprefix(one.key): figure for figure in one.figures}
    after = {figure.key.removeprefix(other.key): figure for figure in other.figures}
    nameless = address(HOUSE_ONLY)
    assert {key for key in before if MARK.lower() not in key} == {
        key for key in after if nameless not in key
    }
    yield from ((before[key], after[key]) for key in before if key in after)


def numbers(figure: Figure) -> list[float | None]:
    """A figure as numbers, not a word of it."""
    value = figure.value
    return [value.number, value.least, value.most] if value else []


def alike(one: list[float | None], other: list[float | None]) -> bool:
    """Whether two figures are the same but for the order in which they were summed up."""
    return len(one) == len(other) and all(
        a is b or (a is not None and b is not None and math.isclose(a, b, rel_tol=1e-9))
        for a, b in zip(one, other, strict=True)
    )


@pytest.mark.laws
def test_what_is_hidden_weighs_and_draws_as_it_did(case: Case) -> None:
    pairs = [
        pair
        for one, other in zip(case.told.sections, case.packs.published.sections, strict=True)
        for pair in shared_figures(one, other)
    ]
    assert len(pairs) > 200
    differ = {one.key for one, other in pairs if not alike(numbers(one), numbers(other))}
    assert differ == set()


@pytest.mark.laws
def test_no_show_is_promised_more_for_what_is_hidden(case: Case) -> None:
    before, after = fit_record(case.told), fit_record(case.packs.published)
    judged = 0
    for rider in riders():
        answers = zip(
            fit(before, [rider])["verdicts"], fit(after, [rider])["verdicts"], strict=True
        )
        for one, other in answers:
            judged += 1
            if other["verdict"] in PROMISES:
                assert one["verdict"] in PROMISES, (one, other)
    assert judged > 100


@pytest.mark.laws
def test_the_house_itself_is_told_all_that_was_found(case: Case) -> None:
    mine = {finding.code for finding in case.packs.house.findings}
    assert {finding.code for finding in case.told.findings} <= mine
    assert not any(MARK in finding.sentence for finding in case.packs.published.findings)


@pytest.mark.laws
def test_a_danger_of_something_public_stays_published(case: Case) -> None:
    before = {finding.code for finding in dangers(case.told)}
    after = {finding.code for finding in dangers(case.packs.published)}
    assert before <= after


def dangers(pack: Pack) -> list[Finding]:
    """The dangers of a pack that are not of a marked line."""
    found = [finding for finding in pack.findings if finding.level is Level.DANGER]
    return [finding for finding in found if MARK.lower() not in finding.subject.lower()]


@pytest.mark.laws
def test_no_working_links_to_what_is_gone(case: Case) -> None:
    assert dead_links(case.packs.published) <= dead_links(case.told)


def dead_links(pack: Pack) -> set[str]:
    """The keys that workings name and no item, fact, figure or map bears."""
    keys = {item.key for item in pack.items()}
    keys |= {value.key for item in pack.items() for value in (*item.facts, *item.figures)}
    fields = [field for section in pack.sections for field in section.fields]
    figures = [figure for item in pack.items() for figure in item.figures]
    workings = [each.working for each in (*fields, *figures)]
    named = {part.key for working in workings for part in working.inputs if part.key}
    return named - keys - {field.key for field in fields}
