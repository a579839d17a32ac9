"""Every pack fits the schema that is published beside it, and what is no pack does not."""

import json
from functools import cache
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from builder.files import published
from builder.pack_schema import PATH, pack_schema_text

ROOT = Path(__file__).parent.parent
VENUES = [
    ROOT / "venue",
    *sorted(path.parent for path in (ROOT / "tests" / "venues").glob("*/house.yml")),
]
SCHEMA = json.loads(pack_schema_text())


@cache
def files_of(venue: Path) -> dict[str, bytes]:
    """What is published beside the pages, by path."""
    return {file.path: file.content for file in published(venue).files}


@pytest.mark.parametrize("venue", VENUES, ids=lambda path: path.name)
def test_the_pack_of_every_venue_fits(venue: Path) -> None:
    files = files_of(venue)
    jsonschema.validate(json.loads(files["pack.json"]), json.loads(files[PATH]))


@cache
def starter_pack() -> str:
    """The pack of a small venue."""
    return files_of(VENUES[-1])["pack.json"].decode()


def broken(change: str) -> dict[str, Any]:
    """A pack with one thing in it that no pack has."""
    pack: dict[str, Any] = json.loads(starter_pack())
    if change == "another format":
        pack["format"] = 99
    elif change == "no format":
        del pack["format"]
    elif change == "a number as text":
        fact = next(fact for fact in pack["sections"][0]["items"][0]["facts"] if "value" in fact)
        fact["value"]["number"] = "twelve"
    elif change == "a standing of its own":
        pack["sections"][0]["items"][0]["facts"][0]["standing"] = "perhaps"
    else:
        del pack["sections"][0]["key"]
    return pack


@pytest.mark.parametrize(
    "change",
    ["another format", "no format", "a number as text", "a standing of its own", "no key"],
)
def test_what_is_no_pack_does_not_fit(change: str) -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(broken(change), SCHEMA)


def test_a_key_that_a_later_pack_adds_still_fits() -> None:
    pack = json.loads(starter_pack())
    pack["sections"][0]["added later"] = [1]
    jsonschema.validate(pack, SCHEMA)


def test_every_record_of_the_schema_says_what_it_is() -> None:
    assert [name for name, part in SCHEMA["$defs"].items() if not part.get("description")] == []
