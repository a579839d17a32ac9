"""
The way in, computed: the tightest opening of each route, unloading times, what a forklift may lift
further out.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.cautions import TRAFFIC
from builder.departments.access.description import Dock, Passage, Route, Vehicle
from builder.formulas.route import (
    Least,
    Opening,
    forklift_capacity_kg,
    on_the_way,
    tightest,
    unloading_min,
)
from builder.pack import Figure, Input, Value, one_or_both
from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Duration, Length, Mass, Quantity
from builder.working import by_hand, figure, missing, worked

TRUCKS = (1, 2, 4)
"""
The truck counts that unloading times are told for: a club act, a theatre act, a larger one. Common
practice, no source.
"""


BED_M = (0.9, 1.4)
"""
The heights between which a dock is level enough with a truck's bed. Common practice, no source. [m]
"""

Met = tuple[int, int | None]
"""How many of something there are at least and at most; None where nobody knows the most."""


@dataclass(frozen=True, slots=True)
class Limit:
    """
    One way in which a route can be tight: the figure's name and label, its kind, the key that
    states it, and the formula's name for it.
    """

    name: str
    label: str
    kind: type[Quantity]
    key: str
    formula_key: str


@dataclass(frozen=True, slots=True)
class Gate:
    """Something to pass on the way in: a passage of a route, or the door of its dock."""

    name: str
    width: Length | Absent
    height: Length | Absent
    weight_limit: Mass | Absent
    line: Passage | Dock | Route


LIMITS = (
    Limit("tightest_width", "Narrowest opening", Length, "width", "width_m"),
    Limit("tightest_height", "Lowest opening", Length, "height", "height_m"),
    Limit("tightest_weight", "Least weight limit", Mass, "weight_limit", "carries_kg"),
)


def route_figures(key: str, route: Route, dock: Dock | None, system: System) -> Iterator[Figure]:
    """
    The tightest opening of a route in width, height and weight, each with the place that has it.

    The door of its dock is the first of them.
    """
    gates = gates_of(route, dock)
    narrow, wide = (tightest([opening(gate, end) for gate in gates]) for end in (0, 1))
    for limit in LIMITS:
        ends = (getattr(narrow, limit.formula_key), getattr(wide, limit.formula_key))
        yield limit_figure(f"{key}.{limit.name}", limit, gates, ends, system)
    for name, label, counted in (("steps", "Steps", steps_of), ("lifts", "Lifts", lifts_of)):
        if is_unknown(route.passages):
            nothing = worked(on_the_way, inputs=())
            yield missing(f"{key}.{name}", label, nothing, ["passages"], caution=TRAFFIC)
        else:
            met = [(passage, counted(passage)) for passage in listed(route.passages)]
            yield met_figure(f"{key}.{name}", label, met)


def steps_of(passage: Passage) -> Met:
    """How many steps a passage has at least and at most; without a word it has none."""
    if passage.steps is None:
        return 0, 0
    least, most = ends_of(passage.steps)
    return least or 0, most


def lifts_of(passage: Passage) -> Met:
    """Whether a passage is a lift, as a count; without a word it is none."""
    if isinstance(passage.lift, Absent):
        return 0, 1
    return int(bool(passage.lift)), int(bool(passage.lift))


def met_figure(key: str, label: str, met: Sequence[tuple[Passage, Met]]) -> Figure:
    """How many steps or lifts one meets on a route at least and at most, and where."""
    there = [(passage, ends) for passage, ends in met if ends != (0, 0)]
    working = worked(
        on_the_way,
        inputs=[Input(passage.name, count_words(ends)) for passage, ends in met]
        or [Input("Passages", "none")],
        leaves_out="Thresholds, and what stands between the truck and the dock.",
        lines=[passage for passage, _ in met],
    )
    most = [ends[1] for _, ends in met if ends[1] is not None]
    least_value = count_value(on_the_way([ends[0] for _, ends in met]))
    most_value = count_value(on_the_way(most)) if len(most) == len(met) else None
    value = one_or_both(least_value, most_value) or least_value
    note = "; ".join(passage.name for passage, _ in there)
    return figure(key, label, value, working, caution=TRAFFIC, note=note)


def count_words(ends: Met) -> str:
    """How many there are, in words."""
    least, most = ends
    if most is None:
        return "unknown" if least == 0 else f"at least {least}"
    return str(least) if least == most else f"{least} to {most}"


def count_value(count: int) -> Value:
    """A count as a value."""
    return Value(str(count), "", float(count), "")


def gates_of(route: Route, dock: Dock | None) -> tuple[Gate, ...]:
    """What all that comes by a route has to pass, in order: the door of its dock, its passages."""
    door = (
        ()
        if dock is None
        else (Gate(f"{dock.name}: door", dock.door_width, dock.door_height, Absent.NONE, dock),)
    )
    if is_unknown(route.passages):
        lost = Absent.UNKNOWN
        return (*door, Gate(f"what one passes on {route.name}", lost, lost, lost, route))
    passages = (
        Gate(passage.name, passage.width, passage.height, passage.weight_limit, passage)
        for passage in listed(route.passages)
    )
    return (*door, *passages)


def limit_figure(
    key: str,
    limit: Limit,
    gates: Sequence[Gate],
    ends: tuple[Least | None, Least | None],
    system: System,
) -> Figure:
    """
    One tightest opening, at its narrowest and at its widest; at most, where nobody has said one of
    them. What says nothing of a weight is taken to carry what comes.

    Where some say nothing, the note names them: the true least may be there.
    """
    narrow, least = ends
    stated = [(gate.name, getattr(gate, limit.key)) for gate in gates if can_limit(gate, limit)]
    inputs = [Input(name, as_written(value)) for name, value in stated]
    working = worked(
        tightest,
        inputs=inputs,
        leaves_out="What stands in the way on the day, and turns that long things must make.",
        lines=[gate.line for gate in gates],
    )
    if least is None and all(value is Absent.NONE for _, value in stated):
        return figure(key, limit.label, Value("no limit"), working, caution=TRAFFIC)
    if least is None:
        return missing(key, limit.label, working, [limit.key.replace("_", " ")], caution=TRAFFIC)
    silent = [name for name, value in stated if value is Absent.NOT_STATED or is_unknown(value)]
    note = least.place + (
        f"; not stated for {', '.join(silent)}" if silent and limit.kind is Length else ""
    )
    is_open = any(may_be_tighter(value, limit) for _, value in stated)
    value = one_or_both(
        None if is_open or narrow is None else value_at(narrow, limit, system),
        value_at(least, limit, system),
    )
    if value is None:
        return missing(key, limit.label, working, [limit.key.replace("_", " ")], caution=TRAFFIC)
    return figure(key, limit.label, value, working, caution=TRAFFIC, note=note)


def can_limit(gate: Gate, limit: Limit) -> bool:
    """Whether something to pass has a limit of a kind: the door of a dock carries nothing."""
    return limit.kind is Length or not isinstance(gate.line, Dock)


def may_be_tighter(value: Length | Mass | Absent, limit: Limit) -> bool:
    """Whether nobody has said how tight something is at least."""
    if value is Absent.NOT_STATED:
        return limit.kind is Length
    return is_unknown(value) and ends_of(value)[0] is None


def value_at(least: Least, limit: Limit, system: System) -> Value:
    """The tightest opening of one reading as a value."""
    return Value(*shown(limit.kind, least.value, system=system), least.value, limit.kind.si_unit)


def opening(gate: Gate, end: int) -> Opening:
    """Something to pass as the formula takes it, at its narrowest (0) or its widest (1)."""
    width = ends_of(gate.width)[end]
    height = ends_of(gate.height)[end]
    weight = ends_of(gate.weight_limit)[end]
    return Opening(
        gate.name,
        None if width is None else width.m,
        None if height is None else height.m,
        None if weight is None else weight.kg,
    )


def truck_high(key: str, dock: Dock) -> Figure:
    """Whether a dock lies at the height of a truck's bed, so that cases roll off level."""
    low_m, high_m = BED_M
    work = by_hand(
        f"yes from {low_m:g} m to {high_m:g} m above the road",
        "comparing heights",
        inputs=[Input("Height", as_written(dock.height), f"{key}.height")],
        steps=["Levellers are not counted, nor trucks whose bed is lower or higher."],
    )
    name, label = f"{key}.truck-high", "At the height of a truck's bed"
    if dock.height is Absent.NONE:
        return figure(name, label, Value("no"), work, caution=TRAFFIC)
    least, most = (None if end is None else end.m for end in ends_of(dock.height))
    if least is not None and most is not None and low_m <= least and most <= high_m:
        return figure(name, label, Value("yes"), work, caution=TRAFFIC)
    if (most is not None and most < low_m) or (least is not None and least > high_m):
        return figure(name, label, Value("no"), work, caution=TRAFFIC)
    return missing(name, label, work, ["the dock's height"], caution=TRAFFIC)


