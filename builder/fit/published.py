"""
The part of a pack that the check needs, as plain records: every value with its standing, its age
and its page.

It reads the pack's own records, so it stays in Python; what it makes travels to the browser.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import cos, radians

from builder import pack as packs
from builder.arranged import section_in
from builder.bearers.borne import bearing
from builder.fit.bearers import as_borne, as_sure_as_bearers
from builder.fit.records import FitPack, Instead, Item, Outline, Rule, Section, Value
from builder.fit.values import LACKS, OPEN, RULE, TOLD, counted_least
from builder.fit.wanted import COSINES, COUNTED, NAMED, Wanted, wanted_of
from builder.pack import Fact, Figure, Verified
from builder.rules import Rule as PackRule

GROUPS = ("beam", "zone", "roof")
NO_LIMIT = "a limit: none"
"""What a limit's figure lacks where the house writes that there is none."""

AGGREGATES = ("stage-to-mix", "reaching")
"""The kinds of item that stand for several lines: the note of each value tells what to know."""

DRAWN = {"stage"}
"""The sections whose outlines the checks read."""


def fit_record(pack: packs.Pack, *, pages: Mapping[str, str] | None = None) -> FitPack:
    """
    What the check reads of a pack. ``pages`` tells where facts, figures and items stand on the
    site: page and anchor by their key.
    """
    places = pages or {}
    wanted = wanted_of(pack.rules)
    return {
        "venue": pack.venue,
        "revision": {"number": pack.revision.number, "on": pack.revision.on},
        "rules": [rule_record(rule) for rule in pack.rules],
        "sections": [section_record(section, places, wanted) for section in pack.sections],
        "spaces": [{"key": space.key, "name": space.name} for space in pack.spaces],
        "shared": shared_titles(pack),
    }


def shared_titles(pack: packs.Pack) -> list[str]:
    """The departments of which the spaces of a house share something; none of one stage."""
    found = [
        section.title
        for section in pack.sections
        if section.key != "house" and any(stands_beside(item) for item in section.items)
    ]
    return list(dict.fromkeys(found)) if pack.spaces else []


def stands_beside(item: packs.Item) -> bool:
    """Whether an item stands in a file that all spaces share."""
    return item.place is not None and "/" not in item.place.file


def rule_record(rule: PackRule) -> Rule:
    """A rule with lists for tuples, as JSON has them."""
    return {
        "key": rule.key,
        "title": rule.title,
        "department": rule.department,
        "kind": rule.kind,
        "question": rule.question,
        "ways": list(rule.ways),
        "section": rule.section,
        "item": rule.item,
        "value": rule.value,
        "otherwise": list(rule.otherwise),
        "beside": rule.beside,
        "also": [list(pair) for pair in rule.also],
        "elsewhere": list(rule.elsewhere),
        "where": [list(pair) for pair in rule.where],
        "combine": rule.combine,
        "whole": rule.whole,
        "none_means": rule.none_means,
        "means_yes": list(rule.means_yes),
        "each": rule.each,
        "day": rule.day,
        "legal": rule.legal,
        "remedy": rule.remedy,
        "who": rule.who,
    }


def section_record(section: packs.Section, pages: Mapping[str, str], wanted: Wanted) -> Section:
    """A section with its items."""
    section = as_sure_as_bearers(section)
    drawn = section.outlines if section.key in DRAWN else ()
    found = bearing(section, checked=True)
    record: Section = {
        "key": section.key,
        "title": section.title,
        "cautions": list(section.cautions),
        "outlines": [outline_record(outline) for outline in drawn],
        "items": [
            as_borne(item_record(item, section, pages, wanted[section.key, item.kind]), found)
            for item in section.items
            if (section.key, item.kind) in wanted
        ],
    }
    add_unweighed(record, section)
    if section.space:
        record["space"] = section.space
        record["shared"] = shared_kinds(section)
    if instead := list(instead_of(record, section, pages, wanted)):
        record["instead"] = instead
    return record


def shared_kinds(section: packs.Section) -> list[str]:
    """The kinds of things of a space of which it has none for itself."""
    private = {item.kind for item in section.items if not is_shared(item)}
    return sorted({item.kind for item in section.items} - private)


def is_shared(item: packs.Item) -> bool:
    """Whether a thing stands in a file beside the house's own, for all spaces."""
    places = [fact.place for fact in item.facts if fact.place]
    return len(places) > 0 and not any("/" in place.file for place in places)


