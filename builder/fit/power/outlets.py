"""The house's single-phase outlets that may serve a line of circuits, as rows for placing."""

from builder.fit.power.dimmers import is_dimmed
from builder.fit.power.first_look import Outlets
from builder.fit.power.systems import voltages_of, volts
from builder.fit.power.tree import Tree, way_up
from builder.fit.records import Item, PowerAsked, Section
from builder.fit.sections import items_of
from builder.fit.values import known_number, number_of, text_of
from builder.formulas.phase_room import PHASES

IN_TURN = "in turn"
"""What the house writes of outlets that are on one phase each, one after the other."""


def serving_outlets(
    requirement: PowerAsked, system: str, section: Section, tree: Tree
) -> list[Item]:
    """The lines of outlets that could serve circuits on a system."""
    return [
        item
        for item in items_of(section, "outlet")
        if may_serve(requirement, item, tree) and has_voltage(system, item, section)
    ]


def may_serve(requirement: PowerAsked, item: Item, tree: Tree) -> bool:
    """
    Whether an outlet may be used, and stands where it is asked for, away from dimmers where asked.
    """
    if item["condition"] == "out of service" or item["terms"] == "not for visitors":
        return False
    if requirement["of"] != "" and text_of(item, "place").lower() != requirement["of"].lower():
        return False
    return not (requirement["apart"] and is_dimmed(path_of(item, tree), tree))


def has_voltage(system: str, item: Item, section: Section) -> bool:
    """Whether an outlet is single-phase on the voltage asked for, or on any where none is."""
    lines = lines_of(item)
    if system == "":
        return lines == 1
    # One line and neutral have the lower voltage of a system, two lines the higher.
    wired = voltages_of(item, section)
    if lines == 1:
        return volts(system) == wired[0]
    return lines == 2 and volts(system) == wired[-1]


def path_of(item: Item, tree: Tree) -> list[str]:
    """The way up from what feeds an outlet."""
    return way_up(text_of(item, "fed_from"), tree)


def lines_of(item: Item) -> int:
    """How many lines one outlet has, 0 where it is not said or all are on it."""
    text = text_of(item, "phases")
    if text == IN_TURN:
        return 1
    return len(phases_in(text))


def phases_in(text: str) -> list[str]:
    """The phases that words such as "L1 L2" name."""
    words = text.split(" ")
    return [phase for phase in PHASES if phase in words]


def carries_a(item: Item) -> float:
    """
    What one outlet may carry: its rating, which is known, or its breaker where that is less. [A]
    """
    rating_a = known_number(item, "rating")
    breaker_a = number_of(item, "breaker")
    if breaker_a is None or breaker_a > rating_a:
        return rating_a
    return breaker_a


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
    return [phases_in(text)]


def outlets_on(
    phases: list[str], slots: int, item: Item, requirement: PowerAsked, tree: Tree
) -> Outlets:
    """So many outlets of a line on some phases."""
    connector = requirement["connector"].lower()
    return {
        "item": item,
        "row": {
            "key": f"{item['key']} {' '.join(phases)}",
            "path": path_of(item, tree),
            "phases": phases,
            "slots": slots,
            "amount": requirement["current_a"],
            "per_ampere": 1.0,
            "preferred": connector in ("", item["name"].lower()),
        },
    }
