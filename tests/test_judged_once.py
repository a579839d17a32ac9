"""
A need is judged again in another configuration only where other lines of the house stand for it.

Not beside the tests of the check, for it counts calls, and those are played again in the browser.
"""

from typing import Any

import pytest

from builder.fit import requirements
from builder.fit.interpreter import fit
from tests.fit.sample import Record, a_list, asks, item, pack, rider, value

NAMES = ("A", "B", "C")


def house() -> Record:
    """Three configurations on two decks; docks and power are the same in all."""
    decks = [
        item("deck", name, usable_width=value("9 m", 9.0), configurations=a_list(*where))
        for name, where in (("One", ("A", "B")), ("Other", ("C",)))
    ]
    configurations = [item("configuration", name, capacity=value("9", 9.0)) for name in NAMES]
    return pack(house=configurations, stage=decks, access=[item("dock", "Dock")], power=[])


@pytest.mark.parametrize(
    ("what", "times"), [("stage width", 2), ("capacity", 3), ("dock spaces", 1), ("points", 1)]
)
def test_a_need_is_judged_once_for_each_set_of_lines_that_it_looks_at(
    monkeypatch: pytest.MonkeyPatch, what: str, times: int
) -> None:
    calls: list[str] = []
    usual = requirements.compared

    def counting(need: Any, *more: Any) -> Any:
        calls.append(need["what"])
        return usual(need, *more)

    monkeypatch.setattr(requirements, "compared", counting)
    result = fit(house(), [rider(asks(what, low=1.0))])
    assert len(result["others"]) == 2
    assert calls == [what] * times


def test_loads_and_hangs_of_all_acts_are_placed_once(monkeypatch: pytest.MonkeyPatch) -> None:
    calls: list[int] = []

    def counting(hangs: list[Any], _: Any) -> list[Any]:
        calls.append(len(hangs))
        return [requirements.not_judged(hang) for hang in hangs]

    monkeypatch.setattr(requirements, "hangs_in_net", counting)
    monkeypatch.setattr(requirements, "power_in_net", counting)
    hang = asks("Truss", sort="hang")
    assert len(fit(house(), [rider(hang, hang)])["others"]) == 2
    # Loads beside places of the stage section, of which two sets stand; hangs beside the steel.
    assert sorted(calls) == [0, 0, 2]
