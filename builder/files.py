"""
The edge to the disk: read a venue's folder, write files whole. Nothing else opens a file.

A venue's folder holds ``<department>.yml`` files, ``spaces/``, ``photos/`` and ``shows/``. Riders
in ``shows/`` are private: only :func:`read_shows` reads them, and nothing that publishes calls it.
"""

import errno
import os
import shlex
import stat
import tempfile
from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from importlib import resources
from pathlib import Path
from typing import TYPE_CHECKING

from builder.document import Attachment, Document
from builder.reading.nodes import decode
from builder.reading.problems import Problem, Refused, Where
from builder.stock.upgrade_record import RECORD

if TYPE_CHECKING:
    from builder.pipeline import Memory

FULL = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
CLOSED = (errno.EACCES, errno.EPERM, errno.EROFS)
NO_FOLDER = (errno.ENOTDIR, errno.EEXIST)
LARGEST_TEXT = 2 * 1024 * 1024
LARGEST_PHOTO = 8 * 1024 * 1024
PACKAGE = Path(__file__).resolve().parent
DEMOS = (PACKAGE / "demo", PACKAGE.parent / "venue")
"""Where the demo venue is: in an installed package, in a checkout."""
PHOTO_ENDINGS = (".png", ".jpg", ".jpeg", ".webp")
PHOTOS, SHOWS, SPACES = "photos", "shows", "spaces"


@dataclass(frozen=True, slots=True)
class Shows:
    """
    The riders in ``shows/`` as text, by file name within the venue's folder; what stood in the way
    of others; and files that are no riders.
    """

    texts: Mapping[str, str]
    problems: tuple[Problem, ...]
    others: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Folder:
    """A venue's files as text, by name, and its photos."""

    texts: Mapping[str, str]
    photos: Mapping[str, bytes]


def refuse_no_folder(venue: Path) -> None:
    """Refuse a venue's folder that is not there."""
    if not venue.is_dir():
        raise Refused(
            [
                Problem(
                    Where(venue.name),
                    "",
                    "",
                    "is not a folder",
                    "folder-missing",
                    "give a venue's folder with --venue, or begin one: housepack new myhouse",
                )
            ]
        )


def read_folder(venue: Path) -> Folder:
    """
    Read every YAML file of a venue's folder.

    Raises
    ------
    Refused
        If the folder is not there, or a file is not text, is too big, or leads out of the folder.
    """
    refuse_no_folder(venue)
    try:
        paths = sorted(venue.iterdir())
    except OSError as failure:
        raise Refused([closed(Where(venue.name), failure)]) from None
    yaml_paths = [path for path in paths if is_text(path)]
    refuse_the_folder_above(venue)
    of_spaces, wrong_spaces = paths_in_spaces(venue)
    texts, wrong_texts = read_each([*yaml_paths, *of_spaces], venue, LARGEST_TEXT)
    wrong_texts += wrong_spaces
    photos, wrong_photos = read_photos(venue)
    readable, unreadable = decoded(texts)
    if problems := [*wrong_texts, *wrong_photos, *unreadable]:
        raise Refused(problems)
    return Folder(readable, photos)


def is_text(path: Path) -> bool:
    """Whether a file is called as one that describes something."""
    return path.suffix in (".yml", ".yaml")


def paths_in_spaces(venue: Path) -> tuple[list[Path], list[Problem]]:
    """The files of all spaces, folder by folder, and what is wrong with the folders."""
    found: list[Path] = []
    problems: list[Problem] = []
    try:
        folders = within(venue, SPACES)
    except Refused as refused:
        return [], list(refused.problems)
    for folder in folders:
        if not folder.is_dir() and not leads_out(folder, venue):
            continue
        try:
            found += [path for path in within(venue, f"{SPACES}/{folder.name}") if is_text(path)]
        except Refused as refused:
            problems += refused.problems
    return found, problems


def read_photos(venue: Path) -> tuple[dict[str, bytes], list[Problem]]:
    """The photos of a venue's folder by name, and what is wrong with others there."""
    try:
        paths = [path for path in within(venue, PHOTOS) if path.suffix.lower() in PHOTO_ENDINGS]
    except Refused as refused:
        return {}, list(refused.problems)
    named = [path for path in paths if path.name.isprintable()]
    photos, problems = read_each(named, venue, LARGEST_PHOTO)
    problems += [badly_named(path.name) for path in paths if path not in named]
    problems += [
        unreadable_photo(name) for name, content in photos.items() if not is_image(content)
    ]
    return {name.removeprefix(f"{PHOTOS}/"): content for name, content in photos.items()}, problems


def within(venue: Path, name: str) -> list[Path]:
    """
    What a folder in the venue's folder holds, by name, but for hidden files; nothing where it is
    not there.

    Raises
    ------
    Refused
        `path-outside` where it is a link to elsewhere, `file-unreadable` where it is closed.
    """
    folder = venue / name
    if leads_out(folder, venue):
        raise Refused(
            [
                Problem(
                    Where(name),
                    "",
                    "",
                    "leads out of the venue's folder",
                    "path-outside",
                    "put the folder itself there",
                )
            ]
        )
    try:
        paths = sorted(folder.iterdir()) if folder.is_dir() else []
    except OSError as failure:
        raise Refused([closed(Where(name), failure)]) from None
    return [path for path in paths if not path.name.startswith(".")]


