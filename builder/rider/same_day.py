"""Which riders make one show day: each act by a name of its own, all on one date."""

from builder.fit.sentences import fill

SAME_NAME = "Two acts are called {names}; give each a name of its own."
SEVERAL_DATES = (
    "The acts play on several dates: {dates}. They make no show day, so no verdict is given on one;"
    " check each date by itself."
)


def same_name_words(names: list[str]) -> str:
    """
    What is wrong where two acts bear one name: their verdicts could not be told apart.

    Empty where all names differ. An act without a name is none of them.
    """
    twice = sorted({name for name in names if name != "" and names.count(name) > 1})
    return fill(SAME_NAME, {"names": ", ".join(twice)}) if len(twice) > 0 else ""


def several_dates_words(dates: list[str]) -> str:
    """
    What is wrong where acts play on different dates; empty where they do not.

    An act without a date goes with any.
    """
    found = sorted({date for date in dates if date != ""})
    return fill(SEVERAL_DATES, {"dates": ", ".join(found)}) if len(found) > 1 else ""
