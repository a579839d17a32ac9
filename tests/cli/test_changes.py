"""`housepack changes` between pack files, folders, revisions of git and days."""

import json
import os
import subprocess
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder.cli import main
from tests.stock.small import SOUND, written_to

AUTHOR = {
    f"GIT_{who}_{what}": text
    for who in ("AUTHOR", "COMMITTER")
    for what, text in (("NAME", "Crew"), ("EMAIL", "crew@shed.example"))
}


def git(folder: Path, *words: str, on: str = "2026-01-02") -> None:
    """Run git as the crew would, on a day."""
    dated = {"GIT_AUTHOR_DATE": f"{on}T12:00:00", "GIT_COMMITTER_DATE": f"{on}T12:00:00"}
    kept = {key: value for key, value in os.environ.items() if not key.startswith("GIT_")}
    subprocess.run(
        ["git", "-C", str(folder), *words],
        check=True,
        capture_output=True,
        env={**kept, **AUTHOR, **dated},
    )


@pytest.fixture
def venue(tmp_path: Path) -> Path:
    """The small venue in git: two revisions, and a change that nobody has kept yet."""
    folder = written_to(tmp_path / "kept" / "venue")
    git(tmp_path / "kept", "init", "--quiet")
    git(tmp_path / "kept", "add", ".")
    git(tmp_path / "kept", "commit", "--quiet", "-m", "First")
    (folder / "sound.yml").write_text(SOUND.replace("inputs: 96", "inputs: 64"), encoding="utf-8")
    git(tmp_path / "kept", "commit", "--quiet", "-a", "-m", "Second", on="2026-02-03")
    (folder / "sound.yml").write_text(SOUND.replace("inputs: 96", "inputs: 48"), encoding="utf-8")
    return folder


def run(venue: Path, *words: str) -> Result:
    """Run the command."""
    return CliRunner().invoke(main, ["changes", *words, "--venue", str(venue)])


def test_without_a_word_the_folder_is_compared_with_the_last_commit(venue: Path) -> None:
    assert (
        run(venue).output
        == "The Small Shed: from revision 1 of 2026-01-02 to revision 1 of 2026-01-02.\nSound\n "
        " Meridian, inputs: 64 → 48 (−16)\n"
    )


@pytest.mark.parametrize(
    ("words", "change"),
    [
        (("HEAD~1", "HEAD"), "96 → 64 (−32)"),
        (("2026-01-15", "HEAD"), "96 → 64 (−32)"),
        (("HEAD~1",), "96 → 48 (−48)"),
    ],
)
def test_revisions_and_days_are_compared(venue: Path, words: tuple[str, ...], change: str) -> None:
    assert f"  Meridian, inputs: {change}\n" in run(venue, *words).output


def test_nothing_in_the_folder_or_in_git_is_touched(venue: Path) -> None:
    before = {path: path.read_bytes() for path in sorted(venue.parent.rglob("*")) if path.is_file()}
    run(venue, "HEAD~1", "HEAD")
    assert {
        path: path.read_bytes() for path in sorted(venue.parent.rglob("*")) if path.is_file()
    } == before


def test_pack_files_and_folders_are_compared(venue: Path, tmp_path: Path) -> None:
    pack = tmp_path / "old.json"
    assert (
        CliRunner().invoke(main, ["pack", "--venue", str(venue), "--to", str(pack)]).exit_code == 0
    )
    assert "Nothing changed that the pack shows." in run(venue, str(pack), str(venue)).output
    other = written_to(tmp_path / "other")
    assert "inputs: 48 → 96 (+48)" in run(venue, str(pack), str(other)).output


def test_programs_get_json_and_people_markdown(venue: Path) -> None:
    (department,) = json.loads(run(venue, "HEAD", "--format", "json").output)["departments"]
    (difference,) = department["differences"]
    assert (
        department["key"],
        difference["item"],
        difference["before"],
        difference["after"],
        difference["by"],
    ) == (
        "sound",
        "Meridian",
        "64",
        "48",
        "−16",
    )
    assert run(venue, "HEAD", "--format", "markdown").output.startswith(
        "# The Small Shed: what changed\n\nFrom revision 1"
    )


@pytest.mark.parametrize(
    "which", ["nowhere", "--upload-pack=x", "HEAD~99", "1999-01-01", "HEAD; true"]
)
def test_what_git_does_not_know_is_a_sentence(venue: Path, which: str) -> None:
    result = run(venue, "--", which) if which.startswith("-") else run(venue, which)
    assert result.exit_code in (1, 2)
    if not which.startswith("-"):
        assert (
            f"'{which}' is no pack file, no folder and no revision that git knows here"
            in result.output
        )


def test_a_folder_outside_git_is_a_sentence(tmp_path: Path) -> None:
    output = run(written_to(tmp_path / "venue")).output
    assert "[revision-unknown]" in output
    assert (
        "venue is not kept in git, so there is no earlier state; give two: housepack changes"
        " OLD NEW" in output
    )


@pytest.mark.parametrize("content", ["", "{}", "[]", "\x00"])
def test_a_file_that_is_no_pack_is_a_sentence(venue: Path, tmp_path: Path, content: str) -> None:
    (tmp_path / "x.json").write_text(content)
    result = run(venue, str(tmp_path / "x.json"))
    assert result.exit_code == 1
    assert "x.json is not a pack that this version reads" in result.output


def test_a_pack_of_another_format_says_which_it_is(venue: Path, tmp_path: Path) -> None:
    (tmp_path / "x.json").write_text('{"format": 99}')
    result = run(venue, str(tmp_path / "x.json"))
    assert result.exit_code == 1
    assert (
        "x.json is of format 99, and this version reads format 2; read it with a newer version of"
        " housepack [pack-unreadable]" in result.output
    )


def test_a_link_that_git_keeps_is_not_followed(venue: Path) -> None:
    (venue / "access.yml").symlink_to("/etc/hostname")
    git(venue, "add", ".")
    git(venue, "commit", "--quiet", "-m", "Link")
    (venue / "access.yml").unlink()
    result = run(venue)
    assert result.exit_code == 0
    assert (
        "In HEAD: access.yml is a link, which is not followed; it is left out of the comparison"
        " [not-a-file]\n" in result.stderr
    )


def test_what_git_keeps_and_no_page_could_show_is_left_out_and_said(
    venue: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("builder.history.LARGEST_PHOTO", 1024 * 1024)
    (venue / "photos").mkdir()
    (venue / "photos" / "large.png").write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(1024 * 1024))
    (venue / "photos" / "pointer.jpg").write_text("version 1\n")
    (venue / "photos" / "small.png").write_bytes(b"\x89PNG\r\n\x1a\n")
    git(venue, "add", ".")
    git(venue, "commit", "--quiet", "-m", "Photos")
    result = run(venue, "HEAD~1", "HEAD")
    assert result.exit_code == 0
    assert result.stderr.splitlines() == [
        (
            "In HEAD: photos/large.png is larger than 1 MiB; it is left out of the comparison"
            " [too-big]"
        ),
        (
            "In HEAD: photos/pointer.jpg is not a PNG, JPEG or WebP image; it is left out of the"
            " comparison [photo-unreadable]"
        ),
    ]
