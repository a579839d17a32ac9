"""
Whether the date of a show lies within a time that comes back: days of the week, parts of the year.

What begins at some time of the day leaves the hours before it, so that is asked.
"""

from builder.fit.closed.dates import Holds
from builder.fit.closed.sentences import (
    REGULARLY,
    REGULARLY_BEGINS,
    REGULARLY_DAYS,
    REGULARLY_ENDS,
    REGULARLY_FROM,
    REGULARLY_MONTHS,
)
from builder.fit.records import Item
from builder.fit.sentences import fill
from builder.fit.values import parts_of, text_of
from builder.reading.values.days import weekday_on

EVERY_DAY = "every day"
MONTHS = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
]


def regular_on(regular: Item, date: str) -> Holds:
    """Whether something that comes back takes in a date."""
    days = parts_of(regular, "days")
    if len(days) > 0 and EVERY_DAY not in days and weekday_on(date) not in days:
        return "no"
    within = months_hold(regular, int(date[5:7]) - 1)
    if within == "yes" and (text_of(regular, "from") != "" or is_unknown(regular, "days")):
        return "perhaps"
    return within


def is_unknown(regular: Item, name: str) -> bool:
    """Whether the house says that it does not know a value."""
    return name in regular["values"] and regular["values"][name]["standing"] == "unknown"


def months_hold(regular: Item, month: int) -> Holds:
    """Whether a month, January as 0, lies within those of something that comes back."""
    if is_unknown(regular, "first_month") or is_unknown(regular, "last_month"):
        return "perhaps"
    if text_of(regular, "first_month") == "":
        return "yes"
    first = MONTHS.index(text_of(regular, "first_month"))
    last = MONTHS.index(text_of(regular, "last_month"))
    long = (last - first) % 12
    after = (month - first) % 12
    if after > long:
        return "no"
    if after == 0 and text_of(regular, "begins") != "":
        return "perhaps"
    if after == long and text_of(regular, "ends") != "":
        return "perhaps"
    return "yes"


def regular_words(regular: Item) -> str:
    """Something that comes back, in a sentence."""
    days = parts_of(regular, "days")
    parts = {
        "what": regular["name"],
        "days": "" if len(days) == 0 else fill(REGULARLY_DAYS, {"days": ", ".join(days)}),
        "from": one_of(regular, "from", REGULARLY_FROM),
        "months": month_words(regular),
    }
    return fill(REGULARLY, parts)


def month_words(regular: Item) -> str:
    """The months of something that comes back, with when in them it begins and ends."""
    if text_of(regular, "first_month") == "" or text_of(regular, "last_month") == "":
        return ""
    parts = {
        "first": text_of(regular, "first_month"),
        "begins": one_of(regular, "begins", REGULARLY_BEGINS),
        "last": text_of(regular, "last_month"),
        "ends": one_of(regular, "ends", REGULARLY_ENDS),
    }
    return fill(REGULARLY_MONTHS, parts)


def one_of(regular: Item, name: str, template: str) -> str:
    """A value in words, or nothing where it is not written."""
    text = text_of(regular, name)
    return "" if text == "" else fill(template, {"text": text.removesuffix(".")})
