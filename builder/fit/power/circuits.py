"""
A line of single-phase circuits by itself: so many of a current, each on one outlet, no phase of
what feeds them above what is free.
"""

from typing import TypedDict

from builder.fit.margins import signed
from builder.fit.notes import age_notes, item_notes, once
from builder.fit.power.dimmers import dimmers_beside
from builder.fit.power.first_look import FirstLook, Outlets, first_look
from builder.fit.power.outlets import carries_a, path_of, rows_of, serving_outlets
from builder.fit.power.sentences import (
    CIRCUITS,
    FEEDER_OUT,
    MAYBE_MORE,
    NO_PLACE,
    NOTHING_ASKED,
    OTHER_SYSTEM,
    OTHER_VOLTAGE,
    OUTLETS_TOO_FEW,
    OUTLETS_TOO_FULL,
    OUTLETS_UNKNOWN,
)
from builder.fit.power.systems import voltage_notes, voltages_of
from builder.fit.power.tree import Tree, fed_notes, free_room, outage
from builder.fit.records import Fact, Item, PowerAsked, Section, Verdict
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import known_number, number_of, text_of
from builder.fit.verdicts import NOT_NEEDED, SHORT, asked, fact_of, verdict, with_remedy
from builder.fit.wording import both, digits
from builder.formulas.circuit_rows import filled, is_nested


class Found(TypedDict):
    """
    The outlets that could serve a line of circuits: how many, in which rows, of how many lines too
    little is known, and which things that feed others are out of service.
    """

    there: float
    unknown: int
    rows: list[Outlets]
    dead: list[str]
    fact: Fact | None
    notes: list[str]


def look_at_outlets(
    requirement: PowerAsked, section: Section, stage: Section | None, tree: Tree
) -> FirstLook:
    """The outlets that could take a line of circuits, or why they cannot all be taken."""
    look = first_look(requirement)
    if requirement["count"] == 0:
        look["alone"] = verdict(requirement, NOT_NEEDED, NOTHING_ASKED)
        return look
    if not is_place_known(requirement["of"], section, stage):
        reason = fill(NO_PLACE, {"place": requirement["of"]})
        look["alone"] = asked(requirement, CIRCUITS, reason)
        return look
    found = outlets_for(requirement, section, tree)
    look["fact"] = found["fact"]
    look["notes"] = once(found["notes"])
    most = most_circuits(found["rows"], requirement, tree)
    if most >= requirement["count"]:
        look["outlets"] = found["rows"]
    else:
        look["alone"] = not_all(requirement, found, most, section, tree)
    return look


def is_place_known(name: str, section: Section, stage: Section | None) -> bool:
    """Whether the house names a place on its stage or at an outlet; no name is any place."""
    places = [item["name"] for item in items_of(stage, "place")]
    outlets = [
        text_of(item, "place") for item in items_of(section, "outlet") if "place" in item["values"]
    ]
    return name == "" or any(place.lower() == name.lower() for place in [*places, *outlets])


def outlets_for(requirement: PowerAsked, section: Section, tree: Tree) -> Found:
    """The outlets that could serve a line of circuits, and what to know about them."""
    found: Found = {
        "there": 0.0,
        "unknown": 0,
        "rows": [],
        "dead": [],
        "fact": None,
        "notes": [],
    }
    for item in serving_outlets(requirement, requirement["system"], section, tree):
        dead = outage(path_of(item, tree), tree)
        if dead != "":
            found["dead"].append(fill(FEEDER_OUT, {"feeder": dead}))
        elif number_of(item, "rating") is None or number_of(item, "count") is None:
            found["unknown"] += 1
        elif carries_a(item) >= requirement["current_a"]:
            rows = rows_of(item, requirement, tree)
            found["there"] += known_number(item, "count")
            found["unknown"] += 1 if len(rows) == 0 else 0
            found["rows"] = [*found["rows"], *rows]
            found["notes"] = [*found["notes"], *outlet_notes(requirement, item, section, tree)]
            found["fact"] = fact_of(item["values"]["rating"], item)
    return found


def outlet_notes(requirement: PowerAsked, item: Item, section: Section, tree: Tree) -> list[str]:
    """What to know about a line of outlets."""
    lower = voltages_of(item, section)[0]
    notes = [
        *item_notes(item),
        *age_notes(item["values"]["rating"]),
        *[note for name in path_of(item, tree)[:1] for note in fed_notes(tree[name]["item"])],
        *voltage_notes(requirement["system"], f"{lower} V" if lower != "" else ""),
    ]
    if requirement["apart"]:
        notes.append(dimmers_beside(path_of(item, tree), section, tree))
    return notes


def most_circuits(rows: list[Outlets], requirement: PowerAsked, tree: Tree) -> int:
    """How many such circuits the house can take before anything else is placed."""
    taken = filled(
        [outlets["row"] for outlets in rows],
        int(requirement["count"]),
        {"room": free_room(tree), "used": {}},
    )
    return len(taken["rows"])


def not_all(
    requirement: PowerAsked, found: Found, most: int, section: Section, tree: Tree
) -> Verdict:
    """
    The verdict where not all circuits can be taken, even with nothing else on the house's outlets.
    """
    enough_there = found["there"] >= requirement["count"]
    if found["unknown"] > 0:
        return asked(requirement, CIRCUITS, OUTLETS_UNKNOWN)
    if enough_there and not is_nested([outlets["row"] for outlets in found["rows"]]):
        # Circuits between two lines share limits crosswise, so another order than the one tried
        # might hold more.
        reason = fill(MAYBE_MORE, {"most": digits(most, 0)})
        return asked(requirement, CIRCUITS, reason)
    others: list[str] = []
    if found["there"] == 0:
        others = other_voltages(requirement, section, tree)
    reason = fill(
        OUTLETS_TOO_FULL if enough_there else OUTLETS_TOO_FEW,
        {
            "there": digits(found["there"], 0),
            "wanted": digits(requirement["count"], 0),
            "most": digits(most, 0),
        },
    )
    answer = verdict(requirement, SHORT, " ".join([reason, *others, *once(found["dead"])]))
    slack = (most if enough_there else found["there"]) - requirement["count"]
    answer["fact"] = found["fact"]
    answer["margin"] = signed(both("count", abs(slack)), slack)
    return with_remedy(answer, OTHER_SYSTEM if len(others) > 0 else CIRCUITS)


def other_voltages(requirement: PowerAsked, section: Section, tree: Tree) -> list[str]:
    """The voltages of the outlets that are there, where none has the one asked for."""
    if requirement["system"] == "":
        return []
    voltages = [
        voltages_of(item, section)[0] for item in serving_outlets(requirement, "", section, tree)
    ]
    return once([fill(OTHER_VOLTAGE, {"voltage": one}) for one in voltages if one != ""])
