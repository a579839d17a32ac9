"""A venue's folder as it was at a revision of git, read from git's own store: nothing is checked out and no file is touched."""

import re
import subprocess
from pathlib import Path

from builder.files import LARGEST_PHOTO, LARGEST_TEXT, PHOTO_ENDINGS, Folder, is_image
from builder.reading.nodes import decode
from builder.reading.problems import Problem, Refused, Where

DAY = re.compile(r"\d{4}-\d{2}-\d{2}")
SECONDS = 60
PLAIN_FILES = ("100644", "100755")


def folder_at(venue: Path, revision: str) -> Folder:
    """
    The folder at a revision: a commit, a tag, a branch, ``HEAD~3``; or at the end of a day such as ``2026-10-12``.

    Raises
    ------
    Refused
        `revision-unknown` where git or the revision is not there, and whatever else a folder is refused for.
    """
    commit = commit_of(venue, revision)
    if not commit:
        reason = "is no pack file, no folder and no revision that git knows here"
        raise Refused([Problem(Where("changes"), "", revision, reason, "revision-unknown", advice_at(venue))])
    texts = {name: decode(content, name) for name, content in blobs(venue, commit, "", (".yml", ".yaml"), LARGEST_TEXT).items()}
    photos = blobs(venue, commit, "photos/", PHOTO_ENDINGS, LARGEST_PHOTO)
    return Folder(texts, {name: content for name, content in photos.items() if is_image(content)})


def advice_at(venue: Path) -> str:
    """What to give instead: without git only files and folders can be compared."""
    if git(venue, "rev-parse", "--is-inside-work-tree"):
        return "give a pack.json, a venue's folder, a commit or a day"
    return f"{venue.name} is not kept in git, so there is no earlier state; give two: housepack changes OLD NEW, each a pack.json or a venue's folder"


def commit_of(venue: Path, revision: str) -> str:
    """The commit that a revision or a day means, empty where there is none."""
    if DAY.fullmatch(revision):
        return git(venue, "rev-list", "-1", f"--before={revision} 23:59:59", "HEAD").decode().strip()
    return git(venue, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}").decode().strip()


def blobs(venue: Path, commit: str, within: str, endings: tuple[str, ...], largest: int) -> dict[str, bytes]:
    """The plain files of one folder of a commit, by name."""
    listed = git(venue, "ls-tree", "-z", "-l", commit, *([within] if within else [])).decode("utf-8", "surrogateescape")
    found = {}
    for entry in filter(None, listed.split("\0")):
        about, _, path = entry.partition("\t")
        mode, kind, name, size = about.split()
        if kind == "blob" and mode in PLAIN_FILES and path.lower().endswith(endings) and int(size) <= largest:
            found[path.removeprefix(within)] = git(venue, "cat-file", "blob", name)
    return found


def git(venue: Path, *words: str) -> bytes:
    """What git answers, nothing where it fails or is not there."""
    try:
        # The words are ours but for the revision, which cannot be taken for an option, and no shell reads them.
        ran = subprocess.run(["git", "-C", str(venue), *words], capture_output=True, timeout=SECONDS, check=False)  # noqa: S603, S607
    except (OSError, subprocess.TimeoutExpired):
        return b""
    return ran.stdout if ran.returncode == 0 else b""
