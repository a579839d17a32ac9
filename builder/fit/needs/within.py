"""The needs that stand within one that is made of others."""

from builder.fit.records import NeedAsked, Requirement, RiderAsked


def needs_in(need: Requirement) -> list[NeedAsked]:
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
    if need["sort"] == "if":
        return [need["condition"], *needs_in(need["then"])]
    return []


def has_composed(riders: list[RiderAsked]) -> bool:
    """Whether a rider asks something that is made of other needs, or by class."""
    return any(
        need["sort"] == "any"
        or need["sort"] == "all"
        or need["sort"] == "if"
        or need["sort"] == "classes"
        for rider in riders
        for need in rider["requirements"]
    )
