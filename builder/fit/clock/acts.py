"""
The acts of a day by their times: when each begins and ends, who plays after whom, and what they say
of doors and the day of the week.
"""

from typing import Any

from builder.fit.clock.hours import DAY_S, of_the_show
from builder.fit.verdicts import Record
from builder.fit.wording import clock as clock_words

TIMES = ("load in", "check from", "doors", "on stage", "ends")
LENGTHS = (
    "set up",
    "line check",
    "check",
    "clear after check",
    "set",
    "changeover",
    "strike",
    "load out",
)


def acts_of(riders: list[Record]) -> list[Record]:
    """
    The acts in the order of their riders, each with its clock and with its first and last note
    where they are known.
    """
    found = []
    for rider in riders:
        clock = rider["clock"] if "clock" in rider and rider["clock"] is not None else blank()
        found.append(
            {"act": rider["act"], "clock": clock, "starts_s": starts(clock), "ends_s": ends(clock)}
        )
    return found


def blank() -> Record:
    """The clock of an act that says nothing of its day."""
    clock: Record = {"line": 0, "day": "", "parts": None}
    for name in (*TIMES, *LENGTHS):
        clock[name] = None
    return clock


def starts(clock: Record) -> Any:
    """The first note, stated or from the last note and the length of the set."""
    if clock["on stage"] is not None:
        return of_the_show(clock["on stage"])
    if clock["ends"] is not None and clock["set"] is not None:
        return of_the_show(clock["ends"]) - clock["set"]
    return None


def ends(clock: Record) -> Any:
    """The last note, stated or from the first note and the length of the set."""
    if clock["ends"] is not None:
        return of_the_show(clock["ends"])
    if clock["on stage"] is not None and clock["set"] is not None:
        return of_the_show(clock["on stage"]) + clock["set"]
    return None


def says(act: Record, names: tuple[str, ...]) -> bool:
    """Whether an act says at least one of these."""
    return any(act["clock"][name] is not None for name in names)


def in_order(acts: list[Record]) -> list[Record]:
    """The acts as they play; empty where that is not known, or where two begin at once."""
    if len(acts) < 2:
        return acts
    times = [act["starts_s"] for act in acts]
    if None in times or len({*times}) < len(times):
        return []
    return sorted(acts, key=lambda act: act["starts_s"])


def work_time(act: Record, name: str) -> Any:
    """A time of the working day: what is before the act's own load-in is after midnight."""
    time_s, load_in_s = act["clock"][name], act["clock"]["load in"]
    if time_s is not None and load_in_s is not None and time_s < load_in_s:
        return time_s + DAY_S
    return time_s


def doors_of(acts: list[Record]) -> Record:
    """When doors are, or what to ask."""
    said = [act for act in acts if act["clock"]["doors"] is not None]
    if len(said) == 0:
        return {"s": None, "asks": ["When are doors?"]}
    times = sorted({of_the_show(act["clock"]["doors"]) for act in said})
    if len(times) > 1:
        words = " or ".join(clock_words(time_s) for time_s in times)
        return {"s": None, "asks": ["When are doors? The riders say " + words + "."]}
    return {"s": times[0], "asks": []}


def day_of(acts: list[Record]) -> str:
    """The day of the week where all acts that name one name the same; else nothing."""
    days = sorted({act["clock"]["day"] for act in acts if act["clock"]["day"] != ""})
    return days[0] if len(days) == 1 else ""
