"""
What the house says of the working day: meals, calls, quiet hours, and the time it keeps for itself
before doors.
"""

from typing import Any

from builder.fit.clock.hours import DAY_S, holds_today
from builder.fit.comparing import age_notes
from builder.fit.verdicts import Record

PRACTICE = " (common practice, no source)."
MEALS = (
    "After how long is a meal break due, and how long does work stop for it? Commonly after 5 h,"
    " for 30 to 60 min (common practice, no source); none where the crew eats by turns."
)
QUIET = "Are there hours in which no check may be heard, and on which days?"
READY = "How long before doors must the last check have ended? Commonly 15 to 30 min" + PRACTICE
SHORTEST_S = 900


def said_by_house(section: Any, kind: str, name: str) -> Record:
    """
    A length or time that the house states: ``standing`` is stated, none, or ask; ``s`` its seconds
    where it is stated.
    """
    for item in section["items"] if section is not None else []:
        if item["kind"] == kind and name in item["values"]:
            value = item["values"][name]
            if value["standing"] == "none":
                return {"standing": "none", "s": None, "value": value, "item": item}
            if value["standing"] == "stated" and value["number"] is not None:
                return {"standing": "stated", "s": value["number"], "value": value, "item": item}
    return {"standing": "ask", "s": None, "value": None, "item": None}


def meals_of(section: Any) -> Record:
    """
    When a meal break is due and how long it stops work.

    ``asks`` holds a question where both must be known and are not.
    """
    after, length = (
        said_by_house(section, "crew", "meal_after"),
        said_by_house(section, "crew", "meal_break"),
    )
    without: Record = {"after_s": None, "break_s": 0.0, "asks": [], "notes": [], "due_s": None}
    if after["standing"] == "none" or length["standing"] == "none":
        return without
    if after["standing"] == "stated" and after["s"] < SHORTEST_S:
        return {**without, "asks": [MEALS]}
    if after["standing"] == "ask" or length["standing"] == "ask":
        return {**without, "asks": [MEALS], "due_s": after["s"]}
    notes = [*age_notes(after["value"]), *age_notes(length["value"])]
    return {
        "after_s": after["s"],
        "break_s": length["s"],
        "asks": [],
        "notes": notes,
        "due_s": after["s"],
    }


def quiet_of(section: Any, day: str) -> Record:
    """
    The hours in which no check may be heard on a day, as pairs of seconds, the evening before and
    the night after included.
    """
    if said_by_house(section, "identity", "quiet_hours")["standing"] == "none":
        return {"hours": [], "asks": [], "notes": []}
    items = (
        [item for item in section["items"] if item["kind"] == "quiet"]
        if section is not None
        else []
    )
    found: Record = {"hours": [], "asks": [] if len(items) > 0 else [QUIET], "notes": []}
    for item in items:
        holds = holds_today(item["name"], day)
        if holds == "yes":
            found["hours"] = [*found["hours"], *nights(item)]
            found["notes"] = [*found["notes"], *age_notes(item["values"]["from"])]
        elif holds == "unclear":
            found["asks"].append(unclear(item, day))
    found["hours"] = sorted(found["hours"])
    return found


def unclear(item: Record, day: str) -> str:
    """The question that tells whether quiet hours hold."""
    name = str(item["name"])
    if day == "":
        return "On which day of the week is the show? Quiet hours hold on " + name + "."
    return "Do the quiet hours of " + name + " hold on that day?"


def nights(item: Record) -> list[list[float]]:
    """Quiet hours on the day and on the days beside it."""
    first, last = item["values"]["from"]["number"], item["values"]["until"]["number"]
    if last <= first:
        last = last + DAY_S
    return [[first - DAY_S, last - DAY_S], [first, last], [first + DAY_S, last + DAY_S]]
