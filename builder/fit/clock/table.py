"""The day as a table: when each thing begins and ends, what it is, and whose."""

from typing import Any

from builder.fit.clock.acts import day_of, doors_of
from builder.fit.clock.evening import changeover_of
from builder.fit.clock.hours import holds_today, of_the_show
from builder.fit.clock.house import said_by_house
from builder.fit.verdicts import Record
from builder.fit.wording import clock as clock_words
from builder.fit.wording import lasting

NOT_KNOWN = "?"
SPARE = "to spare"
BEFORE_ALL_S = -604800.0


def table(acts: list[Record], before: list[Record], section: Any) -> list[Record]:
    """Rows in the order of the day, in words: start, end, how long, what, whose."""
    doors_s = doors_of(acts)["s"]
    early = by_start([*before, *ready_rows(doors_s, section)]) if len(before) > 0 else []
    rows = with_spare([*early, *doors_rows(doors_s, acts[0])])
    for index in range(len(acts)):
        if index > 0:
            rows.append(gap_row(acts[index - 1], acts[index]))
        rows.append(set_row(acts[index]))
    last = acts[len(acts) - 1]
    rows = [*rows, *curfew_rows(acts, section)]
    if last["ends_s"] is not None and last["clock"]["load out"] is not None:
        rows.append(
            row(last["ends_s"], last["ends_s"] + last["clock"]["load out"], "load-out", last["act"])
        )
    return [words_of(each) for each in by_start(rows)]


def by_start(rows: list[Record]) -> list[Record]:
    """Rows by their start; one whose start nobody knows stays behind the one before it."""
    placed: list[Record] = []
    start_s = BEFORE_ALL_S
    for each in rows:
        start_s = each["from_s"] if each["from_s"] is not None else start_s
        placed.append({"start_s": start_s, "row": each})
    return [each["row"] for each in sorted(placed, key=lambda each: each["start_s"])]


def row(first_s: Any, last_s: Any, what: str, whose: str) -> Record:
    """A row in seconds."""
    length_s = (
        last_s - first_s
        if first_s is not None and last_s is not None and last_s != first_s
        else None
    )
    return {"from_s": first_s, "to_s": last_s, "length_s": length_s, "what": what, "whose": whose}


def words_of(each: Record) -> Record:
    """A row in words."""
    length_s = each["length_s"]
    return {
        "start": clock_words(each["from_s"]) if each["from_s"] is not None else NOT_KNOWN,
        "end": clock_words(each["to_s"]) if each["to_s"] is not None else NOT_KNOWN,
        "long": ("−" if length_s < 0 else "") + lasting(length_s) if length_s is not None else "",
        "what": each["what"],
        "whose": each["whose"],
    }


def ready_rows(doors_s: Any, section: Any) -> list[Record]:
    """The time before doors that the house keeps for itself."""
    ready = said_by_house(section, "identity", "checks_end_before_doors")
    if doors_s is None or ready["s"] is None or ready["s"] == 0:
        return []
    return [row(doors_s - ready["s"], doors_s, "hall made ready", "House")]


def doors_rows(doors_s: Any, first: Record) -> list[Record]:
    """Doors, until the first note where it is known and later."""
    if doors_s is None:
        return []
    until_s = (
        first["starts_s"]
        if first["starts_s"] is not None and first["starts_s"] > doors_s
        else doors_s
    )
    return [row(doors_s, until_s, "doors", "House")]


def with_spare(rows: list[Record]) -> list[Record]:
    """The rows with the time between them that nobody needs."""
    found: list[Record] = []
    end_s = None
    for each in rows:
        if end_s is not None and each["from_s"] is not None and end_s < each["from_s"]:
            found.append(row(end_s, each["from_s"], SPARE, ""))
        found.append(each)
        end_s = (
            max(end_s, each["to_s"])
            if end_s is not None and each["to_s"] is not None
            else each["to_s"]
        )
    return found


def gap_row(before: Record, act: Record) -> Record:
    """The changeover to an act, as long as it takes."""
    needed = changeover_of(before, act)
    if before["ends_s"] is None or len(needed["asks"]) > 0:
        return row(before["ends_s"], None, "changeover", act["act"])
    return row(before["ends_s"], before["ends_s"] + needed["s"], "changeover", act["act"])


def set_row(act: Record) -> Record:
    """An act's set."""
    return row(act["starts_s"], act["ends_s"], "set", act["act"])


def curfew_rows(acts: list[Record], section: Any) -> list[Record]:
    """The curfews that hold on the day."""
    day = day_of(acts)
    found = []
    for item in section["items"] if section is not None else []:
        if item["kind"] == "curfew" and holds_today(item["name"], day) == "yes":
            time_s = of_the_show(item["values"]["music_ends"]["number"])
            found.append(row(time_s, time_s, "curfew", "House"))
    return found
