"""
Numbers as people write them: `2,000`, `10 1/2`, `-0.3`, `½`. Exact, in linear time, and never
guessed at.
"""

from typing import TypedDict

from builder.formulas.primitives import Ratio, ratio_sum
from builder.reading.values.faults import Fault, fault
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import DIGITS, is_digit, is_letter, run_of

MOST_DIGITS = 15
LARGEST_EXPONENT = 15
NOT_FINITE = ("nan", "inf", "infinity")
TOO_MANY = "has more than {most} digits"
TOO_LARGE = "has an exponent beyond {most}"
WRITTEN_SO = "write '{words}'"


class Numeral(TypedDict):
    """
    A number exactly as written, the step of its last digit (`18.30` has a step of 0.01, a fraction
    that of its denominator), how many characters it takes, and what is wrong with it.
    """

    value: Ratio
    step: Ratio
    size: int
    fault: Fault | None


class Leading(TypedDict):
    """The number at the front of a text, and the rest without leading space."""

    value: Ratio
    step: Ratio
    rest: str
    fault: Fault | None


def ratio(top: str, bottom: str) -> Ratio:
    """A fraction of two numbers in digits."""
    return {"top": top, "bottom": bottom}


def numeral(value: Ratio, step: Ratio, size: int) -> Numeral:
    """A number that was read."""
    return {"value": value, "step": step, "size": size, "fault": None}


def no_numeral(wrong: Fault) -> Numeral:
    """A number that cannot be read."""
    return {"value": ratio("0", "1"), "step": ratio("0", "1"), "size": 0, "fault": wrong}


def no_leading(wrong: Fault) -> Leading:
    """A text whose number cannot be read."""
    return {"value": ratio("0", "1"), "step": ratio("0", "1"), "rest": "", "fault": wrong}


def leading_numeral(text: str) -> Leading:
    """
    The number at the front of plain text, its sign included.

    Codes: `number-unreadable`, `number-out-of-range`.
    """
    if begins_not_finite(text):
        advice = "write the number, or `unknown` if nobody knows it yet"
        return no_leading(fault("is not a finite number", "number-out-of-range", advice))
    body = text.removeprefix("-")
    number = fraction_at(body)
    if number is None:
        number = decimal_at(body)
    wrong = number["fault"]
    if wrong is None:
        wrong = spaced_fault(body)
    if wrong is not None:
        return no_leading(wrong)
    value = number["value"]
    if text.startswith("-"):
        value = ratio(f"-{value['top']}", value["bottom"])
    rest = body[number["size"] :].lstrip(" ")
    return {"value": value, "step": number["step"], "rest": rest, "fault": None}


def begins_not_finite(text: str) -> bool:
    """Whether a text begins with a word for what is no finite number."""
    body = text[1:] if text[:1] in ("+", "-") else text
    small = body.removeprefix(".").lower()
    return any(begins_with_word(small, word) for word in NOT_FINITE)


def begins_with_word(text: str, word: str) -> bool:
    """Whether a text begins with a word, and not with a longer one."""
    if not text.startswith(word):
        return False
    behind = text[len(word) : len(word) + 1]
    return not (is_letter(behind) or is_digit(behind) or behind == "_")


def fraction_at(body: str) -> Numeral | None:
    """The fraction at the front, such as `1/2` or `10 1/2`; None where there is none."""
    whole = run_of(body, 0, DIGITS)
    at = len(whole)
    top = whole
    if body[at : at + 1] in (" ", "-"):
        top = run_of(body, at + 1, DIGITS)
        at += 1 + len(top)
    else:
        whole = ""
    bottom = run_of(body, at + 1, DIGITS)
    if whole == "" and at != len(top):
        return None
    if top == "" or bottom == "" or body[at : at + 1] != "/":
        return None
    return fraction_of(whole, top, bottom, at + 1 + len(bottom))


def fraction_of(whole: str, top: str, bottom: str, size: int) -> Numeral:
    """The number of a fraction's digits."""
    if max(len(whole), len(top), len(bottom)) > MOST_DIGITS:
        return no_numeral(too_many_digits())
    under = int(bottom)
    if under == 0:
        return no_numeral(fault("divides by zero", "number-unreadable"))
    over = int(top)
    if whole == "":
        return numeral(ratio(str(over), str(under)), ratio("1", str(under)), size)
    value = ratio_sum(ratio(str(int(whole)), "1"), ratio(str(over), str(under)))
    return numeral(value, ratio("1", str(under)), size)