def leads_out(path: Path, folder: Path) -> bool:
    """Whether a path within a folder is, or goes through, a link to elsewhere."""
    try:
        return not path.resolve().is_relative_to(folder.resolve())
    except (OSError, RuntimeError):
        # A link that leads to itself leads nowhere.
        return True


def closed(where: Where, failure: OSError) -> Problem:
    """The problem with what the system does not let us read."""
    reason = (failure.strerror or "unknown reason").lower()
    missing = isinstance(failure, FileNotFoundError)
    advice = "check its name and its folder" if missing else "check its permissions"
    return Problem(where, "", "", f"cannot be read: {reason}", "file-unreadable", advice)


def refuse_the_folder_above(venue: Path) -> None:
    """
    Refuse a house's own folder where the venue within it is meant.

    Raises
    ------
    Refused
        `folder-above`, if there is a venue in the folder and not itself one.
    """
    inner = venue / "venue"
    if (inner / "house.yml").is_file() and not (venue / "house.yml").exists():
        reason = "holds a venue in a folder of its own"
        advice = f"give it with --venue {shlex.quote(str(inner))}"
        where = Where(venue.name or str(venue))
        raise Refused([Problem(where, "", "", reason, "folder-above", advice)])


def read_shows(venue: Path) -> Shows:
    """
    The riders of the shows on a venue's books.

    What cannot be read is told beside the others: one show must not hide the rest.
    """
    try:
        paths = within(venue, SHOWS)
    except Refused as refused:
        return Shows({}, refused.problems, ())
    riders = [path for path in paths if path.suffix in (".yml", ".yaml")]
    contents, wrong = read_each(riders, venue, LARGEST_TEXT)
    texts, problems = decoded(contents)
    return Shows(
        texts,
        (*wrong, *problems),
        tuple(path.relative_to(venue).as_posix() for path in paths if path not in riders),
    )


def read_upgrade_record(venue: Path) -> str | None:
    """
    What takes a venue's upgrade back, as text; None where there is none.

    Raises
    ------
    Refused
        If it is no regular file, is too big, or is not text.
    """
    path = venue / RECORD
    if not path.exists():
        return None
    return decode(read_within(path, venue, path.name, LARGEST_TEXT), path.name)


def read_sheet(path: Path) -> str:
    """
    The text of a counted sheet.

    Raises
    ------
    Refused
        If it is not there, is not text, or is too big.
    """
    if not path.exists():
        raise Refused(
            [
                Problem(
                    Where(path.name),
                    "",
                    "",
                    "is not there",
                    "file-unreadable",
                    "give a NUMBER after a line's name, or a counted sheet",
                )
            ]
        )
    return decode(read_within(path, path.parent, path.name, LARGEST_TEXT), path.name)


def read_rider(path: Path) -> str:
    """
    The text of a rider file.

    Raises
    ------
    Refused
        If it is not there, is no regular file, is too big, or is not text.
    """
    return decode(read_within(path, path.parent, path.name, LARGEST_TEXT), path.name)


def read_each(
    paths: Sequence[Path], folder: Path, largest: int
) -> tuple[dict[str, bytes], list[Problem]]:
    """
    The bytes of each file by its name within the folder, and what stood in the way of reading the
    others.
    """
    read: dict[str, bytes] = {}
    problems: list[Problem] = []
    for path in paths:
        name = path.relative_to(folder).as_posix()
        try:
            read[name] = read_within(path, folder, name, largest)
        except Refused as refused:
            problems += refused.problems
    return read, problems


def decoded(contents: Mapping[str, bytes]) -> tuple[dict[str, str], list[Problem]]:
    """Files as text by name, and what is wrong with those that are none."""
    texts: dict[str, str] = {}
    problems: list[Problem] = []
    for name, content in contents.items():
        try:
            texts[name] = decode(content, name)
        except Refused as refused:
            problems += refused.problems
    return texts, problems


