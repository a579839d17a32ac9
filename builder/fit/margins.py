"""How much a margin may lose to rounding, and how it is written with its sign."""

from builder.fit.records import Rule
from builder.fit.wording import LESS

LENGTH_TOLERANCE_M = 0.025
SHARE_TOLERANCE = 0.005
ROUNDED_KINDS = ("mass", "load", "area")


def tolerance(rule: Rule, wanted: float) -> float:
    """
    What rounding may cost: 25 mm of a length, 0.5 % of a weight, load or area; nothing of a count,
    time, level or legal limit.
    """
    if rule["legal"]:
        return 0.0
    if rule["kind"] == "length":
        return LENGTH_TOLERANCE_M
    if rule["kind"] in ROUNDED_KINDS:
        return abs(wanted) * SHARE_TOLERANCE
    return 0.0


def signed(words: list[str], slack: float) -> list[str]:
    """A margin with its sign, in both systems; empty where a kind has one system."""
    return [with_sign(word, slack) if word != "" else "" for word in words]


def with_sign(word: str, slack: float) -> str:
    """One margin with its sign. What is too small to show says to which side it lies."""
    if word.startswith(LESS):
        return f"{word} short" if slack < 0 else f"{word} to spare"
    if slack < 0:
        return f"−{word}"
    if slack > 0:
        return f"+{word}"
    return word
