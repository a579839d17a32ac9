"""What every requirement has."""

from builder.fit.records import Asked, CarriedBy, Strictness
from builder.reading.values.sentences import fill
from builder.rider.asking.asking import Asking
from builder.rider.asking.values import ReadValue, words_of

WITH_NOTE = "{need} ({note})"


def asked_base(
    asking: Asking, line: int, department: str, title: str, need: str, strictness: Strictness
) -> Asked:
    """A requirement as far as all are alike; the house brings it."""
    return {
        "act": asking["act"],
        "line": line,
        "department": department,
        "title": title,
        "need": need,
        "strictness": strictness,
        "carried": "house",
    }


def strictness_of(group: ReadValue) -> Strictness:
    """Must, or should where the show can live without."""
    return "should" if words_of(group, "strictness") == "should" else "must"


def carried_by(group: ReadValue) -> CarriedBy:
    """Who brings it."""
    words = words_of(group, "carried by")
    if words == "show":
        return "show"
    return "hire" if words == "hire" else "house"


def parts_joined(parts: list[str]) -> str:
    """What a need says, one part after the other, without those that say nothing."""
    return ", ".join(part for part in parts if part != "")


def sized(template: str, group: ReadValue, key: str) -> str:
    """A quantity in the author's wording within a few words; nothing where it is not written."""
    words = words_of(group, key)
    return fill(template, {"words": words}) if words != "" else ""


def with_note(words: str, asked: ReadValue) -> str:
    """What is needed, with what the rider notes about it: verdict and question tell both."""
    note = words_of(asked, "note")
    return words if note == "" else fill(WITH_NOTE, {"need": words, "note": note})
