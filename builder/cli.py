"""
The command ``housepack``: parse, call, print, exit. Every other room returns values.

Exit status: 0 done and well; 1 problems, or dangers under ``--strict``; 2 wrong usage.
"""

import json
import sys
from collections import Counter
from datetime import date, datetime
from pathlib import Path
from typing import NoReturn

import click

from builder.pack import Finding, Level, Pack, to_json
from builder.reading.problems import Problem, Refused

VENUE = click.option(
    "--venue", type=click.Path(path_type=Path), default=Path("venue"), show_default=True, help="The folder that describes the venue."
)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="housepack")
def main() -> None:
    """One checked description of a venue, turned into a searchable tech pack with computed figures."""


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
def new(folder: Path) -> None:
    """Write a venue to start from into FOLDER, with comments that explain."""
    from builder.starter import write_starter

    try:
        written = write_starter(folder)
    except FileExistsError as failure:
        raise click.UsageError(str(failure)) from None
    click.echo(f"Wrote {len(written)} files to {folder}. Edit them, then run: housepack check --venue {folder}")


@main.command()
@VENUE
@click.option("--strict", is_flag=True, help="Exit with 1 where a danger is found.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True, help="How to print.")
@click.option("--on", "day", type=click.DateTime(["%Y-%m-%d"]), help="Count ages to this day instead of the revision's.")
def check(venue: Path, strict: bool, form: str, day: datetime | None) -> None:
    """Print problems and findings."""
    pack = pack_or_exit(venue, form, on=day.date() if day else None)
    if form == "json":
        click.echo(json.dumps({"problems": [], "findings": [finding_record(finding) for finding in pack.findings]}, indent=1, ensure_ascii=False))
    else:
        print_findings(pack, venue)
    if strict and any(finding.level is Level.DANGER for finding in pack.findings):
        sys.exit(1)


@main.command()
@VENUE
@click.option("--to", "site", type=click.Path(path_type=Path), default=Path("site"), show_default=True, help="The folder to write the site to.")
def build(venue: Path, site: Path) -> None:
    """Build the whole site. A build that fails leaves the old site as it was."""
    from builder.site.build import build as build_site

    try:
        build_site(venue, site)
    except Refused as refused:
        exit_with_problems(refused.problems, venue, "text")
    click.echo(f"Wrote the site to {site}. Open {site / 'index.html'} in a browser.")


@main.command()
@VENUE
@click.option("--host", default="127.0.0.1", show_default=True, help="The address to listen on.")
@click.option("--port", type=int, default=8000, show_default=True, help="The port to listen on.")
def serve(venue: Path, host: str, port: int) -> None:
    """Serve the site, rebuilt as files change."""
    from builder.site.build import serve as serve_site

    serve_site(venue, host, port)


@main.command()
@VENUE
@click.option("--to", "target", type=click.Path(path_type=Path), help="The file to write; printed where it is not given.")
def pack(venue: Path, target: Path | None) -> None:
    """Write the pack as JSON."""
    text = to_json(pack_or_exit(venue, "text"))
    if target is None:
        click.echo(text, nl=False)
    else:
        from builder.files import write_whole

        write_whole(target, text)
        click.echo(f"Wrote {target}.")


@main.command()
@click.option("--to", "folder", type=click.Path(path_type=Path), default=Path("schemas"), show_default=True, help="The folder to write to.")
def schema(folder: Path) -> None:
    """Write JSON Schemas, so that an editor completes and explains keys."""
    from builder.files import write_whole
    from builder.schemas import schemas

    for name, text in schemas().items():
        write_whole(folder / name, text)
    click.echo(f"Wrote {len(schemas())} schemas to {folder}.")


def pack_or_exit(venue: Path, form: str, on: date | None = None) -> Pack:
    """The pack of a venue's folder; prints the problems and exits with 1 where there are any."""
    from builder.files import read_folder
    from builder.pipeline import pack_of, venue_of

    try:
        return pack_of(venue_of(read_folder(venue).texts), on=on)
    except Refused as refused:
        exit_with_problems(refused.problems, venue, form)


def exit_with_problems(problems: tuple[Problem, ...], venue: Path, form: str) -> NoReturn:
    """Print every problem, one a line, with its place; exit with 1."""
    if form == "json":
        records = [problem_record(problem) for problem in problems]
        click.echo(json.dumps({"problems": records, "findings": []}, indent=1, ensure_ascii=False))
    else:
        for problem in problems:
            click.echo(f"{venue}/{problem}", err=True)
        count = len(problems)
        click.echo(f"{count} problem{'' if count == 1 else 's'}. Nothing was built.", err=True)
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
        "file": place.file if place else "",
        "line": place.line if place else 0,
    }


def print_findings(pack: Pack, venue: Path) -> None:
    """Print each finding with its place, then a count."""
    for finding in pack.findings:
        place = f"{venue}/{finding.place.file}:{finding.place.line}: " if finding.place else ""
        click.echo(f"{place}{finding.level.value}: {finding.sentence} [{finding.code}]")
    count = Counter(finding.level for finding in pack.findings)
    words = ", ".join(f"{count[level]} {level.value}{'' if count[level] == 1 else 's'}" for level in Level)
    click.echo(f"{pack.venue}, revision {pack.revision.number}: no problems; {words}.")


if __name__ == "__main__":
    main()
