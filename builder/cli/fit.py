"""``housepack fit``: verdicts for a show day."""

import os
import re
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any, NoReturn

import click

from builder.cli.printing import VENUE, pack_or_exit
from builder.cli.telling import tell, tell_in
from builder.fit.records import Result, RiderAsked
from builder.reading.failing import program_failed
from builder.reading.problems import Problem, Refused
from builder.rules import Rule


@click.command()
@click.argument("riders", nargs=-1, required=True, type=click.Path(path_type=Path))
@VENUE
@click.option(
    "--pack",
    "pack_file",
    type=click.Path(path_type=Path),
    help="A published pack.json, in place of a venue's folder.",
)
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "markdown", "json"]),
    default="text",
    show_default=True,
    help="How to print.",
)
def fit(riders: tuple[Path, ...], venue: Path, pack_file: Path | None, form: str) -> None:
    """
    Check RIDERS, one or more for one show day, against a pack.

    Exit status: 0 where nothing that must be is short; 1 where something is, or a file or a line in
    it cannot be read; 2 for wrong usage.
    """
    from builder.fit.interpreter import fit as verdicts
    from builder.fit.published import fit_record

    pack = published_or_exit(pack_file) if pack_file else pack_or_exit(venue, "text")
    asked, is_whole = riders_or_exit(riders, {rule.key: rule for rule in pack.rules})
    result = verdicts(fit_record(pack), asked)
    painted = str if os.environ.get("NO_COLOR") else coloured
    tell_in(form, said(result, form), painted=painted)
    if result["verdict"] == "short" or not is_whole:
        sys.exit(1)


COLOURS = {"X short": "red", "? ask": "magenta", "~ fits, with a note": "yellow", "+ fits": "green"}
MARKED = re.compile("^  (" + "|".join(re.escape(mark) for mark in COLOURS) + ")(?=:)", re.MULTILINE)


def coloured(text: str) -> str:
    """
    The text with its verdicts in colour.

    The words say the same, and :func:`click.echo` leaves the colour out where it is not a terminal.
    """
    return MARKED.sub(
        lambda found: "  " + click.style(found[1], fg=COLOURS[found[1]], bold=True), text
    )


def said(result: Result, form: str) -> str:
    """The result in the form asked for."""
    from builder.rider.saying import as_json, as_markdown, as_text

    return {"text": as_text, "markdown": as_markdown, "json": as_json}[form](result)


def riders_or_exit(
    paths: tuple[Path, ...], rules: Mapping[str, Rule]
) -> tuple[list[RiderAsked], bool]:
    """
    All that can be read of the riders, with every problem told, and whether that is the whole; exit
    with 1 where nothing can be.
    """
    from builder.files import read_rider
    from builder.rider.asked import acts_differ, one_date, problems_of, readable_rider

    riders, problems, lines = [], [], []
    for path in paths:
        try:
            rider = readable_rider(read_rider(path), file=path.name, rules=rules)
            riders.append(rider)
            lines += [(path, problem) for problem in problems_of(rider, path.name)]
        except Refused as refused:
            problems += [(path, problem) for problem in refused.problems]
        except Exception as failure:
            problems.append((path, program_failed(path.name, failure)))
    if problems and not riders:
        exit_with(problems)
    tell_lines_left_out(lines)
    tell_left_out(problems)
    asked = [rider["rider"] for rider in riders]
    try:
        acts_differ(asked)
        one_date(riders)
    except ValueError as wrong:
        raise click.UsageError(str(wrong)) from None
    return asked, not (problems or lines)


def tell_lines_left_out(problems: list[tuple[Path, Problem]]) -> None:
    """Print what cannot be read in riders of which the rest is judged."""
    for path, problem in problems:
        tell(f"{path.parent}/{problem}", err=True)
    if problems:
        names = ", ".join(dict.fromkeys(str(path) for path, _ in problems))
        tell(f"Not judged in {names}: what cannot be read. The rest of it is judged.", err=True)


def tell_left_out(problems: list[tuple[Path, Problem]]) -> None:
    """Print every problem, and which riders the answer is without."""
    for path, problem in problems:
        tell(f"{path.parent}/{problem}", err=True)
    if problems:
        names = ", ".join(dict.fromkeys(str(path) for path, _ in problems))
        tell(f"Not judged: {names}. The answer is only for the others.", err=True)


def exit_with(problems: list[tuple[Path, Problem]]) -> NoReturn:
    """Print every problem with the file it is in, and exit with 1."""
    for path, problem in problems:
        tell(f"{path.parent}/{problem}", err=True)
    count = len(problems)
    tell(f"{count} problem{'' if count == 1 else 's'}. Nothing was checked.", err=True)
    sys.exit(1)


def published_or_exit(path: Path) -> Any:
    """A pack from its file."""
    from builder.pack_file import read_pack

    try:
        return read_pack(path)
    except Refused as refused:
        exit_with([(path, problem) for problem in refused.problems])
