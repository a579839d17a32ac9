"""What is said of needs."""

AMOUNT_NOT_KNOWN = "The rider does not know yet how much it needs."
HOUSE_HAS = "{act}{line}: {title}. {wanted} The house has {fact}."
HOUSE_SAYS = "{act}{line}: {title}. {wanted} The house says {fact}."
HOW_MUCH = "How much do you need?"
HOW_MANY = "How many do you need?"
WHETHER = "Do you need it?"

ALSO_ASKS = "The rider also asks {need}{line}: nothing meets both."
WHICH_HOLDS = "Nothing meets both: {one}, and {other}. Which one holds?"

PERHAPS = "The house has not said everything: {item}, {what}."
UNLIMITED_UNKNOWN = "The house has none of these, so nothing says what limits it."
NOTHING_LIMITS = "Nothing limits it."
LISTS_OTHERS = "None that the house lists is meant, and it does not say that it has no other."
MAY_HAVE_MORE = "By its lines alone: {reason} What else there is, the house has not said."
NONE_OF_ITS_OWN = "The house has none of its own, and does not say what serves in place of one."
NO_NUMBER = "The house gives no number."
BOUNDED_WHY = "It is {text}: {why}."
CHOSEN = "It is {text}; ask to what for this show."
TOLD_BESIDE = "{words}."
SET_TO = "Set to {amount}."

ALL_CLASSES = "Enough of each class."
CLASS_OPEN = "The house has not said of all of them whether they are of this class."
TOLD = "The house says it."
ALL_OF_IT = "All of it."
NO_WAY = "The house meets the condition of none of these."
WHICH_WAY = "As it is written: {one} The other way round: {other}"
WHICH_IS_WHICH = "Which of the two amounts is which?"
NO_CONDITION = "Its condition does not hold. {reason}"
OPEN_CONDITION = "Whether its condition holds is open. {condition} By itself: {reason}"

AS_ASKED = "As asked."
OTHERWISE = "The house says otherwise."
ARRANGE = "By arrangement: ask in time."
NOT_USABLE = "{item}: It is out of service."
NOT_FOR_VISITORS = "{item}: It is not for visitors."
BORNE_ASKED = "{item}: {why}. Whether a show may use it all the same is not said."

TO_SPARE = "{amount} to spare."
EXACTLY = "Exactly enough."
TOLERATED = "Within the tolerance."
ALL_OF_A_SORT = "every {item} that there is"
TOLERATED_NOTE = "Short by {amount}, within the tolerance for rounding."
SHORT_BY = "Short by {amount}."
OVER_BY = "Over by {amount}."

PARTLY_AT_MOST = (
    "The house has not said all of it: {amount} are known, and it is {most} at the most."
)
PARTLY_KNOWN = "The house has not said all of it: {amount} are known."
LEFT_OUT = "{item} is left out: {why}."
TOGETHER = "{count} together"

OUT_OF_SERVICE = "{item} is out of service."
DEAD_WAYS = "{item}, ways that do not work: {ways}."
DEAD_WAYS_NOTE = "{item}, ways that do not work: {ways}. {note}"

SOME_DO = {
    "deck": "Only in: {names}.",
    "beam": "Only under: {names}.",
}
"""Where only some items of a kind do, which."""
