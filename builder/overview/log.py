"""
``log.yml``: what changed in the house, dated. Optional; ``housepack stock`` adds to it, and a crew
may write in it by hand.

It belongs to no department and gives no facts: it is published as the page 'What changed' and its
feed.
"""

from typing import Annotated

from builder.pack import Altered, Change
from builder.reading.words import Count, Day, Name, Text, YesNo
from builder.reading.written import NotInWords, Written

LOG = "log.yml"
SPACES = "spaces/"


def list_file(path: str) -> str:
    """
    A file as the log and orders name its lists: without its ending, and of a space with its folder
    before it, such as ``studio/power``.
    """
    return path.removesuffix(".yml").removeprefix(SPACES)


def space_of_file(path: str) -> str:
    """The folder of the space that a file is of; empty for what stands beside ``house.yml``."""
    return list_file(path).rpartition("/")[0]


LONGEST = 2000
"""The longest text of a value that an entry holds; a longer one is cut."""


class Alteration(Written):
    """One key of a line, before and after."""

    key: Name
    """The key, such as condition."""
    was: Text | None = None
    """What it said before. Left out where it was not written."""
    now: Text | None = None
    """What it says since. Left out where it is no longer written."""


class Logged(Written):
    """One change of the house."""

    on: Day
    """The day."""
    by: Name
    """Who changed it, by role."""
    why: Text
    """Why, in a sentence."""
    house_only: Annotated[YesNo | None, NotInWords("it keeps the entry off every page")] = None
    """Yes where the entry is for the house only: it is published nowhere."""
    did: Name | None = None
    """What was done, such as out, back, count, move, swap, add, remove or verified."""
    file: Name | None = None
    """The file that the line stands in."""
    within: Name | None = None
    """The list that the line stands in, such as sound.stock."""
    line: Name | None = None
    """The name of the line."""
    out: Count | None = None
    """How many of the line do not work since, where something went out or came back."""
    of: Count | None = None
    """How many there are of the line."""
    changes: tuple[Alteration, ...] = ()
    """The keys that changed."""
    moved: tuple[Text, ...] = ()
    """The figures that moved with it, in words."""


class Log(Written):
    """What changed, oldest first."""

    entries: tuple[Logged, ...]
    """The changes, oldest first."""


def changes_of(log: Log | None) -> tuple[Change, ...]:
    """The log as the pack publishes it, in the author's order."""
    return tuple(change_of(entry) for entry in log.entries) if log else ()


def change_of(entry: Logged) -> Change:
    """One change as the pack publishes it."""
    return Change(
        on=entry.on.isoformat(),
        by=entry.by,
        why=entry.why,
        did=entry.did or "",
        file=entry.file or "",
        within=entry.within or "",
        line=entry.line or "",
        out=entry.out,
        of=entry.of,
        altered=tuple(Altered(part.key, part.was or "", part.now or "") for part in entry.changes),
        moved=entry.moved,
    )
