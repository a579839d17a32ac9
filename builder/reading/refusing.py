"""From a reader of text to a validator of pydantic: the same reason, code and advice."""

from collections.abc import Callable
from typing import TypeVar

from pydantic_core import PydanticCustomError

from builder.reading.numerals import Unreadable

T = TypeVar("T")


def refusing(read: Callable[[str], T], value: object, *, advice: str = "") -> T:
    """
    Read a value that must be text.

    Raises
    ------
    PydanticCustomError
        Its type is the problem's code, its message the reason, and its context holds `advice`.
    """
    if not isinstance(value, str):
        raise error("wrong-shape", "should be one value, not a group or a list", advice)
    try:
        return read(value)
    except Unreadable as wrong:
        raise error(wrong.code, wrong.reason, wrong.advice) from wrong


def error(code: str, reason: str, advice: str) -> PydanticCustomError:
    """The error that carries a problem through pydantic."""
    # pydantic fills in one name after the other, so the reason, which may quote the author's
    # braces, comes last.
    return PydanticCustomError(code, "{reason}", {"advice": advice, "reason": reason})
