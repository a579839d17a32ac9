"""
Fields in plain words: names, notes, counts, yes and no, days, bare ratios, and choices from a list.
"""

import difflib
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Annotated, Any, TypeVar, get_args

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import core_schema

from builder.formulas.primitives import ratio_float
from builder.reading.dated import Dated, dated, until
from builder.reading.numerals import Unreadable, folded, refuse
from builder.reading.refusing import refusing
from builder.reading.values import words as values
from builder.reading.values.days import read_day
from builder.reading.values.faults import empty_fault

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class ReadBy:
    """A field read from text by one function. A value of the right type passes unchanged."""

    read: Callable[[str], Any]
    type: type
    description: str
    example: str
    pattern: str = ""
    """What an editor may hold the text to; it passes all that is read. Empty for any text."""

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        del source, handler
        return core_schema.no_info_plain_validator_function(self._validated)

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        # Editors type a bare 14 or true by YAML's own rules, so their types are let in beside text;
        # reading sees the author's text all the same.
        typed = {int: "integer", float: "number", bool: "boolean", str: "number"}.get(self.type)
        schema = {
            "type": ["string", typed] if typed else "string",
            "description": self.description,
            "examples": [self.example],
        }
        return {**schema, "pattern": self.pattern} if self.pattern else schema

    def _validated(self, value: Any) -> Any:
        if type(value) is self.type and self.type is not str:
            return value
        return refusing(self._read, value, advice=f"write it like {self.example}")

    def _read(self, text: str) -> Any:
        try:
            return self.read(text)
        except Unreadable as wrong:
            raise Unreadable(
                wrong.reason, wrong.code, wrong.advice or f"write it like {self.example}"
            ) from wrong


def words(text: str, longest: int) -> str:
    """
    The text on one line, white space folded.

    Raises
    ------
    Unreadable
        `empty-value` or `text-too-long`.
    """
    found = values.read_words(text, longest)
    refuse(found["fault"])
    return found["text"]


def count(text: str) -> int:
    """
    A whole number, zero or more.

    Raises
    ------
    Unreadable
        `empty-value`, `number-unreadable`, `number-out-of-range` or `count-negative`.
    """
    found = values.read_count(text)
    refuse(found["fault"])
    return found["number"]


def ratio(text: str) -> float:
    """
    A bare number such as a power factor.

    Raises
    ------
    Unreadable
        `empty-value`, `number-unreadable` or `number-out-of-range`.
    """
    found = values.read_bare(text)
    refuse(found["fault"])
    return ratio_float(found["value"])


def yes_no(text: str) -> bool:
    """
    True for `yes` or `true`, False for `no` or `false`.

    Raises
    ------
    Unreadable
        `empty-value` or `choice-unknown`.
    """
    found = values.read_yes_no(text)
    refuse(found["fault"])
    return found["yes"]


def day(text: str) -> date:
    """
    A day, year first.

    Raises
    ------
    Unreadable
        `empty-value` or `date-unreadable`.
    """
    found = read_day(text)
    refuse(found["fault"])
    return date.fromisoformat(found["text"])


def one_of(text: str, choices: tuple[str, ...]) -> str:
    """
    The choice that the text names; capitals and white space do not matter.

    Raises
    ------
    Unreadable
        `empty-value`, or `choice-unknown` with a near name and the list.
    """
    line = folded(text)
    if not line:
        refuse(empty_fault())
    named = {choice.casefold(): choice for choice in choices}
    if found := named.get(line.casefold()):
        return found
    # Closer than elsewhere: "sitting" is spelt much like "standing" and means the opposite.
    near = difflib.get_close_matches(line.casefold()[:80], named, n=1, cutoff=0.75)
    guess = f"did you mean '{named[near[0]]}'? " if near else ""
    raise Unreadable(
        "is not one of the choices", "choice-unknown", f"{guess}write one of: {', '.join(choices)}"
    )


@dataclass(frozen=True, slots=True)
class OneOf:
    """Reads a Literal of texts, and answers a wrong one with the nearest name."""

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        choices = get_args(source)
        read = ReadBy(lambda text: one_of(text, choices), str, "", " or ".join(choices))
        return core_schema.no_info_plain_validator_function(
            read._validated, metadata={"choices": choices}
        )

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del handler
        return {"type": "string", "enum": list(schema["metadata"]["choices"])}


LONGEST_NAME, LONGEST_TEXT = 80, 2000


def name(text: str) -> str:
    """A name: 1 to 80 characters."""
    return words(text, LONGEST_NAME)


def prose(text: str) -> str:
    """A note: 1 to 2,000 characters."""
    return words(text, LONGEST_TEXT)


Name = Annotated[
    str,
    ReadBy(name, str, "a name, one line of at most 80 characters", "Stage right company switch"),
]
Text = Annotated[
    str, ReadBy(prose, str, "words, at most 2,000 characters", "Hung from the purlins.")
]
WHOLE = r"^\s*[0-9][-0-9,/\s]*$"
Count = Annotated[int, ReadBy(count, int, "a whole number, zero or more", "12", WHOLE)]
YesNo = Annotated[bool, ReadBy(yes_no, bool, "yes or no", "yes")]
YEAR_FIRST = r"^\s*[0-9]{4}-[0-9]{2}-[0-9]{2}\s*$"
Day = Annotated[date, ReadBy(day, date, "a day, year-month-day", "2026-03-02", YEAR_FIRST)]
DATED = r"^\s*[0-9]{4}(-[0-9]{2}){0,2}\s*$"
DayOrSo = Annotated[
    Dated, ReadBy(dated, Dated, "a day, a month or a year, year first", "2026-03-02", DATED)
]
"""When something was done, for what counts ages and not days."""
UNTIL = r"^\s*([0-9]{4}(-[0-9]{2}){0,2}|[Ff]urther\s+notice)\s*$"
UntilWhen = Annotated[
    Dated,
    ReadBy(until, Dated, "a day, a month or a year, or 'further notice'", "2026-08-15", UNTIL),
]
"""The last day of something, as far as anybody knows."""
Ratio = Annotated[float, ReadBy(ratio, float, "a number without a unit", "0.9")]
Choice = Annotated[T, OneOf()]
"""A choice from a list: `Choice[Literal["measured", "drawing"]]`."""
