"""Fields that may hold no value, or one that is known in part: `width: Maybe[Length]`."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any, TypeVar, Union, get_args, get_origin

from pydantic import BeforeValidator, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import core_schema

from builder.reading.absent import Absent
from builder.reading.in_part import (
    DISPUTED,
    Between,
    Saying,
    read_in_part,
    within_possible,
    words_of,
)
from builder.reading.quantity import Quantity
from builder.reading.ranges import Possible

T = TypeVar("T")

_WRITTEN = {"unknown": Absent.UNKNOWN, "none": Absent.NONE, "?": Absent.UNKNOWN}
# A lone `?` was the word before, and is still read. A schema lets it in, and editors do not offer
# it, for without quotes it is no valid YAML.
_LET_IN = {"type": "string", "pattern": "^\\s*([Uu]nknown|[Nn]one|\\?)\\s*$"}
# Looser than reading is, so that an editor never marks what is read.
_IN_PART = {
    "type": "string",
    "pattern": (
        "^\\s*((~|[Aa]bout\\s|[Aa]t\\s+least\\s|[Aa]t\\s+most\\s|[Uu]p\\s+to\\s|"
        "[Ss]et\\s+(from|to)\\s)[\\s\\S]*\\S|[\\s\\S]*\\S\\s+to\\s+\\S[\\s\\S]*|"
        "[\\s\\S]*(\\+-|\\+/-|±)[\\s\\S]*\\S)\\s*$"
    ),
    "description": (
        "what is known in part: about 40 ft, 40 ft +- 1 ft, 12 to 15 m, at least 15, up to 2 t;"
        " set from ... to ... or set to ... or ... where it can be chosen"
    ),
}
_SAYING = {
    "type": "object",
    "properties": {
        "says": {"type": ["string", "number"], "description": "What it says."},
        "by": {"type": "string", "description": "Who or what says it, such as drawing of 2009."},
        "on": {"type": ["string", "number"], "description": "As of when."},
    },
    "required": ["says", "by"],
    "additionalProperties": False,
}
_DISPUTED = {
    "type": "object",
    "description": "what several say who do not agree",
    "properties": {
        DISPUTED: {
            "type": "array",
            "minItems": 2,
            "items": _SAYING,
            "description": "What each of two or more sources says that do not agree.",
        }
    },
    "required": [DISPUTED],
    "additionalProperties": False,
}


@dataclass(frozen=True, slots=True)
class OrAbsent:
    """
    Lets `unknown` and `none` stand in a field's place, and where it holds a number, what is known
    of it in part.

    Anything else is for the field's own type, whose errors pass unchanged.
    """

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        stated = handler.generate_schema(
            Union[tuple(each for each in get_args(source) if each is not Absent)]  # noqa: UP007
        )
        written = core_schema.wrap_serializer_function_ser_schema(_written, schema=stated)
        reader = _known_or(possible_of(source)) if is_numeric(source) else _absent_or
        return core_schema.no_info_wrap_validator_function(
            reader,
            stated,
            serialization=written,
            metadata={"in_part": is_numeric(source)},
        )

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        metadata: Any = schema.get("metadata", {})
        return {
            "anyOf": [
                handler(schema),
                {
                    "enum": [Absent.UNKNOWN.value, Absent.NONE.value],
                    "description": "unknown if nobody knows yet, none if there is none",
                },
                _LET_IN,
                *([_IN_PART, _DISPUTED] if metadata.get("in_part") else []),
            ]
        }


def is_numeric(annotation: Any) -> bool:
    """Whether a field holds a quantity, a count or a ratio, and no list or group of them."""
    if isinstance(annotation, type):
        return issubclass(annotation, Quantity) or annotation in (int, float)
    origin = get_origin(annotation)
    if origin is Annotated:
        return is_numeric(get_args(annotation)[0])
    parts = [part for part in get_args(annotation) if part not in (Absent, type(None))]
    return origin is not tuple and bool(parts) and all(is_numeric(part) for part in parts)


def is_unknown_word(value: Any) -> bool:
    """Whether a text says that nobody knows."""
    return isinstance(value, str) and _WRITTEN.get(value.strip().casefold()) is Absent.UNKNOWN


def _absent_or(value: Any, stated: Callable[[Any], Any]) -> Any:
    if isinstance(value, Absent):
        return value
    absent = _WRITTEN.get(value.strip().casefold()) if isinstance(value, str) else None
    return stated(value) if absent is None else absent


def _known_or(possible: Possible | None) -> Callable[[Any, Callable[[Any], Any]], Any]:
    """Reads what is known in part, within what a field says is possible, or one value."""

    def read(value: Any, stated: Callable[[Any], Any]) -> Any:
        in_part = read_in_part(value, stated)
        return _absent_or(value, stated) if in_part is None else within_possible(in_part, possible)

    return read


def possible_of(annotation: Any) -> Possible | None:
    """The range that a field's type is marked with; None where it has only that of its kind."""
    marks = getattr(annotation, "__metadata__", ())
    own = next((mark for mark in marks if isinstance(mark, Possible)), None)
    within = (possible_of(part) for part in get_args(annotation))
    return own or next((found for found in within if found is not None), None)


def _written(value: Any, stated: Callable[[Any], Any]) -> Any:
    if isinstance(value, Between) and value.sayings:
        return {DISPUTED: [_saying(saying) for saying in value.sayings]}
    return value.value if isinstance(value, Absent) else stated(value)


def _saying(saying: Saying[Any]) -> dict[str, str]:
    words = {"says": words_of(saying.says), "by": saying.by}
    return {**words, "on": saying.on} if saying.on else words


def _none_is_left_out(value: Any) -> Any:
    """`none` where the key says as much by being left out."""
    is_word = isinstance(value, str)
    return None if is_word and _WRITTEN.get(value.strip().casefold()) is Absent.NONE else value


Maybe = Annotated[Union[T, Absent], OrAbsent()]  # noqa: UP007
"""A field that may be unknown or none: `width: Maybe[Length] = Absent.NOT_STATED`."""
Perhaps = Annotated[Union[Maybe[T], None], BeforeValidator(_none_is_left_out)]  # noqa: UP007
"""
A field that says something definite where it is left out or none, and may be unknown: `turned:
Perhaps[Turn] = None`.
"""
