"""
No build costs anybody a file: a folder is replaced only where a list of ours vouches for all of it.
"""

import json
import os
import shutil
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from builder.cli import main
from builder.document import Document
from builder.site import build as building
from builder.site.build import build_document
from builder.site.manifest import MANIFEST, named
from builder.site.replacing import SiteFailed
from builder.starter import write_starter
from tests.site.sample import document


def small(_: Document, site: Path) -> None:
    """A generator that writes a site of a few files, in no time."""
    for name in ("index.html", "pack.json", "drawings/plan.svg", "assets/search/entries.js"):
        (site / name).parent.mkdir(parents=True, exist_ok=True)
        (site / name).write_text(f"built: {name}", "utf-8")


@pytest.fixture(autouse=True)
def quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is asked here does not depend on what the pages say."""
    monkeypatch.setattr(building, "generate", small)


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A site that a build wrote."""
    site = tmp_path / "site"
    build_document(document(), site)
    return site


@pytest.fixture
def standing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A crew's folder with all that it has, and the author in it."""
    folder = tmp_path / "house"
    write_starter(folder / "venue")
    (folder / "notes.txt").write_text("mine", "utf-8")
    (folder / ".git").mkdir()
    (folder / ".git" / "HEAD").write_text("ref: refs/heads/main", "utf-8")
    monkeypatch.chdir(folder)
    return folder


def contents(folder: Path) -> dict[str, bytes]:
    """Every file of a folder."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def run(*words: str) -> Result:
    """The command's result."""
    return CliRunner().invoke(main, list(words))


def refusal_of(site: Path, venue: Path | None = None) -> str:
    """Why a folder may not be replaced."""
    before = contents(site) if site.is_dir() else {}
    with pytest.raises(SiteFailed) as failure:
        build_document(document(), site, venue)
    assert before == (contents(site) if site.is_dir() else {})
    return str(failure.value)


def test_a_pack_written_here_does_not_make_this_folder_a_site(standing: Path) -> None:
    before = contents(standing)
    assert run("pack", "--to", "pack.json").exit_code == 0
    result = run("build", "--to", ".")
    assert result.exit_code == 1
    assert result.output == (
        "Error: . is or holds the folder that you stand in. To replace it would lose .git/,"
        " notes.txt, pack.json, venue/. Give another folder with --to. Nothing was written.\n"
    )
    assert contents(standing) == before | {"pack.json": (standing / "pack.json").read_bytes()}


