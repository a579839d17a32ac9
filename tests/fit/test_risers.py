"""Risers of wanted sizes, from the pieces that the house has."""

from typing import Any

import pytest

from builder.fit.interpreter import fit
from builder.registry import RULES
from builder.rider.asked import rider_of
from tests.fit.sample import Record, item, pack, value


def pieces(
    name: str,
    count: Record | None,
    *heights_m: float,
    rolling: str = "",
    size: tuple[float, float] = (2.0, 1.0),
) -> Record:
    """Pieces in stock."""
    told = value(", ".join(f"{each} m" for each in heights_m))
    more = {"count": count} if count is not None else {}
    more |= {"rolling": value(rolling)} if rolling else {}
    return item(
        "riser",
        name,
        **more,
        heights={**told, "settings": list(heights_m)},
        width=value(f"{size[0]} m", size[0]),
        depth=value(f"{size[1]} m", size[1]),
    )


DECKS = pieces("Deck", value("14", 14.0), 0.2, 0.4, 0.6, rolling="no")
DRUMS = pieces("Drum riser", value("2", 2.0), 0.4, rolling="yes", size=(2.4, 2.4))


def answers(risers: str, *stock: Record) -> list[Any]:
    """The verdicts on some risers."""
    rider = rider_of(f"act: A\nrisers:\n{risers}\n", file="a.yml", rules=RULES)
    return fit(pack(stage=list(stock)), [rider])["verdicts"]


def word(risers: str, *stock: Record) -> str:
    """The verdict on some risers without a note."""
    (found,) = answers(f"  - {risers}", *stock)
    return str(found["verdict"].split(",")[0])


@pytest.mark.parametrize(
    ("riser", "verdict"),
    [
        ("{for: brass, width: 8 m, depth: 2 m, height: 0.4 m}", "fits"),  # eight of fourteen
        ("{for: brass, width: 8 m, depth: 4 m, height: 0.4 m}", "short"),  # sixteen
        ("{for: brass, width: 8 m, depth: 2 m, height: 0.5 m}", "short"),
        ("{for: brass, width: 8 m, depth: 2 m}", "fits"),
        ("{for: drums, width: 2.4 m, depth: 2.4 m, height: 16 in, rolling: yes}", "fits"),
        ("{for: drums, width: 2.4 m, depth: 2.4 m, count: 3, rolling: yes}", "short"),
        ("{for: keys, width: 2 m, depth: 2 m, height: 0.2 m, rolling: yes}", "short"),
    ],
)
def test_a_riser_is_made_of_pieces(riser: str, verdict: str) -> None:
    assert word(riser, DECKS, DRUMS) == verdict


def test_what_it_is_made_of_is_told_and_that_it_is_larger() -> None:
    (found,) = answers("  - {for: drums, width: 2 m, depth: 2 m, rolling: yes}", DRUMS)
    assert found["parts"][0]["reason"] == "One Drum riser, 2.40 m by 2.40 m."
    assert found["parts"][0]["notes"] == ["It is larger than asked."]
    (found,) = answers("  - {for: brass, width: 8 m, depth: 2 m, height: 0.4 m}", DECKS)
    assert found["parts"][0]["reason"] == "8 of Deck: 8.00 m by 2.00 m, 400 mm high."


def test_no_piece_is_in_two_risers_and_the_ways_to_share_are_all_tried() -> None:
    eight = "{for: brass, width: 8 m, depth: 2 m, height: 0.4 m}"
    assert [each["verdict"] for each in answers(f"  - {eight}\n  - {eight}", DECKS)] == ["short"]
    small = "  - {for: keys, width: 2 m, depth: 1 m, height: 0.4 m}"
    large = "  - {for: drums, width: 2.4 m, depth: 2.4 m, height: 0.4 m}"
    two = pieces("Deck", value("1", 1.0), 0.4)
    one = pieces("Drum riser", value("1", 1.0), 0.4, size=(2.4, 2.4))
    for stock in ((one, two), (two, one)):
        assert answers(f"{small}\n{large}", *stock)[0]["verdict"].startswith("fits")


@pytest.mark.parametrize(
    "stock",
    [
        pieces("Deck", None, 0.4, rolling="no"),
        pieces("Deck", value(standing="unknown"), 0.4, rolling="no"),
        pieces("Deck", value("14", 14.0), rolling="no"),
    ],
)
def test_what_nobody_says_of_the_pieces_is_asked(stock: Record) -> None:
    assert word("{for: brass, width: 8 m, depth: 2 m, height: 0.4 m}", stock) == "ask"


def test_pieces_that_may_roll_are_asked_and_a_house_without_risers_too() -> None:
    silent = pieces("Deck", value("14", 14.0), 0.4)
    assert word("{for: keys, width: 2 m, depth: 1 m, rolling: yes}", silent) == "ask"
    assert word("{for: keys, width: 2 m, depth: 1 m}") == "ask"


def test_a_riser_that_only_should_be_there_makes_none_short_that_must() -> None:
    risers = (
        "  - {for: brass, width: 8 m, depth: 2 m}\n"
        "  - {for: choir, width: 8 m, depth: 8 m, strictness: should}"
    )
    found = answers(risers, DECKS)
    assert [(each["verdict"].split(",")[0], each["strictness"]) for each in found] == [
        ("fits", "must"),
        ("short", "should"),
    ]
