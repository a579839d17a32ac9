"""
A venue's folder as it was at a revision of git, read from git's own store: nothing is checked out
and no file is touched.
"""

import re
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from builder.files import LARGEST_PHOTO, LARGEST_TEXT, PHOTO_ENDINGS, Folder, is_image
from builder.reading.nodes import decode
from builder.reading.problems import Problem, Refused, Where

DAY = re.compile(r"\d{4}-\d{2}-\d{2}")
SECONDS = 60
PLAIN_FILES = ("100644", "100755")
SPACES = "spaces/"
"""Where the folders of a house's spaces stand."""


@dataclass(frozen=True, slots=True)
class Past:
    """
    A folder as it was, and a problem for each file of it that is left out: the past cannot be
    mended, so it is said and not refused.
    """

    folder: Folder
    left_out: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Blob:
    """
    A file that git keeps: its name within the folder, its size in bytes, and whether it is a plain
    file.
    """

    name: str
    size: int
    plain: bool


def folder_at(venue: Path, revision: str) -> Past:
    """
    The folder at a revision: a commit, a tag, a branch, ``HEAD~3``; or at the end of a day such as
    ``2026-10-12``.

    Raises
    ------
    Refused
        `revision-unknown` where git or the revision is not there, and whatever else a folder is
        refused for.
    """
    commit = commit_of(venue, revision)
    if not commit:
        reason = "is no pack file, no folder and no revision that git knows here"
        raise Refused(
            [Problem(Where("changes"), "", revision, reason, "revision-unknown", advice_at(venue))]
        )
    texts, wrong_texts = contents(venue, commit, "", (".yml", ".yaml"), LARGEST_TEXT)
    for folder in folders(venue, commit, SPACES):
        own, wrong_own = contents(venue, commit, folder, (".yml", ".yaml"), LARGEST_TEXT)
        texts |= {f"{folder}{name}": content for name, content in own.items()}
        wrong_texts += wrong_own
    photos, wrong_photos = contents(venue, commit, "photos/", PHOTO_ENDINGS, LARGEST_PHOTO)
    images = {name: content for name, content in photos.items() if is_image(content)}
    strange = [
        left_out(f"photos/{name}", "is not a PNG, JPEG or WebP image", "photo-unreadable")
        for name in photos
        if name not in images
    ]
    return Past(
        Folder({name: decode(content, name) for name, content in texts.items()}, images),
        (*wrong_texts, *wrong_photos, *strange),
    )


def left_out(name: str, reason: str, code: str) -> Problem:
    """The problem with a file that is not compared."""
    return Problem(Where(name), "", "", reason, code, "it is left out of the comparison")


def advice_at(venue: Path) -> str:
    """What to give instead: without git only files and folders can be compared."""
    if git(venue, "rev-parse", "--is-inside-work-tree"):
        return "give a pack.json, a venue's folder, a commit or a day"
    return (
        f"{venue.name} is not kept in git, so there is no earlier state; give two: housepack"
        " changes OLD NEW, each a pack.json or a venue's folder"
    )


def commit_of(venue: Path, revision: str) -> str:
    """The commit that a revision or a day means, empty where there is none."""
    if DAY.fullmatch(revision):
        return (
            git(venue, "rev-list", "-1", f"--before={revision} 23:59:59", "HEAD").decode().strip()
        )
    return (
        git(venue, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}")
        .decode()
        .strip()
    )


def contents(
    venue: Path, commit: str, within: str, endings: tuple[str, ...], largest: int
) -> tuple[dict[str, bytes], list[Problem]]:
    """
    The plain files of one folder of a commit by name, and a problem for each that is no plain file
    or too large.
    """
    found: dict[str, bytes] = {}
    problems: list[Problem] = []
    for blob, mark in blobs(venue, commit, within, endings):
        if not blob.plain:
            problems.append(
                left_out(f"{within}{blob.name}", "is a link, which is not followed", "not-a-file")
            )
        elif blob.size > largest:
            problems.append(
                left_out(
                    f"{within}{blob.name}",
                    f"is larger than {largest // 1024 // 1024} MiB",
                    "too-big",
                )
            )
        else:
            found[blob.name] = git(venue, "cat-file", "blob", mark)
    return found, problems


def blobs(
    venue: Path, commit: str, within: str, endings: tuple[str, ...]
) -> Iterator[tuple[Blob, str]]:
    """The files of one folder of a commit, each with git's own name for its content."""
    listed = git(venue, "ls-tree", "-z", "-l", commit, *([within] if within else [])).decode(
        "utf-8", "surrogateescape"
    )
    for entry in filter(None, listed.split("\0")):
        about, _, path = entry.partition("\t")
        mode, kind, mark, size = about.split()
        if kind == "blob" and path.lower().endswith(endings):
            yield Blob(path.removeprefix(within), int(size), mode in PLAIN_FILES), mark


def folders(venue: Path, commit: str, within: str) -> list[str]:
    """The folders in a folder of a commit, each with a stroke at its end."""
    listed = git(venue, "ls-tree", "-z", commit, within).decode("utf-8", "surrogateescape")
    entries = [entry.partition("\t") for entry in listed.split("\0") if entry]
    return [f"{path}/" for about, _, path in entries if about.split()[1] == "tree"]


def git(venue: Path, *words: str) -> bytes:
    """What git answers, nothing where it fails or is not there."""
    try:
        # The words are ours but for the revision, which cannot be taken for an option, and no shell
        # reads them.
        ran = subprocess.run(  # noqa: S603
            ["git", "-C", str(venue), *words],  # noqa: S607
            capture_output=True,
            timeout=SECONDS,
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired):
        return b""
    return ran.stdout if ran.returncode == 0 else b""
