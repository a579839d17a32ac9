"""
The drive plan, computed: how many ways each console can send to the house system, and what moves at
each hand-over.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.departments.lines.cables import PermanentLine
from builder.departments.lines.description import Lines
from builder.departments.lines.driving import ConsolePosition, HandOver, Switcher
from builder.departments.lines.ways import at_work
from builder.formulas.tie_lines import changes_by_switcher, ways_through
from builder.pack import Figure, Input, Item, Value, not_more
from builder.reading.absent import Absent, listed
from builder.reading.standing_on import OUT
from builder.stating import Stater
from builder.working import figure, missing, worked


def lines_by(console: ConsolePosition, described: Lines) -> tuple[PermanentLine, ...]:
    """The permanent lines a console sends by."""
    names = () if isinstance(console.by, Absent) else console.by
    return tuple(line for line in listed(described.lines) if line.name in names)


def switcher_of(console: ConsolePosition, described: Lines) -> Switcher | None:
    """The switcher a console comes in on."""
    return next(
        (switcher for switcher in described.switchers if switcher.name == console.switcher), None
    )


def beside(console: ConsolePosition, described: Lines) -> bool:
    """True where a console stands beside its switcher and needs no permanent line."""
    switcher = switcher_of(console, described)
    return switcher is not None and switcher.place == console.place


def drive_items(described: Lines, stater: Stater) -> Iterator[Item]:
    """Switchers, console positions with what they can send, and the order of hand-over."""
    yield from stater.named(described.switchers, "lines", "switcher")
    consoles = listed(described.consoles)
    for console, item in zip(consoles, stater.named(consoles, "lines", "console"), strict=True):
        yield replace(item, figures=(sending(item.key, console, described),))
    turns = stater.counted(described.hand_over, "lines", "turn", name_key="console")
    for before, turn, item in zip(
        (None, *described.hand_over), described.hand_over, turns, strict=False
    ):
        yield replace(item, figures=(change(item.key, before, turn, consoles),))


def sending(key: str, console: ConsolePosition, described: Lines) -> Figure:
    """
    How many ways a console can send: the least of what it is plugged into, its lines and its
    switcher.
    """
    label, parts = "Ways to the house system", parts_of(console, described)
    inputs = [
        Input(name, "no count" if count is None else str(count)) for name, count in parts
    ] or [Input("a line or a switcher", "not stated")]
    working = worked(
        ways_through,
        inputs=inputs,
        leaves_out="What the console itself can put out, and drive lines that share a way.",
    )
    known = [(count, name) for name, count in parts if count is not None]
    silent = [name for name, count in parts if count is None]
    if not known:
        return missing(f"{key}.can-send", label, working, silent or ["a line or a switcher"])
    least, name = min(known)
    working = replace(
        working, steps=(f"least of {', '.join(str(count) for count, _ in known)} = {least}",)
    )
    ways = Value(str(least), number=ways_through([count for count, _ in known]))
    note = f"by {name}" + (f"; no count for {', '.join(silent)}" if silent else "")
    return figure(
        f"{key}.can-send",
        label,
        not_more(ways) if silent else ways,
        working,
        note=note,
    )


def parts_of(console: ConsolePosition, described: Lines) -> list[tuple[str, int | None]]:
    """
    What lies in a row from console to house system, each with its ways.

    Lines beside each other are one part. A position has ways of its own unless it says `none`: then
    it passes on what it gets. A switcher that is out of service, or whose own line is, lets nothing
    through.
    """
    parts: list[tuple[str, int | None]] = []
    if isinstance(console.ways, int):
        parts.append(("the position", console.ways))
    elif console.ways is not Absent.NONE:
        parts.append(("the position", None))
    if lines := lines_by(console, described):
        counts = [at_work(line) for line in lines]
        parts.append(
            (
                ", ".join(line.name for line in lines),
                None if None in counts else sum(count or 0 for count in counts),
            )
        )
    if switcher := switcher_of(console, described):
        ways = switcher.ways if isinstance(switcher.ways, int) else None
        parts.append((switcher.name, 0 if switcher.condition == OUT else ways))
        parts += [
            (line.name, 0)
            for line in listed(described.lines)
            if line.name == switcher.goes_on_by and line.condition == OUT
        ]
    return parts


def change(
    key: str, before: HandOver | None, turn: HandOver, consoles: Sequence[ConsolePosition]
) -> Figure:
    """What moves when one console follows another: the switcher alone, or plugs."""
    now = next((console for console in consoles if console.name == turn.console), None)
    was = next((console for console in consoles if before and console.name == before.console), None)
    heard = [("heard before", was), ("heard now", now)]
    inputs = [
        Input(
            f"{label}, {console.name}" if console else label,
            inlet(console) if console else "no console",
        )
        for label, console in heard
    ]
    words, working = moved(was, now), worked(changes_by_switcher, inputs=inputs)
    if words == "":
        lacks = ["the switcher and the input of both consoles"]
        return missing(f"{key}.change", "What moves", working, lacks)
    return figure(f"{key}.change", "What moves", Value(words), working)


def moved(was: ConsolePosition | None, now: ConsolePosition | None) -> str:
    """What moves, in words; empty where the house does not say how both come in."""
    if was is None or now is None:
        return "nothing: it is heard first"
    if was.name == now.name:
        return "nothing: it is heard already"
    without = [each.name for each in (was, now) if each.switcher is Absent.NONE]
    if without:
        return (
            f"plugs: {' and '.join(without)} {'has' if len(without) == 1 else 'have'} no switcher"
        )
    before, after = entry_of(was), entry_of(now)
    if before is None or after is None:
        return ""
    if changes_by_switcher(before=before, after=after):
        return f"the switcher alone, input {was.input} to {now.input}"
    if before == after:
        return f"plugs: both come in on input {now.input} of {now.switcher}"
    return f"{now.switcher} is heard in place of {was.switcher}"


def entry_of(console: ConsolePosition) -> tuple[str, int] | None:
    """The switcher and input a console comes in on; None where that is not stated."""
    if isinstance(console.switcher, str) and isinstance(console.input, int):
        return console.switcher, console.input
    return None


def inlet(console: ConsolePosition) -> str:
    """Where a console comes in."""
    switcher = console.switcher if isinstance(console.switcher, str) else "no switcher stated"
    return f"{switcher}, input {console.input}" if isinstance(console.input, int) else switcher
