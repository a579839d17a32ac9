"""
What decides to what the house sets a value: the amounts at which needs of the show turn, and
whether the ends of the value leave them open.
"""

from builder.fit.arrangements.records import Reading, View
from builder.fit.needs.amounts import against_number, against_value
from builder.fit.needs.choosing import items_for, value_for
from builder.fit.needs.sums import added_up, counted_value, may_be_enough, why_left_out
from builder.fit.needs.within import needs_in
from builder.fit.plots.chosen import plot_readings
from builder.fit.records import Item, NeedAsked, RiderAsked, Rule, Section
from builder.fit.requirements import rule_of
from builder.fit.sections import section_of
from builder.fit.show_day import day_requirements, depths_in_front
from builder.fit.values import asked_of_bearers, is_choice
from builder.fit.verdicts import SHORT
from builder.fit.way_in.chosen import truck_readings

AMOUNTS = ("at least", "at most", "between")


def readings_of(riders: list[RiderAsked], view: View) -> list[Reading]:
    """Every value that the house chooses, as each need of a day's acts reads it."""
    readings: list[Reading] = []
    for need in needs_of_amounts(riders, view):
        rule = rule_of(need["what"], view)
        section = section_of(view, rule["section"])
        if section is not None and rule["combine"] == "sum":
            readings.extend(readings_of_sum(section, need, rule))
        elif section is not None:
            readings.extend(readings_in(section, need, rule))
    readings.extend(truck_readings(riders, section_of(view, "access")))
    if any(need["sort"] == "plot" for rider in riders for need in rider["requirements"]):
        readings.extend(plot_readings(riders, view))
    return readings


def needs_of_amounts(riders: list[RiderAsked], view: View) -> list[NeedAsked]:
    """
    Every need of an amount that the house has to meet, alternatives among them, and what acts of
    one day ask together.
    """
    asked: list[NeedAsked] = []
    for rider in riders:
        for requirement in rider["requirements"]:
            asked.extend(needs_in(requirement))
    needs = [need for need in asked if need["carried"] != "show" and need["way"] in AMOUNTS]
    return [*needs, *day_requirements(riders, view), *depths_in_front(riders)]


def readings_in(section: Section, need: NeedAsked, rule: Rule) -> list[Reading]:
    """The values of a section that the house chooses and that answer a need, each by itself."""
    readings: list[Reading] = []
    for item in items_for(section, rule):
        value = value_for(item, rule)
        if value is not None and is_offered(item) and is_choice(value):
            readings.append(
                {
                    "item": item["name"],
                    "value": value,
                    "kind": rule["kind"],
                    "amounts": amounts_of(need),
                    "way": need["way"],
                    "is_open": against_value(need, rule, value) is None,
                }
            )
    return readings


def readings_of_sum(section: Section, need: NeedAsked, rule: Rule) -> list[Reading]:
    """The same where items add up: a value turns the need at what the others leave to it."""
    readings: list[Reading] = []
    items = items_for(section, rule)
    added = added_up(rule, items)
    total = added["total"]
    is_short = against_number(need, rule, total)["verdict"]["verdict"] == SHORT
    for item in items:
        value = counted_value(item, rule)
        counts = is_offered(item) and asked_of_bearers(item) == ""
        if value is not None and counts and is_choice(value):
            least = value["least"] if value["least"] is not None else 0.0
            readings.append(
                {
                    "item": item["name"],
                    "value": value,
                    "kind": rule["kind"],
                    "amounts": [amount - (total - least) for amount in amounts_of(need)],
                    "way": need["way"],
                    "is_open": is_short and may_be_enough(need, rule, added),
                }
            )
    return readings


def is_offered(item: Item) -> bool:
    """Whether a show may use an item."""
    return why_left_out(item) == ""


def amounts_of(need: NeedAsked) -> list[float]:
    """The amounts at which a need turns. [SI]"""
    if need["way"] == "at least":
        return [need["low"]]
    if need["way"] == "at most":
        return [need["high"]]
    return [need["low"], need["high"]]
