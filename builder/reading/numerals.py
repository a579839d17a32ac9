"""
Numbers as people write them: `2,000`, `10 1/2`, `-0.3`, `½`. Exact, in linear time, and never
guessed at.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

MOST_DIGITS = 15
LARGEST_EXPONENT = 15
LONGEST = 120

_NUMERAL = re.compile(r"(?P<whole>[0-9][0-9,]*)?(?P<part>\.[0-9]+)?(?P<power>[eE][+-]?[0-9]+)?")
_FRACTION = re.compile(r"(?:(?P<whole>[0-9]+)[ -])?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)")
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}(,[0-9]{3})+")
_SPACED_THOUSANDS = re.compile(r"-?[0-9]{1,3}( [0-9]{3})+(?![0-9])")
_NOT_FINITE = re.compile(r"[+-]?\.?(nan|inf|infinity)\b", re.IGNORECASE)
_VULGAR = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
_SIGNS = str.maketrans(
    {"′": "'", "’": "'", "″": '"', "”": '"', "“": '"', "−": "-", "²": "2", "³": "3"}
)


class Unreadable(ValueError):
    """
    A value that cannot be read: the reason follows the value in a sentence, the advice says how to
    go on.
    """

    def __init__(self, reason: str, code: str, advice: str = "") -> None:
        super().__init__(f"{reason}; {advice}" if advice else reason)
        self.reason, self.code, self.advice = reason, code, advice


@dataclass(frozen=True, slots=True)
class Numeral:
    """
    A number exactly as written, and the step of its last digit (`18.30` has a step of 0.01; a
    fraction that of its denominator).
    """

    value: Fraction
    step: Fraction


def folded(text: str) -> str:
    """The text with every run of white space as one space, and none at the ends."""
    return " ".join(text.split())


def plain(text: str) -> str:
    """
    Folded text with typographic primes, minus, raised digits and vulgar fractions in their keyboard
    form.
    """
    if text.isascii():
        return folded(text).replace("''", '"')
    for sign, spelled in _VULGAR.items():
        if sign in text:
            text = re.sub(f"(?<=[0-9]){sign}", f" {spelled}", text).replace(sign, spelled)
    return folded(text.translate(_SIGNS)).replace("''", '"')


def leading_numeral(text: str) -> tuple[Numeral, str]:
    """
    The number at the front of plain text, and the rest without leading space. The sign is read as
    well.

    Raises
    ------
    Unreadable
        `number-unreadable` or `number-out-of-range`.
    """
    if _NOT_FINITE.match(text):
        raise Unreadable(
            "is not a finite number",
            "number-out-of-range",
            "write the number, or `unknown` if nobody knows it yet",
        )
    negative = text.startswith("-")
    body = text[1:] if negative else text
    found, end = _fraction(body) or _decimal(body)
    if spaced := _SPACED_THOUSANDS.match(body):
        raise Unreadable(
            "has a space inside the number",
            "number-unreadable",
            f"write '{spaced[0].replace(' ', ',')}{body[spaced.end() :]}'",
        )
    return Numeral(-found.value if negative else found.value, found.step), body[end:].lstrip()


def _fraction(body: str) -> tuple[Numeral, int] | None:
    match = _FRACTION.match(body)
    if match is None:
        return None
    bottom = _whole(match["bottom"])
    if bottom == 0:
        raise Unreadable("divides by zero", "number-unreadable")
    return (
        Numeral(
            _whole(match["whole"] or "0") + Fraction(_whole(match["top"]), bottom),
            Fraction(1, bottom),
        ),
        match.end(),
    )


def _whole(digits: str) -> int:
    if len(digits) > MOST_DIGITS:
        raise Unreadable(
            f"has more than {MOST_DIGITS} digits",
            "number-out-of-range",
            "round it to what was measured",
        )
    return int(digits)


def _decimal(body: str) -> tuple[Numeral, int]:
    match = _NUMERAL.match(body)
    if match is None or not (match["whole"] or match["part"]):
        raise Unreadable("does not start with a number", "number-unreadable")
    whole, part = match["whole"] or "0", match["part"] or ""
    if "," in whole:
        whole = _without_commas(whole, part, body[match.end() :])
    digits = _whole(whole + part[1:])
    power = _exponent(match["power"] or "") - len(part[1:])
    if power >= 0:
        return Numeral(Fraction(digits * 10**power), Fraction(10**power)), match.end()
    return Numeral(Fraction(digits, 10**-power), Fraction(1, 10**-power)), match.end()


def _without_commas(whole: str, part: str, rest: str) -> str:
    if _THOUSANDS.fullmatch(whole):
        return whole.replace(",", "")
    # A decimal comma could be meant, or a slip in the thousands: the two differ a thousandfold, so
    # the author decides.
    advice = (
        f"write '{whole.replace(',', '.')}{rest}'"
        if whole.count(",") == 1 and not part and whole[-1] != ","
        else "write it without commas"
    )
    raise Unreadable("has a comma that does not separate thousands", "number-unreadable", advice)


def _exponent(power: str) -> int:
    digits = power[1:].lstrip("+-").lstrip("0") or "0"
    if len(digits) > 2 or int(digits) > LARGEST_EXPONENT:
        raise Unreadable(
            f"has an exponent beyond {LARGEST_EXPONENT}",
            "number-out-of-range",
            "write the number in full, in a fitting unit",
        )
    return -int(digits) if "-" in power else int(digits)
