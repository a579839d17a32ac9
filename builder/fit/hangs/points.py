"""
Which point of the house carries each support of a hang plan: the one named, or the nearest that may
be used.
"""

from math import sqrt
from typing import Any

from builder.fit.values import number_of, text_of
from builder.fit.verdicts import ASK, SHORT, Record, fact_of
from builder.fit.wording import both

NEAR_M = 0.25
"""
A point this near to a spot takes it: about what a rigger leans a pick or moves a truss without
asking.
"""
ROUNDING_M = 0.000001
BRIDLE = "Can you make a bridle for this spot, how high may it meet, and what may hang from it?"


def issue(
    word: str, reason: str, *, question: str = "", remedy: str = "", item: Any = None
) -> Record:
    """
    Something that stands against a fit.

    ``slack`` is how far a limit is passed, where one is; the fact is the item's own limit.
    """
    value = item["values"].get("limit") if item is not None else None
    fact = fact_of(value, item) if value is not None else None
    return {
        "word": word,
        "reason": reason,
        "question": question,
        "remedy": remedy,
        "slack": 0.0,
        "fact": fact,
        "house": False,
        "hangs": [],
    }


def points_of(section: Record) -> list[Record]:
    """The house's points."""
    return [item for item in section["items"] if item["kind"] == "point"]


def placed(hangs: list[Record], section: Record, taken: list[str]) -> list[list[Record]]:
    """
    For each hang a place for each support: its point or None, how far that is from the spot, what
    stands against it, and no bridle's legs yet.

    Names go first, so that no spot takes a point that another hang names. A spot takes no point
    that the show has taken; ``taken`` grows.
    """
    found: list[list[Record]] = [
        [named(support, section) for support in hang["supports"]] for hang in hangs
    ]
    taken += [
        place["item"]["key"] for places in found for place in places if place["item"] is not None
    ]
    for hang, places in zip(hangs, found, strict=True):
        for index in range(len(places)):
            if hang["supports"][index]["across_m"] is not None:
                places[index] = nearest(hang["supports"][index], section, taken)
                if places[index]["item"] is not None:
                    taken.append(places[index]["item"]["key"])
    return found


def at_point(item: Any, away_m: float) -> Record:
    """A place at a point, or at none, so far from where it was wanted. [m]"""
    return {"item": item, "away_m": away_m, "issues": [], "legs": [], "apex_m": None}


def named(support: Record, section: Record) -> Record:
    """A support at a point that the rider names."""
    place = at_point(None, 0.0)
    if support["point"] == "":
        if support["across_m"] is None:
            place["issues"].append(
                issue(
                    ASK,
                    "A support says neither a point nor a spot.",
                    question="Which points can this hang have?",
                )
            )
        return place
    for item in points_of(section):
        if item["name"].lower() == support["point"].lower():
            place["item"] = item
            place["issues"] = unusable(item, section)
            return place
    place["issues"].append(
        issue(
            ASK,
            "The house names no point " + support["point"] + ".",
            question="Which of your points is meant by " + support["point"] + "?",
        )
    )
    return place


def unusable(item: Record, section: Record) -> list[Record]:
    """Why a point may not be used, or is not known well enough."""
    name = item["name"]
    beam = beam_of(item, section)
    if item["condition"] == "out of service":
        reason = name + " is out of service" + (": " + item["note"] if item["note"] != "" else ".")
        return [
            issue(
                SHORT,
                reason,
                remedy="Take another point, or ask when this one is back in service.",
                item=item,
            )
        ]
    if item["terms"] == "not for visitors":
        return [
            issue(SHORT, name + " is not for visitors.", remedy="Take another point.", item=item)
        ]
    if beam is not None and beam["condition"] == "out of service":
        return [
            issue(
                SHORT,
                "Beam " + beam["name"] + ", which " + name + " is on, is out of service.",
                remedy="Take a point on another beam.",
                item=beam,
            )
        ]
    if number_of(item, "limit") is None:
        return [
            issue(
                ASK,
                "Nobody has said what " + name + " may carry.",
                question="What may " + name + " carry?",
                item=item,
            )
        ]
    return []


def beam_of(item: Record, section: Record) -> Any:
    """The beam that a point is on, or None."""
    for other in section["items"]:
        if other["kind"] == "beam" and other["name"].lower() == text_of(item, "beam").lower():
            return other
    return None


