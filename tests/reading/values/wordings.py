"""Wordings made by chance, with the exact value that each says."""

import random
from dataclasses import dataclass
from fractions import Fraction

from builder.reading.quantity import Quantity
from builder.reading.units import Unit
from builder.rider.units import KINDS, UNITS

BOOK = UNITS
VULGAR = {"½": (1, 2), "¼": (1, 4), "¾": (3, 4), "⅛": (1, 8), "⅔": (2, 3)}
ODD = [
    "nan m", "-inf kg", "1e99 m", "1,2 m", "1 000 m", "1/0 in", "1234567890123456 m", "12", "m", "",
    "?", "12 m m", "9'-14\"", "1/2 ft 3 in", "3 ft 6", "3 ft 6 m", "12 M", "12 FT", "12 kgs", "5 K",
    "10 ton", "3 gal", "24:01", "9:75", "13 pm", "0 am", "22.30", "noon", "centre", "on center",
    "3 m house left", "3 m left", "-3 m SL", "3 m US", "SL", "12 m (40 ft", "12 m (40)", "x" * 121,
    "12 m (" + "x" * 300 + ")", "½½ in", "٣ m", "12 m", "+3 m", ".m", "1.2.3 m", "12 m/3 m",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Said:
    """A wording, the kind it is of, and its value in SI, exactly; None where nobody knows here."""

    text: str
    name: str
    si: Fraction | None


def number(draw: random.Random) -> tuple[str, Fraction]:
    """A number from 0 up in one of the ways to write it."""
    whole = draw.randrange(10 ** draw.randrange(1, 6))
    way = draw.randrange(6)
    if way == 0:
        return str(whole), Fraction(whole)
    if way == 1:
        return f"{whole:,}", Fraction(whole)
    if way == 2:
        text = f"{whole}.{draw.randrange(10 ** draw.randrange(1, 6))}"
        return text, Fraction(text)
    if way == 3:
        top, bottom = draw.randrange(20), draw.randrange(1, 33)
        return f"{whole} {top}/{bottom}", whole + Fraction(top, bottom)
    if way == 4:
        sign, (top, bottom) = draw.choice(list(VULGAR.items()))
        return f"{whole}{sign}", whole + Fraction(top, bottom)
    power = draw.randrange(-6, 7)
    return f"{whole}e{power}", whole * Fraction(10) ** power


def unit_of(draw: random.Random, kind: type[Quantity]) -> tuple[str, Unit]:
    """A unit of a kind in one of its spellings."""
    return draw.choice(list(kind.units.items()))


def plain_amount(draw: random.Random, kind: type[Quantity]) -> tuple[str, Fraction]:
    """A number and its unit, or feet and inches, or hours and minutes."""
    words, value = number(draw)
    spelling, unit = unit_of(draw, kind)
    if not unit.smaller or draw.random() < 0.5 or value.denominator != 1:
        return f"{words}{draw.choice(('', ' '))}{spelling}", (value + unit.offset) * unit.factor
    small = kind.units[unit.smaller]
    rest = Fraction(draw.randrange(unit.count * 2), 2)
    rest_words = str(rest) if rest.denominator == 1 else f"{rest.numerator // 2} 1/2"
    gap = draw.choice((" ", "-", " - "))
    total = (value * unit.count + rest) * small.factor
    return f"{words} {spelling}{gap}{rest_words} {small.symbol}", total


def directed(draw: random.Random, kind: type[Quantity], text: str, si: Fraction) -> Said:
    """A length with a direction."""
    name = next(name for name, each in KINDS.items() if each is kind)
    word, sign = draw.choice(list(BOOK["kinds"][name]["directions"]["signs"].items()))
    return Said(f"{text} {draw.choice((word, word.upper()))}", name, si * sign)


def said(draw: random.Random) -> Said:
    """A wording that can be read, with what it says."""
    name = draw.choice([name for name in KINDS if name != "time of day"])
    kind = KINDS[name]
    text, si = plain_amount(draw, kind)
    if "directions" in BOOK["kinds"][name]:
        return directed(draw, kind, text, si)
    if draw.random() < 0.2:
        other, _ = plain_amount(draw, kind)
        text += draw.choice((f" ({other})", f" / {other}"))
    return Said(text, name, si)


def spoiled(draw: random.Random) -> Said:
    """A wording that mostly cannot be read."""
    name = draw.choice(list(KINDS))
    text = draw.choice([*ODD, said(draw).text])
    for _ in range(draw.randrange(3)):
        place = draw.randrange(len(text) + 1)
        text = text[:place] + draw.choice("0123456789.,-/ '\"()mft½e") + text[place + 1 :]
    return Said(text, name, None)


def drawn(count: int, seed: int) -> list[Said]:
    """So many wordings, two of three readable."""
    draw = random.Random(seed)
    return [said(draw) if draw.random() < 0.67 else spoiled(draw) for _ in range(count)]
