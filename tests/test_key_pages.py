"""Every key is explained at one address, with an example that is read."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from builder.explaining.addresses import address_of, addresses, explained_on
from builder.explaining.examples import examples_in
from builder.explaining.pages import contents, guide_pages
from builder.explaining.places import RIDER, Place, files
from builder.files import example_files
from builder.keys import keys_of, records_of
from builder.reading.nodes import compose
from builder.reading.references import records_within
from builder.reading.written import Written
from tests.facts import at
from tests.sweep import ROOT, VENUES

DOCS = ROOT / "docs"
HEADING = re.compile(r"^(#+) (.+?)(?: \{#(.+)\})?$", re.MULTILINE)
INSTEAD_OF = {"leg_lengths": "apex"}


@cache
def pages() -> Mapping[str, str]:
    """Every page of the guide, made once."""
    return guide_pages(examples_in(example_files()))


def test_the_pages_of_keys_and_the_guide_to_riders_are_those_of_the_descriptions() -> None:
    stale = [
        name
        for name, text in pages().items()
        if not (DOCS / name).is_file() or (DOCS / name).read_text(encoding="utf-8") != text
    ]
    assert stale == [], "run 'make guide'"
    kept = {path.relative_to(DOCS).as_posix() for path in (DOCS / "keys").rglob("*.md")}
    assert kept == {name for name in pages() if name.startswith("keys/")}


def test_every_page_of_keys_is_in_the_contents_of_the_documentation() -> None:
    listed = [f"keys/{page}.md" for group in contents().values() for page in group.values()]
    assert sorted((*listed, "keys/index.md")) == sorted(pages().keys() - {"pack/riders.md"})


def test_every_key_of_every_record_has_an_address() -> None:
    for kind in files().values():
        for record in (kind, *records_of(kind)):
            for key in keys_of(record):
                assert (record, key.name) in addresses()


def test_every_address_stands_once_on_its_page_and_no_heading_stands_twice() -> None:
    for name, text in pages().items():
        headings = HEADING.findall(text)
        if not name.startswith("keys/"):
            continue
        assert [
            words for words, times in Counter(h[1] for h in headings).items() if times > 1
        ] == []
        anchors = Counter(heading[2] for heading in headings if heading[2])
        page = name.removeprefix("keys/").removesuffix(".md")
        expected = {each.anchor for each in addresses().values() if each.page == page}
        assert {anchor for anchor, times in anchors.items() if times > 1} == set()
        assert expected <= set(anchors)
        assert set(examples_on(text)) == expected


def examples_on(text: str) -> Mapping[str, str]:
    """The example under the heading of each key of a page, by the key's anchor."""
    found = {}
    for part in re.split(r"^### ", text, flags=re.MULTILINE)[1:]:
        anchor = re.match(r".+ \{#(.+)\}$", part.splitlines()[0])
        example = re.search(r"^```yaml\n(.+?)\n```$", part, re.MULTILINE | re.DOTALL)
        assert anchor is not None
        assert example is not None, part
        found[anchor[1]] = example[1]
    return found


@cache
def written_records() -> Mapping[type[Written], list[Mapping[str, Any]]]:
    """What the example files and the venues of the tests write of each kind of record."""
    found: dict[type[Written], list[Mapping[str, Any]]] = {}
    whole = [(name, text) for name, text in example_files() if "explaining" not in name]
    more = [(path.name, path.read_text("utf-8")) for path in sorted(VENUES["quarry"].glob("*.yml"))]
    for name, text in (*whole, *more):
        data = compose(text, name).data
        kind = files().get(name, files()[RIDER])
        try:
            description = kind.model_validate(data)
        except ValidationError:
            continue  # a part of a file, written as examples
        description.placed({}, ())
        for record in records_within(description):
            found.setdefault(type(record), []).append(at(data, record.path_in_file))
    for record, part in whole_lines_of_parts():
        found.setdefault(record, []).append(part)
    return found


def whole_lines_of_parts() -> Iterator[tuple[type[Written], Mapping[str, Any]]]:
    """The lines of files with examples that are whole by themselves, by their kind of record."""
    for name, text in example_files():
        kind = files().get(name)
        data = compose(text, name).data
        for key, lines in data.items() if kind and isinstance(data, dict) else ():
            field = kind.model_fields.get(key) if kind else None
            for line in lines if field and isinstance(lines, list) else ():
                try:
                    (record,) = TypeAdapter(field.annotation).validate_python([line])
                except (ValidationError, TypeError, ValueError):
                    continue  # a line of which only some keys are shown
                if isinstance(record, Written):
                    yield type(record), line


def is_read(place: Place, value: object) -> bool:
    """Whether a value is read under a key of some record that is written."""
    record, key = place.key.record, place.key.name
    named = {"name": "Of no house"} if "name" in record.model_fields else {}
    for written in written_records().get(record, [named]):
        rest = {name: part for name, part in written.items() if name != INSTEAD_OF.get(key)}
        try:
            made = record.model_validate({**rest, key: beside(rest.get(key), value)})
        except ValidationError:
            continue
        if not [*made.contradictions()]:
            return True
    return False


def beside(written: object, value: object) -> object:
    """The groups of a list beside those that are written already, to which others refer."""
    if isinstance(value, list) and isinstance(value[0], dict) and isinstance(written, list):
        return [*written, *(entry for entry in value if entry not in written)]
    return value


@pytest.mark.parametrize("file", ["index", *files()])
def test_every_example_is_read(file: str) -> None:
    refused = [
        place.dotted
        for page in contents().get(file, {file: file}).values()
        for place, example in told_on(page)
        if not is_read(place, within(compose(example, place.file).data, place))
    ]
    assert refused == []


def told_on(page: str) -> Iterator[tuple[Place, str]]:
    """The keys that a page explains, each with its example."""
    shown = examples_on(pages()[f"keys/{page}.md"])
    return ((place, shown[address_of(place).anchor]) for place in explained_on(page))


def within(data: Any, place: Place) -> object:
    """The value of a key in an example that shows the keys above it too."""
    for name in (*place.under, place.key.name):
        data = (data[0] if isinstance(data, list) else data)[name]
    return data
