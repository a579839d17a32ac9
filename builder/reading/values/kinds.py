"""The kinds of quantity as data: how each is read, and what it is called."""

from typing import Literal, NotRequired, TypedDict

from builder.reading.values.amounts import Asked
from builder.reading.values.units import UnitBook


class Directions(TypedDict):
    """
    The directions of a position: the sign of each wording, what to write where none is given,
    whether a length without one will do, and the words that mean no distance at all.
    """

    signs: dict[str, int]
    add: str
    may_lack: bool
    zero: list[str]


class Kind(Asked):
    """
    A kind of quantity. ``like`` are examples in a sentence; ``signed`` says whether it can be below
    zero, ``way`` how it is read.
    """

    like: str
    signed: bool
    way: Literal["amount", "position", "time"]
    directions: NotRequired[Directions]


class KindBook(UnitBook):
    """Kinds of quantity by name, with the units of all kinds."""

    kinds: dict[str, Kind]
