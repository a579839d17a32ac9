"""What the commands share: read a venue or say what is wrong with it, and print findings."""

import json
import sys
from collections import Counter
from collections.abc import Callable, Iterable
from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn, TypeVar

import click

from builder.cautions import EVERYWHERE
from builder.cli.next_step import HERE
from builder.cli.telling import tell, tell_json
from builder.pack import Finding, Level, Pack
from builder.reading.problems import Problem, Refused

if TYPE_CHECKING:  # it loads every department; see carrying.py
    from builder.pipeline import Packs, Venue

Made = TypeVar("Made")
VENUE = click.option(
    "--venue",
    type=click.Path(path_type=Path),
    default=HERE,
    show_default=True,
    help="The folder that describes the venue.",
)


def pack_or_exit(venue: Path, form: str) -> Pack:
    """
    What a venue's folder publishes; prints the problems, and exits with 1 where it has any.
    """
    from builder.pipeline import pack_of

    return of_venue_or_exit(pack_of, venue, form)


def packs_or_exit(
    venue: Path, form: str, on: date | None = None, also: Iterable[Problem] = ()
) -> "Packs":
    """
    What a venue's folder publishes, and the same for the house; prints the problems, those found
    elsewhere too, and exits with 1 where the venue has any.
    """
    from builder.pipeline import packs_of

    return of_venue_or_exit(partial(packs_of, on=on), venue, form, also)


def of_venue_or_exit(
    made: "Callable[[Venue], Made]", folder: Path, form: str, also: Iterable[Problem] = ()
) -> Made:
    """What is made of a venue's folder; prints every problem, and exits with 1 where it has any."""
    from builder.files import read_folder
    from builder.pipeline import venue_of

    try:
        found = read_folder(folder)
        return made(venue_of(found.texts, found.photos))
    except Refused as refused:
        exit_with_problems((*refused.problems, *also), folder, form)


def exit_with_problems(problems: tuple[Problem, ...], venue: Path, form: str) -> NoReturn:
    """Print every problem, one a line, with its place; exit with 1."""
    if form == "json":
        records = [problem_record(problem) for problem in problems]
        tell_json(json.dumps({"problems": records, "findings": []}, indent=1, ensure_ascii=False))
    else:
        for problem in problems:
            # A folder that is not there names itself.
            tell(
                (
                    str(venue.parent / str(problem))
                    if problem.code in ("folder-missing", "folder-above")
                    else f"{venue}/{problem}"
                ),
                err=True,
            )
        count = len(problems)
        tell(f"{count} problem{'' if count == 1 else 's'}. Nothing was built.", err=True)
    sys.exit(1)


def problem_record(problem: Problem) -> dict[str, object]:
    """A problem for programs."""
    where = problem.where
    return {
        "file": where.file,
        "line": where.line,
        "column": where.column,
        "path": problem.path,
        "value": problem.value,
        "reason": problem.reason,
        "advice": problem.advice,
        "code": problem.code,
    }


def finding_record(finding: Finding) -> dict[str, object]:
    """A finding for programs."""
    place = finding.place
    return {
        "level": finding.level.value,
        "code": finding.code,
        "sentence": finding.sentence,
        "subject": finding.subject,
        "asks_about": finding.asks_about,
        "confirm_on": finding.confirm_on,
        "file": place.file if place else "",
        "line": place.line if place else 0,
    }


def print_findings(pack: Pack, venue: Path, *, problems: int = 0) -> None:
    """
    Print each finding with its place, then what decides in place of their figures, and a count of
    them and of the problems in the files of shows.
    """
    for finding in pack.findings:
        place = f"{venue}/{finding.place.file}:{finding.place.line}: " if finding.place else ""
        tell(f"{place}{finding.level.value}: {finding.sentence} [{finding.code}]")
        if finding.confirm_on:
            tell(f"    {how_to_confirm(finding, pack)}")
    if pack.findings:
        tell(EVERYWHERE)
    count = Counter(finding.level for finding in pack.findings)
    words = ", ".join(
        f"{count[level]} {level.value}{'' if count[level] == 1 else 's'}" for level in Level
    )
    wrong = (
        f"{problems} problem{'' if problems == 1 else 's'} in shows" if problems else "no problems"
    )
    confirmed = f", {len(pack.confirmed)} confirmed" if pack.confirmed else ""
    tell(f"{pack.venue}, revision {pack.revision.number}: {wrong}; {words}{confirmed}.")


def how_to_confirm(finding: Finding, pack: Pack) -> str:
    """What whoever may writes on the line of an odd value that is right, ready to copy."""
    from builder.stock.wording import written

    line = written(
        {
            "what": finding.code,
            "value": finding.asks_about,
            "by": "ROLE",
            "on": pack.revision.on,
        },
        flow=True,
    )
    return f"If it is right, write at {finding.confirm_on}: confirmed: {line}"
