"""The schemas accept what the reader accepts, so an editor never marks a right file as wrong."""

import json
import re
from collections.abc import Iterable, Iterator
from pathlib import Path

import jsonschema
import pytest
import yaml

import builder.starter
from builder.files import read_folder
from builder.reading.nodes import compose
from builder.schemas import RIDER, schemas

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


VENUE_SCHEMAS = sorted(set(schemas()) - {RIDER})
RIDERS = sorted((Path(__file__).parent / "riders").glob("*.yml"))


@pytest.mark.parametrize("name", VENUE_SCHEMAS)
def test_the_demo_fits_its_schema(name: str) -> None:
    file = name.replace(".json", ".yml")
    data = compose(read_folder(DEMO).texts[file], file).data
    jsonschema.validate(data, json.loads(schemas()[name]))


@pytest.mark.parametrize("path", RIDERS, ids=lambda path: path.stem)
def test_riders_fit_their_schema(path: Path) -> None:
    jsonschema.validate(
        compose(path.read_text("utf-8"), path.name).data, json.loads(schemas()[RIDER])
    )


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
    if name in schemas():
        jsonschema.validate(data, json.loads(schemas()[name]))
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
    jsonschema.validate({"labels": word}, json.loads(schemas()["lines.json"]))


def test_an_unknown_key_does_not_fit() -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({"sise": "3 m"}, json.loads(schemas()["house.json"]))


def test_the_schemas_in_the_repository_are_those_of_the_descriptions() -> None:
    folder = Path(__file__).parent.parent / "schemas"
    assert {
        path.name: path.read_text(encoding="utf-8") for path in folder.glob("*.json")
    } == schemas()
