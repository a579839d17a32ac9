"""Services kept for sound or video that share their way with phase-control dimmers."""

from collections.abc import Iterator

from builder.departments.power.circuits.tree import Network
from builder.departments.power.description import Fed, Power, Service
from builder.departments.power.subjects import told
from builder.pack import Finding, Level
from builder.reading.absent import Absent
from builder.reading.references import spelling

NOISE_MATTERS_TO = ("sound", "audio", "video")


def dimmer_findings(power: Power, network: Network) -> Iterator[Finding]:
    """
    Services that say themselves that they are shared, then those that share a source with dimmers,
    told once for each source.
    """
    found: dict[tuple[str, str], list[Service]] = {}
    for service in power.services:
        if not kept_for(service):
            continue
        if says_so(service):
            words = f"{service.name} is kept for {kept_for(service)} and is shared with dimmers."
            advice = "Expect noise on the neutral: ask for an isolating transformer."
            yield told(
                Level.CAUTION, "shared-with-dimmers", f"{words} {advice}", service, "shared_with"
            )
        elif shared := shared_source(service, power, network):
            found.setdefault(shared, []).append(service)
    for (common, dimmed), services in found.items():
        yield sharing(common, dimmed, services, network)


def kept_for(service: Service) -> str:
    """What the service is kept for, where noise from dimmers matters to it."""
    words = service.dedicated_to if isinstance(service.dedicated_to, str) else ""
    return words if any(name in whole_words(words) for name in NOISE_MATTERS_TO) else ""


def says_so(service: Service) -> bool:
    """True where the service names dimmers among what shares it."""
    return isinstance(service.shared_with, tuple) and any(
        whole_words(name) & {"dimmer", "dimmers"} for name in service.shared_with
    )


def whole_words(text: str) -> set[str]:
    """The words of a text, in small letters."""
    return {*spelling(text).split("-")}


def sharing(common: str, dimmed: str, services: list[Service], network: Network) -> Finding:
    """
    The finding on one source that services share with dimmers.

    Sharing the supply alone is usual, so it is a note.
    """
    names = [f"{service.name} ({kept_for(service)})" for service in services]
    listed = f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]
    at_supply = network.sources[common].fed_from is None
    advice = (
        "Ask the house electrician where dimmer noise matters to you."
        if at_supply
        else "Expect noise on the neutral."
    )
    verb = "share" if len(names) > 1 else "shares"
    sentence = (
        f"{listed} {verb} {common} with {dimmed}, which has dimmers on it, and no isolating"
        f" transformer stands between. {advice}"
    )
    return told(
        Level.NOTE if at_supply else Level.CAUTION, "shared-with-dimmers", sentence, services[0]
    )


def shared_source(service: Service, power: Power, network: Network) -> tuple[str, str] | None:
    """
    The nearest source that the service shares with dimmers with no transformer of its own between,
    and the node the dimmers hang on.
    """
    way = way_without_transformer(service.name, network)
    for dimmed, dimmed_way in dimmed_nodes(power, network):
        common = next((up for up in way if up in dimmed_way), None)
        if common is not None and service.name != dimmed:
            return common, dimmed
    return None


def way_without_transformer(name: str, network: Network) -> tuple[str, ...]:
    """The way up to and including the first source behind a transformer, or to the supply."""
    way: list[str] = []
    for up in network.tree.path[name]:
        way.append(up)
        record = network.sources[up].record
        if isinstance(record, Fed) and not isinstance(record.transformer, Absent):
            return tuple(way)
    return tuple(way)


def dimmed_nodes(power: Power, network: Network) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Nodes on which dimmers hang, with their way up."""
    names = [
        source.name
        for source in network.sources.values()
        if getattr(source.record, "dimmers", None) is True
    ]
    names += [
        load.on for load in power.house_loads if load.dimmers is True and load.on in network.sources
    ]
    for name in dict.fromkeys(names):
        yield name, network.tree.path[name]
