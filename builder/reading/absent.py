"""Three ways of not having a value: nobody knows yet, there is none, nobody said."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from typing import Annotated, Any, TypeVar, Union, get_args

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import core_schema

T = TypeVar("T")


class Absent(Enum):
    """Why there is no value. ``NOT_STATED`` is a field's default and is never written."""

    UNKNOWN = "unknown"
    NONE = "none"
    NOT_STATED = ""


_WRITTEN = {"unknown": Absent.UNKNOWN, "none": Absent.NONE, "?": Absent.UNKNOWN}
# A lone `?` was the word before, and is still read. A schema lets it in, and editors do not offer
# it, for without quotes it is no valid YAML.
_LET_IN = {"type": "string", "pattern": "^\\s*([Uu]nknown|[Nn]one|\\?)\\s*$"}


@dataclass(frozen=True, slots=True)
class OrAbsent:
    """
    Lets `unknown` and `none` stand in a field's place.

    Anything else is for the field's own type, whose errors pass unchanged.
    """

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        stated = handler.generate_schema(
            Union[tuple(each for each in get_args(source) if each is not Absent)]  # noqa: UP007
        )
        written = core_schema.wrap_serializer_function_ser_schema(_written, schema=stated)
        return core_schema.no_info_wrap_validator_function(
            _absent_or, stated, serialization=written
        )

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return {
            "anyOf": [
                handler(schema),
                {
                    "enum": [Absent.UNKNOWN.value, Absent.NONE.value],
                    "description": "unknown if nobody knows yet, none if there is none",
                },
                _LET_IN,
            ]
        }


def _absent_or(value: Any, stated: Callable[[Any], Any]) -> Any:
    if isinstance(value, Absent):
        return value
    absent = _WRITTEN.get(value.strip().casefold()) if isinstance(value, str) else None
    return stated(value) if absent is None else absent


def _written(value: Any, stated: Callable[[Any], Any]) -> Any:
    return value.value if isinstance(value, Absent) else stated(value)


Maybe = Annotated[Union[T, Absent], OrAbsent()]  # noqa: UP007
"""A field that may be unknown or none: `width: Maybe[Length] = Absent.NOT_STATED`."""


def listed(written: tuple[T, ...] | Absent) -> tuple[T, ...]:
    """The records of a list; none where the house has none or has not said."""
    return () if isinstance(written, Absent) else written
