"""The schemas accept what the reader accepts, so an editor never marks a right file as wrong."""

import json
from pathlib import Path

import jsonschema
import pytest

from builder.files import read_folder
from builder.reading.nodes import compose
from builder.schemas import RIDER, schemas

DEMO = Path(__file__).parent.parent / "venue"


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


def test_an_unknown_key_does_not_fit() -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({"sise": "3 m"}, json.loads(schemas()["house.json"]))


def test_the_schemas_in_the_repository_are_those_of_the_descriptions() -> None:
    folder = Path(__file__).parent.parent / "schemas"
    assert {
        path.name: path.read_text(encoding="utf-8") for path in folder.glob("*.json")
    } == schemas()
