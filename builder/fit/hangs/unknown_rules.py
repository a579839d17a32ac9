"""The rules of which a house says that it does not know them: each may bind what a show hangs."""

from builder.fit.hangs.issues import issue
from builder.fit.hangs.records import Issue
from builder.fit.hangs.sentences import ASK_EXCEPTIONS, ASK_FACTOR, ASK_ROOF_ZONES, RULE_UNKNOWN
from builder.fit.records import Item, Section
from builder.fit.sections import items_of
from builder.fit.values import number_of
from builder.fit.verdicts import ASK

ASKED: tuple[tuple[str, str], ...] = (
    ("zones", ASK_ROOF_ZONES),
    ("exceptions", ASK_EXCEPTIONS),
    ("dynamic_factor", ASK_FACTOR),
)
"""The rules of the house that a hang is judged by, each with what is asked where nobody knows."""


def rules_unknown(section: Section) -> list[Issue]:
    """What must be asked of the house's rules before a hang can be said to fit."""
    issues: list[Issue] = []
    for item in items_of(section, "house"):
        for name, question in ASKED:
            if name in item["values"] and item["values"][name]["standing"] == "unknown":
                issues.append(rule_unknown(question, item))
    for item in items_of(section, "dynamic_factor"):
        if number_of(item, "factor") is None:
            issues.append(rule_unknown(ASK_FACTOR, item))
    return issues


def rule_unknown(question: str, item: Item) -> Issue:
    """One rule that the house does not know."""
    return issue(ASK, RULE_UNKNOWN, question=question, item=item)
