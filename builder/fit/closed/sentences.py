"""What is said of dates on which the house is closed."""

DATE = "Date of the show"
DATE_NOT_SAID = "not said"

HOUSE_CLOSED = "The house is closed from {first} until {last}{why}."
PARTS_CLOSED = "Closed from {first} until {last}{why}: {names}."
PARTS_CLOSED_IN = "Closed from {first} until {last}{why}: {names}, in {spaces}."
WHY = " ({why})"
DAY_UNKNOWN = "a day that it does not know yet"

NOT_FINAL = "Not final, the house says: {figures} ({what})."
ALL_FIGURES = "its figures of {department}"

MAY_DIFFER = "{what} is hired in, and what comes may differ, the house says: {how}"
RESTS_ON_HIRED = "{what} is hired in, and what comes may differ: {how} As it is told: {reason}"
WHAT_COMES = "Which {what} comes, and what of it differs from your pages?"
COMING = "what comes"

REGULARLY = "The house is not free for {what}{days}{months}{from}."
REGULARLY_DAYS = ", on {days}"
REGULARLY_MONTHS = ", from {first}{begins} until {last}{ends}"
REGULARLY_BEGINS = " ({text})"
REGULARLY_ENDS = " ({text})"
REGULARLY_FROM = ", from {text} on"

PERHAPS_ON = "{closed} Whether that takes in {date} is not known."
NO_DATE = "{closed} The rider does not say when it plays."
CLOSURES_UNKNOWN = "The house does not know yet on which dates it is closed."
ONE_IS_CLOSED = "{closed} What else meets this need may be open."

ARE_YOU_OPEN = "Are you open to shows on {date}?"
WHEN_ARE_YOU_CLOSED = "On which dates are you closed to shows?"
CAN_WE_HAVE = "Can we have this on {date}? {closed}"
WHEN_DO_YOU_PLAY = "On which date do you play? {closed}"

ANOTHER_DATE = "Play on another date, or ask whether it can be opened on this one."
WHO = "the promoter"
