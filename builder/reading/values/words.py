"""Values in plain words: names and notes, counts, yes and no."""

from typing import TypedDict

from builder.formulas.primitives import Ratio, ratio_float, ratio_product
from builder.reading.values.faults import Fault, empty_fault, fault
from builder.reading.values.numerals import leading_numeral, ratio
from builder.reading.values.sentences import fill
from builder.reading.values.spelling import folded, plain, with_commas

TOO_LONG = "is {size} characters long, and {most} is the most"
WORDS_BEHIND = "has '{words}' after the number"
MOST_SHOWN = 40
YES = ("yes", "true")
NO = ("no", "false")


class Words(TypedDict):
    """A text on one line, or what is wrong with it."""

    text: str
    fault: Fault | None


class Bare(TypedDict):
    """A number and nothing after it, exactly as written, or what is wrong with it."""

    value: Ratio
    step: Ratio
    fault: Fault | None


class Count(TypedDict):
    """A whole number from 0 up, or what is wrong with it."""

    number: int
    fault: Fault | None


class YesNo(TypedDict):
    """Yes or no, or what is wrong with it."""

    yes: bool
    fault: Fault | None


def read_words(text: str, longest: int) -> Words:
    """The text on one line, white space folded. Codes: `empty-value`, `text-too-long`."""
    line = folded(text)
    if line == "":
        return {"text": "", "fault": empty_fault()}
    if len(line) > longest:
        parts = {"size": with_commas(len(line)), "most": with_commas(longest)}
        return {"text": "", "fault": fault(fill(TOO_LONG, parts), "text-too-long", "shorten it")}
    return {"text": line, "fault": None}


def read_bare(text: str) -> Bare:
    """A number alone. Codes: `empty-value` and those of a number."""
    line = plain(text)
    if line == "":
        return no_bare(empty_fault())
    number = leading_numeral(line)
    if number["fault"] is not None:
        return no_bare(number["fault"])
    if number["rest"] != "":
        reason = fill(WORDS_BEHIND, {"words": number["rest"][:MOST_SHOWN]})
        advice = "write the number alone; put words in `note:`"
        return no_bare(fault(reason, "number-unreadable", advice))
    return {"value": number["value"], "step": number["step"], "fault": None}


def no_bare(wrong: Fault) -> Bare:
    """A number that cannot be read."""
    return {"value": ratio("0", "1"), "step": ratio("0", "1"), "fault": wrong}


def read_count(text: str) -> Count:
    """A whole number. Codes: those of a number alone, and `count-negative`."""
    number = read_bare(text)
    if number["fault"] is not None:
        return {"number": 0, "fault": number["fault"]}
    step = ratio_product(number["step"], ratio("1", "1"))
    if step["top"] != "1" or step["bottom"] != "1":
        advice = "count in whole numbers, such as 12"
        wrong = fault("is not a whole number", "number-unreadable", advice)
        return {"number": 0, "fault": wrong}
    if plain(text).startswith("-"):
        reason = "is below zero, and a count cannot be"
        return {"number": 0, "fault": fault(reason, "count-negative", "write it without the minus")}
    return {"number": int(ratio_float(number["value"])), "fault": None}


def read_yes_no(text: str) -> YesNo:
    """Yes for `yes` or `true`, no for `no` or `false`. Codes: `empty-value`, `choice-unknown`."""
    line = folded(text).lower()
    if line == "":
        return {"yes": False, "fault": empty_fault()}
    if line not in YES and line not in NO:
        wrong = fault("is neither yes nor no", "choice-unknown", "write yes or no")
        return {"yes": False, "fault": wrong}
    return {"yes": line in YES, "fault": None}
