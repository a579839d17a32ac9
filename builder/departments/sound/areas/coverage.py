"""
What the house system covers: levels at ear height over each audience area, relative to the mix
position.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf, isfinite, log10

import numpy as np
from numpy.typing import NDArray

from builder.cautions import NOISE
from builder.departments.sound.areas.ears import ears_of, sampled, step_for_m
from builder.departments.sound.areas.sources import System, system_of
from builder.departments.sound.description import Sound
from builder.departments.sound.description.placed import DrawnArea, undrawn_areas
from builder.departments.sound.description.positions import MixPosition
from builder.departments.sound.findings import OCTAVES_HZ, band_name
from builder.exchange import Air as HouseAir
from builder.exchange import Spot, spot_named
from builder.formulas.air import GREATEST_TEMPERATURE_C, LEAST_TEMPERATURE_C
from builder.formulas.band_lines import third_octaves
from builder.formulas.field import Air, field, programme_level_db
from builder.formulas.field import Field as Energies
from builder.pack import Field, Input, Working
from builder.reading.absent import Absent
from builder.reading.quantities import Length
from builder.working import Formula, worked

Array = NDArray[np.float64]
MIX_STEP_M = 0.5
MOST_A_SIDE = 25
"""So many ears a side stand for the mix position; a wider one takes a coarser grid."""
SHOWN_HZ = (31.5, *OCTAVES_HZ, 16_000.0)
THIRDS = third_octaves(25.0, 20_000.0)
"""The third octaves of the octaves shown."""
PROGRAMME = "A"
BARE = "A, without fills"
BANDS = (*(band_name(hertz) for hertz in SHOWN_HZ), PROGRAMME, BARE)
QUIETEST_DB = -99.0
"""Where no box plays at all the level has no number; maps show this instead."""
LEAVES_OUT = (
    "Reflections, the room, people and balconies in the way, wind, equalisation, limiting and the"
    " phase between different models. Each box is driven to the same share of its maker's level,"
    " less what the house turns it down."
)


@dataclass(frozen=True, slots=True)
class Listening:
    """
    Ears over the mix position, shape (points, 3), the air and the system: all that a field needs
    besides its points.
    """

    system: System
    air: Air
    mix: Array
    mix_name: str


@dataclass(frozen=True, slots=True)
class Covered:
    """
    One area with its levels relative to the mix position: octaves and programme, with fills and
    without. [dB]
    """

    area: DrawnArea
    points: Array
    step_m: float
    levels: dict[str, Array]


def usable(air: HouseAir | None) -> HouseAir | None:
    """The house's air where the absorption of sound is known for it, else None."""
    if (
        air is None
        or not LEAST_TEMPERATURE_C <= air.temperature_c <= GREATEST_TEMPERATURE_C
        or not 0 <= air.humidity_percent <= 100
    ):
        return None
    return air


def listening(sound: Sound, air: HouseAir | None, spots: Sequence[Spot]) -> Listening | None:
    """What the field is computed from; None where :func:`lacking` names something."""
    mix = sound.mix_position
    if air is None or not isinstance(mix, MixPosition) or lacking(sound, air, spots):
        return None
    spot = mix_spot(mix, spots)
    if spot is None:
        return None
    still = Air(air.temperature_c, air.humidity_percent, air.pressure_kpa)
    return Listening(system_of(sound, still.speed_m_s), still, ears_at(mix, spot), spot.name)


def ears_at(mix: MixPosition, spot: Spot) -> Array:
    """
    Ears over the whole of the mix position: one place could lie in a notch where sounds cancel, and
    everything would look loud against it.
    """
    width_m = mix.width.m if isinstance(mix.width, Length) else 0.0
    depth_m = mix.depth.m if isinstance(mix.depth, Length) else 0.0
    across, deep = (
        (
            np.linspace(-size / 2, size / 2, min(round(size / MIX_STEP_M) + 1, MOST_A_SIDE))
            if size
            else np.zeros(1)
        )
        for size in (width_m, depth_m)
    )
    height_m = spot.height_m + (mix.ears.m if isinstance(mix.ears, Length) else 0.0)
    return np.array([(spot.across_m + x, spot.depth_m + y, height_m) for y in deep for x in across])


def lacking(sound: Sound, air: HouseAir | None, spots: Sequence[Spot]) -> tuple[str, ...]:
    """What must be described before a map can be drawn."""
    if air is None:
        return ("the house's air, from −20 to 50 °C",)
    mix = sound.mix_position
    if not isinstance(mix, MixPosition) or mix_spot(mix, spots) is None:
        return ("the mix position",)
    if not isinstance(mix.ears, Length):
        return ("the height of ears at the mix position",)
    if not sound.audience:
        return ("the audience areas",)
    if unknown := undrawn_areas(sound):
        return unknown
    system = system_of(
        sound, Air(air.temperature_c, air.humidity_percent, air.pressure_kpa).speed_m_s
    )
    if system.unplaced:
        return system.unplaced
    if not system.mains:
        return ("hangs with their splay, or subs",)
    return (*inexact_sizes(mix), *system.lacking)


