"""
How a file ends its lines, and a byte-order mark in front, change neither what is read nor the
fingerprint; what is written keeps them.
"""

from pathlib import Path

import pytest
from click.testing import CliRunner

from builder.cli import main
from builder.files import read_folder, read_rider, read_shows
from builder.pack_file import read_pack
from builder.pipeline import pack_of, venue_of

ROOT = Path(__file__).parents[1]
VENUE = ROOT / "venue"
BOM = b"\xef\xbb\xbf"
WAYS = ((b"\r\n", b""), (b"\r", b""), (b"\n", BOM), (b"\r\n", BOM))


def rewritten(folder: Path, end: bytes, mark: bytes) -> Path:
    """The demo's texts in a folder of their own, with other line ends."""
    for path in (*VENUE.glob("*.yml"), *(VENUE / "shows").glob("*.yml")):
        copy = folder / path.relative_to(VENUE)
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_bytes(mark + path.read_bytes().replace(b"\n", end))
    for path in (VENUE / "photos").glob("*"):
        (folder / "photos").mkdir(exist_ok=True)
        (folder / "photos" / path.name).write_bytes(path.read_bytes())
    return folder


@pytest.mark.parametrize(("end", "mark"), WAYS)
def test_the_same_texts_with_other_line_ends_are_the_same_venue(
    tmp_path: Path, end: bytes, mark: bytes
) -> None:
    folder, plain = read_folder(rewritten(tmp_path, end, mark)), read_folder(VENUE)
    venue, meant = (venue_of(each.texts, each.photos) for each in (folder, plain))
    assert venue.fingerprint == meant.fingerprint
    assert venue.descriptions == meant.descriptions
    assert read_shows(tmp_path).texts == read_shows(VENUE).texts


def test_a_text_given_with_other_line_ends_has_the_same_fingerprint() -> None:
    texts = {"house.yml": (ROOT / "tests/venues/quarry/house.yml").read_text("utf-8")}
    other = {name: text.replace("\n", "\r\n") for name, text in texts.items()}
    assert venue_of(texts).fingerprint == venue_of(other).fingerprint


def test_facts_of_a_text_with_other_line_ends_stand_at_the_same_lines(tmp_path: Path) -> None:
    folder = read_folder(rewritten(tmp_path, b"\r", BOM))
    texts = {name: text for name, text in folder.texts.items() if name in ("house.yml",)}
    plain = {"house.yml": (VENUE / "house.yml").read_text("utf-8")}
    photos = read_folder(VENUE).photos
    packs = [pack_of(venue_of(each, photos)) for each in (texts, plain)]
    assert packs[0] == packs[1]


@pytest.mark.parametrize(("end", "mark"), WAYS)
def test_a_rider_with_other_line_ends_is_the_same_rider(
    tmp_path: Path, end: bytes, mark: bytes
) -> None:
    rider = ROOT / "tests" / "riders" / "club.yml"
    (tmp_path / "club.yml").write_bytes(mark + rider.read_bytes().replace(b"\n", end))
    assert read_rider(tmp_path / "club.yml") == read_rider(rider)


@pytest.mark.parametrize(("end", "mark"), WAYS)
def test_a_pack_that_was_saved_with_other_line_ends_is_the_same_pack(
    tmp_path: Path, end: bytes, mark: bytes
) -> None:
    pack, quarry = tmp_path / "pack.json", ROOT / "tests" / "venues" / "quarry"
    assert CliRunner().invoke(main, ["pack", "--venue", str(quarry), "--to", str(pack)]).output
    meant = read_pack(pack)
    pack.write_bytes(mark + pack.read_bytes().replace(b"\n", end))
    assert read_pack(pack) == meant


@pytest.mark.parametrize(("end", "mark"), WAYS[:2])
def test_an_order_on_stock_keeps_the_line_ends_and_the_mark_of_every_line(
    tmp_path: Path, end: bytes, mark: bytes
) -> None:
    rewritten(tmp_path, end, mark)
    before = (tmp_path / "sound.yml").read_bytes()
    words = ("stock", "out", "Floor subs", "--by", "head of sound", "--why", "Open.", "--yes")
    result = CliRunner().invoke(main, [*words, "--venue", str(tmp_path)])
    assert result.exit_code == 0, result.output
    after = (tmp_path / "sound.yml").read_bytes()
    lines, now = before.split(end), after.split(end)
    assert len([line for line in now if line not in lines]) <= 2
    assert [line for line in lines if line in now] == [line for line in now if line in lines]
    assert after.startswith(mark)
    assert b"\n" not in after.replace(end, b"")
    assert b"\r" not in after.replace(end, b"")
