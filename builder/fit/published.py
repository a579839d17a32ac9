"""
The part of a pack that the check needs, as one plain record: every value with its standing, its age
and its page.
"""

from collections.abc import Iterable, Mapping
from dataclasses import asdict
from math import cos, radians
from typing import Any

from builder.pack import Fact, Figure, Item, Outline, Pack, Section, Standing, Verified
from builder.rules import WHOLES, Rule

Record = dict[str, Any]
Wanted = dict[tuple[str, str], set[str]]
COUNTED = {"at.across", "at.depth", "carried", "low-steel"}
"""
Values of rigging points and groups that the hang plan counts with and no verdict shows by
themselves: their number alone, and what hangs there.
"""
NAMED = {"beam", "directions"}
"""The same for words."""
COSINES = {"widest_angle", "widest_lean"}
"""
Angles of bridles. The check compares their cosines, worked out here once: two languages need not
give the same cosine.
"""
FREE = {f"{name}.{phase}" for name in ("free", "free-least") for phase in ("L1", "L2", "L3")}
FED = {*FREE, "rating", "fed_from", "system", "dimmers"}
BEYOND_RULES: Mapping[tuple[str, str], set[str]] = {
    ("house", "identity"): {
        "curfews",
        "noise_limits",
        "load_in_from",
        "load_out_until",
        "quiet_hours",
        "checks_end_before_doors",
        "doors_before_show",
    },
    ("house", "quiet"): {"from", "until"},
    ("house", "crew"): {"meal_after", "meal_break", "shortest_call", "longest_call"},
    ("house", "configuration"): set(),
    ("house", "curfew"): {"music_ends", "strictness"},
    ("house", "noise"): {"level", "metric", "over", "measured_at"},
    ("sound", "mix"): {"average_level", "average_level_error"},
    ("access", "approach"): {"longest_truck", "lowest_clearance", "weight_limit"},
    ("access", "dock"): {"approach", "trucks_at_once"},
    ("access", "route"): {
        "from_dock",
        "to_place",
        "tightest_width",
        "tightest_height",
        "tightest_weight",
    },
    ("stage", "place"): {"at.across", "at.depth"},
    ("rigging", "point"): {"limit", "directions", "widest_lean", *COUNTED, *NAMED},
    ("rigging", "beam"): {"limit", "left", "carried"},
    ("rigging", "zone"): {"limit", "left", "carried", "beams", "points"},
    ("rigging", "roof"): {
        "limit",
        "left",
        "carried",
        "spacing_at_least",
        "directions",
        "widest_lean",
    },
    ("rigging", "exception"): {"beams", "points", "directions", "widest_lean"},
    ("rigging", "house"): {"bridles_allowed"},
    ("rigging", "bridles_allowed"): {"allowed", "beams", "widest_angle"},
    ("rigging", "dynamic_factor"): {"factor"},
    ("rigging", "hoist"): {"weight", "rating", "free"},
    ("stage", "deck"): {
        "usable_width",
        "usable_depth",
        "clear_height",
        "load",
        "point_load",
        "configurations",
    },
    ("stage", "wing"): {"level_with_deck", "clear_height", "load"},
    ("stage", "zone"): {"load", "point_load"},
    ("stage", "obstruction"): {"from_height"},
    ("power", "supply"): FED,
    ("power", "generator"): FED,
    ("power", "board"): FED,
    ("power", "service"): {*FED, "connectors", "dedicated_to", "place", "at.across", "at.depth"},
    ("power", "outlet"): {"rating", "breaker", "count", "phases", "place", "fed_from"},
}
"""What the checks read that are more than comparisons."""
GROUPS = ("beam", "zone", "roof")
NO_LIMIT = "a limit: none"
"""What a limit's figure lacks where the house writes that there is none."""

DRAWN = {"stage"}
"""The sections whose outlines the checks read."""


def fit_record(pack: Pack, *, pages: Mapping[str, str] | None = None) -> Record:
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
    }


def wanted_of(rules: Iterable[Rule]) -> Wanted:
    """
    The values that rules and checks read, by section and kind of item.

    The rest of the pack, most of it, is left out.
    """
    found = {place: set(names) for place, names in BEYOND_RULES.items()}
    for rule in rules:
        names = {rule.value, rule.otherwise, *(name for name, _ in rule.where), "configurations"}
        found.setdefault((rule.section, rule.item), set()).update(names)
        if rule.beside:
            found.setdefault((rule.section, rule.beside), set()).add("dead")
        for kind in WHOLES:
            found.setdefault((rule.section, kind), set()).add(rule.whole)
    return found


def rule_record(rule: Rule) -> Record:
    """A rule with lists for tuples, as JSON has them."""
    return {**asdict(rule), "ways": list(rule.ways), "where": [list(pair) for pair in rule.where]}


def section_record(section: Section, pages: Mapping[str, str], wanted: Wanted) -> Record:
    """A section with its items."""
    return {
        "key": section.key,
        "title": section.title,
        "cautions": list(section.cautions),
        "outlines": [
            outline_record(outline) for outline in section.outlines if section.key in DRAWN
        ],
        "items": [
            item_record(item, section, pages, wanted[section.key, item.kind])
            for item in section.items
            if (section.key, item.kind) in wanted
        ],
    }


def outline_record(outline: Outline) -> Record:
    """A shape on the plan with lists for tuples, as JSON has them."""
    return {
        "kind": outline.kind,
        "name": outline.name,
        "corners": [list(corner) for corner in outline.corners],
    }


def item_record(item: Item, section: Section, pages: Mapping[str, str], wanted: set[str]) -> Record:
    """An item with the values that are read, by name: what stands after the item's own key."""
    every: tuple[Fact | Figure, ...] = (*item.facts, *item.figures)
    found = [value for value in every if value.key[len(item.key) + 1 :] in wanted]
    page = pages.get(item.key, f"{section.key}.html")
    verified = (
        next((fact.verified for fact in item.facts if fact.verified), None) or section.verified
    )
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
        "values": {
            value.key[len(item.key) + 1 :]: shown_record(
                value, item, section, pages.get(value.key, page)
            )
            for value in found
        },
    }


def shown_record(value: Fact | Figure, item: Item, section: Section, page: str) -> Record:
    """
    A value in full, or only what is counted with where no verdict shows it.

    A limit that the house says does not exist is ``none``.
    """
    record = value_record(value, section, page)
    if section.key != "rigging":
        return record
    if isinstance(value, Figure) and item.kind in GROUPS and value.missing == (NO_LIMIT,):
        return {**record, "standing": Standing.NONE.value}
    name = value.key[len(item.key) + 1 :]
    if name in COSINES and record["number"] is not None:
        return {"number": cos(radians(record["number"]))}
    if name in COUNTED:
        return {
            "number": record["number"],
            **({"hangs": value.note} if name == "carried" and value.note else {}),
        }
    return {"standing": record["standing"], "text": record["text"]} if name in NAMED else record


def value_record(value: Fact | Figure, section: Section, page: str) -> Record:
    """A fact or figure. A figure is as old as the section's check."""
    verified = (value.verified if isinstance(value, Fact) else None) or section.verified
    shown = value.value
    standing = (
        value.standing
        if isinstance(value, Fact)
        else Standing.STATED
        if shown
        else Standing.UNKNOWN
    )
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
    return f"{verified.on} by {verified.by}, {verified.how}, {verified.age}"
