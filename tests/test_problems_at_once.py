"""What is wrong in several files is told in one go, as far as it can be known."""

from collections.abc import Mapping

import pytest

from builder.pipeline import venue_of
from builder.reading.problems import Refused

HOUSE = (
    "name: Hall\ntown: Town\nwhat: unknown\nsetting: indoors\nlanguage: 2\n"
    'revision: {number: "1", on: 2026-06-01, by: crew}\n'
)
STAGE = (
    "datum: {centre_line: A stud., reference_line: The deck's edge.}\ndecks: unknown\n"
    "places: [{name: Left, area: stage left}]\n"
)
POWER = (
    "supplies: [{name: Intake, system: 230/400 V three phase, rating: 400 A}]\n"
    "outlets: [{place: Left, connector: Sixteen, count: 2, rating: 16 A, phases: L1, fed_from: %s}]"
    "\n"
)


def problems(texts: Mapping[str, str]) -> list[tuple[str, str, str]]:
    """The file, code and value of each problem of a venue."""
    with pytest.raises(Refused) as refused:
        venue_of({"house.yml": HOUSE, **texts})
    return [(each.where.file, each.code, each.value) for each in refused.value.problems]


def test_a_wrong_name_is_told_together_with_what_is_wrong_in_another_file() -> None:
    told = problems({"stage.yml": STAGE + "wigns: []\n", "power.yml": POWER % "Intaek"})
    assert ("stage.yml", "unknown-key", "") in [(file, code, "") for file, code, _ in told]
    assert ("power.yml", "reference-unknown", "Intaek") in told


def test_a_name_that_a_file_with_a_fault_may_give_is_not_called_wrong() -> None:
    told = problems({"stage.yml": STAGE + "wigns: []\n", "power.yml": POWER % "Intake"})
    assert [file for file, _, _ in told] == ["stage.yml"]


def test_without_the_fault_the_same_name_is_told_where_nothing_bears_it() -> None:
    stage = STAGE.replace("name: Left", "name: Right")
    told = problems({"stage.yml": stage, "power.yml": POWER % "Intake"})
    assert told == [("power.yml", "reference-unknown", "Left")]


def test_a_photo_that_is_not_there_is_told_together_with_other_faults() -> None:
    stage = STAGE.replace("area: stage left", "area: stage left, photo: left.jpg")
    told = problems({"stage.yml": stage, "power.yml": "wigns: []\n"})
    assert ("stage.yml", "photo-missing", "left.jpg") in told
    assert {file for file, _, _ in told} == {"stage.yml", "power.yml"}


def test_a_language_that_is_newer_is_told_alone() -> None:
    newer = HOUSE.replace("language: 2", "language: 99")
    told = problems({"house.yml": newer, "stage.yml": STAGE + "wigns: []\n"})
    assert len(told) == 1
