"""
Verdicts on the shows to come, from the pack alone; and which of them a change of the house turns.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date

from builder.cautions import EVERYWHERE
from builder.fit.interpreter import fit
from builder.fit.overall import as_far_as_read, cautions, overall
from builder.fit.published import fit_record
from builder.fit.records import FitPack, Verdict
from builder.fit.show_day import THE_DAY
from builder.fit.verdicts import RANK, SHORT
from builder.pack import Pack
from builder.shows.booked import Booked, Books, ShowDay


@dataclass(frozen=True, slots=True)
class Judged:
    """
    What one show, or a day of several, comes to. ``show`` is None for what a day's acts ask
    together.

    ``verdicts`` are records of :func:`builder.fit.interpreter.fit`. ``configuration`` is the one
    of the house that the show is judged in, empty where it names none and all suit it alike;
    ``space`` is the space, empty in a house of one stage.
    """

    day: ShowDay
    show: Booked | None
    verdicts: tuple[Verdict, ...]
    configuration: str = ""
    space: str = ""

    @property
    def key(self) -> tuple[str, str, str]:
        """What makes it the one it is: date, hold and file."""
        return (self.day.plays.isoformat(), self.day.booking, self.show.file if self.show else "")

    @property
    def verdict(self) -> str:
        """
        The worst verdict; at best an ask where not all can be read. What only should be so makes
        nothing short.
        """
        shows = [self.show] if self.show else self.day.shows
        return as_far_as_read(overall(list(self.verdicts), ""), [show.asks for show in shows])

    @property
    def short(self) -> tuple[Verdict, ...]:
        """The verdicts that are short."""
        return tuple(found for found in self.verdicts if found["verdict"] == SHORT)


@dataclass(frozen=True, slots=True)
class Outlook:
    """The shows to come from a day on, judged; those that have played are only counted."""

    on: date
    coming: tuple[Judged, ...]
    past: tuple[Booked, ...]
    asked: FitPack = field(repr=False)

    def cautions(self, verdicts: Sequence[Verdict]) -> tuple[str, ...]:
        """
        The cautions that belong beside verdicts; the general one where no department that answered
        has its own.
        """
        return tuple(cautions(list(verdicts), self.asked)) or (EVERYWHERE,)


@dataclass(frozen=True, slots=True)
class Turned:
    """
    A verdict of a show that a change turns: another word, another shortage, or the same word by
    another line of the house.

    ``before`` is None for a verdict that was not there, ``after`` for one that would not be: some
    checks tell only what they find.
    """

    judged: Judged
    before: Verdict | None
    after: Verdict | None

    @property
    def found(self) -> Verdict:
        """The verdict as it would be, or as it is where it would not be there."""
        found = self.after or self.before
        if found is None:
            raise ValueError("before and after must not both be None")
        return found


def outlook(books: Books, pack: Pack, on: date) -> Outlook:
    """Judge every show to come against a pack, day by day."""
    asked = fit_record(pack)
    coming = [judged for day in books.days(on) for judged in judged_day(day, asked)]
    return Outlook(on, tuple(coming), books.past(on), asked)


def judged_day(day: ShowDay, asked: FitPack) -> list[Judged]:
    """
    The acts of a day, each by itself, then what they ask together.

    Of a day on hold, only what the hold adds is told.
    """
    result = fit(asked, [show.asks for show in day.shows])
    verdicts = result["verdicts"]
    decides = any(
        other["worse"] or other["better"]
        for other in result["others"]
        if other["arrangement"]["space"] == ""
    )
    plays_in = {
        show.act: answer["arrangement"]["configuration"]
        for show, answer in zip(day.shows, result["acts"], strict=True)
        if decides or show.asks["configuration"]
    }
    spaces = {answer["act"]: answer["arrangement"]["space"] for answer in result["acts"]}
    told = [show for show in day.shows if show.booking == day.booking]
    found = [
        Judged(
            day,
            show,
            tuple(each for each in verdicts if each["act"] == show.act),
            plays_in.get(show.act, ""),
            spaces[show.act],
        )
        for show in told
    ]
    of_the_day = tuple(each for each in verdicts if each["act"] == THE_DAY)
    return [*found, Judged(day, None, of_the_day)] if of_the_day else found


def turned(before: Outlook, after: Outlook) -> tuple[Turned, ...]:
    """
    The verdicts that a change turns, those that become short first.

    Both outlooks are of the same books and day.
    """
    was, now = ({judged.key: judged for judged in each.coming} for each in (before, after))
    found = [
        Turned(now.get(key) or was[key], old, new)
        for key in dict.fromkeys((*now, *was))
        for old, new in pairs(verdicts_of(was.get(key)), verdicts_of(now.get(key)))
        if old is None or new is None or says(old) != says(new)
    ]
    return tuple(sorted(found, key=weight))


def verdicts_of(judged: Judged | None) -> tuple[Verdict, ...]:
    """The verdicts of a show, none where it has none."""
    return judged.verdicts if judged else ()


def pairs(
    before: Sequence[Verdict], after: Sequence[Verdict]
) -> list[tuple[Verdict | None, Verdict | None]]:
    """
    The verdicts of two states on one and the same requirement, in the order they have now; None
    where one state has none.
    """
    old, new = numbered(before), numbered(after)
    return [(old.get(key), new.get(key)) for key in dict.fromkeys((*new, *old))]


def numbered(verdicts: Sequence[Verdict]) -> dict[tuple[object, ...], Verdict]:
    """Verdicts by what was asked, and which of those that ask the same it is."""
    found: dict[tuple[object, ...], Verdict] = {}
    met: Counter[tuple[object, ...]] = Counter()
    for verdict in verdicts:
        asked = (verdict["line"], verdict["title"], verdict["need"])
        met[asked] += 1
        found[(*asked, met[asked])] = verdict
    return found


def says(verdict: Verdict) -> tuple[str, str, str]:
    """
    What makes a verdict another: its word, by how much it is short, and which line of the house
    answers.

    A margin that is enough may move.
    """
    return (
        verdict["verdict"],
        verdict["margin"][0] if verdict["verdict"] == SHORT else "",
        answers(verdict),
    )


def answers(verdict: Verdict) -> str:
    """
    The line of the house that answers; empty where none does, or many are added up, for then the
    margin alone moves.
    """
    item = verdict["fact"]["item"] if verdict["fact"] else ""
    return "" if item.endswith(" together") else item


def weight(turn: Turned) -> tuple[bool, bool, bool, int]:
    """
    What becomes short first, what must be before what should; then what else turns, and last what
    only another line answers.
    """
    was, now = (found["verdict"] if found else "" for found in (turn.before, turn.after))
    return (
        was == now != SHORT,
        now != SHORT,
        turn.found["strictness"] != "must",
        -RANK.get(now, 0),
    )
