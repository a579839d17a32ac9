"""What is odd about lines, and what they state that other files state too."""

from collections.abc import Iterator, Sequence

from builder.confirming import odd
from builder.departments.lines.cables import BOTH_ENDS, End, PermanentLine
from builder.departments.lines.description import Lines
from builder.departments.lines.ways import shared_names
from builder.exchange import Statement
from builder.oddities import MOST_COMPARED
from builder.pack import Finding
from builder.reading.absent import Absent, listed
from builder.reading.quantities import Length
from builder.reading.references import spelling


def oddities(described: Lines) -> Iterator[Finding]:
    """Everything that is odd about the lines."""
    lines = [line for line in listed(described.lines) if line.condition != "out of service"]
    yield from on_one_connector(lines)


def on_one_connector(lines: Sequence[PermanentLine]) -> Iterator[Finding]:
    """
    Two lines that end on the same connector of one panel, and nobody says that they share cores.
    """
    at_panel: dict[tuple[str, str], list[tuple[PermanentLine, End]]] = {}
    for line in lines:
        for end in (line.from_, line.to):
            if isinstance(end, Absent) or isinstance(end.panel, Absent):
                continue
            there = at_panel.setdefault((end.place, spelling(end.panel)), [])
            first = next(
                (
                    other
                    for other, its_end in there[:MOST_COMPARED]
                    if one_connector(its_end, end) and not shared(other, line)
                ),
                None,
            )
            there.append((line, end))
            if first is not None and first is not line:
                yield odd(
                    "panel-twice",
                    f"{first.name} and {line.name} both end on panel {end.panel} at {end.place}.",
                    end.where("panel"),
                    question=" Is a label mistyped? If they share cores, say so under shared_with.",
                    asks_about=f"{end.panel}, as {first.name}",
                    subject=f"lines.line.{spelling(line.name)}",
                )


def shared(first: PermanentLine, second: PermanentLine) -> bool:
    """Whether two lines are said to share cores."""
    return second.name in shared_names(first, (first, second))


def one_connector(one: End, other: End) -> bool:
    """
    Whether two ends at one panel are the same connector. A panel may hold several: where both say
    which, and differ, they are two.
    """
    if isinstance(one.connector, Absent) or isinstance(other.connector, Absent):
        return True
    return spelling(one.connector) == spelling(other.connector)


def statements(described: Lines) -> Iterator[Statement]:
    """The way of each cable between its two places, which other files may tell too."""
    for line in listed(described.lines):
        if isinstance(line.path, Length) and len(line.places) == BOTH_ENDS:
            ends = " and ".join(sorted(line.places))
            yield Statement("cable path between", ends, line.path, line.where("path"))
