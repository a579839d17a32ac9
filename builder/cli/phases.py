"""``housepack phases``: a phase for each extra single-phase load."""

import re
import sys
from collections.abc import Iterator
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from builder.cli.printing import VENUE, exit_with_problems
from builder.cli.telling import tell

if TYPE_CHECKING:
    from builder.departments.power.description import Power
    from builder.departments.power.outlets.extra import Extra
    from builder.pipeline import Venue

WRITTEN = re.compile(r"^(?:(?P<name>[^:]+):)?\s*(?:(?P<count>\d+)\s*[x×*]\s*)?(?P<current>.+)$")
MOST = 200
"""Loads in one question."""


@click.command()
@click.argument("on")
@click.argument("loads", nargs=-1, required=True)
@VENUE
@click.option("--space", help="The space that ON is in, of a house that has several.")
def phases(on: str, loads: tuple[str, ...], venue: Path, space: str | None) -> None:
    """
    Choose a phase of the service or board ON for each of LOADS, such as "16 A", "4 x 10 A" or
    "keys: 6 A".

    Exit status: 0 where all have a place; 1 where they have none, or the venue cannot be read; 2
    for wrong usage.
    """
    from builder.departments.power.outlets.extra import extra_loads
    from builder.files import read_folder
    from builder.pipeline import offers_of, venue_of
    from builder.reading.problems import Refused

    asked = list(read_loads(loads))
    try:
        folder = read_folder(venue)
        read = venue_of(folder.texts, folder.photos)
    except Refused as refused:
        exit_with_problems(refused.problems, venue, "text")
    here = one_stage(read, on, space)
    power = circuits_of(here)
    if power is None:
        raise click.UsageError(f"{venue} has no power.yml, so nothing is known of its phases.")
    try:
        found = extra_loads(power, offers_of(here), on=named(on, power), loads=asked)
    except ValueError as wrong:
        raise click.UsageError(str(wrong)) from None
    tell("\n".join(lines(on, asked, found)))
    if found.placing.verdict != "placed":
        sys.exit(1)


def one_stage(read: "Venue", on: str, space: str | None) -> "Venue":
    """The venue, or the space of it that is meant or alone has what is named."""
    if not read.spaces:
        if space is not None:
            raise click.UsageError("The house has one stage, so --space says nothing.")
        return read
    names = [each.name for each in read.spaces]
    if space is not None and space.lower() not in [name.lower() for name in names]:
        raise click.UsageError(f"No space is named {space!r}; the house has: {'; '.join(names)}.")
    chosen = [each for each in read.spaces if space is None or each.name.lower() == space.lower()]
    having = [each for each in chosen if on.lower() in names_of(circuits_of(each.venue))]
    own = [each for each in having if on.lower() in names_of(each.own.get("power"))]
    if len(own) > 1:
        several = " or ".join(f"--space {each.name!r}" for each in own)
        raise click.UsageError(f"{len(own)} spaces have a {on}; say which: {several}.")
    return (own or having or chosen)[0].venue


def circuits_of(venue: "Venue") -> "Power | None":
    """The circuits of one stage, with what other spaces draw from the same supply."""
    from builder.departments.power.description import Power
    from builder.departments.power.elsewhere import with_elsewhere
    from builder.spaces.elsewhere import files_elsewhere

    power = venue.descriptions.get("power")
    if not isinstance(power, Power):
        return None
    return with_elsewhere(power, files_elsewhere(venue.descriptions, "power"))


def names_of(power: Any) -> list[str]:
    """What is named in some circuits, in small letters; nothing where there are none."""
    return [each.name.lower() for each in (*power.roots, *power.fed)] if power else []


def named(on: str, power: Any) -> str:
    """The name as the venue writes it, whatever the case; as given where none is alike."""
    names = [each.name for each in (*power.roots, *power.fed)]
    alike = [name for name in names if name.lower() == on.lower()]
    near = get_close_matches(on, names, n=1, cutoff=0.6)
    if not alike and near:
        raise click.UsageError(f"nothing is named {on!r}; did you mean {near[0]!r}?")
    return alike[0] if alike else on


def read_loads(written: tuple[str, ...]) -> Iterator[tuple[str, float]]:
    """The loads, each with a name of its own and its current in ampere."""
    from builder.reading.numerals import Unreadable
    from builder.reading.quantities import Current

    number = 0
    for text in written:
        found = WRITTEN.match(text.strip())
        if found is None:
            raise click.UsageError(f"LOADS must be written like '16 A' or '4 x 10 A', got {text!r}")
        try:
            current_a = Current.parse(found["current"].strip()).a
        except Unreadable as wrong:
            raise click.UsageError(f"LOADS: {text!r} {wrong.reason}; {wrong.advice}") from None
        count = int(found["count"] or 1)
        if not 0 < count <= MOST - number or current_a <= 0:
            raise click.UsageError(
                f"LOADS must be above 0 A and {MOST} in all at most, got {text!r}"
            )
        for _ in range(count):
            number += 1
            yield f"{number}. {(found['name'] or '').strip()}".rstrip(), current_a


def lines(on: str, asked: list[tuple[str, float]], found: "Extra") -> Iterator[str]:
    """The answer, a line each."""
    from builder.cautions import ELECTRICITY

    yield f"{on} has free for hours: {by_phase(found.phases, found.free_a)}"
    placing = found.placing
    if placing.verdict == "placed":
        phase_of = dict(placing.phase_of)
        width = max(len(name) for name, _ in asked)
        yield from (
            f"  {name:<{width}}  {current_a:g} A on {phase_of[name]}" for name, current_a in asked
        )
        yield (
            f"Left then: {by_phase(found.phases, found.left_a)}, bound by"
            f" {', '.join(dict.fromkeys(found.bound_by))}"
        )
        yield (
            "No placing is more even."
            if placing.evenest
            else "A more even placing may exist; the search met its bound."
        )
    else:
        yield (
            f"{'They do not fit' if placing.verdict == 'impossible' else 'Not proven either way'}:"
            f" {placing.why}."
        )
    if found.unmeasured:
        yield f"Less what {', '.join(found.unmeasured)} draws, which nobody has measured."
    yield ELECTRICITY


def by_phase(names: tuple[str, ...], amperes: tuple[float, ...]) -> str:
    """Ampere by phase."""
    return ", ".join(
        f"{name} {current_a:.1f} A" for name, current_a in zip(names, amperes, strict=True)
    )
