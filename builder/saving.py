"""
Write changed files into a venue's folder: all of them or none, and never over what somebody else
has written since.

Every new text is first written beside the old one and forced to the disk. One file is then put in
place in one step. Several are first listed in a note, ``.housepack-unfinished``: whoever is cut off
after the note is finished by the next change, and before it nothing has begun.
"""

import hashlib
import json
import os
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

from builder.files import SPACES, why_refused
from builder.reading.line_ends import ended_as
from builder.reading.problems import Problem, Refused, Where
from builder.reading.text import one_line_end
from builder.stock.rewrite import Rewrite

NOTE = ".housepack-unfinished"
PARTS = (".housepack-", ".part")
BOM = b"\xef\xbb\xbf"
PAUSE_S = 0.1
PAUSES = 30


@dataclass(frozen=True, slots=True)
class Step:
    """
    A file on its way: the hash it had (empty where it was not there) and the hash it will have.
    """

    file: str
    before: str
    after: str


def save(venue: Path, rewrites: Sequence[Rewrite]) -> None:
    """
    Put the new texts in place.

    Raises
    ------
    Refused
        `being-changed` where another change holds the folder, `changed-since` where a file is no
        longer what was read, `not-written` where the disk refuses, `change-unfinished` where an
        earlier change was cut off and a file was changed by hand since. Nothing is changed then.
    """
    for rewrite in rewrites:
        if not is_plain(rewrite.file):
            raise ValueError(f"file must be a plain name, got {rewrite.file!r}")
    with locked(venue), told(venue):
        finish(venue)
        steps = [step_of(venue, rewrite) for rewrite in rewrites]
        try:
            for rewrite in rewrites:
                write_part(venue, rewrite)
            if len(steps) > 1:
                write_durably(part(venue, NOTE), note_of(steps).encode())
                part(venue, NOTE).replace(venue / NOTE)
                settle(venue)
        except BaseException:
            if not (venue / NOTE).exists():
                sweep(venue)
            raise
        put_in_place(venue, steps)


def recover(venue: Path) -> None:
    """
    Finish a change that was cut off, so that what is read next is whole. Errors as for
    :func:`save`.
    """
    if (venue / NOTE).exists() or parts_left(venue):
        with locked(venue), told(venue):
            finish(venue)


def finish(venue: Path) -> None:
    """Finish what the note lists, or sweep away what was begun without one."""
    if (venue / NOTE).exists():
        steps = noted_steps(venue)
        for step in steps:
            refuse_unfinishable(venue, step)
        put_in_place(venue, steps)
    sweep(venue)


def noted_steps(venue: Path) -> list[Step]:
    """
    The steps of a change that was cut off; refuses a note that no change of ours wrote, such as one
    that leads out of the folder.
    """
    try:
        noted = json.loads((venue / NOTE).read_text(encoding="utf-8"))
        steps = [Step(*map(str, each)) for each in noted]
    except (ValueError, TypeError, RecursionError):
        steps = []
    if not steps or not all(is_plain(step.file) for step in steps):
        reason = "is not what a change that was cut off leaves"
        advice = "look through the venue's files, then delete it"
        raise Refused([Problem(Where(NOTE), "", "", reason, "change-unfinished", advice)])
    return steps


def is_plain(file: str) -> bool:
    """Whether a name is that of a file in the venue's folder itself, or in that of a space."""
    parts = file.split("/")
    if len(parts) not in (1, 3) or (len(parts) == 3 and parts[0] != SPACES):
        return False
    return all(
        Path(each).name == each and not each.startswith(".") and each.isprintable()
        for each in parts
    )


def refuse_unfinishable(venue: Path, step: Step) -> None:
    """
    Refuse where a file is neither what it was nor what it should become: somebody has changed it by
    hand.
    """
    current = hashed(venue / step.file)
    ready = current == step.before and hashed(part(venue, step.file)) == step.after
    if current != step.after and not ready:
        reason = "belongs to a change that was cut off, and was changed by hand since"
        advice = f"look through the venue's files, then delete {NOTE} in their folder"
        raise Refused([Problem(Where(step.file), "", "", reason, "change-unfinished", advice)])


def put_in_place(venue: Path, steps: Sequence[Step]) -> None:
    """Let each new text take the place of the old, then remove the note."""
    for step in steps:
        if hashed(venue / step.file) != step.after:
            part(venue, step.file).replace(target(venue, step.file))
    for folder in {(venue / step.file).parent for step in steps} | {venue}:
        settle(folder)
    if (venue / NOTE).exists():
        (venue / NOTE).unlink()
        settle(venue)


