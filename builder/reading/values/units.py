"""
The units of a kind as plain data, which the house's own files and the page are read with, and the
unit that an author's sign names.
"""

from typing import NotRequired, TypedDict

from builder.formulas.primitives import Ratio
from builder.reading.values.faults import Fault, fault
from builder.reading.values.nearest import nearest
from builder.reading.values.sentences import fill


class Unit(TypedDict):
    """
    A unit: a number of it is ``(number + offset) * factor`` in SI. A length of feet may go on in
    ``smaller`` units, of which ``count`` make one.
    """

    symbol: str
    factor: Ratio
    offset: NotRequired[Ratio]
    smaller: NotRequired[str]
    count: NotRequired[int]


class Table(TypedDict):
    """The units of a kind by their symbols, and every spelling with the symbol it stands for."""

    units: dict[str, Unit]
    names: dict[str, str]


class UnitBook(TypedDict):
    """
    The units of all kinds, and the order in which they are looked through; and the signs whose
    meaning depends on who writes them, each with a reason and an advice.
    """

    tables: dict[str, Table]
    order: list[str]
    ambiguous: dict[str, list[str]]


class UnitFound(TypedDict):
    """A unit's symbol, or what is wrong with the sign."""

    symbol: str
    fault: Fault | None


LONGEST_SIGN = 30
OTHER_KIND = "is {other}, and {kind} is wanted here"
MORE_BEHIND = "has more after the unit: '{words}'"
NOT_KNOWN = "has a unit that is not known here: '{sign}'"
MEANT = "did you mean '{name}'?"


def unit_found(sign: str, table_name: str, kind: str, book: UnitBook) -> UnitFound:
    """
    The unit of a table that an author's sign names; ``kind`` is what is wanted, in words.

    Capitals do not matter in a name of two letters or more, unless they change the meaning (`mW`,
    `MW`). Codes: `unit-ambiguous`, `unit-wrong` (a unit of another kind), `unit-unknown` (with a
    near name).
    """
    symbol = symbol_of(sign, book["tables"][table_name])
    if symbol != "":
        return {"symbol": symbol, "fault": None}
    return {"symbol": "", "fault": unit_fault(sign, table_name, kind, book)}


def symbol_of(sign: str, table: Table) -> str:
    """The symbol that a sign stands for; empty where it stands for none, or for several."""
    exact = table["names"].get(sign, "")
    if exact != "" or len(sign) < 2:
        return exact
    small = sign.lower()
    symbols = [symbol for name, symbol in table["names"].items() if name.lower() == small]
    same = len(symbols) > 0 and all(symbol == symbols[0] for symbol in symbols)
    return symbols[0] if same else ""


def unit_fault(sign: str, table_name: str, kind: str, book: UnitBook) -> Fault:
    """What is wrong with a sign that names no unit of the table."""
    if sign in book["ambiguous"]:
        reason, advice = book["ambiguous"][sign]
        return fault(reason, "unit-ambiguous", advice)
    for other in book["order"]:
        if symbol_of(sign, book["tables"][other]) != "":
            return fault(fill(OTHER_KIND, {"other": other, "kind": kind}), "unit-wrong")
    return unknown_unit(sign, table_name, book)


def unknown_unit(sign: str, table_name: str, book: UnitBook) -> Fault:
    """A unit nobody knows, or words after a unit that is known."""
    words = words_behind_unit(sign, book)
    if words != "":
        reason = fill(MORE_BEHIND, {"words": words})
        return fault(reason, "unit-unknown", "write one value, and put the rest in `note:`")
    small_names = {name.lower(): name for name in book["tables"][table_name]["names"]}
    near = nearest(sign.lower()[:LONGEST_SIGN], list(small_names), 0.5)
    advice = fill(MEANT, {"name": small_names[near]}) if near != "" else ""
    return fault(fill(NOT_KNOWN, {"sign": sign}), "unit-unknown", advice)


def words_behind_unit(sign: str, book: UnitBook) -> str:
    """What stands behind a known unit; empty where nothing does."""
    spaced = sign.replace("(", " (")
    space = spaced.find(" ")
    if space < 0 or space == len(spaced) - 1:
        return ""
    first = spaced[:space]
    known = any(symbol_of(first, table) != "" for table in book["tables"].values())
    return spaced[space + 1 :].strip(" ") if known else ""
