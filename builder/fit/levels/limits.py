"""
A wished level against the house's limits.

Levels are compared only where weighting, metric and place are the same. A legal limit has no
tolerance.
"""

from builder.fit.levels.sentences import (
    ABOVE_LIMIT,
    BELOW_LIMIT,
    IF_HELD,
    LACKING,
    LIMIT,
    LONGER_TIME,
    NO_LEVEL,
    NO_LIMIT,
    NO_LIMIT_THERE,
    NO_METRIC,
    NO_PLACE_OF_LIMIT,
    NO_TIME_OF_LIMIT,
    NOT_COMPARED,
    OTHER_TERMS,
)
from builder.fit.levels.wish import EQUIVALENT, lacking, place_meant, weighting
from builder.fit.margins import signed
from builder.fit.notes import age_notes, once
from builder.fit.records import Item, LevelAsked, Section, Verdict
from builder.fit.sections import items_of
from builder.fit.sentences import fill
from builder.fit.silence import silence_on
from builder.fit.values import known_number, number_of, text_of
from builder.fit.verdicts import ASK, FITS, SHORT, asked, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both, span


def under_limits(requirement: LevelAsked, mix: str, house: Section | None) -> Verdict:
    """The wished level against every limit that can be compared."""
    lacks = lacking(requirement)
    if len(lacks) > 0:
        return asked(requirement, LIMIT, fill(LACKING, {"lacking": ", ".join(lacks)}))
    limits = items_of(house, "noise")
    if len(limits) == 0:
        return without_limits(requirement, house)
    there = [limit for limit in limits if is_there(requirement, mix, limit)]
    elsewhere = [not_compared(limit) for limit in limits if not is_there(requirement, mix, limit)]
    answers = [against_limit(requirement, limit) for limit in there]
    for word in (SHORT, ASK, FITS):
        for answer in answers:
            if answer["verdict"] == word:
                compared = [note for other in answers for note in other["notes"]]
                answer["notes"] = once([*answer["notes"], *compared, *elsewhere])
                return settled(answer)
    nowhere = asked(requirement, LIMIT, NO_LIMIT_THERE)
    nowhere["notes"] = elsewhere
    return nowhere


def without_limits(requirement: LevelAsked, house: Section | None) -> Verdict:
    """No limit in the pack: there is none, or nobody has said."""
    for item in items_of(house, "identity"):
        if "noise_limits" in item["values"]:
            limits = item["values"]["noise_limits"]
            if limits["standing"] == "none":
                answer = verdict(requirement, FITS, NO_LIMIT)
                answer["fact"] = fact_of(limits, item)
                answer["notes"] = age_notes(limits)
                return settled(answer)
    return asked(requirement, LIMIT, silence_on(house, "identity", "noise_limits"))


def is_there(requirement: LevelAsked, mix: str, limit: Item) -> bool:
    """Whether wish and limit are, or may be, measured at one place, by its words."""
    place = text_of(limit, "measured_at")
    return place == "" or place_meant(place, mix) == place_meant(requirement["place"], mix)


def not_compared(limit: Item) -> str:
    """A note on a limit at another place."""
    return fill(
        NOT_COMPARED,
        {
            "limit": limit["name"],
            "level": text_of(limit, "level"),
            "place": text_of(limit, "measured_at"),
        },
    )


def against_limit(requirement: LevelAsked, limit: Item) -> Verdict:
    """One limit at the same place."""
    if number_of(limit, "level") is None:
        return asked(requirement, LIMIT, fill(NO_LEVEL, {"limit": limit["name"]}))
    slack_db = known_number(limit, "level") - requirement["level_db"]
    answer = by_terms(requirement, limit)
    if answer is None:
        answer = by_level(requirement, limit, slack_db)
    if answer["verdict"] != ASK:
        answer["margin"] = signed(both("level", abs(slack_db)), slack_db)
    answer["fact"] = fact_of(limit["values"]["level"], limit)
    return answer


def by_terms(requirement: LevelAsked, limit: Item) -> Verdict | None:
    """A question where a limit's terms are not those of the wish; None where they are."""
    level = text_of(limit, "level")
    metric = text_of(limit, "metric")
    if text_of(limit, "measured_at") == "":
        return asked(requirement, LIMIT, fill(NO_PLACE_OF_LIMIT, {"level": level}))
    if weighting(level) != requirement["weighting"] or metric != requirement["metric"]:
        shown = NO_METRIC if metric == "" else metric
        reason = fill(OTHER_TERMS, {"level": level, "metric": shown})
        return asked(requirement, LIMIT, reason)
    if metric == EQUIVALENT and number_of(limit, "over") is None:
        return asked(requirement, LIMIT, NO_TIME_OF_LIMIT)
    return None


def by_level(requirement: LevelAsked, limit: Item, slack_db: float) -> Verdict:
    """A limit in the same terms: above it, below it, or a mean over a longer time."""
    parts = {
        "level": text_of(limit, "level"),
        "amount": both("level", abs(slack_db))[0],
        "time": limit_time_words(limit),
    }
    longer_s = longer_than_limit_s(requirement, limit)
    if slack_db < 0:
        answer = verdict(requirement, SHORT, fill(ABOVE_LIMIT, parts))
        if longer_s < 0:
            answer["notes"] = [fill(IF_HELD, parts)]
        return with_remedy(answer, LIMIT)
    if longer_s > 0:
        return asked(requirement, LIMIT, fill(LONGER_TIME, parts))
    answer = verdict(requirement, FITS, fill(BELOW_LIMIT, parts))
    answer["notes"] = age_notes(limit["values"]["level"])
    return answer


def limit_time_words(limit: Item) -> str:
    """The time that an equivalent level is taken over, in words."""
    over_s = number_of(limit, "over")
    return "" if over_s is None else span(over_s)


def longer_than_limit_s(requirement: LevelAsked, limit: Item) -> float:
    """How much longer the wish's mean is taken than the limit's; 0 where neither is a mean. [s]"""
    over_s = requirement["over_s"]
    limit_s = number_of(limit, "over")
    if requirement["metric"] != EQUIVALENT or over_s is None or limit_s is None:
        return 0.0
    return over_s - limit_s
