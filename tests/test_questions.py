"""
What the demo, which is well described, still asks of two shows: each question with what is missing.
A new one is a fact that the demo lacks, or a rule that asks too much.
"""

import pytest

from tests.knowing_less import usual_verdicts

ASKED = {
    "arena.yml": {
        "What one point may carry": "one point (M-5) has a rating that the house does not know",
        "Radio channels at once": "no line of the demo says how many its radio takes at once",
    },
    "theatre.yml": {
        "Radio channels at once": "no line of the demo says how many its radio takes at once",
        "Hang: Back truss": "between its level and its worst, beside the house's hangs",
        "Trucks and the largest case": "the rider gives the trailer alone",
        "A question": "the rider asks",
    },
}
ACTS = {"arena.yml": "The Slow Comet", "theatre.yml": "Pale Ferrymen"}


@pytest.mark.parametrize("rider", ASKED)
def test_a_well_described_house_is_asked_only_what_it_does_not_say(rider: str) -> None:
    asked = [
        title
        for (act, _, title, _), verdict in usual_verdicts("demo").items()
        if act == ACTS[rider] and verdict["verdict"] == "ask"
    ]
    assert sorted(asked) == sorted(ASKED[rider])
