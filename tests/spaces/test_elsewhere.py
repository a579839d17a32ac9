"""What other spaces draw from what all share, of files as small as the question."""

import pytest

from builder.departments.power.description import Power
from builder.reading.absent import listed
from builder.spaces.elsewhere import (
    drawing,
    files_elsewhere,
    free_name,
    loads_in,
    sources_in,
)
from tests.departments.powered import INTAKE, SWITCH, described

BOARD = "boards: [{name: Board, fed_from: Switch, rating: 63 A}]\n"
OWN_BOARD = "boards: [{name: Board, fed_from: Own, rating: 63 A}]\n"
OWN = "supplies: [{name: Own, system: 230/400 V three phase, rating: 100 A}]\n"


def loads(*lines: str) -> str:
    """Standing loads of a kilowatt each: what, and on which source."""
    told = (line.split(" on ") for line in lines)
    return "standing_loads:\n" + "".join(
        f"  - {{what: {what}, on: {source}, draws: 1 kW, phases: all, power_factor: 1.0}}\n"
        for what, source in told
    )


def counted(text: str, *, taken: frozenset[str] = frozenset()) -> Power | None:
    """A power file of the hall as another space counts it; None where it draws from no other."""
    found = drawing({"power": described(text)}, "Hall", [], taken)
    power = found.get("Hall/power")
    assert len(found) == (power is not None)
    assert power is None or isinstance(power, Power)
    return power


def told(power: Power | None) -> tuple[list[str], list[tuple[str, str]]]:
    """The boards of a file, and its loads with what feeds them."""
    assert power is not None
    boards = [f"{each.name} from {each.fed_from}" for each in power.boards]
    return boards, [(each.what, str(each.on)) for each in listed(power.standing_loads)]


def test_a_board_on_what_all_share_counts_with_its_loads_under_the_name_of_its_space() -> None:
    found = told(counted(BOARD + loads("Dimmers on Board", "Fan on Switch")))
    assert found == (
        ["Hall: Board from Switch"],
        [("Hall: Dimmers", "Hall: Board"), ("Hall: Fan", "Switch")],
    )


def test_a_load_on_what_all_share_counts_without_a_board() -> None:
    assert told(counted(loads("Fan on Switch"))) == ([], [("Hall: Fan", "Switch")])


def test_what_a_space_has_of_its_own_takes_nothing_from_others() -> None:
    assert counted(OWN + OWN_BOARD + loads("Dimmers on Board", "Fan on Own")) is None


def test_a_name_that_another_file_writes_so_is_not_given_again() -> None:
    found = told(counted(BOARD, taken=frozenset({"Hall: Board", "Hall: Board (2)"})))
    assert found[0] == ["Hall: Board (3) from Switch"]
    assert free_name("Board", "Hall", frozenset()) == "Hall: Board"
    assert free_name("Board", "Hall", frozenset({"Hall: Board"})) == "Hall: Board (2)"


def test_what_stands_in_the_usual_configuration_counts_and_in_every_one_then() -> None:
    text = (
        "standing_loads:\n"
        "  - {what: Fan, on: Switch, draws: 1 kW, phases: all, configurations: [Usual]}\n"
        "  - {what: Heater, on: Switch, draws: 1 kW, phases: all, configurations: [Other]}\n"
    )
    (found,) = drawing({"power": described(text)}, "Hall", ["Usual", "Other"], frozenset()).values()
    assert isinstance(found, Power)
    (fan,) = listed(found.standing_loads)
    assert (fan.what, fan.configurations) == ("Hall: Fan", ())


def test_sources_and_the_sources_that_loads_name() -> None:
    text = described(INTAKE + SWITCH + BOARD + loads("Fan on Switch", "Lamp on Elsewhere"))
    assert sources_in(text) == {"Intake", "Switch", "Board"}
    assert {"Switch", "Elsewhere"} <= set(loads_in(text))


@pytest.mark.parametrize(("department", "count"), [("power", 1), ("sound", 0)])
def test_the_files_of_a_department_in_other_spaces(department: str, count: int) -> None:
    files = {"power": described(INTAKE + SWITCH), "Hall/power": described(BOARD)}
    found = files_elsewhere(files, department)
    assert len(found) == count
    assert all(each is files["Hall/power"] for each in found)
