"""
Values as YAML text: plain where a reader of YAML would take them for what they are, in quotes where
not.
"""

from typing import Any

from builder.reading.nodes import compose
from builder.reading.problems import Refused

Data = str | list[Any] | dict[str, Any]
"""What a file holds before its fields read it: texts, lists, groups."""


def written(value: Data, *, flow: bool, mark: str = "") -> str:
    """
    A value in one line. ``flow`` says that it stands within brackets, ``mark`` which quotes it had
    before.

    Raises
    ------
    ValueError
        If a text cannot be written in YAML, such as one with a control character.
    """
    if isinstance(value, dict):
        return (
            "{"
            + ", ".join(
                f"{written(key, flow=True)}: {written(part, flow=True)}"
                for key, part in value.items()
            )
            + "}"
        )
    if isinstance(value, list):
        return "[" + ", ".join(written(part, flow=True) for part in value) + "]"
    ways = {"": value, '"': double(value), "'": single(value)}
    ordered = [mark, *(way for way in ways if way != mark)] if mark in ways else list(ways)
    for way in ordered:
        if reads_as(ways[way], value, flow=flow):
            return ways[way]
    raise ValueError(f"value must be text that YAML can hold, got {value!r}")


def double(value: str) -> str:
    """In double quotes."""
    return '"' + value.replace("\\", "\\\\").replace('"', '\\"') + '"'


def single(value: str) -> str:
    """In single quotes."""
    return "'" + value.replace("'", "''") + "'"


def reads_as(text: str, value: str, *, flow: bool) -> bool:
    """True where the text, put where it is to stand, is read as the value and disturbs nothing."""
    around = f"a: {{k: {text}, z: 1}}\nb: 2\n" if flow else f"a:\n  k: {text}\n  z: 1\nb: 2\n"
    try:
        return compose(around, "").data == {"a": {"k": value, "z": "1"}, "b": "2"}
    except Refused:
        return False
