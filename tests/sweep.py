"""
Every key of a venue written in ways that nobody means: nothing, less than nothing, next to nothing,
far too much, another choice, left out, the wrong way round.

A case is one change of one venue. ``outcome`` reads the venue, and where it is not refused computes
its pack, lays out and renders all pages, and holds shows against it. Whatever is raised besides
``Refused`` is the program's fault.
"""

import json
import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from copy import deepcopy
from dataclasses import dataclass, replace
from functools import cache
from itertools import chain
from pathlib import Path
from typing import Any, Literal, TypeVar, get_args, get_origin
from unittest.mock import patch

from pydantic.fields import FieldInfo

from builder import pack_json
from builder.document import Attachment, Document, Page
from builder.files import Folder, read_folder
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit.records import FitPack, RiderAsked
from builder.overview.log import LOG
from builder.pack import Pack, Section
from builder.pack_json import section_lines
from builder.pipeline import document_of, pack_of, venue_of
from builder.reading.fields import mark_of
from builder.reading.nodes import compose
from builder.reading.problems import Problem, Refused
from builder.reading.reader import model_at
from builder.reading.words import ReadBy
from builder.registry import DEPARTMENTS, RULES
from builder.render import markdown
from builder.render.markdown import page_text, render
from builder.rider.asked import rider_of
from builder.rider.description import Rider
from tests.remembering import forgetting, remember

ROOT = Path(__file__).parent.parent
VENUES = {
    "demo": ROOT / "venue",
    "quarry": ROOT / "tests" / "venues" / "quarry",
    "starter": ROOT / "builder" / "starter",
}
HOUSES = {**VENUES, "counterweight": ROOT / "tests" / "venues" / "counterweight"}
"""Every house that laws take: those of the sweep, and one with counterweights."""
RIDERS = (*sorted((ROOT / "tests" / "riders").glob("*.yml")), VENUES["starter"] / "rider.yaml")
DESCRIPTIONS = {f"{department.key}.yml": department.description for department in DEPARTMENTS}
NUMBER = re.compile(r"-?[0-9][0-9,]*(?:\.[0-9]+)?")
PLACES_EACH = 3
"""
A key that a venue writes fifty times is changed where it stands first, last and between: one way at
one of these places, the next way at the next.
"""
NUMBERS = {
    "zero": "0",
    "tiny": "0.000001",
    "large": "12345",
    "huge": "999999999",
    "beyond": "999999999999999",
}

Path_ = tuple[str | int, ...]
Data = Any


@dataclass(frozen=True, slots=True)
class Case:
    """One change of one file: of a venue's, or of a rider, at which path, and how."""

    venue: str
    file: str
    path: Path_
    change: str

    def __str__(self) -> str:
        steps = "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in self.path)
        return f"{self.venue}/{self.file}{steps}={self.change}"


def venue_cases() -> Iterator[Case]:
    """Every case of a venue, in the order of the files."""
    for venue in VENUES:
        for file, data in composed(venue).items():
            yield from cases_of(venue, file, data, DESCRIPTIONS[file])


def rider_cases() -> Iterator[Case]:
    """Every case of a rider."""
    for file, data in composed_riders().items():
        yield from cases_of("rider", file, data, Rider)


def cases_of(venue: str, file: str, data: Data, kind: Any) -> Iterator[Case]:
    """Every case of one file."""
    for places in chosen(data):
        ways = {place: tuple(changes(kind, place, at(data, place))) for place in places}
        for index, change in enumerate(dict.fromkeys(chain.from_iterable(ways.values()))):
            open_to_it = [place for place in places if change in ways[place]]
            yield Case(venue, file, open_to_it[index % len(open_to_it)], change)


@cache
def folder(venue: str) -> Folder:
    """A venue's folder, its descriptions as JSON. The starting venue has a rider beside it."""
    there = read_folder(HOUSES[venue])
    log = {LOG: there.texts[LOG]} if LOG in there.texts else {}
    plain = {file: "\n".join(lines_of(data)) for file, data in composed(venue).items()}
    return Folder({**plain, **log}, there.photos)


@cache
def composed(venue: str) -> dict[str, Data]:
    """The data of a venue's files."""
    texts = read_folder(HOUSES[venue]).texts
    return {file: compose(texts[file], file).data for file in DESCRIPTIONS if file in texts}


