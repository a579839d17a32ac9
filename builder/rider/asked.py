"""Riders in the terminal: read as the page reads them, and refused where anything is wrong."""

from collections.abc import Iterable, Mapping

from builder.fit.published import rule_record
from builder.fit.records import RiderAsked
from builder.reading.problems import Problem, Refused, Where
from builder.rider.entry import RiderRead, read_rider
from builder.rider.same_day import same_name_words, several_dates_words
from builder.rider.table import LANGUAGE
from builder.rider.text.tree import Mistake
from builder.rider.units import UNITS
from builder.rules import Rule


def rider_of(text: str, *, file: str, rules: Mapping[str, Rule]) -> RiderAsked:
    """
    A rider's text as the plain record that the check takes.

    Raises
    ------
    Refused
        With every problem in the text.
    """
    return whole_rider(text, file=file, rules=rules)["rider"]


def whole_rider(text: str, *, file: str, rules: Mapping[str, Rule]) -> RiderRead:
    """
    A rider with its date and how firm that is.

    Raises
    ------
    Refused
        With every problem in the text.
    """
    reading = read_of(text, rules)
    if reading["mistakes"]:
        raise Refused(problems_of(reading, file))
    return reading


def readable_rider(text: str, *, file: str, rules: Mapping[str, Rule]) -> RiderRead:
    """
    A rider with all of it that can be read; what cannot be is in its mistakes.

    Raises
    ------
    Refused
        With every problem in the text, where nothing is left that can be judged, or it is not known
        whose rider it is.
    """
    reading = read_of(text, rules)
    if reading["mistakes"] and not is_judged(reading):
        raise Refused(problems_of(reading, file))
    return reading


def is_judged(reading: RiderRead) -> bool:
    """Whether it is known whose rider it is, and something of it can be judged."""
    rider = reading["rider"]
    return bool(rider["act"]) and (bool(rider["requirements"]) or rider["clock"] is not None)


def read_of(text: str, rules: Mapping[str, Rule]) -> RiderRead:
    """A rider's text, read as the page reads it."""
    return read_rider(text, LANGUAGE, [rule_record(rule) for rule in rules.values()], UNITS)


def problems_of(reading: RiderRead, file: str) -> list[Problem]:
    """Everything that cannot be read in a rider, as problems of its file."""
    return [problem_of(mistake, file) for mistake in reading["mistakes"]]


def problem_of(mistake: Mistake, file: str) -> Problem:
    """A mistake as a problem of a file."""
    return Problem(
        Where(file, mistake["line"], mistake["column"]),
        mistake["path"],
        mistake["value"],
        mistake["reason"],
        mistake["code"],
        mistake["advice"],
    )


def acts_differ(riders: Iterable[RiderAsked]) -> None:
    """
    Refuse two riders of one name.

    Raises
    ------
    ValueError
        If two riders name the same act.
    """
    wrong = same_name_words([rider["act"] for rider in riders])
    if wrong:
        raise ValueError(wrong)


def one_date(riders: Iterable[RiderRead]) -> None:
    """
    Refuse riders of several dates.

    Raises
    ------
    ValueError
        If two riders play on different dates.
    """
    wrong = several_dates_words([rider["plays"] for rider in riders])
    if wrong:
        raise ValueError(wrong)
