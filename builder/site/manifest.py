"""
The list that a build leaves in its site of every file it wrote. A folder may be replaced only where
such a list vouches for all that is in it.
"""

import json
from collections.abc import Iterator, Mapping
from hashlib import sha256
from itertools import islice
from pathlib import Path, PurePosixPath

from builder.files import write_whole

MANIFEST = "housepack-site.json"
FORMAT = 1
LARGEST = 64 * 1024 * 1024
NEVER_OURS = (".git", "house.yml")
"""Names that no build writes: a list that has one of them is not ours."""
MOST_NAMED = 8
MOST_COUNTED = 1000


def write_manifest(site: Path) -> None:
    """Leave in a finished site the list of all its files, each with its hash."""
    listed = {name: hashed(site / name) for name in sorted(files_within(site))}
    text = json.dumps({"format": FORMAT, "files": listed}, indent=1, ensure_ascii=False)
    write_whole(site / MANIFEST, f"{text}\n")


def manifest_of(site: Path) -> Mapping[str, str] | None:
    """The hashes of a site's files by path within it; None where no list of ours is there."""
    path = site / MANIFEST
    if path.is_symlink() or not path.is_file() or path.stat().st_size > LARGEST:
        return None
    try:
        read = json.loads(path.read_bytes())
    except (ValueError, RecursionError):
        return None
    if not isinstance(read, dict) or read.get("format") != FORMAT:
        return None
    listed = read.get("files")
    if not isinstance(listed, dict) or not all(is_ours(name) for name in listed):
        return None
    return {name: str(digest) for name, digest in listed.items()}


def is_ours(name: str) -> bool:
    """Whether a build could have written a file of this path within its site."""
    path = PurePosixPath(name)
    plain = not path.is_absolute() and ".." not in path.parts and str(path) == name
    return plain and not any(part in NEVER_OURS for part in path.parts)


def not_ours(folder: Path) -> Iterator[str]:
    """
    What a folder holds that no build wrote there, or that was changed since: files by their path
    within it, and whole folders, with a slash behind, that hold no file of the list.
    """
    listed = manifest_of(folder) or {}
    ours = {str(above) for name in listed for above in PurePosixPath(name).parents}
    yield from strangers(folder, folder, listed, ours)


def strangers(
    folder: Path, within: Path, listed: Mapping[str, str], ours: set[str]
) -> Iterator[str]:
    """What of one folder of a site no build wrote."""
    for path in sorted(folder.iterdir()):
        name = path.relative_to(within).as_posix()
        if path.is_dir() and not path.is_symlink():
            if name in ours:
                yield from strangers(path, within, listed, ours)
            else:
                yield f"{name}/"
        elif not vouched_for(path, name, listed):
            yield name


def vouched_for(path: Path, name: str, listed: Mapping[str, str]) -> bool:
    """Whether a file is as the list says; the list itself is where there is one."""
    if path.is_symlink() or not path.is_file():
        return False
    return (name == MANIFEST and bool(listed)) or listed.get(name) == hashed(path)


def named(folder: Path) -> str:
    """What a folder holds that no build wrote, in words; empty where there is nothing such."""
    names = list(islice(not_ours(folder), MOST_COUNTED))
    told, rest = ", ".join(names[:MOST_NAMED]), len(names) - MOST_NAMED
    if rest <= 0:
        return told
    return f"{told} and {rest}{' or' if len(names) == MOST_COUNTED else ''} more"


def remove_ours(folder: Path) -> None:
    """
    Remove what a build wrote into a folder, and the folder where nothing else is left in it.

    The list goes last, so that what is cut off can be finished.
    """
    listed, strange = manifest_of(folder), set(not_ours(folder))
    for name in listed or {}:
        if name not in strange:
            (folder / name).unlink(missing_ok=True)
    for path in sorted(folder.rglob("*"), reverse=True):
        if path.is_dir() and not path.is_symlink() and not any(path.iterdir()):
            path.rmdir()
    if listed is not None:
        (folder / MANIFEST).unlink()
    if not any(folder.iterdir()):
        folder.rmdir()


def files_within(site: Path) -> Iterator[str]:
    """Every file of a site but the list, by its path within it."""
    for path in site.rglob("*"):
        name = path.relative_to(site).as_posix()
        if path.is_file() and name != MANIFEST:
            yield name


def hashed(path: Path) -> str:
    """The hash of a file."""
    return sha256(path.read_bytes()).hexdigest()
