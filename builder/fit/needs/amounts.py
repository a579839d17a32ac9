"""A number of the house against the amount that is needed."""

from typing import TypedDict

from builder.fit.margins import signed, tolerance
from builder.fit.needs.sentences import (
    EXACTLY,
    OVER_BY,
    SHORT_BY,
    TO_SPARE,
    TOLERATED,
    TOLERATED_NOTE,
)
from builder.fit.records import NeedAmount, Rule, Value, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import FITS, SHORT, verdict, with_remedy
from builder.fit.wording import both

HAIR = 1e-9
"""The share of an amount that a change of its unit may cost in the last places."""


class Answer(TypedDict):
    """
    A verdict, with how much is left by it: the bare number that tells the better of two verdicts of
    the same word.
    """

    verdict: Verdict
    slack: float


def against_number(requirement: NeedAmount, rule: Rule, number: float) -> Answer:
    """A number against the requirement, with its margin."""
    amount = requirement["high"] if requirement["way"] == "at most" else requirement["low"]
    slack = beyond_a_hair(slack_of(requirement, number), amount)
    words = both(rule["kind"], abs(slack))
    if slack >= -tolerance(rule, amount):
        answer = enough(requirement, slack, words[0])
    else:
        template = OVER_BY if is_over(requirement, number) else SHORT_BY
        answer = verdict(requirement, SHORT, fill(template, {"amount": words[0]}))
        with_remedy(answer, rule)
    answer["margin"] = signed(words, slack)
    return {"verdict": answer, "slack": slack}


def against_value(requirement: NeedAmount, rule: Rule, value: Value) -> Answer | None:
    """
    A value against the requirement: its number, or its ends where it is not exact. It fits where
    both ends do and is short where neither can; None where that is open.
    """
    if value["number"] is not None:
        return against_number(requirement, rule, value["number"])
    worst: Answer | None = None
    for end in far_ends(requirement, value):
        answer = against_number(requirement, rule, end)
        if worst is None or answer["slack"] < worst["slack"]:
            worst = answer
    if worst is not None and worst["verdict"]["verdict"] == FITS and is_closed(requirement, value):
        return worst
    return surely_short(requirement, rule, value)


def far_ends(requirement: NeedAmount, value: Value) -> list[float]:
    """The ends that a fit has to hold at, as far as they are known."""
    ends: list[float] = []
    if requirement["way"] != "at most" and value["least"] is not None:
        ends.append(value["least"])
    if requirement["way"] != "at least" and value["most"] is not None:
        ends.append(value["most"])
    return ends


def is_closed(requirement: NeedAmount, value: Value) -> bool:
    """Whether every end that a fit has to hold at is known."""
    low = requirement["way"] == "at most" or value["least"] is not None
    return low and (requirement["way"] == "at least" or value["most"] is not None)


def surely_short(requirement: NeedAmount, rule: Rule, value: Value) -> Answer | None:
    """A shortage that no number between the ends could mend, or None."""
    most, least = value["most"], value["least"]
    if requirement["way"] != "at most" and most is not None and most < requirement["low"]:
        answer = against_number(requirement, rule, most)
        if answer["verdict"]["verdict"] == SHORT:
            return answer
    if requirement["way"] != "at least" and least is not None and least > requirement["high"]:
        answer = against_number(requirement, rule, least)
        if answer["verdict"]["verdict"] == SHORT:
            return answer
    return None


def enough(requirement: NeedAmount, slack: float, amount: str) -> Verdict:
    """A fit by number, or by the tolerance, which is told."""
    if slack > 0:
        return verdict(requirement, FITS, fill(TO_SPARE, {"amount": amount}))
    if slack == 0:
        return verdict(requirement, FITS, EXACTLY)
    answer = verdict(requirement, FITS, TOLERATED)
    answer["notes"].append(fill(TOLERATED_NOTE, {"amount": amount}))
    return answer


def slack_of(requirement: NeedAmount, number: float) -> float:
    """How much is left; below zero where it is short."""
    above_low = number - requirement["low"]
    below_high = requirement["high"] - number
    if requirement["way"] == "at least":
        return above_low
    if requirement["way"] == "at most":
        return below_high
    return above_low if above_low < below_high else below_high


def beyond_a_hair(slack: float, amount: float) -> float:
    """A slack; none where it is a hair: 150 psf written in kilopascal is 150 psf."""
    return slack if abs(slack) > HAIR * abs(amount) else 0.0


def is_over(requirement: NeedAmount, number: float) -> bool:
    """Whether the house has too much rather than too little."""
    return requirement["way"] != "at least" and number > requirement["high"]
