"""
What else a value may have been meant as: the same number in another unit, or with its decimal point
in another place.

Each candidate is a text, read by the quantity's own reader, so what is offered can be written as it
stands. Whoever asks says which values would fit: a usual range, or what stands beside it.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from builder.reading.clock import TimeOfDay
from builder.reading.numerals import Unreadable, leading_numeral
from builder.reading.problems import shortened
from builder.reading.quantity import Quantity, wordings

Fits = Callable[[float], bool]
"""Whether a value in SI would be a usual one."""

MISTAKEN_UNITS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "m": ("ft", "cm", "mm", "in"),
        "cm": ("mm", "in", "m"),
        "mm": ("cm", "in", "m"),
        "ft": ("in", "m"),
        "in": ("ft", "cm", "mm"),
        "m2": ("ft2",),
        "ft2": ("m2",),
        "kg": ("lb", "t", "g"),
        "lb": ("kg", "short ton"),
        "t": ("kg", "short ton"),
        "kPa": ("psf", "kg/m2", "Pa"),
        "Pa": ("kPa", "psf"),
        "psf": ("kPa", "kg/m2"),
        "kg/m2": ("kPa", "psf"),
        "kg/m": ("lb/ft",),
        "lb/ft": ("kg/m",),
        "A": ("mA",),
        "mA": ("A",),
        "VA": ("kVA",),
        "kVA": ("VA",),
        "W": ("kW",),
        "kW": ("W",),
        "Hz": ("kHz", "MHz"),
        "kHz": ("MHz", "Hz"),
        "MHz": ("kHz", "GHz", "Hz"),
        "GHz": ("MHz",),
        "kbit/s": ("Mbit/s",),
        "Mbit/s": ("Gbit/s", "kbit/s"),
        "Gbit/s": ("Mbit/s",),
        "ms": ("s",),
        "s": ("ms", "min"),
        "min": ("h", "s"),
        "h": ("min", "days"),
        "days": ("h", "weeks"),
        "weeks": ("days",),
        "%": ("deg",),
        "deg": ("%",),
        "°C": ("°F",),
        "°F": ("°C",),
        "m/s": ("mph", "km/h", "kn"),
        "mph": ("m/s",),
        "km/h": ("m/s",),
        "kn": ("m/s",),
        "mm2": ("kcmil",),
    }
)
"""Which units are typed where another is meant, the likeliest first."""

WORDS: Mapping[str, str] = MappingProxyType(
    {
        "m": "metres",
        "cm": "centimetres",
        "mm": "millimetres",
        "ft": "feet",
        "in": "inches",
        "kg": "kilograms",
        "g": "grams",
        "t": "tonnes",
        "lb": "pounds",
        "short ton": "short tons",
        "ms": "milliseconds",
        "s": "seconds",
        "min": "minutes",
        "h": "hours",
        "days": "days",
        "weeks": "weeks",
        "deg": "degrees",
        "m2": "square metres",
        "ft2": "square feet",
    }
)
"""How people say these units; the others are said by their sign."""

SHIFTS = (Fraction(1, 10), Fraction(10), Fraction(1, 100), Fraction(100))
"""How a lost or added digit, or a point in the wrong place, changes a number."""
HALF_DAY_S = 12 * 3600


@dataclass(frozen=True, slots=True)
class Candidate:
    """Another value: its text, and what that is in SI."""

    question: str
    text: str
    si: float


@dataclass(frozen=True, slots=True)
class Pieces:
    """A written quantity in parts: `9.6`, ` `, `m`, ` SL`. ``symbol`` is the unit's own sign."""

    number: str
    gap: str
    unit: str
    symbol: str
    after: str


def otherwise(quantity: Quantity, fits: Fits) -> str:
    """
    Questions about what else a quantity may be, each with a blank before it; empty where nothing
    else would fit.
    """
    asked: list[Candidate] = []
    for candidates in (other_units(quantity), other_digits(quantity), other_half_of_day(quantity)):
        candidate = next((each for each in candidates if fits(each.si)), None)
        if candidate and all(candidate.si != before.si for before in asked):
            asked.append(candidate)
    return "".join(
        f" {candidate.question} Then write {shortened(candidate.text)}." for candidate in asked
    )


