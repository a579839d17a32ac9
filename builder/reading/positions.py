"""
Lengths, and positions from the venue's datum: across to stage left, depth to upstage, height above
the deck.
"""

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import ClassVar

from builder.reading import units
from builder.reading.amounts import Amount
from builder.reading.numerals import Unreadable
from builder.reading.quantity import NUMBER_AND_UNIT, Quantity, wordings

# Directions that belong to another kind of position, or that depend on where one stands.
_ELSEWHERE: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(
            (
                "sl",
                "sr",
                "us",
                "ds",
                "up",
                "down",
                "stage left",
                "stage right",
                "upstage",
                "downstage",
            ),
            "",
        ),
        "house left": "house left is stage right: write SR",
        "house right": "house right is stage left: write SL",
        **dict.fromkeys(("left", "right"), "say whose: SL is stage left, SR stage right"),
    }
)


class Length(Quantity):
    """A length."""

    __slots__ = ()
    kind, si_unit, units, may_be_negative = "a length", "m", units.LENGTH, True
    examples: ClassVar[tuple[str, ...]] = ("18.3 m", "60 ft")

    @property
    def m(self) -> float:
        """Metres."""
        return self.si


class _Position(Length):
    """
    A length with a direction after it. ``directions`` gives the sign of each wording of a
    direction.
    """

    __slots__ = ()
    directions: ClassVar[Mapping[str, int]] = MappingProxyType({})
    asked: ClassVar[str] = ""

    @classmethod
    def amounts(cls, text: str) -> tuple[Amount, Amount | None]:
        """Both wordings; a second one without a direction goes the way of the first."""
        first, second = wordings(text)
        amount = cls.read(first)
        if not second:
            return amount, None
        if cls._directed(second)[1] == 0 and (toward := cls._directed(first)[2]):
            second = f"{second} {toward}"
        return amount, cls.read(second)

    @classmethod
    def read(cls, text: str) -> Amount:
        """Read one wording: a length and its direction."""
        length, sign, _ = cls._directed(text)
        if not sign:
            cls._refuse_elsewhere(text)
        amount = super().read(length)
        if sign and length.startswith("-"):
            raise Unreadable(
                "has a minus and a direction",
                "number-unreadable",
                f"keep the direction alone, like {cls.like()}",
            )
        return (
            Amount(amount.si * sign + 0.0, amount.step_si, amount.unit)
            if sign
            else cls._undirected(amount)
        )

    @classmethod
    def _undirected(cls, amount: Amount) -> Amount:
        if amount.si == 0:
            return amount
        raise Unreadable(
            "does not say which way", "direction-missing", f"{cls.asked}, like {cls.like()}"
        )

    @classmethod
    def _refuse_elsewhere(cls, text: str) -> None:
        words = next((words for words in _last_words(text) if words.casefold() in _ELSEWHERE), "")
        if words:
            advice = _ELSEWHERE[words.casefold()] or f"write it like {cls.like()}"
            raise Unreadable(
                f"goes '{words}', and {cls.kind} is wanted here", "direction-missing", advice
            )

    @classmethod
    def _directed(cls, text: str) -> tuple[str, int, str]:
        for words in _last_words(text):
            if sign := cls.directions.get(words.casefold()):
                return text[: -len(words)].rstrip(), sign, words
        return text, 0, ""


def _last_words(text: str) -> tuple[str, ...]:
    """The last two words and the last one, where they are letters only: `stage left`, `left`."""
    match = re.search(r" ?([A-Za-z]+(?: [A-Za-z]+)?)$", text)
    words = match[1] if match else ""
    return (words, words.split(" ", 1)[1]) if " " in words else (words,)


class Across(_Position):
    """
    A position across the stage: metres to stage left of the centre line; to stage right is
    negative.
    """

    __slots__ = ()
    kind, examples = "a position across the stage", ("4.2 m SL", "9.5 m SR", "centre")
    directions = MappingProxyType({"sl": 1, "stage left": 1, "sr": -1, "stage right": -1})
    asked = "add SL (stage left) or SR (stage right)"
    pattern = rf"{NUMBER_AND_UNIT}|^\s*([Oo][Nn]\s+)?[Cc][Ee][Nn][Tt]([Rr][Ee]|[Ee][Rr])\s*$"

    @classmethod
    def read(cls, text: str) -> Amount:
        """Read one wording; `centre` is zero."""
        if text.casefold() in ("centre", "center", "on centre", "on center"):
            return Amount(0.0)
        return super().read(text)


class Depth(_Position):
    """
    A position up and down the stage: metres upstage of the reference line; downstage is negative.
    """

    __slots__ = ()
    kind, examples = "a position up or down stage", ("2 m US", "3 ft 6 in DS")
    directions = MappingProxyType({"us": 1, "upstage": 1, "ds": -1, "downstage": -1})
    asked = "add US (upstage) or DS (downstage)"


class Height(_Position):
    """A height above the deck in metres; below it is negative. Without a word it is up."""

    __slots__ = ()
    kind, examples = "a height", ("1.4 m up", "0.3 m down", "22 ft")
    directions = MappingProxyType({"up": 1, "down": -1})

    @classmethod
    def _undirected(cls, amount: Amount) -> Amount:
        return amount
