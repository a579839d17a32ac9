"""
What the check reads of a pack is published with a schema, and the page reads nothing else.
"""

import json
from copy import deepcopy
from dataclasses import replace
from functools import cache
from typing import Any, Literal, NotRequired, TypedDict

import jsonschema
import pytest

from builder.document import Document
from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.fit_file import FORMAT, PATH, SCHEMA_PATH, fit_file_text
from builder.pack import Space
from builder.pack_json import from_json, to_json
from builder.pack_schema import pack_schema_text
from builder.record_schema import schema_of
from builder.registry import RULES
from builder.rider.asked import rider_of
from builder.site.checking import script_of
from tests.test_pack_schema import ROOT, VENUES, files_of

RIDERS = ROOT / "tests" / "riders"


@cache
def schema() -> dict[str, Any]:
    """The schema as it is published."""
    found: dict[str, Any] = json.loads(files_of(VENUES[0])[SCHEMA_PATH])
    return found


@cache
def demo() -> Any:
    """The demo as the check reads it."""
    return json.loads(files_of(VENUES[0])[PATH])


@pytest.mark.parametrize("venue", VENUES, ids=lambda path: path.name)
def test_what_the_check_reads_of_every_venue_fits(venue: Any) -> None:
    files = files_of(venue)
    jsonschema.validate(json.loads(files[PATH]), json.loads(files[SCHEMA_PATH]))
    assert len(files[PATH]) < len(files["pack.json"])


@pytest.mark.parametrize("venue", VENUES, ids=lambda path: path.name)
def test_only_what_is_stated_has_a_number(venue: Any) -> None:
    record = json.loads(files_of(venue)[PATH])
    values = [
        value
        for section in record["sections"]
        for item in section["items"]
        for value in item["values"].values()
    ]
    assert any(value["number"] is not None for value in values)
    assert {value["standing"] for value in values if value["number"] is not None} == {"stated"}


def broken(change: str) -> dict[str, Any]:
    """The demo's file with one thing in it that no such file has."""
    record: dict[str, Any] = deepcopy(demo())
    item = record["sections"][0]["items"][0]
    values = next(iter(item["values"].values()))
    if change == "another format":
        record["format"] = FORMAT + 1
    elif change == "no format":
        del record["format"]
    elif change == "no caution":
        del record["caution"]
    elif change == "a number as text":
        values["number"] = "twelve"
    elif change == "a standing of its own":
        values["standing"] = "perhaps"
    elif change == "a corner of three":
        stage = next(each for each in record["sections"] if each["key"] == "stage")
        stage["outlines"][0]["corners"][0] = [1.0, 2.0, 3.0]
    else:
        del item["values"]
    return record


@pytest.mark.parametrize(
    "change",
    [
        "another format",
        "no format",
        "no caution",
        "a number as text",
        "a standing of its own",
        "a corner of three",
        "no values",
    ],
)
def test_what_is_no_such_file_does_not_fit(change: str) -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(broken(change), schema())


def test_a_key_that_a_later_file_adds_still_fits() -> None:
    record = deepcopy(demo())
    record["sections"][0]["items"][0]["added later"] = [1]
    jsonschema.validate(record, schema())


def test_every_record_of_the_schema_says_what_it_is() -> None:
    records = [schema(), *schema()["$defs"].values()]
    assert len(records) > 5
    assert [each["title"] for each in records if not each["description"]] == []


def test_a_show_is_judged_by_the_file_as_by_the_pack() -> None:
    pack = from_json(files_of(VENUES[0])["pack.json"].decode())
    riders = [
        rider_of((RIDERS / f"{act}.yml").read_text("utf-8"), file=act, rules=RULES)
        for act in ("theatre", "club")
    ]
    ours = fit(fit_record(pack), riders)
    theirs = fit(demo(), riders)
    assert [each["verdict"] for each in theirs["verdicts"]] == [
        each["verdict"] for each in ours["verdicts"]
    ]
    assert theirs["questions"] == ours["questions"]
    pages = {each["fact"]["page"] for each in theirs["verdicts"] if each["fact"]}
    assert any("#" in page for page in pages)


def test_the_page_reads_what_the_file_says() -> None:
    text = script_of(demo())
    data = json.loads(text[text.index(" = {") + 3 : text.index(";\n(function (pack)")])
    for section in data["sections"]:
        for item in section["items"]:
            for each in (item, *item["values"].values()):
                each["checked"] = data["checks"][each["checked"]]
    assert {key: data[key] for key in demo()} == demo()
    assert set(data) - set(demo()) == {"checks", "language", "units"}


class Inner(TypedDict):
    """A record within."""

    size_m: float | None


class Outer(TypedDict):
    """
    A record with one of
    each kind.
    """

    kind: Literal["a", "b"]
    names: list[str]
    by_name: dict[str, Inner]
    place: tuple[float, float]
    more: NotRequired[bool]


def test_a_schema_is_made_of_the_records_annotations() -> None:
    schema = schema_of(Outer)
    assert schema["description"] == "A record with one of each kind."
    assert schema["required"] == ["by_name", "kind", "names", "place"]
    assert schema["properties"]["more"] == {"type": "boolean"}
    right = {"kind": "a", "names": ["x"], "by_name": {"y": {"size_m": None}}, "place": [1, 2.5]}
    jsonschema.validate(right, schema)
    for wrong in (
        {"kind": "c"},
        {"names": [1]},
        {"by_name": {"y": {"size_m": "1"}}},
        {"by_name": {"y": {}}},
        {"place": [1]},
    ):
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate({**right, **wrong}, schema)


class Strange(TypedDict):
    """A record with what JSON has no word for."""

    parts: set[str]


def test_a_kind_that_json_lacks_is_refused() -> None:
    with pytest.raises(ValueError, match=r"kind must be one that JSON has, got set\[str\]"):
        schema_of(Strange)


def test_a_section_of_one_of_several_stages_says_of_which() -> None:
    pack = from_json(files_of(VENUES[0])["pack.json"].decode())
    shared, *own = pack.sections
    studio = [replace(section, space="studio") for section in own]
    several = replace(
        pack, sections=(shared, *studio), spaces=(Space("studio", "The small studio"),)
    )
    assert from_json(to_json(several)) == several
    jsonschema.validate(json.loads(to_json(several)), json.loads(pack_schema_text()))
    record = json.loads(fit_file_text(several, Document(pack.venue, ())))
    jsonschema.validate(record, schema())
    assert record["spaces"] == [{"key": "studio", "name": "The small studio"}]
    assert [section.get("space") for section in record["sections"]] == [
        None,
        *("studio" for _ in own),
    ]
    assert '"space' not in to_json(pack)
    assert demo()["spaces"] == []
