"""The stage seen from the house, on the first page."""

import re

import pytest

from builder.overview.elevation import elevation
from builder.pipeline import pack_of, venue_of
from tests.stock.small import TEXTS

DECK = (
    TEXTS["stage.yml"]
    .replace("usable_width: 9 m", "usable_width: 16.0 m\n    height: 1.35 m")
    .replace("clear_height: 6 m", "clear_height: 9.1 m")
)


def drawn(deck: str) -> str:
    """The drawing's markup for a stage of this text, empty where there is none."""
    picture = elevation(pack_of(venue_of({**TEXTS, "stage.yml": deck})))
    return picture.svg if picture else ""


def test_the_drawing_is_to_scale() -> None:
    """
    By hand: the deck is 16.0 m wide and 1.35 m high, so its outline is 11.85 times as wide as high.
    """
    corners = re.search(r'<polygon points="([^"]+)" stroke-width="2.5"', drawn(DECK))
    assert corners
    places = [tuple(float(part) for part in corner.split(",")) for corner in corners[1].split()]
    across, up = (max(values) - min(values) for values in zip(*places, strict=True))
    assert across / up == pytest.approx(16.0 / 1.35, rel=0.01)


def test_the_drawing_shows_the_houses_own_words() -> None:
    svg = drawn(DECK.replace("16.0 m", '"52 ft 6 in"').replace("9.1 m", "30 ft"))
    assert "52 ft 6 in" in svg
    assert "30 ft" in svg


def test_a_house_that_does_not_state_width_or_height_has_no_drawing() -> None:
    assert drawn(DECK.replace("usable_width: 16.0 m", 'usable_width: "?"')) == ""
    assert drawn(DECK.replace(" height: 1.35 m", ' height: "?"')) == ""


def test_without_a_clear_height_no_limit_is_drawn() -> None:
    assert "9.1 m" in drawn(DECK)
    assert "9.1 m" not in re.sub(
        r"<(title|desc).*?</\1>",
        "",
        drawn(DECK.replace("clear_height: 9.1 m", "clear_height: none")),
    )
