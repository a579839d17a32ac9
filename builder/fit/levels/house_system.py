"""A wished level against what the house system is estimated to reach at the mix position."""

from builder.fit.levels.sentences import (
    ABOVE_ESTIMATE,
    ESTIMATE,
    LIMITS_SAY,
    NO_ESTIMATE,
    NOT_ENOUGH_SAID,
    OTHER_THAN_ESTIMATE,
    OWN_SYSTEM,
    SYSTEM,
    WITHIN_ERROR,
)
from builder.fit.levels.wish import EQUIVALENT, names_mix, weighting
from builder.fit.margins import signed
from builder.fit.notes import age_notes, once
from builder.fit.records import Item, LevelAsked, Section, Verdict
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.values import known_number, number_of, text_of, value_of
from builder.fit.verdicts import ASK, SHORT, asked, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both


def estimate_for(requirement: LevelAsked, mix: str, sound: Section | None) -> Item | None:
    """
    The mix position, where the wish is for there and the pack has an estimate of the house system.
    """
    if not names_mix(requirement["place"], mix):
        return None
    for item in items_of(sound, "mix"):
        level_db = number_of(item, "average_level")
        error_db = number_of(item, "average_level_error")
        if level_db is not None and error_db is not None:
            return item
    return None


def without_estimate(
    requirement: LevelAsked, limits: Verdict, mix: str, sound: Section | None
) -> Verdict:
    """
    A wish that limits leave room for, where no estimate can be told: asked unless the house says
    that it has no system; then, and where it describes no sound, the limits alone decide.
    """
    if limits["verdict"] == ASK or not names_mix(requirement["place"], mix):
        return limits
    if sound is None or has_no_system(sound):
        return limits
    levels = [value_of(item, "average_level") for item in items_of(sound, "mix")]
    is_lacking = any(level is not None and level["standing"] == "unknown" for level in levels)
    reason = NO_ESTIMATE if is_lacking else NOT_ENOUGH_SAID
    return with_limits(asked(requirement, SYSTEM, reason), limits)


def has_no_system(sound: Section) -> bool:
    """Whether the house says that it has neither hangs nor subs."""
    for item in items_of(sound, "whole"):
        said = [value_of(item, name) for name in ("hangs", "subs")]
        return all(value is not None and value["standing"] == "none" for value in said)
    return False


def against_system(requirement: LevelAsked, limits: Verdict, mix: Item) -> Verdict:
    """
    A wish that limits leave room for, against the estimate with its error.

    Within the error nobody knows.
    """
    level, error = text_of(mix, "average_level"), text_of(mix, "average_level_error")
    estimate = fill(ESTIMATE, {"level": level, "error": error})
    if weighting(level) != requirement["weighting"] or requirement["metric"] != EQUIVALENT:
        if limits["verdict"] == ASK:
            return limits
        reason = fill(OTHER_THAN_ESTIMATE, {"estimate": estimate})
        return with_limits(asked(requirement, SYSTEM, reason), limits)
    above_db = requirement["level_db"] - known_number(mix, "average_level")
    error_db = known_number(mix, "average_level_error")
    if above_db > error_db:
        return with_limits(too_loud(requirement, mix, estimate, above_db), limits)
    if above_db >= -error_db:
        limits["notes"] = [*limits["notes"], fill(WITHIN_ERROR, {"estimate": estimate})]
    limits["notes"] = once([*limits["notes"], *age_notes(mix["values"]["average_level"])])
    return settled(limits)


def too_loud(requirement: LevelAsked, mix: Item, estimate: str, above_db: float) -> Verdict:
    """A wish that the house system does not reach, by more than the estimate's error."""
    words = both("level", above_db)
    reason = fill(ABOVE_ESTIMATE, {"estimate": estimate, "amount": words[0]})
    answer = with_remedy(verdict(requirement, SHORT, reason), SYSTEM)
    answer["fact"] = fact_of(mix["values"]["average_level"], mix)
    answer["margin"] = signed(words, -above_db)
    answer["notes"] = [OWN_SYSTEM]
    return answer


def with_limits(answer: Verdict, limits: Verdict) -> Verdict:
    """A verdict on the system that still tells what the limits made of the wish."""
    reason = fill(LIMITS_SAY, {"reason": limits["reason"]})
    answer["notes"] = [*answer["notes"], reason, *limits["notes"]]
    return answer
