"""
Outlets that are there, and how many of them can be loaded fully: in use alone, and all places at
the same time.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from builder.cautions import ELECTRICITY
from builder.departments.power.amounts import ampere, kilovolt_ampere
from builder.departments.power.circuits.open_limits import open_limits
from builder.departments.power.circuits.sources import capacity
from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Outlet, Power, ShoreOutlet
from builder.departments.power.outlets.choosing import InAllTurning, PartTurning, counted_outlets
from builder.formulas.circuits import Node, Standing, limit_a
from builder.formulas.free_circuits import FreeAtOnce, free_at_once
from builder.formulas.free_circuits import Outlet as Row
from builder.formulas.phasors import PHASES
from builder.pack import Fact, Figure, Input, Item, Value, not_less, not_more, turned_by
from builder.pack import Standing as Said
from builder.reading.absent import Absent, is_unknown
from builder.reading.addresses import distinct
from builder.reading.quantities import Current
from builder.reading.standing_on import CLOSED
from builder.working import figure, missing, worked

LEAVES_OUT = (
    "Leads longer than the house's, inrush, and what visitors draw beyond an outlet's rating."
    " Currents are added as sizes, whatever their angles."
)


@dataclass(frozen=True, slots=True)
class Group:
    """
    Outlets of one connector at one place, with the rows that the formulas count; ``lacking`` tells
    why they cannot be counted.
    """

    place: str
    connector: str
    outlets: tuple[Outlet, ...]
    rows: tuple[Row, ...]
    lacking: tuple[str, ...]

    @property
    def there(self) -> int | None:
        """How many there are that visitors may use; None where nobody has counted some of them."""
        return count_of(self.outlets)

    @property
    def name(self) -> str:
        """Its name on a page."""
        return f"{self.place}: {self.connector}"


def count_of(outlets: Sequence[Outlet]) -> int | None:
    """How many outlets some lines tell; None where nobody has counted those of one line."""
    counts = [outlet.count for outlet in outlets if isinstance(outlet.count, int)]
    return sum(counts) if len(counts) == len(outlets) else None


def usable(power: Power) -> tuple[Outlet, ...]:
    """Outlets that work and that visitors may use, shore power included."""
    every: tuple[Outlet, ...] = (*power.outlets, *power.shore_outlets)
    return tuple(
        outlet
        for outlet in every
        if outlet.condition != "out of service" and outlet.terms != "not for visitors"
    )


def groups_of(power: Power, network: Network) -> tuple[Group, ...]:
    """Usable outlets by place and connector, in the author's order."""
    found: dict[tuple[str, str], list[Outlet]] = {}
    for outlet in usable(power):
        found.setdefault((outlet.place, outlet.connector), []).append(outlet)
    return tuple(
        group(place, connector, tuple(outlets), network)
        for (place, connector), outlets in found.items()
    )


def group(place: str, connector: str, outlets: tuple[Outlet, ...], network: Network) -> Group:
    """One group with its rows, or with what is missing."""
    rows: list[Row] = []
    lacking: list[str] = []
    for number, outlet in enumerate(outlets, 1):
        why = why_not_counted(outlet, network)
        lacking += why
        if not why:
            rows += rows_of(
                outlet,
                f"{place}: {connector}{f', line {number}' if len(outlets) > 1 else ''}",
                network,
            )
    return Group(
        place, connector, outlets, () if lacking else tuple(rows), tuple(dict.fromkeys(lacking))
    )


def why_not_counted(outlet: Outlet, network: Network) -> list[str]:
    """What is missing before an outlet can be counted."""
    found = [*network.lacking_above(outlet.fed_from), *unsaid_terms(outlet, network)]
    if isinstance(outlet.rating, Absent):
        found.append("the outlet's rating")
    if isinstance(outlet.count, Absent):
        found.append("how many outlets there are")
    if isinstance(outlet.phases, Absent) and len(network.sources[outlet.fed_from].phases) > 1:
        found.append("the outlet's phases")
    return found


def unsaid_terms(outlet: Outlet, network: Network) -> list[str]:
    """
    That nobody says whether an outlet is for visitors where what feeds it is not; nothing where its
    own line, or one that is nearer, has terms.
    """
    if outlet.terms:
        return []
    for name in network.tree.path[outlet.fed_from]:
        terms = network.sources[name].record.terms
        if terms:
            return [f"the outlet's terms, for {name} is {CLOSED}"] if terms == CLOSED else []
    return []


