"""A way to the mix position is no way to the deck, whatever the house calls the mix position."""

import pytest

from builder.fit.interpreter import fit
from tests.fit.sample import Record, asks, item, pack, rider, value

NAMES = ("Mix position", "FOH", "Desk island", "Plats 7")


def routes(mix: str) -> list[Record]:
    """A dock with a narrow way to the deck and a wide one to the mix position."""
    dock = item("dock", "Dock", approach=value("Street"), trucks_at_once=value("1", 1.0))
    return [
        dock,
        item(
            "route",
            "To the deck",
            from_dock=value("Dock"),
            to_place=value("Upstage left"),
            tightest_width=value("1 m", 1.0),
        ),
        item(
            "route",
            "To the mix",
            from_dock=value("Dock"),
            to_place=value(mix),
            tightest_width=value("3 m", 3.0),
        ),
    ]


def house(mix: str) -> Record:
    """A house that calls its mix position so."""
    return pack(access=routes(mix), sound=[item("mix", mix)])


def trucks() -> Record:
    """One truck with a case of 2 m."""
    sizes = {"length": None, "height": None, "weight": None, "case_height": None}
    asked = asks("trucks", sort="trucks", count=1.0, case_width=2.0, case_weight=None, **sizes)
    return {**asked, "department": "access"}


def verdict(record: Record, need: Record) -> str:
    """The verdict on one need."""
    found: str = fit(record, [rider(need)])["verdicts"][0]["verdict"]
    return found


@pytest.mark.parametrize("name", NAMES)
def test_a_case_that_only_the_way_to_the_mix_position_takes_is_short(name: str) -> None:
    assert verdict(house(name), trucks()) == "short"


@pytest.mark.parametrize("name", NAMES)
def test_a_need_of_width_leaves_the_way_to_the_mix_position_out(name: str) -> None:
    widths = [rule["key"] for rule in house(name)["rules"] if rule["value"] == "tightest_width"]
    assert [verdict(house(name), asks(key, low=2.0)) for key in widths] == ["short"] * len(widths)
    assert widths


def test_a_place_of_another_name_is_a_way_like_any_other() -> None:
    record = pack(access=routes("Upstage right"), sound=[item("mix", "Desk island")])
    assert verdict(record, trucks()) != "short"
