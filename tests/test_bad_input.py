"""
Every kind of bad input that an author or a disk can give, as the whole message that the author
reads.
"""

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner

from builder.cli import main
from builder.files import read_folder, read_shows
from builder.pipeline import venue_of
from builder.reading.problems import Refused

HOUSE = """\
name: The Small Shed
what: A shed.
town: Nowhere
setting: indoors
time_zone: Europe, central
revision: {number: 1, on: 2026-01-02, by: technical manager}
"""


def messages(folder: Path) -> list[str]:
    """What an author is told about a folder."""
    with pytest.raises(Refused) as refused:
        read_and_check(folder)
    return [str(problem) for problem in refused.value.problems]


def read_and_check(folder: Path) -> None:
    """Read a folder and check it as a venue."""
    read = read_folder(folder)
    venue_of(read.texts, read.photos)


@pytest.fixture
def write(tmp_path: Path) -> Callable[..., Path]:
    """Writes a venue whose house file is whole unless it is given, with further files by name."""

    def written(house: str | bytes = HOUSE, **others: str) -> Path:
        (tmp_path / "house.yml").write_bytes(house if isinstance(house, bytes) else house.encode())
        for name, text in others.items():
            (tmp_path / f"{name}.yml").write_text(text, encoding="utf-8")
        return tmp_path

    return written


Write = Callable[..., Path]


def test_the_house_file_by_itself_is_a_venue(write: Write) -> None:
    assert venue_of(read_folder(write()).texts).house.name == "The Small Shed"


def test_an_empty_file_is_told_so(write: Write) -> None:
    assert messages(write("")) == [
        "house.yml is empty; write `key: value` lines, or remove the file [empty-file]"
    ]


def test_a_missing_house_file_is_told_with_the_way_to_get_one(tmp_path: Path) -> None:
    assert messages(tmp_path) == [
        "house.yml is missing; write it; 'housepack new myhouse' writes one to begin with (House)"
        " [file-missing]"
    ]


def test_a_missing_folder_is_told(tmp_path: Path) -> None:
    assert messages(tmp_path / "nothing") == [
        "nothing is not a folder; give a venue's folder with --venue, or begin one: housepack new"
        " myhouse [folder-missing]"
    ]


def test_a_file_of_no_department_is_told(write: Write) -> None:
    (message,) = messages(write(riging="points: []"))
    assert message.startswith("riging.yml is not a file of any department; known: house.yml")
    assert message.endswith("[file-unknown]")


def test_a_binary_file_is_told_with_its_first_bad_byte(write: Write) -> None:
    (message,) = messages(write(b"\x89PNG\r\n\x1a\n\x00\x00"))
    assert message.startswith("house.yml")
    assert message.endswith("[not-text]")


def test_a_syntax_error_is_told_in_plain_words_with_its_line(write: Write) -> None:
    (message,) = messages(write(HOUSE + "note: [never, closed\n"))
    assert message.startswith("house.yml:7:7 ")
    assert message.endswith("[yaml-syntax]")
    assert "not closed" in message


def test_a_key_written_twice_is_told_where_the_first_one_stands(write: Write) -> None:
    (message,) = messages(write(HOUSE + "town: Elsewhere\n"))
    assert message.startswith("house.yml:7:1 town")
    assert "3" in message
    assert message.endswith("[duplicate-key]")


def test_an_unknown_key_is_told_with_the_nearest(write: Write) -> None:
    assert messages(write(HOUSE + "curfew: none\n")) == [
        "house.yml:7:1 curfew is not a key here; did you mean 'curfews'? [unknown-key]"
    ]


def test_a_missing_key_is_told_at_its_group(write: Write) -> None:
    text = HOUSE.replace("town: Nowhere\n", "")
    assert messages(write(text)) == [
        "house.yml:1:1 town is missing here; write it: this cannot be unknown [missing-key]"
    ]


def test_a_wrong_shape_is_told(write: Write) -> None:
    (message,) = messages(write(HOUSE + "contacts: the house manager\n"))
    assert message.startswith("house.yml:7:11 contacts: 'the house manager' should be a list; ")
    assert message.endswith(
        "begin each entry with '- ', and give it keys such as role, about, count [wrong-shape]"
    )


def test_a_number_without_a_unit_is_told_with_an_example(write: Write) -> None:
    (message,) = messages(write(HOUSE + "altitude: 38\n"))
    assert message.startswith("house.yml:7:11 altitude: '38' needs a unit")
    assert message.endswith("[unit-missing]")


