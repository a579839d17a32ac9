"""What is said of crew and of what the house sees to."""

HOW_MANY = "The house does not say how many can be called."
NAMES_OTHERS = "The house names {roles}. None of them is given as {who}."
ALSO_CALLED = "The rider calls {count} more of them for the same time: {all} together."
PERHAPS_MORE = (
    "The rider calls {count} more of them at times that may be the same. {all} together would be"
    " too many: tell when each call begins and ends."
)
ABLE_TO = "There are as many. Whether they are able to {words}, the house does not say."
ORDERED = "{name} are ordered {amount} before the show."
COSTS = (
    "The shortest call of {name} costs {amount} a person at the house's rate. A planning figure:"
    " its quote decides."
)
MEALS_DUE = "{due} meal breaks are due, one after each {amount} of work."
BILLED = "It is billed as {amount}, the shortest call that is paid."
HIRE = "Bring them with the show, or hire them; the house may know a firm."
HIRER = "the show, or hire"
ASK_CALL = "Whom can you call of these, for which hours, and at what cost?"
LONGEST = "One crew works {amount} at the longest; beyond it a second one is called."
MEAL_DUE = "A meal break is due after {amount}."
IT_AGREES = "It is the house that does it or sees to it."
ASK_TASK = "Do you do this, or see to it?"
