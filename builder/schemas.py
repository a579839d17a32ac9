"""
JSON Schemas of every department's file and of riders, from the same descriptions that read them.
"""

import json

from builder.registry import DEPARTMENTS
from builder.rider.description import Rider

RIDER = "rider.json"
DRAFT = "https://json-schema.org/draft/2020-12/schema"


def schemas() -> dict[str, str]:
    """The schema of each department's file, and that of riders, as text by file name."""
    departments = {
        f"{department.key}.json": schema_text(
            department.title, department.description.model_json_schema()
        )
        for department in DEPARTMENTS
    }
    return {**departments, RIDER: schema_text("Rider", Rider.model_json_schema())}


def schema_text(title: str, schema: dict[str, object]) -> str:
    """One schema with its title, keys sorted."""
    return (
        json.dumps(
            {"$schema": DRAFT, **without_defaults(schema), "title": title},
            indent=1,
            sort_keys=True,
            ensure_ascii=False,
        )
        + "\n"
    )


def without_defaults(schema: dict[str, object]) -> dict[str, object]:
    """
    The schema without default values: an editor would write them into the file, and most stand for
    'not stated'.
    """
    kept = {key: trimmed(value) for key, value in schema.items() if key != "default"}
    names = schema.get("properties")
    # Under "properties" the keys are the author's own, and one of them may be called "default".
    return (
        {**kept, "properties": {name: trimmed(part) for name, part in names.items()}}
        if isinstance(names, dict)
        else kept
    )


def trimmed(value: object) -> object:
    """A part of a schema without default values, its texts free of the line breaks of our source."""  # noqa: E501
    if isinstance(value, str):
        return " ".join(value.split())
    if isinstance(value, dict):
        return without_defaults(value)
    return [trimmed(part) for part in value] if isinstance(value, list) else value
