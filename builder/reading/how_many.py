"""
How many of how many, in words: the numbers of single units are never taken for a number of them.

It imports nothing, for those who read packs must not load what reads descriptions.
"""

from collections.abc import Sequence


def out_words(out: int, of: int, units: Sequence[int] = (), counted: str = "") -> str:
    """
    How many of how many do not work, in words; empty where all do.

    A single thing that does not work is out of service, without a number.
    """
    if out <= 0:
        return ""
    if of == 1:
        return "out of service"
    what = f"{of} {counted}" if counted else f"{of}"
    if out >= of:
        return f"all {what} out of service"
    named = f", {numbers(units)}" if units else ""
    return f"{out} of {what} out of service{named}"


def numbers(units: Sequence[int | str]) -> str:
    """The numbers of single units in words: number 7, or numbers 3, 7 and 9."""
    words = [str(unit) for unit in units]
    if len(words) < 2:
        return f"number {words[0]}" if words else ""
    return f"numbers {', '.join(words[:-1])} and {words[-1]}"
