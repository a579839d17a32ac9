"""A verdict for every requirement of the riders of a day, in their order."""

from builder.fit.arrangements.records import View
from builder.fit.choices import by_ways
from builder.fit.needs.within import has_ways
from builder.fit.records import HangAsked, PowerAsked, Requirement, RiderAsked, TrimAsked, Verdict
from builder.fit.requirements import Known, alone_once, power_once, steel_once


def by_requirement(riders: list[RiderAsked], view: View, known: Known) -> list[Verdict]:
    """
    A verdict for each requirement, in the riders' order.

    Loads and hangs of all acts are judged together, for they share the house's power and steel.
    ``known`` is of the same riders and the same house; what looks at the same lines as before is
    not judged again.
    """
    requirements = [need for rider in riders for need in rider["requirements"]]
    if has_ways(requirements):
        return by_ways(requirements, view, known)
    return by_plain(requirements, view, known)


def by_plain(requirements: list[Requirement], view: View, known: Known) -> list[Verdict]:
    """The verdicts where no load and no hang has a condition or several ways."""
    loads: list[PowerAsked] = []
    hangs: list[HangAsked | TrimAsked] = []
    for need in requirements:
        if need["sort"] == "power":
            loads.append(need)
        elif need["sort"] == "hang" or need["sort"] == "trim":
            hangs.append(need)
    on_power = power_once(loads, "", view, known)
    on_steel = steel_once(hangs, "", view, known)
    verdicts: list[Verdict] = []
    loads_told = 0
    hangs_told = 0
    for index in range(len(requirements)):
        need = requirements[index]
        if need["sort"] == "power":
            verdicts.append(on_power[loads_told])
            loads_told += 1
        elif need["sort"] == "hang" or need["sort"] == "trim":
            verdicts.append(on_steel[hangs_told])
            hangs_told += 1
        else:
            verdicts.extend(alone_once(need, str(index), view, known))
    return verdicts
