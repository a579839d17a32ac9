"""Commands on a venue: new, check, build, serve, pack, schema."""

import json
import sys
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from builder.cautions import EVERYWHERE
from builder.cli.next_step import HERE, argument, at, command
from builder.cli.printing import (
    VENUE,
    exit_with_problems,
    finding_record,
    pack_or_exit,
    packs_or_exit,
    print_findings,
    problem_record,
)
from builder.cli.telling import tell, tell_json
from builder.pack import Level
from builder.pack_json import to_json
from builder.reading.problems import Refused

if TYPE_CHECKING:  # its rules load every department; see carrying.py
    from builder.pipeline import Packs
    from builder.shows.booked import Books


@click.command()
@click.argument("folder", required=False, type=click.Path(path_type=Path))
@click.option(
    "--rider",
    type=click.Path(path_type=Path, dir_okay=False),
    help="Write a rider to start from into this file instead.",
)
def new(folder: Path | None, rider: Path | None) -> None:
    """
    Write a house to start from into FOLDER: a venue with comments that explain, and what checks
    and publishes it. Or a rider into a file.
    """
    if (folder is None) == (rider is None):
        raise click.UsageError("Give either a FOLDER for a house or --rider FILE.")
    try:
        if rider is not None:
            new_rider(rider)
        if folder is not None:
            new_house(folder)
    except FileExistsError as failure:
        raise click.UsageError(str(failure)) from None


def new_house(folder: Path) -> None:
    """Write a house of one's own, and say where to go on."""
    from builder.starter import write_house

    venue = write_house(folder)
    tell(
        f"Wrote a house to start from. {folder / 'README.md'} tells what is where, and how to"
        f" publish. Edit the files in {venue}, then run:\n  {command('check', *at(venue))}"
    )


def new_rider(rider: Path) -> None:
    """Write a rider to start from, and say what to hold it against."""
    from builder.starter import write_starter_rider

    write_starter_rider(rider)
    tell(f"Wrote {rider}. Edit it.")
    if HERE.is_dir():
        tell(f"To check it against {HERE}, run:\n  {command('fit', argument(rider))}")
        return
    pack = rider.parent / "pack.json"
    tell(
        f"To check it against a house, keep the house's pack.json as {pack}, and run:"
        f"\n  {command('fit', argument(rider), '--pack', pack)}"
    )


@click.command()
@VENUE
@click.option("--strict", is_flag=True, help="Exit with 1 where a danger is found.")
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json"]),
    default="text",
    show_default=True,
    help="How to print.",
)
@click.option(
    "--on",
    "day",
    type=click.DateTime(["%Y-%m-%d"]),
    help="Count ages, and shows to come, from this day instead of the revision's.",
)
def check(venue: Path, strict: bool, form: str, day: datetime | None) -> None:
    """
    Print problems and findings, and how the shows on the books stand.

    Exit status: 0 done; 1 where a file has a problem, or a danger is found under --strict. A show
    that is short is said, and is no fault of the pack.
    """
    from builder.cli.books import books_at, echo_outlook, echo_problems

    books, folder = books_at(venue)
    packs = packs_or_exit(venue, form, on=day.date() if day else None, also=books.problems)
    pack = packs.house
    on = day.date() if day else date.fromisoformat(pack.revision.on)
    if form == "json":
        tell_json(json.dumps(check_record(packs, books, on), indent=1, ensure_ascii=False))
    else:
        print_findings(pack, venue, problems=len(books.problems))
        echo_outlook(books, folder, packs.published, on, venue)
        echo_problems(books.problems, venue)
    if books.problems or (
        strict and any(finding.level is Level.DANGER for finding in pack.findings)
    ):
        sys.exit(1)


def check_record(packs: "Packs", books: "Books", on: date) -> dict[str, object]:
    """What a check found, for programs. A show is judged by what is published, as anywhere."""
    from builder.cli.books import outlook_on
    from builder.shows.telling import outlook_record

    pack = packs.house
    return {
        "problems": [problem_record(problem) for problem in books.problems],
        "findings": [finding_record(finding) for finding in pack.findings],
        "caution": EVERYWHERE,
        "confirmed": [
            {**finding_record(entry.finding), "by": entry.by, "on": entry.on}
            for entry in pack.confirmed
        ],
        "shows": outlook_record(outlook_on(books, packs.published, on)),
    }


@click.command()
@VENUE
@click.option(
    "--to",
    "site",
    type=click.Path(path_type=Path),
    default=Path("site"),
    show_default=True,
    help="The folder to write the site to.",
)
def build(venue: Path, site: Path) -> None:
    """Build the whole site. A build that fails leaves the old site as it was."""
    from builder.site.build import build as build_site
    from builder.site.replacing import SiteFailed

    try:
        build_site(venue, site)
    except Refused as refused:
        exit_with_problems(refused.problems, venue, "text")
    except SiteFailed as failure:
        raise click.ClickException(str(failure)) from None
    tell(f"Wrote the site to {site}. Open {site / 'index.html'} in a browser.")


@click.command()
@VENUE
@click.option("--host", default="127.0.0.1", show_default=True, help="The address to listen on.")
@click.option("--port", type=int, default=8000, show_default=True, help="The port to listen on.")
def serve(venue: Path, host: str, port: int) -> None:
    """Serve the site, rebuilt as files change."""
    from builder.site.build import ready_to_serve
    from builder.site.build import serve as serve_site
    from builder.site.replacing import SiteFailed

    try:
        ready_to_serve(venue, host, port)
    except Refused as refused:
        exit_with_problems(refused.problems, venue, "text")
    except SiteFailed as failure:
        raise click.ClickException(str(failure)) from None
    tell(
        f"Serving {venue} at http://{host}:{port}/ until you press Ctrl-C. Pages follow your edits."
    )
    serve_site(venue, host, port, tell=tell_while_serving)


def tell_while_serving(line: str) -> None:
    """Tell a problem as it appears, beside what the page says of it."""
    tell(line, err=True)


@click.command()
@VENUE
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path),
    help="The file to write; printed where it is not given.",
)
def pack(venue: Path, target: Path | None) -> None:
    """Write the pack as JSON."""
    text = to_json(pack_or_exit(venue, "text"))
    if target is None:
        tell_json(text, nl=False)
    else:
        from builder.files import write_whole

        write_whole(target, text)
        tell(f"Wrote {target}.")


@click.command()
@click.option(
    "--to",
    "folder",
    type=click.Path(path_type=Path),
    default=Path("schemas"),
    show_default=True,
    help="The folder to write to.",
)
def schema(folder: Path) -> None:
    """Write JSON Schemas, so that an editor completes and explains keys."""
    from builder.files import write_whole
    from builder.schemas import schemas

    for name, text in schemas().items():
        write_whole(folder / name, text)
    tell(f"Wrote {len(schemas())} schemas to {folder}.")
