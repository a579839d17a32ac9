"""
``housepack stock``: change what the house owns, and see the knock-ons before anything is written.
"""

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from builder.cli.carrying import carry_out, carry_out_all, day_of, room_of, tell_and_exit
from builder.cli.next_step import argument, at, command
from builder.cli.printing import VENUE
from builder.cli.telling import tell
from builder.reading.problems import Refused
from builder.reading.text import UNFIT

if TYPE_CHECKING:  # they load every department; see carrying.py
    pass


class Words(click.ParamType[str]):
    """
    Text that a description can hold: white space folded, no character that hides what is written.
    """

    name = "text"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """The text on one line."""
        line = " ".join(value.split())
        if not line or UNFIT.search(line):
            self.fail("is empty, or has a character that cannot be seen.", param, ctx)
        return line


WORDS = Words()
Command = TypeVar("Command", bound=Callable[..., Any])
ROLES = ("measured", "drawing", "nameplate", "maker's sheet", "memory")

BY = click.option(
    "--by",
    type=WORDS,
    required=True,
    metavar="ROLE",
    help="Who changes it, by role, such as 'head of sound'.",
)
WHY = click.option(
    "--why",
    type=WORDS,
    required=True,
    metavar="TEXT",
    help="Why, in a sentence; it stands in the log.",
)
ON = click.option(
    "--on",
    "day",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The day of the change; today where it is not given.",
)
DRY = click.option("--dry-run", is_flag=True, help="Show what would change, and write nothing.")
YES = click.option("--yes", is_flag=True, help="Write without asking.")
IN = click.option(
    "--in",
    "within",
    type=WORDS,
    default=None,
    metavar="LIST",
    help="The list the line stands in, such as sound or sound.stock.",
)
ALL = click.option(
    "--all",
    "every",
    is_flag=True,
    help="Show every figure that moves, not the largest moves alone.",
)
UNIT = click.option(
    "--unit", type=int, help="One numbered unit, such as a sub of a line or a way of a drop box."
)


def asked(command: Command) -> Command:
    """The options of every change."""
    for option in (YES, DRY, ALL, ON, WHY, BY, VENUE):
        command = option(command)
    return command


@click.group()
def stock() -> None:
    """
    Change what the house owns, and see what moves with it.

    Comments, order, quotes and blank lines of your files stay. The change, its knock-ons and the
    log's new line are shown first.
    """


@stock.command()
@click.argument("name", type=WORDS)
@click.option(
    "--count",
    "number",
    type=int,
    help="How many go out; the whole line where neither this nor --unit is given.",
)
@UNIT
@IN
@asked
def out(name: str, number: int | None, unit: int | None, within: str, **given: Any) -> None:
    """Put NAME out of service."""
    from builder.stock.service import out

    one_of(number, unit)
    carry_out(
        lambda _room, line, said: out(line, said, count=number, unit=unit), name, within, given
    )


@stock.command()
@click.argument("name", type=WORDS)
@click.option(
    "--count",
    "number",
    type=int,
    help="How many come back; the whole line where neither this nor --unit is given.",
)
@UNIT
@IN
@asked
def back(name: str, number: int | None, unit: int | None, within: str, **given: Any) -> None:
    """Bring NAME back into service."""
    from builder.stock.service import back

    one_of(number, unit)
    carry_out(
        lambda room, line, said: back(line, said, room.venue.log, count=number, unit=unit),
        name,
        within,
        given,
    )


@stock.command()
@click.argument("what", type=WORDS)
@click.argument("rest", type=WORDS, nargs=-1, metavar="[NUMBER] [KEY=VALUE]...")
@click.option("--working", type=int, help="How many of them work.")
@IN
@asked
def count(what: str, rest: tuple[str, ...], working: int | None, within: str, **given: Any) -> None:
    """Set how many there are of WHAT to NUMBER, or take the counted sheet WHAT back."""
    from builder.stock.orders import count

    if not rest:
        take_sheet(Path(what), given)
        return
    number, also = whole_number(rest[0]), settings(rest[1:])
    carry_out(
        lambda _room, line, said: count(line, said, number, working=working, also=also),
        what,
        within,
        given,
    )


@stock.command()
@click.argument("name", type=WORDS)
@click.argument("where", type=WORDS, nargs=-1, required=True, metavar="[PLACE] [KEY=VALUE]...")
@IN
@asked
def move(name: str, where: tuple[str, ...], within: str, **given: Any) -> None:
    """
    Say that NAME is at PLACE, or at a position such as across='4 m SL'.

    PLACE 'nowhere' takes the word back.
    """
    from builder.stock.orders import move

    places = [word for word in where if "=" not in word]
    if len(places) > 1:
        raise click.UsageError(
            f"One place at a time, and {len(places)} were given; put quotes around a name of"
            " several words."
        )
    also = settings(word for word in where if "=" in word)
    carry_out(
        lambda _room, line, said: move(line, said, "".join(places), also), name, within, given
    )


