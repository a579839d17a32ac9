"""What is said of crew and of what the house sees to."""

HOW_MANY = "The house does not say how many can be called."
ASK_CALL = "Whom can you call of these, for which hours, and at what cost?"
SHORTEST = "The shortest call that is paid is {amount}."
LONGEST = "One crew works {amount} at the longest; beyond it a second one is called."
MEAL_DUE = "A meal break is due after {amount}."
IT_AGREES = "It is the house that does it or sees to it."
ASK_TASK = "Do you do this, or see to it?"
