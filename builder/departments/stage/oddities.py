"""
What is odd about the stage: places on one spot, and a clear height that the steel above does not
leave; and what the stage states that other files state too.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from builder.confirming import odd
from builder.departments.stage.description import At, Deck, Place, Stage
from builder.exchange import Statement, SteelHeight
from builder.formulas.segments import parts_inside
from builder.oddities import Standing, on_one_spot
from builder.pack import Finding, Level
from builder.reading.absent import Absent, listed
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.otherwise import otherwise
from builder.reading.quantities import Height, Length
from builder.reading.references import spelling
from builder.stating import place as there

ROUNDING_M = 0.05
A_LITTLE_HIGHER = 1.3
MUCH_HIGHER = 2.0
"""Steel this many times as high as what is said to be clear below it may be in another unit."""


def oddities(stage: Stage, steel: Sequence[SteelHeight], system: System) -> Iterator[Finding]:
    """Everything that is odd about the stage."""
    yield from on_one_spot(
        standing(place, at) for place in stage.places if not isinstance(at := place.at, Absent)
    )
    for deck in listed(stage.decks):
        yield from against_steel(deck, steel, system)
        yield from beyond_sheet(deck)


def beyond_sheet(deck: Deck) -> Iterator[Finding]:
    """A deck that is told higher or lower than its maker's sheet goes."""
    low, high = ends_of(deck.height)
    least, most = ends_of(deck.height_by_sheet)
    below = low is not None and least is not None and low.m < least.m
    above = high is not None and most is not None and high.m > most.m
    if not (below or above):
        return
    sentence = (
        f"{deck.name}: its height is told as {as_written(deck.height)}, and the maker's sheet says"
        f" {as_written(deck.height_by_sheet)}. Which one comes? Shows are answered by the first."
    )
    where = there(deck.where("height"))
    yield Finding(Level.CAUTION, "height-beyond-sheet", sentence, "stage.deck", where)


def standing(place: Place, at: At) -> Standing:
    """A place with its spot."""
    words = ", ".join(part.text for part in (at.across, at.depth, at.height) if part is not None)
    return Standing(
        "place",
        place.name,
        at.across.m,
        at.depth.m,
        at.height.m if at.height else None,
        at.where(),
        words,
        f"stage.place.{spelling(place.name)}",
    )


def against_steel(deck: Deck, steel: Sequence[SteelHeight], system: System) -> Iterator[Finding]:
    """
    A clear height above the lowest steel over the deck, or steel so high above it that it may be
    told in another unit.
    """
    over = [(height_m, station) for height_m, station in steel_over(deck, steel)]
    if not over or not isinstance(deck.clear_height, Length):
        return
    clear = deck.clear_height
    lowest_m, station = min(over, key=lambda pair: pair[0])
    lowest = shown(Length, lowest_m, 2, system)[0]
    if clear.m > lowest_m + ROUNDING_M:
        question = otherwise(clear, lambda clear_m: lowest_m / 2 <= clear_m <= lowest_m)
    elif lowest_m > MUCH_HIGHER * clear.m:
        question = steel_otherwise(station.height, clear)
        if not question:
            return
    else:
        return
    yield odd(
        "clear-height-beside-steel",
        f"{deck.name}: the clear height is {clear.text}, and the lowest steel above the deck, of"
        f" {station.beam}, is at {lowest}.",
        deck.where("clear_height"),
        question=question or " Which one is right?",
        asks_about=f"{clear.text} beside {lowest} of {station.beam}",
        subject=f"stage.deck.{spelling(deck.name)}",
    )


def steel_otherwise(height: Height, clear: Length) -> str:
    """What a height of steel may have been meant as, by what is clear below it."""
    question = otherwise(height, lambda steel_m: clear.m <= steel_m <= A_LITTLE_HIGHER * clear.m)
    return question and f" The steel says {height.text}.{question}"


def steel_over(deck: Deck, steel: Sequence[SteelHeight]) -> Iterator[tuple[float, SteelHeight]]:
    """
    Heights of steel above a deck: where each beam comes over it and leaves it, seen from above,
    with the nearer stated height. Between two stated heights a beam is straight.
    """
    corners = [(corner.across.m, corner.depth.m) for corner in listed(deck.outline)]
    if not corners:
        return
    by_beam: dict[str, list[SteelHeight]] = {}
    for station in steel:
        by_beam.setdefault(station.beam, []).append(station)
    for stations in by_beam.values():
        stations.sort(key=lambda station: (station.across_m, station.depth_m))
        for first, second in pairwise([*stations, stations[-1]]):
            ends = ((first.across_m, first.depth_m), (second.across_m, second.depth_m))
            rise_m = second.height.m - first.height.m
            for part in parts_inside(corners, ends):
                for share in part:
                    yield first.height.m + share * rise_m, first if share < 0.5 else second


def statements(stage: Stage) -> Iterator[Statement]:
    """Sizes of places, and heights of the deck, which other files tell too."""
    for place in stage.places:
        for key in ("width", "depth"):
            size = getattr(place, key)
            if isinstance(size, Length):
                yield Statement(f"{key} of", place.name, size, place.where(key))
    for deck in listed(stage.decks):
        if isinstance(deck.height, Length):
            where = deck.where("height")
            yield Statement("step between deck and floor", "", deck.height, where)
