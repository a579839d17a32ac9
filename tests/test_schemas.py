"""The schemas accept what the reader accepts, so an editor never marks a right file as wrong."""

import json
import re
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

import builder.starter
from builder.files import read_folder
from builder.keys import SHARED, keys_of, records_of
from builder.overview.log import Log
from builder.reading.nodes import compose
from builder.reading.written import Written
from builder.registry import DEPARTMENTS
from builder.rider.description import Rider
from builder.schemas import LOG_SCHEMA, RIDER, schemas

DEMO = Path(__file__).parent.parent / "venue"


STARTER = Path(builder.starter.__file__).parent
QUARRY = Path(__file__).parent / "venues" / "quarry"
WRITTEN = [
    *sorted(STARTER.glob("*.y*ml")),
    *sorted(DEMO.glob("*.yml")),
    *sorted(DEMO.glob("shows/*.yml")),
    *sorted(QUARRY.glob("*.yml")),
]
"""Every file that a crew may take as an example."""


TEXTS = schemas()
"""All schemas as text, made once: they take a second."""


@cache
def schema_of(name: str) -> dict[str, Any]:
    """A schema, read once."""
    found: dict[str, Any] = json.loads(TEXTS[name])
    return found


@cache
def validator(name: str) -> jsonschema.Draft202012Validator:
    """What holds data against a schema, which is itself held against its draft once."""
    jsonschema.Draft202012Validator.check_schema(schema_of(name))
    return jsonschema.Draft202012Validator(schema_of(name))


class Editor(yaml.BaseLoader):
    """YAML as editors read it: by the core schema of YAML 1.2, which knows no day and no `yes`."""


for tag, pattern, first in (
    ("null", r"~|null|Null|NULL|", ["~", "n", "N", ""]),
    ("bool", r"true|True|TRUE|false|False|FALSE", list("tTfF")),
    ("int", r"[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+", list("-+0123456789")),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", list("-+.0123456789")),
):
    Editor.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(f"^(?:{pattern})$"), first)
    construct = getattr(yaml.SafeLoader, f"construct_yaml_{tag}")
    Editor.add_constructor(f"tag:yaml.org,2002:{tag}", construct)


DESCRIPTIONS: dict[str, type[Written]] = {
    **{f"{department.key}.json": department.description for department in DEPARTMENTS},
    RIDER: Rider,
    LOG_SCHEMA: Log,
}


def named_records(name: str, kind: type[Written]) -> Iterator[tuple[str, type[Written]]]:
    """The records of a description by the names that its schema has for them."""
    yield schema_of(name)["title"], kind
    for record in (*records_of(kind), *SHARED):
        yield record.__name__, record


VENUE_SCHEMAS = sorted(set(TEXTS) - {RIDER})
RIDERS = sorted((Path(__file__).parent / "riders").glob("*.yml"))


@pytest.mark.parametrize("name", VENUE_SCHEMAS)
def test_the_demo_fits_its_schema(name: str) -> None:
    file = name.replace(".json", ".yml")
    data = compose(read_folder(DEMO).texts[file], file).data
    validator(name).validate(data)


@pytest.mark.parametrize("path", RIDERS, ids=lambda path: path.stem)
def test_riders_fit_their_schema(path: Path) -> None:
    validator(RIDER).validate(compose(path.read_text("utf-8"), path.name).data)


@pytest.mark.parametrize("name", VENUE_SCHEMAS)
def test_every_demo_file_names_its_schema(name: str) -> None:
    first_line = read_folder(DEMO).texts[name.replace(".json", ".yml")].splitlines()[0]
    assert first_line == f"# yaml-language-server: $schema=../schemas/{name}"