def step_of(venue: Path, rewrite: Rewrite) -> Step:
    """A rewrite as a step; refuses where the file is no longer what was read."""
    raw = content(venue / rewrite.file)
    if (None if raw is None else as_read(raw)) != rewrite.before:
        reason = "was changed by somebody else since it was read"
        raise Refused(
            [
                Problem(
                    Where(rewrite.file),
                    "",
                    "",
                    reason,
                    "changed-since",
                    "look at it, and give the order again; nothing was changed",
                )
            ]
        )
    return Step(rewrite.file, hashed(venue / rewrite.file), digest(new_content(raw, rewrite)))


def as_read(raw: bytes) -> str:
    """A file's text as it was given to be edited."""
    return one_line_end(raw.removeprefix(BOM).decode("utf-8", "surrogateescape"))


def new_content(raw: bytes | None, rewrite: Rewrite) -> bytes:
    """The bytes to write, with the byte-order mark and the line ends that the file had."""
    if raw is None:
        return rewrite.after.encode()
    mark = BOM if raw.startswith(BOM) else b""
    return mark + ended_as(raw.removeprefix(BOM).decode(), rewrite.after).encode()


def write_part(venue: Path, rewrite: Rewrite) -> None:
    """The new text beside the old one, with the old one's permissions."""
    path, raw = venue / rewrite.file, content(venue / rewrite.file)
    write_durably(
        part(venue, rewrite.file),
        new_content(raw, rewrite),
        mode=path.stat().st_mode & 0o777 if raw is not None else 0o644,
    )


def write_durably(path: Path, content: bytes, mode: int = 0o644) -> None:
    """Write a new file and force it to the disk."""
    handle = os.open(
        path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_NOFOLLOW", 0), 0o600
    )
    try:
        rest = memoryview(content)
        while rest:
            rest = rest[os.write(handle, rest) :]
        os.fchmod(handle, mode)
        os.fsync(handle)
    finally:
        os.close(handle)


def sweep(venue: Path) -> None:
    """Remove new texts that were never put in place."""
    for path in parts_left(venue):
        path.unlink()


def parts_left(venue: Path) -> list[Path]:
    """New texts that wait beside the old ones."""
    return sorted(venue.glob(f"{PARTS[0]}*{PARTS[1]}")) if venue.is_dir() else []


def settle(folder: Path) -> None:
    """Force a folder's names to the disk."""
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def part(venue: Path, file: str) -> Path:
    """Where a file's new text waits."""
    flat = file.lstrip(".").replace("%", "%25").replace("/", "%2F")
    return venue / f"{PARTS[0]}{flat}{PARTS[1]}"


def target(venue: Path, file: str) -> Path:
    """The file itself, where its name is a link within the folder."""
    return (venue / file).resolve() if (venue / file).is_symlink() else venue / file


def content(path: Path) -> bytes | None:
    """A file's bytes, None where there is none."""
    return path.read_bytes() if path.exists() else None


def hashed(path: Path) -> str:
    """The hash of a file, empty where there is none."""
    raw = content(path)
    return "" if raw is None else digest(raw)


def digest(raw: bytes) -> str:
    """The hash by which two texts are told apart."""
    return hashlib.sha256(raw).hexdigest()


def note_of(steps: Sequence[Step]) -> str:
    """The steps of a change as text."""
    return json.dumps([[step.file, step.before, step.after] for step in steps], indent=1) + "\n"


@contextmanager
def locked(venue: Path) -> Iterator[None]:
    """
    Hold the folder against a second change. The lock is the system's and goes with the process,
    however that ends.

    Raises
    ------
    Refused
        `being-changed` where another holds it for longer than a moment, `not-written` where the
        system has no such locks.
    """
    if sys.platform == "win32":
        reason, advice = "cannot be locked on this system", "change the files in an editor"
        raise Refused([Problem(Where(venue.name), "", "", reason, "not-written", advice)])
    import fcntl

    with told(venue):
        handle = os.open(venue, os.O_RDONLY)
    try:
        for _ in range(PAUSES):
            try:
                fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
                break
            except BlockingIOError:
                time.sleep(PAUSE_S)
        else:
            reason = "is being changed by somebody else at this moment"
            advice = "wait, and give the order again; nothing was changed"
            raise Refused([Problem(Where(venue.name), "", "", reason, "being-changed", advice)])
        yield
    finally:
        # By now the change is made or refused, and a lock that cannot be let go ends with the
        # process.
        with suppress(OSError):
            os.close(handle)


@contextmanager
def told(venue: Path) -> Iterator[None]:
    """
    What the disk refuses, in a sentence.

    Raises
    ------
    Refused
        `not-written`.
    """
    try:
        yield
    except OSError as failure:
        cut_off = False
        with suppress(OSError):
            cut_off = (venue / NOTE).exists()
        advice = (
            "the change is half written; give any order again and it is finished first"
            if cut_off
            else "nothing was changed"
        )
        raise Refused(
            [Problem(Where(venue.name), "", "", why_refused(failure), "not-written", advice)]
        ) from None
