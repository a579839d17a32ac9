"""Which files belong to which space, of a house's file alone: each problem in its whole words."""

import pytest

from builder.departments.house.description import House
from builder.reading.reader import read
from builder.spaces.folders import folder_of, folder_problems, names_of, own_texts, shared_texts
from tests.stock.small import HOUSE

STAGES = {"spaces/hall/stage.yml": "", "spaces/studio-b/stage.yml": ""}


def house(*spaces: str) -> House:
    """A house of spaces, each a name and what follows it."""
    told = "".join(f"  - {{name: {space}}}\n" for space in spaces)
    return read(HOUSE + (f"spaces:\n{told}" if told else ""), file="house.yml", kind=House)


TWO = house("Hall", "Studio B")


def problems(found: House | None, *more: str, without: str = "") -> list[str]:
    """What is wrong with the folders of a house."""
    texts = {**STAGES, **dict.fromkeys(more, "")}
    texts.pop(without, None)
    return [str(problem) for problem in folder_problems(found, texts)]


def test_a_house_whose_every_space_has_a_stage_has_no_problem() -> None:
    own = ["power.yml", "sound.yml", "spaces/hall/sound.yml", "log.yml"]
    assert problems(TWO, *own) == []
    assert folder_of(TWO.spaces[1]) == "studio-b"
    assert folder_of(house("Studio B, folder: black").spaces[0]) == "black"
    assert names_of(TWO) == {"Hall", "Studio B"}


def test_texts_are_parted_by_folder() -> None:
    texts = {"house.yml": "h", "spaces/hall/stage.yml": "a", "spaces/hall/sound.yml": "b"}
    assert own_texts(texts) == {"hall": {"stage.yml": "a", "sound.yml": "b"}}
    assert shared_texts(texts) == {"house.yml": "h"}


@pytest.mark.parametrize(
    ("file", "words"),
    [
        (
            "spaces/hall/log.yml",
            "spaces/hall/log.yml is shared by all spaces, and stands beside house.yml; move what is"
            " of this space there, with 'spaces:' on the line [space-file]",
        ),
        (
            "spaces/hall/house.yml",
            "spaces/hall/house.yml is shared by all spaces, and stands beside house.yml; move what"
            " is of this space there, with 'spaces:' on the line [space-file]",
        ),
        (
            "flying.yml",
            "flying.yml is of one space, and this house has several; move it into the folder of"
            " its space, such as spaces/studio/flying.yml [space-file]",
        ),
    ],
)
def test_a_file_in_the_wrong_place_is_told(file: str, words: str) -> None:
    assert problems(TWO, file) == [words]


def test_the_files_of_a_house_of_one_stage_stand_beside_it() -> None:
    found = [str(each) for each in folder_problems(house(), {"stage.yml": "", "flying.yml": ""})]
    assert found == []


def test_a_folder_is_told_with_the_names_that_it_could_have() -> None:
    told = "spaces/attic is the folder of no space that house.yml names; %s [space-unknown]"
    assert problems(TWO, "spaces/attic/stage.yml") == [told % "known folders: hall, studio-b"]
    alone = problems(house(), "spaces/attic/stage.yml")
    assert told % "write the space under 'spaces:' in house.yml" in alone
    assert len(alone) == 3


def test_of_a_house_that_cannot_be_read_only_the_files_are_told() -> None:
    assert problems(None, "spaces/attic/stage.yml") == []
    (told,) = problems(None, "spaces/hall/lighting.yml")
    assert told.endswith("crew.yml [file-unknown]")


def test_a_space_without_a_stage_is_told_with_the_file_that_is_missing() -> None:
    assert problems(TWO, without="spaces/hall/stage.yml") == [
        "house.yml:11:12 spaces.name: 'Hall' is a space without a stage: spaces/hall/stage.yml is"
        " missing; write spaces/hall/stage.yml, or take the space out here [space-without-stage]"
    ]


@pytest.mark.parametrize(
    ("space", "words"),
    [
        (
            "Other, folder: Hall One",
            "house.yml:13:27 spaces.folder: 'Hall One' is no name for a folder of a space: small"
            " letters, digits and hyphens; call the folder spaces/hall-one, and write that here"
            " [space-folder]",
        ),
        (
            "Sound",
            "house.yml:13:12 spaces.name: 'Sound' would be the folder spaces/sound, and sound is a"
            " department; write another name under 'folder:' [space-folder]",
        ),
        (
            "Other, folder: hall",
            "house.yml:13:27 spaces.folder: 'hall' has the folder spaces/hall, which is of Hall;"
            " give each its own folder [space-folder]",
        ),
    ],
)
def test_a_name_that_can_be_no_folder_is_told(space: str, words: str) -> None:
    found = problems(house("Hall", "Studio B", space))
    assert [line for line in found if "space-folder" in line] == [words]
