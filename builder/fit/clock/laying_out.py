"""
The work before doors, laid out from load-in onwards, each piece as early as it can be.

A meal break stops work at the latest when it is due. A check is never broken by a meal, and never
heard in quiet hours. A wait as long as a meal break counts as one.
"""

from builder.fit.clock.records import Laid, Meals, Piece, Row
from builder.fit.clock.times import known_time, or_none

LATEST_S = 604800.0
QUIET = "waiting: quiet hours"
MEAL_BREAK = "meal break"
HOUSE = "House"


def lay_out(pieces: list[Piece], start_s: float, meals: Meals, quiet: list[list[float]]) -> Laid:
    """
    The pieces in their order from ``start_s`` on. A piece of unknown length counts as none, so that
    the end can only be later.
    """
    laid: Laid = {
        "now_s": start_s,
        "fresh_s": start_s,
        "sure": True,
        "rows": [],
        "pins": [],
        "open": [],
        "breaks": 0,
    }
    for piece in pieces:
        wait_until(piece["not_before_s"], laid, meals)
        if piece["length_s"] is None and piece["until_s"] is not None:
            fill_up(piece, piece["until_s"], laid, meals)
        elif piece["splits"]:
            work_in_parts(piece, laid, meals)
        else:
            check_whole(piece, laid, meals, quiet)
    return laid


def wait_until(time_s: float | None, laid: Laid, meals: Meals) -> None:
    """Nothing happens before a time."""
    if time_s is not None and time_s > laid["now_s"]:
        note_rest(time_s, laid, meals)
        laid["now_s"] = time_s


def is_rest(time_s: float, laid: Laid, meals: Meals) -> bool:
    """Whether the wait until a time is as long as a meal break; then it is one."""
    return time_s > laid["now_s"] and time_s - laid["now_s"] >= meals["break_s"]


def note_rest(time_s: float, laid: Laid, meals: Meals) -> None:
    """Count the wait until a time as a meal break, where it is as long."""
    if is_rest(time_s, laid, meals):
        laid["fresh_s"] = time_s


def break_is_due(time_s: float, laid: Laid, meals: Meals) -> bool:
    """Whether a meal break is due before a time."""
    if meals["after_s"] is None:
        return False
    return time_s > laid["fresh_s"] + meals["after_s"] and laid["now_s"] < LATEST_S


def add_row(laid: Laid, what: str, whose: str, length_s: float) -> None:
    """A row of the table from now on; its times are not known once a length was not known."""
    if length_s > 0:
        row: Row = {
            "from_s": None,
            "to_s": None,
            "length_s": length_s,
            "what": what,
            "whose": whose,
        }
        if laid["sure"]:
            row["from_s"] = laid["now_s"]
            row["to_s"] = laid["now_s"] + length_s
        laid["rows"].append(row)
    laid["now_s"] = laid["now_s"] + length_s


def take_break(laid: Laid, meals: Meals) -> None:
    """A meal break now."""
    add_row(laid, MEAL_BREAK, HOUSE, meals["break_s"])
    laid["fresh_s"] = laid["now_s"]
    laid["breaks"] = laid["breaks"] + 1


def fill_up(piece: Piece, until_s: float, laid: Laid, meals: Meals) -> None:
    """
    Work of a length that nobody stated, up to a time that somebody did.

    Whether a meal fits into it, nobody can tell.
    """
    length_s = until_s - laid["now_s"]
    if length_s > 0:
        if meals["due_s"] is not None and until_s > laid["fresh_s"] + meals["due_s"]:
            laid["open"].append(piece)
            laid["fresh_s"] = until_s
        add_row(laid, piece["what"], piece["whose"], length_s)


def work_in_parts(piece: Piece, laid: Laid, meals: Meals) -> None:
    """Work that a meal may break."""
    if piece["length_s"] is None:
        add_unknown(piece, laid)
        return
    left_s = piece["length_s"]
    while break_is_due(laid["now_s"] + left_s, laid, meals):
        first_s = laid["fresh_s"] + known_time(meals["after_s"]) - laid["now_s"]
        if first_s > 0:
            add_row(laid, piece["what"], piece["whose"], first_s)
            left_s = left_s - first_s
        take_break(laid, meals)
    add_row(laid, piece["what"], piece["whose"], left_s)


def add_unknown(piece: Piece, laid: Laid) -> None:
    """A piece of unknown length: what follows begins nobody knows when."""
    row: Row = {
        "from_s": None,
        "to_s": None,
        "length_s": None,
        "what": piece["what"],
        "whose": piece["whose"],
    }
    if laid["sure"]:
        row["from_s"] = laid["now_s"]
    laid["rows"].append(row)
    laid["sure"] = False


def check_whole(piece: Piece, laid: Laid, meals: Meals, quiet: list[list[float]]) -> None:
    """A check: in one piece, at its agreed time where there is one, and out of quiet hours."""
    length_s = or_none(piece["length_s"])
    start_s = heard_from(piece, laid, length_s, quiet)
    if is_rest(start_s, laid, meals):
        laid["fresh_s"] = start_s
    elif break_is_due(start_s + length_s, laid, meals) and laid["now_s"] > laid["fresh_s"]:
        take_break(laid, meals)
        start_s = heard_from(piece, laid, length_s, quiet)
        note_rest(start_s, laid, meals)
    add_quiet_wait(piece, laid, start_s)
    pin_agreed(piece, laid, start_s)
    laid["now_s"] = start_s
    if piece["length_s"] is None:
        add_unknown(piece, laid)
    else:
        add_row(laid, piece["what"], piece["whose"], length_s)


def first_chance(piece: Piece, laid: Laid) -> float:
    """Now, or a check's agreed time where that is later."""
    if piece["at_s"] is not None and piece["at_s"] > laid["now_s"]:
        return piece["at_s"]
    return laid["now_s"]


def add_quiet_wait(piece: Piece, laid: Laid, start_s: float) -> None:
    """A row for the wait until quiet hours end."""
    first_s = first_chance(piece, laid)
    if start_s > first_s and laid["sure"]:
        laid["rows"].append(
            {
                "from_s": first_s,
                "to_s": start_s,
                "length_s": start_s - first_s,
                "what": QUIET,
                "whose": HOUSE,
            }
        )


def pin_agreed(piece: Piece, laid: Laid, start_s: float) -> None:
    """Note by how much a check misses its agreed time."""
    at_s = piece["at_s"]
    if at_s is None:
        return
    laid["pins"].append(
        {"late_s": start_s - at_s, "at_s": at_s, "what": piece["what"], "whose": piece["whose"]}
    )
    laid["sure"] = laid["sure"] or start_s == at_s


def heard_from(piece: Piece, laid: Laid, length_s: float, quiet: list[list[float]]) -> float:
    """
    The earliest time from now, and from its agreed time, at which a check is out of all quiet
    hours.
    """
    start_s = first_chance(piece, laid)
    for first_s, last_s in quiet:
        if start_s < last_s and start_s + length_s > first_s and length_s > 0:
            start_s = last_s
    return start_s
