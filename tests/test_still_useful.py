"""
Knowing in part must not turn everything into questions: what is asked of the demo, a house that
knows nearly all, is listed here, each with the fact that it lacks or the reason.
"""

import pytest

from builder.fit.interpreter import fit
from builder.fit.published import fit_record
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.knowing_less import usual_pack
from tests.sweep import ROOT

NO_DEPARTMENT = "no department describes it yet"
TRAILER = "the house's limit is for tractor and trailer, and the rider tells one of them or neither"
COLUMN = "a column stands in that wing, so that less of it is clear"
ASKED = {
    "arena": {
        "What one point may carry": "the limit of some points is unknown",
        "Radio channels at once": NO_DEPARTMENT,
    },
    "club": {
        "Radio channels at once": NO_DEPARTMENT,
        "Level of the show": "the rider does not say what its level is",
    },
    "theatre": {
        "Radio channels at once": NO_DEPARTMENT,
        "Hang: Back truss": "it fits beside hoists that share as planned, and not at their worst",
        "Trucks and the largest case": TRAILER,
        "A question": "the rider asks one",
    },
    "modest": {
        "Depth of the stage right wing": COLUMN,
        "Radio channels at once": NO_DEPARTMENT,
        "Moving lights": NO_DEPARTMENT,
        "Trucks and the largest case": TRAILER,
    },
}
"""The needs of each rider that are asked, and why."""


@pytest.mark.parametrize("act", sorted(ASKED))
def test_the_demo_is_asked_no_more_than_what_it_lacks(act: str) -> None:
    text = (ROOT / "tests" / "riders" / f"{act}.yml").read_text("utf-8")
    result = fit(fit_record(usual_pack("demo")), [rider_of(text, file=f"{act}.yml", rules=RULES)])
    asked = [answer["title"] for answer in result["verdicts"] if answer["verdict"] == "ask"]
    assert sorted(asked) == sorted(ASKED[act])
