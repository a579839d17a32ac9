"""
What goes into what the house has: for each connector of services and outlets, the plugs it takes.
"""

from collections.abc import Iterator

from builder.cautions import ELECTRICITY
from builder.departments.power.description import Power
from builder.departments.power.outlets.at_once import usable
from builder.formulas.connectors import CONNECTORS, Connector, connectors_named, mates
from builder.pack import Fact, Figure, Input, Item, Standing, Value
from builder.reading.absent import Absent
from builder.reading.addresses import distinct
from builder.working import figure, missing, worked

LEAVES_OUT = (
    "Voltage, frequency, earth and who may switch on: that it goes in says nothing of these. Worn"
    " parts, and plugs of other makers."
)


def connector_items(power: Power) -> Iterator[Item]:
    """An item for each connector name that a visitor meets, in the author's order."""
    found = places_of(power)
    for (name, places), last in zip(found.items(), distinct(found), strict=True):
        key = f"power.connector.{last}"
        facts = (Fact(f"{key}.at", "At", Standing.STATED, Value(", ".join(places))),)
        yield Item(key, "connector", name, facts, tuple(takes(key, name)))


def places_of(power: Power) -> dict[str, list[str]]:
    """Each connector with the services and places that have it."""
    found: dict[str, list[str]] = {}
    for service in power.services:
        if not isinstance(service.connectors, Absent) and service.terms != "not for visitors":
            for name in service.connectors:
                found.setdefault(name, []).append(service.name)
    for outlet in usable(power):
        found.setdefault(outlet.connector, []).append(outlet.place)
    return {name: list(dict.fromkeys(places)) for name, places in found.items()}


def takes(key: str, name: str) -> Iterator[Figure]:
    """The plugs that go in, and what the connector is made for."""
    known = connectors_named(name)
    inputs = [Input("Outlet", name)]
    if not known:
        yield missing(
            f"{key}.takes",
            "Takes",
            worked(mates, inputs=inputs),
            ["a standard's name"],
            caution=ELECTRICITY,
        )
        return
    verdicts = [
        (plug, outlet, mates(plug=plug, outlet=outlet)) for outlet in known for plug in CONNECTORS
    ]
    plugs = list(dict.fromkeys(plug.name for plug, _, found in verdicts if found.verdict == "yes"))
    asks = list(dict.fromkeys(found.why for _, _, found in verdicts if found.verdict == "ask"))
    steps = [found.why for _, _, found in verdicts if found.verdict != "no"]
    note = (
        "the name leaves the voltage open: only the same colour goes in"
        if len(known) > 1
        else asks[0]
        if asks and not plugs
        else ""
    )
    value = Value("; ".join(f"plug {plug}" for plug in plugs) or "look at both parts")
    working = worked(mates, inputs=inputs, steps=list(dict.fromkeys(steps)), leaves_out=LEAVES_OUT)
    yield figure(f"{key}.takes", "Takes", value, working, caution=ELECTRICITY, note=note)
    yield figure(
        f"{key}.made-for",
        "Made for",
        Value(made_for(known)),
        worked(connectors_named, inputs=inputs),
        caution=ELECTRICITY,
    )


def made_for(known: tuple[Connector, ...]) -> str:
    """Voltage, current and contacts by the standard."""
    volts = " or ".join(dict.fromkeys(each.volts for each in known))
    poles = " or ".join(dict.fromkeys(each.poles for each in known))
    return f"{volts}, {known[0].ampere_a} A, {poles}"
