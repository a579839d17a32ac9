"""Verdicts on the shows to come, from the pack alone; and which of them a change of the house turns."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from builder.cautions import EVERYWHERE
from builder.fit.interpreter import cautions, fit, overall
from builder.fit.published import fit_record
from builder.fit.show_day import THE_DAY
from builder.fit.verdicts import RANK, SHORT
from builder.pack import Pack
from builder.shows.booked import Booked, Books, ShowDay

Record = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Judged:
    """
    What one show, or a day of several, comes to. ``show`` is None for what a day's acts ask together.

    ``verdicts`` are records of :func:`builder.fit.interpreter.fit`, ``cautions`` those that belong beside them.
    """

    day: ShowDay
    show: Booked | None
    verdicts: tuple[Record, ...]

    @property
    def verdict(self) -> str:
        """The worst verdict. What only should be so makes nothing short."""
        return overall(list(self.verdicts), "")

    @property
    def short(self) -> tuple[Record, ...]:
        """The verdicts that are short."""
        return tuple(found for found in self.verdicts if found["verdict"] == SHORT)


@dataclass(frozen=True, slots=True)
class Outlook:
    """The shows to come from a day on, judged; those that have played are only counted."""

    on: date
    coming: tuple[Judged, ...]
    past: tuple[Booked, ...]
    asked: Record = field(repr=False)

    def cautions(self, verdicts: Sequence[Record]) -> tuple[str, ...]:
        """The cautions that belong beside verdicts; the general one where no department that answered has its own."""
        return tuple(cautions(list(verdicts), self.asked)) or (EVERYWHERE,)


@dataclass(frozen=True, slots=True)
class Turned:
    """A verdict of a show that a change turns: another word, another shortage, or the same word by another line of the house."""

    judged: Judged
    before: Record
    after: Record


def outlook(books: Books, pack: Pack, on: date) -> Outlook:
    """Judge every show to come against a pack, day by day."""
    asked = fit_record(pack)
    coming = [judged for day in books.days(on) for judged in judged_day(day, asked)]
    return Outlook(on, tuple(coming), books.past(on), asked)


def judged_day(day: ShowDay, asked: Record) -> list[Judged]:
    """The acts of a day, each by itself, then what they ask together. Of a day on hold, only what the hold adds is told."""
    verdicts = fit(asked, [dict(show.asks) for show in day.shows])["verdicts"]
    told = [show for show in day.shows if show.booking == day.booking]
    found = [Judged(day, show, tuple(each for each in verdicts if each["act"] == show.act)) for show in told]
    of_the_day = tuple(each for each in verdicts if each["act"] == THE_DAY)
    return [*found, Judged(day, None, of_the_day)] if of_the_day else found


def turned(before: Outlook, after: Outlook) -> tuple[Turned, ...]:
    """
    The verdicts that a change turns, those that become short first.

    Both outlooks are of the same books and day. Requirements are the rider's, so that both have the same verdicts in the same order.
    """
    found = [
        Turned(now, old, new)
        for was, now in zip(before.coming, after.coming, strict=True)
        for old, new in zip(was.verdicts, now.verdicts, strict=True)
        if says(old) != says(new)
    ]
    return tuple(sorted(found, key=weight))


def says(verdict: Record) -> tuple[str, str, str]:
    """What makes a verdict another: its word, by how much it is short, and which line of the house answers. A margin that is enough may move."""
    return (verdict["verdict"], verdict["margin"][0] if verdict["verdict"] == SHORT else "", answers(verdict))


def answers(verdict: Record) -> str:
    """The line of the house that answers, empty where none does."""
    return verdict["fact"]["item"] if verdict["fact"] else ""


def weight(turn: Turned) -> tuple[bool, bool, bool, int]:
    """What becomes short first, what must be before what should; then what else turns, and last what only another line answers."""
    was, now = turn.before["verdict"], turn.after["verdict"]
    return (was == now, now != SHORT, turn.after["strictness"] != "must", -RANK[now])
