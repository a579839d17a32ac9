"""``housepack changes``: what changed between two states of a venue."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import click

from builder.cli.carrying import tell_and_exit
from builder.cli.printing import VENUE
from builder.cli.telling import tell, tell_in
from builder.pack import Pack
from builder.reading.problems import Refused

if TYPE_CHECKING:  # it loads every department; see carrying.py
    from builder.pipeline import Venue


@click.command()
@click.argument("before", default="HEAD")
@click.argument("after", default="")
@VENUE
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "markdown", "json"]),
    default="text",
    show_default=True,
    help="How to print.",
)
@click.option(
    "--all",
    "every",
    is_flag=True,
    help="Show every figure that moved, not the largest moves alone. JSON always has every one.",
)
def changes(before: str, after: str, venue: Path, form: str, every: bool) -> None:
    """
    Print what changed from BEFORE to AFTER: facts, figures and findings.

    Each is a pack.json, a venue's folder, a git revision of the venue such as HEAD~3, or a day such
    as 2026-10-12. Left out, BEFORE is the last commit and AFTER the folder as it is now.
    """
    from builder.pipeline import house_pack_of, pack_of
    from builder.stock.comparison import Comparison, compare
    from builder.stock.telling import as_json, as_markdown, as_text

    states = (before, after or str(venue))
    # A pack file knows nothing of what is for the house only, which must not seem new beside it.
    make = pack_of if any(Path(which).is_file() for which in states) else house_pack_of
    comparison = compare(*(pack_or_tell(which, venue, make) for which in states))
    words: dict[str, Callable[[Comparison], str]] = {
        "text": partial(as_text, every=every),
        "markdown": partial(as_markdown, every=every),
        "json": as_json,
    }
    tell_in(form, words[form](comparison))


def pack_or_tell(which: str, venue: Path, make: "Callable[[Venue], Pack]") -> Pack:
    """
    One of the two packs; prints what is wrong with it, and with which of the two, and exits with 1.
    """
    try:
        return pack_at(which, venue, make)
    except Refused as refused:
        tell(f"In {which}:", err=True)
        tell_and_exit(refused)


def pack_at(which: str, venue: Path, make: "Callable[[Venue], Pack]") -> Pack:
    """The pack of a file, of a folder, or of the venue at a revision."""
    from builder.files import read_folder
    from builder.history import folder_at
    from builder.pack_file import read_pack
    from builder.pipeline import venue_of

    path = Path(which)
    if path.is_file():
        return read_pack(path)
    if path.is_dir():
        now = read_folder(path)
        return make(venue_of(now.texts, now.photos))
    past = folder_at(venue, which)
    for problem in past.left_out:
        tell(f"In {which}: {problem}", err=True)
    return make(venue_of(past.folder.texts, past.folder.photos))
