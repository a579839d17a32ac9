"""From ``sound.yml`` to sound's section of the pack."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from builder.cautions import NOISE
from builder.department import Published, Surroundings
from builder.departments.sound.areas.coverage import (
    Covered,
    Listening,
    covered,
    lacking,
    listening,
    mix_spot,
    published,
    usable,
)
from builder.departments.sound.areas.ears import sampled
from builder.departments.sound.areas.edges import missed_edges, pan_figures
from builder.departments.sound.areas.fast_way import check_items
from builder.departments.sound.areas.geometry import corners_of, heights_of
from builder.departments.sound.areas.meeting import drift_items, meets_figures
from builder.departments.sound.areas.sight import Sight, hidden_ears, sight_figures, sights
from builder.departments.sound.areas.sources import (
    aligned_fill,
    hang_boxes,
    lacking_delays,
    lacking_to_place,
)
from builder.departments.sound.carried import as_carried
from builder.departments.sound.description import Sound
from builder.departments.sound.description.loudspeakers import Fill, SubLine
from builder.departments.sound.description.placed import (
    is_drawn_area,
    is_known_model,
    is_placed_fill,
    is_placed_hang,
    is_placed_line,
    lacking_of_fill,
    lacking_of_model,
    undrawn_areas,
)
from builder.departments.sound.description.positions import ClaimedLevel, MixPosition
from builder.departments.sound.figures import (
    area_figures,
    delay_figure,
    hang_figures,
    mix_figures,
    unplaced_delay,
    unplaced_hang_figure,
    untold_area,
)
from builder.departments.sound.findings import fills_of, findings, subs_of
from builder.departments.sound.hanging import (
    every_model_of,
    hangs_of,
    hung_loads,
    models_of,
    weight_figure,
)
from builder.departments.sound.levels.limits import budget_items, dose_items
from builder.departments.sound.levels.outside import neighbour_figures, over_limits
from builder.departments.sound.oddities.loudspeakers import oddities
from builder.departments.sound.oddities.plugging import plugging_oddities
from builder.departments.sound.oddities.statements import short_path, statements
from builder.departments.sound.subs.bands import (
    audience_figure,
    band_items,
    floor_at,
    untold_audience,
)
from builder.departments.sound.subs.line import (
    line_figures,
    sub_items,
    unheard_line,
    unplaced_figures,
)
from builder.departments.sound.subs.other_ways import way_items
from builder.departments.sound.subs.pattern import patterns
from builder.exchange import Drive, Offers, Shape, spot_named
from builder.formulas.air import speed_of_sound_m_s
from builder.formulas.polygons import contains
from builder.pack import (
    Fact,
    Field,
    Figure,
    Finding,
    Item,
    Level,
    Outline,
    Section,
    Standing,
)
from builder.reading.absent import Absent, listed
from builder.reading.measures import System
from builder.reading.written import Written
from builder.stating import Stater, place

HEARD_SHARE, HEARD_DB = 0.5, 6.0
"""An area is weak where less than this share lies within this of the mix position."""


def offer(sound: Sound) -> Offers:
    """
    What the hangs weigh, for rigging, the audience areas, for everybody's plans, and what the drive
    lines take, for the drive plan.
    """
    shapes = tuple(
        Shape("sound", "audience", area.name, corners_of(area), heights_of(area))
        for area in sound.audience
        if is_drawn_area(area)
    )
    lines = () if isinstance(sound.drive_lines, Absent) else sound.drive_lines
    drives = tuple(
        Drive(line.name, listed(line.signals))
        for line in lines
        if line.condition != "out of service"
    )
    return Offers(
        loads=tuple(hung_loads(sound)),
        shapes=shapes,
        drives=drives,
        statements=tuple(statements(sound)),
    )


@dataclass(frozen=True, slots=True)
class Room:
    """Everything the items are made from; ``lacks`` is why loudspeakers are heard nowhere."""

    sound: Sound
    around: Surroundings
    stater: Stater
    heard: Listening | None
    lacks: tuple[str, ...]
    areas: tuple[Covered, ...]
    sights: Mapping[str, Sight]

    @property
    def system(self) -> System:
        """The unit system shown first."""
        return "imperial" if self.around.system == "imperial" else "metric"

    @property
    def speed_m_s(self) -> float | None:
        """The speed of sound in the house's air."""
        air = usable(self.around.exchange.air)
        return speed_of_sound_m_s(air.temperature_c) if air else None


