"""
The work before doors, laid out from load-in onwards, each piece as early as it can be.

A meal break stops work at the latest when it is due. A check is never broken by a meal, and never
heard in quiet hours. A wait as long as a meal break counts as one.
"""

from typing import Any

from builder.fit.verdicts import Record

LATEST_S = 604800
QUIET = "waiting: quiet hours"


def laid_out(
    pieces: list[Record], start_s: float, meals: Record, quiet: list[list[float]]
) -> Record:
    """
    The pieces in their order from ``start_s`` on. A piece of unknown length counts as none, so that
    the end can only be later.

    Returns ``now_s``, when the last ends; ``rows`` of the table; ``pins``, by how much each agreed
    time is missed (less than none: kept, and that much to spare); ``open``, the pieces whose length
    must be known although their end is agreed; ``meals``, how many breaks there are.
    """
    state: Record = {
        "now_s": start_s,
        "fresh_s": start_s,
        "sure": True,
        "rows": [],
        "pins": [],
        "open": [],
        "breaks": 0,
    }
    for piece in pieces:
        wait_until(piece["not_before_s"], state, meals)
        if piece["length_s"] is None and piece["until_s"] is not None:
            fill(piece, state, meals)
        elif piece["splits"]:
            in_parts(piece, state, meals)
        else:
            whole(piece, state, meals, quiet)
    return state


def wait_until(time_s: Any, state: Record, meals: Record) -> None:
    """Nothing happens before a time."""
    if time_s is not None and time_s > state["now_s"]:
        rested(time_s, state, meals)
        state["now_s"] = time_s


def rested(time_s: float, state: Record, meals: Record) -> bool:
    """Whether the wait until a time is as long as a meal break; then it is one."""
    if time_s > state["now_s"] and time_s - state["now_s"] >= meals["break_s"]:
        state["fresh_s"] = time_s
        return True
    return False


def due(time_s: float, state: Record, meals: Record) -> bool:
    """Whether a meal break is due before a time."""
    return (
        meals["after_s"] is not None
        and time_s > state["fresh_s"] + meals["after_s"]
        and state["now_s"] < LATEST_S
    )


def row(state: Record, what: str, whose: str, length_s: float) -> None:
    """A row of the table from now on; its times are not known once a length was not known."""
    if length_s > 0:
        first, last = (state["now_s"], state["now_s"] + length_s) if state["sure"] else (None, None)
        state["rows"].append(
            {"from_s": first, "to_s": last, "length_s": length_s, "what": what, "whose": whose}
        )
    state["now_s"] = state["now_s"] + length_s


def rest(state: Record, meals: Record) -> None:
    """A meal break now."""
    row(state, "meal break", "House", meals["break_s"])
    state["fresh_s"] = state["now_s"]
    state["breaks"] = state["breaks"] + 1


def fill(piece: Record, state: Record, meals: Record) -> None:
    """
    Work of a length that nobody stated, up to a time that somebody did.

    Whether a meal fits into it, nobody can tell.
    """
    length_s = piece["until_s"] - state["now_s"]
    if length_s > 0:
        if meals["due_s"] is not None and piece["until_s"] > state["fresh_s"] + meals["due_s"]:
            state["open"].append(piece)
            state["fresh_s"] = piece["until_s"]
        row(state, piece["what"], piece["whose"], length_s)


def in_parts(piece: Record, state: Record, meals: Record) -> None:
    """Work that a meal may break."""
    if piece["length_s"] is None:
        unknown(piece, state)
        return
    left_s = piece["length_s"]
    while due(state["now_s"] + left_s, state, meals):
        first_s = state["fresh_s"] + meals["after_s"] - state["now_s"]
        if first_s > 0:
            row(state, piece["what"], piece["whose"], first_s)
            left_s = left_s - first_s
        rest(state, meals)
    row(state, piece["what"], piece["whose"], left_s)


def unknown(piece: Record, state: Record) -> None:
    """A piece of unknown length: what follows begins nobody knows when."""
    first = state["now_s"] if state["sure"] else None
    state["rows"].append(
        {
            "from_s": first,
            "to_s": None,
            "length_s": None,
            "what": piece["what"],
            "whose": piece["whose"],
        }
    )
    state["sure"] = False


def whole(piece: Record, state: Record, meals: Record, quiet: list[list[float]]) -> None:
    """A check: in one piece, at its agreed time where there is one, and out of quiet hours."""
    length_s = piece["length_s"] if piece["length_s"] is not None else 0.0
    start_s = heard_from(piece, state, length_s, quiet)
    if (
        not rested(start_s, state, meals)
        and due(start_s + length_s, state, meals)
        and state["now_s"] > state["fresh_s"]
    ):
        rest(state, meals)
        start_s = heard_from(piece, state, length_s, quiet)
        rested(start_s, state, meals)
    first_s = (
        piece["at_s"]
        if piece["at_s"] is not None and piece["at_s"] > state["now_s"]
        else state["now_s"]
    )
    if start_s > first_s and state["sure"]:
        state["rows"].append(
            {
                "from_s": first_s,
                "to_s": start_s,
                "length_s": start_s - first_s,
                "what": QUIET,
                "whose": "House",
            }
        )
    if piece["at_s"] is not None:
        state["pins"].append(
            {
                "late_s": start_s - piece["at_s"],
                "at_s": piece["at_s"],
                "what": piece["what"],
                "whose": piece["whose"],
            }
        )
        state["sure"] = state["sure"] or start_s == piece["at_s"]
    state["now_s"] = start_s
    if piece["length_s"] is None:
        unknown(piece, state)
    else:
        row(state, piece["what"], piece["whose"], length_s)


def heard_from(piece: Record, state: Record, length_s: float, quiet: list[list[float]]) -> float:
    """
    The earliest time from now, and from its agreed time, at which a check is out of all quiet
    hours.
    """
    start_s: float = state["now_s"]
    if piece["at_s"] is not None and piece["at_s"] > start_s:
        start_s = piece["at_s"]
    for first_s, last_s in quiet:
        if start_s < last_s and start_s + length_s > first_s and length_s > 0:
            start_s = last_s
    return start_s
