"""`housepack upgrade` on venues of the first language, as a crew types it."""

import json
import re
import shutil
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from builder.cli import main
from builder.files import read_folder
from builder.pack_json import to_json
from builder.pipeline import pack_of, venue_of
from builder.reading.problems import Refused
from builder.stock.upgrade_record import RECORD
from tests.stock.small import TEXTS, written_to

ROOT = Path(__file__).parents[2]
UNKNOWN = re.compile(r"(?<=: )unknown(?=[,} \n])")


@pytest.fixture
def venue(tmp_path: Path) -> Path:
    """The demo as language 1 would have written it: `?` for unknown, and Windows line ends."""
    folder = tmp_path / "venue"
    shutil.copytree(ROOT / "venue", folder)
    for path in folder.glob("*.yml"):
        text = path.read_text("utf-8").replace("language: 2\n", "")
        for older in ("?", '"?"', "'?'") * 99:
            text = UNKNOWN.sub(older, text, count=1)
        path.write_bytes(text.replace("\n", "\r\n").encode())
    power = folder / "power.yml"
    power.write_bytes(b"\xef\xbb\xbf" + power.read_bytes())
    return folder


def run(venue: Path, *words: str, answer: str = "") -> Result:
    """Run the command with the venue."""
    return CliRunner().invoke(main, ["upgrade", *words, "--venue", str(venue)], input=answer)


def contents(venue: Path) -> dict[str, bytes]:
    """The bytes of the folder's files."""
    return {path.name: path.read_bytes() for path in sorted(venue.iterdir()) if path.is_file()}


def told(venue: Path) -> Any:
    """The pack without its fingerprint, the places in the files, and what is meant to go."""
    folder = read_folder(venue)
    pack = pack_of(venue_of(folder.texts, folder.photos))
    kept = [each for each in pack.findings if each.code != "language-older"]
    record = json.loads(to_json(replace(pack, findings=tuple(kept))))
    del record["revision"]["fingerprint"]
    return without_places(record)


def without_places(value: Any) -> Any:
    """The same without lines and columns: one line more moves those below it."""
    if isinstance(value, dict):
        return {key: without_places(part) for key, part in value.items() if key != "place"}
    return [without_places(part) for part in value] if isinstance(value, list) else value


def test_the_pack_stays_and_the_files_come_back_to_the_letter(venue: Path) -> None:
    before, pack = contents(venue), told(venue)
    assert sum(each.count(b"?\r\n") for each in before.values()) > 3
    result = run(venue, "--yes")
    assert result.exit_code == 0, result.output
    after = contents(venue)
    assert told(venue) == pack
    assert b"\r\nlanguage: 2\r\nverified:" in after["house.yml"]
    assert b"\n" not in after["power.yml"].replace(b"\r\n", b"")
    assert after["power.yml"].startswith(b"\xef\xbb\xbf")
    assert after["power.yml"].count(b"#") == before["power.yml"].count(b"#")
    assert RECORD in after
    back = run(venue, "--undo", "--yes")
    assert back.exit_code == 0, back.output
    assert contents(venue) == before


def test_every_old_word_goes_and_nothing_else_changes(venue: Path) -> None:
    before = contents(venue)
    run(venue, "--yes")
    for name, after in contents(venue).items():
        if name == RECORD:
            continue
        old, new = before[name].splitlines(), after.splitlines()
        new = [line for line in new if line != b"language: 2"]
        for was, now in zip(old, new, strict=True):
            assert was == now or (b"?" in was and b"unknown" in now), (name, was, now)
            assert not re.search(rb": [\"']?\?[\"']?(,|}|\s|$)", now)


def test_the_lines_are_shown_and_nothing_is_written_without_a_yes(venue: Path) -> None:
    before = contents(venue)
    result = run(venue, answer="n\n")
    assert result.exit_code == 1
    assert "@@ -" in result.output
    assert "+language: 2" in result.output
    assert "Written in language 1; the newest is 2." in result.output
    assert result.output.endswith("Write this? [y/N]: n\nNothing was written.\n")
    assert contents(venue) == before
    assert run(venue, "--dry-run").exit_code == 0
    assert contents(venue) == before


