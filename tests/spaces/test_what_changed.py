"""What changed between two states of a house of several stages, each thing told once."""

import pytest

from builder.files import read_folder
from builder.pack import Pack
from builder.pipeline import pack_of, venue_of
from builder.stock.comparison import compare
from builder.stock.telling import as_text, difference_words
from tests.spaces.houses import ROOT, edited, pack, rooms, texts_with

HALL, STUDIO = "spaces/hall/", "spaces/studio-b/"
DRAWS = "draws: 12 kW"


def told(before: Pack, after: Pack) -> list[str]:
    """What changed but for findings, line by line under its department."""
    found = []
    for part in compare(before, after).parts:
        found += [part.title, *(f"  {difference_words(each)}" for each in part.differences)]
    return found


def test_what_all_spaces_share_is_told_once() -> None:
    lines = told(pack(), pack(edited("power.yml", DRAWS, "draws: 13 kW")))
    assert lines[0] == "Power, all spaces"
    assert sum("Ventilation, draws" in line for line in lines) == 1
    assert not [line for line in lines if line.startswith("Power, Great hall")]


def test_what_is_of_one_space_is_told_of_that_space_alone() -> None:
    lines = told(
        pack(),
        pack(
            edited(
                f"{HALL}rigging.yml",
                "across: 3 m SR, rating: 500 kg",
                "across: 3 m SR, rating: 400 kg",
            )
        ),
    )
    assert next(line for line in lines if not line.startswith(" ")) == "Rigging, Great hall"
    assert not [line for line in lines if "Studio B" in line or "all spaces" in line]


def test_a_draw_in_one_space_moves_what_is_free_for_all_and_its_own_board() -> None:
    lines = told(pack(), pack(edited(f"{STUDIO}power.yml", "draws: 9 kW", "draws: 10 kW")))
    heads = [line for line in lines if line.startswith("Power")]
    assert set(heads) == {"Power, all spaces", "Power, Studio B"}


def test_a_finding_is_told_with_its_space() -> None:
    texts = edited(
        f"{HALL}rigging.yml",
        "across: 3 m SR, rating: 500 kg",
        "across: 3 m SR, rating: 500 kg, condition: out of service",
    )
    texts = {
        **texts,
        f"{HALL}rigging.yml": texts[f"{HALL}rigging.yml"].replace("hangs: none", HANG),
    }
    found = compare(pack(), pack(texts))
    assert "  danger, Great hall: P1 is out of service" in as_text(found)
    assert {found.space_of(each) for each in found.appeared} == {"Great hall"}


HANG = """hangs:
  - name: Sign
    first_end: {across: 3 m SR, depth: 2 m US}
    last_end: {across: 3 m SR, depth: 2 m US}
    supports: [{point: P1}]
    loads: [{what: Sign, by: house, weight: 40 kg}]"""


def in_folder(texts: dict[str, str], old: str, new: str) -> dict[str, str]:
    """The same files with the folder of one space called otherwise."""
    return {path.replace(f"spaces/{old}/", f"spaces/{new}/"): text for path, text in texts.items()}


def test_a_folder_of_another_name_is_no_other_space() -> None:
    texts = edited("house.yml", "folder: hall", "folder: great")
    lines = told(pack(), pack(in_folder(texts, "hall", "great")))
    assert lines == ["House", "  Great hall, folder: hall → great"]


def test_a_space_of_another_name_keeps_its_lines() -> None:
    texts = {path: text.replace("Great hall", "Big hall") for path, text in rooms().texts.items()}
    lines = told(pack(), pack(texts))
    assert lines == [
        "House",
        "  Big hall, space: added",
        "  Great hall, space: taken out",
        "House, Big hall",
        "  Standing, spaces: Great hall → Big hall",
        "  Seated, spaces: Great hall → Big hall",
    ]


def two_stages() -> tuple[Pack, Pack]:
    """The quarry alone, and the quarry beside a second stage under the same roof."""
    quarry = read_folder(ROOT / "tests" / "venues" / "quarry")
    own = {file: text for file, text in quarry.texts.items() if file != "house.yml"}
    house = f"{quarry.texts['house.yml']}\nspaces:\n  - {{name: Lawn}}\n  - {{name: Studio}}\n"
    texts = {"house.yml": house}
    texts |= {f"spaces/lawn/{file}": text for file, text in own.items()}
    studio = rooms().texts[f"{STUDIO}stage.yml"]
    texts["spaces/studio/stage.yml"] = studio.replace("[Black room]", "[Lawn open]")
    return pack_of(venue_of(quarry.texts)), pack_of(venue_of(texts))


def test_a_house_that_gets_a_second_stage_keeps_the_first() -> None:
    lines = told(*two_stages())
    assert lines[:3] == ["House", "  Lawn, space: added", "  Studio, space: added"]
    heads = [line for line in lines if not line.startswith(" ")]
    assert heads == ["House", "House, Studio", "Stage, Studio"]
    assert lines[-1] == "  4 lines: added"


def test_a_house_that_is_left_with_one_stage_keeps_it() -> None:
    alone, both = two_stages()
    lines = told(both, alone)
    assert lines[:3] == ["House", "  Lawn, space: taken out", "  Studio, space: taken out"]
    assert not [line for line in lines if "Lawn" in line and line != "  Lawn, space: taken out"]
    assert all("added" not in line for line in lines)


@pytest.mark.parametrize("state", [rooms().texts, texts_with()])
def test_a_state_beside_itself_has_changed_in_nothing(state: dict[str, str]) -> None:
    assert not compare(pack(state), pack())
