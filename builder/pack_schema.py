"""
The JSON Schema of ``pack.json``, made from the records that write it and published beside it.
"""

import json
from functools import cache
from typing import Any

from builder.pack import FORMAT, Pack
from builder.record_schema import DRAFT

PATH = "pack.schema.json"


@cache
def pack_schema_text() -> str:
    """
    The schema as text, keys sorted: the same bytes on every machine.

    A pack of another format does not fit it; keys that a later pack adds do.
    """
    from pydantic import TypeAdapter

    schema: dict[str, Any] = on_one_line(TypeAdapter(Pack).json_schema(mode="validation"))
    schema["properties"]["format"] = {"const": FORMAT, "title": "Format", "type": "integer"}
    schema["required"] = sorted({*schema["required"], "format"})
    whole = {"$schema": DRAFT, **schema, "title": "Pack"}
    return json.dumps(whole, indent=1, sort_keys=True, ensure_ascii=False) + "\n"


def on_one_line(part: Any) -> Any:
    """A schema whose texts are free of the line breaks of our source."""
    if isinstance(part, str):
        return " ".join(part.split())
    if isinstance(part, list):
        return [on_one_line(each) for each in part]
    if isinstance(part, dict):
        return {name: on_one_line(each) for name, each in part.items()}
    return part
