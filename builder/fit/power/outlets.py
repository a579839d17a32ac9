"""The house's single-phase outlets that may serve a line of circuits, as rows for placing."""

from typing import TypedDict

from builder.fit.power.dimmers import is_dimmed, may_be_dimmed
from builder.fit.power.first_look import Outlets
from builder.fit.power.more import word_of_outlet
from builder.fit.power.sentences import OF_VOLTS
from builder.fit.power.systems import class_of, is_open, system_of, voltages_of, volts
from builder.fit.power.tree import (
    Tree,
    is_for_visitors,
    phases_in,
    way_of,
    way_up,
    wired_phases,
)
from builder.fit.records import Item, PowerAsked, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import asked_of_bearers, known_number, most_of, number_of, text_of, value_of
from builder.fit.verdicts import ASK, FITS, SHORT
from builder.formulas.phase_room import PHASES

IN_TURN = "in turn"
"""What the house writes of outlets that are on one phase each, one after the other."""


class Standing(TypedDict):
    """
    The house's outlets against a line of circuits, at its place: which could serve it, of which too
    little is known to tell, and which are rated for less than it asks.
    """

    serving: list[Item]
    unknown: list[Item]
    smaller: list[Item]


def outlets_against(
    requirement: PowerAsked, section: Section, stage: Section | None, tree: Tree
) -> Standing:
    """The outlets that may serve a line of circuits, sorted by what speaks for or against them."""
    found: Standing = {"serving": [], "unknown": [], "smaller": []}
    more = requirement["more"]
    for item in items_of(section, "outlet"):
        word = FITS if more is None else word_of_outlet(more, item, section, stage)
        is_meant = word != SHORT and may_serve(requirement, item, tree)
        if is_meant and not has_other_voltage(requirement, item, section, tree):
            if is_smaller(requirement, item):
                found["smaller"].append(item)
            elif word == ASK or is_unclear(requirement, item, section, tree):
                found["unknown"].append(item)
            else:
                found["serving"].append(item)
    return found


def may_serve(requirement: PowerAsked, item: Item, tree: Tree) -> bool:
    """
    Whether an outlet may be used, and stands where it is asked for, away from dimmers where asked.
    """
    if not is_for_visitors(item):
        return False
    there = text_of(item, "place").lower()
    if requirement["of"] != "" and there not in ("", requirement["of"].lower()):
        return False
    return not (requirement["apart"] and is_dimmed(path_of(item, tree), tree))


def has_other_voltage(requirement: PowerAsked, item: Item, section: Section, tree: Tree) -> bool:
    """
    Whether an outlet is known to be of another voltage than is asked, or not single-phase where
    none is.
    """
    lines = lines_of(item, tree)
    if lines == 0:
        return False
    if lines > 2:
        return True
    system = requirement["system"]
    if volts(system) == "":
        return lines != 1
    there = voltage_of(item, section, tree)
    return there != "" and class_of(system) != class_of(fill(OF_VOLTS, {"voltage": there}))


def voltage_of(item: Item, section: Section, tree: Tree) -> str:
    """
    The voltage between an outlet's wires: of one line and neutral the lower of its system, of two
    lines the higher; empty where nobody says.
    """
    if is_open(system_of(item, section)):
        return ""
    wired = voltages_of(item, section)
    return wired[0] if lines_of(item, tree) == 1 else wired[-1]


def is_smaller(requirement: PowerAsked, item: Item) -> bool:
    """Whether an outlet's rating or breaker is known to be less than a circuit's current."""
    known = [most_of(value_of(item, name)) for name in ("rating", "breaker")]
    return any(one is not None and one < requirement["current_a"] for one in known)


def is_unclear(requirement: PowerAsked, item: Item, section: Section, tree: Tree) -> bool:
    """Whether too little is known of an outlet to count on it."""
    if asked_of_bearers(item) != "":
        return True
    if requirement["apart"] and may_be_dimmed(path_of(item, tree), tree):
        return True
    if number_of(item, "count") is None or lines_of(item, tree) == 0:
        return True
    if number_of(item, "rating") is None and requirement["current_a"] > 0:
        return True
    return volts(requirement["system"]) != "" and voltage_of(item, section, tree) == ""


def path_of(item: Item, tree: Tree) -> list[str]:
    """The way up from what feeds an outlet."""
    return way_up(text_of(item, "fed_from"), tree)


def lines_of(item: Item, tree: Tree) -> int:
    """How many lines one outlet has; 0 where it is not said and what feeds it has several."""
    text = text_of(item, "phases")
    if text == IN_TURN:
        return 1
    named = len(phases_in(text))
    if named > 0:
        return named
    fed = text_of(item, "fed_from")
    wired = wired_phases(tree[fed]["item"]) if fed in tree else []
    if len(wired) == 1:
        return 1
    if text == "":
        return 0
    return len(PHASES) if len(wired) == 0 else len(wired)


def rows_of(item: Item, requirement: PowerAsked, tree: Tree) -> list[Outlets]:
    """
    An outlet line as rows, one for each phase; none where what is free behind it is not known.
    """
    fed = text_of(item, "fed_from")
    if fed not in tree:
        return []
    sets = phase_sets(item, tree[fed]["free"])
    count = int(known_number(item, "count"))
    rows: list[Outlets] = []
    for index, phases in enumerate(sets):
        if all(phase in tree[fed]["free"] for phase in phases):
            one_more = 1 if index < count % len(sets) else 0
            rows.append(outlets_on(phases, count // len(sets) + one_more, item, requirement, tree))
    return rows


def phase_sets(item: Item, free: dict[str, float]) -> list[list[str]]:
    """The phases of each of an outlet line's rows: all alike, or those of its board in turn."""
    text = text_of(item, "phases")
    if text == IN_TURN:
        return [[phase] for phase in PHASES if phase in free]
    named = phases_in(text)
    # Left out, or all, of what has one phase or two: the phases that are there.
    return [named if len(named) > 0 else [phase for phase in PHASES if phase in free]]


def outlets_on(
    phases: list[str], slots: int, item: Item, requirement: PowerAsked, tree: Tree
) -> Outlets:
    """So many outlets of a line on some phases."""
    connector = requirement["connector"].lower()
    return {
        "item": item,
        "row": {
            "key": f"{item['key']} {' '.join(phases)}",
            "way": way_of(path_of(item, tree), phases, tree),
            "phases": phases,
            "slots": slots,
            "amount": requirement["current_a"],
            "per_ampere": 1.0,
            "preferred": connector in ("", item["name"].lower()),
        },
    }
