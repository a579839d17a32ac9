"""
What a hang brings to its supports: the loads as stated or worked out, and the hoists, each at the
least and at the most.
"""

from typing import Any

from builder.fit.hangs.cases import cases_of
from builder.fit.hangs.points import issue
from builder.fit.values import known_number, number_of
from builder.fit.verdicts import ASK, Record
from builder.fit.wording import both, digits


def loads_of(hang: Record, section: Record) -> Record:
    """
    The loads of one hang: ``low`` and ``high`` are cases of what each support carries, factor
    included, hoists not. [kg]

    The level case is the low one; the high ones add each support slack in turn. Where nothing can
    be worked out, all of it may come on any support.
    """
    factor = factor_of(section)
    stated = [support["load_kg"] for support in hang["supports"]]
    issues: list[Record] = []
    if stated[0] is not None:
        cases = [stated]
    else:
        found = cases_of(hang["loads"], [support["at_m"] for support in hang["supports"]])
        cases = found["cases"]
        if len(cases) == 0:
            reason = "What each support carries cannot be told: " + found["why"] + "."
            issues.append(
                issue(
                    ASK,
                    reason,
                    question="Can this hang be carried by these points, and what comes on each?",
                )
            )
    low, high = (cases[:1], cases) if len(cases) > 0 else (anywhere(hang), anywhere(hang))
    hoists = hoists_of(hang, section)
    return {
        "low": [[kg * factor for kg in case] for case in low],
        "high": [[kg * factor for kg in case] for case in high],
        "factor": factor,
        "hoist_low": hoists["low"] * factor,
        "hoist_high": hoists["high"] * factor,
        "issues": [*issues, *hoists["issues"]],
        "notes": [*hoists["notes"], *factor_notes(factor)],
    }


def factor_of(section: Record) -> float:
    """The house's factor for starting and stopping, 1 where it asks for none."""
    for item in section["items"]:
        if item["kind"] == "dynamic_factor" and number_of(item, "factor") is not None:
            return known_number(item, "factor")
    return 1.0


def factor_notes(factor: float) -> list[str]:
    """What the house's factor does to the loads."""
    if factor == 1:
        return []
    return [
        "All loads are counted times "
        + digits(factor, 2)
        + ", the house's own factor for starting and stopping."
    ]


def anywhere(hang: Record) -> list[list[float]]:
    """All of the load on each support in turn."""
    total_kg = 0.0
    for load in hang["loads"]:
        total_kg += load["kg"]
    count = len(hang["supports"])
    return [[total_kg if each == one else 0.0 for each in range(count)] for one in range(count)]


def hoists_of(hang: Record, section: Record) -> Record:
    """
    What a hoist adds to each support: the show's own weight, or the house's lightest and heaviest
    where nothing more is said.
    """
    blank: Record = {"low": 0.0, "high": 0.0, "issues": [], "notes": []}
    if hang["hoists"] == "show":
        return {**blank, "low": hang["hoist_kg"], "high": hang["hoist_kg"]}
    if hang["hoists"] in ("counted", "none"):
        return blank
    weights = house_hoists(section)
    if hang["hoists"] == "house":
        if len(weights) == 0:
            reason = (
                "The rider hangs it from the house's hoists, and the house has not said what they"
                " weigh."
            )
            return {
                **blank,
                "issues": [
                    issue(ASK, reason, question="What do your hoists weigh with their chain?")
                ],
            }
        words = (
            "The house's hoists are counted with their chain, "
            + between(weights)
            + " on each support."
        )
        return {**blank, "low": weights[0], "high": weights[len(weights) - 1], "notes": [words]}
    if len(weights) == 0:
        return {
            **blank,
            "notes": [
                "Hoists are not counted: the rider does not say who brings them, or what they"
                " weigh."
            ],
        }
    heaviest_kg = weights[len(weights) - 1]
    words = (
        "The rider does not say who brings hoists. At the most, the house's heaviest is counted: "
        + both("mass", heaviest_kg)[0]
        + " on each support."
    )
    return {**blank, "high": heaviest_kg, "notes": [words]}


def house_hoists(section: Record) -> list[float]:
    """What the house's hoists weigh with chain, the lightest first. [kg]"""
    found: list[float] = []
    for item in section["items"]:
        weight_kg: Any = (
            number_of(item, "weight")
            if item["kind"] == "hoist" and item["condition"] != "out of service"
            else None
        )
        if weight_kg is not None:
            found.append(weight_kg)
    return sorted(found)


def between(weights: list[float]) -> str:
    """The lightest and the heaviest in words."""
    lightest, heaviest = both("mass", weights[0])[0], both("mass", weights[len(weights) - 1])[0]
    return lightest if lightest == heaviest else lightest + " to " + heaviest


def on(
    cases: list[list[float]], shares: list[list[float]], hoist_kg: float, *, most: bool
) -> float:
    """
    The least or the most of some supports together over the cases, hoists counted.

    A share is a support's number and how much of it. [kg]
    """
    found = None
    for case in cases:
        total_kg = 0.0
        for index, part in shares:
            total_kg += (case[int(index)] + hoist_kg) * part
        if found is None or (total_kg > found if most else total_kg < found):
            found = total_kg
    return 0.0 if found is None else found
