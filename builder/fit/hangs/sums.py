"""Every limit that a hang hangs under, with all that the show brings there so far."""

from builder.fit.hangs.hoists import GRAM_KG
from builder.fit.hangs.issues import issue, with_this_bridle
from builder.fit.hangs.limits import limits_over
from builder.fit.hangs.loads import least_on_kg, most_on_kg
from builder.fit.hangs.records import (
    Brought,
    Issue,
    Limit,
    LimitOver,
    Look,
    Place,
    Share,
    SoFar,
    Sum,
)
from builder.fit.hangs.sentences import (
    AT_LEAST_TOO_MUCH,
    BEAM_REMEDY,
    BESIDE_UNEVEN,
    LEFT,
    LEFT_AT_LEAST,
    LEFT_AT_MOST,
    LEFT_UNKNOWN,
    MAY_TAKE,
    MAY_TAKE_BESIDE,
    NOT_KNOWN,
    NOTHING,
    NOTHING_LEFT,
    PERHAPS_TOO_MUCH,
    POINT_REMEDY,
    ROOF_REMEDY,
    TOO_MUCH,
    WHAT_IS_LEFT,
    ZONE_REMEDY,
)
from builder.fit.records import Item, Section
from builder.fit.sentences import CAN_YOU_TELL, LIMIT_BY_RULE, fill
from builder.fit.values import OPEN, rule_lacking, text_of
from builder.fit.verdicts import ASK, SHORT
from builder.fit.wording import both

MAY = " may take"
BESIDE = " may take beside"
"""What is asked of a limit beside what is left under it; the greatest load asks for all before."""
REMEDIES: dict[str, str] = {
    "point": POINT_REMEDY,
    "beam": BEAM_REMEDY,
    "zone": ZONE_REMEDY,
    "roof": ROOF_REMEDY,
}


def limits_of(places: list[Place], section: Section) -> list[LimitOver]:
    """
    Every limit that a hang hangs under, once, with the supports that are under it and how much of
    each; ``bridled`` where a bridle leads there.
    """
    over: list[LimitOver] = []
    for support, place in enumerate(places):
        if len(place["legs"]) == 0:
            add_limits(over, place["item"], (support, 1.0), (support, 1.0), section)
        for leg in place["legs"]:
            pull = (support, leg["pull"])
            add_limits(over, leg["item"], (support, leg["share"]), pull, section, is_leg=True)
    return over


def add_limits(
    over: list[LimitOver],
    point: Item | None,
    down: Share,
    pull: Share,
    section: Section,
    *,
    is_leg: bool = False,
) -> None:
    """
    Add the limits over a point, or a support to those that are there already. A point feels all of
    a pull, what is above it the part straight down.
    """
    for limit in limits_over(point, section):
        bridled = is_leg and limit["kind"] != "roof"
        share = pull if limit["kind"] == "point" else down
        known = [one for one in over if one["limit"]["key"] == limit["key"]]
        if len(known) == 0:
            over.append({"limit": limit, "shares": [share], "bridled": bridled})
        else:
            known[0]["shares"].append(share)
            known[0]["bridled"] = known[0]["bridled"] or bridled


def look_at(over: LimitOver, brought: Brought, so_far: SoFar) -> Look:
    """
    A limit with all that the show brings under it so far: its slack at the most, or what stands
    against it. [kg]
    """
    total = added(over, brought, so_far)
    limit = over["limit"]
    left_kg, most_kg = limit["left_kg"], limit["most_left_kg"]
    if most_kg is not None and total["low_kg"] > most_kg + GRAM_KG:
        against = too_much(limit, most_kg, total)
    elif left_kg is None:
        against = left_unknown(limit, total)
    elif total["high_kg"] > left_kg + GRAM_KG:
        against = perhaps_too_much(limit, left_kg, total)
    else:
        return {"limit": limit, "slack": left_kg - total["high_kg"], "issue": None}
    found = with_this_bridle(against) if total["bridled"] else against
    return {"limit": limit, "slack": None, "issue": found}


def added(over: LimitOver, brought: Brought, so_far: SoFar) -> Sum:
    """What the show brings under a limit, this hang added. [kg]"""
    key = over["limit"]["key"]
    before: Sum = {"low_kg": 0.0, "high_kg": 0.0, "bridled": False}
    if key in so_far["sums"]:
        before = so_far["sums"][key]
    low_kg = least_on_kg(brought["low"], over["shares"], brought["hoist_low"])
    high_kg = most_on_kg(brought["high"], over["shares"], brought["hoist_high"])
    total: Sum = {
        "low_kg": before["low_kg"] + low_kg,
        "high_kg": before["high_kg"] + high_kg,
        "bridled": before["bridled"] or over["bridled"],
    }
    so_far["sums"][key] = total
    return total