def add_unweighed(record: Section, section: packs.Section) -> None:
    """
    Add to each thing of which something is left at most what nobody weighed of what hangs here.
    """
    roof = next(iter(section.of_kind("roof")), None) if section.key == "rigging" else None
    words = "" if roof is None else roof.text("unweighed")
    if words == "":
        return
    for item in record["items"]:
        left = "left" in item["values"] or "left.most" in item["numbers"]
        if left and counted_least(item, "left") is None:
            item["words"][OPEN] = words


def instead_of(
    record: Section, section: packs.Section, pages: Mapping[str, str], wanted: Wanted
) -> Iterator[Instead]:
    """The items of a section that are otherwise in other configurations of the house."""
    usual = {item["key"]: item for item in record["items"]}
    for each in section.elsewhere:
        others = {item.key: item for item in each.items}
        items = tuple(others.get(item.key, item) for item in section.items)
        there = section_record(replace(section, items=items, elsewhere=()), pages, wanted)
        differing = [item for item in there["items"] if item != usual[item["key"]]]
        without = [key for key in each.without if key in usual]
        drawn = section_in(section, each.configurations[0]).outlines
        outlines = [outline_record(outline) for outline in drawn if section.key in DRAWN]
        if differing or without or outlines != record["outlines"]:
            yield {
                "configurations": list(each.configurations),
                "items": differing,
                "without": without,
                "outlines": outlines,
            }


def outline_record(outline: packs.Outline) -> Outline:
    """A shape on the plan with lists for tuples, as JSON has them."""
    return {
        "kind": outline.kind,
        "name": outline.name,
        "corners": list(outline.corners),
    }


def item_record(
    item: packs.Item, section: packs.Section, pages: Mapping[str, str], wanted: set[str]
) -> Item:
    """An item with the values that are read, by name: what stands after the item's own key."""
    page = pages.get(item.key, f"{section.key}.html")
    verified = item_check(item, section, wanted)
    record: Item = {
        "page": page,
        "checked": checked(verified),
        "stale": verified.stale if verified else False,
        "remembered": verified.how == packs.MEMORY if verified else False,
        "key": item.key,
        "kind": item.kind,
        "name": item.name,
        "condition": item.condition,
        "state": item.out_words,
        "note": item.note,
        "terms": item.terms or next((fact.terms for fact in item.facts if fact.terms), ""),
        "values": {},
        "numbers": {},
        "words": {},
    }
    values: tuple[Fact | Figure, ...] = (*item.facts, *item.figures)
    for value in values:
        name = value.key[len(item.key) + 1 :]
        if name in wanted:
            add_value(record, name, value, section, pages.get(value.key, page))
    if item.kind == "effect":
        add_told(record, item)
    if section.key == "rigging" and item.kind == "beam" and "each-point" in record["values"]:
        add_steel(record, item, section)
    return record


def add_steel(record: Item, item: packs.Item, section: packs.Section) -> None:
    """Add the heights along a beam that spots may be on, the places in rising order."""
    along = "across" if item.text("runs") == "across" else "depth"
    stations = [
        station
        for station in section.of_kind("low-steel")
        if station.key.startswith(f"{item.key}.steel-")
    ]
    heights = sorted(
        (place, height)
        for station in stations
        if (place := station.number(along)) is not None
        and (height := station.number("height")) is not None
    )
    # One whose place nobody knows may be between any two others.
    heights = heights if len(heights) == len(stations) else []
    if item.fact("standing.1.what") is not None or is_unknown(item, "standing"):
        record["numbers"]["standing"] = 1.0
    underside = item.number("underside")
    if not heights and underside is not None:
        record["numbers"]["underside"] = underside
    for number, (place, height) in enumerate(heights):
        record["numbers"][f"steel.{number}.at"] = place
        record["numbers"][f"steel.{number}.height"] = height


def is_unknown(item: packs.Item, name: str) -> bool:
    """Whether the house says that it does not know something."""
    fact = item.fact(name)
    return fact is not None and fact.standing is packs.Standing.UNKNOWN


