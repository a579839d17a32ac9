"""
What would mend a day that does not close. Each way is proven by laying the day out again.
"""

from builder.fit.clock.laying_out import lay_out
from builder.fit.clock.pieces import CHECK
from builder.fit.clock.records import Piece, Plan
from builder.fit.clock.sentences import (
    LOAD_IN_AT,
    LOAD_IN_AT_IF,
    NO_CHECK,
    OPEN_DOORS_AT,
    SHORTEN_CHECK,
)
from builder.fit.clock.times import known_time, or_none
from builder.fit.sentences import fill
from builder.fit.wording import clock as clock_words
from builder.fit.wording import lasting

Way = tuple[str, str]
"""What could be done, and who could."""


def ways_to_close(plan: Plan, late_s: float) -> list[Way]:
    """Every single change that closes the day, and who could make it."""
    return [
        *load_in_earlier(plan, late_s),
        *shorten_a_check(plan, late_s),
        *open_doors_later(plan, late_s),
    ]


def closes(plan: Plan) -> bool:
    """Whether a plan closes; one whose load-in or doors are not known is not against it."""
    start_s, doors_s = plan["start_s"], plan["doors_s"]
    if start_s is None or doors_s is None:
        return True
    laid = lay_out(plan["pieces"], start_s, plan["meals"], plan["quiet"])
    if any(pin["late_s"] > 0 for pin in laid["pins"]):
        return False
    return laid["now_s"] + or_none(plan["ready"]["s"]) - doors_s <= 0


def load_in_earlier(plan: Plan, late_s: float) -> list[Way]:
    """Loading in earlier, where the house allows work at that hour."""
    start_s = known_time(plan["start_s"]) - late_s
    allowed_s = plan["load_in_from"]["s"]
    if start_s < 0 or (allowed_s is not None and start_s < allowed_s):
        return []
    pieces = [earlier_piece(piece, plan, start_s) for piece in plan["pieces"]]
    if not closes({**plan, "start_s": start_s, "pieces": pieces}):
        return []
    template = LOAD_IN_AT_IF if plan["load_in_from"]["standing"] == "ask" else LOAD_IN_AT
    return [(fill(template, {"time": clock_words(start_s)}), "the show")]


def earlier_piece(piece: Piece, plan: Plan, start_s: float) -> Piece:
    """A piece that begins with the load-in begins with the earlier one."""
    if piece["not_before_s"] == plan["start_s"]:
        return {**piece, "not_before_s": start_s}
    return piece


def shorten_a_check(plan: Plan, late_s: float) -> list[Way]:
    """A shorter check; the one that comes last first, for it has the least to lose."""
    for index in reversed(range(len(plan["pieces"]))):
        piece = plan["pieces"][index]
        length_s = piece["length_s"]
        if piece["what"] == CHECK and length_s is not None and length_s >= late_s:
            left_s = length_s - late_s
            shorter: Piece = {**piece, "length_s": left_s}
            pieces = [*plan["pieces"][:index], shorter, *plan["pieces"][index + 1 :]]
            if closes({**plan, "pieces": pieces}):
                parts = {"whose": piece["whose"], "length": lasting(left_s)}
                return [(fill(SHORTEN_CHECK if left_s > 0 else NO_CHECK, parts), "the show")]
    return []


def open_doors_later(plan: Plan, late_s: float) -> list[Way]:
    """Later doors, where the first act leaves room for it."""
    doors_s = known_time(plan["doors_s"]) + late_s
    first_s = plan["first_s"]
    if first_s is None or doors_s + or_none(plan["kept"]["s"]) > first_s:
        return []
    if not closes({**plan, "doors_s": doors_s}):
        return []
    return [(fill(OPEN_DOORS_AT, {"time": clock_words(doors_s)}), "the promoter and the house")]
