"""
What bears an item, in the record that the check reads: a harder state or harder terms, what to
know, and what to ask. It reads the pack's own records, so it stays in Python.
"""

from collections.abc import Mapping
from dataclasses import replace

from builder.bearers.borne import Borne, on_remembered
from builder.fit.records import Item
from builder.fit.values import BEARERS, BEARERS_ASKED, TOLD
from builder.pack import Item as PackItem
from builder.pack import Section, Verified, sureness


def as_sure_as_bearers(section: Section) -> Section:
    """A section in which nothing is told to be surer than what bears it."""
    found = on_remembered(section)
    items = tuple(
        no_surer(item, section, found[item.key]) if item.key in found else item
        for item in section.items
    )
    return replace(section, items=items) if found else section


def no_surer(item: PackItem, section: Section, check: Verified) -> PackItem:
    """An item whose facts and figures are at most as sure as a check."""

    def least(verified: Verified | None) -> Verified:
        return min((verified or section.verified or check, check), key=sureness)

    return replace(
        item,
        facts=tuple(replace(fact, verified=least(fact.verified)) for fact in item.facts),
        figures=tuple(replace(each, verified=least(each.verified)) for each in item.figures),
    )


def as_borne(record: Item, found: Mapping[str, Borne]) -> Item:
    """An item's record by what bears it; as it was where all of that is there."""
    borne = found.get(record["key"])
    if borne is None:
        return record
    words = dict(record["words"])
    if told := " ".join((*borne.told, *borne.hidden)):
        words[f"{BEARERS}.{TOLD}"] = told
    if borne.asks:
        words[BEARERS_ASKED] = borne.asks
    terms = borne.terms or record["terms"]
    return {**record, "condition": borne.condition, "terms": terms, "words": words}
