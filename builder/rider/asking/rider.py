"""A whole rider, part by part, in its order of sections."""

from typing import TypedDict

from builder.fit.records import ClockAsked, Requirement, RiderAsked, Then
from builder.reading.values.sentences import fill
from builder.rider.asking.asking import Asking
from builder.rider.asking.clock import (
    clock_asked,
    end_asked,
    load_in_asked,
    note_rate,
    note_weekday,
    weekday_of,
)
from builder.rider.asking.composed import composed_asked, conditioned
from builder.rider.asking.hang_problems import note_hang, note_names
from builder.rider.asking.hangs import hang_asked, trim_asked
from builder.rider.asking.level import level_asked, question_asked
from builder.rider.asking.needs import need_asked
from builder.rider.asking.plot import plots_asked
from builder.rider.asking.power import power_asked
from builder.rider.asking.power_more import power_read
from builder.rider.asking.risers import risers_asked
from builder.rider.asking.trucks import trucks_asked
from builder.rider.asking.values import ReadValue, group_of, has, items_of, si_of, words_of
from builder.rider.asking.work import call_asked, task_asked

REVISION = "{number} of {date}"
PLANNED = [
    "hangs",
    "plot",
    "risers",
    "clock",
    "crew",
    "tasks",
    "any of",
    "all of",
    "if",
    "unless",
    "by class",
    "at",
    "own breaker",
    "other transformer",
    "isolated",
    "wires",
    "trips at most",
    "tail",
]
"""
Parts, of a rider, a need or a load, whose reading a page loads only for a rider that has one.
"""


class Found(TypedDict):
    """A requirement, and the part of the rider that it came from, such as ``needs[2]``."""

    part: str
    requirement: Requirement


def rider_asked(rider: ReadValue, asking: Asking) -> tuple[RiderAsked, list[str]]:
    """
    A rider as the check takes it, without what cannot be read, and the part that each requirement
    came from.
    """
    asking["act"] = words_of(rider, "act")
    found = [
        *needs_found(rider, asking),
        *power_found(rider, asking),
        *hangs_found(rider, asking),
        *risers_found(rider, asking),
        *plot_found(rider, asking),
        *day_found(rider, asking),
        *work_found(rider, asking),
        *questions_found(rider, asking),
    ]
    asked: RiderAsked = {
        "act": asking["act"],
        "revision": revision_of(rider),
        "plays": words_of(rider, "plays"),
        "space": words_of(rider, "space"),
        "configuration": words_of(rider, "configuration"),
        "stays_m": si_of(rider, "stays on deck"),
        "clock": clock_of(rider, asking),
        "requirements": [each["requirement"] for each in found],
        "not_read": [],
    }
    return asked, [each["part"] for each in found]


def asks_for_plans(keys: list[str]) -> bool:
    """
    Whether a rider of these parts comes with a hang plan, a stage plot or a day's clock, or a need
    of these parts is made of others.

    A page loads what reads these only then, so nothing else may call it.
    """
    return any(key in PLANNED for key in keys)


def revision_of(rider: ReadValue) -> str:
    """Which rider this is, in words; empty where it does not say."""
    issue = group_of(rider, "revision")
    if issue is None:
        return ""
    return fill(REVISION, {"number": words_of(issue, "number"), "date": words_of(issue, "on")})


def clock_of(rider: ReadValue, asking: Asking) -> ClockAsked | None:
    """The day's clock; None where there is none, or something in it is wrong."""
    day_clock = group_of(rider, "clock")
    if day_clock is None or any(mistake["part"] == "clock" for mistake in asking["mistakes"]):
        return None
    return clock_asked(day_clock, weekday_of(rider, day_clock))


def whole_items(rider: ReadValue, key: str) -> list[ReadValue]:
    """The items of a list that could be read."""
    return [item for item in items_of(rider, key) if item["whole"]]


def noted(asking: Asking, part: str) -> int:
    """Begin a part; how many mistakes there were before it."""
    asking["part"] = part
    return len(asking["mistakes"])


def needs_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """Every need."""
    found: list[Found] = []
    for need in whole_items(rider, "needs"):
        noted(asking, need["path"])
        is_made_of_others = asks_for_plans(list(need["keys"]))
        requirement: Requirement | None = None
        if is_made_of_others:
            requirement = composed_asked(need, asking)
        else:
            requirement = need_asked(need, asking)
        if requirement is not None:
            found.append({"part": need["path"], "requirement": requirement})
    return found


