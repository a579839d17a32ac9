"""The level at those who hear the show from outside, by ISO 9613-2."""

from collections.abc import Iterator, Sequence
from math import dist, fsum, hypot, isfinite

import numpy as np

from builder.cautions import NOISE
from builder.departments.sound.areas.coverage import THIRDS, Listening, mean_level_db
from builder.departments.sound.areas.geometry import Point, floor_corners
from builder.departments.sound.description.neighbours import Neighbour
from builder.departments.sound.description.placed import (
    DrawnArea,
    KnownNeighbour,
    is_known_neighbour,
    lacking_of_neighbour,
)
from builder.exchange import SoundLimit
from builder.formulas.areas import floor_of
from builder.formulas.field import field, programme_level_db
from builder.formulas.outdoor import (
    OCTAVES_HZ,
    Ground,
    Outdoors,
    Path,
    atmospheric_db,
    divergence_db,
    outdoor_level,
)
from builder.pack import Figure, Finding, Input, Value, Working
from builder.pack import Level as Severity
from builder.stating import place
from builder.working import figure, missing, worked

SHARE = {"hard": 0.0, "mixed": 0.5, "porous": 1.0}
STATED_TO_M = 1000.0
"""How far the standard states its accuracy."""
LEFT_OUT = (
    "Houses, woods, reflections, screens and hills between, upwind and calm air: the standard is"
    " for wind from the stage to the receiver. The box patterns are nominal, and behind a box they"
    " are the least known."
)


def source_of(heard: Listening) -> Point:
    """
    The middle of the boxes in the hangs, or of the subs where there is no hang: from here distance
    and height are counted.
    """
    hung = [
        box for box in heard.system.mains if heard.system.models[box.model].kind != "sub"
    ] or list(heard.system.mains)
    across, deep, high = (fsum(box.at[axis] for box in hung) / len(hung) for axis in range(3))
    return across, deep, high


def ground_m(source: Point, areas: Sequence[DrawnArea]) -> float:
    """The ground at the stage: the floor of the audience area that comes nearest to the source."""
    nearest = min(
        areas,
        key=lambda area: min(
            hypot(x - source[0], y - source[1]) for x, y, _ in floor_corners(area)
        ),
    )
    return float(
        floor_of(floor_corners(nearest)).z_m(np.array([source[0]]), np.array([source[1]]))[0]
    )


def path_to(neighbour: KnownNeighbour, heard: Listening, areas: Sequence[DrawnArea]) -> Path:
    """The way from the source to a neighbour."""
    source, at = source_of(heard), neighbour.at
    plan_m = hypot(at.across.m - source[0], at.depth.m - source[1])
    height_m = max(source[2] - ground_m(source, areas), 0.0)
    return Path(
        plan_m,
        height_m,
        neighbour.above_ground.m,
        heard.air.temperature_c,
        heard.air.humidity_percent,
    )


def heard_at(neighbour: KnownNeighbour, heard: Listening, path: Path) -> Outdoors:
    """The level at a neighbour when the stated level is at the mix position."""
    place_m = np.array([[neighbour.at.across.m, neighbour.at.depth.m, neighbour.at.height.m]])
    speakers = heard.system.speakers(fills=True)
    there, mix = (
        field(speakers, places, bands=THIRDS, air=heard.air) for places in (place_m, heard.mix)
    )
    gain_db = neighbour.mix_level.db - mean_level_db(programme_level_db(mix))
    straight_m = dist(source_of(heard), tuple(place_m[0]))
    # The free field at the receiver, spreading and air taken back, is the power that would give it:
    # the patterns and the sum are counted in.
    straight = Path(straight_m, 0.0, 0.0, path.temperature_c, path.humidity_percent)
    power = {}
    for octave_hz in OCTAVES_HZ:
        level_db = float(there.octave_db(float(octave_hz))[0])
        if isfinite(level_db):
            power[octave_hz] = (
                level_db + gain_db + divergence_db(straight_m) + atmospheric_db(octave_hz, straight)
            )
    share = neighbour.ground
    return outdoor_level(
        power, path, ground=Ground(SHARE[share.stage], SHARE[share.middle], SHARE[share.receiver])
    )


