"""Which lines are there in which configuration, of a file as small as the question."""

import pytest

from builder.by_configuration.standing import Standing, standings, there_in
from builder.departments.sound.description import Sound
from builder.reading.absent import Absent, listed
from builder.reading.reader import read

KEYS = "model: Box, count: 4, spacing: 1 m, at: unknown, fed: own feed"
NAMES = ("End stage", "Thrust", "In the round")
DESK = "mix_position: {place: Rear, width: 3 m, depth: 2 m}\n"


def sound(text: str) -> Sound:
    """A file of sound."""
    return read(text, file="sound.yml", kind=Sound)


def subs(*lines: str) -> str:
    """A list of subs: each a name and what follows it."""
    told = (f"  - {{name: {line.replace(';', f', {KEYS}', 1)}}}\n" for line in lines)
    return "subs:\n" + "".join(told)


USUAL = "Front;, configurations: [End stage]"
THRUST = "Sides;, configurations: [thrust, In the round]"


def there(standing: Standing) -> list[str]:
    """The subs that are there."""
    (file,) = standing.descriptions.values()
    assert isinstance(file, Sound)
    return [line.name for line in listed(file.subs)]


def test_each_configuration_has_the_lines_that_name_it_and_those_that_name_none() -> None:
    found = standings({"sound": sound(subs(USUAL, "Always;", THRUST))}, NAMES)
    assert [(each.configurations, there(each)) for each in found] == [
        (("End stage",), ["Front", "Always"]),
        (("Thrust", "In the round"), ["Always", "Sides"]),
    ]


def test_configurations_with_the_same_lines_are_together_wherever_they_stand() -> None:
    found = standings({"sound": sound(subs(THRUST))}, ("Thrust", "End stage", "In the round"))
    assert [each.configurations for each in found] == [("Thrust", "In the round"), ("End stage",)]


@pytest.mark.parametrize(("lines", "names"), [("Always;", NAMES), (THRUST, ())])
def test_a_house_where_nothing_moves_or_that_names_none_stands_in_one_way(
    lines: str, names: tuple[str, ...]
) -> None:
    files = {"sound": sound(subs(lines))}
    (found,) = standings(files, names)
    assert found.configurations == ()
    assert found.descriptions is files


def test_where_none_of_a_list_is_there_the_house_has_none() -> None:
    left = there_in({"sound": sound(subs(USUAL))}, "Thrust")["sound"]
    assert isinstance(left, Sound)
    assert left.subs is Absent.NONE


def test_a_file_of_which_all_is_there_stays_as_it_was() -> None:
    file = sound(subs("Always;"))
    assert there_in({"sound": file}, "Thrust")["sound"] is file


DRIVE = (
    "drive_lines:\n"
    "  - {name: Sub, feeds: [front, Sides, Always], signals: [analogue]}\n"
    "  - {name: Left, feeds: [Always], signals: [analogue]}\n"
)


@pytest.mark.parametrize(
    ("name", "feeds"), [("End stage", ("front", "Always")), ("Thrust", ("Sides", "Always"))]
)
def test_a_list_of_names_loses_what_is_not_there_and_nothing_else(
    name: str, feeds: tuple[str, ...]
) -> None:
    file = sound(subs(USUAL, "Always;", THRUST) + DRIVE)
    left = there_in({"sound": file}, name)["sound"]
    assert isinstance(left, Sound)
    sub, other = listed(left.drive_lines)
    assert sub.feeds == feeds
    assert other is listed(file.drive_lines)[1]
    assert left.room is file.room


def test_a_file_of_which_every_list_of_names_changes_is_changed() -> None:
    alone = DRIVE[: DRIVE.index("  - {name: Left")]
    left = there_in({"sound": sound(subs(USUAL, "Always;") + alone)}, "Thrust")["sound"]
    assert isinstance(left, Sound)
    assert [line.feeds for line in listed(left.drive_lines)] == [("Sides", "Always")]


OTHERS = (
    "other_mix_positions:\n"
    "  - {place: Side, width: 2 m, depth: 2 m, configurations: [Thrust]}\n"
    "  - {place: Above, width: 1 m, depth: 1 m, configurations: [In the round]}\n"
)


@pytest.mark.parametrize(
    ("name", "place"), [("End stage", "Rear"), ("Thrust", "Side"), ("In the round", "Above")]
)
def test_the_mix_position_of_a_configuration_takes_the_place_of_the_usual_one(
    name: str, place: str
) -> None:
    left = there_in({"sound": sound(DESK + OTHERS)}, name)["sound"]
    assert isinstance(left, Sound)
    assert not isinstance(left.mix_position, Absent)
    assert left.mix_position.place == place
    assert left.other_mix_positions == ()
