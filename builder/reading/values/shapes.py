"""What is wrong where one value, a list or a group of keys stands in another's place."""

from builder.reading.values.faults import Fault, fault
from builder.reading.values.nearest import nearest
from builder.reading.values.sentences import fill

KEYS_SHOWN = 4
KEYS_OF_ENTRY = 3
NEAR_KEY = 0.6
NEAR_CHOICE = 0.75
"""Closer than for keys: words of opposite meaning may be spelt alike."""
MEANT_CHOICE = "did you mean '{name}'? "
ONE_OF = "write one of: {choices}"
LIKE = "write it like {like}"
KEYS_SUCH_AS = "write keys such as {keys}"
EACH_ENTRY = "begin each entry with '- '"
EACH_ENTRY_HAS = "begin each entry with '- ', and give it keys such as {keys}"
IN_BRACKETS = "write [{text}]"
MEANT = "did you mean '{name}'?"
KNOWN = "known here: {keys}"
NOT_TWO = "is a list of {count}, and two values belong here"
NO_VALUE = ("no", "no.", "nil", "n/a", "na", "nothing", "null", "-")
NOT_KNOWN = ("tbc", "tbd", "tba", "not known", "??", "???")
ABSENT = ("unknown", "none", "?")
"""What people write for none and for what nobody knows, and the words that are read so."""
SIGNS = "[]{},:#\"'"


def unknown_key_fault(key: str, known: list[str]) -> Fault:
    """A key that the group does not have; ``known`` are those it has."""
    near = nearest(key, known, NEAR_KEY)
    advice = fill(KNOWN, {"keys": ", ".join(known)}) if len(known) > 0 else ""
    if near != "":
        advice = fill(MEANT, {"name": near})
    return fault("is not a key here", "unknown-key", advice)


def missing_fault() -> Fault:
    """A key that must be there."""
    advice = "write it, or write 'unknown' where the field allows not knowing"
    return fault("is missing here", "missing-key", advice)


def no_group_fault(keys: list[str]) -> Fault:
    """Something else where a group of these keys should be."""
    shown = ", ".join(keys[:KEYS_SHOWN])
    return fault("should be a group of keys", "wrong-shape", fill(KEYS_SUCH_AS, {"keys": shown}))


def no_list_fault(text: str, keys: list[str]) -> Fault:
    """Something else where a list should be; ``keys`` are those of an entry, if it has any."""
    return fault("should be a list", "wrong-shape", list_advice(text, keys))


def list_advice(text: str, keys: list[str]) -> str:
    """How to write a list where one value stands."""
    word = text.strip(" \t\n").lower()
    if word in NO_VALUE or word in NOT_KNOWN or word in ABSENT:
        return "leave the key out where there is nothing to list"
    if len(keys) > 0:
        shown = ", ".join(keys[:KEYS_OF_ENTRY])
        return fill(EACH_ENTRY_HAS, {"keys": shown})
    if text == "" or any(SIGNS.find(char) >= 0 for char in text):
        return EACH_ENTRY
    return fill(IN_BRACKETS, {"text": text})


def no_pair_fault(count: int) -> Fault:
    """A list of another number of values than two."""
    advice = "write the least and the most, like [1 m, 2 m]"
    return fault(fill(NOT_TWO, {"count": str(count)}), "wrong-shape", advice)


def no_text_fault(like: str) -> Fault:
    """A group or a list where one value should be."""
    advice = fill(LIKE, {"like": like}) if like != "" else ""
    return fault("should be one value, not a group or a list", "wrong-shape", advice)


def choice_fault(text: str, choices: list[str]) -> Fault:
    """A text that is none of the choices; empty for what is no text at all."""
    near = nearest(text, choices, NEAR_CHOICE) if text != "" else ""
    guess = fill(MEANT_CHOICE, {"name": near}) if near != "" else ""
    listed = fill(ONE_OF, {"choices": ", ".join(choices)})
    return fault("is not one of the choices", "choice-unknown", f"{guess}{listed}")
