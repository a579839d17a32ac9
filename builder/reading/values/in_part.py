"""
The forms in which somebody writes what is known of a value in part: `about 40 ft`, `12 to 15 m`.

A form is parted from its values here, and each value is then read as it would be by itself. A
number without a unit takes that of the last one: `12 to 15 m` is 12 m to 15 m.
"""

from typing import Literal, TypedDict

from builder.reading.values.amounts import LONGEST
from builder.reading.values.faults import Fault, fault
from builder.reading.values.numerals import leading_numeral
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import plain
from builder.reading.values.wordings import bracket_place

Manner = Literal[
    "exact", "about", "within", "range", "at least", "at most", "set from", "set to", "disputed"
]
"""
How a value is known. `range` lies between two ends and nobody knows where; `set from` and `set to`
can be chosen. `disputed` is never written in one text.
"""
TOLERANCES = (" +- ", " +/- ", " ± ", "+-", "+/-", "±")
NEAR = {
    "between ": "write it like '12 to 15 m'",
    "from ": "write it like '12 to 15 m', or 'set from 0.9 m to 1.4 m' where it can be chosen",
    "approx": "write it like 'about 40 ft'",
    "ca.": "write it like 'about 40 ft'",
    "ca ": "write it like 'about 40 ft'",
    "circa ": "write it like 'about 40 ft'",
    "min": "write it like 'at least 15 m'",
    "max": "write it like 'up to 15 m'",
    ">": "write it like 'at least 15 m'",
    "<": "write it like 'up to 15 m'",
}
"""What people write for these forms elsewhere, and what to write here."""
OTHER_FORM = "is known in part, in a form that is not read here"
ABOUT_AND_OFF = "says 'about' and how far it may be off"
EITHER = (
    "write it like 'set to 4 m or 5 m' where it can be chosen, or '4 m to 5 m' where nobody knows"
)
NO_END = "has nothing after '{word}'"
LIKE = "write it like '12 to 15 m', 'about 40 ft', 'at least 15 m' or 'set from 0.9 m to 1.4 m'"
TOO_MANY_ENDS = "has more than two ends"


class InPart(TypedDict):
    """
    A text's form and its values, each with its unit: two ends of a range, the value and what it may
    be off by, or one alone.
    """

    manner: Manner
    values: list[str]
    fault: Fault | None


def parted(text: str) -> InPart:
    """The form of a text and its values. Code: `known-unclear`."""
    if len(text) > 2 * LONGEST:
        return in_form("exact", [text])
    whole = plain(text)
    lower = whole.lower()
    if lower.startswith("set from "):
        return two_ends("set from", whole[len("set from ") :])
    if lower.startswith("set to "):
        return in_form("set to", borrowing(settings_in(whole[len("set to ") :])))
    for word in ("about ", "~"):
        if lower.startswith(word):
            return near_a_value(whole[len(word) :])
    if lower.startswith("at least "):
        return one_value("at least", whole[len("at least ") :])
    for word in ("at most ", "up to "):
        if lower.startswith(word):
            return one_value("at most", whole[len(word) :])
    for sign in TOLERANCES:
        at = whole.find(sign)
        if at > 0:
            return in_form("within", borrowing([whole[:at], whole[at + len(sign) :]]))
    if lower.find(" to ") > 0:
        return two_ends("range", whole)
    return near_form(text, lower)


def near_form(text: str, lower: str) -> InPart:
    """An exact value, or the fault of a form that people write elsewhere."""
    if lower.find("–") > 0:
        return unclear(OTHER_FORM, NEAR["between "])
    at = lower.find(" or ")
    if at > 0 and starts_with_number(lower) and starts_with_number(lower[at + len(" or ") :]):
        return unclear(OTHER_FORM, EITHER)
    if lower.endswith("+"):
        return unclear(OTHER_FORM, NEAR["min"])
    for word in NEAR:
        if lower.startswith(word):
            return unclear(OTHER_FORM, NEAR[word])
    return in_form("exact", [text])


def starts_with_number(text: str) -> bool:
    """Whether a text begins with a number."""
    return leading_numeral(text)["fault"] is None


def near_a_value(text: str) -> InPart:
    """What is said to be about a value, which cannot say how far off it is as well."""
    for sign in TOLERANCES:
        if text.find(sign) > 0:
            return unclear(ABOUT_AND_OFF, "write it without 'about', like '40 ft +- 1 ft'")
    return one_value("about", text)


def in_form(manner: Manner, values: list[str]) -> InPart:
    """A form with its values; one of them empty is a fault."""
    stripped = [value.strip(" ") for value in values]
    if manner != "exact" and any(value == "" for value in stripped):
        return unclear(fill(NO_END, {"word": manner}))
    return {"manner": manner, "values": stripped, "fault": None}


def unclear(reason: str, advice: str = LIKE) -> InPart:
    """A form that does not tell what is meant."""
    return {"manner": "exact", "values": [], "fault": fault(reason, "known-unclear", advice)}


def one_value(manner: Manner, text: str) -> InPart:
    """A form with one value."""
    return in_form(manner, [text])


def two_ends(manner: Manner, text: str) -> InPart:
    """A form with two ends; a second wording of both in brackets goes to each."""
    at = bracket_place(text)
    second = text[at + 1 : -1] if at >= 0 else ""
    if second.find(" to ") < 0:
        return ends_of_one(manner, text)
    first_ends = ends_of_one(manner, text[:at])
    second_ends = ends_of_one(manner, second)
    if first_ends["fault"] is not None or second_ends["fault"] is not None:
        return first_ends if first_ends["fault"] is not None else second_ends
    values = [
        f"{end} ({second_ends['values'][number]})"
        for number, end in enumerate(first_ends["values"])
    ]
    return in_form(manner, values)


def ends_of_one(manner: Manner, text: str) -> InPart:
    """A form with two ends in one wording."""
    ends = text.split(" to ")
    if len(ends) > 2:
        return unclear(TOO_MANY_ENDS)
    if len(ends) < 2:
        return unclear(fill(NO_END, {"word": "from ... to"}))
    return in_form(manner, borrowing(ends))


def settings_in(text: str) -> list[str]:
    """The settings of a list such as `4 ft, 5 ft or 6 ft`."""
    return text.replace(" or ", ", ").split(", ")


def borrowing(values: list[str]) -> list[str]:
    """The values; each that is a bare number has the unit of the last one."""
    unit = leading_numeral(values[-1].strip(" "))["rest"]
    return [with_unit(value.strip(" "), unit) for value in values]


def with_unit(value: str, unit: str) -> str:
    """A value with a unit behind it, where it is a number and has none."""
    number = leading_numeral(value)
    if unit == "" or number["fault"] is not None or number["rest"] != "":
        return value
    return f"{value} {unit}"