def publish(sound: Sound, around: Surroundings) -> Published:
    """The facts of sound, its maps, its delays, and what does not add up."""
    sound = as_carried(sound, around.exchange.hang_states)
    air = around.exchange.air
    heard = listening(sound, usable(air), around.exchange.spots)
    areas = tuple(covered(sound, heard)) if heard else ()
    seen = sights(sound, heard, areas) if heard else {}
    lacks = () if heard else loudspeakers_lack(sound, around)
    room = Room(sound, around, around.stater(sound), heard, lacks, areas, seen)
    section = Section(
        key="sound",
        title="Sound",
        items=tuple(items(room)),
        outlines=tuple(
            Outline(f"sound.audience.{area.name}", "audience", area.name, corners_of(area))
            for area in sound.audience
            if is_drawn_area(area)
        ),
        fields=tuple(fields(room, heard)) if heard else (),
        cautions=(NOISE,),
        verified=room.stater.inherited,
    )
    outside = over_limits(sound.neighbours, heard, sampled(sound.audience), around.exchange.limits)
    return Published(
        section,
        (
            *findings(sound, air),
            *of_areas(room),
            *of_mix(room),
            *of_maps(room),
            *outside,
            *missed_edges(sound, sampled(sound.audience)),
            *oddities(sound),
            *plugging_oddities(sound),
            *short_path(sound, around.exchange, around.system),
        ),
    )


def loudspeakers_lack(sound: Sound, around: Surroundings) -> tuple[str, ...]:
    """What must be known before levels can be told, where loudspeakers are described at all."""
    if not hangs_of(sound) and not subs_of(sound):
        return ()
    return lacking(sound, usable(around.exchange.air), around.exchange.spots)


def fields(room: Room, heard: Listening) -> Iterator[Field]:
    """The map of each area, and the pattern of each sub line."""
    for found in room.areas:
        seen = room.sights.get(found.area.name)
        yield published(
            found, heard, f"sound.field.{found.area.name}", seen.hidden.tolist() if seen else ()
        )
    if room.areas:
        lines = [line for line in subs_of(room.sound) if is_placed_line(line)]
        yield from patterns(room.sound, lines, heard)


def items(room: Room) -> Iterator[Item]:
    """Everything the house says of its sound, one item a thing."""
    sound, stater = room.sound, room.stater
    present = tuple(key for key, value in sound.written() if not isinstance(value, Absent))
    yield stater.item(sound, "sound.whole", "whole", "Sound", leave_out=present)
    yield from single(room)
    yield from loudspeakers(room)
    yield from listed_items(room)
    yield from television_items(room)
    yield from of_limits(room)
    yield from check_items(room.areas, room.heard, room.lacks)
    yield from neighbour_items(room)
    yield from claim_items(room)


def listed_items(room: Room) -> Iterator[Item]:
    """What the house has several of and figures count nothing with."""
    sound, stater = room.sound, room.stater
    lists: tuple[tuple[Sequence[Written] | Absent, str], ...] = (
        (sound.drive_lines, "drive"),
        (sound.boxes, "boxes"),
        (sound.amplifiers, "amplifier"),
        (sound.monitors, "monitor"),
        (sound.consoles, "console"),
        (sound.feeds, "feed"),
        (sound.hearing_help, "hearing-help"),
        (sound.splits, "split"),
        (sound.drop_boxes, "dropbox"),
        (sound.tails, "tail"),
        (sound.radio, "radio"),
        (sound.stock, "stock"),
    )
    for records, kind in lists:
        if not isinstance(records, Absent):
            named = stater.named(records, "sound", kind)
            yield from (with_subs(item) for item in named) if kind == "boxes" else named