def test_a_venue_of_the_newest_language_stays(tmp_path: Path) -> None:
    folder = tmp_path / "venue"
    shutil.copytree(ROOT / "venue", folder)
    before = contents(folder)
    result = run(folder, "--yes")
    assert result.output == "Written in the newest language already, so nothing was changed.\n"
    assert contents(folder) == before
    result = run(folder, "--undo", "--yes")
    assert (result.exit_code, contents(folder)) == (1, before)
    assert result.output == f"There is no upgrade to take back: {folder} holds no {RECORD}.\n"


@pytest.mark.parametrize("stated", ["language: 1\n", "language: '1'   # as before\n"])
def test_the_first_language_by_its_number_is_brought_up(tmp_path: Path, stated: str) -> None:
    folder = written_to(tmp_path / "venue")
    house = folder / "house.yml"
    house.write_text(TEXTS["house.yml"] + stated, "utf-8")
    before = contents(folder)
    assert run(folder, "--yes").exit_code == 0
    assert house.read_text("utf-8") == TEXTS["house.yml"] + stated.replace("1", "2")
    assert run(folder, "--undo", "--yes").exit_code == 0
    assert contents(folder) == before


def test_a_file_that_was_changed_since_is_not_taken_back(tmp_path: Path) -> None:
    folder = written_to(tmp_path / "venue")
    run(folder, "--yes")
    house = folder / "house.yml"
    house.write_text(house.read_text("utf-8") + "altitude: 3 m\n", "utf-8")
    before = contents(folder)
    result = run(folder, "--undo", "--yes")
    assert result.exit_code == 1
    assert result.output == (
        "house.yml was changed since the upgrade; take the files from your own copy; nothing was"
        f" changed. {RECORD} may be deleted [upgrade-not-undone]\n"
    )
    assert contents(folder) == before


@pytest.mark.parametrize("record", ["", "[]", '{"files": [{"file": "house.yml"}]}', "[" * 9999])
def test_a_record_that_no_upgrade_left_is_refused(tmp_path: Path, record: str) -> None:
    folder = written_to(tmp_path / "venue")
    (folder / RECORD).write_text(record or " ", "utf-8")
    before = contents(folder)
    result = run(folder, "--undo", "--yes")
    assert result.exit_code == 1
    assert "is not what an upgrade leaves" in result.output
    assert contents(folder) == before


def problems_with(house: str) -> list[str]:
    """What is wrong with the small venue with this house.yml."""
    with pytest.raises(Refused) as caught:
        venue_of({**TEXTS, "house.yml": house})
    return [str(problem) for problem in caught.value.problems]


def test_a_newer_language_is_refused_alone() -> None:
    house = TEXTS["house.yml"] + "language: 3\na_newer_key: 4\n"
    line = house.count("\n") - 1
    assert problems_with(house) == [
        f"house.yml:{line}:11 language: '3' is newer than this version of housepack, which reads"
        " languages up to 2; read this venue with a newer version of housepack [language-newer]"
    ]


def test_a_language_that_is_none_is_refused() -> None:
    (told,) = problems_with(TEXTS["house.yml"] + "language: 0\n")
    assert told.endswith("language: '0' is no language; write 2 [language-unknown]")


def test_the_newest_language_has_one_word_for_unknown() -> None:
    house = TEXTS["house.yml"] + "language: 2\naltitude: ?\nnote: '?'\n"
    (told,) = [each for each in problems_with(house) if each.startswith("house.yml")]
    assert told.endswith(
        "altitude: '?' is a word of language 1, and the venue is written in language 2; write"
        " unknown [older-word]"
    )


def test_a_venue_of_before_is_told_how_to_go_on() -> None:
    older = pack_of(venue_of(TEXTS))
    assert [each.level for each in older.findings if each.code == "language-older"] == ["note"]
    texts = {name: text.replace(" ?", " unknown") for name, text in TEXTS.items()}
    newest = {**texts, "house.yml": texts["house.yml"] + "language: 2\n"}
    assert not [
        each for each in pack_of(venue_of(newest)).findings if each.code == "language-older"
    ]
