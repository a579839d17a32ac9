"""
The day from load-in to the last truck: every place where it can fail to close, and the day as a
table.
"""

from typing import Any

from builder.fit.clock.acts import acts_of, doors_of, in_order, says
from builder.fit.clock.before_doors import NAMES, before_doors, plan_of, run
from builder.fit.clock.evening import (
    after_doors,
    asked_for,
    changeover,
    crew_day,
    load_out,
    set_closes,
)
from builder.fit.clock.house import PRACTICE
from builder.fit.clock.table import table
from builder.fit.comparing import section_of
from builder.fit.verdicts import Record
from builder.fit.wording import clock as clock_words

THE_DAY = "The day"
EVENING = ("on stage", "set", "ends", "changeover", "strike")


def the_day(riders: list[Record], pack: Record) -> Record:
    """
    Verdicts on the day's clock and its rows; both empty where no rider says more than when it loads
    in and ends.
    """
    acts, section = acts_of(riders), section_of(pack, "house")
    known = in_order(acts)
    early = any(says(act, NAMES) for act in acts)
    late = len(acts) > 1 and any(
        says(act, EVENING) or act["clock"]["parts"] is not None for act in acts
    )
    found: list[Record] = []
    if len(known) == 0 and (early or late):
        return {"verdicts": [order_asked(acts)], "rows": []}
    laid: Record = {"rows": []}
    if early:
        plan = plan_of(known, section)
        laid = run(plan)
        found.append(
            before_doors(
                requirement_of(known, "Load-in and checks before doors", span_words(known)),
                plan,
                laid,
            )
        )
    found = [*found, *evening(known, section, late)]
    told = early or late or any(says(act, ("on stage", "set", "load out")) for act in acts)
    return {
        "verdicts": found,
        "rows": table(known, laid["rows"], section) if told and len(known) > 0 else [],
    }


def requirement_of(acts: list[Record], title: str, need: str) -> Record:
    """A requirement of the day: of the act where there is one, else of the day."""
    alone = len(acts) == 1
    return {
        "act": acts[0]["act"] if alone else THE_DAY,
        "line": acts[0]["clock"]["line"] if alone else 0,
        "department": "clock",
        "title": title,
        "need": need,
        "strictness": "must",
    }


def span_words(acts: list[Record]) -> str:
    """From when until when, in words."""
    times = [act["clock"]["load in"] for act in acts if act["clock"]["load in"] is not None]
    doors = doors_of(acts)["s"]
    first = clock_words(min(times)) if len(times) == len(acts) else "not stated"
    return (
        "load-in "
        + first
        + ", doors "
        + (clock_words(doors) if doors is not None else "not stated")
    )


def order_asked(acts: list[Record]) -> Record:
    """The order of the acts where it is not known."""
    silent = [act["act"] for act in acts if act["starts_s"] is None]
    requirement = requirement_of(acts, "Order of the acts", "who plays after whom")
    if len(silent) == 0:
        return asked_for(
            requirement,
            ["Which act plays first? Two begin at the same time."],
            "Two acts begin at the same time.",
        )
    asks = [name + ": when are you on stage, and how long is your set?" for name in silent]
    return asked_for(
        requirement,
        asks,
        "Nobody has said when "
        + ", ".join(silent)
        + (" is" if len(silent) == 1 else " are")
        + " on stage.",
    )


def evening(acts: list[Record], section: Any, several: bool) -> list[Record]:
    """What is judged from doors on."""
    found = []
    doors_s = doors_of(acts)["s"]
    if doors_s is not None and len(acts) > 0 and acts[0]["starts_s"] is not None:
        found.append(
            after_doors(
                requirement_of(
                    acts,
                    "From doors to the first act",
                    "first note at " + clock_words(acts[0]["starts_s"]),
                ),
                acts[0],
                doors_s,
                section,
            )
        )
    for index in range(len(acts)):
        act, clock = acts[index], acts[index]["clock"]
        own = {
            **requirement_of(acts, "Set of " + act["act"], "as long as stated"),
            "act": act["act"],
            "line": clock["line"],
        }
        if clock["on stage"] is not None and clock["set"] is not None and clock["ends"] is not None:
            found.append(set_closes(own, act))
        elif act["ends_s"] is None and says(act, ("on stage", "set")):
            found.append(end_asked({**own, "title": "End of " + act["act"]}, act))
        if several and index > 0:
            found.append(
                changeover(
                    requirement_of(acts, "Changeover to " + act["act"], "in time"),
                    acts[index - 1],
                    act,
                )
            )
    return [*found, *after_the_show(acts, section)]


def end_asked(requirement: Record, act: Record) -> Record:
    """The end of an act that says only half of it."""
    if act["clock"]["set"] is None:
        ask = (
            act["act"]
            + ": how long is your set? Commonly 30 to 45 min for who opens, 75 to 120 min for who"
            " plays last" + PRACTICE
        )
        return asked_for(requirement, [ask], "Nobody has said how long the set is.")
    return asked_for(
        requirement,
        [act["act"] + ": when are you on stage?"],
        "Nobody has said when the set begins.",
    )


def after_the_show(acts: list[Record], section: Any) -> list[Record]:
    """The load-out of the last act and the crew's day, where the rider speaks of a load-out."""
    if len(acts) == 0 or not any(says(act, ("load out",)) for act in acts):
        return []
    last = acts[len(acts) - 1]
    if last["ends_s"] is None:
        return []
    requirement = requirement_of(acts, "Load-out of " + last["act"], "after the last note")
    found = [load_out(requirement, last, section)]
    starts = [act["clock"]["load in"] for act in acts if act["clock"]["load in"] is not None]
    if len(starts) == len(acts) and last["clock"]["load out"] is not None:
        found.append(
            crew_day(
                {
                    **requirement_of(acts, "The crew's day", "from the first truck to the last"),
                    "strictness": "should",
                },
                min(starts),
                last,
                section,
            )
        )
    return found