def phases_of(outlet: Outlet, network: Network) -> tuple[str, ...]:
    """The phases of each outlet; for outlets in turn those they take turns on."""
    wired = network.sources[outlet.fed_from].phases
    return (
        wired
        if isinstance(outlet.phases, Absent) or not outlet.phases.names
        else outlet.phases.names
    )


def hours_figure(item: Item, outlet: Outlet, network: Network) -> Figure:
    """What one outlet may carry on each of its phases for hours on end."""
    key, label = f"{item.key}.for-hours", "For hours on end"
    source = network.sources[outlet.fed_from]
    if isinstance(outlet.rating, Absent):
        return missing(key, label, worked(limit_a, inputs=()), ["its rating"], caution=ELECTRICITY)
    breaker_a = outlet.breaker.a if isinstance(outlet.breaker, Current) else None
    node = Node(item.name, None, outlet.rating.a, breaker_a, continuous_share=source.share)
    hours_a = max(limit_a(node))
    least_a = outlet.rating.a if breaker_a is None else min(outlet.rating.a, breaker_a)
    inputs = [
        Input("Rating", outlet.rating.text),
        *([Input("Breaker", outlet.breaker.text)] if isinstance(outlet.breaker, Current) else []),
        Input(f"Continuous share of {source.name}", f"{source.share * 100:.4g} %"),
    ]
    steps = [f"{least_a:.4g} A × {source.share * 100:.4g} % = {hours_a:.4g} A"]
    value = ampere(hours_a)
    return figure(
        key,
        label,
        not_more(value) if is_unknown(outlet.breaker) or not source.share_said else value,
        worked(limit_a, inputs=inputs, steps=steps),
        caution=ELECTRICITY,
        note="its breaker is not known" if is_unknown(outlet.breaker) else "",
    )


def rows_of(outlet: Outlet, name: str, network: Network) -> Iterator[Row]:
    """
    An outlet as the formulas count it: at its rating times the share that its service may use for
    hours.
    """
    if isinstance(outlet.rating, Absent) or isinstance(outlet.count, Absent):
        return
    source = network.sources[outlet.fed_from]
    phases = phases_of(outlet, network)
    row = Row(
        name,
        outlet.fed_from,
        phases,
        outlet.rating.a * source.share,
        outlet.count,
        outlet.connector,
    )
    if isinstance(outlet.breaker, Current):
        row = replace(row, breaker_a=outlet.breaker.a)
    if not (isinstance(outlet.phases, str) and outlet.phases.in_turn):
        yield row
        return
    for index, phase in enumerate(phases):
        count = outlet.count // len(phases) + (index < outlet.count % len(phases))
        if count:
            yield replace(row, name=f"{name} {phase}", phases=(phase,), count=count)


@dataclass(frozen=True, slots=True)
class Availability:
    """
    Groups of outlets with the answer for all places at the same time, and how many hold in all
    where every load of unknown size is as large as it can be.
    """

    groups: tuple[Group, ...]
    at_once: FreeAtOnce
    fewest: int

    @property
    def is_settled(self) -> bool:
        """Whether the choice is the one there is: every outlet and every load is known."""
        known = not any(each.lacking or breaker_open(each.outlets) for each in self.groups)
        return known and self.fewest == self.at_once.outlets


def breaker_open(outlets: Iterable[Outlet]) -> bool:
    """Whether nobody knows the breaker of an outlet's own way, which may be the least."""
    return any(is_unknown(outlet.breaker) for outlet in outlets)


def fewest_at_once(found: FreeAtOnce, rows: Sequence[Row], network: Network) -> int:
    """How many hold with every load of unknown size as large as its feed lets through."""
    if not network.fullest:
        return found.outlets
    return free_at_once(network.nodes, [*network.loads, *network.fullest], rows).outlets


def availability(power: Power, network: Network) -> Availability:
    """All groups, and one best choice for the whole house at the same time."""
    groups = groups_of(power, network)
    rows = [row for each in groups for row in each.rows]
    found = free_at_once(network.nodes, network.loads, rows)
    shared = replace(found, taken=shared_out(dict(found.taken), rows))
    return Availability(groups, shared, fewest_at_once(found, rows, network))


