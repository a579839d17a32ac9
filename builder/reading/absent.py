"""
The ways of not having one value: nobody knows yet, there is none, nobody said, and what is known in
part.

Code that needs one number asks ``isinstance(value, Absent)`` first and goes without it. So what is
known in part is never taken for exact; who can do with its ends asks for them (``in_part.py``).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, ClassVar, Self, TypeVar

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Absent:
    """Why there is no one value. ``NOT_STATED`` is a field's default and is never written."""

    value: str

    UNKNOWN: ClassVar["Absent"]
    NONE: ClassVar["Absent"]
    NOT_STATED: ClassVar["Absent"]

    def __copy__(self) -> Self:
        return self

    def __deepcopy__(self, memo: dict[int, Any]) -> Self:
        del memo
        return self

    def __reduce__(self) -> Any:
        return absent_named, (self.value,)


Absent.UNKNOWN = Absent("unknown")
Absent.NONE = Absent("none")
Absent.NOT_STATED = Absent("")
_NAMED: Mapping[str, Absent] = MappingProxyType(
    {each.value: each for each in (Absent.UNKNOWN, Absent.NONE, Absent.NOT_STATED)}
)


def absent_named(value: str) -> Absent:
    """The one way of being absent that a word stands for."""
    return _NAMED[value]


def is_unknown(value: object) -> bool:
    """Whether there is a value, and nobody knows it, or knows it in part only."""
    return isinstance(value, Absent) and value not in (Absent.NONE, Absent.NOT_STATED)


def why_absent(value: Absent) -> str:
    """Why there is no one value, in words that stand after 'is'."""
    if value is Absent.NONE:
        return "none"
    if value is Absent.NOT_STATED:
        return "not stated"
    return "not known yet" if value is Absent.UNKNOWN else "known in part only"


def listed(written: tuple[T, ...] | Absent) -> tuple[T, ...]:
    """The records of a list; none where the house has none or has not said."""
    return () if isinstance(written, Absent) else written
