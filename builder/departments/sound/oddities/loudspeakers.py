"""
What is odd about loudspeakers: boxes on one spot, weights that no box of that size has, subs that
would overlap, a splay written from the bottom, a coverage that no maker measures.
"""

from collections.abc import Iterator, Sequence
from typing import TypeVar

from builder.confirming import odd
from builder.departments.sound.description import Sound
from builder.departments.sound.description.loudspeakers import At, Hang, Model, SubLine
from builder.departments.sound.description.placed import KnownModel
from builder.departments.sound.findings import fills_of, subs_of
from builder.departments.sound.hanging import Models, hangs_of, models_of
from builder.oddities import Named, Standing, on_one_spot, read_between, unlike_neighbours
from builder.pack import Finding
from builder.reading.absent import Absent
from builder.reading.otherwise import otherwise
from builder.reading.quantities import Angle, Length, Mass
from builder.reading.written import Line

AnyLine = TypeVar("AnyLine", bound=Line)
LEAST_KG_PER_M3, GREATEST_KG_PER_M3 = 80.0, 900.0
"""Loudspeakers with their rigging weigh between these: common practice, no source."""
LEAST_KG_PER_M2, GREATEST_KG_PER_M2 = 25.0, 450.0
"""The same by the front, where nobody says how deep a box is: common practice, no source."""
TOUCHING_M = 0.005
DIP = 0.6
"""Coverage that falls below this share of what it is on both sides has a band mistyped."""


def oddities(sound: Sound) -> Iterator[Finding]:
    """Everything that is odd about the loudspeakers."""
    models = models_of(sound)
    for model in models.values():
        yield from light_or_heavy(model)
        yield from dips(model)
    for hang in hangs_of(sound):
        yield from splay_reversed(hang)
    for subs in subs_of(sound):
        yield from subs_overlap(subs, models)
    yield from on_one_spot(boxes(sound))
    yield from unlike_neighbours(tops(sound), "the tops of the other hangs")


def light_or_heavy(model: KnownModel) -> Iterator[Finding]:
    """A box that weighs what no box of its size does."""
    if not isinstance(model.weight, Mass):
        return
    front_m2 = model.width.m * model.height.m
    sides = [model.width, model.height]
    size, least, greatest, unit = (
        front_m2,
        LEAST_KG_PER_M2,
        GREATEST_KG_PER_M2,
        "kg/m² of its front",
    )
    if isinstance(model.depth, Length):
        sides.append(model.depth)
        size, unit = front_m2 * model.depth.m, "kg/m³"
        least, greatest = LEAST_KG_PER_M3, GREATEST_KG_PER_M3
    if size <= 0 or least <= model.weight.kg / size <= greatest:
        return
    by = " × ".join(side.text for side in sides)
    yield odd(
        "box-weight-odd",
        f"{model.name} weighs {model.weight.text} and is {by}: that is"
        f" {model.weight.kg / size:,.0f} {unit}, and most lie between {least:g} and {greatest:g}.",
        model.where("weight"),
        question=otherwise(model.weight, lambda kg: least <= kg / size <= greatest),
        asks_about=f"{model.weight.text} beside {by}",
    )


def dips(model: Model) -> Iterator[Finding]:
    """Coverage that falls and rises again over the bands, or rises and falls."""
    for key in ("horizontal", "vertical"):
        given = [
            (entry, angle)
            for entry in model.coverage
            if isinstance(angle := getattr(entry, key), Angle)
        ]
        found = out_of_line([angle.deg for _, angle in given])
        if found is None:
            continue
        before, (entry, angle), after = (given[index] for index in found)
        beside = f"{before[1].text} at {before[0].band.text} and {after[1].text} at"
        beside = f"{beside} {after[0].band.text}"
        low, high = sorted((before[1].deg, after[1].deg))
        yield odd(
            "coverage-uneven",
            f"The {key} coverage of {model.name} is {angle.text} at {entry.band.text}, beside"
            f" {beside}. Makers' figures seldom fall and rise again, or rise and fall.",
            entry.where(key),
            question=read_between(angle, low * DIP, high / DIP),
            asks_about=f"{angle.text} beside {beside}",
        )


