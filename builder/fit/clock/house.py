"""
What the house says of the working day: meals, calls, quiet hours, and the time it keeps for itself
before doors.
"""

from builder.fit.clock.records import HouseSays, Meals, Quiet
from builder.fit.clock.sentences import (
    ASK_MEALS,
    ASK_QUIET,
    ASK_QUIET_DAY,
    ASK_QUIET_ONLY,
    ASK_WEEKDAY,
)
from builder.fit.clock.times import DAY_S, holds_today, known_time, or_none
from builder.fit.notes import age_notes
from builder.fit.records import Item, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.silence import silence_on
from builder.fit.values import known_number, number_of, text_of

SHORTEST_S = 900.0


def house_says(section: Section | None, kind: str, name: str) -> HouseSays:
    """
    A length or time that the house states: ``standing`` is stated, none, or ask; ``s`` its seconds
    where it is stated.
    """
    says: HouseSays = {
        "standing": "ask",
        "s": None,
        "value": None,
        "item": None,
        "open": silence_on(section, kind, name),
    }
    for item in items_of(section, kind):
        if name in item["values"]:
            value = item["values"][name]
            told: HouseSays = {**says, "value": value, "item": item}
            if value["standing"] == "none":
                return {**told, "standing": "none"}
            if value["standing"] == "stated" and value["number"] is not None:
                return {**told, "standing": "stated", "s": value["number"]}
    return says


def meals_of(section: Section | None) -> Meals:
    """
    When a meal break is due and how long it stops work.

    ``asks`` holds a question where both must be known and are not.
    """
    after = house_says(section, "crew", "meal_after")
    length = house_says(section, "crew", "meal_break")
    meals: Meals = {"after_s": None, "break_s": 0.0, "asks": [], "notes": [], "due_s": None}
    if after["standing"] == "none" or length["standing"] == "none":
        return meals
    if after["standing"] == "stated" and known_time(after["s"]) < SHORTEST_S:
        return {**meals, "asks": [ASK_MEALS]}
    if after["standing"] == "ask" or length["standing"] == "ask":
        return {**meals, "asks": [ASK_MEALS], "due_s": after["s"]}
    return {
        "after_s": after["s"],
        "break_s": or_none(length["s"]),
        "asks": [],
        "notes": [*age_notes(after["value"]), *age_notes(length["value"])],
        "due_s": after["s"],
    }


def quiet_of(section: Section | None, day: str) -> Quiet:
    """
    The hours in which no check may be heard on a day, as pairs of seconds, the evening before and
    the night after included; and all that may hold where the day is not named.
    """
    quiet: Quiet = {"hours": [], "perhaps": [], "day_asks": [], "asks": [], "notes": []}
    if house_says(section, "identity", "quiet_hours")["standing"] == "none":
        return quiet
    items = items_of(section, "quiet")
    if len(items) == 0:
        quiet["asks"].append(ASK_QUIET)
    for item in items:
        holds = holds_today(item["name"], day)
        if number_of(item, "from") is None or number_of(item, "until") is None:
            if holds != "no":
                quiet["asks"].append(ASK_QUIET)
        elif text_of(item, "only") != "" and holds != "no":
            quiet["perhaps"].extend(nights(item))
            only = {"only": text_of(item, "only"), "name": item["name"]}
            quiet["day_asks"].append(fill(ASK_QUIET_ONLY, only))
        elif holds == "yes":
            quiet["hours"].extend(nights(item))
            quiet["notes"].extend(age_notes(item["values"]["from"]))
        elif holds == "unclear" and day == "":
            quiet["perhaps"].extend(nights(item))
            quiet["day_asks"].append(fill(ASK_WEEKDAY, {"name": item["name"]}))
        elif holds == "unclear":
            quiet["asks"].append(fill(ASK_QUIET_DAY, {"name": item["name"]}))
    quiet["hours"].sort()
    quiet["perhaps"] = sorted([*quiet["hours"], *quiet["perhaps"]])
    return quiet


def nights(item: Item) -> list[list[float]]:
    """Quiet hours on the day and on the days beside it."""
    first_s = known_number(item, "from")
    last_s = known_number(item, "until")
    if last_s <= first_s:
        last_s = last_s + DAY_S
    return [
        [first_s - DAY_S, last_s - DAY_S],
        [first_s, last_s],
        [first_s + DAY_S, last_s + DAY_S],
    ]
