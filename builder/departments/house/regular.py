"""``regularly`` of ``house.yml``: times that come back and in which no show has the house."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.reading.problems import Problem
from builder.reading.quantities import TimeOfDay
from builder.reading.weekdays import Weekday
from builder.reading.words import Name, Text
from builder.reading.written import InSpaces

Month = Literal[
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
]


class Regular(InSpaces):
    """A day of the week or a part of the year in which the house is closed or taken, each time."""

    public_because: ClassVar[str] = "no show can have the house then"
    what: Name
    """What it is, such as the rehearsal of the town band, or the summer closure."""
    days: tuple[Weekday, ...] = ()
    """The days of the week. Left out, every day of those months."""
    from_: Annotated[TimeOfDay | None, Field(alias="from")] = None
    """From which time of day on, where it is not the whole day."""
    first_month: Month | None = None
    """The month in which it begins, where it is not all year."""
    begins: Text | None = None
    """When in that month, such as its last week. Left out, on its first day."""
    last_month: Month | None = None
    """The month in which it ends, where it is not all year."""
    ends: Text | None = None
    """When in that month, such as on its first Monday. Left out, on its last day."""

    def contradictions(self) -> Iterator[Problem]:
        """It comes back on some days or in some months, and months have both their ends."""
        first, last = self.says("first_month"), self.says("last_month")
        if first != last:
            key = "first_month" if first else "last_month"
            advice = "write both months, the same twice where it is one"
            yield self.refused(key, "has one end of its months and not the other", advice)
        elif not first and not self.says("days"):
            advice = "write the days of the week, or the months"
            yield self.refused("days", "says neither which days nor which months", advice)

    def says(self, key: str) -> bool:
        """Whether a key is written, if only as unknown."""
        return bool(getattr(self, key)) or key in self.unknown

    def refused(self, key: str, reason: str, advice: str) -> Problem:
        """What keeps it from telling when it is."""
        return Problem(self.where(key), self.what, "", reason, "regular-when", advice)
