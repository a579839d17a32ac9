"""What the check says of the day's clock: templates with named parts."""

PRACTICE = " (common practice, no source)."

ASK_CURFEW = "On which days must sound stop, at what time, and can anybody extend that?"
MEND_CURFEW = "Start earlier, or shorten a set or a changeover."
ASK_LOAD_IN = "From when may we load in?"
MEND_LOAD_IN = "Come later, or load in the day before."
DEPENDS_ON_DAY = "It depends on the day, and the rider names none."
NO_CURFEW = "The house has no curfew."
CURFEW_NOT_SAID = "The house has not said when sound must stop on that day."
CURFEW_UNCLEAR = "It is not clear whether this curfew holds on that day: {name}."
BEFORE_CURFEW = "{amount} before the curfew at {time}."
AFTER_CURFEW = "{amount} after the curfew at {time}."
AFTER_SOFT_CURFEW = "{amount} after the curfew at {time}, which somebody may extend."
AFTER_OPEN_CURFEW = (
    "{amount} after the curfew at {time}. Whether somebody may extend it is not said."
)
NO_HOUR = "The house sets no hour."
NOT_BEFORE = "Not before {time}."
TOO_EARLY = "{amount} too early."

ASK_MEALS = (
    "After how long is a meal break due, and how long does work stop for it? Commonly after 5 h,"
    " for 30 to 60 min (common practice, no source); none where the crew eats by turns."
)
ASK_QUIET = "Are there hours in which no check may be heard, and on which days?"
ASK_READY = "How long before doors must the last check have ended? Commonly 15 to 30 min" + PRACTICE
ASK_WEEKDAY = "On which day of the week is the show? Quiet hours hold on {name}."
ASK_QUIET_ONLY = (
    "Could your check go without {only} in the quiet hours of {name}? Nothing else is to be quiet."
)
ASK_QUIET_DAY = "Do the quiet hours of {name} hold on that day?"

WORKED_BACK = "Doors at {doors}, {length} before the first note at {first}, as the house keeps."
ASK_DOORS = "When are doors?"
ASK_WHICH_DOORS = "When are doors? The riders say {times}."

ACT_ASKED = "{act}: {question}"
ASK_TRUCK = "when is your first truck opened?"
ASK_SET_UP = (
    "how long from load-in until your check can begin? Commonly 2 to 8 h, by the size of the show"
    + PRACTICE
)
ASK_SET_UP_BEHIND = (
    "how long do you set up, from a free deck until your check can begin? Commonly 15 to 30 min"
    + PRACTICE
)
ASK_CHECK = (
    "how long is your check, or 0 min for none? Commonly 60 to 90 min for who plays last, 30 to"
    " 45 min for others" + PRACTICE
)
ASK_CLEAR = (
    "how long after your check until the next act can set up in front of you? Commonly 10 to"
    " 20 min" + PRACTICE
)
ASK_SET_UP_FOR_MEAL = "{act}: " + ASK_SET_UP + " A meal break is due before your check."

QUESTIONS_OF = "{questions} ({title}.)"
NOT_ALL_KNOWN = "Not all that decides is known."
DOES_NOT_CLOSE = "{where} {least}{amount} late. {sum}"
CLOSES = "{spared} {sum}"
AT_LEAST = "at least "
LATE_AT_PIECE = "It does not close at the {what} of {whose}, agreed for {time}: it can begin"
LATE_AT_DOORS = "It does not close at doors, {doors}: the last check ends"
LATE_BEFORE_DOORS = (
    "It does not close at {time}, {kept} before doors at {doors}: the last check ends"
)
SPARED = "To spare: {parts} (doors {doors})."
SPARED_AT_PIECE = "{amount} before the {what} of {whose} at {time}"
SPARED_AT_END = "{amount} before the checks must have ended at {time}"
NOTHING = "nothing"
PIECE_OF_SUM = "{before}{what} {length}"
WHOSE = "{whose}: "
NOT_STATED = "not stated"
SENTENCE = "{words}."
NO_SINGLE_CHANGE = "No single change closes it: load in the day before, or leave out a check."
ANY_CLOSES = "Any of these closes it: {ways}."
ANY_MAY_CLOSE = "As far as is known, any of these closes it: {ways}."
LOAD_IN_AT = "load in at {time}"
LOAD_IN_AT_IF = "load in at {time} if the house allows it"
SHORTEN_CHECK = "shorten the check of {whose} to {length}"
NO_CHECK = "leave out the check of {whose}"
OPEN_DOORS_AT = "open doors at {time}"

