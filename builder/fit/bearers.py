"""
What bears an item, in the record that the check reads: a harder state or harder terms, what to
know, and what to ask. It reads the pack's own records, so it stays in Python.
"""

from collections.abc import Mapping

from builder.bearers.borne import Borne
from builder.fit.records import Item
from builder.fit.values import BEARERS, BEARERS_ASKED, TOLD


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
