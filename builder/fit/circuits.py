"""
Single-phase circuits on the house's outlets: so many of a current, each on one outlet and one
phase, no phase of what feeds them above what is free.

Circuits of one line are alike. Under limits that lie one in another, taking any that still fits
finds the most of them (Edmonds 1971, matroids and the greedy algorithm: such limits make a laminar
matroid), so what this cannot take, nobody can.
"""

from typing import Any

from builder.fit.comparing import age_notes, asked, item_notes, once, signed
from builder.fit.feeds import PHASES, above, least_room, less, outage, room_of, system_of, volts
from builder.fit.records import Advice, Mender
from builder.fit.verdicts import FITS, SHORT, Record, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both, digits

CIRCUITS: Advice = {
    "question": (
        "How many single-phase circuits of that current can we have, where, on which connector and"
        " on which phases?"
    ),
    "remedy": (
        "Bring a distribution board for a three-phase service, draw less, or hire a generator."
    ),
    "who": "the house electrician, or hire",
}

OTHER_SYSTEM: Mender = {
    "remedy": (
        "Hire a transformer, where the frequency suits, or a generator of the system asked for."
        " Never connect to another voltage."
    ),
    "who": "the house electrician, or hire",
}


def circuits(answer: Record, section: Record, stage: Any, nodes: dict[str, Record]) -> None:
    """The outlets that could take a line of circuits, or why they cannot all be taken."""
    requirement = answer["requirement"]
    if not place_known(requirement["of"], section, stage):
        answer["alone"] = asked(
            requirement, CIRCUITS, "The house names no place " + requirement["of"] + "."
        )
        return
    there, unknown = 0.0, 0
    rows: list[Record] = []
    notes: list[str] = []
    dead: list[str] = []
    last = None
    for item in section["items"]:
        if item["kind"] == "outlet" and serves(requirement, item, section, nodes):
            rating = item["values"].get("rating")
            off = outage(above(item["values"]["fed_from"]["text"], nodes), nodes)
            if off != "":
                dead.append(off + " is out of service, and so are the outlets that it feeds.")
            elif rating is None or rating["number"] is None:
                unknown += 1
            elif carries(item) >= requirement["current_a"]:
                there += item["values"]["count"]["number"]
                found = rows_of(item, requirement, nodes)
                rows = [*rows, *found]
                unknown += 1 if len(found) == 0 else 0
                notes = [
                    *notes,
                    *item_notes(item),
                    *age_notes(rating),
                    *voltage_note(requirement, item, section),
                ]
                if requirement["apart"]:
                    notes = [
                        *notes,
                        dimmers_beside(
                            above(item["values"]["fed_from"]["text"], nodes), section, nodes
                        ),
                    ]
                last = fact_of(rating, item)
    answer["fact"] = last
    answer["notes"] = once(notes)
    most = most_of(rows, requirement, {"room": room_of(nodes), "used": {}})
    if most >= requirement["count"]:
        answer["choices"] = rows
    elif unknown == 0 and there >= requirement["count"] and not is_nested(rows):
        # Circuits between two lines share limits crosswise, so another order than the one tried
        # might hold more.
        answer["alone"] = asked(
            requirement,
            CIRCUITS,
            digits(float(most), 0)
            + " were found to fit at the same time, and more is not ruled out.",
        )
    else:
        answer["alone"] = too_few(requirement, there, most, unknown, last)
        if answer["alone"]["verdict"] == SHORT and there == 0:
            others = other_voltages(requirement, section, nodes)
            answer["alone"]["reason"] = " ".join([answer["alone"]["reason"], *others])
            with_remedy(answer["alone"], OTHER_SYSTEM if len(others) > 0 else CIRCUITS)
        if answer["alone"]["verdict"] == SHORT:
            answer["alone"]["reason"] = " ".join([answer["alone"]["reason"], *once(dead)])


def place_known(name: str, section: Record, stage: Any) -> bool:
    """Whether the house names a place on its stage or at an outlet; no name is any place."""
    if name == "":
        return True
    places = (
        [item["name"] for item in stage["items"] if item["kind"] == "place"]
        if stage is not None
        else []
    )
    outlets = [
        item["values"]["place"]["text"]
        for item in section["items"]
        if item["kind"] == "outlet" and "place" in item["values"]
    ]
    return any(each.lower() == name.lower() for each in [*places, *outlets])


def is_nested(rows: list[Record]) -> bool:
    """Whether each circuit hangs on one phase, so that all limits lie one in another."""
    return all(len(row["phases"]) == 1 for row in rows)


