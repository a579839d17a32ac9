"""From ``house.yml`` to the house's section of the pack."""

from collections.abc import Iterator
from dataclasses import replace

from builder.cautions import NOISE
from builder.department import Published, Surroundings
from builder.departments.house.closure import Closure
from builder.departments.house.description import Configuration, Crew, House, NoiseLimit
from builder.departments.house.oddities import oddities
from builder.departments.house.seating import Block
from builder.exchange import Air, Altitude, CallRules, Offers, SoundLimit, Statement
from builder.formulas.dimensions import sum_gap
from builder.pack import Fact, Finding, Item, Level, Section, Standing, Value, in_a_row
from builder.reading.absent import Absent, listed
from builder.reading.in_part import as_written
from builder.reading.language import NEWEST
from builder.reading.quantities import Level as Loudness
from builder.stating import Stater, place
from builder.working import check_of

ISA_SEA_LEVEL_KPA = 101.325


def offer(house: House) -> Offers:
    """
    The air during a show and the limits on sound level, which sound needs; the altitude, which
    generators need; how calls are made, which crew needs.
    """
    air = (
        Air(house.air.temperature.c, house.air.humidity.share * 100, ISA_SEA_LEVEL_KPA)
        if house.air
        else None
    )
    limits = (
        ()
        if isinstance(house.noise_limits, Absent)
        else tuple(
            sound_limit(limit, level)
            for limit in house.noise_limits
            if not isinstance(level := limit.level, Absent)
        )
    )
    altitude = (
        None
        if isinstance(house.altitude, Absent)
        else Altitude(house.altitude.m, house.altitude.text)
    )
    return Offers(
        air=air,
        limits=limits,
        altitude=altitude,
        statements=tuple(statements(house)),
        calls=call_rules(house.crew) if house.crew else None,
    )


def call_rules(crew: Crew) -> CallRules:
    """How calls are made here, as the crew's figures need it."""
    return CallRules(
        shortest=crew.shortest_call,
        meal_after=crew.meal_after,
        meal_break=crew.meal_break,
        meal_paid=crew.meal_paid,
        longest=crew.longest_call,
        turnaround=crew.turnaround,
        check=check_of(crew),
    )


def sound_limit(limit: NoiseLimit, level: Loudness) -> SoundLimit:
    """A limit as others are told it."""
    over_min = limit.over.s / 60 if limit.over else 0.0
    metric, where = (
        value if isinstance(value, str) else "" for value in (limit.metric, limit.measured_at)
    )
    return SoundLimit(limit.name, level.db, level.weighting, metric, over_min, where)


def publish(house: House, around: Surroundings) -> Published:
    """The house's facts as items, and what does not add up."""
    stater = around.stater(house)
    section = Section(
        key="house",
        title="House",
        items=tuple(items(house, stater)),
        cautions=(NOISE,) if house.noise_limits is not Absent.NOT_STATED else (),
        verified=stater.inherited,
    )
    return Published(section, (*findings(house), *oddities(house)))


def statements(house: House) -> Iterator[Statement]:
    """Places that the mix position takes, which the sound file tells too."""
    for configuration in house.configurations:
        lost = configuration.lost_to_mix_position
        if isinstance(lost, int):
            where = configuration.where("lost_to_mix_position")
            yield Statement("number of places lost to the mix position", "", lost, where)


def items(house: House, stater: Stater) -> Iterator[Item]:
    """Everything the house says of itself, one item a thing."""
    yield stater.item(
        house,
        "house.identity",
        "identity",
        house.name,
        leave_out=("language", "note", "revision", "crew", "season", "weather"),
    )
    yield from stater.counted(house.addresses, "house", "address", name_key="use")
    yield from stater.counted(house.contacts, "house", "contact", name_key="role")
    yield from stater.named(house.spaces, "house", "space")
    for configuration, item in zip(
        house.configurations,
        stater.named(house.configurations, "house", "configuration"),
        strict=True,
    ):
        facts = (
            *block_facts(configuration, item.key),
            *other_figures(configuration, item.key),
            *wheelchair_facts(configuration, item.key),
        )
        yield replace(item, facts=(*item.facts, *facts))
    if not isinstance(house.closed, Absent):
        yield from closures(house.closed, stater)
    yield from stater.counted(listed(house.regularly), "house", "regular", name_key="what")
    yield from stater.counted(listed(house.works), "house", "works", name_key="what")
    yield from stater.named(listed(house.removable_seats), "house", "seats-out")
    yield from stater.counted(house.trouble_spots, "house", "trouble", name_key="what")
    if not isinstance(house.curfews, Absent):
        yield from stater.counted(house.curfews, "house", "curfew", name_key="days")
    if not isinstance(house.quiet_hours, Absent):
        yield from stater.counted(house.quiet_hours, "house", "quiet", name_key="days")
    if not isinstance(house.noise_limits, Absent):
        yield from stater.counted(house.noise_limits, "house", "noise", name_key="name")
    yield from stater.named(house.effects, "house", "effect")
    if house.crew:
        yield stater.item(house.crew, "house.crew", "crew", "Local crew")
    if house.season:
        yield stater.item(house.season, "house.season", "season", "Season")
    if house.weather:
        yield stater.item(house.weather, "house.weather", "weather", "Weather")
    yield from kept(house, stater)


