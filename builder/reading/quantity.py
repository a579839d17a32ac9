"""
What every quantity is: a value in SI beside the author's own wording, and how pydantic reads it.
"""

import re
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, ClassVar, Self

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import core_schema

from builder.reading.amounts import Amount, read_amount
from builder.reading.numerals import LONGEST, Unreadable, folded, plain
from builder.reading.refusing import refusing
from builder.reading.units import Table

# What a quantity begins with, and that something stands after its number: a unit, a sign, a side.
# Looser than reading is, so that an editor never marks what is read.
NUMBER_AND_UNIT = r"^\s*[-−.0-9½¼¾⅛⅜⅝⅞⅓⅔][\s\S]*[^-−\s.,0-9½¼¾⅛⅜⅝⅞⅓⅔]"

# A slash parts two wordings where no number goes on across it: `60 ft / 18.3 m`, `60 ft/18.3 m`,
# but not `10 1/2"` or `kg/m2`.
_SLASH = re.compile(r"(?: / |(?<=[A-Za-z%°'\"]) ?/ ?)(?=[-.0-9])")
_BRACKET = re.compile(r" ?\((?=\s*[-.0-9])")


@dataclass(frozen=True, slots=True)
class Quantity:
    """
    A stated quantity.

    ``si`` is in the unit that ``si_unit`` names, ``text`` is the author's wording with white space
    folded, and ``second`` is the value of a second wording, in brackets or after a slash, where the
    author wrote both.
    """

    si: float
    text: str
    second: float | None = None

    kind: ClassVar[str] = "a quantity"
    examples: ClassVar[tuple[str, ...]] = ()
    si_unit: ClassVar[str] = ""
    units: ClassVar[Table] = MappingProxyType({})
    may_be_negative: ClassVar[bool] = False
    pattern: ClassVar[str] = NUMBER_AND_UNIT
    """What an editor may hold the author's wording to; it passes all that is read."""

    @classmethod
    def parse(cls, text: str) -> Self:
        """
        Read the author's wording.

        Raises
        ------
        Unreadable
            With a reason, a code and advice.
        """
        try:
            first, second = cls.amounts(text)
        except Unreadable as wrong:
            raise Unreadable(
                wrong.reason, wrong.code, wrong.advice or f"write it like {cls.like()}"
            ) from wrong
        return cls(first.si, folded(text), second.si if second else None)

    @classmethod
    def amounts(cls, text: str) -> tuple[Amount, Amount | None]:
        """Both wordings, read; the second is None where there is only one."""
        first, second = wordings(text)
        return cls.read(first), cls.read(second) if second else None

    @classmethod
    def read(cls, text: str) -> Amount:
        """Read one wording of plain text."""
        amount = read_amount(text, cls.units, cls.kind)
        if amount.si < 0 and not cls.may_be_negative:
            raise Unreadable(f"is below zero, and {cls.kind} cannot be", "number-out-of-range")
        return amount

    @classmethod
    def like(cls) -> str:
        """Examples in a sentence: `18.3 m or 60 ft`."""
        return " or ".join(cls.examples)

    @classmethod
    def __get_pydantic_core_schema__(
        cls, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        del source, handler
        written = core_schema.plain_serializer_function_ser_schema(lambda quantity: quantity.text)
        return core_schema.no_info_plain_validator_function(cls._validated, serialization=written)

    @classmethod
    def __get_pydantic_json_schema__(
        cls, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        del schema, handler
        return {
            "type": "string",
            "pattern": cls.pattern,
            "description": f"{cls.kind}, such as {cls.like()}",
            "examples": list(cls.examples),
        }

    @classmethod
    def _validated(cls, value: Any) -> Self:
        if isinstance(value, cls):
            return value
        return refusing(cls.parse, value, advice=f"write it like {cls.like()}")


def wordings(text: str) -> tuple[str, str]:
    """
    The one or two wordings of a text, in plain form; the second is empty where there is only one.

    Raises
    ------
    Unreadable
        `empty-value`, or `number-unreadable` for a text too long to be a quantity.
    """
    if len(text) > 2 * LONGEST:
        raise Unreadable(
            f"is longer than {2 * LONGEST} characters, too long for a quantity", "number-unreadable"
        )
    whole = plain(text)
    if not whole:
        raise Unreadable(
            "is empty",
            "empty-value",
            "write a value, `unknown` if nobody knows it yet, `none`, or leave the key out",
        )
    if whole.endswith(")") and (bracket := _BRACKET.search(whole)):
        return whole[: bracket.start()].strip(), whole[bracket.end() : -1].strip()
    first, *others = _SLASH.split(whole, maxsplit=1)
    return first.strip(), others[0].strip() if others else ""
