"""Descriptions without names and words of what is for the house only."""

from builder.departments.house import House
from builder.departments.power.description import Power
from builder.house_only.sealing import HOUSE_ONLY, has_house_only, public_photos, sealed
from builder.reading.in_part import Between
from tests.departments.powered import described
from tests.house_only.rooms import venue

PUBLIC = {"house.yml": (", house_only: yes", ""), "power.yml": (", house_only: yes", "")}


def power(changes: dict[str, tuple[str, str]] | None = None) -> Power:
    """The sealed description of the small house's power."""
    found = sealed(venue(changes).descriptions).descriptions["power"]
    assert isinstance(found, Power)
    return found


def test_a_hidden_line_loses_its_name_and_its_words_and_keeps_its_numbers() -> None:
    (board,) = power().boards
    assert (board.name, board.note, board.fed_from) == (HOUSE_ONLY, None, "Switch")
    assert board.rating == venue().descriptions["power"].boards[0].rating  # type: ignore[attr-defined]
    load = power().standing_loads[-1]
    assert (load.what, load.verified.by if load.verified else "") == (HOUSE_ONLY, "the house")


def test_what_refers_to_a_hidden_line_refers_to_its_new_name() -> None:
    assert {outlet.fed_from for outlet in power().outlets} == {HOUSE_ONLY}
    assert {load.on for load in power().standing_loads} == {HOUSE_ONLY}


HIDDEN_BOARD = """
boards:
  - name: Vault board
    house_only: yes
    verified: {on: 2026-01-01, by: safe maker, how: measured}
    fed_from: Switch
    rating: 16 A
    feeder: {length: 10 m, conductor: 2.5 mm²}
"""


def test_what_stands_in_a_hidden_line_tells_no_more_of_who_checked_it() -> None:
    found = sealed({"power": described(HIDDEN_BOARD)}).descriptions["power"]
    assert isinstance(found, Power)
    (board,) = found.boards
    assert board.verified is not None
    assert board.feeder is not None
    assert board.feeder.verification == board.verified
    assert board.verified.by == "the house"


def test_hidden_lines_stand_last_in_their_list() -> None:
    assert [load.what for load in power().standing_loads] == ["Lamps", HOUSE_ONLY]
    house = sealed(venue().descriptions).descriptions["house"]
    assert isinstance(house, House)
    assert [contact.role for contact in house.contacts] == ["Sound", HOUSE_ONLY]
    assert house.contacts[1].phone is None


def test_the_new_name_is_unlike_every_name_of_the_house() -> None:
    found = power({"power.yml": ("Switch", "For the house ONLY")})
    assert [board.name for board in found.boards] == [f"{HOUSE_ONLY} 2"]


def test_a_file_without_hidden_lines_is_the_same_file() -> None:
    there = venue(PUBLIC).descriptions
    assert not has_house_only(there)
    found = sealed(there).descriptions
    assert all(found[key] is file for key, file in there.items())


def test_a_photo_is_published_unless_only_hidden_lines_show_it() -> None:
    there = venue().descriptions
    photos = {"a.png": b"", "b.png": b""}
    assert public_photos(photos, there) == photos
    house = there["house"]
    assert isinstance(house, House)
    secret = house.contacts[0].model_copy(update={"photo": "a.png"})
    for public, left in ((None, {"b.png"}), ("a.png", {"a.png", "b.png"})):
        other = house.contacts[1].model_copy(update={"photo": public})
        files = {**there, "house": house.model_copy(update={"contacts": (secret, other)})}
        assert public_photos(photos, files).keys() == left


def test_two_hidden_lines_have_two_names() -> None:
    second = "boards:\n  - {name: Vault board, fed_from: Switch, house_only: yes}\n"
    found = power({"power.yml": ("boards:\n", second)})
    assert [board.name for board in found.boards] == [HOUSE_ONLY, f"{HOUSE_ONLY} 2"]


def test_what_is_disputed_on_a_hidden_line_stays_disputed_and_nobody_says_it() -> None:
    sides = "{disputed: [{says: 32 A, by: safe maker}, {says: 40 A, by: plate, on: 2019}]}"
    (board,) = power({"power.yml": ("rating: 32 A", f"rating: {sides}")}).boards
    assert isinstance(board.rating, Between)
    assert board.rating.value == f"disputed: 32 A ({HOUSE_ONLY}) or 40 A ({HOUSE_ONLY})"
    assert {(saying.by, saying.on) for saying in board.rating.sayings} == {(HOUSE_ONLY, "")}
