"""
How far lines run: the limit of each signal over each kind of cable, and the path against the
straight line between the places.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.departments.lines.cables import BOTH_ENDS, PermanentLine
from builder.exchange import Offers, Spot
from builder.formulas.signals import LineLimit, length_left_m, line_limit
from builder.formulas.tie_lines import straight_m
from builder.pack import Figure, Input, Reference, Value
from builder.reading.absent import Absent
from builder.reading.in_part import as_written
from builder.reading.measures import System, shown
from builder.reading.quantities import Length
from builder.working import figure, missing, worked

LEFT_OUT = (
    "Patch cords and a visitor's own cable, which use up what is left; worn connectors and bends."
    " The maker's data decide."
)
# ISO/IEC 11801 sorts multimode fibre by its bandwidth at 850 nm with all modes lit: OM1 200, OM2
# 500, OM3 1500 MHz km (from memory). A class above the one that a limit is written for runs at
# least as far.
MULTIMODE_1G = {
    "OM1": "fibre 1G 62.5 µm 200 MHz km",
    **dict.fromkeys(("OM2", "OM3", "OM4", "OM5"), "fibre 1G 50 µm 500 MHz km"),
}
REACH: dict[tuple[str, str], dict[str, str]] = {
    ("fibre", "1G ethernet"): {
        **MULTIMODE_1G,
        **dict.fromkeys(("OS1", "OS2"), "fibre 1G single mode"),
    },
    ("fibre", "10G ethernet"): {
        **dict.fromkeys(("OM3", "OM4", "OM5"), "fibre 10G OM3"),
        **dict.fromkeys(("OS1", "OS2"), "fibre 10G single mode"),
    },
    ("coax", "HD-SDI"): {"RG-6 class": "HD-SDI"},
    ("coax", "3G-SDI"): {"RG-6 class": "3G-SDI"},
}
"""The limit by kind and signal, for each grade that it is known for."""
ANY_GRADE = {
    ("copper data", "1G ethernet"): "copper data",
    ("copper data", "AES50"): "AES50",
    ("DMX", "DMX512"): "DMX512",
}
USUAL = {
    "copper data": ("1G ethernet",),
    "fibre": ("1G ethernet", "10G ethernet"),
    "DMX": ("DMX512",),
}
"""What a kind is held against where the house does not say what it carries."""


def signals_of(line: PermanentLine) -> tuple[str, ...]:
    """What the line is held against: what it carries, or what its kind usually does."""
    usual = () if isinstance(line.kind, Absent) else USUAL.get(line.kind, ())
    return line.carries or usual


def limit_of(line: PermanentLine, signal: str) -> LineLimit | None:
    """The limit of a signal over this line; None where none is known for its kind and grade."""
    if isinstance(line.kind, Absent):
        return None
    name = ANY_GRADE.get((line.kind, signal)) or REACH.get((line.kind, signal), {}).get(
        str(line.grade)
    )
    return line_limit(name) if name else None


def left_m(line: PermanentLine, signal: str) -> float | None:
    """What is left of a signal's limit after the path; None where one of them is not known."""
    limit = limit_of(line, signal)
    return (
        None
        if limit is None or isinstance(line.path, Absent)
        else length_left_m(limit.kind, lengths_m=(line.path.m,))
    )


def reach_figures(key: str, line: PermanentLine, system: System) -> Iterator[Figure]:
    """What is left of the limit of each signal, with where the limit is written."""
    if isinstance(line.kind, Absent):
        yield from reach_without_kind(key, line)
        return
    for signal in signals_of(line):
        name, label = (
            f"{key}.left.{signal.lower().replace(' ', '-')}",
            f"Left of the limit, {signal}",
        )
        if limit := limit_of(line, signal):
            yield left_figure(name, label, line, limit, system)
        elif isinstance(line.grade, Absent) and (line.kind, signal) in REACH:
            inputs = (
                Input("grade", as_written(line.grade)),
                Input("path", as_written(line.path), f"{key}.path"),
            )
            yield missing(
                name,
                label,
                worked(length_left_m, inputs=inputs, leaves_out=LEFT_OUT),
                [f"grade of the {line.kind}"],
            )


def reach_without_kind(key: str, line: PermanentLine) -> Iterator[Figure]:
    """That no limit is known for a line of which nobody knows the kind."""
    unknown = worked(length_left_m, inputs=(), leaves_out=LEFT_OUT)
    for signal in line.carries or ("any signal",):
        name = f"{key}.left.{signal.lower().replace(' ', '-')}"
        yield missing(name, f"Left of the limit, {signal}", unknown, ["kind of the line"])


def left_figure(
    key: str, label: str, line: PermanentLine, limit: LineLimit, system: System
) -> Figure:
    """One signal's limit less the path."""
    cited = limit.citation
    reference = Reference(cited.source.key, cited.clause, cited.source.title)
    far = shown(Length, limit.length_m, 0, system)[0]
    inputs = [
        Input("limit", f"{far}: {limit.note}"),
        Input("path", as_written(line.path), f"{key.split('.left.')[0]}.path"),
    ]
    base = worked(length_left_m, inputs=inputs, leaves_out=LEFT_OUT)
    working = replace(
        base, references=(reference, *base.references), equation="left = limit − path"
    )
    if isinstance(line.path, Absent):
        return missing(key, label, working, ["the cable's path"])
    over_m = length_left_m(limit.kind, lengths_m=(line.path.m,))
    working = replace(
        working, steps=(f"left = {limit.length_m:g} m − {line.path.m:g} m = {over_m:g} m",)
    )
    text, also = shown(Length, abs(over_m), 0 if abs(over_m) >= 100 else 1, system)
    value = (
        Value(text, also, over_m, "m")
        if over_m >= 0
        else Value(f"over by {text}", also, over_m, "m")
    )
    return figure(key, label, value, working, note=f"of {far}")


def ends_of(line: PermanentLine, offers: Offers) -> tuple[Spot, Spot] | None:
    """Where both ends are, or None where the stage does not say."""
    if line.from_place is None or line.to_place is None:
        return None
    start, end = offers.spot("place", line.from_place), offers.spot("place", line.to_place)
    return (start, end) if start and end else None


STRAIGHT = "Straight line between the places"


def straight_figure(
    key: str, line: PermanentLine, offers: Offers, system: System
) -> Iterator[Figure]:
    """The straight line between both ends, to be held beside the path."""
    ends = ends_of(line, offers)
    if len(line.places) < BOTH_ENDS:
        lacking = (f"where both ends of {line.name} are",)
        yield missing(f"{key}.straight", STRAIGHT, worked(straight_m, inputs=()), lacking)
    if ends is None:
        return
    start, end = (spot.at_m for spot in ends)
    found_m = straight_m(start, end)
    inputs = [
        Input(
            spot.name,
            f"across {spot.across_m:g} m, depth {spot.depth_m:g} m, height {spot.height_m:g} m",
        )
        for spot in ends
    ]
    squares = " + ".join(
        f"({after:g} − {before:g})²" for before, after in zip(start, end, strict=True)
    ).replace("− -", "+ ")
    steps = (f"d = √({squares}) = {found_m:.2f} m",)
    leaves_out = "The way round the room: a cable is never this short. The path is what counts."
    working = worked(straight_m, inputs=inputs, steps=steps, leaves_out=leaves_out)
    yield figure(
        f"{key}.straight",
        STRAIGHT,
        Value(*shown(Length, found_m, None, system), found_m, "m"),
        working,
    )