def shared_out(taken: dict[str, int], rows: Sequence[Row]) -> tuple[tuple[str, int], ...]:
    """
    The same choice, handed round among the places.

    Outlets of one rating on the same phases of the same board may stand in for each other: every
    limit sees the same current.
    """
    alike: dict[tuple[str, tuple[str, ...], float, float | None], list[Row]] = {}
    for row in rows:
        alike.setdefault((row.node, row.phases, row.ampere_a, row.breaker_a), []).append(row)
    given = dict.fromkeys((row.name for row in rows), 0)
    for same in alike.values():
        left = sum(taken[row.name] for row in same)
        while left:
            for row in same:
                if left and given[row.name] < row.count:
                    given[row.name] += 1
                    left -= 1
    return tuple(given.items())


def available_items(power: Power, network: Network) -> Iterator[Item]:
    """One item for each place and connector, and one for the house."""
    found = availability(power, network)
    taken = dict(found.at_once.taken)
    keys = distinct(each.name for each in found.groups)
    for each, last in zip(found.groups, keys, strict=True):
        at_once = sum(taken.get(row.name, 0) for row in each.rows)
        yield group_item(f"power.available.{last}", each, at_once, found, network)
    if found.groups:
        yield house_item(found, network)


def group_item(key: str, each: Group, at_once: int, whole: Availability, network: Network) -> Item:
    """Outlets of one connector at one place: there, alone, at the same time."""
    facts = tuple(
        Fact(f"{key}.{name}", label, Said.STATED if value else Said.UNKNOWN, value)
        for name, label, value in (
            ("place", "Place", Value(each.place)),
            ("connector", "Connector", Value(each.connector)),
            (
                "fed_from",
                "Fed from",
                Value(", ".join(dict.fromkeys(outlet.fed_from for outlet in each.outlets))),
            ),
            ("there", "There", counted_there(each.there)),
        )
    )
    return Item(
        key,
        "available",
        each.name,
        facts,
        figures=tuple(group_figures(key, each, at_once, whole, network)),
    )


def counted_there(there: int | None) -> Value | None:
    """How many outlets there are, as a value; None where nobody has counted them."""
    return None if there is None else Value(f"{there:,}", number=float(there))


def group_figures(
    key: str, each: Group, at_once: int, whole: Availability, network: Network
) -> Iterator[Figure]:
    """
    How many can be loaded fully: alone, and with all other places in use. Where something of the
    house's outlets or loads is not known, another choice may be the best: with all others in use it
    is then told as no more than alone.
    """
    labels = (("alone", "In use alone"), ("at-once", "All places at the same time"))
    if each.lacking:
        for name, label in labels:
            yield missing(
                f"{key}.{name}",
                label,
                worked(free_at_once, inputs=()),
                each.lacking,
                caution=ELECTRICITY,
            )
        return
    alone = free_at_once(network.nodes, network.loads, each.rows)
    rows_elsewhere = [row for group in whole.groups if group is not each for row in group.rows]
    turning = PartTurning(
        alone,
        whole.at_once,
        lambda: free_at_once(network.nodes, network.loads, rows_elsewhere),
    )
    fewest = fewest_at_once(alone, each.rows, network)
    is_open = breaker_open(each.outlets)
    here = counted(alone.outlets, fewest, each.rows, network, is_open=is_open)
    shared = here if is_open else counted(at_once, at_once, each.rows, network)
    if not whole.is_settled:
        shared = counted(alone.at_most, 0, each.rows, network)
    for (name, label), number, result, value in zip(
        labels, (alone.outlets, at_once), (alone, whole.at_once), (here, shared), strict=True
    ):
        working = worked(
            free_at_once,
            inputs=row_inputs(each.rows),
            steps=steps(each, number, result, network),
            leaves_out=LEAVES_OUT,
        )
        note = "" if result.proven else "the most that was found; more may be possible"
        found = figure(f"{key}.{name}", label, value, working, caution=ELECTRICITY, note=note)
        is_choice = name == "at-once" and value.number is not None
        yield turned_by(found, turning) if is_choice else found


def row_inputs(rows: Sequence[Row]) -> list[Input]:
    """Rows of outlets as inputs."""
    return [
        Input(
            row.name,
            f"{row.count} on {' '.join(row.phases)} of {row.node}, {row.ampere_a:.4g} A each at"
            " full load",
        )
        for row in rows
    ]


