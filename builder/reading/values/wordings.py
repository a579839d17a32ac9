"""The one or two ways in which a quantity is written: `60 ft (18.3 m)`, `60 ft / 18.3 m`."""

from typing import TypedDict

from builder.reading.values.amounts import LONGEST
from builder.reading.values.faults import Fault, empty_fault, fault
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import is_digit, is_letter, plain

BEFORE_SLASH = "%°'\""
"""What a unit ends with where it does not end with a letter."""
TOO_LONG = "is longer than {most} characters, too long for a quantity"


class Wordings(TypedDict):
    """The wordings in plain form; the second is empty where there is only one."""

    first: str
    second: str
    fault: Fault | None


def wordings(text: str) -> Wordings:
    """
    Part a text into its wordings. Codes: `empty-value`, `number-unreadable` for one too long.
    """
    if len(text) > 2 * LONGEST:
        reason = fill(TOO_LONG, {"most": str(2 * LONGEST)})
        return {"first": "", "second": "", "fault": fault(reason, "number-unreadable")}
    whole = plain(text)
    if whole == "":
        return {"first": "", "second": "", "fault": empty_fault()}
    bracket = bracket_place(whole)
    if bracket >= 0:
        first, second = whole[:bracket], whole[bracket + 1 : -1]
        return {"first": first.strip(" "), "second": second.strip(" "), "fault": None}
    slash = slash_place(whole)
    if slash >= 0:
        first, second = whole[:slash], whole[slash + 1 :]
        return {"first": first.strip(" "), "second": second.strip(" "), "fault": None}
    return {"first": whole, "second": "", "fault": None}


def bracket_place(text: str) -> int:
    """Where the bracket of a second wording opens that closes at the end; -1 where none does."""
    if not text.endswith(")"):
        return -1
    for at, char in enumerate(text):
        if char == "(" and begins_number(text[at + 1 :].lstrip(" ")):
            return at
    return -1


def slash_place(text: str) -> int:
    """
    Where a slash parts two wordings; -1 where none does.

    No number goes on across it: `60 ft / 18.3 m`, `60 ft/18.3 m`, but not `10 1/2"` or `kg/m2`.
    """
    for at, char in enumerate(text):
        if char == "/" and begins_number(text[at + 1 :].removeprefix(" ")):
            spaced = text[:at].endswith(" ") and text[at + 1 : at + 2] == " "
            if spaced or ends_unit(text[:at].removesuffix(" ")):
                return at
    return -1


def begins_number(text: str) -> bool:
    """Whether a text begins as a number does."""
    return text != "" and (is_digit(text[0]) or text[0] == "-" or text[0] == ".")


def ends_unit(text: str) -> bool:
    """Whether a text ends as a unit does."""
    return text != "" and (is_letter(text[-1]) or BEFORE_SLASH.find(text[-1]) >= 0)
