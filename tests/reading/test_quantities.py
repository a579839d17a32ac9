"""Quantities in both systems, read exactly."""

import pytest

from builder.reading import quantities as q


@pytest.mark.source("the yard and pound agreement of 1959: 1 ft = 0.3048 m, 1 in = 25.4 mm, exact")
@pytest.mark.parametrize(
    ("text", "m"),
    [
        ("18.3 m", 18.3),
        ("60 ft", 18.288),
        ("27'-10 1/2\"", 8.4963),
        ("27' 10.5\"", 8.4963),
        ("27′ 10½″", 8.4963),
        ("27 ft 10 in", 8.4836),
        ("27ft-10in", 8.4836),
        ("950 mm", 0.95),
        ('9"', 0.2286),
        ("-0' 6\"", -0.1524),
        ("−2 m", -2.0),
        (".5 m", 0.5),
        ("1,200 MM", 1.2),
        ("3/4 in", 0.01905),
        ("1 mile", 1609.344),
        ("2e3 mm", 2.0),
    ],
)
def test_a_length_is_read_exactly_in_either_system(text: str, m: float) -> None:
    assert q.Length.parse(text).m == m


def test_the_authors_wording_is_kept_with_its_white_space_folded() -> None:
    assert q.Length.parse("  27′   10½″ ").text == "27′ 10½″"