def test_a_unit_of_another_kind_is_told(write: Write) -> None:
    (message,) = messages(write(HOUSE + "altitude: 38 kg\n"))
    assert message.startswith("house.yml:7:11 altitude: '38 kg' ")
    assert message.endswith("[unit-wrong]")


def test_a_reference_to_nothing_is_told_with_the_nearest_name(write: Write) -> None:
    stage = (
        "datum: {centre_line: a stud, reference_line: the edge}\ndecks:\n  - name: Deck\n   "
        " configurations: [Standin]\n    outline: [{across: 0 m, depth: 0 m}, {across: 1 m SL,"
        " depth: 0 m}, {across: 1 m SL, depth: 1 m US}]\n"
    )
    house = HOUSE + "configurations: [{name: Standing, audience: standing}]\n"
    assert messages(write(house, stage=stage)) == [
        "stage.yml:4:22 configurations[1]: 'Standin' is not the name of any configuration; did you"
        " mean 'Standing'? [reference-unknown]"
    ]


def test_a_name_borne_twice_is_told_with_the_first_place(write: Write) -> None:
    house = (
        HOUSE + "configurations:\n  - {name: Standing, audience: standing}\n  - {name: standing,"
        " audience: standing}\n"
    )
    assert messages(write(house)) == [
        "house.yml:9:12 name: 'standing' is too near 'Standing', the name of a configuration at"
        " house.yml:8:12; give each its own name [duplicate-name]"
    ]


def test_an_alias_bomb_is_refused_at_its_first_anchor(write: Write) -> None:
    bomb = "a: &a [x, x, x, x]\n" + "".join(
        f"{chr(98 + i)}: &{chr(98 + i)} [*{chr(97 + i)}, *{chr(97 + i)}, *{chr(97 + i)}]\n"
        for i in range(20)
    )
    assert all(message.endswith("[alias]") for message in messages(write(bomb)))


def test_ten_mebibytes_are_refused_unread(write: Write) -> None:
    assert messages(write(b"a: " + b"x" * (10 * 1024 * 1024))) == [
        "house.yml is larger than 2 MiB; split off what is not needed [too-big]"
    ]


def test_two_hundred_levels_are_refused(write: Write) -> None:
    (message,) = messages(write("a: " + "[" * 200 + "]" * 200 + "\n"))
    assert "is nested deeper than 40 levels" in message
    assert message.endswith("[too-deep]")


def test_a_link_out_of_the_folder_is_refused(
    write: Write, tmp_path_factory: pytest.TempPathFactory
) -> None:
    outside = tmp_path_factory.mktemp("outside") / "stage.yml"
    outside.write_text("note: x", encoding="utf-8")
    folder = write()
    (folder / "stage.yml").symlink_to(outside)
    assert messages(folder) == [
        "stage.yml leads out of the venue's folder; put the file itself into the folder"
        " [path-outside]"
    ]


def test_a_folder_in_place_of_a_file_is_refused(write: Write) -> None:
    folder = write()
    (folder / "stage.yml").mkdir()
    assert messages(folder) == [
        "stage.yml is not a file; a venue's folder holds text files [not-a-file]"
    ]


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may read everything")
def test_a_file_that_may_not_be_read_is_told(write: Write) -> None:
    folder = write()
    (folder / "house.yml").chmod(0)
    assert messages(folder) == [
        "house.yml cannot be read: permission denied; check its permissions [file-unreadable]"
    ]


def test_all_mistakes_of_all_files_are_told_at_once(write: Write) -> None:
    found = messages(write(HOUSE + "altitude: 38\nsize: 3\n", stage="datum: 3\n"))
    assert [message.split(" ", 1)[0] for message in found] == [
        "house.yml:7:11",
        "house.yml:8:1",
        "stage.yml:1:1",
        "stage.yml:1:8",
    ]


PNG = b"\x89PNG\r\n\x1a\n" + b"\x00" * 16


def with_photo(folder: Path, content: bytes, name: str = "dock.png") -> Path:
    """A venue whose trouble spot shows a photo, with the photo's file."""
    (folder / "house.yml").write_text(
        HOUSE + f"trouble_spots: [{{what: A step., photo: {name}}}]\n", encoding="utf-8"
    )
    (folder / "photos").mkdir()
    (folder / "photos" / name).write_bytes(content)
    return folder


def test_a_photo_that_is_an_image_is_read(tmp_path: Path) -> None:
    folder = read_folder(with_photo(tmp_path, PNG))
    assert venue_of(folder.texts, folder.photos).house.trouble_spots[0].photo == "dock.png"