SPARE_LENGTH = "{intro}{amount} to spare."
SHORT_LENGTH = "{intro}short by {amount}."
ASK_GAP = (
    "how long from the last note of the act before to your first, all in or by its parts? Commonly"
    " 15 to 30 min all in" + PRACTICE
)
ASK_RATE = (
    "how many lines do you check in a minute? Commonly 4 to 6 with two people at the patch"
    + PRACTICE
)
ASK_LINES = "how many lines do you check?"
ASK_ROLL_ON = "how long do you roll on and set?"
ASK_PATCH = "how long do you patch, or 0 min where it is patched before?"
ASK_MONITORS = "how long for wedges, in-ears and vocal positions?"
ASK_SPARE = "how much do you keep for what goes wrong, or 0 min?"
ASK_STRIKE = (
    "how long do you take to clear the deck after your last note? Commonly 5 to 10 min" + PRACTICE
)
ALL_IN = "All in {length}"
ALL_IN_OVER_PARTS = "All in {length}, more than its parts of {parts}"
PARTS_OVER_ALL_IN = "The rider says {length} all in; its own parts are more, and they count."
PART_LENGTH = "{part} {length}"
ADDED_UP = "It takes {parts} = {length}"
LINES_BEFORE = "lines checked before"
LINES_AT_RATE = "{lines} lines at {rate} a minute {length}"
ASK_ENDS = "when does your last note end, or how long is your set?"
END_NOT_SAID = "Nobody has said when {act} ends."
GAP_IS = "{from} to {to} is {length}. "
GAP_LACKS = "{gap}Not all that decides is known."
GAP_NEEDS = "{gap}{sum}: "
GAP_NEEDS_SO_FAR = "{gap}{sum} so far: "
LINES_DURING_SET = "check the lines of {act} during the set before, which saves {length}{part}"
NOT_ALL_OF_IT = ", which is not all of it"
SHORTEN_SET = "shorten the set of {act} to {length}"
BEGINS_AT = "{act} begins at {time}"
WHAT_HELPS = "What helps: {ways}."
SET_IS = "{from} and {length}, until {until}: "
MEND_SET = "Begin earlier, play less, or end later where the curfew allows it."

ASK_LOAD_OUT = (
    "how long from your last note until your last truck is closed? Commonly 1 to 4 h" + PRACTICE
)
ASK_LOAD_OUT_UNTIL = "Until when may we load out?"
LOAD_OUT_NOT_SAID = "Nobody has said how long it takes."
LOAD_OUT_IS = "{from} and {length} is {end}, until {until}: "
MEND_LOAD_OUT = "End earlier, order more loaders, or leave trucks until the morning."
ASK_LONGEST = "How long may one crew work on one day? Commonly 10 to 14 h" + PRACTICE
DAY_IS = "{from} to {to} is {length}"
DAY_OPEN = "{day}. How long one crew may work: {open}"
DAY_NO_LIMIT = "{day}. The house sets no longest call."
DAY_OF = "{day} of {longest}: "
MEND_DAY = "Order a second crew for part of the day, or shorten it."
SHORT_CALL = (
    "A crew called for the load-out alone: {length} is paid as the shortest call of {call}."
)

ASK_WHO_FIRST = "Which act plays first? Two begin at the same time."
TWO_AT_ONCE = "Two acts begin at the same time."
ASK_ON_STAGE = "{act}: when are you on stage, and how long is your set?"
ONE_NOT_ON_STAGE = "Nobody has said when {acts} is on stage."
SOME_NOT_ON_STAGE = "Nobody has said when {acts} are on stage."
SPAN = "load-in {load_in}, doors {doors}"
FIRST_NOTE = "first note at {time}"
SET_OF = "Set of {act}"
END_OF = "End of {act}"
CHANGEOVER_TO = "Changeover to {act}"
LOAD_OUT_OF = "Load-out of {act}"
ASK_SET = (
    "{act}: how long is your set? Commonly 30 to 45 min for who opens, 75 to 120 min for who plays"
    " last" + PRACTICE
)
SET_NOT_SAID = "Nobody has said how long the set is."
ASK_BEGINS = "{act}: when are you on stage?"
BEGIN_NOT_SAID = "Nobody has said when the set begins."
ASK_DOORS_BEFORE = (
    "How long must there be from doors to the first act? Commonly 30 to 60 min" + PRACTICE
)
DOORS_OPEN = "{length} from doors. How long the house wants: {open}"
DOORS_TO_FIRST = "{doors} to {first}: "
DOORS_TO_FIRST_WANTED = "{doors} to {first}: the house wants {wanted}, "
MEND_DOORS = "Open doors earlier, or begin later."
