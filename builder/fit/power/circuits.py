"""
A line of single-phase circuits by itself: so many of a current, each on one outlet, no phase of
what feeds them above what is free.
"""

from typing import TypedDict

from builder.fit.margins import signed
from builder.fit.notes import age_notes, item_notes, once
from builder.fit.power.dimmers import dimmers_beside
from builder.fit.power.distance import apart_m, spot_named
from builder.fit.power.first_look import FirstLook, Outlets, first_look
from builder.fit.power.outlets import (
    outlets_against,
    path_of,
    rows_of,
    voltage_of,
)
from builder.fit.power.sentences import (
    CIRCUITS,
    ELSEWHERE,
    FEEDER_OUT,
    FOR_HOURS,
    MAYBE_MORE,
    NEAREST,
    NO_CURRENT,
    NO_OUTLETS,
    NO_PLACE,
    NOTHING_ASKED,
    OF_VOLTS,
    OTHER_SYSTEM,
    OTHER_VOLTAGE,
    OUTLETS_OF_CLOSED,
    OUTLETS_TOO_FEW,
    OUTLETS_TOO_FULL,
    OUTLETS_UNKNOWN,
    RATED,
)
from builder.fit.power.systems import voltage_notes, volts
from builder.fit.power.tree import Tree, fed_notes, free_room, outage
from builder.fit.records import Fact, Item, PowerAsked, Section, Verdict
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import (
    asked_of_bearers,
    known_number,
    listed,
    most_of,
    number_of,
    text_of,
    value_of,
)
from builder.fit.verdicts import NOT_NEEDED, SHORT, asked, fact_of, verdict, with_remedy
from builder.fit.wording import both, digits
from builder.formulas.circuit_rows import filled, is_nested


class Found(TypedDict):
    """
    The outlets that could serve a line of circuits: how many, in which rows, and which things that
    feed others are out of service. ``unknown`` counts lines of which too little is known, ``asked``
    says what, ``most`` what there could be with them, None where nobody says how many.
    """

    there: float
    unknown: int
    most: float | None
    asked: list[str]
    rows: list[Outlets]
    dead: list[str]
    smaller: list[Item]
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
    reason = why_not_looked(requirement["of"], section, stage)
    if reason != "":
        look["alone"] = asked(requirement, CIRCUITS, reason)
        return look
    found = outlets_for(requirement, section, stage, tree)
    look["fact"] = found["fact"]
    look["notes"] = once(found["notes"])
    most = most_circuits(found["rows"], requirement, tree)
    if most >= requirement["count"]:
        look["outlets"] = found["rows"]
    else:
        look["alone"] = not_all(requirement, found, most, section, stage, tree)
    return look


def why_not_looked(name: str, section: Section, stage: Section | None) -> str:
    """
    That the house describes no outlets, or names no such place on its stage or at an outlet; empty
    where there is something to look at. No name is any place.
    """
    outlets = outlet_places(items_of(section, "outlet"))
    if len(items_of(section, "outlet")) == 0:
        return NO_OUTLETS
    places = [item["name"] for item in items_of(stage, "place")]
    if name == "" or listed(name, [*places, *outlets]):
        return ""
    return fill(NO_PLACE, {"place": name, "names": ", ".join(outlets)})


def outlet_places(outlets: list[Item]) -> list[str]:
    """The places of some outlets, each once."""
    return once([text_of(item, "place") for item in outlets if text_of(item, "place") != ""])


def outlets_for(
    requirement: PowerAsked, section: Section, stage: Section | None, tree: Tree
) -> Found:
    """The outlets that could serve a line of circuits, and what to know about them."""
    sorted_out = outlets_against(requirement, section, stage, tree)
    found: Found = {
        "there": 0.0,
        "unknown": 0,
        "most": 0.0,
        "asked": [],
        "rows": [],
        "dead": [],
        "smaller": sorted_out["smaller"],
        "fact": None,
        "notes": [],
    }
    for item in [*sorted_out["serving"], *sorted_out["unknown"]]:
        dead = outage(path_of(item, tree), tree)
        if dead != "":
            found["dead"].append(fill(FEEDER_OUT, {"feeder": dead}))
        else:
            count = number_of(item, "count")
            found["most"] = (
                None if count is None or found["most"] is None else found["most"] + count
            )
            if item not in sorted_out["unknown"]:
                add_outlets(found, requirement, item, section, tree)
    for item in sorted_out["unknown"]:
        if outage(path_of(item, tree), tree) == "":
            found["unknown"] += 1
            why = asked_of_bearers(item)
            found["asked"] = [*found["asked"], OUTLETS_UNKNOWN if why == "" else of_closed(why)]
    return found


def of_closed(why: str) -> str:
    """Outlets that something feeds which is not for visitors, and that say nothing of it."""
    return fill(OUTLETS_OF_CLOSED, {"why": why})


def add_outlets(
    found: Found, requirement: PowerAsked, item: Item, section: Section, tree: Tree
) -> None:
    """Add a line of outlets of which enough is known and whose feeders work, as rows."""
    rows = rows_of(item, requirement, tree)
    found["there"] += known_number(item, "count")
    found["unknown"] += 1 if len(rows) == 0 else 0
    found["rows"] = [*found["rows"], *rows]
    found["notes"] = [*found["notes"], *outlet_notes(requirement, item, section, tree)]
    if "rating" in item["values"]:
        found["fact"] = fact_of(item["values"]["rating"], item)