@pytest.mark.source("YAML 1.2.2, clause 10.3.2, tag resolution of the core schema, from memory")
@pytest.mark.parametrize("path", WRITTEN, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_an_editor_marks_nothing_in_a_file_that_we_wrote(path: Path) -> None:
    data = yaml.load(path.read_text("utf-8"), Loader=Editor)  # noqa: S506 it makes plain values
    rider = path.parent.name == "shows" or path.stem == "rider"
    name = RIDER if rider else f"{path.stem}.json"
    if name in TEXTS:
        validator(name).validate(data)
    assert "?" not in set(scalars(data))


def scalars(data: object) -> Iterator[object]:
    """Every value that a file writes."""
    parts: Iterable[object] = ()
    if isinstance(data, dict):
        parts = data.values()
    elif isinstance(data, list):
        parts = data
    else:
        yield data
    for part in parts:
        yield from scalars(part)


@pytest.mark.parametrize("word", ["unknown", "Unknown", "none", "None", "?"])
def test_a_schema_lets_in_every_word_for_a_value_that_is_not_there(word: str) -> None:
    validator("lines.json").validate({"labels": word})


def records(schema: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every record of a schema, the file itself first, by name."""
    yield schema["title"], schema
    yield from schema["$defs"].items()


def texts_met(part: dict[str, Any], schema: dict[str, Any], *, inner_first: bool) -> Iterator[str]:
    """The descriptions that an editor meets at one value, with or without what refers to others."""
    own = [part["description"]] if "description" in part else []
    if not inner_first:
        yield from own
    for choice in (*part.get("allOf", ()), *part.get("anyOf", ()), *part.get("oneOf", ())):
        yield from texts_met(choice, schema, inner_first=inner_first)
    if "$ref" in part:
        name = part["$ref"].removeprefix("#/$defs/")
        yield from texts_met(schema["$defs"][name], schema, inner_first=inner_first)
    if inner_first:
        yield from own


KEYS = [
    (name, title, key)
    for name in sorted(TEXTS)
    for title, record in records(schema_of(name))
    for key in record["properties"]
]


def test_every_key_of_every_file_is_in_the_schemas() -> None:
    keys = {
        (f"{department.key}.json", key.name)
        for department in DEPARTMENTS
        for record in (department.description, *records_of(department.description))
        for key in keys_of(record)
    }
    assert keys <= {(name, key) for name, _, key in KEYS}
    assert len(KEYS) > 1_000


@pytest.mark.parametrize("inner_first", [False, True])
def test_an_editor_shows_each_keys_own_text_whichever_part_of_a_schema_it_reads_first(
    inner_first: bool,
) -> None:
    described = {
        (name, title, key.name): key.meaning.replace("`", "")
        for name, kind in DESCRIPTIONS.items()
        for title, record in named_records(name, kind)
        for key in keys_of(record)
    }
    for name in TEXTS:
        schema = schema_of(name)
        for title, record in records(schema):
            for key, part in record["properties"].items():
                texts = list(texts_met(part, schema, inner_first=inner_first))
                own = described[name, title, key]
                assert own
                assert len(texts) == 1, (name, title, key)
                assert texts[0].startswith(f"{own} Value: "), (name, title, key)
                assert "$ref" not in part, "some editors pass over what stands beside a reference"


def groups_of_keys(part: Any) -> Iterator[dict[str, Any]]:
    """Every set of keys that stands anywhere in a schema."""
    if isinstance(part, dict):
        if isinstance(part.get("properties"), dict):
            yield part["properties"]
        for inner in part.values():
            yield from groups_of_keys(inner)
    elif isinstance(part, list):
        for inner in part:
            yield from groups_of_keys(inner)


def test_no_key_is_without_a_text_also_where_a_group_stands_in_a_values_place() -> None:
    groups = [group for text in TEXTS.values() for group in groups_of_keys(json.loads(text))]
    assert [
        key for group in groups for key, part in group.items() if not part.get("description")
    ] == []
    disputed = next(group["disputed"] for group in groups if "disputed" in group)
    assert disputed["items"]["properties"]["by"]["description"] == (
        "Who or what says it, such as drawing of 2009."
    )


def test_a_key_says_what_may_be_written_beside_what_it_means() -> None:
    access = schema_of("access.json")["$defs"]["Approach"]["properties"]
    assert access["longest_truck"]["description"] == (
        "The longest truck that can use it, tractor and trailer. Value: a length, such as 18.3 m,"
        " exact or known in part; or unknown, or none."
    )
    house = schema_of("house.json")["properties"]
    assert house["revision"]["description"] == (
        "Which state of the house this is. Value: keys such as number, on, by, note."
    )


@pytest.mark.parametrize(
    "text", ["clear_height: wide", "clear_height: 12", "clear_height: {m: 4}", "clear_height:"]
)
def test_an_editor_marks_a_quantity_that_is_refused(text: str) -> None:
    datum = {"centre_line": "A", "reference_line": "B"}
    deck = f"decks: [{{name: Deck, {text}}}]"
    data = yaml.load(deck, Loader=Editor)  # noqa: S506 it makes plain values
    with pytest.raises(jsonschema.ValidationError, match=r"clear_height"):
        validator("stage.json").validate({"datum": datum, **data})


def test_an_unknown_key_does_not_fit() -> None:
    with pytest.raises(jsonschema.ValidationError):
        validator("house.json").validate({"sise": "3 m"})


def test_the_schemas_in_the_repository_are_those_of_the_descriptions() -> None:
    folder = Path(__file__).parent.parent / "schemas"
    assert {path.name: path.read_text(encoding="utf-8") for path in folder.glob("*.json")} == TEXTS
