"""When the house is closed, as a crew writes it and as its pages tell it."""

import pytest

from builder.departments.house.description import House
from builder.document import Caution
from builder.overview.closures import closures
from builder.pack import Pack, Revision, Standing
from builder.reading.absent import Absent
from builder.reading.problems import Refused
from builder.reading.reader import read
from builder.registry import DEPARTMENTS
from tests.departments.test_house import HOUSE, published


def problems(closed: str) -> list[str]:
    """What a text under `closed` is refused for."""
    with pytest.raises(Refused) as refused:
        read(f"{HOUSE}closed: {closed}\n", file="house.yml", kind=House)
    return [str(problem) for problem in refused.value.problems]


def first_page(closed: str) -> str:
    """What the first page tells of a house whose revision is of 2026-01-02."""
    section = published(f"closed: {closed}\n").section
    pack = Pack("A", Revision("1", "2026-01-02", "e", ""), (section,), ())
    told = ""
    for block in closures(pack):
        assert isinstance(block, Caution)
        assert block.title == "Closed"
        told += "".join(part for part in block.words if isinstance(part, str))
    return told


def test_a_closure_is_an_item_with_both_of_its_ends() -> None:
    section = published(
        "closed: [{from: 2026-07, until: Further notice, why: Works., departments: [flying]}]\n"
    ).section
    (item,) = section.of_kind("closure")
    assert [item.text(key) for key in ("from", "until", "why", "departments")] == [
        "2026-07",
        "further notice",
        "Works.",
        "flying",
    ]
    assert (item.key, item.name) == ("house.closure.1", "Some departments")


def test_an_end_that_is_unknown_stays_so() -> None:
    (item,) = published("closed: [{from: unknown, until: 2026-08-15}]\n").section.of_kind("closure")
    fact = item.fact("from")
    assert fact is not None
    assert (fact.standing, fact.value) == (Standing.UNKNOWN, None)


@pytest.mark.parametrize(
    ("text", "standing"),
    [("none", Standing.NONE), ("unknown", Standing.UNKNOWN)],
)
def test_that_nothing_is_closed_or_that_nobody_knows_is_told(text: str, standing: Standing) -> None:
    identity = published(f"closed: {text}\n").section.item("identity")
    assert identity is not None
    fact = identity.fact("closed")
    assert fact is not None
    assert fact.standing is standing
    assert published("").section.of_kind("closure") == ()


def test_left_out_it_is_closed_on_no_day() -> None:
    house = read(HOUSE, file="house.yml", kind=House)
    assert house.closed is Absent.NOT_STATED


@pytest.mark.parametrize(
    ("closed", "message"),
    [
        (
            "[{from: 2026-08-15, until: 2026-07-01}]",
            "closed[1].until: '2026-07-01' is before 2026-08-15, from when it is closed; write the"
            " earlier day under 'from' [closure-backwards]",
        ),
        (
            "[{from: 2026-08, until: 2026-07}]",
            "closed[1].until: '2026-07' is before 2026-08, from when it is closed; write the"
            " earlier day under 'from' [closure-backwards]",
        ),
        (
            "[{from: unknown, until: unknown}]",
            "closed[1] has a day at neither of its ends, so no show can be told whether it is met;"
            " write since when, if only the month or the year, or until when [closure-dateless]",
        ),
        (
            "[{from: unknown, until: further notice}]",
            "closed[1] has a day at neither of its ends, so no show can be told whether it is met;"
            " write since when, if only the month or the year, or until when [closure-dateless]",
        ),
        (
            "[{from: 2026-07-01, until: none}]",
            "closed[1].until: 'none' is no day; write a day, 'unknown', or 'until: further notice'"
            " where no end is set [closure-dateless]",
        ),
        (
            "[{from: 2026-07-01, until: 1 August}]",
            "closed[1].until: '1 August' is not a date, year first; write year-month-day, like"
            " 2026-03-02, or only the month or the year, like 2026-03 or 2026, or 'further notice'"
            " where no end is set [date-unreadable]",
        ),
    ],
)
def test_ends_that_cannot_be_are_refused_in_a_sentence(closed: str, message: str) -> None:
    (problem,) = problems(closed)
    assert problem.endswith(message)


@pytest.mark.parametrize("closed", ["[{from: 2026-07-01}]", "[{until: 2026-07-01}]"])
def test_one_end_alone_is_asked_for_the_other(closed: str) -> None:
    (problem,) = problems(closed)
    assert problem.endswith("[missing-key]")


def test_without_any_date_both_ends_are_asked_for() -> None:
    found = problems("[{why: works}]")
    assert len(found) == 2
    assert all(problem.endswith("[missing-key]") for problem in found)


@pytest.mark.parametrize(
    "closed",
    ["[{from: 2026, until: 2026-07-01}]", "[{from: 2026-07-01, until: 2026-07}]"],
)
def test_a_month_or_a_year_may_hold_the_other_end(closed: str) -> None:
    assert len(published(f"closed: {closed}\n").section.of_kind("closure")) == 1


def test_every_department_but_the_house_itself_can_be_closed() -> None:
    every = [department.key for department in DEPARTMENTS if department.key != "house"]
    text = f"closed: [{{from: 2026-07-01, until: 2026-07-02, departments: [{', '.join(every)}]}}]\n"
    (item,) = published(text).section.of_kind("closure")
    assert item.text("departments") == ", ".join(every)


def test_the_first_page_tells_what_is_closed_from_the_day_of_the_revision_on() -> None:
    told = first_page(
        "[{from: 2026-07-01, until: 2026-08-15, why: New boards},"
        " {from: unknown, until: 2026-01, departments: [rigging, flying]},"
        " {from: 2025-07-01, until: 2025-12}]"
    )
    assert "The whole house, from 2026-07-01 until 2026-08-15. New boards." in told
    assert "Rigging, flying, from a day not known yet until 2026-01." in told
    assert "2025" not in told


@pytest.mark.parametrize("closed", ["none", "unknown", "[{from: 2025, until: 2026-01-01}]"])
def test_what_is_over_takes_no_room_on_the_first_page(closed: str) -> None:
    assert first_page(closed) == ""