def dock_figures(key: str, dock: Dock) -> Iterator[Figure]:
    """Whether it is at truck height, and how long it takes to unload one, two and four trucks."""
    yield truck_high(key, dock)
    for trucks in TRUCKS:
        label = f"Unloading {trucks} truck{'' if trucks == 1 else 's'}"
        inputs = [
            Input("trucks", str(trucks)),
            Input("docks", as_written(dock.trucks_at_once)),
            Input("minutes", as_written(dock.truck_takes)),
        ]
        leaves_out = "Crew size, what is in the truck, and waiting for the approach."
        working = worked(unloading_min, inputs=inputs, leaves_out=leaves_out)
        if (
            isinstance(dock.trucks_at_once, Absent)
            or isinstance(dock.truck_takes, Absent)
            or not dock.trucks_at_once
        ):
            needed = [
                ("trucks at once", dock.trucks_at_once),
                ("time a truck takes", dock.truck_takes),
            ]
            yield missing(
                f"{key}.unload_{trucks}", label, working, lacking(needed), caution=TRAFFIC
            )
            continue
        each_min = dock.truck_takes.s / 60
        total_min = unloading_min(
            trucks=trucks, docks_at_once=dock.trucks_at_once, minutes_per_truck=each_min
        )
        steps = [
            f"t = ceil({trucks} / {dock.trucks_at_once}) × {each_min:g} min = {total_min:g} min"
        ]
        working = worked(unloading_min, inputs=inputs, steps=steps, leaves_out=leaves_out)
        yield figure(
            f"{key}.unload_{trucks}",
            label,
            Value(*shown(Duration, total_min * 60), total_min * 60, "s"),
            working,
            caution=TRAFFIC,
        )


