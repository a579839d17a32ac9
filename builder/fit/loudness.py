"""A wished level against the house's limits. Levels are compared only where weighting, metric and place are the same; nothing is guessed."""

from typing import Any

from builder.fit.comparing import age_notes, asked, signed
from builder.fit.verdicts import ASK, FITS, SHORT, Record, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both, span

LIMIT = {
    "question": "Which level limits hold, with weighting, metric, time and place, and who enforces them?",
    "remedy": "The show plays to the limit. Hiring a larger system does not help; only whoever set the limit can change it.",
    "who": "the show",
}


def weighting(text: str) -> str:
    """The weighting that a level's words name: A, C, or none."""
    words = text.replace(" ", "")
    for letter in ("A", "C"):
        if "dB(" + letter + ")" in words or "dB" + letter in words:
            return letter
    return ""


def lacking(requirement: Record) -> list[str]:
    """What a wished level does not say."""
    lacks = []
    if requirement["weighting"] == "":
        lacks.append("its weighting")
    if requirement["metric"] == "":
        lacks.append("how it is measured")
    if requirement["metric"] == "equivalent level" and requirement["over_s"] is None:
        lacks.append("over what time")
    if requirement["place"] == "":
        lacks.append("where")
    return lacks


def under_limits(requirement: Record, section: Any) -> Record:
    """The wished level against every limit that can be compared; a legal limit has no tolerance."""
    lacks = lacking(requirement)
    if len(lacks) > 0:
        return asked(requirement, LIMIT, "The rider's level does not say " + ", ".join(lacks) + ", so it cannot be compared.")
    limits = [item for item in section["items"] if item["kind"] == "noise"] if section is not None else []
    if len(limits) == 0:
        return no_limits(requirement, section)
    found = [against_limit(requirement, item) for item in limits]
    elsewhere = [
        "Not compared: " + item["name"] + ", " + item["values"]["level"]["text"] + " at " + place_of(item) + "."
        for item in limits
        if not same_place(requirement, item)
    ]
    for word in (SHORT, ASK, FITS):
        for each, item in zip(found, limits, strict=True):
            if each["verdict"] == word and same_place(requirement, item):
                each["notes"] = [*each["notes"], *elsewhere]
                return settled(each)
    other = asked(requirement, LIMIT, "No limit is stated at that place.")
    other["notes"] = elsewhere
    return other


def no_limits(requirement: Record, section: Any) -> Record:
    """No limit in the pack: there is none, or nobody has said."""
    for item in section["items"] if section is not None else []:
        if item["kind"] == "identity" and "noise_limits" in item["values"] and item["values"]["noise_limits"]["standing"] == "none":
            found = verdict(requirement, FITS, "The house has no limit.")
            found["fact"] = fact_of(item["values"]["noise_limits"], item)
            return found
    return asked(requirement, LIMIT, "The house has not said.")


def place_of(item: Record) -> str:
    """Where a limit is measured."""
    return str(item["values"]["measured_at"]["text"])


def same_place(requirement: Record, item: Record) -> bool:
    """Whether wish and limit are measured at one place, by its words."""
    return bool(place_of(item).lower() == requirement["place"].lower())


def against_limit(requirement: Record, item: Record) -> Record:
    """One limit at the same place."""
    level, metric = item["values"]["level"], item["values"]["metric"]["text"]
    over: Any = item["values"]["over"]["number"] if "over" in item["values"] else None
    slack = level["number"] - requirement["level_db"]
    if weighting(level["text"]) != requirement["weighting"] or metric != requirement["metric"]:
        found = asked(requirement, LIMIT, "The limit is stated in other terms: " + level["text"] + ", " + metric + ".")
    elif metric == "equivalent level" and over is None:
        found = asked(requirement, LIMIT, "The limit does not say over what time.")
    elif slack < 0:
        found = with_remedy(verdict(requirement, SHORT, "Above the limit of " + level["text"] + " by " + both("level", -slack)[0] + "."), LIMIT)
        if metric == "equivalent level" and requirement["over_s"] < over:
            found["notes"] = ["If the level is held for the limit's " + span(over) + ". Quieter parts would lower it."]
    elif metric == "equivalent level" and requirement["over_s"] > over:
        found = asked(requirement, LIMIT, "The limit holds over " + span(over) + ", and the rider's level is a mean over a longer time.")
    else:
        found = verdict(requirement, FITS, both("level", slack)[0] + " below the limit of " + level["text"] + ".")
        found["notes"] = age_notes(level)
    found["fact"] = fact_of(level, item)
    found["margin"] = signed(both("level", abs(slack)), slack) if found["verdict"] != ASK else ["", ""]
    return found
