"""``crew`` and ``tasks``: who is called when, and what the house does or keeps by when."""

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
WRITE_ONE = (
    "write on with a date, at with a time of day, or one of before and after, with by for how long"
)


def call_asked(call: ReadValue, asking: Asking) -> CallAsked:
    """People whom the house is to call."""
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
    return {
        **base,
        "carried": carried_by(call),
        "sort": "call",
        "who": words_of(call, "who"),
        "long_s": si_of(call, "long"),
        "meals": 0.0 if meals is None else meals,
    }


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