def television_items(room: Room) -> Iterator[Item]:
    """The stretches of television that radio has to keep clear of."""
    if not room.sound.spectrum:
        return
    for number, band in enumerate(room.sound.spectrum.television, 1):
        name = f"{band.low.text} to {band.high.text}"
        yield room.stater.item(band, f"sound.television.{number}", "television", name)


def neighbour_items(room: Room) -> Iterator[Item]:
    """The places outside where the level matters, with what reaches them."""
    neighbours = room.sound.neighbours
    audience = sampled(room.sound.audience)
    named = room.stater.named(neighbours, "sound", "neighbour")
    for neighbour, item in zip(neighbours, named, strict=True):
        figures = neighbour_figures(neighbour, room.heard, audience, item.key, room.lacks)
        yield replace(item, figures=tuple(figures))


def claim_items(room: Room) -> Iterator[Item]:
    """The levels that the house claims."""
    for number, claim in enumerate(room.sound.claimed_levels, 1):
        leave_out = () if isinstance(claim.level, Absent) else ("level",)
        yield room.stater.item(
            claim, f"sound.claim.{number}", "claim", claimed_name(claim), leave_out=leave_out
        )


def claimed_name(claim: ClaimedLevel) -> str:
    """A claim by the level that it names."""
    return "level not known" if isinstance(claim.level, Absent) else claim.level.text


def of_limits(room: Room) -> Iterator[Item]:
    """
    What is left of the house's limits, and what levels at the mix position do to those who work
    there.
    """
    limits, mix = room.around.exchange.limits, room.sound.mix_position
    yield from budget_items(limits)
    if isinstance(mix, MixPosition):
        yield from dose_items(room.sound.claimed_levels, limits, mix.place)


def with_subs(item: Item) -> Item:
    """Boxes that are subs say how many of these there are, which shows ask."""
    told = item.fact("working") or item.fact("count")
    if item.text("use") != "sub":
        return item
    subs = (
        replace(told, key=f"{item.key}.subs", label="Subs")
        if told
        else Fact(f"{item.key}.subs", "Subs", Standing.UNKNOWN)
    )
    return replace(item, facts=(*item.facts, subs))


def single(room: Room) -> Iterator[Item]:
    """What there is one of: policy, processor, mix position, room, monitor position, spectrum."""
    sound, stater = room.sound, room.stater
    for kind, record, name in (
        ("policy", sound.policy, "House system"),
        ("processor", sound.processor, "Processor"),
        ("room", sound.room, "Room"),
        ("monitor-position", sound.monitor_position, "Monitor position"),
        ("spectrum", sound.spectrum, "Radio"),
    ):
        if isinstance(record, Written):
            yield stater.item(record, f"sound.{kind}", kind, str(getattr(record, "name", name)))
    mix = sound.mix_position
    if isinstance(mix, MixPosition):
        spot = mix_spot(mix, room.around.exchange.spots)
        half = spot_named(mix.place, room.around.exchange.half_spots)
        figures = tuple(mix_figures(spot or half, "sound.mix", room.system, room.heard, room.lacks))
        yield replace(stater.item(mix, "sound.mix", "mix", mix.place), figures=figures)


