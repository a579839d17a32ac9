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
        raise error("not-one-value", "must be one value on the line, not a list or a group of keys", advice)
    try:
        return read(value)
    except Unreadable as wrong:
        raise error(wrong.code, wrong.reason, wrong.advice) from wrong


def error(code: str, reason: str, advice: str) -> PydanticCustomError:
    """The error that carries a problem through pydantic. The author's text is never a template."""
    return PydanticCustomError(code, "{reason}", {"reason": reason, "advice": advice})
