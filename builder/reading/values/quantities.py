"""Any quantity: its kind tells how it is read."""

from typing import TypedDict

from builder.reading.values.amounts import Amount, no_amount, read_amount
from builder.reading.values.clock import read_time
from builder.reading.values.faults import Fault, advised, fault
from builder.reading.values.kinds import Kind, KindBook
from builder.reading.values.positions import directed_in, directions_of, read_position
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import folded
from builder.reading.values.units import UnitBook
from builder.reading.values.wordings import Wordings, wordings

LIKE = "write it like {like}"
BELOW_ZERO = "is below zero, and {kind} cannot be"


class Quantity(TypedDict):
    """
    A quantity in SI as its kind has it, the author's wording with white space folded, the symbol of
    the unit, and what is wrong with it.
    """

    si: float
    text: str
    symbol: str
    fault: Fault | None


def read_quantity(text: str, name: str, book: KindBook) -> Quantity:
    """
    The author's wording of a quantity of a kind, by the kind's name. A second wording must be
    readable too.
    """
    kind = book["kinds"][name]
    amount = amount_written(text, kind, book)
    wrong = amount["fault"]
    if wrong is not None:
        wrong = advised(wrong, fill(LIKE, {"like": kind["like"]}))
    return {
        "si": amount["si"],
        "text": folded(text),
        "symbol": amount["symbol"],
        "fault": wrong,
    }


def amount_written(text: str, kind: Kind, book: UnitBook) -> Amount:
    """The amount of the first wording, or what is wrong with either."""
    words = wordings(text)
    if words["fault"] is not None:
        return no_amount(words["fault"])
    amount = read_wording(words["first"], kind, book)
    if amount["fault"] is None and words["second"] != "":
        second = read_wording(second_wording(words, kind), kind, book)
        if second["fault"] is not None:
            return second
    return amount


def second_wording(words: Wordings, kind: Kind) -> str:
    """The second wording; without a direction of its own it goes the way of the first."""
    if kind["way"] != "position":
        return words["second"]
    directions = directions_of(kind)
    toward = directed_in(words["first"], directions)["words"]
    if toward == "" or directed_in(words["second"], directions)["sign"] != 0:
        return words["second"]
    return f"{words['second']} {toward}"


def read_wording(text: str, kind: Kind, book: UnitBook) -> Amount:
    """One wording of plain text."""
    if kind["way"] == "time":
        return read_time(text)
    if kind["way"] == "position":
        return read_position(text, kind, book)
    amount = read_amount(text, kind, book)
    if amount["fault"] is None and amount["si"] < 0 and not kind["signed"]:
        reason = fill(BELOW_ZERO, {"kind": kind["kind"]})
        return no_amount(fault(reason, "number-out-of-range"))
    return amount