def power_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """Every load."""
    found: list[Found] = []
    for load in whole_items(rider, "power"):
        before = noted(asking, load["path"])
        asks_more = asks_for_plans(list(load["keys"]))
        asked: list[Requirement] = []
        if asks_more:
            asked.extend(power_read(load, asking))
        else:
            asked.append(power_asked(load, asking))
        if len(asking["mistakes"]) == before:
            for each in asked:
                found.append({"part": load["path"], "requirement": each})
    return found


def hangs_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """Every hang, and how high it should go."""
    return hangs_read(rider, asking) if has(rider, "hangs") else []


def hangs_read(rider: ReadValue, asking: Asking) -> list[Found]:
    """The hangs of a rider that has some."""
    found: list[Found] = []
    hangs = whole_items(rider, "hangs")
    for hang in hangs:
        before = noted(asking, hang["path"])
        note_hang(hang, asking)
        note_names(hangs, hang, asking)
        if len(asking["mistakes"]) == before:
            add_conditioned(found, hang, hang_asked(hang, asking), asking)
            trim = trim_asked(hang, asking)
            if trim is not None:
                add_conditioned(found, hang, trim, asking)
    return found


def risers_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """The risers of a rider that asks for some by size."""
    return risers_part(rider, asking) if has(rider, "risers") else []


def risers_part(rider: ReadValue, asking: Asking) -> list[Found]:
    """All risers in one."""
    before = noted(asking, "risers")
    risers = risers_asked(rider["keys"]["risers"], asking)
    if len(asking["mistakes"]) > before:
        return []
    return [{"part": "risers", "requirement": each} for each in risers]


def plot_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """The stage plot: all of its rectangles, or none of them."""
    return plot_read(rider, asking) if has(rider, "plot") else []


def plot_read(rider: ReadValue, asking: Asking) -> list[Found]:
    """The plot of a rider that has one."""
    before = noted(asking, "plot")
    plots = plots_asked(rider["keys"]["plot"], asking)
    if len(asking["mistakes"]) > before:
        return []
    return [{"part": "plot", "requirement": each} for each in plots]


def work_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """Crew, and what the house is to do or to keep."""
    asks = asks_for_plans([key for key in ("crew", "tasks") if key in rider["keys"]])
    return work_read(rider, asking) if asks else []


def work_read(rider: ReadValue, asking: Asking) -> list[Found]:
    """Crew and tasks of a rider that has some."""
    found: list[Found] = []
    calls = whole_items(rider, "crew")
    for call in calls:
        before = noted(asking, call["path"])
        called = call_asked(call, calls, asking)
        if len(asking["mistakes"]) == before:
            add_conditioned(found, call, called, asking)
    for task in whole_items(rider, "tasks"):
        before = noted(asking, task["path"])
        seen_to = task_asked(task, asking)
        if len(asking["mistakes"]) == before:
            add_conditioned(found, task, seen_to, asking)
    return found


def add_conditioned(found: list[Found], line: ReadValue, asked: Then, asking: Asking) -> None:
    """Add what a line asks, under its condition if it names one."""
    whole = conditioned(line, asked, asking)
    if whole is not None:
        found.append({"part": line["path"], "requirement": whole})


def day_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """Trucks, the times that the house must know, and the level."""
    found: list[Found] = []
    trucks = group_of(rider, "trucks")
    if trucks is not None:
        found.append({"part": "trucks", "requirement": trucks_asked(trucks, asking)})
    found += clock_found(rider, asking)
    level = group_of(rider, "level")
    if level is not None:
        found.append({"part": "level", "requirement": level_asked(level, asking)})
    for other in whole_items(rider, "other levels"):
        found.append({"part": other["path"], "requirement": level_asked(other, asking)})
    return found


def clock_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """Load-in and the end of the show, where each can be read."""
    return clock_read(rider, asking) if "clock" in rider["keys"] else []


def clock_read(rider: ReadValue, asking: Asking) -> list[Found]:
    """Load-in and the end of the show of a rider that tells its clock."""
    found: list[Found] = []
    noted(asking, "clock")
    day_clock = rider["keys"]["clock"]
    note_weekday(rider, day_clock, asking)
    note_rate(day_clock, asking)
    weekday = weekday_of(rider, day_clock)
    load_in = load_in_asked(day_clock, weekday, asking)
    if load_in is not None:
        found.append({"part": "clock", "requirement": load_in})
    end = end_asked(day_clock, weekday, asking)
    if end is not None:
        found.append({"part": "clock", "requirement": end})
    return found


def questions_found(rider: ReadValue, asking: Asking) -> list[Found]:
    """Every question."""
    return [
        {"part": question["path"], "requirement": question_asked(question, asking)}
        for question in whole_items(rider, "questions")
    ]
