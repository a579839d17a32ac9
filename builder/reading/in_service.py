"""
How many of how many of a line do not work, as the line tells it.

A line tells it in three ways: all of it is out of service, so many of its number work, or the
numbers of single units that do not work are listed. Seven as a number of units and number seven of
them must never be taken for each other.
"""

from dataclasses import dataclass

from pydantic_core import PydanticCustomError

from builder.reading.absent import Absent, is_unknown
from builder.reading.how_many import out_words
from builder.reading.in_part import ends_of
from builder.reading.written import Line

COUNTS = ("count", "channels", "boxes", "ways")
"""Keys that say how many there are, the first that a line has."""
UNITS = ("out_of_service", "dead")
"""Keys that list the numbers of single units which do not work."""


@dataclass(frozen=True, slots=True)
class NotWorking:
    """
    So many, ``out``, of so many, ``of``, do not work; ``units`` are their numbers, if told.

    ``counted`` is what is counted, such as ways; empty where it is the line's things themselves.
    """

    out: int
    of: int
    units: tuple[int, ...] = ()
    counted: str = ""

    @property
    def words(self) -> str:
        """The same in words, such as `1 of 10 out of service, number 7`; empty where all work."""
        return out_words(self.out, self.of, self.units, self.counted)


def not_working(record: Line) -> NotWorking | None:
    """How many of a line do not work; None where it tells too little to say."""
    key = count_key(record)
    if key is None:
        return None
    there, counted = getattr(record, key), "" if key == "count" else key
    working = getattr(record, "working", Absent.NOT_STATED)
    units = units_out(record)
    if record.condition == "out of service" or working is Absent.NONE:
        return NotWorking(there, there, counted=counted)
    if isinstance(working, int):
        return NotWorking(there - working, there, units or (), counted)
    if is_unknown(working) or units is None:
        return None
    return NotWorking(len(units), there, units, counted)


def count_key(record: Line) -> str | None:
    """The key that says how many there are of a line; None where none does or nobody knows."""
    for key in COUNTS:
        if isinstance(getattr(record, key, None), int):
            return key
    return None


def units_out(record: Line) -> tuple[int, ...] | None:
    """The numbers of single units that do not work; None where such a line lists none."""
    for key in UNITS:
        listed = getattr(record, key, None)
        if isinstance(listed, tuple):
            return tuple(sorted(set(listed)))
    return None


def checked_working(count: object, working: object) -> None:
    """Refuse more that work for certain than there can be."""
    works, there = ends_of(working)[0], ends_of(count)[1]
    if isinstance(works, int) and isinstance(there, int) and works > there:
        words = {
            "working": works,
            "count": there,
            "advice": "count those that work among all there are",
        }
        raise PydanticCustomError(
            "working-exceeds-count", "has {working} working of {count}", words
        )