def out_of_line(values: Sequence[float]) -> tuple[int, int, int] | None:
    """
    The first value that is far below some value on both sides of it, or far above, with the nearest
    such on either side; None where the values go one way.
    """
    for index, value in enumerate(values):
        for beyond in (
            [other > value / DIP for other in values],
            [other < value * DIP for other in values],
        ):
            before = [number for number in range(index) if beyond[number]]
            after = [number for number in range(index + 1, len(values)) if beyond[number]]
            if before and after:
                return before[-1], index, after[0]
    return None


def splay_reversed(hang: Hang) -> Iterator[Finding]:
    """
    A splay that opens towards the top. Nearly every column opens towards its foot, so the angles
    were mostly read from the bottom.
    """
    if isinstance(hang.splay, Absent):
        return
    degrees = [angle.deg for angle in hang.splay]
    half = len(degrees) // 2
    upper, lower = sum(degrees[:half]), sum(degrees[len(degrees) - half :])
    if half and degrees[0] > degrees[-1] and upper > lower:
        written = ", ".join(f"{deg:g}" for deg in degrees)
        turned = f"[{', '.join(angle.text for angle in reversed(hang.splay))}]"
        yield odd(
            "splay-reversed",
            f"The splay of {hang.name} opens towards the top: {written} deg. It is written from the"
            " top down.",
            hang.where("splay"),
            question=f" Was it read from the bottom? Then write {turned}.",
            asks_about=written,
        )


def subs_overlap(subs: SubLine, models: Models) -> Iterator[Finding]:
    """Subs nearer to each other than they are wide."""
    model = models.get(subs.model)
    if isinstance(subs.count, Absent) or isinstance(subs.spacing, Absent):
        return
    if model is None or subs.count < 2 or subs.spacing.m >= model.width.m - TOUCHING_M:
        return
    on_end = (
        f" Do they stand on end, {model.height.text} wide?"
        if subs.spacing.m >= model.height.m - TOUCHING_M
        else " Is it the gap between two of them?"
    )
    yield odd(
        "subs-overlap",
        f"{subs.name} stand {subs.spacing.text} apart, from middle to middle, and a {model.name} is"
        f" {model.width.text} wide: they would overlap.",
        subs.where("spacing"),
        question=on_end,
        asks_about=f"{subs.spacing.text} beside {model.width.text}",
    )


def boxes(sound: Sound) -> Iterator[Standing]:
    """
    Hangs by their top boxes, lines of subs by their middles, and every box of the fills, but what
    is out of service: what takes its place may be there.
    """
    for hang in in_service(hangs_of(sound)):
        if isinstance(hang.at, Absent) or isinstance(hang.top, Absent):
            continue
        spot = f"{hang.at.across.text}, {hang.at.depth.text}, {hang.top.text}"
        yield Standing(
            "loudspeakers",
            hang.name,
            hang.at.across.m,
            hang.at.depth.m,
            hang.top.m,
            hang.at.where(),
            spot,
        )
    for subs in in_service(subs_of(sound)):
        if not isinstance(subs.at, Absent):
            yield box_standing(subs.name, subs.at)
    for fill in in_service(fills_of(sound)):
        for number, box in enumerate(fill.boxes, 1):
            if box.condition != "out of service" and not isinstance(box.at, Absent):
                yield box_standing(f"box {number} of {fill.name}", box.at)


def in_service(lines: Sequence[AnyLine]) -> Iterator[AnyLine]:
    """The lines that are not out of service."""
    return (line for line in lines if line.condition != "out of service")


def box_standing(name: str, at: At) -> Standing:
    """A loudspeaker at a place."""
    spot = f"{at.across.text}, {at.depth.text}, {at.height.text}"
    return Standing("loudspeakers", name, at.across.m, at.depth.m, at.height.m, at.where(), spot)


def tops(sound: Sound) -> list[Named]:
    """How high each hang is."""
    return [
        Named(f"The top of {hang.name}", hang.top, hang.where("top"))
        for hang in hangs_of(sound)
        if not isinstance(hang.top, Absent)
    ]
