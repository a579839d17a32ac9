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


def digits(number: float, places: int) -> str:
    """
    A number with commas between thousands and this many digits after the point, halves away from
    zero; what no show needs is only called large.
    """
    if abs(number) >= LARGEST:
        return "-over " + LARGEST_WORDS if number < 0 else "over " + LARGEST_WORDS
    scale = 10**places
    scaled = floor(abs(number) * scale + 0.5)
    whole = scaled // scale
    text = grouped(str(whole))
    if places > 0:
        text = text + "." + padded(str(scaled - whole * scale), places)
    return "-" + text if number < 0 and scaled > 0 else text


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


def fitting(number: float) -> int:
    """Three digits for a small number, whole ones for a large."""
    return 0 if abs(number) >= 100 else 1 if abs(number) >= 10 else 2


def metres(value_m: float) -> str:
    """
    A length in metres, below one metre in millimetres.

    What would print as nothing but is something is less than 1 mm.
    """
    millimetres = floor(abs(value_m) * 1000 + 0.5)
    if millimetres == 0 and value_m != 0:
        return LESS + "1 mm"
    if 0 < millimetres < 1000:
        return digits(value_m * 1000, 0) + " mm"
    return digits(value_m, 2) + " m"


def feet(value_m: float) -> str:
    """
    A length in feet and inches, to the half inch.

    What would print as nothing but is something is less than that.
    """
    if abs(value_m) >= LARGEST:
        return digits(value_m, 0) + " ft"
    halves = floor(abs(value_m) / FOOT_M * 24 + 0.5)
    if halves == 0 and value_m != 0:
        return LESS + '1/2"'
    whole = halves // 24
    rest = halves - whole * 24
    inches = rest // 2
    sign = "-" if value_m < 0 and halves > 0 else ""
    half = " 1/2" if rest - inches * 2 == 1 else ""
    if whole > 0:
        return sign + grouped(str(whole)) + "'-" + str(inches) + half + '"'
    if inches == 0 and half != "":
        return sign + '1/2"'
    return sign + str(inches) + half + '"'


def clock(value_s: float) -> str:
    """A time of day, the next day's hours after 24:00 included."""
    if value_s >= LARGEST:
        return digits(value_s, 0) + " s"
    minutes = floor(value_s / 60 + 0.5)
    hours = minutes // 60
    later = ""
    if hours >= 24:
        hours = hours - 24
        later = " the next day"
    return padded(str(hours), 2) + ":" + padded(str(minutes - minutes // 60 * 60), 2) + later


def span(value_s: float) -> str:
    """A length of time: minutes below two hours, hours below two days, else days."""
    size = abs(value_s)
    if size < 7200:
        return trimmed(digits(value_s / 60, 1)) + " min"
    if size < 172800:
        return trimmed(digits(value_s / 3600, 1)) + " h"
    return trimmed(digits(value_s / 86400, 1)) + " days"


def lasting(value_s: float) -> str:
    """
    A length of time on one day, to the tenth of a minute: minutes up to two hours, then hours and
    minutes.
    """
    if abs(value_s) >= LARGEST:
        return digits(value_s, 0) + " s"
    tenths = floor(abs(value_s) / 6 + 0.5)
    if tenths < 1200:
        return trimmed(digits(tenths / 10, 1)) + " min"
    hours = tenths // 600
    rest = tenths - hours * 600
    return (
        grouped(str(hours))
        + " h"
        + ("" if rest == 0 else " " + trimmed(digits(rest / 10, 1)) + " min")
    )


def trimmed(text: str) -> str:
    """A number without a zero at the end of its decimals."""
    return text[: len(text) - 2] if text[-2:] == ".0" else text


def both(kind: str, value: float) -> list[str]:
    """
    A value of a kind in metric and in imperial words; the second is empty where a kind has one
    system.
    """
    if kind == "length":
        return [metres(value), feet(value)]
    if kind == "mass":
        return [
            digits(value, fitting(value)) + " kg",
            digits(value / POUND_KG, fitting(value / POUND_KG)) + " lb",
        ]
    if kind == "load":
        return [
            digits(value / 1000, 2) + " kPa",
            digits(value / PSF_PA, fitting(value / PSF_PA)) + " psf",
        ]
    if kind == "area":
        return [
            digits(value, fitting(value)) + " m²",
            digits(value / SQUARE_FOOT_M2, fitting(value / SQUARE_FOOT_M2)) + " sq ft",
        ]
    if kind == "current":
        return [digits(value, fitting(value)) + " A", ""]
    if kind == "level":
        return [digits(value, 1) + " dB", ""]
    if kind == "duration":
        return [span(value), ""]
    return [digits(value, 0), ""]