def otherwise_counted(number: float, fits: Fits) -> str:
    """The same for a bare number, which has no unit to be mistaken."""
    for shift in SHIFTS:
        shifted = float(Fraction(repr(number)) * shift)
        if fits(shifted) and (not isinstance(number, int) or shifted.is_integer()):
            return f" Is a digit in the wrong place? Then write '{shifted:,g}'."
    return ""


def other_units(quantity: Quantity) -> Iterator[Candidate]:
    """The same number in the units that are often meant instead."""
    pieces = pieces_of(quantity)
    if pieces is None:
        return
    for symbol in MISTAKEN_UNITS.get(pieces.symbol, ()):
        # A foot mark is mostly meant as an inch mark, so it is offered as a mark.
        sign = '"' if pieces.unit == "'" and symbol == "in" else symbol
        gap = "" if sign == '"' else pieces.gap or " "
        yield from candidate(
            quantity,
            f"{pieces.number}{gap}{sign}{pieces.after}",
            f"Is it {WORDS.get(symbol, symbol)}?",
        )


def other_digits(quantity: Quantity) -> Iterator[Candidate]:
    """The same unit with the decimal point in another place."""
    pieces = pieces_of(quantity)
    if pieces is None or "/" in pieces.number:
        return
    number, _ = leading_numeral(pieces.number)
    for shift in SHIFTS:
        shifted = number.value * shift
        # Nobody loses a digit to write 0.9 where 9 stands.
        if abs(shifted) >= 1 or abs(number.value) < 1:
            text = f"{decimal(shifted)}{pieces.gap}{pieces.unit}{pieces.after}"
            yield from candidate(quantity, text, "Is the decimal point in the wrong place?")


def other_half_of_day(quantity: Quantity) -> Iterator[Candidate]:
    """A time of day twelve hours later or earlier."""
    if isinstance(quantity, TimeOfDay):
        other_s = (quantity.si + HALF_DAY_S) % (2 * HALF_DAY_S)
        text = f"{int(other_s // 3600):02d}:{int(other_s % 3600 // 60):02d}"
        yield from candidate(quantity, text, "Is it the other half of the day?")


def candidate(quantity: Quantity, text: str, question: str) -> Iterator[Candidate]:
    """A candidate, where its text can be read as such a quantity at all."""
    try:
        yield Candidate(question, text, type(quantity).parse(text).si)
    except Unreadable:
        return


def pieces_of(quantity: Quantity) -> Pieces | None:
    """
    A written quantity in parts; None where it is more than one number and one unit, such as feet
    and inches.
    """
    first, _ = wordings(quantity.text)
    unit = quantity.amounts(quantity.text)[0].unit
    if unit is None:
        return None
    names = [name for name, known in quantity.units.items() if known == unit]
    if not names:  # a gauge of wire, or another way of writing that has no unit after a number
        return None
    _, rest = leading_numeral(first)
    spelled = next(
        (name for name in sorted(names, key=len, reverse=True) if begins(rest, name)), None
    )
    if spelled is None:
        return None
    before, after = first[: len(first) - len(rest)], rest[len(spelled) :]
    if any(char.isdigit() for char in after):
        return None
    number = before.rstrip()
    return Pieces(number, before[len(number) :], rest[: len(spelled)], unit.symbol, after)


def begins(rest: str, name: str) -> bool:
    """Whether a text begins with a unit's name, and not with a longer word."""
    after = rest[len(name) : len(name) + 1]
    return rest.casefold().startswith(name.casefold()) and not (
        name[-1:].isalnum() and after.isalnum()
    )


def decimal(value: Fraction) -> str:
    """A number as people write it, with commas between thousands and no zeros at its end."""
    whole, part = divmod(abs(value), 1)
    digits = f"{float(part):.9f}".rstrip("0").rstrip(".").removeprefix("0")
    return f"{'-' if value < 0 else ''}{int(whole):,}{digits}"
