"""
JSON Schemas of every department's file, of the log and of riders, from the same descriptions that
read them.

An editor that explains a key shows the first text that it meets at the key's value, and looks into
choices and references first. So a key's own text is the only one there.
"""

import json
from collections.abc import Mapping
from typing import Any

from builder.keys import SHARED, Key, document, keys_of, records_of, value_of
from builder.overview.log import Log
from builder.reading.fields import mark_of
from builder.reading.lists import AtLeastOne
from builder.reading.unknowns import may_be_unknown
from builder.reading.written import DepartmentFile, Written
from builder.registry import DEPARTMENTS
from builder.rider.description import Rider

RIDER = "rider.json"
LOG_SCHEMA = "log.json"
DRAFT = "https://json-schema.org/draft/2020-12/schema"
Schema = dict[str, Any]
NOT_KNOWN: Schema = {"pattern": "^\\s*([Uu]nknown|\\?)\\s*$", "type": "string"}
"""Where a house may not know, though the key's own type does not say so."""


def schemas() -> dict[str, str]:
    """The schema of each department's file, of the log and of riders, as text by file name."""
    departments = {
        f"{department.key}.json": schema_text(department.title, department.description)
        for department in DEPARTMENTS
    }
    others = {LOG_SCHEMA: schema_text("Log", Log), RIDER: schema_text("Rider", Rider)}
    return {**departments, **others}


def schema_text(title: str, kind: type[Written]) -> str:
    """One schema with its title, keys sorted."""
    schema = {"$schema": DRAFT, **schema_of(kind), "title": title}
    return json.dumps(schema, indent=1, sort_keys=True, ensure_ascii=False) + "\n"


def schema_of(kind: type[Written]) -> Schema:
    """
    The schema of a description, and of each record within it.

    Raises
    ------
    ValueError
        If the schema holds a record that the description does not.
    """
    raw = kind.model_json_schema()
    records = {record.__name__: record for record in (*records_of(kind), *SHARED)}
    strangers = sorted(set(raw.get("$defs", {})) - set(records))
    if strangers:
        raise ValueError(f"$defs must be records of {kind.__name__}, got {', '.join(strangers)}")
    of_house = issubclass(kind, DepartmentFile)
    parts = {
        name: record_schema(part, records[name], of_house=of_house)
        for name, part in raw["$defs"].items()
    }
    whole = {**record_schema(raw, kind, of_house=of_house), "description": document(kind)}
    return {**whole, "$defs": parts}


def record_schema(raw: Mapping[str, Any], record: type[Written], *, of_house: bool) -> Schema:
    """A record's schema, each of its keys with its own text. What it says of itself is left out."""
    properties = raw["properties"]
    explained = {
        key.name: key_schema(properties[key.name], key, of_house=of_house)
        for key in keys_of(record)
    }
    kept = {name: raw[name] for name in ("type", "required", "additionalProperties") if name in raw}
    return {**kept, "properties": explained}


def key_schema(raw: Mapping[str, Any], key: Key, *, of_house: bool) -> Schema:
    """
    What may stand under a key, with the key's own text and no other.

    A default is left out: an editor would write it into the file, and most stand for 'not stated'.
    So is a null: a key without a value is refused when the file is read. A house may not know.
    """
    silent = without_texts({name: part for name, part in raw.items() if name != "default"})
    if "anyOf" in silent:
        choices = [choice for choice in silent["anyOf"] if choice != {"type": "null"}]
        silent = {**silent, "anyOf": choices}
        if len(choices) == 1:
            del silent["anyOf"]
            silent = {**silent, **choices[0]}
    if of_house and may_be_unknown(key.record, key.name):
        silent = {"anyOf": [*silent.get("anyOf", [silent]), NOT_KNOWN]}
    if mark_of(key.field, AtLeastOne):
        silent = {**silent, "minItems": 1}
    if "$ref" in silent:
        # Some readers of schemas pass over all that stands beside a reference.
        silent = {"allOf": [silent]}
    return {**silent, "description": key_text(key)}


def key_text(key: Key) -> str:
    """What an editor shows at a key: what it means, and what may be written."""
    return f"{key.meaning} Value: {value_of(key.field)}.".replace("`", "")


def without_texts(part: Any) -> Any:
    """
    A part of a schema without titles and descriptions, but for the own text of each key of a group
    that stands in a value's place.
    """
    if isinstance(part, dict):
        return {
            name: keys_in_place(value) if name == "properties" else without_texts(value)
            for name, value in part.items()
            if name not in ("title", "description")
        }
    if isinstance(part, list):
        return [without_texts(value) for value in part]
    return part


def keys_in_place(properties: Mapping[str, Schema]) -> Schema:
    """The keys of a group that stands in a value's place, each with its own text and no other."""
    return {
        name: {**without_texts(value), "description": value["description"]}
        for name, value in properties.items()
    }
