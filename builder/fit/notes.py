"""What to know about something of the house beside the answer: its state, its terms, its check."""

from builder.fit.records import Age, Item, Value
from builder.fit.sentences import (
    FROM_MEMORY,
    LIMITED,
    LIMITED_WHY,
    NO_CHECK,
    OLD_CHECK,
    SET_BESIDE,
    SOME_OUT,
    SOME_OUT_WHY,
    TERMS,
    fill,
)
from builder.fit.values import BEARERS, is_set, told_of
from builder.fit.wording import both
from builder.reading.values.sentences import within_sentence


def item_notes(item: Item) -> list[str]:
    """What to know about the item itself: its state, its terms, its check."""
    return [*state_notes(item), *check_notes(item)]


def check_notes(item: Item) -> list[str]:
    """What to know of an item's check."""
    age: Age = {
        "standing": "stated",
        "checked": item["checked"],
        "stale": item["stale"],
        "remembered": item["remembered"],
    }
    return age_notes(age)


def state_notes(item: Item) -> list[str]:
    """What does not work of an item or of what bears it, and on what terms it is there."""
    notes: list[str] = []
    if item["state"] != "":
        template = SOME_OUT if item["note"] == "" else SOME_OUT_WHY
        parts = {"item": item["name"], "state": item["state"], "note": item["note"]}
        notes.append(fill(template, parts))
    elif item["condition"] == "limited":
        template = LIMITED if item["note"] == "" else LIMITED_WHY
        notes.append(fill(template, {"item": item["name"], "note": item["note"]}))
    if item["terms"] in ("extra charge", "by arrangement"):
        notes.append(fill(TERMS, {"item": item["name"], "terms": item["terms"]}))
    borne = told_of(item, BEARERS)
    if borne != "":
        notes.append(borne)
    return notes


def age_notes(value: Age | None) -> list[str]:
    """Old or missing checks of what the house says, and what was only remembered."""
    if value is None or value["standing"] in ("unknown", "not stated"):
        return []
    if value["checked"] == "":
        return [NO_CHECK]
    notes: list[str] = []
    if value["stale"]:
        notes.append(fill(OLD_CHECK, {"check": value["checked"]}))
    if value["remembered"]:
        notes.append(fill(FROM_MEMORY, {"check": value["checked"]}))
    return notes


def set_notes(item: Item, value: Value | None, kind: str) -> list[str]:
    """To what the house sets a value of an item, where it chooses it and something leans on it."""
    if value is None or value["number"] is None or not is_set(value):
        return []
    amount = both(kind, value["number"])[0]
    parts = {"item": item["name"], "label": within_sentence(value["label"]), "amount": amount}
    return [fill(SET_BESIDE, parts)]


def once(notes: list[str]) -> list[str]:
    """Each note once, in order."""
    kept: list[str] = []
    for note in notes:
        if note not in kept:
            kept.append(note)
    return kept
