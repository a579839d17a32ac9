"""
Whole houses from documents that nobody wrote with the language in mind, fact by fact.

Beside each document of ``tests/transcribed`` stand the venue that says the same, and a table: of
each fact its number and words, where the venue says it (``file key.key[line]``, several with
``+``), whether that home is typed, and the words by which it is found again on the built site.

A home is typed where a key means this very thing. ``part``: a key holds some of it, and free words
the rest. ``no``: only words that could say anything hold it (a note, a trouble spot), or nothing
does. ``later``: it belongs to a department that there is not yet. A floor is raised, never lowered.
``at_first`` is what ``typed`` was before the language was mended for this document.
"""

import csv
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from html import unescape
from pathlib import Path
from typing import Any

import pytest
import yaml

from builder.files import read_folder
from builder.pack import Level
from builder.pipeline import document_of, pack_of, venue_of
from builder.site import build as building
from builder.site.build import build
from builder.site.finding import searched
from builder.site.guides import guides_folder

FOLDER = Path(__file__).parent / "transcribed"
FACT = re.compile(r"^(?:\| )?\[(\d+)\][ |]*(.*?)[ |]*$", re.MULTILINE)
STEP = re.compile(r"([a-z_]+)(?:\[([^\]]+)\])?(?:\.|$)")
TELLS_APART = ("name", "role", "what", "days", "use", "place", "kind", "who")
"""Keys by whose value a line of a list is named in a home, where it is not counted."""
SAYS_ANYTHING = ("note", "what", "do", "about")
"""Keys that hold any words: what only they say has no typed home."""
QUOTING = ("findings.html", "workings.html")
"""Pages that quote what others say."""


@dataclass(frozen=True)
class House:
    """A transcribed document, and what must at least be true of it."""

    name: str
    typed_at_least: float
    """The share of facts with a typed home, of those that belong to a department there is."""
    homeless_at_most: int
    """How many of these stand nowhere at all."""
    later_at_most: int
    """How many belong to departments that there are not yet: lighting, video, rooms, safety."""
    typed_at_first: float | None = None
    """The share with a typed home before the language was mended for it, where it was counted."""


HOUSES = (
    House("hired-stage", 0.97, 0, 9),
    House("theatre", 0.97, 0, 10),
    House("civic", 0.99, 0, 6, typed_at_first=0.70),
)


@dataclass(frozen=True)
class Row:
    """One fact of a document."""

    number: int
    fact: str
    homes: tuple[str, ...]
    typed: str
    words: tuple[str, ...]
    at_first: str


def split(text: str, mark: str) -> tuple[str, ...]:
    """The parts of a cell of the table."""
    return tuple(part for part in text.split(mark) if part)


@cache
def table(house: str) -> tuple[Row, ...]:
    """The table of a house."""
    with (FOLDER / f"{house}.csv").open(newline="", encoding="utf-8") as file:
        return tuple(
            Row(
                int(row["number"]),
                row["fact"],
                split(row["home"], " + "),
                row["typed"],
                split(row["words"], " | "),
                row.get("at_first", ""),
            )
            for row in csv.DictReader(file)
        )


@cache
def written(house: str, file: str) -> Any:
    """What a file of the transcribed venue says, each value as text."""
    text = (FOLDER / house / file).read_text("utf-8")
    return yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506 it makes texts and nothing else


def line_of(lines: Sequence[Any], named: str) -> Any:
    """A line of a list, by what tells it apart, else by its number; None where there is none."""
    told = next((line for line in lines if named in map(line.get, TELLS_APART)), None)
    if told is None and named.isdigit():
        return lines[int(named) - 1] if int(named) <= len(lines) else None
    return told


def found(house: str, home: str) -> Any:
    """What stands at a home, or None."""
    file, path = home.split(" ", 1)
    value = written(house, file)
    for key, named in STEP.findall(path):
        value = value.get(key) if isinstance(value, Mapping) else None
        if named:
            value = line_of(value or (), named)
    return value


