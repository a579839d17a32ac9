"""
Lengths, and positions from the venue's datum: across to stage left, depth to upstage, height above
the deck.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import ClassVar

from builder.reading import units
from builder.reading.quantity import NUMBER_AND_UNIT, Quantity
from builder.reading.values.kinds import Directions


class Length(Quantity):
    """A length."""

    __slots__ = ()
    kind, si_unit, units, may_be_negative = "a length", "m", units.LENGTH, True
    examples: ClassVar[tuple[str, ...]] = ("18.3 m", "60 ft")

    @property
    def m(self) -> float:
        """Metres."""
        return self.si


class Position(Length):
    """
    A length with a direction after it. ``directions`` gives the sign of each wording of a
    direction, ``zero`` what names no distance at all; where ``asked`` says nothing, a length
    without a direction will do.
    """

    __slots__ = ()
    way = "position"
    directions: ClassVar[Mapping[str, int]] = MappingProxyType({})
    zero: ClassVar[tuple[str, ...]] = ()
    asked: ClassVar[str] = ""

    @classmethod
    def directions_data(cls) -> Directions:
        """The directions as plain data."""
        return {
            "signs": dict(cls.directions),
            "add": cls.asked,
            "may_lack": cls.asked == "",
            "zero": list(cls.zero),
        }


class Across(Position):
    """
    A position across the stage: metres to stage left of the centre line; to stage right is
    negative.
    """

    __slots__ = ()
    kind, examples = "a position across the stage", ("4.2 m SL", "9.5 m SR", "centre")
    directions = MappingProxyType({"sl": 1, "stage left": 1, "sr": -1, "stage right": -1})
    asked = "add SL (stage left) or SR (stage right)"
    zero = ("centre", "center", "on centre", "on center")
    pattern = rf"{NUMBER_AND_UNIT}|^\s*([Oo][Nn]\s+)?[Cc][Ee][Nn][Tt]([Rr][Ee]|[Ee][Rr])\s*$"


class Depth(Position):
    """
    A position up and down the stage: metres upstage of the reference line; downstage is negative.
    """

    __slots__ = ()
    kind, examples = "a position up or down stage", ("2 m US", "3 ft 6 in DS")
    directions = MappingProxyType({"us": 1, "upstage": 1, "ds": -1, "downstage": -1})
    asked = "add US (upstage) or DS (downstage)"


class Height(Position):
    """A height above the deck in metres; below it is negative. Without a word it is up."""

    __slots__ = ()
    kind, examples = "a height", ("1.4 m up", "0.3 m down", "22 ft")
    directions = MappingProxyType({"up": 1, "down": -1})