def loudspeakers(room: Room) -> Iterator[Item]:
    """Models, hangs, sub lines with each sub, fills with each box, and the areas they are for."""
    sound, stater = room.sound, room.stater
    for model, item in zip(sound.models, stater.named(sound.models, "sound", "model"), strict=True):
        yield item
        for entry in model.coverage:
            yield stater.item(
                entry,
                f"{item.key}.{entry.band.hz:g}",
                "coverage",
                f"{model.name}, {entry.band.text}",
                leave_out=("band",),
            )
    for hang, item in zip(
        hangs_of(sound), stater.named(hangs_of(sound), "sound", "hang"), strict=True
    ):
        yield replace(item, figures=tuple(of_hang(room, hang.name, item.key)))
    for subs, item in zip(
        subs_of(sound), stater.named(subs_of(sound), "sound", "subs"), strict=True
    ):
        yield from sub_line(room, subs, item)
    for fill, item in zip(
        fills_of(sound), stater.named(fills_of(sound), "sound", "fill"), strict=True
    ):
        lacks = lacking_delays(sound, fill)
        yield replace(item, figures=(unplaced_delay(item.key, lacks),)) if lacks else item
        yield from fill_boxes(room, fill, item.key)
    yield from areas(room)


def fill_boxes(room: Room, fill: Fill, fill_key: str) -> Iterator[Item]:
    """Each box of a fill: its delay, how that drifts, and where the hangs are as loud."""
    if not is_placed_fill(fill):
        yield from unplaced_boxes(room, fill, fill_key)
        return
    aligned = tuple(aligned_fill(room.sound, fill, room.speed_m_s or 343.2))
    meets = meets_figures(
        fill, aligned, room.heard, sampled(room.sound.audience), room.system, room.lacks
    )
    for number, (each, met) in enumerate(zip(aligned, meets, strict=True), 1):
        key = f"{fill_key}.{number}"
        figures = [delay_figure(each, fill, key, room.speed_m_s)]
        figures += [replace(met, key=f"{key}.meets")] if met else []
        yield replace(
            room.stater.item(each.record, key, "fillbox", f"{fill.name} {number}"),
            figures=tuple(figures),
        )
    air = usable(room.around.exchange.air)
    if air:
        yield from drift_items(fill, aligned, fill_key, air.temperature_c)


def unplaced_boxes(room: Room, fill: Fill, fill_key: str) -> Iterator[Item]:
    """Each box of a fill whose geometry is not known, with what its delay lacks."""
    for number, record in enumerate(fill.boxes, 1):
        key, lacks = f"{fill_key}.{number}", lacking_of_fill(fill)
        unknown = unplaced_delay(key, lacks)
        item = room.stater.item(record, key, "fillbox", f"{fill.name} {number}")
        yield replace(item, figures=(unknown,))


def sub_line(room: Room, subs: SubLine, item: Item) -> Iterator[Item]:
    """A sub line, each of its subs, and what it does by frequency."""
    if not is_placed_line(subs):
        yield replace(item, figures=tuple(unplaced_figures(subs, item.key)))
        return
    mix = room.sound.mix_position
    spot = mix_spot(mix, room.around.exchange.spots) if isinstance(mix, MixPosition) else None
    floor = floor_at(subs, spot, sampled(room.sound.audience))
    undrawn = undrawn_areas(room.sound)
    audience = (audience_figure(subs, floor, item.key, room.system),) if floor else ()
    if undrawn:
        floor, audience = None, (untold_audience(item.key, undrawn),)
    unheard = lacking_of_model(every_model_of(room.sound)[subs.model])
    bands = (unheard_line(item.key, unheard),) if unheard else ()
    figures = (*line_figures(subs, item.key, room.system), *audience, *bands)
    yield replace(item, figures=figures)
    if room.speed_m_s is None:
        return
    yield from sub_items(subs, item.key, room.system, room.speed_m_s)
    if model := models_of(room.sound).get(subs.model):
        yield from band_items(
            subs,
            item.key,
            model=model,
            floor=floor,
            heard=room.heard,
            lacks=room.lacks,
            speed_m_s=room.speed_m_s,
            system=room.system,
        )
        yield from way_items(
            subs,
            item.key,
            model,
            room.heard,
            lacks=room.lacks,
            speed_m_s=room.speed_m_s,
            system=room.system,
        )


