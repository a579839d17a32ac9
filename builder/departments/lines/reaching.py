"""
What a show asks of talkback and networks in one answer: stations, channels, internet by cable,
sockets at the mix position.
"""

from collections.abc import Iterator, Sequence

from builder.departments.lines.description import Lines
from builder.departments.lines.talking import Network, TalkbackStation
from builder.formulas.tie_lines import ways_in_all
from builder.pack import Fact, Figure, Input, Item, Standing, Value
from builder.reading.absent import Absent, listed
from builder.working import figure, missing, worked

KEY = "lines.reaching"


def reaching_item(described: Lines) -> Iterator[Item]:
    """The one item; left out where the house says nothing of either."""
    facts, figures = (
        (*without_talkback(described), *network_facts(described)),
        tuple(talkback_figures(described)),
    )
    if facts or figures:
        yield Item(KEY, "reaching", "talkback and networks", facts, figures)


def without_talkback(described: Lines) -> Iterator[Fact]:
    """That there is none, where the house says so."""
    if described.talkback_channels is Absent.NONE and not described.talkback_stations:
        yield Fact(f"{KEY}.stations", "Talkback stations that work", Standing.NONE, None)
        yield Fact(f"{KEY}.channels", "Talkback channels", Standing.NONE, None)


def talkback_figures(described: Lines) -> Iterator[Figure]:
    """Stations that work, sockets not counted, and channels."""
    stations = [station for station in described.talkback_stations if station.kind != "socket"]
    if stations:
        inputs = [Input(f"{station.kind}, {station.place}", said(station)) for station in stations]
        counts = [working_of(station) for station in stations]
        known = [count for count in counts if count is not None]
        key, label = f"{KEY}.stations", "Talkback stations that work"
        if len(known) < len(counts):
            silent = " and ".join(
                dict.fromkeys(
                    station.place
                    for station, count in zip(stations, counts, strict=True)
                    if count is None
                )
            )
            yield missing(
                key, label, worked(ways_in_all, inputs=inputs), [f"how many work at {silent}"]
            )
        else:
            working = worked(
                ways_in_all,
                inputs=inputs,
                steps=[f"{' + '.join(map(str, known))} = {sum(known)}"],
                leaves_out="Sockets without a station.",
                lines=stations,
            )
            yield figure(key, label, Value(str(sum(known)), number=float(sum(known))), working)
    if channels := [
        channel
        for channel in listed(described.talkback_channels)
        if channel.condition != "out of service"
    ]:
        inputs = [Input(channel.name, "1") for channel in channels]
        working = worked(ways_in_all, inputs=inputs, lines=channels)
        yield figure(
            f"{KEY}.channels",
            "Talkback channels",
            Value(str(len(channels)), number=float(len(channels))),
            working,
        )


def working_of(station: TalkbackStation) -> int | None:
    """How many stations of a line a visitor finds at work; None where nobody knows."""
    if station.condition == "out of service" or station.terms == "not for visitors":
        return 0
    if isinstance(station.working, int):
        return station.working
    return station.count if station.working is Absent.NOT_STATED else None


def said(station: TalkbackStation) -> str:
    """A line of stations in words."""
    count = working_of(station)
    return f"{'not known' if count is None else count} of {station.count}"


def network_facts(described: Lines) -> Iterator[Fact]:
    """
    Whether a visitor's cable reaches the internet, and whether a network has sockets at the mix
    position.
    """
    networks = [
        network
        for network in listed(described.networks)
        if network.condition != "out of service" and network.terms != "not for visitors"
    ]
    if described.networks is Absent.NONE:
        yield yes_no("internet", "Internet by cable", False)
        yield yes_no("at_mix", "Network at the mix position", False)
    elif networks:
        yield yes_no("internet", "Internet by cable", reaches(networks))
        consoles = listed(described.consoles)
        if consoles:
            yield yes_no(
                "at_mix",
                f"Network at {consoles[0].place}",
                any(consoles[0].place in network.at for network in networks),
            )


def reaches(networks: Sequence[Network]) -> bool | None:
    """
    True where a network states a rate from the internet, None where none does and one leaves it
    open.
    """
    if any(not isinstance(network.internet_down, Absent) for network in networks):
        return True
    return False if all(network.internet_down is Absent.NONE for network in networks) else None


def yes_no(name: str, label: str, answer: bool | None) -> Fact:
    """A yes, a no, or not known."""
    if answer is None:
        return Fact(f"{KEY}.{name}", label, Standing.UNKNOWN, None)
    return Fact(f"{KEY}.{name}", label, Standing.STATED, Value("yes" if answer else "no"))
