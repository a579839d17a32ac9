"""
What the house can set for a show: the choices that can decide, in every combination.

A value that fits or falls short at both of its ends needs no choice. Where a show has more to
choose than is compared, values keep their ends, and what lies between these is asked.
"""

from builder.fit.arrangements.deciding import readings_of
from builder.fit.arrangements.evenings import MOST
from builder.fit.arrangements.records import Evening, Reading
from builder.fit.arrangements.views import view_of
from builder.fit.records import FitPack, RiderAsked, Setting
from builder.fit.wording import both


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
        if key not in keys and reading["is_open"]:
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


def settings_of(readings: list[Reading]) -> list[Setting]:
    """The choices for one value that can decide, by all the needs that read it."""
    first = readings[0]
    return [
        {
            "key": first["value"]["key"],
            "item": first["item"],
            "label": first["value"]["label"],
            "number": number,
            "words": both(first["kind"], number),
        }
        for number in numbers_of(readings)
    ]


def numbers_of(readings: list[Reading]) -> list[float]:
    """
    The one setting that is enough where all ask for more of a value, or all for less; else the
    settings that the house names, or the amounts asked between the ends, then the ends. [SI]
    """
    value = readings[0]["value"]
    least, most = value["least"], value["most"]
    if least is None or most is None:
        return value["settings"]
    named = value["settings"]
    amounts = [amount for reading in readings for amount in reading["amounts"]]
    if all(reading["way"] == "at least" for reading in readings):
        wanted = max(least, min(max(amounts), most))
        return (
            [min(each for each in [*named, most] if each >= wanted)] if len(named) > 0 else [wanted]
        )
    if all(reading["way"] == "at most" for reading in readings):
        wanted = min(most, max(min(amounts), least))
        return (
            [max(each for each in [*named, least] if each <= wanted)]
            if len(named) > 0
            else [wanted]
        )
    if len(named) > 0:
        return named
    numbers: list[float] = []
    for amount in amounts:
        if least < amount < most and amount not in numbers:
            numbers.append(amount)
    return [*numbers, least, most]