def of_hang(room: Room, name: str, key: str) -> Iterator[Figure]:
    """The figures of a hang: its weight, and its geometry where the splay is known."""
    hang = next(hang for hang in hangs_of(room.sound) if hang.name == name)
    model = every_model_of(room.sound).get(hang.model)
    if model is None:
        return
    yield weight_figure(hang, model, key, room.system)
    if lacks := lacking_to_place(room.sound, hang):
        yield unplaced_hang_figure(key, lacks)
    boxes = hang_boxes(room.sound, name)
    if boxes and is_placed_hang(hang) and is_known_model(model):
        yield from hang_figures(
            hang,
            boxes,
            sampled(room.sound.audience),
            key,
            room.system,
            model.height.m,
            model.depth,
            undrawn_areas(room.sound),
        )
        if undrawn_areas(room.sound):
            return
        mix = room.sound.mix_position
        spot = mix_spot(mix, room.around.exchange.spots) if isinstance(mix, MixPosition) else None
        yield from pan_figures(
            hang, room.sound, sampled(room.sound.audience), spot, key, room.system
        )


def areas(room: Room) -> Iterator[Item]:
    """The audience areas, with what reaches them."""
    found = {each.area.name: each for each in room.areas}
    playable = {area.name for area in sampled(room.sound.audience)}
    for area, item in zip(
        room.sound.audience, room.stater.named(room.sound.audience, "sound", "area"), strict=True
    ):
        each = found.get(area.name)
        if each is None or room.heard is None:
            untold = room.lacks and (area.name in playable or not is_drawn_area(area))
            yield replace(item, figures=(untold_area(room.lacks, item.key),)) if untold else item
            continue
        seen = room.sights.get(area.name)
        sight = sight_figures(seen, item.key) if seen else ()
        yield replace(item, figures=(*area_figures(each, room.heard, item.key), *sight))


def of_areas(room: Room) -> Iterator[Finding]:
    """Areas that the system does not reach."""
    heard = {found.area.name for found in room.areas}
    for area in sampled(room.sound.audience) if room.heard else ():
        if area.name not in heard:
            sentence = (
                f"{area.name} is too thin for a map. Check its corners, or join it to its"
                " neighbour."
            )
            yield Finding(
                Level.CAUTION, "area-too-thin", sentence, place=place(area.where("corners"))
            )
    for found in room.areas:
        if seen := room.sights.get(found.area.name):
            yield from hidden_ears(found, seen)
        levels = found.levels["A"]
        share = float((levels >= -HEARD_DB).mean())
        if share < HEARD_SHARE:
            sentence = (
                f"The house system reaches {share * 100:.0f} % of {found.area.name} within"
                f" {HEARD_DB:g} dB of the mix position. Is a hang, a fill or a delay missing,"
                " turned down or out of service?"
            )
            yield Finding(
                Level.CAUTION, "area-weak", sentence, place=place(found.area.where("name"))
            )


def of_mix(room: Room) -> Iterator[Finding]:
    """A mix position that lies in no audience area: levels relative to it then say little."""
    mix = room.sound.mix_position
    if not isinstance(mix, MixPosition) or not room.sound.audience:
        return
    if undrawn_areas(room.sound):
        return
    spot = mix_spot(mix, room.around.exchange.spots)
    if spot and not any(
        contains(corners_of(area), (spot.across_m, spot.depth_m))
        for area in room.sound.audience
        if is_drawn_area(area)
    ):
        sentence = (
            f"The mix position, {mix.place}, lies in none of the audience areas. Maps are relative"
            " to it, so check where it is."
        )
        yield Finding(
            Level.CAUTION, "mix-outside-audience", sentence, place=place(mix.where("place"))
        )


def of_maps(room: Room) -> Iterator[Finding]:
    """Why there are no maps."""
    if room.heard is None and room.sound.hangs is not Absent.NOT_STATED:
        names = lacking(room.sound, usable(room.around.exchange.air), room.around.exchange.spots)
        yield Finding(
            Level.NOTE,
            "no-map",
            f"There are no coverage maps: they need {' and '.join(names)}.",
            place=place(room.sound.where("hangs")),
        )