def test_the_venues_folder_is_never_replaced(
    standing: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    venue = standing / "venue"
    for place in (venue, standing):
        message = refusal_of(place, venue)
        assert message.startswith(f"{place} is or holds the venue. To replace it would lose ")
    assert "house.yml" in refusal_of(venue, venue)


def test_an_empty_folder_that_the_author_stands_in_is_not_replaced(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert refusal_of(Path()) == (
        ". is or holds the folder that you stand in. Give another folder with --to. Nothing was"
        " written."
    )


def test_a_folder_by_another_name_is_the_same_folder(
    standing: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "link").symlink_to(standing)
    assert "is or holds the venue" in refusal_of(tmp_path / "link" / "venue", standing / "venue")
    assert "is a link" in refusal_of(tmp_path / "link")


def test_a_folder_with_other_files_is_not_replaced(tmp_path: Path) -> None:
    site = tmp_path / "site"
    (site / "drawings").mkdir(parents=True)
    for name in ("letter.txt", "drawings/mine.svg"):
        (site / name).write_text("mine", "utf-8")
    assert refusal_of(site) == (
        f"{site} is not a site that a build wrote. To replace it would lose drawings/, letter.txt."
        " Give a new or empty folder with --to, or take out what is yours. Nothing was written."
    )


def test_a_site_with_a_file_more_is_not_replaced_and_the_file_is_named(site: Path) -> None:
    (site / "drawings" / "mine.svg").write_text("mine", "utf-8")
    (site / ".git").mkdir()
    assert refusal_of(site) == (
        f"{site} holds what no build wrote there, or what was changed since. To replace it would"
        " lose .git/, drawings/mine.svg. Give a new or empty folder with --to, or take out what is"
        " yours. Nothing was written."
    )


def test_a_page_changed_by_hand_is_not_replaced(site: Path) -> None:
    (site / "index.html").write_text("my own words", "utf-8")
    assert "would lose index.html." in refusal_of(site)


def test_a_link_in_a_site_is_not_followed_and_not_replaced(site: Path, tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (site / "drawings" / "plan.svg").rename(elsewhere / "plan.svg")
    (site / "drawings" / "plan.svg").symlink_to(elsewhere / "plan.svg")
    (site / "more").symlink_to(elsewhere)
    assert "would lose drawings/plan.svg, more." in refusal_of(site)


def test_many_files_are_counted(tmp_path: Path) -> None:
    for number in range(1100):
        (tmp_path / f"{number:04}").touch()
    assert "would lose 0000, 0001, 0002, 0003, 0004, 0005, 0006, 0007 and 992 or more." in (
        refusal_of(tmp_path)
    )


def test_a_site_of_an_older_version_is_not_replaced_and_told_as_such(site: Path) -> None:
    (site / MANIFEST).unlink()
    assert refusal_of(site) == (
        f"{site} has no housepack-site.json, the list of what a build wrote, as older versions left"
        " none. To replace it would lose assets/, drawings/, index.html, pack.json. Give a new or"
        " empty folder with --to, or take out what is yours. Nothing was written."
    )


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "{}",
        "[" * 100_000,
        '{"format": 2, "files": {}}',
        '{"format": 1, "files": []}',
        '{"format": 1, "files": {"house.yml": "x"}}',
        '{"format": 1, "files": {".git/HEAD": "x"}}',
        '{"format": 1, "files": {"../letter.txt": "x"}}',
        '{"format": 1, "files": {"/etc/passwd": "x"}}',
        '{"format": 1, "files": {"index.html": 1}}',
        "\x00\xff",
    ],
)
def test_a_list_that_no_build_wrote_vouches_for_nothing(site: Path, text: str) -> None:
    (site / MANIFEST).write_text(text, "utf-8")
    assert "index.html" in refusal_of(site)


def test_a_list_that_names_files_above_the_site_removes_none_of_them(
    site: Path, tmp_path: Path
) -> None:
    listed = json.loads((site / MANIFEST).read_text("utf-8"))
    (tmp_path / "letter.txt").write_text("mine", "utf-8")
    listed["files"]["../letter.txt"] = "x"
    (site / MANIFEST).write_text(json.dumps(listed), "utf-8")
    refusal_of(site)
    assert (tmp_path / "letter.txt").read_text("utf-8") == "mine"


def test_a_file_in_the_place_of_the_site_is_not_replaced(tmp_path: Path) -> None:
    (tmp_path / "site").write_text("mine", "utf-8")
    assert refusal_of(tmp_path / "site") == (
        f"{tmp_path / 'site'} is a file. Give a folder for the site with --to. Nothing was written."
    )
    assert (tmp_path / "site").read_text("utf-8") == "mine"


def test_a_site_is_replaced_where_files_of_it_are_gone(site: Path) -> None:
    shutil.rmtree(site / "drawings")
    build_document(document(), site)
    assert (site / "drawings" / "plan.svg").exists()
    assert named(site) == ""


def test_what_is_put_into_a_site_while_the_next_is_built_is_not_lost(
    site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def slow(given: Document, folder: Path) -> None:
        small(given, folder)
        (site / "letter.txt").write_text("mine", "utf-8")

    monkeypatch.setattr(building, "generate", slow)
    with pytest.raises(SiteFailed, match=r"would lose letter\.txt"):
        build_document(document(), site)
    assert (site / "letter.txt").read_text("utf-8") == "mine"
    assert [path.name for path in site.parent.iterdir()] == ["site"]


@pytest.mark.parametrize("one_step", [True, False])
def test_what_is_put_into_a_site_at_the_last_moment_is_kept_and_told(
    site: Path, monkeypatch: pytest.MonkeyPatch, one_step: bool
) -> None:
    swap_in = building.swap_in

    def late(made: Path, place: Path, aside: Path) -> None:
        (place / "letter.txt").write_text("mine", "utf-8")
        swap_in(made, place, aside)

    monkeypatch.setattr(building, "swap_in", late)
    if not one_step:
        monkeypatch.setattr("builder.site.swap.exchanged", lambda *_: False)
    with pytest.raises(SiteFailed) as failure:
        build_document(document(), site)
    (kept,) = site.parent.glob(".housepack-build-site-*/old")
    assert str(failure.value) == (
        f"The new site stands in {site}. What appeared in the old one while it was built is kept in"
        f" {kept}: letter.txt."
    )
    assert contents(kept) == {"letter.txt": b"mine"}
    monkeypatch.setattr(building, "swap_in", swap_in)
    build_document(document(), site)
    assert contents(kept) == {"letter.txt": b"mine"}


@pytest.fixture
def _closed() -> Iterator[None]:
    """An author whose own files nobody else may read."""
    before = os.umask(0o077)
    yield
    os.umask(before)


@pytest.mark.usefixtures("_closed")
def test_a_web_server_may_read_the_site_whatever_the_author_closes(tmp_path: Path) -> None:
    site = tmp_path / "public" / "tech" / "site"
    build_document(document(), site)
    modes = {path: stat.S_IMODE(path.stat().st_mode) for path in (site, *site.rglob("*"))}
    assert {mode for path, mode in modes.items() if path.is_dir()} == {0o755}
    assert {mode for path, mode in modes.items() if path.is_file()} == {0o644}
    assert stat.S_IMODE(site.parent.stat().st_mode) == 0o755
    assert stat.S_IMODE(site.parent.parent.stat().st_mode) == 0o755
