"""What is said of levels."""

from builder.fit.records import Advice

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

NO_WEIGHTING = "its weighting"
NO_PLACE_OF_LIMIT = "The limit of {level} does not say where it is measured."
NO_LEVEL = "The limit '{limit}' does not say at which level it is."
NO_METRIC = "how it is measured"
NO_TIME = "over what time"
NO_PLACE = "where"
LACKING = "The rider's level does not say {lacking}, so it cannot be compared."

NO_LIMIT = "The house has no limit."
NO_LIMIT_THERE = "No limit is stated at that place."
NOT_COMPARED = "Not compared: {limit}, {level} at {place}."
NO_PLACE_OF_LIMIT = "The limit of {level} does not say where it is measured."
NO_METRIC = "metric not stated"
OTHER_TERMS = "The limit is stated in other terms: {level}, {metric}."
NO_TIME_OF_LIMIT = "The limit does not say over what time."
LONGER_TIME = "The limit holds over {time}, and the rider's level is a mean over a longer time."
ABOVE_LIMIT = "Above the limit of {level} by {amount}."
BELOW_LIMIT = "{amount} below the limit of {level}."
IF_HELD = "If the level is held for the limit's {time}. Quieter parts would lower it."

ESTIMATE = "the estimate of the house system, {level} {error}"
NO_ESTIMATE = "The level of the house system cannot be told: the pack says what it lacks."
NOT_ENOUGH_SAID = "The house does not say enough of its system to tell what level it reaches."
OTHER_THAN_ESTIMATE = "It cannot be compared with {estimate}, equivalent level."
ABOVE_ESTIMATE = "Above {estimate}, by {amount}."
WITHIN_ERROR = "Within the error of {estimate}."
OWN_SYSTEM = "This is the house system. A show with a system of its own is not held to it."
LIMITS_SAY = "Limits: {reason}"
