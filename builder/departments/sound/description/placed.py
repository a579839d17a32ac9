"""
Loudspeakers whose geometry is known: what can be drawn and added up. Of all others it is told what
is missing; they are counted, used and weighed all the same.
"""

from collections.abc import Iterable, Iterator
from typing import Literal, TypeGuard

from builder.departments.sound.description import Sound
from builder.departments.sound.description.loudspeakers import (
    At,
    AudienceArea,
    Corner,
    Fill,
    FillBox,
    Hang,
    Model,
    Spot,
    SubLine,
    Turn,
)
from builder.departments.sound.description.neighbours import Between, Neighbour, Outside
from builder.reading.absent import Absent
from builder.reading.quantities import Angle, Duration, Frequency, Height, Length, Level
from builder.reading.written import Line

HANG_NEEDS = (
    ("boxes", "how many boxes {} has"),
    ("at", "where {} hangs"),
    ("top", "how high {} hangs"),
    ("down", "how far the top box of {} looks down"),
    ("turned", "how far {} is turned"),
    ("turned_down", "how far {} is turned down"),
    ("delay", "the delay of {}"),
)
SUBS_NEED = (
    ("count", "how many subs {} has"),
    ("spacing", "the spacing of {}"),
    ("at", "where {} stands"),
    ("out_of_service", "which subs of {} play"),
    ("arc", "the arc of {}"),
    ("arc_radius", "the radius of the arc of {}"),
    ("turned_down", "how far {} is turned down"),
    ("delay", "the delay of {}"),
)
FILL_NEEDS = (
    ("aligned_at", "where {} is brought together in time"),
    ("after", "how long after the hang {} comes"),
    ("turned_down", "how far {} is turned down"),
)
BOX_NEEDS = (
    ("at", "where each box of {} is"),
    ("turned", "how far each box of {} is turned"),
    ("down", "how far each box of {} looks down"),
)


AREA_NEEDS = (
    ("corners", "the corners of {}"),
    ("ears", "the height of ears in {}"),
    ("kind", "whether {} is a balcony"),
    ("underside", "the underside of {}"),
)


class DrawnArea(AudienceArea):
    """An area whose geometry is known. Only types are told by it: none is ever made."""

    kind: Literal["floor", "balcony", "tier", "lawn", "boxes"]
    ears: Length
    corners: tuple[Corner, ...]
    underside: Length | None


def is_drawn_area(area: AudienceArea) -> TypeGuard[DrawnArea]:
    """Whether all of an area's geometry is known."""
    return not any(lacking(area, AREA_NEEDS, ""))


def undrawn_areas(sound: Sound) -> tuple[str, ...]:
    """What is missing of the geometry of the areas in use, or that nobody knows which there are."""
    areas = [area for area in sound.audience if area.condition != "out of service"]
    found = [words for area in areas for words in lacking(area, AREA_NEEDS, area.name)]
    return ("the audience areas",) if "audience" in sound.unknown else tuple(found)


MODEL_NEEDS = (
    ("kind", "what kind of loudspeaker {} is"),
    ("lowest", "the lowest frequency of {}"),
    ("highest", "the highest frequency of {}"),
    ("width", "the width of {}"),
    ("height", "the height of {}"),
)


class KnownModel(Model):
    """A model with all that a field needs. Only types are told by it: none is ever made."""

    kind: Literal["line box", "full range", "sub"]
    lowest: Frequency
    highest: Frequency
    width: Length
    height: Length


def is_known_model(model: Model) -> TypeGuard[KnownModel]:
    """Whether all is known of a model that a field needs, its level and coverage aside."""
    return not lacking_of_model(model)


def lacking_of_model(model: Model) -> tuple[str, ...]:
    """What must be known before a model can be heard, its level and coverage aside."""
    coverage = (f"the coverage of {model.name}",) if "coverage" in model.unknown else ()
    return (*lacking(model, MODEL_NEEDS, model.name), *coverage)


NEIGHBOUR_NEEDS = (
    ("at", "where {} is"),
    ("above_ground", "how high {} is above the ground"),
    ("ground", "the ground on the way to {}"),
    ("mix_level", "the level at the mix position that {} is told for"),
)


class KnownNeighbour(Neighbour):
    """A neighbour of whom all is known. Only types are told by it: none is ever made."""

    at: Outside
    above_ground: Length
    ground: Between
    mix_level: Level


def is_known_neighbour(neighbour: Neighbour) -> TypeGuard[KnownNeighbour]:
    """Whether all is known that the level at a neighbour needs."""
    return not lacking_of_neighbour(neighbour)


def lacking_of_neighbour(neighbour: Neighbour) -> tuple[str, ...]:
    """What must be known before the level at a neighbour can be told."""
    return tuple(lacking(neighbour, NEIGHBOUR_NEEDS, neighbour.name))


class PlacedHang(Hang):
    """A hang whose geometry is known. Only types are told by it: none is ever made."""

    boxes: int
    at: Spot
    top: Height
    down: Angle
    turned: Turn | None
    turned_down: Level | None
    delay: Duration | None


class PlacedSubs(SubLine):
    """A line of subs whose geometry is known. Only types are told by it: none is ever made."""

    count: int
    spacing: Length
    at: At
    out_of_service: tuple[int, ...]
    arc: Angle | None
    arc_radius: Length | None
    turned_down: Level | None
    delay: Duration | None


class PlacedBox(FillBox):
    """A box of a fill whose geometry is known. Only types are told by it: none is ever made."""

    at: At
    turned: Turn | None
    down: Angle | None


class PlacedFill(Fill):
    """A fill whose geometry is known. Only types are told by it: none is ever made."""

    aligned_at: Length | None
    after: Duration | None
    turned_down: Level | None


def is_placed_hang(hang: Hang) -> TypeGuard[PlacedHang]:
    """Whether all of a hang's geometry is known, its splay aside."""
    return not lacking_of_hang(hang)


def is_placed_line(subs: SubLine) -> TypeGuard[PlacedSubs]:
    """Whether all of the geometry of a line of subs is known."""
    return not lacking_of_subs(subs)


def is_placed_fill(fill: Fill) -> TypeGuard[PlacedFill]:
    """Whether all of a fill's geometry is known, that of its boxes too."""
    return not lacking_of_fill(fill)


def is_placed_box(box: FillBox) -> TypeGuard[PlacedBox]:
    """Whether all of the geometry of a box of a fill is known."""
    return not any(lacking(box, BOX_NEEDS, ""))


def lacking_of_hang(hang: Hang) -> tuple[str, ...]:
    """What must be known before a hang can be drawn, its splay aside."""
    return tuple(lacking(hang, HANG_NEEDS, hang.name))


def lacking_of_subs(subs: SubLine) -> tuple[str, ...]:
    """What must be known before a line of subs can be drawn."""
    return tuple(lacking(subs, SUBS_NEED, subs.name))


def lacking_of_fill(fill: Fill) -> tuple[str, ...]:
    """What must be known before a fill can be drawn, each thing once."""
    boxes = (words for box in fill.boxes for words in lacking(box, BOX_NEEDS, fill.name))
    return tuple(dict.fromkeys((*lacking(fill, FILL_NEEDS, fill.name), *boxes)))


def lacking(line: Line, needs: Iterable[tuple[str, str]], name: str) -> Iterator[str]:
    """What is missing of some needs, in words."""
    for key, words in needs:
        if isinstance(getattr(line, key), Absent):
            yield words.format(name)
