"""
Numbers in words, in both unit systems, by integer arithmetic, so that two languages print the same.
"""

from math import floor

FOOT_M = 0.3048
POUND_KG = 0.45359237
PSF_PA = 47.88025898033584
SQUARE_FOOT_M2 = 0.09290304
LESS = "less than "
LARGEST = 100000000000.0
LARGEST_WORDS = "100,000,000,000"
NEXT_DAY = " the next day"


def digits(number: float, places: int) -> str:
    """
    A number with commas between thousands and this many digits after the point, halves away from
    zero; what no show needs is only called large.
    """
    if abs(number) >= LARGEST:
        return f"{minus(number < 0)}over {LARGEST_WORDS}"
    scale = 1
    for _ in range(places):
        scale = scale * 10
    scaled = floor(abs(number) * scale + 0.5)
    whole = scaled // scale
    text = grouped(str(whole))
    if places > 0:
        text = f"{text}.{padded(str(scaled - whole * scale), places)}"
    return minus(number < 0 and scaled > 0) + text


def minus(below_zero: bool) -> str:
    """The sign of a number as it is printed."""
    return "-" if below_zero else ""


def grouped(text: str) -> str:
    """Digits with commas between thousands."""
    out = ""
    for index in range(len(text)):
        if index > 0 and (len(text) - index) % 3 == 0:
            out = out + ","
        out = out + text[index]
    return out


def padded(text: str, width: int) -> str:
    """Digits with zeros in front, to a width."""
    out = text
    while len(out) < width:
        out = "0" + out
    return out


def significant(number: float) -> str:
    """A number with two decimals where it is small, and none where it is large."""
    if abs(number) >= 100:
        return digits(number, 0)
    if abs(number) >= 10:
        return digits(number, 1)
    return digits(number, 2)


def metres(value_m: float) -> str:
    """
    A length in metres, below one metre in millimetres.

    What would print as nothing but is something is less than 1 mm.
    """
    millimetres = floor(abs(value_m) * 1000 + 0.5)
    if millimetres == 0 and value_m != 0:
        return LESS + "1 mm"
    if 0 < millimetres < 1000:
        return f"{digits(value_m * 1000, 0)} mm"
    return f"{digits(value_m, 2)} m"


def feet(value_m: float) -> str:
    """
    A length in feet and inches, to the half inch.

    What would print as nothing but is something is less than that.
    """
    if abs(value_m) >= LARGEST:
        return f"{digits(value_m, 0)} ft"
    halves = floor(abs(value_m) / FOOT_M * 24 + 0.5)
    if halves == 0 and value_m != 0:
        return LESS + '1/2"'
    whole = halves // 24
    rest = halves - whole * 24
    inches = rest // 2
    sign = minus(value_m < 0 and halves > 0)
    half = "1/2" if rest - inches * 2 == 1 else ""
    if whole == 0 and inches == 0 and half != "":
        return f'{sign}{half}"'
    whole_inches = f"{inches} {half}" if half != "" else str(inches)
    if whole > 0:
        return f"{sign}{grouped(str(whole))}'-{whole_inches}\""
    return f'{sign}{whole_inches}"'


def clock(value_s: float) -> str:
    """A time of day, the next day's hours after 24:00 included."""
    if value_s >= LARGEST:
        return f"{digits(value_s, 0)} s"
    minutes = floor(value_s / 60 + 0.5)
    hours = minutes // 60
    minute = padded(str(minutes - hours * 60), 2)
    if hours >= 24:
        return f"{padded(str(hours - 24), 2)}:{minute}{NEXT_DAY}"
    return f"{padded(str(hours), 2)}:{minute}"


def span(value_s: float) -> str:
    """A length of time: minutes below two hours, hours below two days, else days."""
    size = abs(value_s)
    if size < 7200:
        return f"{tenths_of(value_s / 60)} min"
    if size < 172800:
        return f"{tenths_of(value_s / 3600)} h"
    return f"{tenths_of(value_s / 86400)} days"


def lasting(value_s: float) -> str:
    """
    A length of time on one day, to the tenth of a minute: minutes up to two hours, then hours and
    minutes.
    """
    if abs(value_s) >= LARGEST:
        return f"{digits(value_s, 0)} s"
    tenths = floor(abs(value_s) / 6 + 0.5)
    if tenths < 1200:
        return f"{tenths_of(tenths / 10)} min"
    hours = tenths // 600
    rest = tenths - hours * 600
    if rest == 0:
        return f"{grouped(str(hours))} h"
    return f"{grouped(str(hours))} h {tenths_of(rest / 10)} min"


def tenths_of(number: float) -> str:
    """A number to one decimal, without a zero at its end."""
    return digits(number, 1).removesuffix(".0")


def both(kind: str, value: float) -> list[str]:
    """
    A value of a kind in metric and in imperial words; the second is empty where a kind has one
    system.
    """
    if kind == "length":
        return [metres(value), feet(value)]
    if kind == "mass":
        return [f"{significant(value)} kg", f"{significant(value / POUND_KG)} lb"]
    if kind == "load":
        return [f"{digits(value / 1000, 2)} kPa", f"{significant(value / PSF_PA)} psf"]
    if kind == "area":
        return [f"{significant(value)} m²", f"{significant(value / SQUARE_FOOT_M2)} sq ft"]
    if kind == "current":
        return [f"{significant(value)} A", ""]
    if kind == "level":
        return [f"{digits(value, 1)} dB", ""]
    if kind == "duration":
        return [span(value), ""]
    if kind == "share":
        return [f"{tenths_of(value * 100)} %", ""]
    if kind == "temperature":
        return [f"{tenths_of(value)} K", ""]
    if kind == "data rate":
        return [f"{tenths_of(value / 1000000)} Mbit/s", ""]
    return [digits(value, 0), ""]
