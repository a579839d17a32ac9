"""An amount: a number and its unit, read together, in SI, with how finely it was written."""

from typing import TypedDict

from builder.formulas.primitives import Ratio, ratio_float, ratio_product, ratio_sum
from builder.reading.values.faults import Fault, fault
from builder.reading.values.numerals import Leading, leading_numeral, ratio
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import is_digit, is_letter
from builder.reading.values.units import Unit, UnitBook, unit_found

LONGEST = 120
SIGNS_OF_UNITS = "%°'\"#µ"
"""What a unit begins with where it does not begin with a letter."""
TOO_LONG = "is longer than {most} characters, too long for {kind}"
NO_QUANTITY = "is not one number and its unit, as {kind} must be"
WRITE = "write {choices}"
NO_SECOND_UNIT = "has a second number without a unit: '{words}'"
WRITE_UNIT = "write '{words} {symbol}'"
WRONG_SECOND_UNIT = "has '{words}' after {symbol}"
ONLY_SMALLER = "after {symbol} only {smaller} can follow"
TWO_FRACTIONS = "has a fraction of {symbol} and then {smaller}"
TOO_MUCH = "has {words} after the {symbol}, and {count} {smaller} make one"


class Asked(TypedDict):
    """What an amount should be: the table of its units, its kind in words, units to offer."""

    table: str
    kind: str
    offered: list[str]


class Amount(TypedDict):
    """
    A value in SI, the step of its last written digit in SI (0 where it is exact), the symbol of the
    unit it was written in, and what is wrong with it.
    """

    si: float
    step_si: float
    symbol: str
    fault: Fault | None


def amount_of(si: float, step_si: float, symbol: str) -> Amount:
    """An amount that was read."""
    return {"si": si, "step_si": step_si, "symbol": symbol, "fault": None}


def no_amount(wrong: Fault) -> Amount:
    """An amount that cannot be read."""
    return {"si": 0.0, "step_si": 0.0, "symbol": "", "fault": wrong}


def read_amount(text: str, asked: Asked, book: UnitBook) -> Amount:
    """
    Read plain text such as `18.3 m`, `27'-10 1/2"` or `1 h 30 min`.

    Any code of a number or a unit, and `unit-missing`.
    """
    if len(text) > LONGEST:
        reason = fill(TOO_LONG, {"most": str(LONGEST), "kind": asked["kind"]})
        return no_amount(fault(reason, "number-unreadable"))
    number = leading_numeral(text)
    if number["fault"] is not None:
        return no_amount(number["fault"])
    rest = number["rest"]
    if rest == "":
        return no_amount(missing_unit(text, asked))
    if not is_letter(rest[0]) and SIGNS_OF_UNITS.find(rest[0]) < 0:
        reason = fill(NO_QUANTITY, {"kind": asked["kind"]})
        return no_amount(fault(reason, "number-unreadable"))
    first, second = two_units(rest)
    names = book["tables"][asked["table"]]["names"]
    if second != "" and first in names:
        unit = book["tables"][asked["table"]]["units"][names[first]]
        if "smaller" in unit:
            return compound(text, number, unit, second, asked, book)
    return single(number, asked, book)


def single(number: Leading, asked: Asked, book: UnitBook) -> Amount:
    """A number and one unit."""
    found = unit_found(number["rest"], asked["table"], asked["kind"], book)
    if found["fault"] is not None:
        return no_amount(found["fault"])
    unit = book["tables"][asked["table"]]["units"][found["symbol"]]
    value = number["value"]
    if "offset" in unit:
        value = ratio_sum(value, unit["offset"])
    return amount_of(
        ratio_float(ratio_product(value, unit["factor"])),
        ratio_float(ratio_product(number["step"], unit["factor"])),
        unit["symbol"],
    )


def missing_unit(text: str, asked: Asked) -> Fault:
    """A bare number where an amount belongs, with the number in the units most likely meant."""
    choices = [f"'{text} {symbol}'" for symbol in asked["offered"]]
    advice = fill(WRITE, {"choices": " or ".join(choices)}) if len(choices) > 0 else ""
    return fault("needs a unit", "unit-missing", advice)


def two_units(rest: str) -> tuple[str, str]:
    """
    The unit that another number follows, and that number with what stands behind it: `ft` and
    `6 in`, `'` and `10 1/2"`. The second is empty where none follows.
    """
    end = 0
    while end < len(rest) and is_letter(rest[end]):
        end += 1
    if end == 0 and rest.startswith("'"):
        end = 1
    behind = rest[end:].lstrip(" ").removeprefix("-").lstrip(" ")
    begins = end > 0 and behind != "" and (is_digit(behind[0]) or behind[0] == ".")
    return (rest[:end], behind) if begins else ("", "")


def compound(
    text: str, number: Leading, unit: Unit, second: str, asked: Asked, book: UnitBook
) -> Amount:
    """A number of a unit, and a second one of its smaller unit."""
    rest = leading_numeral(second)
    smaller = book["tables"][asked["table"]]["units"][unit.get("smaller", "")]
    wrong = rest["fault"]
    if wrong is None:
        wrong = second_unit_fault(rest["rest"], second, unit, asked, book)
    if wrong is None:
        wrong = second_number_fault(number, rest, second, unit)
    if wrong is not None:
        return no_amount(wrong)
    whole = ratio_product(without_minus(number["value"]), whole_ratio(unit.get("count", 0)))
    total = ratio_float(ratio_product(ratio_sum(whole, rest["value"]), smaller["factor"]))
    step = ratio_float(ratio_product(rest["step"], smaller["factor"]))
    return amount_of(-total if text.startswith("-") else total, step, unit["symbol"])


def second_unit_fault(
    sign: str, second: str, unit: Unit, asked: Asked, book: UnitBook
) -> Fault | None:
    """What is wrong with the unit behind a second number."""
    smaller = unit.get("smaller", "")
    if sign == "":
        reason = fill(NO_SECOND_UNIT, {"words": second})
        advice = fill(WRITE_UNIT, {"words": second, "symbol": smaller})
        return fault(reason, "unit-missing", advice)
    found = unit_found(sign, asked["table"], asked["kind"], book)
    if found["fault"] is not None or found["symbol"] == smaller:
        return found["fault"]
    reason = fill(WRONG_SECOND_UNIT, {"words": sign, "symbol": unit["symbol"]})
    advice = fill(ONLY_SMALLER, {"symbol": unit["symbol"], "smaller": smaller})
    return fault(reason, "unit-unknown", advice)


def second_number_fault(number: Leading, rest: Leading, second: str, unit: Unit) -> Fault | None:
    """What is wrong with a second number: a fraction before it, or more than make one."""
    parts = {"symbol": unit["symbol"], "smaller": unit.get("smaller", "")}
    if ratio_product(number["value"], whole_ratio(1))["bottom"] != "1":
        reason = fill(TWO_FRACTIONS, parts)
        return fault(reason, "number-unreadable", "write the fraction once")
    count = unit.get("count", 0)
    if is_below_zero(ratio_sum(rest["value"], whole_ratio(-count))):
        return None
    reason = fill(TOO_MUCH, {**parts, "words": second, "count": str(count)})
    return fault(reason, "number-out-of-range")


def whole_ratio(number: int) -> Ratio:
    """A whole number as a fraction."""
    return ratio(str(number), "1")


def without_minus(value: Ratio) -> Ratio:
    """A fraction without its sign."""
    return ratio(value["top"].removeprefix("-"), value["bottom"])


def is_below_zero(value: Ratio) -> bool:
    """Whether a fraction in lowest terms is below zero."""
    return value["top"].startswith("-")
