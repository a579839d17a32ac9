"""JSON Schemas of every department's file, from the same descriptions that read it."""

import json

from builder.registry import DEPARTMENTS

DRAFT = "https://json-schema.org/draft/2020-12/schema"


def schemas() -> dict[str, str]:
    """The schema of each department's file as text, by file name."""
    return {f"{department.key}.json": schema_text(department.title, department.description.model_json_schema()) for department in DEPARTMENTS}


def schema_text(title: str, schema: dict[str, object]) -> str:
    """One schema with its title, keys sorted."""
    return json.dumps({"$schema": DRAFT, **schema, "title": title}, indent=1, sort_keys=True, ensure_ascii=False) + "\n"
