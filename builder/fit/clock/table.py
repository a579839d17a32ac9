"""The day as a table: when each thing begins and ends, what it is, and whose."""

from builder.fit.clock.acts import day_of, doors_of
from builder.fit.clock.changeover import changeover_of
from builder.fit.clock.house import house_says
from builder.fit.clock.laying_out import HOUSE
from builder.fit.clock.records import Act, Row
from builder.fit.clock.times import holds_today, known_time, of_the_show
from builder.fit.records import DayRow, Section
from builder.fit.sections import items_of
from builder.fit.values import number_of
from builder.fit.wording import clock as clock_words
from builder.fit.wording import lasting

NOT_KNOWN = "?"
SPARE = "to spare"
BEFORE_ALL_S = -604800.0


def day_table(acts: list[Act], before: list[Row], section: Section | None) -> list[DayRow]:
    """Rows in the order of the day, in words: start, end, how long, what, whose."""
    doors_s = doors_of(acts)["s"]
    early = by_start([*before, *ready_rows(doors_s, section)]) if len(before) > 0 else []
    rows = with_spare([*early, *doors_rows(doors_s, acts[0])])
    for index in range(len(acts)):
        if index > 0:
            rows.append(gap_row(acts[index - 1], acts[index]))
        rows.append(set_row(acts[index]))
    rows.extend(curfew_rows(acts, section))
    rows.extend(load_out_rows(acts[-1]))
    return [row_words(row) for row in by_start(rows)]


def by_start(rows: list[Row]) -> list[Row]:
    """Rows by their start; one whose start nobody knows stays behind the one before it."""
    starts: list[tuple[float, Row]] = []
    start_s = BEFORE_ALL_S
    for row in rows:
        if row["from_s"] is not None:
            start_s = row["from_s"]
        starts.append((start_s, row))
    return [row for _, row in sorted(starts, key=lambda pair: pair[0])]


def row_between(first_s: float | None, last_s: float | None, what: str, whose: str) -> Row:
    """A row in seconds."""
    length_s: float | None = None
    if first_s is not None and last_s is not None and last_s != first_s:
        length_s = last_s - first_s
    return {"from_s": first_s, "to_s": last_s, "length_s": length_s, "what": what, "whose": whose}


def row_words(row: Row) -> DayRow:
    """A row in words."""
    return {
        "start": clock_words(row["from_s"]) if row["from_s"] is not None else NOT_KNOWN,
        "end": clock_words(row["to_s"]) if row["to_s"] is not None else NOT_KNOWN,
        "long": length_words(row["length_s"]),
        "what": row["what"],
        "whose": row["whose"],
    }


def length_words(length_s: float | None) -> str:
    """How long a row is; nothing where nobody knows."""
    if length_s is None:
        return ""
    return f"−{lasting(length_s)}" if length_s < 0 else lasting(length_s)


def ready_rows(doors_s: float | None, section: Section | None) -> list[Row]:
    """The time before doors that the house keeps for itself."""
    ready_s = house_says(section, "identity", "checks_end_before_doors")["s"]
    if doors_s is None or ready_s is None or ready_s == 0:
        return []
    return [row_between(doors_s - ready_s, doors_s, "hall made ready", HOUSE)]


def doors_rows(doors_s: float | None, first: Act) -> list[Row]:
    """Doors, until the first note where it is known and later."""
    if doors_s is None:
        return []
    until_s = doors_s
    if first["starts_s"] is not None and first["starts_s"] > doors_s:
        until_s = first["starts_s"]
    return [row_between(doors_s, until_s, "doors", HOUSE)]


def with_spare(rows: list[Row]) -> list[Row]:
    """The rows with the time between them that nobody needs."""
    filled: list[Row] = []
    end_s: float | None = None
    for row in rows:
        if end_s is not None and row["from_s"] is not None and end_s < row["from_s"]:
            filled.append(row_between(end_s, row["from_s"], SPARE, ""))
        filled.append(row)
        if end_s is None or row["to_s"] is None or row["to_s"] > end_s:
            end_s = row["to_s"]
    return filled


def gap_row(before: Act, act: Act) -> Row:
    """The changeover to an act, as long as it takes."""
    needed = changeover_of(before, act)
    ends_s = before["ends_s"]
    until_s: float | None = None
    if ends_s is not None and len(needed["asks"]) == 0:
        until_s = ends_s + needed["s"]
    return row_between(ends_s, until_s, "changeover", act["act"])


def set_row(act: Act) -> Row:
    """An act's set."""
    return row_between(act["starts_s"], act["ends_s"], "set", act["act"])


def load_out_rows(last: Act) -> list[Row]:
    """The load-out, where its length and the last note are known."""
    length_s = last["clock"]["load out"]
    if last["ends_s"] is None or length_s is None:
        return []
    ends_s = known_time(last["ends_s"])
    return [row_between(ends_s, ends_s + length_s, "load-out", last["act"])]


def curfew_rows(acts: list[Act], section: Section | None) -> list[Row]:
    """The curfews that hold on the day."""
    day = day_of(acts)
    rows: list[Row] = []
    for item in items_of(section, "curfew"):
        ends_s = number_of(item, "music_ends")
        if ends_s is not None and holds_today(item["name"], day) == "yes":
            time_s = of_the_show(ends_s)
            rows.append(row_between(time_s, time_s, "curfew", HOUSE))
    return rows
