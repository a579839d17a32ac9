"""The part of a pack that the check needs, as one plain record: every value with its standing, its age and its page."""

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from builder.pack import Fact, Figure, Item, Pack, Section, Standing, Verified
from builder.rules import Rule

Record = dict[str, Any]


def fit_record(pack: Pack, *, pages: Mapping[str, str] | None = None) -> Record:
    """
    What the check reads of a pack. ``pages`` tells where facts, figures and items stand on the site: page and anchor by their key.
    """
    places = pages or {}
    return {
        "venue": pack.venue,
        "revision": {"number": pack.revision.number, "on": pack.revision.on},
        "rules": [rule_record(rule) for rule in pack.rules],
        "sections": [section_record(section, places) for section in pack.sections],
    }


def rule_record(rule: Rule) -> Record:
    """A rule with lists for tuples, as JSON has them."""
    return {**asdict(rule), "ways": list(rule.ways), "where": [list(pair) for pair in rule.where]}


def section_record(section: Section, pages: Mapping[str, str]) -> Record:
    """A section with its items."""
    return {
        "key": section.key,
        "title": section.title,
        "cautions": list(section.cautions),
        "items": [item_record(item, section, pages) for item in section.items],
    }


def item_record(item: Item, section: Section, pages: Mapping[str, str]) -> Record:
    """An item with its values by name: what stands after the item's own key."""
    found: tuple[Fact | Figure, ...] = (*item.facts, *item.figures)
    page = pages.get(item.key, f"{section.key}.html")
    verified = next((fact.verified for fact in item.facts if fact.verified), None) or section.verified
    return {
        "page": page,
        "checked": checked(verified),
        "stale": verified.stale if verified else False,
        "key": item.key,
        "kind": item.kind,
        "name": item.name,
        "condition": item.condition,
        "note": item.note,
        "terms": next((fact.terms for fact in item.facts if fact.terms), ""),
        "values": {value.key[len(item.key) + 1 :]: value_record(value, section, pages.get(value.key, page)) for value in found},
    }


def value_record(value: Fact | Figure, section: Section, page: str) -> Record:
    """A fact or figure. A figure is as old as the section's check."""
    verified = (value.verified if isinstance(value, Fact) else None) or section.verified
    shown = value.value
    standing = value.standing if isinstance(value, Fact) else Standing.STATED if shown else Standing.UNKNOWN
    return {
        "key": value.key,
        "label": value.label,
        "standing": standing.value,
        "text": shown.text if shown else "",
        "also": shown.also if shown else "",
        "number": shown.number if shown else None,
        "bound": bool(shown and shown.text.startswith("at most ")),
        "page": page,
        "checked": checked(verified),
        "stale": verified.stale if verified else False,
    }


def checked(verified: Verified | None) -> str:
    """When, by whom and how a value was checked, in words; empty where nobody says."""
    if verified is None:
        return ""
    return f"{verified.on} by {verified.by}, {verified.how}, {verified.age_days} days before this revision"
