"""``housepack upgrade``: a venue of an older language written as the newest says it."""

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from builder.cli.carrying import tell_and_exit, write_asked
from builder.cli.next_step import at, command
from builder.cli.printing import VENUE, exit_with_problems
from builder.cli.stock import DRY, YES
from builder.cli.telling import tell
from builder.reading.problems import Refused

if TYPE_CHECKING:  # they load every department; see carrying.py
    from builder.files import Folder
    from builder.stock.rewrite import Rewrite


@click.command()
@VENUE
@click.option("--undo", is_flag=True, help="Take the upgrade back, to the letter.")
@DRY
@YES
def upgrade(venue: Path, undo: bool, dry_run: bool, yes: bool) -> None:
    """
    Bring a venue's files to the newest language.

    The lines that change are shown first. Comments, order, quotes and blank lines of your files
    stay.
    """
    folder = folder_of(venue)
    if undo:
        take_back(venue, folder, dry_run=dry_run, yes=yes)
        return
    rewrites = rewrites_or_exit(venue, folder)
    if not rewrites:
        tell("Written in the newest language already, so nothing was changed.")
        return
    show(folder, rewrites)
    if write_asked(venue, rewrites, dry_run=dry_run, yes=yes):
        tell(f"To take it back, run:\n  {command('upgrade', '--undo', *at(venue))}")


def folder_of(venue: Path) -> "Folder":
    """A venue's files; a change that was cut off is finished first."""
    from builder.files import read_folder
    from builder.saving import recover

    try:
        recover(venue)
        return read_folder(venue)
    except Refused as refused:
        exit_with_problems(refused.problems, venue, "text")


def rewrites_or_exit(venue: Path, folder: "Folder") -> "Sequence[Rewrite]":
    """The files that an upgrade changes; prints the problems, and exits with 1 where it has any."""
    from builder.files import read_upgrade_record
    from builder.stock.upgrading import upgraded

    try:
        return upgraded(folder.texts, folder.photos, read_upgrade_record(venue))
    except Refused as refused:
        exit_with_problems(refused.problems, venue, "text")


def show(folder: "Folder", rewrites: "Sequence[Rewrite]") -> None:
    """The lines that change, and what that does to figures and findings."""
    from builder.pipeline import packs_of, venue_of
    from builder.stock.changing import difference_text
    from builder.stock.comparison import compare
    from builder.stock.telling import knock_ons
    from builder.stock.upgrade_record import RECORD

    described = [each for each in rewrites if each.file != RECORD]
    texts = {**folder.texts, **{each.file: each.after for each in described}}
    before = packs_of(venue_of(folder.texts, folder.photos)).house
    after = packs_of(venue_of(texts, folder.photos)).house
    tell(difference_text(described))
    tell("")
    tell(knock_ons(compare(before, after)))


def take_back(venue: Path, folder: "Folder", *, dry_run: bool, yes: bool) -> None:
    """Write the files as they were before the upgrade, and remove its record."""
    from builder.files import read_upgrade_record
    from builder.stock.changing import difference_text
    from builder.stock.upgrade_record import RECORD
    from builder.stock.upgrading import taken_back

    try:
        record = read_upgrade_record(venue)
        if not record:
            tell(f"There is no upgrade to take back: {venue} holds no {RECORD}.", err=True)
            sys.exit(1)
        rewrites = taken_back(record, folder.texts)
    except Refused as refused:
        tell_and_exit(refused)
    tell(difference_text(rewrites))
    tell("")
    if write_asked(venue, rewrites, dry_run=dry_run, yes=yes):
        (venue / RECORD).unlink()
