"""
Which values of a pack the check reads, by section and kind of item; the rest of the pack, most of
it, stays out of what a page has to load.
"""

from collections.abc import Iterable, Mapping

from builder.fit.arrangements.views import LISTED
from builder.rules import WHOLES, Rule

Wanted = dict[tuple[str, str], set[str]]
ENDS = ("first_end.across", "first_end.depth", "last_end.across", "last_end.depth")
PLACES = {"at.across", "at.depth", "across", "depth", *ENDS}
COUNTED = {"carried", "low-steel", "alone", "worst", *PLACES}
"""
Values of rigging points and groups that the hang plan counts with and no verdict shows by
themselves: their number alone, and what hangs there.
"""
NAMED = {"beam", "directions", "runs"}
"""The same for words."""
COSINES = {"widest_angle", "widest_lean"}
"""
Angles of bridles. The check compares their cosines, worked out here once: two languages need not
give the same cosine.
"""
FREE = {f"{name}.{phase}" for name in ("free", "free-least") for phase in ("L1", "L2", "L3")}
FED = {*FREE, "rating", "fed_from", "system", "dimmers", "wired", "through", "stands_on"}
BEYOND_RULES: Mapping[tuple[str, str], set[str]] = {
    ("house", "identity"): {
        "closed",
        "curfews",
        "noise_limits",
        "load_in_from",
        "load_out_until",
        "quiet_hours",
        "checks_end_before_doors",
        "doors_before_show",
    },
    ("house", "quiet"): {"from", "until", "only"},
    ("house", "closure"): {"from", "until", "why", "departments", "spaces"},
    ("house", "works"): {"departments", "not_final"},
    ("house", "hired"): {"departments", "may_differ", "differs_to"},
    ("house", "regular"): {
        "what",
        "days",
        "from",
        "first_month",
        "begins",
        "last_month",
        "ends",
    },
    ("house", "crew"): {"meal_after", "meal_break", "shortest_call", "longest_call"},
    ("crew", "role"): {"there", "there_terms", "ordered_by"},
    ("crew", "rate"): {"shortest-call"},
    ("house", "configuration"): set(),
    ("house", "space"): set(),
    ("house", "curfew"): {"music_ends", "strictness"},
    ("house", "noise"): {"level", "metric", "over", "measured_at"},
    ("sound", "mix"): {"average_level", "average_level_error"},
    ("sound", "whole"): {"hangs"},
    ("access", "approach"): {
        "longest_truck",
        "longest_trailer",
        "lowest_clearance",
        "weight_limit",
    },
    ("access", "dock"): {"approach", "trucks_at_once"},
    ("access", "route"): {
        "from_dock",
        "leads_to",
        "tightest_width",
        "tightest_height",
        "tightest_weight",
    },
    ("stage", "place"): {"at.across", "at.depth", "area"},
    ("rigging", "point"): {"limit", "directions", "widest_lean", *COUNTED, *NAMED},
    ("rigging", "beam"): {
        "limit",
        "left",
        "carried",
        "worst",
        "runs",
        "across",
        "depth",
        "each-point",
    },
    ("rigging", "point-group"): {
        "anywhere",
        "count",
        "beams",
        "limit",
        "place",
        "points",
        "spacing_at_least",
    },
    ("rigging", "zone"): {"limit", "left", "carried", "worst", "beams", "points"},
    ("rigging", "roof"): {
        "limit",
        "left",
        "carried",
        "worst",
        "spacing_at_least",
        "directions",
        "widest_lean",
    },
    ("rigging", "exception"): {"beams", "points", "directions", "widest_lean"},
    ("rigging", "house"): {
        "bridles_allowed",
        "dynamic_factor",
        "exceptions",
        "hangs",
        "zones",
    },
    ("rigging", "hang"): {"underside", "comes_down", *ENDS},
    ("rigging", "bridles_allowed"): {"allowed", "beams", "widest_angle"},
    ("rigging", "dynamic_factor"): {"factor"},
    ("rigging", "submission"): {"ask_above", "ask_whom"},
    ("rigging", "hoist"): {"weight", "rating", "free"},
    ("stage", "deck"): {
        "usable_width",
        "usable_depth",
        "clear_height",
        "load",
        "point_load",
    },
    ("stage", "riser"): {"count", "width", "depth", "heights", "rolling"},
    ("stage", "wing"): {"level_with_deck", "clear_height", "load"},
    ("stage", "whole"): {"obstructions", "zones"},
    ("stage", "zone"): {"load", "point_load"},
    ("stage", "obstruction"): {"from_height"},
    ("power", "supply"): {*FED, "transformer"},
    ("power", "generator"): FED,
    ("power", "board"): {*FED, "transformer"},
    ("power", "service"): {
        *FED,
        "breaker",
        "connectors",
        "residual_current_device",
        "shared_with",
        "transformer",
        "wires",
        "dedicated_to",
        "place",
        "at.across",
        "at.depth",
    },
    ("power", "outlet"): {
        "rating",
        "breaker",
        "count",
        "phases",
        "place",
        "fed_from",
        "for-hours",
        "residual_current_device",
    },
    ("power", "load"): {"on"},
}
"""What the checks read that are more than comparisons."""


def wanted_of(rules: Iterable[Rule]) -> Wanted:
    """The values that rules and checks read, by section and kind of item."""
    wanted = {place: {*names, LISTED} for place, names in BEYOND_RULES.items()}
    for rule in rules:
        names = {rule.value, *rule.otherwise, *(name for name, _ in rule.where), LISTED}
        wanted.setdefault((rule.section, rule.item), set()).update(names)
        for item, value in rule.also:
            wanted.setdefault((rule.section, item), set()).update({value, LISTED})
        if rule.elsewhere:
            section, item, value = rule.elsewhere
            wanted.setdefault((section, item), set()).update({value, LISTED})
        if rule.beside:
            wanted.setdefault((rule.section, rule.beside), set()).add("dead")
        for kind in WHOLES:
            wanted.setdefault((rule.section, kind), set()).add(rule.whole)
    return wanted
