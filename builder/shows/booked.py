"""
The riders in ``shows/``, read: which act, on which date, how firm; and the days that they make.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from builder.fit.records import RiderAsked
from builder.fit.turns import last_notes
from builder.reading.failing import program_failed
from builder.reading.problems import Problem, Refused, Where
from builder.rider.asked import is_judged, problems_of, read_of
from builder.rider.entry import RiderRead
from builder.rider.text.tree import Mistake, entry_of
from builder.rules import Rule

FOLDER = "shows/"
CONFIRMED = "confirmed"


@dataclass(frozen=True, slots=True)
class Booked:
    """
    A show on the books: its file within the venue's folder, its date, how firm that is, and what
    its rider asks.
    """

    file: str
    plays: date
    booking: str
    asks: RiderAsked

    @property
    def act(self) -> str:
        """The name of the act."""
        return self.asks["act"]

    @property
    def ends_s(self) -> float | None:
        """When its last note ends; None where its rider does not say. [s]"""
        return last_notes([self.asks])[0]


@dataclass(frozen=True, slots=True)
class ShowDay:
    """
    Shows that would play on one date together: those confirmed, and those of one hold where
    ``booking`` names one.

    Holds of one date stand against each other, so each is judged with what is confirmed and without
    the others.
    """

    plays: date
    booking: str
    shows: tuple[Booked, ...]


@dataclass(frozen=True, slots=True)
class Books:
    """
    All shows on the books, by date and file, and what is wrong in their files and in those that
    could not be read.
    """

    shows: tuple[Booked, ...] = ()
    problems: tuple[Problem, ...] = ()

    def past(self, on: date) -> tuple[Booked, ...]:
        """The shows that have played before a day."""
        return tuple(show for show in self.shows if show.plays < on)

    def days(self, on: date) -> tuple[ShowDay, ...]:
        """The days to come, from a day on; a date with holds is several."""
        coming = [show for show in self.shows if show.plays >= on]
        kinds = dict.fromkeys((show.plays, show.booking) for show in coming)
        return tuple(
            ShowDay(plays, booking, together(coming, plays, booking)) for plays, booking in kinds
        )


def together(shows: Sequence[Booked], plays: date, booking: str) -> tuple[Booked, ...]:
    """
    The shows of one date that are confirmed or of one hold, who plays last first and who does not
    tell behind them: so they are served where the check leaves it to the order given.
    """
    found = [show for show in shows if show.plays == plays and show.booking in (CONFIRMED, booking)]
    return tuple(sorted(found, key=lambda show: (-(show.ends_s or 0.0), show.file)))


def books_of(texts: Mapping[str, str], rules: Mapping[str, Rule]) -> Books:
    """
    Read riders, given as text by file name.

    What cannot be read of a rider becomes problems, and the rest is read all the same.
    """
    shows: list[Booked] = []
    problems: list[Problem] = []
    for file in sorted(texts):
        try:
            show, mistakes = booked_in(texts[file], file, rules, shows)
            shows.append(show)
            problems += mistakes
        except Refused as refused:
            problems += refused.problems
        except Exception as failure:
            problems.append(program_failed(file, failure))
    return Books(tuple(sorted(shows, key=order)), tuple(sorted(problems)))


def booked_in(
    text: str, file: str, rules: Mapping[str, Rule], known: Sequence[Booked]
) -> tuple[Booked, list[Problem]]:
    """
    One rider as a show on the books, with what of it cannot be read.

    Raises
    ------
    Refused
        With every problem in the text, where its date or its act is not sure or nothing of it can
        be judged; `missing-key` where it does not say its date, `show-twice` where the act already
        plays on it.
    """
    rider = dated(text, file, rules)
    for other in known:
        if (other.act, other.plays.isoformat()) == (rider["rider"]["act"], rider["plays"]):
            raise Refused([twice(rider, file, other)])
    show = Booked(file, date.fromisoformat(rider["plays"]), rider["booking"], rider["rider"])
    return show, problems_of(rider, file)


def dated(text: str, file: str, rules: Mapping[str, Rule]) -> RiderRead:
    """
    A rider that says its date.

    Raises
    ------
    Refused
        With every problem in the text, where the date is missing or one of them doubts it, or
        nothing is left to judge.
    """
    rider = read_of(text, rules)
    problems = problems_of(rider, file)
    if is_judged(rider) and not any(is_of_date(mistake) for mistake in rider["mistakes"]):
        problems = []
    if entry_of(rider["tree"], "plays") is None and rider["tree"]["entries"]:
        advice = "write the date of the show, like plays: 2026-12-05"
        where = Where(file, 1, 1)
        problems.append(Problem(where, "plays", "", "is missing", "missing-key", advice))
    if problems:
        raise Refused(problems)
    return rider


def is_of_date(mistake: Mistake) -> bool:
    """Whether a mistake leaves open when a show plays, or how firm that is."""
    return mistake["path"] in ("plays", "booking") or mistake["code"] == "day-differs"


def twice(rider: RiderRead, file: str, other: Booked) -> Problem:
    """An act that is on the books for that date already."""
    act = entry_of(rider["tree"], "act")
    where = Where(file, act["value"]["line"], act["value"]["column"]) if act else Where(file)
    reason = f"plays on {other.plays} in {other.file} already"
    return Problem(where, "act", other.act, reason, "show-twice", "keep one of the two files")


def order(show: Booked) -> tuple[date, int, str]:
    """By date, the firm ones first, then by file."""
    return (
        show.plays,
        (
            0
            if show.booking == CONFIRMED
            else ("first hold", "second hold", "third hold").index(show.booking) + 1
        ),
        show.file,
    )
