"""A time of day, on the 24-hour clock or with am and pm."""

from builder.reading.values.amounts import Amount, amount_of, no_amount
from builder.reading.values.faults import fault
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import DIGITS, run_of

DAY_MIN = 24 * 60
NO_HOUR = "has hour {hour} with am or pm"


def read_time(text: str) -> Amount:
    """
    Seconds after midnight; 24:00 is the end of the day.

    Codes: `number-unreadable`, `number-out-of-range`.
    """
    hour = run_of(text, 0, DIGITS)
    rest = text[len(hour) :]
    minute = ""
    if rest.startswith(":"):
        minute = run_of(rest, 1, DIGITS)
        rest = rest[1 + len(minute) :]
        if len(minute) != 2:
            return no_time()
    half = half_of_day(rest.removeprefix(" "))
    if len(hour) not in (1, 2) or half == "?" or rest == " ":
        return no_time()
    if minute == "" and half == "":
        return no_time()
    hours = int(hour)
    if half != "" and not 1 <= hours <= 12:
        reason = fill(NO_HOUR, {"hour": str(hours)})
        return no_amount(fault(reason, "number-out-of-range"))
    minutes = int(minute) if minute != "" else 0
    after_midnight_min = 60 * hour_of_day(hours, half) + minutes
    if minutes > 59 or after_midnight_min > DAY_MIN:
        return no_amount(fault("is not on the clock", "number-out-of-range"))
    return amount_of(60.0 * after_midnight_min, 0.0, "")


def no_time() -> Amount:
    """What is no time of day."""
    return no_amount(fault("is not a time of day", "number-unreadable"))


def half_of_day(words: str) -> str:
    """`a` or `p` for am or pm, nothing where neither is written, `?` for other words."""
    if words == "":
        return ""
    small = words.lower()
    if small in ("am", "a.m", "am.", "a.m."):
        return "a"
    return "p" if small in ("pm", "p.m", "pm.", "p.m.") else "?"


def hour_of_day(hour: int, half: str) -> int:
    """The hour on the 24-hour clock."""
    if half == "":
        return hour
    return hour % 12 + (12 if half == "p" else 0)
