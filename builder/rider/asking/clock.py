"""``clock``: the show's day, as requirements and as plain seconds."""

from builder.fit.clock.times import of_the_show
from builder.fit.records import ChangeoverAsked, ClockAsked, EndAsked, LoadInAsked
from builder.fit.wording import clock
from builder.reading.values.faults import fault
from builder.reading.values.sentences import fill
from builder.rider.asking.asked import asked_base
from builder.rider.asking.asking import Asking, note_fault
from builder.rider.asking.values import (
    ReadValue,
    count_of,
    group_of,
    has,
    place_of,
    si_of,
    words_of,
    yes_of,
)

FROM = "from {words}"
ENDS = "ends at {words}"
ENDS_AFTER = "ends at {end}, from {start} for {set}"
ON_A_DAY = "{words} on a {day}"
OTHER_DAY = "is not the day of the week of {date}, which is a {day}"
END_TITLE = "End of the show"


def weekday_of(rider: ReadValue, day_clock: ReadValue) -> str:
    """The day of the week: as written, or that of the date; empty where neither is there."""
    written = words_of(day_clock, "day")
    if written != "" or not has(rider, "plays"):
        return written
    return rider["keys"]["plays"]["weekday"]


def note_weekday(rider: ReadValue, day_clock: ReadValue, asking: Asking) -> None:
    """Note a day of the week that is not that of the date."""
    written = words_of(day_clock, "day")
    if written == "" or not has(rider, "plays"):
        return
    plays = rider["keys"]["plays"]
    if written != plays["weekday"]:
        reason = fill(OTHER_DAY, {"date": plays["text"], "day": plays["weekday"]})
        advice = "mend the one that is wrong, or leave the day out"
        wrong = fault(reason, "day-differs", advice)
        note_fault(asking, place_of(day_clock, "day"), "day", written, wrong)


def note_rate(day_clock: ReadValue, asking: Asking) -> None:
    """Note a rate at which no line is ever checked."""
    parts = group_of(day_clock, "changeover parts")
    if parts is not None and count_of(parts, "lines a minute") == 0:
        advice = "write how many lines your crew checks in a minute"
        wrong = fault("is no rate", "number-out-of-range", advice)
        note_fault(asking, place_of(parts, "lines a minute"), "lines a minute", "0", wrong)


def load_in_asked(day_clock: ReadValue, weekday: str, asking: Asking) -> LoadInAsked | None:
    """When the first truck is opened; None where the rider does not say."""
    time_s = si_of(day_clock, "load in")
    if time_s is None:
        return None
    words = fill(FROM, {"words": words_of(day_clock, "load in")})
    line = place_of(day_clock, "load in")["line"]
    base = asked_base(asking, line, "house", "Load-in", words, "must")
    return {**base, "sort": "load in", "time_s": time_s, "day": weekday.lower()}


def end_asked(day_clock: ReadValue, weekday: str, asking: Asking) -> EndAsked | None:
    """
    When the last note ends, as written or from the first note and the set; None where neither is.
    """
    end_s = si_of(day_clock, "ends")
    if end_s is not None:
        words = fill(ENDS, {"words": words_of(day_clock, "ends")})
        return end_at(end_s, words, place_of(day_clock, "ends"), weekday, asking)
    start_s = si_of(day_clock, "on stage")
    set_s = si_of(day_clock, "set")
    if start_s is None or set_s is None:
        return None
    last_s = of_the_show(start_s) + set_s
    parts = {
        "end": clock(last_s),
        "start": words_of(day_clock, "on stage"),
        "set": words_of(day_clock, "set"),
    }
    place = place_of(day_clock, "on stage")
    return end_at(last_s, fill(ENDS_AFTER, parts), place, weekday, asking)


def end_at(time_s: float, words: str, place: ReadValue, weekday: str, asking: Asking) -> EndAsked:
    """The end of the show at a time, on a day that may be empty."""
    need = words
    if weekday != "":
        need = fill(ON_A_DAY, {"words": words, "day": weekday})
    base = asked_base(asking, place["line"], "house", END_TITLE, need, "must")
    return {**base, "sort": "ends", "time_s": time_s, "day": weekday.lower()}


def clock_asked(day_clock: ReadValue, weekday: str) -> ClockAsked:
    """A rider's clock in seconds after midnight and seconds; what is left out is None."""
    parts = group_of(day_clock, "changeover parts")
    return {
        "line": day_clock["line"],
        "day": weekday.lower(),
        "load in": si_of(day_clock, "load in"),
        "check from": si_of(day_clock, "check from"),
        "doors": si_of(day_clock, "doors"),
        "on stage": si_of(day_clock, "on stage"),
        "ends": si_of(day_clock, "ends"),
        "set up": si_of(day_clock, "set up"),
        "line check": si_of(day_clock, "line check"),
        "check": si_of(day_clock, "check"),
        "clear after check": si_of(day_clock, "clear after check"),
        "set": si_of(day_clock, "set"),
        "changeover": si_of(day_clock, "changeover"),
        "strike": si_of(day_clock, "strike"),
        "load out": si_of(day_clock, "load out"),
        "parts": changeover_asked(parts) if parts is not None else None,
    }


def changeover_asked(parts: ReadValue) -> ChangeoverAsked:
    """The parts of a changeover in seconds; lines and their rate as counts."""
    return {
        "line": parts["line"],
        "roll on": si_of(parts, "roll on"),
        "patch": si_of(parts, "patch"),
        "monitors": si_of(parts, "monitors"),
        "spare": si_of(parts, "spare"),
        "lines": count_of(parts, "lines"),
        "lines a minute": count_of(parts, "lines a minute"),
        "before": yes_of(parts, "lines checked before"),
    }
