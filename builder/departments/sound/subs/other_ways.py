"""
The same subs set otherwise: in pairs one behind the other, end-fire or as gradients.

What to type in, and what changes against the line as set.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import isfinite, sqrt

import numpy as np
from numpy.typing import NDArray

from builder.cautions import NOISE
from builder.departments.sound.areas.coverage import Listening, mean_level_db
from builder.departments.sound.areas.geometry import Box, boxes_of_subs
from builder.departments.sound.areas.sources import loudspeaker
from builder.departments.sound.description.placed import KnownModel, PlacedSubs
from builder.departments.sound.figures import signed
from builder.departments.sound.subs.bands import played_hz
from builder.departments.sound.subs.line import delays_ms, playing, radius_m
from builder.formulas.band_lines import third_octaves
from builder.formulas.field import field
from builder.formulas.sub_pairs import end_fire_delays_ms, gradient_delay_ms, gradient_front_gain_db
from builder.formulas.subs import arc_delays_ms
from builder.pack import Figure, Input, Item, Value
from builder.reading.absent import Absent
from builder.reading.measures import System, shown
from builder.reading.quantities import Across, Length
from builder.working import figure, missing, worked

Array = NDArray[np.float64]
FEWEST_SUBS = 4
HIGHEST_HZ = 100.0
DEPTH_STEP_M = 0.05
STAGE_M, STAGE_HALF_M, STAGE_STEP_M, STAGE_EARS_M = 6.0, 3.0, 0.5, 1.7
"""
Where a stage is judged: so far upstage of the line, so far to each side of its middle, at ears
above the deck.
"""
LEAVES_OUT = (
    "Subs are equal points that radiate alike all round. Boxes shade each other, subs differ, a"
    " deck front and walls send sound back: behind a pair expect far less than is shown. No source"
    " was found for how much. Pairs need floor behind the line for the rear subs."
)


@dataclass(frozen=True, slots=True)
class Pairs:
    """
    The subs of a line in pairs: places of the pairs along the line, front to rear, and the delay of
    each pair by the line's arc.
    """

    line: PlacedSubs
    speed_m_s: float
    depth_m: float
    across_m: tuple[float, ...]
    arc_ms: tuple[float, ...]
    left_over: int

    @property
    def extra_ms(self) -> float:
        """What sound takes from the rear sub to the front one."""
        return end_fire_delays_ms((0.0, self.depth_m), speed_m_s=self.speed_m_s)[1]

    def boxes(self, way: str) -> tuple[Box, ...]:
        """The subs, front and rear of each pair."""
        line, start_ms = self.line, 1000 * self.line.delay.s if self.line.delay else 0.0
        front = replace(boxes_of_subs(line, [0.0] * line.count)[0], delay_s=0.0)
        found = []
        for across_m, arc_ms in zip(self.across_m, self.arc_ms, strict=True):
            early, late = (start_ms + arc_ms) / 1000, (start_ms + arc_ms + self.extra_ms) / 1000
            here = (line.at.across.m + across_m, line.at.depth.m, line.at.height.m)
            behind = (here[0], here[1] + self.depth_m, here[2])
            ends = ((late, early, False), (early, late, True))[way == GRADIENT]
            found.append(replace(front, at=here, delay_s=ends[0]))
            found.append(replace(front, at=behind, delay_s=ends[1], inverted=ends[2]))
        return tuple(found)


END_FIRE, GRADIENT = "end-fire", "gradient"
WAYS = (END_FIRE, GRADIENT)


def pairs_of(line: PlacedSubs, model: KnownModel, speed_m_s: float) -> Pairs | None:
    """
    The subs that play in pairs over the length of the line; None where they are too few, in the air
    or under the stage.
    """
    places, _ = playing(line, speed_m_s)
    if (
        len(places) < FEWEST_SUBS
        or isinstance(line.sits, Absent)
        or line.sits in ("flown", "under the stage")
        or line.condition != "in service"
    ):
        return None
    count = len(places) // 2
    step_m = (places[-1] - places[0]) / (count - 1)
    # To the nanometre, so that the two halves of a line are told alike.
    across_m = tuple(round(places[0] + step_m * number, 9) for number in range(count))
    radius = radius_m(line)
    arc_ms = (
        arc_delays_ms(across_m, radius_m=radius, speed_m_s=speed_m_s) if radius else (0.0,) * count
    )
    return Pairs(
        line, speed_m_s, depth_m(model, speed_m_s), across_m, tuple(arc_ms), len(places) - 2 * count
    )


def middle_hz(model: KnownModel) -> float:
    """The middle of what the subs play, on a scale of octaves, up to 100 Hz."""
    return sqrt(model.lowest.hz * max(model.lowest.hz, min(model.highest.hz, HIGHEST_HZ)))


def depth_m(model: KnownModel, speed_m_s: float) -> float:
    """A quarter of a wavelength there, in steps that a tape measure shows."""
    return round(speed_m_s / middle_hz(model) / 4 / DEPTH_STEP_M) * DEPTH_STEP_M


def untold_ways(line: PlacedSubs, key: str) -> Item:
    """What stands for the pairs where nobody knows whether there is room behind the subs."""
    work, lacks = worked(end_fire_delays_ms, inputs=()), (f"where the subs of {line.name} stand",)
    figures = (missing(f"{key}.ways.depth", "In pairs", work, lacks),)
    return Item(key=f"{key}.ways", kind="subways", name=line.name, figures=figures)


def way_items(
    line: PlacedSubs,
    key: str,
    model: KnownModel,
    heard: Listening | None,
    *,
    lacks: Sequence[str],
    speed_m_s: float,
    system: System,
) -> Iterator[Item]:
    """The pairs with their delays, and what they do in each third octave, or what that lacks."""
    pairs = pairs_of(line, model, speed_m_s)
    if pairs is None:
        if isinstance(line.sits, Absent):
            yield untold_ways(line, key)
        return
    yield Item(
        key=f"{key}.ways",
        kind="subways",
        name=line.name,
        figures=tuple(whole_figures(pairs, model, f"{key}.ways", system)),
    )
    for number, across_m in enumerate(pairs.across_m, 1):
        name = f"{key}.ways.pair-{number}"
        yield Item(
            key=name,
            kind="subpair",
            name=f"Pair {number}",
            figures=tuple(delay_figures(pairs, number - 1, across_m, name, system)),
        )
    if heard and played_hz(model):
        yield from band_items(pairs, f"{key}.ways", model, heard)
    elif lacks:
        yield from untold_bands(f"{key}.ways", model, lacks)


def whole_figures(pairs: Pairs, model: KnownModel, key: str, system: System) -> Iterator[Figure]:
    """How many pairs, and how far from front to rear."""
    count = len(pairs.across_m)
    left = f", {pairs.left_over} left over" if pairs.left_over else ""
    inputs = (
        Input("Subs that play", str(2 * count + pairs.left_over)),
        Input("Middle of what they play", f"{middle_hz(model):.0f} Hz"),
    )
    depth, also = shown(Length, pairs.depth_m, 2, system)
    quarter = (
        f"{pairs.speed_m_s:.1f} m/s / {middle_hz(model):.0f} Hz / 4 ="
        f" {pairs.speed_m_s / middle_hz(model) / 4:.2f} m, in steps of 0.05 m"
    )
    work = worked(
        end_fire_delays_ms,
        inputs=inputs,
        steps=(quarter,),
        leaves_out=LEAVES_OUT,
        equation="d = c / f / 4; t = d / c",
    )
    yield figure(f"{key}.pairs", "Pairs", Value(f"{count}{left}", number=float(count)), work)
    yield figure(
        f"{key}.depth", "Front sub to rear sub", Value(depth, also, pairs.depth_m, "m"), work
    )
    yield figure(
        f"{key}.extra",
        "Delay between them",
        Value(f"{pairs.extra_ms:.2f} ms", number=pairs.extra_ms / 1000, unit="s"),
        work,
    )


def delay_figures(
    pairs: Pairs, place: int, across_m: float, key: str, system: System
) -> Iterator[Figure]:
    """What to type in for one pair, both ways."""
    across, arc_ms = pairs.line.at.across.m + across_m, pairs.arc_ms[place]
    text, also = shown(Across, across, 2, system)
    inputs = (
        Input("Delay of the pair by the arc", f"{arc_ms:.2f} ms"),
        Input("Front to rear", f"{pairs.depth_m:.2f} m"),
    )
    late_ms = arc_ms + pairs.extra_ms
    steps = (
        f"{arc_ms:.2f} ms + {pairs.depth_m:.2f} m / {pairs.speed_m_s:.1f} m/s = {late_ms:.2f} ms",
    )
    fire = worked(end_fire_delays_ms, inputs=inputs, steps=steps, leaves_out=LEAVES_OUT)
    gradient = worked(gradient_delay_ms, inputs=inputs, steps=steps, leaves_out=LEAVES_OUT)
    yield figure(f"{key}.across", "Across", Value(text, also, across, "m"), fire)
    for name, label, delay_ms, work in (
        ("fire_front", "End-fire: front", late_ms, fire),
        ("fire_rear", "End-fire: rear", arc_ms, fire),
        ("gradient_front", "Gradient: front", arc_ms, gradient),
        ("gradient_rear", "Gradient: rear, inverted", late_ms, gradient),
    ):
        yield figure(
            f"{key}.{name}",
            label,
            Value(f"{delay_ms:.2f} ms", number=delay_ms / 1000, unit="s"),
            work,
        )


def band_items(pairs: Pairs, key: str, model: KnownModel, heard: Listening) -> Iterator[Item]:
    """
    What each way does in each third octave, at the mix position and on the stage, against the line
    as set.
    """
    line = pairs.line
    stage = stage_places(line)
    ways = {way: pairs.boxes(way) for way in WAYS}
    now = boxes_of_subs(
        line, [delay / 1000 for delay in delays_ms(line, speed_m_s=pairs.speed_m_s)]
    )
    played = played_hz(model)
    before = [levels_db(now, played, places, heard) for places in (heard.mix, stage)]
    after = {
        way: [levels_db(boxes, played, places, heard) for places in (heard.mix, stage)]
        for way, boxes in ways.items()
    }
    for hertz in played:
        name = band_key(key, hertz)
        figures = [
            found
            for way in WAYS
            for found in change_figures(
                pairs,
                name,
                way,
                hertz,
                [level[hertz] for level in before],
                [level[hertz] for level in after[way]],
            )
        ]
        yield Item(key=name, kind="subwayband", name=f"{hertz:g} Hz", figures=tuple(figures))


def untold_bands(key: str, model: KnownModel, lacks: Sequence[str]) -> Iterator[Item]:
    """Each third octave where something that every map needs is not known."""
    for hertz in played_hz(model):
        name = band_key(key, hertz)
        figures = tuple(
            missing(
                f"{name}.{figure_name(way, there)}",
                f"{way.capitalize()}: {there}",
                worked(field, inputs=(), leaves_out=LEAVES_OUT),
                lacks,
                caution=NOISE,
            )
            for way in WAYS
            for there in ("mix", "stage")
        )
        yield Item(key=name, kind="subwayband", name=f"{hertz:g} Hz", figures=figures)


def band_key(key: str, hertz: float) -> str:
    """The key of a third octave; a point parts keys."""
    return f"{key}.{hertz:g}hz".replace("31.5", "31-5")


def figure_name(way: str, there: str) -> str:
    """The last part of the key of what a way does at a place."""
    return f"{way.replace('-', '_')}_{there}"


def stage_places(line: PlacedSubs) -> Array:
    """Ears on the stage, behind the middle of the line."""
    aside = np.arange(-STAGE_HALF_M, STAGE_HALF_M + STAGE_STEP_M / 2, STAGE_STEP_M)
    return np.column_stack(
        [
            line.at.across.m + aside,
            np.full(aside.shape, line.at.depth.m + STAGE_M),
            np.full(aside.shape, STAGE_EARS_M),
        ]
    )


def levels_db(
    boxes: Sequence[Box], played: Sequence[float], places: Array, heard: Listening
) -> dict[float, float]:
    """The level of the mean energy over places in each third octave."""
    speakers = [loudspeaker(box, heard.system.models[box.model]) for box in boxes]
    bands = third_octaves(min(played), max(played))
    found = field(speakers, places, bands=bands, air=heard.air).levels_db()
    return {
        hertz: mean_level_db(found[:, bands.index(third_octaves(hertz, hertz)[0])])
        for hertz in played
    }


def change_figures(
    pairs: Pairs, key: str, way: str, hertz: float, before: Sequence[float], after: Sequence[float]
) -> Iterator[Figure]:
    """Louder or quieter than as set, at the mix position and on the stage."""
    formula = end_fire_delays_ms if way == END_FIRE else gradient_delay_ms
    inputs = [
        Input("Third octave", f"{hertz:g} Hz"),
        Input("Subs", f"{2 * len(pairs.across_m)} in {len(pairs.across_m)} pairs"),
    ]
    if way == GRADIENT:
        gain = gradient_front_gain_db(
            depth_m=pairs.depth_m, frequency_hz=hertz, speed_m_s=pairs.speed_m_s
        )
        inputs.append(Input("One pair far ahead, against one sub", f"{gain:+.1f} dB"))
    for name, words, old, new in (
        ("mix", "mix position", before[0], after[0]),
        ("stage", f"stage, {STAGE_M:g} m upstage of the line", before[1], after[1]),
    ):
        change = new - old
        known = isfinite(change)
        step = (
            f"{new:.1f} dB − {old:.1f} dB = {change:+.1f} dB, mean energy over the places"
            if known
            else "nothing is heard"
        )
        work = worked(field, formula, inputs=inputs, steps=(step,), leaves_out=LEAVES_OUT)
        value = (
            Value(signed(change), number=change, unit="dB") if known else Value("nothing is heard")
        )
        label = f"{way.capitalize()}: {words}"
        yield figure(f"{key}.{figure_name(way, name)}", label, value, work, caution=NOISE)
