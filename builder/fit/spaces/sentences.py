"""What is said of spaces."""

JUDGED_IN = "Judged in {space}."
BEST_OF = "Judged in {space}; of {number} spaces, none suits this show better."
EACH_IN_ITS_OWN = "Each act is judged in its own space: {acts}."
ACT_IN = "{act} in {space}"
NO_SUCH_SPACE = "The house has no space {space}; it has: {names}."
WHICH_SPACE = "{act}: which space is meant by {space}? The house has: {names}."
AT_ONCE = "Several spaces on one day"
NOT_TOGETHER = (
    "Each act is judged in its own space as if it had the house to itself. What can be counted of"
    " what the spaces share is added up; hours, ways, power and noise are not judged for all of"
    " them at once: {shared}."
)
NOT_ALL_AT_ONCE = "There is enough for each of them, and not for all at the same hours. {reason}"
SAME_HOURS = "Do the acts in several spaces need these at the same hours?"
SERVE_ALL = "Can the house serve all of these on one day, and at the same hours: {acts}?"
BETWEEN = "; "
AND = ", "
