"""
What the supports of a hang carry, case by case: all level, and with each support slack in turn.
"""

from collections.abc import Sequence
from typing import TypedDict

from builder.fit.hangs.records import Cases
from builder.fit.hangs.sentences import TIPS, UNRESOLVED
from builder.formulas.beams import BodyLoad
from builder.formulas.contact import hung_body, level_case, slack_case


class CasesFound(TypedDict):
    """What each support carries in each case, or ``why`` that cannot be told. [kg]"""

    cases: Cases
    why: str


def cases_of(loads: Sequence[BodyLoad], places_m: list[float]) -> CasesFound:
    """
    What each support carries in the order they are given: level first, then each support of three
    or more slack where the others still hold the body.
    """
    body = hung_body(loads, places_m)
    if len(places_m) == 1:
        return {"cases": [[body["weight"][0]]], "why": ""}
    found = [level_case(body)]
    if found[0]["stability"] == "tips":
        return {"cases": [], "why": TIPS}
    if len(places_m) > 2:
        found += [slack_case(body, gone) for gone in body["order"]]
    if any(case["stability"] == "unresolved" for case in found):
        return {"cases": [], "why": UNRESOLVED}
    return {"cases": [case["kg"] for case in found if case["stability"] != "tips"], "why": ""}
