"""``crew`` and ``tasks``: who is called when, and what the house does or keeps by when."""

from typing import TypedDict

from builder.fit.records import CallAsked, TaskAsked
from builder.reading.values.sentences import fill, sentence_start
from builder.rider.asking.asked import (
    asked_base,
    carried_by,
    parts_joined,
    sized,
    strictness_of,
    with_note,
)
from builder.rider.asking.asking import Asking
from builder.rider.asking.needs import unclear
from builder.rider.asking.values import (
    ReadValue,
    count_of,
    group_of,
    has,
    place_of,
    si_of,
    words_of,
)

CALLED = "{count} {who}"
ABLE = "able to {words}"
FOR = "for {words}"
FROM = "from {moment}"
UNTIL = "until {moment}"
LONG = "{words} long"
MEALS = "{count} meal breaks"
ONE_MEAL = "one meal break"
PERSONS = "for {count} persons"
BY = "{by} {side} {happening}"
AFTER = "after {happening}"
BEFORE = "before {happening}"
ON_AT = "{day} at {time}"
ONE_TIME = "tells no one time"
DAY_S = 86_400.0
CLOCK = "clock"
WRITE_ONE = (
    "write on with a date, at with a time of day, or one of before and after, with by for how long"
)


def call_asked(call: ReadValue, calls: list[ReadValue], asking: Asking) -> CallAsked:
    """People whom the house is to call, beside all other calls of the rider."""
    parts = {"count": number_words(call, "count"), "who": words_of(call, "who")}
    needed = [
        fill(CALLED, parts),
        sized(ABLE, call, "able to"),
        sized(FOR, call, "what for"),
        *times_of(call, asking),
    ]
    if has(call, "meals"):
        count = number_words(call, "meals")
        needed.append(ONE_MEAL if count == "1" else fill(MEALS, {"count": count}))
    words = with_note(parts_joined(needed), call)
    base = asked_base(asking, call["line"], "crew", "Crew", words, strictness_of(call))
    meals = count_of(call, "meals")
    span = span_of(call)
    beside = others_of_skill(call, calls, "yes")
    perhaps = others_of_skill(call, calls, "perhaps")
    return {
        **base,
        "carried": carried_by(call),
        "sort": "call",
        "who": words_of(call, "who"),
        "able": words_of(call, "able to"),
        "count": called_of(call),
        "long_s": span["long_s"],
        "meals": 0.0 if meals is None else meals,
        "beside": beside,
        "perhaps": perhaps,
    }


class Span(TypedDict):
    """
    From when until when a call is, and how long, counted from midnight or from what happens, which
    ``anchor`` names; empty and None where it is not told. [s]
    """

    anchor: str
    from_s: float | None
    until_s: float | None
    long_s: float | None


def span_of(call: ReadValue) -> Span:
    """The time of a call: its end follows from its begin and its length, or the other way."""
    long_s = si_of(call, "long")
    begins, ends = anchor_of(call, "from"), anchor_of(call, "until")
    anchor = begins if begins != "" else ends
    from_s = counted_from(call, "from") if begins != "" else None
    until_s = counted_from(call, "until") if ends == anchor and anchor != "" else None
    if from_s is not None and until_s is not None:
        if anchor == CLOCK and until_s <= from_s:
            until_s = until_s + DAY_S
        long_s = until_s - from_s if long_s is None else long_s
    elif from_s is not None and long_s is not None:
        until_s = from_s + long_s
    elif until_s is not None and long_s is not None:
        from_s = until_s - long_s
    return {"anchor": anchor, "from_s": from_s, "until_s": until_s, "long_s": long_s}


def anchor_of(call: ReadValue, key: str) -> str:
    """What a moment counts from: the clock, or what happens; empty on a date or where none is."""
    moment = group_of(call, key)
    if moment is None or has(moment, "on"):
        return ""
    if has(moment, "at"):
        return CLOCK
    return words_of(moment, "before" if has(moment, "before") else "after")


def counted_from(call: ReadValue, key: str) -> float:
    """How long after midnight, or after what happens, a moment is; below 0 before it. [s]"""
    moment = call["keys"][key]
    at_s = si_of(moment, "at")
    if at_s is not None:
        return at_s
    by_s = si_of(moment, "by")
    if by_s is None:
        return 0.0
    return -by_s if has(moment, "before") else by_s


def called_of(call: ReadValue) -> float:
    """How many are called; one where the rider does not say."""
    count = count_of(call, "count")
    return 1.0 if count is None else count


def at_once(one: Span, other: Span) -> str:
    """Whether two calls are at the same time: yes, no, or perhaps where that is not told."""
    if one["from_s"] is None or other["from_s"] is None or one["anchor"] != other["anchor"]:
        return "perhaps"
    first, last = (one, other) if one["from_s"] <= other["from_s"] else (other, one)
    if one["from_s"] == other["from_s"]:
        return "yes"
    if first["until_s"] is None or last["from_s"] is None:
        return "perhaps"
    return "yes" if first["until_s"] > last["from_s"] else "no"


def others_of_skill(call: ReadValue, calls: list[ReadValue], how: str) -> float:
    """
    How many others of the same skill a rider calls for the same time for certain, or perhaps.
    Others that the show brings, or that it calls on a condition, are perhaps called or not at all.
    """
    total = 0.0
    for other in calls:
        if other["path"] == call["path"] or carried_by(other) == "show":
            continue
        if words_of(other, "who") != words_of(call, "who"):
            continue
        found = at_once(span_of(call), span_of(other))
        if found == "yes" and (has(other, "if") or has(other, "unless")):
            found = "perhaps"
        if found == how:
            total += called_of(other)
    return total


def task_asked(task: ReadValue, asking: Asking) -> TaskAsked:
    """Something that the house is to do or to keep."""
    needed = [words_of(task, "what"), *times_of(task, asking)]
    if has(task, "persons"):
        needed.append(fill(PERSONS, {"count": number_words(task, "persons")}))
    words = with_note(parts_joined(needed), task)
    kind = words_of(task, "kind")
    title = sentence_start(kind)
    base = asked_base(asking, task["line"], "house", title, words, strictness_of(task))
    return {**base, "carried": carried_by(task), "sort": "task"}


def number_words(group: ReadValue, key: str) -> str:
    """A count in digits, or nothing."""
    return str(group["keys"][key]["count"]) if has(group, key) else ""


def times_of(group: ReadValue, asking: Asking) -> list[str]:
    """From when, until when and how long, in words."""
    words: list[str] = []
    for key, template in [("from", FROM), ("until", UNTIL)]:
        moment = group_of(group, key)
        if moment is not None:
            words.append(fill(template, {"moment": moment_words(group, key, moment, asking)}))
    return [*words, sized(LONG, group, "long")]


def moment_words(group: ReadValue, key: str, moment: ReadValue, asking: Asking) -> str:
    """A time in words; one that tells no one time is noted."""
    told = [name for name in ("at", "on", "before", "after") if has(moment, name)]
    if told == ["at", "on"] and not has(moment, "by"):
        return fill(ON_AT, {"day": words_of(moment, "on"), "time": words_of(moment, "at")})
    if len(told) != 1 or (told[0] in ("at", "on") and has(moment, "by")):
        unclear(asking, place_of(group, key), key, "", ONE_TIME, WRITE_ONE)
        return ""
    words = words_of(moment, told[0])
    if told[0] in ("at", "on"):
        return words
    if has(moment, "by"):
        parts = {"by": words_of(moment, "by"), "side": told[0], "happening": words}
        return fill(BY, parts)
    return fill(AFTER if told[0] == "after" else BEFORE, {"happening": words})
