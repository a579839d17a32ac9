"""The words of a verdict, its record, and which of two is better."""

from typing import Any

Record = Any
"""A record whose type its module does not tell yet; :mod:`builder.fit.records` has the types."""

FITS, NOTED, SHORT, ASK, NOT_NEEDED = "fits", "fits, with a note", "short", "ask", "not needed"
RANK = {NOT_NEEDED: 0, FITS: 1, NOTED: 2, ASK: 3, SHORT: 4}


def verdict(requirement: Record, word: str, reason: str) -> Record:
    """A verdict on a requirement, without a fact yet."""
    return {
        "act": requirement["act"],
        "line": requirement["line"],
        "department": requirement["department"],
        "title": requirement["title"],
        "need": requirement["need"],
        "strictness": requirement["strictness"],
        "verdict": word,
        "reason": reason,
        "fact": None,
        "margin": ["", ""],
        "notes": [],
        "remedy": "",
        "who": "",
        "question": "",
        "parts": [],
    }


def with_remedy(found: Record, rule: Record) -> Record:
    """A short verdict that says what would mend it, and who could."""
    found["remedy"] = rule["remedy"]
    found["who"] = rule["who"]
    return found


def with_question(found: Record, requirement: Record, question: str) -> Record:
    """An ask that carries its question, the rider's own line quoted."""
    line = ", rider line " + str(requirement["line"]) if requirement["line"] > 0 else ""
    found["question"] = (
        question
        + " ("
        + requirement["act"]
        + line
        + ": "
        + requirement["title"]
        + ", "
        + requirement["need"]
        + ".)"
    )
    return found


def fact_of(value: Record, item: Record) -> Record:
    """The house's fact as a verdict shows it."""
    return {
        "key": value["key"],
        "item": item["name"],
        "label": value["label"],
        "text": value["text"],
        "standing": value["standing"],
        "also": value["also"],
        "page": value["page"],
        "checked": value["checked"],
    }


def settled(found: Record) -> Record:
    """A fit with something to know becomes a fit with a note."""
    if found["verdict"] == FITS and len(found["notes"]) > 0:
        found["verdict"] = NOTED
    return found
