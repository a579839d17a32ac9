"""
The acts of a day by their times: when each begins and ends, who plays after whom, and what they say
of doors and the day of the week.
"""

from builder.fit.clock.records import Act, Doors
from builder.fit.clock.sentences import ASK_DOORS, ASK_WHICH_DOORS
from builder.fit.clock.times import DAY_S, known_time, of_the_show
from builder.fit.records import ClockAsked, RiderAsked
from builder.fit.sentences import fill
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


def acts_of(riders: list[RiderAsked]) -> list[Act]:
    """
    The acts in the order of their riders, each with its clock and with its first and last note
    where they are known.
    """
    acts: list[Act] = []
    for rider in riders:
        clock = rider["clock"]
        if clock is None:
            clock = blank_clock()
        acts.append(
            {
                "act": rider["act"],
                "clock": clock,
                "starts_s": first_note(clock),
                "ends_s": last_note(clock),
            }
        )
    return acts


def blank_clock() -> ClockAsked:
    """The clock of an act that says nothing of its day."""
    return {
        "line": 0,
        "day": "",
        "load in": None,
        "check from": None,
        "doors": None,
        "on stage": None,
        "ends": None,
        "set up": None,
        "line check": None,
        "check": None,
        "clear after check": None,
        "set": None,
        "changeover": None,
        "strike": None,
        "load out": None,
        "parts": None,
    }


def first_note(clock: ClockAsked) -> float | None:
    """The first note, stated or from the last note and the length of the set."""
    if clock["on stage"] is not None:
        return of_the_show(clock["on stage"])
    if clock["ends"] is not None and clock["set"] is not None:
        return of_the_show(clock["ends"]) - clock["set"]
    return None


def last_note(clock: ClockAsked) -> float | None:
    """The last note, stated or from the first note and the length of the set."""
    if clock["ends"] is not None:
        return of_the_show(clock["ends"])
    if clock["on stage"] is not None and clock["set"] is not None:
        return of_the_show(clock["on stage"]) + clock["set"]
    return None


def says_before_doors(act: Act) -> bool:
    """Whether an act says anything of its work before doors, but when it loads in and doors are."""
    clock = act["clock"]
    times = [
        clock["set up"],
        clock["line check"],
        clock["check"],
        clock["check from"],
        clock["clear after check"],
    ]
    return any(time_s is not None for time_s in times)


def says_evening(act: Act) -> bool:
    """Whether an act says anything of the evening that several acts must share."""
    clock = act["clock"]
    times = [clock["on stage"], clock["set"], clock["ends"], clock["changeover"], clock["strike"]]
    return clock["parts"] is not None or any(time_s is not None for time_s in times)


def says_set(act: Act) -> bool:
    """Whether an act says when its set begins or how long it is."""
    return act["clock"]["on stage"] is not None or act["clock"]["set"] is not None


def says_load_out(act: Act) -> bool:
    """Whether an act says how long its load-out takes."""
    return act["clock"]["load out"] is not None


def in_order(acts: list[Act]) -> list[Act]:
    """The acts as they play; empty where that is not known, or where two begin at once."""
    if len(acts) < 2:
        return acts
    times = [act["starts_s"] for act in acts if act["starts_s"] is not None]
    if len(times) < len(acts) or len(set(times)) < len(times):
        return []
    return sorted(acts, key=lambda act: known_time(act["starts_s"]))


def agreed_check(act: Act) -> float | None:
    """
    When an act's check was agreed for: what is before the act's own load-in is after midnight.
    """
    time_s, load_in_s = act["clock"]["check from"], act["clock"]["load in"]
    if time_s is not None and load_in_s is not None and time_s < load_in_s:
        return time_s + DAY_S
    return time_s


def load_ins_of(acts: list[Act]) -> list[float]:
    """When the acts load in, those that say so."""
    return [act["clock"]["load in"] for act in acts if act["clock"]["load in"] is not None]


def doors_of(acts: list[Act]) -> Doors:
    """When doors are, or what to ask."""
    stated = [act["clock"]["doors"] for act in acts if act["clock"]["doors"] is not None]
    if len(stated) == 0:
        return {"s": None, "asks": [ASK_DOORS]}
    times = sorted({of_the_show(time_s) for time_s in stated})
    if len(times) > 1:
        words = " or ".join(clock_words(time_s) for time_s in times)
        return {"s": None, "asks": [fill(ASK_WHICH_DOORS, {"times": words})]}
    return {"s": times[0], "asks": []}


def day_of(acts: list[Act]) -> str:
    """The day of the week where all acts that name one name the same; else nothing."""
    days = sorted({act["clock"]["day"] for act in acts if act["clock"]["day"] != ""})
    return days[0] if len(days) == 1 else ""
