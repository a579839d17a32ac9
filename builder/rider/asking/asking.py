"""What is at hand while a rider is read: the language, units, rules, and what was wrong so far."""

from typing import TypedDict

from builder.fit.records import Rule
from builder.reading.values.faults import Fault
from builder.reading.values.kinds import KindBook
from builder.rider.asking.language import Language
from builder.rider.asking.values import ReadValue
from builder.rider.text.tree import Mistake


class Asking(TypedDict):
    """
    ``rules`` are those of the house by key. ``part`` is the part of the rider that is being read,
    such as ``needs[2]``; ``act`` stands in every requirement.
    """

    language: Language
    units: KindBook
    rules: dict[str, Rule]
    mistakes: list[Mistake]
    part: str
    act: str


def note_fault(asking: Asking, place: ReadValue, path: str, value: str, fault: Fault) -> None:
    """Note what is wrong with a value."""
    asking["mistakes"].append(
        {
            "line": place["line"],
            "column": place["column"],
            "part": asking["part"],
            "path": path,
            "value": value,
            "reason": fault["reason"],
            "code": fault["code"],
            "advice": fault["advice"],
        }
    )
