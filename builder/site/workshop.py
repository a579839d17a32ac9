"""
The folder beside a site in which a build works. It is locked for as long as the build lives, so
that the next one can tell what a dead build left, put it right, and remove it.
"""

import os
import re
import shutil
import signal
import sys
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from builder.site.manifest import manifest_of, remove_ours

PREFIX = ".housepack-build-"
RANDOM = "[a-z0-9_]{8}"
"""What the system puts behind the prefix of a new folder."""
NEW, OLD = "new", "old"
KNOWS_LOCKS = sys.platform != "win32"
"""Whether the system has locks that go with the process; without them nothing is recovered."""


@contextmanager
def workshop(site: Path) -> Iterator[Path]:
    """
    A folder to build in, on the disk of ``site``; it goes with the build.

    What a build did not write is never removed with it: then the folder stays.
    """
    folder, handle = begun(site)
    try:
        with told_to_end():
            yield folder
    finally:
        emptied(folder)
        os.close(handle)


@contextmanager
def told_to_end() -> Iterator[None]:
    """Let a build that the system tells to end clean up, as it does when its author interrupts."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGTERM, signal.default_int_handler)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


def begun(site: Path) -> tuple[Path, int]:
    """A new folder with its lock. One that another build took for a dead one's is made again."""
    while True:
        folder = Path(tempfile.mkdtemp(prefix=f"{PREFIX}{site.name}-", dir=site.parent))
        handle = locked(folder)
        if handle is not None and folder.is_dir():
            return folder, handle


def recover(site: Path) -> None:
    """Put right what dead builds of this site left, and remove their folders."""
    ours = re.compile(re.escape(f"{PREFIX}{site.name}-") + RANDOM)
    beside = sorted(site.parent.iterdir()) if site.parent.is_dir() else []
    for folder in beside:
        if ours.fullmatch(folder.name) and folder.is_dir() and not folder.is_symlink():
            recover_from(folder, site)


def recover_from(folder: Path, site: Path) -> None:
    """
    Remove the folder of a dead build. Where it was cut off between taking the old site away and
    putting the new one in place, the old one comes back first.
    """
    if not KNOWS_LOCKS:
        return
    handle = locked(folder)
    if handle is None:
        return
    try:
        if (folder / OLD).is_dir() and not site.exists():
            (folder / OLD).rename(site)
        emptied(folder)
    finally:
        os.close(handle)


def emptied(folder: Path) -> None:
    """
    Remove what builds made in a folder of theirs, and the folder.

    A new site without a list is half written, and nobody else's. An old one may hold what somebody
    put there meanwhile.
    """
    new, old = folder / NEW, folder / OLD
    if new.is_dir() and manifest_of(new) is None:
        shutil.rmtree(new)
    for site in (new, old):
        if site.is_dir():
            remove_ours(site)
    if not any(folder.iterdir()):
        folder.rmdir()


def locked(folder: Path) -> int | None:
    """The lock of a folder, None where another build holds it or the folder is gone."""
    if not KNOWS_LOCKS:
        return os.open(os.devnull, os.O_RDONLY)
    try:
        handle = os.open(folder, os.O_RDONLY)
    except FileNotFoundError:
        return None
    try:
        lock(handle)
    except BlockingIOError:
        os.close(handle)
        return None
    return handle


def lock(handle: int) -> None:
    """Lock an open folder, or raise BlockingIOError where somebody else holds it."""
    if sys.platform != "win32":
        import fcntl

        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
