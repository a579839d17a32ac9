"""
The house's hoists for the hangs that ask for them: whether enough are left, and whether the
strongest lifts what comes on each support.
"""

from typing import Any

from builder.fit.hangs.loads import on
from builder.fit.hangs.points import issue
from builder.fit.values import known_number, number_of
from builder.fit.verdicts import ASK, SHORT, Record, fact_of
from builder.fit.wording import both, digits

MORE = "Bring hoists, or hire them."
STRONGER = "Spread the load over more supports, or bring stronger hoists."
QUESTION = "How many of your hoists are free, of what rating?"


def hoist_issues(
    hang: Record, brought: Record, sums: dict[str, Record], section: Record
) -> list[Record]:
    """
    What stands against hanging from the house's hoists, those of earlier hangs counted.

    Which hoist goes where is the riggers' to say.
    """
    if hang["hoists"] != "house":
        return []
    wanted = (sums["house hoists"]["count"] if "house hoists" in sums else 0) + len(
        hang["supports"]
    )
    sums["house hoists"] = {"count": wanted}
    hoists = [
        item
        for item in section["items"]
        if item["kind"] == "hoist" and item["condition"] != "out of service"
    ]
    if len(hoists) == 0:
        return []
    return [*enough(wanted, hoists), *strong(hang, brought, hoists)]


def enough(wanted: int, hoists: list[Record]) -> list[Record]:
    """Whether the house has that many left."""
    total = 0.0
    for item in hoists:
        if number_of(item, "free") is None:
            return [
                issue(
                    ASK,
                    "The house has not said how many of its hoists are left.",
                    question=QUESTION,
                )
            ]
        total += known_number(item, "free")
    if wanted <= total:
        return []
    reason = (
        "The house has "
        + digits(total, 0)
        + " hoists left, and the show's hangs so far ask for "
        + digits(wanted, 0)
        + "."
    )
    return [
        {
            **issue(SHORT, reason, remedy=MORE),
            "fact": fact_of(hoists[0]["values"]["free"], hoists[0]),
        }
    ]


def strong(hang: Record, brought: Record, hoists: list[Record]) -> list[Record]:
    """
    Whether the strongest hoist is rated for the heaviest support.

    The house's factor is left out: a hoist's rating has its maker's own.
    """
    strongest: Any = None
    for item in hoists:
        rating_kg = number_of(item, "rating")
        if rating_kg is None:
            return [
                issue(
                    ASK,
                    "The house has not said what all of its hoists are rated for.",
                    question=QUESTION,
                )
            ]
        if strongest is None or rating_kg > known_number(strongest, "rating"):
            strongest = item
    most_kg = known_number(strongest, "rating")
    for index in range(len(hang["supports"])):
        level_kg = on(brought["low"], [[index, 1.0]], 0.0, most=False) / brought["factor"]
        worst_kg = on(brought["high"], [[index, 1.0]], 0.0, most=True) / brought["factor"]
        if worst_kg > most_kg + 0.001:
            reason = (
                "The house's strongest hoist is rated "
                + both("mass", most_kg)[0]
                + ", and up to "
                + both("mass", worst_kg)[0]
                + " come on one support."
            )
            if level_kg > most_kg + 0.001:
                return [issue(SHORT, reason, remedy=STRONGER)]
            return [
                issue(
                    ASK,
                    reason,
                    question=(
                        "May a hoist take that while another is slack, or how is that kept from"
                        " happening?"
                    ),
                )
            ]
    return []
