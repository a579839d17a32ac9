"""A space's own file with what all share of that department, of files as small as the question."""

import pytest

from builder.departments.access.description import Access
from builder.departments.house.description import House
from builder.reading.absent import Absent, listed
from builder.reading.reader import read
from builder.reading.written import DepartmentFile
from builder.spaces.merging import in_space, joined, of_space, of_the_house
from tests.stock.small import HOUSE

SOME = "[{name: Lifter, kind: forklift, count: 1, capacity: 2 t}]"


def access(text: str = "{}") -> Access:
    """A file of the way in."""
    return read(text, file="access.yml", kind=Access)


def both(shared: str, own: str) -> Access:
    """What all share with what a space says."""
    found = joined(access(shared), access(own))
    assert isinstance(found, Access)
    return found


def parking(*names: str) -> str:
    """A list of parking."""
    return "parking:\n" + "".join(f"  - {{what: {name}, count: 1}}\n" for name in names)


CARS, VANS = parking("cars", "vans"), parking("trucks")


def test_lists_stand_one_after_the_other_and_each_line_keeps_its_number() -> None:
    found = both(CARS, VANS)
    assert [line.what for line in found.parking] == ["cars", "vans", "trucks"]
    assert [line.number_in_list for line in found.parking] == [1, 2, 3]
    assert [line.number_in_list for line in both("{}", VANS).parking] == [1]
    three = both(parking("cars", "vans", "buses"), VANS)
    assert [line.number_in_list for line in three.parking] == [1, 2, 3, 4]


@pytest.mark.parametrize(
    ("shared", "own", "left"),
    [
        (SOME, "unknown", Absent.UNKNOWN),
        ("unknown", SOME, Absent.UNKNOWN),
        ("none", "unknown", Absent.UNKNOWN),
        ("unknown", "none", Absent.NONE),
        ("none", "", Absent.NONE),
        ("unknown", "", Absent.UNKNOWN),
        ("", "none", Absent.NONE),
        ("", "", Absent.NOT_STATED),
    ],
)
def test_what_one_of_two_files_knows_less_of_is_known_less(
    shared: str, own: str, left: Absent
) -> None:
    shared, own = (f"vehicles: {said}" if said else "{}" for said in (shared, own))
    assert both(shared, own).vehicles is left


def test_lists_of_which_one_file_says_none_or_nothing_are_those_of_the_other() -> None:
    for other in ("none", ""):
        said = f"vehicles: {other}" if other else "{}"
        assert len(listed(both(said, f"vehicles: {SOME}").vehicles)) == 1
    assert len(listed(both(f"vehicles: {SOME}", "{}").vehicles)) == 1


def test_what_is_no_list_is_what_the_space_says_else_what_all_share() -> None:
    assert both("largest_case: 2 m", "largest_case: 1 m").largest_case == "1 m"
    assert both("largest_case: 2 m", "{}").largest_case == "2 m"
    assert both("{}", "largest_case: 1 m").largest_case == "1 m"
    assert both("largest_case: 2 m", "largest_case: unknown").largest_case is Absent.UNKNOWN
    assert both("largest_case: 2 m", "largest_case: none").largest_case is Absent.NONE


def test_notes_of_both_stand_one_behind_the_other() -> None:
    assert both("note: All.", "note: Own.").note == "All. Own."
    assert both("note: All.", "{}").note == "All."
    assert both("{}", "note: Own.").note == "Own."


def test_a_key_has_its_place_where_it_was_written() -> None:
    found = both("parking: []\n\n\nlargest_case: 2 m", "loaders: two\n" + VANS)
    assert found.where("largest_case").line == 4
    assert found.where("loaders").line == 1
    assert found.parking[0].where().line == 3


def test_both_files_count_as_written() -> None:
    found = both("largest_case: 2 m", "loaders: two")
    assert {"largest_case", "loaders"} <= found.model_fields_set
    assert "storage" not in found.model_fields_set


def test_a_file_of_one_alone_is_that_file() -> None:
    shared, own = access(CARS), access(VANS)
    assert of_space({"access": shared}, {}, "Hall") == {"access": shared}
    assert of_space({}, {"access": own}, "Hall") == {"access": own}
    found = of_space({"access": shared}, {"access": own}, "Hall")["access"]
    assert isinstance(found, Access)
    assert len(found.parking) == 3


CONFIGURED = HOUSE.replace(
    "capacity: 200}",
    "capacity: 200}\n  - {name: Own, audience: seated, capacity: 90, spaces: [%s]}",
)
CLOSED = "closed:\n  - {from: 2026-08, until: 2026-09, why: Floor., spaces: [Studio B]}\n"


def house(text: str) -> House:
    """A house's file."""
    return read(text, file="house.yml", kind=House)


def names(file: DepartmentFile) -> list[str]:
    """The configurations of a house."""
    assert isinstance(file, House)
    return [line.name for line in file.configurations]


@pytest.mark.parametrize(
    ("spaces", "space", "left"),
    [
        ("studio b", "Studio B", ["As it is", "Own"]),
        ("Studio B, Hall", "Hall", ["As it is", "Own"]),
        ("Studio B", "Hall", ["As it is"]),
    ],
)
def test_a_space_has_the_lines_of_all_and_its_own(spaces: str, space: str, left: list[str]) -> None:
    file = house(CONFIGURED % spaces)
    assert names(in_space(file, space)) == left
    assert names(of_the_house(file)) == ["As it is"]


def test_a_file_of_which_every_line_is_of_the_space_stays_as_it_was() -> None:
    file = house(CONFIGURED % "Hall")
    assert in_space(file, "Hall") is file
    plain = house(HOUSE)
    assert of_the_house(plain) is plain


def test_where_all_lines_are_of_others_the_house_says_nothing_of_this_space() -> None:
    found = in_space(house(HOUSE + CLOSED), "Hall")
    assert isinstance(found, House)
    assert found.closed is Absent.NOT_STATED
    own = in_space(house(HOUSE + CLOSED), "Studio B")
    assert isinstance(own, House)
    assert len(listed(own.closed)) == 1
    only = HOUSE.replace("capacity: 200}", "capacity: 200, spaces: [Hall]}")
    assert names(in_space(house(only), "Studio B")) == []


def test_lists_of_plain_words_stand_one_after_the_other() -> None:
    other = house(HOUSE + "also_known_as: [The Hut]\n")
    found = joined(house(HOUSE + "also_known_as: [The Shack]\n"), other)
    assert isinstance(found, House)
    assert found.also_known_as == ("The Shack", "The Hut")
