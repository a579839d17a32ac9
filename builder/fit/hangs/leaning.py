"""What to know of the checks of the house's rules and stock that a hang leans on."""

from builder.fit.hangs.bridle_rules import lean_rules
from builder.fit.hangs.hoist_weights import working_hoists
from builder.fit.hangs.points import points_beside
from builder.fit.hangs.records import Place
from builder.fit.hangs.spacing import may_be_loaded, spacing_rule
from builder.fit.notes import check_notes, once
from builder.fit.records import HangAsked, Item, Section
from builder.fit.sections import items_of

HOISTS_KNOWN = ("show", "counted", "none")
"""What a rider says of hoists where the house's own do not count."""


def rule_notes(
    hang: HangAsked, places: list[Place], loaded: list[str], section: Section
) -> list[str]:
    """
    The checks of rules, hoists and neighbours that decide about a hang; ``loaded`` are the points
    that the show loads so far, by their keys.
    """
    rules = items_of(section, "dynamic_factor")
    if hang["hoists"] not in HOISTS_KNOWN:
        rules = [*rules, *working_hoists(section)]
    for place in places:
        rules = [*rules, *rules_for(place, loaded, section)]
    return once([note for rule in rules for note in check_notes(rule)])


def rules_for(place: Place, loaded: list[str], section: Section) -> list[Item]:
    """
    What decides about one support: what hangs beside it, and of a bridle whether it may be there.
    """
    point = place["item"]
    if point is not None:
        if spacing_rule(point, section) is None:
            return []
        beside = points_beside(point, section)
        return [other for other in beside if may_be_loaded(other, loaded)]
    rules = items_of(section, "bridles_allowed")
    for leg in place["legs"]:
        rules = [*rules, *lean_rules(leg["item"], section)]
    return rules
