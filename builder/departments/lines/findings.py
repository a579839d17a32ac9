"""What does not add up among lines and consoles."""

from collections.abc import Iterator

from builder.departments.lines.cables import BOTH_ENDS, PermanentLine
from builder.departments.lines.description import Lines
from builder.departments.lines.drive import beside, lines_by, switcher_of
from builder.departments.lines.driving import ConsolePosition
from builder.departments.lines.reach import ends_of, left_m, limit_of, signals_of
from builder.departments.lines.ways import at_work
from builder.exchange import Offers
from builder.formulas.tie_lines import straight_m
from builder.oddities import Named, path_under_straight
from builder.pack import Finding, Level
from builder.reading.absent import Absent, listed
from builder.reading.measures import System, shown
from builder.reading.quantities import Length
from builder.reading.references import spelling
from builder.stating import place


def findings(described: Lines, offers: Offers, system: System) -> Iterator[Finding]:
    """All findings on lines, then on the drive plan, then on talkback."""
    for line in listed(described.lines):
        yield from free_over_working(line)
        yield from dead_unnamed(line)
        yield from over_limit(line, system)
        yield from path_short(line, offers, system)
    for console in listed(described.consoles):
        yield from without_drive(console, described)
        yield from drive_elsewhere(console, described)
        yield from format_differs(console, described)
        yield from signal_differs(console, described, offers)
    yield from inputs_twice(described)
    yield from silent_channels(described)


def free_over_working(line: PermanentLine) -> Iterator[Finding]:
    """More ways free than work."""
    working = at_work(line)
    most = line.ways if working is None else working
    if isinstance(most, int) and isinstance(line.free, int) and line.free > most:
        most_words = (
            f"only {line.ways} are there"
            if working is None
            else f"only {working} of {line.ways} work"
        )
        sentence = f"{line.name}: {line.free} ways are said to be free, but {most_words}."
        yield Finding(
            Level.CAUTION,
            "free-over-working",
            sentence,
            subject=key_of(line),
            place=place(line.where("free")),
        )


def dead_unnamed(line: PermanentLine) -> Iterator[Finding]:
    """Ways that do not work, and nobody says which."""
    if not isinstance(line.working, int) or line.condition == "out of service":
        return
    if isinstance(line.ways, Absent) or isinstance(line.dead, Absent):
        return
    lost = line.ways - line.working
    if lost > len(set(line.dead_ways)):
        dead = ", ".join(map(str, line.dead_ways))
        named = (
            "it is not said which"
            if not dead
            else (
                f"only way {dead} is named"
                if len(line.dead_ways) == 1
                else f"only ways {dead} are named"
            )
        )
        sentence = (
            f"{line.name}: {lost} of {line.ways} ways do not work, and {named}. Whoever plugs in"
            " will find out by trying."
        )
        yield Finding(
            Level.NOTE,
            "dead-ways-unnamed",
            sentence,
            subject=key_of(line),
            place=place(line.where("working")),
        )


def over_limit(line: PermanentLine, system: System) -> Iterator[Finding]:
    """
    A path longer than the limit of what the line carries; where that is not stated, longer than the
    limit of all it usually does.
    """
    held = [
        (signal, left) for signal in signals_of(line) if (left := left_m(line, signal)) is not None
    ]
    passed = [(signal, left) for signal, left in held if left < 0]
    if isinstance(line.path, Absent) or (not line.carries and len(passed) < len(held)):
        return
    for signal, left in passed:
        limit = limit_of(line, signal)
        if limit is not None:
            far, over = (
                shown(Length, limit.length_m, 0, system)[0],
                shown(Length, -left, None, system)[0],
            )
            sentence = (
                f"{line.name}: the path of {line.path.text} passes the {far} limit of {signal} by"
                f" {over}. Patch cords come on top."
            )
            yield Finding(
                Level.CAUTION,
                "line-over-limit",
                sentence,
                subject=key_of(line),
                place=place(line.where("path")),
            )


def path_short(line: PermanentLine, offers: Offers, system: System) -> Iterator[Finding]:
    """A path shorter than the straight line between its ends."""
    ends = ends_of(line, offers)
    if ends is None or isinstance(line.path, Absent):
        return
    straight = straight_m(ends[0].at_m, ends[1].at_m)
    path = Named(line.name, line.path, line.where("path"), key_of(line))
    names = (ends[0].name, ends[1].name)
    yield from path_under_straight(path, names, straight, system)


