"""An amount: a number and its unit, read together, in SI, with how finely it was written."""

import re
from dataclasses import dataclass
from fractions import Fraction

from builder.reading.numerals import LONGEST, Numeral, Unreadable, leading_numeral
from builder.reading.units import Table, Unit, find

_COMPOUND = re.compile(r"([A-Za-z]+|')\s*-?\s*([0-9.].*)")
_UNIT_START = re.compile(r"[A-Za-z%°'\"#µ]")


@dataclass(frozen=True, slots=True)
class Amount:
    """
    A value in SI, the step of its last written digit in SI (0 where it is exact), and the unit it
    was written in.
    """

    si: float
    step_si: float = 0.0
    unit: Unit | None = None


def read_amount(text: str, table: Table, kind: str) -> Amount:
    """
    Read plain text such as `18.3 m`, `27'-10 1/2"` or `1 h 30 min`.

    Raises
    ------
    Unreadable
        With any code of a number or a unit.
    """
    if len(text) > LONGEST:
        raise Unreadable(
            f"is longer than {LONGEST} characters, too long for {kind}", "number-unreadable"
        )
    number, rest = leading_numeral(text)
    if not rest:
        raise missing_unit(text, table)
    if not _UNIT_START.match(rest):
        raise Unreadable(f"is not one number and its unit, as {kind} must be", "number-unreadable")
    compound = _COMPOUND.fullmatch(rest)
    if compound and (unit := table.get(compound[1])) and unit.smaller:
        total = _compound(number, unit, compound[2], table, kind)
        return Amount(-total.si if text.startswith("-") else total.si, total.step_si, unit)
    unit = find(rest, table, kind)
    return Amount(
        float((number.value + unit.offset) * unit.factor), float(number.step * unit.factor), unit
    )


def missing_unit(text: str, table: Table) -> Unreadable:
    """A bare number where a quantity belongs, with the number in the units most likely meant."""
    if "%" in table:
        # Among slopes, 12 may be meant as one in twelve: appending the sign would be a guess.
        return Unreadable(
            "needs a unit", "unit-missing", "" if "deg" in table else missing_sign(text)
        )
    symbols: dict[str, str] = {}
    for unit in table.values():
        symbols.setdefault(unit.system, unit.symbol)
    return Unreadable(
        "needs a unit",
        "unit-missing",
        "write " + " or ".join(f"'{text} {symbol}'" for symbol in symbols.values()),
    )


def missing_sign(text: str) -> str:
    """
    What to write for a bare number where a percentage belongs: 0.8 is mostly a share of one, and
    who reads this knows.
    """
    number, _ = leading_numeral(text)
    return (
        f"write '{float(number.value * 100):g} %', or '{text} %' if that is meant"
        if 0 < number.value < 1
        else f"write '{text} %' if that is meant"
    )


def _compound(number: Numeral, unit: Unit, text: str, table: Table, kind: str) -> Amount:
    rest, after = leading_numeral(text)
    smaller = table[unit.smaller]
    if not after:
        raise Unreadable(
            f"has a second number without a unit: '{text}'",
            "unit-missing",
            f"write '{text} {smaller.symbol}'",
        )
    if find(after, table, kind) is not smaller:
        raise Unreadable(
            f"has '{after}' after {unit.symbol}",
            "unit-unknown",
            f"after {unit.symbol} only {smaller.symbol} can follow",
        )
    if number.value.denominator != 1:
        raise Unreadable(
            f"has a fraction of {unit.symbol} and then {smaller.symbol}",
            "number-unreadable",
            "write the fraction once",
        )
    if rest.value >= unit.count:
        raise Unreadable(
            f"has {text} after the {unit.symbol}, and {unit.count} {smaller.symbol} make one",
            "number-out-of-range",
        )
    total = (abs(number.value) * unit.count + rest.value) * smaller.factor
    return Amount(float(total), float(rest.step * smaller.factor), unit)


def rescaled(value: float, factor: Fraction) -> float:
    """
    The value divided by a factor, as if its shortest decimal form were exact: 3.5e-05 m² in mm² is
    35, not 34.99…
    """
    return float(Fraction(repr(value)) / factor)