@stock.command()
@click.argument("name", type=WORDS)
@click.argument("other", type=WORDS)
@click.argument("rest", type=WORDS, nargs=-1, metavar="[KEY=VALUE]...")
@IN
@asked
def swap(name: str, other: str, rest: tuple[str, ...], within: str, **given: Any) -> None:
    """
    Put OTHER in the place of NAME: another model where the line names one, another name where not.

    Every line that names NAME then names OTHER. Nothing that is told of the old model stays: give
    what OTHER has as KEY=VALUE, or it is marked unknown. Where OTHER is in stock already, its own
    line says what it is.
    """
    from builder.stock.lines import found
    from builder.stock.swapping import house_of, swap

    also = settings(rest)
    carry_out_all(
        lambda room: swap(house_of(room), found(room.lines, name, within), other, also), given
    )


@stock.command()
@click.argument("list_name", type=WORDS, metavar="LIST")
@click.argument("name", type=WORDS)
@click.argument("rest", type=WORDS, nargs=-1, metavar="[KEY=VALUE]...")
@asked
def add(list_name: str, name: str, rest: tuple[str, ...], **given: Any) -> None:
    """Add NAME to LIST, such as sound.stock, with its keys."""
    from builder.stock.adding import added

    carry_out_all(lambda room: [added(room, list_name, name, settings(rest))], given)


@stock.command()
@click.argument("name", type=WORDS)
@IN
@asked
def remove(name: str, within: str, **given: Any) -> None:
    """Take the line NAME out, with its own comment."""
    from builder.stock.orders import remove

    carry_out(lambda _room, line, _said: remove(line), name, within, given)


@stock.command()
@click.argument("what", type=WORDS, metavar="FILE-OR-LINE")
@click.option("--how", type=click.Choice(ROLES), required=True, help="How it was checked.")
@click.option(
    "--why", type=WORDS, default="Checked again.", show_default=True, help="Why, in a sentence."
)
@IN
@BY
@ON
@ALL
@DRY
@YES
@VENUE
def verified(what: str, how: str, within: str, **given: Any) -> None:
    """Stamp a file, such as sound.yml, or a line as checked."""
    from builder.stock.adding import stamped

    carry_out_all(
        lambda room: [stamped(room, what, within, on=day_of(given), by=given["by"], how=how)], given
    )


@stock.command()
@VENUE
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path),
    help="The file to write; printed where it is not given.",
)
def sheet(venue: Path, target: Path | None) -> None:
    """
    Write the counting sheet, place by place: as CSV, or as a page to print where the file ends in
    .html.
    """
    from builder.files import write_whole
    from builder.pipeline import revision_of
    from builder.stock.sheet import sheet, sheet_to_print

    room = room_of(venue)
    if target is None:
        tell(sheet(room.lines), nl=False)
    elif target.suffix.lower() in (".html", ".htm"):
        spaces = {space.folder: space.name for space in room.venue.spaces}
        house = room.venue.house.name
        write_whole(target, sheet_to_print(room.lines, house, revision_of(room.venue), spaces))
        tell(f"Wrote {target}. Open it in a browser to print.")
        tell_of_the_table(target.with_suffix(".csv"), venue, by=room.venue.house.revision.by)
    else:
        write_whole(target, sheet(room.lines))
        tell(f"Wrote {target}.")
        tell_of_the_table(target, venue, by=room.venue.house.revision.by)


def tell_of_the_table(table: Path, venue: Path, *, by: str) -> None:
    """Say how the counts come back: in a table, which is written first where it is not there."""
    if not table.exists():
        write = command("stock", "sheet", "--to", table, *at(venue))
        tell(f"What was counted comes back in a table. To write it, run:\n  {write}")
        return
    take = command("stock", "count", argument(table), *at(venue), "--by", by, "--why", "Counted.")
    tell(f"Fill in the columns 'counted' and 'counted working', and run, with your role:\n  {take}")


def take_sheet(path: Path, given: Mapping[str, Any]) -> None:
    """Take a counted sheet back."""
    from builder.files import read_sheet
    from builder.stock.sheet import counted

    try:
        text = read_sheet(path)
    except Refused as refused:
        tell_and_exit(refused)
    carry_out_all(lambda room: counted(text, room.lines, room.texts), given)


def settings(words: Sequence[str] | Any) -> dict[str, str]:
    """``KEY=VALUE`` words as keys with their values."""
    found = {}
    for word in words:
        key, sign, value = word.partition("=")
        if not sign or not key or not value:
            raise click.UsageError(f"'{word}' is no KEY=VALUE, such as place='Mix position'.")
        found[key] = value
    return found


def whole_number(text: str) -> int:
    """A number given as an argument."""
    try:
        return int(text)
    except ValueError:
        raise click.UsageError(f"'{text}' is no whole number.") from None


def one_of(number: int | None, unit: int | None) -> None:
    """Refuse both a number and a unit."""
    if number is not None and unit is not None:
        raise click.UsageError("Give --count or --unit, not both.")