def steps(each: Group, number: int, result: FreeAtOnce, network: Network) -> list[str]:
    """What each service leaves them, and what came out."""
    nodes = dict.fromkeys(row.node for row in each.rows)
    left = [
        f"{node} leaves {free_words(network.standing[node], network.sources[node].phases)}"
        for node in nodes
    ]
    above = [row.name for row in each.rows if row.name in result.above_breaker]
    refused = [
        f"{name}: a breaker is smaller than one outlet at full load, so none counts"
        for name in above
    ]
    return [
        *left,
        *refused,
        f"{number} of {each.there} can be loaded fully{'' if result.proven else ' at least'}",
    ]


def free_words(stands: Standing, phases: Sequence[str]) -> str:
    """What is free on each phase, in words."""
    return ", ".join(
        f"{phase} {max(0.0, stands.free_a[PHASES.index(phase)]):.4g} A" for phase in phases
    )


def counted(
    number: int,
    fewest: int,
    rows: Sequence[Row],
    network: Network,
    *,
    of: str = "",
    is_open: bool = False,
) -> Value:
    """
    A count of outlets; no more than it where somewhere above them a limit or a continuous share is
    open, and from ``fewest`` to it where loads of unknown size may take from it.
    """
    value = counted_outlets(number, of)
    is_open = is_open or any(open_limits(row.node, network) for row in rows)
    if number > 0 and is_open:
        return not_more(value)
    return value if fewest >= number else not_more(value, float(fewest))


def house_item(found: Availability, network: Network) -> Item:
    """All outlets of the house at the same time."""
    key, whole = "power.available-in-all", found.at_once
    there = count_of([outlet for each in found.groups for outlet in each.outlets])
    of = "" if there is None else f" of {there:,}"
    left_out = [each.name for each in found.groups if each.lacking]
    rows = [row for each in found.groups for row in each.rows]
    steps_in_words = [f"{name}: {count}" for name, count in whole.taken if count]
    proof = (
        "no choice gives more"
        if whole.proven
        else f"at least; no choice gives more than {whole.at_most}"
    )
    working = worked(
        free_at_once,
        inputs=row_inputs(rows),
        steps=[*steps_in_words, proof],
    )
    notes = [f"not counted: {'; '.join(left_out)}"] if left_out else []
    if not whole.proven:
        notes.append(
            "so many were found to hold at once; the search ended before it could rule out"
            f" {whole.at_most}"
        )
    note = "; ".join(notes)
    label = "Outlets at the same time"
    is_open = any(breaker_open(each.outlets) for each in found.groups)
    value = counted(whole.outlets, found.fewest, rows, network, of=of, is_open=is_open)
    at_once = figure(f"{key}.at-once", label, value, working, caution=ELECTRICITY, note=note)
    if left_out:
        at_once = with_uncounted(at_once, found, of)
    elif value.number is not None:
        at_once = turned_by(at_once, InAllTurning(whole, of))
    return Item(key, "available-in-all", "All outlets", figures=(at_once,))


def with_uncounted(at_once: Figure, found: Availability, of: str) -> Figure:
    """
    The count where some places cannot be counted: at least so many, with every load as large as it
    can be; missing where a limit is open too, so that neither end is known.
    """
    value = at_once.value
    if value is None or (value.number is None and value.least is None):
        lacking = dict.fromkeys(why for each in found.groups for why in each.lacking)
        return replace(at_once, value=None, missing=tuple(lacking))
    return replace(at_once, value=not_less(counted_outlets(found.fewest, of)))


def shore_capacity(item: Item, outlet: ShoreOutlet, network: Network) -> tuple[Figure, ...]:
    """Apparent power of one shore outlet."""
    source = network.sources[outlet.fed_from]
    phases = phases_of(outlet, network)
    lines = 1 if isinstance(outlet.phases, str) and outlet.phases.in_turn else len(phases)
    key, label = f"{item.key}.capacity", "Capacity of each"
    found = (
        capacity(outlet.rating.a, source.voltages, lines)
        if isinstance(outlet.rating, Current) and source.voltages
        else None
    )
    if found is None:
        lacking = (
            ["its rating"] if isinstance(outlet.rating, Absent) else ["the voltages of its source"]
        )
        return (missing(key, label, worked(free_at_once, inputs=()), lacking, caution=ELECTRICITY),)
    kva, formula, step = found
    inputs = [
        Input("Rating", outlet.rating.text if isinstance(outlet.rating, Current) else ""),
        Input("System", str(source.system)),
    ]
    return (
        figure(
            key,
            label,
            kilovolt_ampere(kva),
            worked(formula, inputs=inputs, steps=[step]),
            caution=ELECTRICITY,
        ),
    )