def inexact_sizes(mix: MixPosition) -> Iterator[str]:
    """
    The sizes of the mix position that nobody states or knows, or that are known in part: over one
    that is not known, nobody can take the mean. `none` leaves a single line of ears.
    """
    for key in ("width", "depth"):
        size = getattr(mix, key)
        if isinstance(size, Absent) and size is not Absent.NONE:
            yield f"the exact {key} of the mix position"


def mix_spot(mix: MixPosition, spots: Sequence[Spot]) -> Spot | None:
    """The place of the mix position."""
    return spot_named(mix.place, spots)


def covered(sound: Sound, heard: Listening) -> Iterator[Covered]:
    """The levels over each area that has an outline."""
    areas = sampled(sound.audience)
    step_m = step_for_m(areas)
    grids = [ears_of(area, step_m) for area in areas]
    # One call for all: the mix position stands last.
    count, places = len(heard.mix), np.concatenate([*(ears for ears, _ in grids), heard.mix])
    whole, bare = (
        levels_of(field(heard.system.speakers(fills=fills), places, bands=THIRDS, air=heard.air))
        for fills in (True, False)
    )
    reference = {name: mean_level_db(level[-count:]) for name, level in whole.items()}
    levels = {name: against(level, reference[name]) for name, level in whole.items()}
    levels[BARE] = against(bare[PROGRAMME], reference[PROGRAMME])
    start = 0
    for area, (ears, step_m) in zip(areas, grids, strict=True):
        end = start + len(ears)
        if len(ears):
            yield Covered(
                area, ears, step_m, {name: level[start:end] for name, level in levels.items()}
            )
        start = end


def levels_of(energies: Energies) -> dict[str, Array]:
    """Octaves and A-weighted programme of a field. [dB]"""
    octaves = {band_name(hertz): energies.octave_db(hertz) for hertz in SHOWN_HZ}
    return {**octaves, PROGRAMME: programme_level_db(energies)}


def mean_level_db(levels: Array) -> float:
    """The level of the mean energy; minus infinity where nothing is heard."""
    energy = float(np.mean(np.power(10.0, levels / 10)))
    return 10 * log10(energy) if energy > 0 else -inf


def against(levels: Array, reference_db: float) -> Array:
    """Levels relative to the mix position, with a number where nothing is heard."""
    base = reference_db if isfinite(reference_db) else 0.0
    return np.where(np.isfinite(levels), np.maximum(levels - base, QUIETEST_DB), QUIETEST_DB)


def published(found: Covered, heard: Listening, key: str, hidden: Sequence[int] = ()) -> Field:
    """An area's levels as the pack holds them."""
    return Field(
        key=key,
        name=found.area.name,
        reference="the mix position",
        step_m=found.step_m,
        bands=BANDS,
        points=tuple(
            (round(float(x), 2), round(float(y), 2), round(float(z), 2)) for x, y, z in found.points
        ),
        levels=tuple(
            tuple(round(float(level) * 10) for level in found.levels[band]) for band in BANDS
        ),
        working=working(heard, found),
        caution=NOISE,
        hidden=tuple(int(index) for index in hidden),
    )


def working(heard: Listening, found: Covered, *further: Formula) -> Working:
    """How the levels of an area came about."""
    return worked(
        field,
        programme_level_db,
        *further,
        inputs=inputs(heard, found),
        steps=steps(heard),
        leaves_out=LEAVES_OUT,
    )


def inputs(heard: Listening, found: Covered) -> tuple[Input, ...]:
    """What the field was computed from."""
    air = heard.air
    return (
        Input(
            "Points",
            f"{len(found.points):,} on a grid of {found.step_m:g} m, {found.area.ears.text} above"
            " the floor",
        ),
        Input(
            "Signal",
            "pink noise on every drive line, third octaves from 25 Hz to 20 kHz, where a box plays"
            " them",
        ),
        Input(
            "Boxes",
            f"{len(heard.system.mains)} in hangs and subs, {len(heard.system.fills)} in fills",
        ),
        Input(
            "Air",
            f"{air.temperature_c:g} °C, {air.humidity_percent:g} %, {air.pressure_kpa:.1f} kPa,"
            f" sound at {air.speed_m_s:.1f} m/s",
        ),
        Input(
            "Reference",
            f"{heard.mix_name}: mean energy of {len(heard.mix)} places over its width and depth,"
            f" ears {heard.mix[0][2]:.2f} m high",
        ),
    )


def steps(heard: Listening) -> tuple[str, ...]:
    """What the model takes each kind of box for."""
    kinds = {model.kind for model in heard.system.used}
    told = {
        "line box": (
            "Line boxes: across by the maker's coverage; up and down each is a short line as high"
            " as the box, and the column adds up."
        ),
        "full range": (
            "Full-range boxes: by the maker's coverage across and up and down; a piston as wide as"
            " the box where none is given."
        ),
        "sub": "Subs: points that radiate alike all round.",
    }
    return tuple(text for kind, text in told.items() if kind in kinds)
