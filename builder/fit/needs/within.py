"""The needs that stand within one that is made of others."""

from builder.fit.records import NeedAsked, Requirement, RiderAsked, WayAsked


def needs_in(need: Requirement | WayAsked) -> list[NeedAsked]:
    """Every need that a rule answers, of a requirement: itself, or those that it is made of."""
    if need["sort"] == "rule":
        return [need]
    if need["sort"] == "all":
        return need["all"]
    if need["sort"] == "any":
        found: list[NeedAsked] = []
        for part in need["any"]:
            found.extend(needs_in(part))
        return found
    if need["sort"] == "if" or need["sort"] == "way":
        return [need["condition"], *needs_in(need["then"])]
    return []


MADE_OF_OTHERS = ("any", "all", "if", "classes", "loads", "risers")
JOINT = ("power", "loads", "hang", "trim")
"""What is judged beside all others of its sort."""


def has_composed(riders: list[RiderAsked]) -> bool:
    """
    Whether a rider asks something that is made of other needs, by class, only to be told, of
    single-phase circuits, or of a feed more than a form holds.
    """
    return any(asks_more(need) for rider in riders for need in rider["requirements"])


def asks_more(need: Requirement) -> bool:
    """Whether a need is judged by what a page loads only for a rider that has such a one."""
    if need["sort"] == "power":
        return need["more"] is not None or need["phases"] == "single"
    if need["sort"] == "rule":
        return need["way"] == "tell"
    return need["sort"] in MADE_OF_OTHERS


def is_joint(need: Requirement) -> bool:
    """Whether something is judged beside all others of its sort."""
    return need["sort"] in JOINT


def has_ways(requirements: list[Requirement]) -> bool:
    """Whether a load or a hang counts on a condition, or a load can be fed in several ways."""
    return any(
        need["sort"] == "loads" or (need["sort"] == "if" and need["then"]["sort"] in JOINT)
        for need in requirements
    )
