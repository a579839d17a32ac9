"""
From ``stage.yml`` to the stage's section: decks, wings, zones and places as items and outlines, and
what does not add up.
"""

from collections.abc import Iterator
from dataclasses import replace
from math import fsum

from builder.cautions import STAGE
from builder.department import Published, Surroundings
from builder.departments.stage.description import Chain, Deck, Outline, Stage, Wing
from builder.departments.stage.distances import open_distances
from builder.departments.stage.figures import (
    behind_curtain,
    deck_area,
    laid_area,
    riser_area,
    riser_ends_m2,
    wing_size,
)
from builder.departments.stage.headroom import clear_under_rig
from builder.departments.stage.oddities import oddities, statements
from builder.departments.stage.stock import Riser
from builder.exchange import Datum, HalfSpot, Offers, Shape, Spot
from builder.formulas.dimensions import chain_gap_m
from builder.pack import Figure, Finding, Item, Level, Section
from builder.pack import Outline as Drawn
from builder.reading.absent import Absent, listed
from builder.reading.in_part import as_written
from builder.reading.measures import shown
from builder.reading.numerals import Unreadable
from builder.reading.quantities import Across, Area, Depth, Length
from builder.reading.references import spelling
from builder.stating import Stater, place
from builder.working import check_of


def offer(stage: Stage) -> Offers:
    """The datum, the outlines of the decks and wings, and every named place."""
    decks = listed(stage.decks)
    floors = [("deck", floor) for floor in decks] + [("wing", floor) for floor in stage.wings]
    shapes = [
        Shape("stage", kind, floor.name, drawn)
        for kind, floor in floors
        if (drawn := corners(floor.outline))
    ]
    spots = [
        Spot(
            "stage",
            "place",
            spot.name,
            at.across.m,
            at.depth.m,
            at.height.m if at.height else 0.0,
            check_of(spot),
        )
        for spot in stage.places
        if not isinstance(at := spot.at, Absent)
    ]
    return Offers(
        shapes=tuple(shapes),
        spots=tuple(spots),
        half_spots=tuple(half_spots(stage)),
        said_on_stage={
            spot.name: spot.on_stage for spot in stage.places if isinstance(spot.on_stage, bool)
        },
        floors_drawn=len(decks) > 0 and len(shapes) == len(floors) and len(stage.wings) > 0,
        datum=None
        if isinstance(stage.datum, Absent)
        else Datum(stage.datum.centre_line, stage.datum.reference_line),
        statements=tuple(statements(stage)),
    )


def half_spots(stage: Stage) -> Iterator[HalfSpot]:
    """The places of which a house knows only how far across they are, or only how deep."""
    for spot in stage.places:
        words = {keys[0]: said for keys, said in spot.unknown.get("at", ()) if len(keys) == 1}
        across_m, depth_m = exact_m(Across, words.get("across")), exact_m(Depth, words.get("depth"))
        if (across_m is None) != (depth_m is None):
            yield HalfSpot(spot.name, across_m, depth_m, check_of(spot))


def exact_m(kind: type[Across | Depth], words: str | None) -> float | None:
    """A position in metres from an author's words; None where they do not tell one exactly."""
    try:
        return None if words is None else kind.parse(words).m
    except Unreadable:
        return None


def corners(outline: Outline | Absent) -> tuple[tuple[float, float], ...]:
    """An outline in metres from the datum; empty where nobody drew it."""
    return tuple((corner.across.m, corner.depth.m) for corner in listed(outline))


LAID = ("dance floor", "carpet")
"""Furnishings that are laid, by kind: what they cover together is a figure."""


def publish(stage: Stage, around: Surroundings) -> Published:
    """The stage's facts, the areas, and the chains and sums that do not close."""
    stater = around.stater(stage)
    section = Section(
        key="stage",
        title="Stage",
        items=tuple(items(stage, stater, around)),
        outlines=tuple(outlines(stage)),
        cautions=(STAGE,),
        verified=stater.inherited,
    )
    odd = oddities(stage, around.exchange.steel, around.system)
    adding = open_distances(stage.distances, around.system)
    return Published(section, (*findings(stage), *adding, *odd))


