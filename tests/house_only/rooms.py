"""A small house with something to hide, for the tests of what is for the house only."""

from collections.abc import Mapping

from builder.pack import Pack
from builder.pipeline import Venue, packs_of, venue_of

HOUSE = """\
name: The Shed
what: A shed.
town: Nowhere
setting: indoors
time_zone: Europe, central
revision: {number: 1, on: 2026-01-02, by: technical manager}
verified: {on: 2026-01-01, by: technical manager, how: measured}
contacts:
  - {role: Night keeper, about: Fire and water, phone: +00 5550 190, house_only: yes}
  - {role: Sound, about: Sound}
"""
POWER = """\
verified: {on: 2026-01-01, by: electrician, how: measured}
continuous_share: 100 %
supplies:
  - {name: Intake, system: 230/400 V three phase, rating: 100 A, breaker: 100 A}
services:
  - {name: Switch, fed_from: Intake, system: 230/400 V three phase, rating: 63 A, breaker: 63 A}
boards:
  - {name: Cellar board, fed_from: Switch, rating: 32 A, breaker: 32 A, note: Behind the safe., house_only: yes}
outlets:
  - {place: Deck left, connector: IEC 60309 16 A 3-pin blue, count: 3, rating: 16 A, breaker: 16 A, phases: in turn, fed_from: Cellar board}
standing_loads:
  - {what: Safe cooling, on: Cellar board, draws: 10 A, phases: L1, power_factor: 1, house_only: yes, verified: {on: 2025-12-01, by: safe maker, how: memory}}
  - {what: Lamps, on: Cellar board, draws: 2 A, phases: L2, power_factor: 1}
"""  # noqa: E501
STAGE = """\
verified: {on: 2026-01-01, by: stage manager, how: measured}
datum: {centre_line: The middle., reference_line: deck edge}
decks:
  - name: Deck
    configurations: []
    outline: [{across: 5 m SR, depth: 0 m}, {across: 5 m SL, depth: 0 m}, {across: 5 m SL, depth: 6 m US}]
    usable_width: 9 m
    usable_depth: 5 m
    clear_height: 6 m
places:
  - {name: Deck left, at: {across: 4 m SL, depth: 1 m US, height: 0 m}}
"""  # noqa: E501
TEXTS = {"house.yml": HOUSE, "power.yml": POWER, "stage.yml": STAGE}


def venue(changes: Mapping[str, tuple[str, str]] | None = None, **files: str) -> Venue:
    """The small house, with a text in each file replaced by another, and further files."""
    texts = {**TEXTS, **{f"{name}.yml": text for name, text in files.items()}}
    for file, (old, new) in (changes or {}).items():
        assert old in texts[file], old
        texts[file] = texts[file].replace(old, new)
    return venue_of(texts)


def published(changes: Mapping[str, tuple[str, str]] | None = None, **files: str) -> Pack:
    """What the small house publishes."""
    return packs_of(venue(changes, **files)).published


def own(changes: Mapping[str, tuple[str, str]] | None = None, **files: str) -> Pack:
    """The pack of the small house as it reads it itself."""
    return packs_of(venue(changes, **files)).house
