"""What is odd about hours and addresses, and what is not."""

import pytest

from builder.departments.house.description import House
from builder.departments.house.oddities import oddities
from builder.reading.reader import read

HOUSE = (
    "name: H\nwhat: a hall\ntown: T\nsetting: indoors\ntime_zone: UTC\n"
    "revision: {number: 1, on: 2026-06-01, by: me}\n"
)


def odd(text: str) -> list[str]:
    """What is odd in a house's file."""
    return [
        finding.sentence for finding in oddities(read(HOUSE + text, file="house.yml", kind=House))
    ]


@pytest.mark.parametrize(
    ("from_", "until", "told"),
    [
        ("14:00", "15:30", ""),
        ("22:00", "07:00", ""),
        ("20:00", "12:00", ""),
        ("19:59", "12:00", "16 h 1 min"),
        ("15:30", "14:00", "22 h 30 min"),
        ("3:30 pm", "2 pm", "22 h 30 min"),
        ("12:00", "12:00", "24 h"),
    ],
)
def test_quiet_hours_that_leave_no_day_are_asked_about(from_: str, until: str, told: str) -> None:
    found = odd(f'quiet_hours: [{{days: daily, from: "{from_}", until: "{until}"}}]\n')
    expected = f"The quiet hours of daily go from {from_} until {until}: {told}. Is it from {until} until {from_}?"  # noqa: E501
    assert found == ([expected] if told else [])


def test_quiet_hours_that_nobody_told_are_not_odd() -> None:
    assert odd("quiet_hours: unknown\n") == []
    assert odd("quiet_hours: none\n") == []
    assert odd("") == []


@pytest.mark.parametrize("mail", ["a@b.example", "stage.left@hall", "first.last+tech@x.y.example"])
def test_a_mail_address_needs_one_sign_with_something_on_both_sides(mail: str) -> None:
    assert odd(f"contacts: [{{role: R, about: all, mail: {mail}}}]\n") == []


@pytest.mark.parametrize("mail", ["sound.hall.example", "'@hall'", "a@", "a@b@c", "ask at a@b"])
def test_what_is_no_mail_address_is_told(mail: str) -> None:
    (sentence,) = odd(f"contacts: [{{role: R, about: all, mail: {mail}}}]\n")
    assert sentence.startswith("The mail address of R is '")
    assert sentence.endswith("it needs one @ with a name before it and a host behind it.")


@pytest.mark.parametrize(
    ("phone", "count"), [("+00 5550 101", 0), ("ext. 7", 0), ("see the website", 1)]
)
def test_a_telephone_number_has_a_digit(phone: str, count: int) -> None:
    assert len(odd(f"contacts: [{{role: R, about: all, phone: {phone}}}]\n")) == count


def test_an_address_in_words_is_no_position_on_the_globe() -> None:
    address = "addresses: [{use: trucks, lines: [Gate 2], position: %s}]\n"
    assert odd(address % "by the weighbridge") == []
    assert odd(address % "95.1 N, 8.2 E".join("''")) == [
        "The position of the address for trucks is '95.1 N, 8.2 E', and latitude ends at 90"
        " degrees. Are latitude and longitude exchanged, or is the decimal point missing?"
    ]
