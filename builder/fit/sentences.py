"""
Sentences from templates, and those that several subjects share.

What the check says stands in tables of templates with named parts, one table a subject, so that it
can be read, changed and one day translated. :func:`fill` puts the parts in.
"""

from builder.reading.values.sentences import fill as fill

QUESTION = "{question} ({asker}.)"
ASKER = "{act}{line}: {title}, {need}"
LACKING_FACT = "{item}, {label}"
LIMIT_BY_RULE = "a limit {rule}"
CAN_YOU_TELL = "Can you tell {what}?"
PLEASE_SAY = "What do you say of this: {fact}?"
RIDER_LINE = ", rider line {line}"

RIDER_ASKS = "The rider asks."
NOT_READ = (
    "{act}: {words}. This was not judged, and what it shares with others is counted without it."
)
NOT_JUDGED = (
    "The program failed on this, so it was not judged: that is a mistake of the program and not of"
    " the rider or the house. Please report it."
)
BY_HAND = "This was not judged by the program: does the house have it?"
THE_DAY_NOT_JUDGED = "What the acts of the day ask together"
HAVE_IT = "Does the house have {what}?"
BEST_OF_SEVERAL = "{title}, {need}: {reason}"

NOT_SAID = "The house has not said."
NOT_KNOWN_YET = "The house does not know yet."
BOUNDED = "It is {text}, for not all is known."
NOT_DESCRIBED = "The pack does not describe this."
HAS_NONE = "The house has none."
SHOW_BRINGS_IT = "The show brings it."

LIMITED = "{item} is limited."
SOME_OUT = "{item}: {state}."
SOME_OUT_WHY = "{item}: {state}. {note}"
LIMITED_WHY = "{item} is limited: {note}"
TERMS = "{item}: {terms}."
NO_CHECK = "The house does not say when this was checked."
OLD_CHECK = "Old check: {check}."
SET_BESIDE = "{item}, {label}: set to {amount}."
FROM_MEMORY = "From memory, neither measured nor read from a drawing: {check}."

COUNTED: dict[str, str] = {
    "short": "{number} short",
    "ask": "{number} to ask",
    "fits, with a note": "{number} with a note",
    "fits": "{number} fit",
    "not needed": "{number} not needed",
}
"""How many verdicts of each word, the gravest first."""
