"""Which values are put at their ends, in which groups, of files as small as the question."""

from fractions import Fraction

import pytest

from builder.both_ends.inputs import (
    Descriptions,
    Inexact,
    corners,
    groups,
    inexact,
    keys_of,
    middle,
)
from builder.departments.power.description import Power
from builder.reading.absent import listed
from builder.reading.in_part import Between, amount_of
from tests.departments.powered import INTAKE, described


def services(*ratings: str) -> str:
    """Services of these ratings."""
    told = (
        f"  - {{name: S{number}, fed_from: Intake, system: 230/400 V three phase,"
        f" rating: {rating}}}\n"
        for number, rating in enumerate(ratings, 1)
    )
    return f"{INTAKE}services:\n{''.join(told)}"


def power(text: str) -> dict[str, Power]:
    """The file of power alone."""
    return {"power": described(text)}


def found(files: Descriptions) -> list[tuple[str, object, object]]:
    """Each value with two ends: its keys and its ends. [SI]"""
    return [
        (keys_of(each.path), amount_of(each.known.least), amount_of(each.known.most))
        for each in inexact(files)
    ]


def test_a_value_with_two_ends_that_moves_figures_one_way_is_found_and_no_other() -> None:
    assert found(power(services("63 to 125 A", "100 A", "at least 80 A", "unknown"))) == [
        ("services.rating", 63.0, 125.0)
    ]
    assert found({"Hall/power": described(services("63 to 125 A"))}) == [
        ("services.rating", 63.0, 125.0)
    ]
    assert found({"sound": described(services("63 to 125 A"))}) == []


def load(draws: str) -> str:
    """A standing load."""
    return f"{INTAKE}standing_loads: [{{what: Fan, on: Intake, draws: {draws}}}]\n"


@pytest.mark.parametrize(
    ("draws", "ends"),
    [
        ("2 to 3 kW", [("standing_loads.draws", 2000.0, 3000.0)]),
        ("up to 3 kW", [("standing_loads.draws", 0.0, 3000.0)]),
        ("at least 2 kW", []),
        ("3 kW", []),
    ],
)
def test_what_a_load_draws_is_never_below_nothing(draws: str, ends: list[object]) -> None:
    assert found(power(load(draws))) == ends


def test_an_upper_end_alone_is_none_where_nothing_says_that_it_begins_at_nothing() -> None:
    assert found(power(services("up to 125 A"))) == []


def value(file: str, *path: str | int) -> Inexact:
    """A value of which nobody needs to know what it is."""
    return Inexact(file, path, Between("1 to 2", 1, 2))


def of_lines(file: str, counts: list[int]) -> list[Inexact]:
    """So many values in each line of a file."""
    return [
        value(file, "list", line, f"key {number}")
        for line, count in enumerate(counts)
        for number in range(count)
    ]


@pytest.mark.parametrize(
    ("values", "sizes"),
    [
        ([], []),
        (of_lines("a", [2, 2]), [4]),
        (of_lines("a", [2]) + of_lines("b", [2]), [4]),
        (of_lines("a", [2, 2]) + of_lines("b", [1]), [4, 1]),
        (of_lines("a", [2, 3]) + of_lines("b", [4]), [2, 3, 4]),
        (of_lines("a", [5, 4, 1]), [4, 1]),
        (of_lines("a", [1] * 12), [1] * 8),
    ],
)
def test_values_are_worked_out_four_together_else_by_file_else_by_line(
    values: list[Inexact], sizes: list[int]
) -> None:
    made = groups(values)
    assert [len(group) for group in made] == sizes
    if sum(sizes) == len(values):
        assert [each for group in made for each in group] == values


def ratings(files: Descriptions) -> list[object]:
    """The ratings of the services, in A."""
    file = files["power"]
    assert isinstance(file, Power)
    return [getattr(each.rating, "si", None) for each in listed(file.services)]


def test_the_corners_are_every_combination_of_ends_the_last_value_changing_first() -> None:
    files = power(services("63 to 125 A", "100 A", "16 to 32 A"))
    (group,) = groups(tuple(inexact(files)))
    assert [ratings(each) for each in corners(files, group)] == [
        [63.0, 100.0, 16.0],
        [63.0, 100.0, 32.0],
        [125.0, 100.0, 16.0],
        [125.0, 100.0, 32.0],
    ]


def test_the_middle_lies_between_the_ends() -> None:
    files = power(services("63 to 125 A", "100 A", "16 to 32 A"))
    (group,) = groups(tuple(inexact(files)))
    assert ratings(middle(files, group)) == [float(Fraction(63 + 125, 2)), 100.0, 24.0]
    assert isinstance(listed(files["power"].services)[0].rating, Between)