def away_of(support: Record, item: Record) -> Any:
    """How far a point is from a spot, seen from above, or None where its place is not known. [m]"""
    across_m, depth_m = number_of(item, "at.across"), number_of(item, "at.depth")
    if across_m is None or depth_m is None:
        return None
    aside_m, along_m = across_m - support["across_m"], depth_m - support["depth_m"]
    return sqrt(aside_m * aside_m + along_m * along_m)


def nearest(support: Record, section: Record, taken: list[str]) -> Record:
    """
    The nearest point to a spot that may be used, has a known rating and is not taken; otherwise
    what was found instead.
    """
    near = [{"item": item, "away_m": away_of(support, item)} for item in points_of(section)]
    near = [each for each in near if each["away_m"] is not None]
    near.sort(key=lambda each: each["away_m"])
    within = [each for each in near if each["away_m"] <= NEAR_M + ROUNDING_M]
    for each in within:
        if each["item"]["key"] not in taken and len(unusable(each["item"], section)) == 0:
            return at_point(each["item"], each["away_m"])
    place = at_point(None, 0.0)
    if len(within) > 0:
        first = within[0]["item"]
        if first["key"] in taken:
            reason = (
                "The nearest point, "
                + first["name"]
                + ", is taken by another support of this show."
            )
            place["issues"] = [
                issue(ASK, reason, question="Which other point can this spot have?", item=first)
            ]
        else:
            place["issues"] = [
                or_a_bridle(support, each, section) for each in unusable(first, section)
            ]
        return place
    place["issues"] = [too_far(support, near, section)]
    return place


def spot_words(support: Record) -> str:
    """A spot from the datum in words."""
    across_m, depth_m = support["across_m"], support["depth_m"]
    across = (
        "centre"
        if across_m == 0
        else both("length", abs(across_m))[0] + (" SL" if across_m > 0 else " SR")
    )
    return (
        across
        + ", "
        + both("length", abs(depth_m))[0]
        + ("" if depth_m == 0 else " US" if depth_m > 0 else " DS")
    )


def bridle_at(support: Record) -> str:
    """What to ask of a house about a bridle: it knows the spot only from the question."""
    return (
        "Can you make a bridle at "
        + spot_words(support)
        + ", how high may it meet, and what may hang from it?"
    )


def or_a_bridle(support: Record, found: Record, section: Record) -> Record:
    """The only point near a spot may not be used: short, unless the house may make a bridle."""
    if found["word"] != SHORT or bridle_rule(section) == "no":
        return found
    reason = found["reason"] + " A bridle would be wanted" + allowed_words(section)
    return {**found, "word": ASK, "reason": reason, "question": bridle_at(support), "remedy": ""}


def allowed_words(section: Record) -> str:
    """Whether bridles are allowed, as the end of a sentence."""
    rule = bridle_rule(section)
    return (
        ", and the house allows them " + rule + "."
        if rule != ""
        else ", and the house has not said whether it allows them."
    )


def too_far(support: Record, near: list[Record], section: Record) -> Record:
    """
    No point is near enough: a bridle is wanted, which the house allows, forbids, or says nothing
    about.
    """
    if len(near) == 0:
        return issue(
            ASK, "The house has not said where its points are.", question="Where are your points?"
        )
    words = (
        "No point is within "
        + both("length", NEAR_M)[0]
        + " of the spot at "
        + spot_words(support)
        + "; the nearest, "
        + near[0]["item"]["name"]
        + ", is "
    )
    words += both("length", near[0]["away_m"])[0] + " away. A bridle would be wanted"
    if bridle_rule(section) == "no":
        return issue(
            SHORT,
            words + ", and the house allows none.",
            remedy="Move the spot to a point.",
            item=near[0]["item"],
        )
    return issue(
        ASK, words + allowed_words(section), question=bridle_at(support), item=near[0]["item"]
    )


def bridle_rule(section: Record) -> str:
    """
    Whether bridles are allowed, in words that fit into a sentence: ``no``, empty where nobody says.
    """
    for item in section["items"]:
        if (
            item["kind"] == "house"
            and "bridles_allowed" in item["values"]
            and item["values"]["bridles_allowed"]["standing"] == "none"
        ):
            return "no"
        if item["kind"] == "bridles_allowed":
            allowed = text_of(item, "allowed")
            if allowed == "between some beams":
                return "between beams " + text_of(item, "beams") + " only"
            return "no" if allowed == "no" else "on any beam" if allowed == "yes" else ""
    return ""
