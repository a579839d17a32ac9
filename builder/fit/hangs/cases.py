"""
What loads bring to the supports of a hang, case by case: all level, and with each support slack in
turn.
"""

from collections.abc import Sequence
from typing import TypedDict

from builder.fit.hangs.records import Cases
from builder.fit.hangs.sentences import TIPS, UNRESOLVED
from builder.formulas.beams import BodyLoad
from builder.formulas.contact import hung_body, level_case, slack_case
from builder.formulas.unrelieved import EVERY, Ways, ways_held


class CasesFound(TypedDict):
    """What each load brings to each support in each case, or ``why`` that cannot be told. [kg]"""

    cases: Cases
    why: str


def cases_of(loads: Sequence[BodyLoad], places_m: list[float]) -> CasesFound:
    """
    What each load brings to each support in the order they are given: level first, then with each
    support of three or more slack.

    Where the body would tip with one slack, fewer of its loads may yet hang so: that case counts
    too.
    """
    body = hung_body(loads, places_m)
    if len(places_m) == 1:
        return {"cases": [ways_held(loads, places_m, [body["weight"][0]], EVERY)], "why": ""}
    level = level_case(body)
    if level["stability"] == "tips":
        return {"cases": [], "why": TIPS}
    slack = list(body["order"]) if len(places_m) > 2 else []
    found = [slack_case(body, gone) for gone in slack]
    if any(case["stability"] == "unresolved" for case in [level, *found]):
        return {"cases": [], "why": UNRESOLVED}
    cases = [ways_held(loads, places_m, level["kg"], EVERY)]
    for gone, case in zip(slack, found, strict=True):
        carried_kg = case["kg"] if len(case["kg"]) > 0 else [0.0] * len(places_m)
        cases.append(ways_held(loads, places_m, carried_kg, gone))
    return {"cases": cases, "why": ""}


def one_case(carried_kg: list[float]) -> Ways:
    """What supports carry where nobody says of what loads."""
    return [[carried_kg]]