@cache
def site_text(house: str, folder: Path) -> str:
    """
    All that the built site of a house says to readers, on its pages and in its search ("Count: 2"),
    without the pages that quote others.
    """
    build(FOLDER / house, folder)
    pages = [page for page in sorted(folder.glob("*.html")) if page.name not in QUOTING]
    bodies = [page.read_text("utf-8").split("<main", 1)[-1] for page in pages]
    shown = re.sub(r"<script.*?</script>|<[^>]+>", " ", " ".join(bodies), flags=re.DOTALL)
    return plain(unescape(f"{shown} {search_text(house)}"))


def search_text(house: str) -> str:
    """What the search of a house's site finds, a line for each row."""
    read = read_folder(FOLDER / house)
    found = searched(document_of(pack_of(venue_of(read.texts, read.photos))))
    return "\n".join(
        f"{line.name} {line.text}"
        for page in found
        if page.address not in QUOTING
        for line in page.lines
    )


def plain(text: str) -> str:
    """A text without what typesetting makes of spaces, quotes and commas."""
    return re.sub(r"\s+([,.;:)])", r"\1", re.sub(r"\s+", " ", text)).replace("’", "'").lower()


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder for the built sites."""
    return tmp_path_factory.mktemp("sites")


@pytest.fixture(params=HOUSES, ids=lambda house: house.name)
def house(request: pytest.FixtureRequest) -> House:
    """Each transcribed house."""
    assert isinstance(request.param, House)
    return request.param


def test_every_fact_of_the_document_stands_in_the_table_in_its_own_words(house: House) -> None:
    document = (FOLDER / f"{house.name}.md").read_text("utf-8")
    facts = {int(number): words for number, words in FACT.findall(document)}
    assert len(facts) >= 150
    assert {row.number: row.fact for row in table(house.name)} == facts


def test_the_venue_is_read_without_a_problem_and_without_a_danger(house: House) -> None:
    folder = read_folder(FOLDER / house.name)
    pack = pack_of(venue_of(folder.texts, folder.photos))
    assert [finding for finding in pack.findings if finding.level is Level.DANGER] == []


def test_every_home_is_there(house: House) -> None:
    homes = [home for row in table(house.name) for home in row.homes]
    assert [home for home in homes if found(house.name, home) is None] == []


def test_no_words_that_could_say_anything_are_called_a_typed_home(house: House) -> None:
    called = {row.typed for row in table(house.name)}
    assert called <= {"yes", "part", "no", "later: 20"}
    for row in table(house.name):
        keys = {home.rsplit(".", 1)[-1] for home in row.homes}
        typed = [key for key in keys if key not in SAYS_ANYTHING]
        assert bool(typed) or row.typed in ("no", "later: 20"), row
        assert row.typed != "later: 20" or not row.homes, row


def test_every_fact_with_a_home_is_found_again_on_the_built_site(
    house: House, sites: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # The project's own guides, whatever other tests stand in their place.
    monkeypatch.setattr(building, "guides_folder", guides_folder)
    text = site_text(house.name, sites / house.name)
    assert all(row.words for row in table(house.name) if row.homes)
    lost = [
        (row.number, words)
        for row in table(house.name)
        for words in row.words
        if plain(words) not in text
    ]
    assert lost == []


def test_the_share_of_facts_with_a_typed_home_does_not_fall(house: House) -> None:
    rows = table(house.name)
    here = [row for row in rows if not row.typed.startswith("later")]
    typed = [row for row in here if row.typed == "yes"]
    assert len(typed) / len(here) >= house.typed_at_least
    assert len([row for row in here if not row.homes]) <= house.homeless_at_most
    assert len(rows) - len(here) <= house.later_at_most


def test_the_share_before_the_language_was_mended_is_the_one_told(house: House) -> None:
    at_first = [row.at_first for row in table(house.name) if not row.at_first.startswith("later")]
    if house.typed_at_first is None:
        assert set(at_first) == {""}
    else:
        assert round(at_first.count("yes") / len(at_first), 2) == house.typed_at_first