def test_a_photo_that_is_not_an_image_is_told(tmp_path: Path) -> None:
    assert messages(with_photo(tmp_path, b"<svg onload=alert(1)>")) == [
        "photos/dock.png is not a PNG, JPEG or WebP image; save it as one of these"
        " [photo-unreadable]"
    ]


def test_a_photo_that_is_not_there_is_told_at_the_line_that_shows_it(write: Write) -> None:
    (message,) = messages(write(HOUSE + "trouble_spots: [{what: A step., photo: dok.png}]\n"))
    assert (
        message
        == "house.yml:7:40 photo: 'dok.png' is not a file in photos/; put it there, or mend the"
        " name [photo-missing]"
    )


def test_a_photo_may_not_be_a_link_out_of_the_folder(
    tmp_path: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    outside = tmp_path_factory.mktemp("outside") / "secret.png"
    outside.write_bytes(PNG)
    folder = with_photo(tmp_path, PNG)
    (folder / "photos" / "dock.png").unlink()
    (folder / "photos" / "dock.png").symlink_to(outside)
    assert messages(folder) == [
        "photos/dock.png leads out of the venue's folder; put the file itself into the folder"
        " [path-outside]"
    ]


def test_a_folder_that_is_not_there_is_named_once_in_the_terminal(tmp_path: Path) -> None:
    said = CliRunner().invoke(main, ["check", "--venue", str(tmp_path / "nothing")])
    assert said.exit_code == 1
    assert said.stderr.startswith(
        f"{tmp_path / 'nothing'} is not a folder; give a venue's folder with --venue, or begin one:"
        " housepack new myhouse"
    )


@pytest.mark.parametrize("name", ["photos", "shows"])
def test_a_folder_in_the_venue_may_not_be_a_link_out_of_it(
    write: Write, tmp_path_factory: pytest.TempPathFactory, name: str
) -> None:
    outside = tmp_path_factory.mktemp("outside")
    (outside / "secret.png").write_bytes(PNG)
    (outside / "secret.yml").write_text("act: A\n", "utf-8")
    folder = write()
    (folder / name).symlink_to(outside)
    told = f"{name} leads out of the venue's folder; put the folder itself there [path-outside]"
    if name == "photos":
        assert messages(folder) == [told]
    else:
        shows = read_shows(folder)
        assert [str(problem) for problem in shows.problems] == [told]
        assert (shows.texts, shows.others) == ({}, ())


def test_a_link_to_another_file_of_the_folder_is_followed(write: Write) -> None:
    folder = write()
    (folder / "house.yml").rename(folder / "house.txt")
    (folder / "house.yml").symlink_to("house.txt")
    (folder / "pictures").mkdir()
    (folder / "pictures" / "dock.png").write_bytes(PNG)
    (folder / "photos").symlink_to("pictures")
    read = read_folder(folder)
    assert (list(read.texts), list(read.photos)) == (["house.yml"], ["dock.png"])


def test_a_link_that_leads_to_itself_is_told(write: Write) -> None:
    folder = write()
    (folder / "stage.yml").symlink_to("stage.yml")
    (folder / "photos").symlink_to("photos")
    assert messages(folder) == [
        "photos leads out of the venue's folder; put the folder itself there [path-outside]",
        "stage.yml leads out of the venue's folder; put the file itself into the folder"
        " [path-outside]",
    ]


def test_a_photo_whose_name_cannot_be_seen_is_told(write: Write) -> None:
    folder = write()
    (folder / "photos").mkdir()
    for name in (b"\x1b[31mdock.png", b"dock\n.png", b"d\xf6ck.png"):
        Path(os.fsdecode(bytes(folder / "photos") + b"/" + name)).write_bytes(PNG)
    advice = (
        "is the name of a photo, and has a character that cannot be seen; give it a name of"
        " letters, digits and hyphens [photo-name]"
    )
    assert messages(folder) == [
        f"photos '\\x1b[31mdock.png' {advice}",
        f"photos 'dock\\n.png' {advice}",
        f"photos 'd\\udcf6ck.png' {advice}",
    ]


def test_a_hidden_file_beside_photos_is_no_photo(tmp_path: Path) -> None:
    folder = with_photo(tmp_path, PNG)
    (folder / "photos" / "._dock.png").write_bytes(b"what a system keeps for itself")
    assert list(read_folder(folder).photos) == ["dock.png"]
