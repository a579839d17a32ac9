"""Small packs and requirements for tests of the fit room."""

from typing import Any

from builder.departments.access.fit import RULES as ACCESS
from builder.departments.crew.fit import RULES as CREW
from builder.departments.house.fit import RULES as HOUSE
from builder.departments.lines.fit import RULES as LINES
from builder.departments.power.fit import RULES as POWER
from builder.departments.rigging.fit import RULES as RIGGING
from builder.departments.sound.fit import RULES as SOUND
from builder.departments.stage.fit import RULES as STAGE
from builder.fit.published import rule_record
from builder.fit.wanted import COSINES, COUNTED, NAMED
from builder.rider.undescribed import UNDESCRIBED

Record = dict[str, Any]
RULES = [
    rule_record(rule)
    for rule in (*UNDESCRIBED, *CREW, *HOUSE, *ACCESS, *STAGE, *RIGGING, *SOUND, *POWER, *LINES)
]

RIGGING_KINDS = ("point", "beam", "zone", "roof", "exception", "bridles_allowed")


def value(
    text: str = "", number: float | None = None, standing: str = "stated", **more: Any
) -> Record:
    """A value of an item."""
    blank = {
        "key": "",
        "label": "",
        "also": "",
        "page": "",
        "checked": "2026-01-01 by crew, measured, 10 days before this revision",
        "stale": False,
        "remembered": False,
        "least": None,
        "most": None,
        "can_be_set": False,
        "settings": [],
        "parts": [],
    }
    return {**blank, "text": text, "number": number, "standing": standing, **more}


def a_list(*parts: str, standing: str = "stated") -> Record:
    """A value that is a list of names."""
    return value(", ".join(parts), None, standing, parts=list(parts))


def item(
    kind: str,
    name: str,
    /,
    *,
    condition: str = "in service",
    state: str = "",
    terms: str = "",
    note: str = "",
    **values: Record,
) -> Record:
    """An item whose values know their keys; what is only counted with stands apart."""
    key = f"x.{kind}.{name}"
    dotted = {label.replace("__", "."): each for label, each in values.items()}
    counted = {
        label: each
        for label, each in dotted.items()
        if kind in RIGGING_KINDS and label in {*COUNTED, *COSINES}
    }
    numbers = {
        label: each["number"] for label, each in counted.items() if each["number"] is not None
    }
    words = {label: each["hangs"] for label, each in counted.items() if "hangs" in each}
    for label in NAMED & set(dotted) if kind in RIGGING_KINDS else ():
        if dotted[label]["standing"] != "not stated":
            words[label] = dotted[label]["text"]
    shown = {
        label: {**each, "key": f"{key}.{label}", "label": label}
        for label, each in dotted.items()
        if label not in counted and label not in words
    }
    whole = {
        "key": key,
        "kind": kind,
        "name": name,
        "condition": condition,
        "state": state,
        "terms": terms,
        "note": note,
        "values": shown,
        "numbers": numbers,
        "words": words,
    }
    return {**whole, "page": "", "checked": "2026-01-01", "stale": False, "remembered": False}


def pack(**sections: list[Record]) -> Record:
    """A pack with these sections."""
    parts = [
        {"key": key, "title": key, "cautions": [], "outlines": [], "items": items}
        for key, items in sections.items()
    ]
    return {
        "venue": "Hall",
        "revision": {"number": "1", "on": "2026-01-11"},
        "rules": RULES,
        "sections": parts,
        "spaces": [],
        "shared": [],
    }


def asks(
    what: str,
    way: str = "at least",
    low: float = 0.0,
    high: float = 0.0,
    words: str = "",
    **more: Any,
) -> Record:
    """A requirement that a rule answers."""
    blank = {
        "act": "Act",
        "line": 3,
        "sort": "rule",
        "department": "stage",
        "title": what,
        "need": way,
        "strictness": "must",
        "carried": "house",
    }
    return {
        **blank,
        "what": what,
        "own": False,
        "way": way,
        "low": low,
        "high": high,
        "words": words,
        **more,
    }


def rider(
    *requirements: Record,
    act: str = "Act",
    plays: str = "",
    configuration: str = "",
    stays_m: float | None = None,
    clock: Record | None = None,
) -> Record:
    """A rider as the check takes it."""
    return {
        "act": act,
        "revision": "",
        "plays": plays,
        "configuration": configuration,
        "stays_m": stays_m,
        "not_read": [],
        "clock": clock,
        "requirements": [{**each, "act": act} for each in requirements],
    }
