"""The command that an author may type next, as a shell reads it."""

import shlex
from pathlib import Path

HERE = Path("venue")
"""The venue that every command takes where none is given."""


def command(*words: str | Path) -> str:
    """A command of ours, with quotes around each word that a shell would not take as one."""
    return shlex.join(["housepack", *(str(word) for word in words)])


def at(venue: Path) -> tuple[str | Path, ...]:
    """The option that names a venue; nothing for the one that is taken anyway."""
    return () if venue == HERE else ("--venue", venue)


def argument(path: Path) -> str:
    """A path where a command expects one, also where its name begins like an option."""
    return f"./{path}" if str(path).startswith("-") else str(path)
