"""
Positions from the venue's datum: a length with a direction after it, such as `4.2 m SL`.
"""

from typing import TypedDict

from builder.reading.values.amounts import Amount, amount_of, no_amount, read_amount
from builder.reading.values.faults import Fault, fault
from builder.reading.values.kinds import Directions, Kind
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import is_letter
from builder.reading.values.units import UnitBook

ELSEWHERE = {
    "sl": "",
    "sr": "",
    "us": "",
    "ds": "",
    "up": "",
    "down": "",
    "stage left": "",
    "stage right": "",
    "upstage": "",
    "downstage": "",
    "house left": "house left is stage right: write SR",
    "house right": "house right is stage left: write SL",
    "left": "say whose: SL is stage left, SR stage right",
    "right": "say whose: SL is stage left, SR stage right",
}
"""Directions of other kinds, and those that depend on where one stands, with what to write."""
GOES_ELSEWHERE = "goes '{words}', and {kind} is wanted here"
LIKE = "write it like {like}"
ALONE = "keep the direction alone, like {like}"
ADD = "{add}, like {like}"


class Directed(TypedDict):
    """A length, the sign of the direction after it (0 where there is none), and its words."""

    length: str
    sign: int
    words: str


def read_position(text: str, kind: Kind, book: UnitBook) -> Amount:
    """
    Metres in the direction that counts as positive.

    Any code of a length, and `direction-missing`.
    """
    directions = directions_of(kind)
    if text.lower() in directions["zero"]:
        return amount_of(0.0, 0.0, "")
    directed = directed_in(text, directions)
    if directed["sign"] == 0:
        wrong = elsewhere_fault(text, kind)
        if wrong is not None:
            return no_amount(wrong)
    amount = read_amount(directed["length"], kind, book)
    if amount["fault"] is not None:
        return amount
    if directed["sign"] == 0:
        return undirected(amount, kind, directions)
    if directed["length"].startswith("-"):
        advice = fill(ALONE, {"like": kind["like"]})
        return no_amount(fault("has a minus and a direction", "number-unreadable", advice))
    si = amount["si"] * directed["sign"] + 0.0
    return amount_of(si, amount["step_si"], amount["symbol"])


def directions_of(kind: Kind) -> Directions:
    """The directions of a kind; it has none where it is no position."""
    if "directions" in kind:
        return kind["directions"]
    return {"signs": {}, "add": "", "may_lack": True, "zero": []}


def undirected(amount: Amount, kind: Kind, directions: Directions) -> Amount:
    """A length without a direction, where the kind allows one."""
    if directions["may_lack"] or amount["si"] == 0:
        return amount
    advice = fill(ADD, {"add": directions["add"], "like": kind["like"]})
    return no_amount(fault("does not say which way", "direction-missing", advice))


def elsewhere_fault(text: str, kind: Kind) -> Fault | None:
    """What is wrong with a direction of another kind, or one that depends on where one stands."""
    for words in last_words(text):
        if words.lower() in ELSEWHERE:
            advice = ELSEWHERE[words.lower()]
            if advice == "":
                advice = fill(LIKE, {"like": kind["like"]})
            reason = fill(GOES_ELSEWHERE, {"words": words, "kind": kind["kind"]})
            return fault(reason, "direction-missing", advice)
    return None


def directed_in(text: str, directions: Directions) -> Directed:
    """A text's length and its direction."""
    for words in last_words(text):
        sign = directions["signs"].get(words.lower(), 0)
        if sign != 0:
            length = text.removesuffix(words).rstrip(" ")
            return {"length": length, "sign": sign, "words": words}
    return {"length": text, "sign": 0, "words": ""}


def last_words(text: str) -> list[str]:
    """The last two words and the last one, where they are letters only: `stage left`, `left`."""
    last = letters_before(text, len(text))
    if last == "":
        return []
    before = len(text) - len(last)
    if text[:before].endswith(" "):
        first = letters_before(text, before - 1)
        if first != "":
            return [f"{first} {last}", last]
    return [last]


def letters_before(text: str, end: int) -> str:
    """The letters that end at a place."""
    start = end
    while start > 0 and is_letter(text[start - 1]):
        start -= 1
    return text[start:end]
