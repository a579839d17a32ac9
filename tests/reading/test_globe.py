"""Positions on the globe."""

import pytest

from builder.reading.globe import beyond_globe


@pytest.mark.parametrize(
    "text",
    [
        "54.0000 N, 8.2000 E",
        "54.0000, 8.2000",
        "-33.9, 151.2",
        "N 54.0, E 8.2",
        "54° 30' 12\" N, 8° 12' E",
        "90 N, 180 W",
        "8.2 E, 54.0 N",
        "151.2 E, 33.9 S",
        "behind the church",
        "gate 7",
        "grid reference 54 0000 8",
        "",
    ],
)
def test_what_is_on_the_globe_or_is_no_position_is_not_told(text: str) -> None:
    assert beyond_globe(text) == ""


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("540000 N, 8.2000 E", "latitude ends at 90 degrees"),
        ("154.0, 8.2", "latitude ends at 90 degrees"),
        ("90° 0' 1\" N, 8 E", "latitude ends at 90 degrees"),
        ("54.0 N, 182.0 E", "longitude ends at 180 degrees"),
        ("8.2, -190", "longitude ends at 180 degrees"),
        ("54° 72' N, 8° E", "72 minutes are more than a degree has"),
        ("54° 12' 60\" N, 8° E", "60 seconds are more than a minute has"),
    ],
)
def test_what_is_nowhere_on_earth_says_why(text: str, why: str) -> None:
    assert beyond_globe(text) == why
