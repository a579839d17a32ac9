"""Why a value of the house cannot be taken: it is not said, not known, or known in part."""

from builder.fit.records import Section, Value
from builder.fit.sections import items_of
from builder.fit.sentences import BOUNDED, HAS_NONE, NOT_KNOWN_YET, NOT_SAID, fill


def silence(value: Value | None) -> str:
    """
    What the house leaves open of a value that has no number. That it has not said is only told
    where it has not.
    """
    if value is None or value["standing"] == "not stated":
        return NOT_SAID
    if value["standing"] == "unknown":
        return NOT_KNOWN_YET
    if value["standing"] == "none":
        return HAS_NONE
    return fill(BOUNDED, {"text": value["text"]})


def silence_on(section: Section | None, kind: str, name: str) -> str:
    """What the house leaves open of a list that has no entry: of the items of a kind the first."""
    for item in items_of(section, kind):
        if name in item["values"]:
            return silence(item["values"][name])
    return NOT_SAID