def items(stage: Stage, stater: Stater, around: Surroundings) -> Iterator[Item]:
    """The datum, then decks with their areas, then everything else by kind."""
    system = around.system
    leave_out: tuple[str, ...] = ("note", "ground", "audience_floor")
    if not isinstance(stage.datum, Absent):
        yield stater.item(stage.datum, "stage.datum", "datum", "Datum")
        leave_out = ("datum", *leave_out)
    yield stater.item(stage, "stage.whole", "whole", "Stage", leave_out=leave_out)
    if stage.audience_floor:
        name = "Audience floor"
        yield stater.item(stage.audience_floor, "stage.audience-floor", "audience-floor", name)
    if stage.ground:
        item = stater.item(stage.ground, "stage.ground", "ground", "Open ground")
        buried = stater.of_parts(stage.ground.buried, f"{item.key}.buried", "Buried")
        yield replace(item, facts=(*item.facts, *buried))
    for deck, item in zip(
        listed(stage.decks),
        stater.named(listed(stage.decks), "stage", "deck", leave_out=("outline",)),
        strict=True,
    ):
        clear = clear_under_rig(item.key, deck, around.exchange, system)
        figures = [deck_area(item.key, deck, system), clear]
        if deck.depth_behind_curtain is Absent.NOT_STATED:
            figures.append(behind_curtain(item.key, deck, stage, system))
        yield replace(item, figures=tuple(figures))
    for wing in stage.wings:
        measured = () if isinstance(wing.outline, Absent) else unsaid_sizes(wing)
        key, left_out = f"stage.wing.{spelling(wing.name)}", ("outline", *measured)
        item = stater.item(wing, key, "wing", wing.name, leave_out=left_out)
        sizes = wing_size(key, wing, stage.obstructions, system) if measured else ()
        told = tuple(each for each in sizes if each.key.rsplit(".", 1)[-1] in measured)
        yield replace(item, figures=(*item.figures, *told))
    yield from stater.named(listed(stage.zones), "stage", "zone", leave_out=("outline",))
    in_the_way = listed(stage.obstructions)
    yield from stater.named(in_the_way, "stage", "obstruction", leave_out=("outline",))
    yield from stater.named(stage.places, "stage", "place")
    for riser, item in zip(stage.risers, stater.named(stage.risers, "stage", "riser"), strict=True):
        yield with_figure(with_heights(item, riser), riser_area(item.key, riser, system))
    furnished = stater.named(stage.furnishings, "stage", "furnishing")
    for thing, item in zip(stage.furnishings, furnished, strict=True):
        sides = (thing.each_width, thing.each_length)
        laid = thing.kind in LAID and (thing.count is Absent.NONE or Absent.NOT_STATED not in sides)
        yield with_figure(item, laid_area(item.key, thing, system)) if laid else item
    yield from stater.named(listed(stage.lifts), "stage", "lift")
    yield from stater.counted(stage.distances, "stage", "distance", name_key="name")
    yield from stater.counted(stage.chains, "stage", "chain", name_key="name")


def unsaid_sizes(wing: Wing) -> tuple[str, ...]:
    """Of width and depth of a wing those that nobody wrote."""
    return tuple(key for key in ("width", "depth") if isinstance(getattr(wing, key), Absent))


def with_figure(item: Item, figure: Figure) -> Item:
    """An item with one figure more."""
    return replace(item, figures=(*item.figures, figure))


def outlines(stage: Stage) -> Iterator[Drawn]:
    """Every outline of the stage, for this page's plan and for the plans of others."""
    for kind, records in (
        ("deck", listed(stage.decks)),
        ("wing", stage.wings),
        ("zone", listed(stage.zones)),
        ("obstruction", listed(stage.obstructions)),
    ):
        for item in records:
            if drawn := corners(item.outline):
                yield Drawn(f"stage.{kind}.{item.name}", kind, item.name, drawn)


def findings(stage: Stage) -> Iterator[Finding]:
    """Chains that do not close, riser areas that differ, and a usable size larger than the deck."""
    for chain in stage.chains:
        yield from open_chain(chain)
    for riser in stage.risers:
        yield from area_differs(riser)
    for deck in listed(stage.decks):
        yield from larger_than_deck(deck)


def open_chain(chain: Chain) -> Iterator[Finding]:
    """
    A chain of distances that does not make up its stated whole.

    A millimetre a part is allowed for rounding.
    """
    gap_m = chain_gap_m(parts_m=[part.m for part in chain.parts], total_m=chain.whole.m)
    if abs(gap_m) <= 0.005 * len(chain.parts):
        return
    parts = " + ".join(part.text for part in chain.parts)
    found = shown(Length, fsum(part.m for part in chain.parts))[0]
    sentence = (
        f"{chain.name}: {parts} makes {found}, but {chain.whole.text} is stated. Which one is"
        " right?"
    )
    yield Finding(Level.CAUTION, "chain-open", sentence, place=place(chain.where("whole")))


def with_heights(item: Item, riser: Riser) -> Item:
    """Risers with the heights that they can be set to as numbers too. [m]"""
    facts = tuple(
        replace(fact, value=replace(fact.value, settings=tuple(each.m for each in riser.heights)))
        if fact.key == f"{item.key}.heights" and fact.value is not None
        else fact
        for fact in item.facts
    )
    return replace(item, facts=facts)


def area_differs(riser: Riser) -> Iterator[Finding]:
    """Decks whose stated area is not what their count and size make."""
    least_m2, most_m2 = riser_ends_m2(riser)
    if riser.makes_up is None or least_m2 is None or least_m2 != most_m2:
        return
    if abs(least_m2 - riser.makes_up.m2) <= 0.01 * least_m2:
        return
    found = shown(Area, least_m2)[0]
    size = f"{as_written(riser.width)} by {as_written(riser.depth)}"
    sentence = (
        f"{riser.name}: {as_written(riser.count)} of {size} make {found}, but"
        f" {riser.makes_up.text} is stated."
    )
    yield Finding(Level.CAUTION, "area-differs", sentence, place=place(riser.where("makes_up")))


def larger_than_deck(deck: Deck) -> Iterator[Finding]:
    """A usable width or depth that the outline does not have."""
    drawn = corners(deck.outline)
    if not drawn:
        return
    xs, ys = zip(*drawn, strict=True)
    for key, usable, whole_m in (
        ("usable_width", deck.usable_width, max(xs) - min(xs)),
        ("usable_depth", deck.usable_depth, max(ys) - min(ys)),
    ):
        if not isinstance(usable, Absent) and usable.m > whole_m + 0.005:
            sentence = (
                f"{deck.name}: the {key.replace('_', ' ')} is {usable.text}, but the outline is"
                f" only {shown(Length, whole_m)[0]} there."
            )
            yield Finding(
                Level.CAUTION, "usable-exceeds-outline", sentence, place=place(deck.where(key))
            )
