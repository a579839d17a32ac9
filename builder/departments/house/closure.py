"""``closed`` of ``house.yml``: when the house, or a part of it, is closed to shows."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from builder.reading.absent import Absent
from builder.reading.dated import FURTHER_NOTICE, Dated
from builder.reading.maybe import Maybe
from builder.reading.nodes import spoken
from builder.reading.problems import Problem
from builder.reading.words import DayOrSo, Name, Text, UntilWhen
from builder.reading.written import InSpaces

Closable = Literal[
    "access", "stage", "rigging", "flying", "power", "sound", "lines", "rooms", "crew"
]
"""The departments that may be closed by themselves, as their files are called."""


class Closure(InSpaces):
    """A time in which no show can have the house, or some departments of it."""

    public_because: ClassVar[str] = "no show can play then"
    definite_when_left_out: ClassVar[frozenset[str]] = frozenset({"departments", "spaces"})
    from_: Annotated[Maybe[DayOrSo], Field(alias="from")]
    """
    The first day that is closed, such as 2026-07-01; or the month or the year, 2026-07 or 2026,
    where nobody knows better. Never none.
    """
    until: Maybe[UntilWhen]
    """
    The last day that is closed, such as 2026-08-15; or its month or year; or further notice where
    no end is set. Never none.
    """
    why: Text | None = None
    """Why it is closed, such as works on the stage floor."""
    departments: tuple[Closable, ...] = ()
    """The departments that are closed, where it is not the whole house."""

    def contradictions(self) -> Iterator[Problem]:
        """A closure has a day at one of its ends at least, and begins before it ends."""
        for key, value in (("from", self.from_), ("until", self.until)):
            if value is Absent.NONE:
                yield self.without_end(key)
        ends = [end for end in (self.from_, self.until) if isinstance(end, Dated)]
        if all(end.text == FURTHER_NOTICE for end in ends):
            yield self.without_day()
        elif len(ends) == 2 and ends[0].first > ends[1].last:
            yield self.backwards(ends[0], ends[1])

    def without_end(self, key: str) -> Problem:
        """An end of which it is said that there is none."""
        return Problem(
            self.where(key),
            f"{spoken(self.path_in_file)}.{key}",
            "none",
            "is no day",
            "closure-dateless",
            f"write a day, 'unknown', or 'until: {FURTHER_NOTICE}' where no end is set",
        )

    def without_day(self) -> Problem:
        """A closure without any day."""
        return Problem(
            self.where(),
            spoken(self.path_in_file),
            "",
            "has a day at neither of its ends, so no show can be told whether it is met",
            "closure-dateless",
            "write since when, if only the month or the year, or until when",
        )

    def backwards(self, first: Dated, last: Dated) -> Problem:
        """A closure that ends before it begins."""
        return Problem(
            self.where("until"),
            f"{spoken(self.path_in_file)}.until",
            last.text,
            f"is before {first.text}, from when it is closed",
            "closure-backwards",
            "write the earlier day under 'from'",
        )


class Works(InSpaces):
    """Something that is being changed while shows go on, so that figures are not final."""

    public_because: ClassVar[str] = "shows count on the figures that it changes"
    what: Name
    """What is done, such as new rope locks."""
    departments: tuple[Closable, ...] = ()
    """The departments whose figures are not final. Left out, all of them."""
    not_final: tuple[Name, ...] = ()
    """Which of their figures are not, such as arbors. Left out, all of them."""
    until: Maybe[UntilWhen] = Absent.NOT_STATED
    """Until when, as far as anybody knows."""
