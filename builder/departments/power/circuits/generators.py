"""Generators: rating on site, load share by the house's own loads, fuel."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import fsum

from builder.cautions import ELECTRICITY
from builder.departments.power.amounts import kilovolt_ampere, percent
from builder.departments.power.circuits.derating import derating, site_kva
from builder.departments.power.circuits.open_limits import not_taken_off
from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Generator
from builder.formulas.generators import (
    Consumption,
    GeneratorLoading,
    derating_factor,
    fuel_l,
    generator_loading,
    site_rating_kva,
)
from builder.pack import Figure, Input, Item, Value, not_less, not_more
from builder.reading.absent import Absent
from builder.reading.measures import shown
from builder.reading.quantities import Volume
from builder.working import figure, missing, worked

LOADING_LEAVES_OUT = (
    "Loads of shows, starting currents, and harmonics, which a machine's alternator may not like."
)


@dataclass(frozen=True, slots=True)
class Standing:
    """What the house's own loads ask of a generator."""

    kva: float
    kw: float


def standing_on(name: str, network: Network) -> Standing:
    """Apparent and active power on a generator, by the sum of sizes."""
    below = network.below(name)
    return Standing(fsum(each.kva for each in below), fsum(each.kw for each in below))


def loading(generator: Generator, network: Network) -> GeneratorLoading | list[str]:
    """Share of its rating that the house's own loads take, or what is missing."""
    site = site_kva(generator)
    lacking = [] if site else ["its rating on site"]
    lacking += [] if isinstance(generator.rated_power_factor, float) else ["its rated power factor"]
    if site is None or not isinstance(generator.rated_power_factor, float):
        return lacking
    stands = standing_on(generator.name, network)
    return generator_loading(
        load_kva=stands.kva,
        load_kw=stands.kw,
        site_kva=site,
        rated_power_factor=generator.rated_power_factor,
    )


def generator_figures(item: Item, generator: Generator, network: Network) -> tuple[Figure, ...]:
    """Rating on site, load share, fuel and running time."""
    return (
        site_figure(item, generator),
        load_figure(item, generator, network),
        *fuel_figures(item, generator, network),
    )


def site_figure(item: Item, generator: Generator) -> Figure:
    """Prime rating times what height and heat leave of it."""
    key, label = f"{item.key}.site-rating", "Rating on site"
    factors, site = derating(generator), site_kva(generator)
    if factors is None or site is None or isinstance(generator.prime, Absent):
        lacking = (
            ["its prime rating"]
            if isinstance(generator.prime, Absent)
            else ["a height and air temperature at which it still runs"]
        )
        return missing(
            key,
            label,
            worked(site_rating_kva, derating_factor, inputs=()),
            lacking,
            caution=ELECTRICITY,
        )
    words = " × ".join(f"{factor:.4g}" for _, factor in factors)
    steps = [
        (
            f"{generator.prime.kva:.4g} kVA × {words} = {site:.4g} kVA"
            if words
            else f"{site:.4g} kVA: nothing is taken off"
        )
    ]
    inputs = [
        Input("Prime rating", generator.prime.text),
        *(Input(f"Left {name}", f"{factor:.4g}") for name, factor in factors),
    ]
    lacking = [*not_taken_off(generator)]
    note = f"no derating by {' or '.join(lacking)} is stated" if lacking else ""
    value = kilovolt_ampere(site)
    return figure(
        key,
        label,
        not_more(value) if lacking else value,
        worked(site_rating_kva, derating_factor, inputs=inputs, steps=steps),
        caution=ELECTRICITY,
        note=note,
    )


def load_figure(item: Item, generator: Generator, network: Network) -> Figure:
    """How far the house's own loads take it."""
    key, label = f"{item.key}.load-share", "Load by the house's own"
    found, stands = loading(generator, network), standing_on(generator.name, network)
    inputs = [Input("Standing loads", f"{stands.kva:.4g} kVA, {stands.kw:.4g} kW")]
    if isinstance(found, list):
        return missing(
            key, label, worked(generator_loading, inputs=inputs), found, caution=ELECTRICITY
        )
    steps = [
        f"by kVA {found.apparent_share * 100:.3g} %, by kW {found.active_share * 100:.3g} %: the"
        " larger counts"
    ]
    working = worked(generator_loading, inputs=inputs, steps=steps, leaves_out=LOADING_LEAVES_OUT)
    lacking = [*not_taken_off(generator)]
    value = percent(found.share * 100)
    notes = [f"no derating by {' or '.join(lacking)} is stated"] if lacking else []
    notes += unmeasured_note(generator.name, network)
    note = "; ".join(notes)
    return figure(
        key, label, not_less(value) if notes else value, working, caution=ELECTRICITY, note=note
    )


def unmeasured_note(name: str, network: Network) -> list[str]:
    """That loads of unknown size still come on top, as a note; empty where there are none."""
    loads = network.unmeasured_below(name)
    return [f"and what {', '.join(loads)} draws, which is not known"] if loads else []


def fuel_figures(item: Item, generator: Generator, network: Network) -> Iterator[Figure]:
    """Fuel in an hour at the house's own load, and how long the tank lasts."""
    if not generator.burns:
        return
    key, label = f"{item.key}.fuel", "Fuel in an hour, house loads alone"
    points = [Consumption(burn.load.share, burn.in_one_hour.l) for burn in generator.burns]
    inputs = [
        Input(f"At {burn.load.text}", f"{burn.in_one_hour.text} an hour")
        for burn in generator.burns
    ]
    share = share_of_prime(generator, network)
    try:
        litres = fuel_l(stated=points, load_share=share, hours=1.0) if share is not None else None
    except ValueError:
        litres = None
    if litres is None or share is None:
        why = (
            "its load share" if share is None else f"the maker's consumption at {share * 100:.3g} %"
        )
        yield missing(key, label, worked(fuel_l, inputs=inputs), [why], caution=ELECTRICITY)
        return
    steps = [f"at {share * 100:.3g} % of the prime rating: {litres:.3g} l in one hour"]
    text, also = shown(Volume, litres / 1000)
    working = worked(fuel_l, inputs=inputs, steps=steps)
    burnt = Value(text, also, litres / 1000, "m3")
    more = unmeasured_note(generator.name, network)
    note = "; ".join(more)
    value = not_less(burnt) if more else burnt
    yield figure(key, label, value, working, caution=ELECTRICITY, note=note)
    if not isinstance(generator.tank, Absent) and litres > 0:
        hours = generator.tank.l / litres
        steps = [*steps, f"{generator.tank.text} / {litres:.3g} l an hour = {hours:.3g} h"]
        working = worked(fuel_l, inputs=[*inputs, Input("Tank", generator.tank.text)], steps=steps)
        lasts = Value(f"{hours:.3g} h", "", hours * 3600, "s")
        yield figure(
            f"{item.key}.runs-for",
            "A full tank lasts",
            not_more(lasts) if more else lasts,
            working,
            caution=ELECTRICITY,
            note=note,
        )


def share_of_prime(generator: Generator, network: Network) -> float | None:
    """Active power as a share of the prime rating's: the base of makers' consumption figures."""
    if isinstance(generator.prime, Absent) or not isinstance(generator.rated_power_factor, float):
        return None
    return standing_on(generator.name, network).kw / (
        generator.prime.kva * generator.rated_power_factor
    )