def left_unknown(limit: Limit, total: Sum) -> Issue:
    """A limit of which nobody says what is left, or only what is left at most."""
    parts = {"limit": limit["words"], "load": kg(total["high_kg"])}
    question = fill(WHAT_IS_LEFT, parts)
    reason = fill(LEFT_UNKNOWN, parts)
    if limit["most_left_kg"] is not None:
        left = kg(limit["most_left_kg"])
        reason = fill(LEFT_AT_MOST, {"limit": parts["limit"], "load": parts["load"], "left": left})
    item = limit["item"]
    unweighed = "" if item is None else text_of(item, OPEN)
    if unweighed != "" and limit["most_left_kg"] is not None:
        asked = issue(
            ASK,
            reason,
            question=fill(CAN_YOU_TELL, {"what": unweighed}),
            about=OPEN,
            words=unweighed,
        )
        return {**asked, "fact": limit["fact"]}
    rule = "" if item is None else rule_lacking(item)
    about = thing_of(limit) if rule == "" else rule
    words = "" if rule == "" else fill(LIMIT_BY_RULE, {"rule": rule})
    return {
        **issue(ASK, reason, question=question, about=about, words=words),
        "fact": limit["fact"],
    }


def thing_of(limit: Limit) -> str:
    """The key of the thing whose limit it is."""
    return limit["key"].removeprefix(f"{limit['kind']} ")


def too_much(limit: Limit, left_kg: float, total: Sum) -> Issue:
    """More than is left, at the least."""
    parts = {
        "left": left_words(limit, left_kg),
        "load": kg(total["low_kg"]),
        "over": kg(total["low_kg"] - left_kg),
    }
    is_exact = total["high_kg"] <= total["low_kg"] + GRAM_KG
    reason = fill(TOO_MUCH if is_exact else AT_LEAST_TOO_MUCH, parts)
    return {
        **issue(SHORT, reason, remedy=REMEDIES[limit["kind"]]),
        "slack": left_kg - total["low_kg"],
        "fact": limit["fact"],
        "house": limit["house"],
        "hangs": limit["hangs"],
    }


def perhaps_too_much(limit: Limit, left_kg: float, total: Sum) -> Issue:
    """More than is left, at the most only."""
    parts = {
        "limit": limit["words"],
        "left": left_words(limit, left_kg),
        "least": kg(total["low_kg"]),
        "most": kg(total["high_kg"]),
    }
    reason = fill(PERHAPS_TOO_MUCH, parts)
    question, about = fill(MAY_TAKE, parts), limit["key"] + MAY
    if limit["uneven"]:
        return {**beside_uneven(limit, left_kg, total), "fact": limit["fact"]}
    if left_kg > 0 and not is_exact(limit):
        left = {"limit": limit["words"], "left": kg(left_kg), "load": kg(total["high_kg"])}
        reason = fill(LEFT_AT_LEAST, left)
        question, about = fill(WHAT_IS_LEFT, left), thing_of(limit)
    return {**issue(ASK, reason, question=question, about=about), "fact": limit["fact"]}


def beside_uneven(limit: Limit, left_kg: float, total: Sum) -> Issue:
    """
    More at the worst than the house's own hangs leave at their worst: both are told, and what they
    are as planned.
    """
    parts = {
        "limit": limit["words"],
        "worst": kg_or_nothing(left_kg),
        "level": kg_or_nothing(limit["most_left_kg"]),
        "least": kg(total["low_kg"]),
        "most": kg(total["high_kg"]),
    }
    question, about = fill(MAY_TAKE_BESIDE, parts), limit["key"] + BESIDE
    return issue(ASK, fill(BESIDE_UNEVEN, parts), question=question, about=about)


def kg_or_nothing(mass_kg: float | None) -> str:
    """A mass in words; nothing where a limit is passed already."""
    if mass_kg is None:
        return NOT_KNOWN
    return kg(mass_kg) if mass_kg > 0 else NOTHING


def is_exact(limit: Limit) -> bool:
    """Whether what is left under a limit is known to the kilogram."""
    least_kg, most_kg = limit["left_kg"], limit["most_left_kg"]
    return least_kg is not None and most_kg is not None and most_kg <= least_kg + GRAM_KG


def left_words(limit: Limit, left_kg: float) -> str:
    """What is left under a limit, as the beginning of a sentence."""
    if left_kg > 0:
        return fill(LEFT, {"left": kg(left_kg), "limit": limit["words"]})
    return fill(NOTHING_LEFT, {"limit": limit["words"]})


def kg(mass_kg: float) -> str:
    """A mass in words."""
    return both("mass", mass_kg)[0]
