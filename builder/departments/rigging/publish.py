"""The rigging department's section of the pack."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.cautions import LOADS, WIND
from builder.department import Published, Surroundings
from builder.departments.rigging.bridles.figures import bridle_figures
from builder.departments.rigging.bridles.spot_figures import spot_figures, unknown_spot_figures
from builder.departments.rigging.bridles.spots import spotted
from builder.departments.rigging.bridles.standing import Bridled
from builder.departments.rigging.description import Rigging
from builder.departments.rigging.description.hangs import HungThing
from builder.departments.rigging.description.steel import Beam, Zone
from builder.departments.rigging.hangs.bodies import (
    WHO_UNKNOWN,
    Body,
    Shares,
    where_ends_are,
    who,
)
from builder.departments.rigging.hangs.figures import (
    NOBODY,
    by_whom,
    hung_words,
    span_figures,
    support_figures,
    truss_of,
    weight_figure,
)
from builder.departments.rigging.hangs.trims import trim_figures
from builder.departments.rigging.hangs.undersides import overhang_of, underside_figure
from builder.departments.rigging.steel.by_rule import (
    beam_rule_figures,
    group_rule_figures,
    groups_by_rule,
    without_room,
)
from builder.departments.rigging.steel.figures import (
    between,
    by_hand,
    full_figures,
    group_figures,
    lacks_steel,
    mass,
    point_figures,
)
from builder.departments.rigging.steel.findings import findings
from builder.departments.rigging.steel.geometry import (
    Overhead,
    ends_of_hang,
    heights_of,
    stations_of,
)
from builder.departments.rigging.steel.oddities import oddities, steel_heights
from builder.departments.rigging.steel.totals import OnPoint, Whole, hoists_kg, whole_of
from builder.departments.rigging.stock_and_wind import hoist_figures, truss_figures, wind_figures
from builder.exchange import Offers
from builder.formulas.loads import Load, PointLoad, total_load_kg
from builder.formulas.trim import low_steel_m
from builder.pack import Fact, Figure, Input, Item, Section, Standing, Value, not_less, one_or_both
from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.addresses import distinct
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Across, Depth, Length, Mass
from builder.reading.references import spelling
from builder.reading.written import Written
from builder.stating import Stater, place, value_of
from builder.working import figure, length_value, missing, worked

UNKNOWN_LISTS = ("limits", "exceptions", "zones", "hangs", "bridles", "ballast", "dynamic_factor")
SINGLE = (
    ("letter", "Engineer's letter"),
    ("bridles_allowed", "Bridles"),
    ("dynamic_factor", "Starting and stopping"),
    ("submission", "Submission"),
    ("base_pads", "Base pads"),
)


def publish(rigging: Rigging, around: Surroundings) -> Published:
    """
    The facts of rigging, the figures of points, beams, zones, roof and hangs, and what the house
    should know.
    """
    whole = whole_of(rigging, around.exchange.loads)
    stater, system = around.stater(rigging), around.system
    cautions = (LOADS, WIND) if rigging.wind or rigging.wind_areas else (LOADS,)
    section = Section(
        "rigging",
        "Rigging",
        tuple(items(whole, stater, system)),
        cautions=cautions,
        verified=stater.inherited,
    )
    odd = oddities(rigging, around.ageing, system)
    found = (*findings(whole, system), *without_room(rigging))
    return Published(section, (*found, *odd))


def offer(rigging: Rigging) -> Offers:
    """
    The heights of the steel, what hangs below it, which the stage must stay below, and whether each
    hang is there.
    """
    return Offers(
        steel=tuple(steel_heights(rigging)),
        overhead=tuple(overhang_of(hang) for hang in rigging.hung),
        overhead_told=rigging.hangs not in (Absent.NOT_STATED, Absent.UNKNOWN),
        hang_states={spelling(hang.name): hang.condition for hang in rigging.hung},
    )


def items(whole: Whole, stater: Stater, system: System) -> Iterator[Item]:
    """Everything overhead, one item a thing."""
    rigging = whole.rigging
    yield roof_item(whole, stater, system)
    present = tuple(key for key, _ in SINGLE if isinstance(getattr(rigging, key), Written))
    told = {name for name, _ in SINGLE} | {
        key for key in UNKNOWN_LISTS if isinstance(getattr(rigging, key), Absent)
    }
    others = tuple(key for key, _ in rigging.written() if key not in told)
    yield stater.item(rigging, "rigging.house", "house", "Rigging", leave_out=(*present, *others))
    for key, name in SINGLE:
        if isinstance(record := getattr(rigging, key), Written):
            yield stater.item(record, f"rigging.{key}", key, name)
    for number, exception in enumerate(rigging.told_exceptions, 1):
        yield stater.item(
            exception,
            f"rigging.exception.{number}",
            "exception",
            ", ".join((*exception.beams, *exception.points)),
        )
    yield from steel_items(whole, stater, system)
    yield from hang_items(whole, stater, system)
    yield from stock_items(whole, stater, system)
    yield from stater.named(rigging.rails, "rigging", "rail")
    for step in rigging.wind:
        key = f"rigging.wind.{step.name.replace(' ', '-')}"
        yield stater.item(step, key, "wind", step.name)
    yield from stater.counted(listed(rigging.ballast), "rigging", "ballast", name_key="what")
    for area, item in zip(
        rigging.wind_areas, stater.named(rigging.wind_areas, "rigging", "wind-area"), strict=True
    ):
        yield replace(item, figures=tuple(wind_figures(area, rigging, item.key, system)))


def roof_item(whole: Whole, stater: Stater, system: System) -> Item:
    """The general limits, with the figures of the whole roof."""
    item = stater.item(whole.rigging.general, "rigging.roof", "roof", "Whole roof")
    figures = (
        *group_figures(whole.groups[-1], whole, item.key, system),
        *full_figures(whole, item.key, system),
        *steel_range(whole.points, item.key, system),
    )
    return replace(item, facts=(*item.facts, *unweighed(item.key, whole)), figures=figures)


def unweighed(key: str, whole: Whole) -> Iterator[Fact]:
    """What of what hangs here nobody weighed, or knows the points of."""
    if names := whole.unweighed:
        told = Value(", ".join(names), parts=names)
        yield Fact(f"{key}.unweighed", "Not known of what hangs", Standing.STATED, told)


def steel_range(points: Sequence[OnPoint], key: str, system: System) -> Iterator[Figure]:
    """The lowest and the highest steel over some points."""
    exact, open_ones = [], []
    for point in points:
        steel_m = point.place.steel_m
        if steel_m is not None:
            exact.append((steel_m, f"point {point.name}"))
        elif lacks := lacks_height(point.place):
            open_ones.append((heights_of(point.place.beam), lacks))
    yield from range_figures(exact, key, system, open_ones)


def lacks_height(place: Overhead) -> str:
    """
    What must be known to tell the steel at a point; empty for one beyond the heights stated, over
    which nobody counts on any.
    """
    is_beyond = place.along_m is not None and bool(stations_of(place.beam))
    return "" if is_beyond else lacks_steel(place)


def steel_of_beam(beam: Beam, system: System, key: str) -> Iterator[Figure]:
    """
    The lowest and the highest steel of a beam without points: it is straight between the heights
    stated, so they are among these.
    """
    heights = [
        (station.height.m, at.text if (at := station.across or station.depth) else "")
        for station in beam.low_steel
    ]
    low, high = ends_of(beam.underside)
    if low is not None and high is not None:
        heights += [(low.m, "all along"), (high.m, "all along")]
    lacks = [] if heights else [(None, f"the height of beam {beam.name}")]
    yield from range_figures(heights, key, system, lacks)


Open = tuple[tuple[float, float] | None, str]
"""
The lowest and the highest that the steel may be at a place that is not known, None where nobody
knows its height; and what must be known for that. [m]
"""


def range_figures(
    found: Sequence[tuple[float, str]], key: str, system: System, open_ones: Sequence[Open]
) -> Iterator[Figure]:
    """
    The lowest and the highest of some heights, each with where it is; both with two ends where the
    place of some is not known. [m]
    """
    heights = sorted(found)
    if open_ones:
        yield from open_range_figures([steel_m for steel_m, _ in heights], open_ones, key, system)
        return
    if not heights:
        return
    for (steel_m, name), (part, label) in zip((heights[0], heights[-1]), PARTS, strict=True):
        text, also = shown(Length, steel_m, 2, system)
        work = worked(
            low_steel_m, inputs=[Input("At", name)], equation=f"the {part} of these places"
        )
        yield figure(
            f"{key}.{part}-steel",
            label,
            Value(text, also, steel_m, "m"),
            work,
            caution=LOADS,
            note=name if name in ("all along", "") else f"at {name.removeprefix('point ')}",
        )


PARTS = (("lowest", "Lowest low steel"), ("highest", "Highest low steel"))


def open_range_figures(
    known_m: Sequence[float], open_ones: Sequence[Open], key: str, system: System
) -> Iterator[Figure]:
    """The lowest and the highest of some heights, of which not all are known. [m]"""
    ends = [both for both, _ in open_ones if both is not None]
    is_bounded = len(ends) == len(open_ones)
    lows = [*known_m, *(low for low, _ in ends)]
    highs = [*known_m, *(high for _, high in ends)]
    lacking = tuple(dict.fromkeys(lacks for _, lacks in open_ones))
    told: tuple[tuple[float | None, float | None], ...] = (
        (min(lows) if is_bounded else None, min(highs, default=None)),
        (max(lows, default=None), max(highs) if is_bounded else None),
    )
    for (least_m, most_m), (part, label) in zip(told, PARTS, strict=True):
        work = worked(low_steel_m, inputs=[], equation=f"the {part} of these places")
        value = one_or_both(steel_value(least_m, system), steel_value(most_m, system))
        name = f"{key}.{part}-steel"
        if value is None:
            yield missing(name, label, work, lacking, caution=LOADS)
        else:
            note = f"not known: {', '.join(lacking)}"
            yield figure(name, label, value, work, caution=LOADS, note=note)


def steel_value(steel_m: float | None, system: System) -> Value | None:
    """A height of the steel; None where nobody knows. [m]"""
    if steel_m is None:
        return None
    return Value(*shown(Length, steel_m, 2, system), steel_m, "m")


def steel_items(whole: Whole, stater: Stater, system: System) -> Iterator[Item]:
    """Beams, zones and points with what they carry."""
    yield from beam_items(whole, stater, system)
    yield from point_group_items(whole, stater, system)
    yield from zone_items(whole, stater, system)
    points = stater.named(whole.rigging.points, "rigging", "point")
    for point, item in zip(whole.points, points, strict=True):
        at = tuple(place_facts(item, point.place, system))
        yield replace(
            item,
            facts=(*item.facts, *at),
            figures=tuple(point_figures(point, whole, item.key, system)),
        )


def beam_items(whole: Whole, stater: Stater, system: System) -> Iterator[Item]:
    """Beams, each with the heights of its steel."""
    beams, groups = whole.rigging.beams, {group.key: group for group in whole.groups}
    for beam, item in zip(beams, stater.named(beams, "rigging", "beam"), strict=True):
        group = groups[f"beam {beam.name}"]
        steel = (
            steel_range(group.points, item.key, system)
            if group.points
            else steel_of_beam(beam, system, item.key)
        )
        by_rule = beam_rule_figures(beam, whole, item.key, system)
        found = (*group_figures(group, whole, item.key, system), *steel, *by_rule)
        standing = stater.of_parts(beam.for_good, f"{item.key}.standing", "Hangs there")
        yield replace(item, facts=(*item.facts, *standing), figures=found)
        for number, station in enumerate(beam.low_steel, 1):
            yield stater.item(station, f"{item.key}.steel-{number}", "low-steel", beam.name)


def point_group_items(whole: Whole, stater: Stater, system: System) -> Iterator[Item]:
    """Points told by a rule, with what one of them has left."""
    rigging = whole.rigging
    named = stater.named(rigging.point_groups, "rigging", "point-group")
    for each, item in zip(groups_by_rule(rigging), named, strict=True):
        yield replace(item, figures=tuple(group_rule_figures(each, whole, item.key, system)))


def zone_items(whole: Whole, stater: Stater, system: System) -> Iterator[Item]:
    """Zones, each with its own limit and the heights of its steel."""
    zones, groups = whole.rigging.told_zones, {group.key: group for group in whole.groups}
    named = stater.named(zones, "rigging", "zone", leave_out=("limit",))
    for zone, item in zip(zones, named, strict=True):
        group = groups[f"zone {zone.name}"]
        yield replace(
            item,
            facts=(*item.facts, *own_limit(item.key, zone)),
            figures=(
                *group_figures(group, whole, item.key, system),
                *steel_range(group.points, item.key, system),
            ),
        )


def own_limit(key: str, zone: Zone) -> Iterator[Fact]:
    """The limit of a zone as it was written, beside the figure of what it may carry."""
    if isinstance(zone.limit, Mass):
        where = place(zone.where("limit"))
        yield Fact(f"{key}.own", "Limit", Standing.STATED, value_of(zone.limit), place=where)


def place_facts(item: Item, place: Overhead, system: System) -> Iterator[Fact]:
    """
    Both coordinates of a point under the same names everywhere: one is its own, the other its
    beam's.
    """
    for name, label, kind, number_m in (
        ("at.across", "Across", Across, place.across_m),
        ("at.depth", "Depth", Depth, place.depth_m),
    ):
        if number_m is None:
            yield Fact(f"{item.key}.{name}", label, Standing.UNKNOWN)
            continue
        own = item.fact(name.removeprefix("at."))
        text, also = (
            (own.value.text, own.value.also)
            if own and own.value
            else shown(kind, number_m, 2, system)
        )
        yield Fact(f"{item.key}.{name}", label, Standing.STATED, Value(text, also, number_m, "m"))


def hang_items(whole: Whole, stater: Stater, system: System) -> Iterator[Item]:
    """Hangs with their supports and loads; bridles."""
    rigging = whole.rigging
    for body, part, item in zip(
        whole.bodies, whole.shares, stater.named(rigging.hung, "rigging", "hang"), strict=True
    ):
        truss = truss_of(body, whole)
        spans = tuple(span_figures(body, truss, item.key, system)) if truss and truss.rows else ()
        trim = trim_figures(body, whole, item.key, system)
        yield replace(
            item,
            figures=(
                weight_figure(body, whole, item.key, system),
                length_figure(body, item.key, system),
                *trim,
                underside_figure(item.key, body, system),
                *spans,
            ),
        )
        yield from support_items(body, part, item.key, whole, stater, system)
        yield from load_items(body, item.key, stater, system)
    for each, item in zip(
        whole.bridles, stater.named(rigging.standing_bridles, "rigging", "bridle"), strict=True
    ):
        yield replace(item, figures=tuple(bridle_figures(each, item.key, system)))
    found = {each.spot.name: each for each in spotted(whole)}
    for wanted, item in zip(
        rigging.wanted_spots,
        stater.named(rigging.wanted_spots, "rigging", "wanted-spot"),
        strict=True,
    ):
        spot = found.get(wanted.name)
        figures = (
            unknown_spot_figures(wanted, item.key)
            if spot is None
            else spot_figures(spot, whole, item.key, system)
        )
        yield replace(item, figures=tuple(figures))
    yield from shares_by_whom(whole, system)


def length_figure(body: Body, key: str, system: System) -> Figure:
    """The length of a hang between its ends."""
    ends, length_m = ends_of_hang(body.hang), body.length_m
    if ends is None or length_m is None:
        work = by_hand(BY_ENDS, "plane geometry", inputs=[])
        lacking = (where_ends_are(body.hang),)
        return missing(f"{key}.length", "Length", work, lacking, caution=LOADS)
    text, also = shown(Length, length_m, 2, system) if length_m else ("one place", "")
    (x1, y1), (x2, y2) = ends
    inputs = [
        Input(f"{name} end, across and depth", f"{x:.2f} m and {y:.2f} m")
        for name, x, y in (("First", x1, y1), ("Last", x2, y2))
    ]
    steps = (f"√(({x2:.2f} − ({x1:.2f}))² + ({y2:.2f} − ({y1:.2f}))²) = {length_m:.2f} m",)
    work = by_hand(BY_ENDS, "plane geometry", inputs=inputs, steps=steps)
    return figure(f"{key}.length", "Length", Value(text, also, length_m, "m"), work, caution=LOADS)


BY_ENDS = "√(Δacross² + Δdepth²)"


def support_items(
    body: Body, part: Shares, key: str, whole: Whole, stater: Stater, system: System
) -> Iterator[Item]:
    """The supports of a hang."""
    for index, support in enumerate(body.supports):
        item = stater.item(support, f"{key}.support-{index + 1}", "support", support.point)
        found = support_figures(body, part, index, item.key, whole, system)
        yield replace(item, figures=tuple(found))


def load_items(body: Body, key: str, stater: Stater, system: System) -> Iterator[Item]:
    """The loads of a hang, those that other departments tell included."""
    for number, each in enumerate(body.hung, 1):
        own = f"{key}.load-{number}"
        facts = (
            hung_by(f"{own}.by", each.by),
            Fact(f"{own}.weight", "Weight", Standing.STATED, mass(each.load.total_kg, system)),
            *(
                Fact(f"{own}.{name}", label, Standing.STATED, length_value(at_m, system))
                for name, label, at_m in ends(each.load)
                if each.placed
            ),
            Fact(f"{own}.place", "Where", Standing.STATED, Value(hung_words(each, system))),
        )
        if each.thing is None:
            yield Item(own, "load", each.what, facts)
        else:
            stated = Value(stated_words(each.thing))
            item = stater.item(each.thing, own, "load", each.what)
            as_stated = Fact(f"{own}.stated", "As stated", Standing.STATED, stated)
            low = item.fact("underside")
            told = (low,) if low and low.standing != Standing.NOT_STATED else ()
            yield replace(item, facts=(*facts, as_stated, *told))


def hung_by(key: str, by: str) -> Fact:
    """Who hung something, or that nobody knows."""
    if by == WHO_UNKNOWN:
        return Fact(key, "Hung by", Standing.UNKNOWN)
    return Fact(key, "Hung by", Standing.STATED, Value(by))


def weight_words(thing: HungThing) -> str:
    """The weight of a load as it was written, with how many there are."""
    weight = as_written(thing.weight)
    if isinstance(thing.count, int):
        return f"{thing.count} × {weight}" if thing.count > 1 else weight
    return f"{as_written(thing.count)} of {weight}"


def stated_words(thing: HungThing) -> str:
    """The weight and the place of a load as they were written."""
    weight = weight_words(thing)
    if thing.at is not None:
        return f"{weight} at {as_written(thing.at)}"
    if thing.from_ is not None and thing.to is not None:
        return f"{weight} from {as_written(thing.from_)} to {as_written(thing.to)}"
    return f"{weight} over the whole length"


def ends(load: Load) -> tuple[tuple[str, str, float], tuple[str, str, float]]:
    """Where a load begins and ends along its hang."""
    from_m, to_m = (
        (load.at_m, load.at_m) if isinstance(load, PointLoad) else (load.from_m, load.to_m)
    )
    return (("from", "From", from_m), ("to", "To", to_m))


HOISTS = "hoists and chain"


def shares_by_whom(whole: Whole, system: System) -> Iterator[Item]:
    """What hangs in the house by who hung it; at least, where a weight is not known."""
    light, heavy = weights_by_whom(whole.lightest), weights_by_whom(whole.heaviest)
    unweighed = dict(each for body in whole.heaviest.bodies for each in body.unweighed)
    unweighed.update(dict(unweighed_bridles(whole.heaviest)))
    adrift = {load.department for load in whole.strangers if load.hang == ""}
    anyone = WHO_UNKNOWN in unweighed or heavy.pop(WHO_UNKNOWN, 0.0) > 0
    unweighed.pop(WHO_UNKNOWN, None)
    nobody_kg = light.pop(WHO_UNKNOWN, 0.0)
    hoists_open = [] if hoists_kg(whole) is not None else [HOISTS]
    names = dict.fromkeys((*heavy, *unweighed, *light, *hoists_open))
    for name, last in zip(names, distinct(names), strict=True):
        key = f"rigging.by.{last}"
        work = worked(
            total_load_kg,
            inputs=[Input("Hangs", str(len(whole.bodies)))],
            equation="sum over all standing hangs, at rest",
        )
        is_open = name in unweighed or name in adrift or (anyone and name != HOISTS)
        most_kg = None if is_open else heavy.get(name)
        least_kg: float | None = light.get(name, 0.0)
        if most_kg is None and least_kg == 0:
            least_kg = None
        value = between(least_kg, most_kg, system)
        if value is None:
            lacking: tuple[str, ...] = ("the weight of each hoist",) if name == HOISTS else ()
            lacking += tuple(
                what for body in whole.bodies for by, what in body.unweighed if by == name
            )
            lacking += tuple(what for by, what in unweighed_bridles(whole) if by == name)
            weight = missing(f"{key}.weight", "Weight", work, lacking, caution=LOADS)
        else:
            weight = figure(f"{key}.weight", "Weight", value, work, caution=LOADS)
        yield Item(key, "by", name, figures=(weight,))
    if anyone:
        yield by_nobody_known(nobody_kg, system)


def by_nobody_known(kg: float, system: System) -> Item:
    """What hangs in the house and nobody knows who hung it: so much at least. [kg]"""
    key = "rigging.by.not-known"
    work = worked(total_load_kg, inputs=[], equation="sum over all standing hangs, at rest")
    if kg > 0:
        weight = figure(f"{key}.weight", "Weight", not_less(mass(kg, system)), work, caution=LOADS)
    else:
        lacking = ("what hangs in the house, and who hung it",)
        weight = missing(f"{key}.weight", "Weight", work, lacking, caution=LOADS)
    return Item(key, "by", NOBODY, figures=(weight,))


def weights_by_whom(whole: Whole) -> dict[str, float]:
    """The weight of what hangs by who hung it, in the order of the hangs, as far as known. [kg]"""
    found: dict[str, float] = {}
    for body in whole.bodies:
        for name, kg in by_whom(body).items():
            found[name] = found.get(name, 0.0) + kg
    for each in whole.bridles:
        name = who(each.bridle.by)
        found[name] = found.get(name, 0.0) + bridle_kg(each)
    if hoists := hoists_kg(whole):
        found[HOISTS] = hoists
    return found


def unweighed_bridles(whole: Whole) -> Iterator[tuple[str, str]]:
    """Who hung a bridle whose load is not known to the full, and what is then missing."""
    for each in whole.bridles:
        if not isinstance(each.bridle.load, Mass):
            yield who(each.bridle.by), f"the load of {each.bridle.name}"
    if is_unknown(whole.rigging.bridles):
        yield WHO_UNKNOWN, "which bridles hang"


def bridle_kg(each: Bridled) -> float:
    """What hangs from a bridle, as far as it is known. [kg]"""
    least, _ = ends_of(each.bridle.load)
    return least.kg if least else 0.0


def stock_items(whole: Whole, stater: Stater, system: System) -> Iterator[Item]:
    """Truss with its table, and hoists; or that there are none."""
    rigging = whole.rigging
    none = {key for key in ("trusses", "hoists") if getattr(rigging, key) is Absent.NONE}
    if none:
        others = tuple(key for key in type(rigging).model_fields if key not in none)
        yield stater.item(rigging, "rigging.whole", "whole", "Hoists and truss", leave_out=others)
    for truss, item in zip(
        listed(rigging.trusses),
        stater.named(listed(rigging.trusses), "rigging", "truss"),
        strict=True,
    ):
        yield replace(item, figures=tuple(truss_figures(truss, whole, item.key, system)))
        for number, row in enumerate(truss.rows, 1):
            yield stater.item(row, f"{item.key}.row-{number}", "truss-row", truss.name)
    for hoist, item in zip(
        listed(rigging.hoists),
        stater.named(listed(rigging.hoists), "rigging", "hoist"),
        strict=True,
    ):
        yield replace(item, figures=tuple(hoist_figures(hoist, rigging, item.key)))
    yield from stater.named(rigging.steels, "rigging", "steel")
