"""
What a load of ``power`` asks beyond what the page's form holds: where on the stage, a breaker of
its own, other ways to be fed, a tail, a condition.
"""

from builder.fit.records import LoadsAsked, PowerAsked, PowerMore, Requirement, TaskAsked
from builder.reading.values.sentences import fill
from builder.rider.asking.asked import (
    asked_base,
    carried_by,
    parts_joined,
    sized,
    strictness_of,
    with_note,
)
from builder.rider.asking.asking import Asking
from builder.rider.asking.composed import conditioned, is_empty
from builder.rider.asking.needs import unclear
from builder.rider.asking.power import TITLE, need_words, power_asked
from builder.rider.asking.values import (
    ReadValue,
    count_of,
    has,
    items_of,
    place_of,
    si_of,
    words_of,
    yes_of,
)

OWN = ["current", "system", "connector", "within", "of", "at", "wires", "trips at most"]
"""What a load says of itself, which the ways of ``any of`` say in its place."""
TAIL_TITLE = "Tail for {use}"
TAIL = "{words} with a connector at the end"
AT = "{words}"
WIRES = "{count} wires"
TRIPS = "trips at {words} at most"
BESIDE = "stands beside any of"
IN_WAYS = "write it in each way, or leave any of out"


def power_read(load: ReadValue, asking: Asking) -> list[Requirement]:
    """A load with all that it asks; what is wrong with it is noted."""
    base = any_way(load, asking) if asks_ways(load) else one_load(load, load, asking)
    found = [conditioned(load, base, asking)]
    if has(load, "tail"):
        found.append(conditioned(load, tail_asked(load, asking), asking))
    return [each for each in found if each is not None]


def asks_ways(load: ReadValue) -> bool:
    """Whether a load has several ways to be fed."""
    return "any of" in load["keys"] and not is_empty(load, "any of")


def one_load(line: ReadValue, load: ReadValue, asking: Asking) -> PowerAsked:
    """One load, or one of several together: who brings it and its strictness stand in the line."""
    use = words_of(load, "for") if not has(line, "for") else words_of(line, "for")
    asked = power_asked(line, asking)
    words = parts_joined([need_words(line), *more_words(line)])
    wires = count_of(line, "wires")
    more: PowerMore = {
        "at": words_of(line, "at"),
        "own": yes_of(line, "own breaker"),
        "apart": yes_of(line, "other transformer"),
        "isolated": yes_of(line, "isolated"),
        "wires": 0.0 if wires is None else wires,
        "trips_a": si_of(line, "trips at most"),
    }
    return {
        **asked,
        "title": fill(TITLE, {"use": use}),
        "need": with_note(words, line),
        "strictness": strictness_of(load),
        "carried": carried_by(load),
        "use": use,
        "more": more,
    }


def more_words(line: ReadValue) -> list[str]:
    """What a load asks of its feed, in words."""
    wires = ""
    if has(line, "wires"):
        wires = fill(WIRES, {"count": str(line["keys"]["wires"]["count"])})
    return [
        sized(AT, line, "at"),
        "a breaker of its own" if yes_of(line, "own breaker") else "",
        "another transformer than dimmers" if yes_of(line, "other transformer") else "",
        "isolated" if yes_of(line, "isolated") else "",
        wires,
        sized(TRIPS, line, "trips at most"),
    ]


def any_way(load: ReadValue, asking: Asking) -> LoadsAsked:
    """A load that one of several ways feeds."""
    for key in OWN:
        if has(load, key):
            unclear(asking, place_of(load, key), key, words_of(load, key), BESIDE, IN_WAYS)
    ways = [loads_of(way, load, asking) for way in items_of(load, "any of")]
    words = " or ".join(" and ".join(each["need"] for each in way) for way in ways)
    base = asked_base(
        asking,
        load["line"],
        "power",
        fill(TITLE, {"use": words_of(load, "for")}),
        with_note(words, load),
        strictness_of(load),
    )
    return {**base, "carried": carried_by(load), "sort": "loads", "ways": ways}


def loads_of(way: ReadValue, load: ReadValue, asking: Asking) -> list[PowerAsked]:
    """The loads of one way: itself, or several together."""
    if "all of" not in way["keys"] or is_empty(way, "all of"):
        return [one_load(way, load, asking)]
    return [one_load(line, load, asking) for line in items_of(way, "all of")]


def tail_asked(load: ReadValue, asking: Asking) -> TaskAsked:
    """The tail at the end of a feed, which no house describes: it is the house that agrees."""
    base = asked_base(
        asking,
        load["line"],
        "power",
        fill(TAIL_TITLE, {"use": words_of(load, "for")}),
        sized(TAIL, load, "tail"),
        strictness_of(load),
    )
    return {**base, "carried": carried_by(load), "sort": "task"}
