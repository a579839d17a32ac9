"""
A wished level against the house's limits first, then against what the house system is estimated to
reach.

Levels are compared only where weighting, metric and place are the same; nothing is guessed.
"""

from typing import Any

from builder.fit.comparing import age_notes, asked, signed
from builder.fit.records import Advice
from builder.fit.verdicts import ASK, FITS, SHORT, Record, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both, span

LIMIT: Advice = {
    "question": (
        "Which level limits hold, with weighting, metric, time and place, and who enforces them?"
    ),
    "remedy": (
        "The show plays to the limit. Hiring a larger system does not help; only whoever set the"
        " limit can change it."
    ),
    "who": "the show",
}

SYSTEM: Advice = {
    "question": (
        "Which level does the house system reach at the mix position, with this weighting and"
        " metric?"
    ),
    "remedy": "Bring or hire a larger system, or play softer on the house system.",
    "who": "the show",
}
MIX_WORDS = (
    "mix position",
    "the mix position",
    "foh",
    "foh position",
    "front of house",
    "front-of-house",
)
OWN_SYSTEM = "This is the house system. A show with a system of its own is not held to it."


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


def level_asked(requirement: Record, house: Any, sound: Any) -> Record:
    """
    The wished level against limits; where these leave room, against the estimate of the house
    system.

    A limit is never outdone by a system.
    """
    requirement = {**requirement, "mix": name_of_mix(sound)}
    found = under_limits(requirement, house)
    mix = mix_of(requirement, sound)
    if found["verdict"] == SHORT or len(lacking(requirement)) > 0 or mix is None:
        return found
    return against_system(requirement, found, mix)


def name_of_mix(sound: Any) -> str:
    """The house's own name of the mix position."""
    for item in sound["items"] if sound is not None else []:
        if item["kind"] == "mix":
            return str(item["name"]).lower()
    return MIX_WORDS[0]


def meant(place: str, mix: str) -> str:
    """A place in small letters; the mix position by whichever of its names."""
    name = place.lower()
    return MIX_WORDS[0] if name == mix or name in MIX_WORDS else name


def mix_of(requirement: Record, sound: Any) -> Any:
    """
    The mix position, where the wish is for there and the pack has an estimate of the house system.
    """
    for item in sound["items"] if sound is not None else []:
        if (
            item["kind"] == "mix"
            and meant(requirement["place"], requirement["mix"]) == MIX_WORDS[0]
        ):
            values = item["values"]
            if (
                "average_level" in values
                and values["average_level"]["number"] is not None
                and "average_level_error" in values
            ):
                return item
    return None


def against_system(requirement: Record, found: Record, mix: Record) -> Record:
    """
    A wish that limits leave room for, against the estimate with its error.

    Within the error nobody knows.
    """
    level, error = mix["values"]["average_level"], mix["values"]["average_level_error"]
    estimate = "the estimate of the house system, " + level["text"] + " " + error["text"]
    if (
        weighting(level["text"]) != requirement["weighting"]
        or requirement["metric"] != "equivalent level"
    ):
        other = asked(
            requirement, SYSTEM, "It cannot be compared with " + estimate + ", equivalent level."
        )
        return found if found["verdict"] == ASK else with_limits(other, found)
    above = requirement["level_db"] - level["number"]
    if above > error["number"]:
        short = with_remedy(
            verdict(
                requirement, SHORT, "Above " + estimate + ", by " + both("level", above)[0] + "."
            ),
            SYSTEM,
        )
        short["fact"] = fact_of(level, mix)
        short["margin"] = signed(both("level", above), -above)
        short["notes"] = [OWN_SYSTEM]
        return with_limits(short, found)
    if above >= -error["number"]:
        found["notes"] = [*found["notes"], "Within the error of " + estimate + "."]
    return settled(found)


def with_limits(found: Record, limits: Record) -> Record:
    """A verdict on the system that still tells what the limits made of the wish."""
    found["notes"] = [*found["notes"], "Limits: " + limits["reason"], *limits["notes"]]
    return found


def under_limits(requirement: Record, section: Any) -> Record:
    """The wished level against every limit that can be compared; a legal limit has no tolerance."""
    lacks = lacking(requirement)
    if len(lacks) > 0:
        return asked(
            requirement,
            LIMIT,
            "The rider's level does not say " + ", ".join(lacks) + ", so it cannot be compared.",
        )
    limits = (
        [item for item in section["items"] if item["kind"] == "noise"]
        if section is not None
        else []
    )
    if len(limits) == 0:
        return no_limits(requirement, section)
    found = [against_limit(requirement, item) for item in limits]
    elsewhere = [
        "Not compared: "
        + item["name"]
        + ", "
        + item["values"]["level"]["text"]
        + " at "
        + place_of(item)
        + "."
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
        if (
            item["kind"] == "identity"
            and "noise_limits" in item["values"]
            and item["values"]["noise_limits"]["standing"] == "none"
        ):
            found = verdict(requirement, FITS, "The house has no limit.")
            found["fact"] = fact_of(item["values"]["noise_limits"], item)
            return found
    return asked(requirement, LIMIT, "The house has not said.")


def place_of(item: Record) -> str:
    """Where a limit is measured."""
    return str(item["values"]["measured_at"]["text"])


def same_place(requirement: Record, item: Record) -> bool:
    """Whether wish and limit are measured at one place, by its words."""
    return meant(place_of(item), requirement["mix"]) == meant(
        requirement["place"], requirement["mix"]
    )


def against_limit(requirement: Record, item: Record) -> Record:
    """One limit at the same place."""
    level, metric = item["values"]["level"], item["values"]["metric"]["text"]
    over: Any = item["values"]["over"]["number"] if "over" in item["values"] else None
    slack = level["number"] - requirement["level_db"]
    if weighting(level["text"]) != requirement["weighting"] or metric != requirement["metric"]:
        found = asked(
            requirement,
            LIMIT,
            "The limit is stated in other terms: " + level["text"] + ", " + metric + ".",
        )
    elif metric == "equivalent level" and over is None:
        found = asked(requirement, LIMIT, "The limit does not say over what time.")
    elif slack < 0:
        found = with_remedy(
            verdict(
                requirement,
                SHORT,
                "Above the limit of " + level["text"] + " by " + both("level", -slack)[0] + ".",
            ),
            LIMIT,
        )
        if metric == "equivalent level" and requirement["over_s"] < over:
            found["notes"] = [
                "If the level is held for the limit's "
                + span(over)
                + ". Quieter parts would lower it."
            ]
    elif metric == "equivalent level" and requirement["over_s"] > over:
        found = asked(
            requirement,
            LIMIT,
            "The limit holds over "
            + span(over)
            + ", and the rider's level is a mean over a longer time.",
        )
    else:
        found = verdict(
            requirement,
            FITS,
            both("level", slack)[0] + " below the limit of " + level["text"] + ".",
        )
        found["notes"] = age_notes(level)
    found["fact"] = fact_of(level, item)
    found["margin"] = (
        signed(both("level", abs(slack)), slack) if found["verdict"] != ASK else ["", ""]
    )
    return found