def too_few(requirement: Record, there: float, most: int, unknown: int, last: Any) -> Record:
    """
    The verdict where not all circuits can be taken, even with nothing else on the house's outlets.
    """
    if unknown > 0:
        return asked(
            requirement,
            CIRCUITS,
            "The house has not said what some outlets are rated for, or what is free behind them.",
        )
    if there < requirement["count"]:
        reason = digits(there, 0) + " such outlets of " + digits(requirement["count"], 0) + "."
    else:
        reason = (
            digits(there, 0)
            + " such outlets, and "
            + digits(float(most), 0)
            + " can be loaded so at the same time beside what the house draws."
        )
    found = with_remedy(verdict(requirement, SHORT, reason), CIRCUITS)
    slack = (there if there < requirement["count"] else float(most)) - requirement["count"]
    found["fact"] = last
    found["margin"] = signed(both("count", abs(slack)), slack)
    return found


def serves(requirement: Record, item: Record, section: Record, nodes: dict[str, Record]) -> bool:
    """
    Whether an outlet is single-phase, may be used, and stands where it is asked for on the voltage
    asked for, away from dimmers where asked.
    """
    if item["condition"] == "out of service" or item["terms"] == "not for visitors":
        return False
    if (
        requirement["of"] != ""
        and item["values"]["place"]["text"].lower() != requirement["of"].lower()
    ):
        return False
    if requirement["apart"] and dimmed(item, nodes):
        return False
    lines = lines_of(item)
    wired = volts(system_of(item, section)).split("/")
    if requirement["system"] == "":
        return lines == 1
    # One line and neutral have the lower voltage of a system, two lines the higher.
    return (lines == 1 and volts(requirement["system"]) == wired[0]) or (
        lines == 2 and volts(requirement["system"]) == wired[-1]
    )


def voltage_note(requirement: Record, item: Record, section: Record) -> list[str]:
    """The voltage of an outlet's line, where the rider states none and the house does."""
    wired = volts(system_of(item, section)).split("/")[0]
    return (
        ["The rider states no voltage; this is " + wired + " V."]
        if requirement["system"] == "" and wired != ""
        else []
    )


def other_voltages(requirement: Record, section: Record, nodes: dict[str, Record]) -> list[str]:
    """The voltages of the outlets that are there, where none has the one asked for."""
    if requirement["system"] == "":
        return []
    open_to_all = {**requirement, "system": ""}
    there = [
        item
        for item in section["items"]
        if item["kind"] == "outlet" and serves(open_to_all, item, section, nodes)
    ]
    found = [volts(system_of(item, section)).split("/")[0] for item in there]
    return once(["The outlets there are of " + wired + " V." for wired in found if wired != ""])


def dimmed(item: Record, nodes: dict[str, Record]) -> bool:
    """Whether dimmers hang on a board or service that feeds an outlet."""
    for name in above(item["values"]["fed_from"]["text"], nodes):
        values = nodes[name]["item"]["values"]
        if "dimmers" in values and values["dimmers"]["text"] == "yes":
            return True
    return False


def dimmers_beside(path: list[str], section: Record, nodes: dict[str, Record]) -> str:
    """Which service with dimmers on it shares something on this way up, as far as the pack says."""
    for other in section["items"]:
        if (
            other["kind"] == "service"
            and "dimmers" in other["values"]
            and other["values"]["dimmers"]["text"] == "yes"
        ):
            shared = [name for name in above(other["name"], nodes) if name in path]
            if len(shared) > 0:
                return (
                    "It shares "
                    + shared[0]
                    + " with "
                    + str(other["name"])
                    + ", which has dimmers on it."
                )
    return "Ask whether dimmers share its transformer."


def lines_of(item: Record) -> int:
    """How many lines one outlet has, 0 where it is not said or all are on it."""
    text = item["values"]["phases"]["text"] if "phases" in item["values"] else ""
    if text == "in turn":
        return 1
    return len([phase for phase in PHASES if phase in text.split(" ")])


def carries(item: Record) -> float:
    """
    What one outlet may carry: its rating, or its breaker where that is less.

    The rating is known.
    """
    rating_a = float(item["values"]["rating"]["number"])
    breaker = item["values"].get("breaker")
    return (
        rating_a
        if breaker is None or breaker["number"] is None or breaker["number"] > rating_a
        else float(breaker["number"])
    )