def kept(house: House, stater: Stater) -> Iterator[Item]:
    """What is hired, house rules, rates, documents."""
    yield from stater.named(listed(house.hired), "house", "hired")
    yield from stater.counted(listed(house.rules), "house", "rule", name_key="rule")
    yield from stater.counted(listed(house.rates), "house", "rate", name_key="what")
    yield from stater.named(listed(house.documents), "house", "document")
    yield from stater.named(listed(house.documents_asked), "house", "asked")


def closures(closed: tuple[Closure, ...], stater: Stater) -> Iterator[Item]:
    """When what is closed."""
    for count, closure in enumerate(closed, 1):
        name = "Some departments" if closure.departments else closed_whole(closure)
        yield stater.item(closure, f"house.closure.{count}", "closure", name)


def closed_whole(closure: Closure) -> str:
    """What is closed as a whole: the house, or some of its spaces."""
    return in_a_row(closure.spaces) if closure.spaces else "The whole house"


def block_facts(configuration: Configuration, key: str) -> Iterator[Fact]:
    """The parts that make up a capacity, as one fact."""
    parts = tuple(block_words(block) for block in configuration.blocks)
    if parts:
        where = place(configuration.where("blocks"))
        value = Value(", ".join(parts), parts=parts)
        yield Fact(f"{key}.blocks", "Blocks", Standing.STATED, value, place=where)


def block_words(block: Block) -> str:
    """A block with what is told of it, in words."""
    told = {True: "numbered seats", False: "seats without numbers", None: ""}[block.numbered]
    boxes = f"boxes {block.boxes}" if block.boxes else ""
    more = ", ".join(part for part in (boxes, told) if part)
    places = block.places
    words = f"{block.name} {places:,}" if isinstance(places, int) else block.name
    if isinstance(places, Absent) and places is not Absent.NOT_STATED:
        words += f" {as_written(places)}"
    return f"{words} ({more})" if more else words


def wheelchair_facts(configuration: Configuration, key: str) -> Iterator[Fact]:
    """Where wheelchair places are, as one fact."""
    parts = tuple(
        f"row {seats.row}, {seats.first} to {seats.last}" for seats in configuration.wheelchair_at
    )
    if parts:
        where = place(configuration.where("wheelchair_at"))
        value = Value("; ".join(parts), parts=parts)
        label = "Wheelchairs at"
        yield Fact(f"{key}.wheelchair_at", label, Standing.STATED, value, place=where)


def other_figures(configuration: Configuration, key: str) -> Iterator[Fact]:
    """Figures for the capacity that do not hold, as one fact."""
    parts = tuple(f"{other.says:,}, {other.by}" for other in configuration.other_figures)
    if parts:
        where = place(configuration.where("other_figures"))
        value = Value("; ".join(parts), parts=parts)
        label = "Not valid"
        yield Fact(f"{key}.other_figures", label, Standing.STATED, value, place=where)


def findings(house: House) -> Iterator[Finding]:
    """
    A language that is not the newest, sums that do not close, and limits that say too little to be
    kept.
    """
    if house.language < NEWEST:
        yield older_language(house)
    for configuration in house.configurations:
        yield from sum_of_blocks(configuration)
    if not isinstance(house.noise_limits, Absent):
        for limit in house.noise_limits:
            yield from incomplete_limit(limit)


def older_language(house: House) -> Finding:
    """That a venue is written as before, and how it comes to the newest language."""
    sentence = (
        f"Written in language {house.language}; the newest is {NEWEST}. 'housepack upgrade' shows"
        " what it would write otherwise, asks, and can be taken back."
    )
    return Finding(Level.NOTE, "language-older", sentence, place=place(house.where("language")))


def sum_of_blocks(configuration: Configuration) -> Iterator[Finding]:
    """A capacity that differs from the sum of its blocks."""
    stated = configuration.capacity
    parts = [block.places for block in configuration.blocks]
    known = [count for count in parts if isinstance(count, int)]
    if not parts or len(known) < len(parts) or isinstance(stated, Absent):
        return
    gap = sum_gap(parts=known, total=stated)
    if not gap:
        return
    sentence = (
        f"{configuration.name}: the blocks add up to {stated - gap:,}, the stated capacity is"
        f" {stated:,}. Which one is right?"
    )
    where = place(configuration.where("capacity"))
    yield Finding(Level.CAUTION, "sum-differs", sentence, "house.configuration", where)


def incomplete_limit(limit: NoiseLimit) -> Iterator[Finding]:
    """A noise limit without metric or weighting, or an equivalent level without its time."""
    lacking = [] if isinstance(limit.metric, str) else ["how it is measured"]
    if isinstance(limit.level, Absent):
        lacking.append("at which level")
    elif not limit.level.weighting:
        lacking.append("a weighting, such as dB(A)")
    if limit.metric == "equivalent level" and limit.over is None:
        lacking.append("the time it is taken over")
    if lacking:
        sentence = (
            f"The noise limit '{limit.name}' does not say {' or '.join(lacking)}. Nobody can keep"
            " it as it stands."
        )
        yield Finding(
            Level.CAUTION, "limit-incomplete", sentence, "house.noise", place(limit.where())
        )
