"""
A JSON Schema of typed records, made from their annotations: the records are written once.
"""

from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints, is_typeddict

DRAFT = "https://json-schema.org/draft/2020-12/schema"
PLAIN: dict[object, str] = {
    str: "string",
    bool: "boolean",
    int: "integer",
    float: "number",
    NoneType: "null",
}


def schema_of(record: type) -> dict[str, Any]:
    """
    The schema of a TypedDict, with every record that it holds under ``$defs``.

    Keys that are not told are allowed: a later format may add them.

    Raises
    ------
    ValueError
        If an annotation is none that JSON has a kind for.
    """
    records: dict[str, dict[str, Any]] = {}
    add_record(record, records)
    whole = records.pop(record.__name__)
    return {"$schema": DRAFT, **whole, "$defs": records}


def add_record(record: type, records: dict[str, dict[str, Any]]) -> None:
    """Add a record to those of a schema, and all that it holds."""
    if record.__name__ in records:
        return
    described: dict[str, Any] = {}
    records[record.__name__] = described
    keys = get_type_hints(record)
    required: frozenset[str] = record.__required_keys__  # type: ignore[attr-defined]  # TypedDict
    described |= {
        "title": record.__name__,
        "description": " ".join((record.__doc__ or "").split()),
        "type": "object",
        "properties": {key: kind_of(kind, records) for key, kind in keys.items()},
        "required": sorted(required),
    }


def kind_of(kind: Any, records: dict[str, dict[str, Any]]) -> dict[str, Any]:
    """The schema of one annotation."""
    if kind in PLAIN:
        return {"type": PLAIN[kind]}
    if is_typeddict(kind):
        add_record(kind, records)
        return {"$ref": f"#/$defs/{kind.__name__}"}
    origin, parts = get_origin(kind), get_args(kind)
    if origin is Literal:
        return {"enum": list(parts)}
    if origin in (Union, UnionType):
        return {"anyOf": [kind_of(part, records) for part in parts]}
    if origin is list:
        return {"type": "array", "items": kind_of(parts[0], records)}
    if origin is dict and parts[0] is str:
        return {"type": "object", "additionalProperties": kind_of(parts[1], records)}
    if origin is tuple and ... not in parts:
        places = [kind_of(part, records) for part in parts]
        return {
            "type": "array",
            "prefixItems": places,
            "minItems": len(places),
            "maxItems": len(places),
        }
    raise ValueError(f"kind must be one that JSON has, got {kind}")
