"""What is said of arrangements."""

NOT_FOR_CONFIGURATION = "The house has not said for the configuration {configuration}."
NO_SUCH_CONFIGURATION = "The house names no configuration {configuration}; it names: {names}."
WHICH_CONFIGURATION = (
    "{act}: which configuration is meant by {configuration}? The house names: {names}."
)
TOO_MANY = (
    "The house has {number} configurations, more than the {most} that are compared, and the rider"
    " names none."
)
NAME_ONE = "In which configuration of the house do we play?"

CHANGEOVER = "Changeover of configuration"
ACT_IN = "{act} in {configuration}"
DIFFERENT = "The riders name different configurations; each act is judged in its own."
CAN_IT_CHANGE = "Can the house change between these on one day, and how long does it take?"

JUDGED_IN = "Judged in the configuration {names}."
BEST_OF = "Judged in the configuration {names}; of {number}, none suits this show better."
EACH_IN_ITS_OWN = "Each act is judged in its own configuration: {names}."
AT_SETTING = "{amount} ({text})"
SET_FOR_SHOW = "Set for this show: {settings}."
SETTING = "{item}, {label}: {amount}"
SETTING_IN_BOTH = "{item}, {label}: {amount} ({also})"
SAME_IN = "In {names}: the same verdicts."
OTHER_IN = "In {names}: {count}{worse}{better}."
NOTHING_SHORT = "nothing short, nothing to ask"
WORSE = "; worse there: {title}"
BETTER = "; better there: {title}"
MORE = "And {number} more, no better."

IN_DOUBT = "Nobody knows whether this is in service: {items}. Without it: {reason}"
IS_IT_IN_SERVICE = "Is this in service on the day of the show: {items}?"
LISTED_AND = ", "
