"""
What the house can set for a show: the choices that can decide, in every combination.

A value that fits or falls short at both of its ends needs no choice. Where a show has more to
choose than is compared, values keep their ends, and what lies between these is asked.
"""

from typing import TypedDict

from builder.fit.arrangements.evenings import MOST
from builder.fit.arrangements.records import Evening, View
from builder.fit.arrangements.views import view_of
from builder.fit.needs.amounts import against_value
from builder.fit.needs.choosing import items_for, value_for
from builder.fit.records import (
    FitPack,
    Item,
    NeedAsked,
    RiderAsked,
    Rule,
    Section,
    Setting,
    Value,
)
from builder.fit.requirements import rule_of
from builder.fit.sections import section_of
from builder.fit.wording import both

AMOUNTS = ("at least", "at most", "between")


class Reading(TypedDict):
    """A need, and a value that the house chooses and that answers it, of an item by name."""

    need: NeedAsked
    rule: Rule
    item: str
    value: Value


def settings_compared(
    riders: list[RiderAsked], evenings: list[Evening], pack: FitPack
) -> list[list[list[Setting]]]:
    """
    For each evening the settings to compare, at least one; each is a choice for every value.

    With all evenings they are at most 64. Where there are more, nothing is set.
    """
    choices = [choices_on(riders, evening, pack) for evening in evenings]
    if sum(count_of(each) for each in choices) > MOST:
        return [combined([]) for _ in evenings]
    return [combined(each) for each in choices]


def choices_on(riders: list[RiderAsked], evening: Evening, pack: FitPack) -> list[list[Setting]]:
    """
    What can be chosen on an evening, value by value.

    Nothing where acts play in different configurations, or nobody knows in which: what is set may
    then change between them, or stand where they do not play.
    """
    if len(evening["places"]) > 1 or evening["places"][0]["is_open"]:
        return []
    view = view_of(pack, evening["places"][0]["configuration"])
    readings = readings_of(riders, view)
    keys: list[str] = []
    for reading in readings:
        key = reading["value"]["key"]
        if key not in keys and is_between(reading):
            keys.append(key)
    return [settings_of([each for each in readings if each["value"]["key"] == key]) for key in keys]


def count_of(choices: list[list[Setting]]) -> int:
    """How many combinations there are of one choice for each value."""
    count = 1
    for settings in choices:
        count = count * len(settings)
    return count


def combined(choices: list[list[Setting]]) -> list[list[Setting]]:
    """Every combination of one choice for each value; one empty one where there is no value."""
    combinations: list[list[Setting]] = [[]]
    for settings in choices:
        combinations = [[*before, setting] for before in combinations for setting in settings]
    return combinations


def readings_of(riders: list[RiderAsked], view: View) -> list[Reading]:
    """Which values that the house chooses are read by which needs, in the riders' order."""
    readings: list[Reading] = []
    for need in amounts_asked(riders):
        rule = rule_of(need["what"], view)
        section = section_of(view, rule["section"])
        if section is not None and rule["combine"] != "sum":
            readings.extend(readings_in(section, need, rule))
    return readings


def readings_in(section: Section, need: NeedAsked, rule: Rule) -> list[Reading]:
    """The values of a section that the house chooses and that answer a need."""
    readings: list[Reading] = []
    for item in items_for(section, rule):
        value = value_for(item, rule)
        if value is not None and is_offered(item) and is_choice(value):
            readings.append({"need": need, "rule": rule, "item": item["name"], "value": value})
    return readings


def amounts_asked(riders: list[RiderAsked]) -> list[NeedAsked]:
    """Every need of an amount that the house has to meet, alternatives among them."""
    needs: list[NeedAsked] = []
    for rider in riders:
        for requirement in rider["requirements"]:
            if requirement["sort"] == "rule":
                needs.append(requirement)
            elif requirement["sort"] == "any":
                needs.extend(requirement["any"])
    return [need for need in needs if need["carried"] != "show" and need["way"] in AMOUNTS]


def is_offered(item: Item) -> bool:
    """Whether a show may use an item."""
    return item["condition"] != "out of service" and item["terms"] != "not for visitors"


def is_choice(value: Value) -> bool:
    """Whether the house chooses a value, and has not chosen yet."""
    return value["standing"] == "stated" and value["can_be_set"] and value["number"] is None


def is_between(reading: Reading) -> bool:
    """Whether a need is met by some of the choices at most, and the ends do not tell."""
    return against_value(reading["need"], reading["rule"], reading["value"]) is None


def settings_of(readings: list[Reading]) -> list[Setting]:
    """The choices for one value that can decide, by all the needs that read it."""
    first = readings[0]
    return [
        {
            "key": first["value"]["key"],
            "item": first["item"],
            "label": first["value"]["label"],
            "number": number,
            "words": both(first["rule"]["kind"], number),
        }
        for number in numbers_of(readings)
    ]


def numbers_of(readings: list[Reading]) -> list[float]:
    """
    The settings that the house names; else the amounts asked that lie between the ends, then the
    ends. [SI]
    """
    value = readings[0]["value"]
    least, most = value["least"], value["most"]
    if len(value["settings"]) > 0 or least is None or most is None:
        return value["settings"]
    numbers: list[float] = []
    for reading in readings:
        for amount in amounts_of(reading["need"]):
            if least < amount < most and amount not in numbers:
                numbers.append(amount)
    return [*numbers, least, most]


def amounts_of(need: NeedAsked) -> list[float]:
    """The amounts at which a need turns. [SI]"""
    if need["way"] == "at least":
        return [need["low"]]
    if need["way"] == "at most":
        return [need["high"]]
    return [need["low"], need["high"]]
