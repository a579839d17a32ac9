"""What the orders on stock share: find the line, show what an order comes to, ask, write."""

import sys
from collections.abc import Callable, Mapping, Sequence
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

import click

from builder.cli.telling import tell
from builder.reading.problems import Refused
from builder.render.terminal import hung

# the departments behind these take most of a second to load, and every command would wait for them
if TYPE_CHECKING:
    from builder.stock.changing import Asked, Changed, Stockroom
    from builder.stock.lines import Held
    from builder.stock.order import Order
    from builder.stock.rewrite import Rewrite


def carry_out(
    order: "Callable[[Stockroom, Held, Mapping[str, Any]], Order]",
    name: str,
    within: str,
    given: Mapping[str, Any],
) -> None:
    """Find the line of a name and carry out an order on it."""
    from builder.stock.lines import found
    from builder.stock.order import written_line

    def orders(room: "Stockroom") -> "list[Order]":
        line = found(room.lines, name, within)
        return [order(room, line, written_line(line, room.texts))]

    carry_out_all(orders, given)


def carry_out_all(
    orders: "Callable[[Stockroom], Sequence[Order]]", given: Mapping[str, Any]
) -> None:
    """Carry out orders: show what they come to, ask, write."""
    from builder.stock.changing import Asked, changed

    venue: Path = given["venue"]
    asked = Asked(given["by"], given["why"], day_of(given))
    room = room_of(venue)
    try:
        wanted = orders(room)
        if not wanted:
            tell("Nothing differs, so nothing was changed.")
            return
        result = changed(room, wanted, asked)
    except Refused as refused:
        tell_and_exit(refused)
    show(result, venue, asked, every=given["every"])
    write_asked(venue, result.rewrites, dry_run=given["dry_run"], yes=given["yes"])


def write_asked(venue: Path, rewrites: "Sequence[Rewrite]", *, dry_run: bool, yes: bool) -> bool:
    """
    Write where somebody says yes, and tell what was done; whether it was written. Exits with 1
    where the answer is no, or the disk refuses.
    """
    from builder.saving import save

    if dry_run:
        tell("Nothing was written.")
        return False
    if not yes and not click.confirm("Write this?"):
        tell("Nothing was written.")
        sys.exit(1)
    try:
        save(venue, rewrites)
    except Refused as refused:
        tell_and_exit(refused)
    tell(f"Wrote {' and '.join(str(venue / each.file) for each in rewrites)}.")
    return True


def show(result: "Changed", venue: Path, asked: "Asked", *, every: bool) -> None:
    """
    The lines that change, the knock-ons, and a word on the revision where the change is later than
    it.
    """
    from builder.cli.books import turned_by
    from builder.stock.changing import difference_text
    from builder.stock.telling import knock_ons

    tell(difference_text(result.rewrites))
    tell("")
    tell(
        knock_ons(
            result.comparison, *turned_by(venue, result.before, result.after, asked), every=every
        )
    )
    revision, newest = (
        result.after.revision,
        max((change.on for change in result.after.log), default=""),
    )
    if newest > revision.on:
        tell(
            hung(
                f"The pack says revision {revision.number} of {revision.on}. Raise it in house.yml"
                " before you publish this."
            )
        )


def room_of(venue: Path) -> "Stockroom":
    """
    A venue's stock; a change that was cut off is finished first.

    Prints the problems and exits with 1 where there are any.
    """
    from builder.files import read_folder
    from builder.saving import recover
    from builder.stock.changing import stockroom_of

    try:
        recover(venue)
        folder = read_folder(venue)
        return stockroom_of(folder.texts, folder.photos)
    except Refused as refused:
        tell_and_exit(refused)


def tell_and_exit(refused: Refused) -> NoReturn:
    """Print each problem as a sentence; exit with 1."""
    for problem in refused.problems:
        tell(str(problem), err=True)
    sys.exit(1)


def day_of(given: Mapping[str, Any]) -> date:
    """
    The day of a change. This is the one place that asks the clock, and only where no day is given.
    """
    day: datetime | None = given["day"]
    return (day or datetime.now().astimezone()).date()