def add_told(record: Item, item: packs.Item) -> None:
    """Add what the house asks for an effect that it allows: how long before, and what then."""
    if item.text("allowed") in ("", "no"):
        return
    notice = item.text("notice")
    words = [f"ask {notice} before the show"] if notice else []
    words += [asks.rstrip(".")] if (asks := item.text("asks")) else []
    if words:
        record["words"][f"allowed.{TOLD}"] = f"{item.name}: {'; '.join(words)}"


def add_value(
    record: Item, name: str, value: Fact | Figure, section: packs.Section, page: str
) -> None:
    """
    Add a value to an item's record: in full, or where no verdict shows it only its number or text.

    Only rigging has as many points as make that worth it.
    """
    if section.key == "rigging" and name in COUNTED:
        add_counted(record, name, value)
    elif section.key == "rigging" and name in NAMED:
        if standing_of(value) != packs.Standing.NOT_STATED:
            record["words"][name] = value.value.text if value.value else ""
    elif section.key == "rigging" and name in COSINES:
        if value.value and value.value.number is not None:
            record["numbers"][name] = cos(radians(value.value.number))
        elif standing_of(value) == packs.Standing.UNKNOWN:
            # Nobody knows how wide, so no angle is promised.
            record["numbers"][name] = 1.0
    else:
        record["values"][name] = value_record(value, record["kind"], section, page)
        if isinstance(value, Figure) and value.missing:
            record["words"][f"{name}.{LACKS}"] = "; ".join(value.missing)
            if value.note:
                record["words"][f"{name}.{RULE}"] = value.note
        if value.note and (record["kind"] in AGGREGATES or name == "clear-under-rig"):
            record["words"][f"{name}.{TOLD}"] = value.note


def add_counted(record: Item, name: str, value: Fact | Figure) -> None:
    """
    Add a number that is only counted with, or its ends where it is not exact; the note of a load
    tells what hangs there.
    """
    if value.value and value.value.number is not None:
        record["numbers"][name] = value.value.number
    elif value.value:
        for end, number in (("least", value.value.least), ("most", value.value.most)):
            if number is not None:
                record["numbers"][f"{name}.{end}"] = number
    if name == "carried" and value.note:
        record["words"][name] = value.note


def standing_of(value: Fact | Figure) -> packs.Standing:
    """Whether a value is known. A figure is, where it could be worked out."""
    if isinstance(value, Fact):
        return value.standing
    return packs.Standing.STATED if value.value else packs.Standing.UNKNOWN


def value_record(value: Fact | Figure, kind: str, section: packs.Section, page: str) -> Value:
    """
    A fact or figure of an item of a kind. What has no check of its own has the section's.

    A limit that the house says does not exist is ``none``.
    """
    verified = value.verified or section.verified
    shown = value.value
    standing = standing_of(value)
    if section.key == "rigging" and kind in GROUPS and without_limit(value):
        standing = packs.Standing.NONE
    return {
        "key": value.key,
        "label": value.label,
        "standing": standing.value,
        "text": shown.text if shown else "",
        "also": shown.also if shown else "",
        "number": shown.number if shown else None,
        "parts": list(shown.parts) if shown else [],
        "least": shown.least if shown else None,
        "most": shown.most if shown else None,
        "can_be_set": shown.can_be_set if shown else False,
        "settings": list(shown.settings) if shown else [],
        "page": page,
        "checked": checked(verified),
        "stale": verified.stale if verified else False,
        "remembered": verified.how == packs.MEMORY if verified else False,
    }


def without_limit(value: Fact | Figure) -> bool:
    """Whether a figure has no value because the house writes that there is no limit."""
    return isinstance(value, Figure) and value.missing == (NO_LIMIT,)


def item_check(item: packs.Item, section: packs.Section, wanted: set[str]) -> Verified | None:
    """
    How an item was checked: its own line, or the section. What is only counted with has no check of
    its own in the record, so the least sure of that counts here.
    """
    own = next((fact.verified for fact in item.facts if fact.verified), section.verified)
    if section.key != "rigging":
        return own
    checks = [own or Verified("", "", "", 0)]
    for figure in item.figures:
        if figure.verified and figure.key[len(item.key) + 1 :] in wanted & COUNTED:
            checks.append(figure.verified)
    return min(checks, key=packs.sureness)


def checked(verified: Verified | None) -> str:
    """When, by whom and how a value was checked, in words; empty where nobody says."""
    if verified is None or verified.on == "":
        return ""
    return f"{verified.on} by {verified.by}, {verified.how}, {verified.age}"
