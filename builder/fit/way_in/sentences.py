"""What is said of ways in."""

from builder.fit.records import Advice

WAY_IN: Advice = {
    "question": (
        "How do trucks come, how long and high may they be, and how wide and high is the tightest"
        " opening from the dock to the deck?"
    ),
    "remedy": "Load into smaller trucks, or split the largest case.",
    "who": "the show",
}
NO_SIZE = "The rider gives no size of a truck or a case, so no way in can be judged."

TRUCK_LENGTH = "truck length"
TRUCK_HEIGHT = "truck height"
TRUCK_WEIGHT = "truck weight"
CASE_WIDTH = "case width"
CASE_HEIGHT = "case height"
CASE_WEIGHT = "case weight"

BY_DOCK = "By {dock}: {reasons}."
NOT_IN_USE = "not in use"
NOT_STATED = "{size} not stated"
NOT_EXACT = "{size} open, for the house says {text}"
NOT_LIMITED = "{size} not limited"
TO_SPARE = "{size} {amount} to spare"
SHORT_BY = "{size} short by {amount}"
TRAILER_ALONE = "{size} given of the trailer alone, and the limit is for tractor and trailer"
TRAILER_NOT_SAID = "{size} given, and not that of the trailer, for which the limit is"
LENGTH_OF_WHAT = "{size} not said to be of tractor and trailer or of the trailer alone"
LEADS_NOT_SAID = "not stated whether {route} leads to the deck"
ASK_LENGTH = (
    "{act}{line}: how long is your longest truck, tractor and trailer together? The house lets in"
    " {limit}."
)
ASK_TRAILER = (
    "{act}{line}: how long is your longest trailer, without its tractor? The house lets in {limit}."
)
WAITING = "{count} unload at once, {others} wait."