def is_image(content: bytes) -> bool:
    """
    True where the first bytes are those of a PNG, JPEG or WebP image.

    Other kinds can carry scripts or are not shown by browsers.
    """
    return content.startswith((b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff")) or (
        content[:4] == b"RIFF" and content[8:12] == b"WEBP"
    )


def badly_named(name: str) -> Problem:
    """The problem with a photo whose name nobody could write into a line, or type."""
    return Problem(
        Where(PHOTOS),
        "",
        name,
        "is the name of a photo, and has a character that cannot be seen",
        "photo-name",
        "give it a name of letters, digits and hyphens",
    )


def unreadable_photo(name: str) -> Problem:
    """The problem with a photo that is no image."""
    return Problem(
        Where(name),
        "",
        "",
        "is not a PNG, JPEG or WebP image",
        "photo-unreadable",
        "save it as one of these",
    )


def read_within(path: Path, folder: Path, name: str, largest: int) -> bytes:
    """
    The bytes of a regular file that lies in the folder.

    Raises
    ------
    Refused
        If the path leads elsewhere, is no regular file, is too big, or cannot be read.
    """
    where = Where(name)
    if leads_out(path, folder):
        raise Refused([leading_outside(where)])
    try:
        details = path.stat()
        if not stat.S_ISREG(details.st_mode):
            raise Refused([no_file(where)])
        if details.st_size > largest:
            raise Refused([too_big(where, largest)])
        return path.read_bytes()
    except OSError as failure:
        raise Refused([closed(where, failure)]) from None


def leading_outside(where: Where) -> Problem:
    """The problem with a path that leads out of the venue's folder."""
    return Problem(
        where,
        "",
        "",
        "leads out of the venue's folder",
        "path-outside",
        "put the file itself into the folder",
    )


def no_file(where: Where) -> Problem:
    """The problem with what is no regular file."""
    reason, advice = "is not a file", "a venue's folder holds text files"
    return Problem(where, "", "", reason, "not-a-file", advice)


def too_big(where: Where, largest: int) -> Problem:
    """The problem with a file that is too large to be read."""
    reason = f"is larger than {largest // 1024 // 1024} MiB"
    return Problem(where, "", "", reason, "too-big", "split off what is not needed")


def published(venue: Path, memory: "Memory | None" = None) -> Document:
    """
    The whole document that a venue's folder publishes. What an edit does not reach is taken from
    ``memory``.

    Raises
    ------
    Refused
        With every problem in the folder's files.
    """
    # Here and not above: whoever reads a rider and a pack file must not wait for every department
    # to load.
    from builder.house_only.sealing import public_photos
    from builder.pipeline import document_of, pack_of, venue_of

    folder = read_folder(venue)
    read = venue_of(folder.texts, folder.photos, memory)
    document = document_of(pack_of(read, memory=memory))
    return with_photos(document, public_photos(folder.photos, read.files))


def with_photos(document: Document, photos: Mapping[str, bytes]) -> Document:
    """A document with a venue's photos beside its pages."""
    from builder.layout import photo_path

    shown = (Attachment(photo_path(name), content) for name, content in photos.items())
    return replace(document, files=(*document.files, *shown))


def package_texts(package: str, ending: str) -> dict[str, str]:
    """The text files that come with a package of ours, by name, in alphabetical order."""
    found = [entry for entry in resources.files(package).iterdir() if entry.name.endswith(ending)]
    return {
        entry.name: entry.read_text(encoding="utf-8")
        for entry in sorted(found, key=lambda entry: entry.name)
    }


def state_of(folder: Path) -> tuple[tuple[str, int, int], ...]:
    """
    When each file of a folder was written and how large it is: other where anything was changed.
    """
    states = []
    for path in sorted(folder.rglob("*")):
        # A file may go while they are counted: an editor writes another and renames it.
        with suppress(OSError):
            details = path.stat()
            states.append((path.as_posix(), details.st_mtime_ns, details.st_size))
    return tuple(states)


def example_files() -> tuple[tuple[str, str], ...]:
    """
    Files that show how each key is written, by name: the demo venue's, then the starting venue's,
    then parts of files with the keys that neither writes.

    Raises
    ------
    FileNotFoundError
        If there is no demo venue; an installation without it is broken and should say so.
    """
    demo = next((place for place in DEMOS if place.is_dir()), None)
    if demo is None:
        raise FileNotFoundError(f"no demo venue in {' or '.join(map(str, DEMOS))}; install again")
    paths = [*sorted(demo.glob("*.yml")), *sorted(demo.glob("shows/*.yml"))]
    started = package_texts("builder.starter", ".yml") | package_texts("builder.starter", ".yaml")
    written = [(path.relative_to(demo).as_posix(), path.read_text("utf-8")) for path in paths]
    others = package_texts("builder.explaining", ".yml")
    return (*written, *started.items(), *others.items())


def write_whole(path: Path, text: str) -> None:
    """
    Write a file whole or not at all: a reader sees the old bytes or the new, never a part.

    Raises
    ------
    Refused
        `not-written` where the disk refuses, or where a folder or a device has the name: those are
        never replaced.
    """
    try:
        if path.exists() and not path.is_file():
            raise IsADirectoryError(errno.EISDIR, "", str(path))
        put_whole(path, text)
    except OSError as failure:
        reason, advice = why_refused(failure), "nothing was written"
        problem = Problem(Where(str(path)), "", "", reason, "not-written", advice)
        raise Refused([problem]) from failure


def put_whole(path: Path, text: str) -> None:
    """Write a file beside its name, and then give it the name."""
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:80]}.")
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        Path(name).chmod(0o644)
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def why_refused(failure: OSError) -> str:
    """Why the disk refused, in plain words."""
    if failure.errno in FULL:
        return "cannot be written to: the disk is full"
    if failure.errno in CLOSED:
        return "cannot be written to: it is closed to you, or the disk is read-only"
    if failure.errno == errno.EISDIR:
        return "cannot be written to: a folder or a device has that name"
    if failure.errno in NO_FOLDER:
        return "cannot be written to: a file stands where its folder should be"
    return f"cannot be written to: {(failure.strerror or 'unknown reason').lower()}"
