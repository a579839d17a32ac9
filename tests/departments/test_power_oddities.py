"""What is odd about ratings, spots and feeders, and what is not."""

import pytest

from builder.departments.power.oddities import oddities
from tests.departments.powered import INTAKE, SWITCH, described


def odd(text: str) -> list[str]:
    """What is odd about some power."""
    return [finding.sentence for finding in oddities(described(text), "metric")]


@pytest.mark.parametrize(
    ("rating", "breaker"),
    [("125 A", "125 A"), ("200 A", "125 A"), ("100 A", "400 A"), ("unknown", "125 A")],
)
def test_a_rating_of_the_size_of_its_breaker_is_usual(rating: str, breaker: str) -> None:
    usual = SWITCH.replace("rating: 125 A", f"rating: {rating}").replace(
        "breaker: 125 A", f"breaker: {breaker}"
    )
    told = odd(INTAKE + usual)
    assert bool(told) == (rating == "100 A")


def test_a_rating_ten_times_its_breaker_is_told_with_what_would_go_with_it() -> None:
    assert odd(INTAKE + SWITCH.replace("rating: 125 A", "rating: 1250 A")) == [
        "Switch is rated 1250 A, and its breaker is set to 125 A. Is the decimal point in the wrong"
        " place? Then write '125 A'."
    ]


def test_a_breaker_ten_times_the_rating_is_told_too() -> None:
    assert odd(INTAKE + SWITCH.replace("breaker: 125 A", "breaker: 1.25 kA")) == [
        "Switch is rated 125 A, and its breaker is set to 1.25 kA. Is the decimal point in the"
        " wrong place? Then write '1,250 A'."
    ]


AT = "at: {across: 3 m SL, depth: 2 m US, height: 1 m up}"


def test_two_sources_on_one_spot_are_told_unless_one_is_out_of_service() -> None:
    first = f"{{name: A, fed_from: Intake, rating: 63 A, {AT}}}"
    second = f"{{name: B, fed_from: Intake, rating: 63 A, {AT}"
    assert odd(f"{INTAKE}services: [{first}, {second}}}]\n") == [
        "A and B are at one spot, 3 m SL, 2 m US, 1 m up. Was a line copied, or is a side, SL or"
        " SR, US or DS, written wrong?"
    ]
    out = f"{INTAKE}services: [{first}, {second}, condition: out of service}}]\n"
    assert odd(out) == []


def test_a_feeder_shorter_than_the_straight_line_is_told() -> None:
    intake = INTAKE.replace("630 A}", "630 A, at: {across: 0 m, depth: 0 m}}")
    feeder = "feeder: {length: %s}, at: {across: 12 m SL, depth: 9 m US}"
    text = f"{intake}services: [{{name: S, fed_from: Intake, rating: 63 A, {feeder}}}]\n"
    assert odd(text % "14 m") == [], "15 m, less a metre at the ends"
    assert odd(text % "13.9 m") == [
        "The feeder of S: a path of 13.9 m is stated, but Intake and S are 15.00 m apart in a"
        " straight line. Measure the cable's own way, not the distance."
    ]
    assert odd(text % "unknown") == []
