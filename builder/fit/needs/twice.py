"""Whether a rider asks one thing twice, as a file may and a form does not."""

from builder.fit.records import RiderAsked


def asks_twice(rider: RiderAsked) -> bool:
    """Whether two needs of a rider ask the same thing."""
    things = [need["what"] for need in rider["requirements"] if need["sort"] == "rule"]
    return len(set(things)) < len(things)
