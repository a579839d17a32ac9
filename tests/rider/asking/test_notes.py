"""What a rider notes about a need is told with the verdict and in the question."""

from builder.fit.interpreter import fit
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import pack

TEXT = """
act: Act
revision: {number: 1, on: 2026-01-02, by: rider}
needs:
  - {what: stage width, at least: 12 m, note: Zq without the side fills}
  - any of: [{what: dock height, at least: 1 m}, {what: forklifts, at least: 1}]
    note: Zq one of both
hangs:
  - {name: Banner, hoists: none, supports: [{point: P1, load: 20 kg}], note: Zq comes down early}
"""


def test_a_note_stands_in_the_verdict_and_in_the_question() -> None:
    rider = rider_of(TEXT, file="rider.yml", rules=RULES)
    answers = fit(pack(stage=[], access=[], rigging=[]), [rider])["verdicts"]
    for answer, note in zip(
        answers, ("without the side fills", "one of both", "comes down early"), strict=True
    ):
        assert f"(Zq {note})" in answer["need"]
    assert "Zq without the side fills" in answers[0]["question"]