def neighbour_figures(
    neighbour: Neighbour,
    heard: Listening | None,
    areas: Sequence[DrawnArea],
    key: str,
    lacks: Sequence[str] = (),
) -> Iterator[Figure]:
    """The level there, or what it ``lacks``."""
    if not is_known_neighbour(neighbour):
        work, unknown = worked(outdoor_level, inputs=()), lacking_of_neighbour(neighbour)
        yield missing(f"{key}.level", "Level there", work, unknown, caution=NOISE)
        return
    label = f"With {neighbour.mix_level.text} at the mix position"
    if heard is None or not areas or neighbour.mix_level.weighting != "A":
        lacking = (
            ("an A-weighted level at the mix position",)
            if heard and areas
            else lacks or ("all that a coverage map needs",)
        )
        yield missing(
            f"{key}.level", label, worked(outdoor_level, inputs=()), lacking, caution=NOISE
        )
        return
    path = path_to(neighbour, heard, areas)
    found = heard_at(neighbour, heard, path)
    note = "±3 dB for the way alone by the standard; more for the loudspeakers."
    if path.plan_distance_m > STATED_TO_M:
        note = f"Further than {STATED_TO_M:,.0f} m the standard states no accuracy."
    value = Value(f"{found.total_dba:.0f} dB(A)", number=found.total_dba, unit="dB")
    yield figure(
        f"{key}.level", label, value, working(neighbour, path, found), caution=NOISE, note=note
    )


def working(neighbour: KnownNeighbour, path: Path, found: Outdoors) -> Working:
    """How the level there came about."""
    ground = neighbour.ground
    inputs = (
        Input("Distance on plan", f"{path.plan_distance_m:.0f} m"),
        Input(
            "Heights above ground",
            f"{path.source_height_m:.1f} m at the hangs' middle, {path.receiver_height_m:.1f} m"
            " there",
        ),
        Input(
            "Ground",
            f"{ground.stage} at the stage, {ground.middle} between, {ground.receiver} there",
        ),
        Input("Air", f"{path.temperature_c:g} °C, {path.humidity_percent:g} %"),
        Input("Signal", f"pink noise, {neighbour.mix_level.text} at the mix position"),
    )
    octaves = ", ".join(f"{octave} Hz {level:.0f} dB" for octave, level in found.octave_db.items())
    steps = (f"At the receiver: {octaves}.", f"A-weighted together {found.total_dba:.1f} dB(A).")
    return worked(
        outdoor_level,
        divergence_db,
        atmospheric_db,
        inputs=inputs,
        steps=steps,
        leaves_out=LEFT_OUT,
    )


def over_limits(
    neighbours: Sequence[Neighbour],
    heard: Listening | None,
    areas: Sequence[DrawnArea],
    limits: Sequence[SoundLimit],
) -> Iterator[Finding]:
    """Neighbours who would hear more than their limit, and limits that house.yml does not state."""
    stated = {limit.name: limit for limit in limits}
    for neighbour in neighbours:
        if neighbour.limit is None:
            continue
        limit = stated.get(neighbour.limit)
        if limit is None:
            sentence = (
                f"{neighbour.name} names the limit {neighbour.limit}, which house.yml does not"
                " state."
            )
            yield Finding(
                Severity.CAUTION,
                "limit-not-stated",
                sentence,
                place=place(neighbour.where("limit")),
            )
        elif not is_known_neighbour(neighbour):
            continue
        elif heard and areas and neighbour.mix_level.weighting == limit.weighting == "A":
            level_dba = heard_at(neighbour, heard, path_to(neighbour, heard, areas)).total_dba
            if level_dba > limit.level_db:
                sentence = (
                    f"By the model, {neighbour.mix_level.text} at the mix position gives"
                    f" {level_dba:.0f} dB(A) at {neighbour.name}, and the limit is"
                    f" {limit.level_db:g} dB(A)."
                    f" {neighbour.mix_level.db - level_dba + limit.level_db:.0f} dB(A) at the mix"
                    " position would meet it."
                )
                yield Finding(
                    Severity.CAUTION,
                    "neighbour-over-limit",
                    sentence,
                    place=place(neighbour.where("mix_level")),
                )