def too_many_digits() -> Fault:
    """The fault of a number with more digits than anybody measures."""
    reason = fill(TOO_MANY, {"most": str(MOST_DIGITS)})
    return fault(reason, "number-out-of-range", "round it to what was measured")


def decimal_at(body: str) -> Numeral:
    """The decimal number at the front, such as `2,000`, `.5` or `1e3`."""
    whole = run_of(body, 0, f"{DIGITS},") if is_digit(body[0:1]) else ""
    part = decimals_at(body, len(whole))
    if whole == "" and part == "":
        return no_numeral(fault("does not start with a number", "number-unreadable"))
    size = len(whole) + len(part)
    power = power_at(body, size)
    size += len(power)
    if whole.find(",") >= 0:
        wrong = comma_fault(whole, part, body[size:])
        if wrong is not None:
            return no_numeral(wrong)
        whole = whole.replace(",", "")
    digits = f"{whole if whole != '' else '0'}{part[1:]}"
    if len(digits) > MOST_DIGITS:
        return no_numeral(too_many_digits())
    return scaled(digits, len(part[1:]), power, size)


def decimals_at(body: str, at: int) -> str:
    """A point and the digits behind it, or nothing."""
    digits = run_of(body, at + 1, DIGITS)
    return f".{digits}" if body[at : at + 1] == "." and digits != "" else ""


def power_at(body: str, at: int) -> str:
    """The power of ten at a place, such as `e-3`, or nothing."""
    if body[at : at + 1] not in ("e", "E"):
        return ""
    sign = body[at + 1 : at + 2]
    signs = 1 if sign in ("+", "-") else 0
    digits = run_of(body, at + 1 + signs, DIGITS)
    return body[at : at + 1 + signs + len(digits)] if digits != "" else ""


def scaled(digits: str, decimals: int, power: str, size: int) -> Numeral:
    """A number of so many decimals, times a power of ten."""
    exponent = run_of(power.lstrip("eE+-"), 0, DIGITS).lstrip("0")
    if len(exponent) > 2 or (exponent != "" and int(exponent) > LARGEST_EXPONENT):
        reason = fill(TOO_LARGE, {"most": str(LARGEST_EXPONENT)})
        advice = "write the number in full, in a fitting unit"
        return no_numeral(fault(reason, "number-out-of-range", advice))
    shift = int(exponent) if exponent != "" else 0
    if power.find("-") >= 0:
        shift = -shift
    shift -= decimals
    if shift >= 0:
        zeros = "0" * shift
        return numeral(ratio(f"{digits}{zeros}", "1"), ratio(f"1{zeros}", "1"), size)
    under = f"1{'0' * -shift}"
    return numeral(ratio(digits, under), ratio("1", under), size)


def comma_fault(whole: str, part: str, rest: str) -> Fault | None:
    """
    What is wrong with a comma that parts no thousands.

    A decimal comma could be meant, or a slip in the thousands: the two differ a thousandfold, so
    the author decides.
    """
    groups = whole.split(",")
    first = groups[0]
    if first[0] != "0" and len(first) <= 3 and all(len(group) == 3 for group in groups[1:]):
        return None
    advice = "write it without commas"
    if len(groups) == 2 and part == "" and groups[1] != "":
        advice = fill(WRITTEN_SO, {"words": f"{first}.{groups[1]}{rest}"})
    reason = "has a comma that does not separate thousands"
    return fault(reason, "number-unreadable", advice)


def spaced_fault(body: str) -> Fault | None:
    """What is wrong with a number whose thousands are parted by spaces: `1 000`."""
    first = run_of(body, 0, DIGITS)
    end = 0
    at = len(first)
    if at == 0 or at > 3:
        return None
    while body[at : at + 1] == " ":
        group = run_of(body, at + 1, DIGITS)
        if len(group) != 3:
            break
        at += 4
        end = at
    if end == 0:
        return None
    words = f"{body[:end].replace(' ', ',')}{body[end:]}"
    advice = fill(WRITTEN_SO, {"words": words})
    return fault("has a space inside the number", "number-unreadable", advice)
