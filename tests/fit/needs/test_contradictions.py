"""Two needs of one rider that nothing meets both are told, and asked of the act."""

import pytest

from builder.fit.interpreter import fit
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record, pack

AMOUNTS = ("at least: 1 m", "at most: 0.9 m")


def told(*needs: str) -> list[Record]:
    """The verdicts on some needs of one act."""
    listed = "".join(f"  - {{{need}}}\n" for need in needs)
    rider = rider_of(f"act: Act\nneeds:\n{listed}", file="a.yml", rules=RULES)
    return [dict(answer) for answer in fit(pack(), [rider])["verdicts"]]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("one", "other", "both"),
    [
        ("what: deck height, at least: 1 m", "what: deck height, at most: 0.9 m", False),
        ("what: deck height, at most: 0.9 m", "what: deck height, at least: 1 m", False),
        ("what: deck height, at least: 1 m", "what: deck height, at most: 1.2 m", True),
        ("what: deck height, at least: 1 m", "what: deck height, at most: 1 m", True),
        ("what: deck height, at least: 4 ft", "what: deck height, at most: 1219.2 mm", True),
        (
            "what: deck height, between: [1 m, 1.2 m]",
            "what: deck height, between: [1.3 m, 1.4 m]",
            False,
        ),
        ("what: haze, is: yes", "what: haze, is: no", False),
        ("what: haze, is: yes", "what: haze, is: yes", True),
        ("what: deck height, at least: 1 m", "what: stage width, at least: 0.9 m", True),
        ("what: wedges, at least: 9", "what: wedges, at least: 4", True),
    ],
)
def test_what_nothing_meets_is_told_at_the_later_line(one: str, other: str, both: bool) -> None:
    first, second = told(one, other)
    assert not any("nothing meets both" in note for note in first["notes"])
    assert any("nothing meets both" in note for note in second["notes"]) != both
    if not both:
        assert "rider line 3" in second["notes"][-1]


def test_the_act_is_asked_which_one_holds() -> None:
    listed = "  - {what: haze, is: yes}\n  - {what: haze, is: no}\n"
    rider = rider_of(f"act: Act\nneeds:\n{listed}", file="a.yml", rules=RULES)
    asked = fit(pack(), [rider])["act_questions"]  # type: ignore[arg-type]
    assert [each["act"] for each in asked] == ["Act"]
    (question,) = asked[0]["questions"]
    assert question.startswith("Nothing meets both: Act, rider line 4: Haze allowed")
    assert question.endswith("Which one holds?")


def test_what_the_show_brings_itself_contradicts_nothing() -> None:
    needs = [f"what: deck height, {amount}, carried by: show" for amount in AMOUNTS]
    assert [each["notes"] for each in told(*needs)] == [[], []]
    assert told(*(f"what: deck height, {amount}" for amount in AMOUNTS))[1]["notes"] != []
