"""
The house system as sources for the field: which boxes play, how loud against each other, and with
what delay.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist, fsum, log10

from builder.departments.sound.areas.geometry import (
    Box,
    Point,
    aim,
    boxes_of_hang,
    boxes_of_subs,
    each_of_fill,
)
from builder.departments.sound.description import Sound
from builder.departments.sound.description.loudspeakers import Fill, FillBox, Hang, Model
from builder.departments.sound.description.placed import (
    KnownModel,
    is_placed_fill,
    is_placed_line,
    lacking_of_fill,
    lacking_of_hang,
    lacking_of_model,
    lacking_of_subs,
)
from builder.departments.sound.findings import Part, fills_of, subs_of
from builder.departments.sound.hanging import Models, every_model_of, hangs_of, models_of
from builder.departments.sound.subs.line import delays_ms
from builder.formulas.alignment import alignment_delay_ms
from builder.formulas.band_lines import third_octaves
from builder.formulas.loudspeakers import Loudspeaker
from builder.pack import Check
from builder.reading.absent import Absent, is_unknown
from builder.reading.quantities import Angle, Level
from builder.working import weakest_of


@dataclass(frozen=True, slots=True)
class Aligned:
    """
    One box of a fill, and how it is brought together in time with the hang it follows. Without
    ``hang`` it has no delay.
    """

    record: FillBox
    box: Box
    hang: str = ""
    hang_m: float = 0.0
    box_m: float = 0.0
    hang_delay_ms: float = 0.0
    delay_ms: float = 0.0


@dataclass(frozen=True, slots=True)
class System:
    """
    All boxes that play: mains and subs, and fills apart, so that the field can be shown with and
    without them. ``check`` is the weakest of the lines that say what plays, and where; ``unplaced``
    tells what is missing of the geometry of others that play.
    """

    mains: tuple[Box, ...]
    fills: tuple[Box, ...]
    models: Models
    check: Check | None = None
    unplaced: tuple[str, ...] = ()

    @property
    def used(self) -> tuple[KnownModel, ...]:
        """The models in use, in the order of the description."""
        names = {box.model for box in (*self.mains, *self.fills)}
        return tuple(model for model in self.models.values() if model.name in names)

    @property
    def lacking(self) -> tuple[str, ...]:
        """
        What must be known before the boxes can be added: the maker's level of each model where
        there are several, and every coverage up and down that somebody knows in part only.
        """
        without = [model.name for model in self.used if not isinstance(model.level, Level)]
        levels = [f"the maker's level of {name}" for name in without if len(self.used) > 1]
        return (*levels, *(name for model in self.used for name in inexact_coverage(model)))

    def speakers(self, *, fills: bool) -> list[Loudspeaker]:
        """The boxes as sources."""
        return [
            loudspeaker(box, self.models[box.model])
            for box in (*self.mains, *(self.fills if fills else ()))
        ]


def system_of(sound: Sound, speed_m_s: float) -> System:
    """The house system at a speed of sound."""
    models = models_of(sound)
    hangs = [
        box
        for hang in hangs_of(sound)
        if hang.condition != "out of service" and hang.model in models
        for box in hang_boxes(sound, hang.name)
    ]
    subs = [
        box
        for line in subs_of(sound)
        if line.condition != "out of service" and is_placed_line(line)
        for box in boxes_of_subs(
            line, [delay / 1000 for delay in delays_ms(line, speed_m_s=speed_m_s)]
        )
    ]
    aligned = [
        each
        for fill in fills_of(sound)
        if fill.condition != "out of service"
        for each in aligned_fill(sound, fill, speed_m_s)
    ]
    fills = [
        replace(each.box, delay_s=max(each.delay_ms, 0.0) / 1000)
        for each in aligned
        if each.record.condition != "out of service"
    ]
    lines = (*hangs_of(sound), *subs_of(sound), *fills_of(sound), *models.values())
    unplaced = tuple(unplaced_of(sound))
    return System((*hangs, *subs), tuple(fills), models, weakest_of(lines), unplaced)


def unplaced_of(sound: Sound) -> Iterator[str]:
    """What is missing of the geometry of hangs, subs and fills that play."""
    for name in ("hangs", "subs", "fills"):
        if is_unknown(getattr(sound, name)):
            yield f"which {name} there are"
    models = every_model_of(sound)
    parts: list[Part] = [*hangs_of(sound), *subs_of(sound), *fills_of(sound)]
    used = dict.fromkeys(part.model for part in parts if part.condition != "out of service")
    for name in used:
        yield from lacking_of_model(models[name]) if name in models else ()
    for hang in hangs_of(sound):
        if hang.condition != "out of service" and hang.model in models:
            yield from lacking_of_hang(hang)
            unsaid = is_unknown(hang.splay) or hang.splay is Absent.NOT_STATED
            if unsaid and hang.boxes not in (0, 1):
                yield f"the splay of {hang.name}"
    for line in subs_of(sound):
        yield from lacking_of_subs(line) if line.condition != "out of service" else ()
    for fill in fills_of(sound):
        yield from lacking_of_fill(fill) if fill.condition != "out of service" else ()


def hang_boxes(sound: Sound, name: str) -> tuple[Box, ...]:
    """The boxes of a hang by its name."""
    models = models_of(sound)
    found = next(
        (hang for hang in hangs_of(sound) if hang.name == name and hang.model in models), None
    )
    return boxes_of_hang(found, box_height_m=models[found.model].height.m) if found else ()


def middle_of(boxes: Sequence[Box]) -> Point:
    """The middle of a column of boxes."""
    x, y, z = (fsum(box.at[axis] for box in boxes) / len(boxes) for axis in range(3))
    return x, y, z


def aligned_fill(sound: Sound, fill: Fill, speed_m_s: float) -> Iterator[Aligned]:
    """
    Each box of a fill with its delay to the nearest hang it follows, where the house says which and
    where.
    """
    if not is_placed_fill(fill):
        return
    found = {name: hang_boxes(sound, name) for name in fill.follows}
    middles = {
        name: (middle_of(boxes), boxes[0].delay_s)
        for name, boxes in found.items()
        if boxes and not unplaced_hang(sound, fill.follows)
    }
    for record, box in each_of_fill(fill):
        if not middles or fill.aligned_at is None:
            yield Aligned(record, box)
            continue
        meeting = ahead(box, fill.aligned_at.m)
        name = min(middles, key=lambda each: dist(middles[each][0], meeting))
        middle, start_s = middles[name]
        hang_m, after_ms = dist(middle, meeting), fill.after.s * 1000 if fill.after else 0.0
        delay = alignment_delay_ms(
            reference_distance_m=hang_m,
            fill_distance_m=fill.aligned_at.m,
            speed_m_s=speed_m_s,
            offset_ms=after_ms,
            reference_delay_ms=start_s * 1000,
        )
        yield Aligned(record, box, name, hang_m, fill.aligned_at.m, start_s * 1000, delay)


def lacking_delays(sound: Sound, fill: Fill) -> tuple[str, ...]:
    """What must be known of a fill, and of the hangs it follows, before its delays can be told."""
    followed = [hang for hang in hangs_of(sound) if hang.name in fill.follows]
    of_hangs = [words for hang in followed for words in lacking_to_place(sound, hang)]
    return (*lacking_of_fill(fill), *of_hangs)


def unplaced_hang(sound: Sound, names: Sequence[str]) -> bool:
    """Whether the geometry of one of some hangs is not known: it may be the nearest of them."""
    return any(hang.name in names and lacking_to_place(sound, hang) for hang in hangs_of(sound))


def lacking_to_place(sound: Sound, hang: Hang) -> tuple[str, ...]:
    """What must be known of a hang and of its model before it can be drawn, its splay aside."""
    model = every_model_of(sound).get(hang.model)
    return (*lacking_of_hang(hang), *(lacking_of_model(model) if model else ()))


def ahead(box: Box, distance_m: float) -> Point:
    """The place that far along a box's aim."""
    x, y, z = (start + distance_m * part for start, part in zip(box.at, aim(box), strict=True))
    return x, y, z