def chosen(data: Data) -> list[list[Path_]]:
    """For each key the places to change it: of those that differ in their index alone, a few."""
    alike: dict[Path_, list[Path_]] = {}
    for path in paths(data):
        key = (*(step for step in path if isinstance(step, str)), isinstance(path[-1], int))
        alike.setdefault(key, []).append(path)
    return [
        group if len(group) <= PLACES_EACH else [group[0], group[len(group) // 2], group[-1]]
        for _, group in sorted(alike.items(), key=str)
    ]


def paths(data: Data, path: Path_ = ()) -> Iterator[Path_]:
    """The path of everything within, groups and lists before what they hold."""
    if path:
        yield path
    within = (
        data.items()
        if isinstance(data, dict)
        else enumerate(data)
        if isinstance(data, list)
        else ()
    )
    for step, part in within:
        yield from paths(part, (*path, step))


def at(data: Data, path: Path_) -> Data:
    """What stands at a path."""
    for step in path:
        data = data[step]
    return data


def changes(kind: Any, path: Path_, value: Data) -> Iterator[str]:
    """The changes that a value can have. Of words in prose only that they are there matters."""
    yield from ("left out", "empty")
    if isinstance(value, list) and len(value) > 1:
        yield from ("first two swapped", "backwards", "first alone", "first again at the end")
    field = field_at(kind, path)
    if not isinstance(value, str) or field is None or is_prose(field):
        return
    yield from ("none", "unknown")
    if NUMBER.search(value):
        yield from (*NUMBERS, "negative")
    yield from (f"choice {choice}" for choice in literals(field.annotation) if choice != value)


def field_at(kind: Any, path: Path_) -> FieldInfo | None:
    """The field that a path leads to."""
    keys = tuple(step for step in path if isinstance(step, str))
    holder = model_at(kind, keys[:-1])
    if holder is None:
        return None
    named = {field.alias or name: field for name, field in holder.model_fields.items()}
    return named.get(keys[-1])


def is_prose(field: FieldInfo) -> bool:
    """Whether a field holds a name or a text."""
    read = mark_of(field, ReadBy)
    return read is not None and read.type is str


def literals(annotation: Any) -> Iterator[str]:
    """The words of the first list of choices within a type."""
    if get_origin(annotation) is Literal:
        yield from get_args(annotation)
    else:
        for part in get_args(annotation):
            yield from literals(part)


def changed(data: Data, path: Path_, change: str) -> Data:
    """The data with one change made."""
    data = deepcopy(data)
    holder, last = at(data, path[:-1]), path[-1]
    if change == "left out":
        del holder[last]
    else:
        holder[last] = changed_value(holder[last], change)
    return data


def changed_value(value: Data, change: str) -> Data:
    """A value with a change made."""
    match change:
        case "empty":
            return type(value)()
        case "none" | "unknown":
            return change
        case "negative":
            return NUMBER.sub(lambda number: f"-{number[0].lstrip('-')}", value, count=1)
        case "first two swapped":
            return [value[1], value[0], *value[2:]]
        case "backwards":
            return value[::-1]
        case "first alone":
            return value[:1]
        case "first again at the end":
            return [*value, value[0]]
        case _ if change.startswith("choice "):
            return change.removeprefix("choice ")
        case _:
            return NUMBER.sub(NUMBERS[change], value, count=1)


def text_of(case: Case, data: Data) -> str:
    """
    The text of the changed file. JSON is YAML, with every value on a line of its own. Empty lines
    stand for what is left out, so that nothing below moves and departments that the change does not
    reach are as they were.
    """
    before, after = lines_of(data), lines_of(changed(data, case.path, case.change))
    pairs = enumerate(zip(before, after, strict=False))
    unlike = (index for index, (one, other) in pairs if one != other)
    there = next(unlike, min(len(before), len(after)))
    missing = [""] * (len(before) - len(after))
    return "\n".join([*after[:there], *missing, *after[there:]])


def lines_of(data: Data) -> list[str]:
    """A file's data as JSON, line by line."""
    return json.dumps(data, indent=1, ensure_ascii=False).split("\n")


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a case: problems, or the sizes of what was made."""

    problems: tuple[Problem, ...] = ()
    pack_bytes: int = 0
    page_bytes: int = 0
    points: int = 0
    verdict_bytes: int = 0


def outcome(case: Case, *, remembering: bool = True) -> Outcome:
    """
    What becomes of a venue with one change. What the change does not reach is taken from the
    unchanged venue, unless nothing shall be remembered.
    """
    there = folder(case.venue)
    texts = {**there.texts, case.file: text_of(case, composed(case.venue)[case.file])}
    if not remembering:
        with forgetting():
            return made_of(texts, there)
    with remembered(case.venue):
        return made_of(texts, there, known=baseline(case.venue).for_shows)


def made_of(texts: Mapping[str, str], there: Folder, known: FitPack | None = None) -> Outcome:
    """What becomes of a venue's texts. Shows need not be held against a pack that is known."""
    try:
        venue = venue_of(texts, there.photos)
    except Refused as refused:
        return Outcome(problems=refused.problems)
    pack = pack_of(venue)
    document = whole_document(pack, there)
    pages = render(document).pages
    if (for_shows := fit_record(pack)) != known:
        hold_shows_against(for_shows)
    published = next(file.content for file in document.files if file.path == "pack.json")
    return Outcome(
        pack_bytes=len(published),
        page_bytes=sum(len(page) for name, page in pages.items() if name.endswith(".md")),
        points=sum(len(field.points) for section in pack.sections for field in section.fields),
    )


Thing = TypeVar("Thing", Section, Page)
Made = TypeVar("Made")


@contextmanager
def remembered(venue: str) -> Iterator[None]:
    """What a change does not reach is not worked out, told or laid out again."""
    base = baseline(venue)
    remember()
    with (
        patch.object(pack_json, "section_lines", base.section_lines),
        patch.object(markdown, "page_text", base.page_text),
    ):
        yield


@cache
def baseline(venue: str) -> "Baseline":
    """The unchanged venue, worked out once a process."""
    return Baseline(folder(venue))


class Baseline:
    """An unchanged venue: what was read, its sections as JSON, its pages."""

    def __init__(self, there: Folder) -> None:
        self.pages: dict[str, tuple[Page, str]] = {}
        self.lines: dict[str, tuple[Section, dict[str, str]]] = {}
        self.starting = True
        remember()
        self.venue = venue_of(there.texts, there.photos)
        with (
            patch.object(pack_json, "section_lines", self.section_lines),
            patch.object(markdown, "page_text", self.page_text),
        ):
            pack = pack_of(self.venue)
            render(whole_document(pack, there))
        self.for_shows = fit_record(pack)
        hold_shows_against(self.for_shows)
        self.starting = False

    def section_lines(self, section: Section) -> dict[str, str]:
        """The JSON of a section; that of the unchanged venue where the section is equal."""
        return self.once(section, self.lines, section_lines)

    def page_text(self, page: Page, scribe: Any) -> str:
        """A page's text; that of the unchanged venue where the page is equal."""
        return self.once(page, self.pages, lambda each: page_text(each, scribe))

    def once(
        self,
        thing: Thing,
        kept: dict[str, tuple[Thing, Made]],
        work: Callable[[Thing], Made],
    ) -> Made:
        """What is made of a thing; what was made of it at the start where it is equal."""
        known = kept.get(thing.key)
        if known and known[0] == thing:
            return known[1]
        found = work(thing)
        if self.starting:
            kept[thing.key] = (thing, found)
        return found


def whole_document(pack: Pack, there: Folder) -> Document:
    """The pages with the venue's photos."""
    document = document_of(pack)
    photos = [Attachment(f"photos/{name}", content) for name, content in there.photos.items()]
    return replace(document, files=(*document.files, *photos))


@cache
def composed_riders() -> dict[str, Data]:
    """The data of the riders."""
    return {path.name: compose(path.read_text("utf-8"), path.name).data for path in RIDERS}


@cache
def riders() -> tuple[RiderAsked, ...]:
    """Shows of several sizes, as the check takes them."""
    return tuple(rider_of(path.read_text("utf-8"), file=path.name, rules=RULES) for path in RIDERS)


def hold_shows_against(published: FitPack) -> None:
    """Check each show by itself, and the first two as a day."""
    for rider in riders():
        fit(published, [rider])
    fit(published, list(riders()[:2]))


@cache
def houses() -> tuple[FitPack, ...]:
    """The houses that shows are held against, as the check takes them."""
    return tuple(fit_record(pack_of(venue_of(*texts_of(venue)))) for venue in VENUES)


def texts_of(venue: str) -> tuple[Mapping[str, str], Mapping[str, bytes]]:
    """A venue's texts and photos."""
    return folder(venue).texts, folder(venue).photos


def rider_outcome(case: Case) -> Outcome:
    """What becomes of a rider with one change, held against every house."""
    text = text_of(case, composed_riders()[case.file])
    try:
        rider = rider_of(text, file=case.file, rules=RULES)
    except Refused as refused:
        return Outcome(problems=refused.problems)
    verdicts = [fit(house, [rider]) for house in houses()]
    return Outcome(verdict_bytes=len(json.dumps(verdicts, allow_nan=False)))
