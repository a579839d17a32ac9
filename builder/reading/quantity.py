"""
What every quantity is: a value in SI beside the author's own wording, and how pydantic reads it.

Wordings are read in ``values/``, as the page reads them, by plain data that each kind gives.
"""

from dataclasses import dataclass
from functools import cache, lru_cache
from types import MappingProxyType
from typing import Any, ClassVar, Literal, Self

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import core_schema

from builder.reading import units
from builder.reading.amounts import Amount
from builder.reading.numerals import Unreadable, folded, refuse
from builder.reading.refusing import refusing
from builder.reading.units import Table
from builder.reading.values import wordings as values
from builder.reading.values.kinds import Directions, Kind
from builder.reading.values.quantities import read_wording, second_wording
from builder.reading.values.units import UnitBook

# What a quantity begins with, and that something stands after its number: a unit, a sign, a side.
# Looser than reading is, so that an editor never marks what is read.
NUMBER_AND_UNIT = r"^\s*[-−.0-9½¼¾⅛⅜⅝⅞⅓⅔][\s\S]*[^-−\s.,0-9½¼¾⅛⅜⅝⅞⅓⅔]"


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
    way: ClassVar[Literal["amount", "position", "time"]] = "amount"

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
        return _amounts(cls, text)  # type: ignore[arg-type] # mypy takes a class for its instance

    @classmethod
    def read(cls, text: str) -> Amount:
        """Read one wording of plain text."""
        kind, book = data_of(cls), book_of(cls)  # type: ignore[arg-type] # the same
        found = read_wording(text, kind, book)
        refuse(found["fault"])
        return Amount(found["si"], found["step_si"], cls.units.get(found["symbol"]))

    @classmethod
    def directions_data(cls) -> Directions | None:
        """The directions of a position as plain data; None for what has none."""
        return None

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


@lru_cache(maxsize=8192)
def _amounts(kind: type[Quantity], text: str) -> tuple[Amount, Amount | None]:
    words = values.wordings(text)
    refuse(words["fault"])
    first = kind.read(words["first"])
    if not words["second"]:
        return first, None
    second = second_wording(words, data_of(kind))  # type: ignore[arg-type] # the same
    return first, kind.read(second)


def wordings(text: str) -> tuple[str, str]:
    """
    The one or two wordings of a text, in plain form; the second is empty where there is only one.

    Raises
    ------
    Unreadable
        `empty-value`, or `number-unreadable` for a text too long to be a quantity.
    """
    words = values.wordings(text)
    refuse(words["fault"])
    return words["first"], words["second"]


@cache
def data_of(kind: type[Quantity]) -> Kind:
    """A kind as plain data: its words, its table of units, and how it is read."""
    data: Kind = {
        "kind": kind.kind,
        "table": table_name(kind),
        "offered": offered(kind),
        "like": kind.like(),
        "signed": kind.may_be_negative,
        "way": kind.way,
    }
    directions = kind.directions_data()
    if directions is not None:
        data["directions"] = directions
    return data


def table_name(kind: type[Quantity]) -> str:
    """The name of the table that holds a kind's units: one of all tables, or the kind's own."""
    names = [name for name, table in units.KINDS.items() if dict(table) == dict(kind.units)]
    return names[0] if names else kind.kind


def offered(kind: type[Quantity]) -> list[str]:
    """
    The units to offer for a bare number: the first of each system; none where a sign behind the
    number would be a guess, as among slopes, where 12 may be meant as one in twelve.
    """
    if "%" in kind.units:
        return []
    symbols: dict[str, str] = {}
    for unit in kind.units.values():
        symbols.setdefault(unit.system, unit.symbol)
    return list(symbols.values())


@cache
def book_of(kind: type[Quantity]) -> UnitBook:
    """The units of all kinds, and those that only this kind has."""
    book = units.unit_book()
    book["tables"].setdefault(table_name(kind), units.table_data(kind.units))
    return book
