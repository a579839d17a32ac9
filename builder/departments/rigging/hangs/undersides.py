"""How low a hang reaches, with everything on it: what stands below has to stay under that."""

from collections.abc import Iterator

from builder.cautions import LOADS
from builder.departments.rigging.description.hangs import Hang
from builder.departments.rigging.hangs.bodies import Body
from builder.departments.rigging.steel.geometry import ends_of_hang
from builder.exchange import Ends, Overhang, lowered
from builder.formulas.trim import highest_trim_m
from builder.pack import Check, Figure, Input, Value, one_or_both
from builder.reading.absent import Absent, is_unknown
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Height, Length
from builder.reading.written import Written
from builder.working import check_of, figure, missing, worked

LABEL = "Lowest edge, with all that hangs on it"
LEFT_OUT = "Cable that sags, and what the show hangs on it."


def overhang_of(hang: Hang) -> Overhang:
    """A hang as it limits what stands below: by its trim and the lowest edges on it."""
    trim, *edges = [in_metres(height) for _, height in heights_of(hang)]
    return Overhang(
        hang.name, ends_of_hang(hang), trim, tuple(edges), hang.comes_down, check_of(hang)
    )


def in_metres(height: Height | Absent) -> Ends:
    """Both ends of a height, None for what nobody knows. [m]"""
    low, high = ends_of(height)
    return (None if low is None else low.m), (None if high is None else high.m)


def heights_of(hang: Hang) -> Iterator[tuple[str, Height | Absent]]:
    """The trim of a hang, and the lowest edges of what hangs on it as far as told, or unknown."""
    yield "Trim", hang.trim
    for thing in hang.things:
        if not isinstance(thing.underside, Absent) or is_unknown(thing.underside):
            yield thing.what, thing.underside
    if is_unknown(hang.loads):
        yield "What hangs on it", Absent.UNKNOWN


def underside_figure(key: str, body: Body, system: System) -> Figure:
    """How low a hang reaches; at most, where nobody knows of something on it."""
    bottoms = [(each.what, each.bottom_m) for each in body.hung if each.bottom_m is not None]
    found = lowered(overhang_of(body.hang), [bottom_m for _, bottom_m in bottoms])
    inputs = [
        *(Input(name, as_written(written)) for name, written in heights_of(body.hang)),
        *(Input(what, shown(Length, bottom_m, 2, system)[0]) for what, bottom_m in bottoms),
    ]
    lines: list[Written | Check] = [
        *body.hang.things,
        *(each.check for each in body.hung if each.check),
    ]
    work = worked(
        highest_trim_m,
        inputs=inputs,
        equation="the lowest of these",
        leaves_out=LEFT_OUT,
        lines=lines,
    )
    value = one_or_both(height(found.lowest_m, system), height(found.highest_m, system))
    if value is None:
        return missing(f"{key}.underside", LABEL, work, ["trim"], caution=LOADS)
    return figure(f"{key}.underside", LABEL, value, work, caution=LOADS)


def height(height_m: float | None, system: System) -> Value | None:
    """A height above the deck as a value."""
    if height_m is None:
        return None
    return Value(*shown(Length, height_m, 2, system), height_m, "m")
