"""The stage's figures: what the outlines and the stock make up, each with its working."""

from collections.abc import Sequence
from math import fsum

from builder.cautions import STAGE
from builder.departments.stage.description import Deck, Obstruction, Outline, Wing
from builder.departments.stage.stock import Riser
from builder.formulas.polygons import extent_m, polygon_area_m2
from builder.pack import Figure, Input, Value, not_more, one_or_both
from builder.reading.absent import Absent, is_unknown, listed
from builder.reading.in_part import as_written, ends_of
from builder.reading.measures import System, shown
from builder.reading.quantities import Area, Length
from builder.working import figure, missing, worked


def area_value(area_m2: float, system: System) -> Value:
    """An area in both unit systems, the house's first."""
    return Value(*shown(Area, area_m2, system=system), number=round(area_m2, 3), unit="m2")


def deck_area(key: str, deck: Deck, system: System) -> Figure:
    """The area that the deck's outline encloses."""
    corners = points(deck.outline)
    if not corners:
        working = worked(polygon_area_m2, inputs=[Input("corners", as_written(deck.outline))])
        return missing(f"{key}.area", "Deck area", working, ["outline"], caution=STAGE)
    area_m2 = polygon_area_m2(corners)
    listed = "; ".join(f"({x:g}, {y:g})" for x, y in corners)
    working = worked(
        polygon_area_m2,
        inputs=[Input("corners (across, depth) [m]", listed, f"{key}.outline")],
        steps=shoelace(corners, area_m2),
        leaves_out="Columns and what always stands on the deck.",
    )
    return figure(f"{key}.area", "Deck area", area_value(area_m2, system), working, caution=STAGE)


def shoelace(corners: Sequence[tuple[float, float]], area_m2: float) -> list[str]:
    """The area's sum with numbers: for each side one product less the other."""
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    terms = [
        (f"{x:g} × {signed(v)} − {signed(u)} × {signed(y)}", x * v - u * y + 0.0)
        for (x, y), (u, v) in sides
    ]
    written = [
        f"Side {number}: {text} = {term:.2f} m²" for number, (text, term) in enumerate(terms, 1)
    ]
    return [*written, f"A = |{fsum(term for _, term in terms):.2f}| / 2 = {area_m2:.1f} m²"]


def signed(number: float) -> str:
    """A number behind a sign: in brackets where it has one of its own."""
    return f"({number:g})" if number < 0 else f"{number:g}"


def riser_area(key: str, riser: Riser, system: System) -> Figure:
    """The area that all decks of one kind make up, at least and at most."""
    written = {"count": riser.count, "width": riser.width, "depth": riser.depth}
    factors = " × ".join(as_written(value) for value in written.values())
    ends_m2 = riser_ends_m2(riser)
    value = one_or_both(
        *(None if found_m2 is None else area_value(found_m2, system) for found_m2 in ends_m2)
    )
    found = f" = {value.text}" if value else ""
    working = worked(
        polygon_area_m2,
        equation="A = count × width × depth",
        inputs=[
            Input("count", as_written(riser.count), f"{key}.count"),
            Input("width", as_written(riser.width)),
            Input("depth", as_written(riser.depth)),
        ],
        steps=[f"A = {factors}{found}"],
    )
    label, name = "Area in all", f"{key}.area"
    if value is None:
        lacks = [word for word, each in written.items() if ends_of(each) == (None, None)]
        return missing(name, label, working, [f"the {word} of {riser.name}" for word in lacks])
    return figure(name, label, value, working)


def riser_ends_m2(riser: Riser) -> tuple[float | None, float | None]:
    """The area of all decks of one kind at least and at most, None for an end nobody knows. [m2]"""
    counts, widths, depths = ends_of(riser.count), ends_of(riser.width), ends_of(riser.depth)
    least, most = (
        area_m2(count, width, depth)
        for count, width, depth in zip(counts, widths, depths, strict=True)
    )
    return least, most


def area_m2(count: int | None, width: Length | None, depth: Length | None) -> float | None:
    """The area of so many rectangles, None where something is not known. [m2]"""
    if count is None or width is None or depth is None:
        return None
    return count * polygon_area_m2(((0, 0), (width.m, 0), (width.m, depth.m), (0, depth.m)))


def wing_size(
    key: str, wing: Wing, told: Sequence[Obstruction] | Absent, system: System
) -> tuple[Figure, Figure]:
    """
    Width and depth of a wing that is drawn: of its outline where that is a clear rectangle, else at
    most so much. What stands somewhere and is not drawn may stand in it.
    """
    corners, obstructions = points(wing.outline), () if isinstance(told, Absent) else told
    sizes_m = extent_m(corners)
    standing = [
        each.name
        for each in obstructions
        if each.from_height is None
        and not isinstance(each.outline, Absent)
        and meet(corners, points(each.outline))
    ]
    askew = abs(sizes_m[0] * sizes_m[1] - polygon_area_m2(corners)) > 0.001
    less = [
        *(["the outline is no upright rectangle"] if askew else []),
        *(f"{name} stands in it" for name in standing),
        *(
            f"nobody has drawn where {each.name} is"
            for each in obstructions
            if isinstance(each.outline, Absent)
        ),
        *(["nobody knows what is in the way"] if is_unknown(told) else []),
    ]
    listed = "; ".join(f"({x:g}, {y:g})" for x, y in corners)
    found = []
    for name, label, axis, size_m in (
        ("width", "Width", 0, sizes_m[0]),
        ("depth", "Depth", 1, sizes_m[1]),
    ):
        ends_m = [corner[axis] for corner in corners]
        working = worked(
            extent_m,
            inputs=[Input("corners (across, depth) [m]", listed, f"{key}.outline")],
            steps=[f"{label} = {max(ends_m):g} − {signed(min(ends_m))} = {size_m:.2f} m"],
            leaves_out=f"At most so much, for {' and '.join(less)}." if less else "",
            lines=obstructions,
        )
        text, also = shown(Length, size_m, system=system)
        exact = Value(text, also, number=round(size_m, 3), unit="m")
        value = not_more(exact) if less else exact
        found.append(figure(f"{key}.{name}", label, value, working, caution=STAGE))
    return found[0], found[1]


def points(outline: Outline | Absent) -> list[tuple[float, float]]:
    """An outline in metres from the datum; empty where nobody drew it."""
    return [(corner.across.m, corner.depth.m) for corner in listed(outline)]


def meet(one: Sequence[tuple[float, float]], other: Sequence[tuple[float, float]]) -> bool:
    """Whether the upright rectangles around two outlines have floor in common."""
    return all(
        min(a[axis] for a in one) < max(b[axis] for b in other)
        and min(b[axis] for b in other) < max(a[axis] for a in one)
        for axis in (0, 1)
    )
