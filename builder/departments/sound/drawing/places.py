"""
Where things lie on sound's drawings: areas by storey, outlines, the deck, the mix position.

Reads the pack alone.
"""

from collections.abc import Mapping, Sequence

from builder.departments.sound.drawing.maps import Spot
from builder.pack import Field, Outline, Pack, Section
from builder.render.contours import within

FAR_FROM_DECK_M = 10.0
"""
A balcony further than this from the deck is shown without it, or most of the map would be empty.
"""
LETTERS = 17.0
"""Size of the letters in wide drawings: a phone shows them at a third."""
SEEN_DECK_M = 4.5
"""How much of the deck the maps show: enough to know where the stage is."""


def area_fields(section: Section) -> tuple[Field, ...]:
    """The maps of the audience areas."""
    return tuple(field for field in section.fields if field.key.startswith("sound.field."))


def storeys(section: Section) -> list[tuple[Field, ...]]:
    """
    Fields that do not lie above each other, together: the floor on one map, a balcony above it on
    the next.
    """
    found: list[list[Field]] = []
    outlines = {outline.name: outline for outline in section.outlines}
    for field in area_fields(section):
        free = next(
            (
                storey
                for storey in found
                if not any(overlap(field, other, outlines) for other in storey)
            ),
            None,
        )
        if free is None:
            found.append([field])
        else:
            free.append(field)
    return [tuple(storey) for storey in found]


def overlap(one: Field, other: Field, outlines: Mapping[str, Outline]) -> bool:
    """True where a place of one field lies within the outline of the other, on the plan."""
    import numpy as np

    pairs = ((one, other), (other, one))
    return any(
        within(outlines[two.name].corners, np.array(first.points)[:, :2]).any()
        for first, two in pairs
    )


def outlines(section: Section, pack: Pack, storey: Sequence[Field]) -> tuple[Outline, ...]:
    """The outlines of a storey's areas, and the deck as it usually stands."""
    names = {field.name for field in storey}
    areas = [outline for outline in section.outlines if outline.name in names]
    stage = pack.section("stage")
    decks = [outline for outline in stage.outlines if outline.kind == "deck"][:1] if stage else []
    nearest_m = max((y for area in areas for _, y in area.corners), default=0.0)
    return (
        *areas,
        *(
            cut(deck)
            for deck in decks
            if min(y for _, y in deck.corners) - nearest_m < FAR_FROM_DECK_M
        ),
    )


def cut(deck: Outline) -> Outline:
    """The downstage part of a deck."""
    return Outline(
        deck.key, deck.kind, deck.name, tuple((x, min(y, SEEN_DECK_M)) for x, y in deck.corners)
    )


def spots(section: Section, pack: Pack, storey: Sequence[Field]) -> tuple[Spot, ...]:
    """The mix position, where it lies within a storey."""
    mix = mix_place(section, pack)
    if mix is None:
        return ()
    near = any(
        abs(x - mix.across_m) <= field.step_m and abs(y - mix.depth_m) <= field.step_m
        for field in storey
        for x, y, _ in field.points
    )
    return (mix,) if near else ()


def mix_place(section: Section, pack: Pack) -> Spot | None:
    """The place of the mix position, from the stage's part of the pack."""
    mix, stage = section.item("mix"), pack.section("stage")
    place = stage.item("place", mix.name) if mix and stage else None
    across, depth = (place.number("at.across"), place.number("at.depth")) if place else (None, None)
    return (
        Spot(place.name, across, depth)
        if place and across is not None and depth is not None
        else None
    )