def rows_of(item: Record, requirement: Record, nodes: dict[str, Record]) -> list[Record]:
    """
    An outlet line as rows, one for each phase; none where what is free behind it is not known.
    """
    fed = item["values"]["fed_from"]["text"]
    if fed not in nodes:
        return []
    text = item["values"]["phases"]["text"]
    turns = [phase for phase in PHASES if nodes[fed]["free"][phase] is not None]
    sets = (
        [[phase] for phase in turns]
        if text == "in turn"
        else [[phase for phase in PHASES if phase in text.split(" ")]]
    )
    fits = requirement["connector"].lower() in ("", item["name"].lower())
    count = int(item["values"]["count"]["number"])
    rows = []
    for index, phases in enumerate(sets):
        slots = count // len(sets) + (1 if index < count % len(sets) else 0)
        if all(nodes[fed]["free"][phase] is not None for phase in phases):
            key = item["key"] + " " + " ".join(phases)
            rows.append(
                {
                    "key": key,
                    "item": item,
                    "phases": phases,
                    "path": above(fed, nodes),
                    "count": slots,
                    "connector": fits,
                }
            )
    return rows


def most_of(rows: list[Record], requirement: Record, state: Record) -> int:
    """How many such circuits the house can take beside what a state holds."""
    for number in range(int(requirement["count"])):
        row = best_row(rows, requirement["current_a"], state)
        if row is None:
            return number
        state = with_one(row, requirement["current_a"], state)
    return int(requirement["count"])


def best_row(rows: list[Record], current_a: float, state: Record) -> Any:
    """
    The row for the next circuit: the connector asked for before others, then the phase with most
    left, so that phases fill evenly.
    """
    best, best_room = None, 0.0
    for row in rows:
        room = left_on(row, current_a, state)
        if room is not None and (
            best is None
            or (row["connector"] and not best["connector"])
            or (row["connector"] == best["connector"] and room > best_room)
        ):
            best, best_room = row, room
    return best


def left_on(row: Record, current_a: float, state: Record) -> Any:
    """What is left for a row's next circuit, or None where the circuit does not fit there."""
    if state["used"].get(row["key"], 0) >= row["count"]:
        return None
    room = least_room(row["path"], row["phases"], state["room"])
    return room if room >= current_a else None


def with_one(row: Record, current_a: float, state: Record) -> Record:
    """The state with one more circuit on a row."""
    used = {**state["used"], row["key"]: state["used"].get(row["key"], 0) + 1}
    return {"room": less(state["room"], row["path"], row["phases"], current_a), "used": used}


def filled(load: Record, state: Record, steps: dict[str, int]) -> Any:
    """
    All circuits of a load placed by the rule of :func:`best_row`: the row of each, and the state
    then.

    None where they do not all fit.
    """
    chosen: list[Record] = []
    while len(chosen) < load["requirement"]["count"]:
        steps["left"] -= 1
        row = best_row(load["choices"], load["requirement"]["current_a"], state)
        if row is None:
            return None
        chosen.append(row)
        state = with_one(row, load["requirement"]["current_a"], state)
    return {"rows": chosen, "state": state}


def placed_circuits(answer: Record, room: dict[str, Record], notes: list[str]) -> Record:
    """
    The verdict on circuits that have their places: how many at which outlets, on which phases.
    """
    requirement = answer["requirement"]
    lines = once([line_of(row, answer["placed"]) for row in answer["placed"]])
    least_a = least_of(answer["placed"], room)
    words = both("current", least_a)
    found = verdict(
        requirement,
        FITS,
        "; ".join(lines)
        + "; "
        + words[0]
        + " are left on the fullest of these phases beside all loads that have a place.",
    )
    others = [row for row in answer["placed"] if not row["connector"]]
    if len(others) > 0:
        notes = [
            *notes,
            "Connector: "
            + requirement["connector"]
            + " asked, the house has "
            + others[0]["item"]["name"]
            + ". Whoever connects decides on an adapter.",
        ]
    found["fact"] = answer["fact"]
    found["notes"] = once(notes)
    found["margin"] = signed(words, least_a)
    return settled(found)


def least_of(rows: list[Record], room: dict[str, Record]) -> float:
    """What is left on the fullest of the phases that rows use."""
    least = float(least_room(rows[0]["path"], rows[0]["phases"], room))
    for row in rows:
        here = float(least_room(row["path"], row["phases"], room))
        least = here if here < least else least
    return least


def line_of(row: Record, placed: list[Record]) -> str:
    """One line of outlets in words, with how many circuits go on each phase."""
    same = [other for other in placed if other["item"]["key"] == row["item"]["key"]]
    parts: list[str] = []
    for phase in ("L1", "L2", "L3", "L1 L2", "L1 L3", "L2 L3"):
        number = len([other for other in same if " ".join(other["phases"]) == phase])
        if number > 0:
            parts.append(digits(float(number), 0) + " on " + phase)
    return (
        "At "
        + str(row["item"]["values"]["place"]["text"])
        + ", "
        + str(row["item"]["name"])
        + ": "
        + ", ".join(parts)
    )
