"""
A wished level against the house's limits first, then against what the house system is estimated to
reach.
"""

from builder.fit.levels.house_system import against_system, estimate_for, without_estimate
from builder.fit.levels.limits import under_limits
from builder.fit.levels.wish import lacking, name_of_mix
from builder.fit.records import LevelAsked, Section, Verdict
from builder.fit.verdicts import SHORT


def level_asked(requirement: LevelAsked, house: Section | None, sound: Section | None) -> Verdict:
    """
    The wished level against limits; where these leave room, against the estimate of the house
    system.

    A limit is never outdone by a system.
    """
    mix = name_of_mix(sound)
    answer = under_limits(requirement, mix, house)
    estimate = estimate_for(requirement, mix, sound)
    if answer["verdict"] == SHORT or len(lacking(requirement)) > 0:
        return answer
    if estimate is None:
        return without_estimate(requirement, answer, mix, sound)
    return against_system(requirement, answer, estimate)
