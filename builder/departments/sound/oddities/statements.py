"""
What the sound file states that other files state too, and a cable's way that is shorter than the
straight line.
"""

from collections.abc import Iterator

from builder.departments.sound.description import Sound
from builder.departments.sound.description.placed import DrawnArea, is_drawn_area
from builder.departments.sound.description.positions import MixPosition, MonitorPosition
from builder.exchange import Offers, Statement
from builder.formulas.tie_lines import straight_m
from builder.oddities import Named, path_under_straight
from builder.pack import Finding
from builder.reading.measures import System
from builder.reading.quantities import Length

PATH_WITHIN = 0.1
"""A visitor's cable goes the way of the house's lines within a tenth."""


def statements(sound: Sound) -> Iterator[Statement]:
    """Sizes of the positions, places lost, cable paths and the deck's height above the floor."""
    for position in (sound.mix_position, sound.monitor_position):
        if isinstance(position, MixPosition | MonitorPosition):
            yield from sizes(position)
    mix = sound.mix_position
    if isinstance(mix, MixPosition):
        if isinstance(mix.places_lost, int):
            where = mix.where("places_lost")
            yield Statement("number of places lost to the mix position", "", mix.places_lost, where)
        yield from cable_path(mix, sound)
    for area in sound.audience:
        yield from level_floor(area) if is_drawn_area(area) else ()


def sizes(position: MixPosition | MonitorPosition) -> Iterator[Statement]:
    """How wide and deep a position is; its place in the stage file says so too."""
    for key in ("width", "depth"):
        size = getattr(position, key)
        if isinstance(size, Length):
            yield Statement(f"{key} of", position.place, size, position.where(key))


def cable_path(mix: MixPosition, sound: Sound) -> Iterator[Statement]:
    """The cable's way between both positions, which the lines between them take too."""
    monitors = sound.monitor_position
    if isinstance(monitors, MonitorPosition) and isinstance(mix.cable_path, Length):
        ends = " and ".join(sorted((mix.place, monitors.place)))
        where = mix.where("cable_path")
        yield Statement("cable path between", ends, mix.cable_path, where, PATH_WITHIN)


def level_floor(area: DrawnArea) -> Iterator[Statement]:
    """How far a level floor is below the deck, or above it."""
    heights = [corner.height for corner in area.corners]
    if area.kind == "floor" and len({height.m for height in heights}) == 1:
        where = area.corners[0].where("height")
        yield Statement("step between deck and floor", "", heights[0], where)


def short_path(sound: Sound, offers: Offers, system: System) -> Iterator[Finding]:
    """A cable's way between both positions that is shorter than the straight line."""
    mix, monitors = sound.mix_position, sound.monitor_position
    if not isinstance(mix, MixPosition) or not isinstance(monitors, MonitorPosition):
        return
    first, second = offers.spot("place", monitors.place), offers.spot("place", mix.place)
    if first and second and isinstance(mix.cable_path, Length):
        path = Named("The cable path to the mix position", mix.cable_path, mix.where("cable_path"))
        yield from path_under_straight(
            path, (first.name, second.name), straight_m(first.at_m, second.at_m), system
        )
