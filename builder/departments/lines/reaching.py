"""
What a show asks of talkback and networks in one answer: stations, channels, internet by cable,
sockets at the mix position.
"""

from collections.abc import Iterator, Sequence, Set

from builder.departments.lines.description import Lines
from builder.departments.lines.talking import Network, TalkbackStation
from builder.formulas.tie_lines import ways_in_all
from builder.pack import Fact, Figure, Input, Item, Standing, Value, one_or_both
from builder.reading.absent import Absent, listed
from builder.reading.in_part import ends_of
from builder.reading.standing_on import CLOSED, OUT, hard_words
from builder.reading.written import Line
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
        gone = gone_channels(described)
        counts = [counted_for_sure(station, gone) for station in stations]
        inputs = [
            Input(named(station), said(station, count))
            for station, count in zip(stations, counts, strict=True)
        ]
        ends = [
            ends_of_stations(station, count)
            for station, count in zip(stations, counts, strict=True)
        ]
        least = sum(end[0] for end in ends)
        tops = [end[1] for end in ends if end[1] is not None]
        most = sum(tops) if len(tops) == len(ends) else None
        key, label = f"{KEY}.stations", "Talkback stations that work"
        silent = " and ".join(
            dict.fromkeys(
                station.spot
                for station, count in zip(stations, counts, strict=True)
                if count is None
            )
        )
        if least == 0 and most is None:
            yield missing(
                key, label, worked(ways_in_all, inputs=inputs), [f"how many work at {silent}"]
            )
        else:
            working = worked(
                ways_in_all,
                inputs=inputs,
                steps=[f"{' + '.join(between(end) for end in ends)} = {between((least, most))}"],
                leaves_out="Sockets without a station.",
                lines=stations,
            )
            value = one_or_both(stations_value(least), stations_value(most))
            told = hard_told([(named(station), station) for station in stations])
            open_at = f"not known how many work at {silent}" if silent else ""
            note = "; ".join(part for part in (told, open_at) if part)
            yield figure(key, label, value or Value(str(least)), working, note=note)
    yield from channel_figure(described)


def channel_figure(described: Lines) -> Iterator[Figure]:
    """How many channels a visitor may talk on, where the house tells its channels."""
    every = listed(described.talkback_channels)
    if not every:
        return
    channels = [channel for channel in every if not is_gone(channel)]
    inputs = [Input(each.name, "0" if is_gone(each) else "1") for each in every]
    yield figure(
        f"{KEY}.channels",
        "Talkback channels",
        Value(str(len(channels)), number=float(len(channels))),
        worked(ways_in_all, inputs=inputs, lines=every),
        note=hard_told([(channel.name, channel) for channel in channels]),
    )


def is_gone(line: Line) -> bool:
    """Whether a visitor finds nothing of a line: it is out of service or not for visitors."""
    return line.condition == OUT or line.terms == CLOSED


def hard_told(lines: Sequence[tuple[str, Line]]) -> str:
    """What to know of the lines that count: limited, or on terms."""
    return "; ".join(
        f"{name}: {', '.join(words)}"
        for name, line in lines
        if not is_gone(line) and (words := hard_words(line.condition, line.terms or ""))
    )


def gone_channels(described: Lines) -> set[str]:
    """The channels that nobody can talk on."""
    return {each.name for each in listed(described.talkback_channels) if is_gone(each)}


def working_of(station: TalkbackStation, gone: Set[str]) -> int | None:
    """
    How many stations of a line a visitor finds at work, none where all their channels are gone;
    None where nobody knows.
    """
    if is_gone(station) or (station.channels and gone >= set(station.channels)):
        return 0
    if isinstance(station.working, int):
        return station.working
    there = station.count if isinstance(station.count, int) else None
    return there if station.working is Absent.NOT_STATED else None


def counted_for_sure(station: TalkbackStation, gone: Set[str]) -> int | None:
    """How many stations of a line work; None where they may be sockets without a station."""
    count = working_of(station, gone)
    return None if count and isinstance(station.kind, Absent) else count


def ends_of_stations(station: TalkbackStation, count: int | None) -> tuple[int, int | None]:
    """How many stations of a line work at least and at most; None where nobody knows the most."""
    if count is not None:
        return count, count
    of_count = ends_of(station.count)
    of_working = of_count if station.working is Absent.NOT_STATED else ends_of(station.working)
    tops = [top for top in (of_count[1], of_working[1]) if top is not None]
    least = 0 if isinstance(station.kind, Absent) else of_working[0] or 0
    return least, min(tops) if tops else None


def between(ends: tuple[int, int | None]) -> str:
    """A count between its ends, in words."""
    least, most = ends
    if most is None:
        return f"at least {least}"
    return str(least) if least == most else f"({least} to {most})"


def stations_value(count: int | None) -> Value | None:
    """A count of stations as a value; None where nobody knows it."""
    return None if count is None else Value(str(count), number=float(count))


def named(station: TalkbackStation) -> str:
    """A line of stations by its kind and place."""
    kind = "of unknown kind" if isinstance(station.kind, Absent) else station.kind
    return f"{kind}, {station.spot}"


def said(station: TalkbackStation, count: int | None) -> str:
    """A line of stations in words."""
    there = station.count if isinstance(station.count, int) else "not known how many"
    return f"{'not known' if count is None else count} of {there}"


def network_facts(described: Lines) -> Iterator[Fact]:
    """
    Whether a visitor's cable reaches the internet, and whether a network has sockets at the mix
    position; not known where one does not say at which places it has any.
    """
    networks = [network for network in listed(described.networks) if not is_gone(network)]
    if described.networks is Absent.NONE:
        yield yes_no("internet", "Internet by cable", False)
        yield yes_no("at_mix", "Network at the mix position", False)
    elif networks:
        by = [each for each in networks if not isinstance(each.internet_down, Absent)]
        yield yes_no("internet", "Internet by cable", reaches(networks), by)
        consoles = listed(described.consoles)
        if consoles:
            there = [network for network in networks if consoles[0].place in network.at]
            answer = True if there else None if any(not each.at for each in networks) else False
            yield yes_no("at_mix", f"Network at {consoles[0].place}", answer, there)


def reaches(networks: Sequence[Network]) -> bool | None:
    """
    True where a network states a rate from the internet, None where none does and one leaves it
    open.
    """
    if any(not isinstance(network.internet_down, Absent) for network in networks):
        return True
    return False if all(network.internet_down is Absent.NONE for network in networks) else None


def yes_no(name: str, label: str, answer: bool | None, by: Sequence[Network] = ()) -> Fact:
    """
    A yes, a no, or not known. A yes tells what to know of the networks that it stands on, unless
    one of them needs no word.
    """
    if answer is None:
        return Fact(f"{KEY}.{name}", label, Standing.UNKNOWN, None)
    told = [hard_told([(each.name, each)]) for each in by]
    return Fact(
        f"{KEY}.{name}",
        label,
        Standing.STATED,
        Value("yes" if answer else "no"),
        note="; ".join(told) if all(told) else "",
    )
