"""Lines for the house only: which can be, and what is told of those that cannot."""

import pytest

from builder.departments.house.description import House
from builder.reading.house_only import hidden_within
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.reading.references import name_of

HOUSE = """\
name: The Shed
what: A shed.
town: Nowhere
setting: indoors
time_zone: Europe, central
revision: {number: 1, on: 2026-01-02, by: technical manager}
"""


def problems(text: str) -> list[str]:
    """What is wrong with a house's text."""
    with pytest.raises(Refused) as refused:
        read(HOUSE + text, file="house.yml", kind=House)
    return [str(problem) for problem in refused.value.problems]


def test_a_limit_that_a_show_has_to_keep_cannot_be_hidden() -> None:
    text = "curfews: [{days: all, music_ends: 23:00, strictness: hard, house_only: yes}]\n"
    assert problems(text) == [
        "house.yml:7:72 curfews[1].house_only: 'yes' cannot be: a show has to keep to it; leave"
        " house_only out; what only the house may know goes into a line of its own"
        " [house-only-public]"
    ]


def test_what_is_offered_to_visitors_cannot_be_hidden() -> None:
    text = "contacts: [{role: Night, about: Fire, terms: included, house_only: yes}]\n"
    assert problems(text) == [
        "house.yml:7:68 contacts[1].house_only: 'yes' does not go with terms: included; leave terms"
        " out, or house_only: visitors cannot use what they are not told of [house-only-terms]"
    ]


def test_a_line_that_says_no_is_public() -> None:
    text = "contacts: [{role: Night, about: Fire, house_only: no}, {role: B, about: C}]\n"
    assert list(hidden_within(read(HOUSE + text, file="house.yml", kind=House))) == []


def test_all_that_stands_in_a_hidden_line_is_hidden_and_nothing_after_it() -> None:
    text = (
        "contacts:\n"
        "  - {role: Night, about: Fire, house_only: yes,"
        " verified: {on: 2026-01-01, by: crew, how: memory}}\n"
        "  - {role: Day, about: Shows}\n"
    )
    hidden = list(hidden_within(read(HOUSE + text, file="house.yml", kind=House)))
    assert [type(record).__name__ for record in hidden] == ["Contact", "Verification"]
    assert name_of(hidden[0]) == "Night"
