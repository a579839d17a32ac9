"""
Times of a show's day, in seconds from midnight, and the days of the week that words name.
"""

from builder.reading.values.days import WEEKDAYS

DAYS = [day.lower() for day in WEEKDAYS]
EVERY_DAY = ("every day", "daily", "always")
DAY_S = 86400.0
DAY_BEGINS_S = 21600.0


def of_the_show(time_s: float) -> float:
    """
    A time on the show's own day: what ends before six in the morning belongs to the evening before.
    """
    return time_s + DAY_S if time_s < DAY_BEGINS_S else time_s


def known_time(time_s: float | None) -> float:
    """
    A time that is known to be there.

    Raises
    ------
    ValueError
        If it is not: whoever asks must have looked before.
    """
    if time_s is None:
        raise ValueError("a time that was taken to be known is not stated")
    return time_s


def or_none(time_s: float | None) -> float:
    """A length, or nothing where nobody states it."""
    return time_s if time_s is not None else 0.0


def holds_on(text: str, day: str) -> str:
    """Whether words such as "Sunday to Thursday" name a day: yes, no, or unclear."""
    words = [word for word in text.lower().replace(",", " ").split(" ") if word != ""]
    if " ".join(words) in EVERY_DAY:
        return "yes"
    if len(words) == 3 and words[1] == "to" and words[0] in DAYS and words[2] in DAYS:
        return "yes" if lies_between(words[0], words[2], day) else "no"
    for word in words:
        if word != "and" and word not in DAYS:
            return "unclear"
    return "yes" if day in words else "no"


def lies_between(first_day: str, last_day: str, day: str) -> bool:
    """Whether a day is one of those from one to another, over the end of the week too."""
    first, last, asked_for = DAYS.index(first_day), DAYS.index(last_day), DAYS.index(day)
    if first <= last:
        return first <= asked_for <= last
    return asked_for >= first or asked_for <= last


def holds_today(text: str, day: str) -> str:
    """
    The same where the day may not be named: then yes only for words that name every day, else
    unclear.
    """
    if day != "":
        return holds_on(text, day)
    return "yes" if all(holds_on(text, each) == "yes" for each in DAYS) else "unclear"