def without_drive(console: ConsolePosition, described: Lines) -> Iterator[Finding]:
    """A console position that no line leads from to the house system."""
    lines = lines_by(console, described)
    alive = [line for line in lines if at_work(line) != 0]
    if alive or (not lines and beside(console, described)):
        return
    level, why = Level.CAUTION, "no line leads from it to the house system"
    if lines:
        why = (
            f"{' and '.join(line.name for line in lines)} does not work, and no other line leads"
            " from it to the house system"
        )
    elif console.by is not Absent.NONE:
        level, why = Level.NOTE, "the house does not say by which line it drives the house system"
    sentence = f"{console.name}: {why}."
    yield Finding(
        level,
        "console-without-drive",
        sentence,
        subject=f"lines.console.{spelling(console.name)}",
        place=place(console.where("by")),
    )


def drive_elsewhere(console: ConsolePosition, described: Lines) -> Iterator[Finding]:
    """A line that a console is said to send by, though it ends somewhere else."""
    for line in lines_by(console, described):
        if console.place not in line.places and len(line.places) == BOTH_ENDS:
            ends = " and ".join(line.places)
            sentence = (
                f"{console.name} is at {console.place}, but {line.name}, which it is said to send"
                f" by, ends at {ends}."
            )
            subject = f"lines.console.{spelling(console.name)}"
            yield Finding(
                Level.CAUTION,
                "drive-line-elsewhere",
                sentence,
                subject=subject,
                place=place(console.where("by")),
            )


def format_differs(console: ConsolePosition, described: Lines) -> Iterator[Finding]:
    """A console that sends nothing its switcher takes."""
    switcher = switcher_of(console, described)
    if (
        switcher is None
        or not console.sends
        or not switcher.formats
        or set(console.sends) & set(switcher.formats)
    ):
        return
    sentence = (
        f"{console.name} sends {' or '.join(console.sends)}, but {switcher.name} takes"
        f" {' or '.join(switcher.formats)} only."
    )
    subject = f"lines.console.{spelling(console.name)}"
    yield Finding(
        Level.CAUTION,
        "drive-format-differs",
        sentence,
        subject=subject,
        place=place(console.where("sends")),
    )


def signal_differs(console: ConsolePosition, described: Lines, offers: Offers) -> Iterator[Finding]:
    """
    Drive lines of the house system that take none of what a console sends, where nothing on the way
    is said to change it.
    """
    switcher = switcher_of(console, described)
    passing = [
        each
        for each in console.sends
        if switcher is None or not switcher.formats or each in switcher.formats
    ]
    if not passing or (switcher is not None and switcher.converts):
        return
    reached = [
        drive for drive in offers.drives if not console.reaches or drive.name in console.reaches
    ]
    deaf = [drive for drive in reached if drive.signals and not set(drive.signals) & set(passing)]
    if not deaf:
        return
    takes = "; ".join(f"{drive.name} takes {' or '.join(drive.signals)}" for drive in deaf)
    open_end = switcher is not None and switcher.converts is None
    advice = (
        f"Say whether {switcher.name} changes the format (converts)."
        if open_end and switcher
        else "Say what changes the format."
    )
    sentence = f"{console.name} sends {' or '.join(passing)}, and {takes} only. {advice}"
    subject = f"lines.console.{spelling(console.name)}"
    yield Finding(
        Level.NOTE if open_end else Level.CAUTION,
        "drive-signal-differs",
        sentence,
        subject=subject,
        place=place(console.where("sends")),
    )


def inputs_twice(described: Lines) -> Iterator[Finding]:
    """An input of a switcher that two consoles come in on."""
    taken: dict[tuple[str, int], ConsolePosition] = {}
    for console in listed(described.consoles):
        if not isinstance(console.switcher, str) or not isinstance(console.input, int):
            continue
        first = taken.setdefault((console.switcher, console.input), console)
        if first is not console:
            sentence = (
                f"{first.name} and {console.name} both come in on input {console.input} of"
                f" {console.switcher}. Plugs move between them, in the dark."
            )
            subject = f"lines.console.{spelling(console.name)}"
            yield Finding(
                Level.CAUTION,
                "switcher-input-twice",
                sentence,
                subject=subject,
                place=place(console.where("input")),
            )


def silent_channels(described: Lines) -> Iterator[Finding]:
    """A talkback channel that no station has, where stations say which channels they have."""
    heard = {name for station in described.talkback_stations for name in station.channels}
    for channel in listed(described.talkback_channels) if heard else ():
        if channel.name not in heard:
            sentence = f"No talkback station has channel {channel.name}."
            subject = f"lines.channel.{spelling(channel.name)}"
            yield Finding(
                Level.NOTE,
                "channel-without-station",
                sentence,
                subject=subject,
                place=place(channel.where("name")),
            )


def key_of(line: PermanentLine) -> str:
    """The key of a line's item."""
    return f"lines.line.{spelling(line.name)}"