def loudspeaker(box: Box, model: KnownModel) -> Loudspeaker:
    """
    A box as a source: its maker's level spread evenly over the third octaves it plays, less what
    the house turns it down.
    """
    coverage = tuple((entry.band.hz, entry.horizontal.deg) for entry in model.coverage)
    vertical = tuple(
        (entry.band.hz, entry.vertical.deg)
        for entry in model.coverage
        if isinstance(entry.vertical, Angle)
    )
    x, y, z = box.at
    return Loudspeaker(
        x,
        y,
        z,
        azimuth_deg=box.turned_deg - 90.0,
        elevation_deg=-box.down_deg,
        level_db=level_in_band_db(model) - box.turned_down_db,
        delay_ms=box.delay_s * 1000,
        inverted=box.inverted,
        width_m=0.0 if model.kind == "sub" else model.width.m,
        height_m=0.0 if model.kind == "sub" else model.height.m,
        coverage_deg=coverage,
        vertical_coverage_deg=() if model.kind == "line box" else vertical,
        lowest_hz=model.lowest.hz,
        highest_hz=model.highest.hz,
    )


def inexact_coverage(model: Model) -> Iterator[str]:
    """
    The coverage up and down that is unknown, or known in part. Where nobody states it the pattern
    takes the stated bands beside it; a coverage that is there and not known is not that.
    """
    for entry in model.coverage if model.kind != "line box" else ():
        if is_unknown(entry.vertical):
            yield f"the exact vertical coverage of {model.name} at {entry.band.text}"


def level_in_band_db(model: KnownModel) -> float:
    """
    The maker's level as it falls on each third octave the model plays; 0 where the maker gives
    none.
    """
    if not isinstance(model.level, Level):
        return 0.0
    played = sum(model.lowest.hz <= band.midband_hz <= model.highest.hz for band in third_octaves())
    return model.level.db - 10 * log10(max(played, 1))