def outlet_notes(requirement: PowerAsked, item: Item, section: Section, tree: Tree) -> list[str]:
    """What to know about a line of outlets."""
    voltage = voltage_of(item, section, tree)
    there = "" if voltage == "" else fill(OF_VOLTS, {"voltage": voltage})
    notes = [
        *item_notes(item),
        *age_notes(value_of(item, "rating")),
        *[note for name in path_of(item, tree)[:1] for note in fed_notes(tree[name]["item"])],
        *voltage_notes(requirement["system"], there, there),
        *current_notes(requirement, item),
    ]
    if requirement["apart"]:
        notes.append(dimmers_beside(path_of(item, tree), section, tree))
    return notes


def current_notes(requirement: PowerAsked, item: Item) -> list[str]:
    """What an outlet is rated for where no current is asked, and what it carries for hours."""
    rating = value_of(item, "rating")
    if requirement["current_a"] == 0:
        if rating is None or rating["text"] == "":
            return []
        return [fill(NO_CURRENT, {"amount": rating["text"]})]
    hours = most_of(value_of(item, "for-hours"))
    if hours is None or hours >= requirement["current_a"]:
        return []
    parts = {"place": text_of(item, "place"), "amount": text_of(item, "for-hours")}
    return [fill(FOR_HOURS, parts)]


def most_circuits(rows: list[Outlets], requirement: PowerAsked, tree: Tree) -> int:
    """How many such circuits the house can take before anything else is placed."""
    taken = filled(
        [outlets["row"] for outlets in rows],
        int(requirement["count"]),
        {"room": free_room(tree), "used": {}},
    )
    return len(taken["rows"])


def not_all(
    requirement: PowerAsked,
    found: Found,
    most: int,
    section: Section,
    stage: Section | None,
    tree: Tree,
) -> Verdict:
    """
    The verdict where not all circuits can be taken, even with nothing else on the house's outlets.
    """
    enough_there = found["there"] >= requirement["count"]
    could_be = found["most"] is None or found["most"] >= requirement["count"]
    if found["unknown"] > 0 and could_be:
        reasons = once(found["asked"])
        return asked(
            requirement, CIRCUITS, " ".join(reasons) if len(reasons) > 0 else OUTLETS_UNKNOWN
        )
    if enough_there and not is_nested([outlets["row"] for outlets in found["rows"]]):
        # Circuits between two lines share limits crosswise, so another order than the one tried
        # might hold more.
        reason = fill(MAYBE_MORE, {"most": digits(most, 0)})
        return asked(requirement, CIRCUITS, reason)
    others: list[str] = []
    if found["there"] == 0 and len(found["smaller"]) == 0:
        others = other_voltages(requirement, section, stage, tree)
    reason = fill(
        OUTLETS_TOO_FULL if enough_there else OUTLETS_TOO_FEW,
        {
            "there": digits(found["there"], 0),
            "wanted": digits(requirement["count"], 0),
            "most": digits(most, 0),
        },
    )
    more = [*others, *once(found["dead"])]
    if not enough_there:
        more = [*rated_words(found["smaller"]), *more]
        if found["there"] == 0 and len(more) == 0:
            more = elsewhere_words(requirement, section, stage, tree)
    answer = verdict(requirement, SHORT, " ".join([reason, *more]))
    slack = (most if enough_there else found["there"]) - requirement["count"]
    answer["fact"] = found["fact"]
    answer["margin"] = signed(both("count", abs(slack)), slack)
    return with_remedy(answer, OTHER_SYSTEM if len(others) > 0 else CIRCUITS)


def rated_words(smaller: list[Item]) -> list[str]:
    """The largest that outlets which are too small are of, where there are any."""
    largest_a = 0.0
    words = ""
    for item in smaller:
        rating_a = number_of(item, "rating")
        if rating_a is not None and rating_a > largest_a:
            largest_a = rating_a
            words = text_of(item, "rating")
    return [] if words == "" else [fill(RATED, {"amount": words})]


def other_voltages(
    requirement: PowerAsked, section: Section, stage: Section | None, tree: Tree
) -> list[str]:
    """The voltages of the outlets that are there, where none has the one asked for."""
    if volts(requirement["system"]) == "":
        return []
    any_voltage: PowerAsked = {**requirement, "system": ""}
    voltages = [
        voltage_of(item, section, tree)
        for item in outlets_against(any_voltage, section, stage, tree)["serving"]
    ]
    return once([fill(OTHER_VOLTAGE, {"voltage": one}) for one in voltages if one != ""])


def elsewhere_words(
    requirement: PowerAsked, section: Section, stage: Section | None, tree: Tree
) -> list[str]:
    """Where such outlets are, for a place that has none: the nearest, where the way is known."""
    anywhere: PowerAsked = {**requirement, "of": "", "more": None}
    names = outlet_places(outlets_against(anywhere, section, stage, tree)["serving"])
    here = spot_named(stage, requirement["of"])
    nearest = ""
    nearest_m = 0.0
    for name in names:
        there = spot_named(stage, name)
        if here is not None and there is not None:
            away_m = apart_m(here, there)
            if nearest == "" or away_m < nearest_m:
                nearest, nearest_m = name, away_m
    if nearest != "":
        parts = {"place": nearest, "distance": both("length", nearest_m)[0]}
        return [fill(NEAREST, parts)]
    return [] if len(names) == 0 else [fill(ELSEWHERE, {"names": ", ".join(names)})]
