"""
Where the program fails on one need, it is told as not judged, and the others are judged.

Not beside the tests of the check, for those are played again in the browser, which fails nowhere.
"""

import logging
from typing import Any

import pytest

from builder.fit import net, requirements, whole_day
from builder.fit.interpreter import fit
from builder.fit.sentences import BY_HAND, NOT_JUDGED
from tests.fit.sample import Record, asks, item, pack, rider, value

HOUSE = pack(
    stage=[item("deck", "Deck", usable_width=value("12 m", 12.0), usable_depth=value("9 m", 9.0))]
)


def failing_on(monkeypatch: pytest.MonkeyPatch, module: Any, name: str, wrong: Any) -> None:
    """Let a function of a module fail where what it is given first is wrong."""
    usual = getattr(module, name)

    def failing(given: Any, *more: Any) -> Any:
        if wrong(given):
            raise KeyError("boom")
        return usual(given, *more)

    monkeypatch.setattr(module, name, failing)


def words_of(*needs: Record) -> list[tuple[str, str]]:
    """Each verdict's word and reason."""
    answers = fit(HOUSE, [rider(*needs)])["verdicts"]
    return [(answer["verdict"], answer["reason"]) for answer in answers]


def power(use: str) -> Record:
    """A feed for a use."""
    asked = asks(use, sort="power", use=use, current_a=16.0, count=1.0, phases="three")
    return {
        **asked,
        "system": "",
        "connector": "",
        "within_m": None,
        "of": "",
        "apart": False,
        "more": None,
    }


def hang(title: str) -> Record:
    """A hang on a point that the house does not have."""
    support = {"point": "X", "across_m": None, "depth_m": None, "apex_m": None, "at_m": 0.0}
    asked = asks(title, sort="hang", loads=[], hoists="none", hoist_kg=0.0)
    return {**asked, "supports": [{**support, "load_kg": 10.0}]}


def trim(title: str) -> Record:
    """How high the hang before it goes."""
    return asks(title, sort="trim", trim_m=5.0, below_m=1.0)


def test_one_need_that_cannot_be_judged_is_a_question_and_stops_no_other(
    monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    failing_on(monkeypatch, requirements, "compared", lambda need: need["what"] == "stage width")
    caplog.set_level(logging.DEBUG, "housepack")
    result = fit(HOUSE, [rider(asks("stage width", low=10.0), asks("stage depth", low=8.0))])
    first, second = result["verdicts"]
    assert (first["verdict"], first["reason"]) == ("ask", NOT_JUDGED)
    assert first["question"] == f"{BY_HAND} (Act, rider line 3: stage width, at least.)"
    assert second["verdict"] == "fits"
    assert result["verdict"] == "ask"
    assert "KeyError" in caplog.text


def test_a_load_that_cannot_be_judged_leaves_the_others_together(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    failing_on(monkeypatch, net, "power_for_all", lambda all_: any(n["use"] == "b" for n in all_))
    first, second, third = words_of(power("a"), power("b"), power("c"))
    assert second == ("ask", NOT_JUDGED)
    assert first[1] == third[1] != NOT_JUDGED


def test_a_hang_that_cannot_be_judged_takes_its_trims_along(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    failing_on(monkeypatch, net, "hangs_for_all", lambda all_: any(n["title"] == "b" for n in all_))
    needs = (hang("a"), trim("a"), hang("b"), trim("of b"), hang("c"), trim("of c"))
    reasons = [reason for _, reason in words_of(*needs)]
    assert [reason == NOT_JUDGED for reason in reasons] == [False, False, True, True, False, False]


def test_a_day_that_cannot_be_judged_is_one_question_and_leaves_every_need(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    failing_on(monkeypatch, whole_day, "day_sums", bool)
    result = fit(HOUSE, [rider(asks("stage width", low=10.0))])
    assert [answer["verdict"] for answer in result["verdicts"]] == ["fits", "ask"]
    day = result["verdicts"][-1]
    assert (day["act"], day["reason"]) == ("The day", NOT_JUDGED)
    assert result["day"] == []