def lacking(needed: Sequence[tuple[str, object]]) -> list[str]:
    """
    Of what a figure needs, the names of what is not there, so that nobody is asked for what the
    house wrote.
    """
    return [name for name, value in needed if isinstance(value, Absent) or value == 0]


def forklift_figures(key: str, vehicle: Vehicle, system: System) -> Iterator[Figure]:
    """What the forklift may lift when the load's centre lies at the ends of its forks."""
    if vehicle.kind not in ("forklift", "telehandler"):
        return
    label = "Capacity with the load's centre at the fork ends"
    inputs = [
        Input("C_rated", as_written(vehicle.capacity)),
        Input("LC_rated", as_written(vehicle.load_centre)),
        Input("LC (fork length)", as_written(vehicle.fork_length)),
    ]
    leaves_out = "Lift height, attachments and slope. The plate on the machine decides."
    if (
        isinstance(vehicle.capacity, Absent)
        or isinstance(vehicle.load_centre, Absent)
        or isinstance(vehicle.fork_length, Absent)
    ):
        working = worked(forklift_capacity_kg, inputs=inputs, leaves_out=leaves_out)
        needed = [
            ("capacity", vehicle.capacity),
            ("load centre", vehicle.load_centre),
            ("fork length", vehicle.fork_length),
        ]
        yield missing(
            f"{key}.capacity_at_fork_end", label, working, lacking(needed), caution=TRAFFIC
        )
        return
    rated_kg, rated_m, centre_m = vehicle.capacity.kg, vehicle.load_centre.m, vehicle.fork_length.m
    capacity_kg = forklift_capacity_kg(
        rated_kg=rated_kg, rated_centre_m=rated_m, load_centre_m=centre_m
    )
    steps = [f"C = {rated_kg:g} kg × {rated_m:g} m / {centre_m:g} m = {capacity_kg:.0f} kg"]
    working = worked(forklift_capacity_kg, inputs=inputs, steps=steps, leaves_out=leaves_out)
    value = Value(*shown(Mass, capacity_kg, 0, system), round(capacity_kg, 3), "kg")
    yield figure(f"{key}.capacity_at_fork_end", label, value, working, caution=TRAFFIC)
