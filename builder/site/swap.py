"""
Put a finished folder in the place of the old one in a single step, so that a reader meets the old
site or the new one.
"""

import ctypes
import os
import sys
from pathlib import Path

AT_FDCWD = -100
RENAME_EXCHANGE = 2


def swap_in(made: Path, place: Path, aside: Path) -> None:
    """
    Move the folder ``made`` to ``place``, and what stood there to ``aside``. All must be on one
    disk.

    Raises
    ------
    OSError
        If the disk refuses; then ``place`` is as it was.
    """
    if not place.exists():
        made.rename(place)
        return
    if exchanged(made, place):
        made.rename(aside)
        return
    place.rename(aside)
    try:
        made.rename(place)
    except OSError:
        aside.rename(place)
        raise


def exchanged(one: Path, other: Path) -> bool:
    """
    Let two folders change names in one step.

    False where the system cannot; then two steps must do, with a short gap between them.
    """
    if sys.platform != "linux":
        return False
    call = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None)
    if call is None:
        return False
    return bool(
        call(AT_FDCWD, os.fsencode(one), AT_FDCWD, os.fsencode(other), RENAME_EXCHANGE) == 0
    )
