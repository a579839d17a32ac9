"""What hoists add to each support of a hang."""

from builder.fit.hangs.issues import issue
from builder.fit.hangs.records import HoistWeights
from builder.fit.hangs.sentences import (
    FROM_TO,
    HEAVIEST_COUNTED,
    HOISTS_COUNTED,
    HOISTS_NOT_COUNTED,
    HOISTS_UNKNOWN,
    WHAT_HOISTS_WEIGH,
)
from builder.fit.records import HangAsked, Item, Section
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import least_of, most_of, value_of
from builder.fit.verdicts import ASK
from builder.fit.wording import both


def hoists_of(hang: HangAsked, section: Section) -> HoistWeights:
    """
    What a hoist adds to each support: the show's own weight, or the house's lightest and heaviest
    where nothing more is said. [kg]
    """
    none: HoistWeights = {"low": 0.0, "high": 0.0, "issues": [], "notes": []}
    if hang["hoists"] == "show":
        return {**none, "low": hang["hoist_kg"], "high": hang["hoist_kg"]}
    if hang["hoists"] in ("counted", "none"):
        return none
    weights_kg = house_hoist_weights_kg(section)
    if hang["hoists"] == "house":
        return house_hoists(weights_kg)
    if weights_kg is None:
        return {**none, "issues": [issue(ASK, HOISTS_UNKNOWN, question=WHAT_HOISTS_WEIGH)]}
    if len(weights_kg) == 0:
        return {**none, "notes": [HOISTS_NOT_COUNTED]}
    weight = both("mass", weights_kg[-1])[0]
    return {
        **none,
        "high": weights_kg[-1],
        "notes": [fill(HEAVIEST_COUNTED, {"weight": weight})],
    }


def house_hoists(weights_kg: list[float] | None) -> HoistWeights:
    """What the house's own hoists add, from the lightest to the heaviest. [kg]"""
    if weights_kg is None or len(weights_kg) == 0:
        unknown = issue(ASK, HOISTS_UNKNOWN, question=WHAT_HOISTS_WEIGH)
        return {"low": 0.0, "high": 0.0, "issues": [unknown], "notes": []}
    note = fill(HOISTS_COUNTED, {"weight": range_words(weights_kg)})
    return {"low": weights_kg[0], "high": weights_kg[-1], "issues": [], "notes": [note]}


def working_hoists(section: Section) -> list[Item]:
    """The house's hoists that are not out of service."""
    return [hoist for hoist in items_of(section, "hoist") if hoist["condition"] != "out of service"]


def house_hoist_weights_kg(section: Section) -> list[float] | None:
    """
    What the house's hoists weigh with chain, the lightest first; None where nobody knows it of one.
    [kg]
    """
    weights_kg: list[float] = []
    for hoist in working_hoists(section):
        value = value_of(hoist, "weight")
        most_kg = most_of(value)
        if most_kg is None:
            return None
        least_kg = least_of(value)
        weights_kg += [0.0 if least_kg is None else least_kg, most_kg]
    return sorted(weights_kg)


def range_words(weights_kg: list[float]) -> str:
    """The lightest and the heaviest in words."""
    lightest = both("mass", weights_kg[0])[0]
    heaviest = both("mass", weights_kg[-1])[0]
    if lightest == heaviest:
        return lightest
    return fill(FROM_TO, {"least": lightest, "most": heaviest})
